//! Lengths as people write them: centimetres inside, inches and fractions only at the edges.

use crate::terms::words;

words! {
    /// The unit of a file's plain numbers.
    Unit {
        /// Centimetres.
        Cm = "cm",
        /// Inches of 2.54 cm.
        Inch = "inch",
    }
}

/// Centimetres in an inch, exactly.
pub const CM_PER_INCH: f64 = 2.54;

impl Unit {
    /// A number of this unit, in centimetres.
    pub fn to_cm(self, number: f64) -> f64 {
        match self {
            Self::Cm => number,
            Self::Inch => number * CM_PER_INCH,
        }
    }

    /// Centimetres, as a number of this unit.
    pub fn from_cm(self, cm: f64) -> f64 {
        match self {
            Self::Cm => cm,
            Self::Inch => cm / CM_PER_INCH,
        }
    }
}

/// A length as a person writes it, in centimetres: `31.5`, `31 1/2`, `31-1/2`, `31½`, `3/4 in`, `1.9 cm`. A plain
/// number is in `unit`; a length that names its own unit is in that.
///
/// # Errors
/// What was expected instead, in words, when the text is not a length or not finite.
pub fn parse_length(text: &str, unit: Unit) -> Result<f64, String> {
    let expected = || "expected a length such as `31.5`, `31 1/2`, `3/4 in` or `1.9 cm`".to_owned();
    let text = text.trim();
    let (number, unit) = [
        ("cm", Unit::Cm),
        ("inches", Unit::Inch),
        ("inch", Unit::Inch),
        ("in", Unit::Inch),
        ("\"", Unit::Inch),
    ]
    .into_iter()
    .find_map(|(ending, own)| text.strip_suffix(ending).map(|rest| (rest.trim_end(), own)))
    .unwrap_or((text, unit));
    if text.ends_with("mm") {
        return Err("expected centimetres or inches, not millimetres".to_owned());
    }
    let (sign, number) = match number.strip_prefix('-') {
        Some(rest) => (-1.0, rest.trim_start()),
        None => (1.0, number.strip_prefix('+').unwrap_or(number)),
    };
    let value = parse_mixed(number).ok_or_else(expected)?;
    if value.is_finite() { Ok(sign * unit.to_cm(value)) } else { Err(expected()) }
}

/// A whole number, a decimal, a fraction, or a whole number and a fraction.
fn parse_mixed(text: &str) -> Option<f64> {
    let vulgar = |letter| match letter {
        '½' => Some(0.5),
        '¼' => Some(0.25),
        '¾' => Some(0.75),
        '⅛' => Some(0.125),
        '⅜' => Some(0.375),
        '⅝' => Some(0.625),
        '⅞' => Some(0.875),
        _ => None,
    };
    if let Some(last) = text.chars().last()
        && let Some(part) = vulgar(last)
    {
        let whole = text[..text.len() - last.len_utf8()].trim_end();
        return if whole.is_empty() {
            Some(part)
        } else {
            parse_plain(whole).filter(|n| n.fract() == 0.0).map(|n| n + part)
        };
    }
    match text.split_once('/') {
        None => parse_plain(text),
        Some((left, under)) => {
            let under = parse_plain(under.trim()).filter(|n| *n > 0.0 && n.fract() == 0.0)?;
            match left.trim().rsplit_once([' ', '-']) {
                None => Some(parse_plain(left.trim())? / under),
                Some((whole, over)) => {
                    let (whole, over) = (parse_plain(whole.trim())?, parse_plain(over)?);
                    (whole.fract() == 0.0 && over < under).then(|| whole + over / under)
                }
            }
        }
    }
}

/// Digits with at most one point; no sign, exponent or word, which `str::parse` would take.
fn parse_plain(text: &str) -> Option<f64> {
    let digits = !text.is_empty() && text.bytes().all(|b| b.is_ascii_digit() || b == b'.');
    digits.then(|| text.parse().ok()).flatten()
}
