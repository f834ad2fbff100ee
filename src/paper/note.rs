//! A note: a heading and what stands under it, as wide as its column.

use kurbo::{Line, Point, Shape as _, Vec2};

use super::language::Language;
use crate::{
    booklet::Table,
    drawing::{Align, Ink, Mark, Text, Wording, lines_of_text, text_width},
    unit::Unit,
};

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

    /// A table under its caption, over the whole width: columns as wide as they need, what is left between them.
    pub(super) fn table(&mut self, table: &Table, unit: Unit) {
        let (text, small) = (self.language.text, self.language.small);
        self.head(table.caption_in(unit).as_str());
        let rows = table.cells_in(unit);
        let widths: Vec<f64> = table
            .columns
            .iter()
            .enumerate()
            .map(|(number, column)| {
                let cells = rows.iter().filter_map(|row| row.get(number));
                let widest = cells.map(|cell| text_width(cell.as_str(), text)).fold(0.0, f64::max);
                widest.max(text_width(column.name.as_str(), small))
            })
            .collect();
        let gaps = widths.len().saturating_sub(1).max(1) as f64;
        let between = ((self.width - widths.iter().sum::<f64>()) / gaps).max(0.3 * text);
        let mut stops = Vec::with_capacity(widths.len());
        let mut from = 0.0;
        for (column, width) in table.columns.iter().zip(&widths) {
            let at = match column.align {
                Align::Start => from,
                Align::Middle => from + 0.5 * width,
                Align::End => from + width,
            };
            stops.push((at, column.align));
            from += width + between;
        }
        self.height += 1.5 * small;
        let names: Vec<&Wording> = table.columns.iter().map(|column| &column.name).collect();
        self.cells(&stops, &names, small, Ink::Dark);
        self.skip(0.1 * text);
        for row in &rows {
            self.height += self.language.leading();
            self.cells(&stops, &row.iter().collect::<Vec<_>>(), text, Ink::Black);
        }
        if !table.remark.as_str().is_empty() {
            self.paragraph(&table.remark, 3);
        }
    }

    fn cells(&mut self, stops: &[(f64, Align)], cells: &[&Wording], size: f64, ink: Ink) {
        for ((x, align), words) in stops.iter().zip(cells) {
            let at = self.here() + Vec2::new(*x, 0.0);
            self.write(Text::new(at, size, words.as_str()).aligned(*align).inked(ink));
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
