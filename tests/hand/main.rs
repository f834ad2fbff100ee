//! The fit parameters against scissors and tape: the finished base outline is cut, turned, spread and closed as a
//! fitter does it on paper, and must give what the parameter drafts.
//!
//! Only the path type, the edges and darts, the levels and the roles (of the construction too: the side before it was
//! walked) are shared with the drafting: lines are dense points, lengths
//! are sums of chords, and every cut, turn, fade, dart and closing curve is written again.
#![allow(clippy::unwrap_used, reason = "a body that is not drawn fails the test")]
#![allow(clippy::neg_cmp_op_on_partial_ord, reason = "a number that is none must count as a difference")]

mod bodies;
mod closing;
mod compare;
mod paper;
#[path = "../people/mod.rs"]
mod people;

mod abdomen;
mod crotch;
mod leg;
mod seat;
mod side;
mod strips;
mod style_line;
mod thigh;
mod together;
mod waist;
