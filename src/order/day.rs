//! The day of a fitting, as the calendar has it.

use jiff::{Zoned, civil::Date};

/// Today where this machine stands, as a record writes it: `2026-11-25`.
pub fn today() -> String {
    Zoned::now().date().to_string()
}

/// A day as a person types it.
///
/// # Errors
/// What was expected, in words, where it is no day of the calendar.
pub fn day(text: &str) -> Result<String, String> {
    // the library reads more ways of writing a day than a record holds
    let plain = text.len() == 10 && text.bytes().all(|byte| byte.is_ascii_digit() || byte == b'-');
    match text.parse::<Date>() {
        Ok(date) if plain => Ok(date.to_string()),
        _ => Err("expected a day as 2026-11-25".to_owned()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_of_the_calendar_alone() {
        for good in ["2026-11-25", "2024-02-29", "2000-02-29"] {
            assert_eq!(day(good).as_deref(), Ok(good));
        }
        for bad in [
            "2026-02-29",
            "1900-02-29",
            "2026-13-01",
            "2026-00-10",
            "26-1-1",
            "2026-11-25T10:00",
            "",
            "today",
        ] {
            assert!(day(bad).is_err(), "{bad}");
        }
    }

    #[test]
    fn today_a_day() {
        assert_eq!(day(&today()), Ok(today()));
    }
}
