//! The band of the waist.

use kurbo::{Affine, CubicBez, Line, Point, Vec2};

use super::{
    Allowances, Copies, DrawnLine, LabelSpot, LineKind, Piece, PieceKind, PieceNotch, Run,
    panel::straight_path,
};
use crate::{
    curve::{Chain, beside, end_tangent, start_tangent, straight},
    draft::Shape,
    mistake::Mistake,
    terms::{Allowance, Side, words},
    voice::{Sentence, length},
};

words! {
    /// How a waistband is cut.
    BandShape {
        /// A strip, folded along its upper edge.
        Straight = "straight",
        /// Curved as the waist it is sewn to, with a facing like it.
        Shaped = "shaped",
    }
}

/// A waistband.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// How it is cut.
    pub shape: BandShape,
    /// How high it stands when finished, cm.
    pub height: f64,
}

impl Band {
    /// The ordinary height, cm: common practice, no source.
    pub const HEIGHT: f64 = 3.5;
}

/// How far the band runs on beyond the centre front, under the side that laps over, cm; as wide as the fly guard
/// (common practice, no source).
pub(super) const UNDERLAP: f64 = 4.0;

/// The half band of a leg, from the seam at the centre back to beyond the centre front. Its sewn edge is as long as the
/// sewn waists of back and front.
pub(super) fn waistband(
    shape: &Shape,
    side: Side,
    band: Band,
    allowances: &Allowances,
) -> Result<Piece, Mistake> {
    match band.shape {
        BandShape::Straight => straight_band(shape, side, band.height, allowances),
        BandShape::Shaped => shaped_band(shape, side, band.height, allowances),
    }
}

/// How the sewn waist is divided: from centre back to side, and to centre front.
fn divided(shape: &Shape) -> [(&'static str, f64); 2] {
    let back = shape.back.sewn_waist_length();
    [("side", back), ("centre_front", back + shape.front.sewn_waist_length())]
}

const REMARK: &str = "the side that laps over ends at the centre front line";

fn straight_band(shape: &Shape, side: Side, height: f64, allowances: &Allowances) -> Result<Piece, Mistake> {
    let places = divided(shape);
    let end = places[1].1 + UNDERLAP;
    let edge = allowances[Allowance::Waist];
    let sides = [
        ("waist", edge),
        ("end", edge),
        ("inner_edge", edge),
        ("centre_back", allowances[Allowance::CentreBackWaist]),
    ];
    let runs = Run::strip(end, 2.0 * height, sides);
    let grain = Line::new((0.3 * end, 1.5 * height), (0.7 * end, 1.5 * height));
    let copies = if side == Side::Both { Copies::PAIR } else { Copies::ONE };
    let label = LabelSpot { at: Point::new(2.0, 0.3 * height), turn: 0.0, width: places[0].1 - 3.0 };
    let mut piece = Piece::new(PieceKind::Waistband, side, copies, runs, grain, label)?;
    for (name, at) in places {
        piece.notches.push(PieceNotch::on(&piece.runs[0].seam, "waist", name, at, edge));
        piece.notches.push(PieceNotch::on(&piece.runs[2].seam, "inner_edge", name, end - at, edge));
        let path = straight_path(Point::new(at, 0.0), Point::new(at, 2.0 * height));
        piece.lines.push(DrawnLine { kind: LineKind::Place, name: called(name), path });
    }
    let path = straight_path(Point::new(0.0, height), Point::new(end, height));
    piece.lines.push(DrawnLine { kind: LineKind::Fold, name: "fold", path });
    let remark = Sentence::new("folded {height} high; {on}");
    piece.remark = Some(remark.with("height", length(height)).with("on", REMARK));
    Ok(piece.turned(Affine::rotate(std::f64::consts::FRAC_PI_2)))
}

fn shaped_band(shape: &Shape, side: Side, height: f64, allowances: &Allowances) -> Result<Piece, Mistake> {
    let places = divided(shape);
    let (lower, upper) = lines(shape, height);
    let edge = allowances[Allowance::Waist];
    let ends =
        [(upper.end(), lower.end()), (lower.start(), upper.start())].map(|(a, b)| Chain::of(straight(a, b)));
    let [end, centre_back] = ends;
    let whole = lower.length();
    let runs = vec![
        Run::even("upper_edge", upper.clone(), edge),
        Run::even("end", end, edge),
        Run::even("waist", lower.reversed(), edge),
        Run::even("centre_back", centre_back, allowances[Allowance::CentreBackWaist]),
    ];
    // The warp runs along the back, where the band is least bent to it.
    let (middle, along) = (lower.point_at(0.45 * places[0].1), lower.tangent_at(0.45 * places[0].1));
    let up = crate::curve::outward(along) * (0.5 * height);
    let grain = Line::new(middle + up - along * 4.0, middle + up + along * 4.0);
    let (words, way) = (places[0].1 + 1.0, lower.tangent_at(places[0].1 + 5.0));
    let label = LabelSpot {
        at: lower.point_at(words) + crate::curve::outward(way) * (0.75 * height),
        turn: way.atan2(),
        width: 0.6 * (places[1].1 - words),
    };
    let copies = match side {
        Side::Both => Copies { as_drawn: 2, mirrored: 2 },
        Side::Left => Copies { as_drawn: 1, mirrored: 1 },
        Side::Right => Copies { as_drawn: 1, mirrored: 1 },
    };
    let mut piece = Piece::new(PieceKind::Waistband, side, copies, runs, grain, label)?;
    for (name, at) in places {
        piece.notches.push(PieceNotch::on(&piece.runs[2].seam, "waist", name, whole - at, edge));
        let (on, away) = (lower.point_at(at), lower.cut_at(at).0.end_tangent());
        let path = straight_path(on, on + crate::curve::outward(away) * height);
        piece.lines.push(DrawnLine { kind: LineKind::Place, name: called(name), path });
    }
    let remark = Sentence::new("{height} high, with a facing; {on}");
    piece.remark = Some(remark.with("height", length(height)).with("on", REMARK));
    Ok(piece.turned(Affine::rotate(std::f64::consts::FRAC_PI_2 - along.atan2())))
}

/// The sewn edge from centre back to beyond the centre front, and the edge above it. The sewn edge is as long as the
/// waists it is sewn to and turns as far as they do together, but evenly: a band that bent where they bend, at the side,
/// would show it.
fn lines(shape: &Shape, height: f64) -> (Chain, Chain) {
    let turn = |waist: &CubicBez| {
        let (from, to) = (start_tangent(waist), end_tangent(waist));
        from.cross(to).atan2(from.dot(to))
    };
    let long = divided(shape)[1].1;
    let lower = arc(long, turn(&shape.back.sewn_waist) + turn(&shape.front.sewn_waist));
    let beyond = straight(lower.end(), lower.end() + lower.end_tangent() * UNDERLAP);
    let lower = lower.then(beyond);
    let upper = beside(&lower, height);
    (lower, upper)
}

/// A line so long that turns evenly, from the origin along x.
fn arc(long: f64, turn: f64) -> Chain {
    /// Each part of an arc is one cubic: up to this turn, radians, within 1e-6 of the radius.
    const PART: f64 = 0.4;
    if turn.abs() < 1e-6 {
        return Chain::of(straight(Point::ORIGIN, Point::new(long, 0.0)));
    }
    let parts = (turn.abs() / PART).ceil().max(1.0);
    let (radius, step) = (long / turn, turn / parts);
    let handle = 4.0 / 3.0 * (step / 4.0).tan() * radius;
    let at = |angle: f64| Point::new(radius * angle.sin(), radius * (1.0 - angle.cos()));
    let way = |angle: f64| Vec2::new(angle.cos(), angle.sin());
    let piece = |from: f64, to: f64| {
        CubicBez::new(at(from), at(from) + way(from) * handle, at(to) - way(to) * handle, at(to))
    };
    let mut line = Chain::of(piece(0.0, step));
    for number in 1..parts as usize {
        line = line.then(piece(number as f64 * step, (number + 1) as f64 * step));
    }
    line
}

fn called(name: &str) -> &'static str {
    if name == "side" { "side" } else { "centre front" }
}
