//! The signs of each action in each picture.

use kurbo::{Affine, Point, Vec2};

use super::{
    Shows,
    canvas::{Canvas, PIECE, STRONG, WAS},
    outline,
};
use crate::{
    adjust::{Key, Measure},
    curve::{Chain, turned, unit},
    draft::{PIVOT_SMOOTHED, PanelShape, SMOOTHED, Shape},
    hand::{Cut, Fade, Opening, Step, Work, distance, run, waist},
    terms::{Edge, Role},
    unit::{Unit, decimal},
};

/// What a strip is drawn of: two drafts, the later with the movement enlarged, and the true figures.
pub(super) struct Scene {
    pub key: Key,
    pub works: Vec<Work>,
    pub before: Shape,
    pub after: Shape,
    pub unit: Unit,
    pub by: f64,
    pub times: f64,
}

/// Where an edge comes to a height, or its nearer end.
pub(super) fn on_edge(edge: &Chain, y: f64) -> Option<Point> {
    let x = edge.crossings(y).next();
    x.map(|x| Point::new(x, y))
        .or_else(|| [edge.start(), edge.end()].into_iter().find(|end| (end.y - y).abs() < 0.5))
}

const UP: Vec2 = Vec2::new(0.0, -1.0);
const LEFT: Vec2 = Vec2::new(-1.0, 0.0);
const RIGHT: Vec2 = Vec2::new(1.0, 0.0);

impl Scene {
    /// What the strip is, in a few words.
    pub(super) fn title(&self) -> String {
        format!("{} by hand: {}", self.key, self.amount())
    }

    /// What a reader who cannot see it should know: the actions in words.
    pub(super) fn description(&self) -> String {
        let said: Vec<String> = self
            .works
            .iter()
            .map(|work| {
                let steps: Vec<String> = work.said(self.unit).collect();
                format!("{}: {}", work.panel, steps.join(" "))
            })
            .collect();
        said.join(" ")
    }

    /// The amount with its unit.
    fn amount(&self) -> String {
        match self.key.about().unit {
            Measure::Degrees => format!("{}°", trimmed(decimal(self.by.abs(), 1))),
            Measure::Cm => format!("{} {}", trimmed(self.unit.fine(self.by.abs())), self.unit.tag()),
        }
    }

    /// A figure without its unit, which stands under the strip.
    fn figure(&self, cm: f64) -> String {
        trimmed(self.unit.figure(cm.abs()))
    }

    /// A figure that is the amount: bold, with its unit.
    fn of_amount(&self, cm: f64) -> (String, bool) {
        // The amount as it is printed.
        let step = if self.unit == Unit::Cm { 0.006 } else { 0.08 };
        let whole = (cm.abs() - self.by.abs()).abs() < step;
        if whole && self.key.about().unit == Measure::Cm {
            (self.amount(), true)
        } else {
            (self.figure(cm), false)
        }
    }

    /// The cut of a work, opened as far as it is drawn.
    pub(super) fn opening(&self, work: &Work) -> Option<Opening> {
        let (opens, reach) = work.steps.iter().find_map(|step| match step {
            Step::Slash { reach, opens } => Some((*opens, *reach)),
            Step::Wedge { opens, .. } | Step::Across { opens } => Some((*opens, 0.0)),
            _ => None,
        })?;
        Some(Opening::of(self.before.panel(work.panel), work.cut?, self.times * opens, reach))
    }

    pub(super) fn picture(&self, canvas: &mut Canvas, work: &Work, shows: Shows) {
        let (was, is) = (self.before.panel(work.panel), self.after.panel(work.panel));
        match shows {
            Shows::Marked => {
                piece(canvas, was, PIECE);
                canvas.goes_on(&outline(was));
                self.marked(canvas, work, was, is);
            }
            Shows::Opened => {
                if let Some(opening) = self.opening(work) {
                    self.opened(canvas, work, was, &opening);
                }
            }
            Shows::Trued => {
                self.trued(canvas, work, was, is);
                // A piece without a picture of its own for the places shows them here.
                if self.works.first().is_none_or(|lead| lead.panel != work.panel) && work.cut.is_none() {
                    self.marked(canvas, work, was, is);
                }
            }
        }
    }

    fn marked(&self, canvas: &mut Canvas, work: &Work, was: &PanelShape, is: &PanelShape) {
        let role = |role: Role| was.roles[role];
        let [centre, side] = [was.crotch_seam.end(), was.side_seam.start()];
        let times = self.times;
        if let (Some(opening), Some(cut)) = (self.opening(work), work.cut) {
            let [from, to] = opening.cut;
            if matches!(cut, Cut::FromCentre | Cut::FromSide | Cut::Across) {
                canvas.line(&[from, to], STRONG);
                canvas.scissors(from, to);
                if let Some(hinge) = opening.hinge {
                    canvas.hinge(hinge);
                }
                canvas.level(from.y + 0.001, "hip line");
                match cut {
                    Cut::FromSide => canvas.along(
                        &[role(Role::CentreHip), centre],
                        1.0,
                        &self.figure(role(Role::CentreHip).distance(centre)),
                    ),
                    _ => {
                        let (above, _) = was.side_seam.cut_at_level(role(Role::SideHip).y);
                        canvas.along(&run(&above), 1.0, &self.figure(above.length()));
                    }
                }
            }
        }
        for step in &work.steps {
            match step {
                Step::Slash { reach, .. } => {
                    let Some(opening) = self.opening(work) else { continue };
                    let [from, to] = opening.cut;
                    canvas.line(&[from, to], STRONG);
                    canvas.scissors(from, to);
                    canvas.hinge(to);
                    let (_, above) = was.inseam.cut_at(was.inseam.length() - reach);
                    canvas.along(&run(&above), 1.0, &self.figure(*reach));
                    canvas.named(from, RIGHT, "A");
                    canvas.named(to, RIGHT, "P");
                    if self.key == Key::ThighFrontReach {
                        let old = Key::ThighFrontReach.about().default;
                        let at = was.inseam.point_before_end(old);
                        canvas.mark(at);
                        canvas.named(at, RIGHT, &self.figure(old));
                    }
                }
                Step::Swung { .. } => {
                    canvas.hinge(role(Role::CentreHip));
                    canvas.level(role(Role::SideHip).y, "hip line");
                    canvas.mark(centre);
                    canvas.mark(role(Role::SideHip));
                    canvas.named(role(Role::SideHip), RIGHT, "0");
                    let hip = role(Role::CentreHip);
                    canvas.along(&[hip, centre], 1.0, &self.figure(hip.distance(centre)));
                    let angle = (self.by * times).to_radians();
                    canvas.turns(hip, centre, angle);
                    canvas.said(centre, UP, &self.amount());
                }
                Step::Widened { by } => {
                    let out = Vec2::new(-by * times, 0.0);
                    for point in [centre, role(Role::CurveStart), was.inseam.end()] {
                        canvas.mark(point);
                        canvas.mark(point + out);
                    }
                    canvas.line(&[centre + out, role(Role::CurveStart) + out], WAS);
                    let (words, bold) = self.of_amount(*by);
                    canvas.gap(centre + out, centre, UP, &words, bold);
                    let fork = was.inseam.end();
                    canvas.gap(fork + out, fork, UP, &words, false);
                    if let Some(knee) = on_edge(&was.inseam, self.before.levels[crate::terms::Level::Knee]) {
                        canvas.level(knee.y, "knee line");
                        canvas.mark(knee);
                        canvas.named(knee, LEFT, "0");
                    }
                }
                Step::Fork { out, nothing, .. } if *out != 0.0 && nothing.is_some() => {
                    let fork = was.inseam.end();
                    let to = fork - Vec2::new(out * times, 0.0);
                    canvas.mark(fork);
                    canvas.mark(to);
                    let (words, bold) = self.of_amount(*out);
                    canvas.gap(to, fork, UP, &words, bold);
                    let walked = nothing.unwrap_or_default();
                    let (_, above) = was.inseam.cut_at(was.inseam.length() - walked);
                    canvas.mark(above.start());
                    canvas.named(above.start(), LEFT, "0");
                    canvas.along(&run(&above), 1.0, &self.figure(walked));
                }
                Step::Curve { .. } if matches!(self.key, Key::SeatScoop | Key::CrotchFrontScoop) => {
                    self.deepened(canvas, was, is);
                }
                Step::Lowered { by } => {
                    let (old, new) = (curve(was), curve(is));
                    let at = |line: &[Point]| line[line.len() / 2];
                    let (from, to) = (at(&old), at(&new));
                    canvas.mark(role(Role::CurveStart));
                    canvas.mark(was.inseam.end());
                    canvas.mark(from);
                    let to = Point::new(from.x, from.y + (to.y - from.y).abs());
                    canvas.mark(to);
                    let (words, bold) = self.of_amount(*by);
                    canvas.gap(from, to, RIGHT, &words, bold);
                    for (old, new) in was.darts.iter().zip(&is.darts) {
                        canvas.mark(old.apex);
                        canvas.mark(new.apex);
                    }
                }
                Step::CentreRaised { by } => {
                    let to = centre + unit(centre - role(Role::CurveStart)) * (by * times);
                    canvas.line(&[centre, to], WAS);
                    canvas.mark(centre);
                    canvas.mark(to);
                    let (words, bold) = self.of_amount(*by);
                    canvas.gap(centre, to, LEFT, &words, bold);
                    canvas.mark(side);
                    canvas.named(side, RIGHT, "0");
                }
                Step::SideRaised { by } => {
                    let to = is.side_seam.start();
                    canvas.line(&[side, to], WAS);
                    canvas.mark(side);
                    canvas.mark(to);
                    let (words, bold) = self.of_amount(*by);
                    canvas.gap(side, to, RIGHT, &words, bold);
                    canvas.mark(centre);
                    canvas.named(centre, LEFT, "0");
                }
                Step::Moved(fade) => self.faded(canvas, was, fade),
                Step::Hem { up } => {
                    let (inner, outer) = (was.hem.end(), was.hem.start());
                    let at = inner.midpoint(outer);
                    let to = at + UP * (up * times);
                    for point in [inner, outer, at, to] {
                        canvas.mark(point);
                    }
                    canvas.named(inner, LEFT, "0");
                    canvas.named(outer, RIGHT, "0");
                    let (words, bold) = self.of_amount(*up);
                    canvas.gap(at, to, RIGHT, &words, bold);
                }
                _ => {}
            }
        }
        if self.key == Key::AbdomenWidth {
            let sign =
                if (self.by > 0.0) == (work.panel == crate::terms::Panel::Front) { "+" } else { "\u{2212}" };
            canvas.said(centre.midpoint(side), UP, &format!("{sign}{}", self.amount()));
        }
    }

    /// The line from the middle of the chord to the corner, on which a scoop is measured.
    fn deepened(&self, canvas: &mut Canvas, was: &PanelShape, is: &PanelShape) {
        let (start, fork) = (was.roles[Role::CurveStart], was.inseam.end());
        let middle = start.midpoint(fork);
        let down = unit(start - was.crotch_seam.end());
        let Some((along, _)) = crate::curve::meet(start, down, fork, was.crotch_seam.start_tangent()) else {
            return;
        };
        let corner = start + down * along;
        canvas.chord(start, fork);
        canvas.chord(middle, corner);
        canvas.chord(start, corner);
        canvas.chord(fork, corner);
        for point in [start, fork, corner] {
            canvas.mark(point);
        }
        let way = corner - middle;
        let on = |line: &[Point]| {
            line.iter().copied().min_by(|a, b| {
                let off = |point: &Point| unit(way).cross(*point - middle).abs();
                off(a).total_cmp(&off(b))
            })
        };
        if let (Some(old), Some(new)) = (on(&curve(was)), on(&curve(is))) {
            canvas.mark(old);
            canvas.mark(new);
            let (words, bold) = (self.amount(), true);
            canvas.gap(old, new, Vec2::new(way.y, -way.x), &words, bold);
        }
    }

    /// The heights at which an edge moves, how far, and where it does not.
    fn faded(&self, canvas: &mut Canvas, was: &PanelShape, fade: &Fade) {
        let out = if fade.edge == Edge::SideSeam { RIGHT } else { LEFT };
        let most = fade.at.iter().map(|(.., by)| by.abs()).fold(0.0, f64::max);
        for (height, y, by) in &fade.at {
            let Some(at) = on_edge(was.edge(fade.edge), *y) else { continue };
            if let Some((_, from)) = height.measured_from(&self.before.levels) {
                canvas.gap(Point::new(at.x, from), Point::new(at.x, *y), -out, &self.figure(y - from), false);
            }
            canvas.mark(at);
            if *by == 0.0 {
                canvas.named(at, out, "0");
                continue;
            }
            let to = at + RIGHT * (by * self.times);
            canvas.mark(to);
            // The amount stands once on every piece.
            let (words, whole) = self.of_amount(*by);
            match fade.edge {
                Edge::SideSeam => canvas.gap(at, to, UP, &words, by.abs() == most),
                _ if whole => canvas.gap(at, to, UP, &trimmed(self.unit.fine(by.abs())), false),
                _ => canvas.gap(at, to, UP, &words, false),
            }
        }
        for (height, y, _) in &fade.at {
            let from = height.measured_from(&self.before.levels);
            if let Some((name, y)) = height.line().map(|name| (name, *y)).or(from) {
                canvas.level(y, name);
            }
        }
    }

    fn opened(&self, canvas: &mut Canvas, work: &Work, was: &PanelShape, opening: &Opening) {
        let moved = |line: &[Point]| line.iter().map(|point| opening.motion * *point).collect::<Vec<_>>();
        let [from, to] = opening.cut;
        let wedge = [from, to, opening.motion * to, opening.motion * from];
        canvas.hatch(&wedge, &[], opening.laps);
        for line in &opening.moving {
            canvas.line(line, WAS);
        }
        for line in &opening.still {
            canvas.line(line, PIECE);
        }
        for line in &opening.moving {
            canvas.line(&moved(line), PIECE);
        }
        canvas.line(&[from, to], PIECE);
        canvas.line(&moved(&[from, to]), PIECE);
        canvas.goes_on(&outline(was));
        let measured = [opening.measured, opening.motion * opening.measured];
        let out = opening.hinge.map_or(RIGHT, |hinge| opening.measured - hinge);
        canvas.gap(measured[0], measured[1], out, &self.amount(), true);
        if opening.measured.distance(from) > 0.4 {
            measured.iter().for_each(|point| canvas.mark(*point));
        }
        if let Some(hinge) = opening.hinge {
            let angle = turn_of(opening.motion);
            let at = match work.cut {
                Some(Cut::Slash { .. }) => was.inseam.end(),
                Some(Cut::FromSide) => was.side_seam.start(),
                _ => was.crotch_seam.end(),
            };
            canvas.turns(hinge, opening.motion * at, angle);
            canvas.hinge(hinge);
        } else {
            let way = opening.motion * Point::ORIGIN - Point::ORIGIN;
            let under = from.midpoint(to) + unit(way) * (way.hypot() + 1.5);
            canvas.slides(under, way);
        }
    }

    fn trued(&self, canvas: &mut Canvas, work: &Work, was: &PanelShape, is: &PanelShape) {
        let (old, new) = (outline(was), outline(is));
        if work.cut.is_none() {
            canvas.hatch(&new, &old, false);
            canvas.dot(&old, &new);
        }
        piece(canvas, was, WAS);
        piece(canvas, is, PIECE);
        self.drawn_anew(canvas, work, was, is);
        canvas.goes_on(&new);
        for step in &work.steps {
            self.sign_of(canvas, step, work, was, is);
        }
    }

    /// What is drawn anew, strong: all that lies on no line of the pieces as they were laid.
    fn drawn_anew(&self, canvas: &mut Canvas, work: &Work, was: &PanelShape, is: &PanelShape) {
        const OFF: f64 = 0.03;
        let opening = self.opening(work);
        let mut there: Vec<Vec<Point>> = Vec::new();
        match &opening {
            Some(opening) => {
                there.extend(opening.still.iter().cloned());
                there.extend(
                    opening
                        .moving
                        .iter()
                        .map(|line| line.iter().map(|point| opening.motion * *point).collect()),
                );
            }
            None => {
                there.extend(waist(was));
                let edges = [Edge::SideSeam, Edge::Hem, Edge::Inseam, Edge::CrotchSeam];
                there.extend(edges.iter().map(|edge| run(was.edge(*edge))));
            }
        }
        let waist_lines = is.darts.len() + is.pleats.len();
        let mut lines = waist(is);
        lines.truncate(lines.len() - waist_lines.min(lines.len()));
        lines.extend(
            [Edge::SideSeam, Edge::Hem, Edge::Inseam, Edge::CrotchSeam]
                .iter()
                .map(|edge| run(is.edge(*edge))),
        );
        for line in lines {
            let strong: Vec<bool> =
                line.iter().map(|point| there.iter().all(|other| distance(*point, other) > OFF)).collect();
            let mut from = 0;
            while let Some(start) = (from..line.len()).find(|at| strong[*at]) {
                let end = (start..line.len()).find(|at| !strong[*at]).unwrap_or(line.len());
                canvas.line(&line[start.saturating_sub(1)..(end + 1).min(line.len())], STRONG);
                from = end;
            }
        }
    }

    fn sign_of(&self, canvas: &mut Canvas, step: &Step, work: &Work, was: &PanelShape, is: &PanelShape) {
        let [centre, side] = [is.crotch_seam.end(), is.side_seam.start()];
        let [old_centre, old_side] = [was.crotch_seam.end(), was.side_seam.start()];
        match step {
            Step::Slash { reach, .. } => {
                let pivot = is.inseam.length() - reach;
                for (from, to) in [(pivot - PIVOT_SMOOTHED, pivot), (pivot, pivot + PIVOT_SMOOTHED)] {
                    canvas.along(&between(&is.inseam, from, to), 1.0, &self.figure(PIVOT_SMOOTHED));
                }
            }
            Step::Wedge { from_centre: true, .. } | Step::Across { .. }
                if !work.steps.iter().any(|step| matches!(step, Step::StoodBack { .. })) =>
            {
                let (hip, _) = is.side_seam.walk_to_level(was.roles[Role::SideHip].y);
                let gap = match step {
                    Step::Across { opens } => opens * self.times,
                    _ => 0.0,
                };
                for (from, to) in [(hip - SMOOTHED, hip), (hip + gap, hip + gap + SMOOTHED)] {
                    canvas.along(&between(&is.side_seam, from, to), 1.0, &self.figure(SMOOTHED));
                }
            }
            Step::StoodBack { by } => {
                let (words, _) = self.of_amount(*by);
                canvas.gap(old_centre, centre, LEFT, &words, false);
                if let Some(opening) = self.opening(work) {
                    canvas.line(
                        &[opening.motion * old_centre, opening.motion * was.roles[Role::CentreHip]],
                        WAS,
                    );
                }
            }
            Step::SideStraightUp { by } => {
                let (words, _) = self.of_amount(*by);
                canvas.gap(old_side, side, RIGHT, &words, false);
                if let Some(knee) = on_edge(&was.side_seam, self.before.levels[crate::terms::Level::Knee]) {
                    canvas.level(knee.y, "knee line");
                    canvas.mark(knee);
                    canvas.named(knee, RIGHT, "0");
                }
            }
            Step::Swung { at_waist, at_side } => {
                let hinge = was.roles[Role::CentreHip];
                let swung = hinge + turned(old_centre - hinge, (self.by * self.times).to_radians());
                canvas.gap(old_centre, swung, UP, &self.figure(*at_waist), false);
                canvas.gap(old_side, Point::new(side.x, old_side.y), UP, &self.figure(*at_side), false);
            }
            Step::Fork { out, up, .. } if *up != 0.0 => {
                let old = was.inseam.end() - Vec2::new(out * self.times, 0.0);
                let new = is.inseam.end();
                canvas.mark(new);
                canvas.gap(Point::new(new.x, old.y), new, LEFT, &self.figure(*up), false);
            }
            Step::Curve { starts_up, depth, rises, .. } => {
                let start = is.roles[Role::CurveStart];
                canvas.mark(start);
                let reference = self.start_from(work, was, is);
                if *starts_up != 0.0 {
                    canvas.mark(reference);
                    canvas.gap(reference, start, RIGHT, &self.figure(*starts_up), false);
                }
                canvas.depth(&curve(is), &self.figure(*depth));
                if let Some(degrees) = rises {
                    canvas.named(is.inseam.end(), LEFT, &format!("{degrees:.0}°"));
                }
            }
            Step::CentreUp { by } => {
                let down = unit(is.roles[Role::CurveStart] - centre);
                canvas.gap(centre + down * (by * self.times), centre, LEFT, &self.figure(*by), false);
            }
            Step::SideUp { by } => {
                let down = unit(is.side_seam.start_tangent());
                canvas.gap(side + down * (by * self.times), side, RIGHT, &self.figure(*by), false);
            }
            Step::SideOut { by } => {
                canvas.gap(Point::new(side.x - by * self.times, side.y), side, UP, &self.figure(*by), false);
            }
            Step::Waist { darts, corner } => {
                canvas.square(centre, is.waist.start_tangent(), is.roles[Role::CurveStart] - centre);
                for (dart, wide) in is.darts.iter().zip(darts) {
                    let mouth = dart.legs[0].midpoint(dart.legs[1]);
                    canvas.named(mouth, mouth - dart.apex, &self.figure(*wide));
                }
                if let Some(degrees) = corner {
                    let into = -is.waist.end_tangent() + is.side_seam.start_tangent();
                    canvas.named(side, into, &format!("{degrees:.0}°"));
                }
            }
            _ => {}
        }
    }

    /// Where the start of the curve is measured from, as far as it is drawn moved.
    fn start_from(&self, work: &Work, was: &PanelShape, is: &PanelShape) -> Point {
        let old = was.roles[Role::CurveStart];
        let Some(opening) = self.opening(work) else {
            // On the new centre line, as far from its top as the old start from the old one.
            return match self.key {
                Key::SeatWidth | Key::SeatAngle => {
                    let step = work.steps.iter().find_map(|step| match step {
                        Step::Swung { .. } => {
                            let hinge = was.roles[Role::CentreHip];
                            Some(hinge + turned(old - hinge, (self.by * self.times).to_radians()))
                        }
                        Step::Widened { by } => Some(old - Vec2::new(by * self.times, 0.0)),
                        _ => None,
                    });
                    step.unwrap_or(is.roles[Role::CurveStart])
                }
                _ => old,
            };
        };
        match work.cut {
            Some(Cut::FromCentre) => opening.motion * was.roles[Role::CentreHip],
            Some(Cut::Across) => was.roles[Role::CentreHip],
            _ => old,
        }
    }
}

/// A panel with its darts.
fn piece(canvas: &mut Canvas, panel: &PanelShape, pen: crate::drawing::Pen) {
    for line in waist(panel) {
        canvas.line(&line, pen);
    }
    for edge in [Edge::SideSeam, Edge::Hem, Edge::Inseam, Edge::CrotchSeam] {
        canvas.line(&run(panel.edge(edge)), pen);
    }
}

/// The crotch curve from its start to the crotch point.
fn curve(panel: &PanelShape) -> Vec<Point> {
    let first = panel.crotch_seam.cubics()[0];
    let mut line = run(&Chain::of(first));
    line.reverse();
    line
}

/// A part of an edge by length.
fn between(edge: &Chain, from: f64, to: f64) -> Vec<Point> {
    let (before, _) = edge.cut_at(to);
    let (_, part) = before.cut_at(from);
    run(&part)
}

/// The angle of a turn, radians.
fn turn_of(motion: Affine) -> f64 {
    let [cos, sin, ..] = motion.as_coeffs();
    sin.atan2(cos)
}

/// Without a decimal that says nothing.
fn trimmed(figure: String) -> String {
    match figure.split_once('.') {
        Some((whole, decimals)) => {
            let decimals = decimals.trim_end_matches('0');
            if decimals.is_empty() { whole.to_owned() } else { format!("{whole}.{decimals}") }
        }
        None => figure,
    }
}
