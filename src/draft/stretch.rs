//! What a cloth that stretches across takes off the ease.
//!
//! Only girths give way: a woven stretch is reduced lengthwise only where it stretches lengthwise too, so that depth and
//! crotch length stay as they are. All figures: the working rule for woven stretch cloth (common practice, no source),
//! hip ease 0 to -2 per cent of the girth from 10 per cent of usable stretch, -2 to -5 from 20, -5 to -8 from 35, never
//! more than about a third of the stretch spent standing.

use crate::{
    body::Body,
    terms::{EaseAt, Measurement},
};

/// A cloth of less usable cross stretch than this, per cent, is cut as if it had none.
pub(super) const RIGID_BELOW: f64 = 10.0;
/// The part of its stretch that a closed hem gives to a heel that passes it (common practice, no source).
const GIVES: f64 = 0.8;

/// Stretch and what it takes off the hip, both per cent; the rule's bands joined so that nothing jumps. The rigid ease
/// of a close pair of trousers is about 2 per cent of the girth.
const TAKEN: [[f64; 2]; 5] = [[RIGID_BELOW, 0.0], [15.0, 2.5], [20.0, 4.0], [35.0, 7.0], [50.0, 10.0]];

/// What the stretch of a cloth, per cent, takes off the ease at a place, as a part of the body's girth there.
pub(super) fn taken(stretch: f64, at: EaseAt) -> f64 {
    let part = match at {
        // Waist and abdomen feel a tight cloth first.
        EaseAt::Waist => 0.25,
        EaseAt::TopHip => 0.5,
        EaseAt::Hip | EaseAt::Thigh | EaseAt::Knee | EaseAt::Calf => 1.0,
        EaseAt::CrotchDepth | EaseAt::CrotchLength => 0.0,
    };
    part * at_hip(stretch) / 100.0
}

fn at_hip(stretch: f64) -> f64 {
    let above = TAKEN.partition_point(|[rung, _]| *rung <= stretch);
    match (above.checked_sub(1).and_then(|below| TAKEN.get(below)), TAKEN.get(above)) {
        (None, _) => 0.0,
        (Some([_, most]), None) => *most,
        (Some([from, low]), Some([to, high])) => low + (high - low) * (stretch - from) / (to - from),
    }
}

/// How wide a closed opening becomes when a heel passes it, as a part of its girth at rest.
fn opened_by(stretch: f64) -> f64 {
    if stretch < RIGID_BELOW { 1.0 } else { 1.0 + GIVES * stretch / 100.0 }
}

/// In a cloth that does not stretch, the least by which a hem is wider than heel and instep, cm: common practice, no source.
const HEM_PASSAGE: f64 = 1.0;

/// The least by which a closed leg must be wider than the heel to let it pass, cm: negative where the cloth stretches.
pub(crate) fn least_over_heel(stretch: f64, body: &Body) -> f64 {
    if stretch < RIGID_BELOW {
        return HEM_PASSAGE;
    }
    body.cm(Measurement::HeelGirth).map_or(0.0, |heel| heel / opened_by(stretch) - heel)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rigid_cloth_as_without_stretch() {
        for stretch in [0.0, 5.0, 9.9, 10.0] {
            assert_eq!(taken(stretch, EaseAt::Hip), 0.0);
        }
        assert_eq!(opened_by(9.9), 1.0);
    }

    #[test]
    fn hip_ease_of_close_trousers_within_the_bands_of_the_rule() {
        // a rigid ease of 2 per cent, less what the stretch takes
        for (stretch, least, most) in
            [(15.0, -2.0, 0.0), (20.0, -2.0, 0.0), (35.0, -5.0, -2.0), (50.0, -8.0, -5.0), (90.0, -8.0, -5.0)]
        {
            let ease = 2.0 - 100.0 * taken(stretch, EaseAt::Hip);
            let rounding = 1e-9;
            assert!(least - rounding <= ease && ease <= most + rounding, "{stretch}: {ease}");
        }
    }

    #[test]
    fn a_third_of_the_stretch_at_most_spent_standing() {
        for stretch in 1..=100 {
            let ease = 2.0 - 100.0 * taken(f64::from(stretch), EaseAt::Hip);
            assert!(-ease <= f64::from(stretch) / 3.0, "{stretch}: {ease}");
        }
    }

    #[test]
    fn lengths_left_alone() {
        assert_eq!(taken(50.0, EaseAt::CrotchDepth), 0.0);
        assert_eq!(taken(50.0, EaseAt::CrotchLength), 0.0);
    }
}
