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

/// The finest part of an inch on a tape.
const FINEST: u32 = 64;

impl Unit {
    /// A length as the file of this unit would have it: `78.7`, or `31 1/2`. Centimetres to a hundredth; inches as a
    /// whole number and a fraction where they are sixty-fourths, else to four decimals.
    pub fn write(self, cm: f64) -> String {
        match self {
            Self::Cm => trimmed(cm, 2),
            Self::Inch => {
                /// Far below what any tape shows, far above rounding in the last bits.
                const SAME: f64 = 1e-6;
                let parts = self.from_cm(cm) * f64::from(FINEST);
                if (parts - parts.round()).abs() < SAME {
                    fraction(self.from_cm(cm), FINEST)
                } else {
                    trimmed(self.from_cm(cm), 4)
                }
            }
        }
    }

    /// A length as it is read on a tape of this unit, with its unit: `78.7 cm`, or `31 in` to the nearest eighth.
    pub fn on_tape(self, cm: f64) -> String {
        match self {
            // adding nothing turns a minus before nothing into a plus
            Self::Cm => format!("{:.1} cm", (cm * 10.0).round() / 10.0 + 0.0),
            Self::Inch => format!("{} in", fraction(self.from_cm(cm), 8)),
        }
    }
}

/// At most so many decimals, without zeros at the end and without a minus before nothing.
fn trimmed(number: f64, decimals: usize) -> String {
    let text = format!("{number:.decimals$}");
    let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

/// To the nearest of so many parts (a power of two), the fraction reduced: `31 1/2`, `3/4`, `-2`.
fn fraction(number: f64, parts: u32) -> String {
    let all = (number.abs() * f64::from(parts)).round();
    let (whole, mut over, mut under) =
        ((all / f64::from(parts)).floor(), all % f64::from(parts), f64::from(parts));
    while over > 0.0 && over % 2.0 == 0.0 {
        (over, under) = (over / 2.0, under / 2.0);
    }
    let sign = if number < 0.0 && all > 0.0 { "-" } else { "" };
    match (whole > 0.0, over > 0.0) {
        (_, false) => format!("{sign}{whole:.0}"),
        (false, true) => format!("{sign}{over:.0}/{under:.0}"),
        (true, true) => format!("{sign}{whole:.0} {over:.0}/{under:.0}"),
    }
}

/// A length as a person writes it, in centimetres: `31.5`, `31 1/2`, `31-1/2`, `31½`, `3/4 in`, `31 1/2"`, `1.9 cm`. A
/// plain number is in `unit`; a length that names its own unit is in that.
///
/// # Errors
/// What was expected instead, in words, when the text is not a length or not finite.
pub fn parse_length(text: &str, unit: Unit) -> Result<f64, String> {
    /// Longer is no length, bytes.
    const LONGEST: usize = 40;
    let expected = || "expected a length such as `31.5`, `31 1/2`, `3/4 in` or `1.9 cm`".to_owned();
    if text.len() > LONGEST {
        return Err(expected());
    }
    let text: String = text.trim().chars().map(plain_letter).collect();
    if text.ends_with("mm") {
        return Err("expected centimetres or inches, not millimetres,".to_owned());
    }
    if text.contains(',') {
        return Err("expected a decimal point, not a comma,".to_owned());
    }
    let (number, unit) = [
        ("cm", Unit::Cm),
        ("inches", Unit::Inch),
        ("inch", Unit::Inch),
        ("in", Unit::Inch),
        ("\"", Unit::Inch),
    ]
    .into_iter()
    .find_map(|(ending, own)| text.strip_suffix(ending).map(|rest| (rest.trim_end(), own)))
    .unwrap_or((&text, unit));
    let (sign, number) = match number.strip_prefix('-') {
        Some(rest) => (-1.0, rest.trim_start()),
        None => (1.0, number.strip_prefix('+').unwrap_or(number)),
    };
    let value = parse_mixed(number).ok_or_else(expected)?;
    if value.is_finite() { Ok(sign * unit.to_cm(value)) } else { Err(expected()) }
}

/// Characters that a person or a word processor writes for a plain one.
fn plain_letter(letter: char) -> char {
    match letter {
        '\u{2044}' | '\u{2215}' => '/',
        '\u{2033}' | '\u{201d}' | '\u{201c}' => '"',
        '\u{2010}' | '\u{2011}' | '\u{2012}' | '\u{2013}' | '\u{2212}' => '-',
        _ if letter.is_whitespace() => ' ',
        _ => letter,
    }
}

/// A whole number, a decimal, a fraction, or a whole number and a fraction.
fn parse_mixed(text: &str) -> Option<f64> {
    if let Some(last) = text.chars().last()
        && let Some(part) = vulgar(last)
    {
        let whole = text[..text.len() - last.len_utf8()].trim_end();
        let whole = whole.strip_suffix('-').unwrap_or(whole).trim_end();
        return match (whole.is_empty(), text.starts_with(last)) {
            (true, true) => Some(part),
            (true, false) => None,
            (false, _) => parse_whole(whole).map(|n| n + part),
        };
    }
    let Some((left, under)) = text.split_once('/') else { return parse_plain(text) };
    let under = parse_whole(under.trim()).filter(|n| *n > 0.0)?;
    match left.trim().rsplit_once([' ', '-']) {
        None => Some(parse_whole(left.trim())? / under),
        Some((whole, over)) => {
            let whole = whole.trim();
            let whole = whole.strip_suffix('-').unwrap_or(whole).trim_end();
            let (whole, over) = (parse_whole(whole)?, parse_whole(over)?);
            (over < under).then(|| whole + over / under)
        }
    }
}

fn vulgar(letter: char) -> Option<f64> {
    match letter {
        '½' => Some(0.5),
        '¼' => Some(0.25),
        '¾' => Some(0.75),
        '⅛' => Some(0.125),
        '⅜' => Some(0.375),
        '⅝' => Some(0.625),
        '⅞' => Some(0.875),
        _ => None,
    }
}

/// Digits alone.
fn parse_whole(text: &str) -> Option<f64> {
    let digits = !text.is_empty() && text.bytes().all(|b| b.is_ascii_digit());
    digits.then(|| text.parse().ok()).flatten()
}

/// Digits with at most one point; no sign, exponent or word, which `str::parse` would take.
fn parse_plain(text: &str) -> Option<f64> {
    let digits = !text.is_empty() && text.bytes().all(|b| b.is_ascii_digit() || b == b'.');
    digits.then(|| text.parse().ok()).flatten()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_way_to_write_thirty_one_and_a_half_inches_alike() {
        for text in [
            "31.5",
            "31 1/2",
            "31-1/2",
            "31½",
            "31 ½",
            "31-½",
            "31 2/4",
            " 31 1/2 ",
            "31.5 in",
            "31 1/2in",
            "31 1/2 inch",
            "31 1/2 inches",
            "31 1/2\"",
            "31 1/2″",
            "31 1/2”",
            "31\u{a0}1\u{2044}2",
            "31 – 1/2",
            "63/2",
            "+31.5",
            "80.01 cm",
            "80.01cm",
        ] {
            let cm = parse_length(text, Unit::Inch).unwrap();
            assert!((cm - 80.01).abs() < 1e-12, "{text}: {cm}");
        }
    }

    #[test]
    fn negative_lengths_with_their_fraction() {
        assert_eq!(parse_length("-1 1/2", Unit::Cm), Ok(-1.5));
        assert_eq!(parse_length("−½", Unit::Cm), Ok(-0.5));
        assert_eq!(parse_length("- 3/4 in", Unit::Cm), Ok(-0.75 * 2.54));
    }

    #[test]
    fn what_is_no_length_refused() {
        for text in [
            "",
            " ",
            "-",
            "½½",
            "38 1/0",
            "1/",
            "/2",
            "1/2/3",
            "31 1/2 1/2",
            "31 3/2",
            "1.5/2",
            "31.5 1/2",
            "1e3",
            "1e308",
            "nan",
            "inf",
            "+-3",
            "--3",
            "0x10",
            "31,5",
            "1..5",
            ".",
            "31 mm",
            "cm",
            "in",
            "\"",
            "-cm",
            "3 ft",
            "31 cm cm",
            "1/2 -",
            "-½-",
            "one",
            "٣",
        ] {
            assert!(parse_length(text, Unit::Cm).is_err(), "{text}");
        }
        assert!(parse_length(&"9".repeat(400), Unit::Cm).is_err());
    }

    #[test]
    fn every_sixty_fourth_read_back_as_written() {
        for parts in -64 * 60..=64 * 60 {
            let inches = f64::from(parts) / 64.0;
            let cm = Unit::Inch.to_cm(inches);
            let text = Unit::Inch.write(cm);
            assert_eq!(parse_length(&text, Unit::Inch), Ok(cm), "{text}");
        }
    }

    #[test]
    fn hundredths_of_a_centimetre_read_back_as_written() {
        for hundredths in -300..=12_000 {
            let cm = f64::from(hundredths) / 100.0;
            assert_eq!(parse_length(&Unit::Cm.write(cm), Unit::Cm), Ok(cm + 0.0));
        }
    }

    #[test]
    fn inches_that_are_no_sixty_fourths_as_decimals() {
        assert_eq!(Unit::Inch.write(1.9), "0.748");
        assert_eq!(Unit::Inch.write(1.905), "3/4");
    }

    #[test]
    fn eighths_on_the_tape() {
        assert_eq!(Unit::Inch.on_tape(100.0), "39 3/8 in");
        assert_eq!(Unit::Inch.on_tape(-0.01), "0 in");
        assert_eq!(Unit::Cm.on_tape(-0.01), "0.0 cm");
    }
}
