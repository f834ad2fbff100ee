//! What makes a recipe itself: the rules behind its roles, in one order for all, so that recipes can be compared.

use crate::{
    recipe::{BendRule, PanelPlan, PointRule, Recipe, Step},
    terms::{EaseAt, Level, Panel, Role, Style, Word},
};

/// One trait of a recipe.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Feature {
    /// What it is about.
    pub name: String,
    /// How the recipe does it, as the trade writes it.
    pub rule: String,
    /// It is a rule of construction, not a number of ease or style.
    pub structural: bool,
}

/// The traits of a recipe, the same names in the same order for every recipe.
pub fn features(recipe: &Recipe) -> Vec<Feature> {
    let mut features = Vec::new();
    let mut add = |name: String, rule: String, structural| features.push(Feature { name, rule, structural });
    for level in [Level::Hip, Level::Crotch, Level::Knee] {
        let line = recipe.level(level).and_then(|index| recipe.lines.get(index));
        add(format!("{level} line"), line.map_or_else(String::new, |line| line.at.to_string()), true);
    }
    for (panel, plan) in [(Panel::Front, Some(&recipe.front)), (Panel::Back, recipe.back.as_ref())] {
        for role in [
            Role::CentreWaist,
            Role::CurveStart,
            Role::CrotchPoint,
            Role::SideHip,
            Role::SideWaist,
            Role::SideKnee,
        ] {
            let rule = plan.map_or_else(|| "none".to_owned(), |plan| rule_of(recipe, plan, role));
            add(format!("{panel} {}", role.key().replace('_', " ")), rule, true);
        }
        add(format!("{panel} bend"), plan.map_or_else(String::new, |plan| bend(recipe, plan)), true);
        add(format!("{panel} darts"), plan.map_or_else(String::new, |plan| darts(recipe, plan)), true);
    }
    for at in EaseAt::ALL {
        let row = recipe.ease.row(*at);
        add(format!("{} ease", at.key().replace('_', " ")), both(&row.women, &row.men), false);
    }
    for of in Style::ALL {
        let rule = recipe.style.row(*of).map_or_else(|| "none".to_owned(), |row| both(&row.women, &row.men));
        add(of.key().replace('_', " "), rule, false);
    }
    features
}

fn both<T: PartialEq + std::fmt::Display>(women: &T, men: &T) -> String {
    if women == men { women.to_string() } else { format!("women {women}, men {men}") }
}

/// The rule of the step that makes a role's point, with the quantities that it names worked in.
fn rule_of(recipe: &Recipe, plan: &PanelPlan, role: Role) -> String {
    let point = plan.roles[role as usize];
    let made = recipe.steps.iter().find_map(|step| match step {
        Step::Point { id, rule, entry, .. } if *id == point => Some((rule, entry)),
        Step::Point { .. } | Step::Quantity { .. } => None,
    });
    let Some((rule, entry)) = made else { return "the start".to_owned() };
    let plain = entry.plain.strip_prefix(&format!("mark {} ", entry.makes)).unwrap_or(&entry.plain);
    match rule {
        // Its plain sentence says the rule already.
        PointRule::Meet { .. } => plain.to_owned(),
        _ => with_quantities(recipe, &format!("{plain}: {}", entry.rule)),
    }
}

/// The rule, followed by what the recipe's own quantities in it are.
fn with_quantities(recipe: &Recipe, rule: &str) -> String {
    let mut out = rule.to_owned();
    for step in &recipe.steps {
        if let Step::Quantity { entry, .. } = step
            && names(rule, &entry.makes)
        {
            out.push_str(&format!("; {} = {}", entry.makes, entry.rule));
        }
    }
    out
}

/// Whether a rule names a quantity, as a whole word.
fn names(rule: &str, quantity: &str) -> bool {
    rule.split(|letter: char| !(letter.is_alphanumeric() || letter == '_')).any(|word| word == quantity)
}

fn bend(recipe: &Recipe, plan: &PanelPlan) -> String {
    match plan.bend {
        BendRule::Fullness(fullness) => format!("fullness {fullness}"),
        BendRule::Guide(point) => format!("through {}", recipe.point_name(point).replace('_', " ")),
    }
}

fn darts(recipe: &Recipe, plan: &PanelPlan) -> String {
    if plan.darts.is_empty() {
        return "none".to_owned();
    }
    let one = |dart: &crate::recipe::DartRule| format!("{} wide, {} long", dart.intake, dart.length);
    let all: Vec<String> = plan.darts.iter().map(one).collect();
    with_quantities(recipe, &all.join(" and "))
}
