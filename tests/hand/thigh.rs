//! The thigh: the front slashed and turned about a point on the inseam, the back lapped, lenses at inseam and side.

use breeks::{
    adjust::Key,
    terms::{Edge, Level, Panel},
};
use kurbo::{Point, Vec2};

use crate::{
    bodies::fittings,
    closing::{Leg, Sheet},
    compare::{Allowed, by_hand, differences, report, told_apart},
    paper::{area, blended, cut, length, opening_angle, place, redrawn, run_out, turned_line},
};

/// The inseam is smoothed so far below and above the pivot.
const SMOOTHED: f64 = 4.0;
/// The pivot stays so far above the knee.
const ABOVE_KNEE: f64 = 5.0;

/// How far above the knee the pivot lies when it shall lie `reach` below the crotch point.
pub(crate) fn pivot_above_knee(front: &Sheet, reach: f64) -> f64 {
    (length(&front.inseam) - front.hem_to_knee() - reach).max(ABOVE_KNEE)
}

/// Where the slash begins, which is where its opening is measured: at the start of the curve, or on the hip line where
/// that is lower, so that the cut never runs over the seat.
fn slash(sheet: &Sheet) -> Point {
    let hip = sheet.centre_hip();
    if hip.y > sheet.curve_start.y { hip } else { sheet.curve_start }
}

/// Slashes the panel down to the inseam, turns the inner part outwards about the pivot until the slash is open (or
/// lapped, for a negative amount), and closes both ends of the cut.
pub(crate) fn open(sheet: &mut Sheet, above_knee: f64, opening: f64) {
    let walked = sheet.hem_to_knee() + above_knee;
    let pin = place(&sheet.inseam, walked);
    let angle = -opening_angle(opening, slash(sheet).distance(pin));
    let corner = sheet.corner();
    sheet.arms = Some(sheet.curve_start.distance(corner) / sheet.crotch_point().distance(corner));
    let (below, above) = cut(&sheet.inseam, walked);
    let above = turned_line(&above, pin, angle);
    sheet.inseam = blended(&below, &above, SMOOTHED, SMOOTHED);
    // The curve is swept as it was: as full, and its arms in their old proportion, so that it begins a little higher on
    // the centre line. Begun where it was it would turn a corner there.
    sheet.turned = true;
}

fn open_front(leg: &mut Leg, reach: f64, opening: f64) {
    let above_knee = pivot_above_knee(&leg.front, reach);
    open(&mut leg.front, above_knee, opening);
    leg.close();
}

/// The level of the pivot of a panel.
fn pivot_level(leg: &Leg, panel: Panel, reach: f64) -> f64 {
    let sheet = leg.sheet(panel);
    place(&sheet.inseam, sheet.hem_to_knee() + pivot_above_knee(&leg.front, reach)).y
}

fn around_pivot(leg: &Leg, panel: Panel, reach: f64, amount: f64) -> Allowed {
    let pivot = pivot_level(leg, panel, reach);
    Allowed::turn(amount).blend(panel, Edge::Inseam, pivot - SMOOTHED, pivot + SMOOTHED)
}

const OPENINGS: [f64; 6] = [-1.0, 0.3, 1.0, 1.9, 2.5, 4.0];
const REACHES: [f64; 4] = [15.0, 20.0, 22.0, 25.0];
/// Where nothing is said, the pivot lies here.
const REACH: f64 = 22.0;

#[test]
fn front_opened_at_every_reach() {
    let mut wrong = Vec::new();
    for fitting in fittings() {
        for (opening, reach) in OPENINGS.iter().flat_map(|opening| REACHES.map(|reach| (*opening, reach))) {
            let mut paper = fitting.paper();
            let allowed = around_pivot(&paper, Panel::Front, reach, opening);
            open_front(&mut paper, reach, opening);
            let given = [(Key::ThighFront, opening), (Key::ThighFrontReach, reach)];
            let found = differences(&paper, &fitting.drafted(&given), &allowed);
            wrong.extend(
                found
                    .iter()
                    .map(|what| format!("{}, opening {opening}, reach {reach}: {what}", fitting.name)),
            );
            told_apart(&paper, fitting, &allowed, Key::ThighFront);
            // A pivot elsewhere is another front thigh.
            if reach != REACH && opening == 1.9 && pivot_above_knee(&paper.front, reach) > ABOVE_KNEE {
                let elsewhere = fitting.drafted(&[(Key::ThighFront, opening)]);
                assert!(!differences(&paper, &elsewhere, &allowed).is_empty(), "reach {reach} left out");
            }
        }
    }
    report(&wrong);
}

#[test]
fn back_lapped_level_with_the_front_pivot() {
    let lap = |leg: &mut Leg, amount: f64| {
        // Level with the front: walked up from the knee as far as on the front.
        let above_knee = pivot_above_knee(&leg.front, REACH);
        open(&mut leg.back, above_knee, -amount);
        leg.close();
    };
    let allowed = |leg: &Leg, amount: f64| around_pivot(leg, Panel::Back, REACH, amount);
    by_hand(Key::ThighBackTake, 0.95, &[0.3, 0.6, 1.25, 2.0], lap, allowed);
}

#[test]
fn back_opened_level_with_the_front_pivot() {
    let open_back = |leg: &mut Leg, amount: f64| {
        let above_knee = pivot_above_knee(&leg.front, REACH);
        open(&mut leg.back, above_knee, amount);
        leg.close();
    };
    let allowed = |leg: &Leg, amount: f64| around_pivot(leg, Panel::Back, REACH, amount);
    by_hand(Key::ThighBack, 1.0, &[0.3, 2.0], open_back, allowed);
}

#[test]
fn front_opened_and_back_lapped_together() {
    let mut wrong = Vec::new();
    for fitting in fittings() {
        for (opening, take, reach) in [(1.9, 0.95, 22.0), (1.0, 0.5, 20.0), (3.0, 1.5, 25.0)] {
            let mut paper = fitting.paper();
            let mut allowed = around_pivot(&paper, Panel::Front, reach, opening);
            allowed.blends.extend(around_pivot(&paper, Panel::Back, reach, take).blends);
            let above_knee = pivot_above_knee(&paper.front, reach);
            open(&mut paper.front, above_knee, opening);
            open(&mut paper.back, above_knee, -take);
            paper.close();
            let given =
                [(Key::ThighFront, opening), (Key::ThighBackTake, take), (Key::ThighFrontReach, reach)];
            let found = differences(&paper, &fitting.drafted(&given), &allowed);
            wrong.extend(
                found.iter().map(|what| format!("{}, {opening} and {take} at {reach}: {what}", fitting.name)),
            );
        }
    }
    report(&wrong);
}

#[test]
fn front_opening_leaves_side_waist_hem_and_centre_front() {
    for fitting in fittings() {
        let (base, opened) = (&fitting.base.front, fitting.drafted(&[(Key::ThighFront, 1.9)]).front);
        assert_eq!(base.side_seam, opened.side_seam, "{}", fitting.name);
        assert_eq!(base.waist, opened.waist, "{}", fitting.name);
        assert_eq!(base.hem, opened.hem, "{}", fitting.name);
        // The centre front is the same line, straight down to where the curve now begins.
        let last = |chain: &breeks::curve::Chain| *chain.cubics().last().unwrap();
        let (was, is) = (last(&base.crotch_seam), last(&opened.crotch_seam));
        assert_eq!(was.p3, is.p3, "{}", fitting.name);
        let off = (was.p0 - was.p3).cross(is.p0 - is.p3) / (was.p0 - was.p3).hypot();
        assert!(off.abs() < 1e-9, "{}: {off}", fitting.name);
        assert!((1.0..4.0).contains(&was.p0.distance(is.p0)), "{}", fitting.name);
    }
}

#[test]
fn front_opening_keeps_the_inseam_and_its_match() {
    for fitting in fittings() {
        for opening in OPENINGS {
            let opened = fitting.drafted_on_paper(Key::ThighFront, opening);
            let base = fitting.paper();
            let (front, back) = (length(&opened.front.inseam), length(&opened.back.inseam));
            assert!((front - length(&base.front.inseam)).abs() < 0.02, "{} {opening}", fitting.name);
            assert!((front - back).abs() < 0.001, "{} {opening}", fitting.name);
        }
    }
}

#[test]
fn gain_at_the_crotch_line_as_the_crotch_point_moves() {
    for fitting in fittings() {
        for opening in OPENINGS {
            let opened = fitting.drafted(&[(Key::ThighFront, opening)]).front;
            let moved = fitting.paper().front.crotch_point().x - opened.inseam.end().x;
            assert!(
                (opened.gain - moved).abs() < 1e-6,
                "{} {opening}: {} {moved}",
                fitting.name,
                opened.gain
            );
        }
    }
}

/// The open slash is a triangle; sweeping the curve from the old centre front to the turned crotch point cuts some of
/// its tip away again, and a large opening adds a little by beginning higher.
#[test]
fn front_opening_adds_about_half_of_itself_times_the_slash() {
    for fitting in fittings() {
        for opening in OPENINGS {
            let base = fitting.paper().front;
            let opened = fitting.drafted_on_paper(Key::ThighFront, opening).front;
            let pin = place(&base.inseam, base.hem_to_knee() + pivot_above_knee(&base, REACH));
            let wedge = 0.5 * opening * slash(&base).distance(pin);
            let added = area(&opened.around()) - area(&base.around());
            assert!((0.6..1.1).contains(&(added / wedge)), "{} {opening}: {added} of {wedge}", fitting.name);
        }
    }
}

#[test]
fn both_crotch_points_out_for_the_inner_thigh() {
    let method = |leg: &mut Leg, amount: f64| {
        leg.front.extended = amount;
        leg.back.extended = amount;
        leg.close();
    };
    let allowed = |_: &Leg, amount: f64| Allowed::slide(amount);
    by_hand(Key::ThighInner, 0.6, &[-1.3, -0.6, 1.2], method, allowed);
}

/// A lens outside the side seam: from 7 above the hip, fullest 5 below the crotch line, to nothing at `bottom`.
fn lens(sheet: &mut Sheet, crotch: f64, bottom: f64, by: f64) {
    let waist_to_hip = sheet.hip - sheet.constructed_side.y;
    let (top, fullest) = (sheet.hip - f64::min(7.0, 0.5 * waist_to_hip), crotch + 5.0);
    sheet.side = redrawn(&sheet.side, |y| {
        let part = if y < fullest { (y - top) / (fullest - top) } else { (bottom - y) / (bottom - fullest) };
        Vec2::new(by * run_out(part), 0.0)
    });
}

#[test]
fn lens_outside_both_side_seams() {
    let method = |leg: &mut Leg, amount: f64| {
        let (crotch, knee) = (leg.levels[Level::Crotch], leg.levels[Level::Knee]);
        lens(&mut leg.front, crotch, knee, amount);
        lens(&mut leg.back, crotch, knee, amount);
        leg.close();
    };
    by_hand(Key::ThighOuter, 0.6, &[-0.5, 0.3, 1.2], method, |_, amount| Allowed::slide(amount));
}

#[test]
fn lens_outside_the_front_side_seam() {
    let method = |leg: &mut Leg, amount: f64| {
        let crotch = leg.levels[Level::Crotch];
        lens(&mut leg.front, crotch, crotch + 25.0, amount);
        leg.close();
    };
    by_hand(Key::ThighFrontSide, 0.5, &[0.2, 0.6], method, |_, amount| Allowed::slide(amount));
}
