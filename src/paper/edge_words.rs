//! Words that run along an edge, on its inner side.

use kurbo::{Affine, Point, Vec2};

use crate::{
    curve::{Chain, unit},
    drawing::{Align, CAP_HEIGHT, Text},
};

/// Steps on either side of a place at which the direction of an edge is taken, cm.
const REACH: f64 = 1.5;

/// Places for a text along an edge of a panel, `inset` cm from it: at the part `first` of its length, then further and
/// further off.
/// The text reads from left to right or, on an upright edge, upwards.
pub(super) fn along(edge: &Chain, first: f64, inset: f64, text: &Text, place: Affine) -> Vec<Text> {
    const PARTS: [f64; 17] =
        [0.5, 0.45, 0.55, 0.4, 0.6, 0.35, 0.65, 0.3, 0.7, 0.25, 0.75, 0.2, 0.8, 0.15, 0.85, 0.1, 0.9];
    let mut parts = PARTS;
    parts.sort_by(|a, b| (a - first).abs().total_cmp(&(b - first).abs()));
    let length = edge.length();
    parts
        .iter()
        .map(|part| {
            let walked = part * length;
            let (before, after) = (edge.point_at(walked - REACH), edge.point_at(walked + REACH));
            // Edges run clockwise, so that the panel lies to the right of the way.
            let way = unit(after - before);
            reading(place * edge.point_at(walked), way, way.turn_90(), inset, text)
        })
        .collect()
}

/// A text that runs along `way` beside `at`, on the side to which `aside` points.
fn reading(at: Point, way: Vec2, aside: Vec2, inset: f64, text: &Text) -> Text {
    /// An edge that leaves the upright by less than this reads upwards.
    const UPRIGHT: f64 = 0.5;
    let forwards = if way.x.abs() < UPRIGHT { way.y < 0.0 } else { way.x > 0.0 };
    let way = if forwards { way } else { -way };
    let letters_rise = -way.turn_90();
    let away = if letters_rise.dot(aside) > 0.0 { inset } else { inset + CAP_HEIGHT * text.size };
    Text { at: at + aside * away, turn: way.atan2(), align: Align::Middle, ..text.clone() }
}
