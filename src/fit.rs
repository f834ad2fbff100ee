//! Whether a draft fits and sews: its levels against the body, its seams walked, its joins measured, its crotch
//! length counted; how far a parameter may go; and what two drafts differ in.

mod difference;
mod front_thigh;
mod legs;
mod limit;
mod measured;
mod report;
mod seen;
mod solve;
mod verdict;

pub use difference::{
    Change, CrotchChange, DartChange, Difference, EdgeChange, Laid, LevelChange, Overlaid, ParameterChange,
    PointChange, SeamChange, ShareChange,
};
pub use front_thigh::{front_width_wanted, opening_for_arc};
pub use legs::{Leg, Legs, drafted_legs};
pub use report::{CrotchBudget, CrotchShare, JoinRow, LevelRow, Report, SeamRow};
pub use solve::{Solved, part_of_estimate, solve, turn};
pub use verdict::{Verdict, known};

use std::sync::Arc;

use crate::{
    draft::{Draft, draft},
    mistake::Mistakes,
    order::Order,
    recipe::Recipe,
    terms::{Panel, Word as _},
};

/// Drafts what a measurement file orders, meets what was measured where the file's `fit` says so, and judges it.
///
/// # Errors
/// As [`draft`]; and when a fit parameter of the file is beyond its hard limit or would break the outline, with the
/// largest value that would not.
pub fn drafted(order: &Order, recipe: &Arc<Recipe>) -> Result<(Draft, Report), Mistakes> {
    let draft = draft(order, recipe)?;
    limit::refuse_beyond_hard(&draft, order)?;
    let draft = measured::met(draft, order)?;
    limit::refuse_unsound(&draft, order)?;
    Ok(judged(draft, order))
}

/// A draft with its report, and with what a person should know of its parameters.
fn judged(mut draft: Draft, order: &Order) -> (Draft, Report) {
    let report = Report::of(&draft.plan, &draft.parameters, &draft.shape, &draft.body);
    let mut said: Vec<_> = limit::beyond_usual(&draft).collect();
    said.extend(limit::held_scoops(&draft));
    said.extend(measured::notices(&draft, &report, order));
    said.extend(front_thigh::notices(&draft, &report));
    said.extend(draft.back_drop_notice());
    said.extend(Panel::ALL.iter().flat_map(|panel| seen::notices(draft.shape.panel(*panel))));
    draft.notices.extend(said);
    (draft, report)
}
