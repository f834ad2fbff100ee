//! A row of NDJSON.

use std::{borrow::Cow, fmt};

use serde::{
    Deserialize, Deserializer,
    de::{DeserializeSeed, Error, IgnoredAny, MapAccess, SeqAccess, Visitor},
};
use serde_json::value::RawValue;

use crate::order::Raw;

/// A row as far as it could be read.
#[derive(Debug, Default)]
pub(super) struct JsonRow<'t> {
    /// The JSON of each `id`, letter by letter.
    pub(super) ids: Vec<&'t str>,
    /// Everything else that is not `null`.
    pub(super) cells: Vec<(Cow<'t, str>, Raw)>,
}

impl<'t> JsonRow<'t> {
    /// Reads one JSON object; what came before a slip stays read, so that its row can be named.
    ///
    /// # Errors
    /// When the text is anything but one JSON object.
    pub(super) fn read(&mut self, text: &'t str) -> Result<(), serde_json::Error> {
        let mut json = serde_json::Deserializer::from_str(text);
        self.deserialize(&mut json)?;
        json.end()
    }
}

impl<'t> DeserializeSeed<'t> for &mut JsonRow<'t> {
    type Value = ();

    fn deserialize<D: Deserializer<'t>>(self, json: D) -> Result<(), D::Error> {
        json.deserialize_map(self)
    }
}

impl<'t> Visitor<'t> for &mut JsonRow<'t> {
    type Value = ();

    fn expecting(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("a JSON object")
    }

    fn visit_map<A: MapAccess<'t>>(self, mut map: A) -> Result<(), A::Error> {
        while let Some(Name(name)) = map.next_key()? {
            if name == "id" {
                self.ids.push(map.next_value::<&RawValue>()?.get());
            } else if let Cell(Some(raw)) = map.next_value()? {
                self.cells.push((name, raw));
            }
        }
        Ok(())
    }
}

/// The name of a field, borrowed where nothing in it is escaped.
struct Name<'t>(Cow<'t, str>);

impl<'t> Deserialize<'t> for Name<'t> {
    fn deserialize<D: Deserializer<'t>>(json: D) -> Result<Self, D::Error> {
        struct Names;
        impl<'t> Visitor<'t> for Names {
            type Value = Name<'t>;
            fn expecting(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
                out.write_str("a name")
            }
            fn visit_borrowed_str<E: Error>(self, name: &'t str) -> Result<Self::Value, E> {
                Ok(Name(Cow::Borrowed(name)))
            }
            fn visit_str<E: Error>(self, name: &str) -> Result<Self::Value, E> {
                Ok(Name(Cow::Owned(name.to_owned())))
            }
        }
        json.deserialize_str(Names)
    }
}

/// One value; `null` is one that was not given.
struct Cell(Option<Raw>);

impl<'t> Deserialize<'t> for Cell {
    fn deserialize<D: Deserializer<'t>>(json: D) -> Result<Self, D::Error> {
        json.deserialize_any(Cells)
    }
}

struct Cells;

impl<'t> Visitor<'t> for Cells {
    type Value = Cell;

    fn expecting(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("a value")
    }

    fn visit_str<E: Error>(self, text: &str) -> Result<Cell, E> {
        Ok(Cell(Some(Raw::Text(text.to_owned()))))
    }

    fn visit_f64<E: Error>(self, number: f64) -> Result<Cell, E> {
        Ok(Cell(Some(Raw::Number(number))))
    }

    #[expect(clippy::cast_precision_loss, reason = "a whole number beyond 2^53 is no measurement")]
    fn visit_i64<E: Error>(self, number: i64) -> Result<Cell, E> {
        Ok(Cell(Some(Raw::Number(number as f64))))
    }

    #[expect(clippy::cast_precision_loss, reason = "a whole number beyond 2^53 is no measurement")]
    fn visit_u64<E: Error>(self, number: u64) -> Result<Cell, E> {
        Ok(Cell(Some(Raw::Number(number as f64))))
    }

    fn visit_bool<E: Error>(self, _: bool) -> Result<Cell, E> {
        Ok(Cell(Some(Raw::Other("true or false"))))
    }

    fn visit_unit<E: Error>(self) -> Result<Cell, E> {
        Ok(Cell(None))
    }

    fn visit_seq<A: SeqAccess<'t>>(self, mut list: A) -> Result<Cell, A::Error> {
        while list.next_element::<IgnoredAny>()?.is_some() {}
        Ok(Cell(Some(Raw::Other("a list"))))
    }

    fn visit_map<A: MapAccess<'t>>(self, mut object: A) -> Result<Cell, A::Error> {
        while object.next_entry::<IgnoredAny, IgnoredAny>()?.is_some() {}
        Ok(Cell(Some(Raw::Other("an object"))))
    }
}
