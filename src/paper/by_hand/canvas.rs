//! One picture of a strip: a window on the panel at a scale, and the signs that are drawn in it.

use kurbo::{Affine, BezPath, Circle, Ellipse, Line, ParamCurve as _, Point, Rect, Shape as _, Vec2};

use super::hatch;
use crate::{
    curve::unit,
    drawing::{Align, CAP_HEIGHT, Ink, Labels, Layer, Mark, Pen, Shade, Text},
};

/// The line of the piece as it lies.
pub(super) const PIECE: Pen = Pen::new(0.028, Ink::Black);
/// A cut, and a line that is drawn anew.
pub(super) const STRONG: Pen = Pen::new(0.06, Ink::Black);
/// Where a line was.
pub(super) const WAS: Pen = Pen::new(0.022, Ink::Black).dashed(&[0.13, 0.09]);
/// Measured distances and their feelers.
const MEASURE: Pen = Pen::new(0.016, Ink::Black);
/// What moves, and which way.
const MOTION: Pen = Pen::new(0.045, Ink::Black);
/// Hatching.
const HATCH: Pen = Pen::new(0.022, Ink::Black);
/// Level lines.
const LEVEL: Pen = Pen::new(0.014, Ink::Black).dashed(&[0.24, 0.06, 0.04, 0.06]);
/// A chord to measure from.
const CHORD: Pen = Pen::new(0.014, Ink::Black).dashed(&[0.07, 0.05]);

/// Letters: the amount, other figures, names.
const AMOUNT: f64 = 0.3;
const FIGURE: f64 = 0.25;
pub(super) const NAME: f64 = 0.22;

/// A picture while it is drawn. Places are on the panel, cm, unless they are said to be on paper.
pub(super) struct Canvas {
    fit: Affine,
    /// The window on paper.
    frame: Rect,
    under: Layer,
    lines: Layer,
    signs: Layer,
    words: Layer,
    labels: Labels,
    cell: Rect,
    /// Level lines that have their name, by their height on paper.
    named_levels: Vec<f64>,
}

impl Canvas {
    /// A window on the panel, its upper left corner `at` on paper; words may stand in `cell`.
    pub(super) fn new(window: Rect, scale: f64, at: Point, cell: Rect) -> Self {
        let fit = Affine::translate(at.to_vec2())
            * Affine::scale(scale)
            * Affine::translate(-window.origin().to_vec2());
        Self {
            fit,
            frame: fit.transform_rect_bbox(window),
            under: Layer::new("Paper added"),
            lines: Layer::new("Lines"),
            signs: Layer::new("Signs"),
            words: Layer::new("Figures"),
            labels: Labels::new(cell, 0.05),
            cell,
            named_levels: Vec::new(),
        }
    }

    /// The layers, lowest first.
    pub(super) fn layers(self) -> [Layer; 4] {
        [self.under, self.lines, self.signs, self.words]
    }

    /// Where a place of the panel lies on paper.
    fn on_paper(&self, point: Point) -> Point {
        self.fit * point
    }

    fn run_on_paper(&self, line: &[Point]) -> Vec<Point> {
        line.iter().map(|point| self.fit * *point).collect()
    }

    /// A line, cut at the window.
    pub(super) fn line(&mut self, line: &[Point], pen: Pen) {
        let path = clipped(&self.run_on_paper(line), self.frame);
        if !path.is_empty() {
            self.labels.spare(&path);
            self.lines.line(path, pen);
        }
    }

    fn stroke(&mut self, from: Point, to: Point, pen: Pen) {
        let path = Line::new(from, to).to_path(0.1);
        self.labels.spare(&path);
        self.signs.line(path, pen);
    }

    /// Hatches what is inside the first outline and not inside the second.
    pub(super) fn hatch(&mut self, inside: &[Point], outside: &[Point], both_ways: bool) {
        let [inside, outside] = [inside, outside].map(|line| self.run_on_paper(line));
        let frame = hatch::corners(self.frame);
        let turns: &[f64] = if both_ways { &[0.0, std::f64::consts::FRAC_PI_2] } else { &[0.0] };
        for turn in turns {
            let path = hatch::strokes(&inside, &outside, &frame, *turn);
            if !path.is_empty() {
                self.under.line(path, HATCH);
            }
        }
    }

    /// Dots what falls away.
    pub(super) fn dot(&mut self, inside: &[Point], outside: &[Point]) {
        let [inside, outside] = [inside, outside].map(|line| self.run_on_paper(line));
        let path = hatch::dots(&inside, &outside, &hatch::corners(self.frame));
        if !path.is_empty() {
            self.under.area(path, Shade::Black);
        }
    }

    /// A wave where the piece goes on beyond the window.
    pub(super) fn goes_on(&mut self, outline: &[Point]) {
        let outline = self.run_on_paper(outline);
        let frame = self.frame;
        for (level, at) in [(true, frame.y0), (true, frame.y1), (false, frame.x0), (false, frame.x1)] {
            let across = |point: &Point| if level { (point.y, point.x) } else { (point.x, point.y) };
            let next = outline.iter().cycle().skip(1);
            let mut hits: Vec<f64> = outline
                .iter()
                .zip(next)
                .map(|(a, b)| (across(a), across(b)))
                .filter(|(a, b)| (a.0 < at) != (b.0 < at))
                .map(|(a, b)| a.1 + (b.1 - a.1) * (at - a.0) / (b.0 - a.0))
                .collect();
            hits.sort_by(f64::total_cmp);
            let (least, most) = if level { (frame.x0, frame.x1) } else { (frame.y0, frame.y1) };
            for pair in hits.chunks_exact(2) {
                let (from, to) = (pair[0].max(least), pair[1].min(most));
                if to - from > 0.2 {
                    self.signs.line(wave(from, to, at, level), MEASURE);
                }
            }
        }
    }

    /// A full dot in a ring: the hinge or pivot, which is not cut through.
    pub(super) fn hinge(&mut self, at: Point) {
        let at = self.on_paper(at);
        self.signs.area(Circle::new(at, 0.15).to_path(0.005), Shade::White);
        self.signs.line(Circle::new(at, 0.15).to_path(0.005), Pen::new(0.02, Ink::Black));
        self.signs.area(Circle::new(at, 0.08).to_path(0.005), Shade::Black);
        self.labels.keep_off(crate::drawing::Footprint::level(Circle::new(at, 0.15).bounding_box()));
    }

    /// An open dot: a place to measure from or to draw to.
    pub(super) fn mark(&mut self, at: Point) {
        let at = self.on_paper(at);
        if !self.frame.inflate(0.05, 0.05).contains(at) {
            return;
        }
        self.signs.area(Circle::new(at, 0.055).to_path(0.005), Shade::White);
        self.signs.line(Circle::new(at, 0.055).to_path(0.005), Pen::new(0.026, Ink::Black));
        self.labels.keep_off(crate::drawing::Footprint::level(Circle::new(at, 0.055).bounding_box()));
    }

    /// Scissors before the first point of a cut.
    pub(super) fn scissors(&mut self, at: Point, towards: Point) {
        let (at, to) = (self.on_paper(at), self.on_paper(towards));
        let place = Affine::translate(at.to_vec2()) * Affine::rotate((to - at).atan2());
        let mut path = BezPath::new();
        for way in [-1.0, 1.0] {
            path.extend(Ellipse::new((-0.4, way * 0.1), (0.1, 0.065), 0.0).path_elements(0.005));
            path.move_to((-0.31, way * 0.075));
            path.line_to((-0.02, way * -0.045));
        }
        let path = place * path;
        self.labels.keep_off(crate::drawing::Footprint::level(path.bounding_box()));
        self.signs.line(path, Pen::new(0.032, Ink::Black));
    }

    fn head(&mut self, tip: Point, way: Vec2, size: f64) {
        let way = unit(way);
        let (back, side) = (tip - way * size, Vec2::new(-way.y, way.x) * (0.4 * size));
        let mut path = BezPath::new();
        path.move_to(tip);
        path.line_to(back + side);
        path.line_to(back - side);
        path.close_path();
        self.signs.area(path, Shade::Black);
    }

    /// A thick arrow along places on paper, for what moves.
    fn arrow(&mut self, line: &[Point]) {
        let [.., before, tip] = line else { return };
        let way = unit(*tip - *before);
        let mut path = BezPath::new();
        path.move_to(line[0]);
        for point in &line[1..line.len() - 1] {
            path.line_to(*point);
        }
        path.line_to(*tip - way * 0.1);
        self.labels.spare(&path);
        self.signs.line(path, MOTION);
        self.head(*tip, way, 0.2);
    }

    /// Beside a part that turns: where the place `at` goes, drawn a little outside of it.
    pub(super) fn turns(&mut self, hinge: Point, at: Point, angle: f64) {
        /// The least length of the arrow, and how far outside it is drawn.
        const LEAST: f64 = 0.6;
        let (centre, at) = (self.on_paper(hinge), self.on_paper(at));
        let radius = at.distance(centre) + 0.28;
        let middle = (at - centre).atan2() + 0.5 * angle;
        let half = (0.7 * angle.abs()).max(0.5 * LEAST / radius) * angle.signum();
        let line: Vec<Point> = (0..=12)
            .map(|part| centre + Vec2::from_angle(middle + half * (f64::from(part) / 6.0 - 1.0)) * radius)
            .collect();
        self.arrow(&line);
    }

    /// A straight arrow on the panel from a place on, along a way on paper.
    pub(super) fn slides(&mut self, at: Point, way: Vec2) {
        let at = self.on_paper(at);
        self.arrow(&[at, at + unit(way) * 0.55]);
    }

    /// A level line through the window with its name.
    pub(super) fn level(&mut self, y: f64, name: &str) {
        let y = self.on_paper(Point::new(0.0, y)).y;
        let twice = self.named_levels.iter().any(|other| (other - y).abs() < 0.02);
        if twice || !(self.frame.y0..=self.frame.y1).contains(&y) {
            return;
        }
        self.named_levels.push(y);
        let line = Line::new((self.frame.x0, y), (self.frame.x1, y)).to_path(0.1);
        self.labels.spare(&line);
        self.signs.line(line, LEVEL);
        let text = Text::new(Point::ORIGIN, NAME, name);
        let spots = [0.5, 0.62, 0.38, 0.75, 0.25, 0.88].into_iter().flat_map(|part| {
            let x = self.frame.x0 + part * self.frame.width();
            [y - 0.08, y + 0.08 + CAP_HEIGHT * NAME]
                .map(|y| Text { at: Point::new(x, y), ..text.clone() }.aligned(Align::Middle))
        });
        self.put(spots.collect());
    }

    /// A figure or a word beside a place on paper, best on that side of it.
    fn beside(&mut self, at: Point, way: Vec2, gap: f64, text: Text) {
        let spots = Self::spots(at, way, gap, &text);
        self.put(spots);
    }

    /// Where a text may stand beside a place on paper, the best first.
    fn spots(at: Point, way: Vec2, gap: f64, text: &Text) -> Vec<Text> {
        let way = unit(way);
        let half = Vec2::new(0.5 * text.width(), 0.5 * CAP_HEIGHT * text.size);
        [0.0, 0.4, -0.4, 0.8, -0.8, 1.57, -1.57, 2.3, -2.3, 3.1]
            .into_iter()
            .flat_map(|turn| [0.0, 0.12, 0.28].map(|more| (turn, more)))
            .map(|(turn, more)| {
                let way = crate::curve::turned(way, turn);
                let reach = (half.x / way.x.abs().max(1e-9)).min(half.y / way.y.abs().max(1e-9));
                let middle = at + way * (gap + more + reach);
                Text { at: middle + Vec2::new(0.0, half.y), ..text.clone() }.aligned(Align::Middle)
            })
            .collect()
    }

    /// A figure is never left out: where no spot is free it stands at the best one, moved into the cell.
    fn put(&mut self, spots: Vec<Text>) {
        let forced = spots.first().map(|text| {
            let print = text.footprint().bounds();
            let x = (self.cell.x0 - print.x0).max(0.0) + (self.cell.x1 - print.x1).min(0.0);
            let y = (self.cell.y0 - print.y0).max(0.0) + (self.cell.y1 - print.y1).min(0.0);
            text.clone().moved(Vec2::new(x, y))
        });
        let Some(text) = self.labels.place(spots).or(forced) else { return };
        let mut behind = text.footprint().bounds().inflate(0.015, 0.0);
        behind.y1 -= 0.01;
        self.words.area(behind.to_path(0.1), Shade::White);
        self.words.text(text);
    }

    /// A letter or a word beside a place of the panel.
    pub(super) fn named(&mut self, at: Point, way: Vec2, words: &str) {
        let at = self.on_paper(at);
        if self.frame.inflate(0.1, 0.1).contains(at) {
            self.beside(at, way, 0.09, Text::new(Point::ORIGIN, FIGURE, words));
        }
    }

    /// The amount in words of its own.
    pub(super) fn said(&mut self, at: Point, way: Vec2, words: &str) {
        let at = self.on_paper(at);
        self.beside(at, way, 0.15, Text::new(Point::ORIGIN, AMOUNT, words).bold());
    }

    /// A distance between two places, with feelers on the side of `out`. Bold for the amount.
    pub(super) fn gap(&mut self, from: Point, to: Point, out: Vec2, words: &str, bold: bool) {
        /// Feelers reach so far, and arrows stand outside of a gap that is narrower.
        const REACH: f64 = 0.3;
        const NARROW: f64 = 0.45;
        let (from, to) = (self.on_paper(from), self.on_paper(to));
        if from.distance(to) < 1e-6 {
            return;
        }
        let along = unit(to - from);
        let square = Vec2::new(-along.y, along.x);
        let square = if square.dot(out) < 0.0 { -square } else { square };
        for end in [from, to] {
            self.stroke(end + square * 0.05, end + square * (REACH + 0.08), MEASURE);
        }
        let (one, other) = (from + square * REACH, to + square * REACH);
        self.stroke(one, other, MEASURE);
        if one.distance(other) < NARROW {
            for (end, way) in [(one, -along), (other, along)] {
                self.stroke(end, end + way * 0.22, MEASURE);
                self.head(end, -way, 0.12);
            }
        } else {
            self.head(one, -along, 0.12);
            self.head(other, along, 0.12);
        }
        let size = if bold { AMOUNT } else { FIGURE };
        let text = Text::new(Point::ORIGIN, size, words);
        let text = if bold { text.bold() } else { text };
        let mut spots = Self::spots(one.midpoint(other), square, 0.07, &text);
        spots.truncate(3);
        // Or behind one of the arrows, or on the other side.
        for (from, way) in
            [(other + along * 0.24, along), (one - along * 0.24, -along), (from.midpoint(to), -square)]
        {
            spots.extend(Self::spots(from, way, 0.05, &text).into_iter().take(9));
        }
        self.put(spots);
    }

    /// A distance along an edge, beside it on its left as it runs.
    pub(super) fn along(&mut self, line: &[Point], outwards: f64, words: &str) {
        const AWAY: f64 = 0.2;
        let line: Vec<Point> = self.run_on_paper(line);
        if line.len() < 2 || !line.iter().all(|point| self.frame.inflate(0.2, 0.2).contains(*point)) {
            return;
        }
        let last = line.len() - 1;
        let normal = |at: usize| {
            let (before, after) = (line[at.saturating_sub(1)], line[(at + 1).min(last)]);
            let way = unit(after - before);
            Vec2::new(way.y, -way.x) * outwards
        };
        let beside: Vec<Point> = (0..=last).map(|at| line[at] + normal(at) * AWAY).collect();
        let mut path = BezPath::new();
        path.move_to(beside[0]);
        beside[1..].iter().for_each(|point| path.line_to(*point));
        self.labels.spare(&path);
        self.signs.line(path, MEASURE);
        for at in [0, last] {
            self.stroke(line[at] + normal(at) * 0.05, line[at] + normal(at) * (AWAY + 0.06), MEASURE);
        }
        if beside[0].distance(beside[last]) > 0.3 {
            self.head(beside[0], beside[0] - beside[1], 0.11);
            self.head(beside[last], beside[last] - beside[last - 1], 0.11);
        }
        let middle = last / 2;
        self.beside(
            beside[middle].midpoint(beside[last - middle]),
            normal(middle),
            0.05,
            Text::new(Point::ORIGIN, FIGURE, words),
        );
    }

    /// How deep a curve lies under the straight line between its ends, at its deepest.
    pub(super) fn depth(&mut self, curve: &[Point], words: &str) {
        let curve = self.run_on_paper(curve);
        let [from, .., to] = curve[..] else { return };
        let chord = unit(to - from);
        let off = |point: &Point| chord.cross(*point - from).abs();
        let Some(deepest) = curve.iter().copied().max_by(|a, b| off(a).total_cmp(&off(b))) else { return };
        self.stroke(from, to, CHORD);
        let foot = from + chord * chord.dot(deepest - from);
        let out = unit(foot - deepest);
        self.stroke(foot + out * 0.24, deepest, MEASURE);
        self.head(deepest, deepest - foot, 0.1);
        if foot.distance(deepest) < 0.24 {
            self.head(foot, deepest - foot, 0.1);
        }
        self.beside(foot + out * 0.2, out, 0.05, Text::new(Point::ORIGIN, FIGURE, words));
    }

    /// A straight line to measure on.
    pub(super) fn chord(&mut self, from: Point, to: Point) {
        let (from, to) = (self.on_paper(from), self.on_paper(to));
        self.stroke(from, to, CHORD);
    }

    /// The sign of a right angle in a corner.
    pub(super) fn square(&mut self, at: Point, one: Vec2, other: Vec2) {
        const SIZE: f64 = 0.16;
        let at = self.on_paper(at);
        let (one, other) = (unit(one) * SIZE, unit(other) * SIZE);
        let mut path = BezPath::new();
        path.move_to(at + one);
        path.line_to(at + one + other);
        path.line_to(at + other);
        self.signs.line(path, MEASURE);
    }

    /// The number of the picture and the name of its piece, over the window.
    pub(super) fn headed(&mut self, at: Point, number: usize, piece: &str) {
        let ring = at + Vec2::new(0.17, 0.0);
        self.signs.line(Circle::new(ring, 0.17).to_path(0.005), Pen::new(0.03, Ink::Black));
        let digit =
            Text::new(ring + Vec2::new(0.0, 0.5 * CAP_HEIGHT * 0.26), 0.26, number.to_string().as_str());
        self.words.text(digit.aligned(Align::Middle).bold());
        let name = Text::new(at + Vec2::new(0.42, 0.5 * CAP_HEIGHT * FIGURE), FIGURE, piece);
        self.labels.keep_off(name.footprint());
        self.labels.keep_off(crate::drawing::Footprint::level(Circle::new(ring, 0.19).bounding_box()));
        self.words.text(name);
    }

    /// The whole piece, small, with the window marked.
    pub(super) fn whole(&mut self, outline: &[Point], window: Rect, height: f64) {
        let all =
            outline.iter().fold(Rect::from_points(outline[0], outline[0]), |all, point| all.union_pt(*point));
        let scale = height / all.height();
        let size = all.size() * scale;
        let rooms = [
            self.frame.origin() + Vec2::new(self.frame.width() - size.width, 0.0),
            self.frame.origin(),
            Point::new(self.frame.x1 - size.width, self.frame.y1 - size.height),
            Point::new(self.frame.x0, self.frame.y1 - size.height),
            self.frame.center() - Vec2::new(0.5 * size.width, 0.5 * size.height),
        ];
        let text = |at: &Point| {
            let room = Rect::from_origin_size(*at, size).inflate(0.04, 0.04);
            crate::drawing::Footprint::level(room)
        };
        // Where it hides least of what is drawn already.
        let hidden = |at: &Point| -> f64 {
            let print = text(at);
            let all = self.lines.marks.iter().chain(&self.signs.marks);
            all.filter_map(|mark| match mark {
                Mark::Line { path, .. } => Some(path),
                _ => None,
            })
            .flat_map(|path| {
                path.segments().map(|piece| print.covered(piece.start(), piece.end())).collect::<Vec<_>>()
            })
            .sum()
        };
        let Some(at) = rooms.into_iter().min_by(|a, b| hidden(a).total_cmp(&hidden(b))) else { return };
        if hidden(&at) > 0.05 {
            return;
        }
        let place = Affine::translate(at.to_vec2())
            * Affine::scale(scale)
            * Affine::translate(-all.origin().to_vec2());
        let mut path = BezPath::new();
        outline.iter().step_by(4).enumerate().for_each(|(index, point)| {
            if index == 0 { path.move_to(place * *point) } else { path.line_to(place * *point) }
        });
        path.close_path();
        self.signs.line(path, MEASURE);
        let shown = place.transform_rect_bbox(window.intersect(all.inflate(2.0, 2.0)));
        self.signs.line(shown.to_path(0.1), Pen::new(0.03, Ink::Black));
        self.labels.keep_off(text(&at));
    }
}

/// The parts of a line inside a frame.
fn clipped(line: &[Point], frame: Rect) -> BezPath {
    let line = &thinned(line);
    let mut path = BezPath::new();
    let mut pen: Option<Point> = None;
    for pair in line.windows(2) {
        let Some((from, to)) = inside(pair[0], pair[1], frame) else {
            pen = None;
            continue;
        };
        if pen != Some(from) {
            path.move_to(from);
        }
        path.line_to(to);
        pen = Some(to);
    }
    path
}

/// A line with as many places as the eye sees.
fn thinned(line: &[Point]) -> Vec<Point> {
    const LONGEST: f64 = 0.4;
    const STRAIGHT: f64 = 0.04;
    let mut kept: Vec<Point> = line.iter().take(1).copied().collect();
    for pair in line.windows(2).skip(1) {
        let before = kept[kept.len() - 1];
        let (way, on) = (pair[0] - before, pair[1] - pair[0]);
        let turn = way.cross(on).atan2(way.dot(on)).abs();
        if turn > STRAIGHT || way.hypot() > LONGEST {
            kept.push(pair[0]);
        }
    }
    kept.extend(line.last().filter(|_| line.len() > 1));
    kept
}

/// The part of a straight line inside a frame.
fn inside(from: Point, to: Point, frame: Rect) -> Option<(Point, Point)> {
    let way = to - from;
    let (mut first, mut last) = (0.0_f64, 1.0_f64);
    for (speed, low, high) in
        [(way.x, frame.x0 - from.x, frame.x1 - from.x), (way.y, frame.y0 - from.y, frame.y1 - from.y)]
    {
        if speed.abs() < 1e-12 {
            if low > 0.0 || high < 0.0 {
                return None;
            }
            continue;
        }
        let (a, b) = (low / speed, high / speed);
        first = first.max(a.min(b));
        last = last.min(a.max(b));
    }
    let place = |part: f64| {
        if part <= 0.0 {
            from
        } else if part >= 1.0 {
            to
        } else {
            from + way * part
        }
    };
    (first < last).then(|| (place(first), place(last)))
}

/// A straight line with one small wave in its middle.
fn wave(from: f64, to: f64, at: f64, level: bool) -> BezPath {
    const SIZE: f64 = 0.09;
    let place =
        |along: f64, off: f64| if level { Point::new(along, at + off) } else { Point::new(at + off, along) };
    let middle = 0.5 * (from + to);
    let mut path = BezPath::new();
    path.move_to(place(from, 0.0));
    for (along, off) in [(-1.2, 0.0), (-0.5, -1.0), (0.5, 1.0), (1.2, 0.0)] {
        path.line_to(place(middle + SIZE * along, SIZE * off));
    }
    path.line_to(place(to, 0.0));
    path
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_cut_at_its_window() {
        let line = [Point::new(-1.0, 0.5), Point::new(0.5, 0.5), Point::new(0.5, 3.0), Point::new(9.0, 9.0)];
        let path = clipped(&line, Rect::new(0.0, 0.0, 1.0, 1.0));
        assert_eq!(path.to_svg(), "M0,0.5 L0.5,0.5 L0.5,1");
    }
}
