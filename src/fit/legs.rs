//! One leg, or the two where they differ.

use std::sync::Arc;

use super::{Report, SeamRow, drafted, front_width_wanted, judged, limit, solve::solve_one_leg};
use crate::{
    adjust::Key,
    draft::{Draft, draft, taped_at},
    mistake::{Mistake, Mistakes, Notice},
    order::{Adjustment, Giver, Order},
    recipe::Recipe,
    terms::{FitKind, Measurement, Panel, Seam, Side},
    voice::{Sentence, amount, length, named},
};

/// One leg drafted and judged.
#[derive(Clone, Debug)]
pub struct Leg {
    /// The draft; its `side` says which leg it is.
    pub draft: Draft,
    /// What was found about it.
    pub report: Report,
}

/// The legs of one pair of trousers: one draft where they are alike, left and right where they differ.
#[derive(Clone, Debug)]
pub struct Legs {
    /// The leg of both sides, or the left one.
    pub first: Leg,
    /// The right one, where it is not like the left.
    pub second: Option<Leg>,
    /// Left against right at the centre front and the centre back; empty where the legs are alike.
    pub centres: Vec<SeamRow>,
}

/// Left and right crotch seams are eased together up to this difference, cm: common practice, no source.
const EASED: f64 = 0.3;

/// Drafts what a measurement file orders, each leg for itself where it says so. What a fit finds for the trunk is found
/// once and is the same for both, since centre front sews to centre front and centre back to centre back.
///
/// # Errors
/// As [`drafted`]; and when the left and right crotch seams would differ by more than can be eased.
pub fn drafted_legs(order: &Order, recipe: &Arc<Recipe>) -> Result<Legs, Mistakes> {
    legs(order, recipe).map_err(|mistakes| mistakes.in_unit(order.units))
}

fn legs(order: &Order, recipe: &Arc<Recipe>) -> Result<Legs, Mistakes> {
    let (common, report) = drafted(&order.of_both_legs(), recipe)?;
    if !order.has_two_legs() {
        return Ok(Legs::alike(common, report));
    }
    let found: Vec<Adjustment> = common.adjustments.iter().filter(|it| !it.is_by_hand()).copied().collect();
    let own_thigh = |side: Side| {
        let own = if side == Side::Left { &order.left } else { &order.right };
        let taken = |m: Measurement| own.as_ref().is_some_and(|leg| leg.measured[m].is_some());
        taken(Measurement::ThighGirth) || taken(Measurement::FrontThighArc)
    };
    let leg = |side| {
        let order = order.of_leg(side);
        let mut leg = draft(&order, recipe)?;
        leg.side = side;
        limit::refuse_beyond_hard(&leg, &order)?;
        leg.fit = common.fit;
        if common.fit == FitKind::Measured {
            let given = |key: Key| order.adjustments.iter().any(|it| it.key == key);
            leg = leg.fitted(found.iter().copied().filter(|it| !given(it.key)))?;
            if own_thigh(side) {
                let solved = solve_one_leg(&leg.plan, &leg.body, &leg.parameters, given);
                leg = leg.fitted(solved.found.into_iter().map(|(key, value, _)| Adjustment {
                    key,
                    value,
                    from: Giver::Fit,
                }))?;
            }
        }
        limit::refuse_unsound(&leg, &order)?;
        let unmet = own_thigh(side).then(|| unmet_thigh(&leg)).flatten();
        let (mut draft, report) = judged(leg, &order);
        draft.notices.extend(unmet);
        Ok::<_, Mistakes>(Leg { draft, report: report.of_side(side) })
    };
    let (left, right) = (leg(Side::Left)?, leg(Side::Right)?);
    let centres = centres(&left, &right);
    refuse_unequal(&centres)?;
    Ok(Legs { first: left, second: Some(right), centres })
}

/// A leg whose own front thigh arc could not be met beside the other leg.
fn unmet_thigh(leg: &Draft) -> Option<Notice> {
    /// Less than this is the tape's, cm.
    const MET: f64 = 0.5;
    let taped = taped_at(&leg.plan, &leg.parameters);
    let missing = front_width_wanted(&leg.plan, &taped, &leg.body)? - taped.front_thigh?;
    (missing > MET).then(|| {
        Notice::mind(
            "leg-unmet",
            "the front of the {side} thigh stays {missing} narrower than its arc asks for: the centre seams of the two legs \
             bear no more difference. Open both with `thigh.front`, and take what is then too wide on the other leg off \
             its side seam with `thigh.outer`",
        )
        .with("side", leg.side)
        .with("missing", length(missing))
    })
}

fn centres(left: &Leg, right: &Leg) -> Vec<SeamRow> {
    let row = |seam, panel| {
        let length = |leg: &Leg| leg.draft.shape.panel(panel).measured_crotch_length();
        SeamRow { seam, side: Side::Both, front: length(left), back: length(right), allowed: (-EASED, EASED) }
    };
    vec![row(Seam::CentreFront, Panel::Front), row(Seam::CentreBack, Panel::Back)]
}

fn refuse_unequal(centres: &[SeamRow]) -> Result<(), Mistakes> {
    let wrong: Vec<Mistake> = centres
        .iter()
        .filter(|row| !row.holds())
        .map(|row| {
            let title = Sentence::new(
                "the {seam} is {left} on the left and {right} on the right: at most {eased} can be eased",
            )
            .with("seam", named(row.seam.plain()))
            .with("left", amount(row.front))
            .with("right", amount(row.back))
            .with("eased", length(EASED));
            Mistake::new(title).help(
                "what lengthens a crotch seam goes to both legs; what is then too wide on one of them comes off its side \
                 seam: `outer = {-0.4|\"-1/8\"}` under `[right.thigh]`, say",
            )
        })
        .collect();
    if wrong.is_empty() { Ok(()) } else { Err(wrong.into()) }
}

impl Legs {
    /// Two legs alike.
    pub fn alike(draft: Draft, report: Report) -> Self {
        Self { first: Leg { draft, report }, second: None, centres: Vec::new() }
    }

    /// The one or the two, the left first.
    pub fn iter(&self) -> impl Iterator<Item = &Leg> + Clone {
        std::iter::once(&self.first).chain(&self.second)
    }

    /// The leg of a side: the one that is for both where the legs are alike.
    pub fn of(&self, side: Side) -> &Leg {
        match (&self.second, side) {
            (Some(right), Side::Right) => right,
            _ => &self.first,
        }
    }

    /// What was found rather than given by hand: of both legs, or of one where they differ in it.
    pub fn found(&self) -> Vec<(Side, Adjustment)> {
        let of = |leg: &Leg| {
            leg.draft.adjustments.iter().filter(|it| !it.is_by_hand()).copied().collect::<Vec<_>>()
        };
        let first = of(&self.first);
        let Some(second) = self.second.as_ref().map(of) else {
            return first.into_iter().map(|it| (Side::Both, it)).collect();
        };
        let both = first.iter().filter(|it| second.contains(it)).map(|it| (Side::Both, *it));
        let left = first.iter().filter(|it| !second.contains(it)).map(|it| (Side::Left, *it));
        let right = second.iter().filter(|it| !first.contains(it)).map(|it| (Side::Right, *it));
        both.chain(left).chain(right).collect()
    }

    /// Puts notices of the file before those of the draft.
    pub(crate) fn begin_with(&mut self, notices: impl IntoIterator<Item = Notice>) {
        self.first.draft.notices.splice(0..0, notices);
    }
}
