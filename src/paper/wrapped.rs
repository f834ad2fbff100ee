//! Sentences for a terminal.

/// The width for which everything on a terminal is made.
const COLUMNS: usize = 80;

/// A sentence behind a heading, broken between words so that it stays within 80 columns; later lines stand under the
/// first word. A word that is longer than a line stays whole: it may be a path that someone copies.
pub(super) fn wrapped(heading: &str, sentence: &str) -> String {
    let indent = heading.chars().count();
    let mut text = heading.to_owned();
    let mut column = indent;
    for word in sentence.split_whitespace() {
        let width = word.chars().count();
        if column > indent && column + 1 + width > COLUMNS {
            text.push('\n');
            text.push_str(&" ".repeat(indent));
            column = indent;
        }
        if column > indent {
            text.push(' ');
            column += 1;
        }
        text.push_str(word);
        column += width;
    }
    text.push('\n');
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_of_at_most_80_columns_under_their_first_word() {
        let text = wrapped("note: ", &"seam ".repeat(40));
        assert!(text.lines().all(|line| line.chars().count() <= COLUMNS && !line.ends_with(' ')), "{text}");
        assert!(text.lines().skip(1).all(|line| line.starts_with("      seam")), "{text}");
        assert_eq!(text.split_whitespace().count(), 41);
    }

    #[test]
    fn long_word_whole() {
        let path = "x".repeat(200);
        assert_eq!(wrapped("", &format!("wrote {path}")), format!("wrote\n{path}\n"));
    }
}
