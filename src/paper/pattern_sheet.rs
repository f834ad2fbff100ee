//! The pieces ready to cut, at true scale.

use kurbo::{Affine, BezPath, Line, ParamCurve as _, Point, Shape as _, Vec2};

use super::{
    language::{Language, PIECES},
    test_squares::test_squares,
};
use crate::{
    curve::{turned, unit},
    drawing::{Align, CAP_HEIGHT, Drawing, Ink, Layer, Mark, Text, Wording, lines_of_text},
    pattern::{DrawnLine, LineKind, Piece, PieceKind},
    terms::{Panel, Side, Word},
    told::{CAUTIONS, Subject},
    voice::spoken,
};

const LANGUAGE: &Language = &PIECES;
/// Round the sheet, cm.
const MARGIN: f64 = 1.0;
/// From one baseline of a label to the next, in sizes of its letters.
const LEADING: f64 = 1.3;
/// From a line to the words along it, cm.
const BESIDE: f64 = 0.25;

/// The layer of the lines to cut.
pub(super) const CUT: &str = "Cutting lines";

/// A piece and where it lies on the sheet: from its own place, turned over or not.
#[derive(Clone, Copy, Debug)]
pub struct PlacedPiece<'a> {
    /// The piece.
    pub piece: &'a Piece,
    /// From the piece's own place to the sheet's.
    pub place: Affine,
}

/// The pieces where they were laid. `subjects` are the legs that they belong to; `squares` puts the test squares beside
/// them, for a sheet that has no first page.
pub fn pattern_sheet(subjects: &[Subject<'_>], placed: &[PlacedPiece<'_>], squares: bool) -> Drawing {
    let mut layers = Layers::default();
    for piece in placed {
        let of_its_leg = |subject: &&Subject<'_>| subject.draft.side == piece.piece.side;
        if let Some(subject) = subjects.iter().find(of_its_leg).or(subjects.first()) {
            layers.add(subject, piece);
        }
    }
    if squares {
        let reach = layers.cut.marks.iter().map(Mark::bounds).reduce(|all, one| all.union(one));
        let at = reach.map_or(Point::ORIGIN, |reach| Point::new(reach.x0, reach.y1 + 1.5));
        layers.squares.marks.extend(test_squares(at, LANGUAGE));
    }
    let title = subjects.first().map(|subject| subject.title("pattern")).unwrap_or_default();
    let names: Vec<&str> = placed.iter().map(|piece| piece.piece.name()).collect();
    let about = subjects.first().map(|subject| subject.description("Pieces ready to cut, at true scale."));
    let description = format!("{} Pieces: {}.", about.unwrap_or_default(), names.join(", "));
    Drawing::around(title, &description, layers.in_order(), MARGIN)
}

/// What can be shown or hidden together.
struct Layers {
    levels: Layer,
    grain: Layer,
    sew: Layer,
    inside: Layer,
    cut: Layer,
    notches: Layer,
    words: Layer,
    squares: Layer,
}

impl Default for Layers {
    fn default() -> Self {
        Self {
            levels: Layer::new("Levels"),
            grain: Layer::new("Grain"),
            sew: Layer::new("Sewing lines"),
            inside: Layer::new("Darts, folds and places"),
            cut: Layer::new(CUT),
            notches: Layer::new("Notches"),
            words: Layer::new("Words"),
            squares: Layer::new("Test squares"),
        }
    }
}

impl Layers {
    fn in_order(self) -> Vec<Layer> {
        let all = [
            self.levels,
            self.grain,
            self.sew,
            self.inside,
            self.cut,
            self.notches,
            self.words,
            self.squares,
        ];
        all.into_iter().filter(|layer| !layer.marks.is_empty()).collect()
    }

    fn add(&mut self, subject: &Subject<'_>, placed: &PlacedPiece<'_>) {
        let PlacedPiece { piece, place } = *placed;
        self.cut.line(place * piece.cut_path(), LANGUAGE.outline);
        self.sew.line(place * piece.sew_path(), LANGUAGE.sewing);
        for dart in &piece.darts {
            let legs = Line::new(dart.legs[0], dart.apex).to_path(0.1).into_iter();
            let path: BezPath = legs.chain(Line::new(dart.apex, dart.legs[1]).to_path(0.1)).collect();
            self.inside.line(place * path, LANGUAGE.inside);
        }
        for line in &piece.lines {
            let (layer, pen) = match line.kind {
                LineKind::Level => (&mut self.levels, LANGUAGE.level),
                LineKind::Fold => (&mut self.inside, LANGUAGE.crease),
                LineKind::Place | LineKind::Style => (&mut self.inside, LANGUAGE.inside),
            };
            layer.line(place * line.path.clone(), pen);
            if let Some(text) = name_of(line, place) {
                self.words.text(text);
            }
        }
        for notch in &piece.notches {
            for stroke in notch.lines() {
                self.notches.line((place * stroke).to_path(0.1), LANGUAGE.outline);
            }
        }
        self.grain.line(place * piece.grain.to_path(0.1), LANGUAGE.grain);
        self.grain.line(place * arrow_heads(piece.grain), LANGUAGE.grain);
        self.words.marks.extend(label(subject, piece, place).map(Mark::Text));
        self.words.marks.extend(centre_name(piece, place).map(Mark::Text));
    }
}

/// The name of a drawn line: of a mark at the edge under its inner end, of a longer line along it.
fn name_of(line: &DrawnLine, place: Affine) -> Option<Text> {
    /// Longer lines carry their name.
    const LONG: f64 = 3.0;
    let segment = line.path.segments().next()?;
    let (from, to) = (place * segment.start(), place * segment.end());
    let text = Text::new(to, LANGUAGE.small, line.name).inked(Ink::Dark);
    if from.distance(to) < LONG {
        let (aside, align) = if to.x > from.x { (BESIDE, Align::Start) } else { (-BESIDE, Align::End) };
        return Some(text.moved(Vec2::new(aside, BESIDE + CAP_HEIGHT * LANGUAGE.small)).aligned(align));
    }
    let forwards = to.x - from.x > -1e-6;
    let way = unit(if forwards { to - from } else { from - to });
    let part = if line.kind == LineKind::Place { 0.5 } else { 0.15 };
    let at = if forwards { from.lerp(to, part) } else { to.lerp(from, part) };
    let rise = Vec2::new(way.y, -way.x);
    Some(text.moved(at + rise * BESIDE - to).aligned(Align::Middle).turned(way.atan2()))
}

/// Two strokes at either end of the grain.
fn arrow_heads(grain: Line) -> BezPath {
    const SIZE: f64 = 0.7;
    let way = unit(grain.p1 - grain.p0);
    let mut path = BezPath::new();
    for (tip, way) in [(grain.p0, way), (grain.p1, -way)] {
        let aside = Vec2::new(-way.y, way.x);
        path.move_to(tip + way * SIZE + aside * (0.35 * SIZE));
        path.line_to(tip);
        path.line_to(tip + way * SIZE - aside * (0.35 * SIZE));
    }
    path
}

/// The words of a piece: what and whose it is, how many to cut, the parameters, the cautions. They are never turned over
/// with their piece, nor stood on their head.
fn label(subject: &Subject<'_>, piece: &Piece, place: Affine) -> impl Iterator<Item = Text> {
    let spot = piece.label;
    let lines = lines(subject, piece);
    let height: f64 = lines.iter().map(|(_, size, _)| LEADING * size).sum();
    let way = |x, y| place * (spot.at + turned(Vec2::new(x, y), spot.turn)) - place * spot.at;
    let (mut right, mut down, mut corner) = (way(1.0, 0.0), way(0.0, 1.0), place * spot.at);
    if place.determinant() < 0.0 {
        corner += right * spot.width;
        right = -right;
    }
    if right.x < -0.1 {
        corner += right * spot.width + down * height;
        (right, down) = (-right, -down);
    }
    let mut below = 0.0;
    lines.into_iter().map(move |(words, size, bold)| {
        below += LEADING * size;
        let text = Text::new(corner + down * below, size, words).turned(right.atan2());
        if bold { text.bold() } else { text }
    })
}

/// Every line with its size and whether it is bold.
fn lines(subject: &Subject<'_>, piece: &Piece) -> Vec<(Wording, f64, bool)> {
    let panel = matches!(piece.kind, PieceKind::Front | PieceKind::Back);
    let (size, small) = if panel { (LANGUAGE.head, LANGUAGE.text) } else { (LANGUAGE.text, LANGUAGE.small) };
    let side = match piece.side {
        Side::Both => String::new(),
        side => format!("{side} "),
    };
    let mut sentences = vec![
        (format!("{} – {}{}", subject.draft.name, side, piece.name()), size, true),
        (format!("Block {}. {}.", subject.draft.recipe.name, cut_how_many(piece)), small, false),
    ];
    if panel {
        /// A parameter under this is a hair, cm or degrees.
        const SHOWN: f64 = 0.05;
        let parameters: Vec<String> = subject
            .draft
            .adjustments
            .iter()
            .filter(|it| it.value.abs() >= SHOWN)
            .map(|it| {
                let amount = it.key.about().unit.amount(it.value).in_unit(subject.unit);
                // as one word, which no line breaks
                format!("{} {}", it.key, amount.replace(" degrees", "°"))
            })
            .collect();
        if !parameters.is_empty() {
            sentences.push((format!("Parameters: {}.", parameters.join(", ")), LANGUAGE.small, false));
        }
        sentences.push((CAUTIONS[0].to_owned(), LANGUAGE.small, false));
        sentences.push((CAUTIONS[2].to_owned(), LANGUAGE.small, false));
    }
    if let Some(remark) = &piece.remark {
        sentences.push((format!("{}.", remark.in_unit(subject.unit)), LANGUAGE.small, false));
    }
    let width = piece.label.width;
    sentences
        .into_iter()
        .flat_map(|(words, size, bold)| {
            let wide = if bold { 0.94 * width } else { width };
            lines_of_text(&Wording::paragraph(&words), size, wide)
                .into_iter()
                .take(5)
                .map(move |line| (Wording::line(&line), size, bold))
        })
        .collect()
}

/// How many to cut, in words.
pub(super) fn cut_how_many(piece: &Piece) -> String {
    match (piece.copies.as_drawn, piece.copies.mirrored) {
        (1, 1) => "Cut 2, a pair".to_owned(),
        (2, 2) => "Cut 4, two pairs".to_owned(),
        (_, _) => format!("Cut {}, this side up", piece.copies.count()),
    }
}

/// What the centre seam of a panel is, along it.
fn centre_name(piece: &Piece, place: Affine) -> Option<Text> {
    let panel = match piece.kind {
        PieceKind::Front => Panel::Front,
        PieceKind::Back => Panel::Back,
        _ => return None,
    };
    let run = piece.runs.iter().rfind(|run| run.edge == crate::terms::Edge::CrotchSeam.key())?;
    let last = run.seam.cubics().last()?;
    let (from, to) = (place * last.p0, place * last.p3);
    let way = unit(to - from);
    let inside = place * (last.p3 + Vec2::new(1.0, 0.0)) - to;
    let turn = if way.y < 0.0 { way } else { -way };
    // Letters rise to the left of an upward line, so that a line to their right keeps clear by their height.
    let clear = if inside.x > 0.0 { BESIDE + LANGUAGE.small } else { BESIDE };
    let at = from.midpoint(to) + inside * clear;
    Some(
        Text::new(at, LANGUAGE.small, spoken(&format!("centre {}", panel.key())))
            .aligned(Align::Middle)
            .turned(turn.atan2())
            .inked(Ink::Dark),
    )
}
