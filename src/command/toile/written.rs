//! What `--write` leaves in the measurement file.

use std::path::Path;

use super::{super::output::write_again, Arguments};
use crate::{
    booklet::note,
    drawing::Wording,
    mistake::Mistakes,
    order::{Order, today},
    toile::{Entry, Judgement, knowledge},
};

/// Writes the change and the record; says what was written.
pub(super) fn write_entry(
    arguments: &Arguments,
    path: &Path,
    judgement: &Judgement,
    order: &Order,
) -> Result<String, Mistakes> {
    let date = arguments.date.clone().unwrap_or_else(today);
    let remark = arguments.note.as_deref().map(|text| Wording::line(text).to_string());
    let entry = Entry::of(judgement, order, &date, remark);
    let text = entry.put_into(&order.source)?;
    write_again(path, &order.source.text, &text)?;
    let mut said = String::new();
    if entry.holds_fit {
        said.push_str(&note(
            "what the fit had found is kept as it was sewn, and `trousers.fit` is held now: the next draft is \
             the sewn one with this one change",
        ));
    }
    if entry.changes.is_empty() {
        let by_hand = judgement
            .advice
            .as_ref()
            .and_then(|advice| advice.cause)
            .is_some_and(|cause| knowledge().of(cause).change.is_empty());
        said.push_str(&note(match by_hand {
            true => {
                "no change written, for it is done by hand and no key of the file carries it: a new draft \
                 comes out as this one; what was seen and tested goes into the record"
            }
            false => "no change written: what was seen and tested goes into the record",
        }));
    }
    said.push_str(&format!("wrote {}\n", path.display()));
    Ok(said)
}
