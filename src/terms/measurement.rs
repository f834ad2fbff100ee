//! The body measurements a file may hold.

use super::words;

words! {
    /// A measurement on the body, without ease. Names follow ISO 8559-1 where it has one.
    Measurement {
        /// Round the waist at the file's waist level.
        WaistGirth = "waist_girth",
        /// Halfway between waist and hip level.
        TopHipGirth = "top_hip_girth",
        /// Round the greatest rearward prominence of the seat.
        HipGirth = "hip_girth",
        /// The fullest part of the thigh, below the fold of the seat.
        ThighGirth = "thigh_girth",
        /// Over the centre of the kneecap.
        KneeGirth = "knee_girth",
        /// The greatest girth of the calf.
        CalfGirth = "calf_girth",
        /// The least girth above the ankle.
        AnkleGirth = "ankle_girth",
        /// Round the heel and the bend of the foot.
        HeelGirth = "heel_girth",
        /// Floor to the top of the head.
        Stature = "stature",
        /// Floor straight up to the crotch.
        InsideLeg = "inside_leg",
        /// Tape from the waist at the side over the hip, then straight to the floor.
        OutsideLeg = "outside_leg",
        /// Floor to the waist level, vertical.
        WaistHeight = "waist_height",
        /// Floor to the hip level, vertical.
        HipHeight = "hip_height",
        /// Floor to the centre of the kneecap, vertical.
        KneeHeight = "knee_height",
        /// Waist level to hip level, vertical.
        WaistToHip = "waist_to_hip",
        /// Waist level to crotch, standing, vertical.
        BodyRise = "body_rise",
        /// Waist level to the seat of the chair, sitting, vertical.
        BodyRiseSitting = "body_rise_sitting",
        /// Centre front waist, through the crotch, to centre back waist.
        TotalCrotchLength = "total_crotch_length",
        /// The front part of the total crotch length.
        FrontCrotchLength = "front_crotch_length",
        /// The back part of the total crotch length.
        BackCrotchLength = "back_crotch_length",
        /// Across the front of one thigh at thigh level, from inseam to side seam.
        FrontThighArc = "front_thigh_arc",
        /// Across the front from side seam to side seam at hip level.
        FrontHipArc = "front_hip_arc",
        /// Across the front from side seam to side seam at waist level.
        FrontWaistArc = "front_waist_arc",
        /// Floor to the waist level at the centre front.
        WaistHeightFront = "waist_height_front",
        /// Floor to the waist level at the centre back.
        WaistHeightBack = "waist_height_back",
        /// Depth of the trunk front to back at the crotch.
        ForkDepth = "fork_depth",
        /// Hip girth sitting.
        SittingHipGirth = "sitting_hip_girth",
    }
}

impl Measurement {
    /// How many measurements there are; arrays by measurement have this length.
    pub const COUNT: usize = <Self as super::Word>::ALL.len();
}

/// What is known about a measurement, whoever's body it is.
#[derive(Debug)]
pub struct About {
    /// The measurement that this row is about.
    pub of: Measurement,
    /// Its plain name.
    pub title: &'static str,
    /// Its name in ISO 8559-1:2017, where that has one, and the clause as far as it was read in a secondary source.
    pub iso: Option<(&'static str, Option<&'static str>)>,
    /// How to take it.
    pub how: &'static str,
    /// Standard deviation of a home measurement with a tape, in cm (common practice, no source).
    pub tape_sd: f64,
    /// Least and greatest value that can be an adult body, in cm (own, wide on purpose; outside is refused).
    pub range: (f64, f64),
    /// Whether it may differ between the legs and stand under `[left.measurements]`.
    pub of_a_leg: bool,
}

impl Measurement {
    /// The row of this measurement in the one table about measurements.
    pub fn about(self) -> &'static About {
        &ABOUT[self as usize]
    }
}

const fn about(
    of: Measurement,
    title: &'static str,
    iso: Option<(&'static str, Option<&'static str>)>,
    tape_sd: f64,
    range: (f64, f64),
    of_a_leg: bool,
    how: &'static str,
) -> About {
    About { of, title, iso, how, tape_sd, range, of_a_leg }
}

const BODY: bool = false;
const LEG: bool = true;

/// In the order of the enum. ISO names and clauses were read in secondary sources, not in the standard itself.
#[rustfmt::skip]
static ABOUT: [About; Measurement::COUNT] = [
    about(Measurement::WaistGirth, "waist girth", Some(("waist girth", Some("5.3.10"))), 0.6, (40.0, 220.0), BODY,
        "Tie an elastic at the waist level the file names and leave it on for all that follows. Measure along it, after breathing out, the tape touching but not pressing."),
    about(Measurement::TopHipGirth, "top hip girth", Some(("top hip girth", Some("5.3.12"))), 0.6, (45.0, 230.0), BODY,
        "Round the body halfway between the waist elastic and the hip level, tape level."),
    about(Measurement::HipGirth, "hip girth", Some(("hip girth", Some("5.3.13"))), 0.6, (60.0, 240.0), BODY,
        "Feet together, tape level round the place where the seat, seen from the side, stands out most; it touches all round and presses nowhere."),
    about(Measurement::ThighGirth, "thigh girth", Some(("thigh girth", Some("5.3.20"))), 0.5, (30.0, 130.0), LEG,
        "Feet a little apart, weight on both. Tape level round one thigh, close under the fold of the seat."),
    about(Measurement::KneeGirth, "knee girth", Some(("knee girth", Some("5.3.22"))), 0.4, (22.0, 85.0), LEG,
        "Tape level over the middle of the kneecap, the leg barely bent."),
    about(Measurement::CalfGirth, "calf girth", Some(("calf girth", Some("5.3.24"))), 0.4, (18.0, 85.0), LEG,
        "Standing, tape level; slide it up and down and keep the greatest reading."),
    about(Measurement::AnkleGirth, "ankle girth, least", Some(("minimum leg girth", None)), 0.4, (13.0, 55.0), LEG,
        "Standing, tape level above the ankle bones; keep the least reading."),
    about(Measurement::HeelGirth, "heel girth", None, 0.4, (20.0, 60.0), LEG,
        "Foot pointed, tape round the heel and over the bend of the foot: what a closed hem has to let through."),
    about(Measurement::Stature, "stature", Some(("stature", Some("5.1.1"))), 0.7, (110.0, 240.0), BODY,
        "Without shoes, back to a wall, a book level on the head; measure from the floor to the mark."),
    about(Measurement::InsideLeg, "inside leg", Some(("inside leg height", Some("5.1.15"))), 0.7, (45.0, 125.0), LEG,
        "Without shoes, a book or ruler drawn up level between the legs until it touches firmly. Measure straight from its upper edge to the floor."),
    about(Measurement::OutsideLeg, "outside leg", Some(("outside leg length", None)), 0.7, (60.0, 170.0), LEG,
        "From the waist elastic at the side, tape lying on the hip, from there straight down to the floor. Not the same as the waist height: the tape follows the hip."),
    about(Measurement::WaistHeight, "waist height", Some(("waist height", None)), 0.7, (60.0, 165.0), BODY,
        "Straight up from the floor to the lower edge of the waist elastic at the side, with a rod or a tape held away from the body."),
    about(Measurement::HipHeight, "hip height", Some(("hip height", None)), 0.7, (45.0, 135.0), BODY,
        "Straight up from the floor to the level at which the hip girth was taken."),
    about(Measurement::KneeHeight, "knee height", Some(("knee height", None)), 0.7, (25.0, 80.0), LEG,
        "Straight up from the floor to the middle of the kneecap."),
    about(Measurement::WaistToHip, "waist to hip", Some(("waist to hips", None)), 0.7, (3.0, 45.0), BODY,
        "Straight down from the waist elastic to the hip level at the side, with a ruler upright beside the body. A tape laid on the body reads about 0.5 cm more."),
    about(Measurement::BodyRise, "body rise", Some(("body rise", None)), 0.7, (8.0, 55.0), BODY,
        "Standing: hold a ruler level between the legs as for the inside leg, and measure straight up beside the body from its upper edge to the waist elastic."),
    about(Measurement::BodyRiseSitting, "body rise, sitting", Some(("body rise", None)), 0.7, (8.0, 55.0), BODY,
        "Sitting upright on a hard, flat chair: straight up from the seat to the waist elastic at the side."),
    about(Measurement::TotalCrotchLength, "total crotch length", Some(("total crotch length", Some("5.4.18"))), 0.8, (35.0, 140.0), BODY,
        "From the lower edge of the waist elastic at the centre front, between the legs without pulling, to the elastic at the centre back. Let the person settle the tape."),
    about(Measurement::FrontCrotchLength, "front crotch length", None, 1.0, (15.0, 80.0), BODY,
        "With the tape of the total crotch length still in place: a ring or a weighted cord on it settles at the lowest point. Read from the front waist to there."),
    about(Measurement::BackCrotchLength, "back crotch length", None, 1.0, (15.0, 85.0), BODY,
        "With the tape of the total crotch length still in place, and a ring or a weighted cord on it at the lowest point: from there to the elastic at the centre back."),
    about(Measurement::FrontThighArc, "front thigh arc", None, 1.0, (10.0, 65.0), LEG,
        "At the level of the thigh girth: tape across the front of one thigh from the inseam line, straight under the crotch point, to the side seam line, under a plumb hung from the side of the hip."),
    about(Measurement::FrontHipArc, "front hip arc", None, 1.0, (25.0, 125.0), BODY,
        "At hip level: tape across the front from the left side seam line to the right, each under a plumb hung from the waist at the side."),
    about(Measurement::FrontWaistArc, "front waist arc", None, 1.0, (18.0, 115.0), BODY,
        "Along the waist elastic across the front, from the left side seam line to the right."),
    about(Measurement::WaistHeightFront, "waist height, front", None, 0.7, (55.0, 165.0), BODY,
        "Straight up from the floor to the waist elastic at the centre front."),
    about(Measurement::WaistHeightBack, "waist height, back", None, 0.7, (60.0, 170.0), BODY,
        "Straight up from the floor to the waist elastic at the centre back."),
    about(Measurement::ForkDepth, "fork depth", None, 0.7, (8.0, 65.0), BODY,
        "Two rulers upright, one against the front and one against the seat, close under the crotch: the level distance between them."),
    about(Measurement::SittingHipGirth, "hip girth, sitting", None, 1.0, (60.0, 260.0), BODY,
        "Sitting on a hard chair, tape loose round the fullest place of hips and lap."),
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::terms::Word;

    #[test]
    fn table_rows_in_the_order_of_the_enum() {
        for measurement in Measurement::ALL {
            assert_eq!(measurement.about().of, *measurement);
        }
    }

    #[test]
    fn ranges_from_less_to_more() {
        for measurement in Measurement::ALL {
            let (least, most) = measurement.about().range;
            assert!(0.0 < least && least < most, "{measurement}");
        }
    }
}
