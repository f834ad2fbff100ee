//! A parametric trouser block drafter.
//!
//! Data goes one way: a measurement file becomes a [`body`] and an [`order`]; with a [`recipe`] they become a
//! [`draft`]; the draft is judged by [`fit`] and leaves as an [`answer`] or on [`paper`].

pub mod adjust;
pub mod answer;
pub mod body;
pub mod booklet;
pub mod command;
pub mod curve;
pub mod draft;
pub mod drawing;
pub mod file;
pub mod fit;
pub mod mistake;
pub mod order;
#[cfg(feature = "serve")]
pub mod page;
pub mod paper;
pub mod pattern;
pub mod recipe;
pub mod terms;
pub mod toile;
pub mod trial;
pub mod unit;
pub mod voice;
