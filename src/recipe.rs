//! How a block is drafted, as data: level lines, then steps that make named points, then the roles of the points.
//!
//! A recipe is read once, with every name resolved ([`Recipe::parse`]), and carried out on any body
//! ([`Recipe::construct`]). What it constructs are the points as a handbook prints them, before any fit parameter,
//! curve or truing.

use std::ops::Range;

use crate::{
    mistake::{Mistakes, Source},
    terms::{Style, Word},
    unit::Unit,
};

mod book;
mod construct;
mod defaults;
mod implied;
mod included;
mod library;
mod panel;
mod proportion;
mod read;
mod reference;
mod rules;
mod step;
mod steps;
mod table;
mod track;
mod wording;

pub use book::{Book, Figure, Row as BookRow};
pub use construct::{Construction, Inputs};
pub use defaults::{EaseRow, EaseTable, StyleRow, StyleTable, Truing};
pub use included::SeamsIncluded;
pub use library::{load, shipped, shipped_names, skeleton, skeleton_names, source};
pub use panel::{BendRule, BowRule, DartRule, PanelRules};
pub use proportion::{Number, Part, Proportion, Unreadable};
pub use reference::{Names, Reference, body_name};
pub use rules::{EVERY_STEP, FORMS, Form, Key, Makes, PANEL_KEYS, PanelKey, RULES, Rule};
pub use step::{Between, Entry, Height, Ladder, PointRule, QuantityRule, Reach, Step, Way};
pub use track::{Slope, Track};
pub(crate) use wording::towards;

/// A recipe's text may have at most this many bytes; the caller refuses a larger file unread.
pub const LARGEST_FILE: usize = 256 * 1024;

/// The line that every recipe has without saying so: y = 0, through the start.
pub const WAIST_LINE: &str = "waist_line";

/// How a block is drafted.
#[derive(Clone, Debug, PartialEq)]
pub struct Recipe {
    /// The file's name without folders and ending.
    pub name: String,
    /// What it is, in one line.
    pub title: String,
    /// What it is for, and its source.
    pub notes: Vec<String>,
    /// The unit in which its numbers are written.
    pub units: Unit,
    /// The level lines from the waist line, which is the first: those of `[lines]` in the order of the file, then those
    /// that steps square out.
    pub lines: Vec<Line>,
    /// Inputs of this recipe that no other has.
    pub asks: Vec<Ask>,
    /// The name of the first point, on the waist line at x = 0.
    pub start: String,
    /// The steps in order.
    pub steps: Vec<Step>,
    /// The front panel.
    pub front: PanelRules,
    /// The back panel; a recipe without one constructs, but cannot be drafted.
    pub back: Option<PanelRules>,
    /// Ease where a measurement file gives none.
    pub ease: EaseTable,
    /// Widths of style where a measurement file gives none.
    pub style: StyleTable,
    /// How the panels are trued.
    pub truing: Truing,
    /// The seams that the lines of the construction include.
    pub seams: SeamsIncluded,
    /// The leg is drafted in one piece: front and back have their side line in common.
    pub one_piece: bool,
    quantities: usize,
    levels: [usize; 4],
    point_names: Vec<String>,
    source: Source,
}

/// A point of the construction: its place in [`Construction::points`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PointId(pub usize);

/// A level line.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// Its name in the recipe, as `hip_line`.
    pub name: String,
    /// How far below the waist line.
    pub at: QuantityRule,
    /// The same as the trade writes it.
    pub rule: String,
    /// A step squares it out, and not the list of lines.
    pub by_step: bool,
    /// The sentence of the lesson: the recipe's, or a plain one.
    pub says: String,
    place: Range<usize>,
}

/// An input that only this recipe asks for.
#[derive(Clone, Debug, PartialEq)]
pub struct Ask {
    /// Its name in proportions.
    pub name: String,
    /// What holds where nobody says otherwise, in cm.
    pub default: f64,
    /// The least and most that the draft is meant for, cm, where the recipe says so.
    pub within: Option<[f64; 2]>,
}

impl Line {
    /// The line that a step squares out.
    fn of_step(
        name: &str,
        at: QuantityRule,
        (plain, rule): &(String, String),
        say: Option<&str>,
        place: Range<usize>,
    ) -> Self {
        let says = say.unwrap_or(plain).to_owned();
        Self { name: name.to_owned(), at, rule: rule.clone(), by_step: true, says, place }
    }
}

impl Recipe {
    /// Reads a recipe, resolving every name in it.
    ///
    /// # Errors
    /// Everything that is wrong with the text, each with its place. A text that is no recipe at all is refused
    /// without quoting any of it.
    pub fn parse(source: &Source) -> Result<Self, Mistakes> {
        read::parse(source)
    }

    /// The point of a name.
    pub fn point(&self, name: &str) -> Option<PointId> {
        self.point_names.iter().position(|known| known == name).map(PointId)
    }

    /// The name of a point; empty for one that is not this recipe's.
    pub fn point_name(&self, id: PointId) -> &str {
        self.point_names.get(id.0).map_or("", String::as_str)
    }

    /// Whether anything of it reckons with this: a line, a step, a dart, a bow or a width of style.
    pub fn uses(&self, reference: Reference) -> bool {
        let named = |rule: &Proportion| rule.references().any(|it| it == reference);
        let in_panel = |panel: &PanelRules| {
            let folds = panel.darts.iter().chain(&panel.pleats);
            folds.flat_map(|fold| [&fold.intake, &fold.length]).chain(panel.bow.given()).any(named)
        };
        self.reads(reference)
            || [Some(&self.front), self.back.as_ref()].into_iter().flatten().any(in_panel)
            || Style::ALL
                .iter()
                .filter_map(|style| self.style.row(*style))
                .any(|row| named(&row.women) || named(&row.men))
    }

    /// Whether any line or step reckons with it.
    pub fn reads(&self, reference: Reference) -> bool {
        let by_step = |step: &Step| match step {
            Step::Quantity { rule, .. } | Step::Level { rule, .. } => rule.references().contains(&reference),
            Step::Point { rule, .. } => {
                rule.proportions().any(|rule| rule.references().any(|it| it == reference))
            }
        };
        self.lines.iter().any(|line| line.at.references().contains(&reference))
            || self.steps.iter().any(by_step)
    }

    /// The same, trued otherwise.
    #[must_use]
    pub(crate) fn trued_by(mut self, truing: Truing) -> Self {
        self.truing = truing;
        self
    }

    /// The row of `steps` that makes a point, counted from 1, and its line in the text; `None` for the start and for points
    /// that the recipe left to the program.
    pub fn row_of(&self, point: PointId) -> Option<(usize, usize)> {
        let made =
            self.steps.iter().position(|step| matches!(step, Step::Point { id, .. } if *id == point))?;
        let place = &self.steps.get(made)?.entry().place;
        let before = self.source.text.get(..place.start).filter(|_| !place.is_empty())?;
        Some((made + 1, before.matches('\n').count() + 1))
    }

    /// The text that the recipe was read from.
    pub fn source(&self) -> &Source {
        &self.source
    }

    /// The place of a level line in [`Recipe::lines`] and [`Construction::lines`].
    pub fn line(&self, name: &str) -> Option<usize> {
        self.lines.iter().position(|line| line.name == name)
    }
}
