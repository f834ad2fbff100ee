//! `breeks toile`: from what a toile shows to the one next change, and the record of it.

mod conversation;
mod pictured;
mod written;

use std::{
    io::{IsTerminal, Write},
    path::PathBuf,
};

use super::{Ending, input::Input, output::write_all, print};
use crate::{
    answer::{Judged, Warning},
    drawing::Wording,
    making::{Made, make},
    mistake::{Mistake, Mistakes},
    paper::{cautions, fitting_sheet, note},
    pattern::Wanted,
    terms::{Side, Word},
    toile::{
        Does, Face, Feel, Lines, Place, Report, Seen, Sign, Since, Toile, When, judge, knowledge, past,
        read_all,
    },
    unit::parse_length,
};
use conversation::Talk;
use pictured::{history, next_picture};
use written::written;

#[derive(clap::Args)]
#[command(after_help = "\
Say what is seen in plain words with --seen, once for each thing, or name one sign with --at and its like; with neither, \
on a terminal, up to four questions are asked. The answer of a test is given with --tested. One change a fitting.")]
pub(super) struct Arguments {
    #[command(flatten)]
    input: Input,
    /// What is seen, in plain words; may be repeated
    #[arg(long, value_name = "WORDS")]
    seen: Vec<String>,
    /// Where one sign is: waist, hip, seat, thigh, ...
    #[arg(long, value_name = "PLACE", value_parser = word::<Place>)]
    at: Option<Place>,
    /// On which face it is: front, back, inner or outer
    #[arg(long, value_name = "FACE", value_parser = word::<Face>)]
    face: Option<Face>,
    /// How the cloth is there: tight or loose
    #[arg(long, value_name = "FEEL", value_parser = word::<Feel>)]
    feel: Option<Feel>,
    /// How the lines run: level, upright, slanting, fan, smile or frown
    #[arg(long, value_name = "LINES", value_parser = word::<Lines>)]
    lines: Option<Lines>,
    /// Where they point
    #[arg(long, value_name = "PLACE", value_parser = word::<Place>)]
    to: Option<Place>,
    /// What the cloth does there: gapes, cuts, climbs, drops, ...
    #[arg(long, value_name = "DOES", value_parser = word::<Does>)]
    does: Option<Does>,
    /// When it shows: standing, sitting, walking, washed or dressing
    #[arg(long, value_name = "WHEN", value_parser = word::<When>)]
    when: Option<When>,
    /// Ask the questions, and the test after them
    #[arg(long)]
    ask: bool,
    /// What a test gave, as in open_inseam=slide; may be repeated
    #[arg(long, value_name = "TEST=RESULT")]
    tested: Vec<String>,
    /// The fold that was pinned out, or the gap that opened, on the body
    #[arg(long, value_name = "LENGTH")]
    pinned: Option<String>,
    /// The leg that shows it, where the other does not: left or right
    #[arg(long, value_name = "SIDE", value_parser = leg)]
    leg: Option<Side>,
    /// How it looks since the last change of the record: better, same or worse
    #[arg(long, value_name = "HOW", value_parser = word::<Since>)]
    since: Option<Since>,
    /// Tell the record of toiles as a story, with a picture of each change
    #[arg(long, conflicts_with_all = ["seen", "tested", "write", "ask"])]
    history: bool,
    /// Write the change into the file, comments and order kept, and a fitting
    /// into its record
    #[arg(long)]
    write: bool,
    /// The day of the fitting, YYYY-MM-DD [default: today]
    #[arg(long, value_name = "DAY", value_parser = day)]
    date: Option<String>,
    /// A note for the record
    #[arg(long, value_name = "WORDS")]
    note: Option<String>,
    /// The folder for pictures, made where it is missing [default: drafts with
    /// --history, else no picture]
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,
    /// Print the judgement as JSON on standard output
    #[arg(long, conflicts_with = "history")]
    json: bool,
}

fn word<W: Word>(text: &str) -> Result<W, String> {
    W::from_key(text).ok_or_else(|| format!("expected one of {}", W::KEYS.join(", ")))
}

fn leg(text: &str) -> Result<Side, String> {
    match Side::from_key(text) {
        Some(Side::Both) | None => Err("expected left or right".to_owned()),
        Some(side) => Ok(side),
    }
}

/// A day as the calendar has it.
fn day(text: &str) -> Result<String, String> {
    let expected = || "expected a day as 2026-11-25".to_owned();
    let [year, month, day] = text.split('-').collect::<Vec<_>>()[..] else { return Err(expected()) };
    let digits = |part: &str, count: usize| part.len() == count && part.bytes().all(|b| b.is_ascii_digit());
    if !(digits(year, 4) && digits(month, 2) && digits(day, 2)) {
        return Err(expected());
    }
    let number = |part: &str| part.parse::<u32>().map_err(|_| expected());
    let (year, month, day) = (number(year)?, number(month)?, number(day)?);
    let leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
    let days = match month {
        2 if leap => 29,
        2 => 28,
        4 | 6 | 9 | 11 => 30,
        _ => 31,
    };
    if (1..=12).contains(&month) && (1..=days).contains(&day) { Ok(text.to_owned()) } else { Err(expected()) }
}

pub(super) fn run(arguments: &Arguments) -> Result<Ending, Mistakes> {
    let path = arguments.input.path();
    if arguments.write && path.is_none() {
        return Err(Mistake::new("`--write` needs a measurement file")
            .help("a demo is not written to")
            .into());
    }
    if arguments.write && arguments.input.is_changed() {
        return Err(Mistake::new("`--write` writes into the file as it stands")
            .help("leave `--set` and `--block` out, or write them into the file first")
            .into());
    }
    let (order, notices) = arguments.input.read()?;
    let unit = arguments.input.unit(&order);
    if arguments.history {
        return history(arguments, &order, unit);
    }
    let pinned = match &arguments.pinned {
        Some(text) => {
            let pinned = parse_length(text, unit).map_err(|expected| {
                Mistake::new(format!("{expected} for `--pinned`, found `{}`", Wording::line(text)))
            })?;
            if !(0.0..=15.0).contains(&pinned) {
                return Err(Mistake::new("`--pinned` is between 0 and 15 cm")
                    .help("pin what is surplus, or measure the gap: the amount has no sign")
                    .into());
            }
            Some(pinned)
        }
        None => None,
    };
    let mut tested = tested(&arguments.tested)?;
    let mut report = arguments.report();
    let asks = arguments.ask
        || (report.seen.is_empty()
            && !report.says_something()
            && tested.is_empty()
            && std::io::stdin().is_terminal());
    let mut talk = Talk::new(arguments.json);
    if asks {
        report.seen.extend(talk.questions()?);
    }
    tested.extend(report.tested.iter().map(|(test, result, _)| (test.clone(), result.clone())));
    if !report.says_something() && tested.is_empty() && arguments.since != Some(Since::Worse) {
        return Err(nothing_said(&report));
    }
    let past = past(&order, arguments.since);
    if arguments.since.is_some() && past.steps.is_empty() {
        return Err(Mistake::new("`--since` speaks of the last change, and the file has no record of one")
            .help("a fitting is written into it with `--write`")
            .into());
    }
    let made = make(order, notices.clone(), &Wanted::default())?;
    let Made { order, recipe, legs, .. } = &made;
    let side = arguments.leg.unwrap_or(Side::Both);
    let mut toile = Toile { report, tested, side, pinned, past };
    let mut judgement = judge(toile.clone(), order, recipe, legs)?;
    if asks {
        while let Some(answer) = talk.test(&judgement)? {
            toile.tested.push(answer);
            judgement = judge(toile.clone(), order, recipe, legs)?;
        }
    }

    let mut done = String::new();
    if let Some(folder) = &arguments.out {
        for path in write_all(folder, &next_picture(&judgement, unit)?)? {
            done.push_str(&format!("wrote {}\n", path.display()));
        }
    }
    if let (true, Some(path)) = (arguments.write, path) {
        done.push_str(&written(arguments, path, &judgement, order)?);
    }
    if arguments.json {
        print(&format!(
            "{}\n",
            Judged::new(&legs.first.draft, &judgement, Warning::all(notices, unit)).to_json()
        ))?;
        // A closed terminal leaves nothing to do about it.
        let _ = write!(std::io::stderr(), "{done}");
        return Ok(Ending::Done);
    }
    let mut text = fitting_sheet(&judgement, unit);
    text.push('\n');
    for notice in &notices {
        text.push_str(&note(&notice.text(unit)));
    }
    text.push_str(&done);
    text.push_str(&cautions());
    print(&text)?;
    Ok(Ending::Done)
}

impl Arguments {
    /// What was said in words and with flags.
    fn report(&self) -> Report {
        let mut report = read_all(&self.seen);
        let sign = Sign {
            at: self.at,
            face: self.face,
            feel: self.feel,
            lines: self.lines,
            to: self.to,
            does: self.does,
            when: self.when,
            one_side: false,
            fine: false,
        };
        if sign != Sign::default() {
            report.seen.push(Seen { sign, other: None, words: sign.plain() });
        }
        if self.leg.is_some() {
            report.seen.iter_mut().for_each(|seen| seen.sign.one_side = !seen.sign.fine);
        }
        report
    }
}

/// A report of which nothing is known.
fn nothing_said(report: &Report) -> Mistakes {
    let title = match report.unknown.as_slice() {
        [] if report.seen.is_empty() => "expected what is seen on the toile, found nothing".to_owned(),
        [] => "expected what is wrong there, found only where".to_owned(),
        unknown => {
            let words: Vec<String> =
                unknown.iter().take(5).map(|(word, _)| format!("`{}`", Wording::line(word))).collect();
            format!("nothing known in what is seen: {}", words.join(", "))
        }
    };
    let mut mistake = Mistake::new(title);
    for (word, near) in report.unknown.iter().take(5) {
        if let Some(near) = near {
            mistake = mistake.help(format!("`{}`: did you mean `{near}`?", Wording::line(word)));
        }
    }
    mistake = mistake.help("say it as in --seen \"tight lines across the front of the thigh when sitting\"");
    for line in Report::can_be_said() {
        mistake = mistake.help(line);
    }
    mistake.help("or let yourself be asked with `--ask`").into()
}

/// The results of tests, as they were typed.
fn tested(typed: &[String]) -> Result<Vec<(String, String)>, Mistakes> {
    let mut tested = Vec::new();
    for text in typed {
        let (test, result) = text.split_once('=').map_or((text.as_str(), ""), |(a, b)| (a.trim(), b.trim()));
        let Some(quick) = knowledge().test(test) else {
            let keys = || knowledge().tests.iter().map(|test| test.key.as_str());
            return Err(Mistake::new(format!("there is no test `{}`", Wording::line(test)))
                .nearest(test, keys())
                .help(format!("the tests are {}", keys().collect::<Vec<_>>().join(", ")))
                .into());
        };
        if !quick.results.iter().any(|it| it.key == result) {
            let mut mistake = Mistake::new(format!("`{test}` has no result `{}`", Wording::line(result)))
                .nearest(result, quick.results.iter().map(|it| it.key.as_str()))
                .help(quick.ask.clone());
            for it in &quick.results {
                mistake = mistake.help(format!("`{test}={}`: {}", it.key, it.says));
            }
            return Err(mistake.into());
        }
        tested.push((test.to_owned(), result.to_owned()));
    }
    Ok(tested)
}
