//! The README's promises.

use super::dialogue::Folder;

const README: &str = include_str!("../../README.md");

#[test]
fn measurement_file_of_the_readme_drafted() {
    let (_, after) = README.split_once("```toml\n").expect("a measurement file");
    let (file, _) = after.split_once("```").expect("its end");
    let folder = Folder::new("readme");
    folder.put("bow.toml", file);
    let run = folder.run(&["draft", "bow.toml"]);
    assert_eq!(run.code, 0, "{}{}", run.out, run.err);
    assert_eq!(
        run.files,
        [
            "bow.toml",
            "drafts/bow-classic-a4-letter.pdf",
            "drafts/bow-classic-fit-sheet.html",
            "drafts/bow-classic-fit-sheet.pdf",
            "drafts/bow-classic-pieces.svg",
            "drafts/bow-classic.json",
            "drafts/bow-classic.pdf",
            "drafts/bow-classic.svg"
        ]
    );
    run.assert_tidy();
}

#[test]
fn options_of_the_readme_known() {
    let folder = Folder::new("readme_help");
    let help = ["draft", "toile", "cloth"].map(|command| folder.run(&[command, "--help"]).out).concat();
    let rows: Vec<&str> = README.lines().filter(|line| line.starts_with("| `--")).collect();
    assert!(rows.len() >= 5);
    for row in rows {
        let option = row.split(['`', ' ', '=']).find(|word| word.starts_with("--")).expect("an option");
        assert!(help.contains(option), "{option}");
    }
}
