//! The picture: layers of marks on a sheet.

use kurbo::{Affine, BezPath, Line, PathEl, Point, Rect, Shape, Vec2};

use super::{Pen, Shade, Text, Wording};

/// A picture in centimetres.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawing {
    /// What the picture is, in a few words.
    pub title: Wording,
    /// The text alternative: what a reader who cannot see it should know.
    pub description: Wording,
    /// The sheet, cm; marks outside it are cut off.
    pub bounds: Rect,
    /// From the lowest to the topmost.
    pub layers: Vec<Layer>,
}

/// Marks that are shown or hidden together.
#[derive(Clone, Debug, PartialEq)]
pub struct Layer {
    /// Plain words, shown in viewers' lists of layers.
    pub name: Wording,
    /// From the lowest to the topmost.
    pub marks: Vec<Mark>,
}

/// One thing on the sheet.
#[derive(Clone, Debug, PartialEq)]
pub enum Mark {
    /// A drawn line.
    Line {
        /// The middle of the line.
        path: BezPath,
        /// What it is drawn with.
        pen: Pen,
    },
    /// A filled area; where its outline runs round a part twice in one direction that part is filled too.
    Area {
        /// The outline, closed or taken as closed.
        path: BezPath,
        /// What it is filled with.
        shade: Shade,
    },
    /// A line of text.
    Text(Text),
}

impl Drawing {
    /// A picture on a sheet that reaches `margin` cm beyond its marks. Without a mark the sheet is twice the margin
    /// wide and high.
    pub fn around(title: impl Into<Wording>, description: &str, layers: Vec<Layer>, margin: f64) -> Self {
        let marks = layers.iter().flat_map(|layer| &layer.marks).map(Mark::bounds);
        let bounds = marks.reduce(|all, mark| all.union(mark)).unwrap_or_default().inflate(margin, margin);
        Self { title: title.into(), description: Wording::paragraph(description), bounds, layers }
    }
}

impl Layer {
    /// A layer without marks.
    pub fn new(name: impl Into<Wording>) -> Self {
        Self { name: name.into(), marks: Vec::new() }
    }

    /// Draws a line.
    pub fn line(&mut self, path: BezPath, pen: Pen) {
        self.marks.push(Mark::Line { path, pen });
    }

    /// Fills an area.
    pub fn area(&mut self, path: BezPath, shade: Shade) {
        self.marks.push(Mark::Area { path, shade });
    }

    /// Writes a line of text.
    pub fn text(&mut self, text: Text) {
        self.marks.push(Mark::Text(text));
    }
}

impl Mark {
    /// The same mark moved.
    #[must_use]
    pub fn moved(self, by: Vec2) -> Self {
        let place = Affine::translate(by);
        match self {
            Self::Line { path, pen } => Self::Line { path: place * path, pen },
            Self::Area { path, shade } => Self::Area { path: place * path, shade },
            Self::Text(text) => Self::Text(text.moved(by)),
        }
    }

    /// The level rectangle that the mark covers, with the width of its line.
    pub fn bounds(&self) -> Rect {
        match self {
            Self::Line { path, pen } => path.bounding_box().inflate(pen.width / 2.0, pen.width / 2.0),
            Self::Area { path, .. } => path.bounding_box(),
            Self::Text(text) => text.footprint().with_gap(text.bold_line() / 2.0).bounds(),
        }
    }
}

/// A chord that is as good as its curve leaves it by no more than this, cm: a tenth of the thinnest printed line.
pub(super) const FLATNESS: f64 = 0.001;

/// The path as straight lines that leave it by no more than `flatness` cm, closing lines included.
pub(super) fn straight_lines(path: &BezPath, flatness: f64) -> Vec<Line> {
    let mut lines = Vec::new();
    let (mut start, mut last) = (Point::ORIGIN, Point::ORIGIN);
    kurbo::flatten(path.elements().iter().copied(), flatness, |step| {
        let to = match step {
            PathEl::MoveTo(to) => {
                start = to;
                last = to;
                return;
            }
            PathEl::ClosePath => start,
            _ => step.end_point().unwrap_or(last),
        };
        lines.push(Line::new(last, to));
        last = to;
    });
    lines
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::Ink;
    use kurbo::Circle;

    #[test]
    fn a_sheet_just_round_its_marks() {
        let mut layer = Layer::new("all");
        layer.line(Circle::new((5.0, 5.0), 2.0).to_path(1e-6), Pen::new(0.1, Ink::Black));
        layer.text(Text::new(Point::new(9.0, 1.0), 1.0, "8"));
        let bounds = Drawing::around("a", "b", vec![layer], 1.0).bounds;
        assert!((bounds.x0 - 1.95).abs() < 1e-4 && (bounds.x1 - 10.572).abs() < 1e-4, "{bounds:?}");
        assert!((bounds.y1 - 8.05).abs() < 1e-4 && bounds.y0 < -0.7, "{bounds:?}");
    }

    #[test]
    fn an_empty_picture_with_a_sheet() {
        assert_eq!(Drawing::around("a", "b", Vec::new(), 2.0).bounds, Rect::new(-2.0, -2.0, 2.0, 2.0));
    }
}
