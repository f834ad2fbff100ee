//! `breeks fit`: what it says, and what `--write` leaves in the file.

use super::dialogue::{Dialogue, Folder};

/// A measurement file with remarks, blanks and an order of its own.
const BOW: &str = "\
# Bow, measured after training. An invented person.
name = \"bow\"      # the place in the boat
sex = \"female\"

[trousers]
block = \"classic\"

[thigh]
outer = 0.3        # seen on the old pair

[measurements]
hip_girth = 98.0   # twice, the same
waist_girth = 72.5
inside_leg = 78
body_rise = 28.0
thigh_girth = 58.5
total_crotch_length = 76.5
";

fn with(lines: &str) -> String {
    format!("{BOW}{lines}")
}

/// The file without the day on which it was fitted.
fn without_day(folder: &Folder, name: &str) -> String {
    let text = String::from_utf8(folder.bytes(name)).expect("text");
    let line = |line: &str| {
        if line.starts_with("date = ") { "date = \"THE DAY\"\n".into() } else { format!("{line}\n") }
    };
    text.lines().map(line).collect()
}

fn fit(folder: &Folder, more: &[&str]) -> Dialogue {
    let run = folder.run(&[&["fit", "bow.toml"], more].concat());
    run.assert_tidy();
    run
}

#[test]
fn demo_bodies_fitted() {
    for demo in ["stroke", "five", "cox"] {
        let run = Folder::new(&format!("fit_{demo}")).run(&["fit", "--demo", demo]);
        assert_eq!(run.code, 0, "{}", run.err);
        assert!(run.files.is_empty());
        run.assert_tidy();
        run.snapshot(&format!("command_fit_{demo}"));
    }
}

/// Two legs: what was found is told of each, and written once.
#[test]
fn two_legs_fitted() {
    let folder = Folder::new("fit_two_legs");
    folder.put("bow.toml", with("[left.measurements]\nthigh_girth = 60.5\n"));
    let run = fit(&folder, &["--write"]);
    assert_eq!(run.code, 0, "{}", run.err);
    for leg in ["Left leg", "Right leg"] {
        assert_eq!(run.out.lines().filter(|line| *line == leg).count(), 1, "{}", run.out);
    }
    let text = String::from_utf8(folder.bytes("bow.toml")).expect("text");
    assert_eq!(text.matches("\n[[fitting]]").count(), 1);
    assert!(text.contains("\n[seat]\n"), "{text}");
    let again = folder.run(&["draft", "bow.toml", "--json"]);
    let json: serde_json::Value = serde_json::from_str(&again.out).expect("JSON");
    assert_eq!(json["adjustments"]["seat.angle"]["from"], "file", "{}", json["adjustments"]);
}

/// A crotch length 9 cm over what hip and rise expect; a back crotch length of three fifths of the whole; a rise 5 cm too
/// short for the crotch length.
#[test]
fn bodies_whose_measurements_contradict_each_other() {
    let cases = [
        ("crotch", BOW.replace("= 76.5", "= 87.5")),
        ("split", with("back_crotch_length = 45.5\n")),
        ("rise", BOW.replace("body_rise = 28.0", "body_rise = 23.0\nstature = 168")),
    ];
    for (what, file) in cases {
        let folder = Folder::new(&format!("fit_contradiction_{what}"));
        folder.put("bow.toml", file);
        let run = fit(&folder, &[]);
        run.snapshot(&format!("command_fit_contradiction_{what}"));
    }
}

#[test]
fn written_with_comments_and_order_kept() {
    let folder = Folder::new("fit_write");
    folder.put("bow.toml", BOW);
    let run = fit(&folder, &["--write"]);
    assert_eq!(run.code, 0, "{}", run.err);
    assert!(run.out.contains("wrote bow.toml\n"));
    let written = without_day(&folder, "bow.toml");
    let mut rest = written.as_str();
    for line in BOW.lines() {
        let at = rest.find(line).unwrap_or_else(|| panic!("{line}\n{written}"));
        rest = &rest[at + line.len()..];
    }
    Dialogue { out: written, ..run }.snapshot("command_fit_written");
}

#[test]
fn fitted_file_fitted_again_unchanged() {
    let folder = Folder::new("fit_again");
    folder.put("bow.toml", BOW);
    fit(&folder, &["--write"]);
    let once = folder.bytes("bow.toml");
    let again = fit(&folder, &["--write"]);
    assert_eq!(again.code, 0);
    assert!(!again.out.contains("Why: "), "{}", again.out);
    assert!(again.out.contains("nothing to write"), "{}", again.out);
    assert_eq!(folder.bytes("bow.toml"), once);
}

#[test]
fn found_afresh_as_at_first() {
    let folder = Folder::new("fit_afresh");
    folder.put("bow.toml", BOW.replace("outer = 0.3        # seen on the old pair\n", ""));
    fit(&folder, &["--write"]);
    let once = without_day(&folder, "bow.toml");
    fit(&folder, &["--write", "--afresh"]);
    let twice = without_day(&folder, "bow.toml");
    let parameters = |text: &str| text.split("[[fitting]]").next().expect("a head").trim_end().to_owned();
    assert_eq!(parameters(&twice), parameters(&once));
    assert_eq!(twice.matches("[[fitting]]").count(), 2, "{twice}");
}

/// What a person gave goes too: afresh means all of it.
#[test]
fn given_parameter_found_afresh() {
    let folder = Folder::new("fit_afresh_given");
    folder.put("bow.toml", BOW);
    fit(&folder, &["--write", "--afresh"]);
    assert!(!without_day(&folder, "bow.toml").contains("outer = 0.3"));
}

#[test]
fn demo_not_written_to() {
    let run = Folder::new("fit_write_demo").run(&["fit", "--demo", "stroke", "--write"]);
    run.assert_refused(&[]);
    run.snapshot("refusal_fit_write_demo");
}

#[test]
fn block_changed_after_fitting_told() {
    let folder = Folder::new("fit_other_block");
    folder.put("bow.toml", BOW);
    fit(&folder, &["--write"]);
    let told = "the fit parameters of this file were found on the block `classic`, not on `straight`";
    let words = |run: &Dialogue| run.out.split_whitespace().collect::<Vec<_>>().join(" ");
    let other = folder.run(&["draft", "bow.toml", "--block", "straight"]);
    assert!(words(&other).contains(told), "{}", other.out);
    let same = folder.run(&["draft", "bow.toml"]);
    assert!(!words(&same).contains("were found on the block"), "{}", same.out);
}

#[test]
fn proportional_draft_on_demand() {
    let folder = Folder::new("fit_proportional");
    let json = |more: &[&str]| {
        let run = folder.run(&[&["draft", "--demo", "five", "--json"], more].concat());
        serde_json::from_str::<serde_json::Value>(&run.out).expect("JSON")
    };
    let (measured, proportional) = (json(&[]), json(&["--set", "trousers.fit=proportional"]));
    assert_eq!((&measured["fit"], &proportional["fit"]), (&"measured".into(), &"proportional".into()));
    assert!(measured["adjustments"]["crotch.depth"]["from"] == "fit");
    assert_eq!(proportional["adjustments"], serde_json::json!({}));
    let ease = |answer: &serde_json::Value| answer["crotch"]["ease"].as_f64().expect("an ease");
    assert!((ease(&measured) - 3.0).abs() < 0.1 && ease(&proportional) > 5.0);
}
