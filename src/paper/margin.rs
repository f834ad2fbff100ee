//! The notes of a sheet: what each says, whichever sheet it stands on.

use kurbo::{Line, Point, Shape as _, Vec2};

use super::{
    budget_bar::budget_bar,
    language::Language,
    note::Note,
    test_squares::{self, test_squares},
};
use crate::{
    booklet::Table,
    drawing::{CAP_HEIGHT, Mark, Pen, Text, Wording},
    fit::Verdict,
    told::{CAUTIONS, Subject},
    unit::Unit,
};

/// What and whose it is.
pub(super) fn heading<'a>(subject: &Subject<'_>, language: &'a Language, width: f64) -> Note<'a> {
    let mut note = Note::new(language, width);
    note.title(&subject.name());
    note.paragraph(&subject.block(), 3);
    note.skip(0.4 * language.text);
    note.paragraph(&subject.how(), 4);
    note
}

/// A table of figures as a note of its own.
pub(super) fn figures<'a>(table: &Table, unit: Unit, language: &'a Language, width: f64) -> Note<'a> {
    let mut note = Note::new(language, width);
    note.table(table, unit);
    note
}

/// The crotch seam against the body.
pub(super) fn crotch<'a>(subject: &Subject<'_>, language: &'a Language, width: f64) -> Note<'a> {
    let mut note = Note::new(language, width);
    note.head("Crotch length");
    note.skip(0.5 * language.text);
    let (bar, height) = budget_bar(subject, language, width);
    note.picture(bar, height);
    note.paragraph(&Wording::line(&subject.crotch_said()), 3);
    note
}

/// A sheet with more warnings than these has room for nothing else.
const MOST_WARNINGS: usize = 5;

/// What a person should know before cutting; nothing where there is nothing.
pub(super) fn warnings<'a>(subject: &Subject<'_>, language: &'a Language, width: f64) -> Option<Note<'a>> {
    let all = subject.notices_said();
    let verdict = subject.verdict();
    if verdict == Verdict::Good && all.is_empty() {
        return None;
    }
    let mut note = Note::new(language, width);
    note.head(verdict.head());
    // What forbids cutting first, since a sheet shows only so many.
    let (shown, left) = all.split_at(all.len().min(MOST_WARNINGS));
    for text in shown {
        note.skip(0.3 * language.text);
        note.paragraph(&Wording::paragraph(text), 5);
    }
    if !left.is_empty() {
        note.skip(0.3 * language.text);
        note.paragraph(&Wording::line(&format!("And {} more.", left.len())), 1);
    }
    Some(note)
}

/// What the lines of the drawing mean, by a stroke of each.
pub(super) fn key<'a>(
    language: &'a Language,
    width: f64,
    rows: impl IntoIterator<Item = (Pen, &'static str)>,
) -> Note<'a> {
    let mut note = Note::new(language, width);
    note.head("Lines");
    let t = language.text;
    let stroke = 5.0 * t;
    note.skip(0.3 * t);
    for (pen, words) in rows {
        let middle = Point::new(0.0, 0.7 * language.leading());
        let line = Line::new(middle, middle + Vec2::new(stroke, 0.0)).to_path(0.1);
        let at = middle + Vec2::new(stroke + 0.8 * t, CAP_HEIGHT / 2.0 * t);
        let text = Text::new(at, t, words).cut_to(width - stroke - 0.8 * t);
        note.picture([Mark::Line { path: line, pen }, Mark::Text(text)], language.leading());
    }
    note
}

/// Both test squares with their use.
pub(super) fn check<'a>(language: &'a Language, width: f64) -> Note<'a> {
    let mut note = Note::new(language, width);
    note.head("Check the print");
    note.skip(0.6 * language.text);
    note.picture(test_squares(Point::ORIGIN, language), test_squares::HEIGHT);
    note.paragraph(
        &Wording::line("Measure one of the squares both ways. Print at 100 %, not fitted to the page."),
        3,
    );
    note
}

/// What everyone who cuts from a new draft is told.
pub(super) fn cautions<'a>(language: &'a Language, width: f64) -> Note<'a> {
    let mut note = Note::new(language, width);
    note.head("Before you cut");
    for caution in CAUTIONS {
        note.skip(0.25 * language.text);
        note.paragraph(&Wording::line(caution), 3);
    }
    note
}
