//! Limits without a corner: a draft must move smoothly when a measurement does.

/// The greater of two numbers, rounded over `width` where they meet.
pub(super) fn smooth_max(a: f64, b: f64, width: f64) -> f64 {
    0.5 * (a + b + (a - b).hypot(width))
}

/// The lesser of two numbers, rounded over `width` where they meet.
pub(super) fn smooth_min(a: f64, b: f64, width: f64) -> f64 {
    -smooth_max(-a, -b, width)
}

/// The argument at which `f` is `wanted`, from a first guess and a second: a secant, for the one unknown of each
/// step of truing. `f` is close to straight wherever this is used; the best point met is returned.
pub(super) fn solve(wanted: f64, first: f64, second: f64, mut f: impl FnMut(f64) -> f64) -> f64 {
    let known = f(first);
    solve_from(wanted, (first, known), second, f)
}

/// The same where the value at the first guess is known.
pub(super) fn solve_from(
    wanted: f64,
    (first, known): (f64, f64),
    second: f64,
    mut f: impl FnMut(f64) -> f64,
) -> f64 {
    /// Rounds after the two guesses; three are ordinary.
    const ROUNDS: usize = 8;
    /// Seams are equal when they differ by less than this, cm.
    const EQUAL: f64 = 5e-8;
    let (mut x0, mut miss0) = (first, known - wanted);
    if miss0.abs() < EQUAL {
        return x0;
    }
    let (mut x1, mut miss1) = (second, f(second) - wanted);
    // Where nothing fits, as the side of a body whose waist has no dart to give, the rounds wander off.
    let mut best = (x0, miss0);
    for _ in 0..ROUNDS {
        if miss1.abs() < best.1.abs() {
            best = (x1, miss1);
        }
        if miss1.abs() < EQUAL || miss1 == miss0 {
            break;
        }
        let next = x1 - miss1 * (x1 - x0) / (miss1 - miss0);
        (x0, miss0) = (x1, miss1);
        x1 = next;
        miss1 = f(x1) - wanted;
    }
    if miss1.abs() < best.1.abs() { x1 } else { best.0 }
}
