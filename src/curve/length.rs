//! Arc length and height along a cubic, and their inverses.

use kurbo::{CubicBez, ParamCurve, ParamCurveDeriv, common::GAUSS_LEGENDRE_COEFFS_16};

/// The arc length of a cubic by a fixed 16-point Gauss sum: within 1e-6 cm on every seam of a trouser, and smooth
/// when the cubic changes a little, which an adaptive sum is not.
pub fn length(cubic: &CubicBez) -> f64 {
    cubic.gauss_arclen(GAUSS_LEGENDRE_COEFFS_16)
}

/// The parameter at which the arc from the start of the cubic is `wanted` long. A length outside the cubic runs on
/// along it: the seam is produced, as a cutter would with the same curve.
///
/// Accurate to 1e-9 cm where the cubic keeps its direction, which seams do.
pub fn t_at_length(cubic: &CubicBez, wanted: f64) -> f64 {
    let whole = length(cubic);
    if whole <= 0.0 {
        return 0.0;
    }
    t_at_length_near(cubic, wanted, wanted / whole)
}

/// The same from a guess: where a place near by is known, which saves rounds.
pub fn t_at_length_near(cubic: &CubicBez, wanted: f64, guess: f64) -> f64 {
    /// Newton on an arc length converges in three or four rounds; the rest is for produced curves.
    const ROUNDS: usize = 12;
    let mut t = guess;
    for _ in 0..ROUNDS {
        let missing = wanted - signed_length(cubic, t);
        let speed = cubic.deriv().eval(t).to_vec2().hypot();
        if missing.abs() < 1e-10 || speed < 1e-9 {
            break;
        }
        t = (t + missing / speed).clamp(-2.0, 3.0);
    }
    t
}

/// The parameter at which a cubic that runs up or down from end to end reaches the level `y`.
pub fn t_at_level(cubic: &CubicBez, y: f64) -> f64 {
    /// Newton from the chord; seams are close to it.
    const ROUNDS: usize = 12;
    let slope = cubic.deriv();
    let mut t = ((y - cubic.p0.y) / (cubic.p3.y - cubic.p0.y)).clamp(0.0, 1.0);
    for _ in 0..ROUNDS {
        let miss = cubic.eval(t).y - y;
        let speed = slope.eval(t).y;
        if miss.abs() < 1e-11 || speed.abs() < 1e-9 {
            break;
        }
        t = (t - miss / speed).clamp(0.0, 1.0);
    }
    t
}

fn signed_length(cubic: &CubicBez, t: f64) -> f64 {
    length(&cubic.subsegment(0.0..t)) * t.signum()
}
