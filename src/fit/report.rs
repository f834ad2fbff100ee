//! The numbers that decide the fit before cloth is cut.

use crate::{
    adjust::{Key, Parameters},
    body::{Body, Origin},
    curve::{Fault, angle_between, soundness},
    draft::{self, PanelShape, Plan, Shape, least_over_heel},
    mistake::{Notice, Severity},
    terms::{EaseAt, Edge, Join, Level, Measurement, Panel, Seam, Side},
    voice::{Sentence, Value, amount, angles, degrees, length},
};

/// A level of the pattern against the body.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LevelRow {
    /// Which level.
    pub level: Level,
    /// Which leg.
    pub side: Side,
    /// The body's girth there, cm. At the hem: round heel and bend of the foot, which it must let through.
    pub body: f64,
    /// Where that girth is from.
    pub from: Origin,
    /// The pattern's girth there, cm.
    pub pattern: f64,
    /// The least ease that is a fit, cm.
    pub least: f64,
    /// The most ease that is a fit; `None` where there is no most.
    pub most: Option<f64>,
}

impl LevelRow {
    /// Pattern minus body, cm.
    pub fn ease(&self) -> f64 {
        self.pattern - self.body
    }

    /// The pattern is tighter there than a fit allows.
    pub fn is_tight(&self) -> bool {
        self.ease() < self.least - ROUNDING
    }

    /// The pattern is looser there than the style calls for.
    pub fn is_loose(&self) -> bool {
        self.most.is_some_and(|most| self.ease() > most + ROUNDING)
    }
}

/// A seam walked front against back.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SeamRow {
    /// Which seam.
    pub seam: Seam,
    /// Which leg.
    pub side: Side,
    /// Length on the front, cm.
    pub front: f64,
    /// Length on the back, cm.
    pub back: f64,
    /// The least and most that the back may be longer, cm.
    pub allowed: (f64, f64),
}

impl SeamRow {
    /// Back minus front, cm.
    pub fn difference(&self) -> f64 {
        self.back - self.front
    }

    /// The two sides can be sewn together.
    pub fn holds(&self) -> bool {
        (self.allowed.0 - ROUNDING..=self.allowed.1 + ROUNDING).contains(&self.difference())
    }
}

/// Two outlines where they meet when sewn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct JoinRow {
    /// Which join.
    pub join: Join,
    /// Which leg.
    pub side: Side,
    /// The angle between the two, degrees.
    pub degrees: f64,
    /// The least and most that sews without a peak or a dip, degrees.
    pub wanted: (f64, f64),
}

impl JoinRow {
    /// No peak and no dip.
    pub fn holds(&self) -> bool {
        (self.wanted.0 - ROUNDING..=self.wanted.1 + ROUNDING).contains(&self.degrees)
    }
}

/// The crotch seam against the body's crotch length.
#[derive(Clone, Debug, PartialEq)]
pub struct CrotchBudget {
    /// Front crotch seam, cm.
    pub front: f64,
    /// Back crotch seam, cm.
    pub back: f64,
    /// The body's total crotch length, cm, and where it is from.
    pub body: Option<(f64, Origin)>,
    /// By how much that may be wrong, cm.
    pub spread: f64,
    /// The least ease with which the style is a fit, cm.
    pub least: f64,
    /// The ease the recipe or the file asks for, cm.
    pub wanted: f64,
    /// What each parameter gives; the last row is what they give only together.
    pub by_parameter: Vec<CrotchShare>,
}

/// What one fit parameter gives to the crotch seam: the draft with all parameters minus the draft without this one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CrotchShare {
    /// The parameter; `None` for what is left of the sum of all, which they give only together.
    pub key: Option<Key>,
    /// On the front, cm.
    pub front: f64,
    /// On the back, cm.
    pub back: f64,
}

impl CrotchBudget {
    /// Front and back together, cm.
    pub fn total(&self) -> f64 {
        self.front + self.back
    }

    /// Pattern minus body, cm.
    pub fn ease(&self) -> Option<f64> {
        self.body.map(|(body, _)| self.total() - body)
    }

    /// The least ease that is not held against the draft, cm: that of the style and never under none; less by what an
    /// estimate of the crotch length may be wrong.
    pub fn least_judged(&self) -> f64 {
        let estimated = self.body.is_some_and(|(_, from)| from == Origin::Estimated);
        self.least.max(0.0) - if estimated { self.spread } else { 0.0 }
    }

    /// How much weight it has that the crotch seam is short.
    ///
    /// Under the least ease of its style, and always where it is shorter than the body at all, a toile has to show it. Shorter than the body, by more than the tape may be
    /// wrong, it can neither be pulled up nor sat in. Where the body was estimated, it is first taken to be shorter by
    /// its spread: the estimate of nobody in particular forbids nothing that fits many.
    pub fn shortness(&self) -> Severity {
        let Some((_, from)) = self.body else { return Severity::Note };
        let Some(ease) = self.ease() else { return Severity::Note };
        let likely = if from == Origin::Estimated { ease + self.spread } else { ease };
        // The hair that nobody sees does not excuse a seam that is shorter than the body.
        let unseen = UNSEEN_EASE.min(self.least.max(0.0));
        if likely + self.spread < 0.0 {
            Severity::NotToCut
        } else if ease < self.least_judged() - unseen - ROUNDING {
            Severity::Mind
        } else {
            Severity::Note
        }
    }

    /// That the crotch seam is short; `None` where it is not.
    fn notice(&self) -> Option<Notice> {
        let severity = self.shortness();
        let ((body, from), ease) = self.body.zip(self.ease()).filter(|_| severity != Severity::Note)?;
        let by_a_hair = (ease - self.least).abs() < A_HAIR;
        let said = match (from == Origin::Estimated, by_a_hair) {
            (true, false) => {
                "the crotch seam is {seam}, the crotch length {body}, estimated, give or take {spread}: {ease} of ease, the \
                 least that fits is {least}; measure `total_crotch_length`"
            }
            (true, true) => {
                "the crotch seam is {seam}, the crotch length {body}, estimated, give or take {spread}: a hair less than \
                 the {least} of ease that fits; measure `total_crotch_length`"
            }
            (false, false) => {
                "the crotch seam is {seam}, the crotch length {body}: {ease} of ease, the least that fits is {least}"
            }
            (false, true) => {
                "the crotch seam is {seam}, the crotch length {body}: a hair less than the {least} of ease that fits"
            }
        };
        let notice = Notice::mind("crotch-short", said)
            .with("seam", length(self.total()))
            .with("body", length(body))
            .with("least", length(self.least));
        let notice = if by_a_hair { notice } else { notice.with("ease", length(ease)) };
        let notice =
            if from == Origin::Estimated { notice.with("spread", length(self.spread)) } else { notice };
        Some(Notice { severity, ..notice })
    }
}

/// A draft judged.
#[derive(Clone, Debug, PartialEq)]
pub struct Report {
    /// From the waist down.
    pub levels: Vec<LevelRow>,
    /// Inseam and side seam.
    pub seams: Vec<SeamRow>,
    /// Crotch, side waist, centres.
    pub joins: Vec<JoinRow>,
    /// The crotch length.
    pub crotch: CrotchBudget,
    /// Panels whose outline cannot be cut.
    pub faults: Vec<(Panel, Fault)>,
    /// Panels whose crotch curve has no room between the centre line and the inseam.
    pub cramped: Vec<Panel>,
    /// Levels above the hem that do not cross both panels from edge to edge.
    pub missed: Vec<Level>,
    /// Where the heel does not pass a closed leg: the knee or the hem.
    pub no_passage: Vec<Level>,
}

/// Rounding of the arithmetic, which judges nothing.
const ROUNDING: f64 = 1e-6;
/// Less ease than the least by so little, cm, is no fault of a fit: nobody cuts or sews closer.
const UNSEEN_EASE: f64 = 0.1;
/// Short by less, cm, and the figures that are printed are the same.
const A_HAIR: f64 = 0.05;
/// Seams that are equal may differ by this, cm.
const EQUAL_SEAMS: f64 = 0.1;
/// The most by which a back inseam may be shorter, to be stretched, cm.
const MOST_STRETCH: f64 = 0.9;

impl Report {
    /// Judges the drawn panels against the body for which they were planned.
    pub fn of(plan: &Plan, parameters: &Parameters, shape: &Shape, body: &Body) -> Self {
        let mut report = Self::without_shares(plan, shape, body);
        report.crotch.by_parameter = by_parameter(plan, parameters, shape);
        report
    }

    /// The same without what each parameter gives to the crotch seam, which takes another draft for each.
    pub(super) fn without_shares(plan: &Plan, shape: &Shape, body: &Body) -> Self {
        let levels = levels(plan, shape, body);
        Self {
            missed: missed(shape),
            no_passage: no_passage(plan, &levels, body),
            levels,
            seams: seams(shape),
            joins: joins(shape),
            crotch: CrotchBudget {
                front: shape.front.measured_crotch_length(),
                back: shape.back.measured_crotch_length(),
                body: body.value(Measurement::TotalCrotchLength).map(|value| (value.cm, value.from)),
                spread: body.value(Measurement::TotalCrotchLength).map_or(0.0, |value| value.sd),
                least: plan.wanted[EaseAt::CrotchLength].0,
                wanted: plan.inputs.ease[EaseAt::CrotchLength],
                by_parameter: Vec::new(),
            },
            faults: [&shape.front, &shape.back]
                .into_iter()
                .filter_map(|panel| soundness(&panel.outline()).map(|fault| (panel.panel, fault)))
                .collect(),
            cramped: [&shape.front, &shape.back]
                .into_iter()
                .filter(|panel| !panel.has_room)
                .map(|panel| panel.panel)
                .collect(),
        }
    }

    /// The same report, of one leg.
    #[must_use]
    pub fn of_side(mut self, side: Side) -> Self {
        self.levels.iter_mut().for_each(|row| row.side = side);
        self.seams.iter_mut().for_each(|row| row.side = side);
        self.joins.iter_mut().for_each(|row| row.side = side);
        self
    }

    /// The outlines are sound and the seams and joins true.
    pub fn is_true(&self) -> bool {
        self.faults.is_empty()
            && self.cramped.is_empty()
            && self.seams.iter().all(SeamRow::holds)
            && self.joins.iter().all(JoinRow::holds)
    }

    /// What a person should know before cutting.
    pub fn notices(&self) -> Vec<Notice> {
        let mut notices = Vec::new();
        for (panel, fault) in &self.faults {
            let (what, at) = match fault {
                Fault::Open(at) => ("is not closed", at),
                Fault::Crossing(at) => ("crosses itself", at),
            };
            notices.push(
                Notice::not_to_cut(
                    "outline-unsound",
                    "the {panel} outline {what} {across} from the crease, {down} below the waist line: do not cut it",
                )
                .with("panel", *panel)
                .with("what", what)
                .with("across", length(at.x))
                .with("down", length(at.y)),
            );
        }
        for panel in &self.cramped {
            let said = "the {panel} crotch curve has no room between the centre line and the inseam";
            notices.push(Notice::not_to_cut("outline-unsound", said).with("panel", *panel));
        }
        for row in self.seams.iter().filter(|row| !row.holds()) {
            notices.push(
                Notice::not_to_cut(
                    "seam-untrue",
                    "the {seam} is {front} on the front and {back} on the back: the two do not sew together",
                )
                .with("seam", row.seam)
                .with("front", length(row.front))
                .with("back", length(row.back)),
            );
        }
        for row in self.joins.iter().filter(|row| !row.holds()) {
            notices.push(
                Notice::not_to_cut(
                    "join-untrue",
                    "the {join} join stands at {degrees}, wanted {wanted}: sewn, it shows a peak or a dip",
                )
                .with("join", row.join)
                .with("degrees", degrees(row.degrees))
                .with("wanted", angles(row.wanted)),
            );
        }
        for level in &self.missed {
            notices.push(
                Notice::not_to_cut(
                    "level-missed",
                    "the {level} line does not cross both panels: so drawn they are no leg",
                )
                .with("level", *level),
            );
        }
        for level in &self.no_passage {
            notices.push(
                Notice::not_to_cut(
                    "no-passage",
                    "the heel does not pass the closed leg at the {level}: leave a slit there, or sew a cloth that \
                     stretches and name it under `cloth_stretch`",
                )
                .with("level", *level),
            );
        }
        for row in self.levels.iter().filter(|row| row.is_tight() && row.level != Level::Hem) {
            let notice = if (row.ease() - row.least).abs() < A_HAIR {
                let said =
                    "too tight at the {level}, by a hair: the least ease that fits on {body} is {least}";
                Notice::not_to_cut("level-tight", said)
            } else {
                let said =
                    "too tight at the {level}: {ease} of ease on {body}, the least that fits is {least}";
                Notice::not_to_cut("level-tight", said).with("ease", length(row.ease()))
            };
            notices.push(
                notice
                    .with("level", row.level)
                    .with("body", length(row.body))
                    .with("least", length(row.least))
                    .then(remedy(row)),
            );
        }
        notices.extend(self.crotch.notice());
        notices
    }
}

/// What gives a level that is too tight its room, and how much of it.
fn remedy(row: &LevelRow) -> Sentence {
    let lacks = row.least - row.ease();
    let flat = 0.5 * (row.body + row.least);
    match row.level {
        Level::Knee => {
            Sentence::new("; `trousers.style.knee_width` {flat} would do").with("flat", at_least(flat))
        }
        Level::Calf => Sentence::new("; `leg.calf` {lacks} would do, or a wider `trousers.style.knee_width`")
            .with("lacks", at_least(lacks)),
        Level::Thigh => {
            Sentence::new("; `thigh.outer` {half} more would do").with("half", at_least(0.5 * lacks))
        }
        Level::Waist | Level::Hip | Level::Crotch | Level::Hem => Sentence::new(""),
    }
}

/// Rounded up, so that what is typed is enough.
fn at_least(cm: f64) -> Value {
    amount((cm * 10.0).ceil() / 10.0)
}

/// The share of each parameter in the crotch seam.
fn by_parameter(plan: &Plan, parameters: &Parameters, shape: &Shape) -> Vec<CrotchShare> {
    let seams = |shape: &Shape| (shape.front.measured_crotch_length(), shape.back.measured_crotch_length());
    let (front, back) = seams(shape);
    let mut shares: Vec<CrotchShare> = parameters
        .set()
        .filter(|(key, _)| key.about().default == 0.0)
        .map(|(key, _)| {
            let (without_front, without_back) = seams(&draft::shape(plan, &parameters.without(key)));
            CrotchShare { key: Some(key), front: front - without_front, back: back - without_back }
        })
        .collect();
    if shares.len() > 1 {
        let (plain_front, plain_back) = seams(&draft::shape(plan, &Parameters::default()));
        let sum = |of: fn(&CrotchShare) -> f64| shares.iter().map(of).sum::<f64>();
        let (given_front, given_back) = (sum(|share| share.front), sum(|share| share.back));
        shares.push(CrotchShare {
            key: None,
            front: front - plain_front - given_front,
            back: back - plain_back - given_back,
        });
    }
    shares
}

fn levels(plan: &Plan, shape: &Shape, body: &Body) -> Vec<LevelRow> {
    let chords =
        |level| Some(shape.front.chord(shape.levels[level])? + shape.back.chord(shape.levels[level])?);
    let within = |at: EaseAt| plan.wanted[at];
    let rows = [
        (
            Level::Waist,
            Measurement::WaistGirth,
            Some(2.0 * (shape.front.measured_waist_length() + shape.back.measured_waist_length())),
            within(EaseAt::Waist),
        ),
        (Level::Hip, Measurement::HipGirth, chords(Level::Hip).map(|leg| 2.0 * leg), within(EaseAt::Hip)),
        (Level::Thigh, Measurement::ThighGirth, chords(Level::Thigh), within(EaseAt::Thigh)),
        (Level::Knee, Measurement::KneeGirth, chords(Level::Knee), within(EaseAt::Knee)),
        (Level::Calf, Measurement::CalfGirth, chords(Level::Calf), within(EaseAt::Calf)),
        (
            Level::Hem,
            Measurement::HeelGirth,
            chords(Level::Hem),
            (least_over_heel(plan.cloth_stretch, body), None),
        ),
    ];
    rows.into_iter()
        .filter_map(|(level, measurement, pattern, (least, most))| {
            let value = body.value(measurement)?;
            Some(LevelRow {
                level,
                side: Side::Both,
                body: value.cm,
                from: value.from,
                pattern: pattern?,
                least,
                most,
            })
        })
        .collect()
}

/// Levels that miss a panel; those below the hem of short trousers have nothing to cross.
fn missed(shape: &Shape) -> Vec<Level> {
    let hem = shape.levels[Level::Hem];
    [Level::Hip, Level::Thigh, Level::Knee, Level::Calf, Level::Hem]
        .into_iter()
        .filter(|level| shape.levels[*level] <= hem)
        .filter(|level| {
            let y = shape.levels[*level];
            shape.front.chord(y).is_none() || shape.back.chord(y).is_none()
        })
        .collect()
}

fn no_passage(plan: &Plan, levels: &[LevelRow], body: &Body) -> Vec<Level> {
    let Some(heel) = body.cm(Measurement::HeelGirth) else { return Vec::new() };
    let least = heel + least_over_heel(plan.cloth_stretch, body);
    levels
        .iter()
        .filter(|row| matches!(row.level, Level::Knee | Level::Hem) && row.pattern < least - ROUNDING)
        .map(|row| row.level)
        .collect()
}

fn seams(shape: &Shape) -> Vec<SeamRow> {
    let row = |seam, edge, allowed| SeamRow {
        seam,
        side: Side::Both,
        front: shape.front.edge(edge).length(),
        back: shape.back.edge(edge).length(),
        allowed,
    };
    vec![
        row(Seam::Inseam, Edge::Inseam, (-MOST_STRETCH, EQUAL_SEAMS)),
        row(Seam::SideSeam, Edge::SideSeam, (-EQUAL_SEAMS, EQUAL_SEAMS)),
    ]
}

fn joins(shape: &Shape) -> Vec<JoinRow> {
    let crossing =
        |panel: &PanelShape| angle_between(-panel.inseam.end_tangent(), panel.crotch_seam.start_tangent());
    let side =
        |panel: &PanelShape| angle_between(-panel.waist.end_tangent(), panel.side_seam.start_tangent());
    let centre =
        |panel: &PanelShape| angle_between(panel.waist.start_tangent(), -panel.crotch_seam.end_tangent());
    let row = |join, radians: f64, wanted| JoinRow {
        join,
        side: Side::Both,
        degrees: radians.to_degrees(),
        wanted,
    };
    vec![
        row(Join::Crotch, crossing(&shape.front) + crossing(&shape.back), (176.0, 184.0)),
        row(Join::SideWaist, side(&shape.front) + side(&shape.back), (176.0, 184.0)),
        row(Join::CentreFront, centre(&shape.front), (87.0, 93.0)),
        row(Join::CentreBack, centre(&shape.back), (87.0, 93.0)),
    ]
}
