//! The leg below the thigh: knee, calf and hem.

use breeks::{adjust::Key, terms::Level};
use kurbo::Vec2;

use crate::{
    closing::Leg,
    compare::{Allowed, by_hand},
};

/// A level and by how much the side and the inseam move there, both towards the side.
type Knot = (Level, f64, f64);

/// Moves both edges of both panels at these levels, going down. The crotch point stays also where it lies below the
/// level from which the leg moves, as that of the back does.
fn redraw(leg: &mut Leg, knots: [Knot; 3]) {
    let levels = leg.levels;
    for sheet in [&mut leg.front, &mut leg.back] {
        let top = sheet.crotch_point().y;
        sheet.side_out(&knots.map(|(level, side, _)| (levels[level], side)));
        sheet.inseam_in(&knots.map(|(level, _, inseam)| (levels[level].max(top), inseam)));
    }
    leg.close();
}

fn knees_inwards(leg: &mut Leg, by: f64) {
    redraw(leg, [(Level::Crotch, 0.0, 0.0), (Level::Knee, -by, -by), (Level::Hem, 0.0, 0.0)]);
}

fn leg_closed(leg: &mut Leg, by: f64) {
    let at_knee = -0.8 * by;
    redraw(leg, [(Level::Crotch, 0.0, 0.0), (Level::Knee, at_knee, at_knee), (Level::Hem, -by, -by)]);
}

fn calf_widened(leg: &mut Leg, by: f64) {
    let each = 0.25 * by;
    redraw(leg, [(Level::Knee, 0.0, 0.0), (Level::Calf, each, -each), (Level::Hem, 0.0, 0.0)]);
}

#[test]
fn knee_moved_inwards_on_all_edges() {
    by_hand(Key::LegKneeIn, 0.8, &[-1.5, 0.4, 1.5], knees_inwards, |_, amount| Allowed::slide(amount));
}

#[test]
fn lower_leg_moved_inwards_on_all_edges() {
    by_hand(Key::LegClose, 0.8, &[-1.6, 0.4, 1.6], leg_closed, |_, amount| Allowed::slide(amount));
}

#[test]
fn calf_widened_on_all_edges() {
    by_hand(Key::LegCalf, 1.5, &[0.5, 3.0], calf_widened, |_, amount| Allowed::slide(amount));
}

#[test]
fn hems_bent_at_the_crease() {
    let method = |leg: &mut Leg, amount: f64| {
        leg.close();
        for (sheet, up) in [(&mut leg.front, amount), (&mut leg.back, -amount)] {
            let (side, inner) = (sheet.hem[0].x, sheet.hem[sheet.hem.len() - 1].x);
            for point in &mut sheet.hem {
                // Nothing at the seams, all of it in the middle, in the plainest curve.
                let part = (point.x - side) / (inner - side);
                *point += Vec2::new(0.0, -up * 4.0 * part * (1.0 - part));
            }
        }
    };
    by_hand(Key::LegKneeForward, 0.5, &[-1.0, 1.0], method, |_, amount| Allowed::slide(amount));
}
