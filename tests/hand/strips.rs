//! The strips: every correction done again from its printed figures alone.
//!
//! What is not printed is a rule that the key page says once: the curve keeps its direction at the crotch point, or turns
//! with its part; the last 7 cm of an inseam whose top moves are led to it at the old direction; run-outs are S-shaped;
//! darts stand where they stood along the waist, as long as they were, back darts square to it and front darts plumb; the
//! waist is one sweep with the darts folded, square to the centre.

use std::sync::OnceLock;

use breeks::{
    adjust::{Key, Parameters},
    draft::{PanelShape, Plan, Shape, draft, shape},
    hand::{Step, Work, works},
    order::{DEMOS, Order, demo},
    recipe::load,
    terms::{Edge, Panel, Word},
    unit::Unit,
};
use kurbo::{Point, Vec2};

use crate::{
    closing::{Leg, Sheet},
    paper::{
        Line, arriving, blended, crossing, cut, distance_to, drawn, leaving, length, long, opening_angle,
        place, produced, redrawn, ruled, run_out, slid, swept, swung, turned, turned_line, walk_to_level,
    },
};

/// So much of an inseam whose top moves is led to the curve again, cm.
const LED: f64 = 7.0;
/// A seam is swept so far on both sides of a pivot, and of a level cut, cm.
const AT_PIVOT: f64 = 4.0;
const AT_CUT: f64 = 5.0;

/// A panel under the hands: what it was, and what a later action refers to.
struct Bench {
    was: Sheet,
    sheet: Sheet,
    /// From here the start of the curve is measured.
    reference: Point,
    /// How the curve leaves the crotch point.
    rising: Vec2,
}

impl Bench {
    fn new(sheet: &Sheet) -> Self {
        Self {
            was: sheet.clone(),
            sheet: sheet.clone(),
            reference: sheet.curve_start,
            rising: -arriving(&sheet.curve),
        }
    }

    fn act(&mut self, step: &Step) {
        let sheet = &mut self.sheet;
        match step {
            Step::Slash { reach, opens } => {
                let pin = place(&sheet.inseam, length(&sheet.inseam) - reach);
                let hip = sheet.centre_hip();
                let from = if hip.y > sheet.curve_start.y { hip } else { sheet.curve_start };
                let angle = -opening_angle(*opens, from.distance(pin));
                let (below, above) = cut(&sheet.inseam, length(&sheet.inseam) - reach);
                sheet.inseam = blended(&below, &turned_line(&above, pin, angle), AT_PIVOT, AT_PIVOT);
                self.rising = swung(self.rising, angle);
            }
            Step::Wedge { from_centre: true, opens } => {
                let (hinge, centre) = (sheet.side_hip(), sheet.centre_hip());
                let angle = opening_angle(*opens, hinge.distance(centre));
                let (above, below) = cut(&sheet.side, walk_to_level(&sheet.side, sheet.hip));
                let above = turned_line(&above, hinge, angle);
                let (mut side, _) = cut(&above, length(&above) - AT_CUT);
                let (_, rest) = cut(&below, AT_CUT);
                let half_way = swung(leaving(&below), 0.5 * angle);
                let (from, to) = (side[side.len() - 1], rest[0]);
                side.extend(&swept(from, arriving(&side), hinge, half_way)[1..]);
                side.extend(&swept(hinge, half_way, to, leaving(&rest))[1..]);
                side.extend(&rest[1..]);
                sheet.side = side;
                sheet.centre_waist = turned(sheet.centre_waist, hinge, angle);
                sheet.curve_start = turned(sheet.curve_start, hinge, angle);
                self.reference = turned(centre, hinge, angle);
            }
            // What it opens is stood back: the next action says where all lies.
            Step::Wedge { from_centre: false, .. } => {}
            Step::Across { opens } => {
                let down = Vec2::new(0.0, *opens);
                self.reference = sheet.centre_hip();
                let (above, below) = cut(&sheet.side, walk_to_level(&sheet.side, sheet.hip));
                sheet.side = blended(&above, &slid(&below, down), AT_CUT, AT_CUT);
                sheet.inseam = slid(&sheet.inseam, down);
                sheet.hem = slid(&sheet.hem, down);
                sheet.knee += opens;
            }
            Step::StoodBack { by } => {
                *sheet = self.was.clone();
                sheet.centre_waist -= sheet.down() * *by;
                self.reference = sheet.curve_start;
            }
            Step::SideStraightUp { by } => {
                *sheet = self.was.clone();
                let (hip, knee) = (sheet.hip, sheet.knee);
                sheet.side =
                    redrawn(&sheet.side, |y| Vec2::new(0.0, -by * run_out((knee - y) / (knee - hip))));
            }
            Step::Swung { at_waist, at_side } => {
                let pin = sheet.centre_hip();
                let angle = opening_angle(*at_waist, pin.distance(sheet.centre_waist));
                sheet.centre_waist = turned(sheet.centre_waist, pin, angle);
                sheet.curve_start = turned(sheet.curve_start, pin, angle);
                self.reference = sheet.curve_start;
                let (top, hip) = (sheet.side[0].y, sheet.hip);
                sheet.side =
                    redrawn(&sheet.side, |y| Vec2::new(at_side * run_out((hip - y) / (hip - top)), 0.0));
            }
            Step::Widened { by } => {
                let out = Vec2::new(-by, 0.0);
                sheet.centre_waist += out;
                sheet.curve_start += out;
                self.reference += out;
            }
            Step::Fork { out, up, nothing } => fork(sheet, *out, *up, *nothing),
            Step::Lowered { by } => {
                for dart in &mut sheet.darts {
                    dart.length += by;
                }
            }
            Step::Curve { starts_up, depth, rises, .. } => {
                if let Some(degrees) = rises {
                    let angle = degrees.to_radians();
                    self.rising = Vec2::new(angle.cos(), -angle.sin());
                }
                curve(sheet, self.reference, self.rising, *starts_up, *depth);
            }
            Step::CentreRaised { by } => {
                sheet.centre_waist -= sheet.down() * *by;
                sheet.raised[0] += by;
            }
            Step::SideRaised { by } => {
                sheet.side = produced(&sheet.side, *by);
                sheet.raised[1] += by;
            }
            Step::CentreUp { by } => sheet.centre_waist -= sheet.down() * *by,
            Step::SideUp { by } => sheet.side = produced(&sheet.side, *by),
            Step::SideOut { by } => {
                let (top, hip) = (sheet.side[0].y, sheet.hip);
                sheet.side = redrawn(&sheet.side, |y| Vec2::new(by * run_out((hip - y) / (hip - top)), 0.0));
            }
            Step::Moved(fade) => {
                let line = if fade.edge == Edge::SideSeam { &mut sheet.side } else { &mut sheet.inseam };
                *line = redrawn(line, |y| Vec2::new(fade.by_at(y), 0.0));
                sheet.hem = ruled(*sheet.side.last().unwrap(), sheet.inseam[0]);
            }
            Step::Hem { up } => {
                let (side, inner) = (sheet.hem[0].x, sheet.hem.last().unwrap().x);
                sheet.hem = redrawn_across(&sheet.hem, |x| {
                    let part = (x - side) / (inner - side);
                    Vec2::new(0.0, -up * 4.0 * part * (1.0 - part))
                });
            }
            Step::Waist { darts, corner } => waist(sheet, &self.was, darts, *corner),
        }
    }
}

fn redrawn_across(line: &[Point], by: impl Fn(f64) -> Vec2) -> Line {
    line.iter().map(|point| *point + by(point.x)).collect()
}

fn fork(sheet: &mut Sheet, out: f64, up: f64, nothing: Option<f64>) {
    let (knee, top) = (sheet.knee, sheet.crotch_point().y);
    let reach = arriving(&sheet.inseam);
    let slid = redrawn(&sheet.inseam, |y| Vec2::new(0.0, -up * ((knee - y) / (knee - top)).max(0.0)));
    let top = slid[slid.len() - 1].y;
    let bottom = nothing.map_or(knee, |walked| place(&slid, length(&slid) - walked).y);
    let run = redrawn(&slid, |y| Vec2::new(-out * run_out((bottom - y) / (bottom - top)), 0.0));
    let (mut inseam, _) = cut(&run, length(&run) - LED);
    let sweep = swept(inseam[inseam.len() - 1], arriving(&inseam), run[run.len() - 1], reach);
    inseam.extend(&sweep[1..]);
    sheet.inseam = inseam;
}

/// Swept from its start on the centre line to the crotch point, so deep under its chord.
fn curve(sheet: &mut Sheet, reference: Point, rising: Vec2, starts_up: f64, depth: f64) {
    let down = sheet.down();
    let start = reference - down * starts_up;
    let end = sheet.crotch_point();
    let corner = crossing(start, down, end, rising);
    let chord = long(end - start);
    // A cubic with both handles a part `k` of the way to the corner lies three quarters of `k` as deep as the corner.
    let k = depth / (0.75 * chord.cross(corner - start).abs());
    sheet.curve_start = start;
    sheet.curve = drawn(&[kurbo::CubicBez::new(start, start.lerp(corner, k), end.lerp(corner, k), end)]);
}

fn corner_of(sheet: &Sheet) -> f64 {
    let last = sheet.waist.last().unwrap();
    let (back, down) = (-arriving(last), leaving(&sheet.side));
    back.cross(down).atan2(back.dot(down)).abs()
}

/// Drawn again, the darts as wide at the waist as printed.
fn waist(sheet: &mut Sheet, was: &Sheet, darts: &[f64], corner: Option<f64>) {
    let corner = corner.map_or_else(|| corner_of(was), f64::to_radians);
    let towards_centre = swung(leaving(&sheet.side), corner);
    let rise = towards_centre.y.atan2(-towards_centre.x);
    sheet.set_darts(0.0);
    sheet.draw_waist(rise);
    for _ in 0..6 {
        for (index, wanted) in darts.iter().enumerate() {
            let legs = sheet.waist[index].last().unwrap().distance(sheet.waist[index + 1][0]);
            sheet.darts[index].intake += wanted - legs;
        }
        sheet.draw_waist(rise);
    }
}

/// The greatest distance of the paper from the draft, and where.
fn greatest(sheet: &Sheet, shape: &PanelShape) -> (f64, String) {
    let mut seam: Line = sheet.curve.iter().rev().copied().collect();
    seam.extend(ruled(sheet.curve_start, sheet.centre_waist));
    let mut worst = (0.0, String::new());
    let mut look = |name: &str, paper: &[Point], draft: &[Point]| {
        let off = apart(paper, draft);
        if off > worst.0 {
            worst = (off, name.to_owned());
        }
    };
    look("side", &sheet.side, &drawn(shape.side_seam.cubics()));
    look("hem", &sheet.hem, &drawn(shape.hem.cubics()));
    look("inseam", &sheet.inseam, &drawn(shape.inseam.cubics()));
    look("crotch", &seam, &drawn(shape.crotch_seam.cubics()));
    let legs: Vec<[Point; 2]> = shape.darts.iter().map(|dart| dart.legs).collect();
    let parts = shape.waist.cubics().iter().filter(|piece| !legs.contains(&[piece.p0, piece.p3]));
    for (part, paper) in parts.zip(&sheet.waist) {
        look("waist", paper, &drawn(&[*part]));
    }
    for (dart, drafted) in sheet.darts.iter().zip(&shape.darts) {
        look("dart end", &[dart.end, dart.end], &[drafted.apex, drafted.apex]);
    }
    worst
}

fn apart(one: &[Point], other: &[Point]) -> f64 {
    let thin = |line: &[Point], every: usize| -> Line {
        let mut thin: Line = line.iter().step_by(every).copied().collect();
        thin.push(line[line.len() - 1]);
        thin
    };
    let far = |from: &[Point], to: &[Point]| {
        let to = thin(to, 6);
        thin(from, 24).iter().map(|point| distance_to(*point, &to)).fold(0.0, f64::max)
    };
    far(one, other).max(far(other, one))
}

struct Body {
    name: String,
    plan: Plan,
    base: Shape,
}

fn bodies() -> &'static [Body] {
    static BODIES: OnceLock<Vec<Body>> = OnceLock::new();
    BODIES.get_or_init(|| {
        let by = |block: &'static str| {
            DEMOS.iter().map(move |name| {
                let (order, _) =
                    Order::read_with(&demo(name).unwrap(), &["trousers.fit=proportional".to_owned()])
                        .unwrap();
                let plan = draft(&order, &load(block).unwrap()).unwrap().plan;
                let base = shape(&plan, &Parameters::default());
                Body { name: format!("{block}, {name}"), plan, base }
            })
        };
        by("classic").chain(by("jeans")).collect()
    })
}

/// The base outline with what is done to it, and the draft that it should be.
fn done(body: &Body, key: Key, value: f64, unit: Unit) -> Vec<(Panel, f64, String, Vec<Work>)> {
    let plain = Parameters::default();
    let after = match key {
        Key::ThighFrontReach => {
            plain.with(Key::ThighFront, Key::ThighFront.about().ordinary).with(key, value)
        }
        _ => plain.with(key, value),
    };
    let drafted = shape(&body.plan, &after);
    let all = works(key, (&plain, &body.base), (&after, &drafted), unit);
    let constructed =
        |plan: &breeks::draft::PanelPlan| (plan.roles[breeks::terms::Role::SideWaist], plan.intake);
    let paper = Leg::read(&body.base, [constructed(&body.plan.front), constructed(&body.plan.back)]);
    Panel::ALL
        .iter()
        .map(|panel| {
            let mut bench = Bench::new(paper.sheet(*panel));
            for step in all.iter().filter(|work| work.panel == *panel).flat_map(|work| &work.steps) {
                bench.act(step);
            }
            let (off, at) = greatest(&bench.sheet, drafted.panel(*panel));
            (*panel, off, at, all.clone())
        })
        .collect()
}

/// An amount that a tape of the unit shows.
fn amount(key: Key, unit: Unit) -> f64 {
    let ordinary = key.about().ordinary;
    match (key, unit) {
        (Key::SeatAngle, _) | (_, Unit::Cm) => ordinary,
        (_, Unit::Inch) => (ordinary / 2.54 * 8.0).round() / 8.0 * 2.54,
    }
}

#[test]
fn outlines_from_printed_figures_alone() {
    let mut wrong = Vec::new();
    for (unit, within) in [(Unit::Cm, 0.1), (Unit::Inch, 0.14)] {
        for key in Key::ALL {
            for body in bodies() {
                for (panel, off, at, all) in done(body, *key, amount(*key, unit), unit) {
                    if std::env::var_os("HAND_ALL").is_some() {
                        println!("{unit} {key:24} {panel:6} {:18} {off:.3} {at}", body.name);
                    }
                    if off > within {
                        wrong.push(format!(
                            "{unit} {key} {panel}, {}: {off:.3} at the {at}: {:?}",
                            body.name,
                            all.iter().filter(|work| work.panel == panel).collect::<Vec<_>>()
                        ));
                    }
                }
            }
        }
    }
    crate::compare::report(&wrong);
}

#[test]
fn strips_that_tell_the_draft_with_a_correction_from_the_one_without() {
    for body in bodies() {
        for key in Key::ALL.iter().filter(|key| **key != Key::ThighFrontReach) {
            let after = Parameters::default().with(*key, amount(*key, Unit::Cm));
            let drafted = shape(&body.plan, &after);
            let all = works(*key, (&Parameters::default(), &body.base), (&after, &drafted), Unit::Cm);
            assert!(!all.is_empty(), "{}: {key} without an action", body.name);
        }
    }
}
