//! The words of a step: a plain sentence where the recipe says none, and its rule as the trade writes it.

use super::{
    BendRule, Ladder, Line, Number, PointId, PointRule, QuantityRule, Track,
    step::{Between, Height, Reach, Way},
    track::Slope,
};
use crate::unit::Unit;

/// The names that the words of a step need.
#[derive(Clone, Copy)]
pub(super) struct Names<'n> {
    pub(super) points: &'n [String],
    pub(super) lines: &'n [Line],
}

impl<'n> Names<'n> {
    fn point(&self, id: PointId) -> &'n str {
        self.points.get(id.0).map_or("?", String::as_str)
    }

    fn line(&self, index: usize) -> &'n str {
        self.lines.get(index).map_or("?", |line| line.name.as_str())
    }

    /// A line in a sentence.
    fn said(&self, track: &Track) -> String {
        let at = |id: &PointId| self.point(*id);
        match track {
            Track::Level(line) => format!("the {}", spoken(self.line(*line))),
            Track::Through([first, second]) => format!("the line {} to {}", at(first), at(second)),
            Track::LevelOf(point) => format!("the level through {}", at(point)),
            Track::UprightOf(point) => format!("the upright through {}", at(point)),
            Track::Square { to: [first, second], at: point } => {
                format!("the line through {} square to {} to {}", at(point), at(first), at(second))
            }
            Track::Parallel { to: [first, second], at: point } => {
                format!("the line through {} beside {} to {}", at(point), at(first), at(second))
            }
            Track::Slope { at: point, slope, towards: way } => {
                format!("the line through {} leaning {slope} {}", at(point), towards(*way))
            }
            Track::Arc { about, reach } => format!("the arc about {} opened to {reach}", at(about)),
        }
    }

    /// A line in a rule: a level by its name in the file.
    fn ruled(&self, track: &Track) -> String {
        match track {
            Track::Level(line) => self.line(*line).to_owned(),
            Track::Through([first, second]) => format!("{} to {}", self.point(*first), self.point(*second)),
            other => self.said(other),
        }
    }
}

impl std::fmt::Display for Slope {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Sides { up, across } => write!(out, "{up} : {across}"),
            Self::Degrees(degrees) => write!(out, "{degrees} degrees"),
        }
    }
}

/// A name of a file as a reader says it: `hip_line` is the hip line.
pub(super) fn spoken(name: &str) -> String {
    name.replace('_', " ")
}

/// The sentence and the rule of a quantity.
pub(super) fn quantity(name: &str, rule: &QuantityRule, names: &Names<'_>) -> (String, String) {
    let verb = match rule {
        QuantityRule::Is(_) | QuantityRule::Ladder(_) => "work out",
        QuantityRule::Between(_) | QuantityRule::Curve { .. } | QuantityRule::Depth(_) => "measure",
    };
    (format!("{verb} the {}", spoken(name)), length(rule, names))
}

/// The sentence and the rule of a level line.
pub(super) fn level(name: &str, rule: &QuantityRule, names: &Names<'_>) -> (String, String) {
    let title = match rule {
        QuantityRule::Depth(point) => {
            format!("square out the {} through {}", spoken(name), names.point(*point))
        }
        _ => format!("square out the {}", spoken(name)),
    };
    (title, length(rule, names))
}

/// How a length is found, as the trade writes it.
pub(super) fn length(rule: &QuantityRule, names: &Names<'_>) -> String {
    let at = |id: &PointId| names.point(*id);
    match rule {
        QuantityRule::Is(proportion) => proportion.to_string(),
        QuantityRule::Ladder(ladder) => rungs(ladder),
        QuantityRule::Between(points) => points.iter().map(at).collect::<Vec<_>>().join(" to "),
        QuantityRule::Curve { ends: [first, second], corner, bend } => {
            let how = match bend {
                BendRule::Fullness(fullness) => format!("of fullness {fullness}"),
                BendRule::Guide(guide) => format!("through {}", at(guide)),
            };
            format!("{} to {} along the curve {how} into {}", at(first), at(second), at(corner))
        }
        QuantityRule::Depth(point) => format!("level of {}", at(point)),
    }
}

fn rungs(ladder: &Ladder) -> String {
    let name = &ladder.by_name;
    let (word, end) = match ladder.between {
        Between::Ramp => ("at", ", in proportion between"),
        Between::Step => ("from", ""),
    };
    let long = |cm: f64| match ladder.unit {
        Unit::Cm => format!("{cm}"),
        Unit::Inch => format!("{} in", Unit::Inch.write(cm)),
    };
    let rungs: Vec<_> = ladder
        .rungs
        .iter()
        .map(|[size, value]| format!("{} {word} {name} {}", long(*value), long(*size)))
        .collect();
    format!("{}{end}", rungs.join(", "))
}

/// The sentence and the rule of a point.
pub(super) fn point(name: &str, rule: &PointRule, names: &Names<'_>) -> (String, String) {
    let at = |id: &PointId| names.point(*id);
    match rule {
        PointRule::From { from, across, height } => {
            let from = at(from);
            let (title, rule) = match (across, height) {
                (None, None) => (String::new(), String::new()),
                (Some((way, length)), None) => (towards(*way).to_owned(), length.to_string()),
                (None, Some(Height::Up(length))) => ("up".to_owned(), length.to_string()),
                (None, Some(Height::Down(length))) => ("down".to_owned(), length.to_string()),
                (None, Some(Height::On(track))) => {
                    (format!("straight to {}", names.said(track)), names.ruled(track))
                }
                (Some((way, length)), Some(Height::On(track))) => (
                    format!("{}, on {}", towards(*way), names.said(track)),
                    format!("{length}, on {}", names.ruled(track)),
                ),
                (Some((way, length)), Some(Height::Up(rise))) => {
                    (format!("{} and up", towards(*way)), format!("{length}; up {rise}"))
                }
                (Some((way, length)), Some(Height::Down(fall))) => {
                    (format!("{} and down", towards(*way)), format!("{length}; down {fall}"))
                }
            };
            (format!("mark {name} from {from} {title}"), rule)
        }
        PointRule::Diagonal { from, fork_up } => {
            let title = format!("mark {name} on the diagonal out of {}, towards the fork and up", at(from));
            (title, fork_up.to_string())
        }
        PointRule::Toward { from, toward, reach } => {
            let (from, toward) = (at(from), at(toward));
            let title = format!("mark {name} on the line from {from} to {toward}");
            let rule = match reach {
                Reach::Along(length) => format!("{length} from {from}"),
                Reach::Past(length) => format!("{length} beyond {toward}"),
                Reach::Part { minus: true, written } => {
                    format!("{} {from} to {toward}, before {from}", part(*written))
                }
                Reach::Part { minus: false, written } => match written.less_one() {
                    Some(beyond) if beyond.value() == 0.0 => format!("at {toward}"),
                    Some(beyond) => format!("{} {from} to {toward} beyond {toward}", part(beyond)),
                    None if written.value() == 0.5 => format!("middle of {from} and {toward}"),
                    None => format!("{} {from} to {toward}", part(*written)),
                },
            };
            (title, rule)
        }
        PointRule::Span { from, span, on, towards: way } => {
            let title =
                format!("lay {} to {name} obliquely to {}, {}", at(from), names.said(on), towards(*way));
            (title, span.to_string())
        }
        PointRule::Meet { line, on, towards: way } => {
            let which = way.map_or_else(String::new, |way| format!(", {}", towards(way)));
            let title = format!("mark {name} where {} meets {}{which}", meeting(line, names), names.said(on));
            (title, format!("{} on {}{which}", names.ruled(line), names.ruled(on)))
        }
    }
}

/// The line that meets another: two points need no more words.
fn meeting(track: &Track, names: &Names<'_>) -> String {
    match track {
        Track::Through(_) => names.ruled(track),
        other => names.said(other),
    }
}

/// A way in a sentence.
pub(crate) fn towards(way: Way) -> &'static str {
    match way {
        Way::Side => "towards the side",
        Way::Fork => "towards the fork",
        Way::Up => "upwards",
        Way::Down => "downwards",
    }
}

/// The start of "half of 5 to 9".
fn part(part: Number) -> String {
    /// Parts that the trade says in words; a decimal third counts as a third when it is one to four places.
    const WORDS: [(f64, &str); 4] =
        [(1.0, "as much as"), (0.5, "half of"), (1.0 / 3.0, "a third of"), (0.25, "a quarter of")];
    let said = WORDS.iter().find(|(value, _)| (part.value() - value).abs() < 1e-4);
    said.map_or_else(|| format!("{part} of"), |(_, words)| (*words).to_owned())
}
