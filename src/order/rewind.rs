//! A measurement file as it stood after one of its toiles.

use super::key::Path;
use super::value::{Raw, Read, Written};
use super::{Adjustment, Giver, Order};
use crate::mistake::{Mistake, Mistakes, Notice, Source};
use crate::terms::Side;
use crate::voice::named;

impl Order {
    /// The order as it stood after the toile with this number of the record, counted from 1, the oldest first: every
    /// key that the record names has its last value up to then. A fit parameter that only a later toile names was not
    /// there yet; of any other such key, and of a parameter that was only taken out, the value before is not known: it
    /// stands as in the file, and a notice says so.
    ///
    /// # Errors
    /// When the record has no such toile, or names a key of one leg that is of both.
    pub fn after_fitting(&self, number: usize) -> Result<(Self, Vec<Notice>), Mistakes> {
        let count = self.fittings.len();
        if number == 0 || number > count {
            let title = if count == 0 {
                "the file has no record of toiles".to_owned()
            } else {
                format!("there is no fitting {number}: the record has {count}")
            };
            return Err(Mistake::new(title)
                .help("each `[[fitting]]` of the file is one; they are counted from 1, the oldest first")
                .into());
        }
        let (before, later) = self.fittings.split_at(number);
        let mut order = Self { fittings: before.to_vec(), ..self.clone() };
        if let Some(block) = before.iter().rev().find_map(|fitting| fitting.block.as_ref()) {
            order.trousers.block.clone_from(block);
        }
        let changes = || before.iter().flat_map(|fitting| &fitting.changed);
        let mut notices = Vec::new();
        for (path, value) in later.iter().flat_map(|fitting| &fitting.changed) {
            if changes().any(|(earlier, _)| earlier == path) {
                continue;
            }
            if let Some(Path::Adjust(side, key)) = Path::find(path) {
                order.adjustments_mut(side).retain(|it| it.key != key);
                // One that was only taken out must have been there.
                if *value != key.about().default {
                    continue;
                }
            }
            let said =
                "the record does not say what `{path}` was before it was changed; it stands as in the file";
            let notice = Notice::note("value-before-unknown", said).with("path", named(path));
            if !notices.contains(&notice) {
                notices.push(notice);
            }
        }
        let source = Source::new(self.source.name.clone(), "");
        for (path, value) in changes() {
            let written =
                Written { raw: Raw::Number(*value), source: &source, span: 0..0, from: Giver::File };
            if let Some(key) = Path::find(path) {
                order.put(path, &key, Read::Number(*value), &written).map_err(|mistake| {
                    // The record has lost its places by now.
                    Mistakes::from(mistake.without_place())
                })?;
            }
        }
        // The values of the record do not stand where the file has its own.
        order.places.clear();
        for side in [Side::Both, Side::Left, Side::Right] {
            let leg = match side {
                Side::Both => Some(&mut order.adjustments),
                Side::Left => order.left.as_mut().map(|leg| &mut leg.adjustments),
                Side::Right => order.right.as_mut().map(|leg| &mut leg.adjustments),
            };
            if let Some(adjustments) = leg {
                adjustments.retain(|it: &Adjustment| it.value != it.key.about().default);
                adjustments.sort_by_key(|it| it.key);
            }
        }
        Ok((order, notices))
    }
}
