//! What is said before it is known in which unit it will be read: sentences of words and quantities.
//!
//! A length never enters a sentence as text. It is handed over as a quantity in cm and becomes text where somebody reads
//! it, in that reader's unit; a bare `f64` is no [`Value`], and a sentence's own words are fixed, so that nothing can be
//! formatted into them. `{name}` in the words waits for the value that [`Sentence::with`] gives. What the words themselves
//! say in cm is a rule of thumb and is read in inches as a round figure too ([`rule_of_thumb`]); where the trade has
//! another figure, both stand there: `{20 to 25 cm|8 to 10 in}`.
//!
//! ```
//! use breeks::{unit::Unit, voice::{Sentence, length}};
//!
//! let said = Sentence::new("the {seam} is {front} on the front; 1 cm can be eased in")
//!     .with("seam", "inseam")
//!     .with("front", length(76.25));
//! assert_eq!(said.in_unit(Unit::Cm), "the inseam is 76.3 cm on the front; 1 cm can be eased in");
//! assert_eq!(said.in_unit(Unit::Inch), "the inseam is 30 in on the front; 3/8 in can be eased in");
//! ```

mod thumb;

pub use thumb::rule_of_thumb;

use std::borrow::Cow;

use crate::{
    terms::Word,
    unit::{Unit, decimal, signed},
};

/// A sentence, or a part of one, whose quantities are not worded yet.
#[derive(Clone, Debug, PartialEq)]
pub struct Sentence {
    words: Words,
    values: Vec<(&'static str, Value)>,
    rest: Vec<Self>,
}

#[derive(Clone, Debug, PartialEq)]
enum Words {
    /// With names in braces.
    Fixed(&'static str),
    /// As they stand: braces in them are a person's.
    Told(String),
}

/// What stands in a sentence at a name.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// A length, cm.
    Length(f64),
    /// A length that a person types or follows, such as the value of a fit parameter, cm: printed finer.
    Amount(f64),
    /// A length that is added or taken away, cm: printed with its sign.
    Change(f64),
    /// How far something moved, cm: a change that is printed finer, and `slight` where a tape does not show it.
    Moved(f64),
    /// The most (or, negative, the least) that still holds, cm: rounded towards nothing.
    AtMost(f64),
    /// This length or more, cm.
    AtLeast(f64),
    /// From the first length to the second, cm.
    Lengths(f64, f64),
    /// An angle, degrees.
    Degrees(f64),
    /// From the first angle to the second, degrees.
    Angles(f64, f64),
    /// A part of a whole, 0 to 1: printed in per cent.
    Share(f64),
    /// How many.
    Count(usize),
    /// Words that hold no quantity: a key, a level, a name that a person gave.
    Words(Cow<'static, str>),
    /// A sentence within the sentence.
    Said(Sentence),
    /// Several, with commas between.
    List(Vec<Self>),
}

/// A length, cm.
pub fn length(cm: f64) -> Value {
    Value::Length(cm)
}

/// A length that a person types or follows, cm.
pub fn amount(cm: f64) -> Value {
    Value::Amount(cm)
}

/// A length that is added or taken away, cm.
pub fn change(cm: f64) -> Value {
    Value::Change(cm)
}

/// The most that still holds, cm.
pub fn at_most(cm: f64) -> Value {
    Value::AtMost(cm)
}

/// How far something moved, cm.
pub fn moved(cm: f64) -> Value {
    Value::Moved(cm)
}

/// From one length to another, cm; without the second, the first or more.
pub fn at_least(least: f64, most: Option<f64>) -> Value {
    most.map_or(Value::AtLeast(least), |most| Value::Lengths(least, most))
}

/// From one length to another, cm.
pub fn lengths((least, most): (f64, f64)) -> Value {
    Value::Lengths(least, most)
}

/// An angle, degrees.
pub fn degrees(degrees: f64) -> Value {
    Value::Degrees(degrees)
}

/// From one angle to another, degrees.
pub fn angles((least, most): (f64, f64)) -> Value {
    Value::Angles(least, most)
}

/// A part of a whole, 0 to 1.
pub fn share(part: f64) -> Value {
    Value::Share(part)
}

/// A name that a person gave: of a file, a key, a body. Never a quantity: it is printed as it stands in every unit.
pub fn named(name: impl Into<String>) -> Value {
    Value::Words(Cow::Owned(name.into()))
}

/// Several, with commas between.
pub fn list<T: Into<Value>>(values: impl IntoIterator<Item = T>) -> Value {
    Value::List(values.into_iter().map(Into::into).collect())
}

impl<W: Word> From<W> for Value {
    fn from(word: W) -> Self {
        Self::Words(Cow::Borrowed(word.key()))
    }
}

impl From<&'static str> for Value {
    fn from(words: &'static str) -> Self {
        Self::Words(Cow::Borrowed(words))
    }
}

impl From<usize> for Value {
    fn from(count: usize) -> Self {
        Self::Count(count)
    }
}

impl From<Sentence> for Value {
    fn from(said: Sentence) -> Self {
        Self::Said(said)
    }
}

impl Value {
    /// The value as it is read in `unit`, with the unit behind every number.
    pub fn in_unit(&self, unit: Unit) -> String {
        match self {
            Self::Length(cm) => unit.length(*cm),
            Self::Amount(cm) => unit.amount(*cm),
            Self::Change(cm) => unit.change(*cm),
            Self::AtMost(cm) => unit.at_most(*cm),
            Self::Moved(_) | Self::AtLeast(_) | Self::Lengths(..) => {
                format!("{} {}", self.in_column(unit), unit.tag())
            }
            Self::Degrees(angle) => format!("{} degrees", decimal(*angle, 1)),
            Self::Angles(least, most) => format!("{} to {} degrees", decimal(*least, 1), decimal(*most, 1)),
            Self::Share(part) => format!("{} per cent", decimal(100.0 * part, 0)),
            Self::Count(count) => count.to_string(),
            Self::Words(Cow::Borrowed(words)) => rule_of_thumb(words, unit).into_owned(),
            Self::Words(Cow::Owned(name)) => name.clone(),
            Self::Said(said) => said.in_unit(unit),
            Self::List(values) => {
                values.iter().map(|value| value.in_unit(unit)).collect::<Vec<_>>().join(", ")
            }
        }
    }
}

impl Value {
    /// What a table has where there is nothing to say.
    pub const NOTHING: Self = Self::Words(Cow::Borrowed(""));

    /// Whether it is read in the reader's unit.
    pub fn is_length(&self) -> bool {
        match self {
            Self::Length(_)
            | Self::Amount(_)
            | Self::Change(_)
            | Self::Moved(_)
            | Self::AtMost(_)
            | Self::AtLeast(_)
            | Self::Lengths(..) => true,
            Self::List(values) => values.iter().any(Self::is_length),
            Self::Degrees(_)
            | Self::Angles(..)
            | Self::Share(_)
            | Self::Count(_)
            | Self::Words(_)
            | Self::Said(_) => false,
        }
    }

    /// The value as a column of a table shows it: a length without its unit, which stands over the table; degrees by
    /// their sign.
    pub fn in_column(&self, unit: Unit) -> String {
        /// What moves by less is the same line under the pencil, cm.
        const SEEN: f64 = 0.005;
        match self {
            Self::Length(cm) => unit.figure(*cm),
            Self::Amount(cm) => unit.fine(*cm),
            Self::Change(cm) => unit.signed(*cm),
            Self::Moved(cm) => match signed(unit.fine(*cm)) {
                text if text == "0" && cm.abs() >= SEEN => "slight".to_owned(),
                text => text,
            },
            Self::AtLeast(cm) => format!("at least {}", unit.figure(*cm)),
            Self::Lengths(least, most) => format!("{} to {}", unit.figure(*least), unit.figure(*most)),
            Self::Degrees(angle) => format!("{}°", decimal(*angle, 1)),
            Self::Angles(least, most) => format!("{} to {}°", decimal(*least, 0), decimal(*most, 0)),
            Self::List(values) => {
                values.iter().map(|value| value.in_column(unit)).collect::<Vec<_>>().join(", ")
            }
            Self::AtMost(_) | Self::Share(_) | Self::Count(_) | Self::Words(_) | Self::Said(_) => {
                self.in_unit(unit)
            }
        }
    }
}

impl From<Option<Self>> for Value {
    fn from(value: Option<Self>) -> Self {
        value.unwrap_or(Self::NOTHING)
    }
}

impl Sentence {
    /// A sentence of fixed words, in which `{name}` waits for its value.
    pub fn new(words: &'static str) -> Self {
        Self { words: Words::Fixed(words), values: Vec::new(), rest: Vec::new() }
    }

    /// Words that were put together from names: they hold no quantity, since they read alike in every unit.
    pub(crate) fn told(words: String) -> Self {
        Self { words: Words::Told(words), values: Vec::new(), rest: Vec::new() }
    }

    /// The value of a name.
    #[must_use]
    pub fn with(mut self, name: &'static str, value: impl Into<Value>) -> Self {
        debug_assert!(
            matches!(self.words, Words::Fixed(words) if words.contains(&format!("{{{name}}}"))),
            "{:?} has no {{{name}}}",
            self.words
        );
        self.values.push((name, value.into()));
        self
    }

    /// The sentence and more behind it, which begins with its own mark or blank: `; measure again`.
    #[must_use]
    pub fn then(mut self, more: Self) -> Self {
        self.rest.push(more);
        self
    }

    /// The values with their names, those of what was added too.
    pub fn values(&self) -> impl Iterator<Item = (&'static str, &Value)> {
        let mut all: Vec<(&'static str, &Value)> =
            self.values.iter().map(|(name, value)| (*name, value)).collect();
        all.extend(self.rest.iter().flat_map(Self::values));
        all.into_iter()
    }

    /// The sentence as it is read in `unit`.
    pub fn in_unit(&self, unit: Unit) -> String {
        let mut text = String::new();
        let mut words = match &self.words {
            Words::Fixed(words) => words,
            Words::Told(words) => {
                text.push_str(words);
                ""
            }
        };
        while let Some((before, (inside, after))) =
            words.split_once('{').and_then(|(before, rest)| Some((before, rest.split_once('}')?)))
        {
            text.push_str(&rule_of_thumb(before, unit));
            match (inside.split_once('|'), self.values.iter().find(|(name, _)| *name == inside)) {
                (Some((cm, inch)), _) => text.push_str(if unit == Unit::Cm { cm } else { inch }),
                (None, Some((_, value))) => text.push_str(&value.in_unit(unit)),
                (None, None) => {
                    debug_assert!(false, "{{{inside}}} has no value in {:?}", self.words);
                    text.push_str(inside);
                }
            }
            words = after;
        }
        text.push_str(&rule_of_thumb(words, unit));
        text.extend(self.rest.iter().map(|more| more.in_unit(unit)));
        text
    }
}

impl From<&'static str> for Sentence {
    fn from(words: &'static str) -> Self {
        Self::new(words)
    }
}

/// Words with a capital at their beginning.
pub fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default()
}

/// Words as a sentence of its own: with a capital, and a full stop where no other mark ends it.
pub fn sentence(words: &str) -> String {
    let end = if words.ends_with(['.', '!', '?', ':']) { "" } else { "." };
    format!("{}{end}", capital(words))
}

/// Names as a sentence lists them.
pub fn listed(words: &[String]) -> String {
    match words {
        [] => String::new(),
        [one] => one.clone(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}

/// A key of a file as a reader says it.
pub fn spoken(key: &str) -> String {
    key.replace('_', " ")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::terms::Panel;

    #[test]
    fn one_sentence_in_two_units() {
        let said =
            Sentence::new("the {panel} wants {by}, {from}, at {lean}, {part}; {1.9 cm|3/4 in} is usual")
                .with("panel", Panel::Front)
                .with("by", change(-1.27))
                .with("from", lengths((0.6, 2.5)))
                .with("lean", degrees(-0.04))
                .with("part", share(0.255))
                .then(Sentence::new(": {all}").with("all", list(["a", "b"])));
        assert_eq!(
            said.in_unit(Unit::Cm),
            "the front wants −1.3 cm, 0.6 to 2.5 cm, at 0.0 degrees, 26 per cent; 1.9 cm is usual: a, b"
        );
        assert_eq!(
            said.in_unit(Unit::Inch),
            "the front wants −1/2 in, 1/4 to 1 in, at 0.0 degrees, 26 per cent; 3/4 in is usual: a, b"
        );
        assert_eq!(said.values().count(), 6);
    }

    #[test]
    fn braces_that_a_person_wrote_left_alone() {
        let said = Sentence::new("`{name}`").with("name", named("{1 cm} {"));
        assert_eq!(said.in_unit(Unit::Inch), "`{1 cm} {`");
    }
}
