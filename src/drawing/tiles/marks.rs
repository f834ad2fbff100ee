//! What is printed so that sheets find their neighbours, and the map of all sheets.

use kurbo::{Affine, BezPath, Line, Point, Rect, Shape as _, Vec2};

use super::{Join, Tile, Tiles};
use crate::drawing::{Align, CAP_HEIGHT, Drawing, Footprint, Ink, Labels, Layer, Mark, Pen, Shade, Text};

/// The layer of all that is printed for gluing.
const LAYER: &str = "Page marks";

/// Cut here.
const CUT: Pen = Pen::new(0.03, Ink::Dark);
/// Lay the neighbour's edge here.
const LAY: Pen = Pen::new(0.02, Ink::Middle).dashed(&[0.4, 0.2]);
/// The end of the window.
const END: Pen = Pen::new(0.015, Ink::Faint);

/// Half the diagonal of a diamond, cm.
const DIAMOND: f64 = 0.8;

/// Size of the letters that name a sheet on the pattern, cm.
const NAME: f64 = 1.0;

/// Size of the numbers in the diamonds, cm.
const NUMBER: f64 = 0.35;

/// Size of the letters in the margin and along the lines, cm.
const NOTE: f64 = 0.3;

impl Tiles<'_> {
    /// The map of the sheets, with the black lines of the picture's layers that `shown` chooses, as large as fits: for
    /// the first page.
    pub fn map(&self, within: Rect, shown: impl Fn(&Layer) -> bool) -> Vec<Mark> {
        let whole =
            self.tiles.iter().map(|tile| tile.own).reduce(|all, own| all.union(own)).unwrap_or_default();
        let scale = (within.width() / whole.width()).min(within.height() / whole.height());
        let place = Affine::translate(within.center().to_vec2())
            * Affine::scale(scale)
            * Affine::translate(-whole.center().to_vec2());
        let mut marks = Vec::new();
        for tile in &self.tiles {
            marks.push(Mark::Line { path: place * tile.own.to_path(0.1), pen: Pen::new(0.02, Ink::Middle) });
        }
        for tile in &self.tiles {
            let size = (tile.own.width().min(tile.own.height()) * scale * 0.35).min(NAME);
            let at = place * tile.own.center() + Vec2::new(0.0, CAP_HEIGHT / 2.0 * size);
            marks.push(Mark::Text(
                Text::new(at, size, tile.label()).aligned(Align::Middle).inked(Ink::Middle),
            ));
        }
        for mark in self.drawing.layers.iter().filter(|layer| shown(layer)).flat_map(|layer| &layer.marks) {
            if let Mark::Line { path, pen } = mark
                && pen.ink == Ink::Black
            {
                marks.push(Mark::Line { path: place * path.clone(), pen: Pen::new(0.04, Ink::Black) });
            }
        }
        marks
    }

    /// Marks in the picture's own place, under the picture: a numbered diamond twice over each shared edge, half of
    /// it on either sheet, and each sheet's name where it hides least.
    pub(super) fn glue_marks(&self) -> Drawing {
        let mut layer = Layer::new(LAYER);
        let whole =
            self.tiles.iter().map(|tile| tile.window).reduce(|all, part| all.union(part)).unwrap_or_default();
        let mut labels = Labels::new(whole, 0.2);
        for mark in self.drawing.layers.iter().flat_map(|layer| &layer.marks) {
            match mark {
                Mark::Line { path, .. } => labels.spare(path),
                Mark::Area { .. } => {}
                Mark::Text(text) => labels.keep_off(text.footprint()),
            }
        }
        for join in &self.joins {
            for centre in join.places() {
                let reach = Vec2::new(DIAMOND, DIAMOND);
                labels.keep_off(Footprint::level(Rect::from_points(centre - reach, centre + reach)));
                let diamond = diamond(centre);
                layer.area(diamond.clone(), Shade::Pale);
                layer.line(diamond, Pen::new(0.02, Ink::Middle));
                for half in join.halves(centre) {
                    let number = Text::new(half, NUMBER, join.number.to_string()).inked(Ink::Dark);
                    layer.text(number.aligned(Align::Middle));
                }
            }
        }
        for tile in &self.tiles {
            layer.marks.extend(labels.place(name_spots(tile)).map(Mark::Text));
        }
        Drawing { bounds: whole, ..Drawing::around("", "", vec![layer], 0.0) }
    }

    /// What is printed round each window, in the page's own place: lines to cut and to lay on, and what the sheet is.
    pub(super) fn margins(&self) -> Vec<Drawing> {
        self.tiles.iter().enumerate().map(|(number, tile)| self.margin(number, tile)).collect()
    }

    fn margin(&self, number: usize, tile: &Tile) -> Drawing {
        let mut layer = Layer::new(LAYER);
        let margin = self.sheet.margin;
        let to_page = Vec2::new(margin, margin) - tile.window.origin().to_vec2();
        let window = tile.window + to_page;
        let own = tile.own + to_page;
        let joins = |under: bool, upright: bool| {
            let end = move |join: &Join| if under { join.under } else { join.over };
            self.joins.iter().find(move |join| end(join) == number && join.is_upright() == upright)
        };
        let (left, top) = (joins(false, true), joins(false, false));
        let (right, below) = (joins(true, true), joins(true, false));
        let corners = [
            (Point::new(window.x0, window.y1), window.origin(), left.is_some()),
            (window.origin(), Point::new(window.x1, window.y0), top.is_some()),
            (Point::new(window.x1, window.y0), Point::new(window.x1, window.y1), false),
            (Point::new(window.x0, window.y1), Point::new(window.x1, window.y1), false),
        ];
        for (from, to, cut) in corners {
            layer.line(line(from, to), if cut { CUT } else { END });
        }
        let quarter = std::f64::consts::FRAC_PI_2;
        let mut note = |at: Point, turn: f64, align: Align, words: String| {
            layer.text(Text::new(at, NOTE, words).aligned(align).turned(turn).inked(Ink::Dark));
        };
        let middle = own.center();
        let cut = || "cut off along this line".to_owned();
        let lay = |join: &Join| format!("lay the edge of {} on this line", self.tiles[join.over].label());
        if left.is_some() {
            note(Point::new(window.x0 - 0.12, middle.y), -quarter, Align::Middle, cut());
        }
        if top.is_some() {
            note(Point::new(middle.x, window.y0 - 0.12), 0.0, Align::Middle, cut());
        }
        if let Some(join) = right {
            note(Point::new(own.x1 + 0.15, middle.y), quarter, Align::Middle, lay(join));
        }
        if let Some(join) = below {
            note(Point::new(middle.x, own.y1 + 0.4), 0.0, Align::Middle, lay(join));
        }
        let (title, label) = (&self.drawing.title, tile.label());
        let (count, all) = (number + 1, self.tiles.len());
        let words =
            format!("{label} – sheet {count} of {all} – print at 100 %, not fitted to the page – {title}");
        note(Point::new(window.x0, window.y1 + 0.37), 0.0, Align::Start, words);
        if right.is_some() {
            layer.line(line(Point::new(own.x1, window.y0), Point::new(own.x1, window.y1)), LAY);
        }
        if below.is_some() {
            layer.line(line(Point::new(window.x0, own.y1), Point::new(window.x1, own.y1)), LAY);
        }
        Drawing { bounds: self.sheet.size.to_rect(), ..Drawing::around("", "", vec![layer], 0.0) }
    }
}

impl Join {
    fn is_upright(&self) -> bool {
        self.line.0.x == self.line.1.x
    }

    /// The middles of its two diamonds. They stand elsewhere on the next edge, so that a wrong neighbour shows even
    /// to one who does not read the numbers.
    fn places(&self) -> [Point; 2] {
        let shift = ((self.number * 2 % 5) as f64 - 2.0) * 0.05;
        [0.2, 0.8].map(|part| self.line.0.lerp(self.line.1, part + shift))
    }

    /// Where the baselines of the number are halved, on either side of the line.
    fn halves(&self, centre: Point) -> [Point; 2] {
        let across = if self.is_upright() { Vec2::new(0.3, 0.0) } else { Vec2::new(0.0, 0.3) };
        let middle = centre + Vec2::new(0.0, CAP_HEIGHT / 2.0 * NUMBER);
        [middle - across, middle + across]
    }
}

/// Nine places in a sheet's own part, the middle first.
fn name_spots(tile: &Tile) -> Vec<Text> {
    let parts = [0.5, 0.25, 0.75];
    let spots = parts.iter().flat_map(|y| parts.iter().map(|x| (*x, *y)));
    let own = tile.own;
    spots
        .map(|(x, y)| {
            let at = Point::new(own.x0 + x * own.width(), own.y0 + y * own.height());
            Text::new(at, NAME, tile.label()).aligned(Align::Middle).inked(Ink::Faint)
        })
        .collect()
}

fn diamond(centre: Point) -> BezPath {
    let mut path = BezPath::new();
    path.move_to(centre + Vec2::new(DIAMOND, 0.0));
    path.line_to(centre + Vec2::new(0.0, DIAMOND));
    path.line_to(centre - Vec2::new(DIAMOND, 0.0));
    path.line_to(centre - Vec2::new(0.0, DIAMOND));
    path.close_path();
    path
}

fn line(from: Point, to: Point) -> BezPath {
    Line::new(from, to).to_path(0.1)
}
