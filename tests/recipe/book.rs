//! The figures of a book beside a recipe's: a copy that is right, one figure that is not, and every slip of the table.

use breeks::{
    mistake::Source,
    recipe::{Book, BookRow},
};

use super::{snapshot, sound_with};

const GIVEN: &str = "what,of,book,within\n# the body of round numbers\ngiven,hip,96\ngiven,waist_girth,80\ngiven,waist_to_hip,20\n\
                     given,body_rise,28\ngiven,inside_leg,76\ngiven,knee_width,22\n";

fn rows(text: &str) -> Vec<BookRow> {
    let book = Book::parse(&Source::new("book.csv", text)).unwrap_or_else(|all| panic!("{all}"));
    book.beside(&sound_with("")).unwrap_or_else(|all| panic!("{all}"))
}

fn complaint(text: &str) -> String {
    let read = Book::parse(&Source::new("book.csv", text));
    let said = read.and_then(|book| book.beside(&sound_with("")));
    said.expect_err("something is wrong with it").to_string()
}

#[test]
fn figures_of_every_kind_as_worked_out_by_hand() {
    let rows = rows(&format!(
        "{GIVEN}across,fork,-15.5\ndown,fork,28\nacross,fork corner,6.5\ndown,waist corner,28\n\
         length,waist corner fork,34.5\nlean,fork waist,{}\nvalue,extension,6.5\nvalue,knee_line,66\n",
        (6.5f64 / 28.0).atan().to_degrees()
    ));
    assert_eq!(rows.len(), 8);
    for row in &rows {
        assert!(row.agrees() && (row.book - row.recipe).abs() < 1e-9, "{row:?}");
    }
}

#[test]
fn figure_that_is_off_told_from_those_that_are_not() {
    let rows = rows(&format!("{GIVEN}value,extension,6.6\nvalue,extension,6.6,0.2\nvalue,extension,6.54\n"));
    assert_eq!(rows.iter().map(BookRow::agrees).collect::<Vec<_>>(), [false, true, true]);
}

#[test]
fn book_in_inches_behind_semicolons_with_decimal_commas() {
    let text = "what;of;book\ngiven;hip;96 cm\ngiven;waist;80 cm\ngiven;waist_to_hip;20 cm\ngiven;body_rise;28 cm\n\
                given;inside_leg;76 cm\ngiven;units;inch\nvalue;extension;2,559\ndown;corner;11 1/32\n";
    for row in rows(text) {
        assert!(row.agrees(), "{row:?}");
    }
}

#[test]
fn slips_in_the_table_shown_at_their_place() {
    let with = |row: &str| complaint(&format!("{GIVEN}{row}\n"));
    let all = [
        complaint("hip,96\n"),
        complaint(GIVEN),
        with("lenght,waist corner,28"),
        with("length,waist,28"),
        with("length,waist cornre,28"),
        with("value,extensoin,28"),
        with("down,waist,deep"),
        with("given,hips,96"),
        with("down,waist"),
        complaint("what,of,book\ngiven,hip,96\nvalue,extension,6.5\n"),
    ];
    snapshot("recipe_book_slips", &all.join("\n----\n"));
}
