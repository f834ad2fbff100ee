//! What a fit goes after, from what the tape says of the body and how sure it is of it.

use super::descent::Misses;
use crate::{
    adjust::Parameters,
    body::{Body, Origin},
    draft::{Plan, Taped, taped_at},
    fit::{front_thigh::front_width_wanted, limit::LEAN},
    terms::{EaseAt, Measurement, Sex, WaistLevel},
};

/// How closely the total crotch length is met, cm: exactly, as far as cloth is concerned. What the tape may have
/// missed is reported, not left in the cloth.
const TOTAL: f64 = 0.05;
/// How closely the split of the crotch length is met beyond what is not asked, cm.
const SPLIT: f64 = 0.25;
/// How closely the front keeps the width that the front thigh arc asks for, cm.
const ARC: f64 = 0.3;
/// How closely the least thigh ease is kept, cm.
const THIGH: f64 = 0.1;
/// So much more than the least is gone for, cm, since it is only nearly met.
const THIGH_OVER: f64 = 0.03;
/// How closely a centre seam of one leg keeps to that of both beyond what is eased without a thought, cm: half of
/// what can be eased.
const CENTRE: f64 = 0.004;
const EASED_LIGHTLY: f64 = 0.15;
/// How closely the lean of the centre back keeps within what hangs and sits, and how far off its ends, degrees.
const LEAN_KEPT: f64 = 0.05;
const LEAN_OFF: f64 = 0.2;
/// Over this the corners of limits are rounded, cm and degrees.
const ROUNDING: f64 = 0.05;
/// Two surveys that divided the crotch length at another point of the body differ by this much of it in the back's
/// share, for everybody alike: 1988 and 2012 US Army Anthropometric Surveys. Less than that a split does not tell.
pub(in crate::fit) const ANOTHER_DIVISION: f64 = 0.05;
/// An estimated crotch length is followed wholly where it is as sure as this, cm: what waist, hip, rise and leg tell of it
/// at the natural waist (2.25 and 2.18 on 536 women and 449 men of the 1988 survey).
const AS_SURE_AS_MEASURED_TRUNK: f64 = 2.3;

/// What the draft shall meet; `None` for what is not asked.
pub(super) struct Targets<'a> {
    plan: &'a Plan,
    body: &'a Body,
    total: Option<f64>,
    back: Option<f64>,
    thigh: Option<f64>,
    arc: bool,
    centres: Option<(f64, f64)>,
    lean: (f64, f64),
}

/// The value in cm, where it was measured or follows from what was.
pub(in crate::fit) fn measured(body: &Body, measurement: Measurement) -> Option<f64> {
    body.value(measurement).filter(|value| value.from != Origin::Estimated).map(|value| value.cm)
}

/// The part of the way to the estimated crotch length that the spread of the estimate allows; `None` where it was
/// measured.
pub fn part_of_estimate(body: &Body) -> Option<f64> {
    let value = body.value(Measurement::TotalCrotchLength)?;
    (value.from == Origin::Estimated).then(|| (AS_SURE_AS_MEASURED_TRUNK / value.sd).powi(2).min(1.0))
}

/// The mean share of the back in people's crotch lengths: 1988 US Army Anthropometric Survey. The tape is divided at the
/// body's lowest point, which does not lie where the inseam lies; so only a person's difference from it counts.
pub(in crate::fit) fn mean_back_share(sex: Sex, level: WaistLevel) -> Option<f64> {
    let (natural, navel, iso) = match sex {
        Sex::Female => (0.512, 0.503, 0.54),
        Sex::Male => (0.506, 0.494, 0.44),
        Sex::Unsaid => (0.509, 0.4985, 0.49),
    };
    match level {
        WaistLevel::Natural => Some(natural),
        WaistLevel::Navel => Some(navel),
        WaistLevel::Iso => Some(natural + iso * (navel - natural)),
        WaistLevel::Worn => None,
    }
}

fn thigh(taped: &Taped) -> Option<f64> {
    Some(taped.front_thigh? + taped.back_thigh?)
}

/// `x` where it is positive, 0 where it is negative, rounded between.
fn above(x: f64) -> f64 {
    0.5 * (x + x.hypot(ROUNDING))
}

/// What of a difference lies beyond what is not asked for.
fn beyond(difference: f64, not_asked: f64) -> f64 {
    above(difference - not_asked) - above(-difference - not_asked)
}

impl<'a> Targets<'a> {
    /// What the trunk and both legs are fitted to.
    pub(super) fn of_both(plan: &'a Plan, body: &'a Body, given: &Parameters) -> Self {
        let plain = taped_at(plan, &Parameters::default());
        let (front, back) = (plain.front_crotch, plain.back_crotch);
        let ease = plan.inputs.ease[EaseAt::CrotchLength];
        let total = body.value(Measurement::TotalCrotchLength).map(|value| {
            let part = part_of_estimate(body).unwrap_or(1.0);
            front + back + part * (value.cm + ease - front - back)
        });
        let share = || {
            let back = measured(body, Measurement::BackCrotchLength)?;
            let whole = measured(body, Measurement::TotalCrotchLength)?;
            Some(back / whole - mean_back_share(body.sex, body.waist_level)?)
        };
        let wanted_back =
            total.zip(share()).map(|(total, differs)| total * (back / (front + back) + differs));
        Self {
            plan,
            body,
            total,
            back: wanted_back,
            thigh: least_thigh(plan, body, given),
            arc: measured(body, Measurement::FrontThighArc).is_some(),
            centres: None,
            lean: lean_kept(&plain),
        }
    }

    /// What one leg is fitted to beside the other: its own thigh, with the centre seams of both.
    pub(super) fn of_one_leg(plan: &'a Plan, body: &'a Body, given: &Parameters, both: &Taped) -> Self {
        Self {
            plan,
            body,
            total: None,
            back: None,
            thigh: least_thigh(plan, body, given),
            arc: measured(body, Measurement::FrontThighArc).is_some(),
            centres: Some((both.front_crotch, both.back_crotch)),
            lean: (f64::NEG_INFINITY, f64::INFINITY),
        }
    }

    /// How far what the tape reads is from each target, in spreads.
    pub(super) fn misses(&self, taped: &Taped) -> Misses {
        let (front, back) = (taped.front_crotch, taped.back_crotch);
        let total = self.total.map_or(0.0, |total| (front + back - total) / TOTAL);
        let not_asked = ANOTHER_DIVISION * self.total.unwrap_or(0.0);
        let split = self.back.map_or(0.0, |wanted| beyond(back - wanted, not_asked) / SPLIT);
        let thigh = self.thigh.zip(thigh(taped)).map_or(0.0, |(least, has)| above(least - has) / THIGH);
        let arc = match (self.arc, front_width_wanted(self.plan, taped, self.body)) {
            (true, Some(wanted)) => above(wanted - taped.front_thigh.unwrap_or(wanted)) / ARC,
            _ => 0.0,
        };
        let [centre_front, centre_back] = self.centres.map_or([0.0; 2], |(of_front, of_back)| {
            [front - of_front, back - of_back].map(|differs| beyond(differs, EASED_LIGHTLY) / CENTRE)
        });
        let lean = [self.lean.0 - taped.back_lean, taped.back_lean - self.lean.1]
            .map(|over| if over.is_finite() { above(over) / LEAN_KEPT } else { 0.0 });
        Misses::from([total, split, thigh, arc, centre_front, centre_back, lean[0], lean[1]])
    }
}

/// Between which leans of the centre back the fit keeps: those that hang and sit, or as far as the block is beyond.
fn lean_kept(plain: &Taped) -> (f64, f64) {
    (plain.back_lean.min(LEAN.0 + LEAN_OFF), plain.back_lean.max(LEAN.1 - LEAN_OFF))
}

/// The least girth at the thigh that the fit must keep: the style's minimum on a measured thigh; on an estimated one
/// only what the draft has before the fit.
fn least_thigh(plan: &Plan, body: &Body, given: &Parameters) -> Option<f64> {
    let girth = body.cm(Measurement::ThighGirth)?;
    let least = girth + plan.wanted[EaseAt::Thigh].0;
    if measured(body, Measurement::ThighGirth).is_some() {
        return Some(least + THIGH_OVER);
    }
    Some(thigh(&taped_at(plan, given))?.min(least + THIGH_OVER))
}
