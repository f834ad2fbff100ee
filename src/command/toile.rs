//! `breeks toile`: from what a toile shows to the one next change, and the record of it.

mod conversation;
mod mirrored;
mod pictured;
mod written;

use std::{
    io::{IsTerminal, Write},
    path::PathBuf,
};

use super::{
    Ending,
    input::Input,
    output::{Replacing, write_all},
    print,
};
use crate::{
    answer::{Judged, Warning},
    booklet::note,
    drawing::Wording,
    making::{Made, make},
    mistake::{Mistake, Mistakes, harmless_text},
    order,
    pattern::Wanted,
    terms::{HowMuch, Shape, Side, Word},
    toile::{Does, Face, Feel, Heard, Lines, Look, Outcome, Place, Sign, Since, When, judge},
    told::{cautions, judgement_told},
    unit::{Unit, parse_length},
};
use conversation::Talk;
use mirrored::mirrored;
use pictured::{history, next_picture};
use written::write_entry;

#[derive(clap::Args)]
#[command(after_help = "\
Say what is seen in plain words with --seen, once for each thing, or name one sign with --at and its like; with neither, \
on a terminal, up to four questions are asked. What was read is said back first; what says too little is asked about, and \
answered with --answer. The answer of a test is given with --tested. One change a fitting.

Exit: 0 judged; 2 cannot be read or drafted; 3 waits for an answer: no change is advised before one of the questions \
is answered, and nothing was written.")]
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
    /// Answer a question that was left open, as in 1=seat; 1=none leaves what it
    /// is about out; may be repeated
    #[arg(long, value_name = "NUMBER=WORDS", value_parser = answer)]
    answer: Vec<(usize, String)>,
    /// Ask the questions, and the test after them
    #[arg(long)]
    ask: bool,
    /// Tell all the reasons: every cause with its signs, numbers and sources, what
    /// each length becomes, and what not to do
    #[arg(long)]
    why: bool,
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
    /// Look in the mirror before the toile is sewn: four questions on posture say
    /// what to watch for; with --write the file keeps the answers as [shape]
    #[arg(long, conflicts_with_all = ["seen", "tested", "history", "json"])]
    mirror: bool,
    /// What the mirror shows, as in front_thigh=much: little, usual or much; may
    /// be repeated
    #[arg(long, value_name = "SHAPE=HOW", value_parser = shape, requires = "mirror")]
    shape: Vec<(Shape, HowMuch)>,
    /// Tell the record of toiles as a story, with a picture of each change
    #[arg(long, conflicts_with_all = ["seen", "tested", "write", "ask"])]
    history: bool,
    /// Write the change into the file, comments and order kept, and a fitting
    /// into its record
    #[arg(long)]
    write: bool,
    /// The day of the fitting, YYYY-MM-DD [default: today, by this machine's clock]
    #[arg(long, value_name = "DAY", value_parser = order::day)]
    date: Option<String>,
    /// A note for the record
    #[arg(long, value_name = "WORDS")]
    note: Option<String>,
    /// The folder for pictures, made where it is missing [default: drafts with
    /// --history, else no picture]
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,
    #[command(flatten)]
    replacing: Replacing,
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

/// What a mirror shows, and how much of it.
fn shape(text: &str) -> Result<(Shape, HowMuch), String> {
    let (shape, much) = text.split_once('=').ok_or("expected a shape and how much, as front_thigh=much")?;
    Ok((word(shape.trim())?, word(much.trim())?))
}

/// The number of a question and its answer.
fn answer(text: &str) -> Result<(usize, String), String> {
    let expected = || "expected the number of a question and its answer, as 1=seat".to_owned();
    let (number, words) = text.split_once('=').ok_or_else(expected)?;
    Ok((number.trim().parse().map_err(|_| expected())?, words.trim().to_owned()))
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
    if arguments.mirror {
        return mirrored(arguments, &order, std::io::stdin().is_terminal());
    }
    let said_nothing = arguments.seen.is_empty() && arguments.sign().is_none() && arguments.tested.is_empty();
    let at_a_terminal = std::io::stdin().is_terminal();
    let asks = arguments.ask || (said_nothing && at_a_terminal && arguments.since.is_none());
    let mut talk = Talk::new(arguments.json);
    let mut look = arguments.look(unit)?;
    if asks {
        look.sign = talk.questions()?.or(look.sign);
    }
    let mut toile = look.clone().read(&order)?;
    if asks || at_a_terminal {
        while let Some(answer) = talk.open(&toile.report)? {
            toile.report = toile.report.answered(1, &answer).unwrap_or(toile.report);
        }
    }
    if !toile.says_something() {
        return Err(nothing_said());
    }
    let made = make(order, notices.clone(), &Wanted::default())?;
    let Made { order, recipe, legs, .. } = &made;
    let mut judgement = judge(toile.clone(), order, recipe, legs)?;
    if asks {
        while let Some(answer) = talk.test(&judgement, unit)? {
            toile.tested.push(answer);
            judgement = judge(toile.clone(), order, recipe, legs)?;
        }
    }
    let waits = judgement.outcome == Outcome::Waits;

    let mut done = String::new();
    if let Some(folder) = &arguments.out {
        for path in write_all(
            folder,
            &next_picture(&judgement, unit)?,
            &[arguments.input.of()],
            &arguments.replacing,
        )? {
            done.push_str(&format!("wrote {}\n", path.display()));
        }
    }
    if let (true, Some(path)) = (arguments.write, path) {
        done.push_str(&match waits {
            true => note("nothing written: answer first"),
            false => write_entry(arguments, path, &judgement, order)?,
        });
    }
    let ending = if waits { Ending::Waits } else { Ending::Done };
    if arguments.json {
        let warnings = Warning::all(notices, unit);
        print(&format!("{}\n", Judged::new(&legs.first.draft, &judgement, warnings, unit).to_json()))?;
        // A closed terminal leaves nothing to do about it.
        let _ = write!(std::io::stderr(), "{}", harmless_text(&done));
        return Ok(ending);
    }
    let mut text = judgement_told(&judgement, unit, arguments.why);
    text.push('\n');
    for notice in &notices {
        text.push_str(&note(&notice.text(unit)));
    }
    text.push_str(&done);
    text.push_str(&cautions());
    print(&text)?;
    Ok(ending)
}

impl Arguments {
    /// The sign that was named with flags.
    fn sign(&self) -> Option<Sign> {
        let sign = Sign {
            at: self.at,
            face: self.face,
            feel: self.feel,
            lines: self.lines,
            to: self.to,
            does: self.does,
            when: self.when,
            ..Sign::default()
        };
        (sign != Sign::default()).then_some(sign)
    }

    /// Everything that was said of the toile.
    fn look(&self, unit: Unit) -> Result<Look, Mistakes> {
        let pinned = match &self.pinned {
            Some(text) => Some(parse_length(text, unit).map_err(|expected| {
                Mistake::new(format!("{expected} for `--pinned`, found `{}`", Wording::line(text)))
            })?),
            None => None,
        };
        let tested = |text: &String| match text.split_once('=') {
            Some((test, result)) => (test.trim().to_owned(), result.trim().to_owned()),
            None => (text.clone(), String::new()),
        };
        Ok(Look {
            words: self.seen.clone(),
            sign: self.sign(),
            answers: self.answer.clone(),
            tested: self.tested.iter().map(tested).collect(),
            pinned,
            side: self.leg,
            since: self.since,
        })
    }
}

/// Nothing was said at all.
fn nothing_said() -> Mistakes {
    let mut mistake = Mistake::new("expected what is seen on the toile, found nothing")
        .help("say it as in --seen \"tight lines across the front of the thigh when sitting\"");
    for line in Heard::can_be_said() {
        mistake = mistake.help(line);
    }
    mistake.help("or let yourself be asked with `--ask`").into()
}
