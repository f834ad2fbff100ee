//! How measuring is done: what to wear, in which order, where the waist is. Said once, for the empty file and for the
//! measuring guide.

use crate::terms::{Measurement, WaistLevel};
use Measurement::{
    AnkleGirth, BackCrotchLength, BodyRise, BodyRiseSitting, CalfGirth, ForkDepth, FrontCrotchLength,
    FrontHipArc, FrontThighArc, FrontWaistArc, HeelGirth, HipGirth, HipHeight, InsideLeg, KneeGirth,
    KneeHeight, OutsideLeg, SittingHipGirth, Stature, ThighGirth, TopHipGirth, TotalCrotchLength, WaistGirth,
    WaistHeight, WaistHeightBack, WaistHeightFront, WaistToHip,
};

/// The measurements in the order in which they are taken, under what each group is for.
pub const GROUPS: [(&str, &[Measurement]); 6] = [
    ("Needed: these three.", &[WaistGirth, HipGirth, InsideLeg]),
    (
        "These help the fit most. With a crotch length, a thigh girth or a front thigh arc the draft is \
         fitted to what was measured; without them it follows the proportions of its recipe.",
        &[BodyRise, TotalCrotchLength, ThighGirth, WaistToHip, Stature],
    ),
    ("For the leg.", &[KneeHeight, KneeGirth, CalfGirth, AnkleGirth, HeelGirth]),
    (
        "For front against back. The side line and the inseam line are placed by eye: 1 cm either way \
         is usual.",
        &[FrontCrotchLength, BackCrotchLength, FrontThighArc, FrontHipArc, FrontWaistArc, TopHipGirth],
    ),
    ("For a waist that is not level.", &[WaistHeight, WaistHeightFront, WaistHeightBack]),
    (
        "Other ways to the same lengths, and what sitting asks for.",
        &[OutsideLeg, HipHeight, BodyRiseSitting, SittingHipGirth, ForkDepth],
    ),
];

/// Before the first measurement is taken.
pub const BEFORE: [&str; 3] = [
    "Wear the underwear that will be worn under the trousers, and no shoes. Stand as you always stand, \
     look straight ahead, breathe out.",
    "A second person with the tape reads better than a mirror; at the fork let the person read alone.",
    "Take each measurement twice. Where the two differ by more than 1 cm, take it a third time.",
];

/// What everyone who measures is told.
pub const CAUTIONS: [&str; 3] = [
    "Sew a toile before you cut good cloth: no file knows how you want trousers to feel.",
    "Body data are personal. The measurement file stays on your machine and is sent nowhere. Keep it where \
     you keep private things, and write a label in it, not a name.",
    "For grown people. Not for medical or compression wear, prostheses, pregnancy or long sitting in a \
     wheelchair: those need somebody trained for it.",
];

/// Where the waist can be taken.
pub const WAIST_LEVELS: [(WaistLevel, &str); 4] = [
    (WaistLevel::Natural, "where the body goes in, where a belt settles"),
    (WaistLevel::Iso, "halfway between the lowest rib and the top of the hip bone"),
    (WaistLevel::Navel, "over the navel"),
    (
        WaistLevel::Worn,
        "where the waistband shall sit, by an elastic tied there; this one needs waist_to_hip and \
         body_rise measured",
    ),
];
