//! The seat: a wedge at the centre back, its lean, its width, and its curve.

use breeks::{
    adjust::Key,
    terms::{Edge, Panel},
};
use kurbo::{Point, Vec2};

use crate::{
    bodies::fittings,
    closing::{Leg, Sheet},
    compare::{Allowed, by_hand},
    crotch::{SMOOTHED, scoop},
    paper::{
        angle_from, arriving, crossing, cut, leaving, length, opening_angle, swept, swung, turned,
        turned_line, walk_to_level,
    },
};

/// Cuts the panel on the hip line from the centre to the side seam, where it hangs on, and turns the part above about
/// that hinge until the centre is open by so much. The turned centre line is produced down to where the curve began; from
/// there the seam is walked with the tape until it is longer by the opening.
pub(crate) fn open_wedge(sheet: &mut Sheet, opening: f64) {
    sheet.cut_open(opening, 0.0);
    let (hinge, centre) = (sheet.side_hip(), sheet.centre_hip());
    let angle = opening_angle(opening, hinge.distance(centre));
    let (above, below) = cut(&sheet.side, walk_to_level(&sheet.side, sheet.hip));
    // The hinge stays on the seam, so that the hip keeps its width: two sweeps meet there half-way turned.
    let above = turned_line(&above, hinge, angle);
    let (mut side, _) = cut(&above, length(&above) - SMOOTHED);
    let (_, rest) = cut(&below, SMOOTHED);
    let half_way = swung(leaving(&below), 0.5 * angle);
    let (from, to) = (side[side.len() - 1], rest[0]);
    side.extend(&swept(from, arriving(&side), hinge, half_way)[1..]);
    side.extend(&swept(hinge, half_way, to, leaving(&rest))[1..]);
    side.extend(&rest[1..]);
    sheet.side = side;
    sheet.centre_waist = turned(sheet.centre_waist, hinge, angle);
    let down = turned(centre, hinge, angle) - sheet.centre_waist;
    let level = Point::new(0.0, sheet.curve_start.y);
    sheet.curve_start = crossing(sheet.centre_waist, down, level, Vec2::new(1.0, 0.0));
}

pub(crate) fn around_cut(leg: &Leg, amount: f64) -> Allowed {
    let hip = leg.front.hip;
    [Panel::Front, Panel::Back].into_iter().fold(Allowed::turn(amount), |allowed, panel| {
        allowed.blend(panel, Edge::SideSeam, hip - SMOOTHED, hip + SMOOTHED)
    })
}

#[test]
fn wedge_at_the_centre_back() {
    let method = |leg: &mut Leg, amount: f64| {
        open_wedge(&mut leg.back, amount);
        leg.close();
    };
    by_hand(Key::SeatLength, 1.5, &[-2.0, -0.8, 0.8, 3.0], method, around_cut);
}

#[test]
fn wedge_longer_in_the_seam_by_its_amount() {
    for fitting in fittings() {
        for (key, panel) in [(Key::SeatLength, Panel::Back), (Key::AbdomenLength, Panel::Front)] {
            let (least, most) = key.about().usual;
            for amount in [least, 0.5 * least, 0.5 * most, most] {
                let seam = |leg: &Leg| leg.sheet(panel).crotch_seam();
                let longer = seam(&fitting.drafted_on_paper(key, amount)) - seam(&fitting.paper());
                let part = longer / amount;
                assert!((0.95..=1.05).contains(&part), "{}, {key} {amount}: {longer:.3}", fitting.name);
            }
        }
    }
}

#[test]
fn wedge_keeps_the_side_the_inseam_and_the_crotch_point() {
    for fitting in fittings() {
        let (base, opened) = (fitting.paper(), fitting.drafted_on_paper(Key::SeatLength, 1.5));
        let kept = |of: fn(&Leg) -> f64| (of(&base) - of(&opened)).abs() < 0.001;
        assert!(kept(|leg| length(&leg.back.side)), "{}", fitting.name);
        assert!(kept(|leg| length(&leg.back.inseam)), "{}", fitting.name);
        // Where the curve has no room the top of the inseam yields, and is a thread longer or shorter for it.
        assert!(
            (base.back.crotch_point().y - opened.back.crotch_point().y).abs() < 0.005,
            "{}",
            fitting.name
        );
        assert!(kept(|leg| leg.back.sewn_waist() + leg.front.sewn_waist()), "{}", fitting.name);
    }
}

/// Swings the centre back about the hip line; the top of the side goes sideways as far as the centre line does at its
/// height, and the waist is squared again like a set square that swings with the centre.
pub(crate) fn lean(sheet: &mut Sheet, degrees: f64) {
    let (pin, side) = (sheet.centre_hip(), sheet.constructed_side);
    let old = -sheet.down();
    let new = swung(old, degrees.to_radians());
    let level = Vec2::new(1.0, 0.0);
    let by = crossing(pin, new, side, level).x - crossing(pin, old, side, level).x;
    let square = (sheet.centre_waist - side).dot(old);
    sheet.curve_start = turned(sheet.curve_start, pin, degrees.to_radians());
    if let Some(uncut) = &mut sheet.uncut {
        uncut.start = turned(uncut.start, pin, degrees.to_radians());
    }
    sheet.side_out_at_waist(by);
    let side = side + level * by;
    sheet.centre_waist = pin + new * ((side - pin).dot(new) + square);
    if let Some(uncut) = &mut sheet.uncut {
        uncut.waist = sheet.centre_waist;
    }
}

#[test]
fn centre_back_swung_about_the_hip_line() {
    let method = |leg: &mut Leg, amount: f64| {
        lean(&mut leg.back, amount);
        leg.close();
    };
    // A degree moves the waist by about a third of a centimetre.
    let allowed = |_: &Leg, degrees: f64| Allowed::turn(degrees / 3.0);
    by_hand(Key::SeatAngle, 2.0, &[-3.0, -1.5, 4.0], method, allowed);
}

/// Moves the centre back out as a whole and runs the crotch point's move out on the inseam down to the knee.
fn widen(sheet: &mut Sheet, by: f64) {
    let out = Vec2::new(-by, 0.0);
    sheet.centre_waist += out;
    sheet.curve_start += out;
    sheet.widened = by;
}

#[test]
fn centre_back_and_crotch_point_out() {
    let method = |leg: &mut Leg, amount: f64| {
        widen(&mut leg.back, amount);
        leg.close();
    };
    by_hand(Key::SeatWidth, 0.8, &[-1.0, 1.5], method, |_, amount| Allowed::slide(amount));
}

#[test]
fn width_of_the_seat_goes_into_the_back_darts() {
    for fitting in fittings() {
        let (base, wider) = (fitting.paper(), fitting.drafted_on_paper(Key::SeatWidth, 1.0));
        if !base.back.darts.is_empty() {
            let more = wider.back.intake() - base.back.intake();
            assert!((more - 1.0).abs() < 0.15, "{}: darts {more:+.3}", fitting.name);
        }
        assert!((wider.waist - base.waist).abs() < 0.001, "{}", fitting.name);
    }
}

#[test]
fn back_curve_deeper() {
    let method = |leg: &mut Leg, amount: f64| {
        scoop(&mut leg.back, amount);
        leg.close();
    };
    by_hand(Key::SeatScoop, 0.4, &[-0.5, 0.8, 1.2], method, |_, amount| Allowed::slide(amount));
}

/// Lowers the curve straight down between its ends and the darts with it. The crotch point stays, so that the curve
/// leaves it flatter; the top 5 of the inseam gives way to that, and the crossing stays square.
fn lower(sheet: &mut Sheet, by: f64) {
    let old = sheet.rising();
    let corner = sheet.corner() + Vec2::new(0.0, by / (0.75 * sheet.fullness));
    let onto_centre = crossing(sheet.curve_start, sheet.down(), corner, Vec2::new(1.0, 0.0));
    sheet.flatter = angle_from(old, onto_centre - sheet.crotch_point());
    for dart in &mut sheet.darts {
        dart.length += by;
    }
}

#[test]
fn back_curve_and_darts_lower() {
    let method = |leg: &mut Leg, amount: f64| {
        lower(&mut leg.back, amount);
        leg.close();
    };
    let allowed = |leg: &Leg, amount: f64| {
        let top = leg.back.crotch_point().y;
        Allowed::slide(amount).blend(Panel::Back, Edge::Inseam, top - 1.0, top + 5.0)
    };
    by_hand(Key::SeatLow, 0.6, &[0.3, 1.2], method, allowed);
}
