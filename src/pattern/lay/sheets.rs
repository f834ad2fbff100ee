//! Parts on sheets of paper that are glued: so laid that few sheets carry any of them.

use kurbo::{Point, Vec2};

use super::{
    Part, Placement, Pose,
    dice::Dice,
    profile::{Rows, STEPS},
    shapes::Shapes,
};
use crate::drawing::Sheet;

/// Parts as they lie on the sheets.
#[derive(Clone, Debug, PartialEq)]
pub struct OnSheets {
    /// The sheet, upright or on its side.
    pub sheet: Sheet,
    /// Where the window of the first sheet begins; the others follow by the sheet's step.
    pub origin: Point,
    /// Where each part lies, in the order in which they were given.
    pub placements: Vec<Placement>,
    /// At most so many sheets carry a part.
    pub sheets: usize,
}

/// Rows along the grain, cm: what is lost by it is a few millimetres of paper.
const ROW: f64 = 0.5;
/// Between two parts, cm: room for the scissors.
const GAP: f64 = 0.5;
/// How often a few parts are lifted and laid again: what a blink leaves time for.
const SHAKES: usize = 24;

/// Lays parts on sheets, grain along one edge of the paper, on as few sheets as can be found in a blink.
pub fn on_sheets(parts: &[Part], sheet: Sheet) -> OnSheets {
    let shapes = Shapes::new(parts, Rows { row: ROW, thin: 1 }, GAP);
    let [upright, lying] = [sheet, sheet.on_its_side()].map(|sheet| {
        let mut pages = Pages::new(&shapes, sheet);
        pages.lay_all();
        pages
    });
    let mut best = if lying.count() < upright.count() { lying } else { upright };
    best.shake();
    best.laid()
}

/// A shape at its place: the row it begins in, and its left edge, in steps.
#[derive(Clone, Copy, Debug)]
struct Spot {
    shape: usize,
    row: i32,
    x: i32,
}

/// The grid of sheets, with the parts that lie on it.
struct Pages<'a> {
    shapes: &'a Shapes,
    sheet: Sheet,
    /// From one sheet to the next, in steps across and in rows along the grain.
    step: (f64, f64),
    columns: usize,
    rows: usize,
    /// Of all sheets glued, in rows along the grain.
    height: i32,
    /// How many parts each sheet carries, row by row.
    carried: Vec<u16>,
    spots: Vec<Option<Spot>>,
}

/// How far a part reaches across each row of sheets, from its own left edge: the first row of sheets that it touches,
/// and the ends in each.
struct Reach {
    first: usize,
    ends: Vec<(i32, i32)>,
}

impl<'a> Pages<'a> {
    /// One row of parts beside each other, on as many rows of sheets as the longest of them needs; the last row of
    /// sheets is larger by the strip that no other covers.
    fn new(shapes: &'a Shapes, sheet: Sheet) -> Self {
        let step = (sheet.step().width * STEPS, sheet.step().height / ROW);
        let strip = sheet.overlap / ROW;
        let first = |part: usize| shapes.profile(shapes.of(part).start);
        let parts = 0..shapes.count_of_parts();
        let longest = parts.clone().map(|part| first(part).lefts.len()).max().unwrap_or(1);
        let rows = ((longest as f64 - strip) / step.1).ceil().max(1.0);
        let (rows, height) = (rows as usize, (rows * step.1 + strip) as i32);
        let width: i32 = parts.clone().map(|part| first(part).width).sum();
        let columns = (f64::from(width) / step.0).ceil() as usize + parts.len();
        let carried = vec![0; columns * rows];
        Self { shapes, sheet, step, columns, rows, height, carried, spots: vec![None; parts.len()] }
    }

    /// Lays all parts, the largest first, and lifts each once to see whether it finds a better place now.
    fn lay_all(&mut self) {
        let mut order: Vec<usize> = (0..self.spots.len()).collect();
        let area = |part: usize| self.shapes.profile(self.shapes.of(part).start).area;
        order.sort_by(|a, b| area(*b).total_cmp(&area(*a)).then(a.cmp(b)));
        for part in &order {
            self.lay(*part);
        }
        for part in order {
            self.lift(part);
            self.lay(part);
        }
    }

    /// Lifts two or three parts at a time and lays them again in another order; what needs more sheets is taken back.
    fn shake(&mut self) {
        let mut dice = Dice::new();
        let mut parts: Vec<usize> = (0..self.spots.len()).collect();
        for _ in 0..SHAKES {
            let before = (self.count(), self.spots.clone(), self.carried.clone());
            for place in (1..parts.len()).rev() {
                parts.swap(place, dice.below(place + 1));
            }
            let lifted = &parts[..(2 + dice.below(2)).min(parts.len())];
            lifted.iter().for_each(|part| self.lift(*part));
            lifted.iter().for_each(|part| self.lay(*part));
            if self.count() > before.0 {
                (self.spots, self.carried) = (before.1, before.2);
            }
        }
    }

    /// How many sheets carry a part; and how many would, were none shared.
    fn count(&self) -> (usize, usize) {
        let carrying = self.carried.iter().filter(|parts| **parts > 0);
        (carrying.clone().count(), carrying.map(|parts| usize::from(*parts)).sum())
    }

    fn laid(self) -> OnSheets {
        let placements = self.spots.iter().map(|spot| spot.map_or_else(nowhere, |spot| self.placement(spot)));
        let (sheets, _) = self.count();
        OnSheets { sheet: self.sheet, origin: Point::ORIGIN, placements: placements.collect(), sheets }
    }

    fn placement(&self, spot: Spot) -> Placement {
        let profile = self.shapes.profile(spot.shape);
        let at = Vec2::new(f64::from(spot.x) / STEPS, f64::from(spot.row) * ROW);
        Placement { pose: profile.pose, by: at + profile.home }
    }

    /// Lays a part where it needs the fewest sheets that carry nothing yet, and of such places the first.
    fn lay(&mut self, part: usize) {
        let mut best: Option<((usize, usize, i32, i32), Spot)> = None;
        'places: for shape in self.shapes.of(part) {
            let profile = self.shapes.profile(shape);
            let (start, end) = (-profile.first, profile.first + profile.lefts.len() as i32);
            for row in start..=self.height - end {
                let reach = self.reach(shape, row);
                let barred: Vec<(i32, i32)> = self.barred(shape, row);
                let most = best.map_or(usize::MAX, |((new, ..), _)| new);
                for x in self.candidates(&reach, &barred) {
                    if barred.iter().any(|(left, right)| *left < x && x < *right) {
                        continue;
                    }
                    let Some((new, all)) = self.sheets(&reach, x, most) else { continue };
                    let rank = (new, all, x, row);
                    if best.as_ref().is_none_or(|(least, _)| rank < *least) {
                        best = Some((rank, Spot { shape, row, x }));
                        if new == 0 {
                            break 'places;
                        }
                    }
                }
            }
        }
        if let Some((_, spot)) = best {
            self.mark(spot, 1);
            self.spots[part] = Some(spot);
        }
    }

    fn lift(&mut self, part: usize) {
        if let Some(spot) = self.spots[part].take() {
            self.mark(spot, u16::MAX);
        }
    }

    /// Adds to what the sheets under a part carry; the largest number takes one away.
    fn mark(&mut self, spot: Spot, by: u16) {
        let reach = self.reach(spot.shape, spot.row);
        for (below, ends) in reach.ends.iter().enumerate() {
            let (from, to) = self.columns(*ends, spot.x);
            for column in from..=to {
                let sheet = &mut self.carried[(reach.first + below) * self.columns + column as usize];
                *sheet = sheet.wrapping_add(by);
            }
        }
    }

    fn reach(&self, shape: usize, row: i32) -> Reach {
        let profile = self.shapes.profile(shape);
        let top = row + profile.first;
        let sheet_row = |row: i32| ((f64::from(row) / self.step.1) as usize).min(self.rows - 1);
        let first = sheet_row(top);
        let mut ends = Vec::with_capacity(self.rows);
        for (at, (left, right)) in profile.lefts.iter().zip(&profile.rights).enumerate() {
            // A row that crosses the edge of a sheet counts for both.
            let row = top + at as i32;
            let upper = sheet_row(row);
            let lower = sheet_row(row + 1);
            for place in upper - first..=lower - first {
                if ends.len() <= place {
                    ends.push((*left, *right));
                } else {
                    let (low, high): &mut (i32, i32) = &mut ends[place];
                    (*low, *high) = ((*low).min(*left), (*high).max(*right));
                }
            }
        }
        Reach { first, ends }
    }

    fn barred(&self, shape: usize, row: i32) -> Vec<(i32, i32)> {
        self.spots
            .iter()
            .flatten()
            .filter_map(|other| self.shapes.bar(other.shape, other.row, other.x, shape)?.within(row))
            .collect()
    }

    /// Places across at which a part begins to need another column of sheets, or touches another part.
    fn candidates(&self, reach: &Reach, barred: &[(i32, i32)]) -> Vec<i32> {
        let mut places: Vec<i32> = barred.iter().flat_map(|(left, right)| [*left, *right]).collect();
        let used = self.columns_in_use();
        for column in 0..self.columns.min(used + 2) {
            let edge = column as f64 * self.step.0;
            for (left, right) in &reach.ends {
                places.push(edge.ceil() as i32 - left);
                places.push((edge + self.step.0).floor() as i32 - 1 - right);
            }
        }
        places.sort_unstable();
        places.dedup();
        places
    }

    /// Columns of sheets up to the last that carries a part.
    fn columns_in_use(&self) -> usize {
        self.spots
            .iter()
            .flatten()
            .map(|spot| {
                let right = f64::from(spot.x + self.shapes.profile(spot.shape).width);
                (right / self.step.0).floor() as usize + 1
            })
            .max()
            .unwrap_or(0)
    }

    fn columns(&self, (left, right): (i32, i32), x: i32) -> (i32, i32) {
        let column = |x: i32| (f64::from(x) / self.step.0).floor() as i32;
        (column(x + left), column(x + right))
    }

    /// How many sheets a part would need that carry nothing yet, and how many in all; `None` beyond the grid.
    fn sheets(&self, reach: &Reach, x: i32, most: usize) -> Option<(usize, usize)> {
        let (mut new, mut all) = (0, 0);
        for (below, ends) in reach.ends.iter().enumerate() {
            let (from, to) = self.columns(*ends, x);
            if from < 0 || to >= self.columns as i32 {
                return None;
            }
            let row = (reach.first + below) * self.columns;
            let carried = &self.carried[row + from as usize..=row + to as usize];
            new += carried.iter().filter(|parts| **parts == 0).count();
            all += carried.len();
            if new > most {
                return None;
            }
        }
        Some((new, all))
    }
}

fn nowhere() -> Placement {
    Placement { pose: Pose::default(), by: Vec2::ZERO }
}
