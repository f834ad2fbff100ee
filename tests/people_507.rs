//! The estimating equations on people who were not surveyed for them.
//!
//! G. Heinz, L. J. Peterson, R. W. Johnson, C. J. Kerk, "Exploring Relationships in Body Dimensions", Journal of
//! Statistics Education 11(2), 2003 (see `tests/data/README.md`): 507 civilians, of whom stature, waist and hip girth are
//! given and the girths of the leg compared. The spread beside them is what the equations of the 1988 survey missed among
//! their own people.
#![allow(clippy::unwrap_used, reason = "a body that does not resolve fails the test that asked for it")]

mod people;

use breeks::body::{Body, Given};
use breeks::terms::{Measurement, Sex};
use people::of_507;

/// Measured minus estimated, over the people of a sex: mean, root mean square, and the spread the estimate admits.
fn missed(sex: Sex, target: Measurement, inputs: &[Measurement]) -> (f64, f64, f64) {
    let (mut sum, mut squares, mut admitted, mut count) = (0.0, 0.0, 0.0, 0.0);
    for person in of_507().iter().filter(|person| person.order.body.sex == sex) {
        let whole = &person.order.body;
        let given = inputs
            .iter()
            .fold(Given::new(sex, whole.waist_level), |given, m| given.with(*m, whole.cm(*m).unwrap()));
        let (body, _) = Body::resolve(&given).unwrap();
        let estimate = body.value(target).unwrap();
        let miss = whole.cm(target).unwrap() - estimate.cm;
        sum += miss;
        squares += miss * miss;
        admitted += estimate.sd;
        count += 1.0;
    }
    (sum / count, (squares / count).sqrt(), admitted / count)
}

/// Bias and error that the reference found for the equations from stature and hip, by target: women, men, in cm.
const FOUND: [(Measurement, [(f64, f64); 2]); 4] = [
    (Measurement::ThighGirth, [(0.0, 2.1), (-2.5, 3.8)]),
    (Measurement::KneeGirth, [(-1.1, 1.9), (-1.4, 2.1)]),
    (Measurement::CalfGirth, [(0.0, 1.9), (-0.4, 2.1)]),
    (Measurement::AnkleGirth, [(0.7, 1.3), (1.0, 1.7)]),
];

#[test]
fn leg_girths_from_stature_waist_and_hip() {
    println!("measured minus estimated, cm       bias    rms   survey");
    for (target, found) in FOUND {
        for (sex, (bias, error)) in [Sex::Female, Sex::Male].into_iter().zip(found) {
            let inputs = [Measurement::Stature, Measurement::WaistGirth, Measurement::HipGirth];
            let (mean, rms, spread) = missed(sex, target, &inputs);
            println!(
                "  {:14} {:14} {mean:8.2} {rms:6.2} {spread:8.2}",
                format!("{target}"),
                format!("{sex}")
            );
            // the waist as a further input shifts them a little
            assert!((mean - bias).abs() < 0.5, "{target} {sex}: bias {mean}, expected {bias}");
            assert!(rms < error + 0.3, "{target} {sex}: rms {rms}, expected {error}");
        }
    }
}

#[test]
fn knee_and_ankle_surer_from_the_girths_beside_them() {
    println!("measured minus estimated, cm       bias    rms   survey");
    for sex in [Sex::Female, Sex::Male] {
        let three = [Measurement::Stature, Measurement::WaistGirth, Measurement::HipGirth];
        let more = [&three[..], &[Measurement::ThighGirth, Measurement::CalfGirth]].concat();
        for target in [Measurement::KneeGirth, Measurement::AnkleGirth] {
            let (_, without, _) = missed(sex, target, &three);
            let (mean, rms, spread) = missed(sex, target, &more);
            println!(
                "  {:14} {:14} {mean:8.2} {rms:6.2} {spread:8.2}",
                format!("{target}"),
                format!("{sex}")
            );
            assert!(rms < without + 0.1, "{target} {sex}: {rms} with, {without} without");
        }
    }
}
