//! Every recipe that comes with the program is read and carried out.

use breeks::{
    recipe::{Inputs, Recipe, shipped, shipped_names},
    terms::{EaseAt, Measurement, Sex, Style, Word},
};

#[test]
fn shipped_recipe_read_and_carried_out_for_both_sexes() {
    for name in shipped_names() {
        let recipe = Recipe::parse(&shipped(name).expect("listed")).unwrap_or_else(|all| panic!("{all}"));
        for sex in [Sex::Female, Sex::Male] {
            let made = recipe.construct(&inputs(&recipe, sex)).unwrap_or_else(|mistake| panic!("{mistake}"));
            assert!(made.points.iter().all(|point| point.is_finite()), "{name}");
        }
    }
}

/// A body in the middle of the sizes (invented).
fn inputs(recipe: &Recipe, sex: Sex) -> Inputs {
    let mut inputs = Inputs::default();
    for (measurement, cm) in [
        (Measurement::WaistGirth, 76.0),
        (Measurement::HipGirth, 100.0),
        (Measurement::WaistToHip, 20.5),
        (Measurement::BodyRise, 28.0),
        (Measurement::InsideLeg, 78.0),
        (Measurement::WaistHeight, 106.0),
        (Measurement::KneeHeight, 47.0),
        (Measurement::KneeGirth, 38.0),
        (Measurement::HeelGirth, 33.0),
    ] {
        inputs.measurements[measurement] = Some(cm);
    }
    for at in EaseAt::ALL {
        inputs.ease[*at] = recipe.ease.give(*at, sex);
    }
    for style in Style::ALL {
        let given = recipe.style.give(*style, sex, &inputs);
        inputs.style[*style] = given.map(|given| given.expect("measured"));
    }
    inputs
}
