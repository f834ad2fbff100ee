//! Everything at once: what was said and tested, the ranking, the test that is next, the change that is next.

use std::sync::Arc;

use super::{
    advice::{Advice, advise},
    amount::Pinned,
    rank::{Ranking, rank},
    record::Past,
    said::Report,
    separate::{Separation, separate},
};
use crate::{fit::Legs, mistake::Mistakes, order::Order, recipe::Recipe, terms::Side};

/// What a toile is judged from.
#[derive(Clone, Debug)]
pub struct Toile {
    /// What was seen.
    pub report: Report,
    /// Results of tests: the test's key and the result's.
    pub tested: Vec<(String, String)>,
    /// The leg it is of.
    pub side: Side,
    /// What was pinned on the body, cm.
    pub pinned: Pinned,
    /// The toiles before it.
    pub past: Past,
}

/// A toile judged.
#[derive(Clone, Debug)]
pub struct Judgement {
    /// What it was judged from.
    pub toile: Toile,
    /// The ranking.
    pub ranking: Ranking,
    /// The test that tells most.
    pub test: Option<Separation>,
    /// The next change; `None` where signs contradict each other: then the test comes first.
    pub advice: Option<Advice>,
    /// Whether the change may be taken without another test.
    pub clear: bool,
}

/// A cause with this share of all stands clear.
const MOST: f64 = 0.45;
/// Or with this share, if the second is behind it by the factor.
const MUCH: (f64, f64) = (0.25, 1.7);

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
    let test = separate(&ranking, &toile.tested, stands_out && ranking.torn.is_none());
    let torn = ranking.torn.is_some() && toile.tested.is_empty();
    let advice = if torn {
        None
    } else {
        Some(advise(&ranking, order, recipe, legs, toile.side, toile.pinned, &toile.past)?)
    };
    let undone = advice.as_ref().is_some_and(|advice| advice.cause.is_none() && !advice.moves.is_empty());
    let clear = undone || (!torn && (stands_out || test.is_none()));
    Ok(Judgement { toile, ranking, test, advice, clear })
}
