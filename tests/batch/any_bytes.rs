//! Whatever bytes come in: no panic, one line a row.

use breeks::answer::batch::LONGEST_ROW;
use proptest::{
    prelude::*,
    test_runner::{Config, RngAlgorithm, RngSeed, TestRunner},
};

use crate::run;

fn runner() -> TestRunner {
    TestRunner::new(Config {
        cases: 400,
        failure_persistence: None,
        rng_algorithm: RngAlgorithm::ChaCha,
        rng_seed: RngSeed::Fixed(5),
        ..Config::default()
    })
}

/// Rows that are near to sense, and rows that are not.
fn row() -> impl Strategy<Value = Vec<u8>> {
    let key = proptest::sample::select(vec![
        "id",
        "sex",
        "units",
        "hip_girth",
        "measurements.waist_girth",
        "stature",
        "thigh.front",
        "left.thigh.front",
        "hip.uneven",
        "ask.belt_width",
        "block",
        "name",
        "x",
        "",
    ]);
    let value = proptest::sample::select(vec![
        "74",
        "101.5",
        "169",
        "1e400",
        "-0",
        "\"female\"",
        "\"inch\"",
        "\"31 1/2\"",
        "null",
        "true",
        "[{}]",
        "{\"a\":[1]}",
        "\"\\ud800\"",
        "\"\u{0}\"",
        "",
    ]);
    let object = proptest::collection::vec((key, value), 0..8).prop_map(|cells| {
        let cells: Vec<String> = cells.iter().map(|(key, value)| format!("\"{key}\":{value}")).collect();
        format!("{{{}}}", cells.join(",")).into_bytes()
    });
    let csv = proptest::collection::vec("[0-9a-z .½\"/-]{0,8}", 0..6)
        .prop_map(|cells| cells.join(",").into_bytes());
    prop_oneof![
        4 => object,
        4 => csv,
        3 => proptest::collection::vec(any::<u8>(), 0..60),
        1 => (LONGEST_ROW - 3..LONGEST_ROW + 3).prop_map(|length| vec![b'x'; length]),
    ]
}

fn is_blank(line: &[u8]) -> bool {
    line.trim_ascii().is_empty()
}

#[test]
fn one_line_for_each_row_of_any_ndjson() {
    runner()
        .run(&proptest::collection::vec(row(), 0..12), |rows| {
            let mut input = b"{\"id\":0}\n".to_vec();
            input.extend(rows.join(&b'\n'));
            let expected = input.split(|byte| *byte == b'\n').filter(|line| !is_blank(line)).count();
            let (lines, tally) =
                run(&[], input).map_err(|mistakes| TestCaseError::fail(mistakes.to_string()))?;
            prop_assert_eq!(lines.len(), expected);
            prop_assert_eq!(tally.drafted + tally.failed, expected as u64);
            prop_assert!(lines.iter().all(|line| line.get("id").is_some()));
            Ok(())
        })
        .unwrap();
}

#[test]
fn one_line_for_each_row_of_any_csv() {
    runner()
        .run(&proptest::collection::vec(row(), 0..12), |rows| {
            let mut input = b"id,sex,hip_girth,waist_girth,stature,thigh.front\n0\n".to_vec();
            input.extend(rows.join(&b'\n'));
            // a quotation mark may join lines to one row: then there are only bounds
            let has_marks = input.contains(&b'"');
            let lines_in =
                input.split(|byte| matches!(byte, b'\n' | b'\r')).filter(|line| !is_blank(line)).count() - 1;
            let (lines, tally) =
                run(&[], input).map_err(|mistakes| TestCaseError::fail(mistakes.to_string()))?;
            prop_assert_eq!(lines.len() as u64, tally.drafted + tally.failed);
            prop_assert!(
                !lines.is_empty() && (lines.len() == lines_in || has_marks),
                "{} {}",
                lines.len(),
                lines_in
            );
            Ok(())
        })
        .unwrap();
}

#[test]
fn no_panic_on_any_bytes_at_all() {
    runner()
        .run(&proptest::collection::vec(any::<u8>(), 0..300), |bytes| {
            // a header may be refused; whatever is put is whole lines of JSON
            let _ = run(&[], bytes);
            Ok(())
        })
        .unwrap();
}
