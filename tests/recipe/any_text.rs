//! Whatever text is handed over, reading answers and never panics; what it reads can be carried out or is refused.

use breeks::{mistake::Source, recipe::Recipe};
use proptest::{
    prelude::*,
    test_runner::{Config, RngAlgorithm, TestRng, TestRunner},
};

use super::{SOUND, body};

/// Runs a property over the same cases every time, and keeps no folder of failures.
pub(crate) fn check<S: Strategy>(cases: u32, strategy: S, property: impl Fn(S::Value)) {
    let config = Config { cases, failure_persistence: None, ..Config::default() };
    let mut runner = TestRunner::new_with_rng(config, TestRng::from_seed(RngAlgorithm::ChaCha, &[7; 32]));
    let outcome = runner.run(&strategy, |value| {
        property(value);
        Ok(())
    });
    outcome.unwrap_or_else(|failure| panic!("{failure}"));
}

fn take(text: &str) {
    match Recipe::parse(&Source::new("any.toml", text)) {
        Ok(recipe) => {
            if let Err(mistake) = recipe.construct(&body()) {
                assert!(!mistake.to_string().is_empty());
            }
        }
        Err(mistakes) => {
            assert!(mistakes.iter().len() > 0 && !mistakes.to_string().is_empty());
        }
    }
}

#[test]
fn any_bytes_answered() {
    check(300, proptest::collection::vec(any::<u8>(), 0..400), |bytes| {
        take(&String::from_utf8_lossy(&bytes))
    });
}

#[test]
fn any_front_table_answered() {
    check(300, "\\[front\\]\n(\\PC{0,20}\n){0,8}", |text| take(&text));
}

#[test]
fn sound_recipe_with_a_stretch_overwritten_answered() {
    let stretch = (0..SOUND.len(), 0..40usize, "\\PC{0,12}");
    check(1500, stretch, |(from, length, slip)| {
        let end = (from + length).min(SOUND.len());
        // The sound recipe is plain ASCII, so that every byte is a place to cut.
        take(&format!("{}{slip}{}", &SOUND[..from], &SOUND[end..]));
    });
}

#[test]
fn sound_recipe_with_any_proportion_answered() {
    let words = proptest::sample::select(vec![
        "1/16",
        "hip",
        " ",
        "+",
        "-",
        "0.5",
        "1",
        "/",
        ".",
        "½",
        "extension",
        "é",
        "9999999999999",
    ]);
    let proportion = proptest::collection::vec(words, 0..8).prop_map(|words| words.concat());
    check(1500, proportion, |proportion| take(&SOUND.replace("1/16 hip + 0.5", &proportion)));
}
