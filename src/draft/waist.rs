//! The waist: drawn as it is sewn, with the darts closed, then opened again.

use kurbo::{Affine, CubicBez, ParamCurve, ParamCurveDeriv, Point, Vec2};

use super::{panel::Dart, plan::DartPlan};
use crate::{
    curve::{Chain, eased, straight, turned, unit},
    terms::Panel,
};

/// A panel's waist before it is drawn: its two ends and how the curve must leave and reach them.
#[derive(Clone, Copy, Debug)]
pub(super) struct WaistEnds {
    pub panel: Panel,
    pub centre: Point,
    pub side: Point,
    /// The ends before the waist was raised: darts hang from these, so that a raised waist leaves their ends.
    pub darts_from: Point,
    pub darts_to: Point,
    /// Square to the centre line, towards the side.
    pub leaves: Vec2,
    /// How the drawn waist arrives at the side seam.
    pub arrives: Vec2,
}

/// One dart in the open panel: where it ends, which way it points at the waist, and its half angle.
#[derive(Clone, Copy)]
struct OpenDart {
    apex: Point,
    axis: Vec2,
    half: f64,
}

impl OpenDart {
    /// Front darts stand on the grain, back darts square to the waist: common practice, no source.
    fn new(ends: &WaistEnds, dart: &DartPlan, intake: f64) -> Self {
        let chord = ends.darts_to - ends.darts_from;
        let axis = match ends.panel {
            Panel::Front => Vec2::new(0.0, -1.0),
            Panel::Back => unit(Vec2::new(chord.y, -chord.x)),
        };
        let top = ends.darts_from + chord * dart.at;
        Self { apex: top - axis * dart.length, axis, half: (0.5 * intake / dart.length).atan() }
    }

    /// A dart that is drawn already.
    fn drawn(dart: &Dart) -> Self {
        let [inner, outer] = dart.legs.map(|leg| leg - dart.apex);
        let half = 0.5 * inner.cross(outer).atan2(inner.dot(outer));
        Self { apex: dart.apex, axis: turned(unit(inner), half), half }
    }

    /// Sewing the dart: the part on its side seam side turns about the apex.
    fn closing(&self) -> Affine {
        Affine::rotate_about(-2.0 * self.half, self.apex)
    }
}

/// The waist with its darts closed. `intakes` are in the order of `darts`, from the centre.
pub(super) fn sewn(ends: &WaistEnds, darts: &[DartPlan], intakes: f64) -> CubicBez {
    let (mut closing, mut turn) = (Affine::IDENTITY, 0.0);
    for dart in darts {
        let open = OpenDart::new(ends, dart, intakes * dart.share);
        closing *= open.closing();
        turn -= 2.0 * open.half;
    }
    eased(ends.centre, ends.leaves, closing * ends.side, turned(ends.arrives, turn))
}

/// The waist as it is cut, its darts, and the angle by which they turn the side part.
pub(super) fn opened(ends: &WaistEnds, darts: &[DartPlan], intakes: f64) -> (Chain, Vec<Dart>, f64) {
    let curve = sewn(ends, darts, intakes);
    let open = darts.iter().map(|dart| (OpenDart::new(ends, dart, intakes * dart.share), dart.at));
    cut_open(&curve, open)
}

/// The waist through darts that are drawn already: sewn, as it is cut, its darts, and the angle by which they turn the
/// side part.
pub(super) fn redrawn(ends: &WaistEnds, darts: &[Dart]) -> (CubicBez, Chain, Vec<Dart>, f64) {
    let open = darts.iter().map(OpenDart::drawn);
    let (mut closing, mut turn) = (Affine::IDENTITY, 0.0);
    for dart in open.clone() {
        closing *= dart.closing();
        turn -= 2.0 * dart.half;
    }
    let curve = eased(ends.centre, ends.leaves, closing * ends.side, turned(ends.arrives, turn));
    let across = ends.side - ends.centre;
    let guess = |dart: &OpenDart| (dart.apex - ends.centre).dot(across) / across.hypot2();
    let (waist, darts, closing) = cut_open(&curve, open.map(|dart| (dart, guess(&dart))));
    (curve, waist, darts, closing)
}

/// Opens the sewn waist at its darts, each with a guess of where along the waist it stands.
fn cut_open(
    curve: &CubicBez,
    darts: impl ExactSizeIterator<Item = (OpenDart, f64)>,
) -> (Chain, Vec<Dart>, f64) {
    let mut cut: Vec<CubicBez> = Vec::with_capacity(2 * darts.len() + 1);
    let mut drawn = Vec::with_capacity(darts.len());
    let (mut closing, mut turn, mut from) = (Affine::IDENTITY, 0.0, 0.0);
    for (open, guess) in darts {
        let leg = turned(open.axis, turn - open.half);
        let apex = closing * open.apex;
        let t = ray_crossing(curve, apex, leg, guess).clamp(from, 1.0);
        let opening = closing.inverse();
        let before = opening * curve.subsegment(from..t);
        closing *= open.closing();
        turn -= 2.0 * open.half;
        let after = closing.inverse() * curve.eval(t);
        drawn.push(Dart { apex: open.apex, legs: [before.p3, after] });
        cut.push(before);
        cut.push(straight(before.p3, after));
        from = t;
    }
    cut.push(closing.inverse() * curve.subsegment(from..1.0));
    let mut cubics = cut.into_iter();
    // Cannot be empty: the part after the last dart is always there.
    let first = cubics.next().unwrap_or(*curve);
    (cubics.fold(Chain::of(first), Chain::then), drawn, -turn)
}

/// Where the curve crosses the ray from `apex` along `leg`, from the guess `t`.
fn ray_crossing(curve: &CubicBez, apex: Point, leg: Vec2, guess: f64) -> f64 {
    let slope = curve.deriv();
    let mut t = guess;
    for _ in 0..6 {
        let off = leg.cross(curve.eval(t) - apex);
        let speed = leg.cross(slope.eval(t).to_vec2());
        if off.abs() < 1e-12 || speed.abs() < 1e-9 {
            break;
        }
        t = (t - off / speed).clamp(0.0, 1.0);
    }
    t
}
