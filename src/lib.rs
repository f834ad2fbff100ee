//! A parametric trouser block drafter.
//!
//! Data goes one way: a measurement file becomes an [`order`] with a [`body`]; [`making`] drafts it by a [`recipe`], judges
//! it by [`fit`] and cuts its [`pattern`]; what is made leaves as an [`answer`] or on [`paper`].

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
pub mod making;
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
