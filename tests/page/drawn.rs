//! What the sheet is told, against what the commands say of the same file.

use std::{fs, process::Command, time::Instant};

use breeks::{adjust::Key, terms::Word};
use serde_json::{Value, json};

use super::table::{Table, demo};

fn drafted(table: &Table, file: &str, text: &str) -> Value {
    fs::write(table.folder.join(file), text).unwrap();
    let run = Command::new(env!("CARGO_BIN_EXE_breeks"))
        .args(["draft", "--json", file])
        .current_dir(&table.folder)
        .output()
        .unwrap();
    serde_json::from_slice(&run.stdout).unwrap()
}

#[test]
fn draft_of_the_page_as_the_command_has_it() {
    for name in ["stroke", "five", "cox"] {
        let table = Table::of(&format!("same-{name}"), &demo(name));
        let told = table.post("draw", r#"{"changes":[]}"#).json();
        assert_eq!(told["draft"], drafted(&table, "copy.toml", &demo(name)), "{name}");
    }
}

#[test]
fn changes_drawn_as_they_would_be_saved() {
    let table = Table::of("changes", &demo("stroke"));
    let changes =
        json!([["measurements.hip_girth", "40 1/2 in"], ["seat.length", "-0.8"], ["thigh.front", "1.9 cm"]]);
    let told = table.post("draw", &json!({ "changes": changes }).to_string()).json();
    let saved = table.post("save", &json!({ "changes": changes, "edition": 1 }).to_string()).json();
    assert_eq!(saved["written"], true, "{saved}");
    assert_eq!(told["draft"], drafted(&table, "copy.toml", &table.text()));
    assert_eq!(told["draft"]["adjustments"]["thigh.front"], json!({ "value": 1.9, "from": "file" }));
}

#[test]
fn bad_number_with_its_key_and_its_reason() {
    let table = Table::of("bad", &demo("stroke"));
    for (key, typed, reason) in [
        ("measurements.hip_girth", "410", "for `hip_girth`, found 410.0 cm"),
        ("measurements.hip_girth", "wide", "expected a length such as"),
        ("thigh.front", "nan", "expected a length such as"),
        ("thigh.font", "1", "unknown key"),
        ("name", "a\u{7}b", "expected"),
    ] {
        let told = table.post("draw", &json!({ "changes": [[key, typed]] }).to_string());
        assert_eq!(told.status, 200);
        assert!(told.head.contains("x-breeks-refused"), "{key}={typed}: {}", told.head);
        let told = told.json();
        // a number that is a length, but no body's, is found when the whole file is read
        assert!(told["key"] == key || typed == "410", "{told}");
        let title = told["mistakes"][0]["title"].as_str().unwrap();
        assert!(title.contains(reason), "{title}");
    }
    let beyond = table.post("draw", r#"{"changes":[["thigh.front","9"]]}"#).json();
    assert!(beyond["mistakes"][0]["title"].as_str().unwrap().contains("thigh.front"), "{beyond}");
}

#[test]
fn every_parameter_within_reach_on_the_sheet() {
    let sheet = include_str!("../../src/page/sheet/regions.js");
    for key in Key::ALL {
        let quoted = format!("\"{}\"", key.key());
        assert_eq!(sheet.matches(&quoted).count(), 1, "{key}");
    }
}

#[test]
fn words_of_the_sheet_from_the_one_table() {
    let table = Table::of("words", &demo("stroke"));
    let words = table.get("words.json").json();
    for (row, key) in words["parameters"].as_array().unwrap().iter().zip(Key::ALL) {
        let about = key.about();
        assert_eq!(row["key"], key.key());
        assert_eq!(row["title"], about.title);
        assert_eq!(row["hard"], json!([about.hard.0, about.hard.1]));
        assert_eq!(row["purpose"], about.purpose);
    }
}

#[test]
fn tracing_paper_of_block_file_and_fitting() {
    let text = demo("stroke")
        + "\n[[fitting]]\ndate = 2026-10-03\nchanged = { \"thigh.front\" = 1.2 }\n\n[[fitting]]\nchanged = { \"thigh.front\" = 1.9 }\n";
    let table = Table::of("under", &text);
    let under = |under: Value| {
        table
            .post("under", &json!({ "changes": [["thigh.front", "2.2"]], "under": under }).to_string())
            .json()
    };
    assert_eq!(under(json!("block"))["under"]["adjustments"], json!({}));
    assert_eq!(under(json!({ "fitting": 1 }))["under"]["adjustments"]["thigh.front"]["value"], 1.2);
    let file = under(json!("file"));
    assert!(file["differences"].as_str().unwrap().contains("thigh.front"), "{file}");
    assert!(
        under(json!({ "fitting": 9 }))["mistakes"][0]["title"].as_str().unwrap().contains("no fitting 9")
    );
}

#[test]
fn replay_of_every_step_of_the_record() {
    let table = Table::of("replay", &demo("cox"));
    let steps = table.post("replay", r#"{"changes":[]}"#).json();
    let draft = table.post("draw", r#"{"changes":[]}"#).json();
    let told: Vec<&Value> = steps.as_array().unwrap().iter().map(|step| &step["title"]).collect();
    let record: Vec<&Value> =
        draft["draft"]["steps"].as_array().unwrap().iter().map(|step| &step["title"]).collect();
    assert_eq!(told, record);
    // the points of the last steps are those of the draft
    let last =
        steps.as_array().unwrap().iter().rev().find(|step| step["points"][0][0] == "side_waist").unwrap();
    let of_the_draft = &draft["draft"]["pieces"][1]["points"]["side_waist"];
    assert_eq!(&last["points"][0][1], of_the_draft);
}

#[test]
fn files_to_take_away_as_the_command_writes_them() {
    let table = Table::of("take", &demo("stroke"));
    let draft = Command::new(env!("CARGO_BIN_EXE_breeks"))
        .args([
            "draft",
            "file.toml",
            "--out",
            "out",
            "--paper",
            "a4_letter",
            "--paper",
            "a3",
            "--projector",
            "--dxf",
        ])
        .current_dir(&table.folder)
        .output()
        .unwrap();
    assert!(draft.status.code().is_some_and(|code| code < 2), "{draft:?}");
    for (file, written) in [
        ("pieces_a4_letter", "stroke-classic-a4-letter.pdf"),
        ("pieces_a3", "stroke-classic-a3.pdf"),
        ("projector", "stroke-classic-projector.pdf"),
        ("exchange", "stroke-classic.dxf"),
        ("fit_sheet", "stroke-classic-fit-sheet.pdf"),
        ("wall", "stroke-classic.pdf"),
        ("wall_svg", "stroke-classic.svg"),
        ("draft", "stroke-classic.json"),
    ] {
        let taken = table.post("take", &json!({ "file": file, "changes": [] }).to_string());
        assert_eq!(taken.status, 200);
        let written = fs::read(table.folder.join("out").join(written)).unwrap();
        assert!(taken.body == breeks::file::unsealed(&written).unwrap().1, "{file}");
    }
    let text = table.post("take", r#"{"file":"measurements"}"#);
    assert_eq!(text.text(), table.text());
}

/// The bound is wide for a machine with other work; DEVELOPERS.md says what was measured.
#[test]
fn drawing_within_the_time_of_a_hand() {
    let table = Table::of("time", &demo("stroke"));
    let mut times: Vec<f64> = (0..60)
        .map(|step| {
            let body = format!(r#"{{"changes":[["thigh.front","{:.2}"]]}}"#, 0.02 * f64::from(step));
            let began = Instant::now();
            assert_eq!(table.post("draw", &body).status, 200);
            began.elapsed().as_secs_f64() * 1e3
        })
        .collect();
    times.sort_by(f64::total_cmp);
    println!(
        "a draft over a new connection: median {:.2} ms, 95 per cent under {:.2} ms",
        times[30], times[57]
    );
    assert!(times[30] < 60.0, "{times:?}");
}
