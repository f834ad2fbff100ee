//! The measured fit on real people.
//!
//! Source: 985 people of the 1988 US Army Anthropometric Survey (report NATICK/TR-90/032, approved for public release; see
//! `tests/data/README.md`). A part of them unless `BREEKS_WHOLE` is set.
#![allow(clippy::unwrap_used, reason = "a recipe or body that does not read fails the test")]

mod people;

#[path = "measured_fit/arc.rs"]
mod arc;
#[path = "measured_fit/estimated.rs"]
mod estimated;
#[path = "measured_fit/hand.rs"]
mod hand;
#[path = "measured_fit/met.rs"]
mod met;
#[path = "measured_fit/split.rs"]
mod split;

use std::sync::Arc;

use breeks::{
    adjust::{Key, Measure},
    draft::Draft,
    fit::{Report, drafted},
    order::Order,
    recipe::{Recipe, load},
    terms::{Measurement, Sex, WaistLevel},
};

/// Some of the people of a sex, with everything measured and the fit left to the program.
fn people(waist: WaistLevel, sex: Sex, every: usize) -> Vec<Order> {
    let whole = std::env::var_os("BREEKS_WHOLE").is_some();
    let all = people::of_985(waist).into_iter().map(|person| person.order);
    all.filter(|order| order.body.sex == sex)
        .step_by(if whole { 1 } else { every })
        .map(|mut order| {
            order.trousers.fit = None;
            order.adjustments.clear();
            order
        })
        .collect()
}

fn classic() -> Arc<Recipe> {
    load("classic").unwrap()
}

fn fitted(order: &Order) -> (Draft, Report) {
    fitted_on(order, &classic())
}

fn fitted_on(order: &Order, recipe: &Arc<Recipe>) -> (Draft, Report) {
    drafted(order, recipe).unwrap_or_else(|mistakes| panic!("{:?}: {mistakes}", order.name))
}

/// Crotch ease beyond what was wanted, on the crotch length that this person has.
fn over(report: &Report, order: &Order) -> f64 {
    report.crotch.total() - order.body.cm(Measurement::TotalCrotchLength).unwrap() - report.crotch.wanted
}

/// The smallest correction that anybody would cut, cm or degrees (design of this project).
fn smallest(key: Key) -> f64 {
    if key.about().unit == Measure::Degrees { 0.5 } else { 0.2 }
}

fn mean(values: &[f64]) -> f64 {
    values.iter().sum::<f64>() / values.len() as f64
}

fn sd(values: &[f64]) -> f64 {
    let mean = mean(values);
    (values.iter().map(|value| (value - mean).powi(2)).sum::<f64>() / (values.len() as f64 - 1.0)).sqrt()
}

fn per_cent(count: usize, of: usize) -> f64 {
    100.0 * count as f64 / of as f64
}
