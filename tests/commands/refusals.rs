//! What cannot be drafted as asked: exit 2, a message on standard error, and nothing written.

use super::dialogue::Folder;

const BOW: &str = "[measurements]\nwaist_girth = 70\nhip_girth = 96\ninside_leg = 76\n";

/// A run on the stroke that is refused, with its whole message.
fn refused(name: &str, more: &[&str]) {
    let mut arguments = vec!["draft", "--demo", "stroke"];
    arguments.extend(more);
    let run = Folder::new(name).run(&arguments);
    run.assert_refused(&[]);
    run.snapshot(&format!("refusal_{name}"));
}

/// A run on a file that is refused, with its whole message.
fn refused_file(name: &str, text: impl AsRef<[u8]>) {
    let folder = Folder::new(name);
    folder.put("bow.toml", text);
    let run = folder.run(&["draft", "bow.toml"]);
    run.assert_refused(&["bow.toml"]);
    run.snapshot(&format!("refusal_{name}"));
}

#[test]
fn key_unknown() {
    refused("key_unknown", &["--set", "thigh.frnt=1"]);
}

#[test]
fn key_without_a_value() {
    refused("key_without_a_value", &["--set", "thigh.front"]);
}

#[test]
fn value_of_another_kind() {
    refused("value_of_another_kind", &["--set", "measurements.hip_girth=wide"]);
}

#[test]
fn value_beyond_its_hard_limit() {
    refused("value_beyond_its_hard_limit", &["--set", "thigh.front=9"]);
}

#[test]
fn value_that_moves_the_cursor() {
    let set = "name=\u{1b}[2J\u{1b}[31mstroke";
    let run = Folder::new("hostile_value").run(&["draft", "--demo", "stroke", "--set", set]);
    run.assert_refused(&[]);
    assert!(!run.err.contains('\u{1b}'), "{:?}", run.err);
}

#[test]
fn names_that_move_the_cursor_shown_without_doing_so() {
    let hostile = "\u{1b}[2Jx";
    for arguments in [
        ["draft", "--demo", hostile],
        ["draft", "--block", hostile],
        ["blocks", hostile, "--"],
        ["draft", hostile, "--"],
        ["draft", "--set", hostile],
    ] {
        let mut arguments = arguments.to_vec();
        if arguments.contains(&"--block") || arguments.contains(&"--set") {
            arguments.extend(["--demo", "stroke"]);
        }
        let run = Folder::new("hostile_names").run(&arguments);
        run.assert_refused(&[]);
        assert!(!run.err.contains('\u{1b}'), "{arguments:?}: {:?}", run.err);
    }
}

#[test]
fn numbers_without_end() {
    for value in ["nan", "inf", "-inf", "1e999", "9".repeat(400).as_str()] {
        let set = format!("measurements.hip_girth={value}");
        let run = Folder::new("numbers_without_end").run(&["draft", "--demo", "stroke", "--set", &set]);
        run.assert_refused(&[]);
        assert!(run.err.len() < 2000, "{}", run.err);
    }
}

#[test]
fn allowance_wider_than_its_curve() {
    refused("allowance_wider_than_its_curve", &["--set", "trousers.allowance.crotch_seam=9"]);
}

#[test]
fn allowance_below_nothing() {
    refused("allowance_below_nothing", &["--set", "trousers.allowance.hem=-1"]);
}

#[test]
fn band_of_no_height() {
    refused("band_of_no_height", &["--waistband", "straight", "--band-height", "0.2"]);
}

#[test]
fn waistband_unknown() {
    refused("waistband_unknown", &["--waistband", "elastic"]);
}

#[test]
fn paper_unknown() {
    refused("paper_unknown", &["--paper", "a7"]);
}

#[test]
fn demo_unknown() {
    let run = Folder::new("demo_unknown").run(&["draft", "--demo", "strok"]);
    run.assert_refused(&[]);
    run.snapshot("refusal_demo_unknown");
}

#[test]
fn block_unknown() {
    refused("block_unknown", &["--block", "clasic"]);
}

#[test]
fn block_file_missing() {
    refused("block_file_missing", &["--block", "own/sailing.toml"]);
}

#[test]
fn block_file_that_is_no_recipe() {
    let folder = Folder::new("block_file_that_is_no_recipe");
    folder.put("own.toml", "password = \"secret\"\n");
    let run = folder.run(&["draft", "--demo", "stroke", "--block", "own.toml"]);
    run.assert_refused(&["own.toml"]);
    assert!(!run.err.contains("secret"));
    run.snapshot("refusal_block_file_that_is_no_recipe");
}

#[test]
fn file_missing() {
    let run = Folder::new("file_missing").run(&["draft", "bow.toml"]);
    run.assert_refused(&[]);
    run.snapshot("refusal_file_missing");
}

#[test]
fn folder_in_place_of_a_file() {
    let folder = Folder::new("folder_in_place_of_a_file");
    std::fs::create_dir(folder.path("bow.toml")).expect("a folder");
    let run = folder.run(&["draft", "bow.toml"]);
    run.assert_refused(&[]);
    run.snapshot("refusal_folder_in_place_of_a_file");
}

#[test]
fn file_too_large() {
    refused_file("file_too_large", format!("{BOW}# {}\n", "x".repeat(256 * 1024)));
}

#[test]
fn file_of_bytes() {
    refused_file("file_of_bytes", [0xff, 0xfe, 0x00, 0x80]);
}

#[test]
fn file_empty() {
    refused_file("file_empty", "");
}

#[test]
fn file_with_several_mistakes() {
    let text = BOW.replace("hip_girth = 96", "hip_girht = 96").replace("70", "\"7o\"");
    refused_file("file_with_several_mistakes", text + "[trousers.style]\nknee_width = 300\n");
}

#[test]
fn file_and_demo_at_once() {
    let run = Folder::new("file_and_demo").run(&["draft", "bow.toml", "--demo", "stroke"]);
    run.assert_refused(&[]);
    run.snapshot("refusal_file_and_demo");
}

#[test]
fn nothing_to_draft() {
    let run = Folder::new("nothing_to_draft").run(&["draft"]);
    run.assert_refused(&[]);
    run.snapshot("refusal_nothing_to_draft");
}

#[test]
fn command_and_unit_unknown() {
    for arguments in [&["sew"][..], &["draft", "--demo", "stroke", "--units", "ell"]] {
        Folder::new("command_and_unit_unknown").run(arguments).assert_refused(&[]);
    }
}
