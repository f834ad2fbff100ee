//! A look at a toile as somebody tells it, on the command line or on the page: words, answers, tests, what was pinned.

use super::{
    amount::Pinned,
    judgement::Toile,
    knowledge::{knowledge, spoken},
    record::{Since, past},
    said::{Seen, read_all},
    sign::Sign,
};
use crate::{
    drawing::Wording,
    mistake::{Mistake, Mistakes},
    order::Order,
    terms::Side,
    unit::Unit,
};

/// What was told, before it is read.
#[derive(Clone, Debug, Default)]
pub struct Look {
    /// What is seen, in plain words.
    pub words: Vec<String>,
    /// A sign that was named and not told.
    pub sign: Option<Sign>,
    /// Answers to what was open, by its number from 1.
    pub answers: Vec<(usize, String)>,
    /// Results of tests: the test's key and the result's.
    pub tested: Vec<(String, String)>,
    /// What was pinned or measured on the body, cm.
    pub pinned: Pinned,
    /// The leg that shows it, where the other does not.
    pub side: Option<Side>,
    /// How it looks since the last change.
    pub since: Option<Since>,
}

/// Nobody pins more than this, cm.
const MOST_PINNED: f64 = 15.0;

impl Look {
    /// Reads it against the record of the order.
    ///
    /// # Errors
    /// Where a test, a result, an answer or an amount is none.
    pub fn read(self, order: &Order) -> Result<Toile, Mistakes> {
        let Self { words, sign, mut answers, mut tested, pinned, side, since } = self;
        if pinned.is_some_and(|pinned| !(0.0..=MOST_PINNED).contains(&pinned)) {
            return Err(Mistake::new("what was pinned is between 0 and 15 cm (6 in)")
                .help("pin what is surplus, or measure the gap: the amount has no sign")
                .into());
        }
        for (test, result) in &tested {
            known(test, result, order.units)?;
        }
        let mut report = read_all(&words);
        // the last first, so that the numbers of the others stay what they were
        answers.sort_by_key(|(number, _)| std::cmp::Reverse(*number));
        for (number, answer) in answers {
            report = report.answered(number, &answer).map_err(|why| {
                Mistake::new(format!("`{}` does not answer question {number}: {why}", Wording::line(&answer)))
            })?;
        }
        let mut told: Vec<String> = words
            .iter()
            .map(|it| Wording::line(it).to_string().trim().to_owned())
            .filter(|it| !it.is_empty())
            .collect();
        if let Some(sign) = sign {
            let seen = Seen::of(sign);
            told.push(seen.words.clone());
            report.seen.push(seen);
        }
        if side.is_some() {
            report.seen.iter_mut().for_each(|seen| seen.sign.one_side = seen.is_wrong());
        }
        tested.extend(report.tested.iter().map(|(test, result, _)| (test.clone(), result.clone())));
        let mut past = past(order, since);
        if since.is_some() && past.steps.is_empty() {
            return Err(Mistake::new("nothing is known of a last change: the file has no record of one")
                .help("a fitting is written into it with `--write`")
                .into());
        }
        if !past.steps.is_empty() {
            past.since = past.since.or(agreed(report.seen.iter().filter_map(|seen| seen.compared)));
        }
        let sides = || report.seen.iter().filter(|seen| seen.is_wrong());
        let named = agreed(sides().filter_map(|seen| seen.side));
        let side = side.or(named.filter(|_| sides().all(|seen| seen.side.is_some()))).unwrap_or(Side::Both);
        Ok(Toile { report, told, tested, side, pinned, past })
    }
}

/// What all say, if they say one thing.
fn agreed<T: PartialEq>(mut all: impl Iterator<Item = T>) -> Option<T> {
    let first = all.next()?;
    all.all(|other| other == first).then_some(first)
}

/// A test and its result that are in the list of tests.
fn known(test: &str, result: &str, unit: Unit) -> Result<(), Mistakes> {
    let Some(quick) = knowledge().test(test) else {
        let keys = || knowledge().tests.iter().map(|test| test.key.as_str());
        return Err(Mistake::new(format!("there is no test `{}`", Wording::line(test)))
            .nearest(test, keys())
            .help(format!("the tests are {}", keys().collect::<Vec<_>>().join(", ")))
            .into());
    };
    if quick.results.iter().any(|it| it.key == result) {
        return Ok(());
    }
    let mut mistake = Mistake::new(format!("`{test}` has no result `{}`", Wording::line(result)))
        .nearest(result, quick.results.iter().map(|it| it.key.as_str()))
        .help(spoken(&quick.ask, unit));
    for it in &quick.results {
        mistake = mistake.help(format!("`{test}={}`: {}", it.key, spoken(&it.says, unit)));
    }
    Err(mistake.into())
}
