//! The pieces on sheets of paper to glue.

use super::{PlacedPiece, Subject, first_page, pattern_sheet};
use crate::{
    drawing::{Paper, Sheet, Tiles},
    mistake::Mistake,
    pattern::Pattern,
};

/// The pieces on sheets of paper with a first page, as PDF, and how many sheets that takes.
///
/// # Errors
/// When the pieces take more sheets than anyone would glue.
pub fn printed_pattern(subjects: &[Subject<'_>], pattern: &Pattern, paper: Paper) -> Result<(Vec<u8>, usize), Mistake> {
    let placed = in_a_row(pattern);
    let sheet = pattern_sheet(subjects, &placed, false);
    let tiles = Tiles::cut(&sheet, Sheet::of(paper))?;
    let first = subjects.first().map(|subject| first_page(subject, &tiles, paper));
    Ok((tiles.to_pdf(first.as_ref()), tiles.tiles().len()))
}

/// The pieces beside each other, each with its face up.
pub fn in_a_row(pattern: &Pattern) -> Vec<PlacedPiece<'_>> {
    let mut x = 0.0;
    pattern
        .pieces
        .iter()
        .map(|piece| {
            let face = piece.face();
            let bounds = kurbo::Shape::bounding_box(&(face * piece.cut_path()));
            let place = kurbo::Affine::translate((x - bounds.x0, -bounds.y0)) * face;
            x += bounds.width() + 1.0;
            PlacedPiece { piece, place }
        })
        .collect()
}
