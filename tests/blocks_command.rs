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
    let told = complaint(&breeks(&folder, &["blocks", "new", "own.toml"]));
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
    printed(&breeks(&folder, &["blocks", "new", "own.toml"]));
    let text = std::fs::read_to_string(folder.join("own.toml")).unwrap();
    // an extension that shrinks with size: nothing of it is left on full bodies
    let shrinking = text.replace("is = \"1/16 hip + 1.3\"", "is = \"8 - 1/16 hip\"");
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
    printed(&breeks(&folder, &["blocks", "new", "own.toml"]));
    let text = std::fs::read_to_string(folder.join("own.toml")).unwrap();
    std::fs::write(folder.join("own.toml"), text.replace("1/16 hip + 1.3", "1/16 hipp + 1.3")).unwrap();
    let told = complaint(&breeks(&folder, &["blocks", "check", "own.toml"]));
    assert!(told.contains("own.toml:") && told.contains("did you mean `hip`?"), "{told}");
}

#[test]
fn three_names_refused() {
    assert_eq!(breeks(&folder("three"), &["blocks", "slim", "wide", "jeans"]).status.code(), Some(2));
}
