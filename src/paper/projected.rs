//! A drawing for a projector over the cutting table.

use kurbo::{BezPath, Line, Rect, Shape as _};

use crate::drawing::{Drawing, Ink, Layer, Mark, Pen};

/// From line to line of the grid, cm: the projector is moved until a ruler lies true on it, both ways.
const GRID: f64 = 10.0;
/// How much wider every line is drawn, so that it is seen by daylight on cloth.
const STRONGER: f64 = 4.0;

/// The drawing over a coarse grid and with strong lines, all of them black; its layers stay as they were.
pub fn projected(drawing: Drawing) -> Drawing {
    let cells = |length: f64| (length / GRID).ceil() * GRID;
    let bounds = drawing.bounds;
    let page = Rect::from_origin_size(bounds.origin(), (cells(bounds.width()), cells(bounds.height())));
    let mut grid = Layer::new("Grid of 10 cm");
    grid.line(squares(page), Pen::new(0.1, Ink::Middle));
    let strong = |mark: Mark| match mark {
        Mark::Line { path, pen } => {
            Mark::Line { path, pen: Pen { width: STRONGER * pen.width, ink: Ink::Black, ..pen } }
        }
        Mark::Text(text) => Mark::Text(text.bold().inked(Ink::Black)),
        area @ Mark::Area { .. } => area,
    };
    let layers = drawing
        .layers
        .into_iter()
        .map(|layer| Layer { marks: layer.marks.into_iter().map(strong).collect(), ..layer });
    let layers = std::iter::once(grid).chain(layers).collect();
    Drawing { bounds: page.inflate(0.5, 0.5), layers, ..drawing }
}

fn squares(page: Rect) -> BezPath {
    let lines = |length: f64| (0..=(length / GRID).round() as usize).map(|line| line as f64 * GRID);
    let upright = lines(page.width()).map(|x| Line::new((page.x0 + x, page.y0), (page.x0 + x, page.y1)));
    let level = lines(page.height()).map(|y| Line::new((page.x0, page.y0 + y), (page.x1, page.y0 + y)));
    upright.chain(level).flat_map(|line| line.to_path(0.1)).collect()
}
