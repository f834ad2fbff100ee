//! Where a picture is drawn on at all.

use kurbo::{BezPath, Line, Point, Rect, Shape};

use crate::drawing::{
    Drawing, Footprint, Mark,
    picture::{FLATNESS, straight_lines},
};

/// All that leaves ink on the paper.
pub(super) struct Inks<'a> {
    /// Straight pieces of lines, with half the width of their pen, cm.
    lines: Vec<(Line, f64)>,
    areas: Vec<&'a BezPath>,
    texts: Vec<Footprint>,
}

impl<'a> Inks<'a> {
    pub(super) fn of(drawing: &'a Drawing) -> Self {
        let mut inks = Self { lines: Vec::new(), areas: Vec::new(), texts: Vec::new() };
        for mark in drawing.layers.iter().flat_map(|layer| &layer.marks) {
            match mark {
                Mark::Line { path, pen } => {
                    inks.lines.extend(
                        straight_lines(path, FLATNESS).into_iter().map(|line| (line, pen.width / 2.0)),
                    );
                }
                Mark::Area { path, .. } => {
                    inks.lines.extend(straight_lines(path, FLATNESS).into_iter().map(|line| (line, 0.0)));
                    inks.areas.push(path);
                }
                Mark::Text(text) if text.words.as_str().is_empty() => {}
                Mark::Text(text) => inks.texts.push(text.footprint()),
            }
        }
        inks
    }

    /// The level rectangle round all ink, if there is any.
    pub(super) fn bounds(&self) -> Option<Rect> {
        let lines = self.lines.iter().map(|(line, half)| line.bounding_box().inflate(*half, *half));
        let all = lines.chain(self.texts.iter().map(Footprint::bounds));
        all.reduce(|all, one| all.union(one))
    }

    /// Whether any ink lies in this part of the picture; one that only touches it may count.
    pub(super) fn any_in(&self, part: Rect) -> bool {
        let centre: Point = part.center();
        let line_in = |(line, half): &(Line, f64)| {
            Footprint::level(part.inflate(*half, *half)).covered(line.p0, line.p1) > 0.0
        };
        self.lines.iter().any(line_in)
            || self.texts.iter().any(|text| text.overlaps(&Footprint::level(part)))
            || self.areas.iter().any(|area| area.winding(centre) != 0)
    }
}
