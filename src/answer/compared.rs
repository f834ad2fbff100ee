//! What two drafts differ in, as data for programs.

use kurbo::Point;
use serde::Serialize;

use super::{
    number::{Cm, Degrees, Place},
    warning::Warning,
};
use crate::{
    adjust::{Key, Measure},
    fit::{self, Change, Difference, Laid, Overlaid, Verdict},
    mistake::harmless_json,
    terms::{Anchor, Word},
    unit::Unit,
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
    crotch: Vec<CrotchOut>,
    darts: Vec<DartOut>,
}

#[derive(Serialize)]
struct One<'a> {
    what: &'a str,
    name: &'a str,
    block: &'a str,
    fit: &'static str,
    #[serde(serialize_with = "super::by_key")]
    verdict: Verdict,
    warnings: Vec<Warning>,
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
    side: &'static str,
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
    side: &'static str,
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
    /// The comparison of two drafts, leg by leg where a draft has legs that differ; its sentences are for a reader of
    /// `unit`.
    pub fn new(anchor: Anchor, legs: &[Laid<'a>], unit: Unit) -> Self {
        Self {
            format: FORMAT,
            version: VERSION,
            units: "cm",
            anchor: anchor.key(),
            same: legs.iter().all(|leg| leg.difference.is_none()),
            old: one(legs.iter().map(|leg| &leg.old), unit),
            new: one(legs.iter().map(|leg| &leg.new), unit),
            adjustments: rows(legs, |it| &it.parameters, adjustment),
            points: rows(legs, |it| &it.points, point),
            edges: rows(legs, |it| &it.edges, edge),
            seams: rows(legs, |it| &it.seams, seam),
            levels: rows(legs, |it| &it.levels, level),
            crotch: rows(legs, |it| it.crotch.as_slice(), crotch),
            darts: rows(legs, |it| &it.darts, dart),
        }
    }

    /// The JSON text, one value on as many lines as a person needs.
    pub fn to_json(&self) -> String {
        // Cannot fail: every key is a string and every number is finite or null.
        harmless_json(serde_json::to_string_pretty(self).unwrap_or_default())
    }
}

/// One row for each of the rows of every leg.
fn rows<Row, Out>(
    legs: &[Laid<'_>],
    of: fn(&Difference) -> &[Row],
    out: fn(&'static str, &Row) -> Out,
) -> Vec<Out> {
    legs.iter()
        .flat_map(|leg| of(&leg.difference).iter().map(move |row| out(leg.difference.side.key(), row)))
        .collect()
}

fn one<'a, 'b>(legs: impl Iterator<Item = &'b Overlaid<'a>> + Clone, unit: Unit) -> One<'a>
where
    'a: 'b,
{
    let first = legs.clone().next();
    One {
        what: first.map_or("", |one| one.said),
        name: first.map_or("", |one| &one.draft.name),
        block: first.map_or("", |one| &one.draft.recipe.name),
        fit: first.map_or("", |one| one.draft.fit.key()),
        verdict: legs.clone().map(Overlaid::verdict).max().unwrap_or(Verdict::Good),
        warnings: Warning::all(legs.flat_map(Overlaid::notices), unit),
    }
}

fn adjustment(side: &'static str, row: &fit::ParameterChange) -> Adjustment {
    let value = match row.unit() {
        Measure::Cm => Value::Length(lengths(&row.value)),
        Measure::Degrees => Value::Angle(both(&row.value, Degrees)),
    };
    Adjustment { key: row.key.key(), side, value }
}

fn point(side: &'static str, row: &fit::PointChange) -> PointOut {
    let place = places(Some(row.old), Some(row.new));
    PointOut { panel: row.panel.key(), side, point: row.role.key(), place }
}

fn edge(side: &'static str, row: &fit::EdgeChange) -> EdgeOut {
    let (panel, edge) = (row.panel.key(), row.edge.key());
    EdgeOut { panel, side, edge, length: lengths(&row.length), apart: Cm(row.apart) }
}

fn seam(side: &'static str, row: &fit::SeamChange) -> SeamOut {
    SeamOut {
        seam: row.seam.key(),
        side,
        front: lengths(&row.front),
        back: lengths(&row.back),
        difference: lengths(&row.difference),
    }
}

fn level(side: &'static str, row: &fit::LevelChange) -> LevelOut {
    LevelOut {
        level: row.level.key(),
        side,
        below_waist: lengths(&row.depth),
        body: lengths(&row.body),
        pattern: lengths(&row.pattern),
        ease: lengths(&row.ease),
    }
}

fn crotch(side: &'static str, crotch: &fit::CrotchChange) -> CrotchOut {
    let share = |row: &fit::ShareChange| ShareOut {
        key: row.key.map_or("together", Key::key),
        front: lengths(&row.front),
        back: lengths(&row.back),
    };
    CrotchOut {
        side,
        front: lengths(&crotch.front),
        back: lengths(&crotch.back),
        total: lengths(&crotch.total),
        body_total: lengths(&crotch.body),
        ease: lengths(&crotch.ease),
        by_parameter: crotch.by_parameter.iter().map(share).collect(),
    }
}

fn dart(side: &'static str, row: &fit::DartChange) -> DartOut {
    DartOut {
        panel: row.panel.key(),
        side,
        number: row.number,
        intake: lengths(&row.intake),
        length: lengths(&row.length),
        apex: places(row.old_end, row.new_end),
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
