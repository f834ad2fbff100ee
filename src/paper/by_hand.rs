//! A correction drawn as the hand does it: where to cut and where the hinge lies, the part moved with paper behind, the
//! new line over the old one, and the other piece where it is touched.

mod canvas;
mod hatch;
mod signs;

use kurbo::{Point, Rect, Shape as _, Vec2};

use self::{
    canvas::{Canvas, NAME},
    signs::Scene,
};
use crate::{
    adjust::{Key, Measure, Parameters},
    curve::Chain,
    draft::{Draft, PanelShape, Plan, Shape, shape},
    drawing::{Align, Drawing, Layer, Shade, Text, Wording},
    hand::{Cut, Step, Work, distance, run, works},
    terms::{Edge, Panel, Role, Word},
    unit::Unit,
};

/// So wide a strip is printed, cm.
const WIDTH: f64 = 10.0;
/// Beside, over and under a picture, for its figures, cm.
const ASIDE: f64 = 0.8;
const OVER: f64 = 0.78;
const UNDER: f64 = 0.12;
/// A row of pictures is no higher, and a panel drawn no larger.
const HIGHEST: f64 = 6.0;
/// Where three in a row would be drawn smaller, two stand in a row, if that is not too high altogether, cm.
const SMALL_SCALE: f64 = 0.062;
const ALL_ROWS: f64 = 9.0;
const LARGEST_SCALE: f64 = 0.2;
/// Shown round what is done, cm of the panel.
const AROUND: f64 = 3.0;
/// An amount is drawn at least so large, as far as that may be, cm on paper; and at most so many times.
const LEAST_GAP: f64 = 0.2;
const MOST_TIMES: u32 = 4;

/// What one picture shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Shows {
    /// Where to cut, and to what places to draw.
    Marked,
    /// The part moved.
    Opened,
    /// The new line over the old one.
    Trued,
}

/// How a strip is read: its signs, and the rules that are not printed in every one.
pub const READING: [&str; 9] = [
    "Cut along the strong line from the scissors on. A full dot in a ring is the hinge or pivot: it is not cut through, and all turns about it.",
    "Hatching is paper that comes in, crossed hatching two papers on each other, dots paper that falls away. A broken line is where the edge was; the strong line is drawn anew.",
    "The bold figure is the amount. Other figures are distances along the edge beside which they stand, the depth of a curve under the straight line between its ends, and over a dart how wide it is. 0 is where a change has run out to nothing.",
    "Pictures with one piece's name show that piece; the last ones may show the other. Where the foot says so the movement is drawn larger than it is: the figures are the true ones.",
    "A crotch curve is drawn along the straight centre line where it begins; at the crotch point it keeps its direction, or turns with its part.",
    "Where the top of an inseam moves, its last 7 cm are led to the crotch point in its old direction, so that the curve still crosses it at the old angle.",
    "A change is run out softly: after a quarter of the way 0.16 of it is left to go or gone, after half of it a half, after three quarters 0.84.",
    "Darts stand where they stood along the straight line from centre to side at the waist, and are as long as they were: back darts square to that line, front darts upright. Where an end of the waist was only raised they stay.",
    "The waist is drawn with the darts folded, in one sweep, square to the centre; it meets the side seam at the old angle where no other is printed.",
];

/// The pictures of a correction on one body: from the draft with the parameters `was` to that with `is`, which differ in
/// `key` alone. `None` where a hand would do nothing.
pub fn by_hand(key: Key, plan: &Plan, was: &Parameters, is: &Parameters, unit: Unit) -> Option<Drawing> {
    // The place of a pivot shows where the front is slashed.
    let closed = was.without(Key::ThighFront);
    let (was, amount) = match key {
        Key::ThighFrontReach => (&closed, Key::ThighFront),
        _ => (was, key),
    };
    let by = is[amount] - was[amount];
    let before = shape(plan, was);
    let works = works(key, (was, &before), (is, &shape(plan, is)), unit);
    let pictures = pictures(&works)?;
    let largest = |times: u32| {
        let value = was[amount] + by * f64::from(times);
        let (least, most) = key.about().hard;
        ((least..=most).contains(&value) || times == 1).then(|| is.with(amount, value))
    };
    // Drawn larger by a whole number, where the amount could not be seen.
    let mut drawn = None;
    for times in 1..=MOST_TIMES {
        let Some(parameters) = largest(times) else { break };
        let after = shape(plan, &parameters);
        if times > 1 && !Panel::ALL.iter().all(|panel| after.panel(*panel).has_room) {
            break;
        }
        let scene = Scene {
            key,
            works: works.clone(),
            before: before.clone(),
            after,
            unit,
            by,
            times: f64::from(times),
        };
        let layout = Layout::of(&scene, &pictures);
        let seen = layout.scale * f64::from(times) * moved_most(key, by, &before);
        drawn = Some((scene, layout));
        if seen >= LEAST_GAP {
            break;
        }
    }
    let (scene, layout) = drawn?;
    Some(layout.drawn(&scene))
}

/// The strips of the parameters that two drafts of one plan differ in, one after the other in the order of the table, each
/// with its parameter, but for changes that no cut is worth; `None` where the drafts differ in more than parameters.
pub fn strips_between(old: &Draft, new: &Draft, unit: Unit) -> Option<Vec<(Key, Drawing)>> {
    let plan = &new.plan;
    if shape(plan, &old.parameters) != shape(&old.plan, &old.parameters) {
        return None;
    }
    let mut was = old.parameters;
    let mut strips = Vec::new();
    for key in Key::ALL.iter().copied().filter(|key| old.parameters[*key] != new.parameters[*key]) {
        let is = was.with(key, new.parameters[key]);
        /// Less is not worth a cut, cm or degrees.
        const WORTH_A_CUT: [f64; 2] = [0.2, 0.5];
        let least = WORTH_A_CUT[usize::from(key.about().unit == Measure::Degrees)];
        if (is[key] - was[key]).abs() < least {
            was = is;
            continue;
        }
        strips.extend(by_hand(key, plan, &was, &is, unit).map(|strip| (key, strip)));
        was = is;
    }
    Some(strips)
}

/// About how far a correction moves something, cm of the panel.
fn moved_most(key: Key, by: f64, before: &Shape) -> f64 {
    match key.about().unit {
        Measure::Cm if key == Key::LegCalf => 0.25 * by.abs(),
        Measure::Cm => by.abs(),
        Measure::Degrees => {
            let back = &before.back.roles;
            by.to_radians().abs() * back[Role::CentreHip].distance(back[Role::CentreWaist])
        }
    }
}

/// A picture: the index of its work, and what it shows.
type Picture = (usize, Shows);

/// The pictures in the order of the work.
fn pictures(works: &[Work]) -> Option<Vec<Picture>> {
    let lead = works.first()?;
    let mut pictures = vec![(0, Shows::Marked)];
    if lead.cut.is_some() {
        pictures.push((0, Shows::Opened));
    }
    pictures.push((0, Shows::Trued));
    for (index, work) in works.iter().enumerate().skip(1) {
        if work.cut.is_some() {
            pictures.push((index, Shows::Opened));
        }
        pictures.push((index, Shows::Trued));
    }
    Some(pictures)
}

/// Where the pictures stand on paper.
struct Layout {
    scale: f64,
    /// Which pictures stand side by side.
    rows: Vec<Vec<Picture>>,
    /// The window on every work's panel.
    windows: Vec<Rect>,
    /// How high each row is.
    heights: Vec<f64>,
}

impl Layout {
    fn of(scene: &Scene, pictures: &[Picture]) -> Self {
        let windows: Vec<Rect> = scene.works.iter().map(|work| window(scene, work)).collect();
        let in_threes = Self::in_rows(&windows, pictures, 3);
        if in_threes.scale >= SMALL_SCALE || pictures.len() < 3 {
            return in_threes;
        }
        let in_twos = Self::in_rows(&windows, pictures, 2);
        if in_twos.heights.iter().sum::<f64>() > ALL_ROWS { in_threes } else { in_twos }
    }

    /// So many side by side.
    fn in_rows(windows: &[Rect], pictures: &[Picture], columns: usize) -> Self {
        let mut windows = windows.to_vec();
        let rows: Vec<Vec<Picture>> = pictures.chunks(columns).map(<[Picture]>::to_vec).collect();
        // Level lines run on from picture to picture.
        let high = |windows: &[Rect]| {
            let all = windows.iter().copied().reduce(|a, b| a.union(b)).unwrap_or_default();
            (all.y0, all.y1)
        };
        let (top, bottom) = high(&windows);
        for window in &mut windows {
            (window.y0, window.y1) = (top, bottom);
        }
        let mut scale = LARGEST_SCALE.min(HIGHEST / (bottom - top));
        for row in &rows {
            let wide: f64 = row.iter().map(|(work, _)| windows[*work].width()).sum();
            scale = scale.min((WIDTH - 2.0 * ASIDE * row.len() as f64) / wide);
        }
        let heights = rows.iter().map(|_| scale * (bottom - top)).collect();
        Self { scale, rows, windows, heights }
    }

    fn drawn(&self, scene: &Scene) -> Drawing {
        let mut layers: Vec<Layer> = vec![Layer::new("Paper")];
        let (mut top, mut number) = (0.0, 0);
        for (row, height) in self.rows.iter().zip(&self.heights) {
            let wide: f64 = row.iter().map(|(work, _)| self.scale * self.windows[*work].width()).sum();
            let share = (WIDTH - wide) / row.len() as f64;
            let mut left = 0.0;
            for (work, shows) in row {
                let window = self.windows[*work];
                let width = self.scale * window.width() + share;
                let at = Point::new(left + 0.5 * share, top + OVER);
                let cell = Rect::new(left, top, left + width, top + OVER + height + UNDER);
                let mut canvas = Canvas::new(window, self.scale, at, cell);
                number += 1;
                let work = &scene.works[*work];
                canvas.headed(Point::new(left + 0.05, top + 0.22), number, work.panel.key());
                scene.picture(&mut canvas, work, *shows);
                if *shows == Shows::Marked && lies_within(window, scene.before.panel(work.panel)) {
                    canvas.whole(&outline(scene.before.panel(work.panel)), window, 1.1);
                }
                layers.extend(canvas.layers());
                left += width;
            }
            top += OVER + height + UNDER;
        }
        let tag = match scene.unit {
            Unit::Cm => "lengths in cm",
            Unit::Inch => "lengths in inches",
        };
        let times = if scene.times > 1.0 {
            format!("; the movement is drawn × {}", scene.times)
        } else {
            String::new()
        };
        let mut foot = Layer::new("Note");
        let at = Point::new(WIDTH - 0.05, top + 0.24);
        foot.text(Text::new(at, NAME, format!("{tag}{times}").as_str()).aligned(Align::End));
        layers.push(foot);
        let bounds = Rect::new(0.0, 0.0, WIDTH, top + 0.34);
        layers[0].area(bounds.to_path(0.1), Shade::White);
        Drawing {
            title: Wording::line(&scene.title()),
            description: Wording::paragraph(&scene.description()),
            bounds,
            layers,
        }
    }
}

/// Whether neither the top nor the bottom of the panel is seen.
fn lies_within(window: Rect, panel: &PanelShape) -> bool {
    window.y0 > panel.roles[Role::SideWaist].y && window.y1 < panel.roles[Role::SideHem].y
}

/// The outline as places, closed.
fn outline(panel: &PanelShape) -> Vec<Point> {
    [Edge::Waist, Edge::SideSeam, Edge::Hem, Edge::Inseam, Edge::CrotchSeam]
        .iter()
        .flat_map(|edge| run(panel.edge(*edge)))
        .collect()
}

/// What is shown of a panel: all that is done there, with something round it, and so wide that it is known as a panel.
fn window(scene: &Scene, work: &Work) -> Rect {
    /// Less is not seen in a picture, cm of the panel.
    const SEEN: f64 = 0.08;
    let (was, is) = (scene.before.panel(work.panel), scene.after.panel(work.panel));
    let mut places: Vec<Point> = Vec::new();
    for edge in Edge::ALL {
        let (old, new) = (run(was.edge(*edge)), run(is.edge(*edge)));
        let seen = SEEN * scene.times;
        places.extend(old.iter().copied().filter(|point| distance(*point, &new) > seen));
        places.extend(new.iter().copied().filter(|point| distance(*point, &old) > seen));
    }
    if work.cut == Some(Cut::Across) {
        // The leg only slides.
        places.clear();
    }
    for step in &work.steps {
        places.extend(pointed_at(step, was, is));
    }
    if let Some(opening) = scene.opening(work) {
        places.extend(opening.cut);
        places.extend(opening.moving.iter().flatten().filter(|_| work.cut != Some(Cut::Across)));
        if work.cut == Some(Cut::Across) {
            places.extend(run(&was.waist));
            places.push(was.inseam.end() + Vec2::new(0.0, 2.0));
        }
    }
    let all = outline(was).into_iter().chain(outline(is));
    let panel = bounds(all).unwrap_or_default();
    let seen = bounds(places.into_iter()).unwrap_or(panel).inflate(AROUND, AROUND);
    /// A window is at least this part as wide as it is high.
    const LEAST_WIDE: f64 = 0.5;
    let lacking = (LEAST_WIDE * seen.height() - seen.width()).max(0.0);
    // The piece is seen on the side where more of it lies.
    let wider = if seen.center().x < panel.center().x {
        Rect { x1: seen.x1 + lacking, ..seen }
    } else {
        Rect { x0: seen.x0 - lacking, ..seen }
    };
    wider.intersect(panel.inflate(1.5, 1.5))
}

fn bounds(points: impl Iterator<Item = Point>) -> Option<Rect> {
    points.map(|point| Rect::from_points(point, point)).reduce(|a, b| a.union(b))
}

/// Places that a step names beside what it moves.
fn pointed_at(step: &Step, was: &PanelShape, is: &PanelShape) -> Vec<Point> {
    match step {
        Step::Fork { nothing: Some(walked), out, .. } if *out != 0.0 => {
            vec![was.inseam.end(), was.inseam.point_before_end(*walked), was.roles[Role::CurveStart]]
        }
        Step::Fork { .. } => vec![was.inseam.end(), was.roles[Role::CurveStart]],
        Step::Curve { .. } => vec![was.roles[Role::CurveStart], is.roles[Role::CurveStart], was.inseam.end()],
        Step::Moved(fade) => {
            let edge: &Chain = was.edge(fade.edge);
            fade.at.iter().filter_map(|(_, y, _)| signs::on_edge(edge, *y)).collect()
        }
        Step::Waist { .. } | Step::CentreRaised { .. } | Step::SideRaised { .. } => {
            let ends = was.darts.iter().map(|dart| dart.apex + Vec2::new(0.0, 2.0));
            run(&was.waist).into_iter().chain(ends).collect()
        }
        _ => Vec::new(),
    }
}
