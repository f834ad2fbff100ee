//! Where each piece is cut from the cloth.

use kurbo::{Affine, BezPath, Line, PathSeg, Point, Rect, Shape as _, Vec2};

use super::language::{Language, SHEET};
use crate::{
    curve::unit as along,
    drawing::{Align, Drawing, Ink, Layer, Pen, Shade, Text, Wording, lines_of_text},
    mistake::Notice,
    pattern::{CutPiece, Lay, Piece},
    told::{Subject, how_laid, piece_name, to_buy},
};

const LANGUAGE: &Language = &SHEET;
/// A picture of a tenth of the size; one of a twentieth where the cloth is long.
const SCALES: [f64; 2] = [10.0, 20.0];
/// The longest picture of the cloth, cm: a lying A4 sheet.
const LONGEST: f64 = 26.0;

/// The lay seen on the right side of the cloth, its length from left to right: every piece with its name and its grain.
pub fn cloth_picture(subject: &Subject<'_>, pieces: &[Piece], lay: &Lay, notices: &[Notice]) -> Drawing {
    let scale = if lay.washed_length / SCALES[0] <= LONGEST { SCALES[0] } else { SCALES[1] };
    let cloth = &lay.cloth;
    let edge = cloth.selvedge / scale;
    let (long, high) = (lay.washed_length / scale, cloth.usable_width() / scale);
    // Turned by a quarter, so that the warp runs from left to right and nothing is mirrored.
    let place = Affine::new([0.0, -1.0 / scale, 1.0 / scale, 0.0, 0.0, high]);
    let below = if cloth.folded { high } else { high + edge };
    let sheet = Rect::new(0.0, -edge, long, below);

    let mut ground = Layer::new("Cloth");
    ground.line(sheet.to_path(0.1), Pen::new(0.04, Ink::Dark));
    let mut selvedges = Layer::new("Selvedges");
    let line = |y: f64| Line::new((0.0, y), (long, y)).to_path(0.1);
    selvedges.line(line(0.0), LANGUAGE.earlier);
    if cloth.folded {
        selvedges.line(line(high), Pen::new(0.08, Ink::Black));
    } else {
        selvedges.line(line(high), LANGUAGE.earlier);
    }
    let (mut areas, mut outlines) = (Layer::new("Areas"), Layer::new("Pieces"));
    let (mut grain, mut names) = (Layer::new("Grain"), Layer::new("Names"));
    for (number, cut) in lay.cut.iter().enumerate() {
        let outline = place * lay.outline(pieces, cut);
        areas.area(outline.clone(), Shade::Pale);
        let spot = label_spot(&outline);
        let words = format!("{} {}{}", number + 1, piece_name(&pieces[cut.piece]), layers(lay, cut));
        let text = Text::new(spot + Vec2::new(0.0, 0.36 * LANGUAGE.small), LANGUAGE.small, words.as_str());
        let text = text.aligned(Align::Middle).cut_to(outline.bounding_box().width() - 0.1);
        grain.line(arrow(place * cut.place, &pieces[cut.piece], cloth.one_way(), &text), LANGUAGE.grain);
        names.text(text);
        outlines.line(outline, LANGUAGE.inside);
    }
    let mut words = Layer::new("Figures and notes");
    write_about(&mut words, subject, pieces, lay, notices, sheet, scale);
    let title = subject.title("cloth");
    let description = format!(
        "How {} pieces are cut from cloth {} wide: {} to buy, {:.0} per cent of it in the pieces.",
        lay.cut.len(),
        subject.length(cloth.width),
        to_buy(lay, subject.unit),
        100.0 * lay.used
    );
    Drawing::around(title, &description, vec![ground, selvedges, areas, grain, outlines, names, words], 0.8)
}

/// Behind a name: that two are cut at once, where the cloth lies double.
fn layers(lay: &Lay, cut: &CutPiece) -> &'static str {
    match (lay.cloth.folded, cut.layers) {
        (true, 2) => ", two",
        _ => "",
    }
}

/// The middle of the piece: half way along it, in the middle of what lies there.
fn label_spot(outline: &BezPath) -> Point {
    let bounds = outline.bounding_box();
    let x = bounds.center().x;
    let level = Line::new((x, bounds.y0 - 1.0), (x, bounds.y1 + 1.0));
    let meets = outline.segments().flat_map(|piece: PathSeg| {
        let found = piece.intersect_line(level);
        found.into_iter().map(|it| level.p0.y + it.line_t * (level.p1.y - level.p0.y)).collect::<Vec<_>>()
    });
    let mut meets: Vec<f64> = meets.collect();
    meets.sort_by(f64::total_cmp);
    let rooms = meets.chunks_exact(2).map(|room| (room[1] - room[0], 0.5 * (room[0] + room[1])));
    let (_, y) = rooms.max_by(|a, b| a.0.total_cmp(&b.0)).unwrap_or((0.0, bounds.center().y));
    Point::new(x, y)
}

/// The grain beside the name, with a head that points to the piece's own; with one at either end where it may lie
/// either way.
fn arrow(place: Affine, piece: &Piece, one_way: bool, name: &Text) -> BezPath {
    const LENGTH: f64 = 0.8;
    let up = along(place * piece.grain.p0 - place * piece.grain.p1);
    let room = name.footprint().bounds();
    let bounds = (place * piece.cut_path()).bounding_box();
    let after = bounds.x1 - room.x1 > room.x0 - bounds.x0;
    let middle = if after { room.x1 + 0.5 * LENGTH + 0.2 } else { room.x0 - 0.5 * LENGTH - 0.2 };
    let middle = Point::new(middle, room.center().y);
    let fits = bounds.inflate(-0.1, 0.0).x0 < middle.x - 0.5 * LENGTH
        && middle.x + 0.5 * LENGTH < bounds.inflate(-0.1, 0.0).x1;
    let mut path = BezPath::new();
    if !fits {
        return path;
    }
    let (from, to) = (middle - up * (0.5 * LENGTH), middle + up * (0.5 * LENGTH));
    path.move_to(from);
    path.line_to(to);
    let mut head = |at: Point, way: Vec2| {
        path.move_to(at - way * 0.18 + way.turn_90() * 0.09);
        path.line_to(at);
        path.line_to(at - way * 0.18 - way.turn_90() * 0.09);
    };
    head(to, up);
    if !one_way {
        head(from, -up);
    }
    path
}

fn write_about(
    words: &mut Layer,
    subject: &Subject<'_>,
    pieces: &[Piece],
    lay: &Lay,
    notices: &[Notice],
    sheet: Rect,
    scale: f64,
) {
    let unit = subject.unit;
    let (text, small) = (LANGUAGE.text, LANGUAGE.small);
    let at = Point::new(sheet.x0, sheet.y0 - 0.9);
    words.text(Text::new(at, LANGUAGE.head, format!("Buy {}", to_buy(lay, unit))).bold());
    let name = Text::new(Point::new(sheet.x1, at.y), text, subject.name().as_str()).aligned(Align::End);
    words.text(name.cut_to(0.5 * sheet.width()));
    let along = |y: f64, what: &str| {
        Text::new(Point::new(sheet.center().x, y), small, what).aligned(Align::Middle).inked(Ink::Dark)
    };
    words.text(along(sheet.y0 - 0.12, if lay.cloth.folded { "selvedges" } else { "selvedge" }));
    words.text(along(sheet.y1 + 0.32, if lay.cloth.folded { "fold" } else { "selvedge" }));
    let wide =
        format!("{} wide", unit.length(lay.cloth.washed_width() / if lay.cloth.folded { 2.0 } else { 1.0 }));
    let beside = Text::new(Point::new(sheet.x0 - 0.15, sheet.center().y), small, wide)
        .aligned(Align::Middle)
        .turned(-std::f64::consts::FRAC_PI_2);
    words.text(beside);
    let long = format!("{} long", unit.length(lay.washed_length));
    let beyond = Text::new(Point::new(sheet.x1 + 0.35, sheet.center().y), small, long)
        .aligned(Align::Middle)
        .turned(-std::f64::consts::FRAC_PI_2);
    words.text(beyond);
    let mut y = sheet.y1 + 0.4;
    let mut sentences = vec![
        format!("{}, block {}. Laid {}.", subject.draft.name, subject.draft.recipe.name, how_laid(lay, unit)),
        counted(pieces),
    ];
    let shrinkage = &lay.cloth.shrinkage;
    if shrinkage.lengthwise > 0.0 || shrinkage.across > 0.0 {
        sentences.push(format!(
            "Drawn as the cloth is once washed; as it is sold, {} of it {} wide.",
            unit.length(lay.length),
            unit.length(lay.cloth.width)
        ));
    }
    sentences.extend(notices.iter().map(|notice| format!("Note: {}.", notice.text(unit))));
    sentences.push(format!(
        "A picture of 1 : {scale:.0}, {}. Sew a toile before cutting good cloth; wash the cloth first.",
        if lay.cloth.folded {
            "folded along the warp, right sides together"
        } else {
            "right side of the cloth up"
        }
    ));
    for sentence in sentences {
        for line in lines_of_text(&Wording::paragraph(&sentence), text, sheet.width().max(12.0)) {
            y += LANGUAGE.leading();
            words.text(Text::new(Point::new(sheet.x0, y), text, line));
        }
    }
}

/// Every piece with how many of it are cut.
fn counted(pieces: &[Piece]) -> String {
    let all: usize = pieces.iter().map(|piece| piece.copies.count()).sum();
    let each: Vec<String> =
        pieces.iter().map(|piece| format!("{} {}", piece.copies.count(), piece_name(piece))).collect();
    format!("{all} pieces: {}.", each.join(", "))
}
