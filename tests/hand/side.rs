//! Where the side seam stands: what the front gets the back gives.

use breeks::{
    adjust::Key,
    terms::{Level, Panel, Word},
};

use crate::{
    bodies::fittings,
    closing::Leg,
    compare::{Allowed, by_hand},
};

/// Moves the side seams at these levels, the front out and the back in.
fn shift(leg: &mut Leg, by: f64, knots: &[(Level, f64)]) {
    let levels = leg.levels;
    for (sheet, by) in [(&mut leg.front, by), (&mut leg.back, -by)] {
        let mut at = vec![(sheet.constructed_side.y, 0.0)];
        at.extend(knots.iter().map(|(level, part)| (levels[*level], part * by)));
        sheet.side_out(&at);
    }
    leg.close();
}

#[test]
fn side_seam_moved_at_the_hip() {
    let method = |leg: &mut Leg, amount: f64| shift(leg, amount, &[(Level::Hip, 1.0), (Level::Knee, 0.0)]);
    by_hand(Key::HipFrontShare, 0.8, &[-1.5, 0.4, 1.5], method, |_, amount| Allowed::slide(amount));
}

#[test]
fn side_seam_moved_from_hip_to_hem() {
    let method = |leg: &mut Leg, amount: f64| shift(leg, amount, &[(Level::Hip, 1.0), (Level::Hem, 1.0)]);
    by_hand(Key::SideForward, 0.6, &[-1.0, 0.3, 1.0], method, |_, amount| Allowed::slide(amount));
}

#[test]
fn girths_kept_where_the_side_seam_stands_elsewhere() {
    for fitting in fittings() {
        for key in [Key::HipFrontShare, Key::SideForward] {
            let moved = fitting.drafted(&[(key, 1.0)]);
            for level in Level::ALL.iter().filter(|level| **level != Level::Waist) {
                let girth = |shape: &breeks::draft::Shape| {
                    // A hair above the level: on the hem line itself a level meets the whole hem.
                    let y = shape.levels[*level] - 0.01;
                    [Panel::Front, Panel::Back]
                        .map(|panel| shape.panel(panel).chord(y).unwrap())
                        .iter()
                        .sum::<f64>()
                };
                let off = girth(&moved) - girth(&fitting.base);
                assert!(off.abs() < 0.02, "{} {key} {level}: {off:+.3}", fitting.name);
            }
        }
    }
}
