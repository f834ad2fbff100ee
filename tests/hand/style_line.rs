//! A line of style on the block: the upper edge of a yoke is cut, turned and slid with the part it lies on.

use breeks::{
    adjust::Key,
    terms::{Edge, Word},
};
use kurbo::{Line, Point, Vec2};

use crate::{
    bodies::{Fitting, fittings},
    closing::Sheet,
    compare::report,
    crotch::deepen,
    paper::{crossing, distance_to, drawn, length, opening_angle, place, swung, turned},
    seat::{lean, open_wedge},
    waist::up_the_centre,
};

/// How near an end must come, cm: on the straight centre line, and on the side seam, which is redrawn.
const NEAR: [f64; 2] = [0.005, 0.02];

/// The blocks that have a line on their back, with that line.
fn with_line() -> impl Iterator<Item = (&'static Fitting, Line)> {
    let lined: Vec<_> = fittings().iter().filter_map(|it| Some((it, *it.base.back.lines.first()?))).collect();
    assert!(lined.len() >= 10, "a shipped block draws a yoke line");
    lined.into_iter()
}

/// The line carried by hand: where its inner end comes to, its outer end, and which way it is run on to the side seam,
/// for the side is drawn again when the waist is made true.
struct Carried {
    inner: Point,
    outer: Point,
    level: Vec2,
}

impl Carried {
    fn still(line: Line) -> Self {
        Self { inner: line.p0, outer: line.p1, level: Vec2::new(1.0, 0.0) }
    }

    fn turned(line: Line, pin: Point, angle: f64) -> Self {
        let still = Self::still(line);
        Self {
            inner: turned(still.inner, pin, angle),
            outer: turned(still.outer, pin, angle),
            level: swung(still.level, angle),
        }
    }

    /// Where the outer end lies on a side seam.
    fn run_on(&self, side: &[Point]) -> Point {
        let over = |point: &Point| self.level.cross(*point - self.outer) > 0.0;
        let at = side.iter().position(over).unwrap();
        crossing(self.outer, self.level, side[at - 1], side[at] - side[at - 1])
    }
}

/// Does on the line what the hand does, and compares its two ends with the draft's. The line left where it was must be
/// told apart from that, where the correction moves it.
fn by_hand(key: Key, amounts: &[f64], moves: bool, hand: impl Fn(&mut Sheet, Line, f64) -> Carried) {
    let mut wrong = Vec::new();
    for (fitting, line) in with_line() {
        for amount in amounts {
            let mut paper = fitting.paper();
            if key == Key::CrotchDepth {
                deepen(&mut paper.front, *amount);
            }
            let carried = hand(&mut paper.back, line, *amount);
            paper.close();
            let outer = carried.run_on(&paper.back.side);
            let draft = fitting.drafted(&[(key, *amount)]).back.lines[0];
            for (name, on_paper, drafted, near) in
                [("centre", carried.inner, draft.p0, NEAR[0]), ("side", outer, draft.p1, NEAR[1])]
            {
                let off = on_paper.distance(drafted);
                if !(off <= near) {
                    wrong.push(format!(
                        "{}, {key} {amount}: {name} end off by {off:.4}: paper ({:.3}, {:.3}), draft ({:.3}, {:.3})",
                        fitting.name, on_paper.x, on_paper.y, drafted.x, drafted.y
                    ));
                }
            }
            let moved = carried.inner.distance(line.p0) > 4.0 * NEAR[0];
            assert_eq!(moved, moves, "{}, {key} {amount}", fitting.name);
        }
    }
    report(&wrong);
}

#[test]
fn turned_with_the_wedge_above_the_hip_line() {
    by_hand(Key::SeatLength, &[-2.0, 0.8, 1.5, 3.0], true, |back, line, opening| {
        let (hinge, centre) = (back.side_hip(), back.centre_hip());
        open_wedge(back, opening);
        Carried::turned(line, hinge, opening_angle(opening, hinge.distance(centre)))
    });
}

/// The waist is squared to the leaning centre line and the yoke hangs from it; the side goes sideways at its height.
#[test]
fn leaned_with_the_centre_back() {
    by_hand(Key::SeatAngle, &[-3.0, -1.5, 2.0, 4.0], true, |back, line, degrees| {
        let deep = back.centre_waist.distance(line.p0);
        lean(back, degrees);
        Carried { inner: back.centre_waist + back.down() * deep, ..Carried::still(line) }
    });
}

#[test]
fn still_above_a_level_cut() {
    by_hand(Key::CrotchDepth, &[-1.0, 0.5, 2.0], false, |back, line, by| {
        deepen(back, by);
        Carried::still(line)
    });
}

#[test]
fn still_under_a_waist_raised_along_its_edge() {
    by_hand(Key::WaistRaiseBack, &[-2.5, 1.0, 2.5], false, |back, line, by| {
        up_the_centre(back, by);
        Carried::still(line)
    });
}

#[test]
fn ends_on_both_edges_whatever_is_corrected() {
    for (fitting, _) in with_line() {
        for key in Key::ALL {
            for value in [key.about().usual.0, key.about().usual.1] {
                let back = fitting.drafted(&[(*key, value)]).back;
                let style = back.style_lines().next().unwrap();
                for (edge, end, along) in [
                    (Edge::CrotchSeam, style.line.p0, style.along_crotch_seam),
                    (Edge::SideSeam, style.line.p1, style.along_side_seam),
                ] {
                    let seam = drawn(back.edge(edge).cubics());
                    // The seam is looked at by its chords, which leave it by that much at the most.
                    assert!(distance_to(end, &seam) < 1e-4, "{}, {key} {value}", fitting.name);
                    assert!(along > 1.0 && along < length(&seam) - 1.0, "{}, {key} {value}", fitting.name);
                    assert!(place(&seam, along).distance(end) < 1e-3, "{}, {key} {value}", fitting.name);
                }
            }
        }
    }
}
