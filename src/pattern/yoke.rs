//! A back cut along its yoke line: the yoke with its darts closed, and the back below it.

use kurbo::{Affine, Line, ParamCurve as _, Point, Vec2};

use super::{
    Corner, LabelSpot, Piece, PieceKind, PieceNotch, Run, Which,
    panel::{Panels, copies, leg_runs, of_edge, seat_runs, waist_runs},
    panel_notches,
    round_off::rounded,
};
use crate::{
    curve::{Chain, line_crossings, meet, straight, unit},
    draft::{Dart, PanelShape, StyleLine},
    mistake::Mistake,
    terms::{Allowance, Edge, Panel, Word},
};

/// The seam between yoke and back.
const YOKE_SEAM: &str = "yoke_seam";

/// The back and the yoke. A dart is led to the yoke line, whether it ended above or below it, closed by turning what
/// lies on its side of it, and the corners that this leaves in waist and yoke seam are rounded off.
pub(super) fn cut_along(line: StyleLine, panels: &Panels<'_>) -> Result<[Piece; 2], Mistake> {
    let back = &panels.shape.back;
    let (seat_walked, centre) = (line.along_crotch_seam, line.line.p0);
    let (side_walked, side) = (line.along_side_seam, line.line.p1);
    let (seat_below, seat_above) = back.crotch_seam.cut_at(seat_walked);
    let (side_above, side_below) = back.side_seam.cut_at(side_walked);
    let cut = Cut { back, centre, side, seat_above, side_above };
    let whole = || {
        Mistake::new("the yoke cannot be cut off this back").help("leave its line drawn: take `--yoke` away")
    };
    let runs = cut.yoke(panels).ok_or_else(whole)?;
    let seam = runs.iter().find(|run| run.edge == YOKE_SEAM).map(|run| run.seam.clone()).ok_or_else(whole)?;
    let count = copies(Panel::Back, panels.side);
    let middle = seam.start().midpoint(seam.end());
    let across = unit(seam.start() - seam.end());
    let up = Vec2::new(across.y, -across.x);
    let height = height_over(&runs, middle, up);
    let grain = Line::new(middle + up * (0.8 * height), middle + up * (0.15 * height));
    let label =
        LabelSpot { at: middle - across * 9.0 + up * (0.75 * height), turn: across.atan2(), width: 8.0 };
    let mut yoke = Piece::new(PieceKind::Yoke, panels.side, count, runs, grain, label)?;
    let edge = panels.allowances[Allowance::SideSeam];
    yoke.notches.push(PieceNotch::on(&seam, YOKE_SEAM, "middle", 0.5 * seam.length(), edge));
    let upright = Affine::rotate_about((-std::f64::consts::FRAC_PI_2) - up.atan2(), middle);
    let yoke = yoke.turned(upright);

    let top = Run {
        edge: YOKE_SEAM,
        seam: Chain::of(straight(centre, side)),
        allowance: [edge, edge],
        corner: Corner::Square(Which::Before),
    };
    let mut runs = vec![top.clone()];
    runs.extend(leg_runs(back, &side_below, panels.allowances));
    runs.extend(seat_runs(back, &seat_below, panels.allowances));
    if let Some(last) = runs.last_mut() {
        last.corner = Corner::Square(Which::After);
    }
    let mut below =
        Piece::new(PieceKind::Back, panels.side, count, runs, panels.grain(back), panels.label(back))?;
    below.lines = panels.levels(back);
    below.notches = panel_notches(panels.shape, Panel::Back, |edge| panels.allowances[of_edge(edge)]);
    below.notches.retain(|notch| notch.edge != Edge::SideSeam.key() || notch.from_start > side_walked);
    for notch in below.notches.iter_mut().filter(|notch| notch.edge == Edge::SideSeam.key()) {
        notch.from_start -= side_walked;
    }
    below.notches.push(PieceNotch::on(&top.seam, YOKE_SEAM, "middle", 0.5 * top.seam.length(), edge));
    Ok([below, yoke])
}

/// How high the yoke is over a place of its seam, cm.
fn height_over(runs: &[Run], at: Point, up: Vec2) -> f64 {
    let waist = runs.first().map(|run| run.seam.cubics()).unwrap_or_default();
    let over = waist.iter().flat_map(|piece| {
        line_crossings(piece, at, up).into_iter().map(|t| (piece.eval(t) - at).dot(up)).collect::<Vec<_>>()
    });
    over.fold(0.0, f64::max)
}

/// A back in two.
struct Cut<'a> {
    back: &'a PanelShape,
    /// Where the line meets the centre and the side.
    centre: Point,
    side: Point,
    seat_above: Chain,
    side_above: Chain,
}

impl Cut<'_> {
    /// The sewing line round the yoke, from the centre waist.
    fn yoke(&self, panels: &Panels<'_>) -> Option<Vec<Run>> {
        let allowances = panels.allowances;
        let waists: Vec<Run> = waist_runs(self.back, allowances);
        let (mut place, mut from) = (Affine::IDENTITY, self.centre);
        let (mut waist, mut seam) = (Vec::new(), Vec::new());
        for run in &waists {
            waist.push(run.seam.moved(place));
            let to = match run.corner {
                Corner::Mouth(dart) => self.pivot(&dart)?,
                _ => self.side,
            };
            seam.push(Chain::of(straight(place * from, place * to)));
            if let Corner::Mouth(dart) = run.corner {
                let [inner, outer] = dart.legs.map(|leg| leg - to);
                let angle = outer.cross(inner).atan2(outer.dot(inner));
                place *= Affine::rotate_about(angle, to);
            }
            from = to;
        }
        let (waist, seam) = (rounded(&waist)?, rounded(&seam)?.reversed());
        let run =
            |edge, seam, at: Allowance, corner| Run { edge, seam, allowance: [allowances[at]; 2], corner };
        let mut runs = vec![
            run(Edge::Waist.key(), waist, Allowance::Waist, Corner::Square(Which::After)),
            run(
                Edge::SideSeam.key(),
                self.side_above.moved(place),
                Allowance::SideSeam,
                Corner::Square(Which::After),
            ),
            run(YOKE_SEAM, seam, Allowance::SideSeam, Corner::Square(Which::Before)),
        ];
        runs.extend(seat_runs(self.back, &self.seat_above, allowances));
        Some(runs)
    }

    /// Where the middle of a dart, run on or cut short, meets the yoke line.
    fn pivot(&self, dart: &Dart) -> Option<Point> {
        let mouth = dart.legs[0].midpoint(dart.legs[1]);
        let (_, along) = meet(mouth, dart.apex - mouth, self.centre, self.side - self.centre)?;
        (0.0..=1.0).contains(&along).then(|| self.centre.lerp(self.side, along))
    }
}
