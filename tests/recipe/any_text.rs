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

/// How many mutated recipes are tried: `BREEKS_TRIES=30000` for all that were asked for.
fn tries() -> u32 {
    std::env::var("BREEKS_TRIES").ok().and_then(|tries| tries.parse().ok()).unwrap_or(300)
}

/// Numbers and names of a recipe exchanged for others: it is read or refused, carried out or refused, and drafted or
/// refused, and comes back from each.
#[test]
fn mutated_recipe_drafted_or_refused() {
    use breeks::order::{Order, demo};
    let (order, _) = Order::read(&demo("stroke").expect("a demo")).expect("sound");
    let sources = [include_str!("every_rule.toml"), include_str!("../../blocks/skeletons/men.toml")];
    let words = prop::sample::select(vec![
        "0",
        "-1",
        "0.5",
        "3",
        "12",
        "60",
        "900",
        "1/48 hip",
        "hip",
        "waist",
        "crotch_line",
        "front_fork",
        "crease",
        "front_top",
        "back_top",
        "side",
        "fork",
        "up",
        "down",
        "hip_line",
        "hem_line",
    ]);
    let slip = (0..sources.len(), prop::collection::vec((any::<prop::sample::Index>(), words), 1..4));
    let drafted = std::cell::Cell::new(0_u32);
    check(tries(), slip, |(source, slips)| {
        let mut text = sources[source].to_owned();
        for (place, word) in slips {
            // The places that hold a name, a sum or a number: what stands between quotes, and plain numbers.
            let spots: Vec<std::ops::Range<usize>> = spots(&text);
            let spot = spots[place.index(spots.len())].clone();
            text.replace_range(spot, word);
        }
        let Ok(recipe) = Recipe::parse(&Source::new("any.toml", text.as_str())) else { return };
        if let Ok(draft) = breeks::draft::draft(&order, &std::sync::Arc::new(recipe)) {
            drafted.set(drafted.get() + 1);
            assert!(draft.shape.front.outline().iter().all(|piece| piece.is_finite()), "{text}");
        }
    });
    println!("{} of {} mutated recipes drafted", drafted.get(), tries());
    assert!(drafted.get() > tries() / 20, "too few get as far as a draft: {}", drafted.get());
}

/// What stands between quotes, and plain numbers.
fn spots(text: &str) -> Vec<std::ops::Range<usize>> {
    let mut spots = Vec::new();
    let mut at = 0;
    while let Some(letter) = text[at..].chars().next() {
        let end = if letter == '"' {
            let close = text[at + 1..].find('"').map_or(text.len(), |far| at + 1 + far);
            spots.push(at + 1..close);
            (close + 1).min(text.len())
        } else if letter.is_ascii_digit() {
            let close = text[at..]
                .find(|c: char| !(c.is_ascii_digit() || c == '.'))
                .map_or(text.len(), |far| at + far);
            spots.push(at..close);
            close
        } else {
            at + letter.len_utf8()
        };
        at = end;
    }
    spots
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
        "(",
        ")",
        "half of",
        "in",
        "*",
        ",",
        "extension",
        "é",
        "9999999999999",
    ]);
    let proportion = proptest::collection::vec(words, 0..8).prop_map(|words| words.concat());
    check(1500, proportion, |proportion| take(&SOUND.replace("1/16 hip + 0.5", &proportion)));
}
