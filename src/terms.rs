//! Every name of the trade that a file, a printout or another room may use, once.
//!
//! A word is an enum variant inside and a lower-case key outside; [`Word`] joins the two. Body, recipe, draft and
//! answer all read the same lists, so that a new level or edge is found by the compiler wherever it matters.

mod measurement;

/// A value for every word of a list.
pub use enum_map::EnumMap;
pub use measurement::{About, Measurement};

/// A closed list of trade words, each with the key by which files and printouts know it.
pub trait Word: Copy + Eq + 'static {
    /// All words of the list, in the order in which they are printed.
    const ALL: &'static [Self];
    /// The keys of all words, in the same order.
    const KEYS: &'static [&'static str];
    /// The key in files, on the command line and in JSON.
    fn key(self) -> &'static str;
    /// The word with this key, if there is one.
    fn from_key(key: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|word| word.key() == key)
    }
}

/// Declares a closed list: variants, their keys, and the sentence that documents each.
macro_rules! words {
    ($(#[$outer:meta])* $name:ident { $($(#[$inner:meta])* $variant:ident = $key:literal,)+ }) => {
        $(#[$outer])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, enum_map::Enum)]
        pub enum $name { $($(#[$inner])* $variant,)+ }

        impl $crate::terms::Word for $name {
            const ALL: &'static [Self] = &[$(Self::$variant,)+];
            const KEYS: &'static [&'static str] = &[$($key,)+];
            fn key(self) -> &'static str {
                match self { $(Self::$variant => $key,)+ }
            }
        }

        impl std::fmt::Display for $name {
            fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                out.pad($crate::terms::Word::key(*self))
            }
        }
    };
}
pub(crate) use words;

words! {
    /// A drawn part of one trouser leg, to the sewing line.
    Panel {
        /// From centre front to side seam.
        Front = "front",
        /// From side seam to centre back.
        Back = "back",
    }
}

words! {
    /// Which leg a row or a piece is about.
    Side {
        /// Left and right are alike.
        Both = "both",
        /// The wearer's left leg.
        Left = "left",
        /// The wearer's right leg.
        Right = "right",
    }
}

words! {
    /// A horizontal line of the draft, from the top.
    Level {
        /// Where the waist was measured.
        Waist = "waist",
        /// The greatest prominence of the seat.
        Hip = "hip",
        /// The crotch line: body rise and its ease.
        Crotch = "crotch",
        /// Where the body's thigh is girthed: crotch line - crotch-depth ease + 2.5 cm, but at least 0.5 cm below both crotch
        /// points.
        Thigh = "thigh",
        /// The knee line.
        Knee = "knee",
        /// 0.31 of the knee height below the knee.
        Calf = "calf",
        /// The finished bottom of the leg.
        Hem = "hem",
    }
}

impl Level {
    /// What is girthed of the body there; at the hem the heel, which has to pass, and nothing at the crotch.
    pub fn girth(self) -> Option<Measurement> {
        match self {
            Self::Waist => Some(Measurement::WaistGirth),
            Self::Hip => Some(Measurement::HipGirth),
            Self::Crotch => None,
            Self::Thigh => Some(Measurement::ThighGirth),
            Self::Knee => Some(Measurement::KneeGirth),
            Self::Calf => Some(Measurement::CalfGirth),
            Self::Hem => Some(Measurement::HeelGirth),
        }
    }
}

words! {
    /// A level line on which two drafts are laid over each other.
    Anchor {
        /// The crotch line.
        Crotch = "crotch",
        /// The hip line.
        Hip = "hip",
        /// The waist line.
        Waist = "waist",
        /// The knee line.
        Knee = "knee",
    }
}

impl Anchor {
    /// Its level.
    pub fn level(self) -> Level {
        match self {
            Self::Crotch => Level::Crotch,
            Self::Hip => Level::Hip,
            Self::Waist => Level::Waist,
            Self::Knee => Level::Knee,
        }
    }
}

words! {
    /// A side of a panel's outline, head to tail round the panel.
    Edge {
        /// From the centre to the side.
        Waist = "waist",
        /// From the waist to the hem.
        SideSeam = "side_seam",
        /// From the side to the inner leg.
        Hem = "hem",
        /// From the hem to the crotch point.
        Inseam = "inseam",
        /// From the crotch point to the centre waist.
        CrotchSeam = "crotch_seam",
    }
}

words! {
    /// One of the ten points by which a panel is known, whatever recipe made it. Parameters act on these.
    Role {
        /// Top of the centre front or centre back line.
        CentreWaist = "centre_waist",
        /// Top of the side seam.
        SideWaist = "side_waist",
        /// Centre line at the hip.
        CentreHip = "centre_hip",
        /// Side seam at the hip.
        SideHip = "side_hip",
        /// Where the straight centre line turns into the crotch curve.
        CurveStart = "curve_start",
        /// The tip of the crotch extension, where crotch seam and inseam meet.
        CrotchPoint = "crotch_point",
        /// Side seam at the knee.
        SideKnee = "side_knee",
        /// Inseam at the knee.
        InnerKnee = "inner_knee",
        /// Side seam at the hem.
        SideHem = "side_hem",
        /// Inseam at the hem.
        InnerHem = "inner_hem",
    }
}

words! {
    /// A seam that is walked front against back, or left against right.
    Seam {
        /// Front inseam against back inseam.
        Inseam = "inseam",
        /// Front side seam against back side seam.
        SideSeam = "side_seam",
        /// Left centre front against right.
        CentreFront = "centre_front",
        /// Left centre back against right.
        CentreBack = "centre_back",
    }
}

impl Seam {
    /// As a sentence says it.
    pub fn plain(self) -> String {
        self.key().replace('_', " ")
    }
}

words! {
    /// A place where two outlines meet when sewn and must run on without a peak or a dip.
    Join {
        /// Front and back crotch curve across the inseam: 180 degrees.
        Crotch = "crotch",
        /// Front and back waist across the side seam: 180 degrees.
        SideWaist = "side_waist",
        /// Waist against centre front: 90 degrees.
        CentreFront = "centre_front",
        /// Waist against centre back: 90 degrees.
        CentreBack = "centre_back",
    }
}

words! {
    /// Which estimating equations a body is read with.
    Sex {
        /// Women's equations.
        Female = "female",
        /// Men's equations.
        Male = "male",
        /// Both weighed alike.
        Unsaid = "unsaid",
    }
}

words! {
    /// Where on the trunk the waist, and everything measured from it, was taken.
    WaistLevel {
        /// The indentation of the trunk, where a belt settles.
        Natural = "natural",
        /// Halfway between lowest rib and hip bone (ISO 8559-1).
        Iso = "iso",
        /// Over the navel.
        Navel = "navel",
        /// An elastic tied where the waistband shall sit.
        Worn = "worn",
    }
}

words! {
    /// How smooth the seat hangs standing, against how easily it sits.
    SeatSet {
        /// Smooth standing.
        Clean = "clean",
        /// Sits easily.
        Easy = "easy",
    }
}

words! {
    /// How the fit parameters are found.
    FitKind {
        /// Solved so that the draft meets what was measured.
        Measured = "measured",
        /// Those of the file alone, as an earlier fit or a toile left them.
        Held = "held",
        /// The recipe's proportions alone.
        Proportional = "proportional",
    }
}

words! {
    /// Where ease is given: finished measure minus body measure, standing.
    EaseAt {
        /// Waist girth.
        Waist = "waist",
        /// Top hip girth.
        TopHip = "top_hip",
        /// Hip girth.
        Hip = "hip",
        /// Thigh girth.
        Thigh = "thigh",
        /// Knee girth.
        Knee = "knee",
        /// Calf girth.
        Calf = "calf",
        /// Body rise.
        CrotchDepth = "crotch_depth",
        /// Total crotch length.
        CrotchLength = "crotch_length",
    }
}

impl EaseAt {
    /// The level at which it is read off a draft, where there is one.
    pub fn level(self) -> Option<Level> {
        match self {
            Self::Waist => Some(Level::Waist),
            Self::Hip => Some(Level::Hip),
            Self::Thigh => Some(Level::Thigh),
            Self::Knee => Some(Level::Knee),
            Self::Calf => Some(Level::Calf),
            Self::TopHip | Self::CrotchDepth | Self::CrotchLength => None,
        }
    }

    /// The girth of the body that it is added to; nothing where it is added to a length.
    pub fn girth(self) -> Option<Measurement> {
        match self {
            Self::TopHip => Some(Measurement::TopHipGirth),
            at => at.level().and_then(Level::girth),
        }
    }
}

words! {
    /// A width or length of the garment that style decides, not the body.
    Style {
        /// Flat width at the knee: half the girth of the leg.
        KneeWidth = "knee_width",
        /// Flat width at the hem: half the girth of the leg.
        HemWidth = "hem_width",
        /// Finished length along the inside leg, from the floor upwards: 0 reaches the floor, 2 stops 2 cm above it.
        Length = "length",
        /// How far below the measured waist the finished top is cut.
        WaistDrop = "waist_drop",
    }
}

words! {
    /// What a mirror shows of a body and a tape does not.
    Shape {
        /// The front of the thigh, side on.
        FrontThigh = "front_thigh",
        /// The inside of the thigh.
        InnerThigh = "inner_thigh",
        /// The outside of the thigh, below the hip.
        OuterThigh = "outer_thigh",
        /// The seat, side on.
        Seat = "seat",
        /// The belly, side on.
        Abdomen = "abdomen",
        /// The hollow of the back.
        SwayBack = "sway_back",
    }
}

words! {
    /// How much of it.
    HowMuch {
        /// Less than most have.
        Little = "little",
        /// As most have it.
        Usual = "usual",
        /// More than most have.
        Much = "much",
    }
}

words! {
    /// An edge or place that gets its own seam allowance.
    Allowance {
        /// Along the waist.
        Waist = "waist",
        /// Along the side seam.
        SideSeam = "side_seam",
        /// Along the inseam.
        Inseam = "inseam",
        /// Along the crotch seam.
        CrotchSeam = "crotch_seam",
        /// The turn-up.
        Hem = "hem",
        /// The inlay at the top of the centre back.
        CentreBackWaist = "centre_back_waist",
    }
}
