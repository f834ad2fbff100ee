//! A panel by its ten roles, and a drawn panel.

use kurbo::{CubicBez, Line, Point};

use crate::{
    curve::Chain,
    terms::{Edge, EnumMap, Level, Panel, Role},
};

/// The y of every level, cm below the waist line.
pub type Levels = EnumMap<Level, f64>;

/// The ten points by which a panel is known, in cm from the crease and the waist line.
pub type Roles = EnumMap<Role, Point>;

/// A dart of the waist.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dart {
    /// Where it ends.
    pub apex: Point,
    /// Its tops at the waist, the one nearer the centre first; both as far from the apex.
    pub legs: [Point; 2],
}

impl Dart {
    /// How wide the dart stands open at the waist, cm.
    pub fn intake(&self) -> f64 {
        self.legs[0].distance(self.legs[1])
    }

    /// The length of a leg, cm.
    pub fn length(&self) -> f64 {
        self.apex.distance(self.legs[0])
    }
}

/// A pleat of the waist: laid in folds and sewn in with the band, not sewn down.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pleat {
    /// Its two folds from the waist down, the one nearer the centre first; laid on each other they close it.
    pub folds: [Line; 2],
}

impl Pleat {
    /// How wide the pleat is at the waist, cm.
    pub fn intake(&self) -> f64 {
        self.folds[0].p0.distance(self.folds[1].p0)
    }
}

/// A mark across an edge at which two panels are matched.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Notch {
    /// The edge it stands on.
    pub edge: Edge,
    /// What it marks: a level's key.
    pub name: &'static str,
    /// How far along the edge, cm.
    pub from_start: f64,
    /// Where.
    pub point: Point,
}

/// What was cut off the top of a panel whose finished waist lies below the measured one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CutOff {
    /// Along the centre line and along the side seam, cm.
    pub drop: f64,
    /// The sewn length of the waist at the measured level, cm.
    pub sewn_waist: f64,
    /// What the darts take in at the measured level, cm.
    pub intake: f64,
    /// Where the side seam meets the measured waist.
    pub side_waist: Point,
}

/// A drawn panel: five edges head to tail, each true to its neighbour panel once the draft is trued.
#[derive(Clone, Debug, PartialEq)]
pub struct PanelShape {
    /// Front or back.
    pub panel: Panel,
    /// The roles where the finished outline has them.
    pub roles: Roles,
    /// Centre to side, straight from dart leg to dart leg.
    pub waist: Chain,
    /// Waist to hem.
    pub side_seam: Chain,
    /// Side to inner leg.
    pub hem: Chain,
    /// Hem to crotch point.
    pub inseam: Chain,
    /// Crotch point to centre waist.
    pub crotch_seam: Chain,
    /// From the centre to the side.
    pub darts: Vec<Dart>,
    /// From the centre to the side.
    pub pleats: Vec<Pleat>,
    /// The waist when its darts and pleats are closed: one smooth curve.
    pub sewn_waist: CubicBez,
    /// By how much the darts turn the side part when they are sewn, radians.
    pub closing: f64,
    /// Hip and knee on the side seam, knee on the inseam.
    pub notches: [Notch; 3],
    /// Lines of style across the panel, from the centre line to the side seam.
    pub lines: Vec<Line>,
    /// How far the thigh turn carries the crotch point out along the crotch line, cm.
    pub gain: f64,
    /// The crotch curve has room between centre line and crossing; without it the panel must not be used.
    pub has_room: bool,
    /// What a waist drop cut off; `None` where the waist stands at the measured level.
    pub cut_off: Option<CutOff>,
}

/// The width between these edges at a level.
pub(super) fn chord(inseam: &Chain, crotch_seam: &Chain, side_seam: &Chain, y: f64) -> Option<f64> {
    ends(inseam, crotch_seam, side_seam, y).map(|[inner, outer]| outer - inner)
}

/// The x at which a level meets the innermost and the outermost of these edges.
fn ends(inseam: &Chain, crotch_seam: &Chain, side_seam: &Chain, y: f64) -> Option<[f64; 2]> {
    let inner = inseam.crossings(y).chain(crotch_seam.crossings(y)).fold(f64::INFINITY, f64::min);
    let outer = side_seam.crossings(y).fold(f64::NEG_INFINITY, f64::max);
    (inner.is_finite() && outer.is_finite()).then_some([inner, outer])
}

impl PanelShape {
    /// One edge of the panel.
    pub fn edge(&self, edge: Edge) -> &Chain {
        match edge {
            Edge::Waist => &self.waist,
            Edge::SideSeam => &self.side_seam,
            Edge::Hem => &self.hem,
            Edge::Inseam => &self.inseam,
            Edge::CrotchSeam => &self.crotch_seam,
        }
    }

    /// How long an edge is when it is sewn, cm: the waist with its darts closed.
    pub fn sewn_length(&self, edge: Edge) -> f64 {
        match edge {
            Edge::Waist => self.sewn_waist_length(),
            Edge::SideSeam | Edge::Hem | Edge::Inseam | Edge::CrotchSeam => self.edge(edge).length(),
        }
    }

    /// The sewn length of the waist: its darts closed.
    pub fn sewn_waist_length(&self) -> f64 {
        crate::curve::length(&self.sewn_waist)
    }

    /// The sewn length of the waist at the measured level, whether or not the panel reaches it, cm.
    pub fn measured_waist_length(&self) -> f64 {
        self.cut_off.map_or_else(|| self.sewn_waist_length(), |cut| cut.sewn_waist)
    }

    /// The length of the crotch seam up to the measured waist, whether or not the panel reaches it, cm.
    pub fn measured_crotch_length(&self) -> f64 {
        self.crotch_seam.length() + self.cut_off.map_or(0.0, |cut| cut.drop)
    }

    /// The width of the panel at a level, from its innermost to its outermost edge; `None` where the level misses
    /// the panel.
    pub fn chord(&self, y: f64) -> Option<f64> {
        chord(&self.inseam, &self.crotch_seam, &self.side_seam, y)
    }

    /// The x at which a level meets the innermost and the outermost edge; `None` where it misses the panel.
    pub fn ends_at(&self, y: f64) -> Option<[f64; 2]> {
        ends(&self.inseam, &self.crotch_seam, &self.side_seam, y)
    }

    /// The grain: on the crease, from the crotch line's height to well above the hem.
    pub fn grain(&self) -> [Point; 2] {
        let (top, bottom) = (self.roles[Role::CurveStart].y, self.roles[Role::SideHem].y);
        [Point::new(0.0, top), Point::new(0.0, bottom - 0.1 * (bottom - top))]
    }

    /// The whole outline, head to tail from the centre waist.
    pub fn outline(&self) -> Vec<CubicBez> {
        [&self.waist, &self.side_seam, &self.hem, &self.inseam, &self.crotch_seam]
            .iter()
            .flat_map(|edge| edge.cubics().iter().copied())
            .collect()
    }
}

/// A front and a back that sew together: one leg.
#[derive(Clone, Debug, PartialEq)]
pub struct Shape {
    /// The levels as the crotch depth leaves them.
    pub levels: Levels,
    /// The front panel.
    pub front: PanelShape,
    /// The back panel.
    pub back: PanelShape,
}

impl Shape {
    /// One of the two panels.
    pub fn panel(&self, panel: Panel) -> &PanelShape {
        match panel {
            Panel::Front => &self.front,
            Panel::Back => &self.back,
        }
    }
}
