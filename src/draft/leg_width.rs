//! Body before style: the widths of knee and hem that a recipe gives grow until the leg passes over knee, calf and heel.

use super::{panel::Levels, smooth::at_least_nothing, stretch::least_over_heel};
use crate::{
    body::Body,
    mistake::Notice,
    order::Trousers,
    recipe::Inputs,
    terms::{EaseAt, Level, Measurement, Style},
    voice::{length, list},
};

/// Over this the corner is rounded where a width begins to grow, cm of girth.
const ROUNDING: f64 = 0.1;
/// Growth smaller than this is not told, cm of flat width.
const WORTH_TELLING: f64 = 0.05;

/// A girth that must pass, and how much of it the leg lacks.
struct Lack {
    of: &'static str,
    girth: f64,
}

/// Grows the widths that the file does not give, and says so; nothing where the body has room in all of them. The widths
/// that the file gives stand, and are judged.
pub(super) fn grown_for_body(
    inputs: &mut Inputs,
    body: &Body,
    trousers: &Trousers,
    levels: &Levels,
    least: impl Fn(EaseAt) -> f64,
) -> Vec<Notice> {
    let styled = |style: Style| trousers.style[style].is_some();
    let flat = |inputs: &Inputs, style: Style| inputs.style[style];
    let (Some(knee), Some(hem)) = (flat(inputs, Style::KneeWidth), flat(inputs, Style::HemWidth)) else {
        return Vec::new();
    };
    let lacking = |of: Measurement, ease: f64, girth: f64| {
        at_least_nothing(body.cm(of).map_or(0.0, |cm| cm + ease - girth), ROUNDING)
    };
    let heel = least_over_heel(trousers.cloth_stretch, body);
    let mut grown = [(Style::KneeWidth, knee, Vec::new()), (Style::HemWidth, hem, Vec::new())];
    let mut grow = |at: usize, girth: f64, of: &'static str| {
        grown[at].1 += 0.5 * girth;
        grown[at].2.push(Lack { of, girth });
        grown[at].1
    };
    let (mut knee, mut hem) = (knee, hem);
    if !styled(Style::KneeWidth) {
        knee = grow(0, lacking(Measurement::KneeGirth, least(EaseAt::Knee), 2.0 * knee), "knee");
        knee = grow(0, lacking(Measurement::HeelGirth, heel, 2.0 * knee), "heel");
    }
    if !styled(Style::HemWidth) {
        hem = grow(1, lacking(Measurement::HeelGirth, heel, 2.0 * hem), "heel");
    }
    // Between knee and hem the leg is straight; where it ends above the calf there is none to pass.
    let down = (levels[Level::Calf] - levels[Level::Knee]) / (levels[Level::Hem] - levels[Level::Knee]);
    if (0.0..1.0).contains(&down) {
        let calf = 2.0 * (knee + down * (hem - knee));
        let lack = lacking(Measurement::CalfGirth, least(EaseAt::Calf), calf);
        match (styled(Style::KneeWidth), styled(Style::HemWidth)) {
            (false, _) => knee = grow(0, lack / (1.0 - down), "calf"),
            (true, false) => hem = grow(1, lack / down, "calf"),
            (true, true) => {}
        }
    }
    inputs.style[Style::KneeWidth] = Some(knee);
    inputs.style[Style::HemWidth] = Some(hem);
    grown.into_iter().filter_map(|(style, width, lacks)| told(style, width, &lacks)).collect()
}

fn told(style: Style, width: f64, lacks: &[Lack]) -> Option<Notice> {
    let by = 0.5 * lacks.iter().map(|lack| lack.girth).sum::<f64>();
    let why: Vec<&str> =
        lacks.iter().filter(|lack| 0.5 * lack.girth > WORTH_TELLING).map(|lack| lack.of).collect();
    (!why.is_empty()).then(|| {
        Notice::note(
            "width-grown",
            "the recipe's `{style}` lets the {girths} not pass: it is {by} more, {width} flat. `trousers.style.{style}` sets \
             another",
        )
        .with("style", style)
        .with("girths", list(why))
        .with("by", length(by))
        .with("width", length(width))
    })
}
