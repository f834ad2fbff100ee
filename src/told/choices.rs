//! A question on a terminal with its answers.

use std::fmt::Write;

use crate::{
    booklet::{headed, wrapped},
    mistake::columns,
};

/// A numbered list of choices for a question on a terminal, in as many columns as fit.
pub fn choices(ask: &str, list: &[String]) -> String {
    let mut out = headed("", ask);
    let wide = list.iter().map(|it| it.chars().count()).max().unwrap_or(0) + 6;
    let within = columns() - 2;
    let columns = (within / wide.max(1)).max(1);
    if columns == 1 {
        for (at, choice) in list.iter().enumerate() {
            let lines = wrapped(choice, within - 6);
            let _ = writeln!(out, "  {:>2} {}", at + 1, lines.join("\n     "));
        }
        return out;
    }
    let rows = list.len().div_ceil(columns);
    for row in 0..rows {
        let mut line = String::new();
        for column in 0..columns {
            if let Some(choice) = list.get(column * rows + row) {
                let number = column * rows + row + 1;
                let _ = write!(line, "{:<wide$}", format!("  {number:>2} {choice}"));
            }
        }
        let _ = writeln!(out, "{}", line.trim_end());
    }
    out
}
