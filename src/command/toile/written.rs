//! What `--write` leaves in the measurement file.

use std::path::Path;

use super::{super::fit::today, Arguments};
use crate::{
    drawing::Wording,
    file,
    mistake::{Mistake, Mistakes, Source},
    order::{Change, Fitting, Order, edit, record},
    paper::note,
    terms::{FitKind, Word},
    toile::{HELD, Judgement, knowledge},
    unit::Unit,
};

/// Writes the change and the record; says what was written.
pub(super) fn written(
    arguments: &Arguments,
    path: &Path,
    judgement: &Judgement,
    order: &Order,
) -> Result<String, Mistakes> {
    /// Values are written to this many decimals: what a ruler shows.
    const WRITTEN: f64 = 100.0;
    let rounded = |value: f64| (value * WRITTEN).round() / WRITTEN + 0.0;
    let date = Some(arguments.date.clone().unwrap_or_else(today));
    let block = Some(order.trousers.block.clone());
    let line = |text: &str| Wording::line(text).to_string();
    let mut source = arguments.input.source()?;
    let mut said = String::new();
    let advice = judgement.advice.as_ref().filter(|advice| judgement.clear && !advice.moves.is_empty());
    let mut changed: Vec<(String, f64)> = Vec::new();
    if let Some(advice) = advice {
        let mut changes: Vec<Change> = Vec::new();
        if advice.holds_fit {
            let kept: Vec<(String, f64)> = advice
                .kept
                .iter()
                .map(|(path, value)| (path.clone(), rounded(*value)))
                .filter(|(_, value)| *value != 0.0)
                .collect();
            // a fit that found nothing has nothing to be kept
            let as_sewn = Fitting {
                date: date.clone(),
                block: block.clone(),
                changed: kept.clone(),
                note: Some(HELD.to_owned()),
                ..Fitting::default()
            };
            changes.extend(kept.iter().map(|(key, value)| Change::Number(key.clone(), *value)));
            changes.push(Change::Text("trousers.fit".to_owned(), FitKind::Held.key().to_owned()));
            if !kept.is_empty() {
                source = Source::new(source.name.clone(), record(&source, &as_sewn)?);
            }
            said.push_str(&note(
                "what the fit had found is kept as it was sewn, and `trousers.fit` is held now: the next draft is \
                 the sewn one with this one change",
            ));
        }
        changed = advice.moves.iter().map(|it| (it.path(), rounded(it.to))).collect();
        changes.extend(changed.iter().map(|(key, value)| Change::Number(key.clone(), *value)));
        source = Source::new(source.name.clone(), edit(&source, &changes)?);
    } else {
        said.push_str(&note("no change written: what was seen and tested goes into the record"));
    }
    let report = &judgement.toile.report;
    let fitting = Fitting {
        date,
        block,
        seen: report.seen.iter().map(|seen| line(&seen.words)).filter(|words| !words.is_empty()).collect(),
        tested: tested(judgement, order.units),
        changed,
        note: arguments.note.as_deref().map(line),
    };
    let text = record(&source, &fitting)?;
    file::replace(path, text.as_bytes())
        .map_err(|error| Mistake::new(format!("cannot write `{}`: {error}", path.display())))?;
    said.push_str(&format!("wrote {}\n", path.display()));
    Ok(said)
}

/// The results of tests, and what was pinned, as a person reads them.
fn tested(judgement: &Judgement, unit: Unit) -> Vec<String> {
    let toile = &judgement.toile;
    let results = toile.tested.iter().map(|(test, result)| {
        let known =
            knowledge().test(test).and_then(|quick| quick.results.iter().find(|it| it.key == *result));
        match known {
            Some(it) => format!("{test}={result}: {}", it.says),
            None => format!("{test}={result}"),
        }
    });
    let pinned = toile.pinned.map(|cm| format!("pinned: {} {unit}", unit.write(cm)));
    results.chain(pinned).collect()
}
