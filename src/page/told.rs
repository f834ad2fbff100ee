//! What the sheet is told. The draft itself is the JSON contract of [`Answer`], unchanged.

use kurbo::{BezPath, Shape as _};
use serde::Serialize;

use super::asked::Refusal;
use crate::{
    answer::{Answer, Extent},
    draft::Draft,
    drawing::path_data,
    making::Made,
    order::{Fitting, Order},
    paper::{arrow_heads, crease, inside, notches},
    terms::{Panel, Word},
};

/// A draft of the file with changes.
#[derive(Serialize)]
pub(super) struct Drawn<'a> {
    pub edition: u64,
    pub file: File<'a>,
    pub draft: Answer<'a>,
    pub marks: Vec<Marks>,
}

/// What is drawn within a panel besides its edges, as path data in the panel's own place.
#[derive(Serialize)]
pub(super) struct Marks {
    panel: &'static str,
    side: &'static str,
    inside: String,
    crease: String,
    notches: String,
}

impl Marks {
    /// Those of every panel, in the order of the answer's pieces.
    pub(super) fn of(made: &Made) -> Vec<Self> {
        /// Strokes of notches and arrow heads, cm.
        const STROKE: f64 = 1.2;
        let data = |path: &BezPath| path_data(path, 3);
        let of_panel = |draft: &Draft, panel: Panel| {
            let shape = draft.shape.panel(panel);
            let mut crease = crease(shape).to_path(0.1);
            crease.extend(arrow_heads(shape, STROKE));
            Self {
                panel: panel.key(),
                side: draft.side.key(),
                inside: data(&inside(shape)),
                crease: data(&crease),
                notches: data(&notches(shape, STROKE)),
            }
        };
        made.legs
            .iter()
            .flat_map(|leg| Panel::ALL.iter().map(move |panel| of_panel(&leg.draft, *panel)))
            .collect()
    }
}

/// What the file says besides the draft.
#[derive(Serialize)]
pub(super) struct File<'a> {
    name: &'a str,
    saved: bool,
    units: &'static str,
    block: &'a str,
    /// As the file asks for it; what the draft came to is in the answer.
    fit: Option<&'static str>,
    set: &'static str,
    fittings: Vec<FittingOut<'a>>,
    trouble: Option<String>,
}

#[derive(Serialize)]
struct FittingOut<'a> {
    date: Option<&'a str>,
    block: Option<&'a str>,
    seen: &'a [String],
    tested: &'a [String],
    changed: Vec<(&'a str, f64)>,
    note: Option<&'a str>,
}

impl<'a> FittingOut<'a> {
    fn of(fitting: &'a Fitting) -> Self {
        Self {
            date: fitting.date.as_deref(),
            block: fitting.block.as_deref(),
            seen: &fitting.seen,
            tested: &fitting.tested,
            changed: fitting.changed.iter().map(|(key, value)| (key.as_str(), *value)).collect(),
            note: fitting.note.as_deref(),
        }
    }
}

impl<'a> File<'a> {
    pub(super) fn of(order: &'a Order, name: &'a str, saved: bool, trouble: Option<String>) -> Self {
        Self {
            name,
            saved,
            units: order.units.key(),
            block: &order.trousers.block,
            fit: order.trousers.fit.map(Word::key),
            set: order.trousers.set.key(),
            fittings: order.fittings.iter().map(FittingOut::of).collect(),
            trouble,
        }
    }
}

/// The contract's answer of a draft, as `breeks draft --json` prints it.
pub(super) fn answer(made: &Made) -> Answer<'_> {
    Answer::new(made, Extent::Whole)
}

/// What lies under the sheet, and what the sheet differs in from it.
#[derive(Serialize)]
pub(super) struct Beneath<'a> {
    pub under: Answer<'a>,
    pub differences: String,
}

/// How saving went.
#[derive(Serialize)]
pub(super) struct SaveTold {
    pub edition: u64,
    pub written: bool,
    /// What the file says elsewhere for the changed keys.
    pub theirs: Vec<(String, Option<String>)>,
}

/// What a person did wrong, as text.
#[derive(Serialize)]
pub(super) struct Wrong {
    edition: u64,
    key: Option<String>,
    mistakes: Vec<MistakeOut>,
}

#[derive(Serialize)]
struct MistakeOut {
    title: String,
    help: Vec<String>,
}

impl Wrong {
    pub(super) fn of(refusal: &Refusal, edition: u64) -> Self {
        Self {
            edition,
            key: refusal.key.clone(),
            mistakes: refusal
                .mistakes
                .iter()
                .map(|mistake| MistakeOut { title: mistake.title(), help: mistake.remedies() })
                .collect(),
        }
    }
}
