//! Everything at once: what was said and tested, the ranking, the test that is next, the change that is next.

use std::sync::Arc;

use super::{
    advice::{Advice, advise},
    amount::Pinned,
    knowledge::knowledge,
    rank::{Ranked, Ranking, rank},
    record::{Past, Since},
    said::Heard,
    separate::{Separation, separate},
};
use crate::{
    fit::Legs,
    mistake::Mistakes,
    order::Order,
    recipe::Recipe,
    terms::{Side, words},
};

/// What a toile is judged from.
#[derive(Clone, Debug)]
pub struct Toile {
    /// What was seen, as it was read.
    pub report: Heard,
    /// The same as it was told.
    pub told: Vec<String>,
    /// Results of tests: the test's key and the result's.
    pub tested: Vec<(String, String)>,
    /// The leg it is of.
    pub side: Side,
    /// What was pinned on the body, cm.
    pub pinned: Pinned,
    /// The toiles before it.
    pub past: Past,
}

impl Toile {
    /// Whether anything was said of it.
    pub fn says_something(&self) -> bool {
        self.report.says_something()
            || !self.report.open.is_empty()
            || !self.tested.is_empty()
            || self.past.since == Some(Since::Worse)
    }
}

words! {
    /// What comes of a judged toile.
    Outcome {
        /// A change, or what to measure before one.
        Change = "change",
        /// A test comes first: [`Doubt`] says why.
        Test = "test",
        /// It waits for an answer: what was told does not say enough.
        Waits = "waits",
        /// Nothing that was told asks for a change.
        Nothing = "nothing",
        /// All of it fits.
        Fits = "fits",
    }
}

words! {
    /// Why no change is advised before a test.
    Doubt {
        /// The signs contradict each other.
        Torn = "torn",
        /// The two likeliest causes ask for opposite changes.
        Opposite = "opposite",
        /// The likeliest cause is a guess.
        Guess = "guess",
    }
}

/// A toile judged.
#[derive(Clone, Debug)]
pub struct Judgement {
    /// What it was judged from.
    pub toile: Toile,
    /// What comes of it.
    pub outcome: Outcome,
    /// Why a test comes before a change.
    pub doubt: Option<Doubt>,
    /// The ranking.
    pub ranking: Ranking,
    /// The test that tells most.
    pub test: Option<Separation>,
    /// The next change; `None` where a test comes first.
    pub advice: Option<Advice>,
    /// Whether the change may be taken without another test.
    pub clear: bool,
}

/// A cause with this share of all stands clear.
const MOST: f64 = 0.45;
/// Or with this share, if the second is behind it by the factor.
const MUCH: (f64, f64) = (0.25, 1.7);

/// The likeliest cause with less is a guess.
const GUESS: f64 = 0.2;
/// Of two opposite changes the second is as good as the first from this part of its share on.
const AS_GOOD: f64 = 0.5;

/// Why a change should wait for a test.
fn doubt(ranking: &Ranking, toile: &Toile) -> Option<Doubt> {
    if ranking.torn.is_some() && toile.tested.is_empty() {
        return Some(Doubt::Torn);
    }
    // a change that made it worse is taken back whatever the cause
    if toile.past.since == Some(Since::Worse) {
        return None;
    }
    let first = ranking.causes.first()?;
    let changes = |it: &Ranked| &knowledge().of(it.cause).change;
    let opposite = ranking.causes.get(1).is_some_and(|second| {
        second.share >= AS_GOOD * first.share
            && changes(first).iter().any(|one| {
                changes(second).iter().any(|other| one.target == other.target && one.more != other.more)
            })
    });
    match () {
        () if opposite => Some(Doubt::Opposite),
        () if first.share < GUESS => Some(Doubt::Guess),
        () => None,
    }
}

/// Judges a toile of the trousers that were drafted.
///
/// # Errors
/// As [`advise`].
pub fn judge(toile: Toile, order: &Order, recipe: &Arc<Recipe>, legs: &Legs) -> Result<Judgement, Mistakes> {
    let ranking = rank(&toile.report, &toile.tested, Some(legs.of(toile.side)), &toile.past);
    let stands_out = match ranking.causes.as_slice() {
        [first, second, ..] => {
            first.share >= MOST || (first.share >= MUCH.0 && first.share >= MUCH.1 * second.share)
        }
        _ => true,
    };
    let doubt = doubt(&ranking, &toile);
    let test = separate(&ranking, &toile.tested, stands_out && ranking.torn.is_none() && doubt.is_none());
    // what only waits for its answer, or is only denied, asks for nothing yet
    let asks =
        toile.report.asks_for_change() || !toile.tested.is_empty() || toile.past.since == Some(Since::Worse);
    let outcome = match () {
        () if toile.report.fits && !asks => Outcome::Fits,
        () if !asks && !toile.report.open.is_empty() => Outcome::Waits,
        () if !asks => Outcome::Nothing,
        () if doubt.is_some() => Outcome::Test,
        () => Outcome::Change,
    };
    let advice = match outcome {
        Outcome::Change => Some(advise(&ranking, order, recipe, legs, &toile)?),
        _ => None,
    };
    let undone = advice.as_ref().is_some_and(|advice| advice.cause.is_none() && !advice.moves.is_empty());
    let clear = undone || (outcome == Outcome::Change && (stands_out || test.is_none()));
    Ok(Judgement { toile, outcome, doubt, ranking, test, advice, clear })
}
