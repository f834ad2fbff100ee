//! The measurements looked over: where each comes from, how sure it is, where the body stands among people, what does not
//! go together, and what would be worth measuring next.

use crate::body::{Body, Doubt, Given, Grade, Origin, Value, doubts, people};
use crate::draft::draft;
use crate::fit::{opening_for_arc, part_of_estimate};
use crate::mistake::{Mistakes, Notice, columns, wrapped};
use crate::order::Order;
use crate::recipe;
use crate::terms::{FitKind, Measurement, Sex, Side, WaistLevel, Word};
use crate::unit::Unit;
use crate::voice::rule_of_thumb;
use Measurement::{
    BackCrotchLength, BodyRise, BodyRiseSitting, CalfGirth, FrontCrotchLength, FrontHipArc, FrontThighArc,
    HeelGirth, HipHeight, InsideLeg, KneeGirth, KneeHeight, Stature, ThighGirth, TotalCrotchLength,
    WaistHeight, WaistToHip,
};

/// The measurements of a file looked over, as text of 80 columns without colour.
///
/// # Errors
/// When the measurements cannot be a body; see [`Body::resolve`].
pub fn check(order: &Order) -> Result<String, Mistakes> {
    let (body, notices) = Body::resolve(&order.body)?;
    let mut text = heading(order);
    text.push_str(&table(order, &body));
    for side in [Side::Left, Side::Right] {
        text.push_str(&leg(order, side));
    }
    text.push_str(&oddities(order, &notices));
    text.push_str(&fit(order, &body));
    text.push_str(&worth_measuring(order, &body));
    text.push_str(&footnote(order, &body));
    Ok(text)
}

fn heading(order: &Order) -> String {
    let name = order.name.as_deref().unwrap_or("a body without a label");
    let whose = match order.body.sex {
        Sex::Female => "compared with women",
        Sex::Male => "compared with men",
        Sex::Unsaid => "compared with women and men alike",
    };
    let waist = match order.body.waist_level {
        WaistLevel::Natural => "at the natural waist",
        WaistLevel::Iso => "halfway between rib and hip bone",
        WaistLevel::Navel => "at the navel",
        WaistLevel::Worn => "where the band shall sit",
    };
    let title = format!("{}: waist measured {waist}, {whose}", crate::drawing::Wording::line(name));
    format!("{}\n\n", wrapped(&title, columns()))
}

/// One measurement a line, in the order of the list of measurements.
fn table(order: &Order, body: &Body) -> String {
    let unit = order.units;
    let mut text = format!(
        "  {:<22}{:>9}  {:>6}  {:<10} {:>4}  {}\n",
        "",
        unit.key(),
        "+-",
        "from",
        "less",
        "among people"
    );
    for &measurement in Measurement::ALL {
        if let Some(value) = body.value(measurement) {
            let standing = standing(&order.body, measurement, value);
            text.push_str(&row(measurement.about().title, value, unit, standing));
        }
    }
    text
}

/// What was measured on one leg, if anything was.
fn leg(order: &Order, side: Side) -> String {
    let own = match side {
        Side::Both => None,
        Side::Left => order.left.as_ref(),
        Side::Right => order.right.as_ref(),
    };
    let mut text = String::new();
    for &measurement in Measurement::ALL {
        if let Some(cm) = own.and_then(|leg| leg.measured[measurement]) {
            let about = measurement.about();
            let value = Value { cm, from: Origin::Measured, sd: about.tape_sd, extrapolated: false };
            let standing = standing(&order.body, measurement, value);
            text.push_str(&row(&format!("{side} {}", about.title), value, order.units, standing));
        }
    }
    text
}

fn row(title: &str, value: Value, unit: Unit, standing: Option<f64>) -> String {
    let (length, spread) = (unit.figure(value.cm), unit.figure(value.sd));
    let (less, scale) = match standing {
        Some(spreads) => (format!("{:.0}", below(spreads)), scale(spreads)),
        None => (String::new(), String::new()),
    };
    let mark = if value.extrapolated { "*" } else { "" };
    let line = format!(
        "  {title:<22}{length:>9}  {spread:>6}  {:<10} {less:>4}  {scale}",
        format!("{}{mark}", value.from)
    );
    format!("{}\n", line.trim_end())
}

/// How many spreads a value lies above the mean of people, where they were surveyed.
fn standing(given: &Given, measurement: Measurement, value: Value) -> Option<f64> {
    let (mean, sd) = people(given.sex, given.waist_level, measurement)?;
    Some((value.cm - mean) / sd)
}

/// Of a hundred people, how many have less.
fn below(spreads: f64) -> f64 {
    // never none and never all: the tails of a survey are thin
    (100.0 * normal(spreads)).round().clamp(1.0, 99.0)
}

/// The share of a normal distribution below so many standard deviations, to 0.0005 (Abramowitz and Stegun, Handbook of
/// Mathematical Functions, 26.2.18, from memory).
fn normal(spreads: f64) -> f64 {
    let x = spreads.abs();
    let series = 1.0 + x * (0.196_854 + x * (0.115_194 + x * (0.000_344 + x * 0.019_527)));
    let upper = 0.5 / series.powi(4);
    if spreads < 0.0 { upper } else { 1.0 - upper }
}

/// Three spreads to either side of the mean, two columns a spread, with the body's place.
fn scale(spreads: f64) -> String {
    const HALF: i32 = 6;
    #[expect(clippy::cast_possible_truncation, reason = "clamped to a few columns")]
    let place = (2.0 * spreads).round().clamp(f64::from(-HALF), f64::from(HALF)) as i32;
    (-HALF..=HALF)
        .map(|column| match column {
            _ if column == place => 'o',
            0 => '|',
            _ if column % 2 == 0 => '.',
            _ => ' ',
        })
        .collect::<String>()
}

/// What does not go with the rest.
fn oddities(order: &Order, notices: &[Notice]) -> String {
    let open_sums: Vec<&Notice> = notices.iter().filter(|notice| notice.code == "open-sum").collect();
    let mut found: Vec<Doubt> = Vec::new();
    for side in [Side::Both, Side::Left, Side::Right] {
        for doubt in doubts(&order.leg(side)) {
            if !found.iter().any(|known| known.measurement == doubt.measurement && known.found == doubt.found)
            {
                found.push(doubt);
            }
        }
    }
    if found.is_empty() && open_sums.is_empty() {
        return "\nNothing odd: the measurements go with one another.\n".to_owned();
    }
    let mut text = "\nOdd, judged by all the others together\n".to_owned();
    for doubt in &found {
        let word = match doubt.grade() {
            Some(Grade::Warning) => "warning",
            Some(Grade::Note) | None => "note",
        };
        let unit = order.units;
        let sentence = format!(
            "{word}: {} {} is {}; the others expect {}, give or take {}{}. Take it again: {}",
            doubt.measurement.about().title,
            unit.length(doubt.found),
            if doubt.spreads() < 0.0 { "little" } else { "much" },
            unit.length(doubt.predicted),
            unit.length(doubt.sd),
            doubt.slip().map_or(String::new(), |slip| format!(" ({slip})")),
            rule_of_thumb(doubt.measurement.about().how, unit)
        );
        text.push_str(&indented(&sentence));
    }
    for notice in open_sums {
        text.push_str(&indented(&format!("note: {}.", notice.text(order.units))));
    }
    text
}

/// What the draft will follow, and how surely its crotch will fit.
fn fit(order: &Order, body: &Body) -> String {
    let by: Vec<&str> = [TotalCrotchLength, FrontCrotchLength, BackCrotchLength, ThighGirth, FrontThighArc]
        .into_iter()
        .filter(|m| order.body.cm(*m).is_some())
        .map(|m| m.about().title)
        .collect();
    let to_estimate = part_of_estimate(body).map(|part| match part {
        part if part > WHOLLY => "the crotch length as estimated".to_owned(),
        part => format!("{:.0} per cent of the way to the crotch length as estimated", 100.0 * part),
    });
    let mut sentence = match order.trousers.fit {
        Some(FitKind::Proportional) => "Fit: by the proportions of the recipe, as the file asks.".to_owned(),
        Some(FitKind::Held) => "Fit: held; the corrections of the file and no others.".to_owned(),
        Some(FitKind::Measured) | None => {
            let to: Vec<&str> = by.into_iter().chain(to_estimate.as_deref()).collect();
            format!("Fit: to {}.", to.join(", "))
        }
    };
    if let Some(opening) = opening_asked(order) {
        sentence.push_str(&format!(
            " Of the block {} the front thigh arc asks for thigh.front {}.",
            order.trousers.block,
            order.units.amount(opening)
        ));
    }
    format!("\n{}\n{}", wrapped(&sentence, columns()), crotch_doubt(order, body))
}

/// A part nearer to the whole than this is the whole.
const WHOLLY: f64 = 0.95;

/// What the front thigh arc asks for, where it was measured and the block can be drafted.
fn opening_asked(order: &Order) -> Option<f64> {
    order.body.cm(FrontThighArc)?;
    let recipe = recipe::load(&order.trousers.block).ok()?;
    let draft = draft(&order.of_both_legs(), &recipe).ok()?;
    opening_for_arc(&draft.plan, &draft.body)
}

/// How surely the crotch will have its ease, and which one measurement would tell most.
fn crotch_doubt(order: &Order, body: &Body) -> String {
    /// Less than this is not worth a tape, cm.
    const WORTH_TAKING: f64 = 0.3;
    let Some(now) = body.value(TotalCrotchLength).map(|value| value.sd) else { return String::new() };
    let mut would: Vec<(Measurement, f64)> = CANDIDATES
        .into_iter()
        .filter(|m| order.body.cm(*m).is_none())
        .filter_map(|m| {
            let value = body
                .cm(m)
                .or_else(|| people(order.body.sex, order.body.waist_level, m).map(|(mean, _)| mean))?;
            let (with, _) = Body::resolve(&order.body.clone().with(m, value)).ok()?;
            Some((m, with.value(TotalCrotchLength)?.sd))
        })
        .filter(|(_, sd)| now - sd > WORTH_TAKING)
        .collect();
    would.sort_by(|a, b| a.1.total_cmp(&b.1));
    let unit = order.units;
    let mut sentence = format!("The crotch will have its ease give or take {}.", unit.length(now));
    if let Some((best, sd)) = would.first() {
        sentence.push_str(&format!(
            " One measurement would tell most: {}, then {}",
            best.about().title,
            unit.length(*sd)
        ));
        if let Some((next, sd)) = would.get(1) {
            sentence.push_str(&format!("; next {}, then {}", next.about().title, unit.length(*sd)));
        }
        sentence.push('.');
    }
    format!("{}\n", wrapped(&sentence, columns()))
}

/// What a draft takes from a body, with how much a centimetre of spread in it matters (our own weighing: what the crotch
/// and the seat hang on first, then the thigh, then the leg below).
const NEEDS: [(Measurement, f64); 8] = [
    (BodyRise, 1.0),
    (TotalCrotchLength, 1.0),
    (ThighGirth, 0.6),
    (WaistToHip, 0.5),
    (InsideLeg, 0.5),
    (KneeHeight, 0.25),
    (KneeGirth, 0.25),
    (CalfGirth, 0.15),
];

/// What can be taken, or taken instead of an estimate.
const CANDIDATES: [Measurement; 12] = [
    BodyRise,
    TotalCrotchLength,
    ThighGirth,
    WaistToHip,
    InsideLeg,
    BodyRiseSitting,
    Stature,
    WaistHeight,
    HipHeight,
    KneeHeight,
    KneeGirth,
    CalfGirth,
];

/// The measurements that would narrow most what the draft still has to estimate, each as if those before it were taken.
fn worth_measuring(order: &Order, body: &Body) -> String {
    let mut given = order.body.clone();
    let mut advised = Vec::new();
    while advised.len() < MOST_ADVISED
        && let Some((candidate, value)) = most_narrowing(&given)
    {
        advised.push(candidate);
        given = given.with(candidate, value);
    }
    let mut text = String::new();
    for measurement in &advised {
        let known = match body.value(*measurement) {
            Some(value) => format!(", now estimated to +- {}", order.units.length(value.sd)),
            None => String::new(),
        };
        let about = measurement.about();
        text.push_str(&indented(&format!(
            "{}{known}. {}",
            about.title,
            rule_of_thumb(about.how, order.units)
        )));
    }
    let has = |measurement| order.body.cm(measurement).is_some();
    for (measurement, wanted, why) in [
        (BackCrotchLength, has(TotalCrotchLength), "shows whether the front or the back crotch lacks length"),
        (FrontThighArc, has(ThighGirth), "shows a prominent front thigh before the first toile does"),
        (FrontHipArc, has(TotalCrotchLength), "places the side seam"),
        (HeelGirth, true, "says what a narrow hem has to let through"),
    ] {
        if advised.len() < MOST_ADVISED && wanted && !has(measurement) {
            advised.push(measurement);
            let about = measurement.about();
            text.push_str(&indented(&format!(
                "{}: {why}. {}",
                about.title,
                rule_of_thumb(about.how, order.units)
            )));
        }
    }
    if text.is_empty() { text } else { format!("\nWorth measuring next, the best first\n{text}") }
}

/// The one measurement that would narrow most what has to be estimated, with the value it would probably have.
fn most_narrowing(given: &Given) -> Option<(Measurement, f64)> {
    let (body, _) = Body::resolve(given).ok()?;
    let before = spread(&body);
    CANDIDATES
        .into_iter()
        .filter(|&candidate| given.cm(candidate).is_none())
        .filter_map(|candidate| {
            let value = body
                .cm(candidate)
                .or_else(|| people(given.sex, given.waist_level, candidate).map(|(mean, _)| mean))?;
            let (with, _) = Body::resolve(&given.clone().with(candidate, value)).ok()?;
            Some((before - spread(&with), candidate, value))
        })
        .filter(|(gain, ..)| *gain > LEAST_GAIN)
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, candidate, value)| (candidate, value))
}

/// Less than this is not worth a tape: a spread of 0.4 cm gone from the body rise, say.
const LEAST_GAIN: f64 = 0.15;

/// More advice than this is not followed.
const MOST_ADVISED: usize = 4;

/// The weighed variance of what a draft takes from a body.
fn spread(body: &Body) -> f64 {
    NEEDS.iter().filter_map(|&(m, weight)| Some(weight * body.value(m)?.sd.powi(2))).sum()
}

fn footnote(order: &Order, body: &Body) -> String {
    let mut text = String::from("\n");
    let extrapolated =
        Measurement::ALL.iter().any(|m| body.value(*m).is_some_and(|value| value.extrapolated));
    if extrapolated {
        text.push_str(
            "* extrapolated: the body lies beyond the people surveyed. Measure rather than\n  trust it.\n",
        );
    }
    if order.body.waist_level == WaistLevel::Worn {
        text.push_str("What is measured from a worn waist is compared with nobody.\n");
    }
    text.push_str(
        "+-    one standard deviation of what may be wrong with the value.
less  of a hundred people so many have less. On the scale | is their mean and
      each . one standard deviation. The people: US Army survey of 1988, grown
      and fit; no norm for anybody.
Not for medical or compression wear. Body data stay on this machine.
",
    );
    text
}

/// A paragraph of the report, its first line out by two.
fn indented(sentence: &str) -> String {
    format!("  {}\n", wrapped(sentence, columns() - 4).replace('\n', "\n    "))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn normal_shares_as_in_the_tables() {
        for (spreads, share) in
            [(0.0, 0.5), (1.0, 0.841_34), (-1.0, 0.158_66), (1.96, 0.975), (-3.0, 0.001_35)]
        {
            assert!((normal(spreads) - share).abs() < 0.0005, "{spreads}");
        }
    }

    #[test]
    fn place_on_the_scale() {
        assert_eq!(scale(0.0), ". . . o . . .");
        assert_eq!(scale(-9.0), "o . . | . . .");
        assert_eq!(scale(1.1), ". . . | o . .");
    }
}
