//! The file as it is written, and what it means.

use serde::Deserialize;

use super::{
    super::sign::Sign, Cause, CauseId, CrotchPart, Fault, Knowledge, Known, Lack, Quick, QuickResult,
    Setting, Target, word,
};
use crate::{
    order::{Kind as ValueKind, Path},
    terms::{HowMuch, Shape},
};

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
    #[serde(default)]
    cures: bool,
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
    shape: Option<String>,
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

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawSign {
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
    #[serde(default)]
    seldom: bool,
}

pub(super) fn built(text: &str) -> Result<Knowledge, String> {
    let raw: RawFile = toml::from_str(text).map_err(|error| error.to_string())?;
    let keys: Vec<String> = raw.cause.iter().map(|cause| cause.key.clone()).collect();
    let id = |key: &str| {
        keys.iter().position(|known| known == key).map(CauseId).ok_or_else(|| format!("no cause `{key}`"))
    };
    let ids = |list: &[String]| list.iter().map(|key| id(key)).collect::<Result<Vec<_>, _>>();
    let tests = raw.test.into_iter().map(|test| {
        let results = test.results.into_iter().map(|result| {
            let speaks_for = ids(&result.speaks_for)?;
            Ok(QuickResult { key: result.key, says: result.says, cures: result.cures, speaks_for })
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
        let seen = fault.seen.iter().map(|it| {
            Ok::<_, String>(Known {
                sign: it.sign()?,
                hint: it.hint.as_deref().map(id).transpose()?,
                seldom: it.seldom,
            })
        });
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
        shape: raw.shape.as_deref().map(shape).transpose()?,
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

/// As `front_thigh much`.
fn shape(text: &str) -> Result<(Shape, HowMuch), String> {
    let (shape, much) = text.split_once(' ').ok_or_else(|| format!("no shape `{text}`"))?;
    Ok((word(Some(shape))?.ok_or("no shape")?, word(Some(much))?.ok_or("no amount")?))
}

fn lack(text: &str) -> Result<Lack, String> {
    let crotch = |part, short| Lack::Crotch { part, short };
    Ok(match text.split(' ').collect::<Vec<_>>().as_slice() {
        ["short", level] => Lack::ShortGirth(word(Some(level))?.ok_or("no level")?),
        ["local", level] => Lack::ShortLocally(word(Some(level))?.ok_or("no level")?),
        ["surplus", level] => Lack::SurplusGirth(word(Some(level))?.ok_or("no level")?),
        ["crotch", way] => crotch(CrotchPart::Total, *way == "short"),
        ["front", "crotch", way] => crotch(CrotchPart::Front, *way == "short"),
        ["back", "crotch", way] => crotch(CrotchPart::Back, *way == "short"),
        ["front", "thigh"] => Lack::FrontThigh,
        ["inseam"] => Lack::Inseam,
        _ => return Err(format!("no number `{text}`")),
    })
}

impl RawSign {
    fn sign(&self) -> Result<Sign, String> {
        Ok(Sign {
            at: word(self.at.as_deref())?,
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
