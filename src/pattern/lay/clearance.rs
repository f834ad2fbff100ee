//! How near two parts may lie.

use super::profile::Profile;

/// Of two parts in their poses: where the second may not lie, seen from the first.
#[derive(Clone, Debug)]
pub(super) struct Clearance {
    /// How many rows below the first the second begins where the list begins.
    from: i32,
    /// For each row after that: strictly between these steps to the right of the first, the second would overlap it.
    barred: Vec<(i32, i32)>,
}

impl Clearance {
    pub(super) fn between(fixed: &Profile, moved: &Profile) -> Self {
        let (high, low, thin) = (fixed.lefts.len() as i32, moved.lefts.len() as i32, fixed.thin);
        let apart = fixed.first - moved.first;
        let from = (apart - low).div_euclid(thin) + 1;
        let to = (apart + high - 1).div_euclid(thin);
        let barred = (from..=to).map(|rows_below| {
            let lower = rows_below * thin - apart;
            let (a, b) = (lower.max(0) as usize, (-lower).max(0) as usize);
            let common = (high as usize - a).min(low as usize - b);
            let left = nearest(&fixed.lefts[a..a + common], &moved.rights[b..b + common], i32::min, i32::MAX);
            let right =
                nearest(&fixed.rights[a..a + common], &moved.lefts[b..b + common], i32::max, i32::MIN);
            (left, right)
        });
        Self { from, barred: barred.collect() }
    }

    /// Where a part that begins so many rows below may not lie.
    pub(super) fn barred(&self, rows_below: i32) -> Option<(i32, i32)> {
        usize::try_from(rows_below - self.from).ok().and_then(|at| self.barred.get(at)).copied()
    }
}

fn nearest(fixed: &[i32], moved: &[i32], pick: impl Fn(i32, i32) -> i32, start: i32) -> i32 {
    fixed.iter().zip(moved).fold(start, |found, (a, b)| pick(found, a - b))
}
