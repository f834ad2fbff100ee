//! The opening at the centre front.

use kurbo::{Affine, CubicBez, Line, Point};

use super::{
    Allowances, Copies, DrawnLine, LabelSpot, LineKind, Piece, PieceKind, PieceNotch, Run,
    panel::straight_path, waistband::UNDERLAP,
};
use crate::{
    curve::{Chain, straight, unit},
    draft::Draft,
    mistake::{Mistake, Notice},
    terms::{Allowance, Measurement, Role, Side, words},
    voice::{Sentence, length},
};

words! {
    /// Which side of the fly laps over the other.
    Lap {
        /// The wearer's left over the right.
        Left = "left",
        /// The wearer's right over the left.
        Right = "right",
    }
}

impl Lap {
    /// The side that laps over.
    pub fn over(self) -> Side {
        match self {
            Self::Left => Side::Left,
            Self::Right => Side::Right,
        }
    }
}

/// Width of extension and guard, cm (common practice, no source).
const WIDTH: f64 = UNDERLAP;
/// Both run on below the end of the zip, cm (common practice, no source).
const BELOW_ZIP: f64 = 1.0;
/// The guard covers the ends of the extension, cm.
const GUARD_BELOW: f64 = 2.0;
/// A usual zip, cm (common practice, no source).
const USUAL_ZIP: f64 = 18.0;
/// What hands need beside the hip to pull the waist over it, cm (common practice, no source).
const PULLED_OVER: f64 = 4.0;
/// A zip that would end so near to the crotch curve ends where that begins, cm: two notches there would be taken for the
/// back's.
const NEAR_CURVE: f64 = 3.0;
/// The outer edge of the extension begins to curve this far above the end of the zip, cm.
const CURVE: f64 = 3.5;

/// How far below the waist the zip ends, cm: where a usual one does, lower where the hip asks for it, and never below the
/// straight centre front.
pub(super) fn zip(draft: &Draft) -> f64 {
    let front = &draft.shape.front;
    let straight = front.roles[Role::CentreWaist].distance(front.roles[Role::CurveStart]);
    let needed = 0.5 * (hip(draft) + PULLED_OVER) - waist(draft);
    let zip = USUAL_ZIP.max(needed);
    if zip > straight - NEAR_CURVE { straight } else { zip }
}

/// Half of the sewn waist.
fn waist(draft: &Draft) -> f64 {
    draft.shape.front.sewn_waist_length() + draft.shape.back.sewn_waist_length()
}

fn hip(draft: &Draft) -> f64 {
    draft.body.cm(Measurement::HipGirth).unwrap_or(0.0)
}

/// Extension and guard. Says when the opened waist would not pass over the hip.
pub(super) fn fly(
    draft: &Draft,
    lap: Lap,
    allowances: &Allowances,
) -> Result<([Piece; 2], Option<Notice>), Mistake> {
    let zip = zip(draft);
    let (opened, hip) = (2.0 * (waist(draft) + zip), hip(draft));
    let notice = (opened < hip).then(|| {
        Notice::mind(
            "fly-short",
            "a fly of {zip} opens the waist to {opened}, less than the hip of {hip}: it will not go over",
        )
        .with("zip", length(zip))
        .with("opened", length(opened))
        .with("hip", length(hip))
    });
    let extension = extension(draft, zip, lap, allowances)?;
    Ok(([extension, guard(draft, zip, lap, allowances)?], notice))
}

fn extension(draft: &Draft, zip: f64, lap: Lap, allowances: &Allowances) -> Result<Piece, Mistake> {
    let front = &draft.shape.front;
    let seam = &front.crotch_seam;
    let centre = seam.cut_at(seam.length() - zip - BELOW_ZIP).1;
    let top = front.roles[Role::CentreWaist];
    let down = unit(front.roles[Role::CurveStart] - top);
    let outer = top + front.waist.start_tangent() * WIDTH;
    let bend = outer + down * (zip - CURVE).max(0.3 * zip);
    let foot = centre.start();
    let reach = 0.55 * bend.distance(foot);
    let across = -front.waist.start_tangent();
    let curve = CubicBez::new(bend, bend + down * reach, foot - across * (0.4 * reach), foot);
    let runs = vec![
        Run::even("waist", Chain::of(straight(top, outer)), allowances[Allowance::Waist]),
        Run::even("outer_edge", Chain::of(straight(outer, bend)).then(curve), 0.0),
        Run::even("centre_front", centre.clone(), allowances[Allowance::CrotchSeam]),
    ];
    let middle = top.lerp(outer, 0.2);
    let grain = Line::new(middle + down * 2.0, middle + down * (zip - CURVE).max(4.0));
    let copies = match lap {
        // The front is drawn as the left one; what faces it is its mirror image.
        Lap::Left => Copies::ONE_MIRRORED,
        Lap::Right => Copies::ONE,
    };
    let label =
        LabelSpot { at: top.lerp(outer, 0.9) + down * 1.5, turn: down.atan2(), width: zip - CURVE - 2.0 };
    let mut piece = Piece::new(PieceKind::FlyExtension, draft.side, copies, runs, grain, label)?;
    piece.notches.push(PieceNotch::on(
        &centre,
        "centre_front",
        "zip",
        BELOW_ZIP,
        allowances[Allowance::CrotchSeam],
    ));
    let remark = "for the {side} front; zip {zip}; outer edge neatened";
    piece.remark = Some(Sentence::new(remark).with("side", lap.over()).with("zip", length(zip)));
    let upright = Affine::rotate(std::f64::consts::FRAC_PI_2 - down.atan2());
    Ok(piece.turned(upright))
}

fn guard(draft: &Draft, zip: f64, lap: Lap, allowances: &Allowances) -> Result<Piece, Mistake> {
    let height = zip + GUARD_BELOW;
    let seam = allowances[Allowance::CrotchSeam];
    let sides = [
        ("waist", allowances[Allowance::Waist]),
        ("inner_edge", seam),
        ("end", seam),
        ("centre_front", seam),
    ];
    let runs = Run::strip(2.0 * WIDTH, height, sides);
    let grain = Line::new((0.5 * WIDTH, 0.25 * height), (0.5 * WIDTH, 0.8 * height));
    let label = LabelSpot {
        at: Point::new(1.85 * WIDTH, 1.5),
        turn: std::f64::consts::FRAC_PI_2,
        width: height - 3.0,
    };
    let under = match lap {
        Lap::Left => Side::Right,
        Lap::Right => Side::Left,
    };
    let side = if draft.side == Side::Both { Side::Both } else { under };
    let mut piece = Piece::new(PieceKind::FlyGuard, side, Copies::ONE, runs, grain, label)?;
    piece.notches.push(PieceNotch::on(&piece.runs[3].seam, "centre_front", "zip", GUARD_BELOW, seam));
    let path = straight_path(Point::new(WIDTH, 0.0), Point::new(WIDTH, height));
    piece.lines.push(DrawnLine { kind: LineKind::Fold, name: "fold", path });
    let remark = "for the {under} front, folded {width} wide";
    piece.remark = Some(Sentence::new(remark).with("under", under).with("width", length(WIDTH)));
    Ok(piece)
}
