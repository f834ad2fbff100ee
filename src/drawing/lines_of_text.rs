//! Running text broken into lines.

use super::{Wording, text_width};

/// A text broken between words into lines of at most `width` cm; `size` is the height of the em, cm. A word that is
/// wider than a line is broken between letters.
pub fn lines_of_text(text: &Wording, size: f64, width: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    let mut line = String::new();
    for word in text.as_str().split(' ').filter(|word| !word.is_empty()) {
        let longer = if line.is_empty() { word.to_owned() } else { format!("{line} {word}") };
        if text_width(&longer, size) <= width {
            line = longer;
            continue;
        }
        if !line.is_empty() {
            lines.push(std::mem::take(&mut line));
        }
        for letter in word.chars() {
            line.push(letter);
            if text_width(&line, size) > width && line.chars().count() > 1 {
                line.pop();
                lines.push(std::mem::replace(&mut line, letter.to_string()));
            }
        }
    }
    if !line.is_empty() {
        lines.push(line);
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn all_words_in_order_and_no_line_too_wide() {
        let text =
            Wording::paragraph("Sew a toile before cutting good cloth, and look at the back of the thigh.");
        let lines = lines_of_text(&text, 0.5, 6.0);
        assert!(lines.len() > 2 && lines.iter().all(|line| text_width(line, 0.5) <= 6.0), "{lines:?}");
        assert_eq!(lines.join(" "), text.as_str());
    }

    #[test]
    fn a_word_wider_than_a_line_broken_between_letters() {
        let lines = lines_of_text(&Wording::line(&"w".repeat(50)), 0.5, 4.0);
        assert!(lines.iter().all(|line| text_width(line, 0.5) <= 4.0));
        assert_eq!(lines.concat(), "w".repeat(50));
    }

    #[test]
    fn no_line_of_no_text() {
        assert!(lines_of_text(&Wording::default(), 0.5, 4.0).is_empty());
    }
}
