//! The line to cut: beside the sewing line by each edge's allowance, with its corners as a cutter shapes them.

use kurbo::{Affine, CubicBez, ParamCurve, Point, Vec2};

use crate::{
    curve::{
        Chain, beside, beside_running, crossing, line_crossings, outward, reversed, straight, unit,
        without_loops,
    },
    draft::Dart,
};

/// A stretch of the sewing line with one allowance, and how the corner after it is cut.
#[derive(Clone, Debug, PartialEq)]
pub struct Run {
    /// Which edge of the piece it belongs to.
    pub edge: &'static str,
    /// The sewing line, walked with the piece to its right.
    pub seam: Chain,
    /// The allowance where the stretch starts and where it ends, cm; where the two differ the seam is straight.
    pub allowance: [f64; 2],
    /// How the corner at its end is cut.
    pub corner: Corner,
}

/// How the allowances of two edges meet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Corner {
    /// Both cut lines run on until they meet.
    Meet,
    /// One of the edges is sewn before the other crosses it. Its allowance ends square to its seam, where that, run on,
    /// leaves the piece: both layers end alike, and pressed open they end with the edge that is sewn next.
    Square(Which),
    /// One of the edges is turned up. Its allowance is the mirror image of the leg above the fold, so that it lies flat.
    TurnedUp(Which),
    /// The mouth of a dart, whose cloth is pressed to the centre: a cap that ends with the edge when the dart is sewn.
    Mouth(Dart),
}

/// One of the two edges at a corner.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Which {
    /// The one that ends there.
    Before,
    /// The one that starts there.
    After,
}

/// Ends nearer than this are one point, cm.
const ONE_POINT: f64 = 5e-4;

/// Where a curve is tighter than its allowance the lines of two runs may pass each other in a loop no longer than this,
/// cm; a longer one is an allowance that has no room.
const LONGEST_LOOP: f64 = 2.0;

/// The closed line to cut, from the start of the first run, in the direction of the sewing line.
///
/// `None` where an allowance is so wide that the edges beside it end before it does. Whether the line crosses itself is
/// for the caller to look at.
pub fn cut_line(runs: &[Run]) -> Option<Vec<CubicBez>> {
    let mut lines: Vec<Chain> = runs.iter().map(Run::beside).collect();
    let mut bridges: Vec<Vec<CubicBez>> = Vec::with_capacity(runs.len());
    for (index, run) in runs.iter().enumerate() {
        let after = (index + 1) % runs.len();
        let joint = Joint { before: run, after: &runs[after] };
        let (before, bridge, next) = joint.cut(&lines[index], &lines[after])?;
        lines[index] = before;
        lines[after] = next;
        bridges.push(bridge);
    }
    let mut outline = Vec::new();
    for (line, bridge) in lines.iter().zip(bridges) {
        outline.extend_from_slice(line.cubics());
        outline.extend(bridge);
    }
    close(&mut outline);
    Some(without_loops(outline, LONGEST_LOOP))
}

/// Brings each cubic's start onto the end before it and drops crumbs; what is left of a gap is cut straight.
fn close(outline: &mut Vec<CubicBez>) {
    let mut closed: Vec<CubicBez> = Vec::with_capacity(outline.len() + 4);
    let Some(mut at) = outline.last().map(|cubic| cubic.p3) else { return };
    for cubic in outline.iter() {
        let mut cubic = *cubic;
        if cubic.p0.distance(at) > ONE_POINT {
            closed.push(straight(at, cubic.p0));
        } else {
            cubic.p0 = at;
        }
        if cubic.p0.distance(cubic.p3) > ONE_POINT {
            at = cubic.p3;
            closed.push(cubic);
        }
    }
    *outline = closed;
}

impl Run {
    /// A stretch with an even allowance, which runs on to meet the next.
    pub(super) fn even(edge: &'static str, seam: Chain, allowance: f64) -> Self {
        Self { edge, seam, allowance: [allowance, allowance], corner: Corner::Meet }
    }

    /// The four sides of a strip with its upper left corner at the origin: top, right, bottom and left, each by its name
    /// and allowance.
    pub(super) fn strip(width: f64, height: f64, sides: [(&'static str, f64); 4]) -> Vec<Self> {
        let corners = [(0.0, 0.0), (width, 0.0), (width, height), (0.0, height)].map(Point::from);
        let side = |(from, (edge, allowance)): (usize, (&'static str, f64))| {
            Self::even(edge, Chain::of(straight(corners[from], corners[(from + 1) % 4])), allowance)
        };
        sides.into_iter().enumerate().map(side).collect()
    }

    /// The cut line of this stretch alone.
    fn beside(&self) -> Chain {
        let [from, to] = self.allowance;
        match self.seam.cubics() {
            _ if from == to => beside(&self.seam, from),
            [.., last] => Chain::of(beside_running(self.seam.start(), last.p3, [from, to])),
            [] => self.seam.clone(),
        }
    }
}

/// Two runs and the corner between them.
struct Joint<'a> {
    before: &'a Run,
    after: &'a Run,
}

impl Joint<'_> {
    /// The first line with its end, the second with its start where the corner wants it, and what lies between.
    fn cut(&self, before: &Chain, after: &Chain) -> Option<(Chain, Vec<CubicBez>, Chain)> {
        let corner = self.before.seam.end();
        let (ends, starts) = (self.before.seam.end_tangent(), self.after.seam.start_tangent());
        match self.before.corner {
            Corner::Meet => {
                let (before, after) = met(before, after)?;
                Some((before, Vec::new(), after))
            }
            Corner::Square(Which::Before) => {
                let after = started_on(after, corner, ends)?;
                let before = ended_on(before, after.start(), outward(ends))?;
                let bridge = vec![straight(before.end(), after.start())];
                Some((before, bridge, after))
            }
            Corner::Square(Which::After) => {
                let before = ended_on(before, corner, starts)?;
                let after = started_on(after, before.end(), outward(starts))?;
                let bridge = vec![straight(before.end(), after.start())];
                Some((before, bridge, after))
            }
            Corner::TurnedUp(Which::After) => {
                let fold = Fold { at: corner, along: starts, depth: self.after.allowance[0] };
                let (before, flap) = fold.turn(before)?;
                let tip = flap.last().map_or(before.end(), |cubic| cubic.p3);
                Some((before, flap, started_on(after, tip, outward(starts))?))
            }
            Corner::TurnedUp(Which::Before) => {
                let fold = Fold { at: corner, along: ends, depth: self.before.allowance[1] };
                let (after, flap) = fold.turn(&after.reversed())?;
                let flap: Vec<CubicBez> = flap.into_iter().rev().map(reversed).collect();
                let after = after.reversed();
                let tip = flap.first().map_or(after.start(), |cubic| cubic.p0);
                Some((ended_on(before, tip, outward(ends))?, flap, after))
            }
            Corner::Mouth(dart) => {
                let [inner, outer] = dart.legs.map(|leg| unit(leg - dart.apex));
                let before = ended_on(before, dart.apex, inner)?;
                let after = started_on(after, dart.apex, outer)?;
                let cap = dart_cap(&dart, &before)?;
                Some((before, cap, after))
            }
        }
    }
}

/// The line along which an edge is turned up.
struct Fold {
    at: Point,
    along: Vec2,
    /// How much is turned up, cm.
    depth: f64,
}

impl Fold {
    /// The line that runs down to the fold, cut there, and what goes on beyond it: the mirror image of its last `depth`.
    fn turn(&self, line: &Chain) -> Option<(Chain, Vec<CubicBez>)> {
        let line = ended_on(line, self.at, self.along)?;
        if self.depth <= ONE_POINT {
            return Some((line, Vec::new()));
        }
        let up = [outward(self.along), -outward(self.along)]
            .into_iter()
            .min_by(|a, b| a.dot(line.end_tangent()).total_cmp(&b.dot(line.end_tangent())))?;
        let (_, last) = line_cut(&line, self.at + up * self.depth, self.along)?;
        let mirror = Affine::reflect(self.at, self.along);
        let flap = last.reversed().moved(mirror);
        Some((line, flap.cubics().to_vec()))
    }
}

/// The cut line over the mouth of a dart: two folds of the cloth beside it, which lie under the centre when the dart is
/// pressed there, as upright darts are (common practice, no source), so that all layers end in one line.
fn dart_cap(dart: &Dart, before: &Chain) -> Option<Vec<CubicBez>> {
    let [inner, outer] = dart.legs.map(|leg| unit(leg - dart.apex));
    let middle = unit(inner + outer);
    if middle == Vec2::ZERO || inner.cross(outer).abs() < 1e-9 {
        return Some(Vec::new());
    }
    let under = before.reversed().moved(Affine::reflect(dart.apex, inner));
    let under = ended_on(&under, dart.apex, middle)?;
    let over = under.moved(Affine::reflect(dart.apex, middle)).reversed();
    Some(under.cubics().iter().chain(over.cubics()).copied().collect())
}

/// How far a line is run on at most to reach another, cm: over twice the widest allowance.
const RUN_ON: f64 = 40.0;

/// The line cut where it last crosses the straight line through `point` along `way`, or run on straight to it.
fn ended_on(line: &Chain, point: Point, way: Vec2) -> Option<Chain> {
    let run_on = straight(line.end(), line.end() + line.end_tangent() * RUN_ON);
    if let Some(t) = line_crossings(&run_on, point, way).first() {
        if *t * RUN_ON <= ONE_POINT {
            return Some(line.clone());
        }
        return Some(line.clone().then(straight(run_on.p0, run_on.eval(*t))));
    }
    line_cut(line, point, way).map(|(head, _)| head)
}

/// The same at the start of a line.
fn started_on(line: &Chain, point: Point, way: Vec2) -> Option<Chain> {
    ended_on(&line.reversed(), point, way).map(|line| line.reversed())
}

/// The line in two where it last crosses a straight line.
fn line_cut(line: &Chain, point: Point, way: Vec2) -> Option<(Chain, Chain)> {
    let cubics = line.cubics();
    let (index, t) = cubics
        .iter()
        .enumerate()
        .rev()
        .find_map(|(index, cubic)| Some((index, *line_crossings(cubic, point, way).last()?)))?;
    let part = |cubics: &[CubicBez], cut: CubicBez, first: bool| {
        let mut all = cubics.to_vec();
        all.insert(if first { 0 } else { all.len() }, cut);
        Chain::from_cubics(all)
    };
    let head = part(&cubics[..index], cubics[index].subsegment(0.0..t), false)?;
    let tail = part(&cubics[index + 1..], cubics[index].subsegment(t..1.0), true)?;
    Some((head, tail))
}

/// Both lines run on, or cut off, to where they meet nearest to their corner.
fn met(before: &Chain, after: &Chain) -> Option<(Chain, Chain)> {
    if before.end().distance(after.start()) <= ONE_POINT {
        return Some((before.clone(), after.clone()));
    }
    let on = before.clone().then(straight(before.end(), before.end() + before.end_tangent() * RUN_ON));
    let back = after.reversed();
    let back = back.clone().then(straight(back.end(), back.end() + back.end_tangent() * RUN_ON)).reversed();
    let last = on.cubics().len() - 1;
    let places = (0..=last + back.cubics().len())
        .flat_map(|away| (0..=away.min(last)).map(move |i| (last - i, away - i)));
    for (i, j) in places.filter(|(_, j)| *j < back.cubics().len()) {
        if let Some((t, u)) = crossing(&on.cubics()[i], &back.cubics()[j]) {
            let mut head = on.cubics()[..i].to_vec();
            head.push(on.cubics()[i].subsegment(0.0..t));
            let mut tail = vec![back.cubics()[j].subsegment(u..1.0)];
            tail.extend_from_slice(&back.cubics()[j + 1..]);
            return Some((Chain::from_cubics(head)?, Chain::from_cubics(tail)?));
        }
    }
    None
}
