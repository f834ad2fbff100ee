//! Who follows the printed lesson by hand lands on the points of the JSON.

use breeks::{
    answer::{Answer, Extent},
    order::DEMOS,
    reading::lesson,
    recipe::shipped_names,
    terms::{Edge, Panel, Word},
    unit::Unit,
};
use kurbo::{ParamCurveNearest, Point, Vec2};
use serde_json::Value;

use crate::{
    follow::{Paper, follow},
    subjects::Taught,
};

/// The bent lines led through the printed marks lie on the trued block, and every sum comes out as printed.
#[test]
fn curves_of_every_recipe_followed_in_both_units() {
    /// A pencil's line, cm; and how near a point comes: half of the last figure that is printed, both ways.
    const CURVE: f64 = 0.15;
    let mut worst = [(0.0, String::new()), (0.0, String::new())];
    for block in shipped_names() {
        for demo in DEMOS {
            let taught = Taught::demo(demo, block, &[]);
            let plain = taught.made.legs.first.draft.plain();
            for (index, unit) in [Unit::Cm, Unit::Inch].into_iter().enumerate() {
                let paper = follow(&lesson(&taught.subject(unit)).to_html(), unit);
                assert!(paper.exact > 30, "{block} on {demo}: only {} sums", paper.exact);
                let mut lines = 0;
                for panel in Panel::ALL {
                    let shape = plain.shape.panel(*panel);
                    for (name, edge) in [
                        ("crotch curve", Edge::CrotchSeam),
                        ("inseam above the knee", Edge::Inseam),
                        ("side seam above the hip", Edge::SideSeam),
                        ("side seam from hip to knee", Edge::SideSeam),
                        ("waist", Edge::Waist),
                    ] {
                        let drawn = led(&paper, panel.key(), name, unit);
                        let curve = shape.edge(edge).to_path();
                        for place in drawn {
                            let off = curve
                                .segments()
                                .map(|piece| piece.nearest(place, 1e-6).distance_sq.sqrt())
                                .fold(f64::INFINITY, f64::min);
                            assert!(off < CURVE, "{block} on {demo}, {unit}: {panel} {name} off by {off:.3}");
                            if off > worst[index].0 {
                                worst[index] = (off, format!("{block} on {demo}: {panel} {name}"));
                            }
                            lines += 1;
                        }
                    }
                }
                assert!(lines > 200, "{block} on {demo}: only {lines} places");
                // Constructed by the rules alone, in either unit.
                let made = &taught.made.legs.first.draft;
                for (point, at) in &paper.points {
                    let id = made.recipe.point(&point.replace(' ', "_")).expect("a point of the recipe");
                    let wanted = made.plan.construction.points[id.0] - made.plan.construction.points[0];
                    let at = at.map(|own| unit.to_cm(own));
                    let off = (at[0] - wanted.x).hypot(at[1] - wanted.y);
                    assert!(off < 0.05, "{block} on {demo}, {unit}: {point} off by {off:.3}");
                }
            }
        }
    }
    println!(
        "farthest from the block: in cm {:.3} ({}), in inches {:.3} ({})",
        worst[0].0, worst[0].1, worst[1].0, worst[1].1
    );
}

/// A bent line through its marks, in cm: places all along it, led smoothly from mark to mark.
fn led(paper: &Paper, panel: &str, name: &str, unit: Unit) -> Vec<Point> {
    let (ends, marks) = &paper.bent[&(panel.to_owned(), name.to_owned())];
    let place = |role: &String| {
        let [x, y] = paper.trued[&(panel.to_owned(), role.clone())].2;
        Point::new(unit.to_cm(x), unit.to_cm(y))
    };
    let (from, to) = (place(&ends[0]), place(&ends[1]));
    let along = (to - from) / from.distance(to);
    // Outwards is away from the middle of the leg.
    let square = Vec2::new(-along.y, along.x);
    let away = from.midpoint(to) - Point::new(0.0, 50.0);
    let out = if square.dot(away) < 0.0 { -square } else { square };
    let mut line = vec![from];
    line.extend(marks.iter().map(|[far, off]| from + along * unit.to_cm(*far) + out * unit.to_cm(*off)));
    line.push(to);
    let mut places = Vec::new();
    for at in 0..line.len() - 1 {
        // Over a dart the waist is not drawn: marks that lie apart are not joined.
        if name == "waist" && line[at].distance(line[at + 1]) > 2.2 {
            continue;
        }
        let (a, b) = (line[at.saturating_sub(1)], line[at]);
        let (c, d) = (line[at + 1], line[(at + 2).min(line.len() - 1)]);
        for part in [0.0, 0.25, 0.5, 0.75] {
            let (t, s): (f64, f64) = (part, 1.0 - part);
            // A curve through b and c that leaves each towards its neighbours.
            let (u, v) = ((c - a) / 6.0, (d - b) / 6.0);
            let sweep = b.to_vec2() * s.powi(3)
                + (b + u).to_vec2() * (3.0 * s * s * t)
                + (c - v).to_vec2() * (3.0 * s * t * t)
                + c.to_vec2() * t.powi(3);
            places.push(sweep.to_point());
        }
    }
    places
}

/// A printed figure is right to half of a hundredth, cm.
const PRINTED: f64 = 0.0051;

/// Follows the lesson and compares every point of both panels. Returns how many figures of the lesson agreed.
fn lands_on_the_json(taught: &Taught) -> usize {
    let paper = follow(&lesson(&taught.subject(Unit::Cm)).to_html(), Unit::Cm);
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
        let paper = follow(&lesson(&taught.subject(Unit::Cm)).to_html(), Unit::Cm);
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
