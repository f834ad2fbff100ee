//! Reading the steps of a construction, and telling which panel each belongs to.

use super::{
    BendRule, Ladder, Line, Names, PanelRules, PointId, PointRule, Proportion, QuantityRule, Reference, Step,
    Track,
    panel::read_bend_rule,
    read::{Points, declare},
    rules::{EVERY_STEP, FORMS, Key, Makes, Rule, making},
    step::{Between, Entry, Height, Reach, Way},
    table::{Cell, Reader, Row, listed, near, shown},
    track::Slope,
    wording,
};
use crate::terms::{Panel, Word};

/// Handbooks give a ladder three to six rungs.
const MOST_RUNGS: usize = 40;
/// Points that a length is read along.
const MOST_POINTS: usize = 20;

/// The steps as read.
pub(super) struct Steps {
    pub(super) steps: Vec<Step>,
    /// The panel that the recipe itself says for a step.
    pub(super) panels: Vec<Option<Panel>>,
    /// How many quantities the steps make.
    pub(super) quantities: usize,
}

/// What is known of a recipe while its steps are read.
pub(super) struct Known<'k> {
    pub(super) points: &'k mut Points,
    pub(super) names: &'k mut Names,
    pub(super) lines: &'k mut Vec<Line>,
}

/// Reads every step in order; a step that is wrong is left out, its name still counts as made.
pub(super) fn read_steps(reader: &mut Reader<'_>, cells: &[Cell<'_>], known: &mut Known<'_>) -> Steps {
    let rows: Vec<Row<'_>> = cells.iter().filter_map(|cell| reader.row(cell, "step")).collect();
    let named = |key: &str| -> Vec<String> {
        let cells = rows.iter().filter_map(|row| row.get(key));
        cells.filter_map(|cell| cell.value.get_ref().as_str().map(str::to_owned)).collect()
    };
    reader.lengths_somewhere.extend(named("quantity"));
    reader.lengths_somewhere.extend(named("level"));
    reader.points_somewhere = named("point");
    let mut read = Steps { steps: Vec::with_capacity(rows.len()), panels: Vec::new(), quantities: 0 };
    for row in &rows {
        let say = row.get("say").and_then(|cell| reader.text(&cell)).map(str::to_owned);
        let panel = row.get("panel").and_then(|cell| {
            reader.choice(&cell, &[(Panel::Front.key(), Panel::Front), (Panel::Back.key(), Panel::Back)])
        });
        let Some((makes, cell)) = read_makes(reader, row) else { continue };
        let rule = chosen_rule(reader, row, makes);
        let entry = |makes: &str, (title, rule): (String, String)| Entry {
            panel: panel.unwrap_or(Panel::Front),
            number: 0,
            title: say.clone().unwrap_or_else(|| title.clone()),
            plain: title,
            rule,
            makes: makes.to_owned(),
            place: row.span.clone(),
        };
        let step = match makes {
            Makes::Quantity => {
                let rule = rule.and_then(|rule| read_quantity(reader, row, rule, known));
                let index = read.quantities;
                let name = reader.text(&cell);
                if let Some(name) = name {
                    declare(reader, known.names, name, cell.value.span(), Reference::Quantity(index));
                    read.quantities += 1;
                }
                rule.zip(name).map(|(rule, name)| {
                    let words = wording::quantity(name, &rule, &known.words());
                    Step::Quantity { index, entry: entry(name, words), rule, say: say.clone() }
                })
            }
            Makes::Level => {
                let rule = rule.and_then(|rule| read_quantity(reader, row, rule, known));
                let index = known.lines.len();
                let name = reader.text(&cell);
                name.map(|name| {
                    declare(reader, known.names, name, cell.value.span(), Reference::Line(index));
                    // Also where the rule was wrong, so that one slip is told once.
                    let rule = rule.clone().unwrap_or(QuantityRule::nothing());
                    let words = wording::level(name, &rule, &known.words());
                    known.lines.push(Line::of_step(name, rule, &words, say.as_deref(), row.span.clone()));
                    (name, words)
                })
                .zip(rule)
                .map(|((name, words), rule)| Step::Level {
                    index,
                    entry: entry(name, words),
                    rule,
                    say: say.clone(),
                })
            }
            Makes::Point => {
                let rule = rule.and_then(|rule| read_point(reader, row, rule, known));
                let id = known.points.declare(reader, &cell);
                rule.zip(id).map(|(rule, id)| {
                    let name = &known.points.names[id.0];
                    let words = wording::point(name, &rule, &known.words());
                    Step::Point { id, entry: entry(name, words), rule, say: say.clone() }
                })
            }
        };
        if let Some(step) = step {
            read.steps.push(step);
            read.panels.push(panel);
        }
    }
    read
}

impl Known<'_> {
    /// The names that words need.
    pub(super) fn words(&self) -> wording::Names<'_> {
        wording::Names { points: &self.points.names, lines: self.lines }
    }
}

/// What a step makes, and the cell with its name.
fn read_makes<'v>(reader: &mut Reader<'_>, row: &Row<'v>) -> Option<(Makes, Cell<'v>)> {
    let made: Vec<(Makes, Cell<'v>)> =
        Makes::ALL.into_iter().filter_map(|makes| Some((makes, row.get(makes.key())?))).collect();
    if let [one] = made.as_slice() {
        return Some(one.clone());
    }
    let label = "expected one of `point`, `quantity`, `level`";
    let mistake = reader.at(row.span.clone(), "a step makes one thing", label);
    reader.note(if made.is_empty() {
        mistake.help(
            "say what it makes: `point = \"9\"`, `quantity = \"front_extension\"` or `level = \"knee_line\"`",
        )
    } else {
        mistake.help("make the rest a step of its own")
    });
    None
}

/// The rule that a step follows; refuses keys that do not belong to it.
fn chosen_rule(reader: &mut Reader<'_>, row: &Row<'_>, makes: Makes) -> Option<&'static Rule> {
    // `from` stands in several rules of a point and chooses one only where nothing else does.
    let choosers: Vec<&'static Rule> =
        making(makes).filter(|rule| row.get(rule.chosen_by).is_some()).collect();
    let chosen: Vec<&'static Rule> = match makes {
        Makes::Point if choosers.len() > 1 => {
            choosers.into_iter().filter(|rule| rule.chosen_by != "from").collect()
        }
        _ => choosers,
    };
    let Some(rule) = chosen.first() else {
        let all: Vec<&str> = making(makes).map(|rule| rule.chosen_by).collect();
        let all = listed(all.iter().copied(), " or ");
        let title = format!("a {} goes by a rule", makes.key());
        let known: Vec<&str> = making(makes).flat_map(Rule::all_keys).chain(every_step()).collect();
        let strange = row.cells().into_iter().find(|cell| !known.contains(&cell.key));
        let place = strange.as_ref().map_or(row.span.clone(), |cell| cell.key_span.clone());
        let mistake = reader.at(place, title, format!("expected {all}"));
        reader.note(match strange {
            Some(cell) => near(mistake, cell.key, known.iter().copied()),
            None => mistake,
        });
        return None;
    };
    only_of_rule(reader, row, rule).then_some(rule)
}

fn every_step() -> impl Iterator<Item = &'static str> {
    EVERY_STEP.iter().map(|key| key.name)
}

/// Refuses keys that do not belong to the step's rule; whether there was none.
fn only_of_rule(reader: &mut Reader<'_>, row: &Row<'_>, rule: &'static Rule) -> bool {
    let mut clean = true;
    for cell in row.cells() {
        if rule.all_keys().chain(every_step()).any(|key| key == cell.key) {
            continue;
        }
        clean = false;
        let named = match rule.makes {
            Makes::Point => format!("`{}`", rule.chosen_by),
            makes => format!("a {} with `{}`", makes.key(), rule.chosen_by),
        };
        let of_others = || Makes::ALL.into_iter().flat_map(making).flat_map(Rule::all_keys);
        if of_others().any(|key| key == cell.key) {
            let title = format!("a step of {named} takes no `{}`", cell.key);
            let mistake = reader.at(cell.key_span.clone(), title, "belongs to another rule");
            reader.note(mistake.help("a step follows one rule; make the rest a step of its own"));
        } else {
            let title = format!("unknown key `{}`", shown(cell.key));
            let mistake = reader.at(cell.key_span.clone(), title, "not a key of a step");
            let helped = near(mistake, cell.key, of_others().chain(every_step()));
            reader.note(if helped.remedies().is_empty() {
                let all = rule.all_keys().chain(every_step());
                helped.help(format!("a step of {named} takes {}", listed(all, ", ")))
            } else {
                helped
            });
        }
    }
    clean
}

fn read_quantity(
    reader: &mut Reader<'_>,
    row: &Row<'_>,
    rule: &Rule,
    known: &Known<'_>,
) -> Option<QuantityRule> {
    match rule.chosen_by {
        "by" => read_ladder(reader, row, known.names).map(QuantityRule::Ladder),
        "length" => {
            let cell = row.get("length")?;
            let points = read_points(reader, &cell, known.points)?;
            if points.len() < 2 {
                reader.wrong(
                    cell.value.span(),
                    "a length is read between two points at least",
                    "expected `[\"a\", \"b\"]`",
                );
                return None;
            }
            Some(QuantityRule::Between(points))
        }
        "curve" => {
            let ends = row.get("curve").and_then(|cell| read_ends(reader, &cell, known.points));
            let corner = row.need(reader, "corner").and_then(|cell| known.points.find(reader, &cell));
            let bend = read_bend_rule(reader, row, known.points);
            Some(QuantityRule::Curve { ends: ends?, corner: corner?, bend: bend? })
        }
        "through" => {
            let cell = row.get("through")?;
            known.points.find(reader, &cell).map(QuantityRule::Depth)
        }
        sum => row.get(sum).and_then(|cell| reader.proportion(&cell, known.names)).map(QuantityRule::Is),
    }
}

/// A ladder by size, from its keys.
pub(super) fn read_ladder(reader: &mut Reader<'_>, row: &Row<'_>, names: &Names) -> Option<Ladder> {
    let by = row.need(reader, "by")?;
    let by_name = reader.text(&by);
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
    Some(Ladder {
        by: reference?,
        by_name: by_name?.to_owned(),
        rungs: rungs?,
        between: between?,
        unit: names.unit(),
    })
}

fn read_rungs(reader: &mut Reader<'_>, cell: &Cell<'_>) -> Option<Vec<[f64; 2]>> {
    let list = reader.list(cell, MOST_RUNGS)?;
    let mut rungs: Vec<[f64; 2]> = Vec::with_capacity(list.len());
    for rung in &list {
        let numbers: Vec<_> = reader.list(rung, 2)?.iter().map(|number| reader.length(number)).collect();
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

fn read_points(reader: &mut Reader<'_>, cell: &Cell<'_>, points: &Points) -> Option<Vec<PointId>> {
    let found: Vec<_> =
        reader.list(cell, MOST_POINTS)?.iter().map(|name| points.find(reader, name)).collect();
    found.into_iter().collect()
}

/// Two points that are not one.
pub(super) fn read_ends(reader: &mut Reader<'_>, cell: &Cell<'_>, points: &Points) -> Option<[PointId; 2]> {
    let ends = read_points(reader, cell, points)?;
    match ends.as_slice() {
        [first, second] if first != second => Some([*first, *second]),
        _ => {
            let label = "expected `[\"a\", \"b\"]`";
            reader.wrong(cell.value.span(), "a line goes through two points", label);
            None
        }
    }
}

fn read_point(reader: &mut Reader<'_>, row: &Row<'_>, rule: &Rule, known: &Known<'_>) -> Option<PointRule> {
    if rule.chosen_by == "line" {
        return read_meet(reader, row, known);
    }
    let from = row.need(reader, "from").and_then(|cell| known.points.find(reader, &cell));
    match rule.chosen_by {
        "toward" => read_toward(reader, row, from, known),
        "span" => {
            let span = row.need(reader, "span").and_then(|cell| reader.proportion(&cell, known.names));
            let on = row.need(reader, "on").and_then(|cell| read_track(reader, &cell, known));
            let towards = read_towards(reader, row);
            Some(PointRule::Span {
                from: from?,
                span: span?,
                on: on?,
                towards: towards?.unwrap_or(Way::Side),
            })
        }
        "fork_up" => {
            let fork_up = row.need(reader, "fork_up").and_then(|cell| reader.proportion(&cell, known.names));
            Some(PointRule::Diagonal { from: from?, fork_up: fork_up? })
        }
        _ => read_from(reader, row, from, known),
    }
}

fn read_from(
    reader: &mut Reader<'_>,
    row: &Row<'_>,
    from: Option<PointId>,
    known: &Known<'_>,
) -> Option<PointRule> {
    let across = match (row.get("side"), row.get("fork")) {
        (None, None) => None,
        (Some(cell), None) => Some((Way::Side, reader.proportion(&cell, known.names)?)),
        (None, Some(cell)) => Some((Way::Fork, reader.proportion(&cell, known.names)?)),
        (Some(_), Some(cell)) => {
            reader.wrong(cell.key_span, "a point goes one way across", "expected either `side` or `fork`");
            return None;
        }
    };
    let height = match (row.get("up"), row.get("down"), row.get("on")) {
        (None, None, None) => None,
        (Some(cell), None, None) => Some(Height::Up(reader.proportion(&cell, known.names)?)),
        (None, Some(cell), None) => Some(Height::Down(reader.proportion(&cell, known.names)?)),
        (None, None, Some(cell)) => {
            let track = read_track(reader, &cell, known)?;
            if matches!(track, Track::Arc { .. }) {
                let mistake =
                    reader.at(cell.value.span(), "an upright meets an arc in two places", "expected a line");
                reader.note(mistake.help(
                    "say which: `line = { upright = \"...\" }, on = { about = \"...\", reach = ... }, towards = \"up\"`",
                ));
                return None;
            }
            Some(Height::On(track))
        }
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
    known: &Known<'_>,
) -> Option<PointRule> {
    let toward = row.need(reader, "toward").and_then(|cell| known.points.find(reader, &cell));
    let reach = match (row.get("part"), row.get("along"), row.get("past")) {
        (Some(cell), None, None) => reader.part(&cell).map(|(minus, written)| Reach::Part { minus, written }),
        (None, Some(cell), None) => reader.proportion(&cell, known.names).map(Reach::Along),
        (None, None, Some(cell)) => reader.proportion(&cell, known.names).map(Reach::Past),
        _ => {
            let mistake = reader.at(
                row.span.clone(),
                "a `toward` step goes by one measure",
                "expected one of `part`, `along`, `past`",
            );
            reader.note(mistake.help(
                "`part` of the way from the first point, `along` so far from the first, `past` so far beyond the second",
            ));
            None
        }
    };
    Some(PointRule::Toward { from: from?, toward: toward?, reach: reach? })
}

fn read_meet(reader: &mut Reader<'_>, row: &Row<'_>, known: &Known<'_>) -> Option<PointRule> {
    let line = row.need(reader, "line").and_then(|cell| read_track(reader, &cell, known));
    let on = row.need(reader, "on").and_then(|cell| read_track(reader, &cell, known));
    let towards = read_towards(reader, row);
    let (line, on, towards) = (line?, on?, towards?);
    let arcs = [&line, &on].iter().filter(|track| matches!(track, Track::Arc { .. })).count();
    match (arcs, row.get("towards")) {
        (0, Some(cell)) => {
            reader.wrong(cell.key_span, "two straight lines meet once", "expected no `towards`");
            None
        }
        (1.., None) => {
            let mistake =
                reader.at(row.span.clone(), "an arc is met in two places", "expected `towards` here");
            reader
                .note(mistake.help(
                    "say which lies farther: `towards = \"side\"`, `\"fork\"`, `\"up\"` or `\"down\"`",
                ));
            None
        }
        _ if line == on => {
            reader.wrong(row.span.clone(), "a line does not meet itself", "expected two lines");
            None
        }
        _ => Some(PointRule::Meet { line, on, towards }),
    }
}

/// The direction that chooses between two places; `None` where it is wrong.
fn read_towards(reader: &mut Reader<'_>, row: &Row<'_>) -> Option<Option<Way>> {
    const WAYS: [(&str, Way); 4] =
        [("side", Way::Side), ("fork", Way::Fork), ("up", Way::Up), ("down", Way::Down)];
    match row.get("towards") {
        None => Some(None),
        Some(cell) => reader.choice(&cell, &WAYS).map(Some),
    }
}

/// A line that a point is to lie on: a level's name, two points, or a table.
fn read_track(reader: &mut Reader<'_>, cell: &Cell<'_>, known: &Known<'_>) -> Option<Track> {
    let value = cell.value.get_ref();
    if value.is_array() {
        return read_ends(reader, cell, known.points).map(Track::Through);
    }
    if !value.is_table() {
        return find_line(reader, cell, known).map(Track::Level);
    }
    let row = reader.row(cell, "line")?;
    let Some(form) = FORMS.iter().find(|form| row.get(form.chosen_by).is_some()) else {
        let all = listed(FORMS.iter().map(|form| form.chosen_by), " or ");
        let mistake =
            reader.at(cell.value.span(), "a line that says nothing known", format!("expected {all}"));
        let first = row.cells().first().map_or("", |cell| cell.key);
        reader.note(near(mistake, first, FORMS.iter().map(|form| form.chosen_by)));
        return None;
    };
    let keys: Vec<&str> = form.keys.iter().map(|key: &Key| key.name).collect();
    if !row.only(reader, &keys) {
        return None;
    }
    let mut point = |key| row.need(reader, key).and_then(|cell| known.points.find(reader, &cell));
    match form.chosen_by {
        "level_of" => point("level_of").map(Track::LevelOf),
        "upright" => point("upright").map(Track::UprightOf),
        "about" => {
            let about = point("about");
            let reach = row.need(reader, "reach").and_then(|cell| reader.proportion(&cell, known.names));
            Some(Track::Arc { about: about?, reach: reach? })
        }
        "slope" => {
            let at = point("at");
            let slope = row.get("slope").and_then(|cell| read_slope(reader, &cell, known.names));
            let towards = row
                .need(reader, "towards")
                .and_then(|cell| reader.choice(&cell, &[("side", Way::Side), ("fork", Way::Fork)]));
            Some(Track::Slope { at: at?, slope: slope?, towards: towards? })
        }
        other => {
            let at = point("at");
            let to = row.get(other).and_then(|cell| read_ends(reader, &cell, known.points));
            let (at, to) = (at?, to?);
            Some(if other == "square_to" { Track::Square { to, at } } else { Track::Parallel { to, at } })
        }
    }
}

/// `15 : 3.5`, or `12 degrees`.
fn read_slope(reader: &mut Reader<'_>, cell: &Cell<'_>, names: &Names) -> Option<Slope> {
    /// Beyond this a line is nearer level than upright twice over.
    const MOST_DEGREES: f64 = 89.0;
    let text = reader.text(cell)?;
    if let Some((up, across)) = text.split_once(':') {
        let mut side = |part: &str| reader.proportion_in(cell, text, part, names);
        let (up, across) = (side(up), side(across));
        return Some(Slope::Sides { up: up?, across: across? });
    }
    let degrees = ["degrees", "degree", "°"].iter().find_map(|unit| text.trim().strip_suffix(unit));
    let degrees = degrees.and_then(|number| number.trim().parse::<f64>().ok());
    let sound = degrees.filter(|degrees| (-MOST_DEGREES..=MOST_DEGREES).contains(degrees));
    if sound.is_none() {
        let mistake = reader.at(
            cell.value.span(),
            "`slope` is not a slope",
            "expected `15 : 3.5`, up and across, or `12 degrees`",
        );
        reader.note(mistake.help("degrees are counted from the upright, -89 to 89"));
    }
    sound.map(Slope::Degrees)
}

fn find_line(reader: &mut Reader<'_>, cell: &Cell<'_>, known: &Known<'_>) -> Option<usize> {
    let name = reader.text(cell)?;
    let found = known.lines.iter().position(|line| line.name == name);
    if found.is_none() {
        let title = format!("unknown line `{}`", shown(name));
        let mistake = reader.at(cell.value.span(), title, "no level line of this name yet");
        let later = reader.lengths_somewhere.iter().any(|made| made == name);
        reader.note(if known.points.names.iter().any(|point| point == name) {
            mistake
                .help(format!("`{name}` is a point; the level through it is `{{ level_of = \"{name}\" }}`"))
        } else if later {
            mistake.help(format!("`{name}` comes later in the recipe: move it up"))
        } else {
            let mistake = near(mistake, name, known.lines.iter().map(|line| line.name.as_str()));
            let all = listed(known.lines.iter().map(|line| line.name.as_str()), ", ");
            let left_out = ["hip_line", "knee_line"].contains(&name).then(|| {
                format!(
                    "a recipe may leave `{name}` out only where no step uses it: write it under `[lines]`, and in \
                     `notes` that the book does not say how high it lies"
                )
            });
            mistake.help(left_out.unwrap_or(format!(
                "lines here are {all}; one more is written under `[lines]` or by a step with `level`"
            )))
        });
    }
    found
}

/// Gives every step its panel and its number there. A step belongs to the front if a front role needs it, to the back
/// if only a back role does; one that no role needs goes with the step before it. What the recipe says comes first.
pub(super) fn number_steps(
    steps: &mut [Step],
    said: &[Option<Panel>],
    front: &PanelRules,
    back: Option<&PanelRules>,
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
fn needed(steps: &[Step], panel: &PanelRules) -> Vec<bool> {
    let mut points: Vec<PointId> = panel.roles.into_values().collect();
    points.extend([panel.crease, panel.vertical]);
    points.extend(panel.darts.iter().map(|dart| dart.on));
    if let BendRule::Guide(guide) = panel.bend {
        points.push(guide);
    }
    let (mut quantities, mut lines) = (Vec::new(), Vec::new());
    let darts = panel.darts.iter().flat_map(|dart| [&dart.intake, &dart.length]);
    for proportion in darts.chain(panel.bow.given()) {
        proportion.references().for_each(|reference| want(reference, &mut quantities, &mut lines));
    }
    let mut needed = vec![false; steps.len()];
    // Backwards, since a step only stands on earlier ones.
    for (step, needed) in steps.iter().zip(&mut needed).rev() {
        match step {
            Step::Point { id, rule, .. } if points.contains(id) => {
                points.extend(rule.points());
                lines.extend(rule.tracks().filter_map(Track::level));
                for reference in rule.proportions().flat_map(Proportion::references) {
                    want(reference, &mut quantities, &mut lines);
                }
                *needed = true;
            }
            Step::Quantity { index, rule, .. } if quantities.contains(index) => {
                points.extend(rule.points());
                rule.references()
                    .into_iter()
                    .for_each(|reference| want(reference, &mut quantities, &mut lines));
                *needed = true;
            }
            Step::Level { index, rule, .. } if lines.contains(index) => {
                points.extend(rule.points());
                rule.references()
                    .into_iter()
                    .for_each(|reference| want(reference, &mut quantities, &mut lines));
                *needed = true;
            }
            Step::Point { .. } | Step::Quantity { .. } | Step::Level { .. } => {}
        }
    }
    needed
}

/// Notes a quantity or a line that is stood on.
fn want(reference: Reference, quantities: &mut Vec<usize>, lines: &mut Vec<usize>) {
    match reference {
        Reference::Quantity(index) => quantities.push(index),
        Reference::Line(index) => lines.push(index),
        _ => {}
    }
}
