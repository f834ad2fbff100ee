//! The one quick test that tells most about which of the likely causes it is.

use super::{
    knowledge::{CauseId, Quick, QuickResult, knowledge},
    rank::{Ranked, Ranking, chance},
    weights::WEIGHTS,
};

/// A test worth doing.
#[derive(Clone, Debug)]
pub struct Separation {
    /// The test.
    pub test: &'static Quick,
    /// How much it is expected to tell, bits.
    pub gain: f64,
    /// What may come of it, and the likeliest of the causes it would speak for.
    pub results: Vec<(&'static QuickResult, CauseId)>,
}

/// A test that is expected to tell less is not worth doing, bits.
const WORTH: f64 = 0.15;
/// The same where one cause stands clear.
const WORTH_WHEN_CLEAR: f64 = 0.3;
/// What unpicking a seam is worth against looking, pinning and moving.
const UNPICKED: f64 = 0.6;

/// The test that tells most of those not done yet; `None` where none tells enough. Where one cause stands clear already, a
/// test has to tell more to be worth doing.
pub fn separate(ranking: &Ranking, done: &[(String, String)], clear: bool) -> Option<Separation> {
    let shares: Vec<&Ranked> = ranking.causes.iter().chain(&ranking.first).collect();
    let contending = contending(ranking);
    let best = knowledge()
        .tests
        .iter()
        .filter(|test| !done.iter().any(|(key, _)| *key == test.key))
        .map(|test| (gain(test, &contending), test))
        .max_by(|a, b| worth(a).total_cmp(&worth(b)))?;
    let least = if clear { WORTH_WHEN_CLEAR } else { WORTH };
    (best.0 >= least).then(|| Separation { test: best.1, gain: best.0, results: outcomes(best.1, &shares) })
}

/// The causes between which a test has to decide: the likeliest, and what is not far behind, with their shares of these.
fn contending(ranking: &Ranking) -> Vec<(CauseId, f64)> {
    /// So much of the likeliest one's share.
    const NEAR: f64 = 0.3;
    /// And no more of them.
    const MOST: usize = 5;
    let mut all: Vec<(CauseId, f64)> =
        ranking.causes.iter().chain(&ranking.first).map(|it| (it.cause, it.share)).collect();
    all.sort_by(|a, b| b.1.total_cmp(&a.1));
    let top = all.first().map_or(0.0, |it| it.1);
    let near = all.iter().take(MOST).filter(|it| it.1 >= NEAR * top).count();
    all.truncate(near.max(2));
    let sum: f64 = all.iter().map(|it| it.1).sum();
    all.iter_mut().for_each(|it| it.1 /= sum);
    all
}

/// What a test tells, less where a seam has to be unpicked for it.
fn worth((gain, test): &(f64, &Quick)) -> f64 {
    if test.unpicks { UNPICKED * gain } else { *gain }
}

fn entropy(shares: impl Iterator<Item = f64>) -> f64 {
    shares.filter(|share| *share > 0.0).map(|share| -share * share.log2()).sum()
}

/// What is known after a test more than before it, on the average of its results.
fn gain(test: &Quick, shares: &[(CauseId, f64)]) -> f64 {
    let before = entropy(shares.iter().map(|it| it.1));
    let after: f64 = (0..test.results.len())
        .map(|result| {
            let joint: Vec<f64> =
                shares.iter().map(|it| it.1 * chance(test, result, it.0, &WEIGHTS)).collect();
            let sum: f64 = joint.iter().sum();
            sum * entropy(joint.iter().map(|share| share / sum))
        })
        .sum();
    before - after
}

/// The likeliest of the causes that each result speaks for.
fn outcomes(test: &'static Quick, shares: &[&Ranked]) -> Vec<(&'static QuickResult, CauseId)> {
    test.results
        .iter()
        .enumerate()
        .filter_map(|(at, result)| {
            let then = |it: &&&Ranked| it.share * chance(test, at, it.cause, &WEIGHTS);
            let spoken_for = shares.iter().filter(|it| result.speaks_for.contains(&it.cause));
            let first = spoken_for.max_by(|a, b| then(a).total_cmp(&then(b)))?;
            Some((result, first.cause))
        })
        .collect()
}
