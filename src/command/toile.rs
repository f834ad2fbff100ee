//! `breeks toile`: from what a toile shows to the one next change, and the record of it.

use std::{
    io::{IsTerminal, Write},
    path::{Path, PathBuf},
};

use super::{
    Ending,
    fit::today,
    input::Input,
    output::{Sheet, file_stem, write_all},
    print,
};
use crate::{
    adjust::Key,
    answer::Judged,
    drawing::{SvgScale, Wording},
    file,
    fit::{Compared, Leg, Legs, drafted_legs},
    mistake::{Mistake, Mistakes, Notice, Source},
    order::{Change, Fitting, Order, edit, record},
    paper::{cautions, choices, fitting_did, fitting_sheet, fitting_told, note, overlay, what_can_be_said},
    recipe,
    terms::{Anchor, FitKind, Side, Word},
    toile::{
        Answers, Does, Face, Feel, Judgement, Lines, Place, QUESTIONS, Question, Report, Seen, Sign, Since,
        Toile, When, judge, knowledge, past, read,
    },
    unit::{Unit, parse_length},
};

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

/// Where pictures of a history go when no folder is named.
const OUT: &str = "drafts";
/// A fitting's note where what a fit had found is written down as it was sewn.
const HELD: &str = "as sewn: what the fit had found is kept, and the fit held";

pub(super) fn run(arguments: &Arguments) -> Result<Ending, Mistakes> {
    let path = arguments.input.path();
    if arguments.write && path.is_none() {
        return Err(Mistake::new("`--write` needs a measurement file")
            .help("a demo is not written to")
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
    let recipe = recipe::load(&order.trousers.block)?;
    let legs = drafted_legs(&order, &recipe)?;
    let side = arguments.leg.unwrap_or(Side::Both);
    let mut toile = Toile { report, tested, side, pinned, past };
    let mut judgement = judge(toile.clone(), &order, &recipe, &legs)?;
    if asks {
        while let Some(answer) = talk.test(&judgement)? {
            toile.tested.push(answer);
            judgement = judge(toile.clone(), &order, &recipe, &legs)?;
        }
    }

    let mut done = String::new();
    if let Some(folder) = &arguments.out {
        for path in write_all(folder, &next_picture(&judgement, unit)?)? {
            done.push_str(&format!("wrote {}\n", path.display()));
        }
    }
    if let (true, Some(path)) = (arguments.write, path) {
        done.push_str(&written(arguments, path, &judgement, &order)?);
    }
    if arguments.json {
        print(&format!("{}\n", Judged::new(&legs.first.draft, &judgement, notices).to_json()))?;
        // A closed terminal leaves nothing to do about it.
        let _ = write!(std::io::stderr(), "{done}");
        return Ok(Ending::Done);
    }
    let mut text = fitting_sheet(&judgement, unit);
    text.push('\n');
    for notice in &notices {
        text.push_str(&note(&notice.text));
    }
    text.push_str(&done);
    text.push_str(&cautions());
    print(&text)?;
    Ok(Ending::Done)
}

impl Arguments {
    /// What was said in words and with flags.
    fn report(&self) -> Report {
        let mut report = Report::default();
        for words in &self.seen {
            let read = read(words);
            report.seen.extend(read.seen);
            report.tested.extend(read.tested);
            report.unknown.extend(read.unknown);
            report.stance |= read.stance;
            report.cut |= read.cut;
        }
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
    for line in what_can_be_said() {
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

/// A conversation on a terminal.
struct Talk {
    lines: std::io::Lines<std::io::StdinLock<'static>>,
    /// Only JSON goes to standard output then.
    quiet: bool,
}

impl Talk {
    fn new(quiet: bool) -> Self {
        Self { lines: std::io::stdin().lines(), quiet }
    }

    fn say(&self, text: &str) -> Result<(), Mistake> {
        if self.quiet {
            // A closed terminal leaves nothing to do about it.
            let _ = write!(std::io::stderr(), "{text}");
            return Ok(());
        }
        print(text)
    }

    /// The number of a choice, from 0; `None` for an empty answer or the end of what is typed.
    fn answer(&mut self, count: usize) -> Result<Option<usize>, Mistake> {
        loop {
            let Some(line) = self.lines.next() else { return Ok(None) };
            let line = line.map_err(|error| Mistake::new(format!("cannot read the answer: {error}")))?;
            if line.trim().is_empty() {
                return Ok(None);
            }
            match line.trim().parse::<usize>() {
                Ok(number) if (1..=count).contains(&number) => return Ok(Some(number - 1)),
                _ => self.say(&format!("a number from 1 to {count}, or nothing to pass over: "))?,
            }
        }
    }

    /// The questions; what was answered as a sign.
    fn questions(&mut self) -> Result<Option<Seen>, Mistake> {
        let mut answers: Answers = [None; 4];
        self.say("Answer with a number; nothing passes a question over.\n")?;
        for question in QUESTIONS {
            if !question.is_open(&answers) {
                continue;
            }
            let list = question.choices();
            self.say(&choices(question.ask(), &list))?;
            answers[question as usize] = self.answer(list.len())?;
        }
        self.say("\n")?;
        let sign = Question::sign(&answers);
        Ok((sign != Sign::default()).then(|| Seen { sign, other: None, words: sign.plain() }))
    }

    /// Asks for the result of the test that is next, where one is and the ranking is not clear yet.
    fn test(&mut self, judgement: &Judgement) -> Result<Option<(String, String)>, Mistake> {
        let Some(next) = judgement.test.as_ref().filter(|_| !judgement.clear) else { return Ok(None) };
        let list: Vec<String> = next.test.results.iter().map(|it| it.says.clone()).collect();
        self.say(&choices(&next.test.ask, &list))?;
        let answer = self.answer(list.len())?;
        self.say("\n")?;
        Ok(answer.map(|at| (next.test.key.clone(), next.test.results[at].key.clone())))
    }
}

/// The draft with the change over the draft as it was sewn.
fn next_picture(judgement: &Judgement, unit: Unit) -> Result<Vec<Sheet>, Mistakes> {
    let Some(effect) = judgement.advice.as_ref().and_then(|advice| advice.effect.as_ref()) else {
        return Ok(Vec::new());
    };
    let stem = format!("{}-next-change", stem(&effect.after));
    pictures(&stem, &effect.before, &effect.after, ["as sewn", "with the next change"], unit)
}

fn stem(leg: &Leg) -> String {
    format!("{}-{}", file_stem(&leg.draft.name), file_stem(&leg.draft.recipe.name))
}

fn pictures(stem: &str, old: &Leg, new: &Leg, said: [&str; 2], unit: Unit) -> Result<Vec<Sheet>, Mistakes> {
    let old = Compared { said: said[0], draft: &old.draft, report: &old.report };
    let new = Compared { said: said[1], draft: &new.draft, report: &new.report };
    let picture = overlay(&old, &new, Anchor::Crotch, unit);
    Ok(vec![
        Sheet { name: format!("{stem}.svg"), bytes: picture.to_svg(SvgScale::TrueScale).into_bytes() },
        Sheet { name: format!("{stem}.pdf"), bytes: picture.to_pdf()? },
    ])
}

/// Writes the change and the record; says what was written.
fn written(
    arguments: &Arguments,
    path: &Path,
    judgement: &Judgement,
    order: &Order,
) -> Result<String, Mistakes> {
    /// Values are written to this many decimals: what a ruler shows.
    const WRITTEN: f64 = 100.0;
    let rounded = |value: f64| (value * WRITTEN).round() / WRITTEN + 0.0;
    let date = Some(arguments.date.clone().unwrap_or_else(today));
    let block = Some(order.trousers.block.clone());
    let line = |text: &str| Wording::line(text).to_string();
    let mut source = arguments.input.source()?;
    let mut said = String::new();
    let advice = judgement.advice.as_ref().filter(|advice| judgement.clear && !advice.moves.is_empty());
    let mut changed: Vec<(String, f64)> = Vec::new();
    if let Some(advice) = advice {
        let mut changes: Vec<Change> = Vec::new();
        if advice.holds_fit {
            let kept: Vec<(String, f64)> = kept(&advice.sewn, order)
                .map(|(key, value)| (key.key().to_owned(), rounded(value)))
                .filter(|(_, value)| *value != 0.0)
                .collect();
            // a fit that found nothing has nothing to be kept
            let as_sewn = Fitting {
                date: date.clone(),
                block: block.clone(),
                changed: kept.clone(),
                note: Some(HELD.to_owned()),
                ..Fitting::default()
            };
            changes.extend(kept.iter().map(|(key, value)| Change::Number(key.clone(), *value)));
            changes.push(Change::Text("trousers.fit".to_owned(), FitKind::Proportional.key().to_owned()));
            if !kept.is_empty() {
                source = Source::new(source.name.clone(), record(&source, &as_sewn)?);
            }
            said.push_str(&note(
                "what the fit had found is kept as it was sewn, and `trousers.fit` is proportional now: the next draft is \
                 the sewn one with this one change",
            ));
        }
        changed = advice.moves.iter().map(|it| (it.path.clone(), rounded(it.to))).collect();
        changes.extend(changed.iter().map(|(key, value)| Change::Number(key.clone(), *value)));
        source = Source::new(source.name.clone(), edit(&source, &changes)?);
    } else {
        said.push_str(&note("no change written: what was seen and tested goes into the record"));
    }
    let report = &judgement.toile.report;
    let fitting = Fitting {
        date,
        block,
        seen: report.seen.iter().map(|seen| line(&seen.words)).filter(|words| !words.is_empty()).collect(),
        tested: judgement.toile.tested.iter().map(|(test, result)| format!("{test}: {result}")).collect(),
        changed,
        note: arguments.note.as_deref().map(line),
    };
    let text = record(&source, &fitting)?;
    file::replace(path, text.as_bytes())
        .map_err(|error| Mistake::new(format!("cannot write `{}`: {error}", path.display())))?;
    said.push_str(&format!("wrote {}\n", path.display()));
    Ok(said)
}

/// What a fit had found and the file does not say.
fn kept<'a>(sewn: &'a Order, order: &'a Order) -> impl Iterator<Item = (Key, f64)> + 'a {
    sewn.adjustments
        .iter()
        .filter(|it| !order.adjustments.iter().any(|old| old.key == it.key))
        .map(|it| (it.key, it.value))
}

/// The story of the record, with a picture of what each fitting changed.
fn history(arguments: &Arguments, order: &Order, unit: Unit) -> Result<Ending, Mistakes> {
    if order.fittings.is_empty() {
        return Err(Mistake::new("the file has no record of toiles")
            .help("a fitting is written into it with `--write`")
            .into());
    }
    let mut text = String::new();
    let mut sheets = Vec::new();
    let mut notices: Vec<Notice> = Vec::new();
    let mut before = drafted_state(&before_all(order)?.0)?;
    for (at, fitting) in order.fittings.iter().enumerate() {
        let number = at + 1;
        let (state, said) = order.after_fitting(number)?;
        notices.extend(said.into_iter().filter(|it| !notices.contains(it)).collect::<Vec<_>>());
        let after = drafted_state(&state)?;
        text.push_str(&fitting_told(number, fitting, unit));
        let two = before.second.is_some() || after.second.is_some();
        let sides: &[Side] = if two { &[Side::Left, Side::Right] } else { &[Side::Both] };
        for side in sides {
            let (old, new) = (of_side(&before, *side), of_side(&after, *side));
            // what a fit had found was sewn before it was written down
            let was_sewn = fitting.note.as_deref() == Some(HELD);
            if was_sewn || old.draft.shape == new.draft.shape {
                continue;
            }
            text.push_str(&fitting_did(&old.report, &new.report, *side, unit));
            let leg = if *side == Side::Both { String::new() } else { format!("-{side}") };
            let name = format!("{}-fitting-{number}{leg}", stem(new));
            let said = [format!("before fitting {number}"), format!("after fitting {number}")];
            sheets.extend(pictures(&name, old, new, [&said[0], &said[1]], unit)?);
        }
        before = after;
    }
    for notice in &notices {
        text.push_str(&note(&notice.text));
    }
    let folder = arguments.out.clone().unwrap_or_else(|| PathBuf::from(OUT));
    if !sheets.is_empty() {
        for path in write_all(&folder, &sheets)? {
            text.push_str(&format!("wrote {}\n", path.display()));
        }
    }
    text.push_str(&cautions());
    print(&text)?;
    Ok(Ending::Done)
}

/// The order before its first toile: without what the record changed.
fn before_all(order: &Order) -> Result<(Order, Vec<Notice>), Mistakes> {
    let (mut first, notices) = order.after_fitting(1)?;
    for (path, _) in order.fittings.first().iter().flat_map(|fitting| &fitting.changed) {
        let (side, key) = match path.split_once('.') {
            Some(("left", key)) => (Side::Left, key),
            Some(("right", key)) => (Side::Right, key),
            _ => (Side::Both, path.as_str()),
        };
        let Some(key) = Key::from_key(key) else { continue };
        let list = match side {
            Side::Both => Some(&mut first.adjustments),
            Side::Left => first.left.as_mut().map(|leg| &mut leg.adjustments),
            Side::Right => first.right.as_mut().map(|leg| &mut leg.adjustments),
        };
        if let Some(list) = list {
            list.retain(|it| it.key != key);
        }
    }
    Ok((first, notices))
}

fn drafted_state(order: &Order) -> Result<Legs, Mistakes> {
    drafted_legs(order, &recipe::load(&order.trousers.block)?)
}

fn of_side(legs: &Legs, side: Side) -> &Leg {
    match (&legs.second, side) {
        (Some(right), Side::Right) => right,
        _ => &legs.first,
    }
}
