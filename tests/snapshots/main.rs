//! What the demo bodies come to, as yesterday; and no snapshot that nothing compares any more.

mod stale;

use std::{path::PathBuf, process::Command};

use breeks::{
    drawing::SvgScale,
    fit,
    order::{Order, demo},
    paper::draft_picture,
    recipe::load,
    told::Subject,
    unit::Unit,
};

const DEMOS: [&str; 3] = ["stroke", "five", "cox"];

/// The drawing and the answer of a demo body.
fn drafted(demo: &str, test: &str) -> (String, String) {
    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join("snapshots").join(test).join(demo);
    let _ = std::fs::remove_dir_all(&folder);
    let ended = Command::new(env!("CARGO_BIN_EXE_breeks"))
        .args(["draft", "--demo", demo, "--out"])
        .arg(&folder)
        .output()
        .expect("the program runs");
    assert_ne!(ended.status.code(), Some(2), "{}", String::from_utf8_lossy(&ended.stderr));
    let read = |ending: &str| {
        std::fs::read_to_string(folder.join(format!("{demo}-classic{ending}"))).expect("a sheet")
    };
    (read(".svg"), read(".json"))
}

fn in_the_folder(compare: impl FnOnce()) {
    let mut settings = insta::Settings::clone_current();
    settings.set_snapshot_path(concat!(env!("CARGO_MANIFEST_DIR"), "/snapshots"));
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(compare);
}

#[test]
fn answers_of_the_demo_bodies() {
    for demo in DEMOS {
        let (_, json) = drafted(demo, "answers");
        in_the_folder(|| insta::assert_snapshot!(format!("answer_{demo}"), folded(&hundredths(&json))));
    }
}

#[test]
fn drawings_of_the_demo_bodies() {
    for demo in DEMOS {
        let (svg, _) = drafted(demo, "drawings");
        in_the_folder(|| insta::assert_snapshot!(format!("drawing_{demo}"), hundredths(&svg)));
    }
}

/// The picture of the README is the fit sheet's, kept whole so that a browser shows it.
#[test]
fn picture_of_the_readme() {
    let (order, _) = Order::read(&demo("stroke").expect("a demo")).expect("a sound demo");
    let (draft, report) = fit::drafted(&order, &load("classic").expect("a recipe")).expect("a body");
    let picture = draft_picture(&Subject { draft: &draft, report: &report, unit: Unit::Cm });
    let svg = picture.to_svg(SvgScale::FitsScreen);
    in_the_folder(|| insta::assert_binary_snapshot!("picture_stroke.svg", svg.into_bytes()));
    let readme = include_str!("../../README.md");
    assert!(readme.contains("snapshots/picture_stroke.snap.svg"));
}

/// The text with no number longer than two decimals: what a person reads, and the same on every machine.
fn hundredths(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(at) = rest.find(|letter: char| letter.is_ascii_digit()) {
        let digits = rest[at..].find(|letter: char| !letter.is_ascii_digit() && letter != '.');
        let end = digits.map_or(rest.len(), |length| at + length);
        let number = &rest[at..end];
        out.push_str(&rest[..at]);
        match number.split_once('.') {
            Some((_, decimals)) if decimals.len() > 2 && !decimals.contains('.') => {
                let short = format!("{:.2}", number.parse::<f64>().expect("digits and a point"));
                let short = short.trim_end_matches('0').trim_end_matches('.');
                if short == "0" && out.ends_with('-') {
                    out.pop();
                }
                out.push_str(short);
            }
            _ => out.push_str(number),
        }
        rest = &rest[end..];
    }
    out + rest
}

/// JSON with small tables and lists on one line each, for a person to review.
fn folded(json: &str) -> String {
    const COLUMNS: usize = 110;
    let lines: Vec<&str> = json.lines().collect();
    let indent = |line: &str| line.len() - line.trim_start().len();
    let (mut out, mut at) = (String::with_capacity(json.len()), 0);
    while at < lines.len() {
        let line = lines[at];
        let opens = line.ends_with(['[', '{']);
        let end = (at + 1..lines.len()).find(|next| opens && indent(lines[*next]) == indent(line));
        let whole = end.map(|end| {
            let inner: Vec<&str> = lines[at + 1..=end].iter().map(|line| line.trim()).collect();
            format!("{line} {}", inner.join(" "))
        });
        match (whole, end) {
            (Some(whole), Some(end)) if whole.len() <= COLUMNS => {
                out.push_str(&whole);
                at = end;
            }
            _ => out.push_str(line),
        }
        out.push('\n');
        at += 1;
    }
    out
}

#[test]
fn numbers_shortened_to_what_a_person_reads() {
    assert_eq!(
        hundredths("M 1.23456 -0.0004 L 12 3.999 (1/16 hip + 0.5)"),
        "M 1.23 0 L 12 4 (1/16 hip + 0.5)"
    );
}

#[test]
fn small_lists_folded() {
    assert_eq!(folded("{\n  \"a\": [\n    1,\n    2\n  ]\n}\n"), "{ \"a\": [ 1, 2 ] }\n");
}
