//! Measured fit in a draft: when it is asked for, what it could not meet, and which measurement would explain that.

use super::{
    Report,
    limit::Judge,
    solve::{can_be_met, departure, solve},
};
use crate::{
    adjust::{Key, Parameters},
    body::{Origin, oddest_of},
    draft::Draft,
    mistake::{Mistakes, Notice},
    order::{Adjustment, Giver, Order},
    terms::{FitKind, Measurement},
    voice::{Sentence, length, list, named},
};

/// A total crotch length met within this is met, cm.
const MET: f64 = 0.5;
/// A parameter smaller than this is no correction but the arithmetic's, cm or degrees.
const NOTHING: f64 = 5e-4;

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
pub(super) fn met(draft: Draft, order: &Order) -> Result<Draft, Mistakes> {
    let asked = order.trousers.fit.unwrap_or(FitKind::Measured);
    if asked == FitKind::Proportional || !draft.recipe.truing.on {
        return Ok(draft);
    }
    let given = |key: Key| order.adjustments.iter().any(|it| it.key == key);
    let tilt: Vec<Adjustment> = tilt(&draft).filter(|it| !given(it.key)).collect();
    let draft = if tilt.is_empty() { draft } else { draft.fitted(tilt)? };
    if !can_be_met(&draft.body) {
        return Ok(draft);
    }
    let solved = solve(&draft.plan, &draft.body, &draft.parameters, given);
    let part = sound_part(&draft, &solved.found);
    let found = solved.found.iter().map(|(key, value, _)| (*key, value * part)).map(|(key, value)| {
        Adjustment { key, value: if value.abs() < NOTHING { 0.0 } else { value }, from: Giver::Fit }
    });
    draft.fitted(found.collect::<Vec<_>>())
}

/// How much of what was found the outline bears: all of it, but for bodies at the edge of what can be drawn.
fn sound_part(draft: &Draft, found: &[(Key, f64, bool)]) -> f64 {
    let judge = Judge { plan: &draft.plan, body: &draft.body };
    let holds = |part: f64| {
        let with = |all: Parameters, it: &(Key, f64, bool)| all.with(it.0, part * it.1);
        judge.breaks(&found.iter().fold(draft.parameters, with)).is_none()
    };
    if holds(1.0) || !holds(0.0) {
        return 1.0;
    }
    let (mut good, mut bad) = (0.0, 1.0);
    for _ in 0..20 {
        let middle = 0.5 * (good + bad);
        if holds(middle) { good = middle } else { bad = middle }
    }
    good
}

/// What the fit could not meet, and what would most likely explain it.
pub(super) fn notices(draft: &Draft, report: &Report, order: &Order) -> Vec<Notice> {
    if draft.fit == FitKind::Proportional {
        let asked = order.trousers.fit == Some(FitKind::Measured);
        return asked.then(nothing_to_meet).into_iter().chain(on_another_block(order)).collect();
    }
    let mut notices: Vec<Notice> = on_another_block(order).into_iter().collect();
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

/// A crotch length that no ordinary correction meets.
fn unmet(report: &Report, order: &Order) -> Option<Sentence> {
    order.body.cm(Measurement::TotalCrotchLength)?;
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

/// What a fit rests on.
const RESTS_ON: [Measurement; 10] = [
    Measurement::TotalCrotchLength,
    Measurement::FrontCrotchLength,
    Measurement::BackCrotchLength,
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
    value >= most - NOTHING || value <= least.min(0.0) + NOTHING && value != 0.0
}

fn nothing_to_meet() -> Notice {
    Notice::note(
        "fit-nothing-measured",
        "measured fit has nothing to meet: measure `total_crotch_length`, `thigh_girth` or `front_thigh_arc`; this draft \
         follows the recipe's proportions alone",
    )
}
