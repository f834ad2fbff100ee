//! How the difference between hip and waist is taken in: the trade's limits on side and darts, decided once from
//! body and recipe. Limits and the shortest dart: common practice, no source.

use crate::{mistake::Notice, terms::Panel, voice::length};

/// What one panel takes in between hip and waist, cm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Suppression {
    /// At the side seam; negative where the waist stands out over the hip.
    pub side: f64,
    /// In all darts together.
    pub darts: f64,
    /// How many darts share that.
    pub count: usize,
}

/// No dart smaller than this is sewn.
const LEAST_DART: f64 = 0.8;
/// The side keeps this much before a dart is sewn at all, so that the hip curve is a curve.
const SIDE_FIRST: f64 = 0.5;
/// The most the side takes for each centimetre between waist and hip: steeper, and the seam stands off the body.
const STEEPEST_SIDE: f64 = 0.2;
/// The most a dart takes for each centimetre of its length.
const WIDEST_DART: f64 = 0.4;

/// The most the side of a panel takes.
fn most_side(panel: Panel, waist_to_hip: f64) -> f64 {
    let trade = match panel {
        Panel::Front => 2.5,
        Panel::Back => 3.0,
    };
    f64::min(trade, STEEPEST_SIDE * waist_to_hip)
}

/// The most one dart of a panel takes.
fn most_dart(panel: Panel, length: f64) -> f64 {
    let trade = match panel {
        Panel::Front => 2.5,
        Panel::Back => 3.5,
    };
    f64::min(trade, WIDEST_DART * length)
}

impl Suppression {
    /// Shares out `total`, beginning from the recipe's `darts` (how many, and how much in all, of what length): darts
    /// give way when the waist is full, take over from the side when it is small, and a panel that has none gets none.
    pub(super) fn share_out(
        panel: Panel,
        total: f64,
        (count, darts): (usize, f64),
        dart_length: f64,
        waist_to_hip: f64,
    ) -> (Self, Option<Notice>) {
        let most_side = most_side(panel, waist_to_hip);
        let most_dart = most_dart(panel, dart_length);
        if count == 0 {
            let over = total - most_side;
            return (
                Self { side: total, darts: 0.0, count: 0 },
                (over > 0.05).then(|| steep(panel, total, most_side)),
            );
        }
        let lowest = total - most_side;
        let highest = total - SIDE_FIRST;
        let taken = darts.max(lowest).min(highest).min(2.0 * most_dart);
        let (taken, count) = if taken < LEAST_DART.min(most_dart) {
            (0.0, 0)
        } else if taken > most_dart * count as f64 {
            (taken, 2)
        } else if taken < LEAST_DART * count as f64 {
            (taken, 1)
        } else {
            (taken, count)
        };
        let side = total - taken;
        let notice = (side > most_side + 0.05 && count > 0).then(|| steep(panel, side, most_side));
        (Self { side, darts: taken, count }, notice)
    }
}

fn steep(panel: Panel, side: f64, most: f64) -> Notice {
    Notice::mind(
        "side-takes-much",
        "the {panel} side seam takes in {side} between hip and waist, more than the {most} that lies smooth: look at the \
         side of the toile, or sew the waist with more ease",
    )
    .with("panel", panel)
    .with("side", length(side))
    .with("most", length(most))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn back(total: f64) -> Suppression {
        Suppression::share_out(Panel::Back, total, (2, 4.0), 11.0, 20.0).0
    }

    #[test]
    fn ordinary_suppression_as_the_recipe_says() {
        assert_eq!(back(6.0), Suppression { side: 2.0, darts: 4.0, count: 2 });
    }

    #[test]
    fn small_waist_goes_into_the_darts_then_the_side() {
        assert_eq!(back(9.0), Suppression { side: 3.0, darts: 6.0, count: 2 });
        assert_eq!(back(12.0), Suppression { side: 5.0, darts: 7.0, count: 2 });
    }

    #[test]
    fn full_waist_loses_its_darts() {
        assert_eq!(back(1.6), Suppression { side: 0.5, darts: 1.1, count: 1 });
        assert_eq!(back(1.0), Suppression { side: 1.0, darts: 0.0, count: 0 });
        assert_eq!(back(-4.0), Suppression { side: -4.0, darts: 0.0, count: 0 });
    }

    #[test]
    fn one_wide_dart_becomes_two() {
        let front = Suppression::share_out(Panel::Front, 6.5, (1, 2.0), 10.0, 20.0).0;
        assert_eq!(front, Suppression { side: 2.5, darts: 4.0, count: 2 });
    }
}
