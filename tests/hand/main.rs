//! The fit parameters against scissors and tape: the finished base outline is cut, turned, spread and closed as a
//! fitter does it on paper, and must give what the parameter drafts.
//!
//! Nothing here but the path type, the edges and the roles is shared with the drafting: lines are dense points, lengths
//! are sums of chords, and every cut, turn, fade, dart and closing curve is written again.

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
mod thigh;
mod together;
mod waist;
