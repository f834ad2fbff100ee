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
    assert!(folder.bytes(SHEETS[4]) == printed.as_bytes());
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

/// Where the tests run as a user who may write everywhere, there is nothing to see.
#[cfg(unix)]
#[test]
fn folder_that_may_not_be_written() {
    use std::os::unix::fs::PermissionsExt as _;
    let folder = Folder::new("closed_folder");
    let closed = folder.path("closed");
    std::fs::create_dir(&closed).expect("a folder");
    std::fs::set_permissions(&closed, std::fs::Permissions::from_mode(0o555)).expect("our own folder");
    if std::fs::File::create(closed.join("trial")).is_err() {
        folder.run(&["draft", "--demo", "stroke", "--out", "closed"]).assert_refused(&[]);
    }
    std::fs::set_permissions(&closed, std::fs::Permissions::from_mode(0o755)).expect("our own folder");
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

/// Draws into a file system of 20 kB, where root may make one.
#[cfg(target_os = "linux")]
#[test]
fn nothing_half_written_on_a_full_disk() {
    let folder = Folder::new("full_disk");
    let small = folder.path("small");
    std::fs::create_dir_all(&small).expect("a folder");
    let mount = std::process::Command::new("mount")
        .args(["-t", "tmpfs", "-o", "size=20k", "tmpfs"])
        .arg(&small)
        .output();
    if !mount.is_ok_and(|mount| mount.status.success()) {
        println!("SKIPPED: no small file system could be mounted");
        return;
    }
    let run = folder.run(&["draft", "--demo", "stroke", "--out", "small"]);
    let left: Vec<_> = std::fs::read_dir(&small).expect("the small one").collect();
    let unmounted = std::process::Command::new("umount").arg(&small).status().expect("umount runs");
    assert!(unmounted.success());
    assert_eq!(run.code, 2, "{}", run.out);
    assert!(run.err.contains("No space left"), "{}", run.err);
    assert!(left.is_empty(), "{left:?}");
}
