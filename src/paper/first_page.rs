//! The first page of a drawing that is cut over sheets: how to print, check and glue it.

use kurbo::{Point, Rect, Vec2};

use super::{
    language::{Language, SHEET},
    margin,
    note::Note,
    pattern_sheet::CUT,
};
use crate::{
    drawing::{Drawing, Layer, Paper, Tiles, Wording},
    told::Subject,
};

const LANGUAGE: &Language = &SHEET;
/// Between two parts of the page, cm.
const GAP: f64 = 0.8;
/// Width of the column of margin, cm: the two test squares and a little.
const COLUMN: f64 = 10.7;

/// The page in front of the tiles: map of the sheets, both test squares, cautions. As large as the tiles' sheets.
pub fn first_page(subject: &Subject<'_>, tiles: &Tiles<'_>, paper: Paper) -> Drawing {
    let size = tiles.sheet().size;
    let page = size.to_rect();
    let inside = page.inflate(-tiles.sheet().margin - 0.3, -tiles.sheet().margin - 0.3);
    let mut words = Layer::new("First page");
    let mut squares = Layer::new("Test squares");

    let mut top = Note::new(LANGUAGE, inside.width());
    top.title(&subject.name());
    top.paragraph(&subject.block(), 2);
    let height = top.height() + GAP;
    words.marks.extend(top.placed(inside.origin()));

    let count = tiles.tiles().len();
    let check = margin::check(LANGUAGE, COLUMN);
    let body = Rect::new(inside.x0, inside.y0 + height, inside.x1, inside.y1);
    // Squares and notes stand beside the map on a lying sheet, under it and beside each other on an upright one.
    let lying = body.width() > body.height();
    let width = if lying { COLUMN } else { (body.width() - COLUMN - 2.0 * GAP).min(COLUMN) };
    let others = [gluing(count, paper, width), margin::cautions(LANGUAGE, width)];
    let tall = others.iter().map(|note| note.height() + GAP).sum::<f64>().max(check.height() + GAP);
    let (map, first, second) = if lying {
        let second = body.origin() + Vec2::new(0.0, check.height() + GAP);
        (Rect { x0: body.x0 + COLUMN + GAP, ..body }, body.origin(), second)
    } else {
        let first = Point::new(body.x0, body.y1 - tall + GAP);
        (Rect { y1: body.y1 - tall, ..body }, first, first + Vec2::new(COLUMN + 2.0 * GAP, 0.0))
    };
    words.marks.extend(tiles.map(map, is_on_the_map));
    squares.marks.extend(check.placed(first));
    let mut at = second;
    for note in others {
        let down = note.height() + GAP;
        words.marks.extend(note.placed(at));
        at.y += down;
    }
    Drawing {
        bounds: page,
        ..Drawing::around(
            subject.title("first page"),
            &format!("How to print, check and glue {count} sheets."),
            vec![words, squares],
            0.0,
        )
    }
}

/// The map shows what is cut.
fn is_on_the_map(layer: &Layer) -> bool {
    layer.name.as_str() == CUT
}

/// How the sheets become one.
fn gluing(count: usize, paper: Paper, width: f64) -> Note<'static> {
    let mut note = Note::new(LANGUAGE, width);
    note.head("Print and glue");
    let sheets = if count == 1 { "One sheet".to_owned() } else { format!("{count} sheets") };
    let sentences = [
        format!("{sheets} of {} after this one, printed on one side.", paper_name(paper)),
        "Cut each sheet along the lines at its left and upper edge and lay it on the dashed line of its neighbour, so \
         that the diamonds with the same number become whole."
            .to_owned(),
    ];
    for sentence in sentences {
        note.skip(0.25 * LANGUAGE.text);
        note.paragraph(&Wording::paragraph(&sentence), 5);
    }
    note
}

/// How a format of paper is called.
fn paper_name(paper: Paper) -> &'static str {
    match paper {
        Paper::A4 => "A4",
        Paper::Letter => "US Letter",
        Paper::A4OrLetter => "A4 or US Letter",
        Paper::A3 => "A3",
        Paper::Tabloid => "US Tabloid",
        Paper::A0 => "A0",
    }
}
