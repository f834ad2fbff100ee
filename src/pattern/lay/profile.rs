//! A part cut into rows across the grain.

use kurbo::{BezPath, PathEl, Point, Shape as _, Vec2};

use super::{Part, Pose};

/// Lengths within a lay are counted in these, to a centimetre.
pub(super) const STEPS: f64 = 1000.0;

/// Curves are cut into chords that leave them by no more than this, cm; every part is taken as much larger all round,
/// so that no curve bulges out of its rows.
const SAG: f64 = 0.002;

/// How finely parts are cut across the grain.
#[derive(Clone, Copy, Debug)]
pub(super) struct Rows {
    /// Parts are moved along the grain by whole rows, cm.
    pub row: f64,
    /// In how many thin rows each of them is cut when parts are held against each other.
    pub thin: i32,
}

/// A part in one pose: the ends of its rows from its left edge, in steps.
#[derive(Clone, Debug)]
pub(super) struct Profile {
    pub pose: Pose,
    /// In how many thin rows each row is cut.
    pub thin: i32,
    /// The row in which the part begins counts as row 0; with half the gap round the part it begins before, in this
    /// thin row.
    pub first: i32,
    /// The left end of each thin row, with half the gap.
    pub lefts: Vec<i32>,
    /// The right end.
    pub rights: Vec<i32>,
    /// Without the gap: from left edge to right edge, and from the top of row 0 to the lowest point, in steps.
    pub width: i32,
    pub end: i32,
    /// The row on whose top the height lies that is to be matched.
    pub match_row: i32,
    /// What brings the part, once in its pose, to its left edge and the top of row 0, cm.
    pub home: Vec2,
    /// What the part covers, square cm.
    pub area: f64,
}

impl Profile {
    /// The part in this pose, with half of `gap` cm about it.
    pub(super) fn new(part: &Part, pose: Pose, rows: Rows, gap: f64) -> Self {
        let Rows { row, thin } = rows;
        let outline = pose.affine() * part.outline.clone();
        let lines = lines(&outline);
        let corners = lines.iter().flat_map(|(from, to)| [*from, *to]);
        let (mut low, mut high) =
            (Point::new(f64::INFINITY, f64::INFINITY), Point::new(f64::NEG_INFINITY, f64::NEG_INFINITY));
        for corner in corners {
            low = Point::new(low.x.min(corner.x), low.y.min(corner.y));
            high = Point::new(high.x.max(corner.x), high.y.max(corner.y));
        }
        let (low, high) = (low - Vec2::new(SAG, SAG), high + Vec2::new(SAG, SAG));
        // Row tops run through the height that is to be matched.
        let match_at = part.match_at.map(|y| if pose.turned { -y } else { y });
        let match_row = match_at.map_or(0.0, |y| ((y - low.y) / row).ceil());
        let top = match_at.map_or(low.y, |y| y - match_row * row);
        let reach = SAG + gap / 2.0;
        let height = row / f64::from(thin);
        let row_of = |y: f64| ((y - top) / height).floor() as i32;
        let (first, last) = (row_of(low.y + SAG - reach), row_of(high.y - SAG + reach));
        let mut lefts = vec![i32::MAX; (last - first + 1) as usize];
        let mut rights = vec![i32::MIN; lefts.len()];
        for (from, to) in lines {
            let (upper, lower) = if from.y <= to.y { (from, to) } else { (to, from) };
            for at in row_of(upper.y - reach)..=row_of(lower.y + reach) {
                // The part of the line that is no farther from the row than the reach.
                let (y0, y1) =
                    (top + f64::from(at) * height - reach, top + f64::from(at + 1) * height + reach);
                let x_at = |y: f64| {
                    let part = (y.clamp(upper.y, lower.y) - upper.y) / (lower.y - upper.y);
                    if part.is_finite() { upper.x + part * (lower.x - upper.x) } else { lower.x }
                };
                let (a, b) = if upper.y == lower.y { (upper.x, lower.x) } else { (x_at(y0), x_at(y1)) };
                let place = (at - first) as usize;
                let (left, right) = (a.min(b) - reach - low.x, a.max(b) + reach - low.x);
                lefts[place] = lefts[place].min((left * STEPS).floor() as i32);
                rights[place] = rights[place].max((right * STEPS).ceil() as i32);
            }
        }
        Self {
            pose,
            thin,
            first,
            lefts,
            rights,
            width: ((high.x - low.x) * STEPS).ceil() as i32,
            end: ((high.y - top) * STEPS).ceil() as i32,
            match_row: match_row as i32,
            home: -Vec2::new(low.x, top),
            area: outline.area().abs(),
        }
    }
}

/// The closed outline as chords.
fn lines(outline: &BezPath) -> Vec<(Point, Point)> {
    let mut lines = Vec::new();
    let (mut start, mut last) = (Point::ORIGIN, Point::ORIGIN);
    let to_start = |lines: &mut Vec<(Point, Point)>, start: Point, last: Point| {
        if start != last {
            lines.push((last, start));
        }
    };
    kurbo::flatten(outline.elements().iter().copied(), SAG, |step| match step {
        PathEl::MoveTo(to) => {
            to_start(&mut lines, start, last);
            (start, last) = (to, to);
        }
        PathEl::ClosePath => {
            to_start(&mut lines, start, last);
            last = start;
        }
        _ => {
            let to = step.end_point().unwrap_or(last);
            lines.push((last, to));
            last = to;
        }
    });
    to_start(&mut lines, start, last);
    lines
}
