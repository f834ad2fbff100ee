//! Bodies to teach on.

use breeks::{
    making::{Made, make_by},
    order::{Order, demo},
    pattern::Wanted,
    recipe::load,
    told::Subject,
    unit::Unit,
};

/// A demo body drafted by a recipe.
pub(crate) struct Taught {
    pub(crate) made: Made,
}

impl Taught {
    pub(crate) fn demo(name: &str, block: &str, set: &[&str]) -> Self {
        let set: Vec<String> = set.iter().map(|text| (*text).to_owned()).collect();
        let (order, _) = Order::read_with(&demo(name).expect("a demo"), &set).expect("a sound demo");
        let recipe = load(block).expect("a shipped recipe");
        let made = make_by(&recipe, order, Vec::new(), &Wanted::default()).expect("a body");
        Self { made }
    }

    pub(crate) fn subject(&self, unit: Unit) -> Subject<'_> {
        Subject::of(&self.made.legs.first, unit)
    }
}
