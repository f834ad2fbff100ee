//! The draft as data for programs: the JSON contract.

pub mod batch;
mod cloth;
mod compared;
mod judged;
mod number;
mod path;
mod warning;

pub use cloth::ClothAnswer;
pub use compared::Comparison;
pub use judged::Judged;
pub use number::{Cm, Degrees, Place, Share};
pub use warning::Warning;

use std::borrow::Cow;

use serde::Serialize;

use crate::{
    adjust::Key,
    draft::Draft,
    fit::{JoinRow, Legs, LevelRow, Report, SeamRow, Verdict},
    making::Made,
    mistake::harmless_json,
    pattern::panel_notches,
    recipe,
    terms::{Edge, Level, Measurement, Panel, Role, Side, Word},
};

/// The name of the format in every answer.
pub const FORMAT: &str = "breeks-draft";
/// Raised when a field changes its meaning.
pub const VERSION: u32 = 1;
/// What wrote an answer.
pub const PROGRAM: &str = concat!("breeks ", env!("CARGO_PKG_VERSION"));

/// A whole draft. Lengths in cm to 4 decimals, angles in degrees to 2, y down from the waist line, x from the crease
/// towards the side seam.
#[derive(Serialize)]
pub struct Answer<'a> {
    format: &'static str,
    version: u32,
    program: &'static str,
    #[serde(serialize_with = "by_key")]
    verdict: Verdict,
    reasons: Vec<String>,
    units: &'static str,
    name: &'a str,
    block: &'a str,
    fit: &'static str,
    body: InOrder<BodyValue>,
    adjustments: InOrder<Adjustment>,
    pieces: Vec<PanelOut>,
    levels: Vec<LevelOut>,
    seams: Vec<SeamOut>,
    joins: Vec<JoinOut>,
    crotch: OneOrTwo,
    #[serde(skip_serializing_if = "Option::is_none")]
    construction: Option<Vec<Constructed>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    steps: Option<Vec<StepOut<'a>>>,
    warnings: Vec<Warning>,
}

/// How much of a draft an answer holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Extent {
    /// Everything.
    Whole,
    /// Without edges, outlines and steps: a line of a batch.
    Summary,
}

/// The points of a recipe that one panel is drawn through, by their names, in the panel's own place.
#[derive(Serialize)]
struct Constructed {
    panel: &'static str,
    side: &'static str,
    points: InOrder<Place>,
}

#[derive(Serialize)]
struct BodyValue {
    value: Cm,
    from: &'static str,
    sd: Cm,
}

#[derive(Serialize)]
struct Adjustment {
    value: Cm,
    from: &'static str,
}

#[derive(Serialize)]
struct PanelOut {
    panel: &'static str,
    side: &'static str,
    levels: InOrder<Cm>,
    points: InOrder<Place>,
    #[serde(skip_serializing_if = "Option::is_none")]
    edges: Option<Vec<EdgeOut>>,
    darts: Vec<DartOut>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pleats: Vec<PleatOut>,
    notches: Vec<NotchOut>,
    grain: [Place; 2],
    #[serde(skip_serializing_if = "Option::is_none")]
    sew_outline: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    cut_outline: Option<String>,
}

/// Values by name, in the order of the contract.
struct InOrder<T>(Vec<(Cow<'static, str>, T)>);

/// The crotch budget of legs that are alike, or of the left and the right one.
#[derive(Serialize)]
#[serde(untagged)]
enum OneOrTwo {
    One(CrotchOut),
    Two(Vec<CrotchOut>),
}

impl<T: Serialize> Serialize for InOrder<T> {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.0.iter().map(|(key, value)| (key, value)))
    }
}

#[derive(Serialize)]
struct EdgeOut {
    edge: &'static str,
    path: String,
    length: Cm,
}

#[derive(Serialize)]
struct DartOut {
    edge: &'static str,
    apex: Place,
    legs: [Place; 2],
    intake: Cm,
    length: Cm,
}

#[derive(Serialize)]
struct PleatOut {
    edge: &'static str,
    folds: [[Place; 2]; 2],
    intake: Cm,
}

#[derive(Serialize)]
struct NotchOut {
    edge: &'static str,
    name: &'static str,
    from_start: Cm,
    point: Place,
}

#[derive(Serialize)]
struct LevelOut {
    level: &'static str,
    side: &'static str,
    body: Cm,
    from: &'static str,
    pattern: Cm,
    ease: Cm,
    wanted: [Option<Cm>; 2],
}

#[derive(Serialize)]
struct SeamOut {
    seam: &'static str,
    side: &'static str,
    front: Cm,
    back: Cm,
    difference: Cm,
    allowed: [Cm; 2],
}

#[derive(Serialize)]
struct JoinOut {
    join: &'static str,
    side: &'static str,
    degrees: Degrees,
    wanted: [Degrees; 2],
}

#[derive(Serialize)]
struct CrotchOut {
    side: &'static str,
    front: Cm,
    back: Cm,
    total: Cm,
    #[serde(skip_serializing_if = "Option::is_none")]
    body_total: Option<Cm>,
    #[serde(skip_serializing_if = "Option::is_none")]
    body_from: Option<&'static str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    ease: Option<Cm>,
    wanted: Cm,
    by_parameter: Vec<ParameterShare>,
}

#[derive(Serialize)]
struct ParameterShare {
    key: &'static str,
    front: Cm,
    back: Cm,
}

#[derive(Serialize)]
struct StepOut<'a> {
    panel: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    side: Option<&'static str>,
    number: usize,
    title: &'a str,
    rule: Cow<'a, str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    value: Option<Cm>,
    points: Vec<&'a str>,
}

impl<'a> Answer<'a> {
    /// The answer of what was made of an order.
    pub fn new(made: &'a Made, extent: Extent) -> Self {
        let legs = &made.legs;
        let whole = extent == Extent::Whole;
        let all = legs.iter();
        let first = &legs.first.draft;
        let notices = made.notices();
        let verdict = Verdict::of(&notices);
        let mut crotch: Vec<CrotchOut> = all.clone().map(|leg| crotch(&leg.report, leg.draft.side)).collect();
        Self {
            format: FORMAT,
            version: VERSION,
            program: PROGRAM,
            verdict,
            reasons: verdict.reasons(&notices).map(|notice| notice.text(made.order.units)).collect(),
            units: "cm",
            name: &first.name,
            block: &first.recipe.name,
            fit: first.fit.key(),
            body: InOrder(body(legs)),
            adjustments: InOrder(adjustments(legs)),
            pieces: all
                .clone()
                .flat_map(|leg| Panel::ALL.iter().map(|panel| piece(made, &leg.draft, *panel, whole)))
                .collect(),
            levels: all.clone().flat_map(|leg| leg.report.levels.iter().map(level)).collect(),
            seams: all.clone().flat_map(|leg| &leg.report.seams).chain(&legs.centres).map(seam).collect(),
            joins: all.clone().flat_map(|leg| leg.report.joins.iter().map(join)).collect(),
            crotch: match crotch.pop() {
                Some(one) if crotch.is_empty() => OneOrTwo::One(one),
                last => OneOrTwo::Two(crotch.into_iter().chain(last).collect()),
            },
            construction: whole.then(|| all.clone().flat_map(|leg| constructed(&leg.draft)).collect()),
            steps: whole.then(|| all.clone().flat_map(|leg| steps(&leg.draft)).collect()),
            warnings: Warning::all(notices, made.order.units),
        }
    }

    /// The verdict on what was drafted.
    pub fn verdict(&self) -> Verdict {
        self.verdict
    }

    /// The JSON text, one value on as many lines as a person needs.
    pub fn to_json(&self) -> String {
        // Cannot fail: every key is a string and every number is finite or null.
        harmless_json(serde_json::to_string_pretty(self).unwrap_or_default())
    }
}

/// The recipe's points, before truing and fit parameters; the first belongs to the front.
fn constructed(draft: &Draft) -> Vec<Constructed> {
    let made = &draft.plan.construction;
    let panel = |panel: &Panel| {
        let rule = match panel {
            Panel::Front => Some(&draft.recipe.front),
            Panel::Back => draft.recipe.back.as_ref(),
        };
        let crease = rule.map_or(0.0, |rule| made.points[rule.crease.0].x);
        let own = draft.recipe.steps.iter().filter_map(|step| match step {
            recipe::Step::Point { id, entry, .. } if entry.panel == *panel => Some(*id),
            _ => None,
        });
        let start = (*panel == Panel::Front).then_some(recipe::PointId(0));
        let place = |id: recipe::PointId| {
            let at = made.points[id.0] - kurbo::Vec2::new(crease, 0.0);
            (draft.recipe.point_name(id).to_owned().into(), Place(at))
        };
        let points = InOrder(start.into_iter().chain(own).map(place).collect());
        Constructed { panel: panel.key(), side: draft.side.key(), points }
    };
    Panel::ALL.iter().map(panel).collect()
}

/// The parameters of both legs by their key; where a leg has its own, by its side and key.
fn adjustments(legs: &Legs) -> Vec<(Cow<'static, str>, Adjustment)> {
    let mut rows: Vec<(Cow<'static, str>, Adjustment)> = Vec::new();
    for leg in legs.iter() {
        for it in leg.draft.adjustments.iter().filter(|it| it.value != 0.0) {
            let shared = legs.iter().all(|leg| leg.draft.adjustments.contains(it));
            let key = it.key.key();
            let key =
                if shared { Cow::Borrowed(key) } else { Cow::Owned(format!("{}.{key}", leg.draft.side)) };
            if rows.iter().all(|(known, _)| *known != key) {
                rows.push((key, Adjustment { value: Cm(it.value), from: it.from.key() }));
            }
        }
    }
    rows
}

/// The measurements of both legs by their key; those in which the legs differ by side and key.
fn body(legs: &Legs) -> Vec<(Cow<'static, str>, BodyValue)> {
    let mut rows = Vec::new();
    for measurement in Measurement::ALL {
        let shared = legs
            .iter()
            .all(|leg| leg.draft.body.value(*measurement) == legs.first.draft.body.value(*measurement));
        let shown = legs.iter().take(if shared { 1 } else { 2 });
        for (leg, value) in shown.filter_map(|leg| Some((leg, leg.draft.body.value(*measurement)?))) {
            let key = measurement.key();
            let key = if shared { key.into() } else { format!("{}.{key}", leg.draft.side).into() };
            rows.push((key, BodyValue { value: Cm(value.cm), from: value.from.key(), sd: Cm(value.sd) }));
        }
    }
    rows
}

fn by_key<S: serde::Serializer>(word: &impl Word, serializer: S) -> Result<S::Ok, S::Error> {
    serializer.serialize_str(word.key())
}

fn level(row: &LevelRow) -> LevelOut {
    LevelOut {
        level: row.level.key(),
        side: row.side.key(),
        body: Cm(row.body),
        from: row.from.key(),
        pattern: Cm(row.pattern),
        ease: Cm(row.ease()),
        wanted: [Some(Cm(row.least)), row.most.map(Cm)],
    }
}

fn seam(row: &SeamRow) -> SeamOut {
    SeamOut {
        seam: row.seam.key(),
        side: row.side.key(),
        front: Cm(row.front),
        back: Cm(row.back),
        difference: Cm(row.difference()),
        allowed: [Cm(row.allowed.0), Cm(row.allowed.1)],
    }
}

fn join(row: &JoinRow) -> JoinOut {
    JoinOut {
        join: row.join.key(),
        side: row.side.key(),
        degrees: Degrees(row.degrees),
        wanted: [Degrees(row.wanted.0), Degrees(row.wanted.1)],
    }
}

fn crotch(report: &Report, side: Side) -> CrotchOut {
    CrotchOut {
        side: side.key(),
        front: Cm(report.crotch.front),
        back: Cm(report.crotch.back),
        total: Cm(report.crotch.total()),
        body_total: report.crotch.body.map(|(body, _)| Cm(body)),
        body_from: report.crotch.body.map(|(_, from)| from.key()),
        ease: report.crotch.ease().map(Cm),
        wanted: Cm(report.crotch.wanted),
        by_parameter: report
            .crotch
            .by_parameter
            .iter()
            .map(|row| ParameterShare {
                key: row.key.map_or("together", Key::key),
                front: Cm(row.front),
                back: Cm(row.back),
            })
            .collect(),
    }
}

fn steps(draft: &Draft) -> Vec<StepOut<'_>> {
    draft
        .steps()
        .into_iter()
        .map(|step| StepOut {
            panel: step.panel.key(),
            side: (draft.side != Side::Both).then(|| draft.side.key()),
            number: step.number,
            title: step.title,
            rule: step.rule,
            value: step.value.map(Cm),
            points: step.points,
        })
        .collect()
}

fn piece(made: &Made, draft: &Draft, panel: Panel, whole: bool) -> PanelOut {
    let cut = made.pattern.panel(panel, draft.side).filter(|_| whole);
    let panel = draft.shape.panel(panel);
    let levels =
        Level::ALL.iter().map(|level| (level.key().into(), Cm(draft.shape.levels[*level]))).collect();
    let edge = |edge: &Edge| {
        let chain = panel.edge(*edge);
        let length = Cm(panel.sewn_length(*edge));
        EdgeOut { edge: edge.key(), path: path::open(chain.cubics()), length }
    };
    let [from, to] = panel.grain();
    PanelOut {
        panel: panel.panel.key(),
        side: draft.side.key(),
        levels: InOrder(levels),
        points: InOrder(
            Role::ALL.iter().map(|role| (role.key().into(), Place(panel.roles[*role]))).collect(),
        ),
        edges: whole.then(|| Edge::ALL.iter().map(edge).collect()),
        darts: panel
            .darts
            .iter()
            .map(|dart| DartOut {
                edge: Edge::Waist.key(),
                apex: Place(dart.apex),
                legs: dart.legs.map(Place),
                intake: Cm(dart.intake()),
                length: Cm(dart.length()),
            })
            .collect(),
        pleats: panel
            .pleats
            .iter()
            .map(|pleat| PleatOut {
                edge: Edge::Waist.key(),
                folds: pleat.folds.map(|fold| [Place(fold.p0), Place(fold.p1)]),
                intake: Cm(pleat.intake()),
            })
            .collect(),
        notches: panel_notches(&draft.shape, panel.panel, |_| 0.0)
            .iter()
            .map(|notch| NotchOut {
                edge: notch.edge,
                name: notch.name,
                from_start: Cm(notch.from_start),
                point: Place(notch.point),
            })
            .collect(),
        grain: [Place(from), Place(to)],
        sew_outline: whole.then(|| path::closed(&panel.outline())),
        cut_outline: cut.map(|piece| path::closed(&piece.cut_line)),
    }
}
