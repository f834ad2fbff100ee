//! Order and count over many rows, one in a hundred broken.

use std::fmt::Write;

use serde_json::{Value, json};

use crate::{outcome, run};

/// The rows: 50,000 where the build is fast; in a debug build fewer, unless `BREEKS_ROWS` says how many.
fn count() -> usize {
    let asked = std::env::var("BREEKS_ROWS").ok().and_then(|text| text.parse().ok());
    asked.unwrap_or(if cfg!(debug_assertions) { 2_000 } else { 50_000 })
}

/// The line of 100 megabytes has a test of its own: this one is only longer than what is read.
fn longest() -> String {
    "x".repeat(300_000)
}

/// A row, what is to come of it, and whether its id can be read.
fn json_row(n: usize) -> (String, &'static str, bool) {
    let hip = 90 + n % 21;
    let good =
        format!("{{\"id\":{n},\"sex\":\"female\",\"waist_girth\":74,\"hip_girth\":{hip},\"stature\":169}}");
    if n % 100 != 7 {
        return (good, "drafted", true);
    }
    match n / 100 % 10 {
        0 => (good.replace("169}", ""), "not-json", true),
        1 => (format!("{{\"id\":{n},\"waist_girth\":74,\"stature\":169}}"), "missing-measurement", true),
        2 => (good.replace("169", "1690"), "not-a-body", true),
        3 => (good.replace(&format!("\"id\":{n},"), ""), "no-id", false),
        4 if n % 1000 == 407 && n < 3000 => (good.replace("female", &longest()), "too-long", false),
        4 => (good.replace("female", "weiblich"), "bad-value", true),
        // read and drafted, though they look odd
        5 => (format!("\n\r\n{good}\r"), "drafted", true),
        6 => (good.replace("\"sex\"", "\"name\":\"Schlägerin 裤\",\"sex\""), "drafted", true),
        7 => (good.replace("hip_girth", "hip_girht"), "unknown-key", true),
        8 => ("\"just text\"".to_owned(), "not-json", false),
        _ => (good.replace("101", "\"101 cm\""), "drafted", true),
    }
}

fn csv_row(n: usize) -> (String, &'static str, bool) {
    let hip = 90 + n % 21;
    let good = format!("{n},female,74,{hip},169,");
    if n % 100 != 7 {
        return (good, "drafted", true);
    }
    match n / 100 % 10 {
        0 => (format!("{n},female,74"), "wrong-columns", true),
        1 => (format!("{n},,74,,169,"), "missing-measurement", true),
        2 => (format!("{n},,74,{hip},1690,"), "not-a-body", true),
        3 => (format!(",female,74,{hip},169,"), "no-id", false),
        4 if n % 1000 == 407 && n < 3000 => (format!("{n},{},74", longest()), "too-long", false),
        4 => (good.replace("female", "weiblich"), "bad-value", true),
        5 => (format!("\n\r\n{good}\r"), "drafted", true),
        6 => (format!("{good}Schlägerin 裤"), "drafted", true),
        7 => (format!("{good},,,"), "wrong-columns", true),
        8 => (format!("{good}\"a\nb\""), "bad-value", true),
        _ => (format!("{n},female,\"74 cm\",{hip},\"66 1/2 in\","), "drafted", true),
    }
}

fn kept(header: &str, row: impl Fn(usize) -> (String, &'static str, bool), id: impl Fn(usize) -> Value) {
    let count = count();
    let mut input = header.to_owned();
    let mut expected = Vec::new();
    for n in 0..count {
        // two rows in a hundred share an id
        let (text, code, has_id) = row(if n % 100 == 50 { n - 1 } else { n });
        writeln!(input, "{text}").unwrap();
        let shown = if has_id { id(if n % 100 == 50 { n - 1 } else { n }) } else { Value::Null };
        expected.push((shown, code.to_owned()));
    }
    let (lines, tally) = run(&[], input).unwrap();
    let found = outcome(&lines);
    assert_eq!(found.len(), count);
    for (n, (found, expected)) in found.iter().zip(&expected).enumerate() {
        assert_eq!(found, expected, "row {n}");
    }
    let failed = expected.iter().filter(|(_, code)| code != "drafted").count() as u64;
    assert_eq!((tally.drafted, tally.failed), (count as u64 - failed, failed));
}

#[test]
fn order_and_count_of_json_rows_kept() {
    kept("", json_row, |n| json!(n));
}

#[test]
fn order_and_count_of_csv_rows_kept() {
    kept("id,sex,waist_girth,hip_girth,stature,name\n", csv_row, |n| json!(n.to_string()));
}
