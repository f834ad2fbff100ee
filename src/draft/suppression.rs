//! How the difference between hip and waist is taken in: the trade's limits on side and darts, decided once from
//! body and recipe. Limits, order and the shortest dart: common practice, no source.

use super::smooth::at_least_nothing;
use crate::{mistake::Notice, terms::Panel, voice::length};

/// What is to be taken in on one panel between hip and waist, before it is shared out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Surplus {
    /// Front or back.
    pub panel: Panel,
    /// Hip less waist along the waist, cm; negative where the waist stands out over the hip.
    pub total: f64,
    /// How many darts the recipe draws.
    pub count: usize,
    /// What the recipe has in them, cm.
    pub darts: f64,
    /// Length of the shortest of them, cm.
    pub length: f64,
    /// How many darts the file holds, whatever the size.
    pub held: Option<usize>,
}

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
/// The most it takes where no dart helps it, for each centimetre: steeper, and a dart is sewn, be it a small one.
const SIDE_ALONE: f64 = 0.13;
/// The most a dart takes for each centimetre of its length.
const WIDEST_DART: f64 = 0.4;
/// The back takes this much in its dart before anything else takes more.
const BACK_FIRST: f64 = 1.75;
/// The least that a man's back dart takes where his waist and hip differ at all.
const LEAST_OF_MEN: f64 = 1.5;
/// From this difference of hip and waist, girths, a man's back dart takes that; it begins at the other.
const DROP_WITH_BACK_DART: f64 = 8.0;
const DROP_WITHOUT_DART: f64 = 5.0;
/// Under this difference a man's front has none.
const DROP_WITH_FRONT_DART: f64 = 18.0;

/// The most the side of a panel takes.
fn most_side(panel: Panel, waist_to_hip: f64) -> f64 {
    let trade = match panel {
        Panel::Front => 2.5,
        Panel::Back => 3.0,
    };
    f64::min(trade, STEEPEST_SIDE * waist_to_hip)
}

/// The most one dart of a panel takes: wider, and it is split.
fn most_dart(panel: Panel, length: f64) -> f64 {
    match panel {
        Panel::Front => 2.5,
        Panel::Back => f64::min(3.5, WIDEST_DART * length),
    }
}

/// The most that all darts of a panel take, two of them, none steeper than lies smooth over its length.
fn most_in_darts(surplus: &Surplus) -> f64 {
    2.0 * f64::min(most_dart(surplus.panel, surplus.length), WIDEST_DART * surplus.length)
}

/// Shares out front and back of a woman: what the recipe has in the darts of each first.
pub(super) fn of_women(front: Surplus, back: Surplus, waist_to_hip: f64) -> ([Suppression; 2], Vec<Notice>) {
    told([front, back].map(|surplus| surplus.share_out(waist_to_hip)))
}

/// Shares out front and back of a man: the back dart takes first, then both sides alike, then the back again, the front
/// last and only where hip and waist, girths, differ by much. `pleat` is what the front folds for style.
pub(super) fn of_men(
    front: Surplus,
    back: Surplus,
    drop: f64,
    pleat: f64,
    waist_to_hip: f64,
) -> ([Suppression; 2], Vec<Notice>) {
    let [most_front, most_back] = [Panel::Front, Panel::Back].map(|panel| most_side(panel, waist_to_hip));
    let total = front.total + back.total - pleat;
    let least = LEAST_OF_MEN
        * ((drop - DROP_WITHOUT_DART) / (DROP_WITH_BACK_DART - DROP_WITHOUT_DART)).clamp(0.0, 1.0);
    let sewn = back.held.unwrap_or(back.count) > 0;
    let mut in_back = if sewn {
        (0.5 * total).max(least).min(BACK_FIRST.max(least)).min(most_in_darts(&back))
    } else {
        0.0
    };
    let mut rest = total - in_back;
    let front_dart = drop >= DROP_WITH_FRONT_DART && front.count > 0;
    let over = (rest - most_front - most_back).max(0.0);
    // The back dart takes what the sides cannot, the front dart what is too much for it.
    let most = match (sewn, front_dart) {
        (false, _) => 0.0,
        (true, true) => 0.5 * most_in_darts(&back),
        (true, false) => most_in_darts(&back),
    };
    let more = over.min((most - in_back).max(0.0));
    in_back += more;
    rest -= more;
    let in_front =
        if front_dart && over - more >= LEAST_DART { (over - more).min(most_in_darts(&front)) } else { 0.0 };
    rest -= in_front;
    if in_back < LEAST_DART {
        rest += in_back;
        in_back = 0.0;
    }
    let side = 0.5 * rest;
    let back_side = side.max(rest - most_front).min(f64::max(most_back, side));
    let counted = |surplus: &Surplus, darts: f64| {
        let one = most_dart(surplus.panel, surplus.length);
        surplus.held.unwrap_or(match darts {
            none if none <= 0.0 => 0,
            wide if wide > one => 2,
            _ => 1,
        })
    };
    let front = Surplus { total: rest - back_side + in_front + pleat, darts: in_front + pleat, ..front };
    let back = Surplus { total: back_side + in_back, darts: in_back, ..back };
    let shared = [front, back].map(|surplus| {
        let (count, side) = (counted(&surplus, surplus.darts), surplus.total - surplus.darts);
        let darts = if count == 0 { 0.0 } else { surplus.darts };
        let shared = Suppression { side: surplus.total - darts, darts, count };
        (shared, surplus.steep_side(if count == 0 { surplus.total } else { side }, waist_to_hip))
    });
    told(shared)
}

/// `value`, no less than `lowest` and no more than `highest`, led into each limit so that it grows evenly from size to size.
fn led_within(value: f64, lowest: f64, highest: f64) -> f64 {
    /// From so near a limit on, cm.
    const LED: f64 = 0.4;
    let up = lowest + at_least_nothing(value - lowest, LED);
    highest - at_least_nothing(highest - up, LED)
}

fn told([front, back]: [(Suppression, Option<Notice>); 2]) -> ([Suppression; 2], Vec<Notice>) {
    ([front.0, back.0], front.1.into_iter().chain(back.1).collect())
}

impl Surplus {
    /// Shares it out, beginning from what the recipe has in its darts: darts give way when the waist is full, take over
    /// from the side when it is small, and a panel that has none gets none, unless the file holds a number of them.
    fn share_out(self, waist_to_hip: f64) -> (Suppression, Option<Notice>) {
        let most_side = most_side(self.panel, waist_to_hip);
        let most_dart = most_dart(self.panel, self.length);
        let (lowest, highest) = (self.total - most_side, self.total - SIDE_FIRST);
        let wanted = led_within(self.darts, lowest, highest);
        let (darts, count) = match self.held {
            Some(0) => (0.0, 0),
            Some(held) => {
                let held_darts = held as f64;
                (wanted.max(LEAST_DART * held_darts).min(most_dart * held_darts), held)
            }
            None if self.count == 0 => (0.0, 0),
            None => match wanted.min(most_in_darts(&self)) {
                small if small < LEAST_DART.min(most_dart) && self.total <= SIDE_ALONE * waist_to_hip => {
                    (0.0, 0)
                }
                small if small < LEAST_DART => (LEAST_DART.min(most_dart), 1),
                wide if wide > most_dart * self.count as f64 => (wide, 2),
                narrow if narrow < LEAST_DART * self.count as f64 => (narrow, 1),
                ordinary => (ordinary, self.count),
            },
        };
        let side = self.total - darts;
        (Suppression { side, darts, count }, self.steep_side(side, waist_to_hip))
    }

    fn steep_side(self, side: f64, waist_to_hip: f64) -> Option<Notice> {
        let most = most_side(self.panel, waist_to_hip);
        let panel = self.panel;
        (side > most + 0.05).then(|| {
 Notice::mind(
                "side-takes-much",
                "the {panel} side seam takes in {side} between hip and waist, more than the {most} that lies smooth: look at \
                 the side of the toile, or sew the waist with more ease",
            )
            .with("panel", panel)
            .with("side", length(side))
            .with("most", length(most))
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn surplus(panel: Panel, total: f64, count: usize, darts: f64) -> Surplus {
        Surplus { panel, total, count, darts, length: 11.0, held: None }
    }

    fn back(total: f64) -> Suppression {
        surplus(Panel::Back, total, 2, 4.0).share_out(20.0).0
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
    fn front_dart_split_only_where_wider_than_two_and_a_half() {
        let front =
            |total, length| Surplus { length, ..surplus(Panel::Front, total, 1, 2.0) }.share_out(20.0).0;
        assert_eq!(front(6.5, 10.0), Suppression { side: 2.5, darts: 4.0, count: 2 });
        assert_eq!(front(4.95, 6.0), Suppression { side: 2.5, darts: 4.95 - 2.5, count: 1 });
    }

    #[test]
    fn number_of_darts_as_the_file_holds_it() {
        let held = |total, held| {
            Surplus { held: Some(held), ..surplus(Panel::Back, total, 2, 4.0) }.share_out(20.0).0
        };
        assert_eq!(held(6.0, 1), Suppression { side: 2.0, darts: 4.0, count: 1 }.capped(3.5, 6.0));
        assert_eq!(held(1.6, 2), Suppression { side: 0.0, darts: 1.6, count: 2 });
        assert_eq!(held(6.0, 0), Suppression { side: 6.0, darts: 0.0, count: 0 });
    }

    impl Suppression {
        fn capped(self, most: f64, total: f64) -> Self {
            Self { darts: most, side: total - most, ..self }
        }
    }

    #[test]
    fn back_dart_first_then_the_sides_and_the_front_last_on_men() {
        let men = |total: f64, drop| {
            of_men(
                surplus(Panel::Front, 0.5 * total, 1, 1.6),
                surplus(Panel::Back, 0.5 * total, 1, 1.8),
                drop,
                0.0,
                20.0,
            )
            .0
        };
        for (total, drop) in [(2.0, 8.0), (4.0, 12.0), (5.5, 16.0), (7.0, 17.9)] {
            let [front, back] = men(total, drop);
            assert_eq!(front.count, 0, "{total}");
            assert!(back.darts >= 1.5 && back.count > 0, "{total}: {back:?}");
            assert!((front.side + back.side + back.darts - total).abs() < 1e-12, "{total}");
        }
        let [front, back] = men(10.0, 24.0);
        assert!(front.count == 1 && back.darts >= 3.0, "{front:?} {back:?}");
    }

    #[test]
    fn pleat_of_a_man_folded_in_front_whatever_his_waist() {
        let front = Surplus { total: 5.0, ..surplus(Panel::Front, 5.0, 1, 4.3) };
        let [front, _] = of_men(front, surplus(Panel::Back, 2.5, 1, 1.8), 16.0, 3.0, 20.0).0;
        assert_eq!((front.darts, front.count), (3.0, 2));
    }
}
