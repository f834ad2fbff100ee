//! Reading the steps of a construction, and telling which panel each belongs to.

use super::{
    BendRule, Ladder, Names, PanelPlan, PointId, PointRule, Proportion, QuantityRule, Reference, Step,
    read::{Points, declare},
    step::{Between, Entry, Height, Reach, Way},
    table::{Cell, Reader, Row, near, shown},
    wording,
};
use crate::terms::{Panel, Word};

/// Handbooks give a ladder three to six rungs.
const MOST_RUNGS: usize = 40;

/// The steps as read.
pub(super) struct Steps {
    pub(super) steps: Vec<Step>,
    /// The panel that the recipe itself says for a step.
    pub(super) panels: Vec<Option<Panel>>,
    /// How many quantities the steps make.
    pub(super) quantities: usize,
}

/// The keys that each rule may have, besides `say` and `panel`; the first is the one that chooses the rule.
const RULES: [(&str, &[&str]); 6] = [
    ("a quantity", &["quantity", "is", "by", "rungs", "between"]),
    ("toward", &["toward", "point", "from", "part", "past"]),
    ("span", &["span", "point", "from", "on", "towards"]),
    ("line", &["line", "point", "on"]),
    ("fork_up", &["fork_up", "point", "from"]),
    ("from", &["from", "point", "side", "fork", "up", "down", "on"]),
];

/// Reads every step in order; a step that is wrong is left out, its name still counts as made.
pub(super) fn read_steps(
    reader: &mut Reader<'_>,
    cells: &[Cell<'_>],
    points: &mut Points,
    names: &mut Names,
    lines: &[String],
) -> Steps {
    let rows: Vec<Row<'_>> = cells.iter().filter_map(|cell| reader.row(cell, "step")).collect();
    let named = |key: &str| -> Vec<String> {
        let cells = rows.iter().filter_map(|row| row.get(key));
        cells.filter_map(|cell| cell.value.get_ref().as_str().map(str::to_owned)).collect()
    };
    reader.lengths_somewhere.extend(named("quantity"));
    reader.points_somewhere = named("point");
    let mut read = Steps { steps: Vec::with_capacity(rows.len()), panels: Vec::new(), quantities: 0 };
    for row in &rows {
        let say = row.get("say").and_then(|cell| reader.text(&cell)).map(str::to_owned);
        let panel = row.get("panel").and_then(|cell| {
            reader.choice(&cell, &[(Panel::Front.key(), Panel::Front), (Panel::Back.key(), Panel::Back)])
        });
        let entry = |makes: &str, (title, rule): (String, String)| Entry {
            panel: panel.unwrap_or(Panel::Front),
            number: 0,
            title: say.clone().unwrap_or_else(|| title.clone()),
            plain: title,
            rule,
            makes: makes.to_owned(),
            place: row.span.clone(),
        };
        let step = match (row.get("point"), row.get("quantity")) {
            (None, Some(cell)) => {
                let rule = read_quantity(reader, row, names);
                let index = read.quantities;
                let name = reader.text(&cell);
                if let Some(name) = name {
                    declare(reader, names, name, cell.value.span(), Reference::Quantity(index));
                    read.quantities += 1;
                }
                rule.zip(name).map(|(rule, name)| {
                    let words = wording::quantity(name, &rule);
                    Step::Quantity { index, entry: entry(name, words), rule, say: say.clone() }
                })
            }
            (Some(cell), None) => {
                let rule = read_point(reader, row, points, names, lines);
                let id = points.declare(reader, &cell);
                rule.zip(id).map(|(rule, id)| {
                    let name = &points.names[id.0];
                    let words = wording::point(name, &rule, &wording::Names { points: &points.names, lines });
                    Step::Point { id, entry: entry(name, words), rule, say: say.clone() }
                })
            }
            (None, None) | (Some(_), Some(_)) => {
                let label = "expected either `point` or `quantity`";
                reader.wrong(row.span.clone(), "a step makes one thing", label);
                None
            }
        };
        if let Some(step) = step {
            read.steps.push(step);
            read.panels.push(panel);
        }
    }
    read
}

/// Refuses keys that do not belong to the step's rule; whether there was none.
fn only_of_rule(reader: &mut Reader<'_>, row: &Row<'_>, chosen: &str) -> bool {
    let Some((rule, keys)) = RULES.iter().find(|(_, keys)| keys[0] == chosen) else { return true };
    let mut clean = true;
    for cell in row.cells() {
        if keys.contains(&cell.key) || ["say", "panel"].contains(&cell.key) {
            continue;
        }
        clean = false;
        let known = || RULES.iter().flat_map(|(_, keys)| keys.iter().copied()).chain(["say", "panel"]);
        if known().any(|key| key == cell.key) {
            let rule = if *rule == chosen { format!("`{rule}`") } else { (*rule).to_owned() };
            let title = format!("a step of {rule} takes no `{}`", cell.key);
            let mistake = reader.at(cell.key_span.clone(), title, "belongs to another rule");
            reader.note(mistake.help("a step follows one rule; make the rest a step of its own"));
        } else {
            let title = format!("unknown key `{}`", shown(cell.key));
            let mistake = reader.at(cell.key_span.clone(), title, "not a key of a step");
            reader.note(near(mistake, cell.key, known()));
        }
    }
    clean
}

fn read_quantity(reader: &mut Reader<'_>, row: &Row<'_>, names: &Names) -> Option<QuantityRule> {
    if !only_of_rule(reader, row, "quantity") {
        return None;
    }
    match (row.get("is"), row.get("by")) {
        (Some(cell), None) => {
            for key in ["rungs", "between"] {
                if let Some(cell) = row.get(key) {
                    let title = format!("a quantity that `is` a proportion takes no `{key}`");
                    reader.wrong(cell.key_span, title, "belongs to a ladder `by` size");
                }
            }
            reader.proportion(&cell, names).map(QuantityRule::Is)
        }
        (None, Some(cell)) => read_ladder(reader, row, &cell, names).map(QuantityRule::Ladder),
        (None, None) | (Some(_), Some(_)) => {
            reader.wrong(row.span.clone(), "a quantity goes by one rule", "expected either `is` or `by`");
            None
        }
    }
}

fn read_ladder(reader: &mut Reader<'_>, row: &Row<'_>, by: &Cell<'_>, names: &Names) -> Option<Ladder> {
    let by_name = reader.text(by);
    let reference = by_name.and_then(|name| {
        let found = names.resolve(name);
        if found.is_none() {
            let mistake = reader.at(
                by.value.span(),
                format!("unknown name `{}`", shown(name)),
                "stands for nothing here",
            );
            reader.note(near(mistake, name, names.all().iter().map(String::as_str)));
        }
        found
    });
    let rungs = row.need(reader, "rungs").and_then(|cell| read_rungs(reader, &cell));
    let between = row
        .need(reader, "between")
        .and_then(|cell| reader.choice(&cell, &[("ramp", Between::Ramp), ("step", Between::Step)]));
    Some(Ladder { by: reference?, by_name: by_name?.to_owned(), rungs: rungs?, between: between? })
}

fn read_rungs(reader: &mut Reader<'_>, cell: &Cell<'_>) -> Option<Vec<[f64; 2]>> {
    let list = reader.list(cell, MOST_RUNGS)?;
    let mut rungs: Vec<[f64; 2]> = Vec::with_capacity(list.len());
    for rung in &list {
        let numbers: Vec<_> = reader.list(rung, 2)?.iter().map(|number| reader.number(number)).collect();
        let [size, value] =
            numbers.into_iter().collect::<Option<Vec<_>>>()?.try_into().ok().or_else(|| {
                reader.wrong(rung.value.span(), "a rung is a size and a value", "expected `[size, value]`");
                None
            })?;
        if rungs.last().is_some_and(|[below, _]| size <= *below) {
            reader.wrong(rung.value.span(), "the rungs do not rise", "expected a size above the one before");
            return None;
        }
        rungs.push([size, value]);
    }
    if rungs.len() < 2 {
        reader.wrong(cell.value.span(), "a ladder has two rungs at least", "expected `[[size, value], ...]`");
        return None;
    }
    Some(rungs)
}

fn read_point(
    reader: &mut Reader<'_>,
    row: &Row<'_>,
    points: &Points,
    names: &Names,
    lines: &[String],
) -> Option<PointRule> {
    let chosen = ["toward", "span", "line", "fork_up"].into_iter().find(|key| row.get(key).is_some());
    let chosen = chosen.unwrap_or("from");
    if !only_of_rule(reader, row, chosen) {
        return None;
    }
    if chosen == "line" {
        return read_meet(reader, row, points, lines);
    }
    let from = row.need(reader, "from").and_then(|cell| points.find(reader, &cell));
    match chosen {
        "toward" => read_toward(reader, row, from, points, names),
        "span" => read_span(reader, row, from, names, lines),
        "fork_up" => {
            let fork_up = row.need(reader, "fork_up").and_then(|cell| reader.proportion(&cell, names));
            Some(PointRule::Diagonal { from: from?, fork_up: fork_up? })
        }
        _ => read_from(reader, row, from, names, lines),
    }
}

fn read_from(
    reader: &mut Reader<'_>,
    row: &Row<'_>,
    from: Option<PointId>,
    names: &Names,
    lines: &[String],
) -> Option<PointRule> {
    let across = match (row.get("side"), row.get("fork")) {
        (None, None) => None,
        (Some(cell), None) => Some((Way::Side, reader.proportion(&cell, names)?)),
        (None, Some(cell)) => Some((Way::Fork, reader.proportion(&cell, names)?)),
        (Some(_), Some(cell)) => {
            reader.wrong(cell.key_span, "a point goes one way across", "expected either `side` or `fork`");
            return None;
        }
    };
    let height = match (row.get("up"), row.get("down"), row.get("on")) {
        (None, None, None) => None,
        (Some(cell), None, None) => Some(Height::Up(reader.proportion(&cell, names)?)),
        (None, Some(cell), None) => Some(Height::Down(reader.proportion(&cell, names)?)),
        (None, None, Some(cell)) => Some(Height::On(find_line(reader, &cell, lines)?)),
        _ => {
            let label = "expected only one of `up`, `down`, `on`";
            reader.wrong(row.span.clone(), "a point has one height", label);
            return None;
        }
    };
    if across.is_none() && height.is_none() && row.get("from").is_some() {
        let label = "expected one of `side`, `fork`, `up`, `down`, `on`, `fork_up`, `toward`, `span`";
        reader.wrong(row.span.clone(), "a step that says where from but not where to", label);
        return None;
    }
    Some(PointRule::From { from: from?, across, height })
}

fn read_toward(
    reader: &mut Reader<'_>,
    row: &Row<'_>,
    from: Option<PointId>,
    points: &Points,
    names: &Names,
) -> Option<PointRule> {
    let toward = row.need(reader, "toward").and_then(|cell| points.find(reader, &cell));
    let reach = match (row.get("part"), row.get("past")) {
        (Some(cell), None) => reader.part(&cell).map(|(minus, written)| Reach::Part { minus, written }),
        (None, Some(cell)) => reader.proportion(&cell, names).map(Reach::Past),
        (None, None) | (Some(_), Some(_)) => {
            let label = "expected either `part` or `past`";
            reader.wrong(row.span.clone(), "a `toward` step goes by one measure", label);
            None
        }
    };
    Some(PointRule::Toward { from: from?, toward: toward?, reach: reach? })
}

fn read_span(
    reader: &mut Reader<'_>,
    row: &Row<'_>,
    from: Option<PointId>,
    names: &Names,
    lines: &[String],
) -> Option<PointRule> {
    let span = row.need(reader, "span").and_then(|cell| reader.proportion(&cell, names));
    let on = row.need(reader, "on").and_then(|cell| find_line(reader, &cell, lines));
    let towards = match row.get("towards") {
        None => Some(Way::Side),
        Some(cell) => reader.choice(&cell, &[("side", Way::Side), ("fork", Way::Fork)]),
    };
    Some(PointRule::Span { from: from?, span: span?, on: on?, towards: towards? })
}

fn read_meet(reader: &mut Reader<'_>, row: &Row<'_>, points: &Points, lines: &[String]) -> Option<PointRule> {
    let ends = row.need(reader, "line").and_then(|cell| {
        let ends: Vec<_> = reader.list(&cell, 2)?.iter().map(|end| points.find(reader, end)).collect();
        let ends: Option<[PointId; 2]> = ends.into_iter().collect::<Option<Vec<_>>>()?.try_into().ok();
        match ends {
            Some([first, second]) if first != second => ends,
            _ => {
                reader.wrong(
                    cell.value.span(),
                    "a line goes through two points",
                    "expected `[\"a\", \"b\"]`",
                );
                None
            }
        }
    });
    let on = row.need(reader, "on").and_then(|cell| find_line(reader, &cell, lines));
    Some(PointRule::Meet { line: ends?, on: on? })
}

fn find_line(reader: &mut Reader<'_>, cell: &Cell<'_>, lines: &[String]) -> Option<usize> {
    let name = reader.text(cell)?;
    let found = lines.iter().position(|line| line == name);
    if found.is_none() {
        let title = format!("unknown line `{}`", shown(name));
        let mistake = reader.at(cell.value.span(), title, "not among [lines]");
        reader.note(near(mistake, name, lines.iter().map(String::as_str)));
    }
    found
}

/// Gives every step its panel and its number there. A step belongs to the front if a front role needs it, to the back
/// if only a back role does; one that no role needs goes with the step before it. What the recipe says comes first.
pub(super) fn number_steps(
    steps: &mut [Step],
    said: &[Option<Panel>],
    front: &PanelPlan,
    back: Option<&PanelPlan>,
) {
    let front = needed(steps, front);
    let back = back.map(|back| needed(steps, back)).unwrap_or_default();
    let is_in = |needed: &[bool], index: usize| needed.get(index).copied().unwrap_or_default();
    let (mut panel, mut fronts, mut backs) = (Panel::Front, 0, 0);
    for (index, step) in steps.iter_mut().enumerate() {
        panel = match said.get(index).copied().flatten() {
            Some(said) => said,
            None if is_in(&front, index) => Panel::Front,
            None if is_in(&back, index) => Panel::Back,
            None => panel,
        };
        let number = match panel {
            Panel::Front => &mut fronts,
            Panel::Back => &mut backs,
        };
        *number += 1;
        let entry = step.entry_mut();
        (entry.panel, entry.number) = (panel, *number);
    }
}

/// Which steps a panel stands on, directly or through other steps.
fn needed(steps: &[Step], panel: &PanelPlan) -> Vec<bool> {
    let mut points: Vec<PointId> = panel.roles.into_values().collect();
    points.extend([panel.crease, panel.vertical]);
    points.extend(panel.darts.iter().map(|dart| dart.on));
    if let BendRule::Guide(guide) = panel.bend {
        points.push(guide);
    }
    let mut quantities = Vec::new();
    let darts = panel.darts.iter().flat_map(|dart| [&dart.intake, &dart.length]);
    for proportion in darts.chain([&panel.bow.side_above_hip, &panel.bow.inseam_above_knee]) {
        quantities.extend(named_quantities(proportion));
    }
    let mut needed = vec![false; steps.len()];
    // Backwards, since a step only stands on earlier ones.
    for (step, needed) in steps.iter().zip(&mut needed).rev() {
        match step {
            Step::Point { id, rule, .. } if points.contains(id) => {
                points.extend(rule.points());
                quantities.extend(rule.proportions().flat_map(named_quantities));
                *needed = true;
            }
            Step::Quantity { index, rule, .. } if quantities.contains(index) => {
                match rule {
                    QuantityRule::Is(proportion) => quantities.extend(named_quantities(proportion)),
                    QuantityRule::Ladder(Ladder { by: Reference::Quantity(by), .. }) => quantities.push(*by),
                    QuantityRule::Ladder(_) => {}
                }
                *needed = true;
            }
            Step::Point { .. } | Step::Quantity { .. } => {}
        }
    }
    needed
}

fn named_quantities(proportion: &Proportion) -> impl Iterator<Item = usize> {
    proportion.references().filter_map(|reference| match reference {
        Reference::Quantity(index) => Some(index),
        _ => None,
    })
}
