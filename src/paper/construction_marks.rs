//! The construction as the recipe gives it, in a panel's own place: every line that a step squares or lays, and every
//! point with its name.

use kurbo::{Arc, BezPath, Line, Point, Shape as _};

use crate::{
    draft::Draft,
    recipe::{Entry, PointId, PointRule, Reach, Step, Track},
    terms::{Level, Panel, Word},
    voice::spoken,
};

/// A point of the construction.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct NamedPoint {
    /// Where, from the crease.
    pub at: Point,
    /// The number of its step in the recipe's list and its name. A point of the other panel that a step starts from has
    /// its name alone.
    pub label: String,
}

/// A level line of the recipe that is no level of the trade.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct NamedLine {
    /// From the first to the last point on it.
    pub line: Line,
    /// Its name.
    pub label: String,
}

/// What is drawn of the construction of one panel.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct ConstructionMarks {
    /// The lines of the steps in order.
    pub lines: Vec<BezPath>,
    /// The points in order.
    pub points: Vec<NamedPoint>,
    /// Level lines besides the levels.
    pub levels: Vec<NamedLine>,
}

impl ConstructionMarks {
    /// The construction of a panel.
    pub(crate) fn of(draft: &Draft, panel: Panel) -> Self {
        let at = from_crease(draft, panel);
        let mut marks = Self { lines: Vec::new(), points: Vec::new(), levels: Vec::new() };
        let own: Vec<(PointId, &PointRule, &Entry)> = draft
            .recipe
            .steps
            .iter()
            .filter_map(|step| match step {
                Step::Point { id, rule, entry, .. } if entry.panel == panel => Some((*id, rule, entry)),
                Step::Point { .. } | Step::Quantity { .. } | Step::Level { .. } => None,
            })
            .collect();
        let mut starts: Vec<PointId> = own.iter().flat_map(|(_, rule, _)| rule.points()).collect();
        starts.retain(|start| own.iter().all(|(id, ..)| id != start));
        starts.sort_unstable();
        starts.dedup();
        for id in starts {
            marks.points.push(NamedPoint { at: at(id), label: spoken(draft.recipe.point_name(id)) });
        }
        for (id, rule, entry) in own {
            marks.lines.push(line_of(rule, at(id), &at));
            marks.points.push(NamedPoint { at: at(id), label: numbered(entry) });
        }
        marks.levels = marks.own_levels(draft);
        marks.points = united(marks.points);
        marks
    }

    fn own_levels(&self, draft: &Draft) -> Vec<NamedLine> {
        /// How far a line runs on beyond its last point, cm.
        const BEYOND: f64 = 1.5;
        let lines = draft.recipe.lines.iter().zip(&draft.plan.construction.lines);
        let is_level = |y: f64| Level::ALL.iter().any(|level| (draft.shape.levels[*level] - y).abs() < 0.05);
        lines
            .filter(|(_, y)| !is_level(**y))
            .filter_map(|(line, y)| {
                let on = self.points.iter().map(|point| point.at).filter(|at| (at.y - y).abs() < 1e-6);
                let (from, to) = on.fold((f64::INFINITY, f64::NEG_INFINITY), |(from, to), at| {
                    (from.min(at.x), to.max(at.x))
                });
                (from <= to).then(|| NamedLine {
                    line: Line::new((from - BEYOND, *y), (to + BEYOND, *y)),
                    label: spoken(&line.name),
                })
            })
            .collect()
    }
}

/// Points in one place as one, with all their names.
fn united(points: Vec<NamedPoint>) -> Vec<NamedPoint> {
    /// Nearer than a pencil can show, cm.
    const SAME_PLACE: f64 = 0.01;
    let mut united: Vec<NamedPoint> = Vec::with_capacity(points.len());
    for point in points {
        match united.iter_mut().find(|known| known.at.distance(point.at) < SAME_PLACE) {
            Some(known) => known.label = format!("{}, {}", known.label, point.label),
            None => united.push(point),
        }
    }
    united
}

/// The number of the step before the name; a name that is a number itself stands alone.
fn numbered(entry: &Entry) -> String {
    if entry.makes.contains(|letter: char| letter.is_ascii_digit()) {
        spoken(&entry.makes)
    } else {
        format!("{} {}", entry.number, spoken(&entry.makes))
    }
}

/// What a hand draws for one step, and the point that it makes, from the crease of its panel; `None` for a step that only
/// works out a length.
#[cfg(feature = "serve")]
pub(crate) fn drawn_for(draft: &Draft, step: &Step) -> Option<(BezPath, Point)> {
    let Step::Point { id, rule, entry, .. } = step else { return None };
    let at = from_crease(draft, entry.panel);
    Some((line_of(rule, at(*id), &at), at(*id)))
}

/// Where a point of the construction lies, from the crease of a panel.
fn from_crease(draft: &Draft, panel: Panel) -> impl Fn(PointId) -> Point {
    let made = &draft.plan.construction;
    let rule = match panel {
        Panel::Front => Some(&draft.recipe.front),
        Panel::Back => draft.recipe.back.as_ref(),
    };
    let crease = rule.map_or(0.0, |rule| made.points[rule.crease.0].x);
    move |id: PointId| made.points[id.0] - kurbo::Vec2::new(crease, 0.0)
}

/// What a hand draws for a step that makes `point`.
pub(crate) fn line_of(rule: &PointRule, point: Point, at: &impl Fn(PointId) -> Point) -> BezPath {
    match rule {
        // Squared up or down first, then measured across.
        PointRule::From { from, .. } => {
            let from = at(*from);
            let mut path = BezPath::new();
            path.move_to(from);
            let corner = Point::new(from.x, point.y);
            if corner != from && corner != point {
                path.line_to(corner);
            }
            path.line_to(point);
            path
        }
        PointRule::Diagonal { from, .. } => Line::new(at(*from), point).to_path(0.1),
        PointRule::Span { from, on, .. } => {
            let mut path = Line::new(at(*from), point).to_path(0.1);
            path.extend(track_of(on, point, at));
            path
        }
        PointRule::Toward { from, toward, reach } => {
            let ends = match reach {
                Reach::Part { .. } | Reach::Along(_) => farthest([at(*from), at(*toward), point]),
                Reach::Past(_) => Line::new(at(*from), point),
            };
            ends.to_path(0.1)
        }
        PointRule::Meet { line, on, .. } => {
            let mut path = track_of(line, point, at);
            path.extend(track_of(on, point, at));
            path
        }
    }
}

/// What a hand draws of a line that is met at `point`; nothing of a level, which is there.
fn track_of(track: &Track, point: Point, at: &impl Fn(PointId) -> Point) -> BezPath {
    /// The compasses strike so far to both sides, radians.
    const STROKE: f64 = 0.12;
    match track {
        Track::Level(_) => BezPath::new(),
        Track::Through([first, second]) => farthest([at(*first), at(*second), point]).to_path(0.1),
        Track::LevelOf(from)
        | Track::UprightOf(from)
        | Track::Square { at: from, .. }
        | Track::Parallel { at: from, .. }
        | Track::Slope { at: from, .. } => Line::new(at(*from), point).to_path(0.1),
        Track::Arc { about, .. } => {
            let centre = at(*about);
            let out = point - centre;
            let arc = Arc::new(centre, (out.hypot(), out.hypot()), out.atan2() - STROKE, 2.0 * STROKE, 0.0);
            arc.to_path(0.001)
        }
    }
}

/// The line between those two of three points of a line that lie farthest apart.
fn farthest([a, b, c]: [Point; 3]) -> Line {
    let longest = |one: Line, other: Line| if other.length() > one.length() { other } else { one };
    longest(longest(Line::new(a, b), Line::new(b, c)), Line::new(a, c))
}
