//! Numbers and names as paper shows them.

use crate::unit::Unit;
pub(super) use crate::{
    unit::{decimal, signed},
    voice::spoken,
};

/// A length with its unit.
pub(super) fn length(cm: f64, unit: Unit) -> String {
    unit.length(cm)
}
