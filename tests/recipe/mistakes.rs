//! Small wrong recipes, each with the whole message that it earns.

use breeks::{
    mistake::Source,
    recipe::{LARGEST_FILE, Recipe},
    terms::{Measurement, Style},
};

use super::{SOUND, body, read, snapshot, sound_but, sound_with};

fn message(text: &str) -> String {
    match Recipe::parse(&Source::new("drafts/sound.toml", text)) {
        Ok(_) => panic!("nothing found wrong with\n{text}"),
        Err(mistakes) => mistakes.to_string(),
    }
}

/// One test per wrong recipe: its name, the place of the sound recipe that is replaced, the slip.
macro_rules! slips {
    ($($name:ident: $place:expr => $slip:expr;)+) => {
        $(#[test]
        fn $name() {
            snapshot(concat!("recipe_mistake_", stringify!($name)), &message(&sound_but($place, $slip)));
        })+
    };
}

slips! {
    name_misspelt: r#""1/16 hip + 0.5""# => r#""1/16 hipp + 0.5""#;
    line_named_too_early: r#""1/2 crotch_line + 1/2 hem_height""# => r#""1/2 crotch_line + 1/2 hem_line""#;
    girth_by_its_long_name: r#"side = "1/4 waist""# => r#"side = "1/4 waist_girth""#;
    quantity_used_before_its_step: r#""1/12 hip + 1", on"# => r#""late + 1", on"#;
    point_taken_for_a_length: r#"side = "1/4 waist""# => r#"side = "1/4 corner""#;
    line_taken_for_a_point: r#"from = "waist", side = "1/4 waist""# => r#"from = "waist_line", side = "1/4 waist""#;
    proportion_without_a_sign: r#""1/16 hip + 0.5""# => r#""1/16 hip 0.5""#;
    proportion_with_a_foreign_sign: r#""1/16 hip + 0.5""# => r#""1/16 * hip""#;
    proportion_cut_short: r#""1/16 hip + 0.5""# => r#""1/16 hip + ""#;
    proportion_divided_by_nought: r#""1/16 hip + 0.5""# => r#""1/0 hip""#;
    proportion_of_another_kind: r#"is = "1/16 hip + 0.5""# => r#"is = true"#;
    number_not_a_number: "belt_width = 4" => "belt_width = nan";
    number_without_end: "length = 9" => "length = -inf";
    point_unknown: r#"from = "corner", fork = "extension""# => r#"from = "cornre", fork = "extension""#;
    point_made_later: r#"from = "corner", fork = "extension""# => r#"from = "side", fork = "extension""#;
    point_made_twice: r#"point = "in_low""# => r#"point = "side_low""#;
    point_name_with_a_space: r#"point = "in_mid""# => r#"point = "in mid""#;
    name_taken_by_the_trade: r#"quantity = "extension""# => r#"quantity = "hip""#;
    line_unknown: r#"from = "centre", side = "1/4 hip""# => r#"from = "centre", on = "hips_line""#;
    key_unknown: "fullness = 0.6" => "fulness = 0.6";
    table_unknown: "[style]" => "[styles]";
    role_missing: "curve_start = \"centre\"\n" => "";
    level_missing: r#"hip_line = "waist_to_hip""# => r#"seat_line = "waist_to_hip""#;
    rules_mixed: r#"toward = "in_low", part = "1/2""# => r#"toward = "in_low", part = "1/2", side = 2"#;
    two_ways_across: r#"from = "waist", side = "1/4 waist""# => r#"from = "waist", side = 1, fork = 1"#;
    two_heights: r#"from = "side", on = "hem_line""# => r#"from = "side", up = 1, on = "hem_line""#;
    nowhere_to_go: r#"from = "waist", side = "1/4 waist""# => r#"from = "waist""#;
    point_and_quantity_at_once: r#"quantity = "extension","# => r#"quantity = "extension", point = "P","#;
    ladder_not_rising: r#"is = "1/16 hip + 0.5""# => r#"by = "hip", rungs = [[88, 3], [88, 4]], between = "ramp""#;
    ladder_of_one_rung: r#"is = "1/16 hip + 0.5""# => r#"by = "hip", rungs = [[88, 3]], between = "step""#;
    ladder_between_unknown: r#"is = "1/16 hip + 0.5""# => r#"by = "hip", rungs = [[88, 3], [99, 4]], between = "rampe""#;
    part_out_of_sense: r#"part = "1/2""# => r#"part = "half""#;
    line_through_one_point: r#"line = ["side", "side_low"]"# => r#"line = ["side", "side"]"#;
    bend_too_full: "fullness = 0.6" => "fullness = 1.2";
    style_line_with_one_end: "bend = { fullness = 0.6 }" => "bend = { fullness = 0.6 }\nline = [[\"waist\"]]";
    style_line_to_an_unknown_point: "bend = { fullness = 0.6 }" => "bend = { fullness = 0.6 }\nline = [[\"waist\", \"sidde\"]]";
    ease_outside_its_own_range: "within = [3, 8]" => "within = [6, 8]";
    style_from_a_line: r#"women = "1/10 hip + 13""# => r#"women = "crotch_line + 13""#;
    tilt_too_great: "crossing_tilt = 5" => "crossing_tilt = 60";
    text_with_a_control_character: r#"title = "A sound recipe""# => r#"title = "A \u001b[31msound recipe""#;
    not_toml: r#"point = "in_low","# => r#"point = in_low,"#;
    start_missing: "start = \"O\"\n" => "";
    several_at_once: "[front]\ncrease = \"O\"\ncentre_waist = \"waist\"" => "[front]\ncentre_waist = \"waste\"\ncrese = \"O\"";
}

#[test]
fn later_quantity_told_from_an_unknown_one() {
    let early = sound_but(r#"side = "1/4 hip""#, r#"side = "late""#);
    let text = early.replace("    # further steps\n", "{ quantity = \"late\", is = 3 },\n");
    snapshot("recipe_mistake_quantity_made_later", &message(&text));
}

#[test]
fn text_that_is_no_recipe_never_quoted() {
    for text in ["root:x:0:0:secret", "password = \"secret\"", "", "[lines]\nsecret = 3", "\u{0}secret\u{7}"]
    {
        let message = message(text);
        assert!(!message.contains("secret"), "{message}");
    }
    snapshot("recipe_mistake_no_recipe", &message("root:x:0:0:secret"));
}

#[test]
fn oversized_text_refused() {
    snapshot("recipe_mistake_oversized", &message(&format!("{SOUND}#{}", "x".repeat(LARGEST_FILE))));
}

#[test]
fn far_too_many_mistakes_counted_instead_of_shown() {
    let steps = "{ point = \"P\", from = \"Q\", up = 1 },\n".repeat(100);
    let message = message(&sound_but("    # further steps\n", &steps));
    assert!(message.ends_with("and 187 more"), "{message}");
}

#[test]
fn missing_measurement_named_at_its_step() {
    let mut inputs = body();
    inputs.measurements[Measurement::InsideLeg] = None;
    let mistake = sound_with("").construct(&inputs).expect_err("a measurement is missing");
    snapshot("recipe_mistake_measurement_missing", &mistake.to_string());
}

#[test]
fn missing_style_named_at_its_step() {
    let mut inputs = body();
    inputs.style[Style::KneeWidth] = None;
    let recipe = sound_with(r#"{ point = "P", from = "O", side = "1/2 knee_width" },"#);
    snapshot("recipe_mistake_style_missing", &recipe.construct(&inputs).expect_err("missing").to_string());
}

#[test]
fn steps_without_an_answer_on_this_body() {
    for (name, steps) in [
        ("too_short", r#"{ point = "P", from = "O", span = 5, on = "hip_line" },"#),
        ("level", r#"{ point = "P", line = ["fork", "corner"], on = "hip_line" },"#),
        (
            "one_place",
            r#"{ point = "twin", from = "O", up = 0 }, { point = "P", from = "O", toward = "twin", past = 3 },"#,
        ),
        ("off_the_paper", r#"{ point = "P", from = "O", up = "900 hip" },"#),
    ] {
        let mistake = sound_with(steps).construct(&body()).expect_err("no answer");
        snapshot(&format!("recipe_no_answer_{name}"), &mistake.to_string());
    }
}

#[test]
fn measurement_that_is_not_finite_refused() {
    for value in [f64::NAN, f64::INFINITY] {
        let mut inputs = body();
        inputs.measurements[Measurement::HipGirth] = Some(value);
        assert!(read(SOUND).construct(&inputs).is_err());
    }
}
