//! The waist: each end slides along its own edge.

use breeks::adjust::Key;
use kurbo::Vec2;

use crate::{
    bodies::fittings,
    closing::{Leg, Sheet},
    compare::{Allowed, by_hand},
    paper::{length, produced},
};

const AMOUNTS: [f64; 4] = [-2.5, -1.0, 0.5, 2.5];

pub(crate) fn up_the_centre(sheet: &mut Sheet, by: f64) {
    let up: Vec2 = -sheet.down();
    if let Some(uncut) = &mut sheet.uncut {
        let own = uncut.waist - uncut.start;
        uncut.waist += own / own.hypot() * by;
    }
    sheet.centre_waist += up * by;
    sheet.raised[0] += by;
}

#[test]
fn centre_front_raised_along_itself() {
    let method = |leg: &mut Leg, amount: f64| {
        up_the_centre(&mut leg.front, amount);
        leg.close();
    };
    by_hand(Key::WaistRaiseFront, 1.0, &AMOUNTS, method, |_, amount| Allowed::slide(amount));
}

#[test]
fn centre_back_raised_along_itself() {
    let method = |leg: &mut Leg, amount: f64| {
        up_the_centre(&mut leg.back, amount);
        leg.close();
    };
    by_hand(Key::WaistRaiseBack, 1.0, &AMOUNTS, method, |_, amount| Allowed::slide(amount));
}

#[test]
fn side_raised_along_both_seams() {
    let method = |leg: &mut Leg, amount: f64| {
        leg.front.side = produced(&leg.front.side, amount);
        leg.front.raised[1] = amount;
        leg.back.raised[1] = amount;
        leg.close();
    };
    by_hand(Key::WaistRaiseSide, 1.0, &AMOUNTS, method, |_, amount| Allowed::slide(amount));
}

#[test]
fn raised_end_lengthens_its_own_edge_alone() {
    for fitting in fittings() {
        let base = fitting.paper();
        let centre = |sheet: &Sheet| sheet.centre_waist.distance(sheet.curve_start) + length(&sheet.curve);
        let ends = |leg: &Leg| {
            [centre(&leg.front), length(&leg.front.side), length(&leg.back.side), centre(&leg.back)]
        };
        for (key, wanted) in [
            (Key::WaistRaiseFront, [1.0, 0.0, 0.0, 0.0]),
            (Key::WaistRaiseSide, [0.0, 1.0, 1.0, 0.0]),
            (Key::WaistRaiseBack, [0.0, 0.0, 0.0, 1.0]),
        ] {
            let raised = fitting.drafted_on_paper(key, 1.0);
            for (end, (old, new)) in ends(&base).iter().zip(ends(&raised)).enumerate() {
                assert!(
                    (new - old - wanted[end]).abs() < 0.001,
                    "{} {key} {end}: {:+.4}",
                    fitting.name,
                    new - old
                );
            }
            assert!((raised.waist - base.waist).abs() < 0.001, "{} {key}", fitting.name);
        }
    }
}
