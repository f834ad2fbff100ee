//! A toile judged, as a fitter reads it: what was seen, what the pattern lacks, the test, the one next change.

use std::fmt::Write;

use super::{
    figures::{decimal, figure, length, signed},
    fitting_story::{clean, valued},
    terminal::headed,
};
use crate::{
    adjust::Measure,
    body::Origin,
    fit::Report,
    terms::Word,
    toile::{
        Advice, Amount, Cause, Effect, Evidence, Judgement, Move, Number, Ranked, Standing, knowledge,
        parameter,
    },
    unit::Unit,
};

/// How many causes are shown.
const SHOWN: usize = 4;
/// How many of them with their reasons.
const WITH_REASONS: usize = 2;
/// A cause with less is not shown beside likelier ones.
const LEAST: f64 = 0.04;

/// The sheet within 80 columns.
pub fn fitting_sheet(judgement: &Judgement, unit: Unit) -> String {
    let mut out = String::new();
    seen(&mut out, judgement, unit);
    if let Some((one, other)) = judgement.ranking.torn {
        let words = |at: usize| clean(&judgement.toile.report.seen[at].words);
        out.push_str(&headed(
            "These do not go together: ",
            &format!(
                "\"{}\" and \"{}\". Look again, or let the test below decide.",
                words(one),
                words(other)
            ),
        ));
    }
    first(&mut out, judgement);
    out.push_str("\nWhat the pattern lacks, the likeliest first\n");
    for (at, it) in judgement.ranking.causes.iter().take(SHOWN).enumerate() {
        if at == 0 || it.share >= LEAST {
            cause(&mut out, at + 1, it, judgement, unit);
        }
    }
    unlikely(&mut out, judgement, unit);
    if let Some(test) = judgement.test.as_ref() {
        let heading = if judgement.clear { "To be surer" } else { "Test first" };
        let _ = writeln!(out, "\n{heading}: {}", test.test.key);
        out.push_str(&headed("  ", &test.test.ask));
        for (result, then) in &test.results {
            let shown = judgement.ranking.causes.iter().take(SHOWN).position(|it| it.cause == *then);
            let what = shown
                .map_or_else(|| format!("\"{}\"", knowledge().of(*then).lacks), |at| (at + 1).to_string());
            let says = format!("{}; speaks for {what}", result.says);
            out.push_str(&headed(&format!("  {:<14} ", result.key), &says));
        }
        out.push_str(&headed("  ", &format!("Answer with --tested {}=RESULT.", test.test.key)));
    }
    match &judgement.advice {
        Some(it) => advice(&mut out, it, judgement.clear, unit),
        None => out.push_str("\nNo change is advised before the test: the signs contradict each other.\n"),
    }
    out
}

fn seen(out: &mut String, judgement: &Judgement, unit: Unit) {
    let report = &judgement.toile.report;
    for step in judgement.toile.past.last() {
        let key = parameter(&step.path).map(|(_, key)| key);
        let from = step.from.map_or("?".to_owned(), |from| valued(key, from, unit));
        let since =
            judgement.toile.past.since.map(|since| format!("; since then {since}")).unwrap_or_default();
        let text = format!(
            "`{}` {from} -> {} (fitting {}){since}",
            step.path,
            valued(key, step.to, unit),
            step.fitting
        );
        out.push_str(&headed("Last change: ", &text));
    }
    if !report.seen.is_empty() {
        out.push_str("Seen\n");
    }
    for seen in &report.seen {
        let _ = writeln!(out, "  {}", seen.sign.plain());
        let words = clean(&seen.words);
        if !words.is_empty() && words != seen.sign.plain() {
            out.push_str(&headed("      said: ", &words));
        }
    }
    for (test, result) in &judgement.toile.tested {
        if let Some(quick) = knowledge().test(test)
            && let Some(result) = quick.results.iter().find(|it| it.key == *result)
        {
            out.push_str(&headed(&format!("Tested {}: ", quick.key), &result.says));
        }
    }
    if report.stance {
        out.push_str("A stance was told that is judged first.\n");
    }
    for (word, near) in report.unknown.iter().take(5) {
        let near = near.as_ref().map(|near| format!("; nearest known: {near}")).unwrap_or_default();
        out.push_str(&headed("Not understood: ", &format!("\"{}\"{near}", clean(word))));
    }
    if report.cut {
        let _ = writeln!(out, "Read to the first {} characters only.", crate::toile::LONGEST_REPORT);
    }
}

/// What is looked at before anything of the pattern is changed.
fn first(out: &mut String, judgement: &Judgement) {
    /// A look that is less likely is not asked for.
    const ASKED: f64 = 0.08;
    let likely: Vec<&Ranked> = judgement.ranking.first.iter().filter(|it| it.share >= ASKED).collect();
    let measure = judgement.advice.as_ref().map_or(&[][..], |advice| &advice.measure);
    let waist = waist_first(judgement);
    if likely.is_empty() && measure.is_empty() && !waist {
        return;
    }
    out.push_str("\nBefore the pattern\n");
    for it in likely {
        let cause = knowledge().of(it.cause);
        let hand = cause.hand.as_deref().unwrap_or_default();
        out.push_str(&headed("  - ", &format!("Perhaps {}: {hand}.", cause.lacks)));
    }
    if waist {
        out.push_str(&headed("  - ", "See that the waist neither binds nor slides: the test `open_band`."));
    }
    for (measurement, why) in measure {
        out.push_str(&headed("  - ", &format!("Measure `{}`: {why}.", measurement.key())));
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
        out.push_str(&headed("     ", &in_short(it)));
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
        let text = format!("{}, as in \"{}\" [{}]", signs.join("; "), fault.title, fault.source);
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
        out.push_str(&headed("     tested: ", &format!("{}, speaks {which} it", test.results[*result].says)));
    }
    if it.worse {
        out.push_str("     record: the last change of this kind made it worse\n");
    }
}

/// Why a less likely cause stands in the list, in one line.
fn in_short(it: &Ranked) -> String {
    let faults: Vec<String> = it.signs.iter().map(|(_, fault)| format!("\"{}\"", fault.title)).collect();
    match (faults.first(), it.tests.iter().find(|(.., speaks)| *speaks)) {
        (Some(fault), _) => format!("as in {fault}"),
        (None, Some((test, result, _))) => format!("tested: {}", test.results[*result].says),
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
    let long = |cm: f64| length(cm, unit);
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
                figure(least, unit),
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
            format!("back inseam {} against the front's", signed(figure(difference, unit)))
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

fn advice(out: &mut String, advice: &Advice, clear: bool, unit: Unit) {
    let cause = advice.cause.map(|id| knowledge().of(id));
    let heading = match (advice.moves.is_empty(), clear) {
        (true, _) => "Next",
        (false, true) => "Next change, this one alone",
        (false, false) => "If it cannot be tested, the next change would be, alone",
    };
    let _ = writeln!(out, "\n{heading}");
    for why in &advice.why {
        out.push_str(&headed("  ", &format!("{}.", sentence(why))));
    }
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
        out.push_str(&headed("  look then: ", &format!("{}.", cause.then)));
        out.push_str(&headed("  not: ", &format!("{}.", cause.avoid)));
    }
    for (key, why) in advice.moves.iter().filter_map(Move::key).flat_map(|key| key.about().companions) {
        out.push_str(&headed(&format!("  beside it `{key}`: "), &format!("{why}.")));
    }
    if let Some(hand) = cause.and_then(|cause| cause.hand.as_deref()) {
        out.push_str(&headed("  by hand: ", hand));
    } else if let Some(key) = advice.moves.iter().find_map(Move::key) {
        let other_way = if advice.moves[0].to < advice.moves[0].from { "(the other way round) " } else { "" };
        out.push_str(&headed("  by hand: ", &format!("{other_way}{}", key.about().hand_method)));
    }
}

fn sentence(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default()
}

fn one_move(it: &Move, advice: &Advice, cause: Option<&Cause>, unit: Unit) -> String {
    let from = match advice.amount {
        Amount::Pinned => "as pinned",
        Amount::Measured => "as measured",
        Amount::Step => "the ordinary step of one fitting",
        Amount::Undone => "as it was before",
    };
    let mut text =
        format!("{} -> {} ({from}", valued(it.key(), it.from, unit), valued(it.key(), it.to, unit));
    if let Some(key) = it.key() {
        let about = key.about();
        let bare = |value: f64| match about.unit {
            Measure::Degrees => decimal(value, 1),
            Measure::Cm => decimal(unit.from_cm(value), 2),
        };
        let _ = write!(
            text,
            "; usual {} to {}, never beyond {} to {}",
            bare(about.usual.0),
            bare(about.usual.1),
            bare(about.hard.0),
            bare(about.hard.1)
        );
    } else if let Some(cause) = cause {
        let step = cause.change.first().map_or(0.0, |setting| setting.step);
        let _ = write!(text, "; {} a fitting", length(step, unit));
    }
    headed(&format!("  `{}` ", it.path()), &format!("{text})"))
}

/// What the change does: the crotch seam, the seams that must sew together, levels that move.
fn effect_table(out: &mut String, effect: &Effect, unit: Unit) {
    let (before, after) = (&effect.before.report, &effect.after.report);
    let places = 2;
    let row = |out: &mut String, name: &str, was: f64, is: f64| {
        let [was, is] = [was, is].map(|cm| unit.from_cm(cm));
        let _ = writeln!(
            out,
            "    {name:<26} {:>8} {:>8} {:>7}",
            decimal(was, places),
            decimal(is, places),
            signed(decimal(is - was, places))
        );
    };
    let _ = writeln!(out, "    {:<26} {:>8} {:>8} {:>7}", format!("lengths in {unit}"), "sewn", "then", "by");
    row(out, "crotch seam, front", before.crotch.front, after.crotch.front);
    row(out, "crotch seam, back", before.crotch.back, after.crotch.back);
    row(out, "crotch seam, in all", before.crotch.total(), after.crotch.total());
    if let (Some(was), Some(is)) = (before.crotch.ease(), after.crotch.ease()) {
        row(out, &format!("crotch ease (wanted {})", decimal(unit.from_cm(after.crotch.wanted), 1)), was, is);
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
        out.push_str(&headed("    note: ", &notice));
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
