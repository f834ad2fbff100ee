//! `breeks blocks` as a dialogue: what is typed, what is printed, what is written, how it ends.

use std::{
    path::{Path, PathBuf},
    process::{Command, Output},
};

use breeks::recipe::shipped_names;

/// A folder of its own for each test, empty.
fn folder(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("blocks-{name}"));
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(&folder).expect("a folder");
    folder
}

fn breeks(folder: &Path, words: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_breeks"))
        .args(words)
        .current_dir(folder)
        .output()
        .expect("the program runs")
}

fn printed(output: &Output) -> String {
    assert_eq!(output.status.code(), Some(0), "{}", String::from_utf8_lossy(&output.stderr));
    String::from_utf8(output.stdout.clone()).expect("text")
}

fn complaint(output: &Output) -> String {
    assert_eq!(output.status.code(), Some(2), "{}", String::from_utf8_lossy(&output.stdout));
    String::from_utf8(output.stderr.clone()).expect("text")
}

fn keep(name: &str, text: &str) {
    let mut settings = insta::Settings::clone_current();
    settings.set_snapshot_path(concat!(env!("CARGO_MANIFEST_DIR"), "/snapshots"));
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(|| insta::assert_snapshot!(name, text));
}

#[test]
fn every_recipe_listed_with_a_picture_and_what_differs() {
    let list = printed(&breeks(&folder("list"), &["blocks"]));
    for name in shipped_names() {
        assert!(list.lines().any(|line| line.ends_with(&format!("  {name}"))), "{name}");
    }
    assert!(list.contains("no front dart") && list.contains("knee at waist_height - knee_height"));
    let dots = list.chars().filter(|letter| ('\u{2801}'..='\u{28ff}').contains(letter)).count();
    assert!(dots > 6 * 50, "{dots} letters of pictures");
    assert!(list.lines().all(|line| line.chars().count() <= 96));
}

#[test]
fn recipe_printed_as_a_handbook_would() {
    keep("blocks-jeans", &printed(&breeks(&folder("handbook"), &["blocks", "jeans"])));
}

#[test]
fn two_recipes_side_by_side() {
    let text = printed(&breeks(&folder("two"), &["blocks", "classic", "tailored"]));
    assert!(text.lines().all(|line| line.chars().count() <= 96));
    keep("blocks-classic-tailored", &text);
}

#[test]
fn drawings_written_where_asked() {
    let folder = folder("out");
    printed(&breeks(&folder, &["blocks", "--out", "drawings"]));
    for name in shipped_names() {
        let svg = std::fs::read_to_string(folder.join(format!("drawings/{name}.svg"))).unwrap();
        assert!(svg.contains("<svg"), "{name}");
    }
}

#[test]
fn ones_own_recipe_begun_checked_and_drafted_by_its_path() {
    let folder = folder("own");
    assert_eq!(
        printed(&breeks(&folder, &["blocks", "new", "own.toml", "--from", "slim"])),
        "wrote own.toml\n"
    );
    let check = printed(&breeks(&folder, &["blocks", "check", "own.toml"]));
    assert!(check.contains("every body is drafted with sound outlines"), "{check}");
    let handbook = printed(&breeks(&folder, &["blocks", "./own.toml"]));
    assert!(handbook.starts_with("own: Slim trousers"), "{handbook}");
    let draft = printed(&breeks(&folder, &["draft", "--demo", "five", "--block", "own.toml"]));
    assert!(draft.contains("five: block own"), "{draft}");
    assert!(folder.join("drafts/five-own.svg").exists());
}

#[test]
fn file_that_exists_never_overwritten() {
    let folder = folder("exists");
    std::fs::write(folder.join("own.toml"), "mine").unwrap();
    let told = complaint(&breeks(&folder, &["blocks", "new", "own.toml", "--from", "classic"]));
    assert!(told.contains("`own.toml` exists already"), "{told}");
    assert_eq!(std::fs::read_to_string(folder.join("own.toml")).unwrap(), "mine");
}

#[test]
fn nothing_written_from_an_unknown_recipe_or_into_a_missing_folder() {
    let folder = folder("nothing");
    let told = complaint(&breeks(&folder, &["blocks", "new", "own.toml", "--from", "clasic"]));
    assert!(told.contains("did you mean `classic`?"), "{told}");
    complaint(&breeks(&folder, &["blocks", "new", "own"]));
    complaint(&breeks(&folder, &["blocks", "new", "missing/own.toml"]));
    assert_eq!(std::fs::read_dir(&folder).unwrap().count(), 0);
}

#[test]
fn broken_recipe_told_body_by_body() {
    let folder = folder("broken");
    printed(&breeks(&folder, &["blocks", "new", "own.toml", "--from", "classic"]));
    let text = std::fs::read_to_string(folder.join("own.toml")).unwrap();
    // an extension that shrinks with size: nothing of it is left on full bodies
    let shrinking = text.replace("is = \"1/16 hip + 1/4 fuller + 1.3\"", "is = \"8 - 1/16 hip\"");
    assert_ne!(shrinking, text);
    std::fs::write(folder.join("own.toml"), shrinking).unwrap();
    let output = breeks(&folder, &["blocks", "check", "own.toml"]);
    let told = String::from_utf8(output.stdout.clone()).unwrap();
    assert_eq!(output.status.code(), Some(1), "{told}");
    assert!(
        told.contains("the crotch extension is no longer than 0.5 cm") && told.contains("as above"),
        "{told}"
    );
    assert!(told.contains("it breaks on 4 of 20 bodies"), "{told}");
}

#[test]
fn slip_in_ones_own_recipe_shown_at_its_place() {
    let folder = folder("slip");
    printed(&breeks(&folder, &["blocks", "new", "own.toml", "--from", "classic"]));
    let text = std::fs::read_to_string(folder.join("own.toml")).unwrap();
    std::fs::write(folder.join("own.toml"), text.replace("1/16 hip + 1/4", "1/16 hipp + 1/4")).unwrap();
    let told = complaint(&breeks(&folder, &["blocks", "check", "own.toml"]));
    assert!(told.contains("own.toml:") && told.contains("did you mean `hip`?"), "{told}");
}

/// What is typed on standard input.
fn answered(folder: &Path, words: &[&str], typed: &str) -> Output {
    use std::io::Write;
    let mut child = Command::new(env!("CARGO_BIN_EXE_breeks"))
        .args(words)
        .current_dir(folder)
        .stdin(std::process::Stdio::piped())
        .stdout(std::process::Stdio::piped())
        .stderr(std::process::Stdio::piped())
        .spawn()
        .expect("the program runs");
    child.stdin.take().expect("piped").write_all(typed.as_bytes()).expect("typed");
    child.wait_with_output().expect("it ends")
}

#[test]
fn skeleton_asked_for_or_taken() {
    let folder = folder("skeleton");
    let asked = answered(&folder, &["blocks", "new", "men.toml"], "men\n");
    assert_eq!(printed(&asked), "wrote men.toml\n");
    assert!(String::from_utf8_lossy(&asked.stderr).contains("a skeleton (women, men)"));
    printed(&breeks(&folder, &["blocks", "new", "women.toml", "--from", "women"]));
    for name in ["women", "men"] {
        let check = printed(&breeks(&folder, &["blocks", "check", &format!("{name}.toml")]));
        assert!(check.contains("every body is drafted with sound outlines"), "{check}");
    }
    let nothing = complaint(&answered(&folder, &["blocks", "new", "none.toml"], "\n"));
    assert!(nothing.contains("nothing said to begin from"), "{nothing}");
    assert!(!folder.join("none.toml").exists());
}

#[test]
fn measurement_that_nothing_estimates_told_once_and_not_taken_for_a_break() {
    let folder = folder("needed");
    printed(&breeks(&folder, &["blocks", "new", "own.toml", "--from", "women"]));
    let own = std::fs::read_to_string(folder.join("own.toml")).unwrap();
    let lines = own.replace(
        "side_waist_line = -0.8",
        "side_waist_line = -0.8\nyoke_line = \"1/100 top_hip + 1/50 front_hip_arc + 0.1 outside_leg\"",
    );
    assert_ne!(own, lines);
    std::fs::write(folder.join("own.toml"), lines).unwrap();
    let check = printed(&breeks(&folder, &["blocks", "check", "own.toml"]));
    assert!(check.contains("it goes by `top_hip_girth`, `front_hip_arc`: nothing estimates this"), "{check}");
    assert!(check.contains("every body is drafted with sound outlines"), "{check}");
}

#[test]
fn construction_drawn_up_to_a_step() {
    let folder = folder("until");
    let text = printed(&breeks(&folder, &["blocks", "check", "women", "--until", "7"]));
    keep("blocks-check-until", &text);
    let picture = std::fs::read_to_string(folder.join("drafts/women-until-7.svg")).unwrap();
    assert!(picture.contains("front top") && !picture.contains("front curve"));
    // A later step without an answer does not matter.
    printed(&breeks(&folder, &["blocks", "new", "own.toml", "--from", "women"]));
    let own = std::fs::read_to_string(folder.join("own.toml")).unwrap();
    let broken = own.replace("span = \"1/4 waist + 1/4 waist_ease + back_dart\"", "span = 1");
    assert_ne!(own, broken);
    std::fs::write(folder.join("own.toml"), broken).unwrap();
    assert!(
        complaint(&breeks(&folder, &["blocks", "check", "own.toml", "--until", "29"]))
            .contains("do not reach")
    );
    printed(&breeks(&folder, &["blocks", "check", "own.toml", "--until", "20"]));
    let far = complaint(&breeks(&folder, &["blocks", "check", "own.toml", "--until", "77"]));
    assert!(far.contains("its steps are 1 to 29"), "{far}");
}

#[test]
fn copy_held_against_its_book() {
    let folder = folder("copy");
    printed(&breeks(&folder, &["blocks", "new", "own.toml", "--from", "women"]));
    let book = "what,of,book\ngiven,sex,female\ngiven,hip,100\ngiven,waist,76\ngiven,waist_to_hip,20\ngiven,body_rise,28\n\
                given,waist_height,104\nvalue,front_dart,2.4\nacross,front_corner front_fork,7.6\ndown,crease_crotch,30.3\n";
    std::fs::write(folder.join("book.csv"), book.replace(",7.6\n", ",7.61\n")).unwrap();
    let output = breeks(&folder, &["blocks", "own.toml", "--compare", "book.csv"]);
    assert_eq!(output.status.code(), Some(1), "{}", String::from_utf8_lossy(&output.stderr));
    // 1/16 of 100 and 1.3 is 7.55.
    keep("blocks-compare", &String::from_utf8(output.stdout).unwrap());
    std::fs::write(folder.join("book.csv"), book).unwrap();
    let all = printed(&breeks(&folder, &["blocks", "own.toml", "--compare", "book.csv"]));
    assert!(all.contains("3 of 3 figures as the book prints them"), "{all}");
    assert!(
        complaint(&breeks(&folder, &["blocks", "--compare", "book.csv"])).contains("expected one recipe")
    );
}

#[test]
fn recipe_with_every_rule_printed_and_compared() {
    let folder = folder("every");
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/recipe/every_rule.toml");
    let handbook = printed(&breeks(&folder, &["blocks", path]));
    assert!(handbook.lines().all(|line| line.chars().count() <= 96));
    keep("blocks-every-rule", &handbook);
    let text = printed(&breeks(&folder, &["blocks", path, "classic"]));
    assert!(text.contains("front pleats"), "{text}");
    let json = printed(&breeks(&folder, &["draft", "--demo", "stroke", "--block", path, "--json"]));
    let json: serde_json::Value = serde_json::from_str(&json).unwrap();
    let construction = json["construction"].as_array().unwrap();
    assert_eq!(construction.len(), 2);
    let points: usize = construction.iter().map(|row| row["points"].as_object().unwrap().len()).sum();
    let recipe = breeks::recipe::load(path).unwrap();
    let made = recipe.steps.iter().filter(|step| matches!(step, breeks::recipe::Step::Point { .. })).count();
    assert_eq!(points, made + 1, "every point of the recipe, and its start");
    assert_eq!(json["pieces"][0]["pleats"].as_array().unwrap().len(), 1);
}

#[test]
fn three_names_refused() {
    assert_eq!(breeks(&folder("three"), &["blocks", "slim", "wide", "jeans"]).status.code(), Some(2));
}

#[test]
fn recipe_tried_on_one_body_with_the_rows_of_each_refusal() {
    let folder = folder("one-body");
    printed(&breeks(&folder, &["blocks", "new", "own.toml", "--from", "women"]));
    let sound = printed(&breeks(&folder, &["blocks", "check", "own.toml", "--demo", "stroke"]));
    assert!(sound.starts_with("own: 29 steps, tried on stroke: drafted"), "{sound}");
    let own = std::fs::read_to_string(folder.join("own.toml")).unwrap();
    let printed_draft = own.replace("[style]\n", "[truing]\ntrue = false\n\n[style]\n");
    assert_ne!(own, printed_draft);
    std::fs::write(folder.join("own.toml"), printed_draft).unwrap();
    let body = "sex = \"female\"\nunits = \"inch\"\n[measurements]\nwaist_girth = 29\nhip_girth = 40\ninside_leg = 31\n";
    std::fs::write(folder.join("bow.toml"), body).unwrap();
    let one = breeks(&folder, &["blocks", "check", "own.toml", "--body", "bow.toml"]);
    assert_eq!(one.status.code(), Some(1), "{}", String::from_utf8_lossy(&one.stderr));
    keep("blocks-check-body", &String::from_utf8(one.stdout).unwrap());
    let all = breeks(&folder, &["blocks", "check", "own.toml"]);
    let all = String::from_utf8(all.stdout).unwrap();
    assert!(
        all.contains("trued in everything, without what `[truing]` keeps as drawn, it breaks on none"),
        "{all}"
    );
    assert_eq!(all.matches("\n  crotch join, on ").count(), 1, "told once: {all}");
    assert!(all.lines().all(|line| line.chars().count() <= 112), "{all}");
    assert_eq!(
        breeks(&folder, &["blocks", "check", "own.toml", "--body", "bow.toml", "--demo", "five"])
            .status
            .code(),
        Some(2)
    );
}
