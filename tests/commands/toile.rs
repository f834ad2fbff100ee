//! `breeks toile`: whole conversations, the record they leave, and what is refused.

use super::dialogue::{Dialogue, Folder};

/// A measurement file with remarks and an order of its own.
const SEVEN: &str = "\
# Seven, engine room of the boat. An invented person.
name = \"seven\"
sex = \"male\"

[trousers]
block = \"classic\"   # for the ergometer

[measurements]
hip_girth = 103.0
waist_girth = 85.0   # before breakfast
inside_leg = 84
body_rise = 28.5
thigh_girth = 61.0
";

fn folder(test: &str, text: &str) -> Folder {
    let folder = Folder::new(&format!("toile_{test}"));
    folder.put("seven.toml", text);
    folder
}

fn toile(folder: &Folder, more: &[&str]) -> Dialogue {
    let run = folder.run(&[&["toile", "seven.toml"], more].concat());
    run.assert_tidy();
    run
}

fn text(folder: &Folder) -> String {
    String::from_utf8(folder.bytes("seven.toml")).expect("text")
}

/// The words of a file in their order, without the lines that a fitting added.
fn assert_kept(written: &str) {
    let mut rest = written;
    for line in SEVEN.lines() {
        let at = rest.find(line).unwrap_or_else(|| panic!("{line}\n{written}"));
        rest = &rest[at + line.len()..];
    }
}

/// The back crotch is pulled forward, but by a front without room for the thigh.
#[test]
fn front_thigh_over_three_fittings() {
    let folder = folder("three_fittings", SEVEN);
    let first = toile(
        &folder,
        &[
            "--seen",
            "diagonal wrinkles from front to back along the side seam",
            "--seen",
            "the back crotch is pulled forward",
            "--write",
            "--date",
            "2026-10-03",
        ],
    );
    first.snapshot("command_toile_three_fittings_1");
    let second = toile(
        &folder,
        &[
            "--seen",
            "still tight across the front of the thigh when sitting; the back hangs clean",
            "--since",
            "better",
            "--tested",
            "pinch_front_thigh=front",
            "--pinned",
            "0.8",
            "--write",
            "--date",
            "2026-10-10",
            "--note",
            "sat on the ergometer",
        ],
    );
    second.snapshot("command_toile_three_fittings_2");
    let third = toile(
        &folder,
        &[
            "--seen",
            "the front thigh is clean, but now a loose pouch at the base of the fly",
            "--tested",
            "pinch_fly=upright",
            "--write",
            "--date",
            "2026-10-17",
        ],
    );
    third.snapshot("command_toile_three_fittings_3");
    assert_kept(&text(&folder));
    let told = toile(&folder, &["--history"]);
    assert!(told.files.iter().any(|file| file.ends_with("-fitting-3.svg")), "{:?}", told.files);
    told.snapshot("command_toile_three_fittings_history");
    Dialogue { typed: "(the file)".into(), out: text(&folder), ..told }
        .snapshot("command_toile_three_fittings_file");
}

#[test]
fn asked_on_a_terminal() {
    let folder = Folder::new("toile_asked");
    // under the seat, loose folds across, standing; the back is clean and sitting is easy
    let run = folder.run_answering(&["toile", "--demo", "five", "--ask"], "5\n7\n1\n1\n");
    assert_eq!(run.code, 0, "{}", run.err);
    run.assert_tidy();
    run.snapshot("command_toile_asked");
}

#[test]
fn ring_round_a_thigh_with_ease_enough() {
    let folder = folder("ring", &SEVEN.replace("thigh_girth = 61.0", "thigh_girth = 56.0"));
    toile(&folder, &["--seen", "a ring of tight level lines round the thigh"]).snapshot("command_toile_ring");
}

#[test]
fn signs_that_contradict_each_other() {
    let folder = folder("torn", SEVEN);
    let said = [
        "--seen",
        "tight across the front of the thigh",
        "--seen",
        "loose folds across the front of the thigh",
    ];
    let torn = toile(&folder, &[&said[..], &["--write", "--date", "2026-10-03"]].concat());
    assert!(!text(&folder).contains("changed"), "{}", text(&folder));
    torn.snapshot("command_toile_torn");
}

#[test]
fn one_hip_higher() {
    let folder = folder("hip", SEVEN);
    let said = ["--seen", "the band slopes to one side, diagonal lines from the left hip"];
    toile(&folder, &said).snapshot("command_toile_hip_unsaid");
    let left =
        ["--leg", "left", "--tested", "board=slopes", "--pinned", "1.2", "--write", "--date", "2026-10-03"];
    toile(&folder, &[&said[..], &left].concat()).snapshot("command_toile_hip_left");
    assert!(text(&folder).contains("[left.hip]\nuneven = 1.2\n"), "{}", text(&folder));
}

#[test]
fn change_that_made_it_worse_taken_back() {
    let folder = folder("worse", SEVEN);
    let seen = ["--seen", "loose level folds under the seat", "--tested", "pleat_under_seat=clean"];
    toile(&folder, &[&seen[..], &["--write", "--date", "2026-10-03"]].concat());
    let worse = toile(
        &folder,
        &["--seen", "cuts at the back of the crotch", "--since", "worse", "--write", "--date", "2026-10-04"],
    );
    worse.snapshot("command_toile_worse");
    let file = text(&folder);
    // as sewn, the first change, and its undoing
    assert_eq!(file.matches("[[fitting]]").count(), 3, "{file}");
}

#[test]
fn third_time_the_same_not_without_measuring() {
    let folder = folder("third", SEVEN);
    let more = ["--seen", "tight lines across the front of the thigh", "--tested", "pinch_front_thigh=front"];
    for (day, step) in [("2026-10-03", "0.6"), ("2026-10-10", "0.6")] {
        let run = toile(&folder, &[&more[..], &["--pinned", step, "--write", "--date", day]].concat());
        assert_eq!(run.code, 0, "{}", run.err);
    }
    toile(&folder, &more).snapshot("command_toile_third_time");
    // measured again, and the record says so
    let again = format!(
        "{}\n[[fitting]]\ndate = \"2026-10-12\"\nchanged = {{ \"measurements.thigh_girth\" = 62.0 }}\n",
        text(&folder)
    );
    folder.put("seven.toml", again);
    let run = toile(&folder, &more);
    assert!(!run.out.contains("given twice"), "{}", run.out);
}

#[test]
fn inches_read_and_printed() {
    let run = Folder::new("toile_inches").run(&[
        "toile",
        "--demo",
        "cox",
        "--seen",
        "my waistband drops at the back when I sit down",
        "--tested",
        "sit=band_down",
        "--pinned",
        "1/2",
    ]);
    run.assert_tidy();
    run.snapshot("command_toile_inches");
}

#[test]
fn json_of_a_judged_toile() {
    let run = Folder::new("toile_json").run(&[
        "toile",
        "--demo",
        "stroke",
        "--json",
        "--seen",
        "the calf catches on the leg",
        "--tested",
        "step=calf",
    ]);
    assert_eq!(run.code, 0, "{}", run.err);
    let answer: serde_json::Value = serde_json::from_str(&run.out).expect("JSON");
    assert_eq!(answer["format"], "breeks-toile");
    assert_eq!(answer["causes"][0]["cause"], "calf");
    assert_eq!(answer["advice"]["change"][0]["key"], "leg.calf");
    run.snapshot("command_toile_json");
}

#[test]
fn picture_of_the_next_change() {
    let folder = Folder::new("toile_picture");
    let run = folder.run(&[
        "toile",
        "--demo",
        "stroke",
        "--seen",
        "tight lines across the front of the thigh",
        "--out",
        "pictures",
    ]);
    assert_eq!(
        run.files,
        [
            "pictures/stroke-classic-next-change-by-hand-thigh-front.pdf",
            "pictures/stroke-classic-next-change-by-hand-thigh-front.svg",
            "pictures/stroke-classic-next-change.pdf",
            "pictures/stroke-classic-next-change.svg"
        ]
    );
}

#[test]
fn one_sign_by_flags() {
    let folder = Folder::new("toile_flags");
    let flags = [
        "toile", "--demo", "stroke", "--at", "thigh", "--face", "front", "--feel", "tight", "--lines",
        "level",
    ];
    let words = ["toile", "--demo", "stroke", "--seen", "tight level lines, front thigh"];
    let causes = |run: &Dialogue| run.out.split("the pattern lacks").nth(1).expect("a cause").to_owned();
    let (flags, words) = (folder.run(&flags), folder.run(&words));
    assert_eq!(causes(&flags), causes(&words));
}

#[test]
fn nothing_and_unknown_words_refused_with_what_can_be_said() {
    let folder = Folder::new("toile_refused");
    for (name, said) in [
        ("nothing", vec![]),
        ("empty", vec!["--seen", "  "]),
        ("no_test", vec!["--tested", "open_insem=slide"]),
        ("no_result", vec!["--tested", "feet=far"]),
        ("no_day", vec!["--seen", "tight thigh", "--date", "2026-02-30"]),
        ("no_record", vec!["--history"]),
        ("no_change_before", vec!["--seen", "tight thigh", "--since", "worse"]),
        ("pinned_less_than_nothing", vec!["--seen", "tight thigh", "--pinned=-1"]),
        ("write_demo", vec!["--seen", "tight thigh", "--write"]),
    ] {
        let run = folder.run(&[&["toile", "--demo", "stroke"], &said[..]].concat());
        run.assert_refused(&[]);
        run.snapshot(&format!("refusal_toile_{name}"));
    }
}

/// What says too little is asked about, with an exit code of its own, and nothing is written for it.
#[test]
fn waits_for_an_answer() {
    for (name, said) in [
        ("unknown", "the tihgh is wonky and blergh"),
        ("only_where", "the thigh"),
        ("it_is_tight", "it is tight"),
        ("too_long", "the trousers are too long"),
        ("wrinkles", "crotch wrinkles"),
        ("nothing_known", "blergh sproggle"),
    ] {
        let folder = folder(&format!("waits_{name}"), SEVEN);
        let run = toile(&folder, &["--seen", said, "--write"]);
        assert_eq!(run.code, 3, "{said}: {} {}", run.out, run.err);
        assert!(run.out.contains("--answer \"1="), "{}", run.out);
        assert!(!run.out.contains("change:") && !run.out.contains("->"), "{}", run.out);
        assert_eq!(text(&folder), SEVEN);
        run.snapshot(&format!("waiting_toile_{name}"));
    }
}

#[test]
fn answered_with_an_option() {
    let folder = folder("answered", SEVEN);
    let run = toile(&folder, &["--seen", "legs too wide", "--answer", "1=the front thigh"]);
    assert_eq!(run.code, 0, "{}", run.err);
    run.snapshot("command_toile_answered");
    let json = folder.run(&["toile", "seven.toml", "--seen", "legs too wide", "--json"]);
    assert_eq!(json.code, 3);
    let answer: serde_json::Value = serde_json::from_str(&json.out).expect("JSON");
    assert_eq!(answer["outcome"], "waits");
    assert_eq!(answer["questions"][0]["question"], 1);
    assert_eq!(answer["advice"], serde_json::Value::Null);
    for wrong in ["2=knee", "1=tight", "1", "x=knee"] {
        let run = toile(&folder, &["--seen", "legs too wide", "--answer", wrong]);
        assert_eq!(run.code, 2, "{wrong}: {}", run.out);
    }
}

/// What was denied asks for no change, whatever it denies; and all of it fitting closes the record.
#[test]
fn denied_and_closed() {
    for said in [
        "no pulling at the front of the thigh",
        "nothing pulls",
        "not baggy at the seat",
        "the seat is no longer baggy",
    ] {
        let folder = folder("denied", SEVEN);
        let run = toile(&folder, &["--seen", said]);
        assert_eq!(run.code, 0, "{said}: {}", run.err);
        assert!(
            run.out.contains("Nothing of this asks for a change") && !run.out.contains("->"),
            "{}",
            run.out
        );
    }
    let folder = folder("closed", SEVEN);
    let run = toile(&folder, &["--seen", "fits well now", "--write", "--date", "2026-10-24"]);
    assert_eq!(run.code, 0);
    run.snapshot("command_toile_closed");
    let file = text(&folder);
    assert!(file.contains("note = \"closed: it fits\"") && !file.contains("changed"), "{file}");
}

/// A plain sentence never leads to a correction in the wrong direction.
#[test]
fn plain_sentences_and_what_is_advised() {
    let folder = folder("plain", SEVEN);
    for (said, keys) in [
        ("saggy bottom", &["seat.length", "seat.angle", "seat.width"][..]),
        ("droopy bottom", &["seat.length", "seat.angle", "seat.width"]),
        (
            "wrinkles below the bum at the back of the thigh",
            &["seat.length", "seat.angle", "waist.raise_back"],
        ),
        ("wrinkles under my bottom", &["seat.length", "seat.angle", "waist.raise_back"]),
        ("front rise too short", &["abdomen.length", "crotch.front_extension", "waist.raise_front"]),
        ("back crotch too short", &["seat.length", "crotch.back_extension"]),
        ("hem too short", &["trousers.style.length"]),
        (
            "a lot of fabric piled up in my lap",
            &["seat.angle", "crotch.back_extension", "abdomen.length", "crotch.front_scoop"],
        ),
        ("smile lines under the fly", &["abdomen.length", "crotch.front_extension", "crotch.front_scoop"]),
        ("hem drags on the floor at the back", &["seat.length", "waist.raise_back", "leg.knee_forward"]),
        ("X shaped wrinkles at the crotch", &["crotch.depth", "trousers.ease.waist"]),
    ] {
        let run = folder.run(&["toile", "seven.toml", "--seen", said, "--json"]);
        assert_eq!(run.code, 0, "{said}: {}", run.err);
        let answer: serde_json::Value = serde_json::from_str(&run.out).expect("JSON");
        let change = &answer["advice"]["change"][0];
        let Some(key) = change["key"].as_str() else { continue };
        assert!(keys.contains(&key), "{said}: {key}");
        let longer = change["to"].as_f64() > change["from"].as_f64();
        let short =
            said.contains("short") || said.contains("smile") || said.contains("lap") || said.contains('X');
        // `trousers.style.length` is counted from the floor up
        let wants_more = short != (key == "trousers.style.length");
        assert_eq!(longer, wants_more || (key == "crotch.front_scoop"), "{said}: {key}");
    }
}

#[test]
fn written_only_into_the_file_as_it_stands() {
    let folder = folder("write_and_set", SEVEN);
    let run =
        folder.run(&["toile", "seven.toml", "--seen", "tight thigh", "--write", "--set", "thigh.front=1"]);
    run.assert_refused(&["seven.toml"]);
    run.snapshot("refusal_toile_write_and_set");
    assert_eq!(text(&folder), SEVEN);
}

#[test]
fn hostile_words_shown_without_what_they_do() {
    let folder = folder("hostile", SEVEN);
    let words = format!("tight front thigh \u{1b}[2J\u{202e}\u{7} {}", "blergh ".repeat(1500));
    let run = toile(
        &folder,
        &["--seen", &words, "--note", "\u{202e}\u{1b}[31m", "--write", "--date", "2026-10-03"],
    );
    assert_eq!(run.code, 0, "{}", run.err);
    for text in [&run.out, &run.err, &text(&folder)] {
        assert!(!text.contains(['\u{1b}', '\u{202e}', '\u{7}']), "{text:?}");
    }
    assert!(run.out.len() < 8_000, "{}", run.out.len());
    let run = toile(&folder, &["--history"]);
    assert!(!run.out.contains(['\u{1b}', '\u{202e}']), "{:?}", run.out);
}

#[test]
fn help_of_the_command() {
    let run = Folder::new("toile_help").run(&["toile", "--help"]);
    assert_eq!(run.code, 0);
    run.assert_tidy();
    run.snapshot("command_toile_help");
}

/// The look in the mirror sets what to watch for, and `[shape]` in the file, which then weighs in the ranking.
#[test]
fn look_in_the_mirror() {
    let folder = folder("mirror", SEVEN);
    let asked = toile(&folder, &["--mirror"]);
    assert_eq!(asked.code, 3, "{}", asked.err);
    asked.snapshot("command_toile_mirror_asked");
    let answers = ["--mirror", "--shape", "front_thigh=much", "--shape", "seat=little", "--write"];
    let told = toile(&folder, &answers);
    assert_eq!(told.code, 0, "{}", told.err);
    told.snapshot("command_toile_mirror_told");
    assert!(
        text(&folder).contains("[shape]\nfront_thigh = \"much\"\nseat = \"little\"\n"),
        "{}",
        text(&folder)
    );
    let share = |file: &str| {
        folder.put("seven.toml", file);
        let run = folder.run(&["toile", "seven.toml", "--seen", "tight lines across the thigh", "--json"]);
        let answer: serde_json::Value = serde_json::from_str(&run.out).expect("JSON");
        let of = |cause: &&serde_json::Value| cause["cause"] == "front-thigh";
        answer["causes"].as_array().expect("causes").iter().find(of).expect("a cause")["share"].as_f64()
    };
    let with = text(&folder);
    assert!(share(&with) > share(SEVEN));
    let wrong = folder.run(&["toile", "seven.toml", "--mirror", "--shape", "seat=huge"]);
    assert_eq!(wrong.code, 2, "{}", wrong.out);
}

/// The front thigh arc asks for one opening, whichever command is asked.
#[test]
fn one_number_for_a_front_thigh_arc() {
    let folder = folder("one_arc", &format!("{SEVEN}front_thigh_arc = 31.5\n"));
    let number = |run: &Dialogue, before: &str| {
        let words: Vec<&str> = run.out.split_whitespace().collect();
        let before: Vec<&str> = before.split(' ').collect();
        let at =
            words.windows(before.len()).position(|it| it == before).unwrap_or_else(|| panic!("{}", run.out));
        words[at + before.len()].trim_start_matches('+').parse::<f64>().expect("a number")
    };
    let checked = number(&folder.run(&["check", "seven.toml"]), "asks for thigh.front");
    assert!(checked > 0.3, "{checked}");
    assert_eq!(checked, number(&folder.run(&["fit", "seven.toml"]), "thigh.front"));
    assert_eq!(checked, number(&folder.run(&["draft", "seven.toml"]), "thigh.front"));
    let seen = ["--seen", "tight lines across the front of the thigh", "--tested", "pinch_front_thigh=front"];
    assert_eq!(checked, number(&toile(&folder, &seen), "change: `thigh.front`"));
}
