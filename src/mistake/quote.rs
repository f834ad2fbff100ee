//! The quoted line of a mistake: short, and harmless on a terminal.

use std::ops::Range;

/// The quoted line is cut to this many columns, so that a file of one long line cannot flood the screen.
pub(super) const QUOTED_COLUMNS: usize = 100;

const BOM: &str = "\u{feff}";

/// One line of a text, with a place in it.
pub(super) struct Quote {
    pub(super) text: String,
    /// The place, in bytes of `text`.
    pub(super) span: Range<usize>,
    /// The line's number, from 1.
    pub(super) line: usize,
    /// The place's column, from 1, where the start of the line was cut off.
    pub(super) cut_column: Option<usize>,
}

/// The one line that holds the start of `span`, cut to [`QUOTED_COLUMNS`] and cleared of control characters.
pub(super) fn quote(text: &str, span: &Range<usize>) -> Quote {
    let start = floor_char(text, span.start);
    let line_start = text[..start].rfind('\n').map_or(0, |at| at + 1);
    let line_end = text[start..].find('\n').map_or(text.len(), |at| start + at);
    let line = text[..line_start].matches('\n').count() + 1;
    // the mark that some editors put before a text is none of its letters
    let line_start = if line_start == 0 && text.starts_with(BOM) { BOM.len() } else { line_start };
    let start = start.max(line_start);
    let whole = text[line_start..line_end].trim_end_matches('\r');
    let start = start.min(line_start + whole.len());
    let end = floor_char(text, span.end).clamp(start, line_start + whole.len());

    let before: usize = text[line_start..start].chars().map(columns).sum();
    let all = before + text[start..line_start + whole.len()].chars().map(columns).sum::<usize>();
    // of a longer line half of the columns stand before the place, half for it and what follows
    let mut to_cut = if all > QUOTED_COLUMNS { before.saturating_sub(QUOTED_COLUMNS / 2) } else { 0 };
    let cut_column = (to_cut > 0).then(|| text[line_start..start].chars().count() + 1);
    let (mut quoted, mut used, mut from, mut to) = (String::new(), 0, None, None);
    for (offset, letter) in whole.char_indices() {
        let wide = columns(letter);
        if to_cut > 0 {
            to_cut = to_cut.saturating_sub(wide);
            continue;
        }
        used += wide;
        if used > QUOTED_COLUMNS {
            break;
        }
        let at = line_start + offset;
        if at >= start {
            from.get_or_insert(quoted.len());
        }
        if at >= end {
            to.get_or_insert(quoted.len());
        }
        quoted.push(harmless(letter));
    }
    let from = from.unwrap_or(quoted.len());
    Quote { span: from..to.unwrap_or(quoted.len()).max(from), text: quoted, line, cut_column }
}

/// A text with nothing in it that moves a cursor, turns the reading direction or hides.
pub(crate) fn harmless_text(text: &str) -> String {
    text.chars().map(|letter| if letter == '\n' { letter } else { harmless(letter) }).collect()
}

/// JSON in which no letter moves a cursor, turns the reading direction or hides: such letters are written by their numbers,
/// which are the same text to whoever reads it as JSON. They stand nowhere but in its texts.
pub(crate) fn harmless_json(json: String) -> String {
    let is_harmful = |letter: char| letter != '\n' && (letter.is_control() || is_unseen(letter));
    if !json.contains(is_harmful) {
        return json;
    }
    let mut shown = String::with_capacity(json.len());
    for letter in json.chars() {
        if is_harmful(letter) {
            for unit in letter.encode_utf16(&mut [0; 2]) {
                shown.push_str(&format!("\\u{unit:04x}"));
            }
        } else {
            shown.push(letter);
        }
    }
    shown
}

/// A tab stays one column wide here, so that a caret stands under its letter.
fn harmless(letter: char) -> char {
    match letter {
        '\t' => ' ',
        _ if letter.is_control() || is_unseen(letter) => '\u{fffd}',
        _ => letter,
    }
}

/// Characters that could make a quoted line show something it does not say: marks of reading direction, of no width,
/// line separators, tags.
fn is_unseen(letter: char) -> bool {
    matches!(letter,
        '\u{ad}' | '\u{61c}' | '\u{180e}' | '\u{200b}'..='\u{200f}' | '\u{2028}'..='\u{202e}' | '\u{2060}'..='\u{206f}'
        | '\u{feff}' | '\u{fff9}'..='\u{fffb}' | '\u{e0000}'..='\u{e0fff}')
}

/// Columns of a terminal that a character takes, never too few: from Hangul on characters may be wide.
fn columns(letter: char) -> usize {
    if letter >= '\u{1100}' { 2 } else { 1 }
}

fn floor_char(text: &str, at: usize) -> usize {
    let mut at = at.min(text.len());
    while !text.is_char_boundary(at) {
        at -= 1;
    }
    at
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn place_under_its_word_in_the_middle_of_a_file() {
        let quote = quote("one\ntwo three\r\nfour", &(8..13));
        assert_eq!((&quote.text[quote.span.clone()], quote.line), ("three", 2));
        assert_eq!(quote.text, "two three");
    }

    #[test]
    fn long_line_cut_on_both_sides_of_the_place() {
        let text = format!("{}HERE{}", "x".repeat(5000), "y".repeat(5000));
        let quote = quote(&text, &(5000..5004));
        assert_eq!(&quote.text[quote.span.clone()], "HERE");
        assert_eq!(quote.text.len(), QUOTED_COLUMNS);
        assert_eq!(quote.cut_column, Some(5001));
    }

    #[test]
    fn line_that_fits_left_whole() {
        let text = format!("{}HERE", "x".repeat(90));
        let quote = quote(&text, &(90..94));
        assert_eq!((quote.text.as_str(), quote.cut_column), (text.as_str(), None));
    }

    #[test]
    fn wide_letters_counted_as_two_columns() {
        let text = "測".repeat(300);
        assert_eq!(quote(&text, &(0..3)).text.chars().count(), QUOTED_COLUMNS / 2);
    }

    #[test]
    fn control_and_direction_characters_replaced() {
        let quote = quote("a\u{1b}[31m\u{202e}\tb", &(0..1));
        assert_eq!(quote.text, "a\u{fffd}[31m\u{fffd} b");
    }

    #[test]
    fn json_the_same_text_with_nothing_unseen() {
        let text = "a\u{202e}b\u{7f}\u{9b}c\u{e0041}\u{feff}é測";
        let json = format!("{{\n  \"name\": {}\n}}", serde_json::to_string(text).unwrap());
        let shown = harmless_json(json.clone());
        assert_eq!(harmless_text(&shown), shown);
        let read: serde_json::Value = serde_json::from_str(&shown).unwrap();
        assert_eq!(read["name"], text);
        assert_eq!(shown.lines().count(), 3);
        assert_eq!(harmless_json("{\"name\": \"é\"}\n".to_owned()), "{\"name\": \"é\"}\n");
    }

    #[test]
    fn place_beyond_the_end_at_the_end() {
        let quote = quote("abc\n", &(90..95));
        assert_eq!((quote.span, quote.line), (0..0, 2));
    }
}
