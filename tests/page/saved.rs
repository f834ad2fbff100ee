//! What saving leaves in the file.

use std::{
    fs,
    io::{Read, Write},
    thread,
    time::{Duration, Instant},
};

use serde_json::json;

use super::table::{Table, demo};

#[test]
fn comments_and_order_kept() {
    let text = "# of the women's eight\nsex = \"female\"\nname = \"bow\" # first boat\n\n[measurements]\nwaist_girth = 72 # twice\nhip_girth = 100.5\ninside_leg = 79\n";
    let table = Table::of("comments", text);
    let saved = table.post("save", &json!({ "changes": [["measurements.waist_girth", "73.5"], ["thigh.front", "1.9 cm"]], "edition": 1 }).to_string()).json();
    assert_eq!(saved["written"], true, "{saved}");
    let expected = text.replace("72 # twice", "73.5 # twice") + "\n[thigh]\nfront = 1.9\n";
    assert_eq!(table.text(), expected);
}

#[test]
fn nothing_lost_when_both_wrote() {
    let table = Table::of("both", &demo("stroke"));
    let theirs = demo("stroke").replace("hip_girth = 101.5", "hip_girth = 103 # taken again");
    assert_ne!(theirs, demo("stroke"));
    fs::write(table.folder.join("file.toml"), &theirs).unwrap();
    let changes = json!([["measurements.hip_girth", "104"], ["thigh.front", "1.9"]]);
    let refused = table.post("save", &json!({ "changes": changes, "edition": 1 }).to_string()).json();
    assert_eq!(refused["written"], false);
    // the key that nobody else touched is no conflict
    assert_eq!(refused["theirs"], json!([["measurements.hip_girth", "103"]]));
    assert_eq!(table.text(), theirs);
    let edition = refused["edition"].as_u64().unwrap();
    let saved = table.post("save", &json!({ "changes": changes, "edition": edition }).to_string()).json();
    assert_eq!(saved["written"], true);
    assert!(table.text().contains("hip_girth = 104.0 # taken again"), "{}", table.text());
}

/// The sheet heard of the edit, drew it, and raised its own edition: Save then wrote over what it had never asked about.
#[test]
fn change_made_before_an_edit_elsewhere_asked_about_after_it_was_drawn() {
    let table = Table::of("stale", &demo("stroke"));
    fs::write(table.folder.join("file.toml"), demo("stroke").replace("hip_girth = 101.5", "hip_girth = 97"))
        .unwrap();
    let edition = || table.post("draw", r#"{"changes":[]}"#).json()["edition"].as_u64().unwrap();
    let began = Instant::now();
    while edition() == 1 {
        assert!(began.elapsed() < Duration::from_secs(5), "the edit was not noticed");
        thread::sleep(Duration::from_millis(50));
    }
    let changes = json!([["measurements.hip_girth", "101"]]);
    let save = |edition: u64| {
        table.post("save", &json!({ "changes": changes, "edition": edition }).to_string()).json()
    };
    assert_eq!(save(1)["theirs"], json!([["measurements.hip_girth", "97"]]));
    assert!(table.text().contains("hip_girth = 97"));
    assert_eq!(save(edition())["written"], true);
    assert!(table.text().contains("hip_girth = 101"));
}

#[test]
fn edit_elsewhere_of_another_key_kept_without_a_question() {
    let table = Table::of("apart", &demo("stroke"));
    let theirs = demo("stroke").replace("hip_girth = 101.5", "hip_girth = 103 # taken again");
    fs::write(table.folder.join("file.toml"), &theirs).unwrap();
    let saved =
        table.post("save", &json!({ "changes": [["thigh.front", "1.9"]], "edition": 1 }).to_string()).json();
    assert_eq!(saved["written"], true, "{saved}");
    assert!(table.text().contains("hip_girth = 103 # taken again") && table.text().contains("front = 1.9"));
}

#[test]
fn refused_changes_leave_the_file_alone() {
    let table = Table::of("refused", &demo("stroke"));
    for changes in [json!([["measurements.hip_girth", "wide"]]), json!([["no.key", "1"]])] {
        let told = table.post("save", &json!({ "changes": changes, "edition": 1 }).to_string());
        assert!(told.head.contains("x-breeks-refused"), "{}", told.text());
    }
    assert_eq!(table.text(), demo("stroke"));
    assert_eq!(fs::read_dir(&table.folder).unwrap().count(), 1);
}

#[test]
fn demo_saved_as_a_new_file_and_never_over_another() {
    let table = Table::demo("demo", "five");
    let save = |edition: u64| {
        table.post("save", &json!({ "changes": [["thigh.front", "1.9"]], "edition": edition }).to_string())
    };
    let path = table.folder.join("drafts/five.toml");
    fs::create_dir_all(path.parent().unwrap()).unwrap();
    fs::write(&path, "mine").unwrap();
    assert!(save(1).text().contains("exists already"));
    assert_eq!(fs::read_to_string(&path).unwrap(), "mine");
    fs::remove_file(&path).unwrap();
    assert_eq!(save(1).json()["written"], true);
    assert!(fs::read_to_string(&path).unwrap().contains("front = 1.9"));
    assert_eq!(fs::read_dir(&table.folder).unwrap().count(), 1);
}

#[test]
fn edit_elsewhere_told_to_the_open_sheet() {
    let table = Table::of("elsewhere", &demo("stroke"));
    let mut stream = table.connect();
    let request = format!("GET /{}/ask/events HTTP/1.1\r\nHost: 127.0.0.1:{}\r\n\r\n", table.key, table.port);
    stream.write_all(request.as_bytes()).unwrap();
    thread::sleep(Duration::from_millis(300));
    fs::write(table.folder.join("file.toml"), demo("stroke") + "\n# more\n").unwrap();
    let (began, mut all) = (Instant::now(), String::new());
    let mut some = [0; 512];
    while !all.contains("data: 2") {
        assert!(began.elapsed() < Duration::from_secs(5), "{all}");
        let count = stream.read(&mut some).unwrap();
        all.push_str(&String::from_utf8_lossy(&some[..count]));
    }
    assert!(all.contains("event: edition"));
}

#[test]
fn file_gone_or_broken_told_and_the_table_stays() {
    let table = Table::of("gone", &demo("stroke"));
    fs::write(table.folder.join("file.toml"), "name = \n").unwrap();
    thread::sleep(Duration::from_millis(600));
    assert!(table.post("draw", r#"{"changes":[]}"#).head.contains("x-breeks-refused"));
    fs::remove_file(table.folder.join("file.toml")).unwrap();
    thread::sleep(Duration::from_millis(600));
    let told = table.post("save", r#"{"changes":[],"edition":2}"#);
    assert!(told.text().contains("there is no file"), "{}", told.text());
    fs::write(table.folder.join("file.toml"), demo("stroke")).unwrap();
    thread::sleep(Duration::from_millis(600));
    assert_eq!(table.post("draw", r#"{"changes":[]}"#).json()["draft"]["name"], "stroke");
}

/// The page and the command line write the same change and the same record of a toile, to the byte.
#[test]
fn toile_written_as_by_the_command_line() {
    let text = demo("stroke");
    let said = "tight lines across the front of the thigh when sitting; the back is clean";
    let table = Table::of("toile", &text);
    let look = json!({ "changes": [], "answers": [null, null, null, null], "words": [said], "replies": [],
        "tested": [["pinch_front_thigh", "front"]], "pinned": "0.8", "side": null, "since": null });
    let told = table.post("toile", &look.to_string()).json();
    let ready = &told["ready"];
    assert!(ready["fittings"].as_array().is_some_and(|all| !all.is_empty()), "{told}");
    let save = json!({ "changes": ready["changes"], "fittings": ready["fittings"], "edition": 1 });
    assert_eq!(table.post("save", &save.to_string()).json()["written"], true);
    let date = ready["fittings"][0]["date"].as_str().expect("a day");

    let file = table.folder.join("beside.toml");
    fs::write(&file, &text).unwrap();
    let run = std::process::Command::new(env!("CARGO_BIN_EXE_breeks"))
        .args(["toile", "--seen", said, "--tested", "pinch_front_thigh=front", "--pinned", "0.8", "--write"])
        .args(["--date", date])
        .arg(&file)
        .output()
        .unwrap();
    assert!(run.status.success(), "{}", String::from_utf8_lossy(&run.stderr));
    assert_eq!(table.text(), fs::read_to_string(&file).unwrap());

    // what says too little is asked about there too
    let vague = json!({ "answers": [null, null, null, null], "words": ["legs too wide"], "tested": [],
        "pinned": null, "side": null, "since": null });
    let told = table.post("toile", &vague.to_string()).json();
    assert_eq!(told["judged"]["outcome"], "waits", "{told}");
    assert_eq!(told["ready"], serde_json::Value::Null);
    let mut answered = vague.clone();
    answered["replies"] = json!([[1, "thigh"]]);
    let told = table.post("toile", &answered.to_string()).json();
    // it is read now, and says so little that a test comes before any change
    assert_eq!(told["judged"]["outcome"], "test", "{told}");
    assert_eq!(told["judged"]["doubt"], "guess", "{told}");
    assert!(told["judged"]["test"].is_object(), "{told}");
    assert_eq!(told["judged"]["advice"], serde_json::Value::Null);
}
