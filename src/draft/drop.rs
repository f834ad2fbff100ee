//! The waist drop: a finished top below the measured waist, cut from the trued panels.
//!
//! Both panels lose the same length along the centre lines and along the side seam, so that seams which agreed agree
//! still. The new waist is drawn as it is sewn, through what is left of the darts: square to the centres and straight
//! across the side. The crotch budget and the waist's girth stay at the measured waist ([`CutOff`]).

use kurbo::Vec2;

use super::{
    panel::{CutOff, Dart, PanelShape, Shape},
    waist::{WaistEnds, redrawn},
};
use crate::{
    curve::{angle_between, unit},
    mistake::{Mistake, Notice},
    terms::{Edge, Role},
    voice::{Sentence, at_most, length},
};

/// What must stay of the side seam above the hip line, cm: less is no longer held up by the hip (common practice, no
/// source).
const LEAST_ABOVE_HIP: f64 = 6.0;
/// What must stay of the straight centre line above the crotch curve, cm.
const LEAST_CENTRE: f64 = 2.0;
/// A dart of which less than this is left, cm, is not sewn: what it took is eased into the band.
const LEAST_DART: f64 = 2.0;

/// How the drop came about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Asked {
    /// Named in the measurement file: refused where it cannot be cut.
    ByTheFile,
    /// The recipe's own: lessened to what the body has room for.
    ByTheRecipe,
}

/// The panels with their waist `drop` cm lower, and what a person should know about it.
///
/// # Errors
/// When the file asks for a drop that leaves too little above the hip line or the crotch curve.
pub(super) fn lowered(shape: Shape, drop: f64, asked: Asked) -> Result<(Shape, Vec<Notice>), Mistake> {
    let room = [&shape.front, &shape.back].into_iter().map(room).fold(f64::INFINITY, f64::min).max(0.0);
    let mut notices = Vec::new();
    let drop = match asked {
        Asked::ByTheFile if drop > room => {
            let title = "a waist {drop} below the measured one leaves too little above the hip line";
            let remedy = "this body and block have room for a `waist_drop` of {room}";
            return Err(Mistake::new(Sentence::new(title).with("drop", length(drop)))
                .help(Sentence::new(remedy).with("room", at_most(room))));
        }
        Asked::ByTheRecipe if drop > room => {
            notices.push(
                Notice::note(
                    "waist-drop-lessened",
                    "the block cuts its waist {drop} below the measured one; this body has room for {room}",
                )
                .with("drop", length(drop))
                .with("room", at_most(room)),
            );
            room
        }
        Asked::ByTheFile | Asked::ByTheRecipe => drop,
    };
    if drop <= 0.0 {
        return Ok((shape, notices));
    }
    let (front, back) = (trimmed(shape.front, drop), trimmed(shape.back, drop));
    let rise = 0.5 * [&front, &back].map(lean).iter().sum::<f64>();
    for panel in [&front, &back] {
        let eased: f64 =
            panel.darts.iter().filter(|dart| !is_sewn(dart, drop)).map(|dart| left_of(dart, drop)).sum();
        if eased > 0.05 {
            notices.push(
                Notice::note(
                    "dart-cut-away",
                    "the waist drop leaves too little of a {panel} dart: ease its {eased} into the band",
                )
                .with("panel", panel.panel)
                .with("eased", length(eased)),
            );
        }
    }
    Ok((
        Shape { levels: shape.levels, front: finished(front, drop, rise), back: finished(back, drop, rise) },
        notices,
    ))
}

/// The deepest drop that a panel has room for, cm; negative where it has none.
fn room(panel: &PanelShape) -> f64 {
    let centre = panel.roles[Role::CurveStart].distance(panel.roles[Role::CentreWaist]);
    f64::min(panel.notches[0].from_start - LEAST_ABOVE_HIP, centre - LEAST_CENTRE)
}

/// The panel with its side seam and its centre line shortened from the top; its waist is still the old one.
fn trimmed(mut panel: PanelShape, drop: f64) -> PanelShape {
    let cut_off = CutOff {
        drop,
        sewn_waist: panel.sewn_waist_length(),
        intake: panel.darts.iter().map(Dart::intake).sum(),
        side_waist: panel.roles[Role::SideWaist],
    };
    panel.side_seam = panel.side_seam.cut_at(drop).1;
    panel.crotch_seam = panel.crotch_seam.cut_at(panel.crotch_seam.length() - drop).0;
    panel.roles[Role::SideWaist] = panel.side_seam.start();
    panel.roles[Role::CentreWaist] = panel.crotch_seam.end();
    for notch in panel.notches.iter_mut().filter(|notch| notch.edge == Edge::SideSeam) {
        notch.from_start -= drop;
    }
    panel.keep_whole_lines();
    panel.cut_off = Some(cut_off);
    panel
}

/// How far the top of the side seam leans outward, radians.
fn lean(panel: &PanelShape) -> f64 {
    super::side::side_lean(panel.side_seam.start_tangent())
}

fn is_sewn(dart: &Dart, drop: f64) -> bool {
    dart.length() - drop >= LEAST_DART
}

/// What a dart takes in at the new waist, cm.
fn left_of(dart: &Dart, drop: f64) -> f64 {
    let [inner, outer] = dart.legs.map(|leg| leg - dart.apex);
    (dart.length() - drop).max(0.0) * angle_between(inner, outer)
}

/// Draws the new waist between the shortened edges.
fn finished(mut panel: PanelShape, drop: f64, rise: f64) -> PanelShape {
    let up = panel.crotch_seam.end_tangent();
    let ends = WaistEnds {
        panel: panel.panel,
        centre: panel.roles[Role::CentreWaist],
        side: panel.roles[Role::SideWaist],
        darts_from: panel.roles[Role::CentreWaist],
        darts_to: panel.roles[Role::SideWaist],
        leaves: unit(Vec2::new(-up.y, up.x)),
        arrives: Vec2::new(rise.cos(), -rise.sin()),
    };
    let sewn: Vec<Dart> = panel.darts.iter().copied().filter(|dart| is_sewn(dart, drop)).collect();
    let (sewn_waist, opened) = redrawn(&ends, &sewn, &panel.pleats);
    (panel.sewn_waist, panel.waist, panel.darts) = (sewn_waist, opened.waist, opened.darts);
    (panel.pleats, panel.closing) = (opened.pleats, opened.closing);
    panel
}
