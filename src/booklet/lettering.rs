//! How large letters are and how far apart things stand: one family, two weights, five sizes.

use crate::drawing::{Ink, Pen};

/// Sizes for one kind of reading, cm; a size is the height of the em.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lettering {
    /// The largest heading.
    pub title: f64,
    /// Headings that the list of contents names.
    pub chapter: f64,
    /// Headings within a chapter.
    pub section: f64,
    /// Sentences, sums, tables.
    pub text: f64,
    /// Remarks, names of columns and pictures.
    pub small: f64,
    /// The same sizes on a printed HTML page, as points of the sentences.
    pub points: f64,
}

/// A rule of a table.
pub(super) const RULE: Pen = Pen::new(0.02, Ink::Dark);
/// A line of a table to be filled in.
pub(super) const GRID: Pen = Pen::new(0.015, Ink::Middle);

impl Lettering {
    /// To be read from the beginning to the end.
    pub const READING: Self =
        Self { title: 0.85, chapter: 0.55, section: 0.42, text: 0.35, small: 0.29, points: 9.9 };

    /// To be looked things up in: one page holds all.
    pub const SHEET: Self =
        Self { title: 0.7, chapter: 0.36, section: 0.32, text: 0.28, small: 0.245, points: 7.9 };

    /// From one baseline of running text to the next, cm.
    pub(super) fn leading(&self) -> f64 {
        1.42 * self.text
    }
}
