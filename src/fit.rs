//! Whether a draft fits and sews: its levels against the body, its seams walked, its joins measured, its crotch
//! length counted; and how far a parameter may go.

mod front_thigh;
mod limit;
mod report;
mod solve;

pub use front_thigh::{front_width_wanted, opening_for_arc};
pub use report::{CrotchBudget, CrotchShare, JoinRow, LevelRow, Report, SeamRow};
pub use solve::{Solved, can_be_met, solve};

use std::sync::Arc;

use crate::{
    draft::{Draft, draft},
    mistake::Mistakes,
    order::Order,
    recipe::Recipe,
};

/// Drafts what a measurement file orders, and judges it.
///
/// # Errors
/// As [`draft`]; and when a fit parameter is beyond its hard limit or would break the outline, with the largest value
/// that would not.
pub fn drafted(order: &Order, recipe: &Arc<Recipe>) -> Result<(Draft, Report), Mistakes> {
    let mut draft = draft(order, recipe)?;
    let report = Report::of(&draft.plan, &draft.parameters, &draft.shape, &draft.body);
    limit::refuse(&draft, &report)?;
    let said = limit::beyond_usual(&draft).chain(front_thigh::notices(&draft, &report)).collect::<Vec<_>>();
    draft.notices.extend(said);
    Ok((draft, report))
}
