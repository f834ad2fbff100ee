//! A parametric trouser block drafter.
//!
//! Data goes one way: a measurement file becomes a [`body`] and an [`order`]; with a [`recipe`] they become a
//! [`draft`]; the draft is judged by [`fit`] and leaves as an [`answer`] or on [`paper`].

pub mod adjust;
pub mod body;
pub mod curve;
pub mod mistake;
pub mod order;
pub mod terms;
pub mod unit;
