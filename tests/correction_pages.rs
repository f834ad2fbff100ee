//! The page on the corrections and its pictures, made from the one table of fit parameters.
//!
//! Page and pictures are made, not written: `REFRESH_PAGES=1 cargo test --test correction_pages` writes them again.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on says so by panicking")]

use std::path::{Path, PathBuf};

use breeks::{
    adjust::{Key, Parameters},
    draft::{Draft, draft, shape},
    drawing::SvgScale,
    order::{Order, demo},
    paper::{READING, by_hand},
    reading::{Shown, corrections_page},
    recipe::load,
    terms::Word,
    unit::Unit,
};

const HEAD: &str = "\
# The corrections

Made from the table of fit parameters by a test (`REFRESH_PAGES=1 cargo test --test correction_pages`); change the table,
not this page. Each key stands under its region in a measurement file, `[thigh]` then `front = 1.9`, or behind `--set` as
`thigh.front=1.9`. Positive gives room. Lengths are cm on the paper, of one panel of one leg.

Every strip shows the key alone, at an ordinary amount, on the demo body stroke with the block classic and
`fit = \"proportional\"`, as the hand does it with scissors, tape and pencil. How a strip is read:

";

/// So large the page shows a picture: its letters as large as those round it.
const DOTS_PER_CM: f64 = 48.0;

fn stroke() -> Draft {
    let (order, _) =
        Order::read_with(&demo("stroke").unwrap(), &["trousers.fit=proportional".to_owned()]).unwrap();
    draft(&order, &load("classic").unwrap()).unwrap()
}

/// The parameters before and after, and what a reader is told of them.
fn example(key: Key) -> (Parameters, Parameters, String) {
    let about = key.about();
    let unit = about.unit.symbol();
    let plain = Parameters::default();
    match key {
        // A place, not an amount: it shows nothing by itself.
        Key::ThighFrontReach => {
            let opened = plain.with(Key::ThighFront, Key::ThighFront.about().ordinary);
            let words = format!(
                "{key} {} {unit} instead of {}, with {} {} cm",
                about.ordinary,
                about.default,
                Key::ThighFront,
                opened[Key::ThighFront]
            );
            (opened, opened.with(key, about.ordinary), words)
        }
        _ => (plain, plain.with(key, about.ordinary), format!("{key} {} {unit}", about.ordinary)),
    }
}

fn file_of(key: Key) -> String {
    format!("correction-{}.svg", key.key())
}

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).to_owned()
}

/// Writes what was made where that is wanted, and compares it with what is kept.
fn kept(path: &Path, made: &str) {
    if std::env::var_os("REFRESH_PAGES").is_some() {
        std::fs::write(path, made).unwrap();
    }
    let there = std::fs::read_to_string(path).unwrap_or_default();
    assert!(
        there == made,
        "{} is not as the table says; refresh it as the head of this test says",
        path.display()
    );
}

#[test]
fn page_and_pictures_as_the_table_stands() {
    let drawn = stroke();
    let mut all = Vec::new();
    for key in Key::ALL.iter().copied() {
        let (before, after, words) = example(key);
        let parameters = (before, after);
        let (before, after) = (shape(&drawn.plan, &before), shape(&drawn.plan, &after));
        let drawing = by_hand(key, &drawn.plan, &parameters.0, &parameters.1, Unit::Cm).unwrap();
        kept(&root().join("snapshots").join(file_of(key)), &drawing.to_svg(SvgScale::FitsScreen));
        let picture = format!("../snapshots/{}", file_of(key));
        let dots = (DOTS_PER_CM * drawing.bounds.width()).round() as u32;
        all.push(Shown { key, picture, dots, words, before, after });
    }
    let reading: String = READING.iter().map(|rule| format!("- {rule}\n")).collect();
    kept(&root().join("blocks/CORRECTIONS.md"), &format!("{HEAD}{reading}\n{}", corrections_page(&all)));
}
