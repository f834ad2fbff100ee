//! The pieces for cutters and other programs.

use kurbo::{BezPath, Line, Shape as _};

use super::pattern_sheet::cut_how_many;
use crate::{
    draft::Draft,
    drawing::{DxfMark, DxfPiece, DxfStyle, to_dxf},
    pattern::Piece,
    terms::{Side, Word},
    unit::Unit,
};

/// The pieces of a draft as DXF, in the layers of ASTM D6673: cut and sewing lines, notches on the cut line, grain, drawn
/// lines, and the ends of darts as drill holes.
pub fn exchange_file(draft: &Draft, pieces: &[Piece], unit: Unit) -> String {
    let style = DxfStyle {
        name: format!("{} {}", draft.recipe.name, draft.name),
        size: draft.name.clone(),
        author: "breeks".to_owned(),
    };
    to_dxf(&style, &pieces.iter().map(|piece| exchanged(draft, piece, unit)).collect::<Vec<_>>())
}

fn exchanged(draft: &Draft, piece: &Piece, unit: Unit) -> DxfPiece {
    let face = piece.face();
    let legs = piece.darts.iter().flat_map(|dart| {
        dart.legs.map(|leg| Line::new(leg, dart.apex).to_path(0.1)).map(|leg| DxfMark::Inner(face * leg))
    });
    let lines = piece.lines.iter().flat_map(|line| runs(&(face * line.path.clone()))).map(DxfMark::Inner);
    let notches = piece.notches.iter().map(|notch| DxfMark::Notch(face * notch.on_cut_line()));
    let apexes = piece.darts.iter().map(|dart| DxfMark::Drill(face * dart.apex));
    let outlines = [DxfMark::Cut(face * piece.cut_path()), DxfMark::Sew(face * piece.sew_path())];
    let grain = DxfMark::Grain(face * piece.grain);
    let leg = match piece.side {
        Side::Both => String::new(),
        side => format!("{} ", side.key()),
    };
    // The first words of a file tell whose it is.
    let mut annotation = format!("breeks, block {}. {}", draft.recipe.name, cut_how_many(piece));
    if let Some(remark) = &piece.remark {
        annotation = format!("{annotation}. {}", remark.in_unit(unit));
    }
    DxfPiece {
        name: format!("{leg}{}", piece.name()),
        quantity: piece.copies.count(),
        material: String::new(),
        annotation,
        marks: outlines
            .into_iter()
            .chain([grain])
            .chain(lines)
            .chain(legs)
            .chain(notches)
            .chain(apexes)
            .collect(),
    }
}

/// Each stroke of a line that is drawn in several.
fn runs(path: &BezPath) -> Vec<BezPath> {
    let mut runs: Vec<BezPath> = Vec::new();
    for element in path.elements() {
        match (element, runs.last_mut()) {
            (kurbo::PathEl::MoveTo(_), _) | (_, None) => runs.push([*element].into_iter().collect()),
            (_, Some(run)) => run.push(*element),
        }
    }
    runs
}
