//! What is known of toiles: quick tests, causes and faults, read once from the file beside this one.

mod file;

use std::sync::LazyLock;

use super::sign::Sign;
use crate::{
    adjust::Key,
    terms::{EaseAt, HowMuch, Level, Shape, Style, Word, words},
    unit::Unit,
    voice::Sentence,
};

const FILE: &str = include_str!("faults.toml");

/// A cause by its place in [`Knowledge::causes`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct CauseId(pub usize);

/// Everything the file says.
#[derive(Debug)]
pub struct Knowledge {
    /// Quick tests on the body.
    pub tests: Vec<Quick>,
    /// What a pattern lacks.
    pub causes: Vec<Cause>,
    /// What is seen.
    pub faults: Vec<Fault>,
}

/// A quick test on the body.
#[derive(Debug)]
pub struct Quick {
    /// Its key on the command line.
    pub key: String,
    /// What to do, and what to look at.
    pub ask: String,
    /// Where it is from.
    pub source: String,
    /// Whether a seam has to be unpicked for it.
    pub unpicks: bool,
    /// What may come of it.
    pub results: Vec<QuickResult>,
}

/// What may come of a quick test.
#[derive(Debug)]
pub struct QuickResult {
    /// Its key on the command line.
    pub key: String,
    /// In words.
    pub says: String,
    /// It takes the fault away, so that it speaks against every cause of which it is no cure.
    pub cures: bool,
    /// The causes it speaks for.
    pub speaks_for: Vec<CauseId>,
}

words! {
    /// What kind of change a cause asks for; within one step of the order they are taken in this order.
    Kind {
        /// Nothing of the pattern by a parameter: look, sew or cut by hand.
        Look = "look",
        /// Length.
        Length = "length",
        /// The sweep of a crotch curve.
        Curve = "curve",
        /// A crotch extension.
        Fork = "fork",
        /// The lean of the centre back.
        Angle = "angle",
        /// Width.
        Width = "width",
        /// The leg below the thigh.
        Leg = "leg",
    }
}

/// A key of the measurement file that a cause changes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Target {
    /// A fit parameter.
    Adjust(Key),
    /// An ease of the trousers.
    Ease(EaseAt),
    /// A width of style.
    Style(Style),
}

impl Target {
    /// Its dotted path in the file.
    pub fn path(self) -> String {
        match self {
            Self::Adjust(key) => key.key().to_owned(),
            Self::Ease(at) => format!("trousers.ease.{at}"),
            Self::Style(style) => format!("trousers.style.{style}"),
        }
    }
}

/// One key with the direction in which a cause changes it.
#[derive(Clone, Copy, Debug)]
pub struct Setting {
    /// Which key.
    pub target: Target,
    /// More of it, or less.
    pub more: bool,
    /// The most that one fitting changes, cm or degrees.
    pub step: f64,
    /// What 1 cm of a pinned fold is in this key.
    pub pinned: f64,
}

/// What a number of the draft can say about a cause.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lack {
    /// Too little girth at a level.
    ShortGirth(Level),
    /// Too little of it in one place of that level: girth enough speaks less against it.
    ShortLocally(Level),
    /// Too much.
    SurplusGirth(Level),
    /// Too short or too long a crotch seam: in all, on the front, on the back.
    Crotch {
        /// Which part of it.
        part: CrotchPart,
        /// Short, or long.
        short: bool,
    },
    /// A front narrower than the front of the thigh.
    FrontThigh,
    /// Inseams of unequal length.
    Inseam,
}

/// A part of the crotch seam.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CrotchPart {
    /// All of it.
    Total,
    /// To the inseam, from the front waist.
    Front,
    /// From the inseam to the back waist.
    Back,
}

/// What a pattern lacks, or has too much of.
#[derive(Debug)]
pub struct Cause {
    /// Its key.
    pub key: String,
    /// The sentence: what the pattern lacks.
    pub lacks: String,
    /// Looked at before anything of the pattern is changed.
    pub first: bool,
    /// The step of the published order of fitting at which it is taken up.
    pub turn: f64,
    /// What kind of change.
    pub kind: Kind,
    /// On the back alone.
    pub on_back: bool,
    /// The change, none where no parameter gives it.
    pub change: Vec<Setting>,
    /// Which number of the draft speaks of it.
    pub numbers: Option<Lack>,
    /// What a mirror shows where it is likelier.
    pub shape: Option<(Shape, HowMuch)>,
    /// A fit parameter that must be in use for this to be a cause.
    pub needs: Option<Key>,
    /// It is of one side of the body.
    pub one_side: bool,
    /// What to do by hand.
    pub hand: Option<String>,
    /// What not to do, and why.
    pub avoid: String,
    /// What to look at next.
    pub then: String,
}

/// What is seen, with its causes.
#[derive(Debug)]
pub struct Fault {
    /// Its key.
    pub key: String,
    /// In few words.
    pub title: String,
    /// The signs by which it is known.
    pub seen: Vec<Known>,
    /// The likeliest first.
    pub causes: Vec<CauseId>,
    /// Where this is from.
    pub source: String,
    /// Where the sources differ.
    pub note: Option<String>,
}

/// A sign by which a fault is known.
#[derive(Clone, Copy, Debug)]
pub struct Known {
    /// The sign.
    pub sign: Sign,
    /// The cause of which it is most.
    pub hint: Option<CauseId>,
    /// The fault shows it now and then only.
    pub seldom: bool,
}

impl Knowledge {
    /// The cause with this key.
    pub fn cause(&self, key: &str) -> Option<CauseId> {
        self.causes.iter().position(|cause| cause.key == key).map(CauseId)
    }

    /// The quick test with this key.
    pub fn test(&self, key: &str) -> Option<&Quick> {
        self.tests.iter().find(|test| test.key == key)
    }

    /// A cause.
    pub fn of(&self, id: CauseId) -> &Cause {
        &self.causes[id.0]
    }
}

/// A text of the file as it is read in `unit`: its lengths stand there as `{5 cm|2 in}`.
pub fn spoken(text: &'static str, unit: Unit) -> String {
    Sentence::new(text).in_unit(unit)
}

/// What is known.
///
/// # Panics
/// When the file beside this one is not as it should be; a test reads it.
pub fn knowledge() -> &'static Knowledge {
    static KNOWLEDGE: LazyLock<Knowledge> = LazyLock::new(|| {
        file::built(FILE).unwrap_or_else(|why| panic!("faults.toml, which is part of the program: {why}"))
    });
    &KNOWLEDGE
}

/// The word with this key; none where there is no key.
pub(super) fn word<W: Word>(key: Option<&str>) -> Result<Option<W>, String> {
    key.map(|key| W::from_key(key).ok_or_else(|| format!("no word `{key}`"))).transpose()
}
