//! What makes a recipe itself: the rules behind its roles, in one order for all, so that recipes can be compared.

use crate::{
    recipe::{BendRule, DartRule, PanelRules, PointRule, Recipe, Step},
    terms::{EaseAt, Edge, Level, Panel, Role, Style, Word},
    voice::spoken,
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
        add(format!("{level} line"), line.map_or_else(String::new, |line| line.rule.clone()), true);
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
        add(format!("{panel} bow"), plan.map_or_else(String::new, bow), true);
        let darts = |plan: &PanelRules| folds(recipe, &plan.darts);
        add(format!("{panel} darts"), plan.map_or_else(String::new, darts), true);
        let pleats = |plan: &PanelRules| folds(recipe, &plan.pleats);
        add(format!("{panel} pleats"), plan.map_or_else(String::new, pleats), true);
    }
    let as_drawn = (recipe.truing.waist_as_drawn, recipe.truing.inseam_as_drawn);
    let truing = match (recipe.truing.on, as_drawn) {
        (false, _) => "none: as its source prints it",
        (true, (true, true)) => "all but the waist and the length of the inseam, which are as drawn",
        (true, (true, false)) => "all but the waist, which is as drawn",
        (true, (false, true)) => "all but the length of the inseam, which is as drawn",
        (true, (false, false)) => "all",
    };
    add("truing".to_owned(), truing.to_owned(), true);
    let seams: Vec<String> = Edge::ALL
        .iter()
        .filter(|edge| recipe.seams.along(**edge) != 0.0)
        .map(|edge| format!("{edge} {}", recipe.seams.along(*edge)))
        .collect();
    let seams = if seams.is_empty() { "none".to_owned() } else { seams.join(", ") };
    add("seams included, cm".to_owned(), seams, true);
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

/// The rule of the step that makes a role's point, with what it names.
fn rule_of(recipe: &Recipe, plan: &PanelRules, role: Role) -> String {
    let point = plan.roles[role];
    let made = recipe.steps.iter().find_map(|step| match step {
        Step::Point { id, rule, entry, .. } if *id == point => Some((rule, entry)),
        Step::Point { .. } | Step::Quantity { .. } | Step::Level { .. } => None,
    });
    let Some((rule, entry)) = made else { return "the start".to_owned() };
    let plain = entry.plain.strip_prefix(&format!("mark {} ", entry.makes)).unwrap_or(&entry.plain);
    match rule {
        // Its plain sentence says the rule already.
        PointRule::Meet { .. } => format!("{plain}{}", meanings(recipe, &entry.rule)),
        _ => format!("{plain}: {}{}", entry.rule, meanings(recipe, &entry.rule)),
    }
}

/// What the recipe's own quantities and lines that a rule names are.
fn meanings(recipe: &Recipe, rule: &str) -> String {
    let quantities = recipe.steps.iter().filter_map(|step| match step {
        Step::Quantity { entry, .. } => Some((&entry.makes, entry.rule.clone())),
        Step::Point { .. } | Step::Level { .. } => None,
    });
    // The lines that every recipe has are traits of their own.
    let levels =
        [Level::Waist, Level::Hip, Level::Crotch, Level::Knee, Level::Hem].map(|level| recipe.level(level));
    let lines = recipe.lines.iter().enumerate().filter(|(index, _)| !levels.contains(&Some(*index)));
    let lines = lines.map(|(_, line)| (&line.name, line.rule.clone()));
    quantities
        .chain(lines)
        .filter(|(name, _)| names(rule, name))
        .map(|(name, is)| format!("; {name} = {is}"))
        .collect()
}

/// Whether a rule has the name in it, as a whole word.
fn names(rule: &str, name: &str) -> bool {
    rule.split(|letter: char| !(letter.is_alphanumeric() || letter == '_')).any(|word| word == name)
}

/// How the crotch curve bends.
pub(super) fn bend(recipe: &Recipe, plan: &PanelRules) -> String {
    match plan.bend {
        BendRule::Fullness(fullness) => format!("fullness {fullness}"),
        BendRule::Guide(point) => format!("through {}", recipe.point_name(point).replace('_', " ")),
    }
}

/// How far the seams stand out from straight, where the recipe says so.
pub(super) fn bow(plan: &PanelRules) -> String {
    let given = plan.bow.by_key().filter_map(|(key, bow)| Some(format!("{} {}", spoken(key), bow.as_ref()?)));
    let given: Vec<String> = given.collect();
    if given.is_empty() { "smooth through the points".to_owned() } else { given.join(", ") }
}

/// Darts or pleats.
fn folds(recipe: &Recipe, folds: &[DartRule]) -> String {
    if folds.is_empty() {
        return "none".to_owned();
    }
    let one = |fold: &DartRule| format!("{} wide, {} long", fold.intake, fold.length);
    let all: Vec<String> = folds.iter().map(one).collect();
    let all = all.join(" and ");
    format!("{all}{}", meanings(recipe, &all))
}
