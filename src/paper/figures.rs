//! Numbers and names as paper shows them.

use crate::unit::Unit;
pub(super) use crate::{
    unit::{decimal, signed},
    voice::spoken,
};

/// A length in the unit of the paper, without the unit's name.
pub(super) fn figure(cm: f64, unit: Unit) -> String {
    unit.figure(cm)
}

/// A length with its unit.
pub(super) fn length(cm: f64, unit: Unit) -> String {
    unit.length(cm)
}
