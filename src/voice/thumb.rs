//! Rules of thumb: the lengths that tables and texts of the trade say in words.

use std::borrow::Cow;

use crate::unit::Unit;

/// A text of a table with the lengths that it says in cm, `20 to 25 cm`, for a reader of `unit`: in inches the round
/// figures that a cutter would say, `8 to 10 in`. Nothing else of the text is touched.
pub fn rule_of_thumb(text: &str, unit: Unit) -> Cow<'_, str> {
    if unit == Unit::Cm {
        return Cow::Borrowed(text);
    }
    let mut said = String::new();
    let mut rest = text;
    while let Some(at) = next_mark(rest) {
        let (before, after) = (&rest[..at], &rest[at + MARK.len()..]);
        match numbers_at_end(before) {
            Some((from, figures)) => {
                said.push_str(&before[..from]);
                let inches: Vec<String> = figures.iter().map(|cm| round(*cm)).collect();
                said.push_str(&inches.join(" to "));
                said.push_str(" in");
            }
            None => {
                said.push_str(before);
                said.push_str(MARK);
            }
        }
        rest = after;
    }
    if said.is_empty() {
        return Cow::Borrowed(text);
    }
    said.push_str(rest);
    Cow::Owned(said)
}

/// What stands behind a length.
const MARK: &str = " cm";

/// The first mark that is a whole word.
fn next_mark(text: &str) -> Option<usize> {
    let whole = |at: &usize| !text[at + MARK.len()..].starts_with(|letter: char| letter.is_alphanumeric());
    text.match_indices(MARK).map(|(at, _)| at).find(whole)
}

/// The number, or the two of `20 to 25`, at the end of a text, cm, with where they begin.
fn numbers_at_end(text: &str) -> Option<(usize, Vec<f64>)> {
    let (from, last) = number_at_end(text)?;
    match text[..from].strip_suffix(" to ").and_then(number_at_end) {
        Some((from, first)) => Some((from, vec![first, last])),
        None => Some((from, vec![last])),
    }
}

fn number_at_end(text: &str) -> Option<(usize, f64)> {
    let from = text
        .rfind(|letter: char| !letter.is_ascii_digit() && letter != '.')
        .map_or(0, |at| at + text[at..].chars().next().map_or(0, char::len_utf8));
    Some((from, text[from..].parse().ok()?))
}

/// As round as a cutter says it: halves from 6 in, quarters from 2, eighths below (common practice, no source).
fn round(cm: f64) -> String {
    let inches = Unit::Inch.from_cm(cm);
    let part = if inches >= 6.0 {
        0.5
    } else if inches >= 2.0 {
        0.25
    } else {
        0.125
    };
    Unit::Inch.figure(Unit::Inch.to_cm((inches / part).round() * part))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_of_the_trade_in_both_units() {
        for (cm, inch) in [
            ("20 to 25 cm below the crotch point", "8 to 10 in below the crotch point"),
            ("an opening of 1.9 cm is ordinary", "an opening of 3/4 in is ordinary"),
            ("by 1 to 2.5 cm; 5 cm, then 0.3 cm.", "by 3/8 to 1 in; 2 in, then 1/8 in."),
            ("6 to 12 cm", "2 1/4 to 4 3/4 in"),
            ("the last 5 cm of both", "the last 2 in of both"),
        ] {
            assert_eq!(rule_of_thumb(cm, Unit::Inch), inch);
            assert_eq!(rule_of_thumb(cm, Unit::Cm), cm);
        }
    }

    #[test]
    fn other_words_left_alone() {
        for text in ["two cm", "5 cmx", "12 degrees", "", "cm", "a cm of 3", "5cm"] {
            assert_eq!(rule_of_thumb(text, Unit::Inch), text);
        }
    }
}
