//! What the trade tells everyone who cuts from a new draft.

use crate::booklet::headed;

/// One sentence each, for every sheet of paper.
pub(crate) const CAUTIONS: [&str; 4] = [
    "Sew a toile before cutting good cloth.",
    "After printing, measure a test square both ways.",
    "Not for medical or compression wear.",
    "Body data are personal: they stay on your machine.",
];

/// All of them for a terminal, within 80 columns.
pub fn cautions() -> String {
    headed("", &CAUTIONS.join(" "))
}
