//! A table served for a test, and requests to it by hand: bytes on a socket, so that nothing corrects them.

use std::{
    fs,
    io::{BufRead, BufReader, Read, Write},
    net::TcpStream,
    path::{Path, PathBuf},
    process::{Child, Command, Stdio},
    time::Duration,
};

/// A served measurement file in a folder of its own.
pub(crate) struct Table {
    child: Child,
    pub folder: PathBuf,
    pub port: u16,
    pub key: String,
}

/// What came back.
#[derive(Debug)]
pub(crate) struct Reply {
    pub status: u16,
    pub head: String,
    pub body: Vec<u8>,
}

impl Reply {
    pub(crate) fn text(&self) -> &str {
        std::str::from_utf8(&self.body).unwrap()
    }

    pub(crate) fn json(&self) -> serde_json::Value {
        serde_json::from_slice(&self.body).unwrap()
    }
}

impl Table {
    /// Serves a file with this text, under `file.toml` in a fresh folder.
    pub(crate) fn of(test: &str, text: &str) -> Self {
        let folder = fresh(test);
        fs::write(folder.join("file.toml"), text).unwrap();
        Self::served(folder, &["file.toml"])
    }

    /// Serves a demo body.
    pub(crate) fn demo(test: &str, name: &str) -> Self {
        Self::served(fresh(test), &["--demo", name])
    }

    fn served(folder: PathBuf, arguments: &[&str]) -> Self {
        let mut child = Command::new(env!("CARGO_BIN_EXE_breeks"))
            .arg("page")
            .args(arguments)
            .current_dir(&folder)
            .stdout(Stdio::piped())
            .stdin(Stdio::null())
            .spawn()
            .unwrap();
        let lines = BufReader::new(child.stdout.take().unwrap()).lines();
        let address = lines.map_while(Result::ok).find(|line| line.trim().starts_with("http://")).unwrap();
        let rest = address.trim().strip_prefix("http://127.0.0.1:").unwrap();
        let (port, key) = rest.trim_end_matches('/').split_once('/').unwrap();
        Self { child, folder, port: port.parse().unwrap(), key: key.to_owned() }
    }

    pub(crate) fn address(&self) -> String {
        format!("http://127.0.0.1:{}/{}/", self.port, self.key)
    }

    pub(crate) fn connect(&self) -> TcpStream {
        let stream = TcpStream::connect(("127.0.0.1", self.port)).unwrap();
        stream.set_read_timeout(Some(Duration::from_secs(30))).unwrap();
        stream
    }

    /// Sends these bytes and reads what comes until the other side closes.
    pub(crate) fn raw(&self, request: &str) -> Reply {
        let mut stream = self.connect();
        stream.write_all(request.as_bytes()).unwrap();
        read(&mut stream)
    }

    /// A request with what our sheet sends.
    pub(crate) fn get(&self, name: &str) -> Reply {
        self.raw(&format!(
            "GET /{}/{name} HTTP/1.1\r\nHost: 127.0.0.1:{}\r\nConnection: close\r\n\r\n",
            self.key, self.port
        ))
    }

    pub(crate) fn post(&self, what: &str, body: &str) -> Reply {
        self.raw(&self.posted(what, body, &self.usual()))
    }

    /// The headers that our sheet sends.
    pub(crate) fn usual(&self) -> String {
        let Self { port, key, .. } = self;
        format!(
            "Host: 127.0.0.1:{port}\r\nOrigin: http://127.0.0.1:{port}\r\nContent-Type: application/json\r\nX-Breeks-Key: {key}\r\n"
        )
    }

    pub(crate) fn posted(&self, what: &str, body: &str, headers: &str) -> String {
        format!(
            "POST /{}/ask/{what} HTTP/1.1\r\n{headers}Content-Length: {}\r\nConnection: close\r\n\r\n{body}",
            self.key,
            body.len()
        )
    }

    pub(crate) fn text(&self) -> String {
        fs::read_to_string(self.folder.join("file.toml")).unwrap()
    }

    /// The most memory that the server has held, kB.
    pub(crate) fn most_memory(&self) -> u64 {
        let status = fs::read_to_string(format!("/proc/{}/status", self.child.id())).unwrap();
        let line = status.lines().find(|line| line.starts_with("VmHWM")).unwrap();
        line.split_whitespace().nth(1).unwrap().parse().unwrap()
    }

    pub(crate) fn process(&mut self) -> &mut Child {
        &mut self.child
    }
}

impl Drop for Table {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

pub(crate) fn read(stream: &mut TcpStream) -> Reply {
    let mut bytes = Vec::new();
    // a connection that is torn down in the middle of a body has still said what it had to say
    let _ = stream.read_to_end(&mut bytes);
    let end = bytes.windows(4).position(|four| four == b"\r\n\r\n").unwrap_or(bytes.len());
    let head = String::from_utf8_lossy(&bytes[..end]).to_lowercase();
    let status = head.split(' ').nth(1).and_then(|status| status.parse().ok()).unwrap_or(0);
    let body = bytes.get(end + 4..).unwrap_or_default().to_vec();
    Reply { status, head, body }
}

fn fresh(test: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("page").join(test);
    if folder.exists() {
        fs::remove_dir_all(&folder).unwrap();
    }
    fs::create_dir_all(&folder).unwrap();
    folder
}

/// The text of a demo body.
pub(crate) fn demo(name: &str) -> String {
    fs::read_to_string(format!("{}/blocks/bodies/{name}.toml", env!("CARGO_MANIFEST_DIR"))).unwrap()
}
