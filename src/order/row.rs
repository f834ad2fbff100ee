//! Rows of a table, each an order of its own: the keys of the measurement file as columns, read as the file is read.

use super::Giver;
use super::key::Path;
use super::read::Reading;
use super::value::{Raw, Written, quoted};
use super::{Order, Trousers};
use crate::mistake::{Mistake, Mistakes, Notice, Source};

/// Reads rows, with the `KEY=VALUE` of `--set` in place of what they say.
#[derive(Clone, Debug)]
pub struct RowReader {
    options: Vec<Source>,
    /// All rows share this one, so that none has a text of its own.
    source: Source,
    trousers: Trousers,
}

impl RowReader {
    /// A reader for rows under these options.
    ///
    /// # Errors
    /// Everything that is wrong with the options.
    pub fn new(set: &[String]) -> Result<Self, Mistakes> {
        let mut reader = Self {
            options: set.iter().map(|text| Source::new("--set", text.as_str())).collect(),
            source: Source::new("row", ""),
            trousers: Trousers::default(),
        };
        reader.trousers = reader.read([])?.0.trousers;
        Ok(reader)
    }

    /// What is made of a row that says nothing about its trousers.
    pub fn trousers(&self) -> &Trousers {
        &self.trousers
    }

    /// The order of one row. Whether its measurements are a body is [`Order::faults`]' to say.
    ///
    /// # Errors
    /// Every value that is not what its key takes, and every key that stands there twice; without places, since a row
    /// is shown to nobody.
    pub fn read(
        &self,
        cells: impl IntoIterator<Item = (String, Path, Raw)>,
    ) -> Result<(Order, Vec<Notice>), Mistakes> {
        let mut reading = Reading::default();
        for (name, key, raw) in cells {
            let written = Written { raw, source: &self.source, span: 0..0, from: Giver::File };
            if reading.written.iter().any(|(_, known, _)| *known == key) {
                reading.mistakes.push(Mistake::new(format!("`{name}` stands there twice")));
            }
            reading.written.push((name, key, written));
        }
        for option in &self.options {
            reading.option(option);
        }
        let (order, _) = reading.settle(&self.source);
        reading.close(order)
    }
}

/// The key under which a row or column of this name is read: its dotted path, of which `measurements.` and `trousers.`
/// may be left out.
///
/// # Errors
/// When there is no such key.
pub fn row_key(name: &str) -> Result<Path, Mistake> {
    Path::find_short(name).ok_or_else(|| {
        let all: Vec<String> = Path::all().collect();
        Mistake::new(format!("unknown key {}", quoted(name)))
            .nearest(name, all.iter().map(|path| Path::short(path)))
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::terms::{Measurement, Side};

    #[test]
    fn row_of_many_people_in_short_form() {
        let fields = [
            ("sex", "male"),
            ("waist_girth", "84"),
            ("measurements.hip_girth", "98.5"),
            ("inside_leg", "83"),
            ("left.thigh_girth", "58"),
            ("thigh.front", "1.2"),
        ];
        let cells = fields
            .map(|(name, value)| (name.to_owned(), row_key(name).unwrap(), Raw::Bare(value.to_owned())));
        let (order, _) = RowReader::new(&[]).unwrap().read(cells).unwrap();
        assert_eq!(order.body.cm(Measurement::HipGirth), Some(98.5));
        assert_eq!(order.leg(Side::Left).cm(Measurement::ThighGirth), Some(58.0));
        assert_eq!((order.adjustments[0].value, order.adjustments[0].from), (1.2, Giver::File));
        assert!(order.faults().is_empty());
    }

    #[test]
    fn nearest_key_of_a_row_in_short_form() {
        let mistake = row_key("hip_grith").unwrap_err();
        assert_eq!(mistake.remedies(), ["did you mean `hip_girth`?"]);
    }
}
