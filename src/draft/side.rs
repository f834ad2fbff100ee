//! The side seam of a panel.

use kurbo::{CubicBez, Point, Vec2};

use super::{
    fade::{Knot, fade},
    moves::Moves,
    panel::{Levels, Roles},
    plan::PanelPlan,
    smooth::{smooth_max, smooth_min},
};
use crate::{
    curve::{Chain, Turn, eased, length, reversed, start_tangent, straight, unit},
    terms::{Level, Role},
};

/// Over this angle limits are rounded, radians.
const ROUNDING: f64 = 0.02;
/// A cut across the side is smoothed this far above and below, cm.
pub(crate) const SMOOTHED: f64 = 5.0;
/// How far below its fullest place the front side of a full thigh runs out, cm.
pub(crate) const FRONT_RUN_OUT: f64 = 20.0;
/// A lens for the thigh begins this far above the hip line and is fullest so far below the crotch line, cm: between the
/// two lines alone it would be so short that the side dents above it.
pub(crate) const LENS_ABOVE_HIP: f64 = 7.0;
pub(crate) const FULLEST: f64 = 5.0;
/// A side that is drawn straight down to the knee turns into the lower leg over this length, cm.
const TURNED_BELOW_KNEE: f64 = 12.0;

/// How far a direction down the side leans outward, radians.
pub(super) fn side_lean(downward: Vec2) -> f64 {
    downward.x.atan2(downward.y)
}

fn down_the_side(lean: f64) -> Vec2 {
    let (sin, cos) = lean.sin_cos();
    Vec2::new(sin, cos)
}

/// How far the ends of a seam lean off its chord, radians, so that its middle stands out by `bow`: both handles are a third
/// of the chord, and the middle stands out by three quarters of what they do.
fn stands_off(chord: Vec2, bow: f64) -> f64 {
    (4.0 * bow / chord.hypot()).clamp(-1.0, 1.0).asin()
}

/// The cubic from point to point that stands out by `bow` in its middle.
fn bowed(from: Point, to: Point, bow: f64) -> CubicBez {
    let (lean, off) = (side_lean(to - from), stands_off(to - from, bow));
    eased(from, down_the_side(lean + off), to, down_the_side(lean - off))
}

/// The side seam as the recipe has it, from waist to hem in three parts: to the hip, to the knee, to the hem.
pub(super) fn plain(plan: &PanelPlan, roles: &Roles) -> Chain {
    let (waist, hip) = (roles[Role::SideWaist], roles[Role::SideHip]);
    let (knee, hem) = (roles[Role::SideKnee], roles[Role::SideHem]);
    if plan.seams_as_printed {
        return Chain::of(bowed(waist, hip, plan.side_bow))
            .then(bowed(hip, knee, plan.side_bow_below.unwrap_or_default()))
            .then(straight(knee, hem));
    }
    let (above, below) = (hip - waist, knee - hip);
    let (lean_above, lean_below) = (side_lean(above), side_lean(below));
    let (long, short) = (below.hypot(), above.hypot());
    // Half of the tangent of the circle through the three points: the hip curve rounds, the hip line stays widest.
    let rounded = 0.5 * (lean_above * long + lean_below * short) / (long + short);
    let off = plan.side_bow_below.map(|bow| stands_off(below, bow));
    let lean_hip = off.map_or(rounded, |off| lean_below + off);
    let at_hip = down_the_side(lean_hip);
    let turn = lean_above - lean_hip;
    let bowed = 8.0 * side_bow(plan, above) / short - smooth_max(turn, 0.0, ROUNDING);
    let top = down_the_side(lean_above + bowed);
    let down = unit(hem - knee);
    let upper = Chain::of(eased(waist, top, hip, at_hip));
    let Some(off) = off else {
        return upper.then(eased(hip, at_hip, knee, down)).then(straight(knee, hem));
    };
    // Down to the knee as the recipe has it; what the leg turns there is turned close below.
    let at_knee = down_the_side(lean_below - off);
    let turned = knee + down * TURNED_BELOW_KNEE.min(0.5 * knee.distance(hem));
    upper
        .then(eased(hip, at_hip, knee, at_knee))
        .then(eased(knee, at_knee, turned, down))
        .then(straight(turned, hem))
}

/// The hollow or fullness of the side above the hip: the recipe's where the side takes its ordinary part of the
/// suppression over an ordinary length, less where there is less to round.
fn side_bow(plan: &PanelPlan, above: Vec2) -> f64 {
    /// The take and the length for which recipes print their bow, cm.
    const ORDINARY_TAKE: f64 = 2.5;
    const ORDINARY_LENGTH: f64 = 18.0;
    if plan.printed {
        return plan.side_bow;
    }
    let take = smooth_max(smooth_min(above.x / ORDINARY_TAKE, 1.0, 0.05), 0.0, 0.05);
    plan.side_bow * take * smooth_min(above.hypot() / ORDINARY_LENGTH, 1.0, 0.05)
}

/// The side seam with the panel's moves. `sideways` is how far the angle carries the side waist, `wedge` by how much
/// the wedge turns what lies above the hip, `waist` what the side waist gives besides.
pub(super) fn side_seam(
    plan: &PanelPlan,
    moves: &Moves,
    levels: &Levels,
    (sideways, wedge, waist): (f64, Option<Turn>, f64),
) -> Chain {
    let roles = &plan.roles;
    let mut side = plain(plan, roles);
    let hip = roles[Role::SideHip].y;
    if moves.depth != 0.0 {
        deepen(&mut side, roles, moves);
    }
    let top = side.start().y;
    let mut fade = |knots: &[Knot]| fade(&mut side, knots);
    fade(&[Knot::across(top, sideways + waist), Knot::across(hip, 0.0)]);
    let at = |level, by| Knot::across(levels[level], by);
    let below = |by| Knot::across(levels[Level::Crotch] + FULLEST + FRONT_RUN_OUT, by);
    let (crotch, knee, hem) = (Level::Crotch, Level::Knee, Level::Hem);
    let lens_top = hip - LENS_ABOVE_HIP.min(0.5 * (hip - top));
    let up = |y, by: f64| Knot { y, by: Vec2::new(0.0, -by) };
    fade(&[up(top, moves.uneven), up(hip, moves.uneven), up(levels[knee], 0.0)]);
    let lens = |by, end| [Knot::across(lens_top, 0.0), Knot::across(levels[crotch] + FULLEST, by), end];
    fade(&lens(moves.outer, at(knee, 0.0)));
    fade(&lens(moves.front_side, below(0.0)));
    fade(&[Knot::across(top, 0.0), Knot::across(hip, moves.share), at(knee, 0.0)]);
    fade(&[Knot::across(top, 0.0), Knot::across(hip, moves.forward), at(hem, moves.forward)]);
    fade(&[at(crotch, 0.0), at(knee, -moves.knee_in), at(hem, 0.0)]);
    fade(&[at(crotch, 0.0), at(knee, -CLOSE_AT_KNEE * moves.close), at(hem, -moves.close)]);
    fade(&[at(knee, 0.0), at(Level::Calf, moves.calf), at(hem, 0.0)]);
    if let Some(turn) = wedge {
        turn_above(&mut side, hip, turn);
    }
    side
}

/// How much of the closing of a leg is reached at the knee.
pub(crate) const CLOSE_AT_KNEE: f64 = 0.8;

/// Moves the inseam, from hem to crotch point, as the panel's leg moves.
pub(super) fn move_leg(inseam: &mut Chain, moves: &Moves, levels: &Levels) {
    let top = inseam.end().y;
    let mut fade = |knots: &[Knot]| fade(inseam, knots);
    let at = |level, by| Knot::across(levels[level], by);
    // The crotch point stays, also where it lies below the level from which the leg moves.
    let still = Knot::across(levels[Level::Crotch].max(top), 0.0);
    let (knee, hem) = (Level::Knee, Level::Hem);
    fade(&[still, at(knee, -moves.knee_in), at(hem, 0.0)]);
    fade(&[still, at(knee, -CLOSE_AT_KNEE * moves.close), at(hem, -moves.close)]);
    fade(&[at(knee, 0.0), at(Level::Calf, -moves.calf), at(hem, 0.0)]);
}

/// Cuts the side level on the hip line: what lies below goes down, and the gap is drawn over.
fn deepen(side: &mut Chain, roles: &Roles, moves: &Moves) {
    let hip = roles[Role::SideHip].y;
    let smoothed = SMOOTHED.min(0.8 * (hip - roles[Role::SideWaist].y));
    let down = |y: f64, by: f64| Knot { y, by: Vec2::new(0.0, by) };
    fade(
        side,
        &[
            down(hip - smoothed, 0.0),
            down(hip + smoothed, moves.depth),
            down(roles[Role::SideKnee].y, moves.depth),
            down(roles[Role::SideHem].y, moves.hem_depth),
        ],
    );
}

/// Turns everything above the level about the point where the side crosses it, smoothed on both sides.
fn turn_above(side: &mut Chain, level: f64, turn: Turn) {
    let Some(hinge) = side.joint_on_the_way_down(level) else { return };
    let at = side.cubics().get(hinge).map_or(side.end(), |cubic| cubic.p0);
    let smoothed = |end: Point| SMOOTHED.min(0.8 * at.distance(end));
    let (high, low) = (smoothed(side.start()), smoothed(side.end()));
    let far_below = side.joint_from(hinge, low);
    let cubics = side.cubics().len();
    let near_above = side.joint_from(hinge, -high);
    let cut = side.cubics().len() - cubics;
    let (hinge, far_below) = (hinge + cut, far_below + cut);
    let (whole, half) = (turn.about(at), turn.half());
    // The seam passes the hinge half turned; each side makes up for its half.
    let below = &mut side.cubics_mut()[hinge..far_below];
    ease_start(below, low, |down| half.of(down) - down);
    let above = &mut side.cubics_mut()[near_above..hinge];
    turn_round(above);
    ease_start(above, high, |up| half.back().of(up) - up);
    turn_round(above);
    for cubic in &mut side.cubics_mut()[..hinge] {
        *cubic = whole * *cubic;
    }
}

/// Makes the run one that is walked the other way.
fn turn_round(run: &mut [CubicBez]) {
    run.reverse();
    for cubic in run {
        *cubic = reversed(*cubic);
    }
}

/// Moves the handle at the start of the run, `whole` long, as if it were a single cubic: nothing at either end, and no
/// turn at the far one. Each piece has its ends and end tangents carried, so that no joint becomes a kink.
fn ease_start(run: &mut [CubicBez], whole: f64, by: impl Fn(Vec2) -> Vec2) {
    let Some(first) = run.first() else { return };
    let handle = by(start_tangent(first) * (whole / 3.0));
    // By how much a place moves, and how that grows for each cm further on.
    let moved = |u: f64| {
        let left = 1.0 - u;
        (handle * (3.0 * u * left * left), handle * (3.0 * left * (1.0 - 3.0 * u) / whole))
    };
    let last = run.len() - 1;
    let mut v = 0.0;
    for (index, cubic) in run.iter_mut().enumerate() {
        let (start, start_slope) = moved(v);
        v = if index == last { 1.0 } else { v + length(cubic) / whole };
        let (end, end_slope) = moved(v);
        *cubic = CubicBez::new(
            cubic.p0 + start,
            cubic.p1 + start + start_slope * (cubic.p1 - cubic.p0).hypot(),
            cubic.p2 + end - end_slope * (cubic.p3 - cubic.p2).hypot(),
            cubic.p3 + end,
        );
    }
}

/// The hem of a panel from side to inner leg: straight, or hollowed upwards at the crease.
pub(super) fn hem(side: Point, inner: Point, up_at_crease: f64) -> CubicBez {
    let flat = straight(side, inner);
    // A cubic whose handles are moved by 4/3 moves its middle by 1.
    let lift = Vec2::new(0.0, -4.0 / 3.0 * up_at_crease);
    CubicBez::new(flat.p0, flat.p1 + lift, flat.p2 + lift, flat.p3)
}
