//! The pieces on paper: on sheets to glue, on a roll, or side by side.

use kurbo::{Affine, Rect, Shape as _};

use super::{
    first_page::first_page,
    pattern_sheet::{PlacedPiece, pattern_sheet},
};
use crate::{
    drawing::{Paper, Sheet, Tiles},
    mistake::Mistake,
    pattern::{
        Pattern,
        lay::{self, Part, Placement, Strip, along},
    },
    told::Subject,
    voice::{Sentence, length},
};

/// Pieces on sheets of paper.
#[derive(Clone, Debug)]
pub struct OnSheets {
    /// The pages.
    pub pdf: Vec<u8>,
    /// How many sheets carry pieces.
    pub sheets: usize,
    /// Whether a first page with a map and the test squares comes before them; on a single sheet that has room for the
    /// squares they stand beside the pieces.
    pub has_first_page: bool,
}

/// Pieces on a roll.
#[derive(Clone, Debug)]
pub struct OnRoll {
    /// The one long page.
    pub pdf: Vec<u8>,
    /// How long it is, cm.
    pub length: f64,
}

/// What a printer of rolls leaves free along either edge, and what is left between pieces, cm (common practice, no
/// source).
const ROLL_MARGIN: f64 = 1.0;
/// Between pieces that lie side by side, cm.
const BETWEEN: f64 = 1.0;

/// The pieces, grain along one edge of the paper, on as few sheets as are found. `subjects` are the legs that they belong
/// to, at least one.
///
/// # Errors
/// When the sheets cannot be cut, as [`Tiles::cut`] says.
pub fn on_sheets(subjects: &[Subject<'_>], pattern: &Pattern, paper: Paper) -> Result<OnSheets, Mistake> {
    let laid = lay::on_sheets(&parts(pattern), Sheet::of(paper));
    let placed = placed(pattern, &laid.placements);
    if laid.sheets == 1 {
        let with_squares = pattern_sheet(subjects, &placed, true);
        let tiles = Tiles::cut_from(&with_squares, laid.sheet, laid.origin)?;
        if tiles.tiles().len() == 1 {
            return Ok(OnSheets { pdf: tiles.to_pdf(None), sheets: 1, has_first_page: false });
        }
    }
    let sheet = pattern_sheet(subjects, &placed, false);
    let tiles = Tiles::cut_from(&sheet, laid.sheet, laid.origin)?;
    let first = subjects.first().map(|subject| first_page(subject, &tiles, paper));
    let sheets = tiles.tiles().len();
    Ok(OnSheets { pdf: tiles.to_pdf(first.as_ref()), sheets, has_first_page: first.is_some() })
}

/// The pieces on a roll of paper `roll` cm wide, with the test squares after them.
///
/// # Errors
/// When a piece is wider than the roll, or the page is longer than readers take.
pub fn on_roll(subjects: &[Subject<'_>], pattern: &Pattern, roll: f64) -> Result<OnRoll, Mistake> {
    let strip = Strip { width: roll - 2.0 * ROLL_MARGIN, gap: ROLL_MARGIN, repeat: None };
    let laid = along(&strip, &parts(pattern)).ok_or_else(|| {
        Mistake::new(Sentence::new("a piece is wider than a roll of {roll}").with("roll", length(roll)))
            .help("name a wider roll, or sheets to glue with `--paper`")
    })?;
    let mut sheet = pattern_sheet(subjects, &placed(pattern, &laid.placements), true);
    sheet.bounds = Rect { x0: -ROLL_MARGIN, x1: roll - ROLL_MARGIN, ..sheet.bounds };
    Ok(OnRoll { pdf: sheet.to_pdf()?, length: sheet.bounds.height() })
}

/// The pieces beside each other, heads level.
pub fn side_by_side(pattern: &Pattern) -> Vec<PlacedPiece<'_>> {
    let mut right = 0.0;
    let beside = |piece| {
        let face = crate::pattern::Piece::face(piece);
        let bounds = (face * piece.cut_path()).bounding_box();
        let place = Affine::translate((right - bounds.x0, -bounds.y0)) * face;
        right += bounds.width() + BETWEEN;
        PlacedPiece { piece, place }
    };
    pattern.pieces.iter().map(beside).collect()
}

/// The pieces as they are shown, to be laid.
fn parts(pattern: &Pattern) -> Vec<Part> {
    pattern.pieces.iter().map(|piece| Part::new(piece.face() * piece.cut_path())).collect()
}

fn placed<'a>(pattern: &'a Pattern, placements: &[Placement]) -> Vec<PlacedPiece<'a>> {
    let pieces = pattern.pieces.iter().zip(placements);
    pieces.map(|(piece, at)| PlacedPiece { piece, place: at.affine() * piece.face() }).collect()
}
