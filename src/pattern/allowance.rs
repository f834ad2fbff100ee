//! Seam allowances: what the file says, else what the trade leaves.

use std::ops::Index;

use crate::terms::{Allowance, EnumMap};

/// What the pieces are cut for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Purpose {
    /// Trousers to wear.
    #[default]
    Wear,
    /// A toile: more on the upright seams, to let out, and lines across to see by.
    Toile,
}

/// What is left when the file says nothing, cm.
struct Usual {
    wear: f64,
    toile: f64,
}

/// Waist and curve narrow, since a wide edge would not lie round them; upright seams wider, to press open; the seat seam
/// widest at the top, to let out: common practice, no source. On a toile 2.5 on the upright seams (University of
/// Minnesota, Extension Folder 244).
fn usual(at: Allowance) -> Usual {
    let (wear, toile) = match at {
        Allowance::Waist | Allowance::CrotchSeam => (1.0, 1.0),
        Allowance::SideSeam | Allowance::Inseam => (1.5, 2.5),
        Allowance::Hem => (4.0, 4.0),
        Allowance::CentreBackWaist => (2.5, 2.5),
    };
    Usual { wear, toile }
}

/// The allowance of every edge, cm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Allowances(EnumMap<Allowance, f64>);

impl Allowances {
    /// The allowances that a file gives, with the usual ones in place of the others.
    pub fn of(given: &EnumMap<Allowance, Option<f64>>, purpose: Purpose) -> Self {
        Self(given.map(|at, given| {
            let usual = usual(at);
            given.unwrap_or(match purpose {
                Purpose::Wear => usual.wear,
                Purpose::Toile => usual.toile,
            })
        }))
    }

    /// The same with another allowance at one place.
    #[must_use]
    pub fn with(&self, at: Allowance, cm: f64) -> Self {
        let mut all = *self;
        all.0[at] = cm;
        all
    }
}

impl Index<Allowance> for Allowances {
    type Output = f64;
    fn index(&self, at: Allowance) -> &f64 {
        &self.0[at]
    }
}
