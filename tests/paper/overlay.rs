//! Two drafts over each other.

use breeks::{
    drawing::{Drawing, Mark},
    paper::overlay,
    terms::{Anchor, Level},
    unit::Unit,
};
use kurbo::{BezPath, Shape};

use crate::subjects::{Drawn, texts};

/// Without a fit that would take the depth back elsewhere.
const PLAIN: &str = "trousers.fit=proportional";

fn first_lines(drawing: &Drawing) -> [&BezPath; 2] {
    ["Old", "New"].map(|name| {
        let layer = drawing.layers.iter().find(|layer| layer.name.as_str() == name).expect("a layer");
        match &layer.marks[0] {
            Mark::Line { path, .. } => path,
            other => panic!("{other:?}"),
        }
    })
}

#[test]
fn a_draft_over_itself_line_on_line() {
    let drawn = Drawn::demo("five", &[]);
    let picture = overlay(&drawn.compared(), &drawn.compared(), Anchor::Crotch, Unit::Cm);
    let [old, new] = first_lines(&picture);
    assert_eq!(old, new);
}

#[test]
fn a_deeper_crotch_on_the_crotch_line() {
    let (old, new) = (Drawn::demo("five", &[PLAIN]), Drawn::demo("five", &[PLAIN, "crotch.depth=1"]));
    let deeper = new.draft.shape.levels[Level::Crotch] - old.draft.shape.levels[Level::Crotch];
    assert!((deeper - 1.0).abs() < 1e-9);
    let picture = overlay(&old.compared(), &new.compared(), Anchor::Crotch, Unit::Cm);
    let [was, is] = first_lines(&picture).map(Shape::bounding_box);
    // The leg below the crotch line is the same; what is new is that the waist lies higher above it.
    assert!((was.y1 - is.y1).abs() < 1e-6, "{} {}", was.y1, is.y1);
    assert!((was.y0 - is.y0 - 1.0).abs() < 0.1, "{} {}", was.y0, is.y0);
}

#[test]
fn a_deeper_crotch_on_another_line() {
    let (old, new) = (Drawn::demo("five", &[PLAIN]), Drawn::demo("five", &[PLAIN, "crotch.depth=1"]));
    for anchor in [Anchor::Hip, Anchor::Waist] {
        let picture = overlay(&old.compared(), &new.compared(), anchor, Unit::Cm);
        let [was, is] = first_lines(&picture).map(Shape::bounding_box);
        // The waist is the same above the hip line; what is new is that the leg lies lower below it.
        assert!((was.y0 - is.y0).abs() < 0.1, "{anchor}: {} {}", was.y0, is.y0);
        assert!((is.y1 - was.y1 - 1.0).abs() < 1e-6, "{anchor}: {} {}", was.y1, is.y1);
    }
}

#[test]
fn both_names_over_two_bodies() {
    let (old, new) = (Drawn::demo("five", &[]), Drawn::demo("cox", &[]));
    let picture = overlay(&old.compared(), &new.compared(), Anchor::Knee, Unit::Cm);
    let words: Vec<String> = texts(&picture).iter().map(|text| text.words.to_string()).collect();
    for wanted in ["cox over five", "New: cox, block classic.", "Old: five, block classic.", "old waist"] {
        assert!(words.iter().any(|text| text == wanted), "{wanted}: {words:?}");
    }
    assert!(!words.iter().any(|text| text == "old knee"));
}

#[test]
fn old_and_new_told_apart_without_colour() {
    let drawn = Drawn::demo("five", &[]);
    let picture = overlay(&drawn.compared(), &drawn.compared(), Anchor::Crotch, Unit::Cm);
    for layer in &picture.layers {
        for mark in &layer.marks {
            if let Mark::Line { pen, .. } = mark {
                match layer.name.as_str() {
                    "Old" => assert!(!pen.dash.is_empty() && pen.width < 0.04),
                    "New" if pen.dash.is_empty() => assert!(pen.width >= 0.04),
                    _ => {}
                }
            }
        }
    }
}
