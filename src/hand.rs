//! A correction as the hand does it: cut, hinge, turn or slide, draw again. Which act a parameter is stands in one table
//! ([`act`]); with two drafts of one body it becomes [`Work`], a list of actions in which every number is rounded as it is
//! printed, so that whoever has the pattern and these figures alone comes to the drafted outline within a millimetre.

mod act;
mod measured;
mod opening;
mod words;

pub use act::{Cut, Height, Part, Redrawn, act};
pub use measured::{Fade, Step, Work, works};
pub(crate) use opening::{Opening, distance, run, waist};
