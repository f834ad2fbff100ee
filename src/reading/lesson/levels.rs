//! The level lines, which every construction begins with.

use super::Class;
use crate::{
    booklet::{Block, Booklet, Column, Table},
    recipe::QuantityRule,
    terms::Panel,
    voice::{amount, named, rule_of_thumb, sentence, spoken},
};

impl Class<'_> {
    /// The chapter on the level lines.
    pub(super) fn level_lines(&self) -> Vec<Block> {
        let recipe = &self.draft().recipe;
        let made = &self.draft().plan.construction;
        let sums = self.sums();
        let mut table = Table::new(
            "Level lines, measured downwards from the waist line",
            vec![
                Column::words("line", 2.2),
                Column::words("rule and sum", 5.4),
                Column::numbers("below", 1.4),
            ],
        );
        let mut said = Vec::new();
        for (line, y) in recipe.lines.iter().zip(&made.lines).skip(1).filter(|(line, _)| !line.by_step) {
            let sum = match &line.at {
                QuantityRule::Is(rule) => match sums.worked(rule) {
                    [rule, numbers] if rule == numbers => rule,
                    [rule, numbers] => format!("{rule} = {numbers}"),
                },
                QuantityRule::Ladder(ladder) => sums.ladder(ladder),
                // A step squares it out; it is not in this table.
                QuantityRule::Between(_) | QuantityRule::Curve { .. } | QuantityRule::Depth(_) => {
                    String::new()
                }
            };
            table.row([named(spoken(&line.name)), named(sum), amount(*y)]);
            said.push(crate::drawing::Wording::line(&sentence(&rule_of_thumb(&line.says, self.unit()))));
        }
        let stage = self.stage(Panel::Front, 0);
        let words = vec![
            Block::plain(
                "Draw a long upright line and square the waist line out of its top. Everything is measured \
                 from these two. Then square out the levels; what lies above the waist line has a minus.",
            ),
            Block::List(said),
        ];
        vec![
            Block::chapter("The level lines"),
            Block::beside(words, stage.levels_alone(), Booklet::width()),
            Block::Table(table),
            Block::led(
                "Why.",
                "A level is where body and pattern are compared, so front and back must have it at one \
                 height: on the hip line the seat is widest, the crotch line lies below the body by the \
                 ease of depth, at the knee the leg bends.",
            ),
        ]
    }
}
