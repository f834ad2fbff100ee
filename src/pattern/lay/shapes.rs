//! All parts in all their poses, and how near each may lie to each.

use std::ops::Range;

use super::{
    Part,
    clearance::Clearance,
    profile::{Profile, Rows},
};

/// Parts ready to be laid. A shape is a part in one of its poses; shapes of one part stand next to each other.
#[derive(Clone, Debug)]
pub(super) struct Shapes {
    profiles: Vec<Profile>,
    /// The shapes of each part.
    parts: Vec<Range<usize>>,
    /// For every pair of shapes the clearance seen from the earlier one; none between poses of one part.
    clearances: Vec<Option<Clearance>>,
}

impl Shapes {
    /// Parts that are to be at least `gap` cm apart.
    pub(super) fn new(parts: &[Part], rows: Rows, gap: f64) -> Self {
        let (mut profiles, mut ranges) = (Vec::new(), Vec::new());
        for part in parts {
            let from = profiles.len();
            profiles.extend(part.poses().into_iter().map(|pose| Profile::new(part, pose, rows, gap)));
            ranges.push(from..profiles.len());
        }
        let mut clearances = Vec::new();
        for (later, range) in ranges.iter().enumerate() {
            for moved in range.clone() {
                for fixed in 0..profiles.len().min(moved) {
                    let other = !ranges[later].contains(&fixed);
                    clearances.push(other.then(|| Clearance::between(&profiles[fixed], &profiles[moved])));
                }
            }
        }
        Self { profiles, parts: ranges, clearances }
    }

    pub(super) fn profile(&self, shape: usize) -> &Profile {
        &self.profiles[shape]
    }

    /// The shapes of a part.
    pub(super) fn of(&self, part: usize) -> Range<usize> {
        self.parts[part].clone()
    }

    pub(super) fn count_of_parts(&self) -> usize {
        self.parts.len()
    }

    /// Where `moved` may not lie for `fixed`, which begins in this row and at this left edge; `None` between poses of
    /// one part.
    pub(super) fn bar(&self, fixed: usize, row: i32, x: i32, moved: usize) -> Option<Bar<'_>> {
        let (early, late) = (fixed.min(moved), fixed.max(moved));
        let clearance = self.clearances[(late * late.saturating_sub(1)) / 2 + early].as_ref()?;
        Some(Bar { clearance, backwards: fixed != early, row, x })
    }
}

/// Where a shape may not lie for another one.
pub(super) struct Bar<'a> {
    clearance: &'a Clearance,
    /// The clearance is seen from the shape that is moved.
    backwards: bool,
    row: i32,
    x: i32,
}

impl Bar<'_> {
    /// Strictly between which left edges the shape would overlap the other one if it began in this row.
    pub(super) fn within(&self, row: i32) -> Option<(i32, i32)> {
        if self.backwards {
            self.clearance.barred(self.row - row).map(|(left, right)| (self.x - right, self.x - left))
        } else {
            self.clearance.barred(row - self.row).map(|(left, right)| (self.x + left, self.x + right))
        }
    }
}
