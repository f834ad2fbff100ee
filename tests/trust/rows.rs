//! Random rows and cropped trousers: each is answered, none is lost, `draft` and `batch` say the same.
//!
//! `BREEKS_ROWS=300000 cargo test --release --test trust -- --nocapture` runs all of them, each row by itself, and prints
//! the slowest answer and the most memory; otherwise a hundredth of them runs, by handfuls.

use std::{
    collections::BTreeMap,
    fmt::Write,
    time::{Duration, Instant},
};

use breeks::{
    adjust::Key,
    recipe::shipped_names,
    terms::{Edge, Panel, Word},
};
use serde_json::Value;

use crate::{batch, dice::Dice, drafted};

/// A row by the dotted paths of the measurement file, each with its value as TOML and JSON write it.
struct Row(Vec<(String, String)>);

impl Row {
    fn text(&mut self, path: &str, word: &str) {
        self.0.push((path.to_owned(), format!("\"{word}\"")));
    }

    fn number(&mut self, path: &str, number: f64) {
        self.0.push((path.to_owned(), format!("{number:.3}")));
    }

    fn as_json(&self, id: usize) -> String {
        let mut line = format!("{{\"id\":{id}");
        for (path, value) in &self.0 {
            // Cannot fail: writing to a string.
            let _ = write!(line, ",\"{path}\":{value}");
        }
        line + "}\n"
    }

    fn as_file(&self) -> String {
        self.0.iter().map(|(path, value)| format!("{path} = {value}\n")).collect()
    }
}

/// How far from ordinary a body and its parameters are thrown.
#[derive(Clone, Copy, PartialEq)]
enum Reach {
    /// As people are, corrections as usual.
    People,
    /// A fifth off, corrections to their hard limits.
    Wide,
    /// Anything up to the limits of what is read as a body at all.
    Far,
}

/// A body thrown, cm: its proportions are those of surveyed people (`tests/data`), give or take.
fn body(dice: &mut Dice, reach: Reach) -> Vec<(&'static str, f64)> {
    let off = |dice: &mut Dice| match reach {
        Reach::People => dice.between(0.96, 1.04),
        Reach::Wide => dice.between(0.8, 1.25),
        Reach::Far => dice.between(0.55, 1.8),
    };
    let hip = dice.between(82.0, 132.0);
    let stature = dice.between(150.0, 195.0);
    let mut all = vec![
        ("hip_girth", hip),
        ("waist_girth", hip * dice.between(0.66, 1.02)),
        (["stature", "inside_leg"][usize::from(dice.falls(0.4))], stature),
    ];
    if all[2].0 == "inside_leg" {
        all[2].1 = 0.46 * stature;
    }
    for (name, about, part) in [
        ("thigh_girth", 0.59 * hip, 0.5),
        ("knee_girth", 0.39 * hip, 0.3),
        ("calf_girth", 0.37 * hip, 0.3),
        ("total_crotch_length", 0.34 * hip + 0.24 * stature, 0.5),
        ("front_thigh_arc", 0.29 * hip, 0.2),
        ("front_waist_arc", 0.45 * hip, 0.1),
        ("body_rise", 0.158 * stature, 0.5),
        ("waist_to_hip", 0.115 * stature, 0.5),
        ("knee_height", 0.275 * stature, 0.2),
    ] {
        if dice.falls(part) {
            all.push((name, about));
        }
    }
    all.into_iter().map(|(name, cm)| (name, cm * off(dice))).collect()
}

fn row(dice: &mut Dice, reach: Reach, blocks: &[&str]) -> Row {
    let mut row = Row(Vec::new());
    let inch = dice.falls(0.25);
    let unit = if inch { 2.54 } else { 1.0 };
    row.text("units", if inch { "inch" } else { "cm" });
    row.text("sex", dice.one_of(&["female", "male", "unsaid"]));
    row.text("waist_level", dice.one_of(&["natural", "iso", "navel", "worn"]));
    row.text("trousers.block", dice.one_of(blocks));
    row.text("trousers.fit", dice.one_of(&["measured", "proportional"]));
    row.text("trousers.set", dice.one_of(&["clean", "easy"]));
    for (name, cm) in body(dice, reach) {
        row.number(&format!("measurements.{name}"), cm / unit);
    }
    if dice.falls(0.3) {
        row.number("trousers.style.length", dice.between(4.0, 60.0) / unit);
    }
    if dice.falls(0.1) {
        row.number("trousers.ease.hip", dice.between(-6.0, 20.0) / unit);
    }
    if dice.falls(0.1) {
        row.number("trousers.ease.crotch_depth", dice.between(-3.0, 6.0) / unit);
    }
    if dice.falls(0.05) {
        row.number("trousers.cloth_stretch", dice.between(0.0, 60.0));
    }
    for key in Key::ALL {
        if !dice.falls(0.12) {
            continue;
        }
        let about = key.about();
        let (least, most) = if reach == Reach::People { about.usual } else { about.hard };
        let value = match dice.between(0.0, 1.0) {
            end if end < 0.15 => least,
            end if end > 0.85 => most,
            _ => dice.between(least, most),
        };
        let unit = if about.unit.symbol() == "cm" { unit } else { 1.0 };
        // A limit stays within itself when it is rounded.
        let value = (value / unit * 1000.0).trunc() / 1000.0;
        let leg = if dice.falls(0.04) { "left." } else { "" };
        row.number(&format!("{leg}{key}"), value);
    }
    row
}

/// An ordinary body in cropped trousers, four measurements or more.
fn cropped(dice: &mut Dice, blocks: &[&str]) -> Row {
    let mut row = Row(Vec::new());
    row.text("sex", dice.one_of(&["female", "male"]));
    row.text("waist_level", "natural");
    row.text("trousers.block", dice.one_of(blocks));
    for (name, cm) in body(dice, Reach::People) {
        row.number(&format!("measurements.{name}"), cm);
    }
    row.number("trousers.style.length", dice.between(4.0, 50.0));
    row
}

/// As many pieces as an edge may be of: a dozen moves of at most four levels cut each of its three once.
const MOST_PIECES: usize = 40;

/// What `draft` makes of the row: its verdict, or `None` where it is refused.
fn verdict_of_draft(row: &Row) -> Option<String> {
    let made = drafted("row.toml", &row.as_file()).ok()?;
    for leg in made.legs.iter() {
        for (panel, edge) in
            Panel::ALL.iter().flat_map(|panel| Edge::ALL.iter().map(move |edge| (panel, edge)))
        {
            let pieces = leg.draft.shape.panel(*panel).edge(*edge).cubics().len();
            assert!(pieces <= MOST_PIECES, "{panel} {edge}: {pieces} pieces\n{}", row.as_file());
        }
    }
    Some(made.verdict().key().to_owned())
}

/// What the run came to.
#[derive(Default)]
struct Count {
    answers: BTreeMap<String, usize>,
    slowest: Duration,
}

fn take_in(count: &mut Count, rows: &[Row], drafted_too: impl Fn(usize) -> bool) {
    let text: String = rows.iter().enumerate().map(|(id, row)| row.as_json(id)).collect();
    let begun = Instant::now();
    let (lines, _) = batch(text);
    count.slowest = count.slowest.max(begun.elapsed() / rows.len() as u32);
    assert_eq!(lines.len(), rows.len(), "a row is lost");
    for (id, (line, row)) in lines.iter().zip(rows).enumerate() {
        assert_eq!(line["id"], Value::from(id), "{}", row.as_json(id));
        let verdict = line["verdict"].as_str();
        let came = line["error"]["code"].as_str().or(verdict).unwrap_or("nothing");
        assert!(came != "nothing" && came != "defect", "{came}: {}", row.as_json(id));
        if verdict == Some("good") {
            assert!(line["reasons"].as_array().is_some_and(Vec::is_empty));
            let crotch = &line["crotch"];
            let measured = crotch["body_from"] == "measured";
            assert!(!measured || crotch["ease"].as_f64() >= Some(0.0), "{}", row.as_json(id));
        }
        if drafted_too(id) {
            assert_eq!(verdict_of_draft(row).as_deref(), verdict, "draft and batch: {}", row.as_file());
        }
        *count.answers.entry(came.to_owned()).or_default() += 1;
    }
}

/// How many random rows, and whether each is answered by itself.
fn asked() -> (usize, bool) {
    match std::env::var("BREEKS_ROWS").ok().and_then(|text| text.parse().ok()) {
        Some(rows) => (rows, true),
        None => (1500, false),
    }
}

/// The most memory that this process has held, MB; `None` where the system does not tell.
fn most_memory() -> Option<f64> {
    let status = std::fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"))?;
    line.trim().trim_end_matches("kB").trim().parse::<f64>().ok().map(|kb| kb / 1024.0)
}

fn run(what: &str, rows: usize, by_itself: bool, mut throw: impl FnMut(usize) -> Row) {
    let handful = if by_itself { 1 } else { 100 };
    let mut count = Count::default();
    for from in (0..rows).step_by(handful) {
        let rows: Vec<Row> = (from..rows.min(from + handful)).map(&mut throw).collect();
        // A tenth of them is drafted too.
        take_in(&mut count, &rows, |id| (from + id) % 10 == 0);
    }
    println!("{what}: {rows} rows, {:?}", count.answers);
    if by_itself {
        println!("slowest answer {:?}, most memory {:?} MB", count.slowest, most_memory());
        assert!(most_memory().is_none_or(|mb| mb < 64.0));
        // On a busy machine a clock tells how busy it is.
        let strict = std::env::var_os("BREEKS_STRICT_TIME").is_some();
        assert!(!strict || count.slowest < Duration::from_millis(100), "{:?}", count.slowest);
    }
    let least = rows / 100;
    for answer in ["good", "mind", "not_to_cut"] {
        let some = count.answers.get(answer).copied().unwrap_or_default();
        assert!(some >= least, "{what}: {some} of {rows} `{answer}`: the rows try too little");
    }
}

#[test]
fn random_rows_each_answered() {
    let blocks: Vec<&str> = shipped_names().collect();
    let (rows, by_itself) = asked();
    let mut dice = Dice::new(1988);
    run("random", rows, by_itself, |index| {
        let reach = [Reach::People, Reach::People, Reach::Wide, Reach::Far][index % 4];
        row(&mut dice, reach, &blocks)
    });
}

#[test]
fn cropped_trousers_of_ordinary_bodies_each_answered() {
    let blocks: Vec<&str> = shipped_names().collect();
    let (rows, by_itself) = asked();
    let mut dice = Dice::new(2012);
    run("cropped", rows / 15, by_itself, |_| cropped(&mut dice, &blocks));
}
