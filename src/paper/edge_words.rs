//! Words that run along an edge, on its inner side.

use kurbo::{Affine, Point, Vec2};

use crate::{
    curve::{Chain, unit},
    drawing::{Align, CAP_HEIGHT, Text},
};

/// Steps on either side of a place at which the direction of an edge is taken, cm.
const REACH: f64 = 1.5;

/// Places for a text along an edge of a panel: at the part `first` of its length, then further and further off; all of
/// them at the first of the `insets` from the edge, cm, then all at the next. The text reads from left to right or, on an
/// upright edge, upwards.
pub(crate) fn along(edge: &Chain, first: f64, insets: &[f64], text: &Text, place: Affine) -> Vec<Text> {
    /// Steps of the search along the edge.
    const PARTS: usize = 16;
    let length = edge.length();
    let mut parts: Vec<f64> = (0..=PARTS).map(|step| 0.1 + 0.8 * step as f64 / PARTS as f64).collect();
    parts.sort_by(|a, b| (a - first).abs().total_cmp(&(b - first).abs()));
    let places: Vec<(Point, Vec2)> = parts
        .iter()
        .map(|part| {
            let walked = part * length;
            let way = edge.point_at(walked + REACH) - edge.point_at(walked - REACH);
            (place * edge.point_at(walked), unit(way))
        })
        .collect();
    // Edges run clockwise, so that the panel lies to the right of the way.
    let reading = |inset: &f64| {
        let inset = *inset;
        places.iter().map(move |(at, way)| reading(*at, *way, way.turn_90(), inset, text))
    };
    insets.iter().flat_map(reading).collect()
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
