//! A finished outline on paper, and how it is trued by hand once it was cut: the inseams are walked, the crotch curves
//! swept again, the side seams walked, the waist drawn with its darts folded.

use breeks::{
    draft::{Levels, PanelShape, Shape},
    terms::{Edge, Level, Panel, Role},
};
use kurbo::{Point, Vec2};

use crate::paper::{
    Line, angle_from, arriving, crossing, cut, drawn, leaving, length, long, place, produced, redrawn, ruled,
    run_out, swept, swung, tried, turned, walk_to_level,
};

/// A dart as it is read off the paper.
#[derive(Clone, Debug)]
pub(crate) struct Dart {
    /// Where its middle line meets the straight line from centre to side, as a part of that line.
    at: f64,
    /// From there to its end.
    pub(crate) length: f64,
    /// How wide it is there.
    pub(crate) intake: f64,
    /// Its part of what all darts of the panel take in.
    share: f64,
    /// Where it ends.
    pub(crate) end: Point,
    /// Its middle line, upwards.
    axis: Vec2,
}

impl Dart {
    fn half(&self) -> f64 {
        (0.5 * self.intake / self.length).atan()
    }
}

/// The centre line as it was before something was cut open on the hip line.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Uncut {
    pub(crate) waist: Point,
    pub(crate) start: Point,
    /// How much the centre was opened.
    pub(crate) opened: f64,
    /// How much lower the crotch point has come to lie.
    pub(crate) lowered: f64,
}

/// One panel on paper.
#[derive(Clone, Debug)]
pub(crate) struct Sheet {
    pub(crate) panel: Panel,
    /// The waist between the darts, from the centre.
    pub(crate) waist: Vec<Line>,
    pub(crate) darts: Vec<Dart>,
    /// Waist to hem.
    pub(crate) side: Line,
    pub(crate) hem: Line,
    /// Hem to crotch point.
    pub(crate) inseam: Line,
    /// Where the centre line ends at the waist and where it turns into the curve.
    pub(crate) centre_waist: Point,
    pub(crate) curve_start: Point,
    /// From the start of the curve to the crotch point.
    pub(crate) curve: Line,
    /// How full the curve is: how deep it lies under its chord, against the corner of its end directions.
    pub(crate) fullness: f64,
    /// From the direction of the inseam at its top to that of the crotch curve.
    pub(crate) crossing: f64,
    pub(crate) hip: f64,
    pub(crate) knee: f64,
    /// How much flatter the crotch curve rises on the base than it would if it had all the room it wants, radians.
    held_on_base: f64,
    /// How much flatter it was asked to rise than it does.
    pub(crate) flatter: f64,
    /// Before it was cut on the hip line, until its curve is swept again.
    pub(crate) uncut: Option<Uncut>,
    /// The crotch point out, to nothing on the inseam 25 below it.
    pub(crate) extended: f64,
    /// The crotch point out, to nothing on the inseam at the knee.
    pub(crate) widened: f64,
    /// Crotch point, inseam and curve were turned together, so that none of them yields to another any more.
    pub(crate) turned: bool,
    /// The arm of the curve on the centre line as a part of its arm to the crotch point, where it is to be swept in that
    /// proportion from wherever that begins.
    pub(crate) arms: Option<f64>,
    /// How far the ends of the waist were raised: darts hang from where these were, so that their points stay.
    pub(crate) raised: [f64; 2],
    /// By how much the darts of this panel narrow its sewn waist, beside what makes the whole waist true.
    pub(crate) takes: f64,
    /// Where the construction has the top of the side, before the side seam was walked.
    pub(crate) constructed_side: Point,
    /// What the darts take in in the construction, before the waist was made true.
    pub(crate) constructed_intake: f64,
}

/// The corner of a crotch curve stands at most so high, of the way from its start to the level of the crotch point:
/// higher, and the curve would be a straight line with a hook.
const HIGHEST_CORNER: f64 = 0.35;
/// Where a curve comes to that limit it is led into it over this angle, radians, by a hyperbola between the two rules.
const ROUNDED: f64 = 0.02;
/// Nor does it dip from the crotch point more steeply than this, radians: the crotch point stays the lowest of its curve.
const DEEPEST_DIP: f64 = -0.14;
/// From its fork the curve rises at most so steeply, front and back, radians: cutters land the front almost level.
const LANDS: [f64; 2] = [0.255, 0.52];
/// Where the centre was cut open on the hip line, the curve keeps this part of its arm on the centre line, led to it so
/// softly.
const ARM_KEPT: f64 = 0.8;
const ARM_LED: f64 = 0.3;
/// The top of the inseam yields, so far down, where the curve is not to cross it square.
const YIELDS: f64 = 9.0;

/// How deep a cubic with handles all the way would lie, against its corner.
const DEEPEST: f64 = 0.75;
/// So full a curve may be asked for and given as asked.
pub(crate) const FREELY: f64 = 0.85;
/// And fuller than this it never is.
const FULLEST: f64 = 0.98;

/// How steeply a direction rises towards the side, radians.
fn slope(direction: Vec2) -> f64 {
    (-direction.y).atan2(direction.x)
}

impl Sheet {
    fn read(
        shape: &PanelShape,
        levels: &Levels,
        (constructed_side, constructed_intake): (Point, f64),
    ) -> Self {
        let inseam = drawn(shape.edge(Edge::Inseam).cubics());
        let mut seam = drawn(shape.edge(Edge::CrotchSeam).cubics());
        seam.reverse();
        let curve_start = shape.roles[Role::CurveStart];
        let (centre, curve) = cut(&seam, seam[0].distance(curve_start));
        let legs: Vec<[Point; 2]> = shape.darts.iter().map(|dart| dart.legs).collect();
        let cloth = |from: Point, to: Point| !legs.contains(&[from, to]);
        let waist: Vec<Line> = shape
            .edge(Edge::Waist)
            .cubics()
            .iter()
            .filter(|piece| cloth(piece.p0, piece.p3))
            .map(|piece| drawn(&[*piece]))
            .collect();
        let side = drawn(shape.edge(Edge::SideSeam).cubics());
        let mut sheet = Self {
            panel: shape.panel,
            waist,
            darts: Vec::new(),
            hem: drawn(shape.edge(Edge::Hem).cubics()),
            centre_waist: centre[0],
            curve_start,
            fullness: 0.0,
            crossing: angle_from(arriving(&inseam), -arriving(&curve)),
            hip: levels[Level::Hip],
            knee: levels[Level::Knee],
            side,
            inseam,
            curve,
            held_on_base: 0.0,
            flatter: 0.0,
            uncut: None,
            extended: 0.0,
            widened: 0.0,
            turned: false,
            arms: None,
            raised: [0.0; 2],
            takes: 0.0,
            constructed_side,
            constructed_intake,
        };
        sheet.fullness = sheet.measured_fullness();
        // The hyperbolas of `steeper`, read backwards.
        let rises = slope(sheet.rising());
        let undipped = rises - ROUNDED * ROUNDED / (4.0 * (rises - DEEPEST_DIP));
        let room = sheet.steepest(sheet.crotch_point()) - undipped;
        sheet.held_on_base = undipped - rises + ROUNDED * ROUNDED / (4.0 * room);
        let chord = sheet.side[0] - sheet.centre_waist;
        for dart in &shape.darts {
            let axis = sheet.dart_axis();
            let top = crossing(sheet.centre_waist, chord, dart.apex, axis);
            let half = 0.5 * angle_from(dart.legs[0] - dart.apex, dart.legs[1] - dart.apex);
            let length = top.distance(dart.apex);
            sheet.darts.push(Dart {
                at: (top - sheet.centre_waist).dot(chord) / chord.hypot2(),
                length,
                intake: 2.0 * length * half.tan(),
                share: 0.0,
                end: dart.apex,
                axis,
            });
        }
        let all = sheet.intake();
        for dart in &mut sheet.darts {
            dart.share = dart.intake / all;
        }
        sheet
    }

    pub(crate) fn crotch_point(&self) -> Point {
        self.inseam[self.inseam.len() - 1]
    }

    /// Down along the straight centre line.
    pub(crate) fn down(&self) -> Vec2 {
        long(self.curve_start - self.centre_waist)
    }

    /// The centre line, produced, at the hip line.
    pub(crate) fn centre_hip(&self) -> Point {
        crossing(self.centre_waist, self.down(), Point::new(0.0, self.hip), Vec2::new(1.0, 0.0))
    }

    /// Where the side seam crosses the hip line.
    pub(crate) fn side_hip(&self) -> Point {
        place(&self.side, walk_to_level(&self.side, self.hip))
    }

    /// How long the crotch seam is.
    pub(crate) fn crotch_seam(&self) -> f64 {
        self.centre_waist.distance(self.curve_start) + length(&self.curve)
    }

    /// How far above the hem the knee lies along the inseam.
    pub(crate) fn hem_to_knee(&self) -> f64 {
        walk_to_level(&self.inseam, self.knee)
    }

    /// How the crotch curve leaves the crotch point: at the old angle to the inseam.
    pub(crate) fn rising(&self) -> Vec2 {
        swung(arriving(&self.inseam), self.crossing)
    }

    /// Where the directions of the curve at its two ends cross.
    pub(crate) fn corner(&self) -> Point {
        crossing(self.curve_start, self.down(), self.crotch_point(), self.rising())
    }

    /// The deepest place of the curve under its chord: there it runs along the chord, in the middle of the sweep.
    pub(crate) fn deepest(&self) -> Point {
        let chord = long(self.crotch_point() - self.curve_start);
        let depth = |index: usize| chord.cross(self.curve[index] - self.curve_start).abs();
        let inner = 1..self.curve.len() - 1;
        let at = inner.max_by(|a, b| depth(*a).total_cmp(&depth(*b))).unwrap_or(1);
        // Between the points the depth is a parabola.
        let (before, here, after) = (depth(at - 1), depth(at), depth(at + 1));
        let off = 0.5 * (before - after) / (before - 2.0 * here + after);
        let ahead = if off > 0.0 { self.curve[at + 1] } else { self.curve[at - 1] };
        self.curve[at].lerp(ahead, off.abs())
    }

    fn measured_fullness(&self) -> f64 {
        let chord = self.crotch_point() - self.curve_start;
        let depth = |point: Point| chord.cross(point - self.curve_start);
        depth(self.deepest()) / (DEEPEST * depth(self.corner()))
    }

    /// The curve shall be so full: what a sweep gives freely it gets, and further it yields ever less, since its handles
    /// may not come near the corner. A lower end of the curve yields nothing, and needs not.
    pub(crate) fn fill(&mut self, wanted: f64) {
        let room = FULLEST - FREELY;
        self.fullness =
            if wanted > FREELY { FREELY + room * ((wanted - FREELY) / room).tanh() } else { wanted };
    }

    /// The fullness that leads the curve nearest to a place for its middle.
    pub(crate) fn fullness_through(&self, middle: Point) -> f64 {
        let chord = self.curve_start.midpoint(self.crotch_point());
        let towards = self.corner() - chord;
        (middle - chord).dot(towards) / (DEEPEST * towards.hypot2())
    }

    /// The curve swept again between its ends, tangent to both directions and as full as before. It is one cubic with
    /// both handles on the tangents, since a sweep that bends one way only lies within that corner.
    pub(crate) fn sweep_curve(&mut self) {
        if let Some(uncut) = self.uncut.take() {
            self.find_start(uncut);
        }
        if let Some(arms) = self.arms {
            let (corner, down) = (self.corner(), self.down());
            self.curve_start = corner - down * (arms * corner.distance(self.crotch_point()));
        }
        let (start, end, corner) = (self.curve_start, self.crotch_point(), self.corner());
        let k = self.fullness;
        self.curve = drawn(&[kurbo::CubicBez::new(start, start.lerp(corner, k), end.lerp(corner, k), end)]);
    }

    /// Slides the start of the curve on the centre line until the seam is longer than before by what was opened, as a
    /// fitter walks it with the tape.
    fn find_start(&mut self, uncut: Uncut) {
        let (rising, k) = (self.rising(), self.fullness);
        let seam = |waist: Point, start: Point, end: Point| {
            let corner = crossing(start, start - waist, end, rising);
            let curve = kurbo::CubicBez::new(start, start.lerp(corner, k), end.lerp(corner, k), end);
            waist.distance(start) + length(&drawn(&[curve]))
        };
        let (waist, end, down) = (self.centre_waist, self.crotch_point(), self.down());
        let before = seam(uncut.waist, uncut.start, end - Vec2::new(0.0, uncut.lowered));
        let at = |y: f64| crossing(waist, down, Point::new(0.0, y), Vec2::new(1.0, 0.0));
        let found = tried(before + uncut.opened, self.curve_start.y, |y| seam(waist, at(y), end));
        // No nearer to the corner than this, or there is no curve; and it keeps most of its arm, or it starts with a hook.
        let corner = crossing(waist, down, end, rising);
        let old_end = end - Vec2::new(0.0, uncut.lowered);
        let arm = uncut.start.distance(crossing(uncut.start, uncut.start - uncut.waist, old_end, rising));
        let found = found.min((corner - down * 0.5).y);
        let room = (corner - down * (ARM_KEPT * arm)).y;
        let left = room - found;
        let led = (left + ARM_LED).max(0.0);
        let y = room - if left < ARM_LED { led * led / (4.0 * ARM_LED) } else { left };
        self.curve_start = at(y);
        if y < found {
            // What the seam still lacks the fitter adds at the waist.
            let lacking = before + uncut.opened - seam(waist, at(y), end);
            self.centre_waist = waist - down * lacking;
            self.raised[0] += lacking;
        }
    }

    /// Remembers the centre line before it is cut on the hip line.
    pub(crate) fn cut_open(&mut self, opened: f64, lowered: f64) {
        let (waist, start) = (self.centre_waist, self.curve_start);
        let uncut = self.uncut.get_or_insert(Uncut { waist, start, opened: 0.0, lowered: 0.0 });
        uncut.opened += opened;
        uncut.lowered += lowered;
    }

    /// How steeply the curve may rise from a crotch point at the most.
    fn steepest(&self, crotch_point: Point) -> f64 {
        // How the curve lands is not decided anew where the panel was cut on the hip line.
        let (from, down, crotch_point) = match self.uncut {
            Some(uncut) => {
                (uncut.start, uncut.start - uncut.waist, crotch_point - Vec2::new(0.0, uncut.lowered))
            }
            None => (self.curve_start, self.down(), crotch_point),
        };
        let level = Point::new(0.0, from.y + HIGHEST_CORNER * (crotch_point.y - from.y));
        let corner = crossing(from, down, level, Vec2::new(1.0, 0.0)) - crotch_point;
        let (room, lands) = (slope(corner), LANDS[self.panel as usize]);
        0.5 * (room + lands - (room - lands).hypot(ROUNDED))
    }

    /// How much steeper than square to this inseam the curve rises, now that its ends stand elsewhere.
    fn steeper(&self, inseam: &[Point]) -> f64 {
        if self.turned {
            return 0.0;
        }
        let square = slope(swung(arriving(inseam), self.crossing));
        let (free, most) = (square + self.held_on_base, self.steepest(inseam[inseam.len() - 1]));
        let held = 0.5 * (free + most - (free - most).hypot(ROUNDED));
        let held = 0.5 * (held + DEEPEST_DIP + (held - DEEPEST_DIP).hypot(ROUNDED));
        held - square - self.flatter
    }

    /// The inseam with its crotch point slid straight up or down; above the knee it gives evenly, so that its bow stays.
    /// From where the crotch point lies then it is run out, and its top yields to the curve.
    fn slid_inseam(&self, by: f64) -> Line {
        let (knee, top) = (self.knee, self.crotch_point().y);
        let slid = redrawn(&self.inseam, |y| {
            Vec2::new(0.0, if y < knee { by * (knee - y) / (knee - top) } else { 0.0 })
        });
        const RUN_OUT: f64 = 25.0;
        let top = slid[slid.len() - 1].y;
        let below = place(&slid, length(&slid) - RUN_OUT).y;
        let slid = redrawn(&slid, |y| {
            let out = |by: f64, bottom: f64| by * run_out((bottom - y) / (bottom - top));
            Vec2::new(-out(self.extended, below) - out(self.widened, knee), 0.0)
        });
        let end = slid[slid.len() - 1];
        let reach = swung(arriving(&slid), -self.steeper(&slid));
        let (mut inseam, _) = cut(&slid, length(&slid) - YIELDS);
        let sweep = swept(inseam[inseam.len() - 1], arriving(&inseam), end, reach);
        inseam.extend(&sweep[1..]);
        inseam
    }

    fn redraw_inseam(&mut self, by: f64) {
        self.inseam = self.slid_inseam(by);
        (self.extended, self.widened) = (0.0, 0.0);
    }

    /// Slides the crotch point until the inseam is as long as asked.
    fn walk_inseam(&mut self, wanted: f64) {
        let by = tried(wanted, 0.0, |by| length(&self.slid_inseam(by)));
        self.redraw_inseam(by);
    }

    /// The ends of the waist from which the darts hang.
    fn hung_between(&self) -> [Point; 2] {
        let side = match self.raised[1] {
            lowered if lowered < 0.0 => produced(&self.side, -lowered)[0],
            raised => place(&self.side, raised),
        };
        [self.centre_waist + self.down() * self.raised[0], side]
    }

    fn dart_axis(&self) -> Vec2 {
        let [from, to] = self.hung_between();
        let chord = to - from;
        match self.panel {
            // Front darts stand on the grain, back darts square to the waist: common practice, no source.
            Panel::Front => Vec2::new(0.0, -1.0),
            Panel::Back => long(Vec2::new(chord.y, -chord.x)),
        }
    }

    /// What all darts take in.
    pub(crate) fn intake(&self) -> f64 {
        self.darts.iter().map(|dart| dart.intake).sum()
    }

    /// The darts stood again where they were along the waist, taking in so much more.
    pub(crate) fn set_darts(&mut self, more: f64) {
        let ([from, to], axis) = (self.hung_between(), self.dart_axis());
        let chord = to - from;
        for dart in &mut self.darts {
            dart.axis = axis;
            dart.end = from + chord * dart.at - axis * dart.length;
            dart.intake += more * dart.share;
        }
    }

    /// The waist in one sweep with the darts folded: square to the centre line, and at the side rising as asked.
    fn folded_waist(&self, rise: f64) -> Line {
        let (mut side, mut reach) = (self.side[0], Vec2::new(rise.cos(), -rise.sin()));
        for dart in self.darts.iter().rev() {
            side = turned(side, dart.end, -2.0 * dart.half());
            reach = swung(reach, -2.0 * dart.half());
        }
        let down = self.down();
        swept(self.centre_waist, Vec2::new(down.y, -down.x), side, reach)
    }

    /// Cuts the folded waist at the darts and opens them.
    pub(crate) fn draw_waist(&mut self, rise: f64) {
        let mut rest = self.folded_waist(rise);
        self.waist.clear();
        for dart in &self.darts {
            let leg = swung(dart.axis, -dart.half());
            let over = rest.iter().position(|point| leg.cross(*point - dart.end) > 0.0).unwrap();
            let at = crossing(rest[over - 1], rest[over] - rest[over - 1], dart.end, leg);
            let mut part = rest[..over].to_vec();
            part.push(at);
            self.waist.push(part);
            let mut tail = vec![at];
            tail.extend_from_slice(&rest[over..]);
            rest = tail.iter().map(|point| turned(*point, dart.end, 2.0 * dart.half())).collect();
        }
        self.waist.push(rest);
    }

    /// The waist when its darts are sewn.
    pub(crate) fn sewn_waist(&self) -> f64 {
        self.waist.iter().map(|part| length(part)).sum()
    }

    /// How far the side leans out at the waist.
    fn side_lean(&self) -> f64 {
        let down = leaving(&self.side);
        down.x.atan2(down.y)
    }

    /// Moves the side out at the waist, to nothing at the hip.
    pub(crate) fn side_out_at_waist(&mut self, by: f64) {
        let (top, hip) = (self.constructed_side.y, self.hip);
        self.side = redrawn(&self.side, |y| Vec2::new(by * run_out((hip - y) / (hip - top)), 0.0));
    }

    /// Moves the side out by so much at each of these levels, which go down, evenly between them.
    pub(crate) fn side_out(&mut self, knots: &[(f64, f64)]) {
        self.side = redrawn(&self.side, |y| Vec2::new(between(knots, y), 0.0));
    }

    /// Moves the inseam towards the side by so much at each of these levels, which go down, evenly between them.
    pub(crate) fn inseam_in(&mut self, knots: &[(f64, f64)]) {
        self.inseam = redrawn(&self.inseam, |y| Vec2::new(between(knots, y), 0.0));
    }

    /// All that is cut, in one run from the centre waist.
    pub(crate) fn around(&self) -> Line {
        let mut around: Line = self.waist.iter().flatten().copied().collect();
        around.extend_from_slice(&self.side);
        around.extend_from_slice(&self.hem);
        around.extend_from_slice(&self.inseam);
        around.extend(self.curve.iter().rev());
        around
    }
}

/// What lies between the amounts at the levels above and below, run out towards both.
fn between(knots: &[(f64, f64)], y: f64) -> f64 {
    let (first, last) = (knots[0], knots[knots.len() - 1]);
    let pair = knots.windows(2).find(|pair| (pair[0].0..=pair[1].0).contains(&y));
    match pair {
        Some(pair) => {
            let part = run_out((y - pair[0].0) / (pair[1].0 - pair[0].0));
            pair[0].1 + (pair[1].1 - pair[0].1) * part
        }
        None if y < first.0 => first.1,
        None => last.1,
    }
}

/// Front and back of one leg on paper.
#[derive(Clone, Debug)]
pub(crate) struct Leg {
    pub(crate) front: Sheet,
    pub(crate) back: Sheet,
    pub(crate) levels: Levels,
    /// What front and back waist come to when sewn.
    pub(crate) waist: f64,
}

impl Leg {
    /// As drafted; `constructed` are the top of the side and what the darts take in, front and back, in the construction.
    pub(crate) fn read(shape: &Shape, constructed: [(Point, f64); 2]) -> Self {
        let front = Sheet::read(&shape.front, &shape.levels, constructed[0]);
        let back = Sheet::read(&shape.back, &shape.levels, constructed[1]);
        Self { waist: front.sewn_waist() + back.sewn_waist(), front, back, levels: shape.levels }
    }

    pub(crate) fn sheet(&self, panel: Panel) -> &Sheet {
        match panel {
            Panel::Front => &self.front,
            Panel::Back => &self.back,
        }
    }

    /// Trues what was cut; the front leads and the back follows. The order is that of the walk: the curve can only be
    /// swept to where the crotch point lies, and the waist only be drawn to where the side seam ends.
    pub(crate) fn close(&mut self) {
        self.close_fork();
        for sheet in [&mut self.front, &mut self.back] {
            sheet.hem = ruled(sheet.side[sheet.side.len() - 1], sheet.inseam[0]);
        }
        self.walk_side();
        self.close_waist();
    }

    /// Walks the inseams and sweeps both crotch curves to where their points lie then.
    pub(crate) fn close_fork(&mut self) {
        self.front.redraw_inseam(0.0);
        self.back.walk_inseam(length(&self.front.inseam));
        self.front.sweep_curve();
        self.back.sweep_curve();
    }

    fn walk_side(&mut self) {
        let missing = length(&self.front.side) - length(&self.back.side);
        self.back.side = produced(&self.back.side, missing);
    }

    /// Front and back rise alike to the side, so that they run straight on into each other across it.
    fn rise(&self) -> f64 {
        0.5 * (self.front.side_lean() + self.back.side_lean())
    }

    /// The front darts give or take what the front's own correction asks, measured on the sewn waist.
    fn take_in_front(&mut self) {
        if self.front.takes == 0.0 || self.front.darts.is_empty() {
            return;
        }
        let rise = self.rise();
        let sewn = |more: f64| {
            let mut front = self.front.clone();
            front.set_darts(more);
            front.draw_waist(rise);
            front.sewn_waist()
        };
        let wanted = sewn(0.0) - self.front.takes;
        let more = tried(wanted, 0.0, sewn).max(-self.front.intake());
        self.front.set_darts(more);
    }

    /// Draws the waist; the back darts are made wider or narrower until the sewn waist is what it was, where the back
    /// has none the front darts, and where neither has any the back side.
    fn close_waist(&mut self) {
        self.take_in_front();
        let wanted = self.waist;
        let with = |leg: &Self, more: f64| {
            let mut tried = leg.clone();
            let (mut by_front, mut by_back) = (0.0, 0.0);
            if !leg.back.darts.is_empty() {
                by_back = more;
            } else if !leg.front.darts.is_empty() {
                by_front = more;
            } else {
                tried.back.side_out_at_waist(more);
                tried.walk_side();
            }
            tried.front.set_darts(by_front);
            tried.back.set_darts(by_back);
            let rise = tried.rise();
            for sheet in [&mut tried.front, &mut tried.back] {
                sheet.draw_waist(rise);
            }
            tried
        };
        // Only the tops matter for trying: the legs of the paper are left aside.
        let mut tops = self.clone();
        for sheet in [&mut tops.front, &mut tops.back] {
            sheet.inseam.clear();
            sheet.curve.clear();
            sheet.hem.clear();
        }
        let sewn = |more: f64| {
            let leg = with(&tops, more);
            leg.front.sewn_waist() + leg.back.sewn_waist()
        };
        let more = tried(wanted, 0.0, sewn);
        *self = with(self, more);
    }
}
