//! Standard output and standard error.

use std::process::Stdio;

use super::dialogue::Folder;

#[test]
fn json_alone_on_standard_output() {
    let folder = Folder::new("json_alone");
    for arguments in [
        &["draft", "--demo", "stroke", "--json"][..],
        &["draft", "--demo", "stroke", "--json", "--set", "trousers.style.knee_width=20"],
        &["draft", "--demo", "stroke", "--json", "--units", "inch", "--out", "paper"],
    ] {
        let run = folder.run(arguments);
        let answer: serde_json::Value = serde_json::from_str(&run.out).expect("JSON and nothing else");
        assert_eq!(answer["format"], "breeks-draft");
        assert_eq!(answer["units"], "cm");
        assert_eq!(run.err, "");
        assert_eq!(run.files.is_empty(), !arguments.contains(&"--out"), "{:?}", run.files);
    }
}

#[test]
fn closed_pipe_a_quiet_end() {
    for arguments in [&["draft", "--demo", "stroke", "--json"][..], &["blocks", "classic"], &["blocks"]] {
        let folder = Folder::new("closed_pipe");
        let mut child = folder
            .command(arguments)
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .expect("the program runs");
        drop(child.stdout.take());
        let ended = child.wait_with_output().expect("an end");
        assert_eq!(String::from_utf8_lossy(&ended.stderr), "");
        assert_eq!(ended.status.code(), Some(0));
    }
}

#[cfg(target_os = "linux")]
#[test]
fn full_disk_behind_standard_output_told() {
    let full = std::fs::File::options().write(true).open("/dev/full").expect("a device of every Linux");
    let ended = Folder::new("full_disk")
        .command(&["draft", "--demo", "stroke", "--json"])
        .stdout(full)
        .output()
        .expect("the program runs");
    assert_eq!(ended.status.code(), Some(2));
    let said = String::from_utf8_lossy(&ended.stderr).into_owned();
    assert!(said.starts_with("error: cannot write to standard output"), "{said}");
}

#[test]
fn no_colour_where_nobody_watches() {
    let run = Folder::new("no_colour").run(&["draft", "--demo", "strok"]);
    assert!(!run.err.contains('\u{1b}'));
}
