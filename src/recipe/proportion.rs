//! A length as the trade writes it: fractions of measurements, and constants.

use std::{fmt, ops::Range};

use super::{Construction, Inputs, Names, Reference};
use crate::unit::Unit;

/// A sum of fractions of named lengths and of constants: `1/16 hip + 0.5`.
///
/// It prints as it was written, since "1/16" is what the handbook says and 0.0625 is not. What is divided after its name
/// or in brackets prints as the sum it stands for: `(hip + 2)/4` is `1/4 hip + 1/2`.
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
    /// The unit of a constant as written.
    unit: Unit,
}

/// A summand of a proportion as it was written; number or name may lack, not both.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Part<'p> {
    /// Taken away rather than added.
    pub minus: bool,
    /// The fraction of what is named, or a constant.
    pub number: Option<Number>,
    /// What is named.
    pub of: Option<(Reference, &'p str)>,
    /// The unit of a constant.
    pub unit: Unit,
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
/// Brackets within brackets beyond this are a slip.
const DEEPEST_BRACKETS: usize = 8;
/// More summands than any handbook's rule has, brackets worked out.
const MOST_TERMS: usize = 40;

/// Fractions that the trade says in words.
const WORDS: [(&str, u32); 10] = [
    ("half", 2),
    ("third", 3),
    ("quarter", 4),
    ("fifth", 5),
    ("sixth", 6),
    ("eighth", 8),
    ("tenth", 10),
    ("twelfth", 12),
    ("sixteenth", 16),
    ("twentieth", 20),
];
/// Words that a proportion may hold between a fraction and what it is of, and units behind a constant.
const LITTLE_WORDS: [&str; 7] = ["a", "an", "of", "the", "cm", "in", "inch"];
/// Fractions that have a letter of their own.
const LETTERS: [(char, u32, u32); 10] = [
    ('½', 1, 2),
    ('⅓', 1, 3),
    ('⅔', 2, 3),
    ('¼', 1, 4),
    ('¾', 3, 4),
    ('⅙', 1, 6),
    ('⅛', 1, 8),
    ('⅜', 3, 8),
    ('⅝', 5, 8),
    ('⅞', 7, 8),
];

/// Whether proportions know the word already, so that nothing else may go by it.
pub(super) fn is_taken(word: &str) -> bool {
    LITTLE_WORDS.contains(&word) || WORDS.iter().any(|(known, _)| *known == word)
}

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
    /// How it is written, where that can be said.
    pub remedy: Option<String>,
}

impl Proportion {
    /// A constant length.
    pub(super) fn constant(number: f64, unit: Unit) -> Self {
        let written = Some(Number::Decimal(number.abs()));
        Self { terms: vec![Term { factor: unit.to_cm(number), written, of: None, unit }] }
    }

    /// Reads a proportion whose names are among `names`.
    ///
    /// # Errors
    /// When the text is not a sum of fractions and constants, or names something that `names` lacks.
    pub fn parse(text: &str, names: &Names) -> Result<Self, Unreadable> {
        let mut tokens = tokens(text)?;
        tokens.reverse();
        let mut parser = Parser { text, tokens, names };
        let terms = parser.sum(0)?;
        match parser.tokens.last() {
            None => Ok(Self { terms }),
            Some((_, span)) => Err(parser.stray(span.clone())),
        }
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
            unit: term.unit,
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

impl Number {
    /// As whole numbers over and under a stroke; `None` for a decimal of more than four places.
    fn fraction(self) -> Option<(u64, u64)> {
        match self {
            Self::Fraction { whole, over, under } => {
                Some((u64::from(whole) * u64::from(under) + u64::from(over), u64::from(under)))
            }
            Self::Decimal(value) => {
                const PLACES: f64 = 10_000.0;
                let over = (value * PLACES).round();
                ((over / PLACES - value).abs() < 1e-12).then_some((over as u64, PLACES as u64))
            }
        }
    }

    /// So many times `self`, exact where both are fractions.
    fn times(self, other: Self) -> Self {
        let exact = || {
            let ((a, b), (c, d)) = (self.fraction()?, other.fraction()?);
            Self::reduced(a.checked_mul(c)?, b.checked_mul(d)?)
        };
        exact().unwrap_or(Self::Decimal(self.value() * other.value()))
    }

    /// `1/n` of `self`; `None` for a divisor of nothing.
    fn over(self, divisor: Self) -> Option<Self> {
        let exact = || {
            let ((a, b), (c, d)) = (self.fraction()?, divisor.fraction()?);
            Self::reduced(a.checked_mul(d)?, b.checked_mul(c)?)
        };
        (divisor.value() > 0.0).then(|| exact().unwrap_or(Self::Decimal(self.value() / divisor.value())))
    }

    /// The fraction in its least numbers; a whole number without a stroke.
    fn reduced(over: u64, under: u64) -> Option<Self> {
        let (mut a, mut b) = (over, under);
        while b > 0 {
            (a, b) = (b, a % b);
        }
        let (over, under) = (over.checked_div(a)?, under.checked_div(a)?);
        match (over, under) {
            (whole, 1) => Some(Self::Decimal(whole as f64)),
            _ => {
                Some(Self::Fraction { whole: 0, over: over.try_into().ok()?, under: under.try_into().ok()? })
            }
        }
    }
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum Token {
    Number(Number),
    Name,
    Sign { minus: bool },
    Open,
    Close,
    Stroke,
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
            '+' | '-' | '\u{2212}' | '\u{2013}' => {
                let end = at + letter.len_utf8();
                found.push((Token::Sign { minus: letter != '+' }, at..end));
                end
            }
            '(' | ')' | '/' => {
                let token = match letter {
                    '(' => Token::Open,
                    ')' => Token::Close,
                    _ => Token::Stroke,
                };
                found.push((token, at..at + 1));
                at + 1
            }
            _ if LETTERS.iter().any(|(known, ..)| *known == letter) => {
                let end = at + letter.len_utf8();
                let (over, under) = LETTERS
                    .iter()
                    .find(|(known, ..)| *known == letter)
                    .map_or((0, 1), |(_, over, under)| (*over, *under));
                // `1½` and `1 ½` are one number.
                let whole = match found.last() {
                    Some((Token::Number(Number::Decimal(whole)), span))
                        if whole.fract() == 0.0 && text[span.end..at].trim().is_empty() =>
                    {
                        Some((*whole as u32, span.start))
                    }
                    _ => None,
                };
                if whole.is_some() {
                    found.pop();
                }
                let (whole, start) = whole.unwrap_or((0, at));
                found.push((Token::Number(Number::Fraction { whole, over, under }), start..end));
                end
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
                let comma = text[end..]
                    .strip_prefix(',')
                    .and_then(|rest| rest.split(|c: char| !c.is_ascii_digit()).next());
                if let Some(places) = comma.filter(|places| !places.is_empty()) {
                    return Err(Unreadable::new(
                        at..end + 1 + places.len(),
                        format!("`{}` has a comma", cut(&text[at..end + 1 + places.len()])),
                        "expected a decimal point",
                    )
                    .remedy(format!("write `{}.{}`", cut(&text[at..end]), cut(places))));
                }
                found.push((Token::Number(number), at..end));
                end
            }
            letter if is_name(letter) => {
                let end = run(at, is_name);
                found.push((Token::Name, at..end));
                end
            }
            letter => {
                let mistake = Unreadable::new(
                    at..at + letter.len_utf8(),
                    format!("unexpected `{}`", letter.escape_debug()),
                    "expected a number, a name, `+` or `-`",
                );
                return Err(match letter {
                    '*' | '×' | '·' => mistake.remedy(
                        "the number stands before what it counts, without a sign: `1/16 hip`, `0.25 hip`",
                    ),
                    '"' | '\'' | '″' | '′' => mistake.remedy("write `in` behind inches: `1/2 in`"),
                    '%' => {
                        mistake.remedy("write a part as a fraction or a decimal: `0.05 hip` for 5 per cent")
                    }
                    '[' | '{' => mistake.remedy("brackets are round: `1/4 (hip + hip_ease)`"),
                    ',' => mistake.remedy("a decimal has a point: `0.5`"),
                    _ => mistake.remedy("a length is written like `1/16 hip + 0.5`"),
                });
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

/// What is left to read, the next token last.
struct Parser<'t> {
    text: &'t str,
    tokens: Vec<(Token, Range<usize>)>,
    names: &'t Names,
}

impl Parser<'_> {
    fn next_is(&self, token: Token) -> bool {
        self.tokens.last().is_some_and(|(next, _)| *next == token)
    }

    /// The next token, if it is one of these words.
    fn word(&mut self, words: &[&str]) -> Option<&str> {
        let (token, span) = self.tokens.last()?;
        let word = &self.text[span.clone()];
        if *token != Token::Name || !words.contains(&word) {
            return None;
        }
        self.tokens.pop();
        Some(word)
    }

    fn stray(&self, span: Range<usize>) -> Unreadable {
        let found = &self.text[span.clone()];
        let mistake = Unreadable::new(
            span.clone(),
            format!("expected `+` or `-`, found `{}`", cut(found)),
            "two lengths without a sign between them",
        );
        match found {
            ")" => mistake.remedy("this bracket was never opened: leave it out"),
            "(" => mistake
                .remedy("a number may stand before a bracket, a length may not: `1/4 (hip + hip_ease)`"),
            "/" => mistake
                .remedy("a fraction stands before what it is of: `1/20 hip`; `hip/20` is understood too"),
            _ => mistake,
        }
    }

    /// Summands with signs between them, up to the end or a closing bracket.
    fn sum(&mut self, depth: usize) -> Result<Vec<Term>, Unreadable> {
        let mut terms = Vec::new();
        while terms.is_empty() || !(self.tokens.is_empty() || self.next_is(Token::Close)) {
            let minus = match self.tokens.last() {
                Some((Token::Sign { minus }, _)) => {
                    let minus = *minus;
                    self.tokens.pop();
                    minus
                }
                Some((_, span)) if !terms.is_empty() => return Err(self.stray(span.clone())),
                _ => false,
            };
            let start = self.tokens.last().map_or(self.text.len(), |(_, span)| span.start);
            terms.extend(self.product(minus, depth)?);
            if terms.len() > MOST_TERMS {
                return Err(Unreadable::new(
                    start..self.text.len(),
                    "this sum is too long".to_owned(),
                    "expected at most 40 summands",
                )
                .remedy("make a part of it a quantity of its own"));
            }
        }
        Ok(terms)
    }

    /// A number, a name, a bracket, or a number of one of the latter; what follows a stroke divides it.
    fn product(&mut self, minus: bool, depth: usize) -> Result<Vec<Term>, Unreadable> {
        let number = self.number();
        let counted = |written: Option<Number>| match (number, written) {
            (Some(count), Some(of)) => Some(count.times(of)),
            (count, of) => count.or(of),
        };
        let mut terms = match self.tokens.last().cloned() {
            Some((Token::Open, span)) => {
                self.tokens.pop();
                if depth >= DEEPEST_BRACKETS {
                    return Err(Unreadable::new(
                        span,
                        "brackets in brackets in brackets".to_owned(),
                        "too deep",
                    )
                    .remedy("make a part of it a quantity of its own"));
                }
                let inside = self.sum(depth + 1)?;
                if !self.next_is(Token::Close) {
                    return Err(Unreadable::new(
                        span,
                        "a bracket that is not closed".to_owned(),
                        "opened here",
                    )
                    .remedy("close it with `)`"));
                }
                self.tokens.pop();
                inside
                    .into_iter()
                    .map(|term| {
                        let minus = minus != term.factor.is_sign_negative();
                        let written = counted(term.written).map(|number| term.as_it_was(number));
                        term.resized(written, minus)
                    })
                    .collect()
            }
            Some((Token::Name, span)) => {
                let name = &self.text[span.clone()];
                let unit = [("cm", Unit::Cm), ("in", Unit::Inch), ("inch", Unit::Inch)];
                let unit = unit.iter().find(|(word, _)| *word == name).map(|(_, unit)| *unit);
                match (unit, number) {
                    (Some(unit), Some(_)) => {
                        self.tokens.pop();
                        vec![Term::constant(number, minus, unit)]
                    }
                    _ => {
                        let of = (self.resolved(span)?, name.into());
                        self.tokens.pop();
                        vec![
                            Term { factor: 0.0, written: None, of: Some(of), unit: Unit::Cm }
                                .resized(number, minus),
                        ]
                    }
                }
            }
            _ if number.is_some() => vec![Term::constant(number, minus, self.names.unit())],
            found => {
                let span = found.map_or(self.text.len()..self.text.len(), |(_, span)| span);
                return Err(Unreadable::new(
                    span,
                    "expected a length".to_owned(),
                    "expected a proportion such as `1/16 hip + 0.5`",
                ));
            }
        };
        while self.next_is(Token::Stroke) {
            let (_, stroke) = self.tokens.pop().unwrap_or((Token::Stroke, 0..0));
            let divisor = match self.tokens.last() {
                Some((Token::Number(number), _)) => Some(*number),
                _ => None,
            };
            let divide = |term: &Term| {
                let written = term.written.unwrap_or(Number::Decimal(1.0));
                let written = term.as_it_was(written.over(divisor?)?);
                Some(term.clone().resized(Some(written), term.factor.is_sign_negative()))
            };
            let Some(divided) = terms.iter().map(divide).collect() else {
                return Err(Unreadable::new(
                    stroke,
                    "nothing to divide by".to_owned(),
                    "expected a number over 0 behind the stroke",
                )
                .remedy("a length is divided by a number: `hip/20`, or `1/20 hip`"));
            };
            self.tokens.pop();
            terms = divided;
        }
        Ok(terms)
    }

    /// `2`, `1/16`, `half`, `a quarter of`.
    fn number(&mut self) -> Option<Number> {
        let article = self.word(&["a", "an", "the"]).is_some();
        let number = match self.tokens.last() {
            Some((Token::Number(number), _)) if !article => Some(*number),
            Some((Token::Name, span)) => {
                let word = &self.text[span.clone()];
                let said = WORDS.iter().find(|(known, _)| *known == word);
                said.map(|(_, under)| Number::Fraction { whole: 0, over: 1, under: *under })
            }
            _ => None,
        };
        number?;
        self.tokens.pop();
        self.word(&["of"]);
        self.word(&["the"]);
        number
    }

    fn resolved(&self, span: Range<usize>) -> Result<Reference, Unreadable> {
        let name = &self.text[span.clone()];
        self.names.resolve(name).ok_or_else(|| Unreadable {
            unknown: Some(name.to_owned()),
            ..Unreadable::new(span, format!("unknown name `{}`", cut(name)), "stands for nothing here")
        })
    }
}

impl Term {
    fn constant(written: Option<Number>, minus: bool, unit: Unit) -> Self {
        Self { factor: 0.0, written: None, of: None, unit }.resized(written, minus)
    }

    /// A new size in the way of writing of the old one: a constant that was a decimal stays one where it can.
    fn as_it_was(&self, number: Number) -> Number {
        /// No ruler shows more places.
        const PLACES: f64 = 10_000.0;
        let value = number.value();
        let short = ((value * PLACES).round() / PLACES - value).abs() < 1e-12;
        match (&self.of, self.written) {
            (None, Some(Number::Decimal(_))) if short => Number::Decimal(value),
            _ => number,
        }
    }

    /// The same with another size and sign.
    fn resized(mut self, written: Option<Number>, minus: bool) -> Self {
        let size = written.map_or(1.0, Number::value);
        let size = if self.of.is_none() { self.unit.to_cm(size) } else { size };
        (self.factor, self.written) = (if minus { -size } else { size }, written);
        self
    }
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
        Self { span, title, label: label.to_owned(), unknown: None, remedy: None }
    }

    fn remedy(self, remedy: impl Into<String>) -> Self {
        Self { remedy: Some(remedy.into()), ..self }
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
                (Some(number), None) if term.unit == Unit::Inch => write!(out, "{number} in")?,
                (Some(number), None) => write!(out, "{number}")?,
                (None, Some((_, name))) => out.write_str(name)?,
                (None, None) => {}
            }
        }
        Ok(())
    }
}
