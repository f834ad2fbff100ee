//! One value as a person wrote it, in a file or on the command line, before anyone knows what it shall be.

use std::ops::Range;

use toml::de::DeValue;

use super::Giver;
use super::key::Kind;
use crate::mistake::{Complaint, Mistake, Source};
use crate::unit::{Unit, decimal, parse_length};
use crate::voice::{self, Sentence, Value};

/// A value with its place.
#[derive(Clone, Debug)]
pub(super) struct Written<'a> {
    pub(super) raw: Raw,
    pub(super) source: &'a Source,
    pub(super) span: Range<usize>,
    /// `file`, or `set` for a command-line option.
    pub(super) from: Giver,
}

/// A value as it was written, before its key says what it has to be.
#[derive(Clone, Debug, PartialEq)]
pub enum Raw {
    /// Text between quotation marks.
    Text(String),
    /// A number.
    Number(f64),
    /// Text of a command-line option or of a table's cell, which may be either.
    Bare(String),
    /// Something else, named in words.
    Other(&'static str),
}

/// A value as its key wants it.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Read {
    Text(String),
    /// In cm, degrees or per cent.
    Number(f64),
}

impl Raw {
    pub(super) fn of_toml(value: &DeValue<'_>) -> Self {
        match value {
            DeValue::String(text) => Self::Text(text.to_string()),
            DeValue::Integer(number) => match i64::from_str_radix(number.as_str(), number.radix()) {
                #[expect(
                    clippy::cast_precision_loss,
                    reason = "a whole number beyond 2^53 is no measurement"
                )]
                Ok(number) => Self::Number(number as f64),
                Err(_) => Self::Other("a number too large to be read"),
            },
            DeValue::Float(number) => match number.as_str().parse() {
                Ok(number) => Self::Number(number),
                Err(_) => Self::Other("a number that cannot be read"),
            },
            DeValue::Boolean(_) => Self::Other("true or false"),
            DeValue::Datetime(_) => Self::Other("a date"),
            DeValue::Array(_) => Self::Other("a list"),
            DeValue::Table(_) => Self::Other("a table"),
        }
    }
}

impl Written<'_> {
    /// The value read as its key wants it.
    pub(super) fn read(&self, path: &str, kind: Kind, unit: Unit) -> Result<Read, Mistake> {
        match (kind, &self.raw) {
            (_, Raw::Other(what)) => {
                Err(self.wrong(format!("expected {} for `{path}`, found {what}", named(kind))))
            }
            (Kind::Text, Raw::Text(text) | Raw::Bare(text)) => self.line(path, text).map(Read::Text),
            (Kind::Text, Raw::Number(_)) => Err(self
                .wrong(format!("expected text for `{path}`, found a number"))
                .help("put it between quotation marks")),
            (Kind::OneOf(words), Raw::Text(text) | Raw::Bare(text)) => {
                if words.contains(&text.as_str()) {
                    Ok(Read::Text(text.clone()))
                } else {
                    let list = words.iter().map(|word| format!("`{word}`")).collect::<Vec<_>>().join(", ");
                    Err(self
                        .wrong(format!("expected one of {list} for `{path}`, found {}", quoted(text)))
                        .nearest(text, words.iter().copied()))
                }
            }
            (Kind::OneOf(words), Raw::Number(_)) => {
                let list = words.iter().map(|word| format!("`\"{word}\"`")).collect::<Vec<_>>().join(", ");
                Err(self.wrong(format!("expected one of {list} for `{path}`, found a number")))
            }
            (Kind::Length(least, most), raw) => {
                let cm = match raw {
                    Raw::Number(number) => unit.to_cm(*number),
                    Raw::Text(_) | Raw::Bare(_) if self.is_empty() => {
                        return Err(self.wrong(format!("nothing is filled in for `{path}`")));
                    }
                    Raw::Text(text) | Raw::Bare(text) => parse_length(text, unit).map_err(|expected| {
                        self.wrong(format!("{expected} for `{path}`, found {}", quoted(text)))
                    })?,
                    Raw::Other(_) => return Err(self.wrong("expected a length")),
                };
                self.within(path, cm, (least, most), voice::length)
            }
            (Kind::Degrees(least, most), raw) => {
                self.within(path, self.plain(path, raw)?, (least, most), voice::degrees)
            }
            (Kind::PerCent(least, most), raw) => {
                self.within(path, self.plain(path, raw)?, (least, most), |n| voice::share(n / 100.0))
            }
            (Kind::Count(most), raw) => {
                let count = self.plain(path, raw)?;
                if count.fract() != 0.0 {
                    return Err(self.wrong(format!("expected a whole number for `{path}`, found {count}")));
                }
                self.within(path, count, (0.0, f64::from(most)), |n| voice::named(decimal(n, 0)))
            }
        }
    }

    /// Whether the place was left blank.
    pub(super) fn is_empty(&self) -> bool {
        matches!(&self.raw, Raw::Text(text) | Raw::Bare(text) if text.trim().is_empty())
    }

    /// A mistake at this value.
    pub(super) fn wrong(&self, title: impl Into<Complaint>) -> Mistake {
        Mistake::new(title).at(self.source, self.span.clone(), "")
    }

    fn plain(&self, path: &str, raw: &Raw) -> Result<f64, Mistake> {
        match raw {
            Raw::Number(number) => Ok(*number),
            Raw::Bare(text) if text.bytes().all(|b| b.is_ascii_digit() || b"+-.".contains(&b)) => {
                text.parse().map_err(|_| self.wrong(format!("expected a plain number for `{path}`")))
            }
            Raw::Text(_) | Raw::Bare(_) | Raw::Other(_) => {
                Err(self
                    .wrong(format!("expected a plain number for `{path}`, without unit or quotation marks")))
            }
        }
    }

    fn within(
        &self,
        path: &str,
        value: f64,
        (least, most): (f64, f64),
        counted: impl Fn(f64) -> Value,
    ) -> Result<Read, Mistake> {
        if !value.is_finite() {
            let found = if value.is_nan() { "nan" } else { "infinity" };
            return Err(self.wrong(format!("expected a number for `{path}`, found {found}")));
        }
        // a length typed at the very limit in inches may miss it by the last bit
        const LAST_BIT: f64 = 1e-9;
        if least - LAST_BIT <= value && value <= most + LAST_BIT {
            return Ok(Read::Number(value));
        }
        Err(self.wrong(
            Sentence::new("expected `{path}` between {least} and {most}, found {value}")
                .with("path", voice::named(path))
                .with("least", counted(least))
                .with("most", counted(most))
                .with("value", counted(value)),
        ))
    }

    fn line(&self, path: &str, text: &str) -> Result<String, Mistake> {
        /// Longer than any label or path that a person writes by hand, in bytes.
        const LONGEST: usize = 400;
        if text.trim().is_empty() {
            Err(self.wrong(format!("expected a word for `{path}`, found nothing")))
        } else if text.len() > LONGEST {
            Err(self.wrong(format!("expected at most {LONGEST} bytes for `{path}`, found {}", text.len())))
        } else if text.chars().any(char::is_control) {
            Err(self.wrong(format!("expected one line for `{path}`, found control characters")))
        } else {
            Ok(text.to_owned())
        }
    }
}

fn named(kind: Kind) -> &'static str {
    match kind {
        Kind::Text | Kind::OneOf(_) => "text",
        Kind::Length(..) => "a length",
        Kind::Degrees(..) | Kind::PerCent(..) | Kind::Count(_) => "a number",
    }
}

/// Text as it may stand in a message: short and in one line. What moves a cursor is cleared when it is shown.
pub(super) fn quoted(text: &str) -> String {
    /// Enough to know it again.
    const SHOWN: usize = 40;
    let mut shown: String = text.chars().take(SHOWN).map(|c| if c == '\n' { ' ' } else { c }).collect();
    if text.chars().count() > SHOWN {
        shown.push('…');
    }
    format!("`{shown}`")
}
