//! Corners that closing a dart leaves in a line, rounded off.

use kurbo::CubicBez;

use crate::curve::{Chain, eased, length};

/// The rounding reaches this far from a corner, cm, where the line is long enough.
const REACH: f64 = 2.5;
/// A rounded corner is shorter than the corner; it may be so by this much, cm, which is eased in sewing.
const MOST_LOST: f64 = 0.04;

/// Lines joined end to end into one, the corners between them rounded off. The whole is shorter than its parts by at
/// most 0.04 cm a corner.
pub(super) fn rounded(lines: &[Chain]) -> Option<Chain> {
    let mut whole = lines.first()?.clone();
    for next in &lines[1..] {
        let most = REACH.min(0.45 * whole.length()).min(0.45 * next.length());
        let lost = |reach: f64| {
            let (_, bend, _) = corner(&whole, next, reach);
            2.0 * reach - length(&bend)
        };
        let most = most * (MOST_LOST / lost(most).max(1e-9)).min(1.0);
        let (head, bend, tail) = corner(&whole, next, most);
        let pieces = head.cubics().iter().copied().chain([bend]).chain(tail.cubics().iter().copied());
        whole = Chain::from_cubics(pieces.collect())?;
    }
    Some(whole)
}

fn corner(before: &Chain, after: &Chain, reach: f64) -> (Chain, CubicBez, Chain) {
    let head = before.cut_at(before.length() - reach).0;
    let tail = after.cut_at(reach).1;
    let bend = eased(head.end(), head.end_tangent(), tail.start(), tail.start_tangent());
    (head, bend, tail)
}
