//! The text of a recipe, made into a recipe or a list of everything that is wrong with it.

use toml::de::DeTable;

use super::{
    Ask, LARGEST_FILE, Line, Names, PanelRules, PointId, QuantityRule, Recipe, Reference, SeamsIncluded,
    WAIST_LINE,
    defaults::{read_ease, read_range, read_style, read_truing},
    implied::Implying,
    panel::read_panel,
    proportion::is_taken,
    steps::{Known, number_steps, read_ladder, read_steps},
    table::{Cell, Reader, Row, near, shown},
    wording,
};
use crate::{
    mistake::{Mistake, Mistakes, Source},
    terms::{Level, Panel, Role, Word},
    unit::Unit,
};

/// The handbooks stay under 80 steps; far more is not a draft.
const MOST_STEPS: usize = 400;
/// Level lines, asks and notes of one recipe.
const MOST_ENTRIES: usize = 60;
/// The longest name of a point, line, quantity or ask, in characters.
const LONGEST_NAME: usize = 32;

/// The points named so far.
#[derive(Default)]
pub(super) struct Points {
    pub(super) names: Vec<String>,
}

impl Points {
    /// The point that a cell names.
    pub(super) fn find(&self, reader: &mut Reader<'_>, cell: &Cell<'_>) -> Option<PointId> {
        let name = reader.text(cell)?;
        let found = self.names.iter().position(|known| known == name).map(PointId);
        if found.is_none() {
            let mistake = reader.at(
                cell.value.span(),
                format!("unknown point `{}`", shown(name)),
                "no step has made it yet",
            );
            let helped = if reader.lengths_somewhere.iter().any(|made| made == name) {
                mistake
                    .help(format!("`{name}` is a length or a line; a point is made by a step with `point`"))
            } else if reader.points_somewhere.iter().any(|made| made == name) {
                mistake.help(format!("`{name}` comes later in the recipe: move it up"))
            } else {
                near(mistake, name, self.names.iter().map(String::as_str))
            };
            reader.note(helped);
        }
        found
    }

    /// Takes a new name for the next point; a bad or taken name is noted.
    pub(super) fn declare(&mut self, reader: &mut Reader<'_>, cell: &Cell<'_>) -> Option<PointId> {
        let name = reader.text(cell)?;
        let sound = name.chars().count() <= LONGEST_NAME
            && name.chars().all(|letter| letter.is_alphanumeric() || letter == '_' || letter == '\'');
        if !sound {
            let title = format!("`{}` cannot name a point", shown(name));
            reader.wrong(cell.value.span(), title, "expected letters, digits and `_`, at most 32");
        }
        if self.names.iter().any(|known| known == name) {
            let title = format!("point `{}` is made twice", shown(name));
            reader.wrong(cell.value.span(), title, "expected a new name");
        }
        self.names.push(name.to_owned());
        Some(PointId(self.names.len() - 1))
    }
}

/// Adds a name of the recipe's own to those that a proportion may use; a bad or taken name is noted.
pub(super) fn declare(
    reader: &mut Reader<'_>,
    names: &mut Names,
    name: &str,
    span: std::ops::Range<usize>,
    reference: Reference,
) {
    let sound = name.chars().count() <= LONGEST_NAME
        && name.starts_with(|letter: char| letter.is_ascii_lowercase())
        && name.chars().all(|letter| letter.is_ascii_lowercase() || letter.is_ascii_digit() || letter == '_');
    if !sound {
        let title = format!("`{}` cannot be a name here", shown(name));
        let label = "expected small letters, digits and `_`, a letter first, at most 32";
        reader.wrong(span, title, label);
    } else if names.resolve(name).is_some() || is_taken(name) {
        reader.wrong(span, format!("`{name}` already has a meaning"), "expected a new name");
    }
    names.declare(name, reference);
}

/// Reads a recipe.
pub(super) fn parse(source: &Source) -> Result<Recipe, Mistakes> {
    if source.text.len() > LARGEST_FILE {
        return Err(Mistake::new(format!("`{}` is too large for a recipe", source.name))
            .help(format!("a recipe has at most {} KiB", LARGEST_FILE / 1024))
            .into());
    }
    let (document, slips) = DeTable::parse_recoverable(&source.text);
    if !["construction", "front"].iter().any(|key| document.get_ref().contains_key(*key)) {
        return Err(Mistake::new(format!("`{}` is not a recipe", source.name))
            .help("a recipe has the tables `[construction]` and `[front]`")
            .into());
    }
    let mut reader = Reader::new(source);
    if !slips.is_empty() {
        for slip in slips {
            let span = slip.span().unwrap_or(0..0);
            let bare =
                source.text.get(span.start..).is_some_and(|rest| rest.starts_with(char::is_alphabetic));
            let mistake = reader.at(span, "cannot be read as TOML", slip.message().to_owned());
            reader.note(if bare {
                mistake.help("names and other text stand between quotes")
            } else {
                mistake
            });
        }
        return Err(reader.into_mistakes());
    }
    let recipe = read_document(&mut reader, source, &Row::document(&document));
    match recipe {
        Some(recipe) if reader.is_clean() => Ok(recipe),
        _ => Err(reader.into_mistakes()),
    }
}

/// The keys of a recipe's top level.
const KEYS: [&str; 13] = [
    "title",
    "notes",
    "units",
    "one_piece",
    "asks",
    "lines",
    "construction",
    "front",
    "back",
    "ease",
    "style",
    "seams_included",
    "truing",
];

fn read_document(reader: &mut Reader<'_>, source: &Source, document: &Row<'_>) -> Option<Recipe> {
    document.only(reader, &KEYS);
    let title = document.need(reader, "title").and_then(|cell| reader.text(&cell)).map(str::to_owned);
    let notes = document.get("notes").map(|cell| read_notes(reader, &cell)).unwrap_or_default();
    if let Some(unit) = document
        .get("units")
        .and_then(|cell| reader.choice(&cell, &[(Unit::Cm.key(), Unit::Cm), (Unit::Inch.key(), Unit::Inch)]))
    {
        reader.unit = unit;
    }
    let one_piece = document.get("one_piece").and_then(|cell| reader.flag(&cell)).unwrap_or_default();
    let mut names = Names::of_the_trade_in(reader.unit);
    let asks = document.get("asks").map(|cell| read_asks(reader, &cell, &mut names)).unwrap_or_default();
    let mut lines = document.need(reader, "lines").map(|cell| read_lines(reader, &cell, &mut names))?;

    let mut points = Points::default();
    let construction =
        document.need(reader, "construction").and_then(|cell| reader.row(&cell, "[construction]"))?;
    construction.only(reader, &["start", "steps"]);
    let start = construction.need(reader, "start");
    let start = start.and_then(|cell| points.declare(reader, &cell));
    let steps = construction.need(reader, "steps").and_then(|cell| reader.list(&cell, MOST_STEPS))?;
    let mut known = Known { points: &mut points, names: &mut names, lines: &mut lines };
    let mut steps = read_steps(reader, &steps, &mut known);

    let mut implying = Implying { known, steps: &mut steps, reader };
    implying.levels();
    let mut panel = |key: &str, name, panel| -> Option<Option<PanelRules>> {
        let Some(cell) = document.get(key) else { return Some(None) };
        let row = implying.reader.row(&cell, name)?;
        read_panel(&mut implying, panel, &row).map(Some)
    };
    let (front, back) = (panel("front", "[front]", Panel::Front), panel("back", "[back]", Panel::Back));
    let levels = find_levels(reader, document, &lines);
    if document.get("front").is_none() {
        document.need(reader, "front");
    }
    let mut table = |key: &str, name| document.get(key).and_then(|cell| reader.row(&cell, name));
    let (ease, style, truing) =
        (table("ease", "[ease]"), table("style", "[style]"), table("truing", "[truing]"));
    let seams = table("seams_included", "[seams_included]");
    let ease = ease.map(|row| read_ease(reader, &row)).unwrap_or_default();
    let style = style.map(|row| read_style(reader, &row)).unwrap_or_default();
    let truing = truing.map(|row| read_truing(reader, &row)).unwrap_or_default();
    let seams = seams.map(|row| SeamsIncluded::read(reader, &row)).unwrap_or_default();
    if one_piece && let (Some(Some(front)), Some(Some(back))) = (&front, &back) {
        check_one_piece(reader, document, front, back);
    }

    let (front, back) = (front??, back?);
    number_steps(&mut steps.steps, &steps.panels, &front, back.as_ref());
    Some(Recipe {
        name: file_stem(&source.name),
        title: title?,
        notes,
        units: reader.unit,
        lines,
        asks,
        start: points.names.get(start?.0)?.clone(),
        quantities: steps.quantities,
        steps: steps.steps,
        front,
        back,
        ease,
        style,
        truing,
        seams,
        one_piece,
        levels: levels?,
        point_names: points.names,
        source: source.clone(),
    })
}

fn read_notes(reader: &mut Reader<'_>, cell: &Cell<'_>) -> Vec<String> {
    let list = reader.list(cell, MOST_ENTRIES).unwrap_or_default();
    list.iter().filter_map(|note| reader.text(note)).map(str::to_owned).collect()
}

fn read_asks(reader: &mut Reader<'_>, cell: &Cell<'_>, names: &mut Names) -> Vec<Ask> {
    let Some(row) = reader.row(cell, "[asks]") else { return Vec::new() };
    let cells = few(reader, cell, &row);
    let mut asks = Vec::with_capacity(cells.len());
    for cell in cells {
        declare(reader, names, cell.key, cell.key_span.clone(), Reference::Ask(asks.len()));
        let (default, within) = read_ask(reader, &cell).unwrap_or_default();
        asks.push(Ask { name: cell.key.to_owned(), default, within });
    }
    asks
}

/// A number, or `{ is = 9, within = [8, 10] }`.
fn read_ask(reader: &mut Reader<'_>, cell: &Cell<'_>) -> Option<(f64, Option<[f64; 2]>)> {
    if !cell.value.get_ref().is_table() {
        return reader.length(cell).map(|default| (default, None));
    }
    let row = reader.row(cell, "ask")?;
    row.only(reader, &["is", "within"]);
    let default = row.need(reader, "is").and_then(|cell| reader.length(&cell));
    let within = row.get("within").map(|cell| read_range(reader, &cell).ok_or(())).transpose();
    Some((default?, within.ok()?))
}

fn read_lines(reader: &mut Reader<'_>, cell: &Cell<'_>, names: &mut Names) -> Vec<Line> {
    let waist = Line {
        name: WAIST_LINE.to_owned(),
        at: QuantityRule::nothing(),
        rule: "0".to_owned(),
        by_step: false,
        says: "square out the waist line".to_owned(),
        place: 0..0,
    };
    let Some(row) = reader.row(cell, "[lines]") else { return vec![waist] };
    names.declare(WAIST_LINE, Reference::Line(0));
    let mut lines = vec![waist];
    let cells = few(reader, cell, &row);
    reader.lengths_somewhere = cells.iter().map(|cell| cell.key.to_owned()).collect();
    for cell in cells {
        let (at, say) = if cell.value.get_ref().is_table() {
            let row = reader.row(&cell, "line");
            let say = row.as_ref().and_then(|row| row.get("say")).and_then(|cell| reader.text(&cell));
            (row.and_then(|row| read_line_rule(reader, &row, names)), say)
        } else {
            (reader.proportion(&cell, names).map(QuantityRule::Is), None)
        };
        // Declared after its own proportion was read, and also where that was wrong, so that one slip is told once.
        declare(reader, names, cell.key, cell.key_span.clone(), Reference::Line(lines.len()));
        let plain = || format!("square out the {}", wording::spoken(cell.key));
        let at = at.unwrap_or(QuantityRule::nothing());
        lines.push(Line {
            name: cell.key.to_owned(),
            rule: wording::length(&at, &wording::Names { points: &[], lines: &[] }),
            at,
            by_step: false,
            says: say.map_or_else(plain, str::to_owned),
            place: cell.value.span(),
        });
    }
    lines
}

/// A line in its long form: at a sum, or by size.
fn read_line_rule(reader: &mut Reader<'_>, row: &Row<'_>, names: &Names) -> Option<QuantityRule> {
    if row.get("by").is_some() {
        row.only(reader, &["by", "rungs", "between", "say"]);
        return read_ladder(reader, row, names).map(QuantityRule::Ladder);
    }
    row.only(reader, &["at", "by", "rungs", "between", "say"]);
    let at = row.need(reader, "at")?;
    reader.proportion(&at, names).map(QuantityRule::Is)
}

/// A leg in one piece has its side line once.
fn check_one_piece(reader: &mut Reader<'_>, document: &Row<'_>, front: &PanelRules, back: &PanelRules) {
    let place = document.get("one_piece").map_or(0..0, |cell| cell.key_span);
    for role in [Role::SideHip, Role::SideKnee, Role::SideHem] {
        if front.roles[role] != back.roles[role] {
            let mistake = reader.at(
                place.clone(),
                format!("a leg in one piece has one `{}`", role.key()),
                "front and back name two points",
            );
            reader.note(
                mistake.help("name the same point in `[front]` and `[back]`, or leave `one_piece` out"),
            );
        }
    }
}

/// The cells of a table, if they are not far too many.
fn few<'v>(reader: &mut Reader<'_>, cell: &Cell<'_>, row: &Row<'v>) -> Vec<Cell<'v>> {
    let cells = row.cells();
    if cells.len() <= MOST_ENTRIES {
        return cells;
    }
    let title = format!("`{}` has {} entries", cell.key, cells.len());
    reader.wrong(cell.key_span.clone(), title, format!("expected at most {MOST_ENTRIES}"));
    Vec::new()
}

/// The lines that every recipe must name, since panels are judged and cut on them.
fn find_levels(reader: &mut Reader<'_>, document: &Row<'_>, lines: &[Line]) -> Option<[usize; 4]> {
    let mut find = |level: Level| {
        let name = format!("{level}_line");
        let found = lines.iter().position(|line| line.name == name);
        if found.is_none() {
            let place = document.get("lines").map_or(0..0, |cell| cell.key_span);
            reader.wrong(place, format!("[lines] lacks `{name}`"), format!("expected `{name}` here"));
        }
        found
    };
    let found = [Level::Hip, Level::Crotch, Level::Knee, Level::Hem].map(&mut find);
    let [hip, crotch, knee, hem] = found;
    Some([hip?, crotch?, knee?, hem?])
}

/// The file's name without folders and ending.
fn file_stem(name: &str) -> String {
    let file = name.rsplit(['/', '\\']).next().unwrap_or(name);
    file.strip_suffix(".toml").unwrap_or(file).to_owned()
}

impl Recipe {
    /// The line of a level that every recipe names; the waist is the first line. `None` for thigh and calf, which
    /// the body sets.
    pub fn level(&self, level: Level) -> Option<usize> {
        let [hip, crotch, knee, hem] = self.levels;
        match level {
            Level::Waist => Some(0),
            Level::Hip => Some(hip),
            Level::Crotch => Some(crotch),
            Level::Knee => Some(knee),
            Level::Hem => Some(hem),
            Level::Thigh | Level::Calf => None,
        }
    }
}

const _: () = assert!(Level::ALL.len() == 7);
