//! A column of notes that flows round the rows that stand across it.

use std::ops::Range;

use kurbo::Point;

use super::note::Note;
use crate::drawing::Mark;

/// A column of the margin, filled from the top; notes stay whole.
#[derive(Clone, Debug)]
pub(super) struct Column {
    /// Left edge, cm.
    left: f64,
    /// Where the next note may begin.
    y: f64,
    /// Between notes, cm.
    gap: f64,
    /// Heights that belong to others.
    taken: Vec<Range<f64>>,
}

impl Column {
    /// An empty column from `top` down, with at least `gap` cm between notes.
    pub(super) fn new(left: f64, top: f64, gap: f64, taken: Vec<Range<f64>>) -> Self {
        Self { left, y: top, gap, taken }
    }

    /// Places a note at the first height at which all of it is free.
    pub(super) fn add(&mut self, note: Note<'_>) -> impl Iterator<Item = Mark> + use<> {
        let height = note.height();
        let clash = |y: f64| self.taken.iter().find(|part| y < part.end && y + height > part.start);
        let mut y = self.y;
        while let Some(part) = clash(y) {
            y = part.end;
        }
        self.y = y + height + self.gap;
        note.placed(Point::new(self.left, y)).collect::<Vec<_>>().into_iter()
    }

    /// How far down the column is filled, cm.
    pub(super) fn bottom(&self) -> f64 {
        self.y - self.gap
    }
}
