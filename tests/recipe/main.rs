//! Recipes: their rules against closed forms, their words, and everything that can be wrong with one.

mod any_text;
mod book;
mod copied;
mod mistakes;
mod page;
mod panels;
mod proportion;
mod rules;
mod sayable;
mod shipped;
mod words;

use breeks::{
    mistake::Source,
    recipe::{Construction, Inputs, Recipe},
    terms::{EnumMap, Measurement},
};
use kurbo::Point;

/// A small sound recipe; tests put a slip or a step of their own into it.
const SOUND: &str = include_str!("sound.toml");

/// The sound recipe with one place of its text replaced.
fn sound_but(place: &str, slip: &str) -> String {
    assert_eq!(SOUND.matches(place).count(), 1, "`{place}` stands once in the sound recipe");
    SOUND.replace(place, slip)
}

/// The sound recipe with more steps at the end.
fn sound_with(steps: &str) -> Recipe {
    read(&sound_but("    # further steps", steps))
}

fn read(text: &str) -> Recipe {
    Recipe::parse(&Source::new("drafts/sound.toml", text)).unwrap_or_else(|mistakes| panic!("{mistakes}"))
}

/// A body of round numbers, for easy sums.
fn body() -> Inputs {
    let mut inputs = Inputs::default();
    for (measurement, cm) in [
        (Measurement::WaistGirth, 80.0),
        (Measurement::HipGirth, 96.0),
        (Measurement::WaistToHip, 20.0),
        (Measurement::BodyRise, 28.0),
        (Measurement::InsideLeg, 76.0),
    ] {
        inputs.measurements[measurement] = Some(cm);
    }
    inputs.style = EnumMap::from_array([Some(22.0), Some(20.0), Some(2.0), Some(0.0)]);
    inputs
}

fn carry_out(recipe: &Recipe) -> Construction {
    recipe.construct(&body()).unwrap_or_else(|mistake| panic!("{mistake}"))
}

/// Where the recipe puts a point on the body of round numbers.
fn place(recipe: &Recipe, point: &str) -> Point {
    carry_out(recipe).points[recipe.point(point).unwrap_or_else(|| panic!("no point {point}")).0]
}

/// A snapshot in the folder that holds them all.
fn snapshot(name: &str, text: &str) {
    let mut settings = insta::Settings::clone_current();
    settings.set_snapshot_path(concat!(env!("CARGO_MANIFEST_DIR"), "/snapshots"));
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(|| insta::assert_snapshot!(name, text));
}
