//! The leg below the thigh: knee, calf and hem.

use breeks::{
    adjust::Key,
    terms::{Level, Panel},
};
use kurbo::Vec2;

use crate::{
    bodies::fittings,
    closing::Leg,
    compare::{Allowed, by_hand},
    paper::length,
};

/// Moves both edges of both panels at these levels: towards the side, and the inseam the same way or the other.
fn redraw(leg: &mut Leg, side: &[(f64, f64)], inseam: &[(f64, f64)]) {
    for sheet in [&mut leg.front, &mut leg.back] {
        sheet.side_out(side);
        sheet.inseam_in(inseam);
    }
    leg.close();
}

fn knees_inwards(leg: &mut Leg, by: f64) {
    let at = |level: Level, by: f64| (leg.levels[level], by);
    let knots = [at(Level::Crotch, 0.0), at(Level::Knee, -by), at(Level::Hem, 0.0)];
    redraw(leg, &knots, &knots);
}

fn leg_closed(leg: &mut Leg, by: f64) {
    let at = |level: Level, by: f64| (leg.levels[level], by);
    let knots = [at(Level::Thigh, 0.0), at(Level::Knee, -0.8 * by), at(Level::Hem, -by)];
    redraw(leg, &knots, &knots);
}

fn calf_widened(leg: &mut Leg, by: f64) {
    let at = |level: Level, by: f64| (leg.levels[level], by);
    let knots = |by: f64| [at(Level::Knee, 0.0), at(Level::Calf, by), at(Level::Hem, 0.0)];
    let (side, inseam) = (knots(0.25 * by), knots(-0.25 * by));
    redraw(leg, &side, &inseam);
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

#[test]
fn inseams_and_sides_true_after_every_move_of_the_leg() {
    let mut wrong = Vec::new();
    for fitting in fittings() {
        for (key, amount) in
            [(Key::LegKneeIn, 1.5), (Key::LegClose, 1.6), (Key::LegCalf, 3.0), (Key::LegKneeForward, 1.0)]
        {
            for amount in [amount, -amount] {
                let leg = fitting.drafted_on_paper(key, amount);
                let seams = [Panel::Front, Panel::Back]
                    .map(|panel| (length(&leg.sheet(panel).inseam), length(&leg.sheet(panel).side)));
                let [(front, front_side), (back, back_side)] = seams;
                if (front - back).abs() > 0.001 || (front_side - back_side).abs() > 0.001 {
                    wrong.push(format!(
                        "{}, {key} {amount}: inseam {:+.4}, side {:+.4}",
                        fitting.name,
                        back - front,
                        back_side - front_side
                    ));
                }
            }
        }
    }
    crate::compare::report(&wrong);
}
