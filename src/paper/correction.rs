//! A small picture of what one correction does.

use kurbo::{Affine, BezPath, Line, ParamCurve, ParamCurveNearest, Point, Rect, Shape as _, Vec2};

use super::{
    language::{Language, SHEET},
    panel_marks,
    spread::spread,
};
use crate::{
    draft::{PanelShape, Shape},
    drawing::{Align, Drawing, Layer, Shade, Text, Wording},
    terms::{Level, Panel, Side, Word},
    told::panel_name,
};

const LANGUAGE: &Language = &SHEET;
/// A move that the eye finds in the picture, cm.
const SEEN: f64 = 0.1;
/// The most that a panel is enlarged: more, and a panel of a small correction is no longer known as one.
const LARGEST_SCALE: f64 = 0.3;
/// Shown of a panel above and below what moved, and the least height shown, cm of the body.
const AROUND: f64 = 5.0;
const LEAST_HEIGHT: f64 = 28.0;
/// Between two panels, cm of the body.
const BETWEEN: f64 = 6.0;
/// Room for the names of the levels, cm.
const NAMES: f64 = 1.3;
/// Beside the picture, and the band under it in which the panels are named, cm.
const MARGIN: f64 = 0.3;
const NAME_BAND: f64 = 0.6;

/// The panels that a correction changes, cut out above and below what moved, no wider and no higher than `largest`, cm:
/// the old outline thin and dashed, the new one strong. `what` says in a few words what was done.
pub(crate) fn correction_within(largest: (f64, f64), what: &str, old: &Shape, new: &Shape) -> Drawing {
    let changes: Vec<(Panel, Rect)> = Panel::ALL
        .iter()
        .filter_map(|panel| Some((*panel, changed(old.panel(*panel), new.panel(*panel))?)))
        .collect();
    let of = |shape: &Shape, panel| panel_marks::outline(shape.panel(panel)).bounding_box();
    let whole = |panel| of(old, panel).union(of(new, panel));
    let panels: Vec<Panel> = match &changes[..] {
        [] => Panel::ALL.to_vec(),
        some => some.iter().map(|(panel, _)| *panel).collect(),
    };
    let all = panels.iter().map(|panel| whole(*panel)).reduce(|a, b| a.union(b)).unwrap_or_default();
    let rows = changes.iter().map(|(_, rect)| *rect).reduce(|a, b| a.union(b)).unwrap_or(all);
    let (top, bottom) = shown_rows(rows, all);

    let mut places = Vec::with_capacity(panels.len());
    let mut right = 0.0;
    for panel in &panels {
        let reach = widths(&[old.panel(*panel), new.panel(*panel)], top, bottom).unwrap_or(whole(*panel));
        places.push(Vec2::new(right - reach.x0, 0.0));
        right += reach.width() + BETWEEN;
    }
    let width = right - BETWEEN;
    let scale = (largest.0 / width).min(largest.1 / (bottom - top)).min(LARGEST_SCALE);
    let fit = Affine::scale(scale) * Affine::translate((0.0, -top));
    let height = scale * (bottom - top);

    let mut levels = Layer::new("Levels");
    let mut earlier = Layer::new("Old");
    let mut newer = Layer::new("New");
    let mut words = Layer::new("Names");
    draw_levels(new, fit, Rect::new(0.0, 0.0, scale * width, height), &mut levels, &mut words);
    let mut names = Vec::with_capacity(panels.len());
    for (panel, shift) in panels.iter().zip(&places) {
        let place = fit * Affine::translate(*shift);
        let (was, is) = (old.panel(*panel), new.panel(*panel));
        newer.line((place * panel_marks::crease(is)).to_path(0.1), LANGUAGE.crease);
        newer.line(place * panel_marks::sewing_line(is), LANGUAGE.outline);
        newer.line(place * panel_marks::inside(is), LANGUAGE.inside);
        for path in [panel_marks::sewing_line(was), panel_marks::inside(was)] {
            earlier.line(place * path, LANGUAGE.earlier);
        }
        names.push((place * Point::new(0.0, bottom)).x);
    }
    // The panels run on below what is shown; their names stand on paper of their own.
    let under = Rect::new(-NAMES - MARGIN, height, scale * width + MARGIN, height + NAME_BAND);
    // It reaches over the edge of the picture, where a rounded dot of a line would show.
    words.area(Rect { y1: under.y1 + 0.1, ..under }.to_path(0.1), Shade::White);
    for (panel, x) in panels.iter().zip(names) {
        let at = Point::new(x, height + 0.7 * NAME_BAND);
        words
            .text(Text::new(at, LANGUAGE.head, panel_name(*panel, Side::Both)).aligned(Align::Middle).bold());
    }
    let description = format!(
        "{what}: the outline before in thin dashed lines, after in strong lines. Drawn: {}.",
        panels.iter().map(|panel| panel.key()).collect::<Vec<_>>().join(" and ")
    );
    let bounds = Rect { y0: 0.0, ..under };
    Drawing {
        bounds,
        ..Drawing::around(Wording::line(what), &description, vec![levels, newer, earlier, words], 0.0)
    }
}

/// What rows of the body are shown: what moved, with something round it.
fn shown_rows(rows: Rect, all: Rect) -> (f64, f64) {
    let all = all.inflate(0.0, 1.5);
    let lacking = (0.5 * (LEAST_HEIGHT - rows.height())).max(AROUND);
    let (top, bottom) = (rows.y0 - lacking, rows.y1 + lacking);
    // What would lie beyond an end of the panel is shown at the other.
    let (over, under) = ((all.y0 - top).max(0.0), (bottom - all.y1).max(0.0));
    ((top - under).max(all.y0), (bottom + over).min(all.y1))
}

/// The rectangle round every place of the outline or the darts that moved.
fn changed(old: &PanelShape, new: &PanelShape) -> Option<Rect> {
    let one_way = |from: &PanelShape, to: &PanelShape| {
        let there = to.outline();
        let gap = |point: &Point| {
            let distances = there.iter().map(|piece| piece.nearest(*point, 1e-4).distance_sq);
            distances.fold(f64::INFINITY, f64::min).sqrt()
        };
        points(from).filter(|point| gap(point) > SEEN).collect::<Vec<_>>()
    };
    let moved = |a: &PanelShape, b: &PanelShape| {
        let here = a.darts.iter().map(|dart| dart.apex);
        here.zip(b.darts.iter().map(|dart| dart.apex))
            .filter(|(a, b)| a.distance(*b) > SEEN)
            .map(|(a, _)| a)
            .collect::<Vec<_>>()
    };
    let all = [one_way(old, new), one_way(new, old), moved(old, new), moved(new, old)];
    all.iter().flatten().map(|point| Rect::from_points(*point, *point)).reduce(|a, b| a.union(b))
}

/// Points along the outline, close together.
fn points(panel: &PanelShape) -> impl Iterator<Item = Point> {
    const PARTS: u32 = 12;
    let along =
        |piece: kurbo::CubicBez| (0..=PARTS).map(move |part| piece.eval(f64::from(part) / f64::from(PARTS)));
    panel.outline().into_iter().flat_map(along)
}

/// The rectangle round what lies between two heights.
fn widths(panels: &[&PanelShape], top: f64, bottom: f64) -> Option<Rect> {
    panels
        .iter()
        .flat_map(|panel| points(panel))
        .filter(|point| (top..=bottom).contains(&point.y))
        .map(|point| Rect::from_points(point, point))
        .reduce(|a, b| a.union(b))
}

/// The levels of the new outline that are in the picture.
fn draw_levels(new: &Shape, fit: Affine, shown: Rect, lines: &mut Layer, words: &mut Layer) {
    let text = LANGUAGE.text;
    let height = |level: Level| (fit * Point::new(0.0, new.levels[level])).y;
    let inside = |level: &Level| (0.5 * text..=shown.y1 - 0.5 * text).contains(&height(*level));
    let mut levels: Vec<Level> = Level::ALL.iter().copied().filter(inside).collect();
    levels.sort_by(|a, b| height(*a).total_cmp(&height(*b)));
    let wanted: Vec<f64> = levels.iter().map(|level| height(*level)).collect();
    for (level, at) in levels.iter().zip(spread(&wanted, 1.2 * text)) {
        let y = height(*level);
        let mut line = BezPath::new();
        line.move_to((-0.35, at));
        line.line_to((-0.1, y));
        lines.line(line, LANGUAGE.level);
        lines.line(Line::new((-0.1, y), (shown.x1, y)).to_path(0.1), LANGUAGE.level);
        let label = Text::new(Point::new(-0.42, at + 0.36 * text), text, level.key());
        words.text(label.aligned(Align::End));
    }
}
