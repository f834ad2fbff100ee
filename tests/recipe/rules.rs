//! Each rule of a step against the sum done by hand on a body of round numbers: hip 96, waist 80, rise 28.

use kurbo::Point;

use super::{body, carry_out, place, read, sound_but, sound_with};

/// The corner: 96/12 + 1 to the fork, on the crotch line.
const CORNER: Point = Point::new(-9.0, 28.0);

fn assert_at(found: Point, x: f64, y: f64) {
    assert!(found.distance(Point::new(x, y)) < 1e-9, "expected {x}, {y}, found {found:?}");
}

#[test]
fn start_on_the_waist_line_at_nought() {
    assert_at(place(&sound_with(""), "O"), 0.0, 0.0);
}

#[test]
fn across_and_up_squared_from_a_point() {
    let recipe = sound_with(r#"{ point = "P", from = "corner", side = "1/24 hip", up = 3 },"#);
    assert_at(place(&recipe, "P"), CORNER.x + 4.0, CORNER.y - 3.0);
    let recipe = sound_with(r#"{ point = "P", from = "corner", fork = 2.5, down = "1/2 extension" },"#);
    assert_at(place(&recipe, "P"), CORNER.x - 2.5, CORNER.y + 3.25);
}

#[test]
fn straight_to_a_level() {
    assert_at(place(&sound_with(""), "centre"), CORNER.x, 20.0);
}

#[test]
fn diagonal_measured_along_the_diagonal() {
    let recipe = sound_with(r#"{ point = "P", from = "corner", fork_up = 3 },"#);
    assert_at(place(&recipe, "P"), CORNER.x - 3.0 / 2f64.sqrt(), CORNER.y - 3.0 / 2f64.sqrt());
}

#[test]
fn part_of_a_distance_between_beyond_and_before() {
    // corner (-9, 28), fork (-15.5, 28)
    for (part, x) in
        [("\"1/3\"", -9.0 - 6.5 / 3.0), ("0.5", -12.25), ("2", -22.0), ("\"-1/2\"", -5.75), ("-0.5", -5.75)]
    {
        let step = format!(r#"{{ point = "P", from = "corner", toward = "fork", part = {part} }},"#);
        assert_at(place(&sound_with(&step), "P"), x, 28.0);
    }
}

#[test]
fn so_far_beyond_a_point() {
    let recipe =
        sound_with(r#"{ point = "P", from = "centre", toward = "corner", past = "1/2 extension" },"#);
    assert_at(place(&recipe, "P"), -9.0, 28.0 + 3.25);
}

#[test]
fn oblique_measure_on_its_level_towards_the_side_or_the_fork() {
    // 8 above the hip line at 20: 3-4-5 gives 10 along, 6 across.
    let at = r#"{ point = "high", from = "centre", up = 8 }, { point = "P", from = "high", span = 10, on = "hip_line""#;
    assert_at(place(&sound_with(&format!("{at} }},")), "P"), CORNER.x + 6.0, 20.0);
    assert_at(place(&sound_with(&format!("{at}, towards = \"fork\" }},")), "P"), CORNER.x - 6.0, 20.0);
}

#[test]
fn line_through_two_points_met_on_a_level_beyond_them() {
    // corner (-9, 28) and centre moved 1 to the side at 20: 1 in 8; at the waist 2.5 beyond.
    let steps = r#"{ point = "lean", from = "centre", side = 1 }, { point = "P", line = ["corner", "lean"], on = "waist_line" },"#;
    assert_at(place(&sound_with(steps), "P"), CORNER.x + 3.5, 0.0);
}

#[test]
fn ladder_in_proportion_by_steps_and_level_beyond_its_ends() {
    let ladder = |rungs: &str, between: &str| {
        let step = format!(r#"{{ quantity = "rung", by = "hip", rungs = {rungs}, between = "{between}" }},"#);
        *carry_out(&sound_with(&step)).quantities.last().expect("made")
    };
    let near = |found: f64, expected: f64| assert!((found - expected).abs() < 1e-12, "{expected} {found}");
    near(ladder("[[88, 3], [104, 4]]", "ramp"), 3.5);
    near(ladder("[[88, 3], [104, 4]]", "step"), 3.0);
    near(ladder("[[88, 3], [96, 3.5], [104, 4]]", "step"), 3.5);
    near(ladder("[[88, 3], [96, 3.5], [104, 4]]", "ramp"), 3.5);
    near(ladder("[[100, 3], [104, 4]]", "ramp"), 3.0);
    near(ladder("[[80, 3], [90, 4]]", "ramp"), 4.0);
}

#[test]
fn ask_with_its_default_and_with_a_given_value() {
    let recipe = sound_with(r#"{ quantity = "drop", is = "belt_width + 1" },"#);
    assert_eq!(carry_out(&recipe).quantities.last(), Some(&5.0));
    let mut inputs = body();
    inputs.asks.insert("belt_width".to_owned(), 3.0);
    assert_eq!(recipe.construct(&inputs).expect("sound").quantities.last(), Some(&4.0));
}

#[test]
fn levels_by_name_with_the_waist_line_first() {
    let recipe = sound_with("");
    assert_eq!(carry_out(&recipe).lines, [0.0, 20.0, 28.0, 104.0, 66.0, 104.0]);
    assert_eq!((recipe.line("waist_line"), recipe.line("hem_line")), (Some(0), Some(5)));
}

#[test]
fn point_of_a_role_the_same_wherever_the_draft_starts() {
    // The same front started from its side instead of its crease: every distance between points is kept.
    let from_side = sound_but(
        r#"from = "O", fork = "1/12 hip + 1", on = "crotch_line" }"#,
        r#"from = "O", fork = "1/12 hip + 21", on = "crotch_line" }"#,
    );
    let (here, there) = (carry_out(&sound_with("")), carry_out(&read(&from_side)));
    for (here, there) in here.points.iter().zip(&there.points).skip(1) {
        assert_at(*there, here.x - 20.0, here.y);
    }
}
