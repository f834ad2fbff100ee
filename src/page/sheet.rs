//! The parts of the page, which are in the program, and the files that can be taken away from it.

use crate::{
    drawing::{Paper, SvgScale},
    making::Made,
    mistake::{Mistake, Mistakes},
    paper::{exchange_file, on_sheets, pattern_sheet, projected, side_by_side, wall_drawing},
    reading::{fit_sheet, lesson},
    terms::Side,
    told::Subject,
};

/// A part of the page: its name, its media type, its text.
pub(super) type Part = (&'static str, &'static str, &'static str);

const SCRIPT: &str = "text/javascript; charset=utf-8";

/// Everything that the browser loads, but for what the tables say.
pub(super) const PARTS: &[Part] = &[
    ("", "text/html; charset=utf-8", include_str!("sheet/index.html")),
    ("sheet.css", "text/css; charset=utf-8", include_str!("sheet/sheet.css")),
    ("mark.svg", "image/svg+xml", include_str!("sheet/mark.svg")),
    ("sheet.js", SCRIPT, include_str!("sheet/sheet.js")),
    ("ask.js", SCRIPT, include_str!("sheet/ask.js")),
    ("history.js", SCRIPT, include_str!("sheet/history.js")),
    ("levels.js", SCRIPT, include_str!("sheet/levels.js")),
    ("panels.js", SCRIPT, include_str!("sheet/panels.js")),
    ("regions.js", SCRIPT, include_str!("sheet/regions.js")),
    ("replay.js", SCRIPT, include_str!("sheet/replay.js")),
    ("drawer.js", SCRIPT, include_str!("sheet/drawer.js")),
    ("toile.js", SCRIPT, include_str!("sheet/toile.js")),
    ("lengths.js", SCRIPT, include_str!("sheet/lengths.js")),
    ("view.js", SCRIPT, include_str!("sheet/view.js")),
];

/// Files to take away: the word by which one is asked for, and what the page calls it.
pub(super) const FILES: &[(&str, &str)] = &[
    ("pieces_a4_letter", "Pieces to cut, PDF on A4 or Letter sheets"),
    ("pieces_a3", "Pieces to cut, PDF on A3 sheets"),
    ("projector", "Pieces to cut, PDF for a projector"),
    ("exchange", "Pieces to cut, DXF"),
    ("fit_sheet", "Fit sheet, PDF"),
    ("lesson", "Lesson step by step, HTML"),
    ("wall", "Wall drawing at true scale, one PDF sheet"),
    ("wall_svg", "Wall drawing at true scale, SVG"),
    ("draft", "The draft as data, JSON"),
    ("measurements", "The measurement file with all changes, TOML"),
];

/// A file made: the end of its name, its media type, its bytes.
pub(super) type Taken = (&'static str, &'static str, Vec<u8>);

/// Makes a file of a draft.
pub(super) fn taken(made: &Made, file: &str, side: Side) -> Result<Taken, Mistakes> {
    const PDF: &str = "application/pdf";
    let unit = made.order.units;
    let subjects: Vec<Subject<'_>> = made.legs.iter().map(|leg| Subject::of(leg, unit)).collect();
    let subject = subjects.iter().find(|subject| subject.draft.side == side).or(subjects.first());
    let printed = |paper| on_sheets(&subjects, &made.pattern, paper).map(|printed| printed.pdf);
    let nothing = || Mistake::new(format!("there is no file `{file}` to take"));
    Ok(match file {
        "pieces_a4_letter" => ("a4_letter.pdf", PDF, printed(Paper::A4OrLetter)?),
        "pieces_a3" => ("a3.pdf", PDF, printed(Paper::A3)?),
        "projector" => {
            let sheet = pattern_sheet(&subjects, &side_by_side(&made.pattern), false);
            ("projector.pdf", PDF, projected(sheet).to_pdf()?)
        }
        "exchange" => {
            let draft = subject.ok_or_else(nothing)?.draft;
            let text = exchange_file(draft, &made.pattern.pieces, made.order.units);
            ("pieces.dxf", "image/vnd.dxf", text.into_bytes())
        }
        "fit_sheet" => {
            let sheet = fit_sheet(subject.ok_or_else(nothing)?, &made.order.fittings);
            ("fit-sheet.pdf", PDF, sheet.to_pdf()?)
        }
        "lesson" => {
            let told = lesson(subject.ok_or_else(nothing)?);
            ("lesson.html", "text/html; charset=utf-8", told.to_html().into_bytes())
        }
        "wall" => ("wall.pdf", PDF, wall_drawing(subject.ok_or_else(nothing)?).to_pdf()?),
        "wall_svg" => {
            let text = wall_drawing(subject.ok_or_else(nothing)?).to_svg(SvgScale::TrueScale);
            ("wall.svg", "image/svg+xml", text.into_bytes())
        }
        "draft" => (
            "draft.json",
            "application/json",
            format!("{}\n", super::told::answer(made).to_json()).into_bytes(),
        ),
        "measurements" => {
            ("measurements.toml", "application/toml", made.order.source.text.as_bytes().to_vec())
        }
        _ => return Err(nothing().into()),
    })
}
