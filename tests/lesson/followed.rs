//! Who follows the printed lesson by hand lands on the points of the JSON.

use breeks::{
    answer::{Answer, Extent},
    order::DEMOS,
    reading::lesson,
    recipe::shipped_names,
    unit::Unit,
};
use serde_json::Value;

use crate::{follow::follow, subjects::Taught};

/// A printed figure is right to half of a hundredth, cm.
const PRINTED: f64 = 0.0051;

/// Follows the lesson and compares every point of both panels. Returns how many figures of the lesson agreed.
fn lands_on_the_json(taught: &Taught) -> usize {
    let paper = follow(&lesson(&taught.subject(Unit::Cm)).to_html());
    let json = Answer::new(&taught.made, Extent::Whole).to_json();
    let json: Value = serde_json::from_str(&json).expect("JSON");
    let pieces = json["pieces"].as_array().expect("pieces");
    let moves = taught.made.legs.first.draft.parameters.set().count() as f64;
    for piece in pieces.iter().take(2) {
        let panel = piece["panel"].as_str().expect("a panel");
        for (role, at) in piece["points"].as_object().expect("points") {
            let key = (panel.to_owned(), role.replace('_', " "));
            let what = format!("{panel} {role}");
            let (name, constructed, trued) = &paper.trued[&key];
            let own = paper.points[name];
            let finished = paper.finished[&key];
            for axis in [0, 1] {
                let shift = if axis == 0 { paper.crease } else { 0.0 };
                let from_rules = own[axis] - shift;
                assert!(
                    (from_rules - constructed[axis]).abs() < 2.0 * PRINTED + 0.01,
                    "{what}: by the rules {from_rules}, the lesson has {}",
                    constructed[axis]
                );
                let wanted = at[axis].as_f64().expect("a number");
                assert!(
                    (finished[axis] - wanted).abs() < PRINTED,
                    "{what}: finished {}, JSON {wanted}",
                    finished[axis]
                );
                let cut = taught.made.legs.first.draft.shape.front.cut_off.is_some();
                if !(cut && role.ends_with("waist")) {
                    let moved = paper.moved.get(&key).map_or(0.0, |by| by[axis]);
                    let landed = from_rules + (trued[axis] - constructed[axis]) + moved;
                    // Each move that is told, and each that is too small to tell, is half a hundredth off.
                    let rounding = (moves + 5.0) * PRINTED;
                    assert!((landed - wanted).abs() < rounding, "{what}: landed on {landed}, JSON {wanted}");
                }
            }
        }
    }
    paper.agreed
}

#[test]
fn every_recipe_followed_on_every_demo_body() {
    for block in shipped_names() {
        for demo in DEMOS {
            let agreed = lands_on_the_json(&Taught::demo(demo, block, &[]));
            assert!(agreed > 60, "{block} on {demo}: only {agreed} figures were compared");
        }
    }
}

#[test]
fn corrections_followed() {
    let set = [
        "thigh.front=1.9",
        "seat.length=1.5",
        "seat.angle=2",
        "crotch.depth=0.8",
        "waist.raise_back=1.2",
        "leg.knee_in=0.6",
    ];
    for block in ["classic", "jeans"] {
        lands_on_the_json(&Taught::demo("stroke", block, &set));
    }
}

#[test]
fn proportions_alone_followed() {
    lands_on_the_json(&Taught::demo("five", "classic", &["trousers.fit=proportional", "trousers.set=easy"]));
}

/// Every rule that a recipe may follow, in one recipe: followed by hand, printed as a handbook, compared, answered.
#[test]
fn recipe_with_every_rule_followed() {
    let path = format!("{}/tests/recipe/every_rule.toml", env!("CARGO_MANIFEST_DIR"));
    for demo in DEMOS {
        let agreed = lands_on_the_json(&Taught::demo(demo, &path, &[]));
        assert!(agreed > 100, "{demo}: only {agreed} figures were compared");
    }
    let taught = Taught::demo("stroke", &path, &[]);
    // In the other unit every sum has its unit, and nothing is left without words.
    let inches = lesson(&taught.subject(Unit::Inch)).to_html();
    assert!(inches.contains("the arc of ") && inches.contains("Pleat: its middle"));
}

/// A leg in one piece, in inches, its waist trued: the lesson of the book's own draft.
#[test]
fn lesson_of_a_draft_in_inches_made_in_both_units() {
    let path = format!("{}/tests/published/w3.toml", env!("CARGO_MANIFEST_DIR"));
    let taught = Taught::demo("stroke", &path, &[]);
    for unit in [Unit::Cm, Unit::Inch] {
        let html = lesson(&taught.subject(unit)).to_html();
        assert!(html.contains("of the two places the one farther upwards"), "{unit}");
    }
}

/// Drafts as their books print them have rules that no shipped recipe has: diagonals, ladders with steps.
#[test]
fn published_drafts_followed() {
    let style =
        ["trousers.style.hem_width=22", "trousers.style.knee_width=25", "measurements.outside_leg=108.5"];
    for name in ["w1", "w2", "m1"] {
        let path = format!("{}/tests/published/{name}.toml", env!("CARGO_MANIFEST_DIR"));
        let taught = Taught::demo("stroke", &path, &style);
        let paper = follow(&lesson(&taught.subject(Unit::Cm)).to_html());
        let draft = &taught.made.legs.first.draft;
        let made = &draft.plan.construction.points;
        let mut compared = 0;
        for (point, at) in &paper.points {
            let id = draft.recipe.point(&point.replace(' ', "_")).expect("a point of the recipe");
            let wanted = made[id.0] - made[0];
            assert!((at[0] - wanted.x).hypot(at[1] - wanted.y) < 2.0 * PRINTED, "{name} {point}: {at:?}");
            compared += 1;
        }
        assert!(compared > 20, "{name}: only {compared} points");
    }
}
