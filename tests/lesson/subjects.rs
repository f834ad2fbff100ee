//! Bodies to teach on.

use breeks::{
    fit::{Legs, drafted_legs},
    order::{Order, demo},
    paper::Subject,
    recipe::load,
    unit::Unit,
};

/// A demo body drafted by a recipe.
pub(crate) struct Taught {
    pub(crate) legs: Legs,
    pub(crate) order: Order,
}

impl Taught {
    pub(crate) fn demo(name: &str, block: &str, set: &[&str]) -> Self {
        let set: Vec<String> = set.iter().map(|text| (*text).to_owned()).collect();
        let (order, _) = Order::read_with(&demo(name).expect("a demo"), &set).expect("a sound demo");
        let legs = drafted_legs(&order, &load(block).expect("a shipped recipe")).expect("a body");
        Self { legs, order }
    }

    pub(crate) fn subject(&self, unit: Unit) -> Subject<'_> {
        Subject { draft: &self.legs.first.draft, report: &self.legs.first.report, unit }
    }
}
