//! Edges as SVG path data: absolute `M L C Z`, cm to 4 decimals, no piece and no handle of length zero.

use std::fmt::Write;

use kurbo::{CubicBez, Point};

use super::number::rounded;

/// An open path.
pub(super) fn open(pieces: &[CubicBez]) -> String {
    let mut text = String::with_capacity(64 * pieces.len());
    if let Some(first) = pieces.first() {
        put(&mut text, "M", &[first.p0]);
    }
    for piece in pieces {
        if printed(piece.p0) == printed(piece.p3) {
            continue;
        }
        if is_straight(piece) {
            put(&mut text, " L", &[piece.p3]);
        } else {
            put(&mut text, " C", &[piece.p1, piece.p2, piece.p3]);
        }
    }
    text
}

/// A closed path.
pub(super) fn closed(pieces: &[CubicBez]) -> String {
    open(pieces) + " Z"
}

fn printed(point: Point) -> (f64, f64) {
    (rounded(point.x, 1e4), rounded(point.y, 1e4))
}

/// Both handles on the chord, to a hundredth of what is printed.
fn is_straight(piece: &CubicBez) -> bool {
    let chord = piece.p3 - piece.p0;
    let off = |handle: Point| chord.cross(handle - piece.p0).abs() / chord.hypot();
    off(piece.p1) < 1e-6 && off(piece.p2) < 1e-6
}

fn put(text: &mut String, command: &str, points: &[Point]) {
    text.push_str(command);
    for point in points {
        let (x, y) = printed(*point);
        // Cannot fail: writing to a string.
        let _ = write!(text, " {x} {y}");
    }
}
