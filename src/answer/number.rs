//! Numbers as the contract prints them.

use kurbo::Point;
use serde::{Serialize, Serializer};

/// A length in cm, printed to 4 decimals.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cm(pub f64);

/// An angle in degrees, printed to 2 decimals.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Degrees(pub f64);

/// A share of a whole, 0 to 1, printed to 3 decimals.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Share(pub f64);

/// A place on the paper: x and y in cm to 4 decimals.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place(pub Point);

/// Rounded to a power of ten, without a negative zero.
pub(super) fn rounded(value: f64, scale: f64) -> f64 {
    (value * scale).round() / scale + 0.0
}

impl Serialize for Cm {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_f64(rounded(self.0, 1e4))
    }
}

impl Serialize for Degrees {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_f64(rounded(self.0, 1e2))
    }
}

impl Serialize for Place {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        [Cm(self.0.x), Cm(self.0.y)].serialize(serializer)
    }
}

impl Serialize for Share {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_f64(rounded(self.0, 1e3))
    }
}
