//! Surveyed people (`tests/data/README.md`): nothing ordinary is found fault with, and no draft is good that is too short.

use std::path::Path;

use breeks::{
    body::Given,
    draft::PanelShape,
    fit::Verdict,
    making::{Made, make},
    order::Order,
    pattern::Wanted,
    recipe::shipped_names,
    terms::{Edge, FitKind, Measurement, Panel, Sex, WaistLevel, Word as _},
};

use crate::dice::Dice;

/// People with everything measured, the crotch length too.
fn people() -> Vec<Given> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/people-985.csv");
    let text = std::fs::read_to_string(path).unwrap();
    let mut lines = text.lines().map(|line| line.split(',').collect::<Vec<_>>());
    let header = lines.next().unwrap();
    let column = |name: &str| header.iter().position(|known| *known == name).unwrap();
    lines
        .map(|row| {
            let sex = if row[column("sex")] == "female" { Sex::Female } else { Sex::Male };
            [
                (Measurement::Stature, "stature"),
                (Measurement::WaistGirth, "waist_girth_natural"),
                (Measurement::HipGirth, "hip_girth"),
                (Measurement::ThighGirth, "thigh_girth"),
                (Measurement::KneeGirth, "knee_girth"),
                (Measurement::CalfGirth, "calf_girth"),
                (Measurement::InsideLeg, "crotch_height"),
                (Measurement::BodyRiseSitting, "waist_height_sitting_natural"),
                (Measurement::TotalCrotchLength, "crotch_length_natural"),
            ]
            .into_iter()
            .fold(Given::new(sex, WaistLevel::Natural), |given, (measurement, name)| {
                given.with(measurement, row[column(name)].parse().unwrap())
            })
        })
        .collect()
}

fn order(body: Given, block: &str, fit: FitKind) -> Order {
    let mut order = Order::of(body);
    order.trousers.block = block.to_owned();
    order.trousers.fit = Some(fit);
    order
}

fn made(order: Order) -> Made {
    make(order, Vec::new(), &Wanted::default()).unwrap_or_else(|mistakes| panic!("{mistakes}"))
}

/// What the judges of shapes say.
const SHAPES: [&str; 8] = [
    "dart-wide",
    "dart-blunt",
    "dart-outside",
    "corner-in-seam",
    "seam-wavy",
    "crotch-tight",
    "grain-outside",
    "cut-inside",
];

/// No piece of a seam is shorter than this, cm: nobody can draw or sew it by itself.
const CRUMB: f64 = 0.05;

fn crumbs(panel: &PanelShape) -> impl Iterator<Item = f64> {
    [Edge::SideSeam, Edge::Inseam, Edge::CrotchSeam]
        .into_iter()
        .flat_map(|edge| panel.edge(edge).cubics())
        .map(breeks::curve::length)
        .filter(|long| *long < CRUMB)
}

#[test]
fn nothing_to_see_on_ordinary_drafts() {
    let people = people();
    let (mut drafts, mut faults) = (0, Vec::new());
    for (index, body) in people.iter().enumerate().step_by(7) {
        let blocks: Vec<&str> = shipped_names().collect();
        let block = blocks[(index / 7) % blocks.len()];
        for fit in [FitKind::Measured, FitKind::Proportional] {
            let made = made(order(body.clone(), block, fit));
            drafts += 1;
            let seen: Vec<_> = made.notices().into_iter().filter(|it| SHAPES.contains(&it.code)).collect();
            faults.extend(
                seen.iter().map(|it| format!("{index} {block} {fit}: {}", it.text(breeks::unit::Unit::Cm))),
            );
            for panel in Panel::ALL {
                let crumbs: Vec<f64> = crumbs(made.legs.first.draft.shape.panel(*panel)).collect();
                if !crumbs.is_empty() {
                    faults.push(format!("{index} {block} {fit}: {panel}: pieces of {crumbs:?} cm"));
                }
            }
        }
    }
    // A wide back turns tighter than a few people's crotch length lets it be called smooth.
    assert!(faults.len() * 100 <= drafts, "{} of {drafts}:\n{}", faults.len(), faults.join("\n"));
}

/// Plausible bodies of which the crotch length is measured, right and wrong, by all recipes and fits: whoever is given a
/// good draft can pull it up. All 8000 with `BREEKS_ROWS`.
#[test]
fn no_draft_good_whose_crotch_seam_is_shorter_than_the_body() {
    let people = people();
    let count = if std::env::var_os("BREEKS_ROWS").is_some() { 8000 } else { 400 };
    let blocks: Vec<&str> = shipped_names().collect();
    let mut dice = Dice::new(17);
    let mut counted = [0; 3];
    for _ in 0..count {
        let mut body = dice.one_of(&people);
        for measurement in [
            Measurement::TotalCrotchLength,
            Measurement::HipGirth,
            Measurement::ThighGirth,
            Measurement::BodyRiseSitting,
        ] {
            let off = dice.between(0.97, 1.03);
            body = changed(&body, measurement, off);
        }
        let fit = dice.one_of(&[FitKind::Measured, FitKind::Proportional, FitKind::Proportional]);
        let made = made(order(body, dice.one_of(&blocks), fit));
        counted[made.verdict() as usize] += 1;
        let crotch = &made.legs.first.report.crotch;
        let ease = crotch.ease().unwrap();
        assert!(
            made.verdict() != Verdict::Good || ease >= (crotch.least - 0.1).max(-1e-6),
            "{}: ease {ease}, least {}",
            made.recipe.name,
            crotch.least
        );
    }
    println!("of {count} bodies good, mind, not to cut: {counted:?}");
    assert!(counted.iter().all(|count| *count > 0), "every verdict is given to somebody: {counted:?}");
}

/// The body with one measurement a little larger or smaller.
fn changed(body: &Given, measurement: Measurement, by: f64) -> Given {
    match body.cm(measurement) {
        Some(cm) => body.clone().with(measurement, cm * by),
        None => body.clone(),
    }
}
