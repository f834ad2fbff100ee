//! The teacher's page: what every line of a student's draft should measure, with room for what it does.

use super::{Class, pencil::bent};
use crate::{
    booklet::{Block, Booklet, Column, Lettering, Table},
    draft::Shape,
    drawing::Wording,
    recipe::{PointId, Step},
    terms::{Edge, Panel, Role, Word},
    told::{Subject, tables::called},
    unit::Unit,
    voice::{Value, amount, named},
};

/// The page on which a teacher marks a draft made by the lesson.
pub fn marking_page(subject: &Subject<'_>) -> Booklet {
    let class = Class::of(subject);
    let recipe = &subject.draft.recipe;
    let mut blocks = vec![
        Block::plain(
            "For the teacher. Every figure is what the line of a draft by the lesson should measure; beside it is \
             room for what it does and by how much it is off.",
        ),
        Block::plain(match subject.unit {
            Unit::Cm => "Two millimetres are a pencil's; more is a slip in the sum or in the step.",
            Unit::Inch => "A sixteenth is a pencil's; more is a slip in the sum or in the step.",
        }),
        Block::remark(subject.how().as_str()),
        Block::chapter("The construction"),
        Block::plain(
            "Points as constructed: across from the first point (minus: towards the fork) and down from the waist \
             line (minus: above it).",
        ),
    ];
    for panel in Panel::ALL {
        blocks.push(Block::Table(class.constructed(*panel)));
    }
    let trued: [(&str, &Shape); 2] =
        [("The plain block, trued", &class.plain.shape), ("The finished block", &subject.draft.shape)];
    for (name, shape) in trued {
        blocks.push(Block::chapter(name));
        blocks.push(Block::plain(
            "Points: across from the crease (minus: towards the fork) and down from the waist line. Lines: how far \
             off the straight line between two points they lie, outwards, or inwards with a minus.",
        ));
        for panel in Panel::ALL {
            let shape = shape.panel(*panel);
            let mut points = Table::new(&format!("The {panel}: its points"), to_mark(&["across", "down"]));
            for role in Role::ALL {
                let at = shape.roles[*role];
                points.row(with_room([called(*role), amount(at.x), amount(at.y)]));
            }
            blocks.push(Block::Table(filled_in(points)));
            let mut lengths = Table::new(&format!("The {panel}: its edges"), to_mark(&["sewn length"]));
            for edge in Edge::ALL {
                lengths.row(with_room([called(*edge), amount(shape.sewn_length(*edge))]));
            }
            blocks.push(Block::Table(filled_in(lengths)));
            blocks
                .push(Block::List(class.fork(shape).iter().map(|words| Wording::paragraph(words)).collect()));
            blocks.extend(class.darts(shape).map(Block::Table));
            blocks.extend(bent(shape).iter().map(|bent| Block::Table(class.ordinates(shape, bent))));
        }
    }
    Booklet {
        name: subject.title("marking page"),
        description: Wording::paragraph(
            &subject.description("What every line of a student's draft should measure."),
        ),
        title: Wording::line(&format!("The {} block for {}: to mark a draft", recipe.name, subject.name())),
        lettering: Lettering::READING,
        unit: subject.unit,
        blocks,
    }
}

/// Columns for what is marked, its measures, and the room for what was drawn.
fn to_mark(measures: &[&str]) -> Vec<Column> {
    let mut columns = vec![Column::words("line or point", 3.0)];
    columns.extend(measures.iter().map(|name| Column::numbers(name, 1.3)));
    columns.extend(["drawn", "off"].map(|name| Column::words(name, 1.6)));
    columns
}

fn with_room(cells: impl IntoIterator<Item = Value>) -> Vec<Value> {
    cells.into_iter().chain([named(""), named("")]).collect()
}

fn filled_in(table: Table) -> Table {
    Table { to_fill_in: true, ..table }
}

impl Class<'_> {
    /// Every point of a panel's steps, from the first point.
    fn constructed(&self, panel: Panel) -> Table {
        let made = &self.draft().plan.construction;
        let start = made.points[0];
        let mut table =
            Table::new(&format!("The {panel}: its points as constructed"), to_mark(&["across", "down"]));
        for step in self.draft().recipe.steps.iter().filter(|step| step.entry().panel == panel) {
            if let Step::Point { id, .. } = step {
                let at = made.points[id.0] - start;
                let name = named(self.point_name(PointId(id.0)));
                table.row(with_room([name, amount(at.x), amount(at.y)]));
            }
        }
        filled_in(table)
    }
}
