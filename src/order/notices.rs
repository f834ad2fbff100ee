//! What a person should know about an order that can be drafted.

use super::Order;
use crate::mistake::Notice;
use crate::terms::{Measurement, Side, Word};
use crate::voice::length;

/// Legs that differ more than legs do.
pub(super) fn unlike_legs(order: &Order) -> Vec<Notice> {
    /// Left and right of one person differ by less than this share (common practice, no source).
    const ALIKE: f64 = 0.1;
    let (left, right) = (order.leg(Side::Left), order.leg(Side::Right));
    let mut notices = Vec::new();
    for &m in Measurement::ALL {
        if let (Some(of_left), Some(of_right)) = (left.cm(m), right.cm(m))
            && (of_left - of_right).abs() > ALIKE * of_left.max(of_right)
        {
            notices.push(
                Notice::mind(
                    "unlike-legs",
                    "`{measurement}` is {left} left and {right} right: take both again",
                )
                .with("measurement", m)
                .with("left", length(of_left))
                .with("right", length(of_right)),
            );
        }
    }
    notices
}
