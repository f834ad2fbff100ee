//! What is known of toiles: quick tests, causes and faults, read once from the file beside this one.

use std::sync::LazyLock;

use serde::Deserialize;

use super::sign::{Place, Sign};
use crate::{
    adjust::Key,
    order::{Kind as ValueKind, Path},
    terms::{EaseAt, Level, Style, Word, words},
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
    /// The signs by which it is known, and of which cause each is most.
    pub seen: Vec<(Sign, Option<CauseId>)>,
    /// The likeliest first.
    pub causes: Vec<CauseId>,
    /// Where this is from.
    pub source: String,
    /// Where the sources differ.
    pub note: Option<String>,
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

/// What is known.
///
/// # Panics
/// When the file beside this one is not as it should be; a test reads it.
pub fn knowledge() -> &'static Knowledge {
    static KNOWLEDGE: LazyLock<Knowledge> = LazyLock::new(|| {
        built(FILE).unwrap_or_else(|why| panic!("faults.toml, which is part of the program: {why}"))
    });
    &KNOWLEDGE
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawFile {
    test: Vec<RawTest>,
    cause: Vec<RawCause>,
    fault: Vec<RawFault>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawTest {
    key: String,
    ask: String,
    source: String,
    #[serde(default)]
    unpicks: bool,
    results: Vec<RawResult>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawResult {
    key: String,
    says: String,
    #[serde(rename = "for")]
    speaks_for: Vec<String>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawCause {
    key: String,
    lacks: String,
    #[serde(default)]
    first: bool,
    turn: f64,
    kind: String,
    panel: Option<String>,
    #[serde(default)]
    change: Vec<RawSetting>,
    numbers: Option<String>,
    needs: Option<String>,
    #[serde(default)]
    one_side: bool,
    hand: Option<String>,
    avoid: String,
    then: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawSetting {
    key: String,
    more: bool,
    step: f64,
    #[serde(default = "one")]
    pinned: f64,
}

fn one() -> f64 {
    1.0
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawFault {
    key: String,
    title: String,
    seen: Vec<RawSign>,
    causes: Vec<String>,
    source: String,
    note: Option<String>,
}

/// A sign as the file writes it.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct RawSign {
    at: Option<String>,
    face: Option<String>,
    feel: Option<String>,
    lines: Option<String>,
    to: Option<String>,
    does: Option<String>,
    when: Option<String>,
    #[serde(default)]
    one_side: bool,
    hint: Option<String>,
}

fn built(text: &str) -> Result<Knowledge, String> {
    let raw: RawFile = toml::from_str(text).map_err(|error| error.to_string())?;
    let keys: Vec<String> = raw.cause.iter().map(|cause| cause.key.clone()).collect();
    let id = |key: &str| {
        keys.iter().position(|known| known == key).map(CauseId).ok_or_else(|| format!("no cause `{key}`"))
    };
    let ids = |list: &[String]| list.iter().map(|key| id(key)).collect::<Result<Vec<_>, _>>();
    let tests = raw.test.into_iter().map(|test| {
        let results = test.results.into_iter().map(|result| {
            Ok(QuickResult { key: result.key, says: result.says, speaks_for: ids(&result.speaks_for)? })
        });
        Ok::<_, String>(Quick {
            key: test.key,
            ask: test.ask,
            source: test.source,
            unpicks: test.unpicks,
            results: results.collect::<Result<_, String>>()?,
        })
    });
    let faults = raw.fault.into_iter().map(|fault| {
        let seen = fault
            .seen
            .iter()
            .map(|sign| Ok::<_, String>((sign.sign()?, sign.hint.as_deref().map(id).transpose()?)));
        Ok::<_, String>(Fault {
            seen: seen.collect::<Result<_, _>>()?,
            causes: ids(&fault.causes)?,
            key: fault.key,
            title: fault.title,
            source: fault.source,
            note: fault.note,
        })
    });
    Ok(Knowledge {
        tests: tests.collect::<Result<_, _>>()?,
        faults: faults.collect::<Result<_, _>>()?,
        causes: raw.cause.into_iter().map(cause).collect::<Result<_, _>>()?,
    })
}

fn cause(raw: RawCause) -> Result<Cause, String> {
    Ok(Cause {
        kind: word(Some(&raw.kind))?.ok_or("no kind")?,
        on_back: match raw.panel.as_deref() {
            None | Some("front") => false,
            Some("back") => true,
            Some(other) => return Err(format!("no panel `{other}`")),
        },
        change: raw.change.iter().map(setting).collect::<Result<_, _>>()?,
        numbers: raw.numbers.as_deref().map(lack).transpose()?,
        needs: word(raw.needs.as_deref())?,
        key: raw.key,
        lacks: raw.lacks,
        first: raw.first,
        turn: raw.turn,
        one_side: raw.one_side,
        hand: raw.hand,
        avoid: raw.avoid,
        then: raw.then,
    })
}

fn setting(raw: &RawSetting) -> Result<Setting, String> {
    let path = Path::find(&raw.key).ok_or_else(|| format!("no key `{}`", raw.key))?;
    let target = match path {
        Path::Adjust(_, key) => Target::Adjust(key),
        Path::Ease(at) => Target::Ease(at),
        Path::Style(style) if matches!(path.kind(), ValueKind::Length(..)) => Target::Style(style),
        _ => return Err(format!("`{}` is no key that a toile changes", raw.key)),
    };
    Ok(Setting { target, more: raw.more, step: raw.step, pinned: raw.pinned })
}

fn lack(text: &str) -> Result<Lack, String> {
    let crotch = |part, short| Lack::Crotch { part, short };
    Ok(match text.split(' ').collect::<Vec<_>>().as_slice() {
        ["short", level] => Lack::ShortGirth(word(Some(level))?.ok_or("no level")?),
        ["surplus", level] => Lack::SurplusGirth(word(Some(level))?.ok_or("no level")?),
        ["crotch", way] => crotch(CrotchPart::Total, *way == "short"),
        ["front", "crotch", way] => crotch(CrotchPart::Front, *way == "short"),
        ["back", "crotch", way] => crotch(CrotchPart::Back, *way == "short"),
        ["front", "thigh"] => Lack::FrontThigh,
        ["inseam"] => Lack::Inseam,
        _ => return Err(format!("no number `{text}`")),
    })
}

fn word<W: Word>(key: Option<&str>) -> Result<Option<W>, String> {
    key.map(|key| W::from_key(key).ok_or_else(|| format!("no word `{key}`"))).transpose()
}

impl RawSign {
    pub(super) fn sign(&self) -> Result<Sign, String> {
        let at: Option<Place> = word(self.at.as_deref())?;
        Ok(Sign {
            at,
            face: word(self.face.as_deref())?,
            feel: word(self.feel.as_deref())?,
            lines: word(self.lines.as_deref())?,
            to: word(self.to.as_deref())?,
            does: word(self.does.as_deref())?,
            when: word(self.when.as_deref())?,
            one_side: self.one_side,
            fine: false,
        })
    }
}
