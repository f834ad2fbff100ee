//! The written reference of recipes: made from the tables, every example run.
//!
//! Page and pictures are made, not written: `REFRESH_PAGES=1 cargo test --test recipe` writes them again.

use std::path::{Path, PathBuf};

use breeks::{
    drawing::SvgScale,
    mistake::Source,
    paper::construction_picture,
    reading::{ShownRule, ShownSlip, recipes_page},
    recipe::{Construction, FORMS, Makes, RULES, Recipe, Rule, Step},
};

use super::{SOUND, body, carry_out, sound_but, sound_with};

/// Sums as they may be written.
const SUMS: [&str; 12] = [
    "1/16 hip + 0.5",
    "hip/20",
    "half of hip",
    "a quarter of waist + 1",
    "(hip + hip_ease)/4 - 0.5",
    "1/4 (hip + 2)",
    "0.25 hip",
    "1 1/2",
    "1½ in",
    "hip - waist",
    "3/8 in + 1 cm",
    "crotch_line - 5",
];

/// One wrong row for each rule.
fn slip_of(rule: &Rule) -> &'static str {
    match (rule.makes, rule.chosen_by) {
        (Makes::Quantity, "is") => r#"{ quantity = "q", is = "hip * 0.25" }"#,
        (Makes::Quantity, "by") => {
            r#"{ quantity = "q", by = "hip", rungs = [[96, 3], [88, 4]], between = "step" }"#
        }
        (Makes::Quantity, "length") => r#"{ quantity = "q", length = ["side"] }"#,
        (Makes::Quantity, _) => r#"{ quantity = "q", curve = ["centre", "fork"], corner = "corner" }"#,
        (Makes::Level, "at") => r#"{ level = "hip_line", at = 3 }"#,
        (Makes::Level, "by") => {
            r#"{ level = "l", by = "hip", rungs = [[96, 3], [104, 4]], between = "rising" }"#
        }
        (Makes::Level, _) => r#"{ level = "l", through = "hip_line" }"#,
        (Makes::Point, "from") => r#"{ point = "P", from = "corner", side = 1, fork = 2 }"#,
        (Makes::Point, "fork_up") => r#"{ point = "P", from = "corner", fork_up = 3, on = "hip_line" }"#,
        (Makes::Point, "toward") => r#"{ point = "P", from = "fork", toward = "side" }"#,
        (Makes::Point, "span") => r#"{ point = "P", from = "waist", span = 20, on = "side" }"#,
        (Makes::Point, _) => r#"{ point = "P", line = { about = "fork", reach = 20 }, on = "hip_line" }"#,
    }
}

/// Further slips of one place of the sound recipe.
const SLIPS: [(&str, &str); 6] = [
    (r#""1/16 hip + 0.5""#, r#""1/16 hip + 0,5""#),
    (r#""1/16 hip + 0.5""#, r#""1/16 (hip + 0.5""#),
    (r#""1/16 hip + 0.5""#, r#""1/16 bottom""#),
    (r#"from = "centre", side = "1/4 hip""#, r#"from = "centre", left = "1/4 hip""#),
    (r#"from = "centre", side = "1/4 hip""#, r#"from = "center", side = "1/4 hip""#),
    ("curve_start = \"centre\"\n", "curve_starts = \"centre\"\n"),
];

fn message(text: &str) -> String {
    match Recipe::parse(&Source::new("mine.toml", text)) {
        Ok(_) => panic!("nothing found wrong with\n{text}"),
        Err(mistakes) => mistakes.to_string(),
    }
}

/// What a step did, in plain words, and what came of it.
fn told(step: &Step, made: &Construction) -> String {
    let entry = step.entry();
    let place = match step {
        Step::Point { id, .. } => {
            let at = made.points[id.0];
            let across = if at.x < 0.0 { "towards the fork" } else { "towards the side" };
            format!("{:.2} {across} and {:.2} below the start", at.x.abs(), at.y)
        }
        _ => format!("{:.2}", step.value(&body(), made).expect("made")),
    };
    format!("{}: {}. On the body of the examples: {place}.", entry.plain, entry.rule)
}

fn shown(rule: &'static Rule) -> ShownRule {
    let rows: Vec<String> = rule.example.iter().map(|row| format!("    {row},\n")).collect();
    let recipe = sound_with(&rows.concat());
    let made = carry_out(&recipe);
    let first = recipe.steps.len() - rule.example.len();
    let made_words = recipe.steps[first..].iter().map(|step| told(step, &made)).collect();
    let picture = match rule.makes {
        Makes::Quantity => String::new(),
        Makes::Level | Makes::Point => {
            let name = format!("recipe-rule-{}.svg", rule.chosen_by);
            kept(
                &root().join("snapshots").join(&name),
                &construction_picture(&recipe, &made).to_svg(SvgScale::FitsScreen),
            );
            format!("../snapshots/{name}")
        }
    };
    let slip = slip_of(rule);
    let text = SOUND.replace("    # further steps", &format!("    {slip},"));
    ShownRule {
        rule,
        picture,
        made: made_words,
        slip: Some(ShownSlip { text: slip.to_owned(), message: message(&text) }),
    }
}

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).to_owned()
}

/// Writes what was made where that is wanted, and compares it with what is kept.
fn kept(path: &Path, made: &str) {
    if std::env::var_os("REFRESH_PAGES").is_some() {
        std::fs::write(path, made).expect("written");
    }
    let there = std::fs::read_to_string(path).unwrap_or_default();
    assert!(
        there == made,
        "{} is not as the tables say; refresh it as the head of this test says",
        path.display()
    );
}

#[test]
fn page_and_pictures_as_the_tables_stand() {
    let rules: Vec<ShownRule> = RULES.iter().map(shown).collect();
    let forms: Vec<(String, String)> = FORMS
        .iter()
        .map(|form| {
            let recipe = sound_with(&format!("    {},\n", form.example));
            let words = told(recipe.steps.last().expect("made"), &carry_out(&recipe));
            (form.example.to_owned(), words)
        })
        .collect();
    let sums: Vec<(String, String)> = SUMS
        .iter()
        .map(|sum| {
            let recipe = sound_with(&format!(r#"{{ quantity = "q", is = "{sum}" }},"#));
            ((*sum).to_owned(), recipe.steps.last().expect("made").entry().rule.clone())
        })
        .collect();
    let slips: Vec<ShownSlip> = SLIPS
        .iter()
        .map(|(place, slip)| ShownSlip {
            text: slip.trim().to_owned(),
            message: message(&sound_but(place, slip)),
        })
        .collect();
    let page = recipes_page(&SOUND.replace("    # further steps\n", ""), &rules, &forms, &sums, &slips);
    kept(&root().join("blocks/RECIPES.md"), &page);
}
