//! Every recipe on real people: outlines that can be cut, seams that sew, joins that run on, hip and waist in range.
//!
//! Sources: people-507 (see `tests/data/README.md`) and, where they lie beside the repository, 985 people of the 1988 US
//! Army Anthropometric Survey (report NATICK/TR-90/032, approved for public release).

mod people;

use std::{collections::BTreeMap, sync::Arc};

use breeks::{
    draft::draft,
    fit::{JoinRow, Report, SeamRow},
    recipe::{Recipe, load, shipped_names},
    terms::{EaseAt, Level, Sex, WaistLevel, Word},
};
use people::{Person, of_507, of_985, quantile};

/// What one recipe did on one group.
#[derive(Default)]
struct Tally {
    drafted: usize,
    failures: Vec<String>,
    tight: BTreeMap<&'static str, usize>,
    ease: BTreeMap<&'static str, Vec<f64>>,
    crotch_ease: Vec<f64>,
}

fn tally<'a>(people: impl Iterator<Item = &'a Person>, recipe: &Arc<Recipe>) -> Tally {
    let mut tally = Tally::default();
    for person in people {
        let draft = match draft(&person.order, recipe) {
            Ok(draft) => draft,
            Err(mistakes) => {
                tally.failures.push(format!("{}: {mistakes}", person.id));
                continue;
            }
        };
        tally.drafted += 1;
        let report = Report::of(&draft.plan, &draft.parameters, &draft.shape, &draft.body);
        let mut fail = |what: String| tally.failures.push(format!("{}: {what}", person.id));
        for fault in &report.faults {
            fail(format!("{fault:?}"));
        }
        for row in report.seams.iter().filter(|row| !SeamRow::holds(row)) {
            fail(format!("{row:?}"));
        }
        for row in report.joins.iter().filter(|row| !JoinRow::holds(row)) {
            fail(format!("{row:?}"));
        }
        for row in &report.levels {
            tally.ease.entry(row.level.key()).or_default().push(row.ease());
            if row.is_tight() {
                *tally.tight.entry(row.level.key()).or_default() += 1;
            }
            if matches!(row.level, Level::Hip | Level::Waist) && (row.is_tight() || row.is_loose()) {
                fail(format!("{row:?}"));
            }
        }
        tally.crotch_ease.extend(report.crotch.ease());
    }
    tally
}

fn print(title: &str, tally: &mut Tally) {
    let medians: Vec<String> =
        tally.ease.iter_mut().map(|(level, ease)| format!("{level} {:.1}", quantile(ease, 0.5))).collect();
    println!(
        "{title}: {} drafted, {} failures; median ease {}, crotch {:.2}; tight {:?}",
        tally.drafted,
        tally.failures.len(),
        medians.join(", "),
        quantile(&mut tally.crotch_ease, 0.5),
        tally.tight
    );
}

#[test]
fn the_507_drafted_sound_and_true() {
    let people = of_507();
    for name in shipped_names() {
        let mut tally = tally(people.iter(), &load(name).unwrap());
        print(&format!("507, {name}"), &mut tally);
        assert_eq!(tally.drafted, 507);
        assert!(tally.failures.is_empty(), "{}", tally.failures.join("\n"));
    }
}

#[test]
fn the_985_drafted_sound_and_true_at_both_waists() {
    for waist in [WaistLevel::Natural, WaistLevel::Navel] {
        let Some(people) = of_985(waist) else { return };
        for name in shipped_names() {
            let mut tally = tally(people.iter(), &load(name).unwrap());
            print(&format!("985, {name}, {waist}"), &mut tally);
            assert_eq!(tally.drafted, 985);
            assert!(tally.failures.is_empty(), "{}", tally.failures.join("\n"));
        }
    }
}

#[test]
fn median_crotch_ease_of_the_985_as_the_recipe_wants_it() {
    let Some(people) = of_985(WaistLevel::Natural) else { return };
    for name in shipped_names() {
        let recipe = load(name).unwrap();
        for sex in [Sex::Female, Sex::Male] {
            let wanted = recipe.ease.give(EaseAt::CrotchLength, sex);
            let mut tally = tally(people.iter().filter(|person| person.order.body.sex == sex), &recipe);
            print(&format!("985, {name}, {sex}"), &mut tally);
            let median = quantile(&mut tally.crotch_ease, 0.5);
            assert!((median - wanted).abs() <= 0.5, "{name}, {sex}: {median:.2}, wanted {wanted}");
        }
    }
}
