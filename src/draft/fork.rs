//! The inseam and the crotch curve of a panel, which meet at the crotch point.

use kurbo::{CubicBez, ParamCurve, Point, Vec2};

use super::{
    fade::{Knot, fade},
    moves::Moves,
    panel::{Levels, Roles},
    plan::{PanelPlan, centre_at},
    side::move_leg,
    smooth::{at_least_nothing, root_between, smooth_max, smooth_min},
};
use crate::{
    curve::{Bend, Chain, Turn, length, meet, straight, t_walked, unit},
    terms::Role,
};

/// What the edges of a fork are drawn from.
#[derive(Clone, Copy)]
pub(super) struct ForkPlan<'a> {
    pub plan: &'a PanelPlan,
    pub moves: &'a Moves,
    pub roles: Roles,
    /// The centre line before anything was cut open on the hip line: how the curve lands is decided on that.
    pub uncut: Roles,
    pub levels: Levels,
    /// By how much the crossing is off square, radians: front `+`, back `-`, so that the two together are 180 degrees.
    pub tilt: f64,
    /// Where the pivot of the thigh turn lies; the back takes the front's.
    pub pivot: Pivot,
}

/// Where the pivot of the thigh turn lies on the inseam.
#[derive(Clone, Copy, Debug)]
pub(super) enum Pivot {
    /// So far below the crotch point by arc, cm.
    BelowCrotch(f64),
    /// So far above the knee by arc, cm.
    AboveKnee(f64),
}

/// The inseam of a panel with what the crotch curve needs of it.
#[derive(Clone, Debug)]
pub(super) struct Inseam {
    /// Hem to crotch point.
    pub edge: Chain,
    /// How the crotch seam leaves the crotch point, before the thigh turn.
    leaving: Vec2,
    /// The crotch point before the thigh turn.
    point: Point,
    /// The thigh turn and its pivot.
    turn: Turn,
    pivot: Point,
    /// How many pieces at its top are as long as before the turn, and how long they are together.
    kept: (usize, f64),
    /// How far above the knee the pivot lies, by arc.
    pub pivot_above_knee: f64,
    /// About how long it is above the knee, told before it was turned and run out.
    pub sketched_above_knee: f64,
}

/// The crotch curve may leave the crotch point at most this steeply downwards, radians: beyond, the crotch point
/// would no longer be the lowest of its curve by more than a thread.
const LEAST_SLOPE: f64 = -0.14;
/// Where the corner of the bend's triangle stands at the highest, as a part of the way from curve start to the
/// level of the crotch point: higher, and the curve would be a straight line with a hook.
const HIGHEST_CORNER: f64 = 0.35;
/// Over this angle limits are rounded, radians.
const ROUNDING: f64 = 0.02;
/// How far the handles of the inseam's sweep reach, as parts of the straight way from knee to crotch point. The leg turns
/// into the thigh close above the knee: so the hollow stays small and the inseam comes to the fork almost straight.
const HANDLE_AT_KNEE: f64 = 0.24;
const HANDLE_AT_TOP: f64 = 1.0 / 3.0;
/// The least turn of the inseam at its top, as a part of its turn at the knee: none, and the sweep would end straight.
const LEAST_TURN: f64 = 0.1;
/// How steeply a crotch curve rises from its fork at the most, front and back, radians. Cutters land the front almost
/// level (common practice, no source); where a slanted inseam would have it steeper, the top of the inseam yields.
const STEEPEST_LANDING: [f64; 2] = [0.255, 0.52];
/// Extensions run out on the inseam this far below the crotch point, cm.
pub(crate) const RUN_OUT: f64 = 25.0;
/// The pivot of the thigh turn stays this far from knee and crotch point, where the leg is long enough, cm.
const PIVOT_ABOVE_KNEE: f64 = 5.0;
const PIVOT_BELOW_CROTCH: f64 = 10.0;
/// So much of the inseam below the crotch point yields to the crossing, cm.
const YIELDING: f64 = 9.0;
/// A crotch curve leaves its centre line at least this far above the corner of its tangents, cm.
const LEAST_ARM: f64 = 0.5;
/// Where the hip line is cut open, the arm of the curve on the centre line keeps this part of itself: with less, the curve
/// would start with a hook. It is led to that over so many cm.
const ARM_KEPT: f64 = 0.8;
const ARM_LED: f64 = 0.3;
/// So much of the centre line stays straight, cm.
const LEAST_CENTRE: f64 = 2.0;
/// The inseam is smoothed this far on both sides of the pivot, cm.
pub(crate) const PIVOT_SMOOTHED: f64 = 4.0;

/// The direction down the straight centre line.
fn down(roles: &Roles) -> Vec2 {
    unit(roles[Role::CurveStart] - roles[Role::CentreWaist])
}

/// How far `upward`, a direction up the leg, leans towards the fork, radians.
fn fork_lean(upward: Vec2) -> f64 {
    (-upward.x).atan2(-upward.y)
}

/// The direction up the leg that leans `lean` towards the fork.
fn up_the_leg(lean: f64) -> Vec2 {
    let (sin, cos) = lean.sin_cos();
    Vec2::new(-sin, -cos)
}

/// The inseam from knee to crotch point before anything turns it: one sweep, of which the top yields to the crossing.
struct Upper {
    below: CubicBez,
    top: CubicBez,
}

impl Upper {
    /// From `knee`, which it leaves along `up`, to `point`; the sweep would reach it with `lean`, the top with `yielded`.
    fn new(knee: Point, up: Vec2, point: Point, lean: f64, yielded: f64) -> Self {
        let chord = knee.distance(point);
        let (at_knee, at_top) = (up * (HANDLE_AT_KNEE * chord), up_the_leg(lean) * (HANDLE_AT_TOP * chord));
        let sweep = CubicBez::new(knee, knee + at_knee, point - at_top, point);
        let from = 1.0 - (YIELDING / chord).min(0.5);
        let (below, end) = (sweep.subsegment(0.0..from), sweep.subsegment(from..1.0));
        let reach = (end.p3 - end.p2).hypot();
        Self { below, top: CubicBez::new(end.p0, end.p1, point - up_the_leg(yielded) * reach, point) }
    }

    fn length(&self) -> f64 {
        length(&self.below) + length(&self.top)
    }

    /// About how much longer it becomes when its crotch point is brought out to `out`.
    fn longer(&self, out: Point) -> f64 {
        let begun = 1.0 - (RUN_OUT - YIELDING) / self.below.p0.distance(self.below.p3);
        let foot = self.below.eval(begun.max(0.0));
        out.distance(foot) - self.top.p3.distance(foot)
    }
}

impl ForkPlan<'_> {
    /// The direction down the straight centre line.
    fn down(&self) -> Vec2 {
        down(&self.roles)
    }

    /// The sweep of the inseam above the knee with the crotch point at the height `y`, before any parameter; how the
    /// crotch seam leaves the crotch point; and that point when the parameters have brought it out.
    fn upper(&self, y: f64) -> (Upper, Vec2, Point) {
        let (knee, hem) = (self.roles[Role::InnerKnee], self.roles[Role::InnerHem]);
        let base = Point::new(self.roles[Role::CrotchPoint].x, y);
        let point = base - Vec2::new(self.moves.extension + self.moves.width, 0.0);
        let up = unit(knee - hem);
        let chord = base - knee;
        let chord_lean = fork_lean(chord);
        let at_knee = chord_lean - fork_lean(up);
        if self.plan.seams_as_printed {
            let off = self.plan.inseam_bow / (0.375 * (HANDLE_AT_KNEE + HANDLE_AT_TOP) * chord.hypot());
            let (up, lean) = (up_the_leg(chord_lean - off), chord_lean + off);
            let leaving = Vec2::new(1.0, 0.0);
            return (Upper::new(knee, up, base, lean, lean), leaving, point);
        }
        // In the middle of the sweep its two handles hollow it by three eighths of what each stands off the chord.
        let bowed =
            (self.plan.inseam_bow / (0.375 * chord.hypot()) - HANDLE_AT_KNEE * at_knee) / HANDLE_AT_TOP;
        let lean = chord_lean + smooth_max(bowed, LEAST_TURN * at_knee, ROUNDING);
        let slope = self.slope(lean, point);
        let yielded = if self.plan.printed { lean } else { slope - self.tilt };
        let leaving = Vec2::new(slope.cos(), -slope.sin());
        (Upper::new(knee, up, base, lean, yielded), leaving, point)
    }

    /// The inseam, with the crotch point at the height `y` before the thigh turn.
    pub(super) fn inseam(&self, y: f64) -> Inseam {
        let (knee, hem) = (self.roles[Role::InnerKnee], self.roles[Role::InnerHem]);
        let (upper, leaving, point) = self.upper(y);
        let mut inseam = Inseam {
            edge: Chain::of(straight(hem, knee)),
            leaving,
            point,
            turn: Turn::NONE,
            pivot: knee,
            kept: (0, 0.0),
            pivot_above_knee: 0.0,
            sketched_above_knee: 0.0,
        };
        self.turn_upper(&mut inseam, &upper);
        self.run_out(&mut inseam);
        move_leg(&mut inseam.edge, self.moves, &self.levels);
        inseam
    }

    /// The height of the crotch point at which the inseam above the knee is sketched `wanted` long.
    pub(super) fn height_for(&self, wanted: f64) -> f64 {
        let y = self.roles[Role::CrotchPoint].y;
        let (upper, _, out) = self.upper(y);
        y - (upper.length() + upper.longer(out) - wanted) / self.growth(out)
    }

    /// By how much the inseam grows when its crotch point goes down, cm a cm, told by its chord: negative.
    pub(super) fn growth(&self, crotch_point: Point) -> f64 {
        unit(crotch_point - self.roles[Role::InnerKnee]).y
    }

    /// How steeply the crotch seam leaves the crotch point upwards, for an inseam of this lean. Where the bend has no
    /// room for the crossing, the slope is held and the top of the inseam yields.
    fn slope(&self, lean: f64, point: Point) -> f64 {
        if self.plan.printed {
            return 0.0;
        }
        let (start, down) = (self.uncut[Role::CurveStart], down(&self.uncut));
        let point = point - Vec2::new(0.0, self.moves.depth);
        let Some((along, _)) = meet(start, down, point, Vec2::new(1.0, 0.0)) else { return 0.0 };
        let highest = start + down * (HIGHEST_CORNER * along) - point;
        let steepest = (-highest.y).atan2(highest.x);
        let steepest = smooth_min(steepest, STEEPEST_LANDING[self.plan.panel as usize], ROUNDING);
        let slope = smooth_max(smooth_min(lean + self.tilt, steepest, ROUNDING), LEAST_SLOPE, ROUNDING);
        if self.moves.low == 0.0 {
            return slope;
        }
        let Some((along, _)) = meet(start, down, point, Vec2::new(slope.cos(), -slope.sin())) else {
            return slope;
        };
        let corner = start + down * (along + self.moves.low / (0.75 * self.plan.fullness * down.y));
        (point.y - corner.y).atan2(corner.x - point.x)
    }

    /// Turns the part of the inseam above the pivot and smooths it there.
    fn turn_upper(&self, inseam: &mut Inseam, upper: &Upper) {
        let sweep = length(&upper.below);
        let whole = sweep + length(&upper.top);
        let wanted = match self.pivot {
            Pivot::BelowCrotch(reach) => whole - reach,
            Pivot::AboveKnee(above) => above,
        };
        // A leg too short for both limits turns in its middle.
        let above_knee =
            wanted.max(PIVOT_ABOVE_KNEE.min(0.5 * whole)).min(whole - PIVOT_BELOW_CROTCH.min(0.5 * whole));
        inseam.pivot_above_knee = above_knee;
        inseam.sketched_above_knee = whole + upper.longer(inseam.point);
        if self.moves.turn == 0.0 {
            if self.moves.shift_the_inseam() {
                // A shorter piece is moved more closely as the move has it all along.
                let [low, high] = [0.0..0.5, 0.5..1.0].map(|part| upper.below.subsegment(part));
                inseam.edge.push(low);
                inseam.edge.push(high);
            } else {
                inseam.edge.push(upper.below);
            }
            inseam.edge.push(upper.top);
            inseam.kept = (1, whole - sweep);
            return;
        }
        let below = upper.below;
        let at_pivot = t_walked(&below, 0.0, above_knee);
        let pivot = below.eval(at_pivot);
        let turn = Turn::opening(-self.moves.turn, self.opening(inseam).distance(pivot));
        let about = turn.about(pivot);
        let room = above_knee.min(sweep - above_knee);
        let smoothed = PIVOT_SMOOTHED.min(0.9 * room);
        let [from, to] = [-smoothed, smoothed].map(|by| t_walked(&below, at_pivot, by));
        let zone = below.subsegment(from..to);
        for cubic in [
            below.subsegment(0.0..from),
            CubicBez::new(zone.p0, zone.p1, about * zone.p2, about * zone.p3),
            about * below.subsegment(to..1.0),
            about * upper.top,
        ] {
            inseam.edge.push(cubic);
        }
        (inseam.turn, inseam.pivot) = (turn, pivot);
        inseam.kept = (2, whole - above_knee - smoothed);
    }

    /// Where the opening of the thigh turn is measured: the curve's start, or the centre line at the hip where that is
    /// lower.
    fn opening(&self, inseam: &Inseam) -> Point {
        let cut = self.moves.opened_on_the_hip_line().and_then(|opened| self.start_for(inseam, opened));
        let start = cut.map_or(self.roles[Role::CurveStart], |(start, _)| start);
        let hip = self.roles[Role::SideHip].y;
        if hip > start.y { centre_at(&self.roles, hip) } else { start }
    }

    /// Brings the crotch point out, to nothing further down the inseam.
    fn run_out(&self, inseam: &mut Inseam) {
        let top = inseam.edge.end().y;
        let out = |by: f64| inseam.turn.of(Vec2::new(-by, 0.0));
        if self.moves.extension != 0.0 {
            let below = inseam.point_below_crotch(RUN_OUT).y;
            let knots = [Knot { y: top, by: out(self.moves.extension) }, Knot::across(below, 0.0)];
            fade(&mut inseam.edge, &knots);
        }
        if self.moves.width != 0.0 {
            let top = inseam.edge.end().y;
            let knots = [
                Knot { y: top, by: out(self.moves.width) },
                Knot::across(self.roles[Role::InnerKnee].y, 0.0),
            ];
            fade(&mut inseam.edge, &knots);
        }
    }

    /// The crotch curve to this inseam; `None` where the curve has no room.
    pub(super) fn bend(&self, inseam: &Inseam) -> Option<Bend> {
        let (start, down) = (self.roles[Role::CurveStart], self.down());
        let bend = Bend::between(start, down, inseam.point, inseam.leaving, self.plan.fullness)?;
        let turned_bend = if self.moves.turn == 0.0 { bend } else { self.turned_bend(&bend, inseam)? };
        Some(if self.moves.scoop == 0.0 { turned_bend } else { turned_bend.scooped(self.moves.scoop) })
    }

    /// Where the crotch curve starts on a centre line that was cut open on the hip line: so that the seam is longer by what
    /// was opened than it was before. Swept again from a start that had only been turned or dropped, the curve would take
    /// part of the opening back. It starts no nearer to the corner than it stays round; what the seam then lacks is the
    /// second answer, cm, and wanted at the waist.
    pub(super) fn start_for(&self, inseam: &Inseam, opened: f64) -> Option<(Point, f64)> {
        let (point, leaving, fullness) = (inseam.point, inseam.leaving, self.plan.fullness);
        let (uncut, lowered) = (&self.uncut, self.moves.depth);
        let seam = |waist: Point, start: Point, point: Point| {
            let bend = Bend::between(start, unit(start - waist), point, leaving, fullness)?;
            Some(waist.distance(start) + length(&bend.cubic()))
        };
        let point_before = point - Vec2::new(0.0, lowered);
        let before = seam(uncut[Role::CentreWaist], uncut[Role::CurveStart], point_before)?;
        let (arm, _) = meet(uncut[Role::CurveStart], down(uncut), point_before, leaving)?;
        let (waist, first) = (self.roles[Role::CentreWaist], self.roles[Role::CurveStart].y);
        // Nearer to the waist or to the corner there is no curve.
        let (reach, _) = meet(waist, self.down(), point, leaving)?;
        let [highest, lowest] = [waist.y + LEAST_CENTRE, waist.y + self.down().y * (reach - LEAST_ARM)];
        let around = LEAST_CENTRE + 2.0 * opened.abs();
        let at = |y: f64| centre_at(&self.roles, y);
        let missing = |y: f64| seam(waist, at(y), point).map_or(0.0, |length| length - before - opened);
        let found = root_between((first - around).max(highest), (first + around).min(lowest), missing);
        let roundest = waist.y + self.down().y * (reach - ARM_KEPT * arm);
        let y = roundest - at_least_nothing(roundest - found, ARM_LED);
        Some((at(y), if y < found { -missing(y) } else { 0.0 }))
    }

    /// The bend after the thigh turn, swept as it was: its two arms keep their proportion and its handles their fullness.
    /// So it begins a little higher on the centre line, for begun where it was it would turn a corner there; its middle
    /// goes about half of the way that turning it rigidly would carry it.
    fn turned_bend(&self, bend: &Bend, inseam: &Inseam) -> Option<Bend> {
        let leaving = inseam.turn.of(inseam.leaving);
        let (down, point) = (self.down(), inseam.turn.about(inseam.pivot) * bend.c);
        let (along, reach) = meet(bend.a, down, point, leaving)?;
        let corner = bend.a + down * along;
        let arm = bend.a.distance(bend.corner) * reach / bend.c.distance(bend.corner);
        let top = self.roles[Role::CentreWaist];
        let room = top.distance(corner) - LEAST_CENTRE;
        let start = corner - down * smooth_min(arm, room, ROUNDING);
        Bend::between(start, down, point, leaving, bend.fullness)
    }
}

impl Inseam {
    /// The point so far below the crotch point, by arc, before anything is run out.
    fn point_below_crotch(&self, walked: f64) -> Point {
        let (cubics, length) = self.kept;
        if walked < length {
            return self.edge.point_before_end(walked);
        }
        self.edge.point_before(self.edge.cubics().len() - cubics, walked - length)
    }

    /// How far the thigh turn alone carries the crotch point sideways, positive outwards, cm.
    pub(super) fn gain(&self) -> f64 {
        self.point.x - (self.turn.about(self.pivot) * self.point).x
    }
}
