//! The person: what was measured, what follows from it, and what the surveys let one estimate.

mod equation;
mod limit;
mod people;
mod resolve;
mod value;

pub use limit::{Fault, faults};
pub use people::{Doubt, Grade, doubts, oddest_of, people};
pub use value::{Body, Given, Origin, Value};
