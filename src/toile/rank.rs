//! Causes ranked from all signs together, the draft's numbers, the tests and the record.
//!
//! Each sign speaks for or against a fault by how much oftener that fault shows it than faults do on the whole; how often
//! is counted in the list of faults itself. One sign never kills a fault, since people mistake a sign now and then. A
//! fault's share goes to its causes, the likeliest first.

use std::sync::LazyLock;

use super::{
    evidence::{Evidence, evidence},
    knowledge::{CauseId, Fault, Knowledge, Known, Quick, knowledge},
    record::Past,
    said,
    sign::{Face, Lines, Place, Sign, When},
    weights::{Alike, WEIGHTS, Weights},
};
use crate::{
    fit::Leg,
    terms::{HowMuch, Word},
};

/// Everything that is known of a toile, ranked.
#[derive(Clone, Debug)]
pub struct Ranking {
    /// What is looked at before anything of the pattern is changed, the likeliest first.
    pub first: Vec<Ranked>,
    /// What the pattern lacks, the likeliest first.
    pub causes: Vec<Ranked>,
    /// The faults of which these are the signs, the likeliest first, with their shares.
    pub faults: Vec<(&'static Fault, f64)>,
    /// Two signs, by their places in the report, that do not go together.
    pub torn: Option<(usize, usize)>,
}

/// A cause with its share and its reasons.
#[derive(Clone, Debug)]
pub struct Ranked {
    /// The cause.
    pub cause: CauseId,
    /// Its share of all, 0 to 1.
    pub share: f64,
    /// The share that the signs alone would give it.
    pub by_signs: f64,
    /// Signs that speak for it: the place in the report, and the fault of which it is a sign.
    pub signs: Vec<(usize, &'static Fault)>,
    /// Numbers of the draft.
    pub numbers: Vec<Evidence>,
    /// Tests: the test, the result, and whether it speaks for this cause.
    pub tests: Vec<(&'static Quick, usize, bool)>,
    /// What the record says of it.
    pub worse: bool,
}

/// How well a cause fits, in words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// Half of everything or more.
    Best,
    /// A fifth or more.
    Well,
    /// Less.
    Possible,
}

impl Ranked {
    /// How well it fits, in words.
    pub fn standing(&self) -> Standing {
        match self.share {
            share if share >= 0.5 => Standing::Best,
            share if share >= 0.2 => Standing::Well,
            _ => Standing::Possible,
        }
    }
}

/// A sign that speaks for a fault by less is no reason for it.
const SPEAKS: f64 = 0.7;

/// How often each word stands in the signs of all faults.
struct Background {
    at: Vec<f64>,
    face: Vec<f64>,
    feel: Vec<f64>,
    lines: Vec<f64>,
    does: Vec<f64>,
    when: Vec<f64>,
    to: Vec<f64>,
}

fn background() -> &'static Background {
    static COUNTED: LazyLock<Background> = LazyLock::new(|| {
        let signs: Vec<&Sign> =
            knowledge().faults.iter().flat_map(|fault| fault.seen.iter().map(|it| &it.sign)).collect();
        Background {
            at: counted(signs.iter().map(|sign| sign.at)),
            face: counted(signs.iter().map(|sign| sign.face)),
            feel: counted(signs.iter().map(|sign| sign.feel)),
            lines: counted(signs.iter().map(|sign| sign.lines)),
            does: counted(signs.iter().map(|sign| sign.does)),
            when: counted(signs.iter().map(|sign| sign.when)),
            to: counted(signs.iter().map(|sign| sign.to)),
        }
    });
    &COUNTED
}

/// The share of each word among the signs that have one; one more each, so that none is nothing.
fn counted<W: Word>(said: impl Iterator<Item = Option<W>>) -> Vec<f64> {
    let mut counts = vec![1.0; W::ALL.len()];
    for word in said.flatten() {
        if let Some(at) = W::ALL.iter().position(|known| *known == word) {
            counts[at] += 1.0;
        }
    }
    let sum: f64 = counts.iter().sum();
    counts.into_iter().map(|count| count / sum).collect()
}

/// How like a told word is to a known one.
enum Like {
    Same,
    Near,
    Other,
}

/// The logarithm of the odds that a word gives.
fn odds<W: Word>(
    (said, known): (Option<W>, Option<W>),
    shares: &[f64],
    weights: &Alike,
    like: impl Fn(W, W) -> Like,
) -> f64 {
    let (said, known) = match (said, known) {
        (Some(said), Some(known)) => (said, known),
        (Some(_), None) => return weights.open,
        (None, Some(_)) => return weights.unsaid,
        (None, None) => return 0.0,
    };
    let share = W::ALL.iter().position(|word| *word == said).map_or(0.1, |at| shares[at]);
    let chance = match like(said, known) {
        Like::Same => weights.same,
        Like::Near => weights.near,
        Like::Other => weights.other,
    };
    // a word that tells nothing gives no odds either
    if weights.same == weights.other { 0.0 } else { (chance / share).ln() }
}

/// How much a sign speaks for a known sign of a fault.
fn likeness(said: &Sign, known: &Sign, weights: &Weights) -> f64 {
    let shares = background();
    let place = |said: Place, known: Place| match said {
        _ if said == known => Like::Same,
        _ if said.is_near(known) => Like::Near,
        _ => Like::Other,
    };
    let face = |said: Face, known: Face| match said {
        _ if said == known => Like::Same,
        _ if said.is_opposite(known) => Like::Other,
        _ => Like::Near,
    };
    let lines = |said: Lines, known: Lines| {
        use Lines::{Fan, Frown, Slanting, Smile};
        match (said, known) {
            _ if said == known => Like::Same,
            (Slanting | Smile | Fan, Slanting | Smile | Fan) | (Slanting | Frown, Slanting | Frown) => {
                Like::Near
            }
            _ => Like::Other,
        }
    };
    let side = match (said.one_side, known.one_side) {
        (true, true) => weights.one_side[0],
        (true, false) => weights.one_side[1],
        (false, true) => weights.one_side[2],
        (false, false) => 0.0,
    };
    let other_time = said.when.is_none() && known.when.is_some_and(|when| when != When::Standing);
    odds((said.at, known.at), &shares.at, &weights.place, place)
        + odds((said.face, known.face), &shares.face, &weights.face, face)
        + odds((said.feel, known.feel), &shares.feel, &weights.feel, same)
        + odds((said.lines, known.lines), &shares.lines, &weights.lines, lines)
        + odds((said.does, known.does), &shares.does, &weights.does, same)
        + odds((said.when, known.when), &shares.when, &weights.when, same)
        + odds((said.to, known.to), &shares.to, &weights.to, place)
        + if other_time { weights.unsaid_when } else { 0.0 }
        + side
}

/// The same word or another.
fn same<W: PartialEq>(said: W, known: W) -> Like {
    if said == known { Like::Same } else { Like::Other }
}

/// How much what was seen speaks for a fault, and the cause of which that sign is most.
fn speaks(seen: &said::Seen, fault: &Fault, weights: &Weights) -> (f64, Option<CauseId>) {
    let read = |sign: &Sign| reads(sign, fault, weights);
    let (odds, hint) = match &seen.other {
        Some(other) => {
            [read(&seen.sign), read(other)].into_iter().max_by(|a, b| a.0.total_cmp(&b.0)).unwrap_or_default()
        }
        None => read(&seen.sign),
    };
    match seen.denied {
        // what is not there speaks against what shows it, and for nothing
        true if odds > SPEAKS => (-weights.denied * odds.min(weights.denied_most), None),
        true => (0.0, None),
        false => (odds, hint),
    }
}

fn reads(said: &Sign, fault: &Fault, weights: &Weights) -> (f64, Option<CauseId>) {
    if said.fine {
        let there = |it: &Known| {
            let same_time = said.when.is_none_or(|when| it.sign.when.is_none_or(|known| known == when));
            said.at == it.sign.at && said.face.zip(it.sign.face).is_none_or(|(a, b)| a == b) && same_time
        };
        return (if fault.seen.iter().any(there) { weights.fine } else { 0.0 }, None);
    }
    let (odds, hint) = fault
        .seen
        .iter()
        .map(|Known { sign, hint, seldom }| {
            // a sign of which half was left unsaid is most of nothing, and one of front and back not of either
            let one_panel = matches!(said.face, Some(Face::Front | Face::Back)) && sign.face.is_none();
            let whole = !one_panel
                && (sign.does.is_none() || sign.does == said.does)
                && (sign.lines.is_none() || sign.lines == said.lines);
            let less = if *seldom { weights.seldom } else { 0.0 };
            let odds = likeness(said, sign, weights) + less;
            let beyond = weights.beyond_best * (odds - weights.best).max(0.0);
            (odds.clamp(weights.worst, weights.best) + beyond, hint.filter(|_| whole))
        })
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .unwrap_or((weights.worst, None));
    let elsewhere = said.at == Some(Place::Abdomen)
        && fault.seen.iter().all(|known| known.sign.at != Some(Place::Abdomen));
    if elsewhere { (odds.min(weights.belly), None) } else { (odds, hint) }
}

/// The chance of a result of a test where this is the cause.
pub(super) fn chance(test: &Quick, result: usize, cause: CauseId, weights: &Weights) -> f64 {
    let count = test.results.len() as f64;
    let cures = test.results.iter().filter(|it| it.cures).count() as f64;
    let speaking = test.results.iter().filter(|it| it.speaks_for.contains(&cause)).count() as f64;
    if speaking == 0.0 && cures > 0.0 {
        // what cures it is seldom right where nothing of the kind is lacking
        let by_chance = (1.0 - weights.true_result) / count;
        if test.results[result].cures {
            by_chance
        } else {
            (1.0 - cures * by_chance) / (count - cures).max(1.0)
        }
    } else if speaking == 0.0 {
        1.0 / count
    } else if test.results[result].speaks_for.contains(&cause) {
        weights.true_result / speaking
    } else {
        (1.0 - weights.true_result) / (count - speaking).max(1.0)
    }
}

/// Ranks what a report, the results of tests (by the test's and the result's key), the draft and the record say.
pub fn rank(report: &said::Heard, tested: &[(String, String)], leg: Option<&Leg>, past: &Past) -> Ranking {
    rank_by(&WEIGHTS, report, tested, leg, past)
}

/// The same by other weights.
pub fn rank_by(
    weights: &Weights,
    report: &said::Heard,
    tested: &[(String, String)],
    leg: Option<&Leg>,
    past: &Past,
) -> Ranking {
    let known = knowledge();
    let shares = of_faults(report, known, weights);
    let mut by_signs = vec![0.0; known.causes.len()];
    for (fault, share) in known.faults.iter().zip(&shares) {
        let hints: Vec<CauseId> =
            report.seen.iter().filter_map(|seen| speaks(seen, fault, weights).1).collect();
        let hinted = |cause: CauseId| fault.seen.iter().any(|known| known.hint == Some(cause));
        let lift = |cause: CauseId| match hints.iter().filter(|hint| **hint == cause).count() {
            // the sign of another cause of this fault was told
            0 if !hints.is_empty() && hinted(cause) => weights.other_hint,
            count => (0..count).fold(1.0, |lift, _| lift * weights.hint),
        };
        let own: Vec<f64> =
            fault.causes.iter().zip(weights.in_order).map(|(cause, weight)| weight * lift(*cause)).collect();
        let sum: f64 = own.iter().sum();
        for (cause, weight) in fault.causes.iter().zip(own) {
            by_signs[cause.0] += share * weight / sum;
        }
    }
    let results: Vec<(&'static Quick, usize)> =
        tested.iter().filter_map(|(test, result)| find_result(known, test, result)).collect();
    let mut ranked: Vec<Ranked> = (0..known.causes.len())
        .map(|at| {
            let id = CauseId(at);
            let cause = known.of(id);
            let numbers = leg.map(|leg| evidence(cause, leg)).unwrap_or_default();
            let mut log: f64 = numbers.iter().map(|it| it.weight).sum();
            let tests: Vec<(&'static Quick, usize, bool)> = results
                .iter()
                .map(|(test, result)| {
                    let chance = chance(test, *result, id, weights);
                    log += chance.ln();
                    (*test, *result, chance > 1.0 / test.results.len() as f64)
                })
                .collect();
            let tests = tests.into_iter().filter(|(test, result, _)| speaks_of(test, *result, id)).collect();
            if cause
                .needs
                .is_some_and(|key| leg.is_none_or(|leg| leg.draft.parameters[key] < key.about().usual.0))
            {
                log -= 6.0;
            }
            if report.stance && cause.key == "stance" {
                log += weights.stance_said;
            }
            log += cause.shape.map_or(0.0, |(shape, much)| match past.shape[shape] {
                Some(shown) if shown == much => weights.mirrored,
                Some(HowMuch::Usual) | None => 0.0,
                Some(_) => -weights.mirrored,
            });
            let worse = past.made_worse(cause);
            if worse {
                log += weights.made_worse;
            }
            // a test result may name a cause that no sign did
            let base = by_signs[at] + 1e-4;
            Ranked {
                cause: id,
                share: base * log.exp(),
                by_signs: by_signs[at],
                signs: Vec::new(),
                numbers,
                tests,
                worse,
            }
        })
        .collect();
    let sum: f64 = ranked.iter().map(|it| it.share).sum();
    ranked.iter_mut().for_each(|it| it.share /= sum);
    ranked.sort_by(|a, b| b.share.total_cmp(&a.share));
    for it in &mut ranked {
        it.signs = reasons(report, known, &shares, it.cause, weights);
    }
    let mut faults: Vec<(&'static Fault, f64)> = known.faults.iter().zip(shares.iter().copied()).collect();
    faults.sort_by(|a, b| b.1.total_cmp(&a.1));
    let (first, causes) = ranked.into_iter().partition(|it| known.of(it.cause).first);
    Ranking { first, causes, faults, torn: torn(report) }
}

/// Whether a result of a test says anything of a cause.
fn speaks_of(test: &Quick, result: usize, cause: CauseId) -> bool {
    test.results[result].speaks_for.contains(&cause)
        || test.results.iter().any(|it| it.speaks_for.contains(&cause))
}

/// The test and the place of its result.
pub(super) fn find_result(
    known: &'static Knowledge,
    test: &str,
    result: &str,
) -> Option<(&'static Quick, usize)> {
    let test = known.test(test)?;
    let at = test.results.iter().position(|it| it.key == result)?;
    Some((test, at))
}

/// The share of each fault, whether it is alone or two are there at once.
fn of_faults(report: &said::Heard, known: &Knowledge, weights: &Weights) -> Vec<f64> {
    let odds: Vec<Vec<f64>> = known
        .faults
        .iter()
        .map(|fault| report.seen.iter().map(|seen| speaks(seen, fault, weights).0).collect())
        .collect();
    let count = odds.len() as f64;
    let mut logs: Vec<(usize, Option<usize>, f64)> = Vec::new();
    for (at, of_one) in odds.iter().enumerate() {
        logs.push((at, None, of_one.iter().sum()));
        // each sign is of one or of the other; what is not there, or is right, speaks against both
        for (beside, of_other) in odds.iter().enumerate().skip(at + 1) {
            let both = report.seen.iter().zip(of_one.iter().zip(of_other)).map(|(seen, (one, other))| {
                if seen.is_wrong() { (0.5 * (one.exp() + other.exp())).ln() } else { one + other }
            });
            let rarer = (weights.two_faults * 2.0 / (count - 1.0)).ln();
            logs.push((at, Some(beside), both.sum::<f64>() + rarer));
        }
    }
    let most = logs.iter().map(|it| it.2).fold(f64::NEG_INFINITY, f64::max);
    let mut shares = vec![0.0; odds.len()];
    for (at, beside, log) in logs {
        let share = (log - most).exp();
        match beside {
            None => shares[at] += share,
            Some(beside) => {
                shares[at] += 0.5 * share;
                shares[beside] += 0.5 * share;
            }
        }
    }
    let sum: f64 = shares.iter().sum();
    shares.into_iter().map(|share| share / sum).collect()
}

/// The signs that speak for a cause, each with the fault through which it does most.
fn reasons(
    report: &said::Heard,
    known: &'static Knowledge,
    shares: &[f64],
    cause: CauseId,
    weights: &Weights,
) -> Vec<(usize, &'static Fault)> {
    let of_cause = || known.faults.iter().zip(shares).filter(|(fault, _)| fault.causes.contains(&cause));
    let mut found = Vec::new();
    // tight is no sign of what is known by being loose
    let opposed = |said: &Sign, fault: &Fault| {
        let best = fault
            .seen
            .iter()
            .max_by(|a, b| likeness(said, &a.sign, weights).total_cmp(&likeness(said, &b.sign, weights)));
        best.is_some_and(|it| said.feel.zip(it.sign.feel).is_some_and(|(a, b)| a != b))
    };
    let among = |fault: &Fault| {
        let place = fault.causes.iter().position(|it| *it == cause).unwrap_or(0);
        weights.in_order[place.min(weights.in_order.len() - 1)].ln()
    };
    for (at, seen) in report.seen.iter().enumerate().filter(|(_, seen)| seen.is_wrong()) {
        let best = of_cause()
            .map(|(fault, share)| (speaks(seen, fault, weights).0, *share, fault))
            .filter(|(odds, share, fault)| *odds > SPEAKS && *share > 0.01 && !opposed(&seen.sign, fault))
            .max_by(|a, b| (a.0 + a.1.ln() + among(a.2)).total_cmp(&(b.0 + b.1.ln() + among(b.2))));
        found.extend(best.map(|(_, _, fault)| (at, fault)));
    }
    found
}

/// Two signs that do not go together: tight and loose at the same place and face.
fn torn(report: &said::Heard) -> Option<(usize, usize)> {
    let signs: Vec<(usize, Sign)> = report
        .seen
        .iter()
        .enumerate()
        .filter(|(_, seen)| seen.is_wrong())
        .map(|(at, seen)| (at, seen.sign))
        .collect();
    let together = |a: &Sign, b: &Sign| {
        a.at.is_some()
            && a.at == b.at
            && a.face == b.face
            && a.one_side == b.one_side
            && a.when.zip(b.when).is_none_or(|(a, b)| a == b)
            && a.feel.zip(b.feel).is_some_and(|(a, b)| a != b)
    };
    signs.iter().enumerate().find_map(|(from, (at, sign))| {
        signs[from + 1..].iter().find(|(_, other)| together(sign, other)).map(|(other, _)| (*at, *other))
    })
}
