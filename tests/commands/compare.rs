//! `breeks compare`.

use serde_json::Value;

use super::dialogue::{Dialogue, Folder};

/// A file with a record of two toiles.
const BOW: &str = "\
name = \"bow\"
sex = \"female\"
waist_level = \"natural\"
[measurements]
waist_girth = 72.0
hip_girth = 98.0
inside_leg = 77.5
body_rise = 28.0
thigh_girth = 58.5
total_crotch_length = 74.0
[trousers]
fit = \"proportional\"
[thigh]
front = 1.9
[seat]
length = 1.0
[crotch]
back_extension = 0.5
[[fitting]]
date = 2025-11-03
seen = [\"pull across the front thigh\"]
changed = { \"thigh.front\" = 1.2 }
[[fitting]]
date = 2025-11-10
changed = { \"thigh.front\" = 1.9, \"seat.length\" = 1.0 }
";

fn bow(test: &str) -> Folder {
    let folder = Folder::new(&format!("compare_{test}"));
    folder.put("bow.toml", BOW);
    folder
}

fn json(run: &Dialogue) -> Value {
    assert_eq!(run.err, "");
    serde_json::from_str(&run.out).expect("JSON and nothing else")
}

/// Values of the fit parameters that changed, by key, old and new.
fn changed(answer: &Value) -> Vec<(String, f64, f64)> {
    let rows = answer["adjustments"].as_array().expect("rows");
    let number = |row: &Value, which: &str| row["value"][which].as_f64().expect("a number");
    rows.iter()
        .map(|row| (row["key"].as_str().expect("a key").to_owned(), number(row, "old"), number(row, "new")))
        .collect()
}

#[test]
fn the_hand_s_way_from_one_draft_to_the_other() {
    let folder = bow("by_hand");
    let run = folder.run(&["compare", "bow.toml", "--fitting", "1", "--by-hand"]);
    let strips: Vec<&String> = run.files.iter().filter(|name| name.contains("by-hand")).collect();
    assert_eq!(
        strips,
        [
            "drafts/bow-classic-compared-by-hand-seat-length.pdf",
            "drafts/bow-classic-compared-by-hand-seat-length.svg",
            "drafts/bow-classic-compared-by-hand-thigh-front.pdf",
            "drafts/bow-classic-compared-by-hand-thigh-front.svg"
        ]
    );
    let strip =
        String::from_utf8(folder.bytes("drafts/bow-classic-compared-by-hand-seat-length.svg")).expect("text");
    assert!(strip.contains("1 cm") && strip.contains("hip line"));
    // Another body is no matter of scissors.
    let run = folder.run(&["compare", "bow.toml", "--demo", "five", "--by-hand", "--out", "others"]);
    assert!(run.out.contains("no strip of the hand's way"), "{}", run.out);
    assert!(!run.files.iter().any(|name| name.starts_with("others") && name.contains("by-hand")));
}

#[test]
fn file_against_itself_without_its_fit_parameters() {
    let run = bow("parameters").run(&["compare", "bow.toml"]);
    assert_eq!((run.code, run.err.as_str()), (0, ""));
    run.assert_tidy();
    assert_eq!(run.files, ["bow.toml", "drafts/bow-classic-compared.pdf", "drafts/bow-classic-compared.svg"]);
    run.snapshot("command_compare_parameters");
}

#[test]
fn one_key_set_for_the_second() {
    let run = bow("set").run(&["compare", "bow.toml", "--set", "seat.length=0", "--anchor", "hip"]);
    assert_eq!((run.code, run.err.as_str()), (0, ""));
    run.assert_tidy();
    run.snapshot("command_compare_set");
}

#[test]
fn two_bodies_and_two_blocks_in_inches() {
    let run = Folder::new("compare_bodies").run(&[
        "compare", "--demo", "five", "--demo", "cox", "--block", "jeans", "--anchor", "knee", "--units",
        "inch",
    ]);
    assert_eq!((run.code, run.err.as_str()), (0, ""));
    run.assert_tidy();
    run.snapshot("command_compare_bodies");
}

#[test]
fn draft_against_itself_in_one_line() {
    for arguments in [
        &["compare", "bow.toml", "bow.toml"][..],
        &["compare", "bow.toml", "--fitting", "2"],
        &["compare", "bow.toml", "--set", "seat.length=1"],
        &["compare", "bow.toml", "--block", "classic", "--anchor", "crotch"],
    ] {
        let run = bow("itself").run(arguments);
        assert_eq!(run.out, "no difference, laid over each other by crease and crotch line\n");
        assert_eq!((run.code, run.err.as_str()), (0, ""));
        assert_eq!(run.files, ["bow.toml"]);
    }
    let run = bow("itself_json").run(&["compare", "bow.toml", "bow.toml", "--json"]);
    assert_eq!(json(&run)["same"], true);
}

#[test]
fn states_of_the_record() {
    let folder = bow("record");
    let states = |numbers: &[&str]| {
        let mut arguments = vec!["compare", "bow.toml", "--json"];
        numbers.iter().for_each(|number| arguments.extend(["--fitting", number]));
        changed(&json(&folder.run(&arguments)))
    };
    let one_to_two = [("seat.length".to_owned(), 0.0, 1.0), ("thigh.front".to_owned(), 1.2, 1.9)];
    let sorted = |mut rows: Vec<(String, f64, f64)>| {
        rows.sort_by(|a, b| a.0.cmp(&b.0));
        rows
    };
    assert_eq!(sorted(states(&["1", "2"])), one_to_two);
    assert_eq!(sorted(states(&["1"])), one_to_two);
    let back: Vec<_> = one_to_two.iter().cloned().map(|(key, old, new)| (key, new, old)).collect();
    assert_eq!(sorted(states(&["2", "1"])), back);
}

#[test]
fn value_that_the_record_does_not_know_noted() {
    let folder = Folder::new("compare_unknown_value");
    folder.put("bow.toml", BOW.replace("\"seat.length\" = 1.0", "\"measurements.hip_girth\" = 98"));
    let run = folder.run(&["compare", "bow.toml", "--fitting", "1"]);
    assert_eq!(run.code, 0, "{}", run.err);
    run.assert_tidy();
    assert!(
        run.out.contains("(old only) the record does not say what `measurements.hip_girth` was"),
        "{}",
        run.out
    );
}

#[test]
fn json_with_the_numbers_of_the_table() {
    let folder = bow("json");
    let run = folder.run(&["compare", "bow.toml", "--set", "thigh.front=2.5", "--json"]);
    let answer = json(&run);
    assert_eq!(run.files, ["bow.toml"]);
    assert_eq!((answer["format"].as_str(), answer["version"].as_u64()), (Some("breeks-compare"), Some(1)));
    let table = folder.run(&["compare", "bow.toml", "--set", "thigh.front=2.5"]).out;
    let shown = |number: &Value| format!("{:.2}", number.as_f64().expect("a number").abs());
    for row in answer["edges"].as_array().expect("edges") {
        let name =
            format!("{} {}", row["panel"].as_str().expect("a panel"), row["edge"].as_str().expect("an edge"));
        let line = table.lines().find(|line| line.trim_start().starts_with(&name.replace('_', " ")));
        let of_edges = table.lines().filter(|line| line.trim_start().starts_with(&name.replace('_', " ")));
        assert!(line.is_some(), "{name}");
        for which in ["old", "new", "by"] {
            let number = shown(&row["length"][which]);
            assert!(of_edges.clone().any(|line| line.contains(&number)), "{name} {which} {number}");
        }
    }
    let points = answer["points"].as_array().expect("points");
    assert!(points.iter().any(|row| row["point"] == "crotch_point" && row["panel"] == "front"));
    for row in points {
        let [old, new, by] = ["old", "new", "by"].map(|which| row["place"][which][0].as_f64().expect("x"));
        assert!((new - old - by).abs() < 2e-4);
    }
    assert_eq!(folder.run(&["compare", "bow.toml", "--json", "--out", "x"]).files.len(), 5);
}

#[test]
fn legs_each_for_itself_where_one_differs() {
    let folder = bow("legs");
    let left = ["compare", "bow.toml", "--set", "left.thigh.front=2.2"];
    let run = folder.run(&left);
    assert_eq!((run.code, run.err.as_str()), (0, ""));
    run.assert_tidy();
    let pictures =
        ["bow.toml", "drafts/bow-classic-compared-left.pdf", "drafts/bow-classic-compared-left.svg"];
    assert_eq!(run.files, pictures, "the right leg is the same");
    assert!(run.out.contains("\nright leg: no difference, laid over each other by crease and crotch line\n"));
    run.snapshot("command_compare_legs");
    let answer = json(&folder.run(&[&left[..], &["--json"]].concat()));
    assert_eq!(changed(&answer), [("thigh.front".to_owned(), 1.9, 2.2)]);
    for rows in ["adjustments", "points", "edges", "levels", "crotch"] {
        let rows = answer[rows].as_array().expect("rows");
        assert!(!rows.is_empty() && rows.iter().all(|row| row["side"] == "left"), "{rows:?}");
    }
    folder.put("left.toml", BOW.replace("[seat]", "[left.thigh]\nfront = 2.2\n[seat]"));
    let both = folder.run(&["compare", "left.toml", "left.toml"]);
    assert_eq!(both.out, "no difference, laid over each other by crease and crotch line\n");
}

#[test]
fn second_that_cannot_be_cut() {
    let folder = bow("tight");
    let tight = ["compare", "bow.toml", "--set", "trousers.style.knee_width=18"];
    let run = folder.run(&tight);
    assert_eq!((run.code, run.err.as_str()), (1, ""));
    run.assert_tidy();
    assert!(
        run.out.contains("Old. Good: sew a toile of it.\nNew. Not to be cut as it stands: see the notes.\n"),
        "{}",
        run.out
    );
    folder.put("tight.toml", BOW.replace("[thigh]", "style = { knee_width = 18 }\n[thigh]"));
    let other = ["compare", "tight.toml", "bow.toml"];
    folder.run(&other).assert_refused(&folder.files().iter().map(String::as_str).collect::<Vec<_>>());
    let replacing = [&other[..], &["--replace"]].concat();
    assert_eq!(folder.run(&replacing).code, 0, "only the second counts");
    let both = folder.run(&["compare", "tight.toml", "tight.toml"]);
    assert_eq!(both.code, 1);
    let said: Vec<&str> = both.out.split_whitespace().collect();
    let said = said.join(" ");
    assert!(
        said.starts_with("no difference") && said.ends_with("; neither is to be cut as it stands"),
        "{said}"
    );
}

#[test]
fn what_cannot_be_compared_refused() {
    for (name, arguments) in [
        ("nothing", &["compare"][..]),
        ("three", &["compare", "bow.toml", "bow.toml", "--demo", "five"]),
        ("two_and_a_fitting", &["compare", "bow.toml", "--demo", "five", "--fitting", "1"]),
        ("no_such_fitting", &["compare", "bow.toml", "--fitting", "3"]),
        ("no_record", &["compare", "--demo", "five", "--fitting", "1"]),
        ("three_fittings", &["compare", "bow.toml", "--fitting", "1", "--fitting", "2", "--fitting", "1"]),
        ("fitting_none", &["compare", "bow.toml", "--fitting", "0"]),
        ("key_unknown", &["compare", "bow.toml", "--set", "seat.lenght=1"]),
        ("anchor_unknown", &["compare", "bow.toml", "--anchor", "thigh"]),
        ("beyond_its_limit", &["compare", "bow.toml", "--set", "thigh.front=9"]),
        ("set_and_fitting", &["compare", "bow.toml", "--set", "seat.length=1", "--fitting", "1"]),
        ("demo_unknown", &["compare", "bow.toml", "--demo", "fvie"]),
    ] {
        let run = bow(&format!("refused_{name}")).run(arguments);
        run.assert_refused(&["bow.toml"]);
    }
    bow("no_such_fitting")
        .run(&["compare", "bow.toml", "--fitting", "3"])
        .snapshot("command_compare_no_such_fitting");
}

#[test]
fn picture_of_ones_own_left_alone_and_the_programs_replaced() {
    let folder = bow("foreign");
    let before = folder.run(&["compare", "bow.toml"]);
    assert_eq!(folder.run(&["compare", "bow.toml"]).out, before.out);
    folder.put("drafts/bow-classic-compared.svg", "a drawing of my own");
    let run = folder.run(&["compare", "bow.toml"]);
    run.assert_refused(&["bow.toml", "drafts/bow-classic-compared.pdf", "drafts/bow-classic-compared.svg"]);
    assert_eq!(folder.bytes("drafts/bow-classic-compared.svg"), b"a drawing of my own");
}

#[test]
fn names_and_files_that_move_the_cursor_shown_without_doing_so() {
    let folder = Folder::new("compare_hostile");
    folder.put("a\u{1b}[2J.toml", BOW.replace("\"bow\"", "\"bow\\u001b[2J\""));
    let run = folder.run(&["compare", "a\u{1b}[2J.toml", "--set", "seat.length = 0"]);
    assert!(!run.out.contains('\u{1b}') && !run.err.contains('\u{1b}'), "{:?} {:?}", run.out, run.err);
}

#[test]
fn help_of_the_command() {
    let run = Folder::new("compare_help").run(&["compare", "--help"]);
    assert_eq!(run.code, 0);
    run.assert_tidy();
    run.snapshot("command_compare_help");
}
