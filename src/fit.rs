//! Whether a draft fits and sews: its levels against the body, its seams walked, its joins measured, its crotch
//! length counted.

mod report;

pub use report::{CrotchBudget, JoinRow, LevelRow, Report, SeamRow};
