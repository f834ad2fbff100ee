//! What kurbo lacks for pattern work: a crotch curve that cannot bulge, seams that are measured, cut, turned and
//! walked by length, and outlines that are known to be sound.
//!
//! Everything here is in centimetres and radians, with y running down.

mod bend;
mod chain;
mod course;
mod crossing;
mod length;
mod offset;
mod outline;
mod turn;

pub use bend::Bend;
pub use chain::Chain;
pub use course::{Course, least_radius};
pub use crossing::{crossing, line_crossings};
pub use length::{length, t_at_level, t_walked};
pub use offset::{beside, beside_running, outward, without_loops};
pub use outline::{Fault, soundness};
pub use turn::Turn;

use kurbo::{CubicBez, Point, Vec2};

/// The line as a cubic whose speed is even, so that all cubics of a seam are of one kind.
pub fn straight(from: Point, to: Point) -> CubicBez {
    CubicBez::new(from, from.lerp(to, 1.0 / 3.0), from.lerp(to, 2.0 / 3.0), to)
}

/// The cubic that leaves `from` along `start` and reaches `to` along `end` (both of length 1), with handles of a
/// third of the chord: for the small turns of a seam it never has more than one inflection.
pub fn eased(from: Point, start: Vec2, to: Point, end: Vec2) -> CubicBez {
    let handle = from.distance(to) / 3.0;
    CubicBez::new(from, from + start * handle, to - end * handle, to)
}

/// Where the line through `a` along `u` meets the line through `b` along `v`: how far along each, or `None` when
/// they are parallel.
pub fn meet(a: Point, u: Vec2, b: Point, v: Vec2) -> Option<(f64, f64)> {
    let turn = u.cross(v);
    let gap = b - a;
    (turn.abs() > 1e-12 * u.hypot() * v.hypot()).then(|| (gap.cross(v) / turn, gap.cross(u) / turn))
}

/// `vector` turned by `angle`, from x towards y.
pub fn turned(vector: Vec2, angle: f64) -> Vec2 {
    let (sin, cos) = angle.sin_cos();
    Vec2::new(vector.x * cos - vector.y * sin, vector.x * sin + vector.y * cos)
}

/// `vector` at length 1. A zero vector, which no drawn edge has, stays zero.
pub fn unit(vector: Vec2) -> Vec2 {
    let length = vector.hypot();
    if length > 0.0 { vector / length } else { Vec2::ZERO }
}

/// The angle between two directions, 0 to pi.
pub fn angle_between(a: Vec2, b: Vec2) -> f64 {
    a.cross(b).abs().atan2(a.dot(b))
}

/// The direction in which the cubic leaves its start, of length 1.
pub fn start_tangent(cubic: &CubicBez) -> Vec2 {
    unit(cubic.p1 - cubic.p0)
}

/// The direction in which the cubic reaches its end, of length 1.
pub fn end_tangent(cubic: &CubicBez) -> Vec2 {
    unit(cubic.p3 - cubic.p2)
}

/// The cubic walked the other way.
pub fn reversed(cubic: CubicBez) -> CubicBez {
    CubicBez::new(cubic.p3, cubic.p2, cubic.p1, cubic.p0)
}
