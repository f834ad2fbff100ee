//! The construction of a recipe as far as it is drawn, alone on a sheet: to see where a step went wrong.

use kurbo::{Affine, BezPath, Circle, Line, Point, Rect, Shape as _, Vec2};

use super::{
    construction_marks::line_of,
    language::{Language, SHEET},
    spread::spread,
};
use crate::{
    drawing::{Align, Drawing, Ink, Labels, Layer, Mark, Shade, Text, Wording},
    recipe::{Construction, PointId, Recipe, Step},
    voice::spoken,
};

const LANGUAGE: &Language = &SHEET;
/// The picture without its margins, cm.
const LARGEST: (f64, f64) = (15.0, 21.0);
/// No part of a leg is drawn larger.
const LARGEST_SCALE: f64 = 0.45;
/// Round what is drawn, cm of the body.
const AROUND: f64 = 3.0;
/// Room for the names of the lines, cm.
const NAMES: f64 = 2.4;
const MARGIN: f64 = 0.25;
const DOT: f64 = 0.06;

/// The level lines, the lines of the steps and the points that `made` holds, the last step strong. x = 0 is the start;
/// the side seam lies to the right.
pub fn construction_picture(recipe: &Recipe, made: &Construction) -> Drawing {
    let at = |id: PointId| made.points.get(id.0).copied().unwrap_or(Point::ORIGIN);
    let shown = made
        .points
        .iter()
        .fold(Rect::from_points((0.0, 0.0), (0.0, 0.0)), |all, point| all.union_pt(*point))
        .inflate(AROUND, AROUND);
    let scale = (LARGEST.0 / shown.width()).min(LARGEST.1 / shown.height()).min(LARGEST_SCALE);
    let fit = Affine::scale(scale) * Affine::translate(-shown.origin().to_vec2());
    let size = shown.size() * scale;
    let paper = Rect::new(0.0, 0.0, size.width, size.height);
    let (mut levels, mut lines, mut points) =
        (Layer::new("Levels"), Layer::new("Lines"), Layer::new("Points"));
    let mut words = Layer::new("Names");
    let mut labels = Labels::new(paper.inflate(0.1, 0.1), 0.06);
    draw_levels(recipe, made, shown, fit, (&mut levels, &mut words, &mut labels));

    let drawn: Vec<(PointId, BezPath)> = recipe
        .steps
        .iter()
        .filter_map(|step| match step {
            Step::Point { id, rule, .. } if id.0 < made.points.len() => {
                Some((*id, fit * line_of(rule, at(*id), &at)))
            }
            _ => None,
        })
        .collect();
    let last = drawn.last().map(|(id, _)| *id);
    for (id, path) in &drawn {
        labels.spare(path);
        lines.line(path.clone(), if Some(*id) == last { LANGUAGE.inside } else { LANGUAGE.construction });
    }
    let mut named: Vec<(Point, String, bool)> = vec![(Point::ORIGIN, spoken(&recipe.start), last.is_none())];
    for (id, _) in &drawn {
        let (place, name) = (at(*id), spoken(recipe.point_name(*id)));
        match named.iter_mut().find(|(known, ..)| known.distance(place) < 0.01) {
            Some((_, names, strong)) => {
                *names = format!("{names}, {name}");
                *strong |= Some(*id) == last;
            }
            None => named.push((place, name, Some(*id) == last)),
        }
    }
    for (place, _, strong) in &named {
        let dot = if *strong { 1.5 * DOT } else { DOT };
        points.area(Circle::new(fit * *place, dot).to_path(0.005), Shade::Black);
    }
    for (place, name, strong) in &named {
        let text = Text::new(Point::ORIGIN, LANGUAGE.small, name.as_str());
        let text = if *strong { text.bold() } else { text };
        let spots = text.beside(fit * *place, 0.1).into_iter().chain(text.beside(fit * *place, 0.3));
        words.marks.extend(labels.place(spots).map(Mark::Text));
    }
    let title = format!("{}: {} points drawn", recipe.name, named.len());
    let description =
        "The construction as far as it is drawn; the last point is the largest, its line the strongest.";
    let bounds = Rect::new(-NAMES, -MARGIN, size.width + MARGIN, size.height + MARGIN);
    Drawing {
        title: Wording::line(&title),
        description: Wording::paragraph(description),
        bounds,
        layers: vec![levels, lines, points, words],
    }
}

fn draw_levels(
    recipe: &Recipe,
    made: &Construction,
    shown: Rect,
    fit: Affine,
    (levels, words, labels): (&mut Layer, &mut Layer, &mut Labels),
) {
    let mut named: Vec<(f64, String)> = recipe
        .lines
        .iter()
        .zip(&made.lines)
        .filter(|(_, y)| (shown.y0..=shown.y1).contains(*y))
        .map(|(line, y)| ((fit * Point::new(0.0, *y)).y, spoken(&line.name)))
        .collect();
    named.sort_by(|a, b| a.0.total_cmp(&b.0));
    let size = LANGUAGE.small;
    let wanted: Vec<f64> = named.iter().map(|(y, _)| *y).collect();
    let right = (fit * Point::new(shown.x1, 0.0)).x;
    for ((y, name), at) in named.iter().zip(spread(&wanted, 1.15 * size)) {
        let mut line = Line::new((-0.3, at), (0.0, *y)).to_path(0.1);
        line.line_to(Point::new(0.0, *y) + Vec2::new(right, 0.0));
        labels.spare(&line);
        levels.line(line, LANGUAGE.level);
        let text = Text::new(Point::new(-0.36, at + 0.36 * size), size, name.as_str());
        words.text(text.aligned(Align::End).inked(Ink::Dark));
    }
}
