//! Parts on sheets of paper, counted by the sheets that are printed.

use breeks::{
    drawing::{Drawing, Ink, Layer, Paper, Pen, Shade, Sheet, Tiles},
    pattern::lay::{OnSheets, Part, on_sheets},
};
use kurbo::{Affine, Shape as _};

use crate::{
    bodies::{Cloth, parts},
    overlap::{assert_apart, placed},
};

/// What is drawn once on paper: a front, a back, a band and the small parts.
fn on_paper(recipe: &str, size: usize) -> Vec<Part> {
    parts(recipe, size, Cloth::Folded, false)
        .into_iter()
        .map(|part| Part { may_mirror: false, ..part })
        .collect()
}

fn drawing(parts: &[Part], laid: &OnSheets) -> Drawing {
    let mut layer = Layer::new("all");
    for outline in placed(parts, &laid.placements) {
        layer.area(outline.clone(), Shade::Pale);
        layer.line(outline, Pen::new(0.09, Ink::Black));
    }
    Drawing::around("laid", "", vec![layer], 1.0)
}

/// The sheets of the same parts side by side, as they are drawn.
fn side_by_side(parts: &[Part], sheet: Sheet) -> usize {
    let mut layer = Layer::new("all");
    let mut x = 0.0;
    for part in parts {
        let bounds = part.outline.bounding_box();
        layer.area(Affine::translate((x - bounds.x0, -bounds.y0)) * part.outline.clone(), Shade::Pale);
        x += bounds.width() + 1.0;
    }
    let drawing = Drawing::around("side by side", "", vec![layer], 1.0);
    Tiles::cut(&drawing, sheet).unwrap().tiles().len()
}

#[test]
fn fewer_sheets_than_side_by_side() {
    for paper in [Paper::A4, Paper::Letter, Paper::A3] {
        let sheet = Sheet::of(paper);
        for (recipe, size) in [("classic", 5), ("slim", 0), ("wide", 12), ("jeans", 19)] {
            let parts = on_paper(recipe, size);
            let laid = on_sheets(&parts, sheet);
            let outlines = placed(&parts, &laid.placements);
            assert_apart(&outlines, 0.5);
            let drawing = drawing(&parts, &laid);
            let printed = Tiles::cut_from(&drawing, laid.sheet, laid.origin).unwrap().tiles().len();
            let beside = side_by_side(&parts, sheet);
            println!("{recipe:<8} {size:>2} {paper:?}: {printed} sheets, side by side {beside}");
            assert!(printed <= laid.sheets && laid.sheets < beside, "{printed} {} {beside}", laid.sheets);
        }
    }
}

#[test]
fn the_same_every_time() {
    let parts = on_paper("classic", 8);
    let sheet = Sheet::of(Paper::A4);
    assert_eq!(on_sheets(&parts, sheet), on_sheets(&parts, sheet));
}

#[test]
fn a_part_that_may_not_turn_upright() {
    let parts: Vec<Part> =
        on_paper("classic", 8).into_iter().map(|part| Part { may_turn: false, ..part }).collect();
    let laid = on_sheets(&parts, Sheet::of(Paper::A4));
    assert!(laid.placements.iter().all(|placement| !placement.pose.turned && !placement.pose.mirrored));
}
