//! A standing figure in front, side and back view, and one that sits: calm, of no sex, in close underwear. Our own
//! drawing, in centimetres of a body of 172.6 cm; x = 0 is the middle of the body, y runs down from the crown. In the
//! front and the back view only one half is noted: the other is its mirror.

use kurbo::{Affine, BezPath, Point};

use crate::{
    curve::unit,
    drawing::{Ink, Layer, Pen, Shade},
};

/// Where the floor is.
pub(super) const FLOOR: f64 = 172.6;
/// Outline of the body.
const BODY: Pen = Pen::new(0.032, Ink::Dark);
/// Lines within it.
const WITHIN: Pen = Pen::new(0.018, Ink::Middle);

/// How the figure stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum View {
    /// Seen from the front.
    Front,
    /// Seen from its right side, looking to the right.
    Side,
    /// Seen from the back.
    Back,
    /// Sitting on a chair, seen from its right side.
    Sitting,
}

/// A line through points. One that begins and ends at x = 0 in a mirrored view is half of a closed one.
type Stroke = &'static [(f64, f64)];

const HEAD: Stroke =
    &[(0.0, 0.0), (4.6, 1.2), (7.3, 5.0), (7.7, 10.5), (6.6, 16.0), (4.3, 20.6), (0.0, 22.6)];
#[rustfmt::skip]
const ARM: Stroke = &[
    (5.0, 21.4), (5.3, 24.6), (6.6, 27.6), (11.0, 29.4), (16.2, 31.0), (19.6, 34.0), (21.2, 39.5), (22.6, 47.0),
    (24.4, 55.0), (26.6, 62.0), (29.0, 70.0), (31.6, 79.0), (32.9, 84.0), (35.0, 89.5), (36.6, 95.5), (36.4, 100.0),
    (34.6, 101.0), (32.4, 97.0), (30.4, 91.5), (29.3, 86.0), (26.4, 78.0), (23.2, 69.0), (20.6, 61.5), (18.4, 53.5),
    (16.4, 46.5), (15.7, 43.8),
];
#[rustfmt::skip]
const FLANK: Stroke = &[
    (15.7, 43.8), (15.3, 49.0), (14.2, 57.0), (13.1, 65.0), (13.5, 69.0), (15.2, 75.0), (17.0, 81.0), (17.9, 87.0),
    (18.1, 93.0), (17.6, 101.0), (16.0, 111.0), (13.9, 119.5), (12.9, 125.0), (12.7, 129.0), (13.4, 136.0),
    (13.2, 141.0), (11.8, 150.0), (10.2, 158.5), (9.9, 163.0), (10.4, 166.6), (12.2, 169.6), (12.9, 171.4),
    (11.2, 172.6), (8.2, 172.7), (5.4, 172.2), (4.3, 170.0), (4.5, 166.5), (4.5, 162.0), (4.1, 156.0), (3.0, 147.5),
    (2.2, 139.0), (2.5, 133.0), (3.1, 128.0), (2.9, 123.5), (2.1, 115.0), (1.5, 106.0), (1.0, 99.0), (0.0, 93.6),
];
const COLLAR: Stroke = &[(2.2, 30.4), (6.0, 30.0), (12.0, 31.2)];
const KNEECAP: Stroke = &[(5.0, 122.6), (5.6, 126.8), (8.0, 128.0), (10.2, 126.6), (10.8, 122.8)];
const FRONT_BAND: Stroke = &[(15.5, 76.2), (8.0, 77.4), (0.0, 77.8)];
const FRONT_LEG_HOLE: Stroke = &[(17.5, 83.5), (12.0, 87.0), (6.0, 91.5), (1.4, 95.6)];
const BACK_BAND: Stroke = &[(15.5, 76.2), (8.0, 76.7), (0.0, 76.9)];
const BACK_LEG_HOLE: Stroke = &[(17.5, 84.5), (13.4, 90.4), (7.6, 94.8), (1.4, 96.2)];
const SEAT_FOLD: Stroke = &[(2.0, 97.6), (5.4, 98.8), (9.5, 98.2), (12.6, 96.0)];
const KNEE_FOLD: Stroke = &[(4.6, 124.4), (7.4, 125.6), (10.6, 124.6)];
const CENTRE_BACK: Stroke = &[(0.0, 82.0), (0.1, 87.0), (0.0, 93.6)];
#[rustfmt::skip]
const PROFILE: Stroke = &[
    (-5.6, 25.6), (-7.6, 19.0), (-9.3, 12.5), (-8.9, 6.5), (-5.4, 1.6), (0.0, 0.0), (5.0, 1.4), (7.9, 5.0),
    (8.5, 8.4), (8.6, 10.6), (10.0, 13.6), (8.9, 14.8), (9.2, 17.2), (8.6, 19.4), (7.9, 21.6), (5.4, 22.6), (3.2, 23.6),
    (3.5, 26.4), (5.4, 29.4),
];
#[rustfmt::skip]
const TRUNK_IN_FRONT: Stroke = &[
    (5.4, 29.4), (8.8, 35.0), (11.4, 42.0), (12.0, 47.0), (11.2, 53.0), (10.0, 60.0), (9.6, 66.0),
];
#[rustfmt::skip]
const FRONT_OF_LEG: Stroke = &[
    (9.6, 66.0), (10.4, 72.0), (10.9, 77.5), (10.2, 84.0), (9.2, 90.0), (9.1, 95.0), (9.6, 102.0), (9.2, 110.0),
    (8.0, 118.0), (7.4, 123.0), (7.3, 127.0), (5.4, 131.4), (4.6, 138.0), (4.2, 147.0), (3.6, 156.0), (3.8, 161.0),
    (5.8, 164.8), (10.0, 167.2), (14.8, 169.2), (17.4, 171.0), (16.6, 172.6), (8.0, 172.6), (0.0, 172.2),
    (-4.6, 172.6), (-7.0, 171.6), (-7.4, 169.0), (-6.0, 165.6), (-4.9, 161.0), (-5.0, 156.0), (-6.4, 149.0),
    (-8.0, 142.0), (-8.3, 137.0), (-7.2, 131.0), (-5.4, 126.4), (-5.5, 122.0), (-7.0, 114.0), (-8.4, 106.0),
    (-9.0, 100.0), (-10.0, 96.6), (-13.0, 92.0), (-14.1, 86.6), (-13.1, 80.5), (-10.4, 74.0), (-8.1, 68.0),
    (-8.0, 66.0),
];
#[rustfmt::skip]
const TRUNK_BEHIND: Stroke = &[
    (-8.0, 66.0), (-8.0, 64.0), (-9.4, 57.0), (-11.2, 49.0), (-11.7, 42.0), (-10.6, 35.0), (-8.2, 30.0), (-5.6, 25.6),
];
#[rustfmt::skip]
const ARM_FROM_THE_SIDE: Stroke = &[
    (2.6, 33.4), (4.2, 38.0), (3.9, 45.0), (3.2, 51.0), (4.6, 54.2), (9.5, 53.4), (16.5, 51.2), (22.0, 49.8),
    (27.0, 48.2), (31.0, 46.6), (32.2, 48.4), (30.6, 50.8), (26.0, 53.0), (20.6, 55.2), (13.0, 58.6), (6.0, 61.0),
    (0.6, 61.6), (-2.8, 59.6), (-4.0, 54.0), (-4.8, 46.5), (-5.4, 39.0), (-4.4, 34.6),
];
const SIDE_BAND: Stroke = &[(10.8, 76.4), (0.0, 77.0), (-11.4, 76.6)];
const SIDE_LEG_HOLE: Stroke = &[(9.3, 89.5), (2.0, 84.5), (-4.0, 86.0), (-10.0, 96.2)];
/// How far lower a sitting trunk is.
const SITTING_LOWER: f64 = 35.0;
#[rustfmt::skip]
const SITTING_LEG: Stroke = &[
    (9.6, 101.0), (10.6, 106.5), (12.4, 111.4), (16.0, 113.8), (24.0, 114.6), (36.0, 115.4), (45.0, 116.6),
    (50.6, 119.6), (52.4, 125.0), (51.4, 132.0), (50.4, 140.0), (49.8, 150.0), (49.4, 158.0), (50.0, 162.0),
    (53.0, 165.4), (57.0, 167.4), (62.0, 169.4), (64.4, 171.0), (63.6, 172.6), (55.0, 172.6), (47.0, 172.2),
    (42.4, 172.6), (40.0, 171.6), (39.6, 169.0), (41.0, 165.0), (41.8, 160.0), (40.8, 153.0), (39.0, 146.0),
    (38.4, 139.0), (39.4, 133.4), (39.0, 130.2), (35.0, 128.8), (24.0, 128.6), (10.0, 128.8), (-2.0, 128.8),
    (-9.0, 128.4), (-13.6, 125.6), (-14.6, 119.6), (-13.0, 112.5), (-10.0, 106.6), (-8.1, 103.0), (-8.0, 101.0),
];
const SITTING_BAND: Stroke = &[(12.0, 110.6), (0.0, 111.6), (-12.4, 111.4)];
const SITTING_LEG_HOLE: Stroke = &[(15.4, 113.6), (8.0, 118.0), (0.0, 123.6), (-8.6, 128.4)];
const CHAIR: [&[(f64, f64)]; 3] = [
    &[(-19.0, 128.9), (36.0, 128.9), (36.0, 132.0), (-19.0, 132.0), (-19.0, 128.9)],
    &[(-16.0, 132.0), (-16.0, FLOOR)],
    &[(32.0, 132.0), (32.0, FLOOR)],
];

/// Draws the figure and the floor it is on, in centimetres of paper by `fit`.
pub(super) fn draw(view: View, fit: Affine, layer: &mut Layer) {
    let lower = Affine::translate((0.0, SITTING_LOWER));
    let (outline, within): (&[Stroke], &[Stroke]) = match view {
        View::Front => (&[HEAD, ARM, FLANK], &[COLLAR, KNEECAP, FRONT_BAND, FRONT_LEG_HOLE]),
        View::Back => (&[HEAD, ARM, FLANK], &[SEAT_FOLD, KNEE_FOLD, BACK_BAND, BACK_LEG_HOLE, CENTRE_BACK]),
        View::Side => (&[PROFILE, FRONT_OF_LEG], &[SIDE_BAND, SIDE_LEG_HOLE]),
        View::Sitting => (&[SITTING_LEG], &[SITTING_BAND, SITTING_LEG_HOLE]),
    };
    let mirrored = matches!(view, View::Front | View::Back);
    for (strokes, pen) in [(within, WITHIN), (outline, BODY)] {
        for stroke in strokes {
            if mirrored && is_half(stroke) {
                layer.line(fit * whole(stroke), pen);
            } else {
                layer.line(fit * smooth(stroke), pen);
                if mirrored {
                    layer.line(fit * Affine::FLIP_X * smooth(stroke), pen);
                }
            }
        }
    }
    match view {
        View::Front | View::Back => {}
        View::Side => {
            [TRUNK_IN_FRONT, TRUNK_BEHIND].iter().for_each(|part| layer.line(fit * smooth(part), BODY));
        }
        View::Sitting => {
            let parts = [PROFILE, TRUNK_IN_FRONT, TRUNK_BEHIND];
            parts.iter().for_each(|part| layer.line(fit * lower * smooth(part), BODY));
        }
    }
    if !mirrored {
        let place = if view == View::Sitting { lower } else { Affine::IDENTITY };
        // The arm is nearer than the trunk.
        layer.area(fit * place * smooth(ARM_FROM_THE_SIDE), Shade::White);
        layer.line(fit * place * smooth(ARM_FROM_THE_SIDE), BODY);
    }
    let reach = if view == View::Sitting { (-24.0, 70.0) } else { (-26.0, 26.0) };
    let mut floor = straight(&[(reach.0, FLOOR), (reach.1, FLOOR)]);
    if view == View::Sitting {
        CHAIR.iter().for_each(|part| floor.extend(straight(part)));
    }
    layer.line(fit * floor, WITHIN);
}

/// Whether a stroke and its mirror run on into each other.
fn is_half(stroke: Stroke) -> bool {
    let ends = [stroke.first(), stroke.last()];
    ends.iter().all(|end| end.is_some_and(|(x, _)| *x == 0.0)) && stroke.iter().any(|(x, _)| x.abs() > 1.0)
}

/// A half and its mirror.
fn whole(half: Stroke) -> BezPath {
    let mirrored = half.iter().rev().skip(1).map(|(x, y)| (-x, *y));
    let round: Vec<Point> = half.iter().copied().chain(mirrored).map(Point::from).collect();
    // The last is the first again.
    let count = round.len() - 1;
    let mut path = BezPath::new();
    path.move_to(round[0]);
    for index in 0..count {
        let at = |step: usize| round[(index + count + step - 1) % count];
        step(&mut path, [at(0), at(1), at(2), at(3)]);
    }
    path.close_path();
    path
}

/// Straight lines from point to point.
fn straight(points: &[(f64, f64)]) -> BezPath {
    let mut path = BezPath::new();
    for (number, point) in points.iter().enumerate() {
        if number == 0 {
            path.move_to(*point);
        } else {
            path.line_to(*point);
        }
    }
    path
}

/// A smooth line through points: at each it runs as from the one before to the one after, its handles a third of the
/// way to the next.
pub(super) fn smooth(points: &[(f64, f64)]) -> BezPath {
    let at = |index: usize| points.get(index).map(|(x, y)| Point::new(*x, *y));
    let mut path = BezPath::new();
    let Some(first) = at(0) else { return path };
    path.move_to(first);
    for index in 1..points.len() {
        let (Some(from), Some(to)) = (at(index - 1), at(index)) else { break };
        let before = index.checked_sub(2).and_then(at).unwrap_or(from);
        let after = at(index + 1).unwrap_or(to);
        step(&mut path, [before, from, to, after]);
    }
    path
}

/// Goes on smoothly from the second of four points to the third.
fn step(path: &mut BezPath, [before, from, to, after]: [Point; 4]) {
    let third = from.distance(to) / 3.0;
    path.curve_to(from + tangent(before, from, to) * third, to - tangent(from, to, after) * third, to);
}

/// The direction in which a smooth line passes the middle of three points.
fn tangent(before: Point, at: Point, after: Point) -> kurbo::Vec2 {
    let (back, on) = (before.distance(at), at.distance(after));
    if back == 0.0 || on == 0.0 {
        return unit(after - before);
    }
    unit((at - before) / back * on.sqrt() + (after - at) / on * back.sqrt())
}
