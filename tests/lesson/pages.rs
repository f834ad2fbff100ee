//! The printed pages: nothing off the sheet, no words over others, and the text as yesterday.

use breeks::{
    booklet::Booklet,
    drawing::{Drawing, Mark, Paper},
    order::{DEMOS, Fitting},
    reading::{fit_sheet, lesson, measuring_guide},
    unit::Unit,
};
use kurbo::{Rect, Vec2};

use crate::{
    page::{Seen, seen},
    sound::booklets,
    subjects::Taught,
};

/// The words of a drawing with where they stand.
fn words(drawing: &Drawing, by: Vec2) -> Vec<(String, breeks::drawing::Footprint, Rect)> {
    let marks = drawing.layers.iter().flat_map(|layer| &layer.marks);
    marks
        .filter_map(|mark| match mark {
            Mark::Text(text) if !text.words.as_str().trim().is_empty() => {
                let print = text.clone().moved(by).footprint();
                Some((text.words.to_string(), print, print.bounds()))
            }
            _ => None,
        })
        .collect()
}

/// What is wrong with the printed pages of a booklet.
pub(crate) fn faults(booklet: &Booklet) -> Vec<String> {
    let mut faults = Vec::new();
    for sheet in booklet.pages() {
        let page = &sheet.page;
        let mut all = words(page, Vec2::ZERO);
        for (picture, at) in &sheet.pictures {
            let by = *at - picture.bounds.origin();
            let frame = picture.bounds + by;
            if !page.bounds.contains_rect(frame) {
                faults.push(format!("{}: picture `{}` is off the sheet", page.title, picture.description));
            }
            for (text, _, bounds) in words(picture, by) {
                if !frame.inflate(1e-6, 1e-6).contains_rect(bounds) {
                    faults.push(format!("{}: `{text}` is cut off its picture", page.title));
                }
            }
            all.extend(words(picture, by));
        }
        for (index, (text, print, bounds)) in all.iter().enumerate() {
            if !page.bounds.contains_rect(*bounds) {
                faults.push(format!("{}: `{text}` is off the sheet", page.title));
            }
            for (other, taken, box_of) in &all[..index] {
                // Letters of two lines may touch; two texts in one place may not.
                let shared = bounds.intersect(*box_of);
                if print.overlaps(taken) && shared.width() > 0.03 && shared.height() > 0.06 {
                    faults.push(format!("{}: `{text}` lies over `{other}`", page.title));
                }
            }
        }
    }
    faults
}

#[test]
fn nothing_off_the_sheet_and_no_words_over_others() {
    let mut all = Vec::new();
    for booklet in booklets() {
        all.extend(faults(&booklet));
    }
    assert!(all.is_empty(), "{} faults:\n{}", all.len(), all.join("\n"));
}

#[test]
fn fit_sheet_of_every_demo_body_on_one_page() {
    for demo in DEMOS {
        let taught = Taught::demo(demo, "classic", &[]);
        let pages = fit_sheet(&taught.subject(taught.made.order.units), &taught.made.order.fittings).pages();
        assert_eq!(pages.len(), 1, "{demo}");
    }
}

#[test]
fn pdf_with_as_many_pages_as_were_set_all_of_paper_size() {
    let taught = Taught::demo("stroke", "classic", &[]);
    for booklet in [lesson(&taught.subject(Unit::Cm)), measuring_guide(breeks::unit::Unit::Cm)] {
        let pdf = booklet.to_pdf().expect("pages");
        let text = String::from_utf8_lossy(&pdf);
        let leaves: Vec<&str> = text.split("/Type /Page\n").skip(1).collect();
        assert_eq!(leaves.len(), booklet.pages().len());
        let size = Paper::A4OrLetter.size() * (72.0 / 2.54);
        for leaf in leaves {
            let sides =
                leaf.split("/MediaBox [").nth(1).and_then(|rest| rest.split(']').next()).expect("a size");
            let sides: Vec<f64> =
                sides.split_whitespace().map(|side| side.parse().expect("a number")).collect();
            assert!(
                (sides[2] - size.width).abs() < 0.01 && (sides[3] - size.height).abs() < 0.01,
                "{sides:?}"
            );
        }
    }
}

#[test]
fn toiles_on_the_fit_sheet() {
    let taught = Taught::demo("stroke", "classic", &[]);
    let fittings = [Fitting {
        date: Some("2026-11-25".to_owned()),
        block: Some("classic".to_owned()),
        seen: vec!["lines from the fork to the knee".to_owned()],
        tested: vec!["pinned out at the front thigh".to_owned()],
        changed: vec![("thigh.front".to_owned(), 1.9), ("trousers.ease.hip".to_owned(), 6.0)],
        note: Some("second toile on Friday".to_owned()),
    }];
    let html = fit_sheet(&taught.subject(Unit::Cm), &fittings).to_html();
    let rows = seen(&html)
        .into_iter()
        .find_map(|item| match item {
            Seen::Table { caption, rows } if caption == "Record of fittings" => Some(rows),
            _ => None,
        })
        .expect("the record");
    let wanted = [
        "2026-11-25",
        "classic",
        "lines from the fork to the knee",
        "pinned out at the front thigh",
        "thigh.front 1.90 cm; trousers.ease.hip 6.00 cm",
        "second toile on Friday",
    ];
    assert_eq!(rows[1], wanted);
    assert!(rows[2..].iter().all(|row| row.iter().all(String::is_empty)) && rows.len() > 3, "room for more");
}

/// A page as a reader has it, one thing a line.
fn as_read(booklet: &Booklet) -> String {
    let mut out = String::new();
    for item in seen(&booklet.to_html()) {
        match item {
            Seen::Heading(words) => out.push_str(&format!("\n# {words}\n")),
            Seen::Words { lead, words } if lead.is_empty() => out.push_str(&format!("{words}\n")),
            Seen::Words { lead, words } => out.push_str(&format!("[{lead}] {words}\n")),
            Seen::Sum(sum) => out.push_str(&format!("    {sum}\n")),
            Seen::Table { caption, rows } => {
                out.push_str(&format!("| {caption}\n"));
                for row in rows {
                    out.push_str(&format!("| {}\n", row.join(" | ")));
                }
            }
        }
    }
    out
}

fn in_the_folder(compare: impl FnOnce()) {
    let mut settings = insta::Settings::clone_current();
    settings.set_snapshot_path(concat!(env!("CARGO_MANIFEST_DIR"), "/snapshots"));
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(compare);
}

#[test]
fn words_as_yesterday() {
    let stroke = Taught::demo("stroke", "classic", &["thigh.front=1.9"]);
    let cox = Taught::demo("cox", "jeans", &[]);
    let texts = [
        ("lesson-stroke", as_read(&lesson(&stroke.subject(Unit::Cm)))),
        ("lesson-cox", as_read(&lesson(&cox.subject(Unit::Inch)))),
        ("fit-sheet-stroke", as_read(&fit_sheet(&stroke.subject(Unit::Cm), &[]))),
        ("measuring-guide", as_read(&measuring_guide(breeks::unit::Unit::Cm))),
    ];
    for (name, text) in texts {
        in_the_folder(|| insta::assert_snapshot!(name, text));
    }
}
