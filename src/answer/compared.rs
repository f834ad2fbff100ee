//! What two drafts differ in, as data for programs.

use kurbo::Point;
use serde::Serialize;

use super::number::{Cm, Degrees, Place};
use crate::{
    adjust::{Key, Measure},
    fit::{self, Change, Compared, Difference},
    mistake::Notice,
    terms::Word,
};

/// The name of the format in every comparison.
const FORMAT: &str = "breeks-compare";
/// Raised when a field changes its meaning.
const VERSION: u32 = 1;

/// Two drafts laid over each other: only what changed, lengths in cm to 4 decimals, angles in degrees to 2. A number is
/// given as `old`, `new` and `by`, which is new minus old; `null` where a draft has no such thing. Points lie from the
/// crease towards the side seam and down from the line on which the drafts are laid over each other.
#[derive(Serialize)]
pub struct Comparison<'a> {
    format: &'static str,
    version: u32,
    units: &'static str,
    anchor: &'static str,
    same: bool,
    old: One<'a>,
    new: One<'a>,
    adjustments: Vec<Adjustment>,
    points: Vec<PointOut>,
    edges: Vec<EdgeOut>,
    seams: Vec<SeamOut>,
    levels: Vec<LevelOut>,
    crotch: Option<CrotchOut>,
    darts: Vec<DartOut>,
}

#[derive(Serialize)]
struct One<'a> {
    what: &'a str,
    name: &'a str,
    block: &'a str,
    fit: &'static str,
    can_be_cut: bool,
    warnings: Vec<Notice>,
}

#[derive(Serialize)]
struct Both<T> {
    old: Option<T>,
    new: Option<T>,
    by: Option<T>,
}

#[derive(Serialize)]
#[serde(untagged)]
enum Value {
    Length(Both<Cm>),
    Angle(Both<Degrees>),
}

#[derive(Serialize)]
struct Adjustment {
    key: &'static str,
    value: Value,
}

#[derive(Serialize)]
struct PointOut {
    panel: &'static str,
    side: &'static str,
    point: &'static str,
    place: Both<Place>,
}

#[derive(Serialize)]
struct EdgeOut {
    panel: &'static str,
    side: &'static str,
    edge: &'static str,
    length: Both<Cm>,
    apart: Cm,
}

#[derive(Serialize)]
struct SeamOut {
    seam: &'static str,
    side: &'static str,
    front: Both<Cm>,
    back: Both<Cm>,
    difference: Both<Cm>,
}

#[derive(Serialize)]
struct LevelOut {
    level: &'static str,
    side: &'static str,
    below_waist: Both<Cm>,
    body: Both<Cm>,
    pattern: Both<Cm>,
    ease: Both<Cm>,
}

#[derive(Serialize)]
struct CrotchOut {
    front: Both<Cm>,
    back: Both<Cm>,
    total: Both<Cm>,
    body_total: Both<Cm>,
    ease: Both<Cm>,
    by_parameter: Vec<ShareOut>,
}

#[derive(Serialize)]
struct ShareOut {
    key: &'static str,
    front: Both<Cm>,
    back: Both<Cm>,
}

#[derive(Serialize)]
struct DartOut {
    panel: &'static str,
    side: &'static str,
    number: usize,
    intake: Both<Cm>,
    length: Both<Cm>,
    apex: Both<Place>,
}

impl<'a> Comparison<'a> {
    /// The comparison of two drafts.
    pub fn new(difference: &Difference, old: &Compared<'a>, new: &Compared<'a>) -> Self {
        Self {
            format: FORMAT,
            version: VERSION,
            units: "cm",
            anchor: difference.anchor.key(),
            same: difference.is_none(),
            old: one(old),
            new: one(new),
            adjustments: difference
                .parameters
                .iter()
                .map(|row| Adjustment {
                    key: row.key.key(),
                    value: match row.unit() {
                        Measure::Cm => Value::Length(lengths(&row.value)),
                        Measure::Degrees => Value::Angle(both(&row.value, Degrees)),
                    },
                })
                .collect(),
            points: difference
                .points
                .iter()
                .map(|row| PointOut {
                    panel: row.panel.key(),
                    side: row.side.key(),
                    point: row.role.key(),
                    place: places(Some(row.old), Some(row.new)),
                })
                .collect(),
            edges: difference
                .edges
                .iter()
                .map(|row| EdgeOut {
                    panel: row.panel.key(),
                    side: row.side.key(),
                    edge: row.edge.key(),
                    length: lengths(&row.length),
                    apart: Cm(row.apart),
                })
                .collect(),
            seams: difference
                .seams
                .iter()
                .map(|row| SeamOut {
                    seam: row.seam.key(),
                    side: row.side.key(),
                    front: lengths(&row.front),
                    back: lengths(&row.back),
                    difference: lengths(&row.difference),
                })
                .collect(),
            levels: difference
                .levels
                .iter()
                .map(|row| LevelOut {
                    level: row.level.key(),
                    side: row.side.key(),
                    below_waist: lengths(&row.depth),
                    body: lengths(&row.body),
                    pattern: lengths(&row.pattern),
                    ease: lengths(&row.ease),
                })
                .collect(),
            crotch: difference.crotch.as_ref().map(crotch),
            darts: difference
                .darts
                .iter()
                .map(|row| DartOut {
                    panel: row.panel.key(),
                    side: row.side.key(),
                    number: row.number,
                    intake: lengths(&row.intake),
                    length: lengths(&row.length),
                    apex: places(row.old_end, row.new_end),
                })
                .collect(),
        }
    }

    /// The JSON text, one value on as many lines as a person needs.
    pub fn to_json(&self) -> String {
        // Cannot fail: every key is a string and every number is finite or null.
        serde_json::to_string_pretty(self).unwrap_or_default()
    }
}

fn one<'a>(compared: &Compared<'a>) -> One<'a> {
    let draft = compared.draft;
    One {
        what: compared.said,
        name: &draft.name,
        block: &draft.recipe.name,
        fit: draft.fit.key(),
        can_be_cut: compared.report.can_be_cut(),
        warnings: draft.notices.iter().cloned().chain(compared.report.notices()).collect(),
    }
}

fn crotch(crotch: &fit::CrotchChange) -> CrotchOut {
    CrotchOut {
        front: lengths(&crotch.front),
        back: lengths(&crotch.back),
        total: lengths(&crotch.total),
        body_total: lengths(&crotch.body),
        ease: lengths(&crotch.ease),
        by_parameter: crotch
            .by_parameter
            .iter()
            .map(|row| ShareOut {
                key: row.key.map_or("together", Key::key),
                front: lengths(&row.front),
                back: lengths(&row.back),
            })
            .collect(),
    }
}

fn lengths(change: &Change) -> Both<Cm> {
    both(change, Cm)
}

fn both<T>(change: &Change, printed: fn(f64) -> T) -> Both<T> {
    Both { old: change.old.map(printed), new: change.new.map(printed), by: change.by().map(printed) }
}

fn places(old: Option<Point>, new: Option<Point>) -> Both<Place> {
    let by = old.zip(new).map(|(old, new)| Place((new - old).to_point()));
    Both { old: old.map(Place), new: new.map(Place), by }
}
