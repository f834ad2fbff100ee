//! Notices as the contract prints them: the sentence for people, the values for programs.

use serde::{Serialize, Serializer, ser::SerializeMap as _};

use super::number::{Cm, Degrees, Share};
use crate::{
    mistake::Notice,
    terms::Word,
    unit::Unit,
    voice::{Sentence, Value},
};

/// A notice: its sentence in the reader's unit; its values by their names, lengths in cm whatever that unit is.
#[derive(Debug)]
pub struct Warning {
    notice: Notice,
    unit: Unit,
}

impl Warning {
    /// Each of these notices once, for a reader of `unit`.
    pub fn all(notices: impl IntoIterator<Item = Notice>, unit: Unit) -> Vec<Self> {
        Notice::once(notices).into_iter().map(|notice| Self { notice, unit }).collect()
    }
}

impl Serialize for Warning {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let Self { notice, unit } = self;
        let mut map = serializer.serialize_map(None)?;
        map.serialize_entry("code", notice.code)?;
        map.serialize_entry("text", &notice.text(*unit))?;
        map.serialize_entry("severity", notice.severity.key())?;
        map.serialize_entry("values", &Values(&notice.said, *unit))?;
        map.end()
    }
}

struct Values<'a>(&'a Sentence, Unit);

impl Serialize for Values<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let Self(said, unit) = self;
        serializer.collect_map(said.values().map(|(name, value)| (name, One(value, *unit))))
    }
}

struct One<'a>(&'a Value, Unit);

impl Serialize for One<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self.0 {
            Value::Length(cm)
            | Value::Amount(cm)
            | Value::Change(cm)
            | Value::Moved(cm)
            | Value::AtMost(cm)
            | Value::AtLeast(cm) => Cm(*cm).serialize(serializer),
            Value::Lengths(least, most) => [Cm(*least), Cm(*most)].serialize(serializer),
            Value::Degrees(angle) => Degrees(*angle).serialize(serializer),
            Value::Angles(least, most) => [Degrees(*least), Degrees(*most)].serialize(serializer),
            Value::Share(part) => Share(*part).serialize(serializer),
            Value::Count(count) => count.serialize(serializer),
            Value::Words(words) => words.serialize(serializer),
            Value::Said(said) => said.in_unit(self.1).serialize(serializer),
            Value::List(values) => serializer.collect_seq(values.iter().map(|value| One(value, self.1))),
        }
    }
}
