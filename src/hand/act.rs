//! The table of acts: what is cut and what is drawn anew for every fit parameter.

use crate::{
    adjust::Key,
    draft::CLOSE_AT_KNEE,
    terms::{Edge, Panel},
};

/// What is done on one panel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Part {
    /// The panel.
    pub panel: Panel,
    /// What is cut first; most acts only draw.
    pub cut: Option<Cut>,
    /// What is drawn anew, beside what any act has to true afterwards: curve, seams and waist.
    pub redrawn: &'static [Redrawn],
}

/// A cut, the hinge at its end, and what moves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Cut {
    /// From the start of the crotch curve to a pivot on the inseam; the inner part turns about it, outwards or, lapping,
    /// inwards.
    Slash {
        /// The cut is lapped by a positive amount.
        laps: bool,
    },
    /// Level on the hip line from the centre to a hinge at the side seam; what lies above turns.
    FromCentre,
    /// Level on the hip line from the side seam to a hinge at the centre; what lies above turns.
    FromSide,
    /// Level on the hip line right across; what lies below slides down.
    Across,
}

/// A line that is drawn anew by a rule of its own. A number is a part of the amount.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Redrawn {
    /// The centre stands on its old line again, longer by what was opened, and the side on its own.
    StoodBack,
    /// The centre stands on its old line again; the side straight above where it was, from the hip line up by what was
    /// opened, to nothing at the knee.
    SideStraightUp,
    /// The centre line above the hip line swung about that line, and the top of the side with it.
    Swung,
    /// Centre line, curve and crotch point out, on the inseam to nothing at the knee.
    Widened,
    /// The crotch point out, on the inseam to nothing below.
    ForkOut,
    /// The crotch curve deeper towards its corner.
    Deepened,
    /// The crotch curve straight down, and the ends of the darts.
    Lowered,
    /// The top of the centre along the centre.
    CentreRaised,
    /// The top of the side along the side seam.
    SideRaised,
    /// More (or less) of the waist on this panel, by darts first.
    WaistShared(f64),
    /// The hem up at the crease, to nothing at the seams.
    HemBent(f64),
    /// An edge moved sideways, towards the side seam, by parts of the amount at these heights, and run out between them.
    Shifted(Edge, &'static [(Height, f64)]),
}

/// A height at which an edge is moved.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Height {
    /// The top of the side seam.
    SideWaist,
    /// Above the hip line: where a lens for the thigh begins.
    AboveHip,
    /// The hip line.
    Hip,
    /// The crotch line.
    Crotch,
    /// The crotch line, or the crotch point where that lies lower.
    Fork,
    /// Below the crotch line: where a lens for the thigh is fullest.
    Fullest,
    /// Further below: where a lens on the front alone ends.
    LensEnd,
    /// The knee line.
    Knee,
    /// Where the calf is fullest.
    Calf,
    /// The hem.
    Hem,
}

use Height::{AboveHip, Calf, Crotch, Fork, Fullest, Hem, Hip, Knee, LensEnd, SideWaist};
use Redrawn::{
    CentreRaised, Deepened, ForkOut, HemBent, Lowered, Shifted, SideRaised, SideStraightUp, StoodBack, Swung,
    WaistShared, Widened,
};

const fn cut(panel: Panel, cut: Cut, redrawn: &'static [Redrawn]) -> Part {
    Part { panel, cut: Some(cut), redrawn }
}

const fn drawn(panel: Panel, redrawn: &'static [Redrawn]) -> Part {
    Part { panel, cut: None, redrawn }
}

const OUTER: &[Redrawn] = &[Shifted(Edge::SideSeam, &[(AboveHip, 0.0), (Fullest, 1.0), (Knee, 0.0)])];
const FRONT_SIDE: &[Redrawn] = &[Shifted(Edge::SideSeam, &[(AboveHip, 0.0), (Fullest, 1.0), (LensEnd, 0.0)])];
const KNEE_IN: &[Redrawn] = &[
    Shifted(Edge::SideSeam, &[(Crotch, 0.0), (Knee, -1.0), (Hem, 0.0)]),
    Shifted(Edge::Inseam, &[(Fork, 0.0), (Knee, -1.0), (Hem, 0.0)]),
];
const CLOSE: &[Redrawn] = &[
    Shifted(Edge::SideSeam, &[(Crotch, 0.0), (Knee, -CLOSE_AT_KNEE), (Hem, -1.0)]),
    Shifted(Edge::Inseam, &[(Fork, 0.0), (Knee, -CLOSE_AT_KNEE), (Hem, -1.0)]),
];
const CALF: &[Redrawn] = &[
    Shifted(Edge::SideSeam, &[(Knee, 0.0), (Calf, 0.25), (Hem, 0.0)]),
    Shifted(Edge::Inseam, &[(Knee, 0.0), (Calf, -0.25), (Hem, 0.0)]),
];

/// What the hand does for a fit parameter: on the panel that leads first. The other panel stands here where the act is
/// on both; where it only has to follow, truing finds that.
pub fn act(key: Key) -> &'static [Part] {
    use Panel::{Back, Front};
    match key {
        Key::ThighFront | Key::ThighFrontReach => const { &[cut(Front, Cut::Slash { laps: false }, &[])] },
        Key::ThighBack => const { &[cut(Back, Cut::Slash { laps: false }, &[])] },
        Key::ThighBackTake => const { &[cut(Back, Cut::Slash { laps: true }, &[])] },
        Key::ThighInner => const { &[drawn(Front, &[ForkOut]), drawn(Back, &[ForkOut])] },
        Key::ThighOuter => const { &[drawn(Front, OUTER), drawn(Back, OUTER)] },
        Key::ThighFrontSide => const { &[drawn(Front, FRONT_SIDE)] },
        Key::SeatLength => const { &[cut(Back, Cut::FromCentre, &[])] },
        Key::SeatAngle => const { &[drawn(Back, &[Swung])] },
        Key::SeatWidth => const { &[drawn(Back, &[Widened])] },
        Key::SeatScoop => const { &[drawn(Back, &[Deepened])] },
        Key::SeatLow => const { &[drawn(Back, &[Lowered])] },
        Key::CrotchDepth => const { &[cut(Front, Cut::Across, &[]), cut(Back, Cut::Across, &[])] },
        Key::CrotchFrontExtension => const { &[drawn(Front, &[ForkOut])] },
        Key::CrotchBackExtension => const { &[drawn(Back, &[ForkOut])] },
        Key::CrotchFrontScoop => const { &[drawn(Front, &[Deepened])] },
        Key::WaistRaiseFront => const { &[drawn(Front, &[CentreRaised])] },
        Key::WaistRaiseBack => const { &[drawn(Back, &[CentreRaised])] },
        Key::WaistRaiseSide => const { &[drawn(Front, &[SideRaised]), drawn(Back, &[SideRaised])] },
        Key::AbdomenLength => const { &[cut(Front, Cut::FromCentre, &[StoodBack])] },
        Key::AbdomenWidth => {
            const { &[drawn(Front, &[WaistShared(1.0)]), drawn(Back, &[WaistShared(-1.0)])] }
        }
        Key::HipUneven => {
            const { &[cut(Front, Cut::FromSide, &[SideStraightUp]), cut(Back, Cut::FromSide, &[SideStraightUp])] }
        }
        Key::HipFrontShare => {
            const {
                &[
                    drawn(Front, &[Shifted(Edge::SideSeam, &[(SideWaist, 0.0), (Hip, 1.0), (Knee, 0.0)])]),
                    drawn(Back, &[Shifted(Edge::SideSeam, &[(SideWaist, 0.0), (Hip, -1.0), (Knee, 0.0)])]),
                ]
            }
        }
        Key::LegKneeIn => const { &[drawn(Front, KNEE_IN), drawn(Back, KNEE_IN)] },
        Key::LegKneeForward => const { &[drawn(Front, &[HemBent(1.0)]), drawn(Back, &[HemBent(-1.0)])] },
        Key::LegClose => const { &[drawn(Front, CLOSE), drawn(Back, CLOSE)] },
        Key::LegCalf => const { &[drawn(Front, CALF), drawn(Back, CALF)] },
        Key::SideForward => {
            const {
                &[
                    drawn(Front, &[Shifted(Edge::SideSeam, &[(SideWaist, 0.0), (Hip, 1.0), (Hem, 1.0)])]),
                    drawn(Back, &[Shifted(Edge::SideSeam, &[(SideWaist, 0.0), (Hip, -1.0), (Hem, -1.0)])]),
                ]
            }
        }
    }
}
