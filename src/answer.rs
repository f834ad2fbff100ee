//! The draft as data for programs: the JSON contract.

pub mod batch;
mod compared;
mod number;
mod path;

pub use compared::Comparison;
pub use number::{Cm, Degrees, Place};

use std::borrow::Cow;

use serde::Serialize;

use crate::{
    adjust::Key,
    draft::{Draft, PanelShape},
    fit::Report,
    mistake::Notice,
    terms::{Edge, Level, Measurement, Panel, Role, Side, Word},
};

/// The name of the format in every answer.
pub const FORMAT: &str = "breeks-draft";
/// Raised when a field changes its meaning.
pub const VERSION: u32 = 1;

/// A whole draft. Lengths in cm to 4 decimals, angles in degrees to 2, y down from the waist line, x from the crease
/// towards the side seam.
#[derive(Serialize)]
pub struct Answer<'a> {
    format: &'static str,
    version: u32,
    units: &'static str,
    name: &'a str,
    block: &'a str,
    fit: &'static str,
    body: InOrder<BodyValue>,
    adjustments: InOrder<Adjustment>,
    pieces: Vec<Piece>,
    levels: Vec<LevelOut>,
    seams: Vec<SeamOut>,
    joins: Vec<JoinOut>,
    crotch: CrotchOut,
    #[serde(skip_serializing_if = "Option::is_none")]
    steps: Option<Vec<StepOut<'a>>>,
    warnings: Vec<Notice>,
}

/// How much of a draft an answer holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Extent {
    /// Everything.
    Whole,
    /// Without edges, outlines and steps: a line of a batch.
    Summary,
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
struct Piece {
    panel: &'static str,
    side: &'static str,
    levels: InOrder<Cm>,
    points: InOrder<Place>,
    #[serde(skip_serializing_if = "Option::is_none")]
    edges: Option<Vec<EdgeOut>>,
    darts: Vec<DartOut>,
    notches: Vec<NotchOut>,
    grain: [Place; 2],
    #[serde(skip_serializing_if = "Option::is_none")]
    sew_outline: Option<String>,
}

/// Values by name, in the order of the contract.
struct InOrder<T>(Vec<(&'static str, T)>);

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
    number: usize,
    title: &'a str,
    rule: Cow<'a, str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    value: Option<Cm>,
    points: Vec<&'a str>,
}

impl<'a> Answer<'a> {
    /// The answer for a draft and its report.
    pub fn new(draft: &'a Draft, report: &Report, extent: Extent) -> Self {
        let whole = extent == Extent::Whole;
        Self {
            format: FORMAT,
            version: VERSION,
            units: "cm",
            name: &draft.name,
            block: &draft.recipe.name,
            fit: draft.fit.key(),
            body: body(draft),
            adjustments: adjustments(draft),
            pieces: Panel::ALL.iter().map(|panel| piece(draft, draft.shape.panel(*panel), whole)).collect(),
            levels: report
                .levels
                .iter()
                .map(|row| LevelOut {
                    level: row.level.key(),
                    side: row.side.key(),
                    body: Cm(row.body),
                    from: row.from.key(),
                    pattern: Cm(row.pattern),
                    ease: Cm(row.ease()),
                    wanted: [Some(Cm(row.least)), row.most.map(Cm)],
                })
                .collect(),
            seams: report
                .seams
                .iter()
                .map(|row| SeamOut {
                    seam: row.seam.key(),
                    side: row.side.key(),
                    front: Cm(row.front),
                    back: Cm(row.back),
                    difference: Cm(row.difference()),
                    allowed: [Cm(row.allowed.0), Cm(row.allowed.1)],
                })
                .collect(),
            joins: report
                .joins
                .iter()
                .map(|row| JoinOut {
                    join: row.join.key(),
                    side: row.side.key(),
                    degrees: Degrees(row.degrees),
                    wanted: [Degrees(row.wanted.0), Degrees(row.wanted.1)],
                })
                .collect(),
            crotch: CrotchOut {
                side: Side::Both.key(),
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
            },
            steps: whole.then(|| {
                draft
                    .steps()
                    .into_iter()
                    .map(|step| StepOut {
                        panel: step.panel.key(),
                        number: step.number,
                        title: step.title,
                        rule: step.rule,
                        value: step.value.map(Cm),
                        points: step.points,
                    })
                    .collect()
            }),
            warnings: draft.notices.iter().cloned().chain(report.notices()).collect(),
        }
    }

    /// The JSON text, one value on as many lines as a person needs.
    pub fn to_json(&self) -> String {
        // Cannot fail: every key is a string and every number is finite or null.
        serde_json::to_string_pretty(self).unwrap_or_default()
    }
}

fn adjustments(draft: &Draft) -> InOrder<Adjustment> {
    let given = draft
        .adjustments
        .iter()
        .filter(|it| it.value != 0.0)
        .map(|it| (it.key.key(), Adjustment { value: Cm(it.value), from: it.from }));
    InOrder(given.collect())
}

fn body(draft: &Draft) -> InOrder<BodyValue> {
    let known = Measurement::ALL.iter().filter_map(|measurement| {
        let value = draft.body.value(*measurement)?;
        let out = BodyValue { value: Cm(value.cm), from: value.from.key(), sd: Cm(value.sd) };
        Some((measurement.key(), out))
    });
    InOrder(known.collect())
}

fn piece(draft: &Draft, panel: &PanelShape, whole: bool) -> Piece {
    let levels = Level::ALL.iter().map(|level| (level.key(), Cm(draft.shape.levels[*level]))).collect();
    let edge = |edge: &Edge| {
        let chain = panel.edge(*edge);
        let length = match edge {
            Edge::Waist => panel.sewn_waist_length(),
            _ => chain.length(),
        };
        EdgeOut { edge: edge.key(), path: path::open(chain.pieces()), length: Cm(length) }
    };
    let [from, to] = panel.grain();
    Piece {
        panel: panel.panel.key(),
        side: Side::Both.key(),
        levels: InOrder(levels),
        points: InOrder(Role::ALL.iter().map(|role| (role.key(), Place(panel.roles[*role]))).collect()),
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
        notches: panel
            .notches
            .iter()
            .map(|notch| NotchOut {
                edge: notch.edge.key(),
                name: notch.name,
                from_start: Cm(notch.from_start),
                point: Place(notch.point),
            })
            .collect(),
        grain: [Place(from), Place(to)],
        sew_outline: whole.then(|| path::closed(&panel.outline())),
    }
}
