//! One step of the construction: what is said, what is done, how it is worked out, what it is for.

use super::{
    Class,
    stage::{Along, Laid},
    sums::{fine, fine_length},
};
use crate::{
    booklet::{Block, Booklet},
    drawing::Wording,
    recipe::{Height, PointId, PointRule, Proportion, QuantityRule, Reach, Slope, Step, Track, towards},
    terms::Word,
    voice::{capital, rule_of_thumb, sentence, spoken},
};

/// What is done with the pencil, and the sums it takes.
struct Doing {
    words: String,
    sums: Vec<String>,
    /// Lengths to write beside the new line.
    laid: Vec<Laid>,
}

impl Class<'_> {
    /// A step with its picture where it draws something.
    pub(super) fn step(&self, number: usize, step: &Step) -> Vec<Block> {
        let entry = step.entry();
        let name = spoken(&entry.makes);
        let heading =
            Block::section(&format!("{} {}. {}", capital(entry.panel.key()), entry.number, capital(&name)));
        let mut blocks = vec![heading, Block::plain(&sentence(&rule_of_thumb(&entry.title, self.unit())))];
        let why = self.reason(step).map(|reason| Block::led("Why.", &reason));
        match step {
            Step::Quantity { rule, .. } | Step::Level { rule, .. } => {
                let value = step
                    .value(&self.draft().plan.inputs, &self.draft().plan.construction)
                    .unwrap_or_default();
                if let Some(words) = self.reading(rule) {
                    blocks.push(Block::led("Do.", &words));
                }
                blocks.push(Block::Sum(Wording::paragraph(&self.sums().quantity(entry, rule, value))));
                blocks.extend(why);
                vec![Block::Columns(vec![crate::booklet::Strip { share: 1.0, blocks }])]
            }
            Step::Point { id, rule, .. } => {
                let doing = self.doing(*id, rule);
                blocks.push(Block::led("Do.", &doing.words));
                blocks.extend(doing.sums.iter().map(|sum| Block::Sum(Wording::paragraph(sum))));
                blocks.push(Block::remark(&self.place(*id)));
                blocks.extend(why);
                let picture = self.stage(entry.panel, number).step(*id, rule, &doing.laid);
                vec![Block::beside(blocks, picture, Booklet::width())]
            }
        }
    }

    fn doing(&self, id: PointId, rule: &PointRule) -> Doing {
        let name = self.point_name(id);
        let at = |id: &PointId| self.point_name(*id);
        let mut doing = Doing { words: String::new(), sums: Vec::new(), laid: Vec::new() };
        doing.words = match rule {
            PointRule::From { from, across, height } => {
                let mut ways = Vec::new();
                if let Some((way, length)) = across {
                    ways.push(format!(
                        "{} {}",
                        self.length(length, Along::Across, &mut doing),
                        towards(*way)
                    ));
                }
                match height {
                    None => {}
                    Some(Height::Up(length)) => {
                        ways.push(format!("{} up", self.length(length, Along::Upright, &mut doing)))
                    }
                    Some(Height::Down(length)) => {
                        ways.push(format!("{} down", self.length(length, Along::Upright, &mut doing)))
                    }
                    Some(Height::On(track)) if across.is_some() => {
                        ways.push(format!("on {}", self.track(track, &mut doing)))
                    }
                    Some(Height::On(track)) => {
                        ways.push(format!("straight to {}", self.track(track, &mut doing)))
                    }
                }
                if ways.is_empty() {
                    ways.push("in the same place".to_owned());
                }
                format!("Mark {name} from {}: {}.", at(from), ways.join(", "))
            }
            PointRule::Diagonal { from, fork_up } => {
                let length = self.length(fork_up, Along::Whole, &mut doing);
                format!("Mark {name} from {}: {length} along the diagonal towards the fork and up.", at(from))
            }
            PointRule::Toward { from, toward, reach } => {
                let (from, toward) = (at(from), at(toward));
                let how = match reach {
                    Reach::Part { minus, written } => {
                        let back = if *minus { ", backwards" } else { "" };
                        format!("{written} of the way from {from}{back}")
                    }
                    Reach::Along(length) => {
                        let far = self.length(length, Along::Whole, &mut doing);
                        format!("{far} from {from}")
                    }
                    Reach::Past(length) => {
                        let value = self.sums().value(length);
                        let side = if value < 0.0 { "before" } else { "beyond" };
                        let figure = fine(value.abs(), self.unit());
                        doing.laid.push(Laid { figure, along: Along::Whole });
                        self.note_sum(length, &mut doing);
                        format!("{} {side} {toward}", fine_length(value.abs(), self.unit()))
                    }
                };
                format!("Mark {name} on the line from {from} to {toward}: {how}.")
            }
            PointRule::Span { from, span, on, towards: way } => {
                let length = self.length(span, Along::Whole, &mut doing);
                let on = self.track(on, &mut doing);
                format!("Mark {name} on {on}, {}: {length} from {}, laid obliquely.", towards(*way), at(from))
            }
            PointRule::Meet { line, on, towards: way } => {
                let (line, on) = (self.track(line, &mut doing), self.track(on, &mut doing));
                let which = way.map_or_else(String::new, |way| {
                    format!(", of the two places the one farther {}", towards(way))
                });
                format!("Mark {name} where {line} meets {on}{which}.")
            }
        };
        doing
    }

    /// A line to lay a point on; what it takes to draw it is noted.
    fn track(&self, track: &Track, doing: &mut Doing) -> String {
        let at = |id: &PointId| self.point_name(*id);
        match track {
            Track::Level(index) => format!("the {}", spoken(&self.draft().recipe.lines[*index].name)),
            Track::Through([first, second]) => {
                format!("the line through {} and {}", at(first), at(second))
            }
            Track::LevelOf(point) => format!("the level through {}", at(point)),
            Track::UprightOf(point) => format!("the upright through {}", at(point)),
            Track::Square { to: [first, second], at: point } => {
                format!("the square through {} to {} and {}", at(point), at(first), at(second))
            }
            Track::Parallel { to: [first, second], at: point } => {
                format!("the parallel through {} to {} and {}", at(point), at(first), at(second))
            }
            Track::Slope { at: point, slope, towards: way } => {
                let slope = match slope {
                    Slope::Degrees(degrees) => format!("{degrees} degrees from the upright"),
                    Slope::Sides { up, across } => {
                        let mut side = |rule: &Proportion| {
                            self.note_sum(rule, doing);
                            fine(self.sums().value(rule), self.unit())
                        };
                        format!("{} up for {} across", side(up), side(across))
                    }
                };
                format!("the slope through {} of {slope} {}", at(point), towards(*way))
            }
            Track::Arc { about, reach } => {
                self.note_sum(reach, doing);
                let reach = fine_length(self.sums().value(reach), self.unit());
                format!("the arc of {reach} about {}", at(about))
            }
        }
    }

    /// What is read on the paper, and how; nothing where a length is only worked out.
    fn reading(&self, rule: &QuantityRule) -> Option<String> {
        let at = |id: &PointId| self.point_name(*id);
        match rule {
            QuantityRule::Is(_) | QuantityRule::Ladder(_) => None,
            QuantityRule::Between(points) => {
                let names: Vec<String> = points.iter().map(at).collect();
                Some(format!("Measure straight from {}.", names.join(" to ")))
            }
            QuantityRule::Curve { ends: [first, second], corner, bend } => {
                let how = match bend {
                    crate::recipe::BendRule::Guide(guide) => format!("through {}", at(guide)),
                    crate::recipe::BendRule::Fullness(fullness) => {
                        format!("with its handles {fullness} of the way to the corner")
                    }
                };
                Some(format!(
                    "Draw the curve from {} to {} {how}, its ends towards {}, and measure along it.",
                    at(first),
                    at(second),
                    at(corner)
                ))
            }
            QuantityRule::Depth(point) => Some(format!("Square a level line through {}.", at(point))),
        }
    }

    /// A length with its unit; its sum is noted.
    fn length(&self, rule: &Proportion, along: Along, doing: &mut Doing) -> String {
        let value = self.sums().value(rule);
        doing.laid.push(Laid { figure: fine(value, self.unit()), along });
        self.note_sum(rule, doing);
        fine_length(value, self.unit())
    }

    fn note_sum(&self, rule: &Proportion, doing: &mut Doing) {
        if rule.references().next().is_some() || rule.parts().any(|part| part.unit != self.unit()) {
            doing.sums.push(self.sums().proportion(rule));
        }
    }

    /// Where a point lies, from the first point.
    fn place(&self, id: PointId) -> String {
        let made = &self.draft().plan.construction;
        let at = made.points[id.0] - made.points[0];
        let start = self.point_name(PointId(0));
        let across = match at.x {
            x if x.abs() < 0.005 => format!("straight below {start}"),
            x if x < 0.0 => format!("{} towards the fork from {start}", fine_length(-x, self.unit())),
            x => format!("{} towards the side from {start}", fine_length(x, self.unit())),
        };
        let down = match at.y {
            y if y.abs() < 0.005 => "on the waist line".to_owned(),
            y if y < 0.0 => format!("{} above the waist line", fine_length(-y, self.unit())),
            y => format!("{} below the waist line", fine_length(y, self.unit())),
        };
        format!("Check: it lies {across}, {down}.")
    }
}
