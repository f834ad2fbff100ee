//! Every recipe on real people: outlines that can be cut, seams that sew, joins that run on, hip and waist in range.
//!
//! Sources: people-507 and people-985, see `tests/data/README.md`.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on says so by panicking")]

mod people;

use std::{collections::BTreeMap, sync::Arc};

use breeks::{
    draft::draft,
    fit::{JoinRow, Report, SeamRow},
    recipe::{Recipe, load, shipped_names},
    terms::{EaseAt, Level, Sex, WaistLevel, Word},
};
use people::{Person, of_507_at, of_985, quantile};

/// What one recipe did on one group.
#[derive(Default)]
struct Tally {
    drafted: usize,
    failures: Vec<String>,
    tight: BTreeMap<&'static str, usize>,
    ease: BTreeMap<&'static str, Vec<f64>>,
    notices: BTreeMap<&'static str, usize>,
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
        for notice in &draft.notices {
            *tally.notices.entry(notice.code).or_default() += 1;
        }
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

/// The heading of the printed tables.
fn print_heading() {
    println!(
        "{:<9} {:<7} {:<8} {:>6} {:>8} | median ease: {:>6} {:>6} {:>6} {:>6} {:>6} {:>6} | too tight: {:>5} {:>5} {:>5} {:>5}",
        "recipe",
        "sex",
        "waist",
        "people",
        "failures",
        "crotch",
        "waist",
        "hip",
        "thigh",
        "knee",
        "calf",
        "thigh",
        "knee",
        "calf",
        "hem"
    );
}

/// One row: counts and medians of what one recipe did on one group.
fn print_row(recipe: &str, sex: Sex, waist: &str, tally: &mut Tally) {
    let crotch = quantile(&mut tally.crotch_ease, 0.5);
    let mut median =
        |level: Level| tally.ease.get_mut(level.key()).map_or(f64::NAN, |ease| quantile(ease, 0.5));
    let [waist_ease, hip, thigh, knee, calf] =
        [Level::Waist, Level::Hip, Level::Thigh, Level::Knee, Level::Calf].map(&mut median);
    let tight = |level: Level| tally.tight.get(level.key()).copied().unwrap_or_default();
    println!(
        "{recipe:<9} {sex:<7} {waist:<8} {:>6} {:>8} |              {crotch:>6.2} {waist_ease:>6.1} {hip:>6.1} {thigh:>6.1} {knee:>6.1} {calf:>6.1} |            {:>5} {:>5} {:>5} {:>5}",
        tally.drafted,
        tally.failures.len(),
        tight(Level::Thigh),
        tight(Level::Knee),
        tight(Level::Calf),
        tight(Level::Hem),
    );
}

/// Drafts everyone by every recipe, prints the table of counts and gives back what failed.
fn drafted(people: &[Person], waist: &str) -> Vec<String> {
    print_heading();
    let mut failures = Vec::new();
    for name in shipped_names() {
        let recipe = load(name).unwrap();
        for sex in [Sex::Female, Sex::Male] {
            let group: Vec<&Person> = people.iter().filter(|person| person.order.body.sex == sex).collect();
            let mut tally = tally(group.iter().copied(), &recipe);
            print_row(name, sex, waist, &mut tally);
            println!("          notices {:?}", tally.notices);
            if tally.drafted != group.len() {
                failures.push(format!("{name}, {sex}: {} of {} drafted", tally.drafted, group.len()));
            }
            failures.extend(tally.failures.iter().map(|failure| format!("{name}, {sex}: {failure}")));
        }
    }
    failures
}

/// The first of many, so that a broken recipe does not flood the screen.
fn first(failures: &[String]) -> String {
    format!(
        "{} failures\n{}",
        failures.len(),
        failures.iter().take(12).cloned().collect::<Vec<_>>().join("\n")
    )
}

#[test]
fn the_507_drafted_sound_and_true_at_both_waists_by_every_recipe() {
    for waist in [WaistLevel::Natural, WaistLevel::Navel] {
        let failures = drafted(&of_507_at(waist), waist.key());
        assert!(failures.is_empty(), "{}", first(&failures));
    }
}

#[test]
fn the_985_drafted_sound_and_true_at_both_waists_by_every_recipe() {
    for waist in [WaistLevel::Natural, WaistLevel::Navel] {
        let people = of_985(waist);
        let failures = drafted(&people, waist.key());
        assert!(failures.is_empty(), "{}", first(&failures));
    }
}

#[test]
fn median_crotch_ease_of_the_985_as_every_recipe_wants_it() {
    let people = of_985(WaistLevel::Natural);
    let mut missed = Vec::new();
    for name in shipped_names() {
        let recipe = load(name).unwrap();
        for sex in [Sex::Female, Sex::Male] {
            let wanted = recipe.ease.give(EaseAt::CrotchLength, sex);
            let mut tally = tally(people.iter().filter(|person| person.order.body.sex == sex), &recipe);
            let median = quantile(&mut tally.crotch_ease, 0.5);
            println!("{name:<9} {sex:<7} median crotch ease {median:.2}, wanted {wanted:.1}");
            if (median - wanted).abs() > 0.5 {
                missed.push(format!("{name}, {sex}: {median:.2}, wanted {wanted}"));
            }
        }
    }
    assert!(missed.is_empty(), "{}", missed.join("\n"));
}
