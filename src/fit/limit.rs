//! How far a fit parameter may go: its usual range, its hard limit, and what the outline bears.

use kurbo::ParamCurve;

use super::{Report, measured::without_hand};
use crate::{
    adjust::{Key, Parameters},
    body::Body,
    draft::{Draft, Plan, Shape, centre_back_lean, shape},
    mistake::{Mistake, Mistakes, Notice},
    order::Order,
    terms::Panel,
    voice::{Sentence, amount, angles, degrees, list},
};

/// The lean of a centre back that hangs and sits, degrees: common practice, no source.
pub(super) const LEAN: (f64, f64) = (3.0, 20.0);
/// Limits are named on this grid, cm or degrees: what a ruler shows.
const GRID: f64 = 0.05;

/// Parameters beyond their usual range, with what the trade would look at instead.
pub(super) fn beyond_usual(draft: &Draft) -> impl Iterator<Item = Notice> {
    draft
        .parameters
        .set()
        .filter(|(key, value)| {
            /// Beyond by less than a tape shows is not beyond: the inch of a cutter is a little more than 2.5 cm.
            const SHOWN: f64 = 0.05;
            let (least, most) = key.about().usual;
            *value < least.min(0.0) - SHOWN || *value > most + SHOWN
        })
        .map(|(key, value)| {
            let about = key.about();
            let notice = Notice::mind("beyond-usual", "`{key}` {value} is beyond its usual range, {usual}")
                .with("key", key)
                .with("value", about.unit.amount(value))
                .with("usual", about.unit.range(about.usual));
            about.companions.iter().fold(notice, |notice, (companion, why)| {
                notice.then(
                    Sentence::new("; `{companion}`: {why}").with("companion", *companion).with("why", *why),
                )
            })
        })
}

/// Scoops for which the crotch curve has no room in full: a curve cannot go beyond the corner of its tangents.
pub(super) fn held_scoops(draft: &Draft) -> impl Iterator<Item = Notice> {
    /// Less of what was asked than this part is told.
    const ENOUGH: f64 = 0.85;
    let scoops = [(Key::CrotchFrontScoop, Panel::Front), (Key::SeatScoop, Panel::Back)];
    let with = shape(&draft.plan, &draft.parameters);
    scoops.into_iter().filter_map(move |(key, panel)| {
        let asked = draft.parameters[key];
        let without = shape(&draft.plan, &draft.parameters.without(key));
        let middle = |shape: &Shape| shape.panel(panel).crotch_seam.cubics()[0].eval(0.5);
        let given = middle(&with).distance(middle(&without));
        (given < ENOUGH * asked.abs()).then(|| {
            Notice::note(
                "scoop-held",
                "the {panel} crotch curve has room for {given} of `{key}` {asked}: deeper, it would turn a corner; give \
                 the rest with `crotch.depth`",
            )
            .with("panel", panel)
            .with("given", amount(given))
            .with("key", key)
            .with("asked", amount(asked))
        })
    })
}

/// Refuses parameters beyond their hard limit.
pub(super) fn refuse_beyond_hard(draft: &Draft, order: &Order) -> Result<(), Mistakes> {
    let beyond: Vec<Mistake> = draft
        .parameters
        .set()
        .filter(|(key, value)| {
            let (least, most) = key.about().hard;
            !(least..=most).contains(value)
        })
        .map(|(key, value)| order.at_parameter(beyond_hard(draft, key, value), draft.side, key))
        .collect();
    if beyond.is_empty() { Ok(()) } else { Err(beyond.into()) }
}

/// Refuses parameters of a person's hand under which the outline would not be true, beside what a fit has found.
pub(super) fn refuse_unsound(draft: &Draft, order: &Order) -> Result<(), Mistakes> {
    let by_hand: Vec<(Key, f64)> =
        draft.adjustments.iter().filter(|it| it.is_by_hand()).map(|it| (it.key, it.value)).collect();
    if by_hand.is_empty() {
        return Ok(());
    }
    let judge = Judge { plan: &draft.plan, body: &draft.body };
    let Some(why) = judge.breaks(&draft.parameters) else { return Ok(()) };
    let found = without_hand(draft);
    if judge.breaks(&found).is_some() {
        // The block itself is not true for this body: that is said by the report, not laid on a parameter.
        return Ok(());
    }
    let around = |mistake: Mistake| match found.set().next() {
        Some(_) => mistake.help("or let `breeks fit --around` find the rest of the fit round what you gave"),
        None => mistake,
    };
    let culprits: Vec<Mistake> = by_hand
        .iter()
        .filter(|(key, _)| judge.breaks(&draft.parameters.without(*key)).is_none())
        .map(|(key, value)| {
            let title = Sentence::new("`{key}` {value} cannot be drawn: {why}")
                .with("key", *key)
                .with("value", key.about().unit.amount(*value))
                .with("why", why.clone());
            let mistake = Mistake::new(title).help(judge.largest(&draft.parameters, *key, *value));
            order.at_parameter(around(mistake), draft.side, *key)
        })
        .collect();
    if culprits.is_empty() {
        let all = by_hand.iter().map(|(key, value)| {
            Sentence::new("`{key}` {value}").with("key", *key).with("value", key.about().unit.amount(*value))
        });
        let title =
            Sentence::new("{all} cannot be drawn together: {why}").with("all", list(all)).with("why", why);
        return Err(around(Mistake::new(title).help("give less of each, the largest first")).into());
    }
    Err(culprits.into())
}

fn beyond_hard(draft: &Draft, key: Key, value: f64) -> Mistake {
    let about = key.about();
    let limit = if value > about.hard.1 { about.hard.1 } else { about.hard.0 };
    let judge = Judge { plan: &draft.plan, body: &draft.body };
    let title = Sentence::new("`{key}` is {value}, beyond its hard limit of {limits}")
        .with("key", key)
        .with("value", about.unit.amount(value))
        .with("limits", about.unit.range(about.hard));
    let mistake = Mistake::new(title)
        .help(judge.largest(&draft.parameters.with(key, limit), key, limit))
        .help(about.advice());
    match about.companions.first() {
        Some((companion, why)) => mistake.help(
            Sentence::new("the trade would look at `{companion}`: {why}")
                .with("companion", *companion)
                .with("why", *why),
        ),
        None => mistake,
    }
}

/// Whether panels with some parameters can be used.
pub(super) struct Judge<'a> {
    pub plan: &'a Plan,
    pub body: &'a Body,
}

impl Judge<'_> {
    /// Why the outline with these parameters is not to be used, if so.
    pub(super) fn breaks(&self, parameters: &Parameters) -> Option<Sentence> {
        let drawn = shape(self.plan, parameters);
        let report = Report::without_shares(self.plan, &drawn, self.body);
        if !report.is_true() {
            return report.notices().into_iter().next().map(|notice| notice.said);
        }
        if parameters[Key::SeatAngle] != 0.0 {
            let lean = centre_back_lean(&drawn.back.roles);
            if !(LEAN.0..=LEAN.1).contains(&lean) {
                return Some(
                    Sentence::new("the centre back would lean {lean}, {usual} hangs and sits")
                        .with("lean", degrees(lean))
                        .with("usual", angles(LEAN)),
                );
            }
        }
        None
    }

    /// The sentence that names the largest value towards `value` that can be drawn with the other parameters kept.
    fn largest(&self, parameters: &Parameters, key: Key, value: f64) -> Sentence {
        let holds = |value: f64| self.breaks(&parameters.with(key, value)).is_none();
        let mut good = key.about().default;
        if !holds(good) {
            return Sentence::new("with the other parameters as they are no value of `{key}` can be drawn")
                .with("key", key);
        }
        let mut bad = value;
        if holds(bad) {
            good = bad;
        }
        while (bad - good).abs() > 0.1 * GRID {
            let middle = 0.5 * (good + bad);
            if holds(middle) { good = middle } else { bad = middle }
        }
        let shown = (good.abs() / GRID + 1e-6).floor() * GRID * good.signum() + 0.0;
        Sentence::new("the largest that can be drawn here is {shown}")
            .with("shown", key.about().unit.limit(shown))
    }
}
