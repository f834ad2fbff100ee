//! The abdomen: a wedge at the centre front, and width at the waist.

use breeks::adjust::Key;

use crate::{
    bodies::fittings,
    closing::{Leg, Sheet},
    compare::{Allowed, by_hand, report},
    paper::{opening_angle, turned},
};

/// Cut level on the hip line and opened at the centre front; the centre front stood back to its old lean, where it is
/// longer by the opening; what that gives is taken off at the side, which is back on its old line; the darts, which lie
/// over the belly, stay as wide as they were and hang from the new waist.
fn open(front: &mut Sheet, opening: f64) {
    let (hinge, centre) = (front.side_hip(), front.centre_hip());
    let cut_end = turned(centre, hinge, opening_angle(opening, hinge.distance(centre)));
    let carried = cut_end - centre;
    // The cut end goes round the hinge; on its line the centre front has gone up by the opening.
    assert!((carried.hypot() - opening.abs()).abs() < 1e-9);
    front.centre_waist -= front.down() * opening;
}

#[test]
fn level_cut_opened_at_the_centre_front() {
    let method = |leg: &mut Leg, amount: f64| {
        open(&mut leg.front, amount);
        leg.close();
    };
    by_hand(Key::AbdomenLength, 1.0, &[-1.0, 0.5, 2.5], method, |_, amount| Allowed::slide(amount));
}

#[test]
fn darts_over_a_full_belly_no_wider() {
    for fitting in fittings() {
        let (base, longer) = (fitting.paper().front, fitting.drafted_on_paper(Key::AbdomenLength, 2.5).front);
        let more = longer.intake() - base.intake();
        assert!(more < 0.1, "{}: {more:+.3}", fitting.name);
    }
}

/// The front dart gives first, what the construction gave it; the side the rest, to nothing at the hip; the back darts
/// take it in.
fn widen(leg: &mut Leg, by: f64) {
    let by_dart = if leg.front.darts.is_empty() { 0.0 } else { by.min(leg.front.constructed_intake) };
    leg.front.takes = -by_dart;
    leg.front.side_out_at_waist(by - by_dart);
    if leg.back.darts.is_empty() {
        leg.back.side_out_at_waist(-by);
    }
    leg.close();
}

#[test]
fn front_waist_wider_by_its_darts() {
    by_hand(Key::AbdomenWidth, 0.8, &[-0.6, 0.4, 1.5], widen, |_, amount| Allowed::slide(amount));
}

#[test]
fn width_over_the_abdomen_taken_from_the_back_waist() {
    let mut wrong = Vec::new();
    for fitting in fittings() {
        let (base, wider) = (fitting.paper(), fitting.drafted_on_paper(Key::AbdomenWidth, 1.0));
        let front = wider.front.sewn_waist() - base.front.sewn_waist();
        // Where a dart cannot give or take it all the side does, whose waist rises on a slant.
        let by_side = base.front.constructed_intake < 1.1 || base.back.darts.is_empty();
        let slant = if by_side { 0.08 } else { 0.02 };
        if (front - 1.0).abs() > slant {
            wrong.push(format!("{}: front waist {front:+.3}", fitting.name));
        }
    }
    report(&wrong);
}
