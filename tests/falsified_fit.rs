//! Whether a fit that one wrong measurement drove far names that measurement.
//!
//! Source: 985 people of the 1988 US Army Anthropometric Survey (report NATICK/TR-90/032), see `tests/data/README.md`. Front thigh arcs were not surveyed.
#![allow(clippy::unwrap_used, reason = "a recipe or body that does not read fails the test")]

mod people;

use std::sync::Arc;

use breeks::{
    fit::drafted,
    order::Order,
    recipe::{Recipe, load},
    terms::{Measurement, WaistLevel, Word},
};
use people::of_985;

/// By how much one measurement is falsified, up and down, cm.
const FALSIFIED_BY: f64 = 4.0;
/// A part of the people says the same in less time.
const EVERY: usize = 12;

const FALSIFIED: [Measurement; 6] = [
    Measurement::WaistHeight,
    Measurement::InsideLeg,
    Measurement::TotalCrotchLength,
    Measurement::BackCrotchLength,
    Measurement::HipGirth,
    Measurement::ThighGirth,
];

/// What the fit says of this order: nothing, or the measurement that it names first. `None` for a body that cannot be.
fn named(order: &Order, recipe: &Arc<Recipe>) -> Option<Option<String>> {
    let (draft, _) = drafted(order, recipe).ok()?;
    let notice = draft.notices.iter().find(|notice| notice.code == "fit-doubtful");
    Some(notice.map(|notice| notice.text(breeks::unit::Unit::Cm).split('`').nth(1).unwrap().to_owned()))
}

#[test]
fn falsified_measurement_named_by_the_fit() {
    let recipe = load("classic").unwrap();
    for waist in [WaistLevel::Natural, WaistLevel::Navel] {
        let people = of_985(waist);
        let people: Vec<Order> = people.into_iter().step_by(EVERY).map(|person| person.order).collect();
        let untouched =
            people.iter().filter(|order| named(order, &recipe).is_some_and(|it| it.is_some())).count();
        println!("{waist} waist, {} people, one measurement {FALSIFIED_BY} cm wrong, per cent", people.len());
        println!("  {:<20} {:>6} {:>14} {:>8}", "", "told", "right of these", "");
        let (mut all_told, mut all_right) = (0, 0);
        for measurement in FALSIFIED {
            let (mut tried, mut told, mut right, mut refused) = (0, 0, 0, 0);
            for order in &people {
                for by in [-FALSIFIED_BY, FALSIFIED_BY] {
                    let mut order = order.clone();
                    let cm = order.body.cm(measurement).unwrap();
                    order.body = order.body.with(measurement, cm + by);
                    let Some(named) = named(&order, &recipe) else {
                        refused += 1;
                        continue;
                    };
                    tried += 1;
                    told += usize::from(named.is_some());
                    right += usize::from(named.as_deref() == Some(measurement.key()));
                }
            }
            let share = |part: usize, whole: usize| 100.0 * part as f64 / whole.max(1) as f64;
            println!(
                "  {:<20} {:>6.1} {:>14.1} {:>5} refused",
                measurement.key(),
                share(told, tried),
                share(right, told),
                refused
            );
            all_told += told;
            all_right += right;
        }
        let right = all_right as f64 / all_told as f64;
        let untouched = untouched as f64 / people.len() as f64;
        println!(
            "  all: {:.1} right of {all_told} told; told of people as they are: {:.1}",
            100.0 * right,
            100.0 * untouched
        );
        assert!(right >= 0.8, "{waist}: {right:.2}");
        assert!(untouched < 0.12, "{waist}: {untouched:.2}");
    }
}
