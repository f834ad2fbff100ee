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

/// The finest part of an inch that a file is written in.
const FINEST: u32 = 64;
/// The part of an inch in which everything is shown, as a tape has it.
const SHOWN: u32 = 16;

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
                    fraction(self.from_cm(cm), FINEST, '-')
                } else {
                    trimmed(self.from_cm(cm), 4)
                }
            }
        }
    }

    /// The nearest length that a tape of this unit has a mark for or, in cm, that a ruler shows between two: to a hundredth
    /// of a centimetre, to a sixteenth of an inch. What is written into a file for a person is one of these.
    pub fn on_the_tape(self, cm: f64) -> f64 {
        let parts = match self {
            Self::Cm => 100.0,
            Self::Inch => f64::from(SHOWN),
        };
        self.to_cm((self.from_cm(cm) * parts).round() / parts) + 0.0
    }

    /// The short name behind a number.
    pub fn tag(self) -> &'static str {
        match self {
            Self::Cm => "cm",
            Self::Inch => "in",
        }
    }

    /// A length as a tape of this unit shows it, without the unit's name, which must stand in the column's head: `78.7`,
    /// or `30 3/16`. This is the one rounding of everything that is read.
    pub fn figure(self, cm: f64) -> String {
        match self {
            Self::Cm => decimal(cm, 1),
            Self::Inch if cm.abs() < 1e6 => fraction(self.from_cm(cm), SHOWN, '\u{2212}'),
            Self::Inch => decimal(self.from_cm(cm), 1),
        }
    }

    /// A length as a tape of this unit shows it, with its unit: `78.7 cm`, or `30 3/16 in`.
    pub fn length(self, cm: f64) -> String {
        format!("{} {}", self.figure(cm), self.tag())
    }

    /// A length that a person types or follows, such as the value of a fit parameter or a step of a lesson, without the
    /// unit's name: `1.25`, or `1/2`. In cm finer than a tape reads, so that it is found again in the file.
    pub fn fine(self, cm: f64) -> String {
        match self {
            Self::Cm => decimal(cm, 2),
            Self::Inch => self.figure(cm),
        }
    }

    /// As [`fine`](Self::fine), with the unit: `1.25 cm`.
    pub fn amount(self, cm: f64) -> String {
        format!("{} {}", self.fine(cm), self.tag())
    }

    /// A length that is added or taken away, with its sign, plus too, and without the unit's name; nothing has no sign.
    pub fn signed(self, cm: f64) -> String {
        signed(self.figure(cm))
    }

    /// A length that is added or taken away, with its sign and its unit: `+0.5 cm`, or `−1/4 in`.
    pub fn change(self, cm: f64) -> String {
        format!("{} {}", self.signed(cm), self.tag())
    }

    /// The most that still holds: as [`length`](Self::length), but rounded towards nothing, so that it holds.
    pub fn at_most(self, cm: f64) -> String {
        let step = match self {
            Self::Cm => 0.1,
            Self::Inch => CM_PER_INCH / f64::from(SHOWN),
        };
        self.length((cm / step + 1e-6 * cm.signum()).trunc() * step)
    }
}

/// A number with so many decimals; its minus is a true minus, as wide as a digit is, and nothing has none.
///
/// A number beyond all bodies, which only a slip makes, stays short.
pub fn decimal(value: f64, places: usize) -> String {
    /// Far above any length, price of cloth or angle.
    const ABSURD: f64 = 1e6;
    if value.is_nan() || value.abs() >= ABSURD {
        return format!("{value:.1e}");
    }
    // halves go away from nothing, as a person rounds; `format!` alone would take 0.25 down and 0.35 up. The little that
    // is added is what a sum of decimals loses in its last bits.
    let scale = 10_f64.powi(i32::try_from(places).unwrap_or(0));
    let rounded = (value * scale + 1e-9 * value.signum()).round() / scale;
    let text = format!("{:.places$}", rounded.abs());
    if rounded < 0.0 { format!("\u{2212}{text}") } else { text }
}

/// A printed number, with or without a unit behind it, with its sign before it, plus too; nothing has none.
pub fn signed(number: String) -> String {
    let digits = number.split(' ').next().unwrap_or_default();
    let nothing = digits.bytes().all(|digit| matches!(digit, b'0' | b'.'));
    if nothing || number.starts_with(['-', '\u{2212}']) { number } else { format!("+{number}") }
}

/// At most so many decimals, without zeros at the end and without a minus before nothing.
fn trimmed(number: f64, decimals: usize) -> String {
    let text = format!("{number:.decimals$}");
    let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

/// To the nearest of so many parts (a power of two), the fraction reduced: `31 1/2`, `3/4`, `-2`; `minus` is the sign.
fn fraction(number: f64, parts: u32, minus: char) -> String {
    let all = (number.abs() * f64::from(parts)).round();
    let (whole, mut over, mut under) =
        ((all / f64::from(parts)).floor(), all % f64::from(parts), f64::from(parts));
    while over > 0.0 && over % 2.0 == 0.0 {
        (over, under) = (over / 2.0, under / 2.0);
    }
    let sign = if number < 0.0 && all > 0.0 { String::from(minus) } else { String::new() };
    match (whole > 0.0, over > 0.0) {
        (_, false) => format!("{sign}{whole:.0}"),
        (false, true) => format!("{sign}{over:.0}/{under:.0}"),
        (true, true) => format!("{sign}{whole:.0} {over:.0}/{under:.0}"),
    }
}

/// A length as a person writes it, in centimetres: `31.5`, `31 1/2`, `31-1/2`, `31½`, `3/4 in`, `31 1/2"`, `1.9 cm`,
/// `5 ft 6`, `5' 6"`, `74,5`. A plain number is in `unit`; a length that names its own unit is in that. A comma is read as
/// the decimal one where it cannot part thousands.
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
    let text = match text.split_once(',') {
        None => text,
        Some((before, after)) if is_decimal_comma(before, after) => format!("{before}.{after}"),
        Some(_) => return Err("expected a decimal point, not a comma,".to_owned()),
    };
    if let Some((feet, inches)) =
        ["feet", "foot", "ft", "'"].into_iter().find_map(|mark| text.split_once(mark))
    {
        return feet_and_inches(feet.trim_end(), inches.trim_start()).ok_or_else(expected);
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

/// Whether what stands around a comma is one number with one or two decimals: three would be thousands.
fn is_decimal_comma(before: &str, after: &str) -> bool {
    let decimals = after.bytes().take_while(u8::is_ascii_digit).count();
    let whole = before.trim_start_matches(['-', '+', ' ']);
    parse_whole(whole).is_some() && (1..=2).contains(&decimals) && !after.contains([',', '.', '/'])
}

/// Whole feet, and inches below twelve or none, in centimetres.
fn feet_and_inches(feet: &str, inches: &str) -> Option<f64> {
    /// Inches in a foot.
    const FOOT: f64 = 12.0;
    let (sign, feet) = feet.strip_prefix('-').map_or((1.0, feet), |rest| (-1.0, rest.trim_start()));
    let inches = ["inches", "inch", "in", "\"", "''"]
        .into_iter()
        .find_map(|ending| inches.strip_suffix(ending).filter(|rest| !rest.trim().is_empty()))
        .map_or(inches, str::trim_end);
    let inches = if inches.is_empty() { 0.0 } else { parse_mixed(inches).filter(|it| *it < FOOT)? };
    Some(sign * Unit::Inch.to_cm(FOOT * parse_whole(feet)? + inches))
}

/// Characters that a person or a word processor writes for a plain one.
fn plain_letter(letter: char) -> char {
    match letter {
        '\u{2044}' | '\u{2215}' => '/',
        '\u{2033}' | '\u{201d}' | '\u{201c}' => '"',
        '\u{2032}' | '\u{2019}' | '\u{2018}' => '\'',
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
    fn feet_and_inches_in_every_file() {
        for text in [
            "5 ft 6",
            "5 foot 6",
            "5 feet 6 inches",
            "5ft6",
            "5 ft 6 in",
            "5' 6\"",
            "5'6",
            "5′ 6″",
            "5’ 6”",
            "5' 6''",
            "66 in",
        ] {
            for unit in [Unit::Cm, Unit::Inch] {
                let cm = parse_length(text, unit).unwrap();
                assert!((cm - 66.0 * 2.54).abs() < 1e-9, "{text}: {cm}");
            }
        }
        assert!((parse_length("5 ft 6½", Unit::Cm).unwrap() - 66.5 * 2.54).abs() < 1e-9);
        assert!((parse_length("6 ft", Unit::Cm).unwrap() - 72.0 * 2.54).abs() < 1e-9);
    }

    #[test]
    fn decimal_comma_where_nothing_else_can_be_meant() {
        assert_eq!(parse_length("74,5", Unit::Cm), Ok(74.5));
        assert_eq!(parse_length("-1,25", Unit::Cm), Ok(-1.25));
        assert_eq!(parse_length("74,5 cm", Unit::Inch), Ok(74.5));
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
            "1..5",
            ".",
            "31 mm",
            "cm",
            "in",
            "\"",
            "-cm",
            "1,000",
            "1,5,0",
            "1.5,0",
            "31,5.0",
            "31,1/2",
            ",5",
            "5,",
            "5 ft 12",
            "5.5 ft",
            "ft 6",
            "' 6",
            "5 ft 6 cm",
            "5 ft in",
            "5 ft 6 ft",
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
    fn sixteenths_and_tenths_on_the_tape() {
        let cases = [
            (100.0, "100.0 cm", "39 3/8 in"),
            (76.68, "76.7 cm", "30 3/16 in"),
            (-0.01, "0.0 cm", "0 in"),
            (-1.27, "\u{2212}1.3 cm", "\u{2212}1/2 in"),
            (0.25, "0.3 cm", "1/8 in"),
            (2.54 * 2.0 - 0.01, "5.1 cm", "2 in"),
        ];
        for (cm, in_cm, in_inches) in cases {
            assert_eq!(
                (Unit::Cm.length(cm), Unit::Inch.length(cm)),
                (in_cm.to_owned(), in_inches.to_owned())
            );
        }
    }

    #[test]
    fn what_is_written_for_a_person_found_on_the_tape() {
        assert_eq!(Unit::Inch.write(Unit::Inch.on_the_tape(0.2)), "1/16");
        assert_eq!(Unit::Inch.write(Unit::Inch.on_the_tape(-1.9)), "-3/4");
        assert_eq!(Unit::Cm.write(Unit::Cm.on_the_tape(0.204)), "0.2");
    }

    #[test]
    fn changes_with_their_sign() {
        for (cm, text) in [(0.5, "+0.5 cm"), (-0.5, "\u{2212}0.5 cm"), (0.04, "0.0 cm"), (-0.04, "0.0 cm")] {
            assert_eq!(Unit::Cm.change(cm), text);
        }
        assert_eq!(Unit::Inch.change(1.9), "+3/4 in");
    }

    #[test]
    fn limits_never_rounded_beyond_themselves() {
        assert_eq!(Unit::Cm.at_most(1.25), "1.2 cm");
        assert_eq!(Unit::Cm.at_most(1.2), "1.2 cm");
        assert_eq!(Unit::Cm.at_most(-1.25), "\u{2212}1.2 cm");
        assert_eq!(Unit::Inch.at_most(1.9), "11/16 in");
        assert_eq!(Unit::Inch.at_most(1.905), "3/4 in");
    }

    #[test]
    fn halves_rounded_as_a_person_does() {
        for (value, places, text) in
            [(0.25, 1, "0.3"), (0.35, 1, "0.4"), (-0.25, 1, "\u{2212}0.3"), (2.5, 0, "3"), (76.25, 1, "76.3")]
        {
            assert_eq!(decimal(value, places), text);
        }
    }
}
