//! Whether the measurement that is wrong is the one that is named, on real people.
//!
//! 507 civilians: G. Heinz, L. J. Peterson, R. W. Johnson, C. J. Kerk, "Exploring Relationships in Body Dimensions",
//! Journal of Statistics Education 11(2), 2003. 985 people of the 1988 survey of United States Army people (C. C. Gordon
//! and others, report NATICK/TR-90/032). Both lie in `tests/data`.
#![allow(clippy::unwrap_used, reason = "what cannot be read fails the test")]

mod people;

use breeks::body::{Given, Grade, doubts, faults};
use breeks::terms::{Measurement, Sex, WaistLevel, Word};
use people::{of_507, of_507_at, of_985};

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

/// How often people as they are get a note or a warning; returns the share with either.
fn told_as_they_are(people: &[Given], title: &str) -> f64 {
    let grades: Vec<Option<Grade>> =
        people.iter().map(|person| doubts(person).first().and_then(|doubt| doubt.grade())).collect();
    let share = |grade| grades.iter().filter(|g| **g == Some(grade)).count() as f64 / people.len() as f64;
    let (note, warning) = (share(Grade::Note), share(Grade::Warning));
    for &m in Measurement::ALL {
        let named = |person: &&Given| doubts(person).first().is_some_and(|doubt| doubt.measurement == m);
        let count = people.iter().filter(named).count();
        if count > 0 {
            println!("  {:20} {:6.1}", m.key(), 100.0 * count as f64 / people.len() as f64);
        }
    }
    println!(
        "\n{title}: as they are, {:.1} per cent get a note and {:.1} a warning first",
        100.0 * note,
        100.0 * warning
    );
    note + warning
}

/// One measurement 10 cm wrong, everything else true: shares of it named first or refused, and of another named first.
fn slipped_by_10_cm(people: &[Given], title: &str) -> (f64, f64) {
    let (mut tried, mut right, mut other) = (0, 0, 0);
    for &m in Measurement::ALL {
        let (before, told_before) = (tried, right);
        for person in people {
            let Some(cm) = person.cm(m) else { continue };
            for by in [-10.0, 10.0] {
                let slipped = person.clone().with(m, cm + by);
                tried += 1;
                let named = doubts(&slipped).first().map(|doubt| doubt.measurement);
                let told = !faults(&slipped).is_empty() || named == Some(m);
                right += i32::from(told);
                other += i32::from(!told && named.is_some());
            }
        }
        if tried > before {
            let share = 100.0 * f64::from(right - told_before) / f64::from(tried - before);
            println!("  {:20} {share:6.1}", m.key());
        }
    }
    let [right, other] = [right, other].map(|count| f64::from(count) / f64::from(tried));
    println!(
        "{title}: 10 cm wrong, named or refused {:.1} per cent, another named {:.1}",
        100.0 * right,
        100.0 * other
    );
    (right, other)
}

#[test]
fn falsified_measurement_of_the_507_named_first() {
    let people = bodies(of_507());
    assert!(named_first(&people, "507") >= 0.8);
}

#[test]
fn few_of_the_people_as_they_are_told_of() {
    for waist in [WaistLevel::Natural, WaistLevel::Navel] {
        let all = |people: Vec<people::Person>| {
            people.into_iter().map(|person| person.order.body).collect::<Vec<_>>()
        };
        assert!(told_as_they_are(&all(of_507_at(waist)), &format!("507, {waist}")) < 0.08);
        assert!(told_as_they_are(&all(of_985(waist)), &format!("985, {waist}")) < 0.08);
    }
}

/// A waist 10 cm wrong is hardly ever told: people of one hip differ by as much. All other slips among seven are, in 9 of 10.
#[test]
fn slip_of_10_cm_named_or_refused() {
    for (waist, least) in [(WaistLevel::Natural, 0.77), (WaistLevel::Navel, 0.8)] {
        let people = bodies(of_985(waist));
        let (right, other) = slipped_by_10_cm(&people, &format!("985, {waist}, everything measured"));
        assert!(right >= 0.9 && other < 0.05, "{right} {other}");
        let (right, other) = slipped_by_10_cm(&few(&people), &format!("985, {waist}, seven measurements"));
        assert!(right >= least && other < 0.05, "{right} {other}");
    }
}

#[test]
fn falsified_measurement_of_the_985_named_first() {
    for level in [WaistLevel::Natural, WaistLevel::Navel] {
        let people = bodies(of_985(level));
        let title = format!("985, {level}");
        assert!(named_first(&people, &title) >= 0.8);
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

/// The same people with what a careful sewist measures, and no more.
fn few(people: &[Given]) -> Vec<Given> {
    const KEPT: [Measurement; 7] = [
        Measurement::WaistGirth,
        Measurement::HipGirth,
        Measurement::Stature,
        Measurement::InsideLeg,
        Measurement::WaistHeight,
        Measurement::ThighGirth,
        Measurement::TotalCrotchLength,
    ];
    let kept = |person: &Given| {
        let empty = Given::new(person.sex, person.waist_level);
        KEPT.iter().fold(empty, |given, m| person.cm(*m).map_or(given.clone(), |cm| given.with(*m, cm)))
    };
    people.iter().map(kept).collect()
}

/// With so few the culprit is often one of two that cannot be told apart; printed, not asserted.
#[test]
fn falsified_measurement_of_the_985_in_a_short_file() {
    let people = bodies(of_985(WaistLevel::Natural));
    named_first(&few(&people), "985, natural, seven measurements");
}
