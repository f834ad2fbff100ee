//! What `breeks draft` writes, and what it leaves alone.

use super::dialogue::Folder;

const STROKE: [&str; 3] = ["draft", "--demo", "stroke"];
const SHEETS: [&str; 7] = [
    "drafts/stroke-classic-a4-letter.pdf",
    "drafts/stroke-classic-fit-sheet.html",
    "drafts/stroke-classic-fit-sheet.pdf",
    "drafts/stroke-classic-pieces.svg",
    "drafts/stroke-classic.json",
    "drafts/stroke-classic.pdf",
    "drafts/stroke-classic.svg",
];

#[test]
fn the_same_bytes_twice() {
    let folder = Folder::new("twice");
    let runs = [0, 1].map(|_| {
        let run = folder.run(&STROKE);
        assert_eq!(run.files, SHEETS, "{}", run.err);
        (run.out, SHEETS.map(|sheet| folder.bytes(sheet)))
    });
    assert_eq!(runs[0], runs[1]);
}

#[test]
fn json_file_as_printed() {
    let folder = Folder::new("json_file");
    folder.run(&STROKE);
    let printed = folder.run(&["draft", "--demo", "stroke", "--json"]).out;
    let (_, bytes) = breeks::file::unsealed(&folder.bytes(SHEETS[4])).expect("sealed");
    assert!(bytes == printed.as_bytes());
}

#[test]
fn folder_named_with_out() {
    let run = Folder::new("out").run(&["draft", "--demo", "five", "--out", "club/boat 8"]);
    assert_eq!(run.code, 0);
    assert_eq!(
        run.files,
        [
            "club/boat 8/five-classic-a4-letter.pdf",
            "club/boat 8/five-classic-fit-sheet.html",
            "club/boat 8/five-classic-fit-sheet.pdf",
            "club/boat 8/five-classic-pieces.svg",
            "club/boat 8/five-classic.json",
            "club/boat 8/five-classic.pdf",
            "club/boat 8/five-classic.svg"
        ]
    );
}

#[test]
fn foreign_file_left_alone() {
    let folder = Folder::new("foreign_file");
    folder.put(SHEETS[6], "a drawing of my own");
    let run = folder.run(&STROKE);
    run.assert_refused(&[SHEETS[6]]);
    run.snapshot("refusal_foreign_file");
    assert_eq!(folder.bytes(SHEETS[6]), b"a drawing of my own");
}

#[test]
fn folder_in_the_place_of_a_sheet_left_alone() {
    let folder = Folder::new("folder_for_sheet");
    std::fs::create_dir_all(folder.path(SHEETS[4])).expect("a folder");
    folder.run(&STROKE).assert_refused(&[]);
}

#[test]
fn folder_that_cannot_be_made() {
    let folder = Folder::new("no_folder");
    folder.put("taken", "a file");
    for out in ["taken", "taken/inside"] {
        let run = folder.run(&["draft", "--demo", "stroke", "--out", out]);
        run.assert_refused(&["taken"]);
        assert!(run.err.contains(&format!("cannot make the folder `{out}`")), "{}", run.err);
        assert!(run.err.contains("help: name another folder with `--out`"), "{}", run.err);
    }
}

#[test]
fn label_that_climbs_out_of_the_folder_kept_in_it() {
    for label in ["name=../../stroke", "name=/stroke", "name=..", "name=a\\b:c*?"] {
        let run = Folder::new("climbing_label").run(&["draft", "--demo", "stroke", "--set", label]);
        assert_eq!(run.code, 0, "{}", run.err);
        assert_eq!(run.files.len(), SHEETS.len(), "{:?}", run.files);
        for file in run.files {
            let name = file.strip_prefix("drafts/").expect("in the folder");
            assert!(
                name.chars().all(|letter| letter.is_ascii_alphanumeric() || "-.".contains(letter)),
                "{name}"
            );
        }
    }
}

const HALF_MEASURED: &str = "[measurements]\nwaist_girth = 70\nhip_girth = 96\ninside_leg = 76\n";

#[test]
fn two_bodies_without_a_name_named_by_their_files() {
    let folder = Folder::new("nameless");
    folder.put("bow.toml", HALF_MEASURED);
    folder.put("seven.toml", HALF_MEASURED.replace("96", "104"));
    for file in ["bow.toml", "seven.toml"] {
        assert_eq!(folder.run(&["draft", file]).code, 0);
    }
    for stem in ["bow", "seven"] {
        let json = String::from_utf8(folder.bytes(&format!("drafts/{stem}-classic.json"))).expect("text");
        assert!(json.contains(&format!("\"name\": \"{stem}\"")));
    }
}

#[test]
fn another_order_of_the_same_name_replaced_only_where_that_is_said() {
    let folder = Folder::new("same_name");
    folder.put("bow.toml", HALF_MEASURED);
    folder.put("other boat/bow.toml", HALF_MEASURED.replace("96", "104"));
    assert_eq!(folder.run(&["draft", "bow.toml"]).code, 0);
    let first = folder.bytes("drafts/bow-classic.json");
    let names: Vec<String> = folder.files();
    let run = folder.run(&["draft", "other boat/bow.toml"]);
    run.assert_refused(&names.iter().map(String::as_str).collect::<Vec<_>>());
    run.snapshot("refusal_other_order");
    assert_eq!(folder.bytes("drafts/bow-classic.json"), first);
    // the same order again, however it is called
    for again in ["bow.toml", "./bow.toml", "other boat/../bow.toml"] {
        assert_eq!(folder.run(&["draft", again, "--set", "thigh.front=1"]).code, 0, "{again}");
    }
    let run = folder.run(&["draft", "other boat/bow.toml", "--replace"]);
    assert_eq!(run.code, 0, "{}", run.err);
    assert_ne!(folder.bytes("drafts/bow-classic.json"), first);
}

#[test]
fn folder_and_file_moved_together_still_one_order() {
    let folder = Folder::new("moved");
    folder.put("boat/bow.toml", HALF_MEASURED);
    assert_eq!(folder.run(&["draft", "boat/bow.toml", "--out", "boat/drafts"]).code, 0);
    std::fs::rename(folder.path("boat"), folder.path("eight")).expect("our own folder");
    let run = folder.run(&["draft", "eight/bow.toml", "--out", "eight/drafts"]);
    assert_eq!(run.code, 0, "{}", run.err);
}

#[test]
fn toile_beside_the_pattern_proper() {
    let folder = Folder::new("toile_beside");
    folder.run(&STROKE);
    let pattern = SHEETS.map(|sheet| folder.bytes(sheet));
    let run = folder.run(&[&STROKE[..], &["--toile"]].concat());
    assert_eq!(run.code, 0, "{}", run.err);
    assert_eq!(SHEETS.map(|sheet| folder.bytes(sheet)), pattern);
    let toile = SHEETS.map(|sheet| sheet.replace("classic", "classic-toile"));
    assert!(toile.iter().all(|sheet| run.files.contains(sheet)), "{:?}", run.files);
}

/// A drawing of one's own, begun from ours or merely speaking of it, is nobody else's to replace.
#[test]
fn drawing_that_a_person_went_on_with_left_alone() {
    let folder = Folder::new("gone_on");
    folder.run(&STROKE);
    let ours = String::from_utf8(folder.bytes(SHEETS[6])).expect("text");
    let gone_on = ours.replace("</svg>", "<path d=\"M0 0 L1 1\"/></svg>");
    let own = "<svg >\n<title>after breeks</title>\n</svg>\n".to_owned();
    for drawing in [gone_on, own] {
        folder.put(SHEETS[6], &drawing);
        for replace in [&[][..], &["--replace"]] {
            folder.run(&[&STROKE[..], replace].concat()).assert_refused(&SHEETS);
            assert_eq!(folder.bytes(SHEETS[6]), drawing.as_bytes());
        }
    }
}

/// Every kind of file that a command writes is known again by the next run.
#[test]
fn every_file_known_again() {
    let folder = Folder::new("known_again");
    folder.put("bow.toml", HALF_MEASURED);
    for command in [
        &[
            "draft",
            "bow.toml",
            "--png",
            "--dxf",
            "--projector",
            "--roll",
            "90",
            "--paper",
            "a3",
            "--paper",
            "a3",
        ][..],
        &["cloth", "bow.toml", "--width", "140"],
        &["lesson", "bow.toml"],
        &["compare", "bow.toml", "--set", "thigh.front=1"],
        &["new", "--guide"],
        &["blocks", "classic", "--out", "drafts"],
    ] {
        for time in ["first", "second"] {
            let run = folder.run(command);
            assert_eq!(run.code, 0, "{command:?} the {time} time: {}", run.err);
        }
    }
}

#[test]
fn nothing_on_the_terminal_that_turns_or_hides() {
    /// Turns the reading direction, hides, moves the cursor, ends the line.
    const UNSEEN: [char; 8] =
        ['\u{202e}', '\u{2066}', '\u{200b}', '\u{feff}', '\u{9b}', '\u{7f}', '\u{2028}', '\u{e0041}'];
    let folder = Folder::new("unseen");
    let all: String = UNSEEN.iter().collect();
    // a label takes no control characters at all, so that only the others get beyond the reader
    let shy: String = UNSEEN.iter().filter(|unseen| !unseen.is_control()).collect();
    let written: String = shy.chars().map(|unseen| format!(r"\U{:08x}", unseen as u32)).collect();
    let file = format!("b{all}w.toml");
    folder.put(&file, format!("name = \"s{written}x\"\n{HALF_MEASURED}[[fitting]]\nnote = \"n{written}\"\n"));
    let (set, out, odd) = (format!("name=c{shy}x"), format!("o{all}t"), format!("--{all}"));
    let named = format!("trousers.block=b{all}");
    for arguments in [
        &["draft", &file, "--out", &out][..],
        &["draft", &file, "--json"],
        &["draft", &file, "--set", &set],
        &["draft", &file, "--set", &named],
        &["draft", &odd],
        &["draft", "--demo", &out],
        &["check", &file],
        &["fit", &file],
        &["compare", &file, "--set", "thigh.front=1"],
        &["compare", &file, "--set", "thigh.front=1", "--json"],
        &["cloth", &file, "--width", "140", "--json"],
        &["cloth", &file, "--width", "140"],
        &["lesson", &file],
        &["toile", &file, "--history"],
        &["toile", &file, "front thigh pulls"],
        &["toile", &file, &out],
        &["blocks", &out],
        &["batch", &file],
        &["new", &file],
    ] {
        let run = folder.run(arguments);
        for said in [&run.out, &run.err] {
            let found = UNSEEN.iter().find(|unseen| said.contains(**unseen));
            assert_eq!(found, None, "{arguments:?}: {said}");
        }
        assert!(!(run.out.is_empty() && run.err.is_empty()), "{arguments:?} says nothing");
    }
    let json = folder.run(&["draft", &file, "--json"]).out;
    let answer: serde_json::Value = serde_json::from_str(&json).expect("JSON");
    assert_eq!(answer["name"], format!("s{shy}x"), "to a program it is the same name");
}

#[test]
fn sentences_as_wide_as_the_terminal() {
    let folder = Folder::new("narrow");
    folder.put("bow.toml", HALF_MEASURED);
    for columns in ["40", "20"] {
        let ended =
            folder.command(&["fit", "bow.toml"]).env("COLUMNS", columns).output().expect("the program runs");
        let said = String::from_utf8(ended.stdout).expect("text");
        let notes: Vec<&str> = said.lines().skip_while(|line| !line.starts_with("note: ")).collect();
        let wide: usize = columns.parse().expect("a number");
        assert!(notes.len() > 4, "{said}");
        for line in notes {
            // a word longer than the line stands alone
            let fits = line.chars().count() <= wide || line.split_whitespace().count() <= 2;
            assert!(fits, "{columns} columns: {line}");
        }
    }
}
