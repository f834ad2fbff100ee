//! A toile judged, as data for programs.

use serde::Serialize;

use super::{
    number::{Cm, Degrees},
    warning::Warning,
};
use crate::{
    adjust::Measure,
    draft::Draft,
    fit::Report,
    terms::{Seam, Word},
    toile::{Advice, Amount, Judgement, Move, Number, Ranked, knowledge},
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
    seen: Vec<Seen<'a>>,
    tested: Vec<Tested<'a>>,
    not_understood: Vec<Unknown<'a>>,
    contradict: Option<[usize; 2]>,
    first: Vec<Cause<'a>>,
    causes: Vec<Cause<'a>>,
    test: Option<Test<'a>>,
    clear: bool,
    advice: Option<Next<'a>>,
    warnings: Vec<Warning>,
}

#[derive(Serialize)]
struct Seen<'a> {
    said: &'a str,
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

/// A share to 3 decimals.
struct Share(f64);

impl Serialize for Share {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_f64(super::number::rounded(self.0, 1e3))
    }
}

#[derive(Serialize)]
struct SignOf<'a> {
    seen: usize,
    fault: &'a str,
    title: &'a str,
    source: &'a str,
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
    ask: &'a str,
    bits: Share,
    results: Vec<ResultOf<'a>>,
}

#[derive(Serialize)]
struct ResultOf<'a> {
    result: &'a str,
    says: &'a str,
    then: &'a str,
}

#[derive(Serialize)]
struct Next<'a> {
    cause: Option<&'a str>,
    why: &'a [String],
    measure: Vec<MeasureOf<'a>>,
    amount_from: &'static str,
    change: Vec<ChangeOf>,
    holds_fit: bool,
    effect: Option<EffectOf>,
    by_hand: Option<&'a str>,
    then: Option<&'a str>,
    avoid: Option<&'a str>,
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
    pub fn new(draft: &'a Draft, judgement: &'a Judgement, warnings: Vec<Warning>) -> Self {
        let report = &judgement.toile.report;
        let causes = |list: &'a [Ranked]| list.iter().filter(|it| it.share >= LEAST).map(Cause::of).collect();
        Self {
            format: FORMAT,
            version: VERSION,
            units: "cm",
            name: &draft.name,
            block: &draft.recipe.name,
            seen: report
                .seen
                .iter()
                .map(|seen| Seen {
                    said: &seen.words,
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
            tested: judgement.toile.tested.iter().map(|(test, result)| Tested { test, result }).collect(),
            not_understood: report
                .unknown
                .iter()
                .map(|(word, near)| Unknown { word, nearest: near.as_deref() })
                .collect(),
            contradict: judgement.ranking.torn.map(|(one, other)| [one, other]),
            first: causes(&judgement.ranking.first),
            causes: causes(&judgement.ranking.causes),
            test: judgement.test.as_ref().map(|it| Test {
                test: &it.test.key,
                ask: &it.test.ask,
                bits: Share(it.gain),
                results: it
                    .results
                    .iter()
                    .map(|(result, then)| ResultOf {
                        result: &result.key,
                        says: &result.says,
                        then: &knowledge().of(*then).key,
                    })
                    .collect(),
            }),
            clear: judgement.clear,
            advice: judgement.advice.as_ref().map(Next::of),
            warnings,
        }
    }

    /// As JSON with line breaks.
    pub fn to_json(&self) -> String {
        // Cannot fail: every key is a string and every number is finite.
        serde_json::to_string_pretty(self).unwrap_or_default()
    }
}

impl<'a> Cause<'a> {
    fn of(it: &'a Ranked) -> Self {
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
                    source: &fault.source,
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
    fn of(advice: &'a Advice) -> Self {
        let cause = advice.cause.map(|id| knowledge().of(id));
        Self {
            cause: cause.map(|cause| cause.key.as_str()),
            why: &advice.why,
            measure: advice
                .measure
                .iter()
                .map(|(measurement, why)| MeasureOf { measurement: measurement.key(), why })
                .collect(),
            amount_from: match advice.amount {
                Amount::Pinned => "pinned",
                Amount::Measured => "measured",
                Amount::Step => "step",
                Amount::Undone => "undone",
            },
            change: advice.moves.iter().map(ChangeOf::of).collect(),
            holds_fit: advice.holds_fit,
            effect: advice.effect.as_ref().map(|effect| EffectOf {
                before: Numbers::of(&effect.before.report),
                after: Numbers::of(&effect.after.report),
                holds: effect.after.report.is_true(),
            }),
            by_hand: cause
                .and_then(|cause| cause.hand.as_deref())
                .or_else(|| advice.moves.iter().find_map(Move::key).map(|key| key.about().hand_method)),
            then: cause.map(|cause| cause.then.as_str()),
            avoid: cause.map(|cause| cause.avoid.as_str()),
        }
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
