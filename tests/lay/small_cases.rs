//! Small lays against every order, every half-turn and every lean, placed by other code.

use breeks::pattern::lay::{Part, Strip, along};
use kurbo::{BezPath, Point};

/// Rows of the judge, cm: finer than the program's.
const ROW: f64 = 0.1;

/// What the judge leaves of the strip, cm: nobody cuts as finely as it reckons.
const SLACK: f64 = 0.05;

/// A part of straight sides that any level line enters once: corners down its left and its right side.
#[derive(Clone, Debug)]
struct Shape {
    left: Vec<Point>,
    right: Vec<Point>,
}

impl Shape {
    fn height(&self) -> f64 {
        self.left.last().unwrap().y
    }

    fn path(&self) -> BezPath {
        let mut path = BezPath::new();
        for (place, at) in self.left.iter().rev().chain(&self.right).enumerate() {
            if place == 0 { path.move_to(*at) } else { path.line_to(*at) }
        }
        path.close_path();
        path
    }

    /// Upside down, about its own box.
    fn turned(&self) -> Self {
        let (width, height) = (self.right.iter().map(|at| at.x).fold(0.0, f64::max), self.height());
        let turn =
            |side: &[Point]| side.iter().rev().map(|at| Point::new(width - at.x, height - at.y)).collect();
        Self { left: turn(&self.right), right: turn(&self.left) }
    }

    fn ends(&self, y: f64) -> (f64, f64) {
        let at = |side: &[Point]| {
            let next = side.windows(2).find(|pair| y <= pair[1].y).unwrap_or(&side[side.len() - 2..]);
            next[0].x + (y - next[0].y) / (next[1].y - next[0].y) * (next[1].x - next[0].x)
        };
        (at(&self.left), at(&self.right))
    }

    /// Where `other`, so much lower, may not lie: exact, since the difference of two straight sides is largest at a
    /// corner of one of them.
    fn barred(&self, other: &Self, lower: f64) -> Option<(f64, f64)> {
        let (top, bottom) = (lower.max(0.0), self.height().min(lower + other.height()));
        if top >= bottom - 1e-9 {
            return None;
        }
        let own = self.left.iter().chain(&self.right).map(|at| at.y);
        let others = other.left.iter().chain(&other.right).map(|at| at.y + lower);
        let heights = own.chain(others).filter(|y| (top..=bottom).contains(y)).chain([top, bottom]);
        Some(heights.fold((f64::INFINITY, f64::NEG_INFINITY), |(least, most), y| {
            let ((a, b), (c, d)) = (self.ends(y), other.ends(y - lower));
            (least.min(a - d), most.max(b - c))
        }))
    }
}

/// A row of numbers, each between 0 and 1.
struct Numbers(u32);

impl Numbers {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        f64::from(self.0 >> 8) / f64::from(1 << 24)
    }

    /// Wide above and narrow below, as a leg, or the other way, or neither.
    fn shape(&mut self) -> Shape {
        let height = 20.0 + 40.0 * self.next();
        let at = [0.0, 0.15 + 0.3 * self.next(), 1.0].map(|part| part * height);
        let widths = [0; 3].map(|_| 6.0 + 24.0 * self.next());
        let starts = [0; 3].map(|_| 8.0 * self.next());
        let least = starts.iter().copied().fold(f64::INFINITY, f64::min);
        let side =
            |wide: f64| (0..3).map(|i| Point::new(starts[i] - least + wide * widths[i], at[i])).collect();
        Shape { left: side(0.0), right: side(1.0) }
    }
}

/// The shortest of all lays, each part at the first free place.
struct Every<'a> {
    width: f64,
    poses: &'a [Shape],
    barred: Vec<Vec<Option<(f64, f64)>>>,
    rows: i32,
    best: f64,
}

impl<'a> Every<'a> {
    fn new(width: f64, poses: &'a [Shape]) -> Self {
        let rows = 2400;
        let all = |one: &Shape, other: &Shape| {
            (-rows..=rows).map(|k| one.barred(other, f64::from(k) * ROW)).collect()
        };
        let barred = poses.iter().flat_map(|one| poses.iter().map(move |other| all(one, other))).collect();
        Self { width, poses, barred, rows, best: f64::INFINITY }
    }

    fn lay(&mut self, laid: &mut Vec<(usize, i32, f64)>) {
        let parts = self.poses.len() / 2;
        let ends = laid.iter().map(|(pose, row, _)| f64::from(*row) * ROW + self.poses[*pose].height());
        let length = ends.fold(0.0, f64::max);
        if length >= self.best {
            return;
        }
        if laid.len() == parts {
            self.best = length;
            return;
        }
        for pose in 0..self.poses.len() {
            if laid.iter().any(|(other, ..)| other / 2 == pose / 2) {
                continue;
            }
            for from_left in [true, false] {
                let (row, x) = self.first_free(pose, laid, from_left);
                laid.push((pose, row, x));
                self.lay(laid);
                laid.pop();
            }
        }
    }

    fn first_free(&self, pose: usize, laid: &[(usize, i32, f64)], from_left: bool) -> (i32, f64) {
        let most = self.width - self.poses[pose].right.iter().map(|at| at.x).fold(0.0, f64::max);
        for row in 0..self.rows {
            let barred: Vec<(f64, f64)> = laid
                .iter()
                .filter_map(|(other, at, x)| {
                    let ends = &self.barred[other * self.poses.len() + pose][(row - at + self.rows) as usize];
                    ends.map(|(left, right)| (x + left, x + right))
                })
                .collect();
            let mut places: Vec<f64> =
                barred.iter().flat_map(|(left, right)| [*left, *right]).chain([0.0, most]).collect();
            places.sort_by(f64::total_cmp);
            if !from_left {
                places.reverse();
            }
            let free = |x: &f64| {
                (0.0..=most).contains(x)
                    && barred.iter().all(|(left, right)| *x <= left + 1e-9 || *x >= right - 1e-9)
            };
            if let Some(x) = places.into_iter().find(free) {
                return (row, x);
            }
        }
        unreachable!("the strip is longer than all parts one behind the other")
    }
}

#[test]
fn twenty_small_lays_hardly_longer_than_the_shortest() {
    let mut numbers = Numbers(20);
    let (mut ours_all, mut best_all) = (0.0, 0.0);
    for case in 0..20 {
        let parts = if case % 2 == 0 { 3 } else { 4 };
        let shapes: Vec<Shape> = (0..parts).map(|_| numbers.shape()).collect();
        let width = 42.0 + 40.0 * numbers.next();
        let laid_of: Vec<Part> = shapes.iter().map(|shape| Part::new(shape.path())).collect();
        let ours = along(&Strip { width, gap: 0.0, repeat: None }, &laid_of).unwrap().length;
        let poses: Vec<Shape> = shapes.iter().flat_map(|shape| [shape.clone(), shape.turned()]).collect();
        let mut every = Every::new(width - SLACK, &poses);
        every.lay(&mut Vec::new());
        println!("{case:>2}: {parts} parts on {width:5.1} cm: {ours:6.2}, shortest {:6.2}", every.best);
        assert!(ours <= 1.03 * every.best, "{ours} and {}", every.best);
        ours_all += ours;
        best_all += every.best;
    }
    println!("all together {:.2} per cent longer", 100.0 * (ours_all / best_all - 1.0));
}
