//! Text that is safe to show, whoever wrote it.

use std::fmt;

/// A line longer than this is no label any more.
const LONGEST_LINE: usize = 200;

/// A text alternative longer than this helps nobody who listens to it.
const LONGEST_PARAGRAPH: usize = 4000;

/// Text cleared for showing: one line, of limited length, without characters that are invisible orders to the viewer.
///
/// Blanks and line ends of any kind become one space each run. Control characters, characters that turn the reading
/// direction and code points that are no characters become U+FFFD, so that a reader sees that something was there.
/// Escaping is the writer's work, not done here.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Wording(String);

impl Wording {
    /// One line of at most 200 characters; the rest is cut off behind an ellipsis.
    pub fn line(text: &str) -> Self {
        Self(cleared(text, LONGEST_LINE))
    }

    /// Running text of at most 4000 characters, for text alternatives; it too comes out as one line.
    pub fn paragraph(text: &str) -> Self {
        Self(cleared(text, LONGEST_PARAGRAPH))
    }

    /// The cleared text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl<T: AsRef<str>> From<T> for Wording {
    fn from(text: T) -> Self {
        Self::line(text.as_ref())
    }
}

impl fmt::Display for Wording {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.pad(&self.0)
    }
}

fn cleared(text: &str, longest: usize) -> String {
    let words: Vec<&str> = text.split_whitespace().collect();
    let shown = |letter| if is_harmless(letter) { letter } else { char::REPLACEMENT_CHARACTER };
    let mut clear: String = words.join(" ").chars().map(shown).take(longest + 1).collect();
    if let Some((cut, _)) = clear.char_indices().nth(longest - 1)
        && clear[cut..].chars().count() > 1
    {
        clear.truncate(cut);
        clear.push('…');
    }
    clear
}

fn is_harmless(letter: char) -> bool {
    let turns_direction = matches!(letter, '\u{61c}' | '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{206f}');
    let no_character = matches!(letter, '\u{feff}' | '\u{fdd0}'..='\u{fdef}' | '\u{e0000}'..='\u{e0fff}')
        || letter as u32 & 0xfffe == 0xfffe;
    !(letter.is_control() || turns_direction || no_character)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ordinary_words_unchanged() {
        for text in ["stroke", "Übungs-Hose ¾", "3 × 4 < 13 & \"so\"", "עברית", "🚣"] {
            assert_eq!(Wording::line(text).as_str(), text);
        }
    }

    #[test]
    fn blanks_and_line_ends_to_one_space() {
        assert_eq!(Wording::line(" \t a\r\n\u{2028}b\u{a0} ").as_str(), "a b");
    }

    #[test]
    fn orders_to_the_viewer_made_visible() {
        assert_eq!(
            Wording::line("a\u{202e}b\u{0}c\u{1b}[31m\u{ffff}").as_str(),
            "a\u{fffd}b\u{fffd}c\u{fffd}[31m\u{fffd}"
        );
    }

    #[test]
    fn long_text_cut_behind_an_ellipsis() {
        for (text, longest) in [("x".repeat(10_000), LONGEST_LINE), ("x ".repeat(5_000), LONGEST_LINE)] {
            let line = Wording::line(&text);
            assert!(line.as_str().chars().count() <= longest);
            assert!(line.as_str().ends_with('…'));
        }
        assert_eq!(Wording::line(&"é".repeat(200)).as_str(), "é".repeat(200));
        assert_eq!(Wording::paragraph(&"x".repeat(4001)).as_str().chars().count(), LONGEST_PARAGRAPH);
    }
}
