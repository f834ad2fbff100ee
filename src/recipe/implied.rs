//! What a recipe may leave out because its draft has no knee line or no hip line: the level by the body, and the points
//! where the panel's own lines meet it. They become steps like others, so that they are printed, taught and drawn.

use super::{
    Line, PointId, PointRule, QuantityRule, Step, Track,
    read::Points,
    step::Entry,
    steps::{Known, Steps},
    table::Reader,
    wording,
};
use crate::{
    recipe::Reference,
    terms::{Level, Panel},
};

/// A level that a recipe does not draw.
struct Implied {
    level: Level,
    rule: &'static str,
    says: &'static str,
}

/// The levels that a draft may lack.
const IMPLIED: [Implied; 2] = [
    Implied {
        level: Level::Hip,
        rule: "waist_to_hip",
        says: "the recipe draws no hip line: square it out where the body's hip is",
    },
    Implied {
        level: Level::Knee,
        rule: "1/2 crotch_line + 1/2 hem_line - 5 cm",
        says: "the recipe draws no knee line: square one out 5 cm above the middle of crotch and hem, for notches and \
               for judging the leg (common practice, no source)",
    },
];

/// The steps that say what the recipe left out.
pub(super) struct Implying<'r, 'k, 's> {
    pub(super) known: Known<'k>,
    pub(super) steps: &'r mut Steps,
    pub(super) reader: &'r mut Reader<'s>,
}

impl Implying<'_, '_, '_> {
    /// Whether the recipe draws the level itself.
    pub(super) fn draws(&self, level: Level) -> bool {
        let name = format!("{level}_line");
        self.known.lines.iter().any(|line| line.name == name && !line.implied())
    }

    /// Squares out the levels that the recipe lacks.
    pub(super) fn levels(&mut self) {
        for implied in &IMPLIED {
            let name = format!("{}_line", implied.level);
            let lacking = self.known.lines.iter().all(|line| line.name != name);
            let based = ["crotch_line", "hem_line"]
                .iter()
                .all(|needed| self.known.lines.iter().any(|line| line.name == *needed));
            if !(lacking && based) {
                continue;
            }
            // Cannot fail: the rules above hold names of the trade and the two lines that were looked for.
            let Ok(proportion) = super::Proportion::parse(implied.rule, self.known.names) else { continue };
            let rule = QuantityRule::Is(proportion);
            let index = self.known.lines.len();
            self.known.names.declare(&name, Reference::Line(index));
            let words = wording::level(&name, &rule, &self.known.words());
            self.known.lines.push(Line::of_step(&name, rule.clone(), &words, Some(implied.says), 0..0));
            let entry = entry(&name, words, Some(implied.says));
            self.push(Step::Level { index, rule, say: Some(implied.says.to_owned()), entry }, Panel::Front);
        }
    }

    /// Marks where the line through two points meets a level of the panel; the name is of the panel and the role.
    pub(super) fn meeting(
        &mut self,
        panel: Panel,
        role: &str,
        ends: [PointId; 2],
        level: Level,
    ) -> Option<PointId> {
        let on = self.known.lines.iter().position(|line| line.name == format!("{level}_line"))?;
        let rule = PointRule::Meet { line: Track::Through(ends), on: Track::Level(on), towards: None };
        let name = free_name(self.known.points, &format!("{panel}_{role}"));
        let id = PointId(self.known.points.names.len());
        self.known.points.names.push(name.clone());
        let words = wording::point(&name, &rule, &self.known.words());
        let entry = entry(&name, words, None);
        self.push(Step::Point { id, rule, say: None, entry }, panel);
        Some(id)
    }

    fn push(&mut self, step: Step, panel: Panel) {
        self.steps.steps.push(step);
        self.steps.panels.push(Some(panel));
    }
}

fn entry(makes: &str, (title, rule): (String, String), say: Option<&str>) -> Entry {
    Entry {
        panel: Panel::Front,
        number: 0,
        title: say.map_or_else(|| title.clone(), str::to_owned),
        plain: title,
        rule,
        makes: makes.to_owned(),
        place: 0..0,
    }
}

fn free_name(points: &Points, wanted: &str) -> String {
    let mut name = wanted.to_owned();
    while points.names.contains(&name) {
        name.push('\'');
    }
    name
}

impl Line {
    /// Whether the recipe leaves it out.
    fn implied(&self) -> bool {
        self.by_step && self.place == (0..0)
    }
}
