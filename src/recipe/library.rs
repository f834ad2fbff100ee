//! The recipes that come with the program.

use std::{path::Path, sync::Arc};

use super::Recipe;
use crate::mistake::{Mistake, Mistakes, Source};

/// Name and text of every shipped recipe, in the order in which they are listed.
const SHIPPED: [(&str, &str); 6] = [
    ("classic", include_str!("../../blocks/classic.toml")),
    ("tailored", include_str!("../../blocks/tailored.toml")),
    ("straight", include_str!("../../blocks/straight.toml")),
    ("slim", include_str!("../../blocks/slim.toml")),
    ("jeans", include_str!("../../blocks/jeans.toml")),
    ("wide", include_str!("../../blocks/wide.toml")),
];

/// The names of the shipped recipes.
pub fn shipped_names() -> impl Iterator<Item = &'static str> {
    SHIPPED.iter().map(|(name, _)| *name)
}

/// Name and text of every skeleton: a small recipe to begin one's own from.
const SKELETONS: [(&str, &str); 2] = [
    ("women", include_str!("../../blocks/skeletons/women.toml")),
    ("men", include_str!("../../blocks/skeletons/men.toml")),
];

/// The names of the skeletons.
pub fn skeleton_names() -> impl Iterator<Item = &'static str> {
    SKELETONS.iter().map(|(name, _)| *name)
}

/// The text of a skeleton.
pub fn skeleton(name: &str) -> Option<Source> {
    let (name, text) = SKELETONS.iter().find(|(known, _)| *known == name)?;
    Some(Source::new(format!("blocks/skeletons/{name}.toml"), *text))
}

/// The text of a shipped recipe, named `blocks/classic.toml` for messages.
pub fn shipped(name: &str) -> Option<Source> {
    let (name, text) = SHIPPED.iter().find(|(shipped, _)| *shipped == name)?;
    Some(Source::new(format!("blocks/{name}.toml"), *text))
}

impl Recipe {
    /// Whether it came with the program.
    pub fn is_shipped(&self) -> bool {
        SHIPPED.iter().any(|(_, text)| *self.source().text == **text)
    }
}

/// The text of the recipe that a measurement file or a command names: a shipped one, or a file of one's own.
///
/// # Errors
/// When there is neither, or the file cannot be read.
pub fn source(name: &str) -> Result<Source, Mistake> {
    if let Some(source) = shipped(name) {
        return Ok(source);
    }
    if is_path(name) {
        return Source::read(Path::new(name));
    }
    let known: Vec<&str> = shipped_names().collect();
    Err(Mistake::new(format!("there is no recipe `{name}`"))
        .nearest(name, known.iter().copied())
        .help(format!("the shipped recipes are {}; one's own is named by its path", known.join(", "))))
}

/// The recipe that a measurement file or a command names: a shipped one, or a file of one's own.
///
/// # Errors
/// When there is neither, or when the file is no sound recipe.
pub fn load(name: &str) -> Result<Arc<Recipe>, Mistakes> {
    Recipe::parse(&source(name)?).map(Arc::new)
}

/// A name with a folder or an ending is a path.
fn is_path(name: &str) -> bool {
    name.contains(['/', '\\', '.'])
}
