//! The abdomen: a wedge at the centre front, and width at the waist.

use breeks::adjust::Key;

use crate::{
    bodies::fittings,
    closing::Leg,
    compare::{Allowed, by_hand, report},
    seat::{around_cut, open_wedge},
};

#[test]
fn wedge_at_the_centre_front_stood_back() {
    let method = |leg: &mut Leg, amount: f64| {
        let front = &mut leg.front;
        let (waist, start, hip) = (front.centre_waist, front.curve_start, front.centre_hip());
        let width = front.centre_waist.distance(front.side[0]);
        // The centre front is stood back to its old lean where the cut end of it came to.
        let carried = open_wedge(front, amount) - hip;
        front.centre_waist = waist + carried;
        front.curve_start = start + carried;
        // What the waist gained goes into the front's own darts.
        front.takes = front.centre_waist.distance(front.side[0]) - width;
        leg.close();
    };
    by_hand(Key::AbdomenLength, 1.0, &[-1.0, 0.5, 2.5], method, around_cut);
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
