//! The crotch: both panels cut level on the hip line, crotch points out, curves deeper.

use breeks::{
    adjust::Key,
    terms::{Edge, Panel},
};
use kurbo::{Point, Vec2};

use crate::{
    bodies::fittings,
    closing::{Leg, Sheet},
    compare::{Allowed, by_hand},
    paper::{blended, crossing, cut, length, slid, walk_to_level},
};

/// A seam that was cut across is smoothed so far above and below the cut.
pub(crate) const SMOOTHED: f64 = 5.0;

/// Cuts the panel level on the hip line and moves all below straight down.
pub(crate) fn deepen(sheet: &mut Sheet, by: f64) {
    sheet.cut_open(by, by);
    let down = Vec2::new(0.0, by);
    let (above, below) = cut(&sheet.side, walk_to_level(&sheet.side, sheet.hip));
    sheet.side = blended(&above, &slid(&below, down), SMOOTHED, SMOOTHED);
    sheet.inseam = slid(&sheet.inseam, down);
    sheet.hem = slid(&sheet.hem, down);
    sheet.knee += by;
    // The centre line is produced; where the curve starts on it the walked seam says.
    let level = Point::new(0.0, sheet.curve_start.y + by);
    sheet.curve_start = crossing(sheet.centre_waist, sheet.down(), level, Vec2::new(1.0, 0.0));
}

fn deepened(leg: &mut Leg, by: f64) {
    deepen(&mut leg.front, by);
    deepen(&mut leg.back, by);
    leg.close();
}

#[test]
fn both_panels_cut_on_the_hip_line_and_spread() {
    let allowed = |leg: &Leg, amount: f64| {
        let hip = leg.front.hip;
        let over = |allowed: Allowed, panel| {
            allowed.blend(panel, Edge::SideSeam, hip - SMOOTHED, hip + SMOOTHED + amount.max(0.0))
        };
        over(over(Allowed::slide(amount), Panel::Front), Panel::Back)
    };
    by_hand(Key::CrotchDepth, 1.0, &[-1.0, 0.5, 2.0], deepened, allowed);
}

#[test]
fn deeper_crotch_lengthens_both_sides_and_both_crotch_seams_and_keeps_both_inseams() {
    for fitting in fittings() {
        let (base, deeper) = (fitting.paper(), fitting.drafted_on_paper(Key::CrotchDepth, 1.5));
        for panel in [Panel::Front, Panel::Back] {
            let (old, new) = (base.sheet(panel), deeper.sheet(panel));
            let side = length(&new.side) - length(&old.side);
            assert!((side - 1.5).abs() < 0.02, "{} {panel}: side {side:+.3}", fitting.name);
            let seam = new.crotch_seam() - old.crotch_seam();
            assert!((0.95..=1.05).contains(&(seam / 1.5)), "{} {panel}: seam {seam:+.3}", fitting.name);
            let inseam = length(&new.inseam) - length(&old.inseam);
            assert!(inseam.abs() < 0.001, "{} {panel}: inseam {inseam:+.3}", fitting.name);
        }
    }
}

#[test]
fn front_crotch_point_out() {
    let method = |leg: &mut Leg, amount: f64| {
        leg.front.extended = amount;
        leg.close();
    };
    by_hand(Key::CrotchFrontExtension, 0.8, &[-1.0, 0.4, 1.5], method, |_, amount| Allowed::slide(amount));
}

#[test]
fn back_crotch_point_out() {
    let method = |leg: &mut Leg, amount: f64| {
        leg.back.extended = amount;
        leg.close();
    };
    by_hand(Key::CrotchBackExtension, 1.0, &[-1.5, 0.5, 2.3], method, |_, amount| Allowed::slide(amount));
}

/// Draws the curve deeper between its two ends, whose directions stay: its middle goes towards the corner. A middle
/// between corner and chord cannot leave the line from the chord's middle to the corner.
pub(crate) fn scoop(sheet: &mut Sheet, by: f64) {
    let middle = sheet.curve_start.midpoint(sheet.crotch_point());
    let towards = sheet.corner() - middle;
    sheet.fill(sheet.fullness_through(sheet.deepest() + towards / towards.hypot() * by));
}

#[test]
fn front_curve_deeper() {
    let method = |leg: &mut Leg, amount: f64| {
        scoop(&mut leg.front, amount);
        leg.close();
    };
    by_hand(Key::CrotchFrontScoop, 0.3, &[-0.5, 0.6, 1.0], method, |_, amount| Allowed::slide(amount));
}
