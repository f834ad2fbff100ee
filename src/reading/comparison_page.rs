//! Recipes side by side as a page.

use std::fmt::Write;

use crate::{
    draft::{Draft, PanelShape},
    fit::{LevelRow, Report},
    recipe::PanelRules,
    terms::{Level, Role},
    told::{Feature, features},
};

/// The page that says in which rules recipes differ, and what they come to on one body: tables in Markdown.
pub fn comparison_page(drafts: &[Draft]) -> String {
    let mut out = String::new();
    // Writing to a string cannot fail, here and below.
    let _ = write_page(&mut out, drafts);
    out
}

fn write_page(out: &mut String, drafts: &[Draft]) -> std::fmt::Result {
    let names: Vec<&str> = drafts.iter().map(|draft| draft.recipe.name.as_str()).collect();
    let heading = |out: &mut String, title: &str| {
        writeln!(out, "\n## {title}\n\n| | {} |\n|---|{}", names.join(" | "), "---|".repeat(names.len()))
    };
    for draft in drafts {
        writeln!(out, "- **{}**: {}", draft.recipe.name, draft.recipe.title)?;
    }
    let all: Vec<Vec<Feature>> = drafts.iter().map(|draft| features(&draft.recipe)).collect();
    for (structural, title) in [(true, "Rules"), (false, "Ease and style, cm")] {
        heading(out, title)?;
        let first = all.first().map(Vec::as_slice).unwrap_or_default();
        for (index, feature) in
            first.iter().enumerate().filter(|(_, feature)| feature.structural == structural)
        {
            let rules: Vec<&str> =
                all.iter().map(|of| of.get(index).map_or("", |feature| feature.rule.as_str())).collect();
            writeln!(out, "| {} | {} |", feature.name, rules.join(" | "))?;
        }
    }
    let body = drafts.first().map_or("nobody", |draft| draft.name.as_str());
    heading(out, &format!("What the rules come to on the demo body {body}"))?;
    let all: Vec<Vec<(&str, f64)>> = drafts.iter().map(numbers).collect();
    for (index, (name, _)) in all.first().map(Vec::as_slice).unwrap_or_default().iter().enumerate() {
        let values: Vec<String> = all
            .iter()
            .filter_map(|of| of.get(index))
            .map(|(_, value)| format!("{:.1}", value + 0.0))
            .collect();
        writeln!(out, "| {name} | {} |", values.join(" | "))?;
    }
    Ok(())
}

/// What tells one recipe from another on a body, in cm or degrees.
fn numbers(draft: &Draft) -> Vec<(&'static str, f64)> {
    let (front, back) = (&draft.shape.front, &draft.shape.back);
    let report = Report::of(&draft.plan, &draft.parameters, &draft.shape, &draft.body);
    let extension = |panel: &PanelShape, rule: &PanelRules| {
        let [crease, vertical] =
            [rule.crease, rule.vertical].map(|id| draft.plan.construction.points[id.0].x);
        vertical - crease - panel.roles[Role::CrotchPoint].x
    };
    let back_rule = draft.recipe.back.as_ref().unwrap_or(&draft.recipe.front);
    let centre = back.roles[Role::CentreWaist] - back.roles[Role::CurveStart];
    let wide = |panel: &PanelShape, inner: Role, side: Role| panel.roles[side].x - panel.roles[inner].x;
    let ease = |level: Level| report.levels.iter().find(|row| row.level == level).map_or(0.0, LevelRow::ease);
    vec![
        ("front extension", extension(front, &draft.recipe.front)),
        ("back extension, from the recipe's own vertical", extension(back, back_rule)),
        (
            "back crotch point beyond the front's",
            front.roles[Role::CrotchPoint].x - back.roles[Role::CrotchPoint].x,
        ),
        ("lean of the centre back, degrees", centre.x.atan2(-centre.y).to_degrees()),
        (
            "centre back above the centre front at the finished waist",
            front.roles[Role::CentreWaist].y - back.roles[Role::CentreWaist].y,
        ),
        ("finished waist below the measured one", front.cut_off.map_or(0.0, |cut| cut.drop)),
        ("back hip wider than the front", draft.plan.back.hip_width - draft.plan.front.hip_width),
        (
            "back knee wider than the front",
            wide(back, Role::InnerKnee, Role::SideKnee) - wide(front, Role::InnerKnee, Role::SideKnee),
        ),
        ("front darts take", draft.plan.front.intake),
        ("back darts take", draft.plan.back.intake),
        ("thigh ease", ease(Level::Thigh)),
        ("knee ease", ease(Level::Knee)),
        ("crotch seam, front", report.crotch.front),
        ("crotch seam, back", report.crotch.back),
        ("crotch ease", report.crotch.ease().unwrap_or(0.0)),
    ]
}
