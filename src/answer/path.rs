//! Edges as SVG path data: absolute `M L C Z`, cm to 4 decimals, no cubic and no handle of length zero.

use std::fmt::Write;

use kurbo::{CubicBez, Point};

use super::number::rounded;

/// An open path.
pub(super) fn open(cubics: &[CubicBez]) -> String {
    let mut text = String::with_capacity(64 * cubics.len());
    if let Some(first) = cubics.first() {
        put(&mut text, "M", &[first.p0]);
    }
    for cubic in cubics {
        if printed(cubic.p0) == printed(cubic.p3) {
            continue;
        }
        if is_straight(cubic) {
            put(&mut text, " L", &[cubic.p3]);
        } else {
            put(&mut text, " C", &[cubic.p1, cubic.p2, cubic.p3]);
        }
    }
    text
}

/// A closed path.
pub(super) fn closed(cubics: &[CubicBez]) -> String {
    open(cubics) + " Z"
}

fn printed(point: Point) -> (f64, f64) {
    (rounded(point.x, 1e4), rounded(point.y, 1e4))
}

/// Both handles on the chord, to a hundredth of what is printed.
fn is_straight(cubic: &CubicBez) -> bool {
    let chord = cubic.p3 - cubic.p0;
    let off = |handle: Point| chord.cross(handle - cubic.p0).abs() / chord.hypot();
    off(cubic.p1) < 1e-6 && off(cubic.p2) < 1e-6
}

fn put(text: &mut String, command: &str, points: &[Point]) {
    text.push_str(command);
    for point in points {
        let (x, y) = printed(*point);
        // Cannot fail: writing to a string.
        let _ = write!(text, " {x} {y}");
    }
}
