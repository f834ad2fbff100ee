//! What the sheet asks for.

use serde::Deserialize;

use super::toile::Recorded;

use crate::{
    mistake::{Mistake, Mistakes},
    order::Change,
    unit::Unit,
};

/// A key as a person changed it: what was typed, or nothing where the key goes.
#[derive(Clone, Debug, Deserialize, PartialEq)]
pub(super) struct Typed(pub String, pub Option<String>);

/// More changes than a file has keys are none of a person's.
const MOST_CHANGES: usize = 300;

/// A mistake, and the key it was made at, where that is known.
#[derive(Debug)]
pub(super) struct Refusal {
    pub key: Option<String>,
    pub mistakes: Mistakes,
}

impl From<Mistakes> for Refusal {
    fn from(mistakes: Mistakes) -> Self {
        Self { key: None, mistakes }
    }
}

impl From<Mistake> for Refusal {
    fn from(mistake: Mistake) -> Self {
        Self { key: None, mistakes: mistake.into() }
    }
}

/// The changes of the file that were typed, plain numbers in `unit`.
pub(super) fn changes(typed: &[Typed], unit: Unit) -> Result<Vec<Change>, Refusal> {
    if typed.len() > MOST_CHANGES {
        return Err(
            Mistake::new(format!("expected at most {MOST_CHANGES} changes, found {}", typed.len())).into()
        );
    }
    typed
        .iter()
        .map(|Typed(key, text)| match text {
            None => Ok(Change::Remove(key.clone())),
            Some(text) => Change::typed(key, text, unit)
                .map_err(|mistake| Refusal { key: Some(key.clone()), mistakes: mistake.into() }),
        })
        .collect()
}

/// A draft of the file with changes.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Draw {
    #[serde(default)]
    pub changes: Vec<Typed>,
}

/// Which earlier or plainer draft lies under the sheet.
#[derive(Clone, Copy, Debug, Deserialize, PartialEq)]
#[serde(rename_all = "snake_case")]
pub(super) enum Under {
    /// The recipe alone, without any fit parameter.
    Block,
    /// The file as it is saved.
    File,
    /// As it stood after this toile of its record, counted from 1.
    Fitting(usize),
}

/// The draft under the sheet, and what the sheet differs in from it.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Compare {
    #[serde(default)]
    pub changes: Vec<Typed>,
    pub under: Under,
}

/// The changes written into the file.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Save {
    pub changes: Vec<Typed>,
    /// Toiles for the record.
    #[serde(default)]
    pub fittings: Vec<Recorded>,
    /// The edition of the file on which they were made.
    pub edition: u64,
}

/// A file to take away.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Take {
    #[serde(default)]
    pub changes: Vec<Typed>,
    /// Its name in the list of [`super::sheet`].
    pub file: String,
    /// Of which leg, where they differ.
    #[serde(default)]
    pub side: Option<String>,
}
