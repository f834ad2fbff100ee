//! Everything measured: met, by few corrections, none of them idle.

use std::collections::BTreeMap;

use breeks::{
    adjust::Key,
    terms::{Level, Sex, WaistLevel},
};

use super::{fitted, over, people, per_cent, smallest};

#[test]
fn people_met_by_few_corrections_at_the_natural_waist() {
    met(WaistLevel::Natural);
}

#[test]
fn people_met_by_few_corrections_at_the_navel() {
    met(WaistLevel::Navel);
}

fn met(waist: WaistLevel) {
    for sex in [Sex::Female, Sex::Male] {
        let people = people(waist, sex, 5);
        let (mut met, mut at_limit, mut moves) = (0, 0, 0);
        let mut found: BTreeMap<Key, Vec<f64>> = BTreeMap::new();
        for order in &people {
            let (draft, report) = fitted(order);
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
            "{waist} waist, {sex}: {of} people, met within 0.5 cm {:.1} per cent, {each:.2} corrections each, at a limit \
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
        assert!(per_cent(met, of) >= 98.9, "{waist}, {sex}");
        assert!(each <= 4.5, "{waist}, {sex}: {each}");
        assert!(per_cent(at_limit, of) < 8.0, "{waist}, {sex}");
    }
}
