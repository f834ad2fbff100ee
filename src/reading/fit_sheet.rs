//! The fit sheet: the page a fitter keeps beside a pattern. The draft with its ease at every level, where it came from,
//! what sews to what, what was corrected, and what the toiles showed.

use crate::{
    booklet::{Block, Booklet, Column, Lettering, Paragraph, Strip, Table},
    drawing::Wording,
    order::{Fitting, Kind, Path},
    paper::{budget_bar::crotch_bar, draft_picture},
    told::{CAUTIONS, Subject, tables},
    unit::{Unit, decimal},
    voice::{Value, named},
};

/// The sheet of a draft, with the record of its toiles and room for the next.
pub fn fit_sheet(subject: &Subject<'_>, fittings: &[Fitting]) -> Booklet {
    let Subject { draft, report, unit } = *subject;
    let mut blocks = vec![Block::plain(subject.block().as_str()), Block::remark(subject.how().as_str())];
    let warnings = warnings(subject);
    // What forbids cutting stands before everything else.
    let (forbids, minds) =
        if subject.verdict().can_be_cut() { (None, Some(warnings)) } else { (Some(warnings), None) };
    blocks.extend(forbids);
    blocks.push(Block::Picture(draft_picture(subject)));
    let (mut left, mut middle, mut right) = (Vec::new(), Vec::new(), Vec::new());
    left.push(Block::Table(tables::measurements(&subject.draft.body)));
    middle.push(Block::Picture(crotch_bar(subject, 0.29 * Booklet::width() - 0.55)));
    middle.push(Block::remark(&subject.crotch_said()));
    middle.push(Block::Table(tables::seams(report).without("allowed")));
    middle.push(Block::Table(tables::joins(report)));
    let cautions = Paragraph { small: true, ..Paragraph::led("Before you cut.", &CAUTIONS.join(" ")) };
    middle.push(Block::Paragraph(cautions));
    right.push(match tables::parameters(draft, report) {
        Some(table) => Block::Table(table.without("from")),
        None => Block::plain("No fit parameter: the plain block."),
    });
    right.push(Block::Table(tables::ease(draft, report)));
    right.extend(minds);
    blocks.push(Block::Columns(vec![
        Strip { share: 0.33, blocks: left },
        Strip { share: 0.29, blocks: middle },
        Strip { share: 0.38, blocks: right },
    ]));
    blocks.push(Block::Table(record(subject, fittings)));
    Booklet {
        name: subject.title("fit sheet"),
        description: Wording::paragraph(&subject.description("Fit sheet, drafted by breeks.")),
        title: title(subject),
        lettering: Lettering::SHEET,
        unit,
        blocks,
    }
}

/// Whose sheet it is; a body without a name has one too.
fn title(subject: &Subject<'_>) -> Wording {
    let name = subject.name();
    if name.as_str().is_empty() { Wording::line("Fit sheet") } else { name }
}

/// The numbers that decide the fit, as other papers show them: the draft with its levels, then seams, joins and the
/// crotch length.
pub(super) fn figures(subject: &Subject<'_>) -> Vec<Block> {
    let report = subject.report;
    vec![
        Block::Picture(draft_picture(subject)),
        Block::Table(tables::levels(report)),
        Block::section("Crotch length"),
        Block::Picture(crotch_bar(subject, 9.0)),
        Block::Table(tables::crotch(&report.crotch)),
        Block::Table(tables::seams(report)),
        Block::Table(tables::joins(report)),
    ]
}

/// The verdict, and what a person should know before cutting.
fn warnings(subject: &Subject<'_>) -> Block {
    let verdict = subject.verdict();
    let said = subject.notices_said();
    let words = if said.is_empty() { "Sew a toile of it.".to_owned() } else { said.join(" ") };
    let small = verdict.can_be_cut();
    Block::Paragraph(Paragraph { small, ..Paragraph::led(&format!("{}.", verdict.head()), &words) })
}

/// What the toiles showed, newest last, with room for more.
fn record(subject: &Subject<'_>, fittings: &[Fitting]) -> Table {
    /// Left to be written by hand.
    const EMPTY: usize = 2;
    let mut table = Table {
        to_fill_in: true,
        ..Table::new(
            "Record of fittings",
            vec![
                Column::words("date", 1.4),
                Column::words("block", 1.2),
                Column::words("seen on the toile", 3.6),
                Column::words("tested", 2.4),
                Column::words("changed", 2.8),
                Column::words("note", 2.2),
            ],
        )
    };
    for fitting in fittings {
        let text = |text: &Option<String>| named(text.clone().unwrap_or_default());
        table.row([
            text(&fitting.date),
            text(&fitting.block),
            named(fitting.seen.join("; ")),
            named(fitting.tested.join("; ")),
            named(changes(fitting, subject.unit)),
            text(&fitting.note),
        ]);
    }
    for _ in 0..EMPTY {
        table.row([""; 6]);
    }
    table
}

/// The changed keys of the file with their new values.
fn changes(fitting: &Fitting, unit: Unit) -> String {
    let one = |(key, value): &(String, f64)| {
        let value = match Path::find(key).map(|path| path.kind()) {
            Some(Kind::Degrees(..)) => Value::Degrees(*value),
            Some(Kind::PerCent(..)) => Value::Share(value / 100.0),
            Some(Kind::Count(_)) => named(decimal(*value, 0)),
            Some(Kind::Length(..) | Kind::Text | Kind::OneOf(_)) | None => Value::Amount(*value),
        };
        format!("{key} {}", value.in_unit(unit))
    };
    fitting.changed.iter().map(one).collect::<Vec<_>>().join("; ")
}
