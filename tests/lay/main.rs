//! Parts laid on cloth and on paper: nothing overlaps, nothing sticks out, and little is wasted.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on says so by panicking")]

mod bodies;
mod cloth;
mod graded;
mod on_paper;
mod overlap;
mod published;
mod small_cases;
