//! The drawings that `breeks draft` writes, and what it leaves alone.

use std::{
    path::{Path, PathBuf},
    process::{Command, Output},
};

/// An empty folder of this test's own, gone with it.
struct Folder(PathBuf);

impl Folder {
    fn new(name: &str) -> Self {
        let path = std::env::temp_dir().join(format!("breeks-drawn-{name}-{}", std::process::id()));
        std::fs::create_dir_all(&path).expect("a folder");
        Self(path)
    }

    fn names(&self) -> Vec<String> {
        let entries = std::fs::read_dir(&self.0).expect("our own folder");
        let mut names: Vec<String> =
            entries.map(|entry| entry.expect("a file").file_name().to_string_lossy().into_owned()).collect();
        names.sort();
        names
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        // What is left behind in the folder for passing files harms nobody.
        let _ = std::fs::remove_dir_all(&self.0);
    }
}

fn draft(folder: &Path, more: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_breeks"))
        .args(["draft", "--demo", "five", "--out"])
        .arg(folder)
        .args(more)
        .output()
        .expect("the program runs")
}

#[test]
fn wall_fit_sheet_and_sheets_with_their_number() {
    let folder = Folder::new("all");
    let output = draft(&folder.0, &["--paper", "a4_letter"]);
    let said = String::from_utf8_lossy(&output.stdout);
    assert_eq!(
        folder.names(),
        [
            "five-classic-a4-letter.pdf",
            "five-classic-fit-sheet.html",
            "five-classic-fit-sheet.pdf",
            "five-classic-pieces.svg",
            "five-classic.json",
            "five-classic.pdf",
            "five-classic.svg"
        ]
    );
    assert!(said.contains("sheets and a first page)") && said.contains("(one sheet of "), "{said}");
    let again = draft(&folder.0, &["--paper", "a4_letter"]);
    assert_eq!(output.stdout, again.stdout, "our own files are written anew");
}

#[test]
fn a_pdf_of_somebody_else_left_alone() {
    let folder = Folder::new("foreign");
    let foreign = folder.0.join("five-classic.pdf");
    std::fs::write(&foreign, b"%PDF-1.4 somebody else's").expect("a file");
    let output = draft(&folder.0, &[]);
    assert_eq!(output.status.code(), Some(2));
    assert_eq!(folder.names(), ["five-classic.pdf"]);
    assert_eq!(std::fs::read(&foreign).expect("the file"), b"%PDF-1.4 somebody else's");
}

#[test]
fn unknown_paper_refused_with_the_known_ones() {
    let folder = Folder::new("paper");
    let output = draft(&folder.0, &["--paper", "a5"]);
    assert_eq!(output.status.code(), Some(2));
    let said = String::from_utf8_lossy(&output.stderr);
    assert!(said.contains("a4, letter, a4_letter, a3, tabloid"), "{said}");
    assert!(folder.names().is_empty());
}
