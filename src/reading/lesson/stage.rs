//! Pictures of the paper as it stands after so many steps: what is new is strong, what was there before is faint.

use kurbo::{Affine, BezPath, Circle, Line, ParamCurve as _, Point, Rect, Shape as _, Vec2};

use super::Class;
use crate::{
    drawing::{Align, Drawing, Ink, Labels, Layer, Pen, Shade, Text, Wording},
    paper::{
        construction_marks::line_of,
        language::{Language, SHEET},
        panel_marks,
        spread::spread,
    },
    recipe::{PointId, PointRule, Reach, Step},
    terms::{Edge, Level, Panel, Word},
    voice::{listed, spoken},
};

pub(super) const LANGUAGE: &Language = &SHEET;
/// What is shown, without the names of the levels, cm.
const LARGEST: (f64, f64) = (6.6, 5.4);
/// A whole leg may be higher, cm.
const TALLEST: f64 = 9.0;
/// Larger than this a part of a leg is no longer known as one.
const LARGEST_SCALE: f64 = 0.3;
/// Room for the names of the levels, cm.
const NAMES: f64 = 1.9;
/// Round the points shown, cm of the body.
const AROUND: f64 = 4.0;
/// Half a cross at a point, and the dot of a new one, cm.
const CROSS: f64 = 0.055;
const DOT: f64 = 0.065;
/// An earlier line: it must be seen on a poor print.
const EARLIER: Pen = Pen { width: 0.018, ..LANGUAGE.construction };
/// A finished edge under a newer one.
const DRAWN: Pen = Pen::new(0.022, Ink::Middle);

/// The paper of a panel with what is drawn so far. x = 0 is the construction's first point.
pub(super) struct Stage<'a> {
    class: &'a Class<'a>,
    panel: Panel,
    /// So many steps are done.
    done: usize,
}

/// A length that a step lays out, and on which part of its line.
pub(super) struct Laid {
    pub figure: String,
    pub along: Along,
}

/// Part of the line of a step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Along {
    /// Level.
    Across,
    /// Upright.
    Upright,
    /// All of it.
    Whole,
}

/// A picture while it is drawn.
pub(super) struct Sheet {
    /// The part of the body's paper that is shown.
    shown: Rect,
    /// From there to the picture.
    pub fit: Affine,
    levels: Layer,
    earlier: Layer,
    pub new: Layer,
    points: Layer,
    words: Layer,
    labels: Labels,
}

impl<'a> Stage<'a> {
    pub(super) fn new(class: &'a Class<'a>, panel: Panel, done: usize) -> Self {
        Self { class, panel, done }
    }

    /// The level lines alone.
    pub(super) fn levels_alone(&self) -> Drawing {
        let mut sheet = self.sheet(Rect::from_points((0.0, 0.0), (0.0, f64::INFINITY)), &[]);
        let hem = self.class.draft().shape.levels[Level::Hem];
        let upright = Line::new((0.0, 0.0), (0.0, hem)).to_path(0.1);
        sheet.new.line(sheet.fit * upright, LANGUAGE.outline);
        let start = self.class.point_name(PointId(0));
        sheet.point(Point::ORIGIN, &start, true);
        sheet.finished("The level lines", "An upright line with the level lines squared out of it.")
    }

    /// The step that makes a point.
    pub(super) fn step(&self, id: PointId, rule: &PointRule, laid: &[Laid]) -> Drawing {
        let made = &self.class.draft().plan.construction;
        let at = |id: PointId| made.points[id.0];
        let path = match rule {
            // What is measured is the way from the second point; the line itself was there.
            PointRule::Toward { toward, reach: Reach::Past(_), .. } => {
                Line::new(at(*toward), at(id)).to_path(0.1)
            }
            _ => line_of(rule, at(id), &at),
        };
        let starts: Vec<PointId> = rule.points().collect();
        let focus = starts
            .iter()
            .map(|start| at(*start))
            .fold(path.bounding_box().union_pt(at(id)), |all, point| all.union_pt(point));
        let mut sheet = self.sheet(focus, &[]);
        sheet.new.line(sheet.fit * path.clone(), LANGUAGE.outline);
        sheet.labels.spare(&(sheet.fit * path.clone()));
        let name = self.class.point_name(id);
        sheet.point(at(id), &name, true);
        for start in &starts {
            sheet.point(at(*start), &self.class.point_name(*start), false);
        }
        for one in laid {
            sheet.figure(&path, one);
        }
        let from: Vec<String> = starts.iter().map(|start| self.class.point_name(*start)).collect();
        let description = format!("{name} marked from {} on the paper of the {}.", listed(&from), self.panel);
        sheet.finished("", &description)
    }

    /// An edge of the joined panel, over the edges drawn before it.
    pub(super) fn edge(&self, path: &BezPath, before: &[BezPath], description: &str) -> Drawing {
        let place = self.class.to_construction(self.panel);
        let mut sheet = self.sheet((place * path.clone()).bounding_box(), &[]);
        for earlier in before {
            sheet.earlier.line(sheet.fit * place * earlier.clone(), DRAWN);
        }
        sheet.new.line(sheet.fit * place * path.clone(), LANGUAGE.outline);
        sheet.finished("", description)
    }

    /// An empty sheet that shows what is drawn so far, as much of the leg as the focus asks for.
    pub(super) fn sheet(&self, focus: Rect, more: &[Point]) -> Sheet {
        let shown = self.shown(focus, more);
        let whole = shown.height() > 80.0;
        let scale = (LARGEST.0 / shown.width())
            .min(if whole { TALLEST } else { LARGEST.1 } / shown.height())
            .min(LARGEST_SCALE);
        let fit = Affine::scale(scale) * Affine::translate(-shown.origin().to_vec2());
        let size = shown.size() * scale;
        let paper = Rect::new(0.0, 0.0, size.width, size.height);
        let mut sheet = Sheet {
            shown,
            fit,
            levels: Layer::new("Levels"),
            earlier: Layer::new("Earlier"),
            new: Layer::new("New"),
            points: Layer::new("Points"),
            words: Layer::new("Names"),
            labels: Labels::new(paper, 0.06),
        };
        self.draw_levels(&mut sheet);
        self.draw_earlier(&mut sheet);
        sheet
    }

    /// The upper part, the lower part or the whole leg, whichever has all of the focus.
    fn shown(&self, focus: Rect, more: &[Point]) -> Rect {
        let levels = &self.class.draft().shape.levels;
        let points = self.class.draft().plan.construction.points.iter().chain(more);
        let top = points.clone().map(|point| point.y).fold(0.0, f64::min) - AROUND;
        let bottom = levels[Level::Hem] + AROUND;
        let (crotch, knee) = (levels[Level::Crotch] + 1.5 * AROUND, levels[Level::Knee] - 2.0 * AROUND);
        let (from, to) = if focus.y1 <= crotch {
            (top, crotch)
        } else if focus.y0 >= knee {
            (knee, bottom)
        } else {
            (top, bottom)
        };
        let inside = points.filter(|point| (from..=to).contains(&point.y));
        let (left, right) =
            inside.fold((focus.x0, focus.x1), |(left, right), point| (left.min(point.x), right.max(point.x)));
        Rect::new(left - AROUND, from, right + AROUND, to)
    }

    fn draw_levels(&self, sheet: &mut Sheet) {
        let recipe = &self.class.draft().recipe;
        let lines = &self.class.draft().plan.construction.lines;
        let mut named: Vec<(f64, String)> = recipe
            .lines
            .iter()
            .zip(lines)
            .filter(|(_, y)| (sheet.shown.y0..=sheet.shown.y1).contains(y))
            .map(|(line, y)| ((sheet.fit * Point::new(0.0, *y)).y, spoken(&line.name)))
            .collect();
        named.sort_by(|a, b| a.0.total_cmp(&b.0));
        let size = LANGUAGE.small;
        let wanted: Vec<f64> = named.iter().map(|(y, _)| *y).collect();
        let right = (sheet.fit * Point::new(sheet.shown.x1, 0.0)).x;
        for ((y, name), at) in named.iter().zip(spread(&wanted, 1.15 * size)) {
            let mut line = BezPath::new();
            line.move_to((-0.3, at));
            line.line_to((0.0, *y));
            line.line_to((right, *y));
            sheet.labels.spare(&line);
            sheet.levels.line(line, LANGUAGE.level);
            let text = Text::new(Point::new(-0.36, at + 0.36 * size), size, short_line(name).as_str());
            sheet.words.text(text.aligned(Align::End).inked(Ink::Dark));
        }
    }

    fn draw_earlier(&self, sheet: &mut Sheet) {
        let made = &self.class.draft().plan.construction;
        let at = |id: PointId| made.points[id.0];
        if self.panel == Panel::Back {
            let place = sheet.fit * self.class.to_construction(Panel::Front);
            let front = &self.class.joined.front;
            for path in [panel_marks::sewing_line(front), panel_marks::inside(front)] {
                sheet.earlier(place * path, EARLIER);
            }
        }
        for step in self.class.draft().recipe.steps.iter().take(self.done) {
            let Step::Point { id, rule, entry, .. } = step else { continue };
            if entry.panel == self.panel {
                sheet.earlier(sheet.fit * line_of(rule, at(*id), &at), EARLIER);
            }
            sheet.cross(at(*id));
        }
    }
}

/// What a level is called where there is little room.
fn short_line(name: &str) -> String {
    name.strip_suffix(" line").unwrap_or(name).to_owned()
}

impl Sheet {
    fn earlier(&mut self, path: BezPath, pen: Pen) {
        self.labels.spare(&path);
        self.earlier.line(path, pen);
    }

    fn cross(&mut self, at: Point) {
        if !self.shown.contains(at) {
            return;
        }
        let at = self.fit * at;
        let mut cross = BezPath::new();
        for arm in [Vec2::new(CROSS, 0.0), Vec2::new(0.0, CROSS)] {
            cross.move_to(at - arm);
            cross.line_to(at + arm);
        }
        self.points.line(cross, Pen::new(0.018, Ink::Middle));
    }

    /// A point with its name: a dot and bold letters where it is new.
    pub(super) fn point(&mut self, at: Point, name: &str, new: bool) {
        let at = self.fit * at;
        if new {
            self.points.area(Circle::new(at, DOT).to_path(0.005), Shade::Black);
        }
        let text = Text::new(Point::ORIGIN, LANGUAGE.small, name);
        let text = if new { text.bold() } else { text };
        let spots = text.beside(at, 0.1).into_iter().chain(text.beside(at, 0.3));
        self.words.marks.extend(self.labels.place(spots).map(crate::drawing::Mark::Text));
    }

    /// A length beside the middle of the part that it was laid out on.
    fn figure(&mut self, path: &BezPath, laid: &Laid) {
        /// A part is level or upright when it leaves the direction by less, cm.
        const STRAY: f64 = 1e-6;
        let path = self.fit * path.clone();
        let parts = path.segments().map(|part| Line::new(part.eval(0.0), part.eval(1.0)));
        let fits = |part: &Line| match laid.along {
            Along::Across => (part.p1.y - part.p0.y).abs() < STRAY,
            Along::Upright => (part.p1.x - part.p0.x).abs() < STRAY,
            Along::Whole => true,
        };
        let longest = parts.filter(fits).max_by(|a, b| a.length().total_cmp(&b.length()));
        let Some(line) = longest else { return };
        let text = Text::new(Point::ORIGIN, LANGUAGE.text, laid.figure.as_str());
        let spots: Vec<Text> = [0.5, 0.35, 0.65]
            .iter()
            .flat_map(|part| text.beside(line.p0.lerp(line.p1, *part), 0.1))
            .collect();
        self.words.marks.extend(self.labels.place(spots).map(crate::drawing::Mark::Text));
    }

    /// The picture, cut at its frame.
    pub(super) fn finished(self, title: &str, description: &str) -> Drawing {
        let size = (self.fit * Point::new(self.shown.x1, self.shown.y1)).to_vec2();
        let bounds = Rect::new(-NAMES, -0.15, size.x, size.y);
        let layers = vec![self.levels, self.earlier, self.new, self.points, self.words];
        Drawing { title: Wording::line(title), description: Wording::paragraph(description), bounds, layers }
    }
}

/// What an edge is called in a sentence.
pub(super) fn edge_name(edge: Edge) -> String {
    spoken(edge.key())
}
