//! A cut through a panel, and the part that moves when it is opened or lapped.

use kurbo::{Affine, ParamCurve, Point, Vec2};

use super::Cut;
use crate::{
    curve::{Chain, Turn, meet, unit},
    draft::PanelShape,
    terms::{Edge, Role},
};

/// Points of a run stand about so far apart, cm of the panel.
const STEP: f64 = 0.25;

/// An edge as points, from its start.
pub(crate) fn run(chain: &Chain) -> Vec<Point> {
    let mut points = vec![chain.start()];
    for cubic in chain.cubics() {
        let parts = (cubic.p0.distance(cubic.p3) / STEP).ceil().max(2.0) as usize;
        points.extend((1..=parts).map(|part| cubic.eval(part as f64 / parts as f64)));
    }
    points
}

/// How far a place lies from a run.
pub(crate) fn distance(point: Point, line: &[Point]) -> f64 {
    let off = |pair: &[Point]| {
        let (chord, gap) = (pair[1] - pair[0], point - pair[0]);
        let part = if chord.hypot2() > 0.0 { (gap.dot(chord) / chord.hypot2()).clamp(0.0, 1.0) } else { 0.0 };
        (gap - chord * part).hypot2()
    };
    line.windows(2).map(off).fold(f64::INFINITY, f64::min).sqrt()
}

/// A cut that was opened by an amount, or lapped by a negative one.
#[derive(Clone, Debug)]
pub(crate) struct Opening {
    /// From where the scissors begin to the hinge, or to the other edge.
    pub cut: [Point; 2],
    /// Where the amount is measured, before the part moves.
    pub measured: Point,
    /// Where the part turns; `None` where it slides.
    pub hinge: Option<Point>,
    /// How the part moves.
    pub motion: Affine,
    /// Whether papers lie on each other.
    pub laps: bool,
    /// What stays.
    pub still: Vec<Vec<Point>>,
    /// What moves, where it was.
    pub moving: Vec<Vec<Point>>,
}

/// Which part of an edge moves.
#[derive(Clone, Copy)]
enum Moving {
    Nothing,
    All,
    Above(f64),
    Below(f64),
}

impl Opening {
    /// The cut on this panel, opened by so much; `reach` is how far below the crotch point the pivot of a slash lies.
    pub(crate) fn of(panel: &PanelShape, cut: Cut, opens: f64, reach: f64) -> Self {
        match cut {
            Cut::Slash { .. } => slash(panel, opens, reach),
            Cut::FromCentre | Cut::FromSide | Cut::Across => level(panel, cut, opens),
        }
    }
}

/// Where a slash for the thigh begins: at the start of the curve, or on the hip line where that is lower, so that the cut
/// never runs over the seat.
fn slash_from(panel: &PanelShape) -> Point {
    let [start, hip] = [Role::CurveStart, Role::CentreHip].map(|role| panel.roles[role]);
    if hip.y > start.y { hip } else { start }
}

fn slash(panel: &PanelShape, opens: f64, reach: f64) -> Opening {
    let pivot = panel.inseam.point_before_end(reach);
    let measured = slash_from(panel);
    let seam = run(&panel.crotch_seam);
    let from = beyond(&seam, pivot, measured).unwrap_or(measured);
    let turn = Turn::opening(-opens, pivot.distance(measured)).about(pivot);
    parted(
        panel,
        |edge| match edge {
            Edge::Inseam => Moving::Above(pivot.y),
            Edge::CrotchSeam => Moving::Below(from.y),
            Edge::Waist | Edge::SideSeam | Edge::Hem => Moving::Nothing,
        },
        Opening {
            cut: [from, pivot],
            measured,
            hinge: Some(pivot),
            motion: turn,
            laps: opens < 0.0,
            still: Vec::new(),
            moving: Vec::new(),
        },
    )
}

fn level(panel: &PanelShape, cut: Cut, opens: f64) -> Opening {
    let [centre, side] = [Role::CentreHip, Role::SideHip].map(|role| panel.roles[role]);
    let y = side.y;
    let on_seam = panel.crotch_seam.crossings(y).fold(centre.x, f64::min);
    let on_seam = Point::new(on_seam, y);
    let reach = centre.distance(side);
    let (ends, measured, hinge, motion) = match cut {
        Cut::FromSide => ([side, centre], side, Some(centre), Turn::opening(-opens, reach).about(centre)),
        Cut::Across => ([on_seam, side], side, None, Affine::translate((0.0, opens))),
        _ => ([on_seam, side], centre, Some(side), Turn::opening(opens, reach).about(side)),
    };
    let above = !matches!(cut, Cut::Across);
    parted(
        panel,
        |edge| match (edge, above) {
            (Edge::Waist, above) | (Edge::Hem | Edge::Inseam, above) if above == (edge == Edge::Waist) => {
                Moving::All
            }
            (Edge::Waist | Edge::Hem | Edge::Inseam, _) => Moving::Nothing,
            (Edge::SideSeam | Edge::CrotchSeam, true) => Moving::Above(y),
            (Edge::SideSeam | Edge::CrotchSeam, false) => Moving::Below(y),
        },
        Opening {
            cut: ends,
            measured,
            hinge,
            motion,
            laps: opens < 0.0,
            still: Vec::new(),
            moving: Vec::new(),
        },
    )
}

/// Every edge and dart given to what moves or to what stays.
fn parted(panel: &PanelShape, moves: impl Fn(Edge) -> Moving, mut opening: Opening) -> Opening {
    for line in waist(panel) {
        match moves(Edge::Waist) {
            Moving::All => opening.moving.push(line),
            _ => opening.still.push(line),
        }
    }
    for edge in [Edge::SideSeam, Edge::Hem, Edge::Inseam, Edge::CrotchSeam] {
        let line = run(panel.edge(edge));
        let (y, above) = match moves(edge) {
            Moving::All => {
                opening.moving.push(line);
                continue;
            }
            Moving::Nothing => {
                opening.still.push(line);
                continue;
            }
            Moving::Above(y) => (y, true),
            Moving::Below(y) => (y, false),
        };
        for (over, part) in at_level(&line, y) {
            if over == above { opening.moving.push(part) } else { opening.still.push(part) }
        }
    }
    opening
}

/// The waist from dart to dart, and the legs of the darts.
pub(crate) fn waist(panel: &PanelShape) -> Vec<Vec<Point>> {
    let mut lines: Vec<Vec<Point>> = Vec::new();
    for cubic in panel.waist.cubics() {
        let mouth = panel
            .darts
            .iter()
            .any(|dart| dart.legs[0].distance(cubic.p0) < 1e-6 && dart.legs[1].distance(cubic.p3) < 1e-6);
        if !mouth {
            lines.push(run(&Chain::of(*cubic)));
        }
    }
    lines.extend(panel.darts.iter().map(|dart| vec![dart.legs[0], dart.apex, dart.legs[1]]));
    lines.extend(panel.pleats.iter().flat_map(|pleat| pleat.folds).map(|fold| vec![fold.p0, fold.p1]));
    lines
}

/// A line cut wherever it crosses a level: each part with whether it lies above.
fn at_level(line: &[Point], y: f64) -> Vec<(bool, Vec<Point>)> {
    let mut parts: Vec<(bool, Vec<Point>)> = Vec::new();
    let mut part = vec![line[0]];
    for pair in line.windows(2) {
        let (from, to) = (pair[0].y - y, pair[1].y - y);
        if (from < 0.0) != (to < 0.0) {
            let at = pair[0].lerp(pair[1], from / (from - to));
            part.push(at);
            parts.push((from < 0.0, std::mem::replace(&mut part, vec![at])));
        }
        part.push(pair[1]);
    }
    // What ends on the level lies where its middle does.
    let over = part[part.len() / 2].y < y || part.len() == 2 && part[0].y.min(part[1].y) < y;
    parts.push((over, part));
    parts
}

/// Where the ray from `from` through `through` leaves the panel over a line, at or beyond `through`.
fn beyond(line: &[Point], from: Point, through: Point) -> Option<Point> {
    let way = unit(through - from);
    let far = from.distance(through) - 0.01;
    let hits = line.windows(2).filter_map(|pair| {
        let along = pair[1] - pair[0];
        let (reach, part) = meet(from, way, pair[0], unit(along))?;
        (reach >= far && (-1e-6..=along.hypot() + 1e-6).contains(&part)).then_some(reach)
    });
    let nearest = hits.fold(f64::INFINITY, f64::min);
    nearest.is_finite().then(|| from + Vec2::new(way.x, way.y) * nearest)
}
