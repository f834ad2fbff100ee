//! Pieces laid on cloth as it is sold: how much of it to buy.

use kurbo::{Affine, BezPath, Shape as _};

use super::{
    Piece, PieceKind,
    lay::{Laid, Part, Strip, along},
};
use crate::{
    mistake::{Mistake, Mistakes, Notice},
    terms::Side,
    voice::{Sentence, Value, at_most, length, list, share},
};

/// Cloth as it is sold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cloth {
    /// From edge to edge, cm.
    pub width: f64,
    /// Laid double, fold along the warp and right sides together, so that pairs are cut at once.
    pub folded: bool,
    /// Has a nap, a pile, a sheen or a print with one way up: all heads lie the same way.
    pub nap: bool,
    /// What is lost to washing.
    pub shrinkage: Shrinkage,
    /// After how much length the pattern begins again, before washing, cm. Such cloth is cut all one way.
    pub repeat: Option<f64>,
    /// What is not used along either edge, cm.
    pub selvedge: f64,
}

/// Shares of the length that washing takes, 0 to 1.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Shrinkage {
    /// Along the warp.
    pub lengthwise: f64,
    /// Along the weft.
    pub across: f64,
}

/// What no cloth is; what it can be; and what is counted.
type Bounds = (&'static str, std::ops::RangeInclusive<f64>, fn(f64) -> Value);

const WIDTH: Bounds = ("no cloth is {it} wide", 20.0..=400.0, length);
const SELVEDGE: Bounds = ("no cloth has a selvedge of {it}", 0.0..=10.0, length);
const REPEAT: Bounds = ("no pattern begins again after {it}", 0.5..=150.0, length);
const LENGTHWISE: Bounds = ("no cloth shrinks by {it} lengthwise", 0.0..=0.2, share);
const ACROSS: Bounds = ("no cloth shrinks by {it} across", 0.0..=0.2, share);

/// Between two pieces, cm: room for the shears (common practice, no source).
const GAP: f64 = 0.5;
/// Shops measure off by this, cm (common practice, no source).
const SOLD_BY: f64 = 5.0;

impl Cloth {
    /// The usual width that is not used along either edge, cm: common practice, no source.
    pub const SELVEDGE: f64 = 1.0;

    /// Plain cloth of this width, cm, laid single.
    pub fn new(width: f64) -> Self {
        Self {
            width,
            folded: false,
            nap: false,
            shrinkage: Shrinkage::default(),
            repeat: None,
            selvedge: Self::SELVEDGE,
        }
    }

    /// From edge to edge when it is washed, cm.
    pub fn washed_width(&self) -> f64 {
        self.width * (1.0 - self.shrinkage.across)
    }

    /// What pieces may be laid on once it is washed: from selvedge to selvedge, or to the fold, cm.
    pub fn usable_width(&self) -> f64 {
        (self.washed_width() - 2.0 * self.selvedge) / if self.folded { 2.0 } else { 1.0 }
    }

    /// All heads lie the same way.
    pub fn one_way(&self) -> bool {
        self.nap || self.repeat.is_some()
    }

    fn check(&self) -> Result<(), Mistakes> {
        let all = [
            (WIDTH, Some(self.width)),
            (SELVEDGE, Some(self.selvedge)),
            (LENGTHWISE, Some(self.shrinkage.lengthwise)),
            (ACROSS, Some(self.shrinkage.across)),
            (REPEAT, self.repeat),
        ];
        let wrong: Vec<Mistake> = all
            .into_iter()
            .filter_map(|(bounds, value)| Some((bounds, value?)))
            .filter(|((_, range, _), value)| !range.contains(value))
            .map(|((what, range, counted), value)| {
                let expected = Sentence::new("expected {least} to {most}")
                    .with("least", counted(*range.start()))
                    .with("most", counted(*range.end()));
                Mistake::new(Sentence::new(what).with("it", counted(value))).help(expected)
            })
            .collect();
        if wrong.is_empty() { Ok(()) } else { Err(wrong.into()) }
    }
}

/// One piece where it is cut.
#[derive(Clone, Debug, PartialEq)]
pub struct CutPiece {
    /// Which of the pieces.
    pub piece: usize,
    /// How many layers are cut at once.
    pub layers: usize,
    /// From the piece's own place to the cloth: x across from the left edge of what may be used, or from the fold; y
    /// along.
    pub place: Affine,
}

/// All pieces on a cloth.
#[derive(Clone, Debug, PartialEq)]
pub struct Lay {
    /// The cloth.
    pub cloth: Cloth,
    /// How much of the washed cloth the pieces need, cm.
    pub washed_length: f64,
    /// How much of the cloth as it is sold that is, cm.
    pub length: f64,
    /// How much to ask for, cm.
    pub to_buy: f64,
    /// What share of the washed cloth, from edge to edge, is in the pieces.
    pub used: f64,
    /// The pieces in their order, each as often as it is laid.
    pub cut: Vec<CutPiece>,
    /// What a person should know before buying.
    pub notices: Vec<Notice>,
}

impl Lay {
    /// Lays the pieces of one pair of trousers, grain along the warp. Where the cloth has a pattern, the knee notches
    /// of all leg pieces lie on the same place of it, lengthwise; across it, and small parts, are not matched.
    ///
    /// # Errors
    /// When a measure of the cloth is none that cloth has, when a piece is wider than the cloth, or when pieces that
    /// are no pairs are to be cut from doubled cloth.
    pub fn of(pieces: &[Piece], cloth: &Cloth) -> Result<Self, Mistakes> {
        cloth.check()?;
        if cloth.folded && pieces.iter().any(|piece| piece.side != Side::Both) {
            return Err(Mistake::new(
                "left and right leg differ: they cannot be cut as pairs from doubled cloth",
            )
            .help("leave out `--folded`")
            .into());
        }
        let copies: Vec<Copy> =
            pieces.iter().enumerate().flat_map(|(at, piece)| copies(at, piece, cloth)).collect();
        let parts: Vec<Part> = copies.iter().map(|copy| copy.part(&pieces[copy.piece], cloth)).collect();
        refuse_wide(pieces, &copies, &parts, cloth)?;
        let repeat = cloth.repeat.map(|repeat| repeat * (1.0 - cloth.shrinkage.lengthwise));
        let strip = Strip { width: cloth.usable_width(), gap: GAP, repeat };
        let Laid { length: washed_length, placements } = along(&strip, &parts).unwrap_or_default();
        let length = washed_length / (1.0 - cloth.shrinkage.lengthwise);
        let sold_by = cloth.repeat.unwrap_or(SOLD_BY);
        let areas =
            copies.iter().zip(&parts).map(|(copy, part)| copy.layers as f64 * part.outline.area().abs());
        let cut = copies.iter().zip(placements).map(|(copy, placement)| CutPiece {
            piece: copy.piece,
            layers: copy.layers,
            place: placement.affine() * copy.face,
        });
        Ok(Self {
            cloth: *cloth,
            washed_length,
            length,
            to_buy: (length / sold_by - 1e-9).ceil() * sold_by,
            used: areas.sum::<f64>() / (washed_length * cloth.washed_width()),
            cut: cut.collect(),
            notices: notices(pieces, &copies, cloth),
        })
    }

    /// The outline of a piece where it is cut.
    pub fn outline(&self, pieces: &[Piece], cut: &CutPiece) -> BezPath {
        cut.place * pieces[cut.piece].cut_path()
    }
}

/// A piece to be laid once.
struct Copy {
    piece: usize,
    layers: usize,
    /// From how the piece is drawn to how it lies, right side of the cloth up.
    face: Affine,
}

impl Copy {
    fn part(&self, piece: &Piece, cloth: &Cloth) -> Part {
        // The knee notches of front and back are level with each other.
        let knee = piece.notches.iter().find(|notch| notch.name == "knee").map(|notch| notch.point.y);
        Part {
            outline: self.face * piece.cut_path(),
            may_turn: !cloth.one_way(),
            may_mirror: cloth.folded,
            match_at: knee.filter(|_| cloth.repeat.is_some()),
        }
    }
}

/// How a piece is laid as often as it is needed: on doubled cloth a pair at a time.
fn copies(at: usize, piece: &Piece, cloth: &Cloth) -> Vec<Copy> {
    let copy = |layers, face| Copy { piece: at, layers, face };
    let (drawn, mirrored) = (piece.copies.as_drawn, piece.copies.mirrored);
    let turned_over = Affine::FLIP_X;
    if cloth.folded {
        let pairs = drawn.min(mirrored);
        let singles = drawn.max(mirrored) - pairs;
        let pairs = (0..pairs).map(|_| copy(2, Affine::IDENTITY));
        pairs.chain((0..singles).map(|_| copy(1, piece.face()))).collect()
    } else {
        let drawn = (0..drawn).map(|_| copy(1, Affine::IDENTITY));
        drawn.chain((0..mirrored).map(|_| copy(1, turned_over))).collect()
    }
}

fn refuse_wide(pieces: &[Piece], copies: &[Copy], parts: &[Part], cloth: &Cloth) -> Result<(), Mistakes> {
    let usable = cloth.usable_width();
    let mut wide: Vec<Mistake> = Vec::new();
    let mut named = Vec::new();
    for (copy, part) in copies.iter().zip(parts) {
        let width = part.outline.bounding_box().width();
        // Laying takes every outline a hair larger.
        if width + 0.01 > usable && !named.contains(&copy.piece) {
            named.push(copy.piece);
            let name = pieces[copy.piece].name();
            let mistake = Mistake::new(
                Sentence::new("the {name} is {width} wide, the cloth has room for {room}")
                    .with("name", name)
                    .with("width", length(width))
                    .with("room", at_most(usable.max(0.0))),
            );
            let help =
                if cloth.folded { "take wider cloth, or leave out `--folded`" } else { "take wider cloth" };
            wide.push(mistake.help(help));
        }
    }
    if wide.is_empty() { Ok(()) } else { Err(wide.into()) }
}

fn notices(pieces: &[Piece], copies: &[Copy], cloth: &Cloth) -> Vec<Notice> {
    let mut notices = Vec::new();
    let single: Vec<&'static str> = copies
        .iter()
        .filter(|copy| cloth.folded && copy.layers == 1)
        .map(|copy| pieces[copy.piece].name())
        .collect();
    if !single.is_empty() {
        let said = "cut from one layer of the doubled cloth only: {pieces}";
        notices.push(Notice::note("one-layer", said).with("pieces", list(single)));
    }
    if let Some(repeat) = cloth.repeat {
        let legs = pieces.iter().any(|piece| matches!(piece.kind, PieceKind::Front | PieceKind::Back));
        if legs {
            let said = "all heads lie one way and all knee notches on the same place of the pattern, lengthwise; to \
                        choose which part of it comes to the knee, buy {repeat} more";
            notices.push(Notice::note("pattern-matched", said).with("repeat", length(repeat)));
        }
    }
    notices
}
