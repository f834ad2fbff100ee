//! What the trade tells everyone who cuts from a new draft.

/// One sentence each, for every sheet of paper that leaves the program.
pub const CAUTIONS: [&str; 4] = [
    "Sew a toile before cutting good cloth.",
    "After printing, measure a test square both ways.",
    "Not for medical or compression wear.",
    "Body data are personal: they stay on your machine.",
];
