//! Paper, scissors and tape: lines as dense points, in cm, y down, x towards the side seam.

use kurbo::{CubicBez, ParamCurve, Point, Vec2};

/// A drawn line, point by point.
pub(crate) type Line = Vec<Point>;

/// Points stand this close on a line, cm: a chord of that length leaves a curve of 2 cm radius by 0.00003.
const STEP: f64 = 0.02;

/// The pieces of an edge as points.
pub(crate) fn drawn(pieces: &[CubicBez]) -> Line {
    let mut line = vec![pieces[0].p0];
    for piece in pieces {
        let around = piece.p0.distance(piece.p1) + piece.p1.distance(piece.p2) + piece.p2.distance(piece.p3);
        let parts = (around / STEP).ceil().max(2.0) as usize;
        line.extend((1..=parts).map(|part| piece.eval(part as f64 / parts as f64)));
    }
    line
}

/// A straight line with a ruler.
pub(crate) fn ruled(from: Point, to: Point) -> Line {
    let parts = (from.distance(to) / STEP).ceil().max(2.0) as usize;
    (0..=parts).map(|part| from.lerp(to, part as f64 / parts as f64)).collect()
}

/// One smooth sweep between two ends with given directions; the handles are a third of the way.
pub(crate) fn swept(from: Point, leaving: Vec2, to: Point, arriving: Vec2) -> Line {
    let handle = from.distance(to) / 3.0;
    drawn(&[CubicBez::new(from, from + long(leaving) * handle, to - long(arriving) * handle, to)])
}

/// The vector at length 1.
pub(crate) fn long(vector: Vec2) -> Vec2 {
    vector / vector.hypot()
}

pub(crate) fn length(line: &[Point]) -> f64 {
    line.windows(2).map(|pair| pair[0].distance(pair[1])).sum()
}

/// The line in two, `walked` from its start.
pub(crate) fn cut(line: &[Point], walked: f64) -> (Line, Line) {
    /// A cut nearer to a point of the line is made at that point: two points in one place have no direction.
    const SAME: f64 = 1e-7;
    let mut left = walked;
    for index in 1..line.len() {
        let chord = line[index - 1].distance(line[index]);
        if left <= SAME {
            return (line[..index].to_vec(), line[index - 1..].to_vec());
        }
        if left < chord - SAME {
            let at = line[index - 1].lerp(line[index], left / chord);
            let mut head = line[..index].to_vec();
            head.push(at);
            let mut tail = vec![at];
            tail.extend_from_slice(&line[index..]);
            return (head, tail);
        }
        left -= chord;
    }
    (line.to_vec(), vec![line[line.len() - 1]])
}

/// The place `walked` along the line.
pub(crate) fn place(line: &[Point], walked: f64) -> Point {
    cut(line, walked).1[0]
}

/// How far along the line it first crosses a level.
pub(crate) fn walk_to_level(line: &[Point], y: f64) -> f64 {
    let mut walked = 0.0;
    for pair in line.windows(2) {
        let (from, to) = (pair[0].y - y, pair[1].y - y);
        let chord = pair[0].distance(pair[1]);
        if from == 0.0 || from * to < 0.0 {
            return walked + chord * from.abs() / (from.abs() + to.abs()).max(1e-300);
        }
        walked += chord;
    }
    walked
}

/// The direction in which a line leaves its start.
pub(crate) fn leaving(line: &[Point]) -> Vec2 {
    let (first, second) = (line[1] - line[0], line[2] - line[1]);
    // The chords look along the line half a step further in: lead back to the very end.
    long(long(first) * 1.5 - long(second) * 0.5)
}

/// The direction in which a line reaches its end.
pub(crate) fn arriving(line: &[Point]) -> Vec2 {
    let n = line.len();
    -leaving(&[line[n - 1], line[n - 2], line[n - 3]])
}

/// A direction turned, from x towards y.
pub(crate) fn swung(direction: Vec2, angle: f64) -> Vec2 {
    let (sin, cos) = angle.sin_cos();
    Vec2::new(direction.x * cos - direction.y * sin, direction.x * sin + direction.y * cos)
}

/// From one direction to another, from x towards y.
pub(crate) fn angle_from(one: Vec2, to: Vec2) -> f64 {
    one.cross(to).atan2(one.dot(to))
}

/// A point turned about a pin.
pub(crate) fn turned(point: Point, pin: Point, angle: f64) -> Point {
    pin + swung(point - pin, angle)
}

/// A part turned about a pin.
pub(crate) fn turned_line(line: &[Point], pin: Point, angle: f64) -> Line {
    line.iter().map(|point| turned(*point, pin, angle)).collect()
}

/// The angle that opens a slash by `opening` at `distance` from the pin.
pub(crate) fn opening_angle(opening: f64, distance: f64) -> f64 {
    2.0 * (opening / (2.0 * distance)).asin()
}

/// A part slid.
pub(crate) fn slid(line: &[Point], by: Vec2) -> Line {
    line.iter().map(|point| *point + by).collect()
}

/// An edge redrawn so that each level moves by its own amount.
pub(crate) fn redrawn(line: &[Point], move_at: impl Fn(f64) -> Vec2) -> Line {
    line.iter().map(|point| *point + move_at(point.y)).collect()
}

/// From nothing at 0 to all at 1, without a kink at either end: how an alteration is run out.
pub(crate) fn run_out(part: f64) -> f64 {
    let part = part.clamp(0.0, 1.0);
    part * part * (3.0 - 2.0 * part)
}

/// Two parts of a seam that meet in a kink or a gap, joined by one smooth sweep from `before` short of the end of the
/// first to `after` past the start of the second.
pub(crate) fn blended(first: &[Point], second: &[Point], before: f64, after: f64) -> Line {
    let (mut line, _) = cut(first, length(first) - before);
    let (_, rest) = cut(second, after);
    let sweep = swept(line[line.len() - 1], arriving(&line), rest[0], leaving(&rest));
    line.extend_from_slice(&sweep[1..]);
    line.extend_from_slice(&rest[1..]);
    line
}

/// A line made longer at its start (or shorter, for a negative amount), going on as it was bent.
pub(crate) fn produced(line: &[Point], by: f64) -> Line {
    if by <= 0.0 {
        return cut(line, -by).1;
    }
    /// Over this much of the line its bend is read, cm.
    const READ: f64 = 1.0;
    let back = -leaving(line);
    let (_, rest) = cut(line, READ);
    let bend = angle_from(-leaving(&rest), back) / READ;
    let parts = (by / STEP).ceil() as usize;
    let step = by / parts as f64;
    let mut more = vec![line[0]];
    for part in 0..parts {
        // The bend itself goes on growing as it did: half of a step ahead is near enough.
        let direction = swung(back, bend * step * (part as f64 + 0.5));
        more.push(more[part] + direction * step);
    }
    more.reverse();
    more.extend_from_slice(&line[1..]);
    more
}

/// The distance from a point to a line.
pub(crate) fn distance_to(point: Point, line: &[Point]) -> f64 {
    let off = |pair: &[Point]| {
        let (chord, gap) = (pair[1] - pair[0], point - pair[0]);
        let along =
            if chord.hypot2() > 0.0 { (gap.dot(chord) / chord.hypot2()).clamp(0.0, 1.0) } else { 0.0 };
        (gap - chord * along).hypot2()
    };
    line.windows(2).map(off).fold(f64::INFINITY, f64::min).sqrt()
}

/// Where two straight lines cross, each by a point and a direction.
pub(crate) fn crossing(a: Point, u: Vec2, b: Point, v: Vec2) -> Point {
    a + u * ((b - a).cross(v) / u.cross(v))
}

/// What a closed run of points encloses, square cm, whichever way round.
pub(crate) fn area(around: &[Point]) -> f64 {
    let next = around.iter().cycle().skip(1);
    0.5 * around.iter().zip(next).map(|(p, q)| p.to_vec2().cross(q.to_vec2())).sum::<f64>().abs()
}

/// The number at which a nearly straight rule gives `wanted`, found by trying.
pub(crate) fn tried(wanted: f64, first: f64, rule: impl Fn(f64) -> f64) -> f64 {
    let (mut old, mut miss) = (first, rule(first) - wanted);
    let mut new = first + 0.05;
    for _ in 0..8 {
        let missed = rule(new) - wanted;
        if missed.abs() < 1e-7 || missed == miss {
            break;
        }
        let next = new - missed * (new - old) / (missed - miss);
        (old, miss, new) = (new, missed, next);
    }
    new
}
