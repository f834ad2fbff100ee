//! Lengths as paper shows them.

use crate::unit::Unit;

/// Decimals that a tape can show: a tenth of a centimetre, a hundredth of an inch.
pub(super) fn places(unit: Unit) -> usize {
    match unit {
        Unit::Cm => 1,
        Unit::Inch => 2,
    }
}

/// A length in the unit of the paper, without the unit's name.
pub(super) fn figure(cm: f64, unit: Unit) -> String {
    decimal(unit.from_cm(cm), places(unit))
}

/// A number with so many decimals. A minus is a true minus, as wide as a digit is.
pub(super) fn decimal(value: f64, places: usize) -> String {
    let text = format!("{value:.places$}");
    match text.strip_prefix('-') {
        Some(digits) if digits.bytes().all(|digit| matches!(digit, b'0' | b'.')) => digits.to_owned(),
        Some(digits) => format!("−{digits}"),
        None => text,
    }
}

/// A printed number with its sign before it, plus too; nothing has none.
pub(super) fn signed(number: String) -> String {
    let nothing = number.bytes().all(|digit| matches!(digit, b'0' | b'.'));
    if nothing || number.starts_with(['-', '\u{2212}']) { number } else { format!("+{number}") }
}

/// The short name of a unit behind a number.
pub(super) fn short_name(unit: Unit) -> &'static str {
    match unit {
        Unit::Cm => "cm",
        Unit::Inch => "in",
    }
}

/// A length with its unit.
pub(super) fn length(cm: f64, unit: Unit) -> String {
    format!("{} {}", figure(cm, unit), short_name(unit))
}

/// A key of a file as a reader says it.
pub(super) fn spoken(key: &str) -> String {
    key.replace('_', " ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_without_negative_zero() {
        let cases = [(-0.04, "0.0"), (-0.06, "−0.1"), (0.0, "0.0"), (101.46, "101.5")];
        for (cm, text) in cases {
            assert_eq!(figure(cm, Unit::Cm), text);
        }
        assert_eq!(length(5.08, Unit::Inch), "2.00 in");
    }
}
