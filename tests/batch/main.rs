//! Many bodies through one filter.
#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]

mod any_bytes;
mod command;
mod hard_rows;
mod header;
mod order_kept;
mod same_as_draft;

use std::{io::Cursor, num::NonZeroUsize};

use breeks::{
    answer::batch::{Batch, Tally},
    mistake::Mistakes,
};
use serde_json::Value;

/// What a run gave: its lines, each read as JSON, and the count.
fn run(set: &[&str], input: impl Into<Vec<u8>>) -> Result<(Vec<Value>, Tally), Mistakes> {
    let set: Vec<String> = set.iter().map(|text| (*text).to_owned()).collect();
    let mut out = Vec::new();
    let put = |lines: &[u8]| {
        assert!(lines.ends_with(b"\n"), "a line in halves was put");
        out.extend_from_slice(lines);
        Ok(())
    };
    let workers = NonZeroUsize::new(3).unwrap();
    let tally = Batch::new(&set)?.run("rows", Cursor::new(input.into()), workers, put, |_| {})?;
    let lines = out.split(|byte| *byte == b'\n').filter(|line| !line.is_empty());
    Ok((lines.map(|line| serde_json::from_slice(line).unwrap()).collect(), tally))
}

/// The lines of rows under a header without a mistake.
fn lines(input: impl Into<Vec<u8>>) -> Vec<Value> {
    run(&[], input).unwrap_or_else(|mistakes| panic!("{mistakes}")).0
}

/// Of each line its id and, for an error, the code.
fn outcome(lines: &[Value]) -> Vec<(Value, String)> {
    let code = |line: &Value| line["error"]["code"].as_str().unwrap_or("drafted").to_owned();
    lines.iter().map(|line| (line["id"].clone(), code(line))).collect()
}

/// Compares a text with what people saw before.
fn snapshot(name: &str, text: &str) {
    let mut settings = insta::Settings::clone_current();
    settings.set_snapshot_path(concat!(env!("CARGO_MANIFEST_DIR"), "/snapshots"));
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(|| insta::assert_snapshot!(name, text));
}
