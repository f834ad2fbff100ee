//! Measurements with their source and their spread.

use crate::terms::{EnumMap, Measurement, Sex, WaistLevel, words};
use crate::unit::Unit;

words! {
    /// Where the value of a measurement comes from.
    Origin {
        /// Taken on the body.
        Measured = "measured",
        /// Follows exactly from measured ones: heights by difference, a length from its parts.
        Derived = "derived",
        /// By an estimating equation of a survey, or from values of which one was estimated.
        Estimated = "estimated",
    }
}

/// One measurement of one body.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Value {
    /// The measurement, in cm.
    pub cm: f64,
    /// Where it comes from.
    pub from: Origin,
    /// One standard deviation of what may be wrong with it, in cm: tape error, or what the equation misses.
    pub sd: f64,
    /// Estimated from a measurement beyond those of the people surveyed.
    pub extrapolated: bool,
}

/// What a measurement file says about a body, in cm.
#[derive(Clone, Debug, PartialEq)]
pub struct Given {
    /// Which equations to read it with.
    pub sex: Sex,
    /// Where the waist, and all that is measured from it, was taken.
    pub waist_level: WaistLevel,
    /// The unit in which its numbers were written, for whoever has to be told of a slip.
    pub units: Unit,
    /// By measurement, in cm.
    pub measured: EnumMap<Measurement, Option<f64>>,
}

impl Given {
    /// A body of which nothing is measured yet.
    pub fn new(sex: Sex, waist_level: WaistLevel) -> Self {
        Self { sex, waist_level, units: Unit::Cm, measured: EnumMap::default() }
    }

    /// The same with one measurement more, in cm.
    #[must_use]
    pub fn with(mut self, measurement: Measurement, cm: f64) -> Self {
        self.measured[measurement] = Some(cm);
        self
    }

    /// A measurement as taken, in cm.
    pub fn cm(&self, measurement: Measurement) -> Option<f64> {
        self.measured[measurement]
    }
}

/// A body with everything that a draft may ask, measured or not.
///
/// [`Body::resolve`] makes it. From then on there are always waist and hip girth, body rise, waist to hip, waist height,
/// hip height, inside leg, knee height, the girths of thigh, knee, calf, ankle and heel, and the total crotch length.
#[derive(Clone, Debug, PartialEq)]
pub struct Body {
    /// Which equations were used.
    pub sex: Sex,
    /// Where the waist, and all that is measured from it, was taken. Values stay at this level.
    pub waist_level: WaistLevel,
    /// By measurement.
    pub values: EnumMap<Measurement, Option<Value>>,
}

impl Body {
    /// A measurement with its source, if it is known.
    pub fn value(&self, measurement: Measurement) -> Option<Value> {
        self.values[measurement]
    }

    /// A measurement in cm, if it is known.
    pub fn cm(&self, measurement: Measurement) -> Option<f64> {
        self.value(measurement).map(|value| value.cm)
    }
}
