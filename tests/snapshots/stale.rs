//! Plain `cargo test` does not notice a snapshot whose test is gone: this compares the folder with the tests' text.

use std::{
    collections::BTreeSet,
    fs,
    path::{Path, PathBuf},
};

/// The text of every test, with what may stand in a snapshot's name.
struct Tests(Vec<(PathBuf, String)>);

impl Tests {
    fn read() -> Self {
        let (mut texts, mut folders) = (Vec::new(), ["tests", "src"].map(|name| root().join(name)).to_vec());
        while let Some(folder) = folders.pop() {
            for entry in fs::read_dir(&folder).expect("a folder of the repository") {
                let path = entry.expect("an entry").path();
                if path.is_dir() {
                    folders.push(path);
                } else if path.extension().is_some_and(|ending| ending == "rs") {
                    let text = fs::read_to_string(&path).expect("a source file");
                    texts.push((path, text));
                }
            }
        }
        Self(texts)
    }

    /// Whether a test names the snapshot: in full, or as the beginning and the end of a text of which the middle is a
    /// word of the same file or of the program, which is how a name is put together from a table of cases.
    fn name(&self, snapshot: &str) -> bool {
        self.0.iter().any(|(_, text)| {
            text.contains(&format!("\"{snapshot}\""))
                || text.contains(&format!("\"{snapshot}."))
                || middles(text, snapshot).any(|word| has_word(text, word) || self.program_has_word(word))
        })
    }

    fn program_has_word(&self, word: &str) -> bool {
        self.0.iter().any(|(path, text)| path.starts_with(root().join("src")) && has_word(text, word))
    }
}

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// What the texts of a file, as `"beginning_"` or `"beginning_{}_end"`, leave open of the snapshot's name.
fn middles<'a>(text: &'a str, snapshot: &'a str) -> impl Iterator<Item = &'a str> {
    text.split('"').filter(|text| !text.contains(char::is_whitespace)).filter_map(|text| {
        let (beginning, rest) = text.split_once('{').unwrap_or((text, "}"));
        let (_, end) = rest.rsplit_once('}')?;
        let middle = snapshot.strip_prefix(beginning)?.strip_suffix(end)?;
        (beginning.ends_with(['_', '-']) && !middle.is_empty()).then_some(middle)
    })
}

fn has_word(text: &str, word: &str) -> bool {
    let part_of_word = |letter: char| letter.is_alphanumeric() || letter == '_';
    text.match_indices(word).any(|(at, _)| {
        !text[..at].ends_with(part_of_word) && !text[at + word.len()..].starts_with(part_of_word)
    })
}

#[test]
fn every_snapshot_named_by_a_test() {
    let tests = Tests::read();
    let kept: BTreeSet<String> = fs::read_dir(root().join("snapshots"))
        .expect("the folder of snapshots")
        .map(|entry| entry.expect("an entry").file_name().to_string_lossy().into_owned())
        .filter(|file| !file.contains(".snap.new"))
        .collect();
    assert!(kept.len() > 50, "{kept:?}");
    let stale: Vec<&String> = kept
        .iter()
        // A picture that a page shows has no head of a snapshot: its test names it whole.
        .filter(|file| !tests.name(file.split_once(".snap").map_or(file.as_str(), |(name, _)| name)))
        .collect();
    assert!(stale.is_empty(), "no test compares these any more, delete them: {stale:?}");
}

#[test]
fn snapshot_that_nothing_names_found() {
    let tests = Tests::read();
    assert!(tests.name("answer_cox") && tests.name("picture_stroke"));
    let nobody = ["answer", "cushion"].join("_");
    assert!(!tests.name(&nobody));
}
