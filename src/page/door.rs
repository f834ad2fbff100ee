//! Who may come in: so many connections at once, and none that keeps the table waiting.

use std::{
    future::Future,
    io,
    net::SocketAddr,
    pin::Pin,
    sync::Arc,
    task::{Context, Poll},
    time::Duration,
};

use axum::serve::Listener;
use tokio::{
    io::{AsyncRead, AsyncWrite, ReadBuf},
    net::{TcpListener, TcpStream},
    sync::{OwnedSemaphorePermit, Semaphore},
    time::{Instant, Sleep, sleep_until},
};

/// At once; a browser uses six for one page.
pub(super) const MOST_CONNECTIONS: usize = 32;
/// For a whole request, counted from the last answer; and for taking an answer.
pub(super) const PATIENCE: Duration = Duration::from_secs(10);
/// A connection that was answered may rest longer: the browser keeps it for the next request.
const REST: Duration = Duration::from_secs(60);

/// A listener that counts.
pub(super) struct Door {
    pub listener: TcpListener,
    pub places: Arc<Semaphore>,
}

impl Door {
    pub(super) fn new(listener: TcpListener) -> Self {
        Self { listener, places: Arc::new(Semaphore::new(MOST_CONNECTIONS)) }
    }
}

impl Listener for Door {
    type Io = Guest;
    type Addr = SocketAddr;

    async fn accept(&mut self) -> (Guest, SocketAddr) {
        loop {
            let place = self.places.clone().acquire_owned().await;
            let (Ok(place), (stream, from)) = (place, Listener::accept(&mut self.listener).await) else {
                continue;
            };
            // Without it a small answer may wait for the acknowledgement of the one before.
            let _ = stream.set_nodelay(true);
            return (Guest::new(stream, place), from);
        }
    }

    fn local_addr(&self) -> io::Result<SocketAddr> {
        self.listener.local_addr()
    }
}

/// A connection that is closed when it takes too long.
pub(super) struct Guest {
    stream: TcpStream,
    read_until: Pin<Box<Sleep>>,
    write_until: Pin<Box<Sleep>>,
    writes: bool,
    _place: OwnedSemaphorePermit,
}

impl Guest {
    fn new(stream: TcpStream, place: OwnedSemaphorePermit) -> Self {
        let until = || Box::pin(sleep_until(Instant::now() + PATIENCE));
        Self { stream, read_until: until(), write_until: until(), writes: false, _place: place }
    }

    fn wrote(&mut self, done: &Poll<io::Result<usize>>, cx: &mut Context<'_>) -> bool {
        if done.is_ready() {
            self.writes = false;
            self.read_until.as_mut().reset(Instant::now() + REST);
            return false;
        }
        if !self.writes {
            self.writes = true;
            self.write_until.as_mut().reset(Instant::now() + PATIENCE);
        }
        self.write_until.as_mut().poll(cx).is_ready()
    }
}

fn too_slow() -> io::Error {
    io::Error::new(io::ErrorKind::TimedOut, "too slow")
}

impl AsyncRead for Guest {
    fn poll_read(
        mut self: Pin<&mut Self>,
        cx: &mut Context<'_>,
        into: &mut ReadBuf<'_>,
    ) -> Poll<io::Result<()>> {
        if self.read_until.as_mut().poll(cx).is_ready() {
            return Poll::Ready(Err(too_slow()));
        }
        let before = into.filled().len();
        let done = Pin::new(&mut self.stream).poll_read(cx, into);
        // The first bytes of the next request begin its time; more of it do not lengthen it.
        let soon = Instant::now() + PATIENCE;
        if into.filled().len() > before && self.read_until.deadline() > soon {
            self.read_until.as_mut().reset(soon);
        }
        done
    }
}

impl AsyncWrite for Guest {
    fn poll_write(mut self: Pin<&mut Self>, cx: &mut Context<'_>, from: &[u8]) -> Poll<io::Result<usize>> {
        let done = Pin::new(&mut self.stream).poll_write(cx, from);
        if self.wrote(&done, cx) { Poll::Ready(Err(too_slow())) } else { done }
    }

    fn poll_write_vectored(
        mut self: Pin<&mut Self>,
        cx: &mut Context<'_>,
        from: &[io::IoSlice<'_>],
    ) -> Poll<io::Result<usize>> {
        let done = Pin::new(&mut self.stream).poll_write_vectored(cx, from);
        if self.wrote(&done, cx) { Poll::Ready(Err(too_slow())) } else { done }
    }

    fn is_write_vectored(&self) -> bool {
        self.stream.is_write_vectored()
    }

    fn poll_flush(mut self: Pin<&mut Self>, cx: &mut Context<'_>) -> Poll<io::Result<()>> {
        Pin::new(&mut self.stream).poll_flush(cx)
    }

    fn poll_shutdown(mut self: Pin<&mut Self>, cx: &mut Context<'_>) -> Poll<io::Result<()>> {
        Pin::new(&mut self.stream).poll_shutdown(cx)
    }
}
