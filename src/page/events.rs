//! The file watched, so that a hand in an editor moves the drawing too.

use std::{convert::Infallible, sync::Arc, time::Duration};

use axum::response::sse::{Event, KeepAlive, Sse};
use tokio::sync::watch;
use tokio_stream::{Stream, StreamExt as _, wrappers::WatchStream};

use super::server::Inside;

/// Between two looks at the file.
const LOOK_EVERY: Duration = Duration::from_millis(250);
/// Between two signs of life of an event stream; shorter than a connection may rest.
const ALIVE_EVERY: Duration = Duration::from_secs(15);

/// What a stream is told: the edition of the file, or the end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum News {
    Edition(u64),
    End,
}

/// Looks at the file until the table is cleared.
pub(super) async fn watch(inside: Arc<Inside>) {
    let mut every = tokio::time::interval(LOOK_EVERY);
    loop {
        every.tick().await;
        let mut desk = inside.desk();
        if desk.look_again() {
            // Nobody may be listening.
            let _ = inside.news.send(News::Edition(desk.edition()));
        }
    }
}

/// The editions of the file as they come, until the table is cleared: an open stream would keep the server from ending.
pub(super) fn stream(news: watch::Receiver<News>) -> Sse<impl Stream<Item = Result<Event, Infallible>>> {
    let events = WatchStream::new(news).take_while(|news| *news != News::End).map(|news| match news {
        News::Edition(edition) => Ok(Event::default().event("edition").data(edition.to_string())),
        News::End => Ok(Event::default()),
    });
    Sse::new(events).keep_alive(KeepAlive::new().interval(ALIVE_EVERY))
}
