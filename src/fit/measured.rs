//! Measured fit in a draft: when it is asked for, what it could not meet, and which measurement would explain that.

use super::{
    Report,
    limit::Judge,
    solve::{ANOTHER_DIVISION, departure, least_amount, mean_back_share, measured, part_of_estimate, solve},
};
use crate::{
    adjust::{Key, Parameters},
    body::{Origin, oddest_of},
    draft::Draft,
    mistake::{Mistakes, Notice},
    order::{Adjustment, Giver, Order},
    terms::{FitKind, Measurement},
    voice::{Sentence, length, list, named, share},
};

/// A total crotch length met within this is met, cm.
const MET: f64 = 0.5;
/// So near to the end of a range is at it, cm or degrees.
const NEARLY: f64 = 5e-4;

/// The tilt of the waist: how far its height at the centres, where measured, differs from that at the side, within what
/// is usual.
fn tilt(draft: &Draft) -> impl Iterator<Item = Adjustment> {
    let ends = [
        (Key::WaistRaiseFront, Measurement::WaistHeightFront),
        (Key::WaistRaiseBack, Measurement::WaistHeightBack),
    ];
    ends.into_iter().filter_map(|(key, height)| {
        let end = draft.body.value(height).filter(|value| value.from == Origin::Measured)?;
        let side =
            draft.body.value(Measurement::WaistHeight).filter(|value| value.from != Origin::Estimated)?;
        let (least, most) = key.about().usual;
        Some(Adjustment { key, value: (end.cm - side.cm).clamp(least, most), from: Giver::Measured })
    })
}

/// The draft with the parameters that meet what was measured, where the file asks for it or says nothing.
///
/// The fit is found as if the file gave none; then those that it gives take its values, and the others stay as found:
/// what the hand changes so changes as the hand means it. Where the order says `around`, those of the file stand first
/// and the rest is found round them.
pub(super) fn met(mut draft: Draft, order: &Order) -> Result<Draft, Mistakes> {
    let asked = order.trousers.fit.unwrap_or(FitKind::Measured);
    if asked != FitKind::Measured || !draft.recipe.truing.on {
        draft.fit = if asked == FitKind::Held { FitKind::Held } else { FitKind::Proportional };
        return Ok(draft);
    }
    let of_the_file = |key: Key| order.adjustments.iter().any(|it| it.key == key);
    let first = |key: Key| order.around && of_the_file(key);
    let start = if order.around { draft.parameters } else { Parameters::default() };
    let tilt: Vec<Adjustment> = tilt(&draft).filter(|it| !first(it.key)).collect();
    let start = tilt.iter().fold(start, |all, it| all.with(it.key, it.value));
    let solved = solve(&draft.plan, &draft.body, &start, first);
    let found = borne(&draft, &start, &solved.found)
        .into_iter()
        .filter(|(_, value)| *value != 0.0)
        .map(|(key, value)| Adjustment { key, value, from: Giver::Fit });
    let all: Vec<Adjustment> = tilt.into_iter().chain(found).filter(|it| !of_the_file(it.key)).collect();
    draft.fitted(all)
}

/// The parameters of a draft that nobody's hand gave.
pub(super) fn without_hand(draft: &Draft) -> Parameters {
    draft
        .adjustments
        .iter()
        .filter(|it| !it.is_by_hand())
        .fold(Parameters::default(), |all, it| all.with(it.key, it.value))
}

/// What was found, as far as the outline bears it: all of it, but for bodies at the edge of what can be drawn. There a front
/// thigh keeps the opening that its measured arc asks for if it can, the rest gives way alike, and what would then be too
/// little to be cut is left out.
fn borne(draft: &Draft, start: &Parameters, found: &[(Key, f64, bool)]) -> Vec<(Key, f64)> {
    let judge = Judge { plan: &draft.plan, body: &draft.body };
    let holds = |all: &[(Key, f64)]| {
        judge.breaks(&all.iter().fold(*start, |set, (key, value)| set.with(*key, *value))).is_none()
    };
    let whole: Vec<(Key, f64)> = found.iter().map(|(key, value, _)| (*key, *value)).collect();
    if holds(&whole) {
        return whole;
    }
    for kept in [Some(Key::ThighFront), None] {
        let given_way = |part: f64| -> Vec<(Key, f64)> {
            let of = |key: Key| if Some(key) == kept { 1.0 } else { part };
            whole.iter().map(|(key, value)| (*key, of(*key) * value)).collect()
        };
        let Some(part) = greatest_part(|part| holds(&given_way(part))) else { continue };
        let mut all = given_way(part);
        for at in 0..all.len() {
            let (key, value) = all[at];
            if value.abs() < least_amount(key) {
                all[at].1 = 0.0;
                if !holds(&all) {
                    all[at].1 = value;
                }
            }
        }
        return all;
    }
    // The block itself is not true for this body: that is said by the report.
    whole
}

/// The greatest part of the whole that holds, if any does.
fn greatest_part(holds: impl Fn(f64) -> bool) -> Option<f64> {
    /// Parts tried from the whole downwards, so that what breaks only between is not stopped at.
    const PARTS: u32 = 16;
    /// Halvings between two parts: less than a hundredth of a millimetre is left.
    const HALVINGS: usize = 12;
    let part = |step: u32| f64::from(step) / f64::from(PARTS);
    let step = (0..PARTS).rev().find(|step| holds(part(*step)))?;
    let (mut good, mut bad) = (part(step), part(step + 1));
    for _ in 0..HALVINGS {
        let middle = 0.5 * (good + bad);
        if holds(middle) { good = middle } else { bad = middle }
    }
    Some(good)
}

/// What the fit rests on and could not meet, and what would most likely explain that.
pub(super) fn notices(draft: &Draft, report: &Report, order: &Order) -> Vec<Notice> {
    let mut notices: Vec<Notice> = on_another_block(order).into_iter().collect();
    if draft.fit != FitKind::Measured {
        return notices;
    }
    notices.extend(on_an_estimate(draft));
    notices.extend(on_top(draft, report));
    notices.extend(split_not_asked(draft));
    let unmet = unmet(report, order);
    let at_bound: Vec<Sentence> = draft
        .adjustments
        .iter()
        .filter(|it| it.is_found() && at_end(it.key, it.value))
        .map(|it| Sentence::new("`{key}`").with("key", it.key))
        .collect();
    let explained =
        if unmet.is_some() || !at_bound.is_empty() || went_far(draft) { explanation(order) } else { None };
    if let Some(missing) = unmet {
        let remedy = match explained {
            Some(_) => "",
            None => ": take `total_crotch_length`, `body_rise` and the waist level again",
        };
        notices.push(Notice::mind("fit-unmet", missing).then(remedy));
    }
    if !at_bound.is_empty() {
        notices.push(
            Notice::mind(
                "fit-at-bound",
                "the fit went as far as is usual with {keys}: look there first on the toile",
            )
            .with("keys", list(at_bound)),
        );
    }
    notices.extend(explained);
    notices
}

/// The crotch length was estimated: how far the fit follows it.
fn on_an_estimate(draft: &Draft) -> Option<Notice> {
    /// A part nearer to the whole than this is the whole.
    const WHOLLY: f64 = 0.95;
    let part = part_of_estimate(&draft.body)?;
    let estimate = draft.body.value(Measurement::TotalCrotchLength)?;
    let way = if part >= WHOLLY {
        Sentence::new("all the way to it")
    } else {
        Sentence::new("{part} of the way to it").with("part", share(part))
    };
    Some(
        Notice::note(
            "fit-on-estimate",
            "`total_crotch_length` was not measured: people with the same waist, hip and rise have {expected}, give or take \
             {spread}; the fit goes {way}. Measured, it would be met",
        )
        .with("expected", length(estimate.cm))
        .with("spread", length(estimate.sd))
        .with("way", way),
    )
}

/// What the hand gave on top of the fit costs crotch length that somebody has to take back.
fn on_top(draft: &Draft, report: &Report) -> Option<Notice> {
    let by_hand: Vec<Key> = draft.adjustments.iter().filter(|it| it.is_by_hand()).map(|it| it.key).collect();
    let over = report.crotch.ease()? - report.crotch.wanted;
    (!by_hand.is_empty() && over.abs() > MET).then(|| {
        let which = if over > 0.0 { "longer" } else { "shorter" };
        Notice::note(
            "on-top-of-fit",
            "what you gave lies on top of what the fit found ({keys}), and the crotch seam is {over} {which} than wanted. \
             See by the toile whether to leave it; `breeks fit --around` finds the rest again round it",
        )
        .with("keys", list(by_hand.into_iter().map(|key| Sentence::new("`{key}`").with("key", key))))
        .with("over", length(over.abs()))
        .with("which", which)
    })
}

/// The crotch length is divided unlike other people's, by less than another dividing point explains.
fn split_not_asked(draft: &Draft) -> Option<Notice> {
    /// A difference smaller than this is the tape's, cm.
    const WORTH_TELLING: f64 = 2.0;
    let [whole, back] = [Measurement::TotalCrotchLength, Measurement::BackCrotchLength]
        .map(|measurement| measured(&draft.body, measurement));
    let (whole, back) = whole.zip(back)?;
    let usual = whole * mean_back_share(draft.body.sex, draft.body.waist_level)?;
    let more = back - usual;
    (more.abs() > WORTH_TELLING).then(|| {
        let (which, other) = if more > 0.0 { ("back", "front") } else { ("front", "back") };
        Notice::note(
            "crotch-split",
            "the {which} has {more} more of the crotch length than other people's, the {other} less. Where the tape was \
             divided may explain {explained} of it, and the fit asks only for what is beyond: see on the toile whether the \
             inseam is pulled to the {which}",
        )
        .with("which", which)
        .with("other", other)
        .with("more", length(more.abs()))
        .with("explained", length(ANOTHER_DIVISION * whole))
    })
}

/// A crotch length that no ordinary correction meets, and that the hand has not left so.
fn unmet(report: &Report, order: &Order) -> Option<Sentence> {
    let measured = [Measurement::FrontCrotchLength, Measurement::BackCrotchLength];
    let whole = order.body.cm(Measurement::TotalCrotchLength).is_some()
        || measured.iter().all(|part| order.body.cm(*part).is_some());
    if !whole || !order.adjustments.is_empty() {
        return None;
    }
    let over = report.crotch.ease()? - report.crotch.wanted;
    let which = if over > 0.0 { "longer" } else { "shorter" };
    let much = over.abs();
    (much > MET).then(|| {
        Sentence::new(
            "no ordinary correction meets the measured crotch length: the crotch seam stays {much} {which} than wanted",
        )
        .with("much", length(much))
        .with("which", which)
    })
}

/// The fit departs from the recipe further than from one body in six (985 people of the 1988 US Army Anthropometric
/// Survey).
fn went_far(draft: &Draft) -> bool {
    /// In spreads, all parameters together.
    const FAR: f64 = 3.0;
    let found = |key: Key| draft.adjustments.iter().find(|it| it.is_found() && it.key == key);
    departure(|key| found(key).map_or(0.0, |it| it.value)) > FAR
}

/// What a fit rests on: not the split of a crotch length, which it hardly asks for.
const RESTS_ON: [Measurement; 8] = [
    Measurement::TotalCrotchLength,
    Measurement::BodyRise,
    Measurement::WaistHeight,
    Measurement::InsideLeg,
    Measurement::OutsideLeg,
    Measurement::HipGirth,
    Measurement::ThighGirth,
    Measurement::FrontThighArc,
];

/// The measurement that, wrong, would most likely explain a fit that went far: the oddest of those it rests on.
fn explanation(order: &Order) -> Option<Notice> {
    /// A measurement nearer than this to what the others expect explains nothing, in spreads.
    const ODD: f64 = 1.5;
    let doubt = oddest_of(&order.body, &RESTS_ON).filter(|doubt| doubt.spreads().abs() > ODD)?;
    Some(
        Notice::mind(
            "fit-doubtful",
            "the fit had to go far from the recipe. One wrong measurement would explain that, most likely \
             `{measurement}`: it is {found}, the others expect {expected}, give or take {spread}. Take it again before you \
             cut; if it is right, so is the fit",
        )
        .with("measurement", doubt.measurement)
        .with("found", length(doubt.found))
        .with("expected", length(doubt.predicted))
        .with("spread", length(doubt.sd)),
    )
}

/// Parameters that were found on one block are not those of another.
fn on_another_block(order: &Order) -> Option<Notice> {
    let fitted_on = order.fittings.iter().rev().find_map(|fitting| fitting.block.as_deref())?;
    (fitted_on != order.trousers.block && !order.adjustments.is_empty()).then(|| {
        Notice::mind(
            "fitted-on-another-block",
            "the fit parameters of this file were found on the block `{fitted_on}`, not on `{block}`: find them again with \
             `breeks fit --afresh`",
        )
        .with("fitted_on", named(fitted_on))
        .with("block", named(&order.trousers.block))
    })
}

fn at_end(key: Key, value: f64) -> bool {
    let (least, most) = key.about().usual;
    value >= most - NEARLY || value <= least.min(0.0) + NEARLY && value != 0.0
}
