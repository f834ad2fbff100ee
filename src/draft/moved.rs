//! What became of the figures that a recipe of one's own copies from a book: each that a rule of the trade or truing
//! changed, and by how much. The recipes that come with the program print no book's figures; their lessons tell.

use kurbo::Vec2;

use super::{
    PanelShape, Shape,
    plan::{PanelPlan, Plan},
};
use crate::{
    curve::length,
    mistake::Notice,
    recipe::{PanelPlan as PanelRule, Recipe},
    terms::{Panel, Role, Word},
};

/// Less than this is not seen on paper, cm.
const SEEN: f64 = 0.05;

/// A note for every figure of the recipe that the plain trued panels have otherwise; `plain` is without fit parameters
/// and with its waist where it was measured.
pub(super) fn notices(recipe: &Recipe, plan: &Plan, plain: &Shape) -> Vec<Notice> {
    if recipe.is_shipped() || !recipe.truing.on {
        return Vec::new();
    }
    let mut notices = Vec::new();
    let panels = [(&plan.front, Some(&recipe.front)), (&plan.back, recipe.back.as_ref())];
    for (planned, rule) in panels {
        let Some(rule) = rule else { continue };
        let shape = plain.panel(planned.panel);
        notices.extend(points(recipe, planned, rule, shape));
        notices.extend(waist(plan, planned, rule, shape));
    }
    notices
}

fn points(recipe: &Recipe, planned: &PanelPlan, rule: &PanelRule, shape: &PanelShape) -> Vec<Notice> {
    let moved = |role: &Role| {
        let by = shape.roles[*role] - planned.drawn[*role];
        (by.hypot() > SEEN).then(|| {
            let point = recipe.point_name(rule.roles[*role]);
            told(&format!(
                "the {} {} (`{point}`) lies {} where the recipe has it",
                planned.panel,
                role.key().replace('_', " "),
                way(by)
            ))
        })
    };
    Role::ALL.iter().filter_map(moved).collect()
}

/// So far which way from a place.
fn way(by: Vec2) -> String {
    let across = if by.x < 0.0 { "towards the fork of" } else { "towards the side of" };
    let upright = if by.y < 0.0 { "above" } else { "below" };
    match (by.x.abs() > SEEN, by.y.abs() > SEEN) {
        (true, false) => format!("{:.2} cm {across}", by.x.abs()),
        (false, true) => format!("{:.2} cm {upright}", by.y.abs()),
        _ => format!("{:.2} cm {upright} and {:.2} cm {across}", by.y.abs(), by.x.abs()),
    }
}

fn waist(plan: &Plan, planned: &PanelPlan, rule: &PanelRule, shape: &PanelShape) -> Vec<Notice> {
    let panel: Panel = planned.panel;
    let value = |proportion: &crate::recipe::Proportion| {
        proportion.value(&plan.inputs, &plan.construction).unwrap_or_default()
    };
    let mut notices = Vec::new();
    let drawn: Vec<[f64; 2]> = rule.darts.iter().map(|dart| [value(&dart.intake), value(&dart.length)]).collect();
    let (count, sewn) = (drawn.len(), shape.darts.iter().filter(|dart| dart.intake() > SEEN).count());
    let taken: f64 = drawn.iter().map(|[intake, _]| intake).sum();
    let takes: f64 = shape.darts.iter().map(super::Dart::intake).sum();
    if count != sewn || (taken - takes).abs() > SEEN {
        let many = |count: usize| match count {
            0 => "no dart".to_owned(),
            1 => "one dart".to_owned(),
            more => format!("{more} darts"),
        };
        notices.push(told(&format!(
            "the {panel} has {} of {takes:.2} cm together where the recipe has {} of {taken:.2} cm",
            many(sewn),
            many(count)
        )));
    }
    if count == sewn {
        // Their plan is in the order along the waist; the recipe's lengths are compared with the same lengths, sorted.
        let sorted = |mut lengths: Vec<f64>| {
            lengths.sort_by(f64::total_cmp);
            lengths
        };
        let wanted = sorted(drawn.iter().map(|[_, length]| *length).collect());
        let has = planned.darts.iter().filter(|dart| dart.pleat.is_none()).map(|dart| dart.length);
        for (wanted, has) in wanted.iter().zip(sorted(has.collect())) {
            if (wanted - has).abs() > SEEN {
                notices.push(told(&format!(
                    "a {panel} dart is {has:.2} cm long where the recipe has {wanted:.2} cm"
                )));
            }
        }
    }
    let pleats: f64 = rule.pleats.iter().map(|pleat| value(&pleat.intake)).sum();
    let net = planned.drawn[Role::CentreWaist].distance(planned.drawn[Role::SideWaist]) - taken - pleats;
    let is = length(&shape.sewn_waist);
    if (is - net).abs() > SEEN {
        notices.push(told(&format!(
            "the sewn waist of the {panel} is {is:.2} cm where the recipe has {net:.2} cm"
        )));
    }
    notices
}

fn told(what: &str) -> Notice {
    Notice::new("figure-changed", format!("{what}: changed by truing or by a rule of the trade"))
}

/// A leg in one piece: whether the side lines of both panels still lie on each other.
pub(super) fn one_piece(recipe: &Recipe, plain: &Shape) -> Option<Notice> {
    if !recipe.one_piece {
        return None;
    }
    let hem = plain.front.roles[Role::SideHem].y;
    let hip = plain.front.roles[Role::SideHip].y.max(plain.back.roles[Role::SideHip].y);
    let ends = |panel: &PanelShape, y: f64| panel.ends_at(y).map(|[_, side]| side);
    let apart = (1..20)
        .filter_map(|part| {
            let y = hip + (hem - hip) * f64::from(part) / 20.0;
            let [front, back] = [&plain.front, &plain.back].map(|panel| {
                let (top, end) = (panel.roles[Role::SideHip], panel.roles[Role::SideHem]);
                ends(panel, y).map(|x| x - top.lerp(end, (y - top.y) / (end.y - top.y)).x)
            });
            Some(front?.abs().max(back?.abs()))
        })
        .fold(0.0, f64::max);
    let text = if apart > 2.0 * SEEN {
        format!(
            "the leg is drafted in one piece, but its side lines leave the straight by {apart:.2} cm below the hip: it \
             keeps a side seam, or take the difference into it"
        )
    } else {
        "the leg is drafted in one piece: lay front and back together along the side from hip to hem and cut them as \
         one; above the hip the side is sewn as a dart"
            .to_owned()
    };
    Some(Notice::new("one-piece", text))
}
