//! The record of toiles told as a story.

use std::fmt::Write;

use crate::{
    adjust::{Key, Measure},
    booklet::headed,
    drawing::Wording,
    fit::Report,
    order::Fitting,
    terms::{Side, Word},
    toile::{HELD, parameter},
    unit::{Unit, signed},
    voice::spoken,
};

/// Words of a person, with nothing in them that moves a cursor.
pub(super) fn clean(words: &str) -> String {
    Wording::line(words).to_string()
}

/// A value of a key with its unit.
pub(super) fn valued(key: Option<Key>, value: f64, unit: Unit) -> String {
    key.map_or(Measure::Cm, |key| key.about().unit).amount(value).in_unit(unit)
}

/// One fitting of the record as a story tells it.
pub fn fitting_told(number: usize, fitting: &Fitting, unit: Unit) -> String {
    let mut out = String::new();
    let date = fitting.date.as_deref().map(|date| format!(", {}", clean(date))).unwrap_or_default();
    let block = fitting.block.as_deref().map(|block| format!(", block {}", clean(block))).unwrap_or_default();
    let _ = writeln!(out, "Fitting {number}{date}{block}");
    for (name, texts) in [("seen", &fitting.seen), ("tested", &fitting.tested)] {
        for text in texts {
            out.push_str(&headed(&format!("  {name}: "), &clean(text)));
        }
    }
    // what a fit had found was nobody's change
    if fitting.note.as_deref() == Some(HELD) {
        let count = fitting.changed.len();
        out.push_str(&headed(
            "  as sewn: ",
            &format!("{count} fit parameters, as the fit had found them, are kept"),
        ));
        return out;
    }
    for (path, value) in &fitting.changed {
        let key = parameter(path).map(|(_, key)| key);
        out.push_str(&headed("  changed: ", &format!("`{path}` to {}", valued(key, *value, unit))));
    }
    if let Some(note) = &fitting.note {
        out.push_str(&headed("  note: ", &clean(note)));
    }
    out
}

/// What a fitting did to the crotch seam, from the draft before it to the draft after it.
pub fn fitting_did(before: &Report, after: &Report, side: Side, unit: Unit) -> String {
    let leg = match side {
        Side::Both => String::new(),
        side => format!("{side} leg, "),
    };
    let by = |was: f64, is: f64| signed(unit.amount(is - was));
    let mut parts = vec![
        format!("crotch seam front {}", by(before.crotch.front, after.crotch.front)),
        format!("back {}", by(before.crotch.back, after.crotch.back)),
    ];
    if let (Some(was), Some(is)) = (before.crotch.ease(), after.crotch.ease()) {
        parts.push(format!("ease {} -> {}", unit.length(was), unit.length(is)));
    }
    for (was, is) in before.levels.iter().zip(&after.levels) {
        if (was.ease() - is.ease()).abs() >= 0.05 {
            parts.push(format!(
                "{} ease {} -> {}",
                spoken(was.level.key()),
                unit.length(was.ease()),
                unit.length(is.ease())
            ));
        }
    }
    headed("  did: ", &format!("{leg}{}", parts.join(", ")))
}
