//! Parts laid along a strip: as short as can be found, within its width.

use kurbo::Vec2;

use super::{
    Part, Placement,
    orders::{Turn, shortest},
    profile::{Rows, STEPS},
    shapes::{Bar, Shapes},
};

/// What parts are laid along.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strip {
    /// What may be laid upon, cm.
    pub width: f64,
    /// What is kept between two parts, cm.
    pub gap: f64,
    /// After how much length the pattern of the cloth begins again, cm.
    pub repeat: Option<f64>,
}

/// Parts as they lie.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Laid {
    /// From the beginning of the strip to the end of the last part, cm.
    pub length: f64,
    /// Where each part lies, in the order in which they were given; x runs across the strip, y along it.
    pub placements: Vec<Placement>,
}

/// Parts are moved along the strip by this, cm: what a chalk line is wide.
const ROW: f64 = 0.25;
/// In how many thin rows it is cut, so that slanted edges lose no more than a hair.
const THIN: i32 = 5;

/// Lays parts along a strip. `None` when one of them is wider than the strip.
pub fn along(strip: &Strip, parts: &[Part]) -> Option<Laid> {
    let ground = Ground::new(strip, parts)?;
    let (order, spots) = shortest(&ground);
    Some(ground.laid(&order, &spots))
}

/// A shape at its place: the row it begins in, and its left edge, in steps.
#[derive(Clone, Copy, Debug)]
pub(super) struct Spot {
    pub shape: usize,
    pub row: i32,
    pub x: i32,
}

/// To which edge of the strip a part is pushed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Lean {
    Left,
    Right,
}

impl Lean {
    pub(super) fn other(self) -> Self {
        match self {
            Self::Left => Self::Right,
            Self::Right => Self::Left,
        }
    }
}

/// The strip with the parts that are to lie on it.
pub(super) struct Ground {
    pub shapes: Shapes,
    width: i32,
    /// Length of a row, in steps.
    row: f64,
    /// Rows between two places where the pattern is the same.
    repeat: Option<i32>,
    /// Which parts must meet the pattern.
    matched: Vec<bool>,
}

impl Ground {
    pub(super) fn new(strip: &Strip, parts: &[Part]) -> Option<Self> {
        let rows = strip.repeat.map(|repeat| (repeat / ROW).ceil());
        let row = strip.repeat.zip(rows).map_or(ROW, |(repeat, rows)| repeat / rows);
        let shapes = Shapes::new(parts, Rows { row, thin: THIN }, strip.gap);
        let width = (strip.width * STEPS).floor() as i32;
        let fits =
            (0..parts.len()).all(|part| shapes.of(part).all(|shape| shapes.profile(shape).width <= width));
        fits.then(|| Self {
            shapes,
            width,
            row: row * STEPS,
            repeat: rows.map(|rows| rows as i32),
            matched: parts.iter().map(|part| part.match_at.is_some()).collect(),
        })
    }

    pub(super) fn steps(&self, cm: f64) -> f64 {
        cm * STEPS
    }

    /// Where a shape ends, in steps.
    pub(super) fn end(&self, spot: &Spot) -> i32 {
        (f64::from(spot.row) * self.row).ceil() as i32 + self.shapes.profile(spot.shape).end
    }

    /// Where the last shape ends, in steps.
    pub(super) fn length(&self, laid: &[Spot]) -> i32 {
        laid.iter().map(|spot| self.end(spot)).max().unwrap_or(0)
    }

    /// The first row in which the part lies free of all others, and there the place nearest to the edge it leans to;
    /// `None` when it would end beyond `limit`.
    pub(super) fn first_free(&self, turn: &Turn, others: &[Spot], limit: i32) -> Option<Spot> {
        let profile = self.shapes.profile(turn.shape);
        let most = self.width - profile.width;
        let (mut row, step) = match self.repeat.filter(|_| self.matched[turn.part]) {
            Some(repeat) => ((-profile.match_row).rem_euclid(repeat), repeat),
            None => (0, 1),
        };
        let bars: Vec<Bar<'_>> = others
            .iter()
            .filter_map(|other| self.shapes.bar(other.shape, other.row, other.x, turn.shape))
            .collect();
        loop {
            let spot = Spot { shape: turn.shape, row, x: 0 };
            if self.end(&spot) > limit {
                return None;
            }
            if let Some(x) = free_in_row(row, turn.lean, &bars, most) {
                return Some(Spot { x, ..spot });
            }
            row += step;
        }
    }

    fn laid(&self, order: &[Turn], spots: &[Spot]) -> Laid {
        let mut placements = vec![Placement { pose: super::Pose::default(), by: Vec2::ZERO }; spots.len()];
        for (turn, spot) in order.iter().zip(spots) {
            let profile = self.shapes.profile(spot.shape);
            let at = Vec2::new(f64::from(spot.x), f64::from(spot.row) * self.row) / STEPS;
            placements[turn.part] = Placement { pose: profile.pose, by: at + profile.home };
        }
        Laid { length: f64::from(self.length(spots)) / STEPS, placements }
    }
}

fn free_in_row(row: i32, lean: Lean, bars: &[Bar<'_>], most: i32) -> Option<i32> {
    let mut x = if lean == Lean::Left { 0 } else { most };
    // Round and round the others until all of them have let it stand where it is.
    let mut passed = 0;
    for bar in bars.iter().cycle() {
        if passed == bars.len() {
            break;
        }
        passed += 1;
        if let Some((left, right)) = bar.within(row)
            && left < x
            && x < right
        {
            x = if lean == Lean::Left { right } else { left };
            passed = 1;
            if !(0..=most).contains(&x) {
                return None;
            }
        }
    }
    Some(x)
}
