//! What a recipe says beyond its points: roles, ease, style, truing, and to which panel a step belongs.

use breeks::{
    recipe::{BendRule, Recipe},
    terms::{EaseAt, Level, Panel, Role, Sex, Style},
};

use super::{body, read, sound_but, sound_with};

/// A back over the sound front: one quantity and two points of its own.
const BACK: &str = r#"
[back]
crease = "O"
centre_waist = "waist"
side_waist = "side_top"
centre_hip = "centre"
side_hip = "side"
curve_start = "centre"
crotch_point = "back_fork"
side_knee = "side_mid"
inner_knee = "in_mid"
side_hem = "side_low"
inner_hem = "in_low"
vertical = "corner"
bend = { guide = "touch" }
bow = { inseam_above_knee = -1.25 }

[ease]
"#;

const BACK_STEPS: &str = r#"
    { quantity = "more", is = "1/2 extension" },
    { point = "back_fork", from = "fork", fork = "more", down = 0.5 },
    { point = "touch", from = "corner", fork_up = 4 },
    { point = "stray", from = "touch", up = 1 },
    { point = "shoulder", from = "O", up = 40, panel = "front" },
"#;

fn with_back() -> Recipe {
    read(&sound_but("    # further steps\n", BACK_STEPS).replace("\n[ease]\n", BACK))
}

#[test]
fn step_in_the_first_panel_that_needs_it_numbered_there() {
    let recipe = with_back();
    let entry = |makes: &str| {
        let step = recipe.steps.iter().find(|step| step.entry().makes == makes).expect("made");
        (step.entry().panel, step.entry().number)
    };
    assert_eq!(entry("extension"), (Panel::Front, 1));
    assert_eq!(entry("in_mid"), (Panel::Front, 11));
    assert_eq!(entry("more"), (Panel::Back, 1));
    assert_eq!(entry("back_fork"), (Panel::Back, 2));
    assert_eq!(entry("touch"), (Panel::Back, 3));
    assert_eq!(entry("stray"), (Panel::Back, 4), "no role needs it: it goes with the step before");
    assert_eq!(entry("shoulder"), (Panel::Front, 12), "as the recipe says");
}

#[test]
fn panel_with_its_roles_bend_bow_and_vertical() {
    let recipe = with_back();
    let back = recipe.back.as_ref().expect("written");
    assert_eq!(recipe.point_name(back.roles[Role::CrotchPoint]), "back_fork");
    assert_eq!(recipe.point_name(back.vertical), "corner");
    assert_eq!(back.bend, BendRule::Guide(recipe.point("touch").expect("made")));
    assert_eq!(back.bow.inseam_above_knee.as_ref().map(ToString::to_string).as_deref(), Some("-1.25"));
    assert_eq!(recipe.point_name(recipe.front.vertical), "centre", "the centre hip where nothing is said");
    assert_eq!(recipe.front.bow.given().count(), 0);
}

#[test]
fn recipe_without_a_back_carried_out() {
    let recipe = sound_with("");
    assert!(recipe.back.is_none() && recipe.construct(&body()).is_ok());
}

#[test]
fn ease_by_sex_and_its_mean_where_unsaid() {
    let ease = sound_with("").ease;
    assert_eq!([Sex::Female, Sex::Male, Sex::Unsaid].map(|sex| ease.give(EaseAt::Hip, sex)), [4.0, 5.0, 4.5]);
    assert_eq!(ease.within(EaseAt::Hip), Some([3.0, 8.0]));
    assert_eq!((ease.give(EaseAt::Waist, Sex::Female), ease.within(EaseAt::Waist)), (0.0, None));
}

#[test]
fn style_from_the_body_by_sex_and_its_mean_where_unsaid() {
    let recipe = sound_with("");
    let knee = |sex| recipe.style.give(Style::KneeWidth, sex, &body()).map(|width| width.expect("measured"));
    for (sex, width) in [(Sex::Female, 22.6), (Sex::Male, 24.0), (Sex::Unsaid, 23.3)] {
        assert!((knee(sex).expect("given") - width).abs() < 1e-12);
    }
    assert_eq!(recipe.style.give(Style::HemWidth, Sex::Female, &body()), None);
}

#[test]
fn truing_on_unless_the_recipe_says_no() {
    let truing = sound_with("").truing;
    assert!(truing.on && (truing.crossing_tilt - 5f64.to_radians()).abs() < 1e-15);
    let printed = read(&sound_but("crossing_tilt = 5", "true = false")).truing;
    assert!(!printed.on && printed.crossing_tilt == 0.0);
}

#[test]
fn level_lines_found_by_level() {
    let recipe = sound_with("");
    assert_eq!(recipe.level(Level::Waist), Some(0));
    assert_eq!(recipe.level(Level::Knee), recipe.line("knee_line"));
    assert_eq!(recipe.level(Level::Calf), None);
}

#[test]
fn name_of_a_recipe_without_folder_and_ending() {
    assert_eq!(sound_with("").name, "sound");
}
