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
