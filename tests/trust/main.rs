//! Whether the program can be trusted with whatever it is given: it answers, it loses nothing, and it calls nothing good
//! that is not.
#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]

mod cases;
mod dice;
mod people;
mod rows;

use std::{io::Cursor, num::NonZeroUsize};

use breeks::{
    answer::batch::{Batch, Tally},
    making::{Made, make},
    mistake::{Mistakes, Source},
    order::Order,
    pattern::Wanted,
};
use serde_json::Value;

/// What `breeks draft` makes of a file.
fn drafted(name: &str, text: &str) -> Result<Made, Mistakes> {
    let (order, notices) = Order::read(&Source::new(name, text))?;
    make(order, notices, &Wanted::default())
}

/// What `breeks batch` makes of rows.
fn batch(rows: impl Into<Vec<u8>>) -> (Vec<Value>, Tally) {
    let mut out = Vec::new();
    let put = |lines: &[u8]| {
        out.extend_from_slice(lines);
        Ok(())
    };
    let tally = Batch::new(&[])
        .unwrap()
        .run("rows", Cursor::new(rows.into()), NonZeroUsize::MIN, put, |_| {})
        .unwrap_or_else(|mistakes| panic!("{mistakes}"));
    let lines = out.split(|byte| *byte == b'\n').filter(|line| !line.is_empty());
    (lines.map(|line| serde_json::from_slice(line).unwrap()).collect(), tally)
}
