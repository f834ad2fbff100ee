//! Everyday sentences, and what was read in them judged by hand.

use breeks::terms::Word;
use breeks::toile::{Heard, Seen, read};

/// The words of a sign.
fn words(seen: &Seen) -> Vec<&'static str> {
    let sign = &seen.sign;
    let said = [
        seen.denied.then_some("not"),
        sign.fine.then_some("fine"),
        sign.at.map(Word::key),
        sign.face.map(Word::key),
        sign.feel.map(Word::key),
        sign.lines.map(Word::key),
        sign.does.map(Word::key),
        sign.when.map(Word::key),
        seen.degree.map(Word::key),
        sign.one_side.then_some("one_side"),
    ];
    said.into_iter().flatten().collect()
}

/// What came of reading a sentence, against what it means.
#[derive(Debug, PartialEq)]
enum Read {
    /// As it was meant.
    Right,
    /// Not understood, and asked about: nothing is changed for it.
    Asked,
    /// Something else than was meant, and a change would follow from it.
    Wrong,
}

fn judged(report: &Heard, meant: &str) -> Read {
    let acted = report.seen.iter().filter(|seen| seen.is_wrong() && !seen.waits).count();
    let asked = if report.open.is_empty() { Read::Wrong } else { Read::Asked };
    match meant {
        "?" if acted == 0 && !report.fits && !report.open.is_empty() => return Read::Right,
        "whole" if report.fits => return Read::Right,
        "?" | "whole" => return if acted == 0 && !report.fits { asked } else { Read::Wrong },
        // it would close the fitting
        _ if report.fits => return Read::Wrong,
        _ => {}
    }
    let mut used = vec![false; report.seen.len()];
    let mut found = true;
    let mut wants_question = false;
    for sign in meant.split(';') {
        let sign: Vec<&str> = sign.split_whitespace().collect();
        let at = report.seen.iter().enumerate().position(|(at, seen)| {
            let told = words(seen);
            !used[at]
                && seen.denied == (sign[0] == "not")
                && sign.iter().all(|word| *word == "?" || told.contains(word))
        });
        wants_question |= sign.contains(&"?");
        match at {
            Some(at) => used[at] = true,
            None => found = false,
        }
    }
    let more = report.seen.iter().zip(&used).any(|(seen, used)| seen.is_wrong() && !seen.waits && !used);
    match (found, more) {
        (true, false) if wants_question != report.open.is_empty() => Read::Right,
        (_, false) if acted == 0 || !report.open.is_empty() => asked,
        _ => Read::Wrong,
    }
}

fn told(file: &'static str) -> Vec<(&'static str, &'static str)> {
    let lines = file.lines().filter(|line| !line.starts_with('#') && !line.trim().is_empty());
    lines
        .map(|line| {
            let (said, meant) = line.split_once('|').expect("a bar");
            (said.trim(), meant.trim())
        })
        .collect()
}

fn all_right(file: &'static str) {
    let mut wrong = Vec::new();
    for (said, meant) in told(file) {
        let report = read(said);
        let how = judged(&report, meant);
        if how != Read::Right {
            let got: Vec<_> = report.seen.iter().map(words).collect();
            wrong.push(format!("{said}: {meant}: {how:?} {got:?}, open {}", report.open.len()));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn sentences_read_as_they_are_meant() {
    assert!(told(include_str!("told.txt")).len() >= 140);
    all_right(include_str!("told.txt"));
}

/// Sentences that were found when the reader was done, each lot by other writers, and what the reader as it then was made of
/// them, judged by hand: of 60 52 were right or asked about and 7 acted on wrongly; when that was mended, of 40 others 36
/// and 4; then of 120 102 and 18; of 200 174 and 19; of 100 87 and 12. Each lot is mended by words and rules for its kind of
/// sentence, and one more lot of the same kind would again find what is missing. Now none of the five is acted on wrongly.
#[test]
fn sentences_held_out() {
    for (file, count) in [
        (include_str!("held_out.txt"), 60),
        (include_str!("held_out_again.txt"), 40),
        (include_str!("held_out_third.txt"), 120),
        (include_str!("held_out_fourth.txt"), 200),
        (include_str!("held_out_fifth.txt"), 100),
    ] {
        let all = told(file);
        assert_eq!(all.len(), count);
        let mut asked = 0;
        let mut wrong = Vec::new();
        for (said, meant) in &all {
            let report = read(said);
            let how = judged(&report, meant);
            asked += usize::from(how == Read::Asked);
            if how != Read::Right {
                let got: Vec<_> = report.seen.iter().map(words).collect();
                let line = format!("{said}: {meant}: {how:?} {got:?}, open {}", report.open.len());
                println!("{line}");
                wrong.extend((how == Read::Wrong).then_some(line));
            }
        }
        assert!(wrong.is_empty(), "{}", wrong.join("\n"));
        println!("{count} sentences, of which {asked} are asked about beyond what they mean");
        assert!(20 * asked <= count);
    }
}

/// A good third of them deny something, more than a quarter are vague.
#[test]
fn sentences_of_three_kinds() {
    let all = told(include_str!("told.txt"));
    let vague = all.iter().filter(|(_, meant)| *meant == "?").count();
    let denied =
        |meant: &str| meant.split(';').any(|sign| sign.trim().starts_with("not") || sign.contains("fine"));
    let denied = all.iter().filter(|(_, meant)| denied(meant) || *meant == "whole").count();
    assert!(4 * vague >= all.len(), "{vague} of {}", all.len());
    assert!(4 * denied >= all.len(), "{denied} of {}", all.len());
}

#[test]
fn words_of_no_meaning_asked_about_and_named() {
    let report = read("the sproggle is tight");
    assert_eq!(report.open.len(), 1);
    assert_eq!(report.open[0].unknown[0].0, "sproggle");
    assert!(!report.asks_for_change());
}

#[test]
fn questions_answered_and_left_out() {
    let report = read("legs too wide, and the bottom is tight");
    assert_eq!(report.open.len(), 2, "{report:?}");
    assert!(!report.asks_for_change());
    // the answer of the second keeps the number of the first
    let report = report.answered(2, "at the seat").expect("an answer");
    assert_eq!(words(report.seen.last().expect("a sign")), ["seat", "back", "tight"]);
    assert!(report.answered(1, "tight").is_err());
    assert!(report.answered(3, "knee").is_err());
    assert!(report.answered(1, "none").expect("left out").open.is_empty());
    let report = report.answered(1, "the thigh").expect("an answer");
    assert_eq!(words(report.seen.last().expect("a sign")), ["thigh", "loose"]);
    assert!(report.asks_for_change());
    // a length is that of the place it was said of
    let report = read("the trousers are too long").answered(1, "crotch").expect("an answer");
    assert_eq!(words(&report.seen[0]), ["crotch", "loose", "drops"]);
}

#[test]
fn every_answer_that_is_offered_answers() {
    for said in [
        "it is tight",
        "legs too wide",
        "the trousers are too long",
        "it is too low",
        "crotch wrinkles",
        "the bottom is tight",
        "the seat looks odd",
        "they are uncomfortable",
        "the back is tight",
        "the front is baggy",
    ] {
        let report = read(said);
        assert_eq!(report.open.len(), 1, "{said}: {report:?}");
        for answer in report.open[0].answers() {
            let answered = report.answered(1, answer).unwrap_or_else(|why| panic!("{said}: {answer}: {why}"));
            assert!(
                answered.open.is_empty() && (answered.says_something() || *answer == "fits"),
                "{said}: {answer}"
            );
        }
    }
}
