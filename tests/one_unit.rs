//! One unit to a reader: a body in inches through every command, and every text that comes of it read again, PDFs by
//! poppler: no centimetre and no decimal figure in any of it. The same body in centimetres, and no inch. The test squares
//! have both units and stand apart.
#![expect(clippy::unwrap_used, reason = "tests")]

use std::{
    fs,
    path::{Path, PathBuf},
    process::Command,
};

use regex::Regex;

/// The same body in both units: strong thighs, an opened front, something odd, a seat to be judged.
const BODIES: [(&str, &str); 2] = [
    (
        "inch",
        r#"
[measurements]
waist_girth = "29 1/2"
hip_girth = 41
inside_leg = "31"
stature = "5 ft 7"
thigh_girth = "25 1/4"
knee_girth = "13 1/4"
total_crotch_length = "31 1/2"
front_thigh_arc = "12 3/4"
[trousers.style]
waist_drop = "1 1/2"
[thigh]
front = "1 1/4"
[seat]
angle = 1.5
"#,
    ),
    (
        "cm",
        r#"
[measurements]
waist_girth = 74.9
hip_girth = 104.1
inside_leg = "78,7"
stature = 170.2
thigh_girth = 64.1
knee_girth = 33.7
total_crotch_length = 80.0
front_thigh_arc = 32.4
[trousers.style]
waist_drop = 3.8
[thigh]
front = 3.2
[seat]
angle = 1.5
"#,
    ),
];

/// What is run in turn, and whether it is to end well.
const RUNS: [&str; 12] = [
    "new blank.toml --units UNIT --guide",
    "check FILE",
    "draft FILE --out drawn --waistband straight --fly left --yoke --paper a4 --roll ROLL --dxf",
    "draft FILE --out json --json",
    "fit FILE",
    "compare FILE --set thigh.front=0 --out compared",
    "lesson FILE --out lesson",
    "cloth FILE --width WIDE --out cloth --repeat REPEAT",
    "toile FILE --at thigh --face front --feel tight",
    "toile FILE --at thigh --face front --feel tight --json",
    "draft FILE --set thigh.front=99 --out refused",
    "draft FILE --set measurements.hip_girth=999 --out refused",
];

/// Every text that a run of all commands gives a person to read, with where it stands.
fn texts(unit: &str) -> Vec<(String, String)> {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("one-unit-{unit}"));
    let _ = fs::remove_dir_all(&folder);
    fs::create_dir_all(&folder).unwrap();
    let body = BODIES.iter().find(|(of, _)| *of == unit).unwrap().1;
    let head = format!("name = \"seven\"\nsex = \"female\"\nwaist_level = \"natural\"\nunits = \"{unit}\"\n");
    fs::write(folder.join("seven.toml"), head + body).unwrap();
    let of_unit = |inch: &'static str, cm: &'static str| if unit == "inch" { inch } else { cm };
    let mut all = Vec::new();
    for run in RUNS {
        let arguments = run
            .replace("UNIT", unit)
            .replace("FILE", "seven.toml")
            .replace("ROLL", of_unit("36", "91"))
            .replace("WIDE", of_unit("59", "150"))
            .replace("REPEAT", of_unit("4", "10"));
        let done = Command::new(env!("CARGO_BIN_EXE_breeks"))
            .args(arguments.split(' '))
            .current_dir(&folder)
            .output()
            .unwrap();
        let refused = run.ends_with("refused");
        assert_eq!(
            done.status.code() == Some(2),
            refused,
            "{run}: {}",
            String::from_utf8_lossy(&done.stderr)
        );
        let out = String::from_utf8(done.stdout).unwrap();
        if run.contains("--json") {
            all.push((run.to_owned(), told(&serde_json::from_str(&out).unwrap())));
        } else {
            all.push((run.to_owned(), out));
        }
        // what is quoted of the file is the person's own
        let said = String::from_utf8(done.stderr).unwrap();
        let own: Vec<&str> = said.lines().filter(|line| !line.contains(" | ")).collect();
        all.push((format!("{run}, said"), own.join("\n")));
    }
    for path in files(&folder) {
        if let Some(text) = read(&path) {
            all.push((path.strip_prefix(&folder).unwrap().display().to_string(), text));
        }
    }
    all
}

/// The sentences of an answer: all texts under a key that says that it is one.
fn told(answer: &serde_json::Value) -> String {
    const SENTENCES: [&str; 7] = ["text", "why", "says", "ask", "hand", "then", "avoid"];
    let mut said = String::new();
    let mut left = vec![("", answer)];
    while let Some((key, value)) = left.pop() {
        match value {
            serde_json::Value::Object(map) => {
                left.extend(map.iter().map(|(key, value)| (key.as_str(), value)))
            }
            serde_json::Value::Array(all) => left.extend(all.iter().map(|value| (key, value))),
            serde_json::Value::String(text) if SENTENCES.contains(&key) => {
                said.push_str(text);
                said.push('\n');
            }
            _ => {}
        }
    }
    said
}

fn files(folder: &Path) -> Vec<PathBuf> {
    let mut all: Vec<PathBuf> = Vec::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() { all.extend(files(&path)) } else { all.push(path) }
    }
    all.sort();
    all
}

/// What a person reads of a file.
fn read(path: &Path) -> Option<String> {
    let text = || fs::read_to_string(path).unwrap();
    match path.extension()?.to_str()? {
        "html" | "svg" => Some(without_marks(&text())),
        "pdf" => {
            let done = Command::new("pdftotext").args(["-layout", path.to_str().unwrap(), "-"]).output();
            match done {
                Ok(done) => Some(String::from_utf8(done.stdout).unwrap()),
                Err(_) => {
                    println!("skipped: no pdftotext for {}", path.display());
                    None
                }
            }
        }
        "dxf" => Some(text().lines().filter(|line| line.contains(". ")).collect::<Vec<_>>().join("\n")),
        "toml" if path.ends_with("blank.toml") => Some(text()),
        _ => None,
    }
}

/// The words between the tags, a line each, without style sheets.
fn without_marks(text: &str) -> String {
    let style = Regex::new(r"(?s)<style.*?</style>").unwrap();
    let tag = Regex::new(r"<[^>]*>").unwrap();
    tag.replace_all(&style.replace_all(text, ""), "\n").into_owned()
}

/// What the unit of the reader does not have, with the line that has it.
fn foreign(unit: &str, texts: &[(String, String)]) -> Vec<String> {
    let wrong = match unit {
        "inch" => r"\bcm\b|[Cc]entimet|\bmm\b|\d[.,]\d",
        _ => r#"\d in\b|\binch|\d"|\d/16\b|\d \d/\d"#,
    };
    let wrong = Regex::new(wrong).unwrap();
    // angles, shares of a whole, versions and dates have decimals in any unit; a rule's fraction is no length
    let allowed = Regex::new(match unit {
        "inch" => {
            r"\d+\.\d+ ?(°|degrees|per cent|%)|\d+\.\d +\d+ to \d+|seat\.angle +[−–-]?\d+\.\d|0\.8 of it|8559-1.*\d\.\d+\.\d+|31\.5 or|2 in\s+5 cm|^\s*5 cm(\s|$)"
        }
        _ => r"^\s*2 in\s*$|2 in\s+5 cm|5 cm\s+2 in|\d+ in 100|\d\.\d+/\d+|\d/\d+ [a-z]",
    })
    .unwrap();
    let decimals = Regex::new(r"\d+\.\d+").unwrap();
    let mut found = Vec::new();
    for (place, text) in texts {
        for line in text.lines() {
            let rest = allowed.replace_all(line, "");
            // a lesson's sum has decimals of an inch where a length in it is no sixteenth; how steep a run-out is has no unit
            let taught = unit == "inch" && place.starts_with("lesson/");
            let rest = if taught { decimals.replace_all(&rest, "").into_owned() } else { rest.into_owned() };
            if wrong.is_match(&rest) {
                found.push(format!("{place}: {}", line.trim()));
            }
        }
    }
    found
}

#[test]
fn no_centimetre_before_a_reader_of_inches() {
    let found = foreign("inch", &texts("inch"));
    assert!(found.is_empty(), "{} lines:\n{}", found.len(), found.join("\n"));
}

#[test]
fn no_inch_before_a_reader_of_centimetres() {
    let found = foreign("cm", &texts("cm"));
    assert!(found.is_empty(), "{} lines:\n{}", found.len(), found.join("\n"));
}
