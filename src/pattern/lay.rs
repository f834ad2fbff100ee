//!
//! The grain stays where it is drawn: a part is pushed about, half-turned or mirrored, never laid askew. Each part is
//! cut into thin rows across the grain, and a row is known by its two ends. So how near two parts may lie is one
//! largest difference over their common rows, whatever their outlines, and all of it is counted in whole steps: the
//! same on every machine. A hollow that is open along the grain is nested into; one that is closed by its own part on
//! both sides within a row is taken as full.

mod clearance;
mod dice;
mod orders;
mod profile;
mod shapes;
mod sheets;
mod strip;

use kurbo::{Affine, BezPath, Vec2};

pub use sheets::{OnSheets, on_sheets};
pub use strip::{Laid, Strip, along};

/// What is laid.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// The closed outline, cm, grain along y.
    pub outline: BezPath,
    /// Whether it may lie upside down.
    pub may_turn: bool,
    /// Whether it may lie mirrored: on doubled cloth a pair is cut either way.
    pub may_mirror: bool,
    /// A height of the outline that must fall on the same place of the cloth's pattern as that of the other parts.
    pub match_at: Option<f64>,
}

impl Part {
    /// A part that may be turned, but not mirrored.
    pub fn new(outline: BezPath) -> Self {
        Self { outline, may_turn: true, may_mirror: false, match_at: None }
    }

    /// The ways in which it may lie.
    fn poses(&self) -> Vec<Pose> {
        let turns: &[bool] = if self.may_turn { &[false, true] } else { &[false] };
        let mirrors: &[bool] = if self.may_mirror { &[false, true] } else { &[false] };
        let both = mirrors.iter().flat_map(|mirrored| turns.iter().map(|turned| (*turned, *mirrored)));
        both.map(|(turned, mirrored)| Pose { turned, mirrored }).collect()
    }
}

/// How a part lies.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Pose {
    /// Turned by half a turn: head where the foot was.
    pub turned: bool,
    /// Mirrored across the grain, before any turn.
    pub mirrored: bool,
}

impl Pose {
    /// The outline as it lies, still about its own origin.
    pub fn affine(self) -> Affine {
        let x = if self.turned == self.mirrored { 1.0 } else { -1.0 };
        Affine::scale_non_uniform(x, if self.turned { -1.0 } else { 1.0 })
    }
}

/// Where a part lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Placement {
    /// Turned, mirrored or neither.
    pub pose: Pose,
    /// How far it is moved once it is turned, cm.
    pub by: Vec2,
}

impl Placement {
    /// From the part's own drawing to its place.
    pub fn affine(&self) -> Affine {
        Affine::translate(self.by) * self.pose.affine()
    }
}
