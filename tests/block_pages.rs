//! The page on what tells the recipes apart, and the pictures of all recipes and of very different bodies.
//!
//! The page is made, not written: `REFRESH_PAGES=1 cargo test --test block_pages` writes it again.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on says so by panicking")]

use std::path::Path;

use breeks::{
    draft::{Draft, draft},
    drawing::SvgScale,
    fit::Report,
    order::{Order, demo},
    paper::draft_picture,
    reading::comparison_page,
    recipe::{load, shipped_names},
    terms::Word,
    told::{Subject, features},
    trial::{SPREAD, Size},
    unit::Unit,
};

const HEAD: &str = "\
# The recipes

Made from the recipes themselves by a test (`REFRESH_PAGES=1 cargo test --test block_pages`); change a recipe, not this
page. Every fraction with the published range it lies in, or the reason for it, stands beside it in the recipe:
`breeks blocks NAME` prints that.

";

fn on_stroke(block: &str) -> Draft {
    let (order, _) = Order::read(&demo("stroke").unwrap()).unwrap();
    draft(&order, &load(block).unwrap()).unwrap()
}

fn on_size(size: &Size, label: &str, block: &str) -> Draft {
    let mut order = Order::of(size.given());
    order.name = Some(label.to_owned());
    draft(&order, &load(block).unwrap()).unwrap()
}

#[test]
fn page_as_the_recipes_stand() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("blocks/README.md");
    let drafts: Vec<Draft> = shipped_names().map(on_stroke).collect();
    let page = format!("{HEAD}{}", comparison_page(&drafts));
    if std::env::var_os("REFRESH_PAGES").is_some() {
        std::fs::write(&path, &page).unwrap();
    }
    let kept = std::fs::read_to_string(&path).unwrap_or_default();
    assert!(
        kept == page,
        "blocks/README.md is not what the recipes say; refresh it as the head of this test says"
    );
}

#[test]
fn every_two_recipes_apart_in_three_rules_at_least() {
    let all: Vec<_> = shipped_names().map(|name| (name, features(&load(name).unwrap()))).collect();
    for (index, (one, features)) in all.iter().enumerate() {
        for (other, others) in &all[index + 1..] {
            let apart = features.iter().zip(others).filter(|(a, b)| a.structural && a.rule != b.rule).count();
            println!("{one} and {other}: {apart} rules");
            assert!(apart >= 3, "{one} and {other}: {apart}");
        }
    }
}

fn keep(name: &str, draft: &Draft) {
    let mut settings = insta::Settings::clone_current();
    settings.set_snapshot_path(concat!(env!("CARGO_MANIFEST_DIR"), "/snapshots"));
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    let report = Report::of(&draft.plan, &draft.parameters, &draft.shape, &draft.body);
    let picture = draft_picture(&Subject { draft, report: &report, unit: Unit::Cm });
    let svg = picture.to_svg(SvgScale::TrueScale);
    settings.bind(|| insta::assert_snapshot!(name, svg));
    // For whoever wants to look at them rather than at their numbers.
    if let Some(folder) = std::env::var_os("PICTURES") {
        let png = picture.to_png(30.0).unwrap();
        std::fs::write(Path::new(&folder).join(format!("{name}.png")), png).unwrap();
    }
}

#[test]
fn six_recipes_on_one_body_as_they_were_looked_at() {
    let all = ["classic", "tailored", "straight", "slim", "jeans", "wide"];
    assert!(shipped_names().eq(all), "a picture for every recipe");
    for name in all {
        keep(&format!("block-stroke-{name}"), &on_stroke(name));
    }
}

#[test]
fn one_recipe_on_six_very_different_bodies_as_they_were_looked_at() {
    for (sex, label, stem) in [
        ("female", "slight and short", "slight-short-woman"),
        ("female", "small waist, full hip", "full-hip-woman"),
        ("female", "very full", "very-full-woman"),
        ("male", "slight and tall", "slight-tall-man"),
        ("male", "waist fuller than the hip", "full-waist-man"),
        ("male", "small waist, strong thighs", "strong-thighs-man"),
    ] {
        let size = SPREAD.iter().find(|size| size.sex.key() == sex && size.label == label).unwrap();
        keep(&format!("block-jeans-{stem}"), &on_size(size, label, "jeans"));
    }
}
