//! The words on the panels, each where it hides nothing: names, lengths of the edges, darts, points.

use kurbo::{Line, Point, Rect, Shape as _, Vec2};

use super::{LANGUAGE, Placed, footprint, layers::Layers};
use crate::{
    curve::Chain,
    drawing::{Ink, Labels, Layer, Mark, Text},
    paper::edge_words::along,
    terms::{Edge, Level, Panel, Role},
    told::{Subject, panel_name},
};

/// Least distance between two labels, cm.
const GAP: f64 = 0.18;
/// From an edge to the words along it, cm.
const INSET: f64 = 0.3;

/// Places every label of the panels on the sheet.
pub(super) fn place(subject: &Subject<'_>, panels: &[Placed<'_>], sheet: Rect, layers: &mut Layers) {
    let mut labels = Labels::new(sheet.inflate(-0.3, -0.3), GAP);
    for mark in layers.all().flat_map(|layer| &layer.marks) {
        if let Some(print) = footprint(mark) {
            labels.keep_off(print);
        }
    }
    for mark in &layers.levels.marks {
        if let Mark::Line { path, .. } = mark {
            labels.spare(path);
        }
    }
    for line in panels.iter().flat_map(Placed::lines) {
        labels.spare(&line);
    }
    for panel in panels {
        name_panel(subject, panel, &mut labels, &mut layers.labels);
        for spots in edge_spots(subject, panel).into_iter().chain(dart_spots(subject, panel)) {
            layers.labels.marks.extend(labels.place(spots).map(Mark::Text));
        }
    }
    for panel in panels {
        for level in &panel.construction.levels {
            let line = panel.place * level.line;
            let text = Text::new(Point::ORIGIN, LANGUAGE.small, &level.label).inked(Ink::Middle);
            let ends = text.beside(line.p1, 0.15).into_iter().chain(text.beside(line.p0, 0.15));
            layers.points.marks.extend(labels.place(ends).map(Mark::Text));
        }
        for point in &panel.construction.points {
            name_point(panel.place * point.at, &point.label, &mut labels, &mut layers.points);
        }
    }
}

/// Names a point close by; where that would hide a line, farther off at the end of a thin one.
fn name_point(at: Point, label: &str, labels: &mut Labels, layer: &mut Layer) {
    /// Distances at which a name still belongs to its point by itself, cm.
    const NEAR: [f64; 3] = [0.16, 0.3, 0.45];
    /// Distances at which it takes a line to tell, cm.
    const FAR: [f64; 5] = [0.7, 1.0, 1.3, 1.7, 2.1];
    /// Distances for a crowd, cm.
    const FARTHEST: [f64; 6] = [0.9, 1.7, 2.6, 3.2, 4.2, 5.5];
    let text = Text::new(Point::ORIGIN, LANGUAGE.small, label).inked(Ink::Middle);
    let ring = |gap: &f64| text.beside(at, *gap);
    let near = || NEAR.iter().flat_map(ring);
    if let Some(near) = labels.place_clear(near()) {
        layer.text(near);
        return;
    }
    let far = |labels: &Labels, gaps: &[f64]| {
        let spots = gaps.iter().flat_map(ring);
        spots.filter(|spot| labels.lets_pass(lead(at, spot))).collect::<Vec<_>>()
    };
    let spots = far(labels, &FAR);
    if let Some(far) = labels.place_clear(spots) {
        layer.line(lead(at, &far).to_path(0.1), LANGUAGE.construction);
        layer.text(far);
        return;
    }
    let spots = far(labels, &FARTHEST);
    if let Some(near) = labels.place(near()) {
        layer.text(near);
    } else if let Some(far) = labels.place(spots) {
        layer.line(lead(at, &far).to_path(0.1), LANGUAGE.construction);
        layer.text(far);
    }
}

/// The line from a point to its name.
fn lead(at: Point, name: &Text) -> Line {
    let bounds = name.footprint().bounds();
    Line::new(at, Point::new(at.x.clamp(bounds.x0, bounds.x1), at.y.clamp(bounds.y0, bounds.y1)))
}

/// The panel's name, the body's and the block's under one another, in the half of the leg towards the side.
fn name_panel(subject: &Subject<'_>, panel: &Placed<'_>, labels: &mut Labels, layer: &mut Layer) {
    /// From the crease to the words, cm.
    const OFF_CREASE: f64 = 0.8;
    let levels = &subject.draft.shape.levels;
    let (top, bottom) = (levels[Level::Crotch], levels[Level::Knee]);
    let width = panel.shape.roles[Role::SideKnee].x.max(4.0) - OFF_CREASE - 1.0;
    let lines = [
        Text::new(Point::ORIGIN, LANGUAGE.title, panel_name(panel.shape.panel, subject.draft.side)).bold(),
        Text::new(Point::ORIGIN, 1.5 * LANGUAGE.head, subject.name()),
        Text::new(Point::ORIGIN, 1.5 * LANGUAGE.head, format!("block {}", subject.draft.recipe.name)),
    ];
    let mut from: Option<Point> = None;
    for line in lines {
        let line = line.cut_to(width);
        let below = from.map(|above: Point| above + Vec2::new(0.0, 1.7 * line.size));
        let parts = [0.3, 0.35, 0.4, 0.45, 0.25, 0.5, 0.2, 0.55, 0.6, 0.7, 0.15, 0.8];
        let others =
            parts.iter().map(|part| panel.place * Point::new(OFF_CREASE, top + part * (bottom - top)));
        let spots = below.into_iter().chain(others).map(|at| Text { at, ..line.clone() });
        if let Some(placed) = labels.place(spots) {
            from = Some(placed.at);
            layer.text(placed);
        }
    }
}

/// What each edge is and how long it is sewn.
fn edge_spots(subject: &Subject<'_>, panel: &Placed<'_>) -> Vec<Vec<Text>> {
    let shape = panel.shape;
    let words = |name: &str, cm: f64| {
        Text::new(Point::ORIGIN, LANGUAGE.text, format!("{name} {}", subject.length(cm)))
    };
    let centre = match shape.panel {
        Panel::Front => "centre front",
        Panel::Back => "centre back",
    };
    let straight = Chain::of(shape.crotch_seam.cubics()[shape.crotch_seam.cubics().len() - 1]);
    let name = Text::new(Point::ORIGIN, LANGUAGE.text, centre);
    let named = [
        (Edge::SideSeam, 0.45, "side seam", shape.side_seam.length()),
        (Edge::Inseam, 0.45, "inseam", shape.inseam.length()),
        (Edge::CrotchSeam, 0.25, "crotch seam", shape.crotch_seam.length()),
        (Edge::Hem, 0.25, "hem", shape.hem.length()),
        (Edge::Waist, 0.5, "waist, sewn", shape.sewn_waist_length()),
    ];
    let mut all = vec![spots(&straight, 0.7, &name, panel)];
    all.extend(
        named
            .iter()
            .map(|(edge, first, title, cm)| spots(shape.edge(*edge), *first, &words(title, *cm), panel)),
    );
    let crease = Chain::of(crate::curve::straight(shape.grain()[1], shape.grain()[0]));
    all.push(spots(
        &crease,
        0.45,
        &Text::new(Point::ORIGIN, LANGUAGE.text, "crease and grain").inked(Ink::Dark),
        panel,
    ));
    all
}

fn spots(edge: &Chain, first: f64, text: &Text, panel: &Placed<'_>) -> Vec<Text> {
    along(edge, first, &[INSET, 2.0 * INSET, 1.2, 2.0], text, panel.place)
}

/// How wide and how long each dart is.
fn dart_spots(subject: &Subject<'_>, panel: &Placed<'_>) -> Vec<Vec<Text>> {
    let print = |cm| subject.length(cm);
    panel
        .shape
        .darts
        .iter()
        .map(|dart| {
            let words = format!("dart {} wide, {} long", print(dart.intake()), print(dart.length()));
            let leg = Chain::of(crate::curve::straight(dart.apex, dart.legs[1]));
            let text = Text::new(Point::ORIGIN, LANGUAGE.small, words);
            along(&leg, 0.5, &[0.3, 0.6, 1.0, 1.6], &text, panel.place)
        })
        .collect()
}
