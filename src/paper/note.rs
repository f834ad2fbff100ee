//! A note: a heading and what stands under it, as wide as its column.

use kurbo::{Line, Point, Shape as _, Vec2};

use super::language::Language;
use crate::drawing::{Align, Ink, Mark, Text, Wording, lines_of_text};

/// A column of a table: where its words stand, from the note's left edge.
#[derive(Clone, Copy, Debug)]
pub(super) struct Stop {
    /// cm from the left.
    pub x: f64,
    /// Which end of the words stands there.
    pub align: Align,
}

impl Stop {
    pub(super) const fn left(x: f64) -> Self {
        Self { x, align: Align::Start }
    }

    pub(super) const fn right(x: f64) -> Self {
        Self { x, align: Align::End }
    }
}

/// A note while it is written, from its upper left corner.
#[derive(Clone, Debug)]
pub(super) struct Note<'a> {
    language: &'a Language,
    width: f64,
    marks: Vec<Mark>,
    height: f64,
}

impl<'a> Note<'a> {
    /// An empty note, `width` cm wide.
    pub(super) fn new(language: &'a Language, width: f64) -> Self {
        Self { language, width, marks: Vec::new(), height: 0.0 }
    }

    /// Height so far, cm.
    pub(super) fn height(&self) -> f64 {
        self.height
    }

    /// A heading over a rule.
    pub(super) fn head(&mut self, words: &str) {
        let size = self.language.head;
        self.height += 1.1 * size;
        self.write(Text::new(self.here(), size, words).bold().cut_to(self.width));
        self.height += 0.45 * size;
        let rule = Line::new(self.here(), self.here() + Vec2::new(self.width, 0.0)).to_path(0.1);
        self.marks.push(Mark::Line { path: rule, pen: self.language.level });
        self.height += 0.15 * size;
    }

    /// One line in large letters; a long one in smaller letters, and cut off where even these are too wide.
    pub(super) fn title(&mut self, words: &Wording) {
        let size = self.language.title;
        self.height += 0.8 * size;
        let text = Text::new(self.here(), size, words.as_str()).bold();
        let fitting = size * (self.width / text.width()).min(1.0);
        self.write(Text { size: fitting.max(0.45 * size), ..text }.cut_to(self.width));
        self.height += 0.3 * size;
    }

    /// Sentences over the whole width, at most so many lines.
    pub(super) fn paragraph(&mut self, words: &Wording, most: usize) {
        let size = self.language.text;
        let lines = lines_of_text(words, size, self.width);
        let count = lines.len();
        for (number, line) in lines.into_iter().take(most).enumerate() {
            self.height += self.language.leading();
            let cut = number + 1 == most && count > most;
            let line = if cut { format!("{line} …") } else { line };
            self.write(Text::new(self.here(), size, line).cut_to(self.width));
        }
    }

    /// A row of a table.
    pub(super) fn row(&mut self, stops: &[Stop], cells: &[&str], ink: Ink) {
        self.height += self.language.leading();
        self.cells(stops, cells, self.language.text, ink);
    }

    /// The names over the columns of a table, in small letters.
    pub(super) fn names(&mut self, stops: &[Stop], cells: &[&str]) {
        self.height += 1.5 * self.language.small;
        self.cells(stops, cells, self.language.small, Ink::Dark);
    }

    fn cells(&mut self, stops: &[Stop], cells: &[&str], size: f64, ink: Ink) {
        for (stop, words) in stops.iter().zip(cells) {
            let at = self.here() + Vec2::new(stop.x, 0.0);
            self.write(Text::new(at, size, *words).aligned(stop.align).inked(ink));
        }
    }

    /// Empty height, cm.
    pub(super) fn skip(&mut self, height: f64) {
        self.height += height;
    }

    /// Marks drawn from the present height, which take `height` cm.
    pub(super) fn picture(&mut self, marks: impl IntoIterator<Item = Mark>, height: f64) {
        let by = self.here().to_vec2();
        self.marks.extend(marks.into_iter().map(|mark| mark.moved(by)));
        self.height += height;
    }

    /// The marks with the note's upper left corner at `at`.
    pub(super) fn placed(self, at: Point) -> impl Iterator<Item = Mark> {
        self.marks.into_iter().map(move |mark| mark.moved(at.to_vec2()))
    }

    fn here(&self) -> Point {
        Point::new(0.0, self.height)
    }

    fn write(&mut self, text: Text) {
        self.marks.push(Mark::Text(text));
    }
}
