//! A published draft written as a recipe without a line of code for it, held against every number its source states.
//!
//! Source: I. Rosenfeld, *The Practical Designer for Women's and Misses' Underwear*, New York 1918 (public domain by age):
//! lesson 427, woman's tight-fitting drawers, front part, whose upper part is drawn as in lesson 411, woman's bloomers,
//! front part. Read at <https://en.m.wikisource.org/wiki/The_Practical_Designer_for_Women%27s_and_Misses%27_Underwear>
//! (pages `/Woman's_Tight-fitting_Drawers,_Front_Part` and `/Woman's_Bloomers_or_Knickerbockers,_Front_Part`).
#![allow(clippy::unwrap_used, reason = "a test that cannot go on says so by panicking")]

use breeks::{
    curve::Bend,
    mistake::Source,
    recipe::{Construction, Inputs, Recipe},
    terms::Measurement,
    unit::CM_PER_INCH,
};
use kurbo::Point;

/// The source rounds to an eighth of an inch.
const AN_EIGHTH: f64 = 1.0 / 8.0;
const EXACT: f64 = 1e-9;

/// The measurements that the lesson gives, in inches.
fn inputs() -> Inputs {
    let mut inputs = Inputs::default();
    for (measurement, inches) in [
        (Measurement::OutsideLeg, 41.0),
        (Measurement::BodyRise, 12.0),
        (Measurement::WaistGirth, 25.0),
        (Measurement::HipGirth, 43.0),
        (Measurement::KneeGirth, 13.0),
        (Measurement::CalfGirth, 15.0),
        (Measurement::AnkleGirth, 12.0),
    ] {
        inputs.measurements[measurement] = Some(inches * CM_PER_INCH);
    }
    inputs
}

fn recipe() -> Recipe {
    let source = Source::new("rosenfeld.toml", include_str!("published/rosenfeld.toml"));
    Recipe::parse(&source).unwrap_or_else(|mistakes| panic!("{mistakes}"))
}

fn made() -> (Recipe, Construction) {
    let recipe = recipe();
    let made = recipe.construct(&inputs()).unwrap_or_else(|mistake| panic!("{mistake}"));
    (recipe, made)
}

#[test]
fn stated_inches_between_the_points() {
    let (recipe, made) = made();
    let at = |name: &str| made.points[recipe.point(name).unwrap().0];
    let stated = [
        ("A", "B", 12.0, EXACT),
        ("A", "G", 41.0, EXACT),
        ("B", "H", 10.75, EXACT),
        // a sixth of 21 1/2, which the source rounds
        ("H", "I", 3.625, AN_EIGHTH / 2.0),
        ("R", "O", 6.25, EXACT),
        ("O", "P", 2.0, EXACT),
        ("P", "Q", 0.5, EXACT),
        ("R", "X", 0.5, EXACT),
        ("B", "U", 1.5, EXACT),
        ("M", "N", 0.5, EXACT),
        ("C", "E", 6.0, EXACT),
        ("V", "1", 3.25, EXACT),
        ("V", "2", 3.25, EXACT),
        ("W", "3", 3.75, EXACT),
        ("W", "4", 3.75, EXACT),
        ("T", "5", 3.0, EXACT),
        ("T", "6", 3.0, EXACT),
    ];
    for (from, to, inches, within) in stated {
        let found = at(from).distance(at(to)) / CM_PER_INCH;
        assert!((found - inches).abs() <= within, "{from} to {to}: {found:.4} inches, stated {inches}");
    }
    assert!((at("H").distance(at("J")) - at("H").distance(at("I"))).abs() < EXACT);
    let middle = 0.5 * (at("B").y + at("G").y);
    assert!((middle - at("C").y - 2.0 * CM_PER_INCH).abs() < EXACT, "C is 2 inches above the middle");
    assert!((at("S").x - 0.5 * (at("B").x + at("I").x)).abs() < EXACT);
}

#[test]
fn front_curve_through_its_guide() {
    let (recipe, made) = made();
    let at = |name: &str| made.points[recipe.point(name).unwrap().0];
    let (j, i, n): (Point, Point, Point) = (at("J"), at("I"), at("N"));
    let bend = Bend::between(j, (0.0, 1.0).into(), i, (1.0, 0.0).into(), 0.6).unwrap();
    assert!(bend.through(n).is_some(), "{n:?} lies in the triangle of {j:?} and {i:?}");
}

#[test]
fn front_without_a_back_constructed_but_not_drafted() {
    let recipe = std::sync::Arc::new(recipe());
    assert!(recipe.back.is_none());
    for (size, outcome) in breeks::trial::try_on(&recipe) {
        let missing_only = match &outcome {
            breeks::trial::Outcome::ConstructedOnly => true,
            // the spread estimates no outside leg where nothing of the kind was measured
            breeks::trial::Outcome::Broken(mistakes) => mistakes.to_string().contains("outside_leg"),
            _ => false,
        };
        assert!(missing_only, "{}: {outcome:?}", size.label);
    }
}
