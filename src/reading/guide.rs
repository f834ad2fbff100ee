//! The measuring guide: where the tape goes, seen from the front, the side and the back and sitting, how each
//! measurement is taken, and a table to write them into by hand.

mod figure;
mod tape;

use kurbo::{Affine, Rect};

use self::figure::{FLOOR, View};
use crate::{
    booklet::{Block, Booklet, Column, Lettering, Strip, Table},
    drawing::{Drawing, Layer, Wording},
    order::measuring::{BEFORE, CAUTIONS, GROUPS, WAIST_LEVELS},
    terms::Measurement,
    unit::Unit,
    voice::{Value, capital, rule_of_thumb},
};

/// The guide for a tape of `unit`; the same for every body.
pub fn measuring_guide(unit: Unit) -> Booklet {
    let mut blocks = vec![
        Block::plain(
            "For trousers. The first three measurements are needed; every other one that you take replaces \
             an estimate. Write them into the table at the end, then into the measurement file under the \
             same names.",
        ),
        Block::chapter("Before you measure"),
        Block::List(
            BEFORE.iter().chain(&CAUTIONS).map(|words| Wording::line(&rule_of_thumb(words, unit))).collect(),
        ),
        Block::led(
            "The waist.",
            "Tie a narrow elastic round the waist and leave it on: it is the waist of every measurement \
             that starts or ends there. Measure from its lower edge. Say in the file where it was, under \
             waist_level.",
        ),
        Block::Table(waist_levels()),
    ];
    blocks.push(Block::chapter("Where the tape goes"));
    blocks.push(Block::plain(
        "Strong lines are the tape on the near side of the body, dashed lines the tape behind it or \
         between the legs. Thin lines with points at both ends are heights, taken straight up beside the \
         body and not along it. Keep girth tapes level.",
    ));
    for pair in [[View::Front, View::Side], [View::Back, View::Sitting]] {
        blocks.push(Block::Columns(
            pair.map(|view| Strip { share: 0.5, blocks: vec![Block::Picture(picture(view)), legend(view)] })
                .to_vec(),
        ));
    }
    blocks.push(Block::chapter("How each is taken"));
    for (purpose, measurements) in GROUPS {
        let (heading, rest) = purpose.split_once(". ").unwrap_or((purpose.trim_end_matches('.'), ""));
        blocks.push(Block::section(heading));
        if !rest.is_empty() {
            blocks.push(Block::plain(&rule_of_thumb(rest, unit)));
        }
        blocks.extend(measurements.iter().flat_map(|measurement| taken(*measurement, unit)));
    }
    blocks.push(Block::remark(
        "Names and clauses of ISO 8559-1:2017 as secondary sources give them; the standard itself was not \
         read. Usual error: one standard deviation of a home measurement, common practice, no source.",
    ));
    blocks.push(Block::chapter("To fill in"));
    blocks.push(Block::plain(
        "Label: ____________________    Date: ______________    Waist level: ______________",
    ));
    blocks.push(Block::Table(to_fill_in(unit)));
    Booklet {
        name: Wording::line("breeks measuring guide"),
        description: Wording::paragraph(
            "How to take the measurements for trousers: drawings with the way of the tape, instructions, \
             and a table to fill in.",
        ),
        title: Wording::line("How to measure for trousers"),
        lettering: Lettering::READING,
        unit,
        blocks,
    }
}

/// The measurements in the order in which they are taken.
fn in_order() -> impl Iterator<Item = Measurement> {
    GROUPS.into_iter().flat_map(|(_, measurements)| measurements).copied()
}

/// A measurement's number on the drawings.
fn number(measurement: Measurement) -> usize {
    in_order().position(|other| other == measurement).map_or(0, |place| place + 1)
}

fn waist_levels() -> Table {
    let mut table = Table::new(
        "Where the waist may be",
        vec![Column::words("waist_level", 1.0), Column::words("the elastic lies", 5.0)],
    );
    for (level, words) in WAIST_LEVELS {
        table.row([Value::from(level), words.into()]);
    }
    table
}

/// What is shown of a view, cm of the body.
fn window(view: View) -> Rect {
    match view {
        View::Front => Rect::new(-46.0, -3.0, 42.0, FLOOR + 3.0),
        View::Side => Rect::new(-38.0, -3.0, 42.0, FLOOR + 3.0),
        View::Back => Rect::new(-42.0, -3.0, 42.0, FLOOR + 3.0),
        View::Sitting => Rect::new(-30.0, 30.0, 74.0, FLOOR + 3.0),
    }
}

/// Centimetres of the picture for one of the body.
const SCALE: f64 = 0.09;

fn picture(view: View) -> Drawing {
    let window = window(view);
    let fit = Affine::scale(SCALE) * Affine::translate(-window.origin().to_vec2());
    let mut body = Layer::new("Body");
    let mut tapes = Layer::new("Tape");
    let mut numbers = Layer::new("Numbers");
    figure::draw(view, fit, &mut body);
    tape::draw(view, fit, number, &mut tapes, &mut numbers);
    let shown: Vec<String> =
        sorted(view).iter().map(|one| format!("{} {}", number(*one), one.about().title)).collect();
    let title = title(view);
    Drawing {
        title: Wording::line(title),
        description: Wording::paragraph(&format!(
            "A person {}, with the way of the tape for: {}.",
            match view {
                View::Front => "standing, from the front",
                View::Side => "standing, from the side",
                View::Back => "standing, from the back",
                View::Sitting => "sitting upright on a hard chair, from the side",
            },
            shown.join(", ")
        )),
        bounds: (window.size() * SCALE).to_rect(),
        layers: vec![body, tapes, numbers],
    }
}

fn title(view: View) -> &'static str {
    match view {
        View::Front => "Front",
        View::Side => "Side",
        View::Back => "Back",
        View::Sitting => "Sitting",
    }
}

/// The measurements of a view by their numbers.
fn sorted(view: View) -> Vec<Measurement> {
    let mut shown: Vec<Measurement> = tape::shown(view).collect();
    shown.sort_by_key(|measurement| number(*measurement));
    shown
}

fn legend(view: View) -> Block {
    let names: Vec<String> =
        sorted(view).iter().map(|one| format!("{} {}", number(*one), one.about().title)).collect();
    Block::remark(&format!("{}.", names.join(", ")))
}

/// How one measurement is taken.
fn taken(measurement: Measurement, unit: Unit) -> [Block; 2] {
    let about = measurement.about();
    let name = crate::booklet::Paragraph::led(
        &format!("{}. {}.", number(measurement), capital(about.title)),
        &rule_of_thumb(about.how, unit),
    );
    let iso = match about.iso {
        Some((name, Some(clause))) => format!("ISO 8559-1: {name}, {clause}. "),
        Some((name, None)) => format!("ISO 8559-1: {name}. "),
        None => String::new(),
    };
    let error = unit.length(about.tape_sd);
    [Block::Paragraph(name), Block::remark(&format!("{iso}Usual error {error}. In the file: {measurement}."))]
}

fn to_fill_in(unit: Unit) -> Table {
    let mut table = Table {
        to_fill_in: true,
        ..Table::new(
            &rule_of_thumb("Twice each; a third time where the two differ by more than 1 cm", unit),
            vec![
                Column::numbers("no.", 0.7),
                Column::words("measurement", 3.4),
                Column::words("first", 1.5),
                Column::words("second", 1.5),
                Column::words("third", 1.5),
                Column::words("left leg, if other", 1.8),
            ],
        )
    };
    for measurement in in_order() {
        let leg = if measurement.about().of_a_leg { "" } else { "–" };
        let name = measurement.about().title;
        let nothing = || Value::NOTHING;
        table.row([number(measurement).into(), name.into(), nothing(), nothing(), nothing(), leg.into()]);
    }
    table
}
