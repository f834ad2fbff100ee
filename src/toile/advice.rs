//! The next single change: which, by how much, and what it does to the draft.

use std::sync::Arc;

use super::{
    amount::{Amount, Given, Pinned, amount, measure, on_grid, value_of, within},
    judgement::Toile,
    knowledge::{Cause, CauseId, Kind, Setting, Target, knowledge},
    rank::{Ranked, Ranking},
    record::{Past, Since, parameter},
    said::Seen,
    sign::{Degree, Face, Place},
};
use crate::{
    adjust::{Key, Measure, OneLeg},
    fit::{Leg, Legs, drafted_legs},
    mistake::Mistakes,
    order::{Adjustment, Giver, Order},
    recipe::Recipe,
    terms::{FitKind, Measurement, Side},
    unit::Unit,
};

/// One key from a value to another, in cm or degrees.
#[derive(Clone, Debug, PartialEq)]
pub struct Move {
    /// The key.
    pub target: Target,
    /// The leg it is given to.
    pub side: Side,
    /// The value in the draft.
    pub from: f64,
    /// The value advised.
    pub to: f64,
}

impl Move {
    /// Its dotted path in the file.
    pub fn path(&self) -> String {
        match (self.target, self.side) {
            (Target::Adjust(key), Side::Left | Side::Right) => format!("{}.{key}", self.side),
            (target, _) => target.path(),
        }
    }

    /// The fit parameter, if it is one.
    pub fn key(&self) -> Option<Key> {
        match self.target {
            Target::Adjust(key) => Some(key),
            Target::Ease(_) | Target::Style(_) => None,
        }
    }
}

/// What the change does.
#[derive(Clone, Debug)]
pub struct Effect {
    /// The draft as it was sewn.
    pub before: Leg,
    /// The draft with the change.
    pub after: Leg,
}

/// Why a change is this one and not another or not all of it.
#[derive(Clone, Debug, PartialEq)]
pub enum Why {
    /// In words.
    Said(String),
    /// No more is given than this of what was pinned or measured: cm or degrees.
    Capped {
        /// The key.
        path: String,
        /// What was pinned or measured, as it comes to in the key.
        asked: f64,
        /// What is given.
        given: f64,
        /// In cm; else in degrees.
        cm: bool,
        /// Why no more.
        because: &'static str,
    },
}

impl From<String> for Why {
    fn from(said: String) -> Self {
        Self::Said(said)
    }
}

impl From<&str> for Why {
    fn from(said: &str) -> Self {
        Self::Said(said.to_owned())
    }
}

impl Why {
    /// In words, lengths in the reader's unit.
    pub fn said(&self, unit: Unit) -> String {
        match self {
            Self::Said(said) => said.clone(),
            Self::Capped { path, asked, given, cm, because } => {
                let long = |value: f64| if *cm { unit.amount(value) } else { format!("{value:.1} degrees") };
                format!("of {} asked for in `{path}` {} are given: {because}", long(*asked), long(*given))
            }
        }
    }
}

/// Something of another key that goes with a change.
#[derive(Clone, Debug, PartialEq)]
pub struct Beside {
    /// The key.
    pub key: Key,
    /// The value in the draft.
    pub from: f64,
    /// The value up to which it goes.
    pub up_to: f64,
    /// Done before the change; else after it.
    pub first: bool,
    /// In which case.
    pub when: &'static str,
}

/// What to do next.
#[derive(Clone, Debug)]
pub struct Advice {
    /// The cause it is for; `None` where a change is taken back or nothing is advised.
    pub cause: Option<CauseId>,
    /// Why this one comes before likelier ones, or why there is none.
    pub why: Vec<Why>,
    /// The change.
    pub moves: Vec<Move>,
    /// Where its amount is from.
    pub amount: Amount,
    /// What it does; `None` where there is no change.
    pub effect: Option<Effect>,
    /// What is done before it, beside it or after it on other keys, with amounts.
    pub beside: Vec<Beside>,
    /// Measurements to take, or to take again, before it.
    pub measure: Vec<(Measurement, String)>,
    /// The fit of the file is held as sewn, so that nothing else moves.
    pub holds_fit: bool,
    /// What the fit had found, by its dotted path, in cm or degrees.
    pub kept: Vec<(String, f64)>,
    /// The order as sewn: what a fit had found is given.
    pub sewn: Order,
}

/// A cause with less of the likeliest one's share does not contend with it.
const CONTENDS: f64 = 0.8;
/// A change smaller than this is none, cm or degrees.
const NOTHING: f64 = 0.025;

/// The order as it was sewn: what a fit has found is given, and the fit is held. A change of it then moves nothing else.
pub fn held(order: &Order, legs: &Legs) -> (Order, bool) {
    let mut sewn = order.clone();
    let found = legs.found();
    for (side, it) in &found {
        let list = sewn.adjustments_of(*side);
        list.push(Adjustment { from: Giver::File, ..*it });
        list.sort_by_key(|it| it.key);
    }
    let holds = legs.first.draft.fit == FitKind::Measured && found.iter().any(|(_, it)| it.is_found());
    if holds {
        sewn.trousers.fit = Some(FitKind::Held);
    }
    (sewn, holds)
}

/// The next single change, in the published order of fitting: length before width, front before back, a scoop before an
/// extension; one cause at a time.
///
/// # Errors
/// When the order as sewn cannot be drafted.
pub fn advise(
    ranking: &Ranking,
    order: &Order,
    recipe: &Arc<Recipe>,
    legs: &Legs,
    toile: &Toile,
) -> Result<Advice, Mistakes> {
    let Toile { side, pinned, ref past, ref report, .. } = *toile;
    let signs = &report.seen;
    let leg = legs.of(side);
    let (sewn, holds_fit) = held(order, legs);
    let mut advice = Advice {
        cause: None,
        why: Vec::new(),
        moves: Vec::new(),
        amount: Amount::Step(None),
        effect: None,
        beside: Vec::new(),
        measure: Vec::new(),
        holds_fit,
        kept: legs.found().iter().map(|(side, it)| (it.path(*side), it.value)).collect(),
        sewn,
    };
    if past.since == Some(Since::Worse) && undo(&mut advice, past, legs) {
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
    if past.since == Some(Since::Same) && past.gave_last(cause) {
        advice.why.push("the last step of the same did not show: test before a second one".into());
    }
    advice.measure = measure(cause, next, ranking, leg);
    if cause.one_side && side == Side::Both {
        advice.why.push("say which side with `--leg left` or `--leg right`: it is of one side only".into());
        return Ok(advice);
    }
    let side = side_of(cause, side, &mut advice.why);
    let degree = degree(next, signs);
    let known = knowledge();
    let first = scoop_first(cause, next, signs, degree, leg, pinned).map(|id| known.of(id));
    if let Some(scoop) = first {
        advice.why.push(
            "little is lacking at the base of the fly: the curve is scooped there before any cloth is added"
                .into(),
        );
        advice.cause = known.cause(&scoop.key);
    }
    for setting in first.map_or(&cause.change, |scoop| &scoop.change) {
        let (target, from) = (setting.target, value_of(setting.target, leg));
        let given = if first.is_some() {
            Given { by: setting.step, amount: Amount::Step(None), of: None }
        } else {
            amount(cause, setting, next, leg, pinned, degree)
        };
        let asked = from + if setting.more { given.by } else { -given.by };
        let to = within(target, from, on_grid(target, asked, order.units));
        advice.amount = given.amount;
        let cm = !matches!(target, Target::Adjust(key) if key.about().unit == Measure::Degrees);
        let capped = |asked: f64, because| Why::Capped {
            path: target.path(),
            asked,
            given: (to - from).abs(),
            cm,
            because,
        };
        match given.of {
            Some((of, because)) => advice.why.push(capped(of, because)),
            None if (to - asked).abs() > CAPPED && (to - from).abs() >= NOTHING => {
                advice.why.push(capped(given.by, "more is beyond what is usual"));
            }
            None => {}
        }
        if (to - from).abs() < NOTHING {
            advice.why.push(
                format!(
                    "`{}` is as far as is usual already: measure again, or look for another cause",
                    target.path()
                )
                .into(),
            );
            continue;
        }
        advice.moves.push(Move { target, side, from, to });
    }
    let mut advice = drafted(advice, recipe, side)?;
    advice.beside = beside(&advice);
    Ok(advice)
}

/// A value nearer to what was asked than this is it, cm or degrees: grid and rounding.
const CAPPED: f64 = 0.08;

/// How much, as the signs of a cause say: slight where all that say it say so, strong where one does.
fn degree(next: &Ranked, signs: &[Seen]) -> Option<Degree> {
    let mut told = next.signs.iter().filter_map(|(at, _)| signs.get(*at)).map(|seen| seen.degree).peekable();
    told.peek()?;
    let told: Vec<Option<Degree>> = told.collect();
    if told.contains(&Some(Degree::Strong)) {
        return Some(Degree::Strong);
    }
    told.iter().all(|it| *it == Some(Degree::Slight)).then_some(Degree::Slight)
}

/// So little is lacking that a scoop may give it, cm.
const LITTLE: f64 = 0.5;

/// A scoop of the front curve in the place of a cause, where only a little is lacking at the base of the fly: it lengthens
/// the seam by nearly its depth, and no cloth is added.
fn scoop_first(
    cause: &Cause,
    next: &Ranked,
    signs: &[Seen],
    degree: Option<Degree>,
    leg: &Leg,
    pinned: Pinned,
) -> Option<CauseId> {
    let lacks = ["front-thigh", "front-fork-short", "abdomen-short"].contains(&cause.key.as_str());
    let at_the_fly = |seen: &Seen| match seen.sign.at {
        Some(Place::Fly) => true,
        Some(Place::Crotch) => seen.sign.face == Some(Face::Front),
        _ => false,
    };
    let told_there = next.signs.iter().filter_map(|(at, _)| signs.get(*at)).any(at_the_fly);
    let little = pinned.map_or(degree == Some(Degree::Slight), |pinned| pinned <= LITTLE);
    let id = knowledge().cause("front-curve-shallow")?;
    let scoop = knowledge().of(id);
    let room = scoop.change.iter().all(|setting| {
        let from = value_of(setting.target, leg);
        within(setting.target, from, from + setting.step) - from >= NOTHING
    });
    (lacks && told_there && little && room).then_some(id)
}

/// What goes with an opened front thigh, with its amounts: the scoop before it, half of the crotch length taken back on the
/// back, a few millimetres at the front side seam.
fn beside(advice: &Advice) -> Vec<Beside> {
    /// Of what the front's crotch seam gains, the back may give up so much where it already fitted.
    const BACK_SHARE: f64 = 0.5;
    let opens = advice.moves.iter().any(|it| it.key() == Some(Key::ThighFront) && it.to > it.from);
    let Some(effect) = advice.effect.as_ref().filter(|_| opens) else { return Vec::new() };
    let gained = effect.after.report.crotch.front - effect.before.report.crotch.front;
    let values = &effect.after.draft.parameters;
    let step = |key: &str| {
        let change = knowledge().cause(key).and_then(|id| knowledge().of(id).change.first());
        change.map_or(0.0, |setting| setting.step)
    };
    let rows = [
        (
            Key::CrotchFrontScoop,
            step("front-curve-shallow"),
            true,
            "first, if cloth stands loose at the base of the fly",
        ),
        (
            Key::ThighBackTake,
            BACK_SHARE * gained,
            false,
            "at most half of what the front's crotch seam gained, where the back had fitted",
        ),
        (Key::ThighFrontSide, step("front-thigh-side"), false, "if the thigh is full towards the side too"),
    ];
    let mut all = Vec::new();
    for (key, by, first, when) in rows {
        let from = values[key];
        let up_to = within(Target::Adjust(key), from, from + by);
        if up_to - from >= NOTHING {
            all.push(Beside { key, from, up_to, first, when });
        }
    }
    all
}

/// Which cause is taken up next.
fn next<'a>(ranking: &'a Ranking, past: &Past, why: &mut Vec<Why>) -> Option<&'a Ranked> {
    let known = knowledge();
    let worn_out = |it: &&Ranked| past.is_worn_out(known.of(it.cause));
    let top = ranking.causes.first()?;
    if worn_out(&top) {
        let lacks = &known.of(top.cause).lacks;
        why.push(
            format!(
                "the same step was given twice for \"{lacks}\" and nothing was measured since: take the measurements \
                 again before a third"
            )
            .into(),
        );
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
        let order = order_of_fitting(known.of(next.cause), known.of(first.cause));
        why.push(format!("nearly as likely as the first and taken up before it: {order}").into());
    }
    Some(next)
}

/// The place of a cause in the order of fitting.
fn turn(cause: &Cause) -> (f64, usize, bool) {
    (cause.turn, cause.kind as usize, cause.on_back)
}

fn order_of_fitting(sooner: &Cause, later: &Cause) -> &'static str {
    use Kind::{Curve, Fork, Length};
    match (sooner.kind, later.kind) {
        (Curve, Fork) => "a scoop before an extension",
        (Length, kind) if kind != Length => "length before width",
        _ if later.on_back && !sooner.on_back => "the front before the back",
        _ => "the order of fitting has it so",
    }
}

/// The side that a change is given to: both where the centres sew to each other, whatever leg shows it.
fn side_of(cause: &Cause, side: Side, why: &mut Vec<Why>) -> Side {
    let of_the_trunk = |setting: &Setting| match setting.target {
        Target::Adjust(key) => key.about().one_leg == OneLeg::Never,
        Target::Ease(_) | Target::Style(_) => true,
    };
    if side == Side::Both || !cause.change.iter().any(of_the_trunk) {
        return side;
    }
    why.push("one leg cannot have it alone, since the centres sew to each other: it is for both".into());
    Side::Both
}

/// Takes the last change back where it made it worse.
fn undo(advice: &mut Advice, past: &Past, legs: &Legs) -> bool {
    let steps = past.last();
    for step in &steps {
        if let (Some(from), Some((side, key))) = (step.from, parameter(&step.path)) {
            let now = legs.of(side).draft.parameters[key];
            if (now - from).abs() > 1e-9 {
                advice.moves.push(Move { target: Target::Adjust(key), side, from: now, to: from });
            }
        }
    }
    if advice.moves.is_empty() {
        if !steps.is_empty() {
            advice
                .why
                .push("the record does not say what the last change was before: take it back by hand".into());
        }
        return false;
    }
    advice.amount = Amount::Undone;
    advice
        .why
        .push("it looks worse since the last change: that is taken back first, then judged again".into());
    true
}

/// The order with some keys moved.
fn moved(order: &Order, moves: &[Move]) -> Order {
    let mut order = order.clone();
    for it in moves {
        match it.target {
            Target::Adjust(key) => {
                let list = order.adjustments_of(it.side);
                list.retain(|old| old.key != key);
                list.push(Adjustment { key, value: it.to, from: Giver::File });
                list.sort_by_key(|it| it.key);
            }
            Target::Ease(at) => order.trousers.ease[at] = Some(it.to),
            Target::Style(style) => order.trousers.style[style] = Some(it.to),
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
                    let why = format!("of the whole amount only {part} of it can be drawn on this draft");
                    advice.why.push(why.into());
                }
                let (before, after) = (before.of(side).clone(), after.of(side).clone());
                advice.effect = Some(Effect { before, after });
                return Ok(advice);
            }
            Err(mistakes) => refusal = mistakes.iter().next().map(|mistake| mistake.title()).or(refusal),
        }
    }
    advice.moves.clear();
    let refusal = refusal.unwrap_or_default();
    advice.why.push(format!("the change cannot be drawn on this draft: {refusal}").into());
    Ok(advice)
}
