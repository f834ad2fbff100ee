//! A length as the trade writes it: fractions of measurements, and constants.

use std::{fmt, ops::Range};

use super::{Construction, Inputs, Names, Reference};

/// A sum of fractions of named lengths and of constants in centimetres: `1/16 hip + 0.5`.
///
/// It prints as it was written, since "1/16" is what the handbook says and 0.0625 is not.
#[derive(Clone, Debug, PartialEq)]
pub struct Proportion {
    terms: Vec<Term>,
}

#[derive(Clone, Debug, PartialEq)]
struct Term {
    /// Sign and size together, for reckoning.
    factor: f64,
    /// The size as written; `None` where a name stands alone.
    written: Option<Number>,
    of: Option<(Reference, Box<str>)>,
}

/// A summand of a proportion as it was written; number or name may lack, not both.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Part<'p> {
    /// Taken away rather than added.
    pub minus: bool,
    /// The fraction of what is named, or a constant in cm.
    pub number: Option<Number>,
    /// What is named.
    pub of: Option<(Reference, &'p str)>,
}

/// A number without sign, in the form in which it was written.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Number {
    /// `0.5`, `2`.
    Decimal(f64),
    /// `1/16`, `1 1/2`.
    Fraction {
        /// Whole units before the fraction; 0 where there are none.
        whole: u32,
        /// Above the stroke.
        over: u32,
        /// Under the stroke; never 0.
        under: u32,
    },
}

/// Longer numbers are slips, and would print across the page.
const LONGEST_NUMBER: usize = 12;
/// No factor of a measurement and no length on a trouser draft comes near it.
pub(super) const LARGEST_NUMBER: f64 = 1000.0;

/// Why a text is not a proportion.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unreadable {
    /// The bytes of the text at which reading stopped.
    pub span: Range<usize>,
    /// What is wrong, in one line.
    pub title: String,
    /// What was expected, beside the caret.
    pub label: String,
    /// The name that stands for nothing here, if that is what is wrong.
    pub unknown: Option<String>,
}

impl Proportion {
    /// A constant length in cm.
    pub(super) fn constant(cm: f64) -> Self {
        let written = Some(Number::Decimal(cm.abs()));
        Self { terms: vec![Term { factor: cm, written, of: None }] }
    }

    /// Reads a proportion whose names are among `names`.
    ///
    /// # Errors
    /// When the text is not a sum of fractions and constants, or names something that `names` lacks.
    pub fn parse(text: &str, names: &Names) -> Result<Self, Unreadable> {
        let mut tokens = tokens(text)?;
        tokens.reverse();
        let mut terms = Vec::new();
        while !tokens.is_empty() || terms.is_empty() {
            let minus = match tokens.last() {
                Some((Token::Sign { minus }, _)) => {
                    let minus = *minus;
                    tokens.pop();
                    minus
                }
                Some((_, span)) if !terms.is_empty() => {
                    return Err(Unreadable::new(
                        span.clone(),
                        format!("expected `+` or `-`, found `{}`", &text[span.clone()]),
                        "two lengths without a sign between them",
                    ));
                }
                _ => false,
            };
            terms.push(term(text, minus, &mut tokens, names)?);
        }
        Ok(Self { terms })
    }

    /// The length in cm.
    ///
    /// # Errors
    /// The reference for which neither `inputs` nor what is constructed so far has a value.
    pub fn value(&self, inputs: &Inputs, so_far: &Construction) -> Result<f64, Reference> {
        let mut sum = 0.0;
        for term in &self.terms {
            sum += match &term.of {
                None => term.factor,
                Some((of, _)) => term.factor * so_far.value_of(*of, inputs).ok_or(*of)?,
            };
        }
        Ok(sum)
    }

    /// The summands as written, in order.
    pub fn parts(&self) -> impl Iterator<Item = Part<'_>> {
        self.terms.iter().map(|term| Part {
            minus: term.factor.is_sign_negative(),
            number: term.written,
            of: term.of.as_ref().map(|(reference, name)| (*reference, &**name)),
        })
    }

    /// Every reference named, in order.
    pub fn references(&self) -> impl Iterator<Item = Reference> {
        self.terms.iter().filter_map(|term| term.of.as_ref().map(|(reference, _)| *reference))
    }
}

impl Number {
    /// The number's value.
    pub fn value(self) -> f64 {
        match self {
            Self::Decimal(value) => value,
            Self::Fraction { whole, over, under } => f64::from(whole) + f64::from(over) / f64::from(under),
        }
    }

    /// Reads a number without sign.
    pub(super) fn parse(text: &str) -> Option<Self> {
        let mut tokens = tokens(text.trim()).ok()?;
        match (tokens.pop(), tokens.is_empty()) {
            (Some((Token::Number(number), _)), true) => Some(number),
            _ => None,
        }
    }

    /// The number less one, where that is not negative; a fraction stays a fraction.
    pub(super) fn less_one(self) -> Option<Self> {
        match self {
            Self::Decimal(value) => (value >= 1.0).then_some(Self::Decimal(value - 1.0)),
            Self::Fraction { whole: 0, over, under } => {
                Some(Self::Fraction { whole: 0, over: over.checked_sub(under)?, under })
            }
            Self::Fraction { whole, over, under } => Some(Self::Fraction { whole: whole - 1, over, under }),
        }
    }
}

#[derive(Clone, Copy, Debug)]
enum Token {
    Number(Number),
    Name,
    Sign { minus: bool },
}

/// Splits a text into numbers, names and signs. A fraction, and a whole number with a fraction, is one number.
fn tokens(text: &str) -> Result<Vec<(Token, Range<usize>)>, Unreadable> {
    let run = |from: usize, belongs: fn(char) -> bool| {
        text[from..].find(|letter| !belongs(letter)).map_or(text.len(), |length| from + length)
    };
    let after_spaces = |from: usize| run(from, |letter| letter == ' ');
    let mut found = Vec::new();
    let mut at = 0;
    while let Some(letter) = text[at..].chars().next() {
        let end = match letter {
            ' ' => {
                at += 1;
                continue;
            }
            '+' | '-' => {
                found.push((Token::Sign { minus: letter == '-' }, at..at + 1));
                at + 1
            }
            '0'..='9' | '.' => {
                let digits = |from| run(from, |letter| letter.is_ascii_digit() || letter == '.');
                let fraction = |from: usize| {
                    let over = from..digits(from);
                    let stroke = after_spaces(over.end);
                    if over.is_empty() || !text[stroke..].starts_with('/') {
                        return None;
                    }
                    let under = after_spaces(stroke + '/'.len_utf8());
                    Some((over, under..digits(under)))
                };
                let (whole, parts) = match fraction(at) {
                    Some(parts) => (None, Some(parts)),
                    None => (Some(at..digits(at)), fraction(after_spaces(digits(at)))),
                };
                let end = parts.as_ref().map_or(digits(at), |(_, under)| under.end);
                let number = number(text, whole, parts).ok_or_else(|| {
                    Unreadable::new(
                        at..end,
                        format!("`{}` is not a number of sense here", cut(&text[at..end])),
                        "expected a number such as `2`, `0.5`, `1/16` or `1 1/2`",
                    )
                })?;
                found.push((Token::Number(number), at..end));
                end
            }
            letter if is_name(letter) => {
                let end = run(at, is_name);
                found.push((Token::Name, at..end));
                end
            }
            letter => {
                return Err(Unreadable::new(
                    at..at + letter.len_utf8(),
                    format!("unexpected `{}`", letter.escape_debug()),
                    "expected a number, a name, `+` or `-`",
                ));
            }
        };
        at = end;
    }
    Ok(found)
}

fn is_name(letter: char) -> bool {
    letter.is_alphanumeric() || letter == '_'
}

/// A number from its parts, if each is one and the whole is not absurd.
fn number(
    text: &str,
    whole: Option<Range<usize>>,
    parts: Option<(Range<usize>, Range<usize>)>,
) -> Option<Number> {
    let part = |span: Range<usize>| Some(&text[span]).filter(|digits| digits.len() <= LONGEST_NUMBER);
    let number = match (whole, parts) {
        (Some(whole), None) => Number::Decimal(part(whole)?.parse().ok()?),
        (whole, Some((over, under))) => {
            let count = |span: Range<usize>| part(span)?.parse::<u32>().ok();
            let whole = whole.map_or(Some(0), count)?;
            let (over, under) = (count(over)?, count(under)?);
            let proper = under > 0 && (whole == 0 || over < under);
            proper.then_some(Number::Fraction { whole, over, under })?
        }
        (None, None) => return None,
    };
    (number.value() <= LARGEST_NUMBER).then_some(number)
}

/// A number, a name, or a number of a name.
fn term(
    text: &str,
    minus: bool,
    tokens: &mut Vec<(Token, Range<usize>)>,
    names: &Names,
) -> Result<Term, Unreadable> {
    let mut written = None;
    if let Some((Token::Number(number), _)) = tokens.last() {
        written = Some(*number);
        tokens.pop();
    }
    let of = match tokens.last() {
        Some((Token::Name, span)) => {
            let name = &text[span.clone()];
            let reference = names.resolve(name).ok_or_else(|| Unreadable {
                unknown: Some(name.to_owned()),
                ..Unreadable::new(
                    span.clone(),
                    format!("unknown name `{}`", cut(name)),
                    "stands for nothing here",
                )
            })?;
            let of = (reference, name.into());
            tokens.pop();
            Some(of)
        }
        _ if written.is_some() => None,
        found => {
            let span = found.map_or(text.len()..text.len(), |(_, span)| span.clone());
            return Err(Unreadable::new(
                span,
                "expected a length".to_owned(),
                "expected a proportion such as `1/16 hip + 0.5`",
            ));
        }
    };
    let size = written.map_or(1.0, Number::value);
    Ok(Term { factor: if minus { -size } else { size }, written, of })
}

/// A word cut to what fits into a message.
fn cut(word: &str) -> String {
    const MOST: usize = 40;
    if word.chars().count() <= MOST {
        word.to_owned()
    } else {
        word.chars().take(MOST).chain(['…']).collect()
    }
}

impl Unreadable {
    fn new(span: Range<usize>, title: String, label: &str) -> Self {
        Self { span, title, label: label.to_owned(), unknown: None }
    }
}

impl fmt::Display for Number {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Decimal(value) => write!(out, "{value}"),
            Self::Fraction { whole: 0, over, under } => write!(out, "{over}/{under}"),
            Self::Fraction { whole, over, under } => write!(out, "{whole} {over}/{under}"),
        }
    }
}

impl fmt::Display for Proportion {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (index, term) in self.terms.iter().enumerate() {
            out.write_str(match (index, term.factor.is_sign_negative()) {
                (0, false) => "",
                (0, true) => "-",
                (_, false) => " + ",
                (_, true) => " - ",
            })?;
            match (&term.written, &term.of) {
                (Some(number), Some((_, name))) => write!(out, "{number} {name}")?,
                (Some(number), None) => write!(out, "{number}")?,
                (None, Some((_, name))) => out.write_str(name)?,
                (None, None) => {}
            }
        }
        Ok(())
    }
}
