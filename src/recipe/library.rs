//! The recipes that come with the program.

use crate::mistake::Source;

/// Name and text of every shipped recipe, in the order in which they are listed.
const SHIPPED: [(&str, &str); 1] = [("classic", include_str!("../../blocks/classic.toml"))];

/// The names of the shipped recipes.
pub fn shipped_names() -> impl Iterator<Item = &'static str> {
    SHIPPED.iter().map(|(name, _)| *name)
}

/// The text of a shipped recipe, named `blocks/classic.toml` for messages.
pub fn shipped(name: &str) -> Option<Source> {
    let (name, text) = SHIPPED.iter().find(|(shipped, _)| *shipped == name)?;
    Some(Source::new(format!("blocks/{name}.toml"), *text))
}
