//! A draft as a small picture of dots for a terminal.

use kurbo::{ParamCurve, Point, Rect, Shape as _};

use crate::draft::{PanelShape, Shape};

/// A letter of the dot pattern is two dots wide and four high.
const DOTS: (usize, usize) = (2, 4);
/// The first of the 256 dot patterns of Unicode.
const BLANK: u32 = 0x2800;
/// Between the two panels, cm.
const GAP: f64 = 8.0;

/// Front and back side by side, `rows` lines high, as dot patterns of Unicode; no line ends in blanks.
pub fn thumbnail(shape: &Shape, rows: usize) -> Vec<String> {
    let (front, back) = (around(&shape.front), around(&shape.back));
    let shift = front.x1 - back.x0 + GAP;
    let sheet = front.union(back + kurbo::Vec2::new(shift, 0.0));
    let scale = (rows * DOTS.1 - 1) as f64 / sheet.height();
    let columns = ((sheet.width() * scale).round() as usize + 1).div_ceil(DOTS.0);
    let mut dots = vec![vec![0_u8; columns]; rows];
    for (panel, by) in [(&shape.front, 0.0), (&shape.back, shift)] {
        for point in outline(panel, 0.25 / scale) {
            let at = (Point::new(point.x + by, point.y) - sheet.origin()) * scale;
            let (column, row) = (at.x.round() as usize, at.y.round() as usize);
            if let Some(letter) = dots.get_mut(row / DOTS.1).and_then(|line| line.get_mut(column / DOTS.0)) {
                *letter |= dot(column % DOTS.0, row % DOTS.1);
            }
        }
    }
    let letter = |bits: &u8| char::from_u32(BLANK + u32::from(*bits)).unwrap_or(' ');
    dots.iter()
        .map(|line| line.iter().map(letter).collect::<String>().trim_end_matches('\u{2800}').to_owned())
        .collect()
}

/// The bit of a dot in its pattern, as Unicode numbers them.
fn dot(column: usize, row: usize) -> u8 {
    const BITS: [[u8; 4]; 2] = [[0x01, 0x02, 0x04, 0x40], [0x08, 0x10, 0x20, 0x80]];
    BITS[column][row]
}

fn around(panel: &PanelShape) -> Rect {
    let boxes = panel.outline().into_iter().map(|piece| piece.bounding_box());
    boxes.reduce(|all, piece| all.union(piece)).unwrap_or_default()
}

/// Points along the outline, no farther apart than `step` cm.
fn outline(panel: &PanelShape, step: f64) -> Vec<Point> {
    let along = |piece: kurbo::CubicBez| {
        let parts = (crate::curve::length(&piece) / step).ceil().max(1.0) as usize;
        (0..=parts).map(move |part| piece.eval(part as f64 / parts as f64))
    };
    panel.outline().into_iter().flat_map(along).collect()
}
