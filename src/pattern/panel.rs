//! Front and back as pieces.

use kurbo::{BezPath, Line, Point, Shape as _, Vec2};

use super::{
    Allowances, Copies, Corner, DrawnLine, LabelSpot, LineKind, Piece, PieceKind, PieceNotch, Purpose, Run,
    Which, panel_notches, piece::sound_cut_line,
};
use crate::{
    curve::{Chain, line_crossings},
    draft::{Dart, PanelShape, Shape},
    mistake::Mistake,
    terms::{Allowance, Edge, Level, Panel, Role, Side, Word},
    voice::{Sentence, amount, at_most},
};

/// The two panels of a leg with what they are cut with.
#[derive(Clone, Copy)]
pub(super) struct Panels<'a> {
    pub shape: &'a Shape,
    pub side: Side,
    pub allowances: &'a Allowances,
    pub purpose: Purpose,
}

/// The toile's line above the crotch stands this far over it, cm, clear of the crotch point (common practice, no source).
const ABOVE_CROTCH: f64 = 2.5;
/// Length of the marks at the ends of a level, cm.
const TICK: f64 = 1.2;
/// Points nearer than this are one: the rounding of truing lies between them, cm.
const ONE_POINT: f64 = 1e-6;

impl Panels<'_> {
    /// The front.
    pub(super) fn front(&self) -> Result<Piece, Mistake> {
        self.piece(Panel::Front)
    }

    /// The whole back.
    pub(super) fn back(&self) -> Result<Piece, Mistake> {
        self.piece(Panel::Back)
    }

    /// The notch at the end of the zip, unless the notch of the curve stands there.
    pub(super) fn mark_zip(&self, front: &mut Piece, zip: f64) {
        let seam = &self.shape.front.crotch_seam;
        let from_start = seam.length() - zip;
        let allowance = self.allowances[Allowance::CrotchSeam];
        let notch = PieceNotch::on(seam, Edge::CrotchSeam.key(), "zip", from_start, allowance);
        let there =
            |other: &PieceNotch| other.edge == notch.edge && (other.from_start - from_start).abs() < 0.01;
        if !front.notches.iter().any(there) {
            front.notches.push(notch);
        }
    }

    fn piece(&self, panel: Panel) -> Result<Piece, Mistake> {
        let drawn = self.shape.panel(panel);
        let kind = match panel {
            Panel::Front => PieceKind::Front,
            Panel::Back => PieceKind::Back,
        };
        let runs = runs(drawn, self.allowances);
        let mut piece =
            Piece::new(kind, self.side, copies(panel, self.side), runs, self.grain(drawn), self.label(drawn))
                .map_err(|mistake| self.told(mistake, panel))?;
        piece.notches = panel_notches(self.shape, panel, |edge| self.allowances[of_edge(edge)]);
        piece.darts = drawn.darts.iter().copied().filter(is_open).collect();
        piece.remark = match piece.darts.len() {
            0 => None,
            1 => Some("Press the dart to the centre".into()),
            _ => Some("Press the darts to the centre".into()),
        };
        piece.lines = self.levels(drawn);
        piece.lines.extend(drawn.lines.iter().map(|line| DrawnLine {
            kind: LineKind::Style,
            name: "yoke",
            path: line.to_path(0.1),
        }));
        for pleat in &drawn.pleats {
            for fold in pleat.folds {
                piece.lines.push(DrawnLine { kind: LineKind::Fold, name: "pleat", path: fold.to_path(0.1) });
                let from_start = along(&drawn.waist, fold.p0);
                let (edge, allowance) = (Edge::Waist.key(), self.allowances[Allowance::Waist]);
                piece.notches.push(PieceNotch::on(&drawn.waist, edge, "pleat", from_start, allowance));
            }
        }
        Ok(piece)
    }

    /// The grain on the crease; on a toile from edge to edge, to see by.
    pub(super) fn grain(&self, panel: &PanelShape) -> Line {
        let [top, bottom] = panel.grain();
        match self.purpose {
            Purpose::Wear => Line::new(top, bottom),
            Purpose::Toile => {
                let meets = |edge: &Chain| {
                    edge.cubics().iter().find_map(|piece| {
                        let t = *line_crossings(piece, Point::ORIGIN, Vec2::new(0.0, 1.0)).first()?;
                        Some(kurbo::ParamCurve::eval(piece, t))
                    })
                };
                let dart = panel.darts.iter().find(|dart| dart.legs[0].x <= 0.0 && dart.legs[1].x >= 0.0);
                let from = dart.map(|dart| Point::new(0.0, dart.apex.y)).or_else(|| meets(&panel.waist));
                Line::new(from.unwrap_or(top), meets(&panel.hem).unwrap_or(bottom))
            }
        }
    }

    /// Beside the crease, in the half of the leg towards the side.
    pub(super) fn label(&self, panel: &PanelShape) -> LabelSpot {
        let at = Point::new(0.9, self.shape.levels[Level::Crotch] + 3.0);
        LabelSpot { at, turn: 0.0, width: (panel.roles[Role::SideKnee].x - at.x - 1.0).max(4.0) }
    }

    /// Hip, crotch and knee: marks at both ends, or for a toile lines from edge to edge, the crotch line's a little
    /// above it.
    pub(super) fn levels(&self, panel: &PanelShape) -> Vec<DrawnLine> {
        let levels = &self.shape.levels;
        let toile = self.purpose == Purpose::Toile;
        let crotch = levels[Level::Crotch];
        let rows = [
            ("hip", levels[Level::Hip]),
            if toile { ("above the crotch", crotch - ABOVE_CROTCH) } else { ("crotch", crotch) },
            ("knee", levels[Level::Knee]),
        ];
        rows.into_iter()
            .filter_map(|(name, y)| {
                let [inner, outer] = panel.ends_at(y)?;
                let (from, to) = (Point::new(inner, y), Point::new(outer, y));
                let path = if toile {
                    Line::new(from, to).to_path(0.1)
                } else {
                    let mut path = Line::new(from, from + Vec2::new(TICK, 0.0)).to_path(0.1);
                    path.extend(Line::new(to - Vec2::new(TICK, 0.0), to).to_path(0.1));
                    path
                };
                Some(DrawnLine { kind: LineKind::Level, name, path })
            })
            .collect()
    }

    /// The mistake with the allowance that is too wide for one of the panels, and how wide it can be for both.
    fn told(&self, mistake: Mistake, panel: Panel) -> Mistake {
        let sound = |allowances: &Allowances| {
            let panels = [&self.shape.front, &self.shape.back];
            panels.into_iter().all(|panel| sound_cut_line(&runs(panel, allowances)).is_some())
        };
        let too_wide = Allowance::ALL.iter().find(|at| sound(&self.allowances.with(**at, 0.0)));
        let Some(at) = too_wide else { return mistake };
        let (mut fits, mut fails) = (0.0, self.allowances[*at]);
        while fails - fits > 0.05 {
            let middle = 0.5 * (fits + fails);
            if sound(&self.allowances.with(*at, middle)) { fits = middle } else { fails = middle }
        }
        Mistake::new(
            Sentence::new("an allowance of {wide} for `{at}` does not go round the {panel}")
                .with("wide", amount(self.allowances[*at]))
                .with("at", *at)
                .with("panel", panel),
        )
        .help(
            Sentence::new("`trousers.allowance.{at}` can be {most} here")
                .with("at", *at)
                .with("most", at_most(fits)),
        )
    }
}

/// How many of a panel are cut. Drawn with the side seam to the right and the right side of the cloth up, a front is the
/// wearer's left one and a back the right one.
pub(super) fn copies(panel: Panel, side: Side) -> Copies {
    match (panel, side) {
        (_, Side::Both) => Copies::PAIR,
        (Panel::Front, Side::Left) | (Panel::Back, Side::Right) => Copies::ONE,
        (Panel::Front, Side::Right) | (Panel::Back, Side::Left) => Copies::ONE_MIRRORED,
    }
}

/// The allowance of an edge of a panel.
pub(super) fn of_edge(edge: Edge) -> Allowance {
    match edge {
        Edge::Waist => Allowance::Waist,
        Edge::SideSeam => Allowance::SideSeam,
        Edge::Hem => Allowance::Hem,
        Edge::Inseam => Allowance::Inseam,
        Edge::CrotchSeam => Allowance::CrotchSeam,
    }
}

/// The sewing line round a panel, stretch by stretch.
fn runs(panel: &PanelShape, allowances: &Allowances) -> Vec<Run> {
    let mut runs = waist_runs(panel, allowances);
    runs.extend(leg_runs(panel, &panel.side_seam, allowances));
    runs.extend(seat_runs(panel, &panel.crotch_seam, allowances));
    runs
}

/// How far along an edge a point lies that is an end of one of its pieces, cm.
fn along(edge: &Chain, point: Point) -> f64 {
    let before = edge.cubics().iter().take_while(|cubic| cubic.p0.distance(point) > ONE_POINT);
    before.map(crate::curve::length).sum()
}

/// Whether a dart takes anything in. One that a fit parameter has taken all from is not sewn.
fn is_open(dart: &Dart) -> bool {
    let [inner, outer] = dart.legs.map(|leg| leg - dart.apex);
    inner.cross(outer) > 0.0
}

/// The waist between its darts.
pub(super) fn waist_runs(panel: &PanelShape, allowances: &Allowances) -> Vec<Run> {
    let same = |a: Point, b: Point| a.distance(b) < ONE_POINT;
    let allowance = [allowances[Allowance::Waist]; 2];
    let run = |pieces: Vec<_>, corner| {
        Chain::from_cubics(pieces).map(|seam| Run { edge: Edge::Waist.key(), seam, allowance, corner })
    };
    let (mut runs, mut pieces) = (Vec::new(), Vec::new());
    for piece in panel.waist.cubics() {
        let mouth =
            panel.darts.iter().find(|dart| same(dart.legs[0], piece.p0) && same(dart.legs[1], piece.p3));
        match mouth {
            Some(dart) => {
                let corner = if is_open(dart) { Corner::Mouth(*dart) } else { Corner::Meet };
                runs.extend(run(std::mem::take(&mut pieces), corner));
            }
            None => pieces.push(*piece),
        }
    }
    runs.extend(run(pieces, Corner::Square(Which::After)));
    runs
}

/// From the side seam, or what a yoke leaves of it, to the crotch point.
pub(super) fn leg_runs(panel: &PanelShape, side_seam: &Chain, allowances: &Allowances) -> [Run; 3] {
    let run = |edge: Edge, seam: &Chain, corner| Run {
        edge: edge.key(),
        seam: seam.clone(),
        allowance: [allowances[of_edge(edge)]; 2],
        corner,
    };
    [
        run(Edge::SideSeam, side_seam, Corner::TurnedUp(Which::After)),
        run(Edge::Hem, &panel.hem, Corner::TurnedUp(Which::Before)),
        run(Edge::Inseam, &panel.inseam, Corner::Square(Which::Before)),
    ]
}

/// The crotch seam, or a part of it. On the back the allowance widens along the straight centre up to the inlay.
pub(super) fn seat_runs(panel: &PanelShape, part: &Chain, allowances: &Allowances) -> Vec<Run> {
    let curve = allowances[Allowance::CrotchSeam];
    let run = |pieces: &[_], allowance, corner| {
        let seam = Chain::from_cubics(pieces.to_vec())?;
        Some(Run { edge: Edge::CrotchSeam.key(), seam, allowance, corner })
    };
    let (start, top) = (panel.roles[Role::CurveStart], panel.roles[Role::CentreWaist]);
    let split = match panel.panel {
        Panel::Front => None,
        Panel::Back => {
            part.cubics().iter().position(|piece| (piece.p0 - start).dot(top - start) > -ONE_POINT)
        }
    };
    let Some(split) = split else {
        return run(part.cubics(), [curve, curve], Corner::Square(Which::Before)).into_iter().collect();
    };
    let (bend, straight) = part.cubics().split_at(split);
    let inlay = |at: Point| {
        curve + (allowances[Allowance::CentreBackWaist] - curve) * at.distance(start) / top.distance(start)
    };
    let straight = straight.first().zip(straight.last()).and_then(|(first, last)| {
        let line = crate::curve::straight(first.p0, last.p3);
        run(&[line], [inlay(first.p0), inlay(last.p3)], Corner::Square(Which::Before))
    });
    run(bend, [curve, curve], Corner::Meet).into_iter().chain(straight).collect()
}

/// A straight path.
pub(super) fn straight_path(from: Point, to: Point) -> BezPath {
    Line::new(from, to).to_path(0.1)
}
