//! What became of the figures that a recipe of one's own copies from a book: each that a rule of the trade or truing
//! changed, and by how much. The recipes that come with the program print no book's figures; their lessons tell.

use kurbo::{Point, Vec2};

use super::{
    PanelShape, Shape,
    plan::{PanelPlan, Plan},
};
use crate::{
    curve::{Chain, length as long},
    mistake::Notice,
    recipe::{DartRule, PanelRules, Proportion, Recipe},
    terms::{Panel, Role, Word},
    voice::{Sentence, Value, amount, change, named},
};

/// Less than this is not seen on paper, cm.
const SEEN: f64 = 0.05;
/// A bow that the drawn seam misses by less is drawn, cm.
const BOWED: f64 = 0.1;
/// What a note of a changed figure ends with: who changed it, and how the book's is kept.
const BY_THE_WAIST: &str = ": the waist is trued, and hip less waist shared out between side and darts; `[truing]` with \
                            `waist = \"as drawn\"` keeps the recipe's";
const BY_THE_INSEAM: &str =
    ": it slid until the inseams agree; `[truing]` with `inseam = \"as drawn\"` keeps the recipe's";
const BY_THE_CURVE: &str = ": a crotch curve has its room, and what is opened above it stays straight; `true = false` under \
                            `[truing]` keeps the recipe's";
const BY_THE_HIP: &str = ": the hip keeps its width where the crotch curve has begun above the hip line; a curve that starts \
                          at the hip or below keeps the recipe's";
const BY_THE_SEAM: &str = ": the seam is drawn smooth through its points and its notch set by its length; `true = false` \
                           under `[truing]` keeps the recipe's";

/// Who moved a point.
fn by_what(panel: Panel, role: Role) -> &'static str {
    match role {
        Role::CentreWaist | Role::SideWaist => BY_THE_WAIST,
        Role::CrotchPoint if panel == Panel::Back => BY_THE_INSEAM,
        Role::CurveStart | Role::CrotchPoint => BY_THE_CURVE,
        Role::CentreHip | Role::SideHip => BY_THE_HIP,
        Role::SideKnee | Role::InnerKnee | Role::SideHem | Role::InnerHem => BY_THE_SEAM,
    }
}

/// A note for every figure of the recipe that the plain trued panels have otherwise; `plain` is without fit parameters
/// and with its waist where it was measured.
pub(super) fn notices(recipe: &Recipe, plan: &Plan, plain: &Shape) -> Vec<Notice> {
    if recipe.is_shipped() || !recipe.truing.on {
        return Vec::new();
    }
    let mut notices = Vec::new();
    for (planned, rule) in [(&plan.front, Some(&recipe.front)), (&plan.back, recipe.back.as_ref())] {
        let Some(rule) = rule else { continue };
        let panel = Drawn { recipe, plan, planned, rule, shape: plain.panel(planned.panel) };
        notices.extend(panel.points());
        notices.extend(panel.darts());
        notices.extend(panel.sewn_waist());
        notices.extend(panel.bows());
    }
    notices
}

/// A panel as the recipe has it and as it was drawn.
struct Drawn<'a> {
    recipe: &'a Recipe,
    plan: &'a Plan,
    planned: &'a PanelPlan,
    rule: &'a PanelRules,
    shape: &'a PanelShape,
}

impl Drawn<'_> {
    fn points(&self) -> impl Iterator<Item = Notice> {
        Role::ALL.iter().filter_map(|role| {
            let by = self.shape.roles[*role] - self.planned.drawn[*role];
            (by.hypot() > SEEN).then(|| {
                let point = self.recipe.point_name(self.rule.roles[*role]);
                Notice::note(
                    "figure-changed",
                    "the {panel} {role} (`{point}`) lies {way} where the recipe has it",
                )
                .with("panel", self.planned.panel)
                .with("role", named(role.key().replace('_', " ")))
                .with("point", named(point))
                .with("way", way(by))
                .then(by_what(self.planned.panel, *role))
            })
        })
    }

    fn darts(&self) -> Vec<Notice> {
        let mut notices = Vec::new();
        let lengths: Vec<f64> = self.rule.darts.iter().map(|dart| self.value(&dart.length)).collect();
        let sewn = self.shape.darts.iter().filter(|dart| dart.intake() > SEEN).count();
        let (taken, takes) =
            (self.taken(&self.rule.darts), self.shape.darts.iter().map(super::Dart::intake).sum());
        if lengths.len() != sewn || f64::abs(taken - takes) > SEEN {
            notices.push(
                Notice::note("figure-changed", "the {panel} has {sewn} where the recipe has {drawn}")
                    .with("panel", self.planned.panel)
                    .with("sewn", together(sewn, takes))
                    .with("drawn", together(lengths.len(), taken))
                    .then(BY_THE_WAIST),
            );
        }
        let planned = self.planned.darts.iter().filter(|dart| dart.pleat.is_none()).map(|dart| dart.length);
        // In the order of their lengths, since the recipe lists darts in any order.
        let (has, wanted) = (sorted(planned.collect()), sorted(lengths));
        if has.len() == wanted.len() {
            let changed = has.into_iter().zip(wanted).filter(|(has, wanted)| (has - wanted).abs() > SEEN);
            notices.extend(changed.map(|(has, wanted)| {
                Notice::note("figure-changed", "a {panel} dart is {has} long where the recipe has {wanted}")
                    .with("panel", self.planned.panel)
                    .with("has", amount(has))
                    .with("wanted", amount(wanted))
                    .then(BY_THE_WAIST)
            }));
        }
        notices
    }

    fn sewn_waist(&self) -> Option<Notice> {
        let across = self.planned.drawn[Role::CentreWaist].distance(self.planned.drawn[Role::SideWaist]);
        let wanted = across - self.taken(&self.rule.darts) - self.taken(&self.rule.pleats);
        let has = long(&self.shape.sewn_waist);
        ((has - wanted).abs() > SEEN).then(|| {
            Notice::note(
                "figure-changed",
                "the sewn waist of the {panel} is {has} where the recipe has {wanted}",
            )
            .with("panel", self.planned.panel)
            .with("has", amount(has))
            .with("wanted", amount(wanted))
            .then(BY_THE_WAIST)
        })
    }

    /// Bows that the recipe gives and the seam, drawn smooth, could not have.
    fn bows(&self) -> Vec<Notice> {
        let (rule, roles) = (&self.rule.bow, &self.shape.roles);
        let side = &self.shape.side_seam;
        let [waist, hip, knee] = [Role::SideWaist, Role::SideHip, Role::SideKnee].map(|role| roles[role]);
        let (low, fork) = (roles[Role::InnerKnee], roles[Role::CrotchPoint]);
        let seams = [
            (&rule.side_above_hip, "side_above_hip", stands_out(side, waist, hip)),
            (&rule.side_below_hip, "side_below_hip", stands_out(side, hip, knee)),
            (&rule.inseam_above_knee, "inseam_above_knee", stands_out(&self.shape.inseam, low, fork)),
        ];
        let told = seams.into_iter().filter_map(|(given, key, has)| {
            let (wanted, has) = (self.value(given.as_ref()?), has?);
            ((has - wanted).abs() > BOWED).then(|| {
                let because = match key {
                    "inseam_above_knee" => {
                        ": it runs on from the leg below the knee and yields to the crossing at its top; `true = false` \
                         under `[truing]` draws the bow as the recipe has it"
                    }
                    "side_above_hip" => {
                        ": a side that takes in little, or is short, has the less to round; `true = false` under \
                         `[truing]` draws the bow as the recipe has it"
                    }
                    _ => ": the seam is trued as it runs over the hip; `true = false` under `[truing]` draws the bow as the recipe has it",
                };
                Notice::note(
                    "figure-changed",
                    "the {panel} `bow` `{key}` comes out {has} where the recipe has {wanted}",
                )
                .with("panel", self.planned.panel)
                .with("key", key)
                .with("has", change(has))
                .with("wanted", change(wanted))
                .then(because)
            })
        });
        told.collect()
    }

    fn taken(&self, folds: &[DartRule]) -> f64 {
        folds.iter().map(|fold| self.value(&fold.intake)).sum()
    }

    fn value(&self, rule: &Proportion) -> f64 {
        // The plan has reckoned with it already.
        rule.value(&self.plan.inputs, &self.plan.construction).unwrap_or_default()
    }
}

/// How far a seam stands out of its panel from the straight between two of its points, in the middle; the points in the
/// order in which the seam runs.
fn stands_out(seam: &Chain, from: Point, to: Point) -> Option<f64> {
    let middle = from.midpoint(to);
    let x = seam.crossings(middle.y).min_by(|a, b| (a - middle.x).abs().total_cmp(&(b - middle.x).abs()))?;
    // Down the side what stands out lies to the side of the straight, up the inseam to the fork.
    let out = if to.y > from.y { x - middle.x } else { middle.x - x };
    let way = to - from;
    Some(out * way.y.abs() / way.hypot())
}

fn sorted(mut lengths: Vec<f64>) -> Vec<f64> {
    lengths.sort_by(f64::total_cmp);
    lengths
}

/// So far which way from a place.
fn way(by: Vec2) -> Value {
    let upright = if by.y < 0.0 { Sentence::new("{by} above") } else { Sentence::new("{by} below") };
    let across = if by.x < 0.0 {
        Sentence::new("{by} towards the fork of")
    } else {
        Sentence::new("{by} towards the side of")
    };
    let (upright, across) = (upright.with("by", amount(by.y.abs())), across.with("by", amount(by.x.abs())));
    match (by.x.abs() > SEEN, by.y.abs() > SEEN) {
        (true, false) => across.into(),
        (false, true) => upright.into(),
        _ => upright.then(Sentence::new(" and ").then(across)).into(),
    }
}

/// Darts and what they take.
fn together(count: usize, taken: f64) -> Value {
    match count {
        0 => "no dart".into(),
        1 => Sentence::new("one dart of {taken}").with("taken", amount(taken)).into(),
        more => Sentence::new("{count} darts of {taken} together")
            .with("count", more)
            .with("taken", amount(taken))
            .into(),
    }
}

/// A leg in one piece: whether the side lines of both panels still lie on each other.
pub(super) fn one_piece(recipe: &Recipe, plain: &Shape) -> Option<Notice> {
    /// Enough places to see a curve by.
    const PARTS: u32 = 20;
    if !recipe.one_piece {
        return None;
    }
    let hem = plain.front.roles[Role::SideHem].y;
    let hip = plain.front.roles[Role::SideHip].y.max(plain.back.roles[Role::SideHip].y);
    let off = |panel: &PanelShape, y: f64| {
        let (top, end) = (panel.roles[Role::SideHip], panel.roles[Role::SideHem]);
        let [_, side] = panel.ends_at(y)?;
        Some((side - top.lerp(end, (y - top.y) / (end.y - top.y)).x).abs())
    };
    let apart = (1..PARTS)
        .map(|part| hip + (hem - hip) * f64::from(part) / f64::from(PARTS))
        .filter_map(|y| Some(off(&plain.front, y)?.max(off(&plain.back, y)?)))
        .fold(0.0, f64::max);
    Some(if apart > 2.0 * SEEN {
        Notice::mind(
            "one-piece",
            "the leg is drafted in one piece, but its side lines leave the straight by {apart} below the hip: it keeps a \
             side seam, or take the difference into it",
        )
        .with("apart", amount(apart))
    } else {
        Notice::note(
            "one-piece",
            "the leg is drafted in one piece: lay front and back together along the side from hip to hem and cut them as \
             one; above the hip the side is sewn as a dart",
        )
    })
}
