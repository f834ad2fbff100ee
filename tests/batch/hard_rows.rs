//! Rows as they come from the world: each gives one line, and the rows after it are drafted all the same.

use breeks::{
    answer::batch::{Code, LONGEST_ROW},
    terms::Word,
};
use serde_json::{Value, json};

use crate::{lines, outcome, run, snapshot};

const GOOD: &str = r#"{"id":"good","waist_girth":74,"hip_girth":101.5,"stature":169}"#;

/// The one outcome of a row of JSON between two good ones.
fn of_json(row: &[u8]) -> (Value, String) {
    let input = [GOOD.as_bytes(), b"\n", row, b"\n", GOOD.as_bytes()].concat();
    let outcomes = outcome(&lines(input));
    assert_eq!(outcomes.len(), 3, "{outcomes:?}");
    assert_eq!((&outcomes[0].1[..], &outcomes[2].1[..]), ("drafted", "drafted"));
    outcomes[1].clone()
}

/// The one outcome of a row of CSV between two good ones.
fn of_csv(row: &[u8]) -> (Value, String) {
    let header = b"id,waist_girth,hip_girth,stature,thigh_girth,name,trousers.block\n";
    let good = b"good,74,101.5,169,,,\n";
    let outcomes = outcome(&lines([header.as_slice(), good, row, b"\n", good].concat()));
    assert_eq!(outcomes.len(), 3, "{outcomes:?}");
    assert_eq!((&outcomes[0].1[..], &outcomes[2].1[..]), ("drafted", "drafted"));
    outcomes[1].clone()
}

/// Rows of JSON with the id and the code that each earns, one at least for every code that JSON can earn.
fn broken_json() -> Vec<(&'static [u8], Value, &'static str)> {
    vec![
        (b"{\"id\":1,\"hip_girth\":}", json!(1), "not-json"),
        (b"{\"id\":1} {}", json!(1), "not-json"),
        (b"[1, 2]", Value::Null, "not-json"),
        (b"{\"id\":1,\"name\":\"\xff\"}", Value::Null, "not-text"),
        (b"{\"hip_girth\":100}", Value::Null, "no-id"),
        (b"{\"id\":[1],\"hip_girth\":100}", Value::Null, "no-id"),
        (b"{\"id\":2,\"hips\":100}", json!(2), "unknown-key"),
        (b"{\"id\":2,\"hip_girth\":\"wide\"}", json!(2), "bad-value"),
        (b"{\"id\":2,\"hip_girth\":99,\"measurements.hip_girth\":99}", json!(2), "bad-value"),
        (b"{\"id\":2,\"hip_girth\":99}", json!(2), "missing-measurement"),
        (b"{\"id\":2,\"waist_girth\":74,\"hip_girth\":9.9,\"stature\":169}", json!(2), "not-a-body"),
        (
            b"{\"id\":2,\"waist_girth\":74,\"hip_girth\":99,\"stature\":169,\"block\":\"none\"}",
            json!(2),
            "unknown-block",
        ),
    ]
}

fn is(outcome: (Value, String), id: Value, code: &str) {
    assert_eq!(outcome, (id, code.to_owned()));
}

#[test]
fn every_code_from_a_row_that_earns_it() {
    for (row, id, code) in broken_json() {
        is(of_json(row), id, code);
    }
    is(of_csv(b"2,74,101.5"), json!("2"), "wrong-columns");
    is(of_csv(b",74,101.5,169,,,"), Value::Null, "no-id");
}

#[test]
fn words_of_every_error() {
    let rows: Vec<&[u8]> = broken_json().into_iter().map(|(row, ..)| row).collect();
    let input = [b"{\"id\":0}", rows.join(&b'\n').as_slice()].join(&b'\n');
    let texts: Vec<String> = lines(input).iter().map(|line| line["error"].to_string()).collect();
    snapshot("batch_errors", &texts.join("\n"));
}

#[test]
fn codes_as_documented() {
    assert_eq!(
        Code::KEYS,
        [
            "too-long",
            "not-text",
            "not-json",
            "wrong-columns",
            "no-id",
            "unknown-key",
            "bad-value",
            "missing-measurement",
            "not-a-body",
            "unknown-block",
            "not-drafted",
            "defect",
        ]
    );
}

#[test]
fn line_of_100_megabytes_refused_in_json() {
    let mut row = b"{\"id\":1,\"name\":\"".to_vec();
    row.resize(100_000_000, b'x');
    row.extend(b"\"}");
    is(of_json(&row), Value::Null, "too-long");
}

#[test]
fn line_of_100_megabytes_refused_in_csv() {
    let mut row = b"1,\"".to_vec();
    row.resize(100_000_000, b'"');
    is(of_csv(&row), Value::Null, "too-long");
}

#[test]
fn longest_row_still_read() {
    let mut row = b"{\"id\":1".to_vec();
    row.resize(LONGEST_ROW - 1, b' ');
    row.push(b'}');
    is(of_json(&row), json!(1), "missing-measurement");
    row.insert(10, b' ');
    is(of_json(&row), Value::Null, "too-long");
}

#[test]
fn ids_of_one_name_both_drafted() {
    let outcomes = outcome(&lines([GOOD, GOOD].join("\n")));
    assert_eq!(outcomes, [(json!("good"), "drafted".to_owned()), (json!("good"), "drafted".to_owned())]);
}

#[test]
fn id_handed_back_letter_by_letter() {
    for id in ["0", "-7", "1.50", "12345678901234567890123", r#""007""#, r#""\u00e9 \"x\"""#, r#""é 裤 🚣""#]
    {
        let row = GOOD.replace("\"good\"", id);
        let mut out = Vec::new();
        let batch = breeks::answer::batch::Batch::new(&[]).unwrap();
        let put = |lines: &[u8]| {
            out.extend_from_slice(lines);
            Ok(())
        };
        batch.run("rows", std::io::Cursor::new(row), std::num::NonZeroUsize::MIN, put, |_| {}).unwrap();
        let line = String::from_utf8(out).unwrap();
        assert!(line.starts_with(&format!("{{\"id\":{id},\"format\":")), "{line}");
    }
}

#[test]
fn id_that_no_reader_could_read_refused() {
    for id in ["1e400", r#""\ud800""#, r#""""#, r#"" ""#, "true", "{}"] {
        let row = format!("{{\"id\":{id},\"waist_girth\":74,\"hip_girth\":101.5,\"stature\":169}}");
        is(of_json(row.as_bytes()), Value::Null, "no-id");
    }
}

#[test]
fn id_of_csv_as_text() {
    let line = &lines("id,waist_girth,hip_girth,stature\n007,74,101.5,169\n")[0];
    assert_eq!(line["id"], "007");
}

#[test]
fn mark_line_ends_and_empty_lines_without_a_line_of_their_own() {
    let csv =
        "\u{feff}\r\n id , waist_girth,hip_girth,stature\r\n\r\n1,74,101.5,169\r\n  \r\n\n2,74,101.5,169";
    assert_eq!(outcome(&lines(csv)).len(), 2);
    let json = format!("\u{feff}\n{GOOD}\r\n\r\n   \n{GOOD}\r\n");
    assert_eq!(outcome(&lines(json)).len(), 2);
}

#[test]
fn quoted_line_end_in_one_row() {
    is(of_csv(b"\"a, \"\"b\"\"\r\nc\",74,101.5,169,,,"), json!("a, \"b\"\r\nc"), "drafted");
}

#[test]
fn unicode_name_on_the_draft() {
    let line = &lines("id,waist_girth,hip_girth,stature,name\n1,74,101.5,169,Schlagfrau é 裤\n")[0];
    assert_eq!(line["name"], "Schlagfrau é 裤");
}

#[test]
fn empty_cell_and_null_as_not_given() {
    is(of_csv(b"1,74,101.5,169,\" \",,"), json!("1"), "drafted");
    is(
        of_json(br#"{"id":1,"waist_girth":74,"hip_girth":101.5,"stature":169,"thigh_girth":null}"#),
        json!(1),
        "drafted",
    );
}

#[test]
fn file_named_as_block_by_a_row_never_opened() {
    for block in ["/etc/hostname", "blocks/classic.toml", "../classic"] {
        is(of_csv(format!("1,74,101.5,169,,,{block}").as_bytes()), json!("1"), "unknown-block");
    }
}

#[test]
fn file_named_as_block_by_an_option_drafted_by() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/blocks/classic.toml");
    let option = format!("trousers.block={path}");
    let (lines, _) = run(&[option.as_str()], GOOD).unwrap();
    assert_eq!(lines[0]["block"], "classic");
}

#[test]
fn option_over_every_row() {
    let row = GOOD.replace("\"hip_girth\":101.5", "\"hip_girth\":90");
    let (lines, _) = run(&["measurements.hip_girth=101.5"], row).unwrap();
    assert_eq!(lines[0]["body"]["hip_girth"]["value"], 101.5);
}

#[test]
fn lengths_with_units_as_in_a_file() {
    let csv = "id,units,waist_girth,hip_girth,stature\n1,inch,29,\"40 in\",\"5½ in\"\n2,inch,29,40,169 cm\n";
    let lines = lines(csv);
    assert_eq!(lines[0]["error"]["code"], "not-a-body");
    assert_eq!(lines[1]["body"]["hip_girth"]["value"], 101.6);
    assert_eq!(lines[1]["body"]["stature"]["value"], 169.0);
}

#[test]
fn row_without_id_named_by_its_line() {
    let lines = lines(format!("{GOOD}\n\n{{\"hip_girth\":100}}\n"));
    let text = lines[1]["error"]["text"].as_str().unwrap();
    assert_eq!(text, "line 3: `id` is missing");
}

#[test]
fn row_of_nothing_but_slips_in_a_short_line() {
    let cells: Vec<String> = (0..6000).map(|n| format!("\"ask.a{n}\":true")).collect();
    let lines = lines(
        format!("{{\"id\":1,{}", cells.join(",")).chars().take(LONGEST_ROW - 20).collect::<String>() + "}",
    );
    assert!(lines[0].to_string().len() < 2000);
}
