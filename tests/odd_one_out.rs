//! Whether the measurement that is wrong is the one that is named, on real people.
//!
//! 507 civilians: G. Heinz, L. J. Peterson, R. W. Johnson, C. J. Kerk, "Exploring Relationships in Body Dimensions",
//! Journal of Statistics Education 11(2), 2003. 985 people of the 1988 survey of United States Army people (C. C. Gordon
//! and others, report NATICK/TR-90/032). Both lie in `tests/data`.
#![allow(clippy::unwrap_used, reason = "what cannot be read fails the test")]

mod people;

use breeks::body::{Given, Grade, doubts};
use breeks::terms::{Measurement, Sex, WaistLevel, Word};
use people::{of_507, of_985};

fn bodies(people: Vec<people::Person>) -> Vec<Given> {
    /// A part of the people says the same in less time.
    const EVERY: usize = 5;
    people.into_iter().step_by(EVERY).map(|person| person.order.body).collect()
}

/// Standard deviation of a measurement among those of a sex, where it was measured.
fn sd(people: &[Given], sex: Sex, measurement: Measurement) -> Option<f64> {
    let values: Vec<f64> =
        people.iter().filter(|given| given.sex == sex).filter_map(|given| given.cm(measurement)).collect();
    let mean = values.iter().sum::<f64>() / values.len() as f64;
    let variance = values.iter().map(|v| (v - mean).powi(2)).sum::<f64>() / (values.len() as f64 - 1.0);
    (!values.is_empty()).then(|| variance.sqrt())
}

/// How much one measurement is falsified by, in standard deviations among people of that sex.
const FALSIFIED_BY: f64 = 4.0;

/// Falsifies every measurement of every person up and down; prints and returns how often it was named first.
fn named_first(people: &[Given], title: &str) -> f64 {
    println!("\n{title}: falsified by 4 sd, named first, per cent");
    let (mut all, mut hits) = (0, 0);
    for &m in Measurement::ALL {
        let (mut tried, mut named) = (0, 0);
        for person in people {
            let (Some(cm), Some(sd)) = (person.cm(m), sd(people, person.sex, m)) else {
                continue;
            };
            for sign in [-1.0, 1.0] {
                let falsified = person.clone().with(m, cm + sign * FALSIFIED_BY * sd);
                tried += 1;
                named += usize::from(doubts(&falsified).first().is_some_and(|doubt| doubt.measurement == m));
            }
        }
        if tried > 0 {
            println!("  {:20} {:6.1} of {tried}", m.key(), 100.0 * named as f64 / tried as f64);
        }
        all += tried;
        hits += named;
    }
    println!("  {:20} {:6.1} of {all}", "all", 100.0 * hits as f64 / all as f64);
    hits as f64 / all as f64
}

/// How often people as they are get a note or a warning; returns the share with a warning.
fn noted_as_they_are(people: &[Given], title: &str) -> f64 {
    let grades: Vec<Option<Grade>> =
        people.iter().map(|person| doubts(person).first().and_then(|doubt| doubt.grade())).collect();
    let share = |grade| grades.iter().filter(|g| **g == Some(grade)).count() as f64 / people.len() as f64;
    println!(
        "\n{title}: as they are, {:.1} per cent get a note and {:.1} a warning first",
        100.0 * share(Grade::Note),
        100.0 * share(Grade::Warning)
    );
    share(Grade::Warning)
}

#[test]
fn falsified_measurement_of_the_507_named_first() {
    let people = bodies(of_507());
    assert!(named_first(&people, "507") >= 0.8);
}

#[test]
fn few_warnings_about_the_507_as_they_are() {
    assert!(noted_as_they_are(&bodies(of_507()), "507") < 0.08);
}

#[test]
fn falsified_measurement_of_the_985_named_first() {
    for level in [WaistLevel::Natural, WaistLevel::Navel] {
        let people = bodies(of_985(level));
        let title = format!("985, {level}");
        assert!(named_first(&people, &title) >= 0.8);
        noted_as_they_are(&people, &title);
    }
}

#[test]
fn falsified_measurement_of_the_985_without_sex_named_first() {
    let mut people = bodies(of_985(WaistLevel::Natural));
    for person in &mut people {
        person.sex = Sex::Unsaid;
    }
    assert!(named_first(&people, "985, natural, sex unsaid") >= 0.8);
}

/// What most files hold. With so few the culprit is often one of two that cannot be told apart; printed, not asserted.
#[test]
fn falsified_measurement_of_the_985_in_a_short_file() {
    let people = bodies(of_985(WaistLevel::Natural));
    let kept = [
        Measurement::WaistGirth,
        Measurement::HipGirth,
        Measurement::Stature,
        Measurement::InsideLeg,
        Measurement::WaistHeight,
        Measurement::ThighGirth,
        Measurement::TotalCrotchLength,
    ];
    let short: Vec<Given> = people
        .iter()
        .map(|person| {
            kept.iter().fold(Given::new(person.sex, person.waist_level), |given, m| match person.cm(*m) {
                Some(cm) => given.with(*m, cm),
                None => given,
            })
        })
        .collect();
    named_first(&short, "985, natural, seven measurements");
}
