//! The one table of fit parameters: what each is called, where it works, how far it may go, what it moves and what it
//! leaves alone, and how the same thing is done by hand.

mod table;

use crate::{
    terms::{EnumMap, Word, words},
    voice::{Sentence, Value},
};

words! {
    /// A fit parameter. Positive gives room; its value is in cm on the paper, of one panel of one leg, or in degrees.
    Key {
        /// Turns the top of the front inseam outwards about a point on the inseam, for a prominent front thigh.
        ThighFront = "thigh.front",
        /// How far below the crotch point, along the inseam, the pivot of `thigh.front` lies.
        ThighFrontReach = "thigh.front_reach",
        /// The same turn on the back, for full hamstrings.
        ThighBack = "thigh.back",
        /// The same turn on the back, closing: takes back the crotch length that `thigh.front` gave.
        ThighBackTake = "thigh.back_take",
        /// Both crotch points out, for a full inner thigh.
        ThighInner = "thigh.inner",
        /// The side seams of both panels out at the crotch line, for a full outer thigh.
        ThighOuter = "thigh.outer",
        /// The side seam of the front alone out at the crotch line.
        ThighFrontSide = "thigh.front_side",
        /// A wedge at the centre back on the hip line, hinged at the side.
        SeatLength = "seat.length",
        /// More (or less) lean of the centre back above the hip line, in degrees.
        SeatAngle = "seat.angle",
        /// The centre back and its crotch point out, for a full seat.
        SeatWidth = "seat.width",
        /// The back crotch curve deeper towards its corner.
        SeatScoop = "seat.scoop",
        /// The back crotch curve straight down, for a low seat.
        SeatLow = "seat.low",
        /// Everything below the hip line down: a deeper crotch.
        CrotchDepth = "crotch.depth",
        /// The front crotch point out.
        CrotchFrontExtension = "crotch.front_extension",
        /// The back crotch point out.
        CrotchBackExtension = "crotch.back_extension",
        /// The front crotch curve deeper towards its corner.
        CrotchFrontScoop = "crotch.front_scoop",
        /// The waist higher at the centre front.
        WaistRaiseFront = "waist.raise_front",
        /// The waist higher at the centre back.
        WaistRaiseBack = "waist.raise_back",
        /// The waist higher at the side.
        WaistRaiseSide = "waist.raise_side",
        /// A level cut on the hip line of the front, opened at the centre front.
        AbdomenLength = "abdomen.length",
        /// More of the waist on the front, less on the back.
        AbdomenWidth = "abdomen.width",
        /// Side waist and side hip of one side higher.
        HipUneven = "hip.uneven",
        /// The side seam towards the back at the hip.
        HipFrontShare = "hip.front_share",
        /// Both edges of both panels inwards at the knee.
        LegKneeIn = "leg.knee_in",
        /// The front hem up and the back hem down at the crease.
        LegKneeForward = "leg.knee_forward",
        /// The lower leg inwards.
        LegClose = "leg.close",
        /// More girth at the calf.
        LegCalf = "leg.calf",
        /// The side seam forward or back from hip to hem.
        SideForward = "side.forward",
    }
}

/// What the value of a parameter counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measure {
    /// Centimetres on the paper.
    Cm,
    /// Degrees.
    Degrees,
}

impl Measure {
    /// As it is printed behind a number.
    pub fn symbol(self) -> &'static str {
        match self {
            Self::Cm => "cm",
            Self::Degrees => "degrees",
        }
    }

    /// A value that it counts.
    pub fn amount(self, value: f64) -> Value {
        match self {
            Self::Cm => Value::Amount(value),
            Self::Degrees => Value::Degrees(value),
        }
    }

    /// The most of it that still holds.
    pub fn limit(self, value: f64) -> Value {
        match self {
            Self::Cm => Value::AtMost(value),
            // to a tenth towards nothing, as it is printed
            Self::Degrees => Value::Degrees((value * 10.0).trunc() / 10.0),
        }
    }

    /// From one value that it counts to another.
    pub fn range(self, (least, most): (f64, f64)) -> Value {
        match self {
            Self::Cm => Value::Lengths(least, most),
            Self::Degrees => Value::Angles(least, most),
        }
    }
}

/// Whether a parameter may be given to one leg alone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OneLeg {
    /// Each leg has its own.
    Free,
    /// Each leg may have its own as long as left and right crotch seams differ by no more than 0.3 cm.
    WithCare,
    /// Never: centre front is sewn to centre front and centre back to centre back.
    Never,
    /// Only one leg or side can have it.
    Only,
}

/// One row of the table.
#[derive(Debug)]
pub struct About {
    /// The parameter.
    pub key: Key,
    /// A short plain title.
    pub title: &'static str,
    /// The region, which is the table of the file in which the key stands.
    pub region: &'static str,
    /// What its value counts.
    pub unit: Measure,
    /// Least and greatest value in ordinary use; beyond it is a notice.
    pub usual: (f64, f64),
    /// Beyond this nothing is drafted.
    pub hard: (f64, f64),
    /// The value when nothing is given.
    pub default: f64,
    /// An amount of ordinary use, at which pictures show it.
    pub ordinary: f64,
    /// What it is for: a body or a fault of the toile.
    pub purpose: &'static str,
    /// What moves.
    pub moves: &'static str,
    /// What stays where it was.
    pub stays: &'static str,
    /// How the same correction is done on paper.
    pub hand_method: &'static str,
    /// Parameters worth a look when this one is set, with the reason.
    pub companions: &'static [(Key, &'static str)],
    /// Whether one leg may have it alone.
    pub one_leg: OneLeg,
}

impl Key {
    /// How many parameters there are; arrays by parameter have this length.
    pub const COUNT: usize = <Self as Word>::ALL.len();

    /// The row of this parameter in the one table.
    pub fn about(self) -> &'static About {
        &table::ABOUT[self as usize]
    }
}

/// The page of the repository that shows every fit parameter with a picture.
pub const PAGE: &str = "blocks/CORRECTIONS.md";

impl About {
    /// What it is for and what is usual, for whoever gave it what it cannot have.
    pub fn advice(&self) -> Sentence {
        Sentence::new("`{key}` is for {purpose}; usual is {usual}; `{page}` shows it")
            .with("key", self.key)
            .with("purpose", self.purpose)
            .with("usual", self.unit.range(self.usual))
            .with("page", PAGE)
    }
}

/// The value of every fit parameter of one leg.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Parameters(EnumMap<Key, f64>);

impl Default for Parameters {
    fn default() -> Self {
        Self(EnumMap::from_fn(|key: Key| key.about().default))
    }
}

impl Parameters {
    /// The same with one value set.
    #[must_use]
    pub fn with(mut self, key: Key, value: f64) -> Self {
        self.0[key] = value;
        self
    }

    /// The same without one parameter's effect.
    #[must_use]
    pub fn without(self, key: Key) -> Self {
        self.with(key, key.about().default)
    }

    /// Every parameter that is not at its default, in the order of the table.
    pub fn set(&self) -> impl Iterator<Item = (Key, f64)> {
        Key::ALL.iter().map(|key| (*key, self[*key])).filter(|(key, value)| *value != key.about().default)
    }
}

impl std::ops::Index<Key> for Parameters {
    type Output = f64;
    fn index(&self, key: Key) -> &f64 {
        &self.0[key]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn table_rows_in_the_order_of_the_enum() {
        for key in Key::ALL {
            assert_eq!(key.about().key, *key);
        }
    }

    #[test]
    fn region_as_first_word_of_the_key() {
        for key in Key::ALL {
            assert_eq!(key.key().split('.').next(), Some(key.about().region), "{key}");
        }
    }

    #[test]
    fn usual_range_and_default_within_the_hard_limits() {
        for key in Key::ALL {
            let about = key.about();
            assert!(about.hard.0 <= about.usual.0 && about.usual.0 < about.usual.1, "{key}");
            assert!(about.usual.1 <= about.hard.1, "{key}");
            assert!((about.hard.0..=about.hard.1).contains(&about.default), "{key}");
            assert!((about.usual.0..=about.usual.1).contains(&about.ordinary), "{key}");
        }
    }
}
