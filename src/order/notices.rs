//! What a person should know about an order that can be drafted.

use super::Order;
use crate::mistake::Notice;
use crate::terms::{Measurement, Side, Word};

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
            notices.push(Notice::new(
                "unlike-legs",
                format!(
                    "`{m}` is {} left and {} right: take both again",
                    order.units.on_tape(of_left),
                    order.units.on_tape(of_right)
                ),
            ));
        }
    }
    notices
}

/// Parameters beyond their usual range.
pub(super) fn unusual(order: &Order) -> Vec<Notice> {
    let sides = [
        ("", Some(&order.adjustments)),
        ("left.", order.left.as_ref().map(|leg| &leg.adjustments)),
        ("right.", order.right.as_ref().map(|leg| &leg.adjustments)),
    ];
    let mut notices = Vec::new();
    for (side, adjustments) in sides {
        for adjustment in adjustments.into_iter().flatten() {
            let (about, value) = (adjustment.key.about(), adjustment.value);
            if value != about.default && !(about.usual.0..=about.usual.1).contains(&value) {
                notices.push(Notice::new(
                    "unusual-parameter",
                    format!(
                        "`{side}{}` is {value:.2} {}; usual is {} to {}",
                        adjustment.key,
                        about.unit.symbol(),
                        about.usual.0,
                        about.usual.1
                    ),
                ));
            }
        }
    }
    notices
}
