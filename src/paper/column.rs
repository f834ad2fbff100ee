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
    /// Between margin, cm.
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{drawing::Wording, paper::language::SHEET};

    fn note() -> Note<'static> {
        let mut note = Note::new(&SHEET, 5.0);
        note.paragraph(&Wording::line("one line"), 1);
        note
    }

    #[test]
    fn notes_whole_between_what_is_taken() {
        let height = note().height();
        let mut column = Column::new(0.0, 0.0, 0.1, vec![1.0..2.0, 0.5 * height..0.6 * height]);
        let tops: Vec<f64> = (0..3)
            .map(|_| {
                let _ = column.add(note());
                column.bottom() - height
            })
            .collect();
        let first = 0.6 * height;
        assert!((tops[0] - first).abs() < 1e-12);
        assert!(tops.iter().all(|top| *top >= 2.0 || top + height <= 1.0), "{tops:?}");
        assert!(tops.windows(2).all(|pair| pair[1] >= pair[0] + height + 0.1 - 1e-12), "{tops:?}");
    }
}
