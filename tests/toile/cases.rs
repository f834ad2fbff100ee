//! Fitting cases as they were published: what was seen, and what the source says or corrects.

use breeks::toile::{Past, Ranking, knowledge, rank, read};
use serde::Deserialize;

#[derive(Deserialize)]
struct File {
    case: Vec<Case>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Case {
    pub(crate) name: String,
    #[expect(dead_code, reason = "for whoever reads the file")]
    source: String,
    pub(crate) said: String,
    pub(crate) again: String,
    pub(crate) tersely: String,
    pub(crate) right: Vec<String>,
    #[serde(default)]
    pub(crate) wrong: Vec<String>,
    #[serde(default)]
    pub(crate) own_words: bool,
    #[serde(default)]
    pub(crate) apart: bool,
}

pub(crate) fn cases() -> Vec<Case> {
    toml::from_str::<File>(include_str!("cases.toml")).expect("the cases").case
}

pub(crate) fn ranked(said: &str) -> Ranking {
    let report = read(said);
    let tested: Vec<(String, String)> =
        report.tested.iter().map(|(test, result, _)| (test.clone(), result.clone())).collect();
    rank(&report, &tested, None, &Past::default())
}

fn keys(ranking: &Ranking) -> Vec<&'static str> {
    ranking.causes.iter().map(|it| knowledge().of(it.cause).key.as_str()).collect()
}

/// The place of the first right cause, from 0.
pub(crate) fn place(ranking: &Ranking, right: &[String]) -> usize {
    keys(ranking).iter().position(|key| right.iter().any(|it| it == key)).expect("a known cause")
}

#[test]
fn published_cases_with_the_right_cause_among_the_first_two() {
    let (mut hits, mut first, mut apart) = (0, 0, (0, 0));
    let all = cases();
    let mut misled = Vec::new();
    for case in &all {
        let ranking = ranked(&case.said);
        let place = place(&ranking, &case.right);
        let hit = place < 2;
        hits += usize::from(hit);
        first += usize::from(place == 0);
        if case.apart {
            apart.1 += 1;
            apart.0 += usize::from(hit);
        }
        if std::env::var_os("SHOW_APART").is_some() || !case.apart {
            let list: Vec<String> = ranking.causes[..3]
                .iter()
                .map(|it| format!("{} {:.2}", knowledge().of(it.cause).key, it.share))
                .collect();
            println!("{} {:<42} {}", if hit { "  " } else { "x " }, case.name, list.join(", "));
        }
        if case.wrong.iter().any(|key| key == keys(&ranking)[0]) {
            misled.push(case.name.clone());
        }
    }
    println!(
        "{hits} of {} among the first two, {first} first; of those kept apart {} of {}",
        all.len(),
        apart.0,
        apart.1
    );
    assert!(misled.is_empty(), "{} cases with a wrong place first", misled.len());
    assert!(5 * hits >= 4 * all.len(), "{hits} of {}", all.len());
}

/// One way in which a case is told.
type Told = fn(&Case) -> &str;

#[test]
fn the_same_cases_told_in_other_words() {
    let all = cases();
    let again: Told = |case| &case.again;
    let tersely: Told = |case| &case.tersely;
    for (how, told) in [("again", again), ("tersely", tersely)] {
        let hit = |case: &&Case| place(&ranked(told(case)), &case.right) < 2;
        if std::env::var_os("SHOW_AGAIN").is_some() {
            for case in all.iter().filter(|case| !hit(case)) {
                println!("x {how}: {}: {:?}", case.name, &keys(&ranked(told(case)))[..3]);
            }
        }
        let misled = |case: &&Case| case.wrong.iter().any(|key| key == keys(&ranked(told(case)))[0]);
        let hits = all.iter().filter(hit).count();
        println!("told {how}: {hits} of {} among the first two", all.len());
        assert!(5 * hits >= 4 * all.len(), "{how}: {hits} of {}", all.len());
        let misled: Vec<&str> = all.iter().filter(misled).map(|case| case.name.as_str()).collect();
        assert!(misled.is_empty(), "{how}: a wrong place first in {misled:?}");
    }
}

#[test]
fn half_of_the_reports_in_words_of_their_own() {
    let all = cases();
    assert!(2 * all.iter().filter(|case| case.own_words).count() >= all.len());
    assert!(all.len() >= 20 && all.iter().filter(|case| case.apart).count() >= 10);
}
