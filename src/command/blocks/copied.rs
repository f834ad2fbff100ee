//! `breeks blocks NAME --compare book.csv`: a copy of a printed draft held against the figures of its book.

use std::path::Path;

use super::super::{Ending, print};
use crate::{
    mistake::{Mistake, Mistakes, Source},
    recipe::{self, Book, BookRow},
    unit::Unit,
};

pub(super) fn run(names: &[String], book: &Path) -> Result<Ending, Mistakes> {
    let [name] = names else {
        return Err(Mistake::new("expected one recipe beside `--compare`")
            .help("as in `breeks blocks own.toml --compare book.csv`")
            .into());
    };
    let recipe = recipe::load(name)?;
    let book = Book::parse(&Source::read(book)?)?;
    let rows = book.beside(&recipe)?;
    let unit = book.unit();
    let mut text = format!("{}\n\n  {:<34} {:>10} {:>10} {:>8}\n", recipe.name, "", "book", "recipe", "off");
    for row in &rows {
        let [printed, made, off] =
            [row.book, row.recipe, row.recipe - row.book].map(|value| shown(row, value, unit));
        let mark = if row.agrees() { "" } else { "  *" };
        text.push_str(&format!("  {:<34} {printed:>10} {made:>10} {off:>8}{mark}\n", row.name));
    }
    let agree = rows.iter().filter(|row| row.agrees()).count();
    text.push_str(&format!("\n{agree} of {} figures as the book prints them", rows.len()));
    text.push_str(&match rows.len() - agree {
        0 => format!(", lengths in {}\n", unit),
        more => format!(", lengths in {}; {more} marked * are farther off than their row allows\n", unit),
    });
    print(&text)?;
    Ok(if agree == rows.len() { Ending::Done } else { Ending::NotToBeCut })
}

fn shown(row: &BookRow, value: f64, unit: Unit) -> String {
    // Adding nothing turns a minus before nothing into a plus.
    let value = if row.degrees { value } else { unit.from_cm(value) };
    format!("{:.2}{}", (value * 100.0).round() / 100.0 + 0.0, if row.degrees { "°" } else { "" })
}
