//! The estimating equations, as data.
//!
//! Rows from the surveys of United States Army people of 1988 (2,208 women, 1,774 men; natural waist) and 2012 (1,986
//! women, 4,082 men; navel). `People985`: least squares on a fixed quarter of the 1988 survey (536 women, 449 men), of
//! which the public files hold every column; there the ISO level is the middle of tenth rib and iliac crest, and girths
//! and crotch lengths at it lie between the natural waist and the navel as its height does. `BOTH`: each sex weighs one
//! half. `WORN`: natural waist, ISO level and navel together. At the navel the spread of a `People985` row holds the
//! difference between the two surveys as well. A row is left out where one with fewer inputs does as well; in a list the
//! surest row of a target comes first.
//!
//! Surveys: C. C. Gordon and others, 1988 and 2012 Anthropometric Survey of U.S. Army Personnel, reports
//! NATICK/TR-89/044 and NATICK/TR-15/007; approved for public release.

#![expect(clippy::approx_constant, reason = "a fitted coefficient that happens to lie near a constant")]

use super::Survey::{Army1988, Army2012, People985};
use super::{Equation, Reach, eq, reach};
use crate::terms::Measurement::{
    AnkleGirth, BodyRise, BodyRiseSitting, CalfGirth, HeelGirth, HipGirth, InsideLeg, KneeGirth, KneeHeight,
    Stature, ThighGirth, TotalCrotchLength, WaistGirth, WaistHeight, WaistToHip,
};

// One row a line: a table is read by columns.

/// Legs, whatever the waist level.
#[rustfmt::skip]
pub(super) const LEG_FEMALE: &[Equation] = &[
    eq(InsideLeg, -13.79784, &[(Stature, 0.61723), (HipGirth, -0.09968)], 2.328, Army1988),
    eq(InsideLeg, 64.01474, &[(HipGirth, 0.1357)], 4.339, Army1988),
    eq(KneeHeight, -1.66721, &[(Stature, 0.05039), (HipGirth, 0.0213), (InsideLeg, 0.4831)], 0.929, Army1988),
    eq(KneeHeight, 3.67265, &[(InsideLeg, 0.54733)], 1.009, People985),
    eq(KneeHeight, -8.3329, &[(Stature, 0.34858), (HipGirth, -0.02685)], 1.458, Army1988),
    eq(KneeHeight, 35.61085, &[(HipGirth, 0.10607)], 2.530, Army1988),
    eq(ThighGirth, -10.95985, &[(HipGirth, 0.50947), (KneeGirth, 0.54309)], 1.675, People985),
    eq(ThighGirth, 1.63558, &[(Stature, -0.16794), (HipGirth, 0.72053), (InsideLeg, 0.18264)], 1.790, Army1988),
    eq(ThighGirth, -0.8844, &[(Stature, -0.05521), (HipGirth, 0.70233)], 1.840, Army1988),
    eq(ThighGirth, -7.84434, &[(HipGirth, 0.68127)], 1.868, Army1988),
    eq(KneeGirth, 6.54894, &[(ThighGirth, 0.26276), (CalfGirth, 0.41778)], 1.183, People985),
    eq(KneeGirth, 3.51765, &[(HipGirth, 0.16061), (CalfGirth, 0.49663)], 1.245, People985),
    eq(KneeGirth, 12.13, &[(ThighGirth, 0.42)], 1.360, Army1988),
    eq(KneeGirth, 2.32251, &[(Stature, -0.00249), (HipGirth, 0.29138), (InsideLeg, 0.08333)], 1.421, Army1988),
    eq(KneeGirth, 1.17269, &[(Stature, 0.04894), (HipGirth, 0.28308)], 1.434, Army1988),
    eq(KneeGirth, 7.34255, &[(HipGirth, 0.30174)], 1.463, Army1988),
    eq(CalfGirth, 4.23637, &[(HipGirth, 0.05543), (KneeGirth, 0.70226)], 1.481, People985),
    eq(CalfGirth, 10.12942, &[(HipGirth, 0.25969)], 1.709, Army1988),
    eq(AnkleGirth, 5.55982, &[(KneeGirth, 0.07399), (CalfGirth, 0.34704)], 0.749, People985),
    eq(AnkleGirth, 6.32223, &[(CalfGirth, 0.40219)], 0.756, People985),
    eq(AnkleGirth, 4.32049, &[(Stature, 0.08479), (HipGirth, 0.0869), (InsideLeg, -0.07786)], 0.973, Army1988),
    eq(AnkleGirth, 5.39484, &[(Stature, 0.03673), (HipGirth, 0.09466)], 0.990, Army1988),
    eq(AnkleGirth, 10.02574, &[(HipGirth, 0.10867)], 1.013, Army1988),
    eq(HeelGirth, 5.03619, &[(AnkleGirth, 0.60159), (InsideLeg, 0.17033)], 0.952, People985),
    eq(HeelGirth, 6.87169, &[(Stature, 0.01556), (HipGirth, 0.09054), (InsideLeg, 0.15973)], 1.063, Army1988),
    eq(HeelGirth, 4.66776, &[(Stature, 0.11415), (HipGirth, 0.07462)], 1.126, Army1988),
    eq(HeelGirth, 16.08877, &[(AnkleGirth, 0.70398)], 1.225, People985),
    eq(HeelGirth, 19.05827, &[(HipGirth, 0.11815)], 1.314, Army1988),
];

/// Legs, whatever the waist level.
#[rustfmt::skip]
pub(super) const LEG_MALE: &[Equation] = &[
    eq(InsideLeg, -15.79565, &[(Stature, 0.63533), (HipGirth, -0.12236)], 2.322, Army1988),
    eq(InsideLeg, 68.80023, &[(HipGirth, 0.15167)], 4.529, Army1988),
    eq(KneeHeight, -3.72914, &[(Stature, 0.07134), (HipGirth, 0.0446), (InsideLeg, 0.44553)], 1.021, Army1988),
    eq(KneeHeight, 5.65912, &[(InsideLeg, 0.53527)], 1.119, People985),
    eq(KneeHeight, -10.76653, &[(Stature, 0.3544), (HipGirth, -0.00992)], 1.454, Army1988),
    eq(KneeHeight, 36.42284, &[(HipGirth, 0.14294)], 2.611, Army1988),
    eq(ThighGirth, -0.51298, &[(Stature, -0.17029), (HipGirth, 0.79092), (InsideLeg, 0.14648)], 1.673, Army1988),
    eq(ThighGirth, -2.82678, &[(Stature, -0.07723), (HipGirth, 0.773)], 1.707, Army1988),
    eq(ThighGirth, -13.10972, &[(HipGirth, 0.73969)], 1.771, Army1988),
    eq(KneeGirth, 7.00965, &[(HipGirth, 0.22734), (CalfGirth, 0.2454)], 1.104, People985),
    eq(KneeGirth, 2.64526, &[(Stature, 0.04627), (HipGirth, 0.2833)], 1.126, Army1988),
    eq(KneeGirth, 8.80606, &[(HipGirth, 0.30326)], 1.161, Army1988),
    eq(KneeGirth, 12.72879, &[(ThighGirth, 0.24739), (CalfGirth, 0.29432)], 1.195, People985),
    eq(KneeGirth, 16.57, &[(ThighGirth, 0.37)], 1.260, Army1988),
    eq(CalfGirth, 2.74123, &[(HipGirth, 0.17245), (KneeGirth, 0.46847)], 1.525, People985),
    eq(CalfGirth, 10.04465, &[(HipGirth, 0.13879), (ThighGirth, 0.23618)], 1.564, People985),
    eq(CalfGirth, 6.77519, &[(HipGirth, 0.31546)], 1.620, Army1988),
    eq(AnkleGirth, 4.75295, &[(KneeGirth, 0.17269), (CalfGirth, 0.28385)], 0.755, People985),
    eq(AnkleGirth, 7.061, &[(CalfGirth, 0.39919)], 0.793, People985),
    eq(AnkleGirth, 4.12094, &[(Stature, 0.03344), (HipGirth, 0.1238)], 0.959, Army1988),
    eq(AnkleGirth, 8.57327, &[(HipGirth, 0.13822)], 0.980, Army1988),
    eq(HeelGirth, 4.86283, &[(AnkleGirth, 0.74238), (InsideLeg, 0.14977)], 0.918, People985),
    eq(HeelGirth, 4.42648, &[(Stature, 0.05008), (HipGirth, 0.11821), (InsideLeg, 0.10818)], 1.056, Army1988),
    eq(HeelGirth, 2.71764, &[(Stature, 0.11881), (HipGirth, 0.10497)], 1.085, Army1988),
    eq(HeelGirth, 14.86341, &[(AnkleGirth, 0.85695)], 1.127, People985),
    eq(HeelGirth, 18.5375, &[(HipGirth, 0.15622)], 1.306, Army1988),
];

/// Legs, whatever the waist level.
#[rustfmt::skip]
pub(super) const LEG_BOTH: &[Equation] = &[
    eq(InsideLeg, -8.01361, &[(Stature, 0.57915), (HipGirth, -0.09828)], 2.360, Army1988),
    eq(InsideLeg, 59.58158, &[(HipGirth, 0.21374)], 5.435, Army1988),
    eq(KneeHeight, -7.20988, &[(Stature, 0.10244), (HipGirth, 0.02336), (InsideLeg, 0.44474)], 1.013, Army1988),
    eq(KneeHeight, 0.37826, &[(InsideLeg, 0.59435)], 1.143, People985),
    eq(KneeHeight, -10.77382, &[(Stature, 0.36), (HipGirth, -0.02035)], 1.458, Army1988),
    eq(KneeHeight, 31.2439, &[(HipGirth, 0.17361)], 3.375, Army1988),
    eq(ThighGirth, -13.35352, &[(HipGirth, 0.59338), (KneeGirth, 0.38366)], 1.765, People985),
    eq(ThighGirth, -8.15813, &[(Stature, -0.08873), (HipGirth, 0.73704), (InsideLeg, 0.126)], 1.812, Army1988),
    eq(ThighGirth, -11.00716, &[(HipGirth, 0.71617)], 1.841, Army1988),
    eq(KneeGirth, 4.1404, &[(HipGirth, 0.16123), (CalfGirth, 0.4856)], 1.243, People985),
    eq(KneeGirth, 8.03136, &[(ThighGirth, 0.21826), (CalfGirth, 0.45737)], 1.245, People985),
    eq(KneeGirth, -4.20769, &[(Stature, 0.0904), (HipGirth, 0.27155)], 1.341, Army1988),
    eq(KneeGirth, 10.45195, &[(HipGirth, 0.11173), (ThighGirth, 0.27578)], 1.496, People985),
    eq(KneeGirth, 13.58995, &[(ThighGirth, 0.40742)], 1.520, People985),
    eq(KneeGirth, 6.34307, &[(HipGirth, 0.32026)], 1.543, Army1988),
    eq(CalfGirth, 1.08703, &[(HipGirth, 0.05904), (KneeGirth, 0.78943)], 1.584, People985),
    eq(CalfGirth, -5.25918, &[(Stature, 0.13418), (HipGirth, 0.25437), (InsideLeg, -0.07134)], 1.795, Army1988),
    eq(CalfGirth, -4.68747, &[(Stature, 0.09286), (HipGirth, 0.26138)], 1.803, Army1988),
    eq(CalfGirth, 10.78505, &[(HipGirth, 0.04872), (ThighGirth, 0.35618)], 1.905, People985),
    eq(CalfGirth, 6.15097, &[(HipGirth, 0.31141)], 1.966, Army1988),
    eq(AnkleGirth, 3.33252, &[(KneeGirth, 0.13604), (CalfGirth, 0.35254)], 0.801, People985),
    eq(AnkleGirth, 4.85662, &[(CalfGirth, 0.45086)], 0.824, People985),
    eq(AnkleGirth, -1.87814, &[(Stature, 0.12425), (HipGirth, 0.09025), (InsideLeg, -0.08211)], 1.022, Army1988),
    eq(AnkleGirth, -1.22014, &[(Stature, 0.0767), (HipGirth, 0.09833)], 1.040, Army1988),
    eq(AnkleGirth, 7.73179, &[(HipGirth, 0.13965)], 1.226, Army1988),
    eq(HeelGirth, -1.6631, &[(AnkleGirth, 0.81026), (InsideLeg, 0.20585)], 1.037, People985),
    eq(HeelGirth, -6.25128, &[(Stature, 0.14248), (HipGirth, 0.0784), (InsideLeg, 0.08309)], 1.263, Army1988),
    eq(HeelGirth, -6.91714, &[(Stature, 0.1906), (HipGirth, 0.07023)], 1.278, Army1988),
    eq(HeelGirth, 7.61734, &[(AnkleGirth, 1.1517)], 1.461, People985),
    eq(HeelGirth, 15.32874, &[(HipGirth, 0.17292)], 2.056, Army1988),
];

#[rustfmt::skip]
pub(super) const NATURAL_FEMALE: &[Equation] = &[
    eq(InsideLeg, -3.80667, &[(Stature, 0.1543), (WaistGirth, -0.02401), (HipGirth, -0.10678), (WaistHeight, 0.64248)], 1.887, People985),
    eq(InsideLeg, 3.30149, &[(WaistGirth, -0.0424), (HipGirth, -0.08097), (WaistHeight, 0.80236)], 1.933, People985),
    eq(InsideLeg, -14.14573, &[(Stature, 0.62073), (WaistGirth, 0.03897), (HipGirth, -0.13121)], 2.322, Army1988),
    eq(BodyRise, -0.13294, &[(HipGirth, -0.0355), (BodyRiseSitting, 0.48552), (TotalCrotchLength, 0.24564)], 1.021, People985),
    eq(BodyRise, 4.942, &[(HipGirth, -0.099), (TotalCrotchLength, 0.439)], 1.120, Army1988),
    eq(BodyRise, -1.81437, &[(HipGirth, 0.05606), (BodyRiseSitting, 0.89181)], 1.197, People985),
    eq(BodyRise, 3.43184, &[(HipGirth, 0.09506), (WaistToHip, 0.73251)], 1.346, People985),
    eq(BodyRise, -7.86921, &[(Stature, 0.36711), (WaistGirth, 0.05953), (HipGirth, 0.05045), (InsideLeg, -0.42298)], 1.763, Army1988),
    eq(BodyRise, -7.23306, &[(Stature, 0.35709), (HipGirth, 0.09937), (InsideLeg, -0.4154)], 1.780, Army1988),
    eq(BodyRise, -1.88581, &[(Stature, 0.10455), (WaistGirth, 0.04305), (HipGirth, 0.10594)], 2.018, Army1988),
    eq(BodyRise, -1.50144, &[(Stature, 0.10069), (HipGirth, 0.14078)], 2.025, Army1988),
    eq(BodyRise, 11.19257, &[(HipGirth, 0.17918)], 2.111, Army1988),
    eq(WaistToHip, 0.89256, &[(WaistGirth, -0.11812), (HipGirth, 0.05063), (BodyRise, 0.85934)], 1.348, People985),
    eq(WaistToHip, 1.6168, &[(HipGirth, -0.04197), (BodyRise, 0.84631)], 1.447, People985),
    eq(WaistToHip, -9.06519, &[(Stature, 0.30864), (WaistGirth, -0.04777), (HipGirth, 0.08822), (InsideLeg, -0.31722)], 2.060, Army1988),
    eq(WaistToHip, -9.57566, &[(Stature, 0.31668), (HipGirth, 0.04896), (InsideLeg, -0.32331)], 2.070, Army1988),
    eq(WaistToHip, -4.57784, &[(Stature, 0.11173), (WaistGirth, -0.06013), (HipGirth, 0.12984)], 2.188, Army1988),
    eq(WaistToHip, -5.11471, &[(Stature, 0.11712), (HipGirth, 0.08118)], 2.202, Army1988),
    eq(WaistToHip, 7.09732, &[(WaistGirth, -0.07715), (HipGirth, 0.18061), (InsideLeg, 0.03702)], 2.279, Army1988),
    eq(WaistToHip, 9.65029, &[(HipGirth, 0.12585)], 2.308, Army1988),
    eq(KneeHeight, -2.07164, &[(Stature, 0.05676), (WaistGirth, 0.03785), (HipGirth, -0.0098), (InsideLeg, 0.47828)], 0.915, Army1988),
    eq(KneeHeight, 0.90075, &[(WaistGirth, 0.03245), (HipGirth, 0.00719), (InsideLeg, 0.54342)], 0.932, Army1988),
    eq(KneeHeight, -8.8372, &[(Stature, 0.35364), (WaistGirth, 0.05649), (HipGirth, -0.07256)], 1.439, Army1988),
    eq(ThighGirth, 1.1345, &[(Stature, -0.16005), (WaistGirth, 0.04689), (HipGirth, 0.68199), (InsideLeg, 0.17666)], 1.780, Army1988),
    eq(ThighGirth, -1.36453, &[(Stature, -0.05039), (WaistGirth, 0.05378), (HipGirth, 0.65881)], 1.826, Army1988),
    eq(ThighGirth, -7.24669, &[(WaistGirth, 0.06213), (HipGirth, 0.63408), (InsideLeg, -0.00703)], 1.850, Army1988),
    eq(KneeGirth, 2.15819, &[(WaistGirth, 0.01792), (HipGirth, 0.27677), (InsideLeg, 0.08165)], 1.419, Army1988),
    eq(HeelGirth, 7.63339, &[(WaistGirth, 0.0264), (HipGirth, 0.07334), (InsideLeg, 0.17945)], 1.058, Army1988),
    eq(HeelGirth, 4.36048, &[(Stature, 0.11724), (WaistGirth, 0.03442), (HipGirth, 0.04677)], 1.117, Army1988),
];

#[rustfmt::skip]
pub(super) const NATURAL_MALE: &[Equation] = &[
    eq(InsideLeg, -3.42306, &[(Stature, 0.0616), (WaistGirth, -0.11246), (HipGirth, -0.06137), (WaistHeight, 0.8152)], 1.574, People985),
    eq(InsideLeg, -0.98362, &[(WaistGirth, -0.1193), (HipGirth, -0.05381), (WaistHeight, 0.88804)], 1.581, People985),
    eq(InsideLeg, -15.7722, &[(Stature, 0.62834), (WaistGirth, -0.06554), (HipGirth, -0.05417)], 2.308, Army1988),
    eq(BodyRise, -0.95574, &[(HipGirth, -0.02844), (BodyRiseSitting, 0.4343), (TotalCrotchLength, 0.26479)], 1.088, People985),
    eq(BodyRise, 6.502, &[(HipGirth, -0.073), (TotalCrotchLength, 0.386)], 1.170, Army1988),
    eq(BodyRise, -4.56298, &[(HipGirth, 0.1096), (BodyRiseSitting, 0.793)], 1.297, People985),
    eq(BodyRise, -5.53195, &[(Stature, 0.30931), (WaistGirth, 0.09832), (HipGirth, 0.03318), (InsideLeg, -0.37401)], 1.348, Army1988),
    eq(BodyRise, -5.80162, &[(Stature, 0.31109), (HipGirth, 0.13313), (InsideLeg, -0.39331)], 1.404, Army1988),
    eq(BodyRise, 3.01097, &[(HipGirth, 0.12003), (WaistToHip, 0.59226)], 1.426, People985),
    eq(BodyRise, 0.36705, &[(Stature, 0.0743), (WaistGirth, 0.12284), (HipGirth, 0.05344)], 1.601, Army1988),
    eq(BodyRise, 10.96727, &[(WaistGirth, 0.10178), (HipGirth, 0.10863), (InsideLeg, -0.01451)], 1.661, Army1988),
    eq(BodyRise, 0.41099, &[(Stature, 0.06121), (HipGirth, 0.18126)], 1.674, Army1988),
    eq(BodyRise, 8.56077, &[(HipGirth, 0.20765)], 1.715, Army1988),
    eq(WaistToHip, 3.75755, &[(HipGirth, 0.04703), (BodyRise, 0.53444)], 1.355, People985),
    eq(WaistToHip, -4.25981, &[(Stature, 0.22015), (HipGirth, 0.08359), (InsideLeg, -0.22282)], 1.480, Army1988),
    eq(WaistToHip, -0.74022, &[(Stature, 0.07858), (HipGirth, 0.11086)], 1.567, Army1988),
    eq(WaistToHip, 7.51199, &[(WaistGirth, 0.01856), (HipGirth, 0.12085), (InsideLeg, 0.03588)], 1.632, Army1988),
    eq(WaistToHip, 9.72347, &[(HipGirth, 0.14475)], 1.639, Army1988),
    eq(KneeHeight, -3.60489, &[(Stature, 0.07052), (WaistGirth, 0.0453), (HipGirth, -0.00145), (InsideLeg, 0.45442)], 1.006, Army1988),
    eq(KneeHeight, 0.15701, &[(WaistGirth, 0.04609), (HipGirth, 0.01575), (InsideLeg, 0.53639)], 1.029, Army1988),
    eq(ThighGirth, -9.59123, &[(WaistGirth, 0.00118), (HipGirth, 0.74623), (InsideLeg, -0.0509)], 1.756, Army1988),
    eq(KneeGirth, 5.02875, &[(WaistGirth, 0.00478), (HipGirth, 0.29002), (InsideLeg, 0.05586)], 1.135, Army1988),
    eq(AnkleGirth, 6.53131, &[(WaistGirth, -0.01676), (HipGirth, 0.1509), (InsideLeg, 0.02631)], 0.970, Army1988),
    eq(HeelGirth, 7.10314, &[(WaistGirth, 0.00362), (HipGirth, 0.1273), (InsideLeg, 0.16692)], 1.068, Army1988),
];

#[rustfmt::skip]
pub(super) const NATURAL_BOTH: &[Equation] = &[
    eq(InsideLeg, -6.77832, &[(Stature, 0.16653), (WaistGirth, -0.02598), (HipGirth, -0.13027), (WaistHeight, 0.67585)], 1.775, People985),
    eq(InsideLeg, -1.33626, &[(WaistGirth, 0.00106), (HipGirth, -0.15331), (WaistHeight, 0.88539)], 1.856, People985),
    eq(InsideLeg, -11.38996, &[(Stature, 0.59906), (WaistGirth, -0.05527), (HipGirth, -0.05386)], 2.339, Army1988),
    eq(BodyRise, -0.43527, &[(HipGirth, -0.03447), (BodyRiseSitting, 0.44759), (TotalCrotchLength, 0.26154)], 1.056, People985),
    eq(BodyRise, 4.43215, &[(HipGirth, -0.07101), (TotalCrotchLength, 0.41118)], 1.194, People985),
    eq(BodyRise, -3.12801, &[(HipGirth, 0.08094), (BodyRiseSitting, 0.84669)], 1.265, People985),
    eq(BodyRise, 4.90566, &[(HipGirth, 0.11117), (WaistToHip, 0.56995)], 1.496, People985),
    eq(BodyRise, 1.21942, &[(Stature, 0.26283), (HipGirth, 0.13354), (InsideLeg, -0.37272)], 1.668, Army1988),
    eq(BodyRise, 4.20628, &[(Stature, 0.04697), (HipGirth, 0.17017)], 1.885, Army1988),
    eq(BodyRise, 11.9162, &[(WaistGirth, 0.04314), (HipGirth, 0.15748), (InsideLeg, -0.02361)], 1.909, Army1988),
    eq(BodyRise, 9.68793, &[(HipGirth, 0.19547)], 1.926, Army1988),
    eq(WaistToHip, 2.72246, &[(WaistGirth, 0.07114), (HipGirth, -0.06186), (BodyRise, 0.71325)], 1.644, People985),
    eq(WaistToHip, 1.22243, &[(HipGirth, 0.00197), (BodyRise, 0.74318)], 1.708, People985),
    eq(WaistToHip, -9.65819, &[(Stature, 0.29378), (HipGirth, 0.05949), (InsideLeg, -0.2857)], 1.811, Army1988),
    eq(WaistToHip, -7.36873, &[(Stature, 0.12832), (HipGirth, 0.08757)], 1.933, Army1988),
    eq(WaistToHip, 3.17453, &[(WaistGirth, 0.06749), (HipGirth, 0.06884), (InsideLeg, 0.09597)], 2.069, Army1988),
    eq(WaistToHip, 7.60753, &[(HipGirth, 0.1567)], 2.216, Army1988),
    eq(KneeHeight, -3.75377, &[(Stature, 0.07268), (WaistGirth, 0.05427), (HipGirth, -0.01852), (InsideLeg, 0.46237)], 0.965, Army1988),
    eq(KneeHeight, -0.66391, &[(WaistGirth, 0.0691), (HipGirth, -0.01452), (InsideLeg, 0.55761)], 0.997, Army1988),
    eq(KneeHeight, -9.02012, &[(Stature, 0.34966), (WaistGirth, 0.02871), (HipGirth, -0.04343)], 1.449, Army1988),
    eq(ThighGirth, -3.2684, &[(Stature, -0.13084), (WaistGirth, 0.07678), (HipGirth, 0.67779), (InsideLeg, 0.15095)], 1.759, Army1988),
    eq(ThighGirth, -4.98771, &[(Stature, -0.04041), (WaistGirth, 0.06843), (HipGirth, 0.66966)], 1.794, Army1988),
    eq(ThighGirth, -8.83114, &[(WaistGirth, 0.05007), (HipGirth, 0.67059), (InsideLeg, -0.02052)], 1.816, Army1988),
    eq(KneeGirth, -1.10946, &[(Stature, 0.07213), (WaistGirth, 0.05072), (HipGirth, 0.23079)], 1.309, Army1988),
    eq(KneeGirth, 1.49068, &[(WaistGirth, 0.06322), (HipGirth, 0.23545), (InsideLeg, 0.10164)], 1.319, Army1988),
    eq(CalfGirth, 0.69448, &[(Stature, 0.06112), (WaistGirth, 0.08811), (HipGirth, 0.19057)], 1.731, Army1988),
    eq(CalfGirth, 3.90562, &[(WaistGirth, 0.1035), (HipGirth, 0.19302), (InsideLeg, 0.07076)], 1.754, Army1988),
    eq(AnkleGirth, 0.54438, &[(Stature, 0.10339), (WaistGirth, 0.03804), (HipGirth, 0.0609), (InsideLeg, -0.06975)], 0.999, Army1988),
    eq(AnkleGirth, 1.33884, &[(Stature, 0.06161), (WaistGirth, 0.04189), (HipGirth, 0.06466)], 1.013, Army1988),
    eq(AnkleGirth, 4.94025, &[(WaistGirth, 0.05914), (HipGirth, 0.06659), (InsideLeg, 0.06575)], 1.061, Army1988),
    eq(HeelGirth, -0.36879, &[(Stature, 0.09183), (WaistGirth, 0.09236), (HipGirth, 0.00711), (InsideLeg, 0.1131)], 1.149, Army1988),
    eq(HeelGirth, -1.65701, &[(Stature, 0.15958), (WaistGirth, 0.08611), (HipGirth, 0.00102)], 1.179, Army1988),
    eq(HeelGirth, 3.53525, &[(WaistGirth, 0.11111), (HipGirth, 0.01216), (InsideLeg, 0.23344)], 1.192, Army1988),
];

#[rustfmt::skip]
pub(super) const ISO_FEMALE: &[Equation] = &[
    eq(InsideLeg, 2.01327, &[(Stature, -0.17374), (WaistGirth, 0.00809), (HipGirth, -0.11071), (WaistHeight, 1.11591)], 1.384, People985),
    eq(InsideLeg, -4.2757, &[(WaistGirth, 0.01474), (HipGirth, -0.12896), (WaistHeight, 0.91174)], 1.438, People985),
    eq(BodyRise, -6.27529, &[(Stature, 0.34338), (HipGirth, 0.05672), (InsideLeg, -0.39636)], 1.017, People985),
    eq(BodyRise, 1.30624, &[(HipGirth, -0.05458), (BodyRiseSitting, 0.4197), (TotalCrotchLength, 0.26639)], 1.041, People985),
    eq(BodyRise, 4.8728, &[(HipGirth, -0.06585), (TotalCrotchLength, 0.38571)], 1.130, People985),
    eq(BodyRise, 1.73529, &[(HipGirth, 0.04829), (BodyRiseSitting, 0.7241)], 1.182, People985),
    eq(BodyRise, 5.70564, &[(HipGirth, 0.10205), (WaistToHip, 0.50809)], 1.240, People985),
    eq(BodyRise, -0.23649, &[(Stature, 0.08997), (HipGirth, 0.10523)], 1.398, People985),
    eq(BodyRise, 11.34078, &[(HipGirth, 0.13723)], 1.498, People985),
    eq(WaistToHip, 3.16649, &[(WaistGirth, -0.11914), (HipGirth, 0.09375), (BodyRise, 0.59379)], 1.248, People985),
    eq(WaistToHip, -5.80049, &[(Stature, 0.2645), (WaistGirth, -0.11285), (HipGirth, 0.10418), (InsideLeg, -0.27258)], 1.275, People985),
    eq(WaistToHip, 4.03607, &[(HipGirth, -0.01612), (BodyRise, 0.62207)], 1.372, People985),
    eq(WaistToHip, -6.19996, &[(Stature, 0.2821), (HipGirth, -0.00131), (InsideLeg, -0.28358)], 1.384, People985),
    eq(WaistToHip, -1.63372, &[(Stature, 0.0896), (WaistGirth, -0.11961), (HipGirth, 0.14378)], 1.434, People985),
    eq(WaistToHip, 8.23833, &[(WaistGirth, -0.13112), (HipGirth, 0.18348), (InsideLeg, 0.02301)], 1.528, People985),
    eq(WaistToHip, -1.87937, &[(Stature, 0.10079), (HipGirth, 0.03339)], 1.544, People985),
    eq(WaistToHip, 11.09089, &[(HipGirth, 0.06925)], 1.658, People985),
];

#[rustfmt::skip]
pub(super) const ISO_MALE: &[Equation] = &[
    eq(InsideLeg, -0.91996, &[(Stature, -0.06006), (WaistGirth, -0.07767), (HipGirth, -0.03903), (WaistHeight, 0.9629)], 1.441, People985),
    eq(InsideLeg, -3.09006, &[(WaistGirth, -0.07655), (HipGirth, -0.04416), (WaistHeight, 0.89032)], 1.447, People985),
    eq(BodyRise, -0.034, &[(HipGirth, -0.0409), (BodyRiseSitting, 0.40868), (TotalCrotchLength, 0.27167)], 1.076, People985),
    eq(BodyRise, 5.71146, &[(HipGirth, -0.05303), (TotalCrotchLength, 0.35916)], 1.161, People985),
    eq(BodyRise, -4.45446, &[(Stature, 0.31194), (WaistGirth, 0.04453), (HipGirth, 0.03209), (InsideLeg, -0.37342)], 1.162, People985),
    eq(BodyRise, -5.04401, &[(Stature, 0.31585), (HipGirth, 0.08104), (InsideLeg, -0.38682)], 1.176, People985),
    eq(BodyRise, -2.00552, &[(HipGirth, 0.0916), (BodyRiseSitting, 0.72079)], 1.270, People985),
    eq(BodyRise, 5.01377, &[(HipGirth, 0.10983), (WaistToHip, 0.48668)], 1.324, People985),
    eq(BodyRise, 0.44937, &[(Stature, 0.08572), (WaistGirth, 0.07728), (HipGirth, 0.03974)], 1.441, People985),
    eq(BodyRise, -0.28805, &[(Stature, 0.07822), (HipGirth, 0.12749)], 1.477, People985),
    eq(BodyRise, 11.55549, &[(WaistGirth, 0.06015), (HipGirth, 0.09802), (InsideLeg, -0.00397)], 1.530, People985),
    eq(BodyRise, 9.94803, &[(HipGirth, 0.16303)], 1.549, People985),
    eq(WaistToHip, 3.26192, &[(WaistGirth, -0.04897), (HipGirth, 0.0679), (BodyRise, 0.58185)], 1.404, People985),
    eq(WaistToHip, 4.58124, &[(HipGirth, 0.01825), (BodyRise, 0.55865)], 1.418, People985),
    eq(WaistToHip, -6.11052, &[(Stature, 0.245), (HipGirth, 0.03493), (InsideLeg, -0.23218)], 1.447, People985),
    eq(WaistToHip, -3.25578, &[(Stature, 0.10236), (HipGirth, 0.06281)], 1.542, People985),
    eq(WaistToHip, 6.3357, &[(WaistGirth, -0.00231), (HipGirth, 0.10308), (InsideLeg, 0.0551)], 1.646, People985),
    eq(WaistToHip, 10.13869, &[(HipGirth, 0.10933)], 1.660, People985),
];

#[rustfmt::skip]
pub(super) const ISO_BOTH: &[Equation] = &[
    eq(InsideLeg, 0.09554, &[(Stature, -0.10652), (WaistGirth, -0.0242), (HipGirth, -0.09266), (WaistHeight, 1.03435)], 1.431, People985),
    eq(InsideLeg, -2.85909, &[(WaistGirth, -0.03446), (HipGirth, -0.08701), (WaistHeight, 0.89435)], 1.456, People985),
    eq(BodyRise, 0.44773, &[(HipGirth, -0.05044), (BodyRiseSitting, 0.41461), (TotalCrotchLength, 0.27546)], 1.058, People985),
    eq(BodyRise, -4.02506, &[(Stature, 0.31353), (HipGirth, 0.07328), (InsideLeg, -0.38417)], 1.105, People985),
    eq(BodyRise, 4.97365, &[(HipGirth, -0.06717), (TotalCrotchLength, 0.38767)], 1.150, People985),
    eq(BodyRise, -1.20823, &[(HipGirth, 0.06798), (BodyRiseSitting, 0.77195)], 1.245, People985),
    eq(BodyRise, 6.02014, &[(HipGirth, 0.10919), (WaistToHip, 0.44609)], 1.288, People985),
    eq(BodyRise, 0.26076, &[(Stature, 0.08316), (WaistGirth, 0.02526), (HipGirth, 0.09145)], 1.432, People985),
    eq(BodyRise, -1.08266, &[(Stature, 0.08974), (HipGirth, 0.11467)], 1.438, People985),
    eq(BodyRise, 9.11357, &[(WaistGirth, 0.06082), (HipGirth, 0.08911), (InsideLeg, 0.03219)], 1.564, People985),
    eq(BodyRise, 9.84271, &[(HipGirth, 0.15842)], 1.624, People985),
    eq(WaistToHip, -14.92441, &[(Stature, 0.34589), (HipGirth, -0.00639), (InsideLeg, -0.2943)], 1.509, People985),
    eq(WaistToHip, -12.67035, &[(Stature, 0.17445), (HipGirth, 0.02531)], 1.665, People985),
    eq(WaistToHip, 2.07287, &[(WaistGirth, 0.05624), (HipGirth, -0.07248), (BodyRise, 0.7828)], 1.732, People985),
    eq(WaistToHip, 0.35503, &[(HipGirth, -0.02184), (BodyRise, 0.83453)], 1.761, People985),
    eq(WaistToHip, -0.40864, &[(WaistGirth, 0.06762), (HipGirth, 0.01056), (InsideLeg, 0.16488)], 1.941, People985),
    eq(WaistToHip, 8.56908, &[(HipGirth, 0.11036)], 2.222, People985),
];

#[rustfmt::skip]
pub(super) const NAVEL_FEMALE: &[Equation] = &[
    eq(InsideLeg, 0.60245, &[(Stature, -0.06477), (WaistGirth, 0.11168), (HipGirth, -0.18078), (WaistHeight, 0.97398)], 2.245, People985),
    eq(InsideLeg, -1.86164, &[(WaistGirth, 0.1057), (HipGirth, -0.18256), (WaistHeight, 0.89818)], 2.278, People985),
    eq(InsideLeg, -16.31167, &[(Stature, 0.61489), (HipGirth, -0.05473)], 2.327, Army2012),
    eq(InsideLeg, 63.69809, &[(HipGirth, 0.14231)], 4.332, Army2012),
    eq(BodyRise, -7.46756, &[(Stature, 0.40327), (WaistGirth, -0.1394), (HipGirth, 0.11267), (InsideLeg, -0.48479)], 1.397, Army2012),
    eq(BodyRise, -6.72698, &[(Stature, 0.41597), (HipGirth, -0.04015), (InsideLeg, -0.4746)], 1.621, Army2012),
    eq(BodyRise, 1.19538, &[(HipGirth, -0.13107), (BodyRiseSitting, 0.33239), (TotalCrotchLength, 0.41194)], 1.627, People985),
    eq(BodyRise, 3.1052, &[(HipGirth, -0.13057), (TotalCrotchLength, 0.50439)], 1.745, People985),
    eq(BodyRise, 0.46278, &[(Stature, 0.10592), (WaistGirth, -0.13391), (HipGirth, 0.13316)], 1.795, Army2012),
    eq(BodyRise, 15.16937, &[(WaistGirth, -0.15011), (HipGirth, 0.18708), (InsideLeg, -0.02005)], 1.899, Army2012),
    eq(BodyRise, 2.86219, &[(HipGirth, -0.01271), (BodyRiseSitting, 0.85545)], 1.961, People985),
    eq(BodyRise, 1.01452, &[(Stature, 0.12414), (HipGirth, -0.01418)], 1.961, Army2012),
    eq(BodyRise, 17.16821, &[(HipGirth, 0.02561)], 2.095, Army2012),
    eq(WaistToHip, -6.51464, &[(Stature, 0.28616), (WaistGirth, -0.22059), (HipGirth, 0.15206), (InsideLeg, -0.281)], 1.827, Army2012),
    eq(WaistToHip, -1.91794, &[(Stature, 0.11381), (WaistGirth, -0.21741), (HipGirth, 0.16394)], 1.940, Army2012),
    eq(WaistToHip, 1.08069, &[(WaistGirth, -0.13822), (HipGirth, 0.10502), (BodyRise, 0.66483)], 1.980, People985),
    eq(WaistToHip, 9.54837, &[(WaistGirth, -0.22819), (HipGirth, 0.20486), (InsideLeg, 0.04878)], 2.042, Army2012),
    eq(WaistToHip, 1.71464, &[(HipGirth, -0.05237), (BodyRise, 0.83559)], 2.227, People985),
    eq(WaistToHip, -5.34276, &[(Stature, 0.30625), (HipGirth, -0.08977), (InsideLeg, -0.26488)], 2.244, Army2012),
    eq(WaistToHip, -1.02217, &[(Stature, 0.14339), (HipGirth, -0.07527)], 2.326, Army2012),
    eq(WaistToHip, 17.6352, &[(HipGirth, -0.02932)], 2.477, Army2012),
    eq(KneeHeight, -3.28919, &[(Stature, 0.06837), (WaistGirth, 0.02111), (HipGirth, 0.00137), (InsideLeg, 0.4487)], 0.925, Army2012),
    eq(KneeHeight, -3.40134, &[(Stature, 0.06645), (HipGirth, 0.02451), (InsideLeg, 0.44716)], 0.933, Army2012),
    eq(KneeHeight, 0.54883, &[(WaistGirth, 0.01929), (HipGirth, 0.01398), (InsideLeg, 0.5275)], 0.950, Army2012),
    eq(KneeHeight, 3.67265, &[(InsideLeg, 0.54733)], 1.009, People985),
    eq(KneeHeight, -10.69529, &[(Stature, 0.3414), (HipGirth, 0.00003)], 1.398, Army2012),
    eq(KneeHeight, 33.72848, &[(HipGirth, 0.10944)], 2.463, Army2012),
    eq(ThighGirth, -10.95985, &[(HipGirth, 0.50947), (KneeGirth, 0.54309)], 1.675, People985),
    eq(ThighGirth, -1.1925, &[(Stature, -0.13596), (HipGirth, 0.71228), (InsideLeg, 0.15604)], 1.862, Army2012),
    eq(ThighGirth, -3.73774, &[(Stature, -0.04002), (HipGirth, 0.70374)], 1.897, Army2012),
    eq(ThighGirth, -8.94496, &[(HipGirth, 0.69092)], 1.911, Army2012),
    eq(KneeGirth, 6.54894, &[(ThighGirth, 0.26276), (CalfGirth, 0.41778)], 1.183, People985),
    eq(KneeGirth, 3.51765, &[(HipGirth, 0.16061), (CalfGirth, 0.49663)], 1.245, People985),
    eq(KneeGirth, 12.13, &[(ThighGirth, 0.42)], 1.360, Army1988),
    eq(KneeGirth, 2.32251, &[(Stature, -0.00249), (HipGirth, 0.29138), (InsideLeg, 0.08333)], 1.421, Army1988),
    eq(KneeGirth, 1.17269, &[(Stature, 0.04894), (HipGirth, 0.28308)], 1.434, Army1988),
    eq(KneeGirth, 7.34255, &[(HipGirth, 0.30174)], 1.463, Army1988),
    eq(CalfGirth, 4.23637, &[(HipGirth, 0.05543), (KneeGirth, 0.70226)], 1.481, People985),
    eq(CalfGirth, 12.45344, &[(HipGirth, 0.02934), (ThighGirth, 0.3436)], 1.719, People985),
    eq(CalfGirth, 4.77147, &[(Stature, 0.03294), (HipGirth, 0.26625)], 1.919, Army2012),
    eq(CalfGirth, 7.06956, &[(WaistGirth, -0.01904), (HipGirth, 0.29341), (InsideLeg, 0.02468)], 1.922, Army2012),
    eq(CalfGirth, 9.05723, &[(HipGirth, 0.2768)], 1.929, Army2012),
    eq(AnkleGirth, 5.55982, &[(KneeGirth, 0.07399), (CalfGirth, 0.34704)], 0.749, People985),
    eq(AnkleGirth, 6.32223, &[(CalfGirth, 0.40219)], 0.756, People985),
    eq(AnkleGirth, 3.77074, &[(Stature, 0.09277), (HipGirth, 0.08582), (InsideLeg, -0.07757)], 1.219, Army2012),
    eq(AnkleGirth, 5.03601, &[(Stature, 0.04507), (HipGirth, 0.09007)], 1.232, Army2012),
    eq(AnkleGirth, 8.88788, &[(WaistGirth, -0.01111), (HipGirth, 0.11229), (InsideLeg, 0.0278)], 1.253, Army2012),
    eq(AnkleGirth, 10.90099, &[(HipGirth, 0.10451)], 1.261, Army2012),
    eq(HeelGirth, 5.03619, &[(AnkleGirth, 0.60159), (InsideLeg, 0.17033)], 0.952, People985),
    eq(HeelGirth, 5.15144, &[(Stature, 0.06669), (HipGirth, 0.07601), (InsideLeg, 0.09276)], 1.026, Army2012),
    eq(HeelGirth, 8.95907, &[(WaistGirth, 0.00434), (HipGirth, 0.08171), (InsideLeg, 0.17071)], 1.048, Army2012),
    eq(HeelGirth, 3.63833, &[(Stature, 0.12373), (HipGirth, 0.07094)], 1.049, Army2012),
    eq(HeelGirth, 16.08877, &[(AnkleGirth, 0.70398)], 1.225, People985),
    eq(HeelGirth, 19.73844, &[(HipGirth, 0.11059)], 1.280, Army2012),
];

#[rustfmt::skip]
pub(super) const NAVEL_MALE: &[Equation] = &[
    eq(InsideLeg, -0.44711, &[(WaistGirth, -0.0005), (HipGirth, -0.06222), (WaistHeight, 0.8534)], 2.066, People985),
    eq(InsideLeg, -15.56514, &[(Stature, 0.60279), (WaistGirth, -0.04627), (HipGirth, -0.01327)], 2.314, Army2012),
    eq(InsideLeg, -15.00302, &[(Stature, 0.61042), (HipGirth, -0.07461)], 2.327, Army2012),
    eq(InsideLeg, 73.30516, &[(HipGirth, 0.11072)], 4.572, Army2012),
    eq(BodyRise, 0.77425, &[(HipGirth, -0.06909), (BodyRiseSitting, 0.36877), (TotalCrotchLength, 0.30634)], 1.186, People985),
    eq(BodyRise, 5.73503, &[(HipGirth, -0.09435), (TotalCrotchLength, 0.40232)], 1.243, People985),
    eq(BodyRise, -6.22269, &[(Stature, 0.39796), (WaistGirth, -0.10823), (HipGirth, 0.09028), (InsideLeg, -0.49219)], 1.568, Army2012),
    eq(BodyRise, -4.51967, &[(Stature, 0.40002), (HipGirth, -0.05129), (InsideLeg, -0.46632)], 1.668, Army2012),
    eq(BodyRise, 5.20982, &[(HipGirth, 0.07429), (WaistToHip, 0.56422)], 1.787, People985),
    eq(BodyRise, -0.08186, &[(HipGirth, 0.06065), (BodyRiseSitting, 0.69653)], 1.863, People985),
    eq(BodyRise, 1.43829, &[(Stature, 0.10127), (WaistGirth, -0.08546), (HipGirth, 0.09681)], 1.938, Army2012),
    eq(BodyRise, 2.47658, &[(Stature, 0.11537), (HipGirth, -0.0165)], 1.989, Army2012),
    eq(BodyRise, 15.88047, &[(WaistGirth, -0.11118), (HipGirth, 0.16146), (InsideLeg, -0.00979)], 2.040, Army2012),
    eq(BodyRise, 19.16645, &[(HipGirth, 0.01853)], 2.124, Army2012),
    eq(WaistToHip, 2.96975, &[(HipGirth, -0.03072), (BodyRise, 0.77224)], 1.708, People985),
    eq(WaistToHip, -4.43138, &[(Stature, 0.2692), (WaistGirth, -0.17188), (HipGirth, 0.16707), (InsideLeg, -0.3174)], 2.297, Army2012),
    eq(WaistToHip, 0.509, &[(Stature, 0.07787), (WaistGirth, -0.1572), (HipGirth, 0.17128)], 2.411, Army2012),
    eq(WaistToHip, 10.52017, &[(WaistGirth, -0.17388), (HipGirth, 0.21522), (InsideLeg, 0.00892)], 2.461, Army2012),
    eq(WaistToHip, -1.72684, &[(Stature, 0.27247), (HipGirth, -0.05775), (InsideLeg, -0.27632)], 2.468, Army2012),
    eq(WaistToHip, 2.41883, &[(Stature, 0.1038), (HipGirth, -0.03714)], 2.550, Army2012),
    eq(WaistToHip, 17.43499, &[(HipGirth, -0.00562)], 2.636, Army2012),
    eq(KneeHeight, 5.65912, &[(InsideLeg, 0.53527)], 1.119, People985),
    eq(KneeHeight, -10.90948, &[(Stature, 0.34522), (HipGirth, -0.00862)], 1.554, Army2012),
    eq(KneeHeight, 39.03212, &[(HipGirth, 0.09619)], 2.715, Army2012),
    eq(ThighGirth, -15.47333, &[(HipGirth, 0.68482), (KneeGirth, 0.20364)], 1.795, People985),
    eq(ThighGirth, 0.12178, &[(Stature, -0.13738), (HipGirth, 0.747), (InsideLeg, 0.12249)], 1.882, Army2012),
    eq(ThighGirth, -1.71593, &[(Stature, -0.06261), (HipGirth, 0.73786)], 1.903, Army2012),
    eq(ThighGirth, -7.69662, &[(WaistGirth, -0.01017), (HipGirth, 0.73703), (InsideLeg, -0.04698)], 1.934, Army2012),
    eq(ThighGirth, -10.7739, &[(HipGirth, 0.71885)], 1.945, Army2012),
    eq(KneeGirth, 7.00965, &[(HipGirth, 0.22734), (CalfGirth, 0.2454)], 1.104, People985),
    eq(KneeGirth, 2.64526, &[(Stature, 0.04627), (HipGirth, 0.2833)], 1.126, Army1988),
    eq(KneeGirth, 8.80606, &[(HipGirth, 0.30326)], 1.161, Army1988),
    eq(KneeGirth, 12.72879, &[(ThighGirth, 0.24739), (CalfGirth, 0.29432)], 1.195, People985),
    eq(KneeGirth, 16.57, &[(ThighGirth, 0.37)], 1.260, Army1988),
    eq(CalfGirth, 2.74123, &[(HipGirth, 0.17245), (KneeGirth, 0.46847)], 1.525, People985),
    eq(CalfGirth, 10.04465, &[(HipGirth, 0.13879), (ThighGirth, 0.23618)], 1.564, People985),
    eq(CalfGirth, 7.91447, &[(HipGirth, 0.30712)], 1.811, Army2012),
    eq(AnkleGirth, 4.75295, &[(KneeGirth, 0.17269), (CalfGirth, 0.28385)], 0.755, People985),
    eq(AnkleGirth, 7.061, &[(CalfGirth, 0.39919)], 0.793, People985),
    eq(AnkleGirth, 4.88561, &[(Stature, 0.03352), (HipGirth, 0.1193)], 1.056, Army2012),
    eq(AnkleGirth, 7.08013, &[(WaistGirth, -0.01495), (HipGirth, 0.14535), (InsideLeg, 0.02886)], 1.064, Army2012),
    eq(AnkleGirth, 9.73421, &[(HipGirth, 0.12947)], 1.077, Army2012),
    eq(HeelGirth, 4.86283, &[(AnkleGirth, 0.74238), (InsideLeg, 0.14977)], 0.918, People985),
    eq(HeelGirth, 4.9565, &[(Stature, 0.06599), (HipGirth, 0.10146), (InsideLeg, 0.08816)], 1.054, Army2012),
    eq(HeelGirth, 3.63391, &[(Stature, 0.1198), (HipGirth, 0.09488)], 1.074, Army2012),
    eq(HeelGirth, 8.5994, &[(WaistGirth, -0.00182), (HipGirth, 0.115), (InsideLeg, 0.1678)], 1.076, Army2012),
    eq(HeelGirth, 14.86341, &[(AnkleGirth, 0.85695)], 1.127, People985),
    eq(HeelGirth, 20.96553, &[(HipGirth, 0.13126)], 1.323, Army2012),
];

#[rustfmt::skip]
pub(super) const NAVEL_BOTH: &[Equation] = &[
    eq(InsideLeg, 0.84562, &[(Stature, -0.0201), (WaistGirth, 0.05759), (HipGirth, -0.12967), (WaistHeight, 0.89032)], 2.152, People985),
    eq(InsideLeg, 0.24148, &[(WaistGirth, 0.05363), (HipGirth, -0.12756), (WaistHeight, 0.8641)], 2.162, People985),
    eq(InsideLeg, -11.42783, &[(Stature, 0.56872), (WaistGirth, -0.06101), (HipGirth, 0.02047)], 2.349, Army2012),
    eq(InsideLeg, -7.538, &[(Stature, 0.55314), (HipGirth, -0.04567)], 2.384, Army2012),
    eq(InsideLeg, 69.00364, &[(HipGirth, 0.12161)], 5.480, Army2012),
    eq(BodyRise, 1.23435, &[(HipGirth, -0.09819), (BodyRiseSitting, 0.35172), (TotalCrotchLength, 0.35091)], 1.441, People985),
    eq(BodyRise, -8.01971, &[(Stature, 0.41312), (WaistGirth, -0.1169), (HipGirth, 0.09217), (InsideLeg, -0.49564)], 1.490, Army2012),
    eq(BodyRise, 4.81758, &[(HipGirth, -0.10854), (TotalCrotchLength, 0.43986)], 1.505, People985),
    eq(BodyRise, -0.14582, &[(Stature, 0.35236), (HipGirth, -0.032), (InsideLeg, -0.43975)], 1.677, Army2012),
    eq(BodyRise, -2.35562, &[(Stature, 0.13124), (WaistGirth, -0.08666), (HipGirth, 0.08203)], 1.891, Army2012),
    eq(BodyRise, 3.16905, &[(Stature, 0.10912), (HipGirth, -0.01192)], 1.977, Army2012),
    eq(BodyRise, 0.61958, &[(HipGirth, 0.03187), (BodyRiseSitting, 0.77598)], 2.033, People985),
    eq(BodyRise, 6.20216, &[(HipGirth, 0.07487), (WaistToHip, 0.51859)], 2.050, People985),
    eq(BodyRise, 10.6406, &[(WaistGirth, -0.04853), (HipGirth, 0.06642), (InsideLeg, 0.09055)], 2.138, Army2012),
    eq(BodyRise, 18.26813, &[(HipGirth, 0.02108)], 2.204, Army2012),
    eq(WaistToHip, -14.05383, &[(Stature, 0.37321), (WaistGirth, -0.13547), (HipGirth, 0.06732), (InsideLeg, -0.34419)], 2.190, Army2012),
    eq(WaistToHip, -0.4462, &[(HipGirth, -0.0406), (BodyRise, 0.92812)], 2.302, People985),
    eq(WaistToHip, -10.12047, &[(Stature, 0.17746), (WaistGirth, -0.11447), (HipGirth, 0.06028)], 2.334, Army2012),
    eq(WaistToHip, -4.92857, &[(Stature, 0.30279), (HipGirth, -0.07659), (InsideLeg, -0.27942)], 2.364, Army2012),
    eq(WaistToHip, -2.82227, &[(Stature, 0.14823), (HipGirth, -0.06382)], 2.456, Army2012),
    eq(WaistToHip, 2.80364, &[(WaistGirth, -0.07371), (HipGirth, 0.04406), (InsideLeg, 0.18537)], 2.591, Army2012),
    eq(WaistToHip, 17.68958, &[(HipGirth, -0.019)], 2.789, Army2012),
    eq(KneeHeight, -3.31834, &[(Stature, 0.06608), (WaistGirth, 0.02422), (HipGirth, -0.00391), (InsideLeg, 0.45723)], 1.027, Army2012),
    eq(KneeHeight, -4.94985, &[(Stature, 0.07867), (HipGirth, 0.02182), (InsideLeg, 0.44566)], 1.039, Army2012),
    eq(KneeHeight, -0.33373, &[(WaistGirth, 0.03516), (HipGirth, -0.00802), (InsideLeg, 0.55099)], 1.056, Army2012),
    eq(KneeHeight, 0.37826, &[(InsideLeg, 0.59435)], 1.143, People985),
    eq(KneeHeight, -8.30919, &[(Stature, 0.32518), (HipGirth, 0.00147)], 1.486, Army2012),
    eq(KneeHeight, 36.68745, &[(HipGirth, 0.09981)], 3.259, Army2012),
    eq(ThighGirth, -13.35352, &[(HipGirth, 0.59338), (KneeGirth, 0.38366)], 1.765, People985),
    eq(ThighGirth, -7.99327, &[(Stature, -0.05372), (WaistGirth, 0.0506), (HipGirth, 0.6493), (InsideLeg, 0.10241)], 1.956, Army2012),
    eq(ThighGirth, -10.4196, &[(WaistGirth, 0.04171), (HipGirth, 0.65265), (InsideLeg, 0.02619)], 1.966, Army2012),
    eq(ThighGirth, -9.16356, &[(Stature, 0.00452), (WaistGirth, 0.04435), (HipGirth, 0.6514)], 1.970, Army2012),
    eq(ThighGirth, -11.40142, &[(Stature, -0.02742), (HipGirth, 0.70305), (InsideLeg, 0.07822)], 1.984, Army2012),
    eq(ThighGirth, -9.7981, &[(HipGirth, 0.70427)], 1.997, Army2012),
    eq(KneeGirth, 4.1404, &[(HipGirth, 0.16123), (CalfGirth, 0.4856)], 1.243, People985),
    eq(KneeGirth, 8.03136, &[(ThighGirth, 0.21826), (CalfGirth, 0.45737)], 1.245, People985),
    eq(KneeGirth, -4.20769, &[(Stature, 0.0904), (HipGirth, 0.27155)], 1.341, Army1988),
    eq(KneeGirth, 10.45195, &[(HipGirth, 0.11173), (ThighGirth, 0.27578)], 1.496, People985),
    eq(KneeGirth, 13.58995, &[(ThighGirth, 0.40742)], 1.520, People985),
    eq(KneeGirth, 6.34307, &[(HipGirth, 0.32026)], 1.543, Army1988),
    eq(CalfGirth, 1.08703, &[(HipGirth, 0.05904), (KneeGirth, 0.78943)], 1.584, People985),
    eq(CalfGirth, 10.78505, &[(HipGirth, 0.04872), (ThighGirth, 0.35618)], 1.905, People985),
    eq(CalfGirth, -0.83033, &[(Stature, 0.1087), (WaistGirth, 0.04463), (HipGirth, 0.2136), (InsideLeg, -0.0627)], 1.939, Army2012),
    eq(CalfGirth, -0.11382, &[(Stature, 0.07304), (WaistGirth, 0.04845), (HipGirth, 0.21232)], 1.944, Army2012),
    eq(CalfGirth, -3.83621, &[(Stature, 0.13189), (HipGirth, 0.261), (InsideLeg, -0.08403)], 1.961, Army2012),
    eq(CalfGirth, -3.20277, &[(Stature, 0.08541), (HipGirth, 0.26484)], 1.971, Army2012),
    eq(CalfGirth, 4.07954, &[(WaistGirth, 0.06262), (HipGirth, 0.20682), (InsideLeg, 0.09154)], 1.980, Army2012),
    eq(CalfGirth, 8.61626, &[(HipGirth, 0.29067)], 2.113, Army2012),
    eq(AnkleGirth, 3.33252, &[(KneeGirth, 0.13604), (CalfGirth, 0.35254)], 0.801, People985),
    eq(AnkleGirth, 4.85662, &[(CalfGirth, 0.45086)], 0.824, People985),
    eq(AnkleGirth, -0.4832, &[(Stature, 0.11888), (HipGirth, 0.08994), (InsideLeg, -0.08056)], 1.176, Army2012),
    eq(AnkleGirth, 1.3407, &[(Stature, 0.06945), (WaistGirth, 0.01908), (HipGirth, 0.07293)], 1.185, Army2012),
    eq(AnkleGirth, 0.12405, &[(Stature, 0.07432), (HipGirth, 0.09362)], 1.192, Army2012),
    eq(AnkleGirth, 5.52679, &[(WaistGirth, 0.03301), (HipGirth, 0.0675), (InsideLeg, 0.08434)], 1.243, Army2012),
    eq(AnkleGirth, 10.40788, &[(HipGirth, 0.1161)], 1.364, Army2012),
    eq(HeelGirth, -1.6631, &[(AnkleGirth, 0.81026), (InsideLeg, 0.20585)], 1.037, People985),
    eq(HeelGirth, -2.262, &[(Stature, 0.14883), (WaistGirth, 0.05417), (HipGirth, 0.00394), (InsideLeg, 0.05508)], 1.176, Army2012),
    eq(HeelGirth, -2.89139, &[(Stature, 0.18015), (WaistGirth, 0.05081), (HipGirth, 0.00507)], 1.183, Army2012),
    eq(HeelGirth, -6.1306, &[(Stature, 0.19312), (HipGirth, 0.06015)], 1.231, Army2012),
    eq(HeelGirth, 4.4604, &[(WaistGirth, 0.0788), (HipGirth, -0.00534), (InsideLeg, 0.26625)], 1.299, Army2012),
    eq(HeelGirth, 7.61734, &[(AnkleGirth, 1.1517)], 1.461, People985),
    eq(HeelGirth, 20.59295, &[(HipGirth, 0.11855)], 2.117, Army2012),
];

#[rustfmt::skip]
pub(super) const WORN_FEMALE: &[Equation] = &[
    eq(TotalCrotchLength, -3.65452, &[(HipGirth, 0.27592), (BodyRise, 1.81491)], 2.275, People985),
];

#[rustfmt::skip]
pub(super) const WORN_MALE: &[Equation] = &[
    eq(TotalCrotchLength, -5.2241, &[(HipGirth, 0.32404), (BodyRise, 1.7041)], 2.357, People985),
];

#[rustfmt::skip]
pub(super) const WORN_BOTH: &[Equation] = &[
    eq(TotalCrotchLength, -4.78677, &[(HipGirth, 0.30074), (BodyRise, 1.7699)], 2.328, People985),
];

pub(super) const NATURAL_FEMALE_REACH: &[Reach] = &[
    reach(Stature, 142.8, 187.0),
    reach(HipGirth, 78.7, 118.9),
    reach(InsideLeg, 59.4, 94.8),
    reach(WaistGirth, 56.8, 98.7),
];

pub(super) const NATURAL_MALE_REACH: &[Reach] = &[
    reach(Stature, 149.7, 204.2),
    reach(HipGirth, 80.5, 123.9),
    reach(InsideLeg, 67.5, 106.7),
    reach(WaistGirth, 64.7, 112.2),
];

pub(super) const NATURAL_BOTH_REACH: &[Reach] = &[
    reach(Stature, 142.8, 204.2),
    reach(HipGirth, 78.7, 123.9),
    reach(InsideLeg, 59.4, 106.7),
    reach(WaistGirth, 56.8, 112.2),
];

pub(super) const ISO_FEMALE_REACH: &[Reach] = &[
    reach(Stature, 142.8, 187.0),
    reach(HipGirth, 78.7, 118.9),
    reach(InsideLeg, 59.4, 94.8),
    reach(WaistGirth, 60.7, 98.1),
];

pub(super) const ISO_MALE_REACH: &[Reach] = &[
    reach(Stature, 149.7, 204.2),
    reach(HipGirth, 80.5, 123.9),
    reach(InsideLeg, 67.5, 106.7),
    reach(WaistGirth, 65.7, 112.6),
];

pub(super) const ISO_BOTH_REACH: &[Reach] = &[
    reach(Stature, 142.8, 204.2),
    reach(HipGirth, 78.7, 123.9),
    reach(InsideLeg, 59.4, 106.7),
    reach(WaistGirth, 60.7, 112.6),
];

pub(super) const NAVEL_FEMALE_REACH: &[Reach] = &[
    reach(Stature, 140.9, 182.9),
    reach(HipGirth, 79.8, 134.1),
    reach(InsideLeg, 61.0, 94.7),
    reach(WaistGirth, 61.1, 133.4),
];

pub(super) const NAVEL_MALE_REACH: &[Reach] = &[
    reach(Stature, 149.1, 199.3),
    reach(HipGirth, 73.7, 130.5),
    reach(InsideLeg, 70.2, 103.1),
    reach(WaistGirth, 64.8, 137.9),
];

pub(super) const NAVEL_BOTH_REACH: &[Reach] = &[
    reach(Stature, 140.9, 199.3),
    reach(HipGirth, 73.7, 134.1),
    reach(InsideLeg, 61.0, 103.1),
    reach(WaistGirth, 61.1, 137.9),
];

pub(super) const WORN_FEMALE_REACH: &[Reach] =
    &[reach(Stature, 142.8, 187.0), reach(HipGirth, 78.7, 118.9), reach(InsideLeg, 59.4, 94.8)];

pub(super) const WORN_MALE_REACH: &[Reach] =
    &[reach(Stature, 149.7, 204.2), reach(HipGirth, 80.5, 123.9), reach(InsideLeg, 67.5, 106.7)];

pub(super) const WORN_BOTH_REACH: &[Reach] =
    &[reach(Stature, 142.8, 204.2), reach(HipGirth, 78.7, 123.9), reach(InsideLeg, 59.4, 106.7)];
