//! A recipe compiled against one body: every name looked up, every default settled, every discrete rule of the trade
//! decided. After this, drawing cannot fail.

use kurbo::Point;

use super::{
    inside::{guide_inside, inside},
    leg_width::grown_for_body,
    moves::lean,
    panel::{Levels, Roles},
    stretch::taken,
    style_line::as_far_below_waist,
    suppression::{Surplus, of_men, of_women},
    truing::settle,
};
use crate::{
    body::{Body, Origin},
    mistake::{Mistake, Notice},
    order::Trousers,
    recipe::{BendRule, Construction, Inputs, PanelRules, Proportion, Recipe, Reference},
    terms::{EaseAt, Edge, EnumMap, Level, Measurement, Panel, Role, SeatSet, Sex, Style, Word},
    voice::{Sentence, length, named},
};

/// Everything that drawing needs, for one body.
#[derive(Clone, Debug)]
pub struct Plan {
    /// The y of the levels.
    pub levels: Levels,
    /// The front panel's plan.
    pub front: PanelPlan,
    /// The back panel's plan.
    pub back: PanelPlan,
    /// The sewn waist of one front and one back together, cm.
    pub sewn_waist: f64,
    /// By how much the back inseam is shorter than the front, to be stretched in sewing, cm.
    pub inseam_stretch: f64,
    /// Usable cross stretch of the cloth, per cent.
    pub cloth_stretch: f64,
    /// How far the crossing of crotch seam and inseam is off square, radians.
    pub crossing_tilt: f64,
    /// What the recipe was given: the body's measurements as drafted for, ease, style and asks in force.
    pub inputs: Inputs,
    /// The least and the most ease that the recipe calls a fit, cm.
    pub wanted: EnumMap<EaseAt, (f64, Option<f64>)>,
    /// The waist stays as the recipe draws it.
    pub waist_as_drawn: bool,
    /// The back crotch point stays where the recipe draws it.
    pub inseam_as_drawn: bool,
    /// The hem goes down with the crotch depth, so that the inseam is kept.
    pub hem_follows: bool,
    /// The points, lines and quantities of the recipe, in its own frame.
    pub construction: Construction,
    /// What was decided that a person should know.
    pub notices: Vec<Notice>,
}

/// One panel's plan.
#[derive(Clone, Debug)]
pub struct PanelPlan {
    /// Front or back.
    pub panel: Panel,
    /// The roles where the recipe puts them, from the crease, and the rules of the trade leave them.
    pub roles: Roles,
    /// The roles as the recipe's own lines have them, on the sewing lines.
    pub drawn: Roles,
    /// How far the handles of the crotch curve reach towards the corner of its tangents.
    pub fullness: f64,
    /// The point the recipe leads the crotch curve through, where it names one; met by `fullness`.
    pub guide: Option<Point>,
    /// How far the side stands out from straight above the hip, cm.
    pub side_bow: f64,
    /// How far it stands out from straight between hip and knee, where the recipe says so, cm.
    pub side_bow_below: Option<f64>,
    /// How far the inseam is hollowed above the knee, cm.
    pub inseam_bow: f64,
    /// The width at the hip line from centre line to side, cm.
    pub hip_width: f64,
    /// The darts and pleats from the centre to the side.
    pub darts: Vec<DartPlan>,
    /// What all darts take in together, cm.
    pub intake: f64,
    /// Lines of style across the panel, from centre to side.
    pub lines: Vec<[Point; 2]>,
    /// Drawn as printed in its source, without truing.
    pub printed: bool,
    /// Its seams run from point to point as a book prints them, with a corner where two of them meet in one.
    pub seams_as_printed: bool,
}

/// A dart before it is drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DartPlan {
    /// Where its middle stands, as a part of the waist from the centre.
    pub at: f64,
    /// Its part of what all darts of the panel take in.
    pub share: f64,
    /// From the waist to its end, cm.
    pub length: f64,
    /// A pleat, and how wide: it gives and takes nothing.
    pub pleat: Option<f64>,
}

impl PanelPlan {
    /// Whether there is a dart that can give or take.
    pub fn gives(&self) -> bool {
        self.darts.iter().any(|dart| !dart.is_pleat())
    }
}

/// Recipes lean their centre back for a clean seat; one that sits easily leans this much more, degrees: the two stand
/// two degrees to either side of a middle.
const EASY_LEAN: f64 = 4.0;
/// The seat of a body may be widest nearer to its crotch than a pair of trousers can show: the hip line is drawn at
/// least this part of the hip girth above the crotch line, about half the height of a crotch curve. Nearer, the curve
/// runs so flat that a hair in the height of the hip carries the side seam off.
const HIP_ABOVE_CROTCH: f64 = 0.06;
/// A hip line is raised by so much without a word, and by so much before it is to be minded, cm.
const RAISED_UNSAID: f64 = 0.5;
const RAISED_UNMINDED: f64 = 1.5;
/// The crotch curve starts at least this part of the way from the waist to the crotch line.
const HIGHEST_CURVE: f64 = 0.3;
/// Where the calf is girthed, below the knee, as a part of the knee height (design of this project).
const CALF_BELOW_KNEE: f64 = 0.31;
/// Where the thigh is girthed, below the body's crotch, cm.
const THIGH_BELOW_CROTCH: f64 = 2.5;
/// The fullness of a crotch curve before it is led to its guide point.
const ORDINARY_FULLNESS: f64 = 0.6;
/// The ask by which a recipe folds its front for style: that stays in front whatever the body.
const PLEAT: &str = "pleat";
/// The least height between two points of a seam, cm.
const LEAST_RUN: f64 = 0.5;
/// The least length of a leg between two of its levels, cm.
const LEAST_LEG: f64 = 5.0;

impl DartPlan {
    /// Laid and not sewn.
    fn is_pleat(&self) -> bool {
        self.pleat.is_some()
    }
}

impl Plan {
    /// Compiles `recipe` against `body` with the ease and style of `trousers`.
    ///
    /// # Errors
    /// When the recipe has no back, when a step has no answer for this body, or when the levels or points come out
    /// in an order that is no trouser leg.
    pub fn new(recipe: &Recipe, body: &Body, trousers: &Trousers) -> Result<Self, Mistake> {
        let back = recipe.back.as_ref().ok_or_else(|| {
            Mistake::new(format!("the recipe `{}` has no back", recipe.name)).help(
                "a recipe without `[back]` shows its construction only; choose another `block` to draft with",
            )
        })?;
        let mut notices = Vec::new();
        let mut inputs = inputs(recipe, body, trousers, &mut notices)?;
        let mut construction = recipe.construct(&inputs)?;
        let levels = levels(recipe, body, &inputs, &construction)?;
        if recipe.truing.on {
            let as_given = inputs.style;
            let least = |at| wanted(recipe, at, body, trousers.cloth_stretch).0;
            notices.extend(grown_for_body(&mut inputs, body, trousers, &levels, least));
            if inputs.style != as_given {
                construction = recipe.construct(&inputs)?;
            }
        }
        let build = Build { recipe, construction: &construction, inputs: &inputs, levels: &levels };
        let (mut front, front_net) = build.panel(Panel::Front, &recipe.front)?;
        let (mut back, back_net) = build.panel(Panel::Back, back)?;
        if recipe.truing.on && !recipe.truing.waist_as_drawn {
            let surplus = [
                surplus(&front, front_net, trousers.darts[Panel::Front]),
                surplus(&back, back_net, trousers.darts[Panel::Back]),
            ];
            notices.extend(build.take_in([&mut front, &mut back], surplus, body));
        }
        if trousers.set == SeatSet::Easy {
            let upright = back.roles;
            lean(&mut back.roles, EASY_LEAN.to_radians());
            for [inner, _] in &mut back.lines {
                *inner = as_far_below_waist(*inner, &upright, &back.roles);
            }
        }
        let mut plan = Self {
            levels,
            front,
            back,
            sewn_waist: front_net + back_net,
            inseam_stretch: trousers.inseam_stretch,
            cloth_stretch: trousers.cloth_stretch,
            crossing_tilt: recipe.truing.crossing_tilt,
            wanted: EnumMap::from_fn(|at| wanted(recipe, at, body, trousers.cloth_stretch)),
            waist_as_drawn: recipe.truing.waist_as_drawn,
            inseam_as_drawn: recipe.truing.inseam_as_drawn,
            hem_follows: follows_inside_leg(body),
            construction,
            inputs,
            notices,
        };
        for panel in settle(&mut plan) {
            plan.notices.push(
                Notice::note(
                    "guide-missed",
                    "the {panel} crotch curve cannot pass its guide point and is led as near to it as it stays round",
                )
                .with("panel", panel),
            );
        }
        Ok(plan)
    }

    /// What the recipe is given on this body: measurements as drafted for, ease, style and asks in force.
    ///
    /// # Errors
    /// When the recipe's own style names a measurement that the body lacks.
    pub fn inputs(recipe: &Recipe, body: &Body, trousers: &Trousers) -> Result<Inputs, Mistake> {
        inputs(recipe, body, trousers, &mut Vec::new())
    }
}

/// Where only the outside leg was measured, a deeper crotch must not make the trousers longer.
fn follows_inside_leg(body: &Body) -> bool {
    let measured = |m| body.value(m).is_some_and(|value| value.from == Origin::Measured);
    measured(Measurement::InsideLeg) || !measured(Measurement::OutsideLeg)
}

fn lacking(recipe: &Recipe, missing: Reference) -> Mistake {
    let needed = match missing {
        Reference::Body(measurement) => measurement.key(),
        Reference::Style(style) => style.key(),
        Reference::Ease(at) => at.key(),
        Reference::Ask(_) | Reference::Line(_) | Reference::Quantity(_) => "an earlier step",
    };
    Mistake::new(format!("recipe `{}` needs `{needed}`", recipe.name))
        .help(format!("add `{needed}` to the measurement file"))
}

/// What the stretch of the cloth takes off the ease at a place, cm.
fn taken_by_stretch(at: EaseAt, body: &Body, stretch: f64) -> f64 {
    at.girth().and_then(|girth| body.cm(girth)).map_or(0.0, |girth| girth * taken(stretch, at))
}

/// The least and the most ease that is a fit, less what the stretch of the cloth takes off; a recipe that names none
/// takes any ease that is not negative.
fn wanted(recipe: &Recipe, at: EaseAt, body: &Body, stretch: f64) -> (f64, Option<f64>) {
    let less = taken_by_stretch(at, body, stretch);
    recipe.ease.within(at).map_or((-less, None), |[least, most]| (least - less, Some(most - less)))
}

fn inputs(
    recipe: &Recipe,
    body: &Body,
    trousers: &Trousers,
    notices: &mut Vec<Notice>,
) -> Result<Inputs, Mistake> {
    let rigid = trousers.ease.map(|at, given| given.unwrap_or_else(|| recipe.ease.give(at, body.sex)));
    let mut ease = rigid;
    for at in EaseAt::ALL.iter().filter(|at| trousers.ease[**at].is_none()) {
        ease[*at] -= taken_by_stretch(*at, body, trousers.cloth_stretch);
    }
    let mut measurements = EnumMap::from_fn(|measurement| body.cm(measurement));
    if measurements[Measurement::OutsideLeg].is_none()
        && recipe.reads(Reference::Body(Measurement::OutsideLeg))
        && let Some(reckoned) = body.outside_leg()
    {
        measurements[Measurement::OutsideLeg] = Some(reckoned);
        notices.push(
            Notice::note(
                "outside-leg-reckoned",
                "the recipe goes by `outside_leg`, which was not measured: {reckoned} is reckoned from the height of the waist",
            )
            .with("reckoned", length(reckoned)),
        );
    }
    let depth = ease[EaseAt::CrotchDepth];
    let lowest = body
        .cm(Measurement::BodyRise)
        .zip(body.cm(Measurement::HipGirth))
        .map(|(rise, girth)| rise + depth - HIP_ABOVE_CROTCH * girth);
    if let (Some(hip), Some(lowest)) = (&mut measurements[Measurement::WaistToHip], lowest)
        && recipe.truing.on
        && *hip > lowest
    {
        if *hip > lowest + RAISED_UNSAID && draws_by_waist_to_hip(recipe) {
            let notice = if *hip > lowest + RAISED_UNMINDED { Notice::mind } else { Notice::note };
            notices.push(
                notice(
                    "hip-line-raised",
                    "the seat is widest {hip} below the waist, close to the crotch: the hip line is drawn at {drawn}; \
                     take `waist_to_hip` and `body_rise` again",
                )
                .with("hip", length(*hip))
                .with("drawn", length(lowest)),
            );
        }
        *hip = lowest;
    }
    let mut inputs =
        Inputs { measurements, ease: rigid, style: EnumMap::default(), asks: trousers.ask.clone() };
    for style in Style::ALL {
        let given = trousers.style[*style];
        inputs.style[*style] = match given {
            Some(width) => Some(width),
            None => recipe
                .style
                .give(*style, body.sex, &inputs)
                .transpose()
                .map_err(|missing| lacking(recipe, missing))?,
        };
    }
    if trousers.style[Style::KneeWidth].is_none()
        && let Some(knee) = &mut inputs.style[Style::KneeWidth]
    {
        // The recipe's own width of the knee is laid flat: half of what the girth gives way.
        *knee -= 0.5 * (rigid[EaseAt::Knee] - ease[EaseAt::Knee]);
    }
    inputs.ease = ease;
    Ok(inputs)
}

/// Whether the hip line of the recipe lies where the body's hip does, and not by a fraction.
fn draws_by_waist_to_hip(recipe: &Recipe) -> bool {
    recipe
        .level(Level::Hip)
        .and_then(|index| recipe.lines.get(index))
        .is_some_and(|line| line.at.references().contains(&Reference::Body(Measurement::WaistToHip)))
}

fn levels(
    recipe: &Recipe,
    body: &Body,
    inputs: &Inputs,
    construction: &Construction,
) -> Result<Levels, Mistake> {
    let line = |name: &str| {
        recipe.line(name).map(|index| construction.lines[index]).ok_or_else(|| {
            Mistake::new(format!("the recipe `{}` has no `{name}`", recipe.name))
                .help("a recipe to draft with names `hip_line`, `crotch_line`, `knee_line` and `hem_line` in `[lines]`")
        })
    };
    let mut levels = Levels::default();
    levels[Level::Hip] = line("hip_line")?;
    levels[Level::Crotch] = line("crotch_line")?;
    levels[Level::Knee] = line("knee_line")?;
    levels[Level::Hem] = line("hem_line")? - recipe.seams.along(Edge::Hem);
    levels[Level::Thigh] = levels[Level::Crotch] - inputs.ease[EaseAt::CrotchDepth] + THIGH_BELOW_CROTCH;
    let knee_height =
        body.cm(Measurement::KneeHeight).unwrap_or(0.6 * (levels[Level::Hem] - levels[Level::Crotch]));
    levels[Level::Calf] = levels[Level::Knee] + CALF_BELOW_KNEE * knee_height;
    let in_order = levels[Level::Hip] > 0.0
        && levels[Level::Hip] < levels[Level::Crotch]
        && levels[Level::Crotch] + LEAST_LEG < levels[Level::Knee]
        && levels[Level::Knee] + LEAST_LEG < levels[Level::Hem];
    if in_order {
        Ok(levels)
    } else {
        let below = |level| length(levels[level]);
        let title =
            "the levels are not in order: hip {hip}, crotch {crotch}, knee {knee}, hem {hem} below the waist";
        Err(Mistake::new(
            Sentence::new(title)
                .with("hip", below(Level::Hip))
                .with("crotch", below(Level::Crotch))
                .with("knee", below(Level::Knee))
                .with("hem", below(Level::Hem)),
        )
        .help("check `waist_to_hip`, `body_rise`, the leg length and `style.length`"))
    }
}

struct Build<'a> {
    recipe: &'a Recipe,
    construction: &'a Construction,
    inputs: &'a Inputs,
    levels: &'a Levels,
}

impl Build<'_> {
    /// A panel as the recipe has it, and the length of its waist without what its darts take in.
    fn panel(&self, panel: Panel, rule: &PanelRules) -> Result<(PanelPlan, f64), Mistake> {
        let crease = self.construction.points[rule.crease.0].x;
        let place = |point: Point| Point::new(point.x - crease, point.y);
        let constructed = rule.roles.map(|_, id| place(self.construction.points[id.0]));
        let seams = &self.recipe.seams;
        let mut roles = if seams.any() { inside(&constructed, seams) } else { constructed };
        let drawn = roles;
        let printed = !self.recipe.truing.on;
        let waist_stays = printed || self.recipe.truing.waist_as_drawn;
        if !printed {
            lower_curve_start(&mut roles, self.levels[Level::Crotch]);
        }
        self.check(panel, &roles)?;
        let hip_width = roles[Role::SideHip].x - centre_at(&roles, roles[Role::SideHip].y).x;
        let waist = roles[Role::CentreWaist].distance(roles[Role::SideWaist]);
        let intakes: Vec<f64> =
            rule.darts.iter().map(|dart| self.value(&dart.intake)).collect::<Result<_, _>>()?;
        let lengths: Vec<f64> =
            rule.darts.iter().map(|dart| self.value(&dart.length)).collect::<Result<_, _>>()?;
        let intake: f64 = intakes.iter().sum();
        let mut pleats = Vec::with_capacity(rule.pleats.len());
        for pleat in &rule.pleats {
            pleats.push(DartPlan {
                at: along(&roles, place(self.construction.points[pleat.on.0])),
                share: 0.0,
                length: self.value(&pleat.length)?,
                pleat: Some(self.value(&pleat.intake)?),
            });
        }
        let laid: f64 = pleats.iter().filter_map(|pleat| pleat.pleat).sum();
        let net = waist - intake - laid;
        let mut darts: Vec<DartPlan> = rule
            .darts
            .iter()
            .zip(intakes.iter().zip(lengths))
            .map(|(dart, (own, length))| DartPlan {
                at: along(&roles, place(self.construction.points[dart.on.0])),
                share: if intake > 0.0 { own / intake } else { 1.0 / intakes.len() as f64 },
                length,
                pleat: None,
            })
            .collect();
        darts.sort_by(|a, b| a.at.total_cmp(&b.at));
        if !waist_stays {
            for dart in &mut darts {
                dart.length = dart.length.min(longest_dart(panel, self.levels[Level::Hip]));
            }
        }
        darts.extend(pleats);
        darts.sort_by(|a, b| a.at.total_cmp(&b.at));
        let (fullness, guide) = match rule.bend {
            BendRule::Fullness(fullness) => (fullness, None),
            BendRule::Guide(id) => {
                let guide = place(self.construction.points[id.0]);
                let guide = if seams.any() { guide_inside(guide, &constructed, seams) } else { guide };
                (ORDINARY_FULLNESS, Some(guide))
            }
        };
        let plan = PanelPlan {
            panel,
            roles,
            drawn,
            fullness,
            guide,
            side_bow: self.bow(rule.bow.side_above_hip.as_ref())?.unwrap_or_default(),
            side_bow_below: self.bow(rule.bow.side_below_hip.as_ref())?,
            inseam_bow: -self.bow(rule.bow.inseam_above_knee.as_ref())?.unwrap_or_default(),
            hip_width,
            darts,
            intake,
            lines: rule
                .lines
                .iter()
                .map(|line| line.map(|id| place(self.construction.points[id.0])))
                .collect(),
            printed,
            seams_as_printed: printed,
        };
        Ok((plan, net))
    }

    fn bow(&self, given: Option<&Proportion>) -> Result<Option<f64>, Mistake> {
        given.map(|bow| self.value(bow)).transpose()
    }

    /// Takes in front and back between hip and waist as the trade does; what a person should know of it.
    fn take_in(&self, panels: [&mut PanelPlan; 2], [front, back]: [Surplus; 2], body: &Body) -> Vec<Notice> {
        let waist_to_hip = self.levels[Level::Hip];
        let girths = body.cm(Measurement::HipGirth).zip(body.cm(Measurement::WaistGirth));
        let (shared, notices) = match girths {
            Some((hip, waist)) if body.sex == Sex::Male => {
                let pleat = self.inputs.asks.get(PLEAT).copied().unwrap_or(0.0).max(0.0);
                of_men(front, back, hip - waist, pleat, waist_to_hip)
            }
            _ => of_women(front, back, waist_to_hip),
        };
        for (panel, shared) in panels.into_iter().zip(shared) {
            let width = |panel: &PanelPlan| panel.roles[Role::SideWaist].x - panel.roles[Role::CentreWaist].x;
            let was = width(panel);
            panel.roles[Role::SideWaist].x = panel.roles[Role::SideHip].x - shared.side;
            if panel.panel == Panel::Front {
                // A front dart stands on its line, the crease with most, however the side has moved.
                let kept = was / width(panel).max(1.0);
                panel.darts.iter_mut().for_each(|dart| dart.at = (dart.at * kept).clamp(0.05, 0.95));
            }
            let (pleats, darts) = std::mem::take(&mut panel.darts).into_iter().partition(DartPlan::is_pleat);
            panel.darts = regrouped(panel.panel, darts, shared.count, waist_to_hip);
            panel.darts.extend::<Vec<DartPlan>>(pleats);
            panel.darts.sort_by(|a, b| a.at.total_cmp(&b.at));
            panel.intake = shared.darts;
        }
        notices
    }

    fn value(&self, proportion: &Proportion) -> Result<f64, Mistake> {
        proportion.value(self.inputs, self.construction).map_err(|missing| lacking(self.recipe, missing))
    }

    fn check(&self, panel: Panel, roles: &Roles) -> Result<(), Mistake> {
        let named_so = |what: Sentence| {
            let said = Sentence::new("the {panel} of `{recipe}` cannot be drawn for this body: {what}");
            Mistake::new(
                said.with("panel", panel).with("recipe", named(&self.recipe.name)).with("what", what),
            )
            .help("take the measurements again, or choose another `block`")
        };
        let wrong = |what: &'static str| named_so(Sentence::new(what));
        let narrow =
            |what: &'static str, least: f64| named_so(Sentence::new(what).with("least", length(least)));
        if roles.values().any(|point| !point.is_finite()) {
            return Err(wrong("a point has no place"));
        }
        let (start, point) = (roles[Role::CurveStart], roles[Role::CrotchPoint]);
        if roles[Role::CentreWaist].y + 0.5 > start.y || start.y + 1.0 > point.y {
            return Err(wrong("waist, start of the crotch curve and crotch point are not in order"));
        }
        if point.x + 0.5 > start.x {
            return Err(narrow("the crotch extension is no longer than {least}", 0.5));
        }
        if roles[Role::SideHip].x < roles[Role::CentreHip].x + 5.0 {
            return Err(narrow("the hip line is narrower than {least}", 5.0));
        }
        if roles[Role::SideKnee].x < roles[Role::InnerKnee].x + 3.0
            || roles[Role::SideHem].x < roles[Role::InnerHem].x + 3.0
        {
            return Err(narrow("knee or hem is narrower than {least}", 3.0));
        }
        let down = |of: &[Role]| of.windows(2).all(|ends| roles[ends[0]].y + LEAST_RUN <= roles[ends[1]].y);
        if !down(&[Role::SideWaist, Role::SideHip, Role::SideKnee, Role::SideHem])
            || !down(&[Role::CrotchPoint, Role::InnerKnee, Role::InnerHem])
        {
            return Err(wrong("the points of a seam are not in order from the waist to the hem"));
        }
        if roles[Role::SideWaist].x < roles[Role::CentreWaist].x + 3.0 {
            return Err(narrow("the waist is narrower than {least}", 3.0));
        }
        Ok(())
    }
}

/// The straight centre line, produced to the level `y`.
pub(super) fn centre_at(roles: &Roles, y: f64) -> Point {
    let (top, end) = (roles[Role::CentreWaist], roles[Role::CurveStart]);
    top.lerp(end, (y - top.y) / (end.y - top.y))
}

fn lower_curve_start(roles: &mut Roles, crotch: f64) {
    let top = roles[Role::CentreWaist].y;
    let highest = top + HIGHEST_CURVE * (crotch - top);
    if roles[Role::CurveStart].y < highest && roles[Role::CurveStart].y > top {
        roles[Role::CurveStart] = centre_at(roles, highest);
    }
}

/// Where a dart's point stands along the waist, as a part of it from the centre.
fn along(roles: &Roles, point: Point) -> f64 {
    let waist = roles[Role::SideWaist] - roles[Role::CentreWaist];
    ((point - roles[Role::CentreWaist]).dot(waist) / waist.hypot2()).clamp(0.05, 0.95)
}

/// Common practice, no source: a dart ends well above the fullest part it makes room for.
fn longest_dart(panel: Panel, waist_to_hip: f64) -> f64 {
    let part = match panel {
        Panel::Front => 0.5,
        Panel::Back => 0.65,
    };
    (part * waist_to_hip).min(waist_to_hip - 2.5).max(1.0)
}

/// What a panel has to take in, beginning from what its recipe has in darts.
fn surplus(panel: &PanelPlan, net: f64, held: Option<usize>) -> Surplus {
    let darts = || panel.darts.iter().filter(|dart| !dart.is_pleat());
    let laid: f64 = panel.darts.iter().filter_map(|dart| dart.pleat).sum();
    let (centre, side) = (panel.roles[Role::CentreWaist], panel.roles[Role::SideWaist]);
    // Laid obliquely the waist reaches less far than it is long.
    let oblique = centre.distance(side) - (side.x - centre.x);
    Surplus {
        panel: panel.panel,
        total: panel.roles[Role::SideHip].x - centre.x - net - laid + oblique,
        count: darts().count(),
        darts: panel.intake,
        length: darts().map(|dart| dart.length).fold(f64::INFINITY, f64::min),
        held,
    }
}

/// The darts of the recipe when `count` of them are sewn: one between two, two for one. The front's first stays where the
/// recipe has it, on the crease with most, and the second stands half-way between it and the side (W4); the back's stand
/// about the old place.
fn regrouped(panel: Panel, darts: Vec<DartPlan>, count: usize, waist_to_hip: f64) -> Vec<DartPlan> {
    /// Half the distance of two back darts that stand for one, as a part of the waist.
    const APART: f64 = 0.13;
    match (darts.as_slice(), count) {
        (_, 0) => Vec::new(),
        ([], _) => (1..=count)
            .map(|place| DartPlan {
                at: place as f64 / (count + 1) as f64,
                share: 1.0 / count as f64,
                length: longest_dart(panel, waist_to_hip),
                pleat: None,
            })
            .collect(),
        (have, want) if have.len() == want => darts,
        ([one], _) => {
            let places = match panel {
                Panel::Front => [one.at, 0.5 * (one.at + 1.0)],
                Panel::Back => [one.at - APART, one.at + APART],
            };
            places.map(|at| DartPlan { at, share: 0.5, ..*one }).to_vec()
        }
        (have, _) => {
            let middle = |of: fn(&DartPlan) -> f64| have.iter().map(of).sum::<f64>() / have.len() as f64;
            vec![DartPlan { at: middle(|d| d.at), share: 1.0, length: middle(|d| d.length), pleat: None }]
        }
    }
}
