//! How much cloth to buy, as data for programs.

use kurbo::{Affine, Point};
use serde::Serialize;

use super::{
    number::{Cm, Place, Share},
    path,
    warning::Warning,
};
use crate::{
    draft::Draft,
    mistake::harmless_json,
    pattern::{Lay, Piece},
    terms::Word,
};

/// The name of the format in every answer about cloth.
const FORMAT: &str = "breeks-cloth";
/// Raised when a field changes its meaning.
const VERSION: u32 = 1;

/// The pieces of a draft laid on cloth. Lengths in cm to 4 decimals. Places on the washed cloth: x across it from the
/// selvedge that is not used, or from the fold where it lies double, y along it.
#[derive(Serialize)]
pub struct ClothAnswer<'a> {
    format: &'static str,
    version: u32,
    units: &'static str,
    name: &'a str,
    block: &'a str,
    cloth: ClothOut,
    to_buy: Cm,
    length: Cm,
    washed_length: Cm,
    usable_width: Cm,
    used: Share,
    pieces: Vec<PieceOut>,
    laid: Vec<LaidOut>,
    warnings: Vec<Warning>,
}

#[derive(Serialize)]
struct ClothOut {
    width: Cm,
    folded: bool,
    nap: bool,
    shrinkage: ShrinkageOut,
    repeat: Option<Cm>,
    selvedge: Cm,
}

#[derive(Serialize)]
struct ShrinkageOut {
    lengthwise: Share,
    across: Share,
}

#[derive(Serialize)]
struct PieceOut {
    piece: &'static str,
    side: &'static str,
    cut: usize,
}

#[derive(Serialize)]
struct LaidOut {
    piece: &'static str,
    side: &'static str,
    /// As many as are cut at once.
    layers: usize,
    turned: bool,
    mirrored: bool,
    /// Where the piece's own origin lies.
    at: Place,
    cut_outline: String,
}

impl<'a> ClothAnswer<'a> {
    /// A lay of the pieces of this draft.
    pub fn new(draft: &'a Draft, pieces: &[Piece], lay: &Lay, warnings: Vec<Warning>) -> Self {
        let cloth = &lay.cloth;
        let cut = |piece: &Piece| PieceOut {
            piece: piece.kind.key(),
            side: piece.side.key(),
            cut: piece.copies.count(),
        };
        let laid = lay.cut.iter().map(|cut| {
            let piece = &pieces[cut.piece];
            LaidOut {
                piece: piece.kind.key(),
                side: piece.side.key(),
                layers: cut.layers,
                turned: head(cut.place) < 0.0,
                mirrored: cut.place.determinant() < 0.0,
                at: Place(cut.place * Point::ORIGIN),
                cut_outline: path::closed(
                    &piece.cut_line.iter().map(|it| cut.place * *it).collect::<Vec<_>>(),
                ),
            }
        });
        Self {
            format: FORMAT,
            version: VERSION,
            units: "cm",
            name: &draft.name,
            block: &draft.recipe.name,
            cloth: ClothOut {
                width: Cm(cloth.width),
                folded: cloth.folded,
                nap: cloth.nap,
                shrinkage: ShrinkageOut {
                    lengthwise: Share(cloth.shrinkage.lengthwise),
                    across: Share(cloth.shrinkage.across),
                },
                repeat: cloth.repeat.map(Cm),
                selvedge: Cm(cloth.selvedge),
            },
            to_buy: Cm(lay.to_buy),
            length: Cm(lay.length),
            washed_length: Cm(lay.washed_length),
            usable_width: Cm(cloth.usable_width()),
            used: Share(lay.used),
            pieces: pieces.iter().map(cut).collect(),
            laid: laid.collect(),
            warnings,
        }
    }

    /// The JSON text, one value on as many lines as a person needs.
    pub fn to_json(&self) -> String {
        // Cannot fail: every key is a string and every number is finite or null.
        harmless_json(serde_json::to_string_pretty(self).unwrap_or_default())
    }
}

/// Above 0 where down the piece is down the cloth.
fn head(place: Affine) -> f64 {
    (place * Point::new(0.0, 1.0) - place * Point::ORIGIN).y
}
