//! Fitting cases as they were published: what was seen, and what the source says or corrects.

use breeks::toile::{Past, Ranked, Ranking, WEIGHTS, Weights, knowledge, rank, rank_by, read};
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
    assert!(hits >= 38, "{hits} of {}", all.len());
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
        assert!(hits >= 38, "{how}: {hits} of {}", all.len());
        let misled: Vec<&str> = all.iter().filter(misled).map(|case| case.name.as_str()).collect();
        assert!(misled.is_empty(), "{how}: a wrong place first in {misled:?}");
    }
}

/// What each weight is worth on the published cases: told in three ways, the right cause among the first two, and the mean
/// of the logarithm of its share, with all weights and without each.
#[test]
fn published_cases_with_and_without_each_weight() {
    let all = cases();
    let worth = |weights: &Weights| {
        let (mut hits, mut log) = (0, 0.0);
        for case in &all {
            for told in [&case.said, &case.again, &case.tersely] {
                let report = read(told);
                let tested: Vec<(String, String)> =
                    report.tested.iter().map(|(test, result, _)| (test.clone(), result.clone())).collect();
                let ranking = rank_by(weights, &report, &tested, None, &Past::default());
                hits += usize::from(place(&ranking, &case.right) < 2);
                let right = |it: &&Ranked| case.right.iter().any(|key| *key == knowledge().of(it.cause).key);
                log += ranking.causes.iter().filter(right).map(|it| it.share).sum::<f64>().ln();
            }
        }
        (hits, log / (3 * all.len()) as f64)
    };
    let with = worth(&WEIGHTS);
    println!("with all: {} of {}, mean log share {:.3}", with.0, 3 * all.len(), with.1);
    for (name, weights) in Weights::each_left_out() {
        let without = worth(&weights);
        println!("without {name:<18} {:>4} {:>7.3} ({:+.3})", without.0, without.1, without.1 - with.1);
        // the large ones are worth something, and none costs much
        let large = ["place", "face", "feel", "lines", "does", "when", "order of causes"].contains(&name);
        assert!(!large || without.1 < with.1 - 0.02, "{name}: {} {}", without.1, with.1);
        assert!(without.1 < with.1 + 0.1, "{name}: {} {}", without.1, with.1);
    }
    assert!(with.0 >= 3 * 38, "{}", with.0);
}

#[test]
fn half_of_the_reports_in_words_of_their_own() {
    let all = cases();
    assert!(2 * all.iter().filter(|case| case.own_words).count() >= all.len());
    assert!(all.len() >= 20 && all.iter().filter(|case| case.apart).count() >= 10);
}
