//! A picture with every kind of mark, of the size of a trouser leg.

use breeks::drawing::{Align, Drawing, Ink, Layer, Pen, Shade, Text};
use kurbo::{BezPath, Point, Rect, Shape};

pub(crate) const STRONG: Pen = Pen::new(0.06, Ink::Black);
pub(crate) const FAINT: Pen = Pen::new(0.02, Ink::Faint);
const DASHES: &[f64] = &[0.6, 0.3];

/// The outline of a leg-like piece, about 40 by 106 cm.
pub(crate) fn leg() -> BezPath {
    let mut path = BezPath::new();
    path.move_to((-8.0, 0.0));
    path.line_to((11.5, 0.8));
    path.curve_to((13.0, 8.0), (15.25, 14.0), (15.25, 20.4));
    path.curve_to((15.25, 40.0), (11.0, 50.0), (11.0, 61.0));
    path.line_to((10.0, 104.0));
    path.line_to((-10.0, 104.0));
    path.line_to((-11.0, 61.0));
    path.curve_to((-11.5, 48.0), (-14.0, 36.0), (-20.6, 28.7));
    path.curve_to((-13.0, 28.0), (-9.8, 24.0), (-9.4, 18.0));
    path.close_path();
    path
}

/// A square with its corner at `at`.
pub(crate) fn square(at: Point, side: f64) -> BezPath {
    Rect::from_origin_size(at, (side, side)).to_path(0.1)
}

pub(crate) fn picture() -> Drawing {
    let mut levels = Layer::new("Levels");
    for (name, y) in [("waist", 0.0), ("hip", 20.4), ("crotch", 28.7), ("knee", 61.0), ("hem", 104.0)] {
        let mut line = BezPath::new();
        line.move_to((-22.0, y));
        line.line_to((18.0, y));
        levels.line(line, FAINT.dashed(DASHES));
        levels.text(Text::new(Point::new(18.3, y), 0.8, name).inked(Ink::Middle));
    }
    let mut panel = Layer::new("Front panel");
    panel.area(square(Point::new(-4.0, 70.0), 3.0), Shade::Pale);
    panel.line(leg(), STRONG);
    panel.text(Text::new(Point::new(0.0, 45.0), 1.6, "stroke – front ¾").aligned(Align::Middle).bold());
    panel.text(Text::new(Point::new(0.0, 50.0), 0.8, "grain").turned(std::f64::consts::FRAC_PI_2));
    let description = "A leg-like outline with levels and two test squares.";
    Drawing::around("Sample leg", description, vec![levels, panel, test_squares()], 1.0)
}

/// The two test squares alone.
pub(crate) fn squares() -> Drawing {
    Drawing::around("Squares", "Two test squares.", vec![test_squares()], 1.0)
}

fn test_squares() -> Layer {
    let mut squares = Layer::new("Test squares");
    squares.line(square(Point::new(-6.0, 80.0), 5.0), STRONG);
    squares.line(square(Point::new(1.0, 80.0), 5.08), STRONG);
    squares
}
