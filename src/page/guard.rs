//! What every request is held against: it comes from this machine's browser, from our own sheet, with the key of this
//! run, and not too often.

use std::{
    hash::{BuildHasher, RandomState},
    sync::{Mutex, PoisonError},
    time::Instant,
};

use axum::http::{HeaderMap, HeaderName, HeaderValue, Method, StatusCode, header};

/// In the address of every run another one: whoever has not read it off the terminal finds nothing here.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct RunKey(String);

impl RunKey {
    /// A new one, of 128 bits.
    pub(super) fn new() -> Self {
        // The standard library's hasher is keyed with the system's randomness and cannot be told from it without the key.
        let keyed = RandomState::new();
        Self(format!("{:016x}{:016x}", keyed.hash_one(1u8), keyed.hash_one(2u8)))
    }

    pub(super) fn as_str(&self) -> &str {
        &self.0
    }

    /// Compared in the same time whatever is wrong.
    pub(super) fn is(&self, other: &str) -> bool {
        let differ = |(a, b): (u8, u8)| u32::from(a ^ b);
        other.len() == self.0.len() && self.0.bytes().zip(other.bytes()).map(differ).sum::<u32>() == 0
    }
}

/// The header in which the sheet says the key of the run with every request that is more than a look.
pub(super) const KEY_HEADER: HeaderName = HeaderName::from_static("x-breeks-key");

/// Why a request is turned away.
pub(super) type Refused = (StatusCode, &'static str);

/// Checks where a request comes from.
pub(super) fn admit(method: &Method, headers: &HeaderMap, port: u16, key: &RunKey) -> Result<(), Refused> {
    let ours = [format!("127.0.0.1:{port}"), format!("localhost:{port}")];
    let hosts: Vec<_> = headers.get_all(header::HOST).iter().collect();
    let one_of_ours =
        |host: &&HeaderValue| host.to_str().is_ok_and(|host| ours.iter().any(|own| own == host));
    if !(hosts.len() == 1 && hosts.first().is_some_and(one_of_ours)) {
        return Err((StatusCode::MISDIRECTED_REQUEST, "this is not the host you asked for"));
    }
    if let Some(origin) = headers.get(header::ORIGIN) {
        let own = |origin: &str| ours.iter().any(|own| origin.strip_prefix("http://") == Some(own));
        if !origin.to_str().is_ok_and(own) {
            return Err((StatusCode::FORBIDDEN, "asked from another page"));
        }
    }
    let site = headers.get("sec-fetch-site").and_then(|site| site.to_str().ok());
    if matches!(site, Some("cross-site" | "same-site")) && *method != Method::GET {
        return Err((StatusCode::FORBIDDEN, "asked from another page"));
    }
    match *method {
        Method::GET => Ok(()),
        Method::POST => {
            let said = headers.get(KEY_HEADER).and_then(|said| said.to_str().ok());
            let json = headers.get(header::CONTENT_TYPE).is_some_and(|kind| kind == "application/json");
            match (said.is_some_and(|said| key.is(said)), json) {
                (true, true) => Ok(()),
                (false, _) => Err((StatusCode::FORBIDDEN, "the key of this run is missing")),
                (true, false) => Err((StatusCode::UNSUPPORTED_MEDIA_TYPE, "expected application/json")),
            }
        }
        _ => Err((StatusCode::METHOD_NOT_ALLOWED, "expected GET or POST")),
    }
}

/// What a browser is told with every answer.
pub(super) const HEADERS: [(HeaderName, &str); 7] = [
    (
        header::CONTENT_SECURITY_POLICY,
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; \
         base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
    ),
    (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
    (header::REFERRER_POLICY, "no-referrer"),
    (header::CACHE_CONTROL, "no-store"),
    (HeaderName::from_static("cross-origin-opener-policy"), "same-origin"),
    (HeaderName::from_static("cross-origin-resource-policy"), "same-origin"),
    (HeaderName::from_static("permissions-policy"), "camera=(), microphone=(), geolocation=()"),
];

/// So many requests at once and then so many a second; a hand on a ruler makes sixty.
#[derive(Debug)]
pub(super) struct Pace {
    left: Mutex<(f64, Instant)>,
}

/// At once.
const BURST: f64 = 240.0;
/// A second.
const STEADY: f64 = 120.0;

impl Pace {
    pub(super) fn new() -> Self {
        Self { left: Mutex::new((BURST, Instant::now())) }
    }

    /// Counts a request; whether it may be answered.
    pub(super) fn allows(&self) -> bool {
        let mut left = self.left.lock().unwrap_or_else(PoisonError::into_inner);
        let now = Instant::now();
        let gained = now.duration_since(left.1).as_secs_f64() * STEADY;
        *left = ((left.0 + gained).min(BURST), now);
        let allowed = left.0 >= 1.0;
        if allowed {
            left.0 -= 1.0;
        }
        allowed
    }
}
