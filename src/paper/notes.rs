//! The notes of a sheet: what each says, whichever sheet it stands on.

use kurbo::{Line, Point, Shape as _, Vec2};

use super::{
    budget_bar::budget_bar,
    cautions::CAUTIONS,
    figures::{decimal, spoken},
    language::Language,
    note::{Note, Stop},
    subject::Subject,
    test_squares::{self, test_squares},
};
use crate::{
    drawing::{CAP_HEIGHT, Ink, Mark, Pen, Text, Wording},
    fit::Verdict,
    terms::{EaseAt, Level, Word},
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

/// What ease was asked for and what counts as a fit, besides what the levels show.
pub(super) fn ease<'a>(subject: &Subject<'_>, language: &'a Language, width: f64) -> Note<'a> {
    let mut note = Note::new(language, width);
    note.head(&format!("Ease, {}", subject.unit.tag()));
    let t = language.text;
    // "1 15/16 to 7 1/16" is longer than "4.9 to 17.9"
    let (asked, drafted) = if subject.unit == Unit::Cm { (0.48, 0.69) } else { (0.42, 0.58) };
    let stops =
        [Stop::left(0.0), Stop::right(asked * width), Stop::right(drafted * width), Stop::right(width)];
    note.names(&stops, &["at", "asked for", "drafted", "a fit within"]);
    note.skip(0.1 * t);
    for row in ease_rows(subject) {
        note.row(&stops, &row.each_ref().map(String::as_str), Ink::Black);
    }
    note
}

/// Ease at every place: its name, asked for, drafted, and within what it is a fit.
pub(super) fn ease_rows(subject: &Subject<'_>) -> Vec<[String; 4]> {
    let (plan, report) = (&subject.draft.plan, subject.report);
    let row = |at: &EaseAt| {
        let level = |level: Level| report.levels.iter().find(|row| row.level == level).map(|row| row.ease());
        let drafted = match at {
            EaseAt::Waist => level(Level::Waist),
            EaseAt::TopHip => None,
            EaseAt::Hip => level(Level::Hip),
            EaseAt::Thigh => level(Level::Thigh),
            EaseAt::Knee => level(Level::Knee),
            EaseAt::Calf => level(Level::Calf),
            EaseAt::CrotchDepth => subject
                .draft
                .body
                .cm(crate::terms::Measurement::BodyRise)
                .map(|rise| subject.draft.shape.levels[Level::Crotch] - rise),
            EaseAt::CrotchLength => report.crotch.ease(),
        };
        let print = |cm| subject.unit.figure(cm);
        let (least, most) = plan.wanted[*at];
        let within = match most {
            Some(most) => format!("{} to {}", print(least), print(most)),
            None => format!("{} at least", print(least)),
        };
        let asked = print(plan.inputs.ease[*at]);
        [spoken(at.key()), asked, drafted.map(print).unwrap_or_default(), within]
    };
    EaseAt::ALL.iter().map(row).collect()
}

/// The crotch seam against the body.
pub(super) fn crotch<'a>(subject: &Subject<'_>, language: &'a Language, width: f64) -> Note<'a> {
    let mut note = Note::new(language, width);
    note.head("Crotch length");
    note.skip(0.5 * language.text);
    let (bar, height) = budget_bar(subject, language, width);
    note.picture(bar, height);
    note.paragraph(&Wording::line(&crotch_words(subject)), 3);
    note
}

/// How long the crotch seam is, and against what.
pub(super) fn crotch_words(subject: &Subject<'_>) -> String {
    let crotch = &subject.report.crotch;
    let wanted = subject.length(crotch.wanted);
    let total = subject.length(crotch.total());
    let sewn = match subject.draft.shape.front.cut_off {
        Some(_) => format!("Up to the measured waist {total}"),
        None => format!("Sewn {total}"),
    };
    match crotch.body {
        Some((_, from)) => format!("{sewn}; the body's length is {from}; wanted ease {wanted}."),
        None => format!("{sewn}; wanted ease {wanted}."),
    }
}

/// The fit parameters in force and what each gives to the crotch seam; nothing where there is none.
pub(super) fn parameters<'a>(subject: &Subject<'_>, language: &'a Language, width: f64) -> Option<Note<'a>> {
    let given = &subject.draft.adjustments;
    if given.is_empty() {
        return None;
    }
    let mut note = Note::new(language, width);
    let stops = [Stop::left(0.0), Stop::right(0.72 * width), Stop::right(0.87 * width), Stop::right(width)];
    note.head("Fit parameters");
    note.names(&stops, &["", "value", "front", "back"]);
    note.skip(0.1 * language.text);
    let print = |cm| subject.unit.figure(cm);
    let shares = &subject.report.crotch.by_parameter;
    for it in given {
        let value = it.key.about().unit.amount(it.value).in_unit(subject.unit);
        let share = shares.iter().find(|share| share.key == Some(it.key));
        let (front, back) = share.map(|share| (print(share.front), print(share.back))).unwrap_or_default();
        note.row(&stops, &[it.key.key(), &value, &front, &back], Ink::Black);
    }
    if let Some(rest) = shares.iter().find(|share| share.key.is_none()) {
        note.row(&stops, &["together", "", &print(rest.front), &print(rest.back)], Ink::Black);
    }
    let tag = subject.unit.tag();
    note.paragraph(&Wording::line(&format!("Front and back, {tag}: what each adds to the crotch seam.")), 2);
    Some(note)
}

/// What sews to what, and how outlines run on across the seams.
pub(super) fn seams_and_joins<'a>(subject: &Subject<'_>, language: &'a Language, width: f64) -> Note<'a> {
    let mut note = Note::new(language, width);
    let stops = [Stop::left(0.0), Stop::right(0.48 * width), Stop::right(0.69 * width), Stop::right(width)];
    note.head(&format!("Seams, {}, and joins", subject.unit.tag()));
    note.names(&stops, &["seam", "front", "back", "back longer"]);
    note.skip(0.1 * language.text);
    let print = |cm| subject.unit.figure(cm);
    for row in &subject.report.seams {
        let cells = [&spoken(row.seam.key()), &print(row.front), &print(row.back), &print(row.difference())];
        note.row(&stops, &cells.map(String::as_str), Ink::Black);
    }
    note.skip(0.4 * language.text);
    let stops = [Stop::left(0.0), Stop::right(0.5 * width), Stop::right(width)];
    note.names(&stops, &["join", "angle", "true within"]);
    note.skip(0.1 * language.text);
    for row in &subject.report.joins {
        let degrees = format!("{}°", decimal(row.degrees, 1));
        let wanted = format!("{}° to {}°", decimal(row.wanted.0, 0), decimal(row.wanted.1, 0));
        note.row(&stops, &[&spoken(row.join.key()), &degrees, &wanted], Ink::Black);
    }
    note
}

/// A sheet with more warnings than these has room for nothing else.
const MOST_WARNINGS: usize = 5;

/// What a person should know before cutting; nothing where there is nothing.
pub(super) fn warnings<'a>(subject: &Subject<'_>, language: &'a Language, width: f64) -> Option<Note<'a>> {
    let all = warnings_said(subject);
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

/// The same as sentences; what forbids cutting first.
pub(super) fn warnings_said(subject: &Subject<'_>) -> Vec<String> {
    let notices = subject.notices();
    notices.iter().map(|notice| sentence(&notice.text(subject.unit))).collect()
}

/// A notice as a sentence of its own.
fn sentence(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(|letter| letter.to_uppercase().to_string()).unwrap_or_default();
    format!("{first}{}.", letters.as_str())
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
