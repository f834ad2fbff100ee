//! The cutting table in the browser: the server by itself, attacked, and the whole of it in a real browser.
#![cfg(feature = "serve")]
#![expect(clippy::unwrap_used, reason = "tests")]

mod attacks;
mod browser;
mod drawn;
mod saved;
mod table;
#[path = "../tool/mod.rs"]
mod tool;
