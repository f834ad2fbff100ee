//! The paper laid over the draft.

use breeks::{
    adjust::Key,
    draft::{PanelShape, Shape},
    terms::{Edge, Panel, Role, Word},
};
use kurbo::Point;

use crate::{
    bodies::{Fitting, fittings},
    closing::{Leg, Sheet},
    paper::{Line, distance_to, drawn, length},
};

/// Where on an edge the closing curve was swept again, so that only its run counts and not every hair of it.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Blend {
    pub(crate) panel: Panel,
    pub(crate) edge: Edge,
    /// From this level to that, cm below the waist.
    pub(crate) from: f64,
    pub(crate) to: f64,
}

/// How near the draft must come to the paper, cm.
#[derive(Clone, Debug)]
pub(crate) struct Allowed {
    /// Points by which the panel is known, and dart ends.
    pub(crate) points: f64,
    pub(crate) lengths: f64,
    pub(crate) curves: f64,
    pub(crate) blended: f64,
    pub(crate) blends: Vec<Blend>,
}

impl Allowed {
    /// A part that is turned: its points are where the pin puts them.
    pub(crate) fn turn(amount: f64) -> Self {
        Self { points: 0.005, ..Self::slide(amount) }
    }

    /// A part that is slid or run out.
    pub(crate) fn slide(amount: f64) -> Self {
        Self {
            points: 0.02,
            lengths: 0.02,
            curves: f64::max(0.02, 0.03 * amount.abs()),
            blended: f64::max(0.05, 0.1 * amount.abs()),
            blends: Vec::new(),
        }
    }

    pub(crate) fn blend(mut self, panel: Panel, edge: Edge, from: f64, to: f64) -> Self {
        self.blends.push(Blend { panel, edge, from, to });
        self
    }

    /// Both crotch curves are always swept again.
    fn at(&self, panel: Panel, edge: Edge, point: Point, curve_from: f64) -> f64 {
        let blended = (edge == Edge::CrotchSeam && point.y > curve_from)
            || self.blends.iter().any(|blend| {
                blend.panel == panel && blend.edge == edge && (blend.from..=blend.to).contains(&point.y)
            });
        if blended { self.blended } else { self.curves }
    }
}

/// Every place where the draft is not what the paper shows.
pub(crate) fn differences(paper: &Leg, draft: &Shape, allowed: &Allowed) -> Vec<String> {
    let mut found = Vec::new();
    for panel in Panel::ALL {
        let (sheet, shape) = (paper.sheet(*panel), draft.panel(*panel));
        points(sheet, shape, allowed, &mut found);
        edges(sheet, shape, allowed, &mut found);
    }
    found
}

fn points(sheet: &Sheet, shape: &PanelShape, allowed: &Allowed, found: &mut Vec<String>) {
    let mut point = |name: &str, on_paper: Point, drafted: Point, within: f64| {
        let off = on_paper.distance(drafted);
        if !(off <= within) {
            found.push(format!(
                "{} {name} off by {off:.4}: paper ({:.3}, {:.3}), draft ({:.3}, {:.3})",
                sheet.panel, on_paper.x, on_paper.y, drafted.x, drafted.y
            ));
        }
    };
    // A curve swept anew runs into its line so gently that the place where it does is no hard point.
    let swept = if sheet.arms.is_some() { allowed.curves } else { allowed.points };
    point(Role::CurveStart.key(), sheet.curve_start, shape.roles[Role::CurveStart], swept);
    for (role, on_paper) in [
        (Role::CentreWaist, sheet.centre_waist),
        (Role::CrotchPoint, sheet.crotch_point()),
        (Role::InnerHem, sheet.inseam[0]),
        (Role::SideHem, sheet.side[sheet.side.len() - 1]),
        (Role::SideWaist, sheet.side[0]),
    ] {
        point(role.key(), on_paper, shape.roles[role], allowed.points);
    }
    for (dart, drafted) in sheet.darts.iter().zip(&shape.darts) {
        point("dart end", dart.end, drafted.apex, allowed.points);
    }
    // The legs end where the waist, which is swept again, cuts them.
    for (index, drafted) in shape.darts.iter().enumerate() {
        point("dart leg", *sheet.waist[index].last().unwrap(), drafted.legs[0], allowed.curves);
        point("dart leg", sheet.waist[index + 1][0], drafted.legs[1], allowed.curves);
    }
}

fn edges(sheet: &Sheet, shape: &PanelShape, allowed: &Allowed, found: &mut Vec<String>) {
    let mut crotch: Line = sheet.curve.iter().rev().copied().collect();
    crotch.extend(crate::paper::ruled(sheet.curve_start, sheet.centre_waist));
    for (edge, on_paper) in [
        (Edge::SideSeam, &sheet.side),
        (Edge::Hem, &sheet.hem),
        (Edge::Inseam, &sheet.inseam),
        (Edge::CrotchSeam, &crotch),
    ] {
        let drafted = drawn(shape.edge(edge).cubics());
        let tolerance = |point: Point| allowed.at(sheet.panel, edge, point, sheet.curve_start.y);
        line(edge.key(), sheet.panel, on_paper, &drafted, allowed.lengths, tolerance, found);
    }
    let legs: Vec<[Point; 2]> = shape.darts.iter().map(|dart| dart.legs).collect();
    let parts = shape.waist.cubics().iter().filter(|piece| !legs.contains(&[piece.p0, piece.p3]));
    for (part, on_paper) in parts.zip(&sheet.waist) {
        let tolerance = |point: Point| allowed.at(sheet.panel, Edge::Waist, point, 0.0);
        line("waist", sheet.panel, on_paper, &drawn(&[*part]), allowed.lengths, tolerance, found);
    }
}

/// How long and where.
fn line(
    name: &str,
    panel: Panel,
    on_paper: &Line,
    drafted: &Line,
    lengths: f64,
    tolerance: impl Fn(Point) -> f64,
    found: &mut Vec<String>,
) {
    let (long, drawn) = (length(on_paper), length(drafted));
    if !((long - drawn).abs() <= lengths) {
        found.push(format!("{panel} {name} of {drawn:.4}, on paper {long:.4}"));
    }
    let mut worst: Option<(f64, Point)> = None;
    for (from, to) in [(drafted, on_paper), (on_paper, drafted)] {
        for (index, point) in from.iter().enumerate().step_by(EVERY) {
            let off = near(*point, index as f64 / (from.len() - 1) as f64, to);
            if !(off <= tolerance(*point)) && worst.is_none_or(|(so_far, _)| off > so_far) {
                worst = Some((off, *point));
            }
        }
    }
    if let Some((off, at)) = worst {
        found.push(format!("{panel} {name} off by {off:.4} at ({:.1}, {:.1})", at.x, at.y));
    }
}

/// Every so many points of a line are looked at.
const EVERY: usize = 25;

/// The distance to the other line, looked for where it has come as far.
fn near(point: Point, part: f64, other: &[Point]) -> f64 {
    /// Both lines come to the same place at nearly the same part of their points.
    const ABOUT: usize = 250;
    let middle = (part * (other.len() - 1) as f64) as usize;
    let (from, to) = (middle.saturating_sub(ABOUT), (middle + ABOUT + 1).min(other.len()));
    distance_to(point, &other[from..to])
}

/// Does by hand what one parameter does, on every body and at every amount, and compares. The draft without the
/// parameter must be told apart from the paper at the ordinary amount, or the comparison proves nothing.
pub(crate) fn by_hand(
    key: Key,
    ordinary: f64,
    amounts: &[f64],
    method: impl Fn(&mut Leg, f64),
    allowed: impl Fn(&Leg, f64) -> Allowed,
) {
    let mut wrong = Vec::new();
    for fitting in fittings() {
        for amount in amounts.iter().chain([&ordinary]) {
            let mut paper = fitting.paper();
            let allowed = allowed(&paper, *amount);
            method(&mut paper, *amount);
            let found = differences(&paper, &fitting.drafted(&[(key, *amount)]), &allowed);
            wrong.extend(found.iter().map(|what| format!("{}, {key} {amount}: {what}", fitting.name)));
            if *amount == ordinary {
                told_apart(&paper, fitting, &allowed, key);
            }
        }
    }
    report(&wrong);
}

/// The paper is not mistaken for the draft without the parameter.
pub(crate) fn told_apart(paper: &Leg, fitting: &Fitting, allowed: &Allowed, key: Key) {
    assert!(
        !differences(paper, &fitting.base, allowed).is_empty(),
        "{}: `{key}` could be left out and nobody would see it",
        fitting.name
    );
}

/// Fails with what was found, the first of it.
pub(crate) fn report(wrong: &[String]) {
    /// As much as a person reads.
    const SHOWN: usize = 40;
    let shown = std::env::var("HAND_ALL").map_or(SHOWN, |_| usize::MAX);
    assert!(
        wrong.is_empty(),
        "{} differences\n{}",
        wrong.len(),
        wrong.iter().take(shown).cloned().collect::<Vec<_>>().join("\n")
    );
}

#[test]
fn the_base_outline_closed_again_without_a_cut() {
    let mut wrong = Vec::new();
    for fitting in fittings() {
        let mut paper = fitting.paper();
        paper.close();
        let mut allowed =
            Allowed { points: 0.002, lengths: 0.002, curves: 0.002, blended: 0.008, blends: Vec::new() };
        for panel in Panel::ALL {
            // The top of an inseam that yields is swept again on paper.
            let top = paper.sheet(*panel).crotch_point().y;
            allowed = allowed.blend(*panel, Edge::Inseam, top - 1.0, top + 8.0);
        }
        wrong.extend(
            differences(&paper, &fitting.base, &allowed)
                .iter()
                .map(|what| format!("{}: {what}", fitting.name)),
        );
    }
    report(&wrong);
}
