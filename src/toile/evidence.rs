//! What the numbers of the draft say for or against a cause: a thigh with ease enough is no girth fault.

use super::knowledge::{Cause, CrotchPart, Lack, Target};
use crate::{
    adjust::Key,
    body::Origin,
    draft::taped,
    fit::{Leg, front_width_wanted},
    terms::{Level, Measurement, Seam},
};

/// A number of the draft, and how much it speaks for a cause (above 0) or against it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Evidence {
    /// The logarithm of the odds it gives.
    pub weight: f64,
    /// The number.
    pub number: Number,
}

/// A number of the draft. Lengths in cm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Number {
    /// Ease at a level.
    Ease {
        /// The level.
        level: Level,
        /// Pattern less body.
        ease: f64,
        /// The least that is a fit.
        least: f64,
        /// The most that is a fit, where there is one.
        most: Option<f64>,
        /// Where the body's girth is from.
        from: Origin,
    },
    /// Ease of the crotch seam.
    Crotch {
        /// Seam less body.
        ease: f64,
        /// What is wanted.
        wanted: f64,
        /// Where the body's crotch length is from.
        from: Origin,
    },
    /// One part of the crotch seam against the body's part and half of the wanted ease.
    CrotchPart {
        /// On the front; else on the back.
        front: bool,
        /// The seam.
        seam: f64,
        /// What the measured part asks for.
        wanted: f64,
    },
    /// Width of the front at thigh level against what the measured arc asks for.
    FrontThigh {
        /// The front's width.
        width: f64,
        /// What the arc asks for.
        wanted: f64,
    },
    /// Back inseam less front inseam.
    Inseam {
        /// The difference.
        difference: f64,
    },
    /// The parameter is already as far as is usual in this direction.
    AtItsEnd {
        /// Which.
        key: Key,
        /// Its value.
        value: f64,
    },
    /// The parameter is set the other way.
    OtherWay {
        /// Which.
        key: Key,
        /// Its value.
        value: f64,
    },
}

/// A girth is doubted by this much beside the spread of its measurement, cm.
const GIRTH_SPREAD: f64 = 1.0;
/// A waist by more: it changes by 1 to 2 cm in a day (razmery.info, a trade guide) and people differ in what they bear there.
const WAIST_SPREAD: f64 = 2.0;
/// How much a whole girth says of one place of it.
const LOCALLY: f64 = 0.3;
/// A crotch length is within the noise of the tape by this much, cm (common practice, no source).
const CROTCH_SPREAD: f64 = 1.5;
/// No number alone decides: the logarithm of the odds it may give.
const MOST: f64 = 2.0;
/// The tape is divided at the body's lowest point, the pattern at the inseam, which lies this much further forward, cm.
const INSEAM_FORWARD: f64 = 2.3;

/// What the draft says of a cause.
pub(super) fn evidence(cause: &Cause, leg: &Leg) -> Vec<Evidence> {
    let mut found: Vec<Evidence> = cause.numbers.and_then(|lack| of_lack(lack, leg)).into_iter().collect();
    found.extend(cause.change.first().and_then(|setting| match setting.target {
        Target::Adjust(key) => of_value(key, setting.more, setting.step, leg),
        Target::Ease(_) | Target::Style(_) => None,
    }));
    found
}

fn weighed(weight: f64, number: Number) -> Evidence {
    Evidence { weight: weight.clamp(-MOST, MOST), number }
}

fn of_lack(lack: Lack, leg: &Leg) -> Option<Evidence> {
    match lack {
        Lack::ShortGirth(level) => {
            let girth = girth(level, leg)?;
            Some(weighed((girth.least - girth.ease) / girth.spread, girth.number))
        }
        Lack::ShortLocally(level) => {
            let girth = girth(level, leg)?;
            Some(weighed(LOCALLY * (girth.least - girth.ease) / girth.spread, girth.number))
        }
        Lack::SurplusGirth(level) => {
            let girth = girth(level, leg)?;
            Some(weighed((girth.ease - girth.surplus_from()) / (1.5 * girth.spread), girth.number))
        }
        Lack::Crotch { part: CrotchPart::Total, short } => total(short, leg),
        Lack::Crotch { part, short } => part_of_crotch(part == CrotchPart::Front, short, leg),
        Lack::FrontThigh => front_thigh(leg),
        Lack::Inseam => {
            let row = leg.report.seams.iter().find(|row| row.seam == Seam::Inseam)?;
            let weight = if row.holds() { 0.0 } else { 1.5 };
            Some(weighed(weight, Number::Inseam { difference: row.difference() }))
        }
    }
}

fn front_thigh(leg: &Leg) -> Option<Evidence> {
    let draft = &leg.draft;
    let taped = taped(&draft.shape);
    if let Some((wanted, width)) = front_width_wanted(&draft.plan, &taped, &draft.body).zip(taped.front_thigh)
    {
        // The tape of an arc is 1 cm unsure: one that a fit has opened the front for still tells of a thigh that stands out,
        // any other that is met speaks neither for nor against it.
        let opened = draft.adjustments.iter().any(|it| it.key == Key::ThighFront && it.is_found());
        let stands_out = if opened { 0.4 } else { 0.0 };
        return Some(weighed((wanted - width) / 0.8 + stands_out, Number::FrontThigh { width, wanted }));
    }
    // without the arc: a thigh with more ease than any style wants has some of it in front
    let thigh = girth(Level::Thigh, leg)?;
    let over = thigh.ease - thigh.surplus_from();
    (over > 0.0).then(|| weighed((-over / thigh.spread).max(-1.5), thigh.number))
}

/// Ease at a level, and by how much it is doubted, cm.
struct Girth {
    least: f64,
    ease: f64,
    most: Option<f64>,
    spread: f64,
    number: Number,
}

impl Girth {
    /// From here on ease is surplus. Where style sets no most, a good deal more than the least is.
    fn surplus_from(&self) -> f64 {
        self.most.unwrap_or(self.least + 8.0)
    }
}

fn girth(level: Level, leg: &Leg) -> Option<Girth> {
    let row = leg.report.levels.iter().find(|row| row.level == level)?;
    let sd = leg.draft.body.value(level.girth()?)?.sd;
    let spread = if level == Level::Waist { WAIST_SPREAD } else { GIRTH_SPREAD };
    let number = Number::Ease { level, ease: row.ease(), least: row.least, most: row.most, from: row.from };
    Some(Girth { least: row.least, ease: row.ease(), most: row.most, spread: spread + sd, number })
}

fn total(short: bool, leg: &Leg) -> Option<Evidence> {
    let crotch = &leg.report.crotch;
    let (_, from) = crotch.body?;
    let missing = crotch.wanted - crotch.ease()?;
    let sd = leg.draft.body.value(Measurement::TotalCrotchLength)?.sd;
    let sign = if short { 1.0 } else { -1.0 };
    // a crotch length that is met as measured speaks a little against any lack of it
    let met = if from == Origin::Measured { -0.3 } else { 0.0 };
    let weight = sign * missing / (CROTCH_SPREAD + sd) + met;
    Some(weighed(weight, Number::Crotch { ease: crotch.ease()?, wanted: crotch.wanted, from }))
}

fn part_of_crotch(front: bool, short: bool, leg: &Leg) -> Option<Evidence> {
    let (measurement, shift) = if front {
        (Measurement::FrontCrotchLength, -INSEAM_FORWARD)
    } else {
        (Measurement::BackCrotchLength, INSEAM_FORWARD)
    };
    let body = leg.draft.body.value(measurement).filter(|value| value.from == Origin::Measured)?;
    let crotch = &leg.report.crotch;
    let seam = if front { crotch.front } else { crotch.back };
    let wanted = body.cm + shift + 0.5 * crotch.wanted;
    let sign = if short { 1.0 } else { -1.0 };
    let weight = sign * (wanted - seam) / (CROTCH_SPREAD + body.sd);
    Some(weighed(weight, Number::CrotchPart { front, seam, wanted }))
}

fn of_value(key: Key, more: bool, step: f64, leg: &Leg) -> Option<Evidence> {
    let about = key.about();
    let value = leg.draft.parameters[key];
    let (least, most) = about.usual;
    let at_end =
        if more { value >= most - 0.1 * step } else { least < about.default && value <= least + 0.1 * step };
    if at_end {
        return Some(weighed(-1.0, Number::AtItsEnd { key, value }));
    }
    let way = if more { 1.0 } else { -1.0 };
    let from_default = (value - about.default) * way;
    (from_default <= -0.5 * step).then(|| weighed(0.25, Number::OtherWay { key, value }))
}
