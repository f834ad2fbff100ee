//! What the record of earlier toiles says: which step was taken how often, and whether it helped.

use super::knowledge::{Cause, Setting};
use crate::{
    adjust::Key,
    order::{Order, Path},
    terms::{EnumMap, HowMuch, Shape, Side, Word, words},
};

words! {
    /// How this toile looks against the one before the last change.
    Since {
        /// Better.
        Better = "better",
        /// As before.
        Same = "same",
        /// Worse.
        Worse = "worse",
    }
}

/// A change of an earlier toile: one key, from a value to another.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// The number of its fitting, from 1.
    pub fitting: usize,
    /// The key, as the file has it.
    pub path: String,
    /// The value before; `None` where the record does not know it.
    pub from: Option<f64>,
    /// The value after.
    pub to: f64,
}

/// What the file says beside the measurements: the earlier toiles, and what a mirror showed.
#[derive(Clone, Debug, Default)]
pub struct Past {
    /// What a mirror showed.
    pub shape: EnumMap<Shape, Option<HowMuch>>,
    /// Steps that were taken for what a toile showed, the oldest first.
    pub steps: Vec<Step>,
    /// The number of the last fitting at which a measurement was taken again, 0 if none.
    pub measured: usize,
    /// How it looks since the last of them.
    pub since: Option<Since>,
}

/// Reads the record of a file.
pub fn past(order: &Order, since: Option<Since>) -> Past {
    let mut past = Past { since, shape: order.shape, ..Past::default() };
    let mut values: Vec<(String, f64)> = Vec::new();
    for (at, fitting) in order.fittings.iter().enumerate() {
        let judged = !fitting.seen.is_empty() || !fitting.tested.is_empty();
        for (path, to) in &fitting.changed {
            let known = Path::find(path);
            if matches!(known, Some(Path::Measurement(..))) {
                past.measured = at + 1;
            }
            let before = values.iter().rev().find(|(of, _)| of == path).map(|(_, value)| *value);
            let from = before.or(match known {
                Some(Path::Adjust(_, key)) => Some(key.about().default),
                _ => None,
            });
            values.push((path.clone(), *to));
            // what a fit wrote was no answer to a toile
            if judged || fitting.changed.len() == 1 {
                past.steps.push(Step { fitting: at + 1, path: path.clone(), from, to: *to });
            }
        }
    }
    past
}

/// A step given so often without a new measurement is not given again.
const OFTEN: usize = 2;

impl Past {
    /// How often a setting was given in its direction since a measurement was last taken again.
    fn given(&self, setting: &Setting) -> usize {
        let path = setting.target.path();
        self.steps
            .iter()
            .filter(|step| step.fitting > self.measured && of_key(&step.path, &path))
            .filter(|step| step.from.is_some_and(|from| (step.to > from) == setting.more))
            .count()
    }

    /// Whether a cause's change was given as often as is sensible without measuring again.
    pub fn is_worn_out(&self, cause: &Cause) -> bool {
        cause.change.first().is_some_and(|setting| self.given(setting) >= OFTEN)
    }

    /// The steps of the last toile that changed something.
    pub fn last(&self) -> Vec<&Step> {
        let last = self.steps.last().map(|step| step.fitting);
        self.steps.iter().filter(|step| Some(step.fitting) == last).collect()
    }

    /// Whether the last change was of this cause.
    pub(super) fn gave_last(&self, cause: &Cause) -> bool {
        cause.change.iter().any(|setting| {
            let path = setting.target.path();
            self.last().iter().any(|step| {
                of_key(&step.path, &path) && step.from.is_some_and(|from| (step.to > from) == setting.more)
            })
        })
    }

    /// Whether the last change was of this cause, and it looks worse since.
    pub(super) fn made_worse(&self, cause: &Cause) -> bool {
        self.since == Some(Since::Worse) && self.gave_last(cause)
    }
}

/// Whether a path of the record is this key, on both legs or on one.
fn of_key(path: &str, key: &str) -> bool {
    path == key
        || [Side::Left, Side::Right]
            .iter()
            .any(|side| path.strip_prefix(side.key()).and_then(|rest| rest.strip_prefix('.')) == Some(key))
}

/// The leg and the fit parameter of a path, if it is one.
pub fn parameter(path: &str) -> Option<(Side, Key)> {
    match Path::find(path)? {
        Path::Adjust(side, key) => Some((side, key)),
        _ => None,
    }
}
