//! The two squares by which a print is checked.

use kurbo::{Point, Rect, Shape as _, Vec2};

use crate::{
    drawing::{Align, CAP_HEIGHT, Mark, Text},
    unit::CM_PER_INCH,
};

use super::language::Language;

/// Between the two squares, cm.
const GAP: f64 = 0.6;

/// Height of the larger one, cm.
pub(super) const HEIGHT: f64 = 2.0 * CM_PER_INCH;

/// A square of 5 cm and one of 2 in, at true scale, with the upper left corner at `at`.
pub(super) fn test_squares(at: Point, language: &Language) -> Vec<Mark> {
    let mut marks = Vec::new();
    for (side, name, right) in [(5.0, "5 cm", 0.0), (HEIGHT, "2 in", 5.0 + GAP)] {
        let square = Rect::from_origin_size(at + Vec2::new(right, 0.0), (side, side));
        marks.push(Mark::Line { path: square.to_path(0.1), pen: language.inside });
        let middle = square.center() + Vec2::new(0.0, CAP_HEIGHT / 2.0 * language.text);
        marks.push(Mark::Text(Text::new(middle, language.text, name).aligned(Align::Middle)));
    }
    marks
}
