//! The actions of a correction on one body, with their figures measured on two drafts and rounded as they are printed.

use kurbo::{ParamCurve, Point, Vec2};

use super::{
    Cut, Height, Part, Redrawn, act,
    opening::{Opening, distance, run},
};
use crate::{
    adjust::{Key, Measure, Parameters},
    curve::{Turn, turned, unit},
    draft::{FRONT_RUN_OUT, FULLEST, LENS_ABOVE_HIP, Levels, PanelShape, RUN_OUT, Shape},
    terms::{Edge, Level, Panel, Role, Word},
    unit::{CM_PER_INCH, Unit},
};

/// A correction on one panel.
#[derive(Clone, Debug, PartialEq)]
pub struct Work {
    /// The panel.
    pub panel: Panel,
    /// The cut it begins with.
    pub cut: Option<Cut>,
    /// What is done, in this order. All numbers are cm, rounded as they are printed.
    pub steps: Vec<Step>,
}

/// An edge moved sideways at heights and run out between them.
#[derive(Clone, Debug, PartialEq)]
pub struct Fade {
    /// The edge.
    pub edge: Edge,
    /// Going down: the height, how far down that is from the waist line, and how far the edge moves towards the side.
    pub at: Vec<(Height, f64, f64)>,
}

/// One action, in cm as printed.
#[derive(Clone, Debug, PartialEq)]
pub enum Step {
    /// Cut from the start of the crotch curve (the hip line where that is lower) to the inseam `reach` below the crotch
    /// point; turn the inner part outwards about the end of the cut until it stands open, and sweep the inseam there.
    Slash {
        /// From the crotch point along the inseam to the pivot.
        reach: f64,
        /// Open at the start of the cut; lapped where negative.
        opens: f64,
    },
    /// Cut level on the hip line to a hinge, turn the part above and sweep the side seam across the cut.
    Wedge {
        /// From the centre to a hinge at the side; else from the side to a hinge at the centre.
        from_centre: bool,
        /// Open at the start of the cut; lapped where negative.
        opens: f64,
    },
    /// Cut level on the hip line right across, slide the part below down and sweep the side seam across the gap.
    Across {
        /// Open; lapped where negative.
        opens: f64,
    },
    /// The centre on its old line again, longer at the top, and the side on its own.
    StoodBack {
        /// How much longer.
        by: f64,
    },
    /// The centre on its old line again; the side seam from the hip line up straight above where it was, run out to
    /// nothing at the knee.
    SideStraightUp {
        /// How far up.
        by: f64,
    },
    /// The centre line above the hip line swung about that line, the top of the side seam moved sideways with it.
    Swung {
        /// How far the top of the centre swings out.
        at_waist: f64,
        /// How far the top of the side seam goes towards the fork, to nothing at the hip line.
        at_side: f64,
    },
    /// Centre line and start of the curve out.
    Widened {
        /// How far.
        by: f64,
    },
    /// The crotch point moved out and up, and the inseam run out to nothing below it; the last of the inseam is led to
    /// the curve at the old angle.
    Fork {
        /// Away from the panel.
        out: f64,
        /// Up; down where negative.
        up: f64,
        /// How far down the inseam it comes to nothing sideways; `None`: at the knee line.
        nothing: Option<f64>,
    },
    /// The ends of the darts straight down.
    Lowered {
        /// How far.
        by: f64,
    },
    /// The crotch curve swept again: tangent to the centre line, and to its old direction at the crotch point (turned
    /// with the part where that was turned).
    Curve {
        /// How far above where it began, or above the upper end of the cut, it begins now; below where negative.
        starts_up: f64,
        /// Whether that is measured from the cut.
        from_cut: bool,
        /// How deep it lies under the straight line between its ends.
        depth: f64,
        /// How steeply it rises from the crotch point, degrees, where that is not the old direction.
        rises: Option<f64>,
    },
    /// The top of the centre raised along the centre line; the darts keep their ends.
    CentreRaised {
        /// How far; down where negative.
        by: f64,
    },
    /// The top of the side seam raised along the side seam; the darts keep their ends.
    SideRaised {
        /// How far; down where negative.
        by: f64,
    },
    /// The top of the centre up along the centre line, with what hangs from it.
    CentreUp {
        /// How far; down where negative.
        by: f64,
    },
    /// The top of the side seam along the side seam, with what hangs from it.
    SideUp {
        /// How far; down where negative.
        by: f64,
    },
    /// The side seam out at the waist, to nothing at the hip line.
    SideOut {
        /// How far; inwards where negative.
        by: f64,
    },
    /// An edge moved sideways.
    Moved(Fade),
    /// The hem up in the middle, to nothing at the seams.
    Hem {
        /// How far; down where negative.
        up: f64,
    },
    /// The waist drawn again, square to the centre, in one sweep with the darts folded; the darts stand where they stood
    /// along it, as long as before.
    Waist {
        /// How wide the darts are, from the centre.
        darts: Vec<f64>,
        /// The corner of waist and side seam, degrees, where it is not the old one.
        corner: Option<f64>,
    },
}

/// What the hand does to come from one draft to another that differs in one parameter, on the leading panel first. Empty
/// where nothing is seen.
pub fn works(key: Key, was: (&Parameters, &Shape), is: (&Parameters, &Shape), unit: Unit) -> Vec<Work> {
    // The place of a pivot is seen where the front is slashed.
    let amount = if key == Key::ThighFrontReach { Key::ThighFront } else { key };
    let by = is.0[amount] - was.0[amount];
    let wanted = is.0[Key::ThighFrontReach];
    let (was, is) = (was.1, is.1);
    let parts = act(key);
    let rest = Panel::ALL.iter().filter(|panel| parts.iter().all(|part| part.panel != **panel));
    let follows = rest.map(|panel| Part { panel: *panel, cut: None, redrawn: &[] });
    parts
        .iter()
        .copied()
        .chain(follows)
        .filter_map(|part| {
            let measured = Measured {
                key,
                by,
                was: was.panel(part.panel),
                is: is.panel(part.panel),
                levels: &was.levels,
                reach: printed(reach(was, part.panel, wanted), unit),
                unit,
            };
            let leads = part.cut.is_some() || !part.redrawn.is_empty();
            let steps = if leads || measured.is_touched() { measured.steps(&part) } else { Vec::new() };
            (!steps.is_empty()).then_some(Work { panel: part.panel, cut: part.cut, steps })
        })
        .collect()
}

/// Less than this is not seen on paper, cm.
const SEEN: f64 = 0.05;

struct Measured<'a> {
    key: Key,
    by: f64,
    was: &'a PanelShape,
    is: &'a PanelShape,
    levels: &'a Levels,
    reach: f64,
    unit: Unit,
}

/// Rounded as a tape shows it.
fn printed(cm: f64, unit: Unit) -> f64 {
    let step = match unit {
        Unit::Cm => 0.1,
        Unit::Inch => CM_PER_INCH / 16.0,
    };
    (cm / step).round() * step
}

impl Measured<'_> {
    fn printed(&self, cm: f64) -> f64 {
        printed(cm, self.unit)
    }

    /// The amount, which is printed finer in cm.
    fn amount(&self) -> f64 {
        match (self.key.about().unit, self.unit) {
            (Measure::Degrees, _) => self.by,
            (Measure::Cm, Unit::Cm) => (100.0 * self.by).round() / 100.0,
            (Measure::Cm, Unit::Inch) => self.printed(self.by),
        }
    }

    /// Whether anything of the panel moves by as much as a pencil shows.
    fn is_touched(&self) -> bool {
        /// A millimetre, cm.
        const TOUCHED: f64 = 0.1;
        Edge::ALL.iter().any(|edge| {
            let (old, new) = (run(self.was.edge(*edge)), run(self.is.edge(*edge)));
            new.iter().any(|point| distance(*point, &old) > TOUCHED)
        })
    }

    fn steps(&self, part: &Part) -> Vec<Step> {
        let mut hand = Hand::of(self.was);
        let mut steps = Vec::new();
        if let Some(cut) = part.cut {
            steps.push(self.cut(cut, &mut hand));
        }
        for redrawn in part.redrawn {
            self.redraw(*redrawn, &mut hand, &mut steps);
        }
        self.trued(part, &hand, &mut steps);
        steps
    }

    fn cut(&self, cut: Cut, hand: &mut Hand) -> Step {
        let amount = self.amount();
        let (step, opens) = match cut {
            Cut::Slash { laps } => {
                let opens = if laps { -amount } else { amount };
                (Step::Slash { reach: self.reach, opens }, opens)
            }
            Cut::FromCentre | Cut::FromSide => {
                (Step::Wedge { from_centre: cut == Cut::FromCentre, opens: amount }, amount)
            }
            Cut::Across => (Step::Across { opens: amount }, amount),
        };
        let motion = Opening::of(self.was, cut, opens, self.reach).motion;
        match cut {
            Cut::Slash { .. } => {
                hand.fork = motion * hand.fork;
                hand.rising = motion * hand.rising.to_point() - motion * Point::ORIGIN;
            }
            Cut::FromCentre | Cut::FromSide => {
                hand.centre = motion * hand.centre;
                hand.side = motion * hand.side;
                hand.start = motion * self.was.roles[Role::CentreHip];
            }
            Cut::Across => {
                hand.fork = motion * hand.fork;
                hand.start = self.was.roles[Role::CentreHip];
            }
        }
        step
    }

    fn redraw(&self, redrawn: Redrawn, hand: &mut Hand, steps: &mut Vec<Step>) {
        let (was, amount) = (self.was, self.amount());
        let old = |role: Role| was.roles[role];
        match redrawn {
            Redrawn::StoodBack => {
                *hand = Hand::of(was);
                hand.centre += hand.up() * amount;
                steps.push(Step::StoodBack { by: amount });
            }
            Redrawn::SideStraightUp => {
                *hand = Hand::of(was);
                hand.side.y -= amount;
                steps.push(Step::SideStraightUp { by: amount });
            }
            Redrawn::Swung => {
                let hinge = old(Role::CentreHip);
                let swing = |point: Point| hinge + turned(point - hinge, amount.to_radians());
                let at_waist = self.printed(swing(hand.centre).distance(hand.centre)).copysign(amount);
                let at_side = self.printed(self.is.side_seam.start().x - hand.side.x);
                let turn = Turn::opening(at_waist, hinge.distance(hand.centre)).about(hinge);
                hand.centre = turn * hand.centre;
                hand.start = turn * hand.start;
                hand.side.x += at_side;
                steps.push(Step::Swung { at_waist, at_side });
            }
            Redrawn::Widened => {
                for point in [&mut hand.centre, &mut hand.start, &mut hand.fork] {
                    point.x -= amount;
                }
                steps.push(Step::Widened { by: amount });
            }
            Redrawn::ForkOut => hand.fork.x -= amount,
            Redrawn::Deepened => {}
            Redrawn::Lowered => steps.push(Step::Lowered { by: amount }),
            Redrawn::CentreRaised => {
                hand.centre += hand.up() * amount;
                steps.push(Step::CentreRaised { by: amount });
            }
            Redrawn::SideRaised => {
                hand.side = self.along_the_side(amount);
                steps.push(Step::SideRaised { by: amount });
            }
            Redrawn::WaistShared(_) => {}
            Redrawn::HemBent(part) => steps.push(Step::Hem { up: part * amount }),
            Redrawn::Shifted(edge, knots) => {
                let at = knots
                    .iter()
                    .map(|(height, part)| (*height, self.height(*height), self.printed_part(part * amount)))
                    .collect();
                let fade = Fade { edge, at };
                if edge == Edge::SideSeam {
                    hand.side.x += fade.by_at(hand.side.y);
                }
                steps.push(Step::Moved(fade));
            }
        }
    }

    /// The amount itself as it is given, a part of it as a tape shows it.
    fn printed_part(&self, cm: f64) -> f64 {
        if (cm.abs() - self.amount().abs()).abs() < 1e-9 { cm } else { self.printed(cm) }
    }

    /// The place so far up the side seam, produced where it ends.
    fn along_the_side(&self, up: f64) -> Point {
        if up < 0.0 {
            return self.was.side_seam.point_at(-up);
        }
        self.was.side_seam.start() - unit(self.was.side_seam.start_tangent()) * up
    }

    /// How far below the waist line a height lies.
    fn height(&self, height: Height) -> f64 {
        let level = |level: Level| self.levels[level];
        let top = self.was.side_seam.start().y;
        let hip = level(Level::Hip);
        match height {
            Height::SideWaist => top,
            Height::AboveHip => hip - self.printed(LENS_ABOVE_HIP.min(0.5 * (hip - top))),
            Height::Hip => hip,
            Height::Crotch => level(Level::Crotch),
            Height::Fork => level(Level::Crotch).max(self.was.roles[Role::CrotchPoint].y),
            Height::Fullest => level(Level::Crotch) + FULLEST,
            Height::LensEnd => level(Level::Crotch) + FULLEST + FRONT_RUN_OUT,
            Height::Knee => level(Level::Knee),
            Height::Calf => level(Level::Calf),
            Height::Hem => level(Level::Hem),
        }
    }

    /// What the draft shows beside the act itself: the crotch point that follows, the curve, the ends of the waist, the
    /// darts.
    fn trued(&self, part: &Part, hand: &Hand, steps: &mut Vec<Step>) {
        let (was, is) = (self.was, self.is);
        let does = |what: &[Redrawn]| part.redrawn.iter().any(|redrawn| what.contains(redrawn));
        let drafted = Hand::of(is);
        let (out, widened) = (does(&[Redrawn::ForkOut]), does(&[Redrawn::Widened]));
        let up = self.printed(hand.fork.y - drafted.fork.y);
        let follows = (hand.fork.y - drafted.fork.y).abs() >= SEEN && up != 0.0;
        if out || widened || follows {
            steps.push(Step::Fork {
                out: if out || widened { self.amount() } else { 0.0 },
                up: if follows { up } else { 0.0 },
                nothing: out.then_some(RUN_OUT),
            });
        }
        if part.cut.is_some_and(|cut| cut != Cut::FromSide) && !does(&[Redrawn::StoodBack])
            || out
            || follows
            || does(&[Redrawn::Swung, Redrawn::Widened, Redrawn::Deepened, Redrawn::Lowered])
            || curve_moved(was, is)
        {
            let from_cut = matches!(part.cut, Some(Cut::FromCentre | Cut::Across));
            steps.push(self.curve(hand, &drafted, from_cut));
        }
        let centre_up = (drafted.centre - hand.centre).dot(drafted.up());
        if centre_up.abs() >= SEEN {
            steps.push(Step::CentreUp { by: self.printed(centre_up) });
        }
        // The top of the side seam: sideways to nothing at the hip, then along the seam.
        let top = drafted.side - hand.side;
        let down = unit(is.side_seam.start_tangent());
        let along = if does(&[Redrawn::SideRaised]) { 0.0 } else { -top.y / down.y };
        let across = if does(&[Redrawn::SideRaised]) { 0.0 } else { top.x + along * down.x };
        if across.abs() >= SEEN {
            steps.push(Step::SideOut { by: self.printed(across) });
        }
        if along.abs() >= SEEN {
            steps.push(Step::SideUp { by: self.printed(along) });
        }
        self.waist(hand, steps);
    }

    fn curve(&self, hand: &Hand, drafted: &Hand, from_cut: bool) -> Step {
        /// A direction is drawn as it was unless it differs by more, radians.
        const SAME: f64 = 0.026;
        let starts_up = self.printed((drafted.start - hand.start).dot(drafted.up()));
        let differs = hand.rising.cross(drafted.rising).atan2(hand.rising.dot(drafted.rising));
        let slope = (-drafted.rising.y).atan2(drafted.rising.x).to_degrees();
        Step::Curve {
            starts_up,
            from_cut,
            depth: self.printed(depth(self.is, hand.start + drafted.up() * starts_up)),
            rises: (differs.abs() > SAME).then(|| slope.round()),
        }
    }

    fn waist(&self, hand: &Hand, steps: &mut Vec<Step>) {
        let (was, is) = (self.was, self.is);
        let moved = |a: Point, b: Point| a.distance(b) >= SEEN;
        let intakes = |panel: &PanelShape| panel.darts.iter().map(|dart| dart.intake()).collect::<Vec<_>>();
        let (old, new) = (intakes(was), intakes(is));
        let darts = old.iter().zip(&new).any(|(a, b)| (a - b).abs() >= SEEN)
            || was.darts.iter().zip(&is.darts).any(|(a, b)| moved(a.apex, b.apex));
        let ends =
            moved(was.waist.start(), is.waist.start()) || moved(was.side_seam.start(), is.side_seam.start());
        if !darts && !ends && hand.centre == Hand::of(was).centre {
            return;
        }
        let corner = |panel: &PanelShape| {
            let (back, down) = (-panel.waist.end_tangent(), panel.side_seam.start_tangent());
            back.cross(down).atan2(back.dot(down)).abs().to_degrees()
        };
        let (before, after) = (corner(was), corner(is));
        steps.push(Step::Waist {
            darts: new.iter().map(|intake| self.printed(*intake)).collect(),
            corner: ((before - after).abs() >= 0.5).then(|| after.round()),
        });
    }
}

/// The points that an act moves, as far as it says itself.
struct Hand {
    centre: Point,
    side: Point,
    start: Point,
    fork: Point,
    /// How the curve leaves the crotch point.
    rising: Vec2,
}

impl Hand {
    fn of(panel: &PanelShape) -> Self {
        Self {
            centre: panel.crotch_seam.end(),
            side: panel.side_seam.start(),
            start: panel.roles[Role::CurveStart],
            fork: panel.inseam.end(),
            rising: unit(panel.crotch_seam.start_tangent()),
        }
    }

    /// Up along the centre line.
    fn up(&self) -> Vec2 {
        unit(self.centre - self.start)
    }
}

impl Fade {
    /// How far the edge moves at a height, towards the side.
    pub fn by_at(&self, y: f64) -> f64 {
        let by = |(_, _, by): &(Height, f64, f64)| *by;
        let Some(below) = self.at.iter().position(|(_, at, _)| *at > y) else {
            return self.at.last().map_or(0.0, by);
        };
        if below == 0 {
            return self.at.first().map_or(0.0, by);
        }
        let ((_, high, from), (_, low, to)) = (self.at[below - 1], self.at[below]);
        let part = (y - high) / (low - high);
        from + (to - from) * part * part * (3.0 - 2.0 * part)
    }
}

/// How deep the crotch curve lies under the straight line from a place, which is about its start, to the crotch point: so
/// what rounding that place did is made up for.
fn depth(panel: &PanelShape, start: Point) -> f64 {
    let fork = panel.inseam.end();
    let chord = unit(fork - start);
    let Some(curve) = panel.crotch_seam.cubics().first() else { return 0.0 };
    (1..100).map(|part| chord.cross(curve.eval(f64::from(part) / 100.0) - start).abs()).fold(0.0, f64::max)
}

fn curve_moved(was: &PanelShape, is: &PanelShape) -> bool {
    let deep = |panel: &PanelShape| depth(panel, panel.roles[Role::CurveStart]);
    (deep(was) - deep(is)).abs() >= SEEN
        || was.roles[Role::CurveStart].distance(is.roles[Role::CurveStart]) >= SEEN
        || was.inseam.end().distance(is.inseam.end()) >= SEEN
}

/// How far below the crotch point, along the inseam, the pivot of a slash lies on a panel: the front's as the parameter
/// has it, the back's level with it, walked up from the knee.
fn reach(shape: &Shape, panel: Panel, wanted: f64) -> f64 {
    /// The pivot stays this far above the knee.
    const ABOVE_KNEE: f64 = 5.0;
    let above_knee =
        |panel: &PanelShape| panel.inseam.length() - panel.inseam.walk_to_level(shape.levels[Level::Knee]).0;
    let pivot = (above_knee(&shape.front) - wanted).max(ABOVE_KNEE);
    above_knee(shape.panel(panel)) - pivot
}
