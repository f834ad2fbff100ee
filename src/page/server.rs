//! The server of the sheet: on the loopback address alone, one thread.

use std::{
    net::{Ipv4Addr, SocketAddr},
    sync::{Arc, Mutex, MutexGuard, PoisonError},
};

use axum::{
    Router,
    body::Bytes,
    extract::{DefaultBodyLimit, Path, Request, State},
    http::{HeaderValue, StatusCode, header},
    middleware::{self, Next},
    response::{IntoResponse, Response},
    routing::{get, post},
};
use serde::{Serialize, de::DeserializeOwned};
use tokio::{net::TcpListener, runtime, sync::watch};

use super::{
    asked::{Compare, Draw, Refusal, Save, Take},
    desk::{Desk, Saved},
    door::Door,
    events::{self, News},
    guard::{HEADERS, Pace, RunKey, admit},
    replay, sheet, table,
    toile::Look,
    told::{Beneath, Drawn, File, Marks, SaveTold, Wrong, answer},
};
use crate::{
    fit::Laid,
    mistake::Mistake,
    terms::{Anchor, Side, Word},
    told::difference_table,
};

/// A request is a list of changes; larger is none of ours, bytes.
const LARGEST_REQUEST: usize = 64 * 1024;

/// What every request finds.
pub(super) struct Inside {
    desk: Mutex<Desk>,
    key: RunKey,
    port: u16,
    pace: Pace,
    pub news: watch::Sender<News>,
}

impl Inside {
    /// The desk, for one at a time.
    pub(super) fn desk(&self) -> MutexGuard<'_, Desk> {
        self.desk.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// A table that is set up: it has an address, and answers there once it is served.
pub struct Table {
    runtime: runtime::Runtime,
    listener: TcpListener,
    inside: Arc<Inside>,
}

impl Table {
    /// Sets a table up on the loopback address; `port` 0 takes one that is free.
    ///
    /// # Errors
    /// When the port is taken.
    pub fn set_up(desk: Desk, port: u16) -> Result<Self, Mistake> {
        let failed = |error: std::io::Error| {
            Mistake::new(format!("cannot open a page at 127.0.0.1, port {port}: {error}"))
                .help("name another port with `--port`, or leave the option out")
        };
        let runtime = runtime::Builder::new_current_thread().enable_all().build().map_err(failed)?;
        let listener = runtime.block_on(TcpListener::bind((Ipv4Addr::LOCALHOST, port))).map_err(failed)?;
        let address: SocketAddr = listener.local_addr().map_err(failed)?;
        let (news, _) = watch::channel(News::Edition(desk.edition()));
        let inside = Inside {
            desk: Mutex::new(desk),
            key: RunKey::new(),
            port: address.port(),
            pace: Pace::new(),
            news,
        };
        Ok(Self { runtime, listener, inside: Arc::new(inside) })
    }

    /// Where a browser finds it, with the key of this run.
    pub fn address(&self) -> String {
        format!("http://127.0.0.1:{}/{}/", self.inside.port, self.inside.key.as_str())
    }

    /// Answers until the person at the terminal ends it.
    ///
    /// # Errors
    /// When the listening ends before that.
    pub fn serve(self) -> Result<(), Mistake> {
        let Self { runtime, listener, inside } = self;
        let routes = routes(inside.clone());
        runtime.block_on(async move {
            tokio::spawn(events::watch(inside.clone()));
            let end = async move {
                ended().await;
                // Nobody may be listening.
                let _ = inside.news.send(News::End);
            };
            axum::serve(Door::new(listener), routes)
                .with_graceful_shutdown(end)
                .await
                .map_err(|error| Mistake::new(format!("the page ended: {error}")))
        })
    }
}

/// Resolves when the process is asked to end.
async fn ended() {
    let interrupted = tokio::signal::ctrl_c();
    #[cfg(unix)]
    {
        use tokio::signal::unix::{SignalKind, signal};
        if let Ok(mut terminated) = signal(SignalKind::terminate()) {
            tokio::select! {
                _ = interrupted => {}
                _ = terminated.recv() => {}
            }
            return;
        }
    }
    let _ = interrupted.await;
}

fn routes(inside: Arc<Inside>) -> Router {
    Router::new()
        .route("/{key}/", get(|state| part(state, String::new())))
        .route("/{key}/{name}", get(|state, Path((_, name)): Path<(String, String)>| part(state, name)))
        .route("/{key}/ask/events", get(news))
        .route("/{key}/ask/draw", post(draw))
        .route("/{key}/ask/replay", post(replayed))
        .route("/{key}/ask/under", post(under))
        .route("/{key}/ask/save", post(save))
        .route("/{key}/ask/take", post(take))
        .route("/{key}/ask/toile", post(toile))
        .fallback(async || (StatusCode::NOT_FOUND, "nothing lies there"))
        .layer(DefaultBodyLimit::max(LARGEST_REQUEST))
        .layer(middleware::from_fn_with_state(inside.clone(), guarded))
        .with_state(inside)
}

/// Everything that comes in passes here, and everything that goes out.
async fn guarded(State(inside): State<Arc<Inside>>, request: Request, next: Next) -> Response {
    let in_path =
        request.uri().path().strip_prefix('/').and_then(|path| path.split('/').next()).unwrap_or("");
    let admitted = admit(request.method(), request.headers(), inside.port, &inside.key).and_then(|()| {
        if inside.key.is(in_path) {
            Ok(())
        } else {
            Err((StatusCode::FORBIDDEN, "the key of this run is missing"))
        }
    });
    let length =
        request.headers().get(header::CONTENT_LENGTH).and_then(|length| length.to_str().ok()?.parse().ok());
    let large = length.is_some_and(|length: usize| length > LARGEST_REQUEST);
    let mut response = match admitted {
        Err(refused) => refused.into_response(),
        Ok(()) if large => {
            (StatusCode::PAYLOAD_TOO_LARGE, "larger than any request of this page").into_response()
        }
        Ok(()) if !inside.pace.allows() => {
            (StatusCode::TOO_MANY_REQUESTS, "too many at once").into_response()
        }
        Ok(()) => next.run(request).await,
    };
    for (name, value) in HEADERS {
        response.headers_mut().insert(name, HeaderValue::from_static(value));
    }
    response
}

async fn part(State(_): State<Arc<Inside>>, name: String) -> Response {
    let (kind, text) = match name.as_str() {
        "words.json" => ("application/json", table::words()),
        "lines.css" => ("text/css; charset=utf-8", table::pens()),
        name => match sheet::PARTS.iter().find(|part| part.0 == name) {
            Some(part) => (part.1, part.2.to_owned()),
            None => return (StatusCode::NOT_FOUND, "nothing lies there").into_response(),
        },
    };
    ([(header::CONTENT_TYPE, kind)], text).into_response()
}

async fn news(State(inside): State<Arc<Inside>>) -> Response {
    events::stream(inside.news.subscribe()).into_response()
}

async fn draw(State(inside): State<Arc<Inside>>, body: Bytes) -> Response {
    answered(&inside, &body, |desk, asked: Draw| {
        let made = desk.made(&asked.changes)?;
        let trouble = desk.trouble().map(Mistake::title);
        let name = desk.path().display().to_string();
        let file = File::of(&made.order, &name, desk.is_file(), trouble);
        json(&Drawn { edition: desk.edition(), file, draft: answer(&made), marks: Marks::of(&made) })
    })
}

async fn replayed(State(inside): State<Arc<Inside>>, body: Bytes) -> Response {
    answered(&inside, &body, |desk, asked: Draw| {
        let made = desk.made(&asked.changes)?;
        json(&replay::steps(&made.legs.first.draft))
    })
}

async fn under(State(inside): State<Arc<Inside>>, body: Bytes) -> Response {
    answered(&inside, &body, |desk, asked: Compare| {
        let (old, new) = (desk.under(asked.under, &asked.changes)?, desk.made(&asked.changes)?);
        let over = |side: &Side| {
            Laid::over(old.overlaid(*side, "under"), new.overlaid(*side, "sheet"), Anchor::Crotch)
        };
        let laid: Vec<Laid<'_>> = new.sides_beside(&old).iter().map(over).collect();
        let differences = difference_table(&laid, new.order.units);
        json(&Beneath { under: answer(&old), differences })
    })
}

async fn toile(State(inside): State<Arc<Inside>>, body: Bytes) -> Response {
    answered(&inside, &body, |desk, asked: Look| {
        let made = desk.made(&asked.changes)?;
        let judgement = asked.judged(&made)?;
        json(&asked.told(&made, &made.legs.first.draft, judgement.as_ref()))
    })
}

async fn save(State(inside): State<Arc<Inside>>, body: Bytes) -> Response {
    answered(&inside, &body, |desk, asked: Save| {
        let told = match desk.save(&asked.changes, asked.fittings, asked.edition)? {
            Saved::Written(edition) => SaveTold { edition, written: true, theirs: Vec::new() },
            Saved::Elsewhere(edition, theirs) => SaveTold { edition, written: false, theirs },
        };
        let _ = inside.news.send(News::Edition(desk.edition()));
        json(&told)
    })
}

async fn take(State(inside): State<Arc<Inside>>, body: Bytes) -> Response {
    answered(&inside, &body, |desk, asked: Take| {
        let made = desk.made(&asked.changes)?;
        let side = asked.side.as_deref().and_then(Side::from_key).unwrap_or(Side::Both);
        let (ending, kind, bytes) = sheet::taken(&made, &asked.file, side)?;
        Ok(([(header::CONTENT_TYPE, kind), (KIND_HEADER, ending)], bytes).into_response())
    })
}

/// Says that an answer is a refusal with its reasons. It is no failure of the server's, which a browser would report.
const REFUSED_HEADER: header::HeaderName = header::HeaderName::from_static("x-breeks-refused");

/// The end of the name of a file that is taken away.
const KIND_HEADER: header::HeaderName = header::HeaderName::from_static("x-breeks-ending");

/// Reads a request, and answers it or tells what was wrong with it.
fn answered<Asked: DeserializeOwned>(
    inside: &Inside,
    body: &[u8],
    answer: impl FnOnce(&mut Desk, Asked) -> Result<Response, Refusal>,
) -> Response {
    let asked = match serde_json::from_slice(body) {
        Ok(asked) => asked,
        Err(error) => {
            return (StatusCode::BAD_REQUEST, format!("not a request of this page: {error}")).into_response();
        }
    };
    let mut desk = inside.desk();
    answer(&mut desk, asked).unwrap_or_else(|refusal| {
        let wrong = Wrong::of(&refusal, desk.edition());
        match json(&wrong) {
            Ok(told) => ([(REFUSED_HEADER, "yes")], told).into_response(),
            Err(_) => StatusCode::INTERNAL_SERVER_ERROR.into_response(),
        }
    })
}

fn json(value: &impl Serialize) -> Result<Response, Refusal> {
    let text =
        serde_json::to_string(value).map_err(|error| Mistake::new(format!("cannot be told: {error}")))?;
    Ok(([(header::CONTENT_TYPE, "application/json")], text).into_response())
}
