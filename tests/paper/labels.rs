//! No words over other words and none off the sheet, whoever's body it is.

use breeks::{
    drawing::{Drawing, Paper, Sheet, Tiles},
    fit::Verdict,
    paper::{draft_picture, first_page, overlay, wall_drawing},
    recipe::Step,
    terms::Anchor,
    unit::Unit,
};

use crate::subjects::{Drawn, texts, thirty};

/// What is wrong with the words of a picture.
fn faults(drawing: &Drawing) -> Vec<String> {
    let texts: Vec<_> = texts(drawing).into_iter().map(|text| (text, text.footprint())).collect();
    let mut faults = Vec::new();
    for (index, (text, print)) in texts.iter().enumerate() {
        if !drawing.bounds.contains_rect(print.bounds()) {
            faults.push(format!("{}: `{}` is off the sheet", drawing.title, text.words));
        }
        for (other, taken) in &texts[..index] {
            if print.overlaps(taken) {
                faults.push(format!("{}: `{}` lies over `{}`", drawing.title, text.words, other.words));
            }
        }
    }
    faults
}

#[test]
fn no_label_over_another_or_off_the_sheet_on_thirty_bodies() {
    let mut all = Vec::new();
    for drawn in thirty() {
        all.extend(faults(&wall_drawing(&drawn.subject())));
        all.extend(faults(&draft_picture(&drawn.subject())));
    }
    assert!(all.is_empty(), "{} faults:\n{}", all.len(), all.join("\n"));
}

#[test]
fn no_label_over_another_with_parameters_and_warnings() {
    let set = [
        "thigh.front=1.9",
        "seat.length=1.5",
        "waist.raise_back=1.2",
        "crotch.depth=0.8",
        "seat.angle=2",
        "trousers.ease.knee=-3",
        "trousers.style.knee_width=17",
    ];
    let drawn = Drawn::demo("stroke", &set);
    assert_eq!(Verdict::of(&drawn.report.notices()), Verdict::NotToCut);
    let subject = drawn.subject();
    let wall = wall_drawing(&subject);
    let mut all = faults(&wall);
    all.extend(faults(&draft_picture(&subject)));
    all.extend(faults(&overlay(
        &Drawn::demo("stroke", &[]).compared(),
        &drawn.compared(),
        Anchor::Crotch,
        Unit::Cm,
    )));
    for paper in [Paper::A4, Paper::Letter, Paper::A4OrLetter, Paper::A3, Paper::Tabloid] {
        let tiles = Tiles::cut(&wall, Sheet::of(paper)).expect("a sheet");
        all.extend(faults(&first_page(&subject, &tiles, paper)));
    }
    assert!(all.is_empty(), "{}", all.join("\n"));
    let said = texts(&wall).iter().any(|text| text.words.as_str() == "Not to be cut as it stands");
    assert!(said);
}

#[test]
fn no_label_over_another_where_two_bodies_lie_over_each_other() {
    let (old, new) = (Drawn::demo("five", &[]), Drawn::demo("cox", &[]));
    let anchors = [Anchor::Crotch, Anchor::Hip, Anchor::Waist, Anchor::Knee].into_iter();
    let over = |anchor| faults(&overlay(&old.compared(), &new.compared(), anchor, Unit::Inch));
    let all: Vec<String> = anchors.flat_map(over).collect();
    assert!(all.is_empty(), "{}", all.join("\n"));
}

#[test]
fn every_point_of_the_construction_with_its_name() {
    for drawn in breeks::order::DEMOS.iter().map(|name| Drawn::demo(name, &[])) {
        let wall = wall_drawing(&drawn.subject());
        let words: Vec<&str> = texts(&wall).iter().map(|text| text.words.as_str()).collect();
        for step in &drawn.draft.recipe.steps {
            if let Step::Point { entry, .. } = step {
                let name = entry.makes.replace('_', " ");
                assert!(words.iter().any(|words| words.contains(&name)), "{}: {name}", drawn.draft.name);
            }
        }
    }
}
