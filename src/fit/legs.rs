//! One leg, or the two where they differ.

use std::sync::Arc;

use super::{Report, SeamRow, drafted, judged, limit};
use crate::{
    adjust::Key,
    draft::{Draft, draft},
    mistake::{Mistake, Mistakes, Notice},
    order::{Adjustment, Order},
    recipe::Recipe,
    terms::{FitKind, Panel, Seam, Side},
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
    let of_the_file = |key: Key| order.adjustments.iter().any(|it| it.key == key);
    let found: Vec<Adjustment> =
        common.adjustments.iter().filter(|it| !of_the_file(it.key)).copied().collect();
    let leg = |side| {
        let order = order.of_leg(side);
        let mut leg = draft(&order, recipe)?;
        if common.fit == FitKind::Measured {
            let given = |key: Key| order.adjustments.iter().any(|it| it.key == key);
            leg = leg.fitted(found.iter().copied().filter(|it| !given(it.key)))?;
        }
        leg.side = side;
        limit::refuse(&leg, &order)?;
        let (draft, report) = judged(leg, &order);
        Ok::<_, Mistakes>(Leg { draft, report: report.of_side(side) })
    };
    let (left, right) = (leg(Side::Left)?, leg(Side::Right)?);
    let centres = centres(&left, &right);
    refuse_unequal(&centres)?;
    Ok(Legs { first: left, second: Some(right), centres })
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
            Mistake::new(title)
                .help("give it to both legs, and take the surplus off the other leg with `thigh.inner`")
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

    /// Puts notices of the file before those of the draft.
    pub(crate) fn begin_with(&mut self, notices: impl IntoIterator<Item = Notice>) {
        self.first.draft.notices.splice(0..0, notices);
    }
}
