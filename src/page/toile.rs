//! The toile in the drawer: questions answered, the judgement, and its one change ready to be done.

use serde::{Deserialize, Serialize};

use super::asked::Typed;
use crate::{
    answer::Judged,
    draft::Draft,
    making::Made,
    mistake::{Mistake, Mistakes},
    order::{Fitting, Order},
    terms::{FitKind, Side, Word},
    toile::{
        Answers, HELD, Judgement, QUESTIONS, Question, Seen, Since, Toile, judge, knowledge, past, read_all,
    },
    unit::parse_length,
};

/// What is seen and tested.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Look {
    #[serde(default)]
    pub changes: Vec<Typed>,
    /// The numbers of the answers to the questions, from 0.
    answers: Answers,
    /// What is seen, in plain words.
    words: Vec<String>,
    /// Tests with their results.
    tested: Vec<(String, String)>,
    /// The fold that was pinned out, as typed.
    pinned: Option<String>,
    /// The leg that shows it.
    side: Option<String>,
    /// How it looks since the last change.
    since: Option<String>,
}

/// What the drawer shows.
#[derive(Serialize)]
pub(super) struct Told<'a> {
    questions: Vec<Asked>,
    since_can_be_said: bool,
    judged: Option<Judged<'a>>,
    /// The change with its record, where one may be done.
    ready: Option<Ready>,
}

#[derive(Serialize)]
struct Asked {
    ask: &'static str,
    open: bool,
    choices: Vec<String>,
}

#[derive(Serialize)]
struct Ready {
    changes: Vec<(String, String)>,
    fittings: Vec<Recorded>,
}

/// A toile for the record, as the drawer brings it back when the file is saved.
#[derive(Clone, Debug, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Recorded {
    #[serde(default)]
    date: Option<String>,
    #[serde(default)]
    block: Option<String>,
    #[serde(default)]
    seen: Vec<String>,
    #[serde(default)]
    tested: Vec<String>,
    #[serde(default)]
    changed: Vec<(String, f64)>,
    #[serde(default)]
    note: Option<String>,
}

impl From<Recorded> for Fitting {
    fn from(it: Recorded) -> Self {
        let Recorded { date, block, seen, tested, changed, note } = it;
        Self { date, block, seen, tested, changed, note }
    }
}

impl Look {
    fn toile(&self, order: &Order) -> Result<Option<Toile>, Mistakes> {
        let mut report = read_all(&self.words);
        if self.answers.iter().any(Option::is_some) {
            let sign = Question::sign(&self.answers);
            report.seen.push(Seen { sign, other: None, words: sign.plain() });
        }
        let mut tested = self.tested.clone();
        if let Some((test, result)) = tested.iter().find(|(test, result)| {
            !knowledge().test(test).is_some_and(|known| known.results.iter().any(|it| it.key == *result))
        }) {
            return Err(Mistake::new(format!("there is no test `{test}` with the result `{result}`")).into());
        }
        tested.extend(report.tested.iter().map(|(test, result, _)| (test.clone(), result.clone())));
        let since = self.since.as_deref().and_then(Since::from_key);
        if !report.says_something() && tested.is_empty() && since != Some(Since::Worse) {
            return Ok(None);
        }
        let pinned = match self.pinned.as_deref().map(str::trim).filter(|text| !text.is_empty()) {
            None => None,
            Some(text) => {
                let cm = parse_length(text, order.units)
                    .map_err(|expected| Mistake::new(format!("{expected} for what was pinned")))?;
                if !(0.0..=15.0).contains(&cm) {
                    return Err(Mistake::new("what was pinned is between 0 and 15 cm").into());
                }
                Some(cm)
            }
        };
        let side = self.side.as_deref().and_then(Side::from_key).unwrap_or(Side::Both);
        if side != Side::Both {
            report.seen.iter_mut().for_each(|seen| seen.sign.one_side = !seen.sign.fine);
        }
        Ok(Some(Toile { report, tested, side, pinned, past: past(order, since) }))
    }

    /// The judgement of what is seen; `None` while nothing is said.
    pub(super) fn judged(&self, made: &Made) -> Result<Option<Judgement>, Mistakes> {
        let Some(toile) = self.toile(&made.order)? else { return Ok(None) };
        judge(toile, &made.order, &made.recipe, &made.legs).map(Some)
    }

    /// What the drawer shows of it.
    pub(super) fn told<'a>(
        &self,
        made: &Made,
        draft: &'a Draft,
        judgement: Option<&'a Judgement>,
    ) -> Told<'a> {
        let asked = |question: &Question| Asked {
            ask: question.ask(),
            open: question.is_open(&self.answers),
            choices: question.choices(),
        };
        Told {
            questions: QUESTIONS.iter().map(asked).collect(),
            since_can_be_said: !past(&made.order, None).steps.is_empty(),
            judged: judgement.map(|judgement| Judged::new(draft, judgement, Vec::new())),
            ready: judgement.and_then(|judgement| ready(judgement, &made.order)),
        }
    }
}

/// The one change as keys of the file, as `breeks toile --write` would write it, with what goes into the record.
fn ready(judgement: &Judgement, order: &Order) -> Option<Ready> {
    /// Values are written to this many decimals: what a ruler shows.
    const WRITTEN: f64 = 100.0;
    let rounded = |value: f64| (value * WRITTEN).round() / WRITTEN + 0.0;
    let advice = judgement.advice.as_ref().filter(|advice| judgement.clear && !advice.moves.is_empty())?;
    let block = Some(order.trousers.block.clone());
    let mut fittings = Vec::new();
    let mut numbers: Vec<(String, f64)> = Vec::new();
    let mut changes: Vec<(String, String)> = Vec::new();
    let recorded = |changed, note| Recorded {
        date: None,
        block: block.clone(),
        seen: Vec::new(),
        tested: Vec::new(),
        changed,
        note,
    };
    if advice.holds_fit {
        let kept: Vec<(String, f64)> = advice
            .kept
            .iter()
            .map(|(path, value)| (path.clone(), rounded(*value)))
            .filter(|(_, value)| *value != 0.0)
            .collect();
        if !kept.is_empty() {
            fittings.push(recorded(kept.clone(), Some(HELD.to_owned())));
        }
        numbers.extend(kept);
        changes.push(("trousers.fit".to_owned(), FitKind::Held.key().to_owned()));
    }
    let moved: Vec<(String, f64)> = advice.moves.iter().map(|it| (it.path(), rounded(it.to))).collect();
    numbers.retain(|(key, _)| moved.iter().all(|(other, _)| other != key));
    numbers.extend(moved.iter().cloned());
    let is_degrees = |path: &str| {
        let key = crate::toile::parameter(path).map(|(_, key)| key.about().unit);
        key == Some(crate::adjust::Measure::Degrees)
    };
    changes.extend(numbers.into_iter().map(|(key, value)| {
        let text = if is_degrees(&key) { format!("{value}") } else { format!("{value} cm") };
        (key, text)
    }));
    let toile = &judgement.toile;
    let result = |(test, result): &(String, String)| {
        let quick = knowledge().test(test)?;
        let known = quick.results.iter().find(|it| it.key == *result)?;
        Some(format!("{test}={result}: {}", known.says))
    };
    let line = |text: &str| crate::drawing::Wording::line(text).to_string();
    fittings.push(Recorded {
        seen: toile
            .report
            .seen
            .iter()
            .map(|seen| line(&seen.words))
            .filter(|words| !words.is_empty())
            .collect(),
        tested: toile.tested.iter().filter_map(result).collect(),
        ..recorded(moved, None)
    });
    Some(Ready { changes, fittings })
}
