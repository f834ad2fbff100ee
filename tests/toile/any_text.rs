//! No text at all makes the reader of reports panic, and hostile text says nothing.

use breeks::toile::{LONGEST_REPORT, Past, rank, read};
use proptest::{
    prelude::*,
    test_runner::{Config, RngSeed},
};

proptest! {
    #![proptest_config(Config { failure_persistence: None, rng_seed: RngSeed::Fixed(7), ..Config::default() })]

    #[test]
    fn any_text_read_and_ranked(text in "\\PC{0,200}") {
        let report = read(&text);
        let ranking = rank(&report, &[], None, &Past::default());
        let sum: f64 = ranking.causes.iter().chain(&ranking.first).map(|it| it.share).sum();
        prop_assert!((sum - 1.0).abs() < 1e-9);
    }

    #[test]
    fn known_words_in_any_order(words in proptest::collection::vec(
        proptest::sample::select(vec![
            "tight", "loose", "front", "back", "thigh", "seat", "crotch", "and", "when", ",", ".", "to", "not", "fine", "sitting",
            "pulled", "up", "left", "hip", "side", "seam", "feet", "apart", "vanish",
        ]), 0..30)) {
        let report = read(&words.join(" "));
        let ranking = rank(&report, &[], None, &Past::default());
        prop_assert!(ranking.causes.iter().all(|it| it.share.is_finite()));
    }
}

#[test]
fn long_text_read_to_its_limit() {
    let report = read(&"tight thigh ".repeat(10_000));
    assert!(report.cut);
    let words: usize = report.seen.iter().map(|seen| seen.words.chars().count()).sum();
    assert!(words <= LONGEST_REPORT);
}

#[test]
fn hostile_text_without_a_sign() {
    for text in ["\u{1b}[2J\u{202e}\u{0}", "", "   ", ".,;:", "\u{feff}\u{200b}"] {
        assert!(!read(text).says_something(), "{text:?}");
    }
}
