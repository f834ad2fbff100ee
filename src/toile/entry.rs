//! What a judged toile leaves in the measurement file: the one change, and the fitting in its record.

use super::{
    HELD,
    judgement::{Judgement, Outcome},
    knowledge::{knowledge, spoken},
};
use crate::{
    mistake::{Mistakes, Source},
    order::{Change, Fitting, Order, edit, found_value, record},
    terms::{FitKind, Word},
};

/// A fitting's note where all of the toile was said to fit: nothing more is changed for it.
pub const CLOSED: &str = "closed: it fits";

/// What is written.
#[derive(Clone, Debug, Default)]
pub struct Entry {
    /// Keys with their new values.
    pub changes: Vec<Change>,
    /// Fittings for the record, the oldest first.
    pub fittings: Vec<Fitting>,
    /// What a fit had found is kept from now on.
    pub holds_fit: bool,
}

impl Entry {
    /// Of a toile of this order, on this day.
    pub fn of(judgement: &Judgement, order: &Order, date: &str, note: Option<String>) -> Self {
        let toile = &judgement.toile;
        let dated = Fitting {
            date: Some(date.to_owned()),
            block: Some(order.trousers.block.clone()),
            ..Fitting::default()
        };
        let written = |path: String, value: f64| {
            let value = found_value(&path, value, order.units);
            (path, value)
        };
        let mut entry = Self::default();
        let advice = judgement.advice.as_ref().filter(|it| judgement.clear && !it.moves.is_empty());
        let mut changed: Vec<(String, f64)> = Vec::new();
        if let Some(advice) = advice {
            changed = advice.moves.iter().map(|it| written(it.path(), it.to)).collect();
            if advice.holds_fit {
                entry.holds_fit = true;
                let kept: Vec<(String, f64)> = advice
                    .kept
                    .iter()
                    .map(|(path, value)| written(path.clone(), *value))
                    .filter(|(_, value)| *value != 0.0)
                    .collect();
                entry.changes.extend(
                    kept.iter()
                        .filter(|(key, _)| changed.iter().all(|(other, _)| other != key))
                        .map(|(key, value)| Change::Number(key.clone(), *value)),
                );
                let held = FitKind::Held.key().to_owned();
                entry.changes.push(Change::Text("trousers.fit".to_owned(), held));
                // a fit that found nothing has nothing to be kept
                if !kept.is_empty() {
                    entry.fittings.push(Fitting {
                        changed: kept,
                        note: Some(HELD.to_owned()),
                        ..dated.clone()
                    });
                }
            }
            entry.changes.extend(changed.iter().map(|(key, value)| Change::Number(key.clone(), *value)));
        }
        let closed = (judgement.outcome == Outcome::Fits).then(|| CLOSED.to_owned());
        entry.fittings.push(Fitting {
            seen: toile.told.clone(),
            tested: tested(judgement, order),
            changed,
            note: match (closed, note) {
                (Some(closed), Some(note)) => Some(format!("{closed}; {note}")),
                (closed, note) => closed.or(note),
            },
            ..dated
        });
        entry
    }

    /// The text of the file with it, comments and order kept.
    ///
    /// # Errors
    /// As [`edit`] and [`record`].
    pub fn put_into(&self, source: &Source) -> Result<String, Mistakes> {
        let mut text = edit(source, &self.changes)?;
        for fitting in &self.fittings {
            text = record(&Source::new(source.name.clone(), text), fitting)?;
        }
        Ok(text)
    }
}

/// The results of tests, and what was pinned, as a person reads them.
fn tested(judgement: &Judgement, order: &Order) -> Vec<String> {
    let toile = &judgement.toile;
    let results = toile.tested.iter().map(|(test, result)| {
        let known =
            knowledge().test(test).and_then(|quick| quick.results.iter().find(|it| it.key == *result));
        match known {
            Some(it) => format!("{test}={result}: {}", spoken(&it.says, order.units)),
            None => format!("{test}={result}"),
        }
    });
    let pinned = toile.pinned.map(|cm| format!("pinned: {} {}", order.units.write(cm), order.units));
    results.chain(pinned).collect()
}
