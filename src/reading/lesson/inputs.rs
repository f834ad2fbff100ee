//! What the construction starts from: the measurements, the ease and the style that its rules name.

use super::{
    Class,
    sums::{Sums, operand},
};
use crate::{
    booklet::{Block, Column, Table},
    recipe::{Proportion, QuantityRule, Reference, Step},
    terms::{Panel, Style, Word},
    voice::{capital, listed, named, rule_of_thumb, sentence, spoken},
};

impl Class<'_> {
    /// Rules are worked out on this body.
    pub(super) fn sums(&self) -> Sums<'_> {
        Sums { plan: &self.draft().plan, unit: self.unit() }
    }

    /// The chapter on what is needed.
    pub(super) fn inputs(&self) -> Vec<Block> {
        let columns = || {
            vec![
                Column::words("name in the rules", 3.2),
                Column::numbers("length", 1.3),
                Column::words("what it is", 5.5),
            ]
        };
        let mut body = Table::new("Measurements, without ease", columns());
        let mut added = Table::new("Ease, style and what this recipe asks", columns());
        for (reference, name) in self.names() {
            let value = named(operand(self.sums().value_of(reference), self.unit(), 3));
            let name = named(spoken(&name));
            match reference {
                Reference::Body(measurement) => {
                    let about = measurement.about();
                    let from = self.draft().body.value(measurement).map_or("", |value| value.from.key());
                    body.row([name, value, named(format!("{}, {from}", about.title))]);
                }
                Reference::Ease(at) => {
                    added.row([name, value, named(format!("ease at the {}", spoken(at.key())))]);
                }
                Reference::Style(style) => {
                    added.row([name, value, named(self.style(style))]);
                }
                Reference::Ask(_) => {
                    added.row([name, value, "an amount that this recipe asks for".into()]);
                }
                Reference::Line(_) | Reference::Quantity(_) => {}
            }
        }
        let recipe = &self.draft().recipe;
        let mut blocks = vec![Block::chapter("What you need")];
        blocks.push(Block::plain(
            "Large paper, a long ruler, a set square, a curve, a tape, a hard pencil; and these lengths.",
        ));
        blocks.push(Block::Table(body));
        if !added.rows.is_empty() {
            blocks.push(Block::Table(added));
        }
        let notes: Vec<String> =
            recipe.notes.iter().map(|note| sentence(&rule_of_thumb(note, self.unit()))).collect();
        if !notes.is_empty() {
            blocks.push(Block::remark(&notes.join(" ")));
        }
        let estimated: Vec<String> = self
            .names()
            .into_iter()
            .filter_map(|(reference, _)| match reference {
                Reference::Body(measurement) => self
                    .draft()
                    .body
                    .value(measurement)
                    .filter(|value| value.from == crate::body::Origin::Estimated)
                    .map(|_| measurement.about().title.to_owned()),
                _ => None,
            })
            .collect();
        if !estimated.is_empty() {
            let verb = if estimated.len() == 1 { "was" } else { "were" };
            blocks.push(Block::led(
                "Mind.",
                &format!(
                    "{} {verb} not taken on this body but estimated from the others. Measure if you can.",
                    capital(&listed(&estimated))
                ),
            ));
        }
        blocks
    }

    /// What a width of style is, and by which rule of the recipe, where it is the recipe's.
    fn style(&self, style: Style) -> String {
        let name = format!("style: {}", spoken(style.key()));
        let value = self.draft().plan.inputs.style[style];
        let Some(row) = self.draft().recipe.style.row(style) else { return name };
        let rule = [&row.women, &row.men].into_iter().find(|rule| {
            rule.references().next().is_some()
                && value.is_some_and(|value| (self.sums().value(rule) - value).abs() < 1e-9)
        });
        rule.map_or(name.clone(), |rule| format!("{name}, {}", self.sums().rule(rule)))
    }

    /// Every name of the trade or of the recipe's own that a rule of the construction uses, in the order of use.
    fn names(&self) -> Vec<(Reference, String)> {
        let mut names: Vec<(Reference, String)> = Vec::new();
        let mut add = |reference: Reference, name: &str| {
            let known = matches!(reference, Reference::Line(_) | Reference::Quantity(_))
                || names.iter().any(|(known, _)| *known == reference);
            if !known {
                names.push((reference, name.to_owned()));
            }
        };
        let mut all = |rule: &Proportion| {
            rule.parts().filter_map(|part| part.of).for_each(|(reference, name)| add(reference, name));
        };
        let recipe = &self.draft().recipe;
        let mut ladders = Vec::new();
        for rule in recipe.lines.iter().filter(|line| !line.by_step).map(|line| &line.at) {
            match rule {
                QuantityRule::Is(rule) => all(rule),
                QuantityRule::Ladder(ladder) => ladders.push(ladder),
                QuantityRule::Between(_) | QuantityRule::Curve { .. } | QuantityRule::Depth(_) => {}
            }
        }
        for step in &recipe.steps {
            match step {
                Step::Quantity { rule, .. } | Step::Level { rule, .. } => match rule {
                    QuantityRule::Is(rule) => all(rule),
                    QuantityRule::Ladder(ladder) => ladders.push(ladder),
                    QuantityRule::Between(_) | QuantityRule::Curve { .. } | QuantityRule::Depth(_) => {}
                },
                Step::Point { rule, .. } => rule.proportions().for_each(&mut all),
            }
        }
        for panel in Panel::ALL {
            let rules = self.rules(*panel);
            rules.darts.iter().chain(&rules.pleats).for_each(|dart| {
                all(&dart.intake);
                all(&dart.length);
            });
        }
        for ladder in ladders {
            add(ladder.by, &ladder.by_name);
        }
        names
    }
}
