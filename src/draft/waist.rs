//! The waist: drawn as it is sewn, with the darts closed, then opened again.

use kurbo::{Affine, CubicBez, Line, ParamCurve, ParamCurveDeriv, Point, Vec2};

use super::{
    panel::{Dart, Pleat},
    plan::DartPlan,
};
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

/// One dart in the open panel: where it ends, which way it points at the waist, and its half angle. A pleat has no angle
/// but a width: its folds run beside each other.
#[derive(Clone, Copy)]
struct OpenDart {
    apex: Point,
    axis: Vec2,
    half: f64,
    pleat: Option<f64>,
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
        let apex = top - axis * dart.length;
        match dart.pleat {
            Some(width) => {
                Self { apex: apex - Self::across(axis) * (0.5 * width), axis, half: 0.0, pleat: Some(width) }
            }
            None => Self { apex, axis, half: (0.5 * intake / dart.length).atan(), pleat: None },
        }
    }

    /// Square to the axis, towards the side seam.
    fn across(axis: Vec2) -> Vec2 {
        Vec2::new(-axis.y, axis.x)
    }

    /// A pleat that is drawn already.
    fn laid(pleat: &Pleat) -> Self {
        let [fold, _] = pleat.folds;
        Self { apex: fold.p1, axis: unit(fold.p0 - fold.p1), half: 0.0, pleat: Some(pleat.intake()) }
    }

    /// A dart that is drawn already.
    fn drawn(dart: &Dart) -> Self {
        let [inner, outer] = dart.legs.map(|leg| leg - dart.apex);
        let half = 0.5 * inner.cross(outer).atan2(inner.dot(outer));
        Self { apex: dart.apex, axis: turned(unit(inner), half), half, pleat: None }
    }

    /// Sewing the dart: the part on its side seam side turns about the apex; a pleat brings it over by its width.
    fn closing(&self) -> Affine {
        match self.pleat {
            Some(width) => Affine::translate(Self::across(self.axis) * -width),
            None => Affine::rotate_about(-2.0 * self.half, self.apex),
        }
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

/// A waist as it is cut.
pub(super) struct Opened {
    pub waist: Chain,
    pub darts: Vec<Dart>,
    pub pleats: Vec<Pleat>,
    /// The angle by which closing them turns the side part.
    pub closing: f64,
}

/// The waist as it is cut, with its darts and pleats.
pub(super) fn opened(ends: &WaistEnds, darts: &[DartPlan], intakes: f64) -> Opened {
    let curve = sewn(ends, darts, intakes);
    let open = darts.iter().map(|dart| (OpenDart::new(ends, dart, intakes * dart.share), dart.at));
    cut_open(&curve, open)
}

/// The waist through darts and pleats that are drawn already: sewn, and as it is cut.
pub(super) fn redrawn(ends: &WaistEnds, darts: &[Dart], pleats: &[Pleat]) -> (CubicBez, Opened) {
    let mut open: Vec<OpenDart> =
        darts.iter().map(OpenDart::drawn).chain(pleats.iter().map(OpenDart::laid)).collect();
    open.sort_by(|a, b| a.apex.x.total_cmp(&b.apex.x));
    let (mut closing, mut turn) = (Affine::IDENTITY, 0.0);
    for dart in &open {
        closing *= dart.closing();
        turn -= 2.0 * dart.half;
    }
    let curve = eased(ends.centre, ends.leaves, closing * ends.side, turned(ends.arrives, turn));
    let across = ends.side - ends.centre;
    let guess = |dart: &OpenDart| (dart.apex - ends.centre).dot(across) / across.hypot2();
    let opened = cut_open(&curve, open.into_iter().map(|dart| (dart, guess(&dart))));
    (curve, opened)
}

/// Opens the sewn waist at its darts, each with a guess of where along the waist it stands.
fn cut_open(curve: &CubicBez, darts: impl ExactSizeIterator<Item = (OpenDart, f64)>) -> Opened {
    let mut cut: Vec<CubicBez> = Vec::with_capacity(2 * darts.len() + 1);
    let (mut drawn, mut pleats) = (Vec::with_capacity(darts.len()), Vec::new());
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
        match open.pleat {
            None => drawn.push(Dart { apex: open.apex, legs: [before.p3, after] }),
            Some(width) => {
                let other = open.apex + OpenDart::across(open.axis) * width;
                pleats.push(Pleat { folds: [Line::new(before.p3, open.apex), Line::new(after, other)] });
            }
        }
        cut.push(before);
        cut.push(straight(before.p3, after));
        from = t;
    }
    cut.push(closing.inverse() * curve.subsegment(from..1.0));
    let mut cubics = cut.into_iter();
    // Cannot be empty: the part after the last dart is always there.
    let first = cubics.next().unwrap_or(*curve);
    let waist = cubics.fold(Chain::of(first), Chain::then);
    Opened { waist, darts: drawn, pleats, closing: -turn }
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
