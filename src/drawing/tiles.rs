//! A picture cut over sheets of paper that are glued together again.
//!
//! Each sheet shows a window of the picture and overlaps its neighbours to the right and below by a strip. The
//! neighbour's margin is cut off along its window's edge and the edge laid on the line printed before the strip.

mod ink;
mod marks;

use kurbo::{Point, Rect, Size};

use self::ink::Inks;
use super::{
    Drawing, Sheet,
    pdf::{Document, Page, Window},
};
use crate::{
    mistake::Mistake,
    voice::{Sentence, length, named},
};

/// A step of less than this is more glue than pattern, cm.
const LEAST_STEP: f64 = 5.0;

/// Nobody glues more sheets; a picture that needs them is a slip of the finger.
const MOST_SHEETS: f64 = 500.0;

/// A picture cut over sheets. Sheets on which nothing is drawn are left out.
#[derive(Clone, Debug)]
pub struct Tiles<'a> {
    drawing: &'a Drawing,
    sheet: Sheet,
    tiles: Vec<Tile>,
    joins: Vec<Join>,
}

/// One sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct Tile {
    /// Column from the left, from 0.
    pub column: usize,
    /// Row from the top, from 0.
    pub row: usize,
    /// The part of the picture that the sheet shows.
    pub window: Rect,
    /// The part of the picture that is this sheet's own when all are glued: its window without the strips that its
    /// neighbours cover.
    pub own: Rect,
}

/// Where two sheets meet.
#[derive(Clone, Debug, PartialEq)]
struct Join {
    /// Printed on both sheets.
    number: usize,
    /// Places of the two sheets in the list of tiles: first the one that lies under, then the one laid on it.
    under: usize,
    over: usize,
    /// From one end to the other of the line that both share, in the picture's own place.
    line: (Point, Point),
}

impl Tile {
    /// The sheet's name: a letter for the column and a number for the row, as on a town map.
    pub fn label(&self) -> String {
        let mut letters = Vec::new();
        let mut column = self.column + 1;
        while column > 0 {
            letters.push(char::from(b'A' + ((column - 1) % 26) as u8));
            column = (column - 1) / 26;
        }
        format!("{}{}", letters.iter().rev().collect::<String>(), self.row + 1)
    }
}

impl<'a> Tiles<'a> {
    /// Cuts a picture over as few sheets as possible, all upright or all on their side.
    ///
    /// # Errors
    /// When margin and overlap leave too little of the sheet, when nothing is drawn, or when more than 500 sheets
    /// would be needed.
    pub fn cut(drawing: &'a Drawing, sheet: Sheet) -> Result<Self, Mistake> {
        refuse_unusable(sheet)?;
        let inks = Inks::of(drawing);
        let inked = inked(drawing, &inks)?;
        let mut best: Option<Self> = None;
        for sheet in [sheet, sheet.on_its_side()] {
            let grid = Grid::over(inked, sheet)?;
            for origin in grid.origins() {
                let tiles = grid.tiles(origin, &inks);
                if best.as_ref().is_none_or(|best| tiles.len() < best.tiles.len()) {
                    let joins = joins(&tiles);
                    best = Some(Self { drawing, sheet, tiles, joins });
                }
            }
        }
        best.filter(|best| !best.tiles.is_empty()).ok_or_else(|| Mistake::new("there is nothing to print"))
    }

    /// Cuts a picture over sheets as they are given, upright or on their side, one of which begins at `corner`: the
    /// picture was laid for them.
    ///
    /// # Errors
    /// As [`Tiles::cut`].
    pub fn cut_from(drawing: &'a Drawing, sheet: Sheet, corner: Point) -> Result<Self, Mistake> {
        refuse_unusable(sheet)?;
        let inks = Inks::of(drawing);
        let inked = inked(drawing, &inks)?;
        let step = sheet.step();
        let whole = |from: f64, to: f64, step: f64| to + ((from - to) / step).floor() * step;
        let origin =
            Point::new(whole(inked.x0, corner.x, step.width), whole(inked.y0, corner.y, step.height));
        let covered = Rect::from_points(origin, Point::new(inked.x1, inked.y1));
        let tiles = Grid::over(covered, sheet)?.tiles(origin, &inks);
        let joins = joins(&tiles);
        Ok(Self { drawing, sheet, tiles, joins })
    }

    /// The sheets, row by row.
    pub fn tiles(&self) -> &[Tile] {
        &self.tiles
    }

    /// The sheet that all tiles are printed on, upright or on its side.
    pub fn sheet(&self) -> Sheet {
        self.sheet
    }

    /// The PDF: `first`, if given, as a page of its own size, then the sheets with the marks by which they are glued.
    pub fn to_pdf(&self, first: Option<&Drawing>) -> Vec<u8> {
        let (glue, margins) = (self.glue_marks(), self.margins());
        let mut document = Document::new(self.drawing);
        if let Some(first) = first {
            let window = Window { drawing: document.add(first), part: first.bounds, at: Point::ORIGIN };
            let label = Some(first.title.to_string());
            document.pages.push(Page { size: first.bounds.size(), label, windows: vec![window] });
        }
        let [glue, main] = [document.add(&glue), document.add(self.drawing)];
        let corner = Point::new(self.sheet.margin, self.sheet.margin);
        for (tile, margin) in self.tiles.iter().zip(&margins) {
            let frame = Window { drawing: document.add(margin), part: margin.bounds, at: Point::ORIGIN };
            let shown = |drawing| Window { drawing, part: tile.window, at: corner };
            let windows = vec![shown(glue), shown(main), frame];
            document.pages.push(Page { size: self.sheet.size, label: Some(tile.label()), windows });
        }
        document.write()
    }
}

fn refuse_unusable(sheet: Sheet) -> Result<(), Mistake> {
    let step = sheet.step();
    let usable = sheet.margin >= 0.0 && sheet.overlap >= 0.0 && step.width.min(step.height) >= LEAST_STEP;
    if !(usable && step.width.max(step.height).is_finite()) {
        let Sheet { size, margin, overlap } = sheet;
        let title = Sentence::new(
            "a sheet of {width} by {height} with margins of {margin} and {overlap} to glue cannot be used",
        )
        .with("width", length(size.width))
        .with("height", length(size.height))
        .with("margin", length(margin))
        .with("overlap", length(overlap));
        let help = Sentence::new("expected at least {least} between margins and glue each way")
            .with("least", length(LEAST_STEP));
        return Err(Mistake::new(title).help(help));
    }
    Ok(())
}

fn inked(drawing: &Drawing, inks: &Inks<'_>) -> Result<Rect, Mistake> {
    let inked = inks.bounds().map(|inked| inked.intersect(drawing.bounds));
    inked.filter(|inked| inked.area() > 0.0).ok_or_else(|| Mistake::new("there is nothing to print"))
}

/// The sheets that would cover all that is drawn.
struct Grid {
    bounds: Rect,
    sheet: Sheet,
    columns: usize,
    rows: usize,
}

impl Grid {
    fn over(bounds: Rect, sheet: Sheet) -> Result<Self, Mistake> {
        let (window, step) = (sheet.window(), sheet.step());
        let count = |length: f64, window: f64, step: f64| ((length - window) / step).ceil().max(0.0) + 1.0;
        let columns = count(bounds.width(), window.width, step.width);
        let rows = count(bounds.height(), window.height, step.height);
        let bearable = columns * rows <= MOST_SHEETS;
        if !bearable {
            let (width, height) = (bounds.width(), bounds.height());
            let title = Sentence::new("a picture of {width} by {height} needs {sheets} sheets")
                .with("width", length(width))
                .with("height", length(height))
                .with("sheets", named(format!("{:.0}", columns * rows)));
            return Err(Mistake::new(title).help(format!("expected at most {MOST_SHEETS} sheets")));
        }
        Ok(Self { bounds, sheet, columns: columns as usize, rows: rows as usize })
    }

    /// Where the first sheet's window may begin: the spare paper shared out on both sides, or all on one.
    fn origins(&self) -> Vec<Point> {
        let (window, step) = (self.sheet.window(), self.sheet.step());
        let whole = Size::new(
            window.width + (self.columns - 1) as f64 * step.width,
            window.height + (self.rows - 1) as f64 * step.height,
        );
        let spare = whole - self.bounds.size();
        let shares = [0.5, 0.0, 1.0];
        let share = |x, y| self.bounds.origin() - kurbo::Vec2::new(spare.width * x, spare.height * y);
        shares.iter().flat_map(|y| shares.iter().map(|x| share(*x, *y))).collect()
    }

    /// The sheets that show something, row by row.
    fn tiles(&self, origin: Point, inks: &Inks) -> Vec<Tile> {
        let (window, step) = (self.sheet.window(), self.sheet.step());
        let mut tiles = Vec::new();
        for row in 0..self.rows {
            for column in 0..self.columns {
                let corner = origin + kurbo::Vec2::new(column as f64 * step.width, row as f64 * step.height);
                let window = Rect::from_origin_size(corner, window);
                let (last_column, last_row) = (column + 1 == self.columns, row + 1 == self.rows);
                let own = Rect {
                    x1: if last_column { window.x1 } else { corner.x + step.width },
                    y1: if last_row { window.y1 } else { corner.y + step.height },
                    ..window
                };
                if inks.any_in(own) {
                    tiles.push(Tile { column, row, window, own });
                }
            }
        }
        tiles
    }
}

/// Every edge that two printed sheets share, numbered in the order of the sheets.
fn joins(tiles: &[Tile]) -> Vec<Join> {
    let mut joins = Vec::new();
    for (under, tile) in tiles.iter().enumerate() {
        for (right, down) in [(1, 0), (0, 1)] {
            let at = (tile.column + right, tile.row + down);
            let neighbour = tiles.iter().position(|other| (other.column, other.row) == at);
            if let Some(over) = neighbour {
                let own = tile.own;
                let start = if right == 1 { Point::new(own.x1, own.y0) } else { Point::new(own.x0, own.y1) };
                joins.push(Join {
                    number: joins.len() + 1,
                    under,
                    over,
                    line: (start, Point::new(own.x1, own.y1)),
                });
            }
        }
    }
    joins
}
