//! Limits without a corner: a draft must move smoothly when a measurement does.

/// The greater of two numbers, rounded over `width` where they meet.
pub(super) fn smooth_max(a: f64, b: f64, width: f64) -> f64 {
    0.5 * (a + b + (a - b).hypot(width))
}

/// The lesser of two numbers, rounded over `width` where they meet.
pub(super) fn smooth_min(a: f64, b: f64, width: f64) -> f64 {
    -smooth_max(-a, -b, width)
}

/// `value`, or nothing where that is less: rounded within `width` of nothing, and exact beyond.
pub(super) fn at_least_nothing(value: f64, width: f64) -> f64 {
    let rounded = (value + width).max(0.0);
    if value < width { rounded * rounded / (4.0 * width) } else { value }
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
    const ROUNDS: usize = 20;
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

/// The root of a rising function between two places; that place at which it comes nearest to it where it has none there.
pub(super) fn root_between(from: f64, to: f64, f: impl Fn(f64) -> f64) -> f64 {
    /// Nearer than this is there, cm.
    const THERE: f64 = 1e-8;
    const ROUNDS: usize = 40;
    let (mut low, mut high) = ((from, f(from)), (to, f(to)));
    if low.1 >= 0.0 || to <= from {
        return from;
    }
    if high.1 <= 0.0 {
        return to;
    }
    // Between the two by their chord; an end that stays for a second round counts half, so that both close in.
    let mut stayed = 0_i8;
    for _ in 0..ROUNDS {
        let middle = (low.0 * high.1 - high.0 * low.1) / (high.1 - low.1);
        let value = f(middle);
        if value.abs() < THERE {
            return middle;
        }
        if value < 0.0 {
            low = (middle, value);
            if stayed < 0 {
                high.1 *= 0.5;
            }
            stayed = -1;
        } else {
            high = (middle, value);
            if stayed > 0 {
                low.1 *= 0.5;
            }
            stayed = 1;
        }
    }
    0.5 * (low.0 + high.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn root_of_a_rising_function_or_the_end_nearest_to_it() {
        let cube = |x: f64| x.powi(3) - 8.0;
        assert!((root_between(-1.0, 9.0, cube) - 2.0).abs() < 1e-8);
        assert_eq!(root_between(3.0, 9.0, cube), 3.0);
        assert_eq!(root_between(-1.0, 1.0, cube), 1.0);
    }
}
