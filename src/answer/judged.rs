//! A toile judged, as data for programs.

use serde::Serialize;

use super::{
    number::{Cm, Degrees, Share},
    warning::Warning,
};
use crate::{
    adjust::Measure,
    draft::Draft,
    fit::Report,
    mistake::harmless_json,
    terms::{Seam, Word},
    toile::{Advice, Amount, Beside, Degree, Doubt, Judgement, Move, Number, Ranked, knowledge, spoken},
    unit::Unit,
};

/// The name of the format in every judged toile.
const FORMAT: &str = "breeks-toile";
/// Raised when a field changes its meaning.
const VERSION: u32 = 1;

/// A cause with less is left out.
const LEAST: f64 = 0.01;

/// A toile judged. Lengths in cm to 4 decimals, angles in degrees to 2. `clear` is false where the test comes first.
#[derive(Serialize)]
pub struct Judged<'a> {
    format: &'static str,
    version: u32,
    units: &'static str,
    name: &'a str,
    block: &'a str,
    outcome: &'static str,
    seen: Vec<Seen<'a>>,
    fits: bool,
    questions: Vec<OpenOut<'a>>,
    tested: Vec<Tested<'a>>,
    not_understood: Vec<Unknown<'a>>,
    not_read: &'a [String],
    contradict: Option<[usize; 2]>,
    doubt: Option<&'static str>,
    first: Vec<Cause<'a>>,
    causes: Vec<Cause<'a>>,
    test: Option<Test<'a>>,
    clear: bool,
    advice: Option<Next<'a>>,
    warnings: Vec<Warning>,
}

#[derive(Serialize)]
struct OpenOut<'a> {
    question: usize,
    said: &'a str,
    ask: String,
    answers: &'static [&'static str],
    not_understood: Vec<Unknown<'a>>,
}

#[derive(Serialize)]
struct Seen<'a> {
    said: &'a str,
    read: String,
    denied: bool,
    degree: Option<&'static str>,
    side: Option<&'static str>,
    waits: bool,
    at: Option<&'static str>,
    face: Option<&'static str>,
    feel: Option<&'static str>,
    lines: Option<&'static str>,
    to: Option<&'static str>,
    does: Option<&'static str>,
    when: Option<&'static str>,
    one_side: bool,
    fine: bool,
}

#[derive(Serialize)]
struct Tested<'a> {
    test: &'a str,
    result: &'a str,
}

#[derive(Serialize)]
struct Unknown<'a> {
    word: &'a str,
    nearest: Option<&'a str>,
}

#[derive(Serialize)]
struct Cause<'a> {
    cause: &'a str,
    lacks: &'a str,
    share: Share,
    signs: Vec<SignOf<'a>>,
    numbers: Vec<NumberOut>,
    tests: Vec<TestOf<'a>>,
    made_worse: bool,
}

#[derive(Serialize)]
struct SignOf<'a> {
    seen: usize,
    fault: &'a str,
    title: &'a str,
    source: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    note: Option<&'a str>,
}

#[derive(Serialize)]
struct TestOf<'a> {
    test: &'a str,
    result: &'a str,
    speaks_for: bool,
}

#[derive(Serialize)]
struct NumberOut {
    number: &'static str,
    of: Option<&'static str>,
    value: Cm,
    wanted: Option<Cm>,
    weight: Degrees,
}

#[derive(Serialize)]
struct Test<'a> {
    test: &'a str,
    ask: String,
    bits: Share,
    results: Vec<ResultOf<'a>>,
}

#[derive(Serialize)]
struct ResultOf<'a> {
    result: &'a str,
    says: String,
    then: &'a str,
}

#[derive(Serialize)]
struct Next<'a> {
    cause: Option<&'a str>,
    why: Vec<String>,
    measure: Vec<MeasureOf<'a>>,
    amount_from: &'static str,
    change: Vec<ChangeOf>,
    holds_fit: bool,
    effect: Option<EffectOf>,
    beside: Vec<BesideOf>,
    by_hand: Option<String>,
    then: Option<&'a str>,
    avoid: Option<String>,
}

#[derive(Serialize)]
struct MeasureOf<'a> {
    measurement: &'static str,
    why: &'a str,
}

#[derive(Serialize)]
struct ChangeOf {
    key: String,
    unit: &'static str,
    from: Degrees,
    to: Degrees,
    usual: Option<(f64, f64)>,
    hard: Option<(f64, f64)>,
}

#[derive(Serialize)]
struct EffectOf {
    before: Numbers,
    after: Numbers,
    holds: bool,
}

#[derive(Serialize)]
struct Numbers {
    crotch_front: Cm,
    crotch_back: Cm,
    crotch_ease: Option<Cm>,
    inseam_front: Option<Cm>,
    inseam_back: Option<Cm>,
    side_seam_front: Option<Cm>,
    side_seam_back: Option<Cm>,
}

impl Numbers {
    fn of(report: &Report) -> Self {
        let seam = |which| report.seams.iter().find(|row| row.seam == which);
        let (inseam, side) = (seam(Seam::Inseam), seam(Seam::SideSeam));
        Self {
            crotch_front: Cm(report.crotch.front),
            crotch_back: Cm(report.crotch.back),
            crotch_ease: report.crotch.ease().map(Cm),
            inseam_front: inseam.map(|row| Cm(row.front)),
            inseam_back: inseam.map(|row| Cm(row.back)),
            side_seam_front: side.map(|row| Cm(row.front)),
            side_seam_back: side.map(|row| Cm(row.back)),
        }
    }
}

impl<'a> Judged<'a> {
    /// A judged toile of a draft, with what a person should know of the file.
    pub fn new(draft: &'a Draft, judgement: &'a Judgement, warnings: Vec<Warning>, unit: Unit) -> Self {
        let report = &judgement.toile.report;
        let causes = |list: &'a [Ranked]| {
            list.iter().filter(|it| it.share >= LEAST).map(|it| Cause::of(it, unit)).collect()
        };
        Self {
            format: FORMAT,
            version: VERSION,
            units: "cm",
            name: &draft.name,
            block: &draft.recipe.name,
            outcome: judgement.outcome.key(),
            seen: report
                .seen
                .iter()
                .map(|seen| Seen {
                    said: &seen.words,
                    read: seen.plain(),
                    denied: seen.denied,
                    degree: seen.degree.map(Word::key),
                    side: seen.side.map(Word::key),
                    waits: seen.waits,
                    at: seen.sign.at.map(Word::key),
                    face: seen.sign.face.map(Word::key),
                    feel: seen.sign.feel.map(Word::key),
                    lines: seen.sign.lines.map(Word::key),
                    to: seen.sign.to.map(Word::key),
                    does: seen.sign.does.map(Word::key),
                    when: seen.sign.when.map(Word::key),
                    one_side: seen.sign.one_side,
                    fine: seen.sign.fine,
                })
                .collect(),
            fits: report.fits,
            questions: report
                .open
                .iter()
                .enumerate()
                .map(|(at, open)| OpenOut {
                    question: at + 1,
                    said: &open.words,
                    ask: open.question(),
                    answers: open.answers(),
                    not_understood: unknown(&open.unknown),
                })
                .collect(),
            tested: judgement.toile.tested.iter().map(|(test, result)| Tested { test, result }).collect(),
            not_understood: unknown(&report.unknown),
            not_read: &report.unread,
            contradict: judgement.ranking.torn.map(|(one, other)| [one, other]),
            doubt: judgement.doubt.map(Doubt::key),
            first: causes(&judgement.ranking.first),
            causes: causes(&judgement.ranking.causes),
            test: judgement.test.as_ref().map(|it| Test {
                test: &it.test.key,
                ask: spoken(&it.test.ask, unit),
                bits: Share(it.gain),
                results: it
                    .results
                    .iter()
                    .map(|(result, then)| ResultOf {
                        result: &result.key,
                        says: spoken(&result.says, unit),
                        then: &knowledge().of(*then).key,
                    })
                    .collect(),
            }),
            clear: judgement.clear,
            advice: judgement.advice.as_ref().map(|advice| Next::of(advice, unit)),
            warnings,
        }
    }

    /// As JSON with line breaks.
    pub fn to_json(&self) -> String {
        // Cannot fail: every key is a string and every number is finite.
        harmless_json(serde_json::to_string_pretty(self).unwrap_or_default())
    }
}

fn unknown(words: &[(String, Option<String>)]) -> Vec<Unknown<'_>> {
    words.iter().map(|(word, near)| Unknown { word, nearest: near.as_deref() }).collect()
}

impl<'a> Cause<'a> {
    fn of(it: &'a Ranked, unit: Unit) -> Self {
        let cause = knowledge().of(it.cause);
        Self {
            cause: &cause.key,
            lacks: &cause.lacks,
            share: Share(it.share),
            signs: it
                .signs
                .iter()
                .map(|(seen, fault)| SignOf {
                    seen: *seen,
                    fault: &fault.key,
                    title: &fault.title,
                    source: spoken(&fault.source, unit),
                    note: fault.note.as_deref(),
                })
                .collect(),
            numbers: it.numbers.iter().map(|it| NumberOut::of(it.number, it.weight)).collect(),
            tests: it
                .tests
                .iter()
                .map(|(test, result, speaks)| TestOf {
                    test: &test.key,
                    result: &test.results[*result].key,
                    speaks_for: *speaks,
                })
                .collect(),
            made_worse: it.worse,
        }
    }
}

impl NumberOut {
    fn of(number: Number, weight: f64) -> Self {
        let (name, of, value, wanted) = match number {
            Number::Ease { level, ease, least, .. } => ("ease", Some(level.key()), ease, Some(least)),
            Number::Crotch { ease, wanted, .. } => ("crotch_ease", None, ease, Some(wanted)),
            Number::CrotchPart { front: true, seam, wanted } => ("crotch_front", None, seam, Some(wanted)),
            Number::CrotchPart { front: false, seam, wanted } => ("crotch_back", None, seam, Some(wanted)),
            Number::FrontThigh { width, wanted } => ("front_thigh", None, width, Some(wanted)),
            Number::Inseam { difference } => ("inseam_difference", None, difference, None),
            Number::AtItsEnd { key, value } => ("at_its_end", Some(key.key()), value, None),
            Number::OtherWay { key, value } => ("other_way", Some(key.key()), value, None),
        };
        Self { number: name, of, value: Cm(value), wanted: wanted.map(Cm), weight: Degrees(weight) }
    }
}

impl<'a> Next<'a> {
    fn of(advice: &'a Advice, unit: Unit) -> Self {
        let cause = advice.cause.map(|id| knowledge().of(id));
        Self {
            cause: cause.map(|cause| cause.key.as_str()),
            why: advice.why.iter().map(|why| why.said(unit)).collect(),
            measure: advice
                .measure
                .iter()
                .map(|(measurement, why)| MeasureOf { measurement: measurement.key(), why })
                .collect(),
            amount_from: match advice.amount {
                Amount::Pinned => "pinned",
                Amount::Measured => "measured",
                Amount::Step(None) => "step",
                Amount::Step(Some(Degree::Slight)) => "slight",
                Amount::Step(Some(Degree::Strong)) => "strong",
                Amount::Undone => "undone",
            },
            change: advice.moves.iter().map(ChangeOf::of).collect(),
            holds_fit: advice.holds_fit,
            effect: advice.effect.as_ref().map(|effect| EffectOf {
                before: Numbers::of(&effect.before.report),
                after: Numbers::of(&effect.after.report),
                holds: effect.after.report.is_true(),
            }),
            beside: advice.beside.iter().map(BesideOf::of).collect(),
            by_hand: cause
                .and_then(|cause| cause.hand.as_deref())
                .or_else(|| advice.moves.iter().find_map(Move::key).map(|key| key.about().hand_method))
                .map(|hand| spoken(hand, unit)),
            then: cause.map(|cause| cause.then.as_str()),
            avoid: cause.map(|cause| spoken(&cause.avoid, unit)),
        }
    }
}

#[derive(Serialize)]
struct BesideOf {
    key: &'static str,
    from: Degrees,
    up_to: Degrees,
    first: bool,
    when: &'static str,
}

impl BesideOf {
    fn of(it: &Beside) -> Self {
        let Beside { key, from, up_to, first, when } = *it;
        Self { key: key.key(), from: Degrees(from), up_to: Degrees(up_to), first, when }
    }
}

impl ChangeOf {
    fn of(it: &Move) -> Self {
        let about = it.key().map(|key| key.about());
        Self {
            key: it.path(),
            unit: about.map_or(Measure::Cm, |about| about.unit).symbol(),
            from: Degrees(it.from),
            to: Degrees(it.to),
            usual: about.map(|about| about.usual),
            hard: about.map(|about| about.hard),
        }
    }
}
