//! The measured fit on real people, beside a proportional draft and beside the naive fix that puts everything into the
//! back extension.
//!
//! Source: 985 people of the 1988 US Army Anthropometric Survey (report NATICK/TR-90/032), see `tests/data/README.md`.
#![allow(clippy::unwrap_used, reason = "a recipe or body that does not read fails the test")]

mod people;

use std::collections::BTreeMap;

use breeks::{
    adjust::{Key, Parameters},
    draft::{Draft, Shape, draft, shape},
    fit::{Report, solve},
    recipe::load,
    terms::{Level, Measurement, Sex, WaistLevel},
};
use people::{Person, of_985, quantile};

/// Total crotch ease minus wanted, thigh ease minus the least, and the relative split, of one draft.
struct Met {
    total: f64,
    thigh: f64,
    split: f64,
}

/// The mean back shares of the survey itself, by sex and waist level.
fn mean_share(people: &[Person], sex: Sex) -> f64 {
    let shares: Vec<f64> = people
        .iter()
        .filter(|person| person.order.body.sex == sex)
        .map(|person| {
            let cm = |m| person.order.body.cm(m).unwrap();
            cm(Measurement::BackCrotchLength) / cm(Measurement::TotalCrotchLength)
        })
        .collect();
    shares.iter().sum::<f64>() / shares.len() as f64
}

fn met(draft: &Draft, plain: &Report, parameters: &Parameters, person: &Person, mean: f64) -> Met {
    let drawn: Shape = shape(&draft.plan, parameters);
    let report = Report::of(&draft.plan, parameters, &drawn, &draft.body);
    assert!(report.is_true(), "{}: {:?}", person.id, report.notices());
    let plain = &plain.crotch;
    let cm = |m| person.order.body.cm(m).unwrap();
    let share = cm(Measurement::BackCrotchLength) / cm(Measurement::TotalCrotchLength);
    let wanted_total = cm(Measurement::TotalCrotchLength) + report.crotch.wanted;
    let wanted_back = wanted_total * (plain.back / plain.total() + share - mean);
    let thigh = report.levels.iter().find(|row| row.level == Level::Thigh).unwrap();
    Met {
        total: report.crotch.ease().unwrap() - report.crotch.wanted,
        thigh: thigh.ease() - thigh.least,
        split: report.crotch.back - wanted_back,
    }
}

fn per_cent(values: &[f64], within: impl Fn(f64) -> bool) -> f64 {
    100.0 * values.iter().filter(|value| within(**value)).count() as f64 / values.len() as f64
}

#[test]
fn the_985_met_as_measured_at_the_natural_waist() {
    met_as_measured(WaistLevel::Natural);
}

#[test]
fn the_985_met_as_measured_at_the_navel() {
    met_as_measured(WaistLevel::Navel);
}

fn met_as_measured(waist: WaistLevel) {
    let people = of_985(waist);
    let recipe = load("classic").unwrap();
    for sex in [Sex::Female, Sex::Male] {
        let mean = mean_share(&people, sex);
        let (mut drafts, mut solved_with) = (0_usize, 0_usize);
        let mut found: BTreeMap<Key, (Vec<f64>, usize)> = BTreeMap::new();
        let mut ways: BTreeMap<&str, Vec<Met>> = BTreeMap::new();
        for person in people.iter().filter(|person| person.order.body.sex == sex) {
            let draft = draft(&person.order, &recipe).unwrap();
            let plain = Parameters::default();
            let solved = solve(&draft.plan, &draft.body, &plain, |_| false);
            drafts += 1;
            solved_with += solved.drafts;
            for (key, value, at_bound) in &solved.found {
                let entry = found.entry(*key).or_default();
                entry.0.push(*value);
                entry.1 += usize::from(*at_bound);
            }
            let report = Report::of(&draft.plan, &plain, &draft.shape, &draft.body);
            let met = |parameters: &Parameters| met(&draft, &report, parameters, person, mean);
            let proportional = met(&plain);
            let missing = -proportional.total;
            let naive = plain.with(Key::CrotchBackExtension, (missing / 0.75).clamp(-3.0, 5.0));
            ways.entry("proportional").or_default().push(proportional);
            ways.entry("measured").or_default().push(met(&solved.parameters));
            ways.entry("all in the back extension").or_default().push(met(&naive));
        }
        println!(
            "{waist} waist, {sex}: {drafts} people, {:.0} drafts each",
            solved_with as f64 / drafts as f64
        );
        println!(
            "  {:<26} {:>9} {:>9} {:>9} {:>9}",
            "way", "total 0.5", "total 1.5", "thigh ok", "split 1.5"
        );
        for (way, met) in &ways {
            let of = |value: fn(&Met) -> f64| met.iter().map(value).collect::<Vec<_>>();
            println!(
                "  {way:<26} {:>9.1} {:>9.1} {:>9.1} {:>9.1}",
                per_cent(&of(|met| met.total), |miss| miss.abs() <= 0.5),
                per_cent(&of(|met| met.total), |miss| miss.abs() <= 1.5),
                per_cent(&of(|met| met.thigh), |ease| ease >= -1e-6),
                per_cent(&of(|met| met.split), |miss| miss.abs() <= 1.5),
            );
        }
        println!(
            "  {:<26} {:>7} {:>7} {:>7} {:>7} {:>9}",
            "parameter", "mean", "5 %", "median", "95 %", "at bound"
        );
        for (key, (values, at_bound)) in &mut found {
            let mean = values.iter().sum::<f64>() / values.len() as f64;
            let bound = 100.0 * *at_bound as f64 / values.len() as f64;
            let [low, median, high] = [0.05, 0.5, 0.95].map(|part| quantile(values, part));
            println!("  {key:<26} {mean:>7.2} {low:>7.2} {median:>7.2} {high:>7.2} {bound:>7.1} %");
            assert!(mean.abs() <= 0.3, "{waist}, {sex}, {key}: mean {mean:.2}");
            assert!(bound <= 20.0, "{waist}, {sex}, {key}: {bound:.1} per cent at a bound");
        }
        let measured = &ways["measured"];
        let total: Vec<f64> = measured.iter().map(|met| met.total).collect();
        let split: Vec<f64> = measured.iter().map(|met| met.split).collect();
        assert!(per_cent(&total, |miss| miss.abs() <= 0.5) >= 98.0);
        assert!(per_cent(&split, |miss| miss.abs() <= 1.5) >= 85.0);
        for (after, before) in measured.iter().zip(&ways["proportional"]) {
            assert!(
                after.thigh >= -0.05 || after.thigh >= before.thigh - 0.05,
                "{} {}",
                after.thigh,
                before.thigh
            );
        }
    }
}
