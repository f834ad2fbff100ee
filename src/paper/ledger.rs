//! The ledger in the margin: a row of figures for each level, whose rule runs on as the level's line through the panels.

use std::ops::Range;

use kurbo::{BezPath, Point};

use super::{language::Language, spread::spread};
use crate::{
    drawing::{Align, Ink, Layer, Text},
    terms::{Level, Measurement, Word},
    told::{
        Subject,
        tables::{called, level_cells},
    },
    unit::Unit,
    voice::Value,
};

/// Columns from the left edge, in sizes of the text: name, body, where from, pattern, ease. Sixteenths are longer than
/// tenths.
fn stops(unit: Unit) -> [(f64, Align); 5] {
    let [body, from, pattern, ease] = match unit {
        Unit::Cm => [10.0, 10.5, 17.9, 21.2],
        Unit::Inch => [11.2, 11.7, 20.6, 25.0],
    };
    [(0.0, Align::Start), (body, Align::End), (from, Align::Start), (pattern, Align::End), (ease, Align::End)]
}

/// Between two rows, in sizes of the text.
const APART: f64 = 1.9;

/// A level with its figures.
#[derive(Clone, Debug, PartialEq)]
struct Row {
    level: Level,
    /// Below the waist, cm of the body.
    depth: f64,
    cells: [String; 5],
}

/// The ledger of a draft.
#[derive(Clone, Debug)]
pub(super) struct Ledger<'a> {
    language: &'a Language,
    unit: Unit,
    rows: Vec<Row>,
}

/// Where the ledger and its levels stand on the sheet.
#[derive(Clone, Copy, Debug)]
pub(super) struct Stand {
    /// Left edge of the ledger, cm.
    pub left: f64,
    /// Where the levels leave the ledger's rows and run level, cm.
    pub lines_from: f64,
    /// Where they end, cm.
    pub lines_to: f64,
    /// The y of the waist line, cm.
    pub waist: f64,
    /// Centimetres of the sheet for one of the body.
    pub scale: f64,
}

impl<'a> Ledger<'a> {
    /// The rows of a draft, from the top.
    pub(super) fn of(subject: &Subject<'_>, language: &'a Language) -> Self {
        let levels = &subject.draft.shape.levels;
        let mut rows: Vec<Row> = Level::ALL
            .iter()
            .filter(|level| levels[**level] <= levels[Level::Hem])
            .map(|level| Row { level: *level, depth: levels[*level], cells: cells(subject, *level) })
            .collect();
        rows.sort_by(|a, b| a.depth.total_cmp(&b.depth));
        Self { language, unit: subject.unit, rows }
    }

    /// Width of the rows, cm.
    pub(super) fn width(language: &Language, unit: Unit) -> f64 {
        stops(unit)[4].0 * language.text
    }

    /// Draws the rows, their rules and the levels, and names what the columns hold. Returns the heights taken.
    pub(super) fn draw(&self, stand: &Stand, lines: &mut Layer, words: &mut Layer) -> Vec<Range<f64>> {
        let size = self.language.text;
        let right = stand.left + Self::width(self.language, self.unit);
        let heights = self.heights(stand);
        let mut taken = Vec::with_capacity(heights.len() + 1);
        for (row, at) in self.rows.iter().zip(&heights) {
            let level = stand.waist + stand.scale * row.depth;
            let mut rule = BezPath::new();
            rule.move_to((stand.left, *at));
            rule.line_to((right, *at));
            rule.line_to((stand.lines_from, level));
            rule.line_to((stand.lines_to, level));
            lines.line(rule, self.language.level);
            for (number, ((x, align), cell)) in stops(self.unit).iter().zip(&row.cells).enumerate() {
                let at = Point::new(stand.left + x * size, at - 0.35 * size);
                let text = match number {
                    0 => Text::new(at, size, cell).bold(),
                    2 => Text::new(at, self.language.small, cell).inked(Ink::Dark),
                    _ => Text::new(at, size, cell),
                };
                words.text(text.aligned(*align));
            }
            taken.push(at - 1.4 * size..at + 0.4 * size);
        }
        if let Some(first) = heights.first() {
            let names = ["level", "body", "", "pattern", "ease"];
            let at = first - 1.9 * size;
            for ((x, align), name) in stops(self.unit).iter().zip(names) {
                let at = Point::new(stand.left + x * size, at);
                words.text(Text::new(at, self.language.small, name).aligned(*align).inked(Ink::Dark));
            }
            taken.push(at - 1.1 * self.language.small..*first);
        }
        taken
    }

    /// Names the levels again where their lines end, with their depth below the waist line. Returns how far the words
    /// reach beyond, cm.
    pub(super) fn name_ends(
        &self,
        stand: &Stand,
        subject: &Subject<'_>,
        lines: &mut Layer,
        words: &mut Layer,
    ) -> f64 {
        let size = self.language.text;
        let kink = 1.5 * size;
        let mut reach: f64 = kink;
        for (row, at) in self.rows.iter().zip(self.heights(stand)) {
            let level = stand.waist + stand.scale * row.depth;
            let mut lead = BezPath::new();
            lead.move_to((stand.lines_to, level));
            lead.line_to((stand.lines_to + kink, at));
            lines.line(lead, self.language.level);
            let depth = if row.level == Level::Waist {
                row.level.key().to_owned()
            } else {
                format!("{} {} below", row.level, subject.length(row.depth))
            };
            let at = Point::new(stand.lines_to + kink + 0.4 * size, at + 0.36 * size);
            let text = Text::new(at, size, depth);
            reach = reach.max(kink + 0.4 * size + text.width());
            words.text(text);
        }
        reach
    }

    fn heights(&self, stand: &Stand) -> Vec<f64> {
        let wanted: Vec<f64> = self.rows.iter().map(|row| stand.waist + stand.scale * row.depth).collect();
        spread(&wanted, APART * self.language.text)
    }
}

fn cells(subject: &Subject<'_>, level: Level) -> [String; 5] {
    let name = match level {
        Level::Crotch => "crotch depth".into(),
        Level::Hem => "hem, heel".into(),
        Level::Waist | Level::Hip | Level::Thigh | Level::Knee | Level::Calf => called(level),
    };
    let row = match level {
        Level::Crotch => subject.draft.body.value(Measurement::BodyRise).map(|rise| {
            let depth = subject.draft.shape.levels[Level::Crotch];
            (rise.cm, rise.from, depth)
        }),
        _ => subject
            .report
            .levels
            .iter()
            .find(|row| row.level == level)
            .map(|row| (row.body, row.from, row.pattern)),
    };
    let cells = match row {
        Some((body, from, pattern)) => level_cells(name, body, from, pattern),
        None => [name, Value::NOTHING, Value::NOTHING, Value::NOTHING, Value::NOTHING],
    };
    cells.map(|cell| cell.in_column(subject.unit))
}
