//! The way of the tape for every measurement: on which view, from where to where, and where its number stands.

use kurbo::{Affine, Arc, BezPath, Circle, Line, Point, Shape as _, Vec2};

use super::figure::{FLOOR, View, smooth};
use crate::{
    drawing::{Align, CAP_HEIGHT, Ink, Layer, Pen, Shade, Text},
    terms::Measurement,
};
use Measurement as M;

/// The tape on the near side of the body.
const TAPE: Pen = Pen::new(0.05, Ink::Black);
/// The tape behind the body or within it.
const BEHIND: Pen = Pen::new(0.028, Ink::Black).dashed(&[0.09, 0.07]);
/// A height, measured beside the body.
const HEIGHT: Pen = Pen::new(0.028, Ink::Black);
/// From the body out to where a height is measured.
const OUT: Pen = Pen::new(0.012, Ink::Middle);
/// The disc of a number, cm, and its letters.
const DISC: f64 = 0.17;
const LETTERS: f64 = 0.22;

/// How a tape lies.
enum Way {
    /// Level, or nearly, round the body between two points of its outline.
    Round([(f64, f64); 2]),
    /// On the near side only, between two points; with a stroke at both ends.
    Across([(f64, f64); 2]),
    /// Upright beside the body at `x`, from one height to another; thin lines run out to it from these x.
    Upright { x: f64, heights: [f64; 2], from: [f64; 2] },
    /// On the near side through these points.
    Along(&'static [(f64, f64)]),
    /// The same behind or within the body.
    Hidden(&'static [(f64, f64)]),
}

/// A measurement on a view.
struct Tape {
    of: Measurement,
    way: Way,
    /// Where the number stands.
    at: (f64, f64),
}

const WAIST: f64 = 66.0;
const HIP: f64 = 86.6;
const CROTCH: f64 = 93.6;
const THIGH: f64 = 99.0;
const KNEE: f64 = 125.0;

const fn tape(of: Measurement, way: Way, at: (f64, f64)) -> Tape {
    Tape { of, way, at }
}

#[rustfmt::skip]
static FRONT: [Tape; 14] = [
    tape(M::WaistGirth, Way::Round([(-13.2, WAIST), (13.2, WAIST)]), (0.0, WAIST - 1.2)),
    tape(M::FrontWaistArc, Way::Across([(-13.3, WAIST + 4.4), (13.3, WAIST + 4.4)]), (-6.0, WAIST + 4.4)),
    tape(M::TopHipGirth, Way::Round([(-15.6, 76.3), (15.6, 76.3)]), (6.0, 77.6)),
    tape(M::HipGirth, Way::Round([(-17.9, HIP), (17.9, HIP)]), (6.0, HIP + 1.3)),
    tape(M::FrontHipArc, Way::Across([(-18.1, HIP + 5.0), (18.1, HIP + 5.0)]), (-9.0, HIP + 5.0)),
    tape(M::ThighGirth, Way::Round([(1.0, THIGH), (17.8, THIGH)]), (9.4, THIGH + 0.9)),
    tape(M::FrontThighArc, Way::Across([(-17.8, THIGH), (-1.0, THIGH)]), (-9.4, THIGH)),
    tape(M::KneeGirth, Way::Round([(3.0, KNEE), (12.9, KNEE)]), (8.0, KNEE + 0.5)),
    tape(M::CalfGirth, Way::Round([(2.2, 137.5), (13.4, 137.5)]), (7.8, 138.0)),
    tape(M::AnkleGirth, Way::Round([(4.4, 159.5), (10.1, 159.5)]), (13.4, 159.5)),
    tape(M::InsideLeg, Way::Upright { x: 0.0, heights: [CROTCH, FLOOR], from: [0.0, 0.0] }, (0.0, 150.0)),
    tape(M::KneeHeight, Way::Upright { x: 21.0, heights: [KNEE, FLOOR], from: [13.0, 21.0] }, (21.0, 150.0)),
    tape(M::OutsideLeg, Way::Along(&[(-13.2, WAIST), (-13.8, 69.0), (-15.5, 75.0), (-17.3, 81.0), (-18.3, 87.0), (-18.5, 93.0), (-18.5, 120.0), (-18.5, FLOOR)]), (-18.5, 150.0)),
    tape(M::Stature, Way::Upright { x: -42.0, heights: [0.0, FLOOR], from: [0.0, -42.0] }, (-42.0, 66.0)),
];

#[rustfmt::skip]
static SIDE: [Tape; 11] = [
    tape(M::WaistToHip, Way::Upright { x: -19.0, heights: [WAIST, HIP], from: [-8.0, -14.1] }, (-19.0, 76.3)),
    tape(M::BodyRise, Way::Upright { x: -25.0, heights: [WAIST, CROTCH], from: [-8.0, -12.4] }, (-25.0, 80.0)),
    tape(M::WaistHeightBack, Way::Upright { x: -31.0, heights: [WAIST, FLOOR], from: [-8.0, -26.0] }, (-31.0, 130.0)),
    tape(M::HipHeight, Way::Upright { x: 22.0, heights: [HIP, FLOOR], from: [9.8, 22.0] }, (22.0, 130.0)),
    tape(M::WaistHeight, Way::Upright { x: 28.0, heights: [WAIST, FLOOR], from: [0.0, 28.0] }, (28.0, 122.0)),
    tape(M::WaistHeightFront, Way::Upright { x: 34.0, heights: [WAIST, FLOOR], from: [9.6, 26.0] }, (34.0, 114.0)),
    tape(M::FrontCrotchLength, Way::Along(&[(9.7, WAIST), (10.5, 72.0), (11.0, 77.5), (10.3, 84.0), (8.9, 89.0)]), (10.6, 80.6)),
    tape(M::TotalCrotchLength, Way::Hidden(&[(8.9, 89.0), (6.2, 92.6), (1.0, 94.6), (-4.0, 94.8), (-9.0, 94.2), (-12.0, 92.6)]), (-1.4, 94.7)),
    tape(M::BackCrotchLength, Way::Along(&[(-12.0, 93.0), (-14.2, 86.6), (-13.2, 80.5), (-10.5, 74.0), (-8.2, 68.0), (-8.1, WAIST)]), (-13.2, 80.0)),
    tape(M::ForkDepth, Way::Across([(-9.4, 102.5), (9.7, 102.5)]), (0.2, 102.5)),
    tape(M::HeelGirth, Way::Round([(-6.6, 170.4), (5.6, 164.4)]), (-0.4, 168.4)),
];

#[rustfmt::skip]
static BACK: [Tape; 5] = [
    tape(M::WaistGirth, Way::Round([(-13.2, WAIST), (13.2, WAIST)]), (0.0, WAIST - 1.2)),
    tape(M::BackCrotchLength, Way::Along(&[(0.0, WAIST), (0.1, 78.0), (0.1, 87.0), (0.0, CROTCH)]), (0.0, 79.6)),
    tape(M::HipGirth, Way::Round([(-17.9, HIP), (17.9, HIP)]), (9.0, HIP + 1.2)),
    tape(M::ThighGirth, Way::Round([(1.0, THIGH + 1.2), (17.7, THIGH + 1.2)]), (9.4, THIGH + 2.1)),
    tape(M::CalfGirth, Way::Round([(2.2, 137.5), (13.4, 137.5)]), (7.8, 138.0)),
];

#[rustfmt::skip]
static SITTING: [Tape; 2] = [
    tape(M::BodyRiseSitting, Way::Upright { x: -24.0, heights: [101.0, 128.8], from: [-8.0, -19.0] }, (-24.0, 114.8)),
    tape(M::SittingHipGirth, Way::Round([(-14.4, 120.6), (18.4, 114.2)]), (2.0, 119.4)),
];

/// The tapes of a view.
fn tapes(view: View) -> &'static [Tape] {
    match view {
        View::Front => &FRONT,
        View::Side => &SIDE,
        View::Back => &BACK,
        View::Sitting => &SITTING,
    }
}

/// The measurements that a view shows, in no order.
pub(super) fn shown(view: View) -> impl Iterator<Item = Measurement> {
    tapes(view).iter().map(|tape| tape.of)
}

/// Draws the tapes of a view with their numbers.
pub(super) fn draw(
    view: View,
    fit: Affine,
    number: impl Fn(Measurement) -> usize,
    lines: &mut Layer,
    numbers: &mut Layer,
) {
    for tape in tapes(view) {
        tape.way.draw(fit, lines);
    }
    for tape in tapes(view) {
        let at = fit * Point::from(tape.at);
        numbers.area(Circle::new(at, DISC).to_path(0.005), Shade::White);
        numbers.line(Circle::new(at, DISC).to_path(0.005), HEIGHT);
        let text = at + Vec2::new(0.0, CAP_HEIGHT / 2.0 * LETTERS);
        numbers.text(Text::new(text, LETTERS, number(tape.of).to_string()).aligned(Align::Middle));
    }
}

impl Way {
    fn draw(&self, fit: Affine, layer: &mut Layer) {
        match self {
            Self::Round(ends) => {
                let [near, behind] = halves(ends.map(Point::from));
                layer.line(fit * behind, BEHIND);
                layer.line(fit * near, TAPE);
            }
            Self::Across(ends) => {
                let [from, to] = ends.map(Point::from);
                layer.line(fit * Line::new(from, to).to_path(0.1), TAPE);
                for end in [from, to] {
                    layer.line(fit * stroke(end, Vec2::new(0.0, 1.3)), TAPE);
                }
            }
            Self::Upright { x, heights: [top, bottom], from: [at_top, at_bottom] } => {
                for (y, start) in [(*top, *at_top), (*bottom, *at_bottom)] {
                    layer.line(fit * Line::new((start, y), (*x, y)).to_path(0.1), OUT);
                }
                layer.line(fit * Line::new((*x, *top), (*x, *bottom)).to_path(0.1), HEIGHT);
                for (y, way) in [(*top, 1.0), (*bottom, -1.0)] {
                    let mut head = BezPath::new();
                    head.move_to((x - 0.9, y + way * 2.4));
                    head.line_to((*x, y));
                    head.line_to((x + 0.9, y + way * 2.4));
                    layer.line(fit * head, HEIGHT);
                }
            }
            Self::Along(points) => layer.line(fit * smooth(points), TAPE),
            Self::Hidden(points) => layer.line(fit * smooth(points), BEHIND),
        }
    }
}

/// A short stroke about a point.
fn stroke(at: Point, half: Vec2) -> BezPath {
    Line::new(at - half, at + half).to_path(0.1)
}

/// A tape round the body as seen from a little above: the near half below the far one.
fn halves([from, to]: [Point; 2]) -> [BezPath; 2] {
    /// How flat the ring looks.
    const FLAT: f64 = 0.09;
    let half = (to - from) / 2.0;
    let radii = Vec2::new(half.hypot(), FLAT * half.hypot());
    let turn = half.y.atan2(half.x);
    let arc =
        |start: f64| Arc::new(from.midpoint(to), radii, start, std::f64::consts::PI, turn).to_path(0.01);
    [arc(0.0), arc(std::f64::consts::PI)]
}
