//! From an order to everything made of it: the one way that every command and the page take.

use std::sync::Arc;

use crate::{
    fit::{Leg, Legs, Overlaid, Verdict, drafted_legs, known},
    mistake::{Mistakes, Notice},
    order::Order,
    pattern::{Allowances, Pattern, Wanted},
    recipe::{self, Recipe},
    terms::Side,
};

/// An order with everything that was made of it.
#[derive(Clone, Debug)]
pub struct Made {
    /// What was ordered.
    pub order: Order,
    /// The recipe by which it was drafted.
    pub recipe: Arc<Recipe>,
    /// The leg of both sides, or the left and the right one: drafted, fitted and judged.
    pub legs: Legs,
    /// The pieces cut of them.
    pub pattern: Pattern,
}

/// Makes what a measurement file orders, with the pieces that are wanted; `said` is what the reading of the file had to
/// say.
///
/// # Errors
/// As [`recipe::load`] and [`make_by`].
pub fn make(order: Order, said: Vec<Notice>, wanted: &Wanted) -> Result<Made, Mistakes> {
    let recipe = recipe::load(&order.trousers.block)?;
    make_by(&recipe, order, said, wanted)
}

/// The same by a recipe that is loaded, for whoever drafts many bodies by it.
///
/// # Errors
/// As [`drafted_legs`] and [`Pattern::of`].
pub fn make_by(
    recipe: &Arc<Recipe>,
    order: Order,
    said: Vec<Notice>,
    wanted: &Wanted,
) -> Result<Made, Mistakes> {
    let mut legs = drafted_legs(&order, recipe)?;
    let allowances = Allowances::of(&order.trousers.allowance, wanted.purpose);
    let pattern = Pattern::of(legs.iter().map(|leg| &leg.draft), &allowances, wanted)?;
    legs.begin_with(said.into_iter().chain(pattern.notices.iter().cloned()));
    Ok(Made { order, recipe: Arc::clone(recipe), legs, pattern })
}

impl Made {
    /// What a person should know before cutting, each thing once: of the file, of the pieces, of the legs.
    pub fn notices(&self) -> Vec<Notice> {
        Notice::once(self.legs.iter().flat_map(|leg| known(&leg.draft, &leg.report)))
    }

    /// The verdict on it: every command, sheet and answer says this one.
    pub fn verdict(&self) -> Verdict {
        Verdict::of(&self.notices())
    }

    /// The sides to be looked at one by one when this is laid over another draft: both at once where all legs are alike.
    pub fn sides_beside(&self, other: &Self) -> &'static [Side] {
        let unlike = self.legs.second.is_some() || other.legs.second.is_some();
        if unlike { &[Side::Left, Side::Right] } else { &[Side::Both] }
    }

    /// The leg of a side as one of two drafts that are laid over each other, called so in words.
    pub fn overlaid<'a>(&'a self, side: Side, said: &'a str) -> Overlaid<'a> {
        let Leg { draft, report } = self.legs.of(side);
        Overlaid { said, draft, report }
    }
}
