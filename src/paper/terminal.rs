//! Text in columns for a terminal.

use crate::mistake::columns;

/// The text in lines of at most `width` letters, broken between words; a longer word has a line of its own.
pub(crate) fn wrapped(text: &str, width: usize) -> Vec<String> {
    let words: Vec<&str> = text.split_whitespace().collect();
    crate::mistake::wrapped(&words.join(" "), width).lines().map(str::to_owned).collect()
}

/// A sentence behind a heading within the width of a terminal; later lines stand under its first word.
pub(super) fn headed(heading: &str, sentence: &str) -> String {
    let indent = heading.chars().count();
    let lines = wrapped(sentence, columns() - indent);
    format!("{heading}{}\n", lines.join(&format!("\n{}", " ".repeat(indent))))
}

/// A sentence as a terminal shows it.
pub fn sentence(text: &str) -> String {
    headed("", text)
}

/// A notice as a terminal shows it.
pub fn note(text: &str) -> String {
    headed("note: ", text)
}

/// Cells side by side, each wrapped into its width; no line ends in blanks.
pub(super) fn side_by_side(cells: &[(&str, usize)]) -> String {
    /// Between two columns.
    const GUTTER: &str = "  ";
    let columns: Vec<Vec<String>> = cells.iter().map(|(text, width)| wrapped(text, *width)).collect();
    let lines = columns.iter().map(Vec::len).max().unwrap_or_default();
    let mut out = String::new();
    for line in 0..lines {
        let row: Vec<String> = columns
            .iter()
            .zip(cells)
            .map(|(column, (_, width))| format!("{:<width$}", column.get(line).map_or("", String::as_str)))
            .collect();
        out.push_str(row.join(GUTTER).trim_end());
        out.push('\n');
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_kept_whole() {
        assert_eq!(wrapped("mark the front crotch point", 9), ["mark the", "front", "crotch", "point"]);
        assert_eq!(wrapped("centre_back_waist out", 5), ["centre_back_waist", "out"]);
    }

    #[test]
    fn later_lines_under_the_first_word() {
        let text = headed("note: ", &"seam ".repeat(40));
        assert!(text.lines().all(|line| line.chars().count() <= columns() && !line.ends_with(' ')), "{text}");
        assert!(text.lines().skip(1).all(|line| line.starts_with("      seam")), "{text}");
    }

    #[test]
    fn columns_as_high_as_the_highest() {
        assert_eq!(side_by_side(&[("a b c", 3), ("d", 3)]), "a b  d\nc\n");
    }
}
