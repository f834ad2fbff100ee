//! Whether the measurement that is wrong is the one that is named, on real people.
//!
//! 507 civilians: G. Heinz, L. J. Peterson, R. W. Johnson, C. J. Kerk, "Exploring Relationships in Body Dimensions",
//! Journal of Statistics Education 11(2), 2003. Where the reference folder is beside this one, 985 people of the 1988
//! survey of United States Army people too (C. C. Gordon and others, report NATICK/TR-89/044).

#[path = "data/survey.rs"]
mod survey;

use breeks::body::{Grade, doubts};
use breeks::terms::{Measurement, Word};
use survey::Person;

/// How much one measurement is falsified by, in standard deviations among people of that sex.
const FALSIFIED_BY: f64 = 4.0;

/// Falsifies every measurement of every person up and down; prints and returns how often it was named first.
fn named_first(people: &[Person], title: &str) -> f64 {
    println!("\n{title}: falsified by 4 sd, named first, per cent");
    let (mut all, mut hits) = (0, 0);
    for &m in Measurement::ALL {
        let (mut tried, mut named) = (0, 0);
        for person in people {
            let (Some(cm), Some(sd)) = (person.given.cm(m), survey::sd(people, person.given.sex, m)) else {
                continue;
            };
            for sign in [-1.0, 1.0] {
                let falsified = person.given.clone().with(m, cm + sign * FALSIFIED_BY * sd);
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
fn noted_as_they_are(people: &[Person], title: &str) -> f64 {
    let grades: Vec<Option<Grade>> =
        people.iter().map(|person| doubts(&person.given).first().and_then(|doubt| doubt.grade())).collect();
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
    let people = survey::people_507();
    assert!(named_first(&people, "507") >= 0.8);
}

#[test]
fn few_warnings_about_the_507_as_they_are() {
    assert!(noted_as_they_are(&survey::people_507(), "507") < 0.15);
}

#[test]
fn falsified_measurement_of_the_985_named_first() {
    for level in survey::LEVELS {
        let Some(people) = survey::people_985(level) else { return };
        let title = format!("985, {level}");
        assert!(named_first(&people, &title) >= 0.8);
        noted_as_they_are(&people, &title);
    }
}

#[test]
fn falsified_measurement_of_the_985_without_sex_named_first() {
    let Some(mut people) = survey::people_985(survey::LEVELS[0]) else { return };
    for person in &mut people {
        person.given.sex = breeks::terms::Sex::Unsaid;
    }
    assert!(named_first(&people, "985, natural, sex unsaid") >= 0.8);
}
