//! An edge of a panel: cubics joined end to end.

use kurbo::{Affine, BezPath, CubicBez, ParamCurve, ParamCurveDeriv, Point, Vec2};

use super::{
    end_tangent, length, length::arc, line_crossings, reversed, start_tangent, t_at_level, t_walked, unit,
};

/// A cubic of a seam shorter than this is a crumb, cm: nobody can draw or sew it by itself, and a seam that is bent there
/// turns a corner.
const CRUMB: f64 = 0.1;

/// A run of cubics, each starting where the one before ended; never empty.
#[derive(Clone, Debug, PartialEq)]
pub struct Chain(Vec<CubicBez>);

impl Chain {
    /// A chain of one cubic.
    pub fn of(cubic: CubicBez) -> Self {
        /// As many cubics as the corrections of an edge ordinarily cut it into.
        const ORDINARY: usize = 10;
        let mut cubics = Vec::with_capacity(ORDINARY);
        cubics.push(cubic);
        Self(cubics)
    }

    /// A chain of these cubics, each starting where the one before ended; `None` of none.
    pub fn from_cubics(cubics: Vec<CubicBez>) -> Option<Self> {
        (!cubics.is_empty()).then_some(Self(cubics))
    }

    /// The chain with one more cubic, which starts where the chain ends.
    #[must_use]
    pub fn then(mut self, cubic: CubicBez) -> Self {
        self.push(cubic);
        self
    }

    /// Adds a cubic, which starts where the chain ends.
    pub(crate) fn push(&mut self, cubic: CubicBez) {
        self.0.push(cubic);
    }

    /// The cubics in order.
    pub fn cubics(&self) -> &[CubicBez] {
        &self.0
    }

    /// The cubics in order, to be moved so that each still starts where the one before ends.
    pub(crate) fn cubics_mut(&mut self) -> &mut [CubicBez] {
        &mut self.0
    }

    /// Cuts every cubic that stands on both sides of the level `y` in two, unless that left a crumb.
    pub(crate) fn cut_across(&mut self, y: f64) {
        // From the end, so that what is cut is not met again: at most one cut a cubic.
        for index in (0..self.0.len()).rev() {
            let cubic = &self.0[index];
            let (from, to) = (cubic.p0.y - y, cubic.p3.y - y);
            if from.abs() >= CRUMB && to.abs() >= CRUMB && (from < 0.0) != (to < 0.0) {
                let t = t_at_level(cubic, y);
                self.cut_cubic(index, t);
            }
        }
    }

    /// Makes two cubics of one, which run as it did.
    fn cut_cubic(&mut self, index: usize, t: f64) {
        let [before, after] = cut(&self.0[index], t);
        self.0[index] = before;
        self.0.insert(index + 1, after);
    }

    /// Where the chain starts.
    pub fn start(&self) -> Point {
        self.0[0].p0
    }

    /// Where the chain ends.
    pub fn end(&self) -> Point {
        self.0[self.0.len() - 1].p3
    }

    /// The direction in which the chain leaves its start.
    pub fn start_tangent(&self) -> Vec2 {
        start_tangent(&self.0[0])
    }

    /// The direction in which the chain reaches its end.
    pub fn end_tangent(&self) -> Vec2 {
        end_tangent(&self.0[self.0.len() - 1])
    }

    /// The arc length, as [`length`] measures it.
    pub fn length(&self) -> f64 {
        self.0.iter().map(length).sum()
    }

    /// The point `walked` along the chain from its start; beyond an end the last cubic is produced.
    pub fn point_at(&self, walked: f64) -> Point {
        let (cubic, t) = self.place_at(walked);
        self.0[cubic].eval(t)
    }

    /// The direction of the chain `walked` from its start.
    pub fn tangent_at(&self, walked: f64) -> Vec2 {
        let (cubic, t) = self.place_at(walked);
        unit(self.0[cubic].deriv().eval(t.clamp(0.0, 1.0)).to_vec2())
    }

    /// The point `walked` back along the chain from its end; beyond its start the first cubic is produced.
    pub fn point_before_end(&self, walked: f64) -> Point {
        self.point_before(self.0.len(), walked)
    }

    /// The same from the joint at which the cubic of this index begins.
    pub(crate) fn point_before(&self, joint: usize, walked: f64) -> Point {
        let mut left = walked;
        for (index, cubic) in self.0[..joint].iter().enumerate().rev() {
            let beyond = left_after(cubic, left);
            if beyond <= 0.0 || index == 0 {
                return cubic.eval(t_walked(cubic, 1.0, -left));
            }
            left = beyond;
        }
        self.start()
    }

    fn place_at(&self, walked: f64) -> (usize, f64) {
        let mut left = walked;
        let last = self.0.len() - 1;
        for (index, cubic) in self.0[..last].iter().enumerate() {
            let beyond = left_after(cubic, left);
            if beyond <= 0.0 {
                return (index, t_walked(cubic, 0.0, left));
            }
            left = beyond;
        }
        (last, t_walked(&self.0[last], 0.0, left))
    }

    /// The chain walked the other way.
    #[must_use]
    pub fn reversed(&self) -> Self {
        Self(self.0.iter().rev().copied().map(reversed).collect())
    }

    /// The chain carried by a move or a turn.
    #[must_use]
    pub fn moved(&self, by: Affine) -> Self {
        Self(self.0.iter().map(|cubic| by * *cubic).collect())
    }

    /// The chain cut in two, `walked` from its start. A cut at or beyond an end leaves that part a point.
    pub fn cut_at(&self, walked: f64) -> (Self, Self) {
        let (index, t) = self.place_at(walked);
        self.cut_in(index, t.clamp(0.0, 1.0))
    }

    /// The chain cut in two within one of its cubics.
    fn cut_in(&self, index: usize, t: f64) -> (Self, Self) {
        let (before, cut, after) = (&self.0[..index], self.0[index], &self.0[index + 1..]);
        let head = before.iter().copied().chain([cut.subsegment(0.0..t)]);
        let tail = [cut.subsegment(t..1.0)].into_iter().chain(after.iter().copied());
        (Self(head.collect()), Self(tail.collect()))
    }

    /// The arc from the start to where the chain first crosses the level `y`, and that place; the whole length and the
    /// end where it does not.
    pub fn walk_to_level(&self, y: f64) -> (f64, Point) {
        let [place] = self.walk_to_levels([y]);
        place
    }

    /// The same for several levels on one walk, in the order in which the chain comes to them.
    pub fn walk_to_levels<const N: usize>(&self, levels: [f64; N]) -> [(f64, Point); N] {
        let mut places = [(0.0, self.end()); N];
        let (mut walked, mut found) = (0.0, 0);
        for cubic in &self.0 {
            while found < N
                && let Some(t) = crossing_parameters(cubic, levels[found]).into_iter().next()
            {
                places[found] = (walked + arc(cubic, 0.0, t), cubic.eval(t));
                found += 1;
            }
            if found == N {
                return places;
            }
            walked += length(cubic);
        }
        for place in &mut places[found..] {
            place.0 = walked;
        }
        places
    }

    /// The chain cut in two where it first crosses the level `y`.
    pub fn cut_at_level(&self, y: f64) -> (Self, Self) {
        let mut whole = self.clone();
        match whole.joint_at_level(y) {
            Some(joint) if joint > 0 && joint < whole.0.len() => {
                let after = whole.0.split_off(joint);
                (whole, Self(after))
            }
            Some(0) => self.cut_in(0, 0.0),
            _ => self.cut_at(self.length()),
        }
    }

    /// The joint where the chain first crosses the level `y`, made where there was none: the index of the cubic that
    /// begins there. `None` where it does not cross it.
    fn joint_at_level(&mut self, y: f64) -> Option<usize> {
        let (index, t) = self.0.iter().enumerate().find_map(|(index, cubic)| {
            crossing_parameters(cubic, y).into_iter().next().map(|t| (index, t))
        })?;
        Some(self.joint_in(index, t))
    }

    /// The joint where a chain that runs down throughout comes to the level `y`, made where there was none: the index of
    /// the cubic that begins there. `None` where it ends above.
    pub(crate) fn joint_on_the_way_down(&mut self, y: f64) -> Option<usize> {
        let (index, cubic) = self.0.iter().enumerate().find(|(_, cubic)| cubic.p3.y > y)?;
        let t = t_at_level(cubic, y);
        Some(self.joint_in(index, t))
    }

    /// The joint within a cubic. A crumb that it would leave goes to the cubic beyond, so that no cubic is a crumb; at an
    /// end of the chain the joint is that end.
    fn joint_in(&mut self, index: usize, t: f64) -> usize {
        /// What the arithmetic leaves is not even a crumb, as a part of a cubic.
        const NOTHING: f64 = 1e-7;
        let cubic = self.0[index];
        let at = cubic.eval(t);
        let crumb_before = t <= NOTHING || cubic.p0.distance(at) < CRUMB;
        let crumb_after = t >= 1.0 - NOTHING || cubic.p3.distance(at) < CRUMB;
        if crumb_before {
            if index > 0 && t > NOTHING {
                let [crumb, rest] = cut(&cubic, t);
                self.0[index - 1] = run_together(&self.0[index - 1], &crumb);
                self.0[index] = rest;
            }
            return index;
        }
        if crumb_after {
            if index + 1 < self.0.len() && t < 1.0 - NOTHING {
                let [rest, crumb] = cut(&cubic, t);
                self.0[index] = rest;
                let next = reversed(self.0[index + 1]);
                self.0[index + 1] = reversed(run_together(&next, &reversed(crumb)));
            }
            return index + 1;
        }
        self.cut_cubic(index, t);
        index + 1
    }

    /// Makes a joint `walked` on from another, or back from it where that is negative: the index of the cubic that
    /// begins there.
    pub(crate) fn joint_from(&mut self, joint: usize, walked: f64) -> usize {
        let (mut left, mut next) = (walked.abs(), joint);
        loop {
            let index = if walked < 0.0 { next.checked_sub(1) } else { Some(next) };
            let Some((index, cubic)) = index.and_then(|index| Some((index, *self.0.get(index)?))) else {
                return next;
            };
            let beyond = left_after(&cubic, left);
            if beyond <= 0.0 {
                let (from, by) = if walked < 0.0 { (1.0, -left) } else { (0.0, left) };
                return self.joint_in(index, t_walked(&cubic, from, by));
            }
            left = beyond;
            next = if walked < 0.0 { index } else { index + 1 };
        }
    }

    /// The chain made `wanted` long by moving its start along its first cubic: cut off, or produced.
    #[must_use]
    pub fn resized_at_start(&self, wanted: f64) -> Self {
        let mut cubics = self.0.clone();
        let mut surplus = self.length() - wanted;
        while cubics.len() > 1 && left_after(&cubics[0], surplus) >= 0.0 {
            surplus -= length(&cubics.remove(0));
        }
        cubics[0] = cubics[0].subsegment(t_walked(&cubics[0], 0.0, surplus)..1.0);
        Self(cubics)
    }

    /// All x at which the chain crosses the level `y`.
    pub fn crossings(&self, y: f64) -> impl Iterator<Item = f64> {
        self.0
            .iter()
            .flat_map(move |cubic| crossing_parameters(cubic, y).into_iter().map(|t| cubic.eval(t).x))
    }

    /// The chain as a path of its own.
    pub fn to_path(&self) -> BezPath {
        let mut path = BezPath::new();
        path.move_to(self.start());
        for cubic in &self.0 {
            path.curve_to(cubic.p1, cubic.p2, cubic.p3);
        }
        path
    }
}

/// The cubic before a parameter and from there on.
fn cut(cubic: &CubicBez, t: f64) -> [CubicBez; 2] {
    let CubicBez { p0, p1, p2, p3 } = *cubic;
    let (a, b, c) = (p0.lerp(p1, t), p1.lerp(p2, t), p2.lerp(p3, t));
    let (d, e) = (a.lerp(b, t), b.lerp(c, t));
    let at = d.lerp(e, t);
    [CubicBez::new(p0, a, d, at), CubicBez::new(at, e, c, p3)]
}

/// A cubic and the crumb that runs on from it as one cubic with the ends and end tangents of both.
fn run_together(cubic: &CubicBez, crumb: &CubicBez) -> CubicBez {
    let whole = cubic.p0.distance(cubic.p3);
    let grown = 1.0 + crumb.p0.distance(crumb.p3) / whole.max(CRUMB);
    CubicBez::new(
        cubic.p0,
        cubic.p0 + (cubic.p1 - cubic.p0) * grown,
        crumb.p3 - end_tangent(crumb) * ((cubic.p3 - cubic.p2).hypot() * grown),
        crumb.p3,
    )
}

/// What is left of a walk of `left` when a cubic is walked; not measured where its chord alone is longer.
fn left_after(cubic: &CubicBez, left: f64) -> f64 {
    let beyond = left - cubic.p0.distance(cubic.p3);
    if beyond < 0.0 { beyond } else { left - length(cubic) }
}

/// Where a cubic crosses a level; a cubic that lies above or below it is told by its control points alone.
fn crossing_parameters(cubic: &CubicBez, y: f64) -> Vec<f64> {
    let ys = [cubic.p0.y, cubic.p1.y, cubic.p2.y, cubic.p3.y];
    if ys.iter().all(|control| *control < y) || ys.iter().all(|control| *control > y) {
        return Vec::new();
    }
    line_crossings(cubic, Point::new(0.0, y), Vec2::new(1.0, 0.0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::curve::straight;

    fn seam() -> Chain {
        Chain::of(CubicBez::new((0.0, 0.0), (1.0, 5.0), (3.0, 10.0), (2.0, 20.0)))
            .then(straight(Point::new(2.0, 20.0), Point::new(0.0, 60.0)))
    }

    #[test]
    fn length_of_a_straight_chain_exact() {
        let line = Chain::of(straight(Point::new(1.0, 2.0), Point::new(4.0, 6.0)));
        assert!((line.length() - 5.0).abs() < 1e-12);
    }

    #[test]
    fn length_as_a_dense_sum() {
        let cubic = seam().cubics()[0];
        let n = 200_000;
        let dense: f64 = (0..n)
            .map(|i| cubic.eval(i as f64 / n as f64).distance(cubic.eval((i + 1) as f64 / n as f64)))
            .sum();
        assert!((length(&cubic) - dense).abs() < 1e-6);
    }

    #[test]
    fn cut_parts_as_long_as_asked() {
        let whole = seam();
        for walked in [0.5, 7.0, 20.0, 33.0, 60.0] {
            let (head, tail) = whole.cut_at(walked);
            assert!((head.length() - walked).abs() < 1e-6);
            assert!((head.length() + tail.length() - whole.length()).abs() < 1e-6);
            assert!(whole.point_at(walked).distance(head.end()) < 1e-9);
            assert!(whole.point_before_end(whole.length() - walked).distance(head.end()) < 1e-6);
        }
    }

    #[test]
    fn produced_beyond_its_end() {
        let line = Chain::of(straight(Point::new(0.0, 0.0), Point::new(0.0, 10.0)));
        assert!(line.point_at(12.0).distance(Point::new(0.0, 12.0)) < 1e-9);
        assert!(line.point_at(-1.0).distance(Point::new(0.0, -1.0)) < 1e-9);
    }

    #[test]
    fn level_crossing_on_the_curve() {
        let xs: Vec<f64> = seam().crossings(40.0).collect();
        assert!(xs.len() == 1 && (xs[0] - 1.0).abs() < 1e-9, "{xs:?}");
    }

    #[test]
    fn crumb_beside_a_joint_goes_to_the_next_piece() {
        let whole = seam().cubics()[0];
        let whole = Chain::of(whole.subsegment(0.0..0.4)).then(whole.subsegment(0.4..1.0));
        let joint = length(&whole.cubics()[0]);
        for walked in [joint - 0.05, joint - 1e-12, joint + 1e-12, joint + 0.05, 4.0] {
            let mut cut = whole.clone();
            let index = cut.joint_from(0, walked);
            let place = cut.cubics()[index].p0;
            assert!(place.distance(whole.point_at(walked)) < 1e-9, "{walked}");
            assert!(cut.cubics().iter().all(|cubic| length(cubic) >= CRUMB));
            assert!(cut.cubics().iter().all(|cubic| end_tangent(cubic) != Vec2::ZERO));
            assert!((cut.length() - whole.length()).abs() < 1e-3, "{walked}");
        }
        let mut ends = whole.clone();
        assert_eq!(ends.joint_from(0, 0.05), 0);
        assert_eq!(ends.joint_from(2, -0.05), 2);
        assert_eq!(ends, whole);
    }
}
