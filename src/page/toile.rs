//! The toile in the drawer: questions answered, the judgement, and its one change ready to be done.

use serde::{Deserialize, Serialize};

use super::asked::Typed;
use crate::{
    answer::Judged,
    draft::Draft,
    making::Made,
    mistake::{Mistake, Mistakes},
    order::{Change, Fitting, Kind, Order, Path, today},
    terms::{Side, Word},
    toile::{self, Answers, Entry, Judgement, Outcome, QUESTIONS, Question, Sign, Since, judge, past},
    unit::{Unit, parse_length},
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
    /// Answers to what the words left open, by its number from 1.
    #[serde(default)]
    replies: Vec<(usize, String)>,
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

impl From<Fitting> for Recorded {
    fn from(it: Fitting) -> Self {
        let Fitting { date, block, seen, tested, changed, note } = it;
        Self { date, block, seen, tested, changed, note }
    }
}

impl From<Recorded> for Fitting {
    fn from(it: Recorded) -> Self {
        let Recorded { date, block, seen, tested, changed, note } = it;
        Self { date, block, seen, tested, changed, note }
    }
}

impl Look {
    /// What was told, as the command line would take it.
    fn told_of(&self, unit: Unit) -> Result<toile::Look, Mistakes> {
        let pinned = match self.pinned.as_deref().map(str::trim).filter(|text| !text.is_empty()) {
            None => None,
            Some(text) => Some(
                parse_length(text, unit)
                    .map_err(|expected| Mistake::new(format!("{expected} for what was pinned")))?,
            ),
        };
        let sign = Question::sign(&self.answers);
        Ok(toile::Look {
            words: self.words.clone(),
            sign: (sign != Sign::default()).then_some(sign),
            answers: self.replies.clone(),
            tested: self.tested.clone(),
            pinned,
            side: self.side.as_deref().and_then(Side::from_key).filter(|side| *side != Side::Both),
            since: self.since.as_deref().and_then(Since::from_key),
        })
    }

    /// The judgement of what is seen; `None` while nothing is said.
    pub(super) fn judged(&self, made: &Made) -> Result<Option<Judgement>, Mistakes> {
        let toile = self.told_of(made.order.units)?.read(&made.order)?;
        if !toile.says_something() {
            return Ok(None);
        }
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
            judged: judgement.map(|judgement| Judged::new(draft, judgement, Vec::new(), made.order.units)),
            ready: judgement.and_then(|judgement| ready(judgement, &made.order)),
        }
    }
}

/// The one change as keys of the file, and what goes into the record: as `breeks toile --write` would write it.
fn ready(judgement: &Judgement, order: &Order) -> Option<Ready> {
    let is_closed = judgement.outcome == Outcome::Fits;
    let is_change = judgement.clear && judgement.advice.as_ref().is_some_and(|it| !it.moves.is_empty());
    if !is_closed && !is_change {
        return None;
    }
    let Entry { changes, fittings, .. } = Entry::of(judgement, order, &today(), None);
    let typed = |change: Change| match change {
        Change::Number(key, value) => {
            let is_degrees = matches!(Path::find(&key).map(|path| path.kind()), Some(Kind::Degrees(..)));
            let text = if is_degrees { format!("{value}") } else { format!("{value} cm") };
            Some((key, text))
        }
        Change::Text(key, text) => Some((key, text)),
        // a toile takes no key out
        Change::Remove(_) => None,
    };
    Some(Ready {
        changes: changes.into_iter().filter_map(typed).collect(),
        fittings: fittings.into_iter().map(Recorded::from).collect(),
    })
}
