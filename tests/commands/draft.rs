//! `breeks draft` where it drafts.

use super::dialogue::Folder;

#[test]
fn demo_bodies_in_tables() {
    for demo in ["stroke", "five", "cox"] {
        let run = Folder::new(&format!("demo_{demo}")).run(&["draft", "--demo", demo]);
        assert_eq!(run.code, 0, "{}", run.err);
        assert_eq!(run.err, "");
        run.assert_tidy();
        run.snapshot(&format!("command_draft_{demo}"));
    }
}

#[test]
fn table_in_inches() {
    let run = Folder::new("inches").run(&["draft", "--demo", "stroke", "--units", "inch"]);
    run.assert_tidy();
    run.snapshot("command_draft_in_inches");
}

#[test]
fn too_tight_a_knee_drafted_and_not_to_be_cut() {
    let folder = Folder::new("tight_knee");
    let run = folder.run(&["draft", "--demo", "stroke", "--set", "trousers.style.knee_width=20"]);
    assert_eq!(run.code, 1);
    run.assert_tidy();
    run.snapshot("command_draft_too_tight");
}

#[test]
fn fit_parameters_with_their_share_of_the_crotch_seam() {
    let run = Folder::new("parameters").run(&[
        "draft",
        "--demo",
        "stroke",
        "--set",
        "thigh.front=1.9",
        "--set",
        "seat.angle=2",
        "--set",
        "crotch.back_extension=0.5",
    ]);
    assert_eq!(run.code, 0, "{}", run.err);
    run.assert_tidy();
    run.snapshot("command_draft_with_parameters");
}

#[test]
fn measurement_file_in_place_of_a_demo() {
    let folder = Folder::new("file");
    folder.put("bow.toml", "[measurements]\nwaist_girth = 70\nhip_girth = 96\ninside_leg = 76\n");
    let run = folder.run(&["draft", "bow.toml", "--out", "paper/bow"]);
    assert_eq!(run.code, 0, "{}", run.err);
    assert_eq!(
        run.files,
        [
            "bow.toml",
            "paper/bow/bow-classic-a4-letter.pdf",
            "paper/bow/bow-classic-fit-sheet.html",
            "paper/bow/bow-classic-fit-sheet.pdf",
            "paper/bow/bow-classic-pieces.svg",
            "paper/bow/bow-classic.json",
            "paper/bow/bow-classic.pdf",
            "paper/bow/bow-classic.svg"
        ]
    );
}

#[test]
fn keys_set_in_every_way_of_writing_a_length() {
    let folder = Folder::new("set");
    let hem = |set: &str| {
        let run = folder.run(&["draft", "--demo", "stroke", "--json", "--set", set]);
        assert_eq!(run.code, 0, "{}", run.err);
        let answer: serde_json::Value = serde_json::from_str(&run.out).expect("JSON");
        let rows = answer["levels"].as_array().expect("levels");
        let hem = rows.iter().find(|row| row["level"] == "hem").expect("a hem");
        hem["pattern"].as_f64().expect("a number")
    };
    for (set, girth) in [
        ("trousers.style.hem_width=24.5", 49.0),
        ("trousers.style.hem_width = 24.5 cm ", 49.0),
        ("trousers.style.hem_width=10 in", 50.8),
        ("trousers.style.hem_width=9 1/2 in", 48.26),
        ("trousers.style.hem_width=9½\"", 48.26),
    ] {
        assert!((hem(set) - girth).abs() < 1e-3, "{set}: {}", hem(set));
    }
}

#[test]
fn last_of_two_values_for_a_key_in_force() {
    let folder = Folder::new("set_twice");
    let both = ["draft", "--demo", "stroke", "--json", "--set", "name=two", "--set", "name=three"];
    assert!(folder.run(&both).out.contains(r#""name": "three""#));
}

#[test]
fn help_of_the_command() {
    let run = Folder::new("help").run(&["draft", "--help"]);
    assert_eq!(run.code, 0);
    run.assert_tidy();
    run.snapshot("command_draft_help");
}
