//! The construction step by step, for the sheet to draw again.

use serde::Serialize;

use crate::{
    answer::Place,
    draft::Draft,
    drawing::path_data,
    paper::drawn_for,
    terms::{Role, Word},
};

/// A step and what it leaves on the paper of its panel, from the crease.
#[derive(Serialize)]
pub(super) struct Step<'a> {
    panel: &'static str,
    number: usize,
    title: &'a str,
    rule: String,
    /// The line that a hand draws for it.
    line: Option<String>,
    /// The points that it makes or moves.
    points: Vec<(&'a str, Place)>,
}

/// Every step of the record of a draft: those of the recipe, then what parameters and truing moved.
pub(super) fn steps(draft: &Draft) -> Vec<Step<'_>> {
    let construction = draft.recipe.steps.iter();
    draft
        .steps()
        .into_iter()
        .enumerate()
        .map(|(index, step)| {
            let drawn = construction.clone().nth(index).map(|it| drawn_for(draft, it));
            let (line, points) = match drawn {
                Some(Some((line, at))) => {
                    (Some(path_data(&line, 3)), step.points.iter().map(|name| (*name, Place(at))).collect())
                }
                Some(None) => (None, Vec::new()),
                None => {
                    let panel = draft.shape.panel(step.panel);
                    let roles = step
                        .points
                        .iter()
                        .filter_map(|name| Some((*name, Place(panel.roles[Role::from_key(name)?]))));
                    (None, roles.collect())
                }
            };
            Step {
                panel: step.panel.key(),
                number: step.number,
                title: step.title,
                rule: step.rule.into_owned(),
                line,
                points,
            }
        })
        .collect()
}
