//! A toile judged, as a fitter reads it: what was seen, what the pattern lacks, the test, the one next change.

use std::fmt::Write;

use super::record::{clean, valued};
use crate::{
    adjust::Key,
    body::Origin,
    booklet::{headed, wrapped},
    fit::Report,
    terms::Word,
    toile::{
        Advice, Amount, Cause, Degree, Doubt, Effect, Evidence, Judgement, Move, Number, Outcome, Ranked,
        Seen, Standing, knowledge, parameter, spoken,
    },
    unit::{Unit, signed},
    voice::{capital, rule_of_thumb},
};

/// How many causes are shown.
const SHOWN: usize = 4;
/// How many of them with their reasons.
const WITH_REASONS: usize = 2;
/// A cause with less is not shown beside likelier ones.
const LEAST: f64 = 0.04;

/// The sheet within 80 columns: what was read, the cause, the test, the one change, some twenty lines; all the reasons
/// behind it where they are asked for.
pub fn judgement_told(judgement: &Judgement, unit: Unit, why: bool) -> String {
    let mut out = String::new();
    read(&mut out, judgement, unit);
    torn(&mut out, judgement);
    open(&mut out, judgement);
    match judgement.outcome {
        Outcome::Fits => {
            out.push_str("\nAll of it fits: nothing is changed. With `--write` the record is closed.\n")
        }
        Outcome::Nothing => {
            out.push_str("\nNothing of this asks for a change. Say what else is seen, or that it fits.\n");
        }
        Outcome::Waits | Outcome::Test | Outcome::Change => short(&mut out, judgement, unit),
    }
    if why {
        reasons(&mut out, judgement, unit);
    } else if !judgement.ranking.causes.is_empty()
        && !matches!(judgement.outcome, Outcome::Fits | Outcome::Nothing)
        && says_anything(judgement)
    {
        out.push_str("`--why` tells all the reasons, with their sources.\n");
    }
    out
}

/// A heading with its text; later lines stand four letters in from it.
fn hanging(heading: &str, text: &str) -> String {
    /// The width of a terminal, less the four letters.
    const WIDTH: usize = 76;
    let blanks = heading.len() - heading.trim_start().len();
    let lines = wrapped(&format!("{heading}{text}"), WIDTH - blanks);
    let lead = " ".repeat(blanks);
    format!("{lead}{}\n", lines.join(&format!("\n{lead}    ")))
}

/// What was read, before anything else is said.
fn read(out: &mut String, judgement: &Judgement, unit: Unit) {
    let report = &judgement.toile.report;
    for seen in &report.seen {
        out.push_str(&hanging("read: ", &seen.plain()));
    }
    if report.fits {
        out.push_str("read: all of it fits\n");
    }
    for (test, result) in &judgement.toile.tested {
        if let Some(quick) = knowledge().test(test)
            && let Some(result) = quick.results.iter().find(|it| it.key == *result)
        {
            out.push_str(&hanging("tested: ", &format!("{}: {}", quick.key, spoken(&result.says, unit))));
        }
    }
    if report.stance {
        out.push_str("read: a stance that is judged first\n");
    }
    for (said, read) in report.slips.iter().take(3) {
        out.push_str(&hanging("read: ", &format!("\"{}\" as \"{read}\"", clean(said))));
    }
    let unknown: Vec<String> = report
        .unknown
        .iter()
        .take(5)
        .map(|(word, near)| {
            let near = near.as_ref().map(|near| format!(" (perhaps \"{near}\")")).unwrap_or_default();
            format!("\"{}\"{near}", clean(word))
        })
        .collect();
    if !unknown.is_empty() {
        out.push_str(&hanging("not understood: ", &unknown.join(", ")));
    }
    for part in &report.unread {
        out.push_str(&hanging("not read: ", &format!("\"{}\": say it by itself if it matters", clean(part))));
    }
    if report.cut {
        let _ = writeln!(out, "read to the first {} characters only", crate::toile::LONGEST_REPORT);
    }
    for step in judgement.toile.past.last() {
        if let Some(since) = judgement.toile.past.since {
            let text = format!("{since} (`{}`, fitting {})", step.path, step.fitting);
            out.push_str(&hanging("since the last change: ", &text));
        }
    }
}

fn torn(out: &mut String, judgement: &Judgement) {
    if let Some((one, other)) = judgement.ranking.torn {
        let words = |at: usize| clean(&judgement.toile.report.seen[at].words);
        out.push_str(&hanging(
            "These do not go together: ",
            &format!(
                "\"{}\" and \"{}\". Look again, or let the test below decide.",
                words(one),
                words(other)
            ),
        ));
    }
}

/// What was told and does not say enough, with the option that answers it.
fn open(out: &mut String, judgement: &Judgement) {
    for (at, open) in judgement.toile.report.open.iter().enumerate() {
        let number = at + 1;
        let about = format!("\"{}\": {}", clean(&open.words), open.question());
        out.push_str(&hanging(&format!("question {number}: "), &about));
        let answers = open.answers().join(", ");
        out.push_str(&headed("    ", &format!("--answer \"{number}=...\": {answers}; none leaves it out")));
    }
}

/// Whether anything speaks in the ranking.
fn says_anything(judgement: &Judgement) -> bool {
    let toile = &judgement.toile;
    toile.report.stance || !toile.tested.is_empty() || toile.report.seen.iter().any(Seen::is_wrong)
}

/// Cause, test and change in few lines.
fn short(out: &mut String, judgement: &Judgement, unit: Unit) {
    if !says_anything(judgement) && judgement.toile.past.since.is_none() {
        out.push_str("\nNo change is advised before the questions are answered.\n");
        return;
    }
    out.push('\n');
    let undone = judgement.advice.as_ref().is_some_and(|advice| advice.amount == Amount::Undone);
    let causes = if undone { &[][..] } else { judgement.ranking.causes.as_slice() };
    let per_cent = |it: &Ranked| (100.0 * it.share).round();
    for (at, it) in causes.iter().take(2).enumerate() {
        let known = knowledge().of(it.cause);
        if at == 0 {
            let because = because(it, unit);
            let text = format!("{} (a chance of {} in 100{because})", known.lacks, per_cent(it));
            let heading =
                if judgement.doubt == Some(Doubt::Guess) { "a guess: " } else { "the pattern lacks: " };
            out.push_str(&hanging(heading, &text));
        } else if it.share >= LEAST && !judgement.clear {
            out.push_str(&hanging("or: ", &format!("{} ({} in 100)", known.lacks, per_cent(it))));
        }
    }
    first(out, judgement, unit);
    if let Some(test) =
        judgement.test.as_ref().filter(|_| !judgement.clear && judgement.outcome != Outcome::Waits)
    {
        out.push_str(&hanging("test first: ", &spoken(&test.test.ask, unit)));
        for (result, _) in &test.results {
            out.push_str(&headed(
                "    ",
                &format!("--tested {}={}: {}", test.test.key, result.key, spoken(&result.says, unit)),
            ));
        }
    }
    match (&judgement.advice, judgement.outcome) {
        (Some(it), _) => next(out, it, judgement.clear, unit),
        (None, Outcome::Test) => out.push_str(&headed("", &in_doubt(judgement))),
        (None, _) => out.push_str("No change is advised before the questions are answered.\n"),
    }
}

/// Why no change is advised.
fn in_doubt(judgement: &Judgement) -> String {
    let why = match judgement.doubt {
        Some(Doubt::Opposite) => "the two likeliest causes ask for opposite changes",
        Some(Doubt::Guess) => "the likeliest cause is a guess",
        Some(Doubt::Torn) | None => "the signs contradict each other",
    };
    match judgement.test {
        Some(_) => format!("No change is advised before the test: {why}."),
        None => format!("No change is advised: {why}. Say more of what is seen, and where."),
    }
}

/// In one phrase, why a cause stands first.
fn because(it: &Ranked, unit: Unit) -> String {
    let mut parts: Vec<String> = Vec::new();
    if let Some((_, fault)) = it.signs.first() {
        parts.push(format!("as in \"{}\"", fault.title));
    }
    if let Some((test, result, true)) = it.tests.first() {
        parts.push(spoken(&test.results[*result].says, unit));
    }
    let most = it.numbers.iter().filter(|number| number.weight.abs() > 0.15);
    if let Some(number) = most.max_by(|a, b| a.weight.abs().total_cmp(&b.weight.abs())) {
        parts.push(number_said(number, unit));
    }
    if parts.is_empty() { String::new() } else { format!("; {}", parts.join("; ")) }
}

/// The change with its amount, what it does, and what to look at.
fn next(out: &mut String, advice: &Advice, clear: bool, unit: Unit) {
    let cause = advice.cause.map(|id| knowledge().of(id));
    for why in &advice.why {
        out.push_str(&headed("", &format!("{}.", capital(&why.said(unit)))));
    }
    let heading = if clear { "change" } else { "untested, it would be" };
    for (at, it) in advice.moves.iter().enumerate() {
        let named = if at == 0 { format!("{heading}: ") } else { "and: ".to_owned() };
        let key = it.key();
        let text = format!(
            "`{}` {} -> {} ({})",
            it.path(),
            valued(key, it.from, unit),
            valued(key, it.to, unit),
            amount_said(advice.amount)
        );
        out.push_str(&hanging(&named, &text));
    }
    if advice.moves.is_empty() {
        if let Some(cause) = cause {
            match &cause.hand {
                Some(hand) if cause.change.is_empty() => {
                    out.push_str(&hanging("next, by hand on toile and paper: ", &spoken(hand, unit)));
                    out.push_str(&hanging(
                        "    note: ",
                        "no key of the file does this: a new draft comes out as this one",
                    ));
                    out.push_str(&hanging("    look then: ", &format!("{}.", cause.then)));
                }
                hand => {
                    out.push_str(&hanging("next: ", &spoken(hand.as_deref().unwrap_or(&cause.then), unit)))
                }
            }
        }
        return;
    }
    if let Some(hand) = by_hand(advice, unit) {
        out.push_str(&hanging("    by hand: ", &hand));
    }
    if let Some(effect) = &advice.effect {
        out.push_str(&hanging("    does: ", &does(effect, unit)));
        for notice in new_notices(&effect.before.report, &effect.after.report, unit) {
            out.push_str(&hanging("    note: ", &notice));
        }
    }
    for it in &advice.beside {
        let amount = valued(Some(it.key), it.up_to, unit);
        let up_to = if it.first { "to" } else { "up to" };
        out.push_str(&hanging("    beside it: ", &format!("`{}` {up_to} {amount}, {}", it.key, it.when)));
    }
    if let Some(cause) = cause {
        out.push_str(&hanging("    look then: ", &format!("{}.", cause.then)));
    }
}

fn amount_said(amount: Amount) -> &'static str {
    match amount {
        Amount::Pinned => "as pinned",
        Amount::Measured => "as measured",
        Amount::Step(None) => "the ordinary step of one fitting",
        Amount::Step(Some(Degree::Slight)) => "half the ordinary step: it is slight",
        Amount::Step(Some(Degree::Strong)) => "half as much again as the ordinary step: it is strong",
        Amount::Undone => "as it was before",
    }
}

/// The change as a hand does it on paper.
fn by_hand(advice: &Advice, unit: Unit) -> Option<String> {
    let cause = advice.cause.map(|id| knowledge().of(id));
    if let Some(hand) = cause.and_then(|cause| cause.hand.as_deref()) {
        return Some(spoken(hand, unit));
    }
    let it = advice.moves.iter().find(|it| it.key().is_some())?;
    let other_way = if it.to < it.from { "(the other way round) " } else { "" };
    Some(format!("{other_way}{}", rule_of_thumb(it.key()?.about().hand_method, unit)))
}

/// What a change does to both pieces, in one line: only what moves.
fn does(effect: &Effect, unit: Unit) -> String {
    /// Less is not seen on a tape, cm.
    const SEEN: f64 = 0.05;
    let (before, after) = (&effect.before.report, &effect.after.report);
    let mut parts: Vec<String> = Vec::new();
    let mut part = |name: String, was: f64, is: f64| {
        if (is - was).abs() >= SEEN {
            parts.push(format!("{name} {}", unit.change(is - was)));
        }
    };
    part("front crotch seam".to_owned(), before.crotch.front, after.crotch.front);
    part("back crotch seam".to_owned(), before.crotch.back, after.crotch.back);
    for (was, is) in before.seams.iter().zip(&after.seams) {
        part(was.seam.plain().to_owned(), was.front, is.front);
    }
    for (was, is) in before.levels.iter().zip(&after.levels) {
        part(format!("ease at the {}", was.level), was.ease(), is.ease());
    }
    if parts.is_empty() {
        parts.push("no length that is measured moves".to_owned());
    }
    let holds =
        if after.is_true() { "seams and joins hold" } else { "a seam or join no longer holds: give less" };
    format!("{}; {holds}", parts.join(", "))
}

/// All the reasons.
fn reasons(out: &mut String, judgement: &Judgement, unit: Unit) {
    out.push_str("\nWhy\n");
    seen(out, judgement, unit);
    out.push_str("\nWhat the pattern lacks, the likeliest first\n");
    for (at, it) in judgement.ranking.causes.iter().take(SHOWN).enumerate() {
        if at == 0 || it.share >= LEAST {
            cause(out, at + 1, it, judgement, unit);
        }
    }
    unlikely(out, judgement, unit);
    if let Some(test) = judgement.test.as_ref() {
        let heading = if judgement.clear { "To be surer" } else { "Test first" };
        let _ = writeln!(out, "\n{heading}: {}", test.test.key);
        out.push_str(&headed("  ", &spoken(&test.test.ask, unit)));
        for (result, then) in &test.results {
            let shown = judgement.ranking.causes.iter().take(SHOWN).position(|it| it.cause == *then);
            let what = shown
                .map_or_else(|| format!("\"{}\"", knowledge().of(*then).lacks), |at| (at + 1).to_string());
            let says = format!("{}; speaks for {what}", spoken(&result.says, unit));
            out.push_str(&headed(&format!("  {:<14} ", result.key), &says));
        }
    }
    if let Some(it) = &judgement.advice {
        advice(out, it, unit);
    }
}

fn seen(out: &mut String, judgement: &Judgement, unit: Unit) {
    let report = &judgement.toile.report;
    for step in judgement.toile.past.last() {
        let key = parameter(&step.path).map(|(_, key)| key);
        let from = step.from.map_or("?".to_owned(), |from| valued(key, from, unit));
        let text = format!("`{}` {from} -> {}", step.path, valued(key, step.to, unit));
        out.push_str(&headed("  last change: ", &text));
    }
    for seen in &report.seen {
        out.push_str(&headed("  read ", &format!("\"{}\" as {}", clean(&seen.words), seen.plain())));
    }
}

/// What is looked at before anything of the pattern is changed.
fn first(out: &mut String, judgement: &Judgement, unit: Unit) {
    /// A look that is less likely is not asked for.
    const ASKED: f64 = 0.08;
    let likely: Vec<&Ranked> = judgement.ranking.first.iter().filter(|it| it.share >= ASKED).collect();
    let measure = judgement.advice.as_ref().map_or(&[][..], |advice| &advice.measure);
    let waist = waist_first(judgement);
    if likely.is_empty() && measure.is_empty() && !waist {
        return;
    }
    for it in likely {
        let cause = knowledge().of(it.cause);
        let hand = cause.hand.as_deref().map_or_else(String::new, |hand| spoken(hand, unit));
        out.push_str(&hanging("before the pattern: ", &format!("perhaps {}: {hand}", cause.lacks)));
    }
    if waist {
        out.push_str(&headed(
            "before it: ",
            "see that the waist neither binds nor slides (test `open_band`)",
        ));
    }
    for (measurement, why) in measure {
        out.push_str(&hanging("measure: ", &format!("`{}`: {why}", measurement.key())));
    }
}

/// A waist that binds or slides hides everything below it.
fn waist_first(judgement: &Judgement) -> bool {
    /// From this share on it is looked at.
    const LOOKED_AT: f64 = 0.08;
    let known = knowledge();
    let is_waist = |it: &&Ranked| {
        matches!(known.of(it.cause).key.as_str(), "waist-tight" | "waist-loose" | "high-hip-tight")
    };
    let later = judgement
        .advice
        .as_ref()
        .and_then(|advice| advice.cause)
        .is_some_and(|cause| known.of(cause).turn > WAIST_TURN);
    let done = judgement.toile.tested.iter().any(|(test, _)| test == "open_band");
    later && !done && judgement.ranking.causes.iter().filter(is_waist).any(|it| it.share >= LOOKED_AT)
}

/// The step of the order of fitting at which a binding waist is freed.
const WAIST_TURN: f64 = 3.0;

fn cause(out: &mut String, number: usize, it: &Ranked, judgement: &Judgement, unit: Unit) {
    let known = knowledge().of(it.cause);
    let standing = match it.standing() {
        Standing::Best => "fits best",
        Standing::Well => "fits well",
        Standing::Possible => "possible",
    };
    out.push_str(&headed(&format!("  {number}  "), &format!("{} ({standing})", known.lacks)));
    let sign = |at: usize| judgement.toile.report.seen[at].sign.plain();
    if number > WITH_REASONS {
        out.push_str(&headed("     ", &in_short(it, unit)));
        return;
    }
    let mut told: Vec<&str> = Vec::new();
    for (_, fault) in &it.signs {
        if told.contains(&fault.key.as_str()) {
            continue;
        }
        told.push(&fault.key);
        let signs: Vec<String> =
            it.signs.iter().filter(|(_, of)| of.key == fault.key).map(|(at, _)| sign(*at)).collect();
        let text =
            format!("{}, as in \"{}\" [{}]", signs.join("; "), fault.title, spoken(&fault.source, unit));
        out.push_str(&headed("     sign:   ", &text));
        if let Some(note) = &fault.note {
            out.push_str(&headed("     note:   ", note));
        }
    }
    for evidence in &it.numbers {
        out.push_str(&headed("     draft:  ", &number_said(evidence, unit)));
    }
    for (test, result, speaks) in &it.tests {
        let which = if *speaks { "for" } else { "against" };
        out.push_str(&headed(
            "     tested: ",
            &format!("{}, speaks {which} it", spoken(&test.results[*result].says, unit)),
        ));
    }
    if it.worse {
        out.push_str("     record: the last change of this kind made it worse\n");
    }
}

/// Why a less likely cause stands in the list, in one line.
fn in_short(it: &Ranked, unit: Unit) -> String {
    let faults: Vec<String> = it.signs.iter().map(|(_, fault)| format!("\"{}\"", fault.title)).collect();
    match (faults.first(), it.tests.iter().find(|(.., speaks)| *speaks)) {
        (Some(fault), _) => format!("as in {fault}"),
        (None, Some((test, result, _))) => format!("tested: {}", spoken(&test.results[*result].says, unit)),
        (None, None) => "by no sign of its own: what is left when the others are weighed".to_owned(),
    }
}

/// What the signs alone would say and the draft's numbers do not.
fn unlikely(out: &mut String, judgement: &Judgement, unit: Unit) {
    let shown =
        |it: &&Ranked| !judgement.ranking.causes.iter().take(WITH_REASONS).any(|of| of.cause == it.cause);
    let against = |it: &&Ranked| it.by_signs >= 0.15 && it.share < 0.5 * it.by_signs;
    for it in judgement.ranking.causes.iter().filter(shown).filter(against) {
        if let Some(number) = it.numbers.iter().find(|number| number.weight < -0.5) {
            let text = format!("{}: {}.", knowledge().of(it.cause).lacks, number_said(number, unit));
            out.push_str(&headed("  not likely: ", &text));
        }
    }
}

fn number_said(evidence: &Evidence, unit: Unit) -> String {
    let long = |cm: f64| unit.length(cm);
    let from = |origin: Origin| match origin {
        Origin::Measured => "measured",
        Origin::Derived => "from measured ones",
        Origin::Estimated => "estimated",
    };
    let said = match evidence.number {
        Number::Ease { level, ease, least, most, from: origin } => {
            let most = most.map_or(" or more".to_owned(), |most| format!(" to {}", long(most)));
            format!(
                "{} of ease at the {level}, wanted {}{most} (body {})",
                long(ease),
                long(least),
                from(origin)
            )
        }
        Number::Crotch { ease, wanted, from: origin } => format!(
            "crotch seam with {} of ease, wanted {} (body {})",
            long(ease),
            long(wanted),
            from(origin)
        ),
        Number::CrotchPart { front, seam, wanted } => format!(
            "{} crotch seam {}, the measured part asks for {}",
            if front { "front" } else { "back" },
            long(seam),
            long(wanted)
        ),
        Number::FrontThigh { width, wanted } => {
            format!("front {} wide at the thigh, the measured arc asks for {}", long(width), long(wanted))
        }
        Number::Inseam { difference } => {
            format!("back inseam {} against the front's", unit.change(difference))
        }
        Number::AtItsEnd { key, value } => {
            format!("`{key}` is {} already, as far as is usual", valued(Some(key), value, unit))
        }
        Number::OtherWay { key, value } => {
            format!("`{key}` is {}, the other way", valued(Some(key), value, unit))
        }
    };
    let speaks = match evidence.weight {
        weight if weight > 0.15 => "; speaks for it",
        weight if weight < -0.15 => "; speaks against it",
        _ => "",
    };
    format!("{said}{speaks}")
}

fn advice(out: &mut String, advice: &Advice, unit: Unit) {
    let cause = advice.cause.map(|id| knowledge().of(id));
    out.push_str("\nThe change\n");
    for it in &advice.moves {
        out.push_str(&one_move(it, advice, cause, unit));
    }
    if let Some(effect) = &advice.effect {
        effect_table(out, effect, unit);
    }
    if advice.holds_fit && !advice.moves.is_empty() {
        out.push_str(&headed(
            "  ",
            "The fit's own parameters are held as they were sewn, so that nothing else moves.",
        ));
    }
    if let Some(cause) = cause {
        out.push_str(&headed("  not: ", &format!("{}.", spoken(&cause.avoid, unit))));
    }
    let said = |key: &Key| advice.beside.iter().any(|it| it.key == *key);
    for (key, why) in advice.moves.iter().filter_map(Move::key).flat_map(|key| key.about().companions) {
        if !said(key) {
            out.push_str(&headed(&format!("  beside it `{key}`: "), &format!("{why}.")));
        }
    }
}

fn one_move(it: &Move, advice: &Advice, cause: Option<&Cause>, unit: Unit) -> String {
    let from = amount_said(advice.amount);
    let mut text =
        format!("{} -> {} ({from}", valued(it.key(), it.from, unit), valued(it.key(), it.to, unit));
    if let Some(key) = it.key() {
        let about = key.about();
        let _ = write!(
            text,
            "; usual {}, never beyond {}",
            about.unit.range(about.usual).in_unit(unit),
            about.unit.range(about.hard).in_unit(unit)
        );
    } else if let Some(cause) = cause {
        let step = cause.change.first().map_or(0.0, |setting| setting.step);
        let _ = write!(text, "; {} a fitting", unit.length(step));
    }
    headed(&format!("  `{}` ", it.path()), &format!("{text})"))
}

/// What the change does: the crotch seam, the seams that must sew together, levels that move.
fn effect_table(out: &mut String, effect: &Effect, unit: Unit) {
    let (before, after) = (&effect.before.report, &effect.after.report);
    let row = |out: &mut String, name: &str, was: f64, is: f64| {
        // what does not move is not told
        if (is - was).abs() < 0.005 {
            return;
        }
        let _ = writeln!(
            out,
            "    {name:<26} {:>8} {:>8} {:>7}",
            unit.fine(was),
            unit.fine(is),
            signed(unit.fine(is - was))
        );
    };
    let _ = writeln!(out, "    {:<26} {:>8} {:>8} {:>7}", format!("lengths in {unit}"), "sewn", "then", "by");
    row(out, "crotch seam, front", before.crotch.front, after.crotch.front);
    row(out, "crotch seam, back", before.crotch.back, after.crotch.back);
    row(out, "crotch seam, in all", before.crotch.total(), after.crotch.total());
    if let (Some(was), Some(is)) = (before.crotch.ease(), after.crotch.ease()) {
        row(out, &format!("crotch ease (wanted {})", unit.length(after.crotch.wanted)), was, is);
    }
    for (was, is) in before.seams.iter().zip(&after.seams) {
        let seam = was.seam.plain();
        row(out, &format!("{seam}, front"), was.front, is.front);
        row(out, &format!("{seam}, back"), was.back, is.back);
    }
    for (was, is) in before.levels.iter().zip(&after.levels) {
        if (was.ease() - is.ease()).abs() >= 0.005 {
            row(out, &format!("ease at the {}", was.level), was.ease(), is.ease());
        }
    }
    let verdict =
        if after.is_true() { "Seams and joins hold." } else { "A seam or join no longer holds: give less." };
    let _ = writeln!(out, "    {verdict}");
    for notice in new_notices(before, after, unit) {
        out.push_str(&hanging("    note: ", &notice));
    }
}

/// What is said of the new draft and was not of the old.
fn new_notices(before: &Report, after: &Report, unit: Unit) -> Vec<String> {
    let old = before.notices();
    after
        .notices()
        .into_iter()
        .filter(|notice| !old.iter().any(|it| it.code == notice.code))
        .map(|it| it.text(unit))
        .collect()
}
