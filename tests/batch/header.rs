//! A CSV file whose header is wrong is refused as a whole, before anything is drafted.

use crate::{run, snapshot};

fn refused(input: &str) -> String {
    run(&[], input).expect_err("a wrong header").to_string()
}

#[test]
fn every_mistake_of_a_header_at_its_column() {
    snapshot(
        "batch_header_mistakes",
        &refused("id,hip_girth,hips,id,measurements.hip_girth,\n1,2,3,4,5,6\n"),
    );
}

#[test]
fn header_without_id() {
    snapshot("batch_header_without_id", &refused("waist_girth,hip_girth\n"));
}

#[test]
fn table_parted_by_semicolons() {
    snapshot("batch_header_semicolons", &refused("id;hip_girth;waist_girth\n1;2;3\n"));
}

#[test]
fn list_of_objects() {
    snapshot("batch_header_list", &refused("[{\"id\":1}]"));
}

#[test]
fn utf_16_text() {
    let text: Vec<u8> = "\u{feff}id,hip_girth\n".encode_utf16().flat_map(u16::to_le_bytes).collect();
    snapshot("batch_header_utf_16", &run(&[], text).unwrap_err().to_string());
}

#[test]
fn endless_header() {
    snapshot("batch_header_endless", &refused(&"id,".repeat(40_000)));
}

#[test]
fn wrong_option_before_any_row() {
    snapshot("batch_header_option", &run(&["hip=100"], "").unwrap_err().to_string());
}

#[test]
fn nothing_out_of_nothing() {
    for input in ["", "\n\n", "\u{feff}", "id,hip_girth\n"] {
        let (lines, tally) = run(&[], input).unwrap();
        assert!(lines.is_empty());
        assert_eq!((tally.drafted, tally.failed), (0, 0));
    }
}
