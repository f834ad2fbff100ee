//! The next single change: which, by how much, and what it does to the draft.

use std::sync::Arc;

use super::{
    evidence::{Evidence, Number},
    knowledge::{Cause, CauseId, CrotchPart, Lack, Setting, Target, knowledge},
    rank::{Ranked, Ranking},
    record::{Past, Since, parameter},
};
use crate::{
    adjust::{Key, Measure, OneLeg},
    body::Origin,
    draft::Draft,
    fit::{Leg, Legs, drafted_legs, opening_for_arc},
    mistake::{Mistake, Mistakes},
    order::{Adjustment, LegOrder, Order},
    recipe::Recipe,
    terms::{FitKind, Level, Measurement, Side, Style, Word},
    unit::Unit,
};

/// Where an amount is from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Amount {
    /// Pinned on the body.
    Pinned,
    /// Measured against the draft.
    Measured,
    /// The ordinary step of one fitting.
    Step,
    /// The value before a change that made it worse.
    Undone,
}

/// A fold that was pinned or a gap that was measured on the body, cm.
pub type Pinned = Option<f64>;

/// One key from a value to another, in cm or degrees.
#[derive(Clone, Debug, PartialEq)]
pub struct Move {
    /// Its dotted path in the file.
    pub path: String,
    /// The fit parameter, if it is one.
    pub key: Option<Key>,
    /// The value in the draft.
    pub from: f64,
    /// The value advised.
    pub to: f64,
}

/// What the change does.
#[derive(Clone, Debug)]
pub struct Effect {
    /// The draft as it was sewn.
    pub before: Leg,
    /// The draft with the change.
    pub after: Leg,
}

/// What to do next.
#[derive(Clone, Debug)]
pub struct Advice {
    /// The cause it is for; `None` where a change is taken back or nothing is advised.
    pub cause: Option<CauseId>,
    /// Why this one comes before likelier ones, or why there is none.
    pub why: Vec<String>,
    /// The change.
    pub moves: Vec<Move>,
    /// Where its amount is from.
    pub amount: Amount,
    /// What it does; `None` where there is no change.
    pub effect: Option<Effect>,
    /// Measurements to take, or to take again, before it.
    pub measure: Vec<(Measurement, String)>,
    /// The fit of the file is held as sewn, so that nothing else moves.
    pub holds_fit: bool,
    /// The order as sewn: what a fit had found is given.
    pub sewn: Order,
}

/// A cause with less of the likeliest one's share does not contend with it.
const CONTENDS: f64 = 0.6;
/// A change smaller than this is none, cm or degrees.
const NOTHING: f64 = 0.025;

/// The order as it was sewn: what a fit has found is given, and the fit is held. A change of it then moves nothing else.
pub fn held(order: &Order, draft: &Draft) -> (Order, bool) {
    let found: Vec<Adjustment> =
        draft.adjustments.iter().filter(|it| it.from != "file" && it.from != "set").copied().collect();
    let mut sewn = order.clone();
    let given = |order: &Order, key: Key| order.adjustments.iter().any(|it| it.key == key);
    for it in &found {
        if !given(&sewn, it.key) && it.value != it.key.about().default {
            sewn.adjustments.push(Adjustment { from: "file", ..*it });
        }
    }
    sewn.adjustments.sort_by_key(|it| it.key);
    let holds = draft.fit == FitKind::Measured && draft.adjustments.iter().any(Adjustment::is_found);
    if holds {
        sewn.trousers.fit = Some(FitKind::Proportional);
    }
    (sewn, holds)
}

/// The next single change, in the published order of fitting: length before width, front before back, a scoop before an
/// extension; one cause at a time.
///
/// # Errors
/// When the order as sewn cannot be drafted, or a leg cannot have the change alone.
pub fn advise(
    ranking: &Ranking,
    order: &Order,
    recipe: &Arc<Recipe>,
    legs: &Legs,
    side: Side,
    pinned: Pinned,
    past: &Past,
) -> Result<Advice, Mistakes> {
    let leg = leg_of(legs, side);
    let (sewn, holds_fit) = held(order, &legs.first.draft);
    let mut advice = Advice {
        cause: None,
        why: Vec::new(),
        moves: Vec::new(),
        amount: Amount::Step,
        effect: None,
        measure: Vec::new(),
        holds_fit,
        sewn,
    };
    if past.since == Some(Since::Worse) && undo(&mut advice, past, leg) {
        return drafted(advice, recipe, side);
    }
    let Some(next) = next(ranking, past, &mut advice.why) else {
        advice.measure = ranking
            .causes
            .first()
            .map_or_else(Vec::new, |it| measure(knowledge().of(it.cause), it, ranking, leg));
        return Ok(advice);
    };
    let cause = knowledge().of(next.cause);
    advice.cause = Some(next.cause);
    advice.measure = measure(cause, next, ranking, leg);
    if cause.one_side && side == Side::Both {
        advice
            .why
            .push("say which side with `--leg left` or `--leg right`: it is of one side only".to_owned());
        return Ok(advice);
    }
    for setting in &cause.change {
        let (target, from) = (setting.target, value_of(setting.target, leg));
        if let Target::Adjust(key) = target {
            refuse_one_leg(key, side)?;
        }
        let (by, amount) = amount(cause, setting, next, leg, pinned);
        let to =
            within(target, from, on_grid(target, from + if setting.more { by } else { -by }, order.units));
        advice.amount = amount;
        if (to - from).abs() < NOTHING {
            advice.why.push(format!(
                "`{}` is as far as is usual already: measure again, or look for another cause",
                target.path()
            ));
            continue;
        }
        let key = match target {
            Target::Adjust(key) => Some(key),
            Target::Ease(_) | Target::Style(_) => None,
        };
        let path = match (key, side) {
            (Some(_), Side::Left | Side::Right) => format!("{side}.{}", target.path()),
            _ => target.path(),
        };
        advice.moves.push(Move { path, key, from, to });
    }
    drafted(advice, recipe, side)
}

fn leg_of(legs: &Legs, side: Side) -> &Leg {
    match (&legs.second, side) {
        (Some(right), Side::Right) => right,
        _ => &legs.first,
    }
}

/// Which cause is taken up next.
fn next<'a>(ranking: &'a Ranking, past: &Past, why: &mut Vec<String>) -> Option<&'a Ranked> {
    let known = knowledge();
    let worn_out = |it: &&Ranked| past.is_worn_out(known.of(it.cause));
    let top = ranking.causes.first()?;
    if worn_out(&top) {
        why.push(format!(
            "the same step was given twice for \"{}\" and nothing was measured since: take the measurements again \
             before a third",
            known.of(top.cause).lacks
        ));
    }
    let first = ranking.causes.iter().find(|it| !worn_out(it))?;
    if worn_out(&top) && first.share < 0.3 {
        return None;
    }
    let contending = ranking.causes.iter().filter(|it| !worn_out(it) && it.share >= CONTENDS * first.share);
    let next = contending.min_by(|a, b| {
        turn(known.of(a.cause)).partial_cmp(&turn(known.of(b.cause))).unwrap_or(std::cmp::Ordering::Equal)
    })?;
    if next.cause != first.cause {
        why.push(format!(
            "nearly as likely as the first and taken up before it: {}",
            order_of_fitting(known.of(next.cause), known.of(first.cause))
        ));
    }
    Some(next)
}

/// The place of a cause in the order of fitting.
fn turn(cause: &Cause) -> (f64, usize, bool) {
    (cause.turn, cause.kind as usize, cause.on_back)
}

fn order_of_fitting(sooner: &Cause, later: &Cause) -> &'static str {
    use super::knowledge::Kind::{Curve, Fork, Length};
    match (sooner.kind, later.kind) {
        (Curve, Fork) => "a scoop before an extension",
        (Length, kind) if kind != Length => "length before width",
        _ if later.on_back && !sooner.on_back => "the front before the back",
        _ => "from the top down, as fitters do",
    }
}

/// By how much, and where that is from.
fn amount(cause: &Cause, setting: &Setting, next: &Ranked, leg: &Leg, pinned: Pinned) -> (f64, Amount) {
    if let Some(pinned) = pinned {
        let by = match setting.target {
            Target::Adjust(key) if key.about().unit == Measure::Degrees => {
                // what is pinned at the waist, over the height of the waist above the hip line
                let levels = &leg.draft.shape.levels;
                (pinned / (levels[Level::Hip] - levels[Level::Waist])).atan().to_degrees()
            }
            _ => pinned * setting.pinned,
        };
        // cloth that is cut away from a curve cannot be put back
        let by = if cause.kind == super::Kind::Curve { by.min(2.0 * setting.step) } else { by };
        return (by, Amount::Pinned);
    }
    match measured(cause, setting, next, leg) {
        // what a tape says is given in two fittings where it is much
        Some(by) if by > 0.25 * setting.step => (by.min(2.0 * setting.step), Amount::Measured),
        _ => (setting.step, Amount::Step),
    }
}

/// What the measurements say is missing.
fn measured(cause: &Cause, setting: &Setting, next: &Ranked, leg: &Leg) -> Option<f64> {
    if cause.numbers == Some(Lack::FrontThigh) && setting.target == Target::Adjust(Key::ThighFront) {
        let draft = &leg.draft;
        return Some(
            opening_for_arc(&draft.plan, &draft.parameters, &draft.body)? - draft.parameters[Key::ThighFront],
        );
    }
    next.numbers.iter().find_map(|Evidence { number, .. }| match *number {
        Number::Ease { ease, least, from: Origin::Measured | Origin::Derived, .. } if setting.more => {
            let girth = least - ease;
            let share = match setting.target {
                Target::Style(_) => 0.5,
                Target::Adjust(Key::ThighInner | Key::ThighOuter) if cause.change.len() > 1 => 0.25,
                Target::Adjust(Key::ThighInner | Key::ThighOuter) => 0.5,
                _ => 1.0,
            };
            Some(share * girth)
        }
        _ => None,
    })
}

/// Measurements without which the change is a guess, and why.
fn measure(cause: &Cause, next: &Ranked, ranking: &Ranking, leg: &Leg) -> Vec<(Measurement, String)> {
    let body = &leg.draft.body;
    let taken = |measurement| body.value(measurement).is_some_and(|value| value.from == Origin::Measured);
    let mut wanted = contradicted(ranking);
    match cause.numbers {
        Some(Lack::ShortGirth(level) | Lack::SurplusGirth(level)) => {
            let girth = girth_at(level);
            if !taken(girth) && !wanted.iter().any(|(of, _)| *of == girth) {
                wanted.push((girth, "the draft estimates it".to_owned()));
            }
        }
        Some(Lack::Crotch { part, .. }) => {
            if !taken(Measurement::TotalCrotchLength) {
                wanted.push((Measurement::TotalCrotchLength, "the draft estimates it".to_owned()));
            } else if next.numbers.iter().any(
                |it| matches!(it.number, Number::Crotch { ease, wanted, .. } if (ease - wanted).abs() < 0.5),
            ) {
                wanted.push((
                    Measurement::TotalCrotchLength,
                    "the draft meets it as measured; if the toile is right, the tape was not: take it again"
                        .to_owned(),
                ));
            }
            if part != CrotchPart::Total && !taken(Measurement::FrontCrotchLength) {
                wanted.push((Measurement::FrontCrotchLength, "it tells which piece is short".to_owned()));
            }
        }
        Some(Lack::FrontThigh) if !taken(Measurement::FrontThighArc) => {
            wanted.push((Measurement::FrontThighArc, "it says how much".to_owned()));
        }
        _ => {}
    }
    wanted
}

/// Girths that the tape gives ease enough, where the toile clearly says tight.
fn contradicted(ranking: &Ranking) -> Vec<(Measurement, String)> {
    let clearly = ranking.causes.iter().filter(|it| it.by_signs >= 0.2 && it.share < 0.5 * it.by_signs);
    let mut found: Vec<(Measurement, String)> = Vec::new();
    for it in clearly {
        for Evidence { weight, number } in &it.numbers {
            if let Number::Ease { level, from: Origin::Measured, .. } = number
                && *weight < -0.5
                && !found.iter().any(|(of, _)| *of == girth_at(*level))
            {
                found.push((
                    girth_at(*level),
                    "toile and tape contradict each other: take it again".to_owned(),
                ));
            }
        }
    }
    found
}

/// The girth of the body at a level; at the hem that of the heel, which it lets through.
fn girth_at(level: Level) -> Measurement {
    match level {
        Level::Waist => Measurement::WaistGirth,
        Level::Hip => Measurement::HipGirth,
        Level::Thigh => Measurement::ThighGirth,
        Level::Knee => Measurement::KneeGirth,
        Level::Calf => Measurement::CalfGirth,
        Level::Hem | Level::Crotch => Measurement::HeelGirth,
    }
}

/// The value that a key has in the draft.
fn value_of(target: Target, leg: &Leg) -> f64 {
    let draft = &leg.draft;
    match target {
        Target::Adjust(key) => draft.parameters[key],
        Target::Ease(at) => draft.plan.inputs.ease[at as usize],
        Target::Style(style) => {
            let level = if style == Style::KneeWidth { Level::Knee } else { Level::Hem };
            let row = leg.report.levels.iter().find(|row| row.level == level);
            draft.plan.inputs.style[style as usize].or(row.map(|row| 0.5 * row.pattern)).unwrap_or_default()
        }
    }
}

/// The nearest value that a ruler or a protractor shows.
fn on_grid(target: Target, value: f64, unit: Unit) -> f64 {
    let grid = match (target, unit) {
        (Target::Adjust(key), _) if key.about().unit == Measure::Degrees => 0.1,
        (_, Unit::Cm) => 0.05,
        (_, Unit::Inch) => Unit::Inch.to_cm(1.0 / 16.0),
    };
    (value / grid).round() * grid + 0.0
}

/// A parameter stays within its usual range, or where it is beyond that already.
fn within(target: Target, from: f64, to: f64) -> f64 {
    let Target::Adjust(key) = target else { return to };
    let about = key.about();
    let (least, most) = about.usual;
    to.clamp(least.min(about.default).min(from), most.max(from))
}

fn refuse_one_leg(key: Key, side: Side) -> Result<(), Mistake> {
    if side != Side::Both && key.about().one_leg == OneLeg::Never {
        return Err(Mistake::new(format!(
            "`{key}` cannot be given to one leg: the centres sew to each other"
        ))
        .help("leave `--leg` out: the change is for both"));
    }
    Ok(())
}

/// Takes the last change back where it made it worse.
fn undo(advice: &mut Advice, past: &Past, leg: &Leg) -> bool {
    let steps = past.last();
    for step in &steps {
        if let (Some(from), Some((_, key))) = (step.from, parameter(&step.path)) {
            let now = leg.draft.parameters[key];
            if (now - from).abs() > 1e-9 {
                advice.moves.push(Move { path: step.path.clone(), key: Some(key), from: now, to: from });
            }
        }
    }
    if advice.moves.is_empty() {
        if !steps.is_empty() {
            advice.why.push(
                "the record does not say what the last change was before: take it back by hand".to_owned(),
            );
        }
        return false;
    }
    advice.amount = Amount::Undone;
    advice
        .why
        .push("it looks worse since the last change: that is taken back first, then judged again".to_owned());
    true
}

/// The order with some keys moved.
fn moved(order: &Order, moves: &[Move]) -> Order {
    let mut order = order.clone();
    for it in moves {
        match (it.key, parameter(&it.path)) {
            (Some(key), Some((side, _))) => {
                let list = match side {
                    Side::Both => &mut order.adjustments,
                    Side::Left => &mut order.left.get_or_insert_with(LegOrder::default).adjustments,
                    Side::Right => &mut order.right.get_or_insert_with(LegOrder::default).adjustments,
                };
                list.retain(|old| old.key != key);
                list.push(Adjustment { key, value: it.to, from: "file" });
                list.sort_by_key(|it| it.key);
            }
            _ => {
                let trousers = &mut order.trousers;
                match it.path.strip_prefix("trousers.").and_then(|rest| rest.split_once('.')) {
                    Some(("ease", at)) => {
                        if let Some(at) = crate::terms::EaseAt::from_key(at) {
                            trousers.ease[at as usize] = Some(it.to);
                        }
                    }
                    Some(("style", style)) => {
                        if let Some(style) = Style::from_key(style) {
                            trousers.style[style as usize] = Some(it.to);
                        }
                    }
                    _ => {}
                }
            }
        }
    }
    order
}

/// Drafts with and without. Where the whole amount cannot be drawn, half of it, then a quarter.
fn drafted(mut advice: Advice, recipe: &Arc<Recipe>, side: Side) -> Result<Advice, Mistakes> {
    if advice.moves.is_empty() {
        return Ok(advice);
    }
    let before = drafted_legs(&advice.sewn, recipe)?;
    let whole = advice.moves.clone();
    let mut refusal = None;
    for part in [1.0, 0.5, 0.25] {
        for (it, all) in advice.moves.iter_mut().zip(&whole) {
            it.to = if part < 1.0 { all.from + part * (all.to - all.from) } else { all.to };
        }
        match drafted_legs(&moved(&advice.sewn, &advice.moves), recipe) {
            Ok(after) => {
                if part < 1.0 {
                    advice
                        .why
                        .push(format!("of the whole amount only {part} of it can be drawn on this draft"));
                }
                let (before, after) = (leg_of(&before, side).clone(), leg_of(&after, side).clone());
                advice.effect = Some(Effect { before, after });
                return Ok(advice);
            }
            Err(mistakes) => refusal = mistakes.0.first().map(|mistake| mistake.title.clone()).or(refusal),
        }
    }
    advice.moves.clear();
    advice.why.push(format!("the change cannot be drawn on this draft: {}", refusal.unwrap_or_default()));
    Ok(advice)
}
