//! Everything measured: met, by few corrections, none of them idle.

use std::collections::BTreeMap;

use breeks::{
    adjust::Key,
    recipe::{load, shipped_names},
    terms::{Level, Sex, WaistLevel},
};

use super::{fitted_on, over, people, per_cent, smallest};

#[test]
fn people_met_by_few_corrections_at_the_natural_waist() {
    judge("classic, natural waist", &met("classic", WaistLevel::Natural, 5));
}

#[test]
fn people_met_by_few_corrections_at_the_navel() {
    judge("classic, navel waist", &met("classic", WaistLevel::Navel, 5));
}

#[test]
fn people_met_on_every_other_recipe() {
    for block in shipped_names().filter(|name| *name != "classic") {
        let of_all = [WaistLevel::Natural, WaistLevel::Navel].map(|waist| met(block, waist, 20));
        judge(block, &of_all.concat());
    }
}

/// How many people of either sex, how many of them are met, at a limit, and corrections in all.
fn met(block: &str, waist: WaistLevel, every: usize) -> Vec<(usize, usize, usize, usize)> {
    let recipe = load(block).unwrap();
    let mut all = Vec::new();
    for sex in [Sex::Female, Sex::Male] {
        let people = people(waist, sex, every);
        let (mut met, mut at_limit, mut moves) = (0, 0, 0);
        let mut found: BTreeMap<Key, Vec<f64>> = BTreeMap::new();
        for order in &people {
            let (draft, report) = fitted_on(order, &recipe);
            assert!(report.is_true(), "{:?}", order.name);
            met += usize::from(over(&report, order).abs() <= 0.5);
            at_limit += usize::from(draft.notices.iter().any(|notice| notice.code == "fit-at-bound"));
            for it in draft.adjustments.iter().filter(|it| it.is_found()) {
                assert!(
                    it.value.abs() >= smallest(it.key) - 1e-9,
                    "{:?}: {} {}",
                    order.name,
                    it.key,
                    it.value
                );
                found.entry(it.key).or_default().push(it.value);
                moves += 1;
            }
            let tight = |row: &&breeks::fit::LevelRow| row.level == Level::Thigh && row.is_tight();
            assert!(!report.levels.iter().any(|row| tight(&row)), "{:?}: the thigh is tight", order.name);
            let depth = draft.parameters[Key::CrotchDepth];
            assert!(depth.abs() <= 0.3, "{:?}: a measured rise moved by {depth}", order.name);
        }
        let of = people.len();
        let each = moves as f64 / of as f64;
        println!(
            "{block}, {waist} waist, {sex}: {of} people, met within 0.5 cm {:.1} per cent, {each:.2} corrections each, at a limit \
             {:.1} per cent",
            per_cent(met, of),
            per_cent(at_limit, of)
        );
        println!("  {:<26} {:>8} {:>12} {:>8}", "correction", "per cent", "mean amount", "less");
        for (key, values) in &found {
            let size = values.iter().map(|value| value.abs()).sum::<f64>() / values.len() as f64;
            let less = values.iter().filter(|value| **value < 0.0).count();
            let share = per_cent(values.len(), of);
            println!("  {key:<26} {share:>8.1} {size:>12.2} {:>8.1}", per_cent(less, values.len()));
        }
        all.push((of, met, at_limit, moves));
    }
    all
}

/// For all of these people together, as few of them may be too few to tell.
fn judge(title: &str, all: &[(usize, usize, usize, usize)]) {
    let [of, met, at_limit, moves] =
        all.iter().fold([0; 4], |sum, it| [sum[0] + it.0, sum[1] + it.1, sum[2] + it.2, sum[3] + it.3]);
    let each = moves as f64 / of as f64;
    println!(
        "{title}: {of} people, met {:.1} per cent, {each:.2} corrections each, at a limit {:.1}\n",
        per_cent(met, of),
        per_cent(at_limit, of)
    );
    assert!(per_cent(met, of) >= 99.0, "{title}");
    assert!(each <= 4.3, "{title}: {each}");
    assert!(per_cent(at_limit, of) < 8.0, "{title}");
}
