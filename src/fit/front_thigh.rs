//! The front thigh: what opening it did, what it asks for next, and the opening that a measured arc asks for.

use super::{Report, solve::worth_making};
use crate::{
    adjust::{Key, Parameters},
    body::Body,
    draft::{Draft, Plan, Taped, shape, taped_at},
    mistake::Notice,
    terms::{EaseAt, FitKind, Measurement},
    voice::{Sentence, amount, change, length},
};

/// An opening smaller than this is not told about, cm.
const WORTH_TELLING: f64 = 0.3;
/// A total crotch seam that is longer than wanted by less than this is not worth taking back, cm.
const OVERSHOOT: f64 = 0.5;
/// Halvings of the usual range of an opening; what is left is less than a hundredth of a millimetre.
const HALVINGS: usize = 12;

/// The width across the front of one leg at thigh level that meets the measured front thigh arc, cm: the arc and the
/// front's share of the thigh ease. `None` where the arc was not measured.
pub fn front_width_wanted(plan: &Plan, taped: &Taped, body: &Body) -> Option<f64> {
    let arc = body.cm(Measurement::FrontThighArc)?;
    let (front, back) = taped.front_thigh.zip(taped.back_thigh)?;
    Some(arc + plan.inputs.ease[EaseAt::Thigh] * front / (front + back))
}

/// The `thigh.front` that the measured front thigh arc asks of the block, within its usual range, cm: the same number for
/// whoever asks, since it looks at the block without any other correction. `None` where the arc was not measured.
pub fn opening_for_arc(plan: &Plan, body: &Body) -> Option<f64> {
    let missing = |opening: f64| {
        let taped = taped_at(plan, &Parameters::default().with(Key::ThighFront, opening));
        Some(front_width_wanted(plan, &taped, body)? - taped.front_thigh?)
    };
    let (mut low, mut high) = (0.0, Key::ThighFront.about().usual.1);
    if missing(low)? <= 0.0 {
        return Some(low);
    }
    if missing(high)? >= 0.0 {
        return Some(high);
    }
    // The front grows steadily with its opening: halving finds the one place where nothing is missing.
    for _ in 0..HALVINGS {
        let middle = 0.5 * (low + high);
        if missing(middle)? > 0.0 { low = middle } else { high = middle }
    }
    Some(worth_making(Key::ThighFront, 0.5 * (low + high)))
}

/// What a fitter should know about the front thigh of this draft.
pub(super) fn notices(draft: &Draft, report: &Report) -> impl Iterator<Item = Notice> {
    let opening = draft.parameters[Key::ThighFront];
    let opened = (opening.abs() >= WORTH_TELLING).then(|| what_it_did(draft, report, opening));
    [opened, take_back(draft, report, opening), scoop_first(opening), arc(draft)].into_iter().flatten()
}

fn what_it_did(draft: &Draft, report: &Report, opening: f64) -> Notice {
    let closed = shape(&draft.plan, &draft.parameters.without(Key::ThighFront).without(Key::ThighBackTake));
    let front = report.crotch.front - closed.front.crotch_seam.length();
    let back = report.crotch.back - closed.back.crotch_seam.length();
    Notice::note(
        "front-thigh",
        "`thigh.front` {opening}, opened where the crotch curve starts, brings the front crotch point {gain} out along the crotch line; the crotch seam changes by {front} on the front and {back} on the back",
    )
    .with("opening", amount(opening))
    .with("gain", length(draft.shape.front.gain))
    .with("front", change(front))
    .with("back", change(back))
}

/// The back's share of an opening, with its amount, whether or not the crotch length asks for it.
fn take_back(draft: &Draft, report: &Report, opening: f64) -> Option<Notice> {
    if opening < WORTH_TELLING {
        return None;
    }
    let over = report.crotch.ease().map_or(0.0, |ease| ease - report.crotch.wanted);
    let taken = draft.parameters[Key::ThighBackTake];
    let notice = Notice::note(
        "take-back",
        "the back of the thigh may give back up to half of it, `thigh.back_take` {half} (common practice, no source)",
    )
    .with("half", amount(0.5 * opening));
    let notice = if taken > 0.0 {
        notice.then(Sentence::new("; this draft takes {taken}").with("taken", amount(taken)))
    } else {
        notice
    };
    Some(if over > OVERSHOOT {
        notice
            .then(Sentence::new("; the crotch seam is {over} longer than wanted").with("over", length(over)))
    } else {
        notice
    })
}

fn scoop_first(opening: f64) -> Option<Notice> {
    (opening >= Key::ThighFront.about().usual.0).then(|| {
        Notice::note(
            "scoop-first",
            "a loose base of the fly is scooped, `crotch.front_scoop`, before the thigh is opened (common practice, no source)",
        )
    })
}

fn arc(draft: &Draft) -> Option<Notice> {
    /// An opening that is nearer to what the arc asks for is right as it is, cm.
    const NEAR: f64 = 0.3;
    if draft.fit == FitKind::Measured
        && !draft.adjustments.iter().any(|it| it.key == Key::ThighFront && !it.is_found())
    {
        // The fit has given what the arc asks for.
        return None;
    }
    let asked = opening_for_arc(&draft.plan, &draft.body)?;
    let given = draft.parameters[Key::ThighFront];
    ((asked - given).abs() > NEAR).then(|| {
        Notice::mind(
            "front-thigh-arc",
            "the measured front thigh arc asks for `thigh.front` {asked}, the draft has {given}",
        )
        .with("asked", amount(asked))
        .with("given", amount(given))
    })
}
