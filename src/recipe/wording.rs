//! The words of a step: a plain sentence where the recipe says none, and its rule as the trade writes it.

use super::{
    Ladder, Number, PointId, PointRule, QuantityRule,
    step::{Between, Height, Reach, Way},
};

/// The names that the words of a step need.
pub(super) struct Names<'n> {
    pub(super) points: &'n [String],
    pub(super) lines: &'n [String],
}

/// A name of a file as a reader says it: `hip_line` is the hip line.
pub(super) fn spoken(name: &str) -> String {
    name.replace('_', " ")
}

/// The sentence and the rule of a quantity.
pub(super) fn quantity(name: &str, rule: &QuantityRule) -> (String, String) {
    let title = format!("work out the {}", spoken(name));
    match rule {
        QuantityRule::Is(proportion) => (title, proportion.to_string()),
        QuantityRule::Ladder(ladder) => (title, rungs(ladder)),
    }
}

fn rungs(ladder: &Ladder) -> String {
    let name = &ladder.by_name;
    let (word, end) = match ladder.between {
        Between::Ramp => ("at", ", in proportion between"),
        Between::Step => ("from", ""),
    };
    let rungs: Vec<_> =
        ladder.rungs.iter().map(|[size, value]| format!("{value} {word} {name} {size}")).collect();
    format!("{}{end}", rungs.join(", "))
}

/// The sentence and the rule of a point.
pub(super) fn point(name: &str, rule: &PointRule, names: &Names<'_>) -> (String, String) {
    let at = |id: &PointId| names.points.get(id.0).map_or("?", String::as_str);
    let line = |index: &usize| names.lines.get(*index).map_or("?", String::as_str);
    match rule {
        PointRule::From { from, across, height } => {
            let from = at(from);
            let (title, rule) = match (across, height) {
                (None, None) => (String::new(), String::new()),
                (Some((way, length)), None) => (towards(*way).to_owned(), length.to_string()),
                (None, Some(Height::Up(length))) => ("up".to_owned(), length.to_string()),
                (None, Some(Height::Down(length))) => ("down".to_owned(), length.to_string()),
                (None, Some(Height::On(level))) => {
                    (format!("straight to the {}", spoken(line(level))), line(level).to_owned())
                }
                (Some((way, length)), Some(Height::On(level))) => (
                    format!("{}, on the {}", towards(*way), spoken(line(level))),
                    format!("{length}, on {}", line(level)),
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
            let title = format!(
                "lay {} to {name} obliquely to the {}, {}",
                at(from),
                spoken(line(on)),
                towards(*way)
            );
            (title, span.to_string())
        }
        PointRule::Meet { line: [first, second], on } => {
            let (first, second) = (at(first), at(second));
            let title = format!("mark {name} where {first} to {second} meets the {}", spoken(line(on)));
            (title, format!("{first} to {second} on {}", line(on)))
        }
    }
}

fn towards(way: Way) -> &'static str {
    match way {
        Way::Side => "towards the side",
        Way::Fork => "towards the fork",
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
