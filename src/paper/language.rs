//! The line language of everything that people read: a few widths, greys and rhythms of dashes, and four sizes of
//! letters. A line says by its weight what it is for, so that a black-and-white print loses nothing.

use crate::drawing::{Ink, Pen};

/// What lines are drawn with and how large letters are set, cm.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Language {
    /// What the sheet is about: the sewing line of a panel, the cutting line of a piece.
    pub outline: Pen,
    /// The sewing line within a piece that ends at its cutting line.
    pub sewing: Pen,
    /// Darts, notches and what is measured: drawn within or across a panel.
    pub inside: Pen,
    /// The crease, which is the grain.
    pub crease: Pen,
    /// The grain of a piece.
    pub grain: Pen,
    /// Levels and rules of tables.
    pub level: Pen,
    /// Construction lines.
    pub construction: Pen,
    /// An earlier shape under a newer one.
    pub earlier: Pen,
    /// Name of the body.
    pub title: f64,
    /// Headings.
    pub head: f64,
    /// Tables and sentences.
    pub text: f64,
    /// Names of points and remarks.
    pub small: f64,
}

/// At true scale, read standing before a table or a wall.
pub(crate) const WALL: Language = Language {
    outline: Pen::new(0.09, Ink::Black),
    sewing: Pen::new(0.04, Ink::Dark),
    inside: Pen::new(0.04, Ink::Black),
    crease: Pen::new(0.03, Ink::Dark).dashed(&[2.0, 0.3, 0.3, 0.3]),
    grain: Pen::new(0.04, Ink::Black),
    level: Pen::new(0.02, Ink::Middle),
    construction: Pen::new(0.025, Ink::Faint),
    earlier: Pen::new(0.035, Ink::Dark).dashed(&[0.5, 0.3]),
    title: 2.4,
    head: 0.75,
    text: 0.6,
    small: 0.45,
};

/// On the pieces themselves, read while cutting.
pub(crate) const PIECES: Language = Language {
    outline: Pen::new(0.07, Ink::Black),
    sewing: Pen::new(0.035, Ink::Dark).dashed(&[0.35, 0.2]),
    inside: Pen::new(0.035, Ink::Black),
    crease: Pen::new(0.03, Ink::Dark).dashed(&[2.0, 0.3, 0.3, 0.3]),
    grain: Pen::new(0.04, Ink::Black),
    level: Pen::new(0.025, Ink::Dark),
    construction: Pen::new(0.025, Ink::Faint),
    earlier: Pen::new(0.035, Ink::Dark).dashed(&[0.5, 0.3]),
    title: 1.2,
    head: 0.75,
    text: 0.5,
    small: 0.4,
};

/// On a sheet in the hand or on a screen.
pub(crate) const SHEET: Language = Language {
    outline: Pen::new(0.05, Ink::Black),
    sewing: Pen::new(0.025, Ink::Dark),
    inside: Pen::new(0.025, Ink::Black),
    crease: Pen::new(0.02, Ink::Dark).dashed(&[0.6, 0.12, 0.12, 0.12]),
    grain: Pen::new(0.025, Ink::Black),
    level: Pen::new(0.015, Ink::Middle),
    construction: Pen::new(0.015, Ink::Faint),
    earlier: Pen::new(0.025, Ink::Dark).dashed(&[0.18, 0.12]),
    title: 0.8,
    head: 0.34,
    text: 0.3,
    small: 0.25,
};

impl Language {
    /// From one baseline of running text to the next, cm.
    pub(crate) fn leading(&self) -> f64 {
        1.4 * self.text
    }
}

/// The pens of the sheet as a style sheet for a screen: a class each, widths that do not change with the zoom. Inks and
/// paper are left to the page, which has a light and a dark one.
#[cfg(feature = "serve")]
pub(crate) fn pens_as_css() -> String {
    /// A style sheet's pixels in a centimetre.
    const PIXELS: f64 = 96.0 / 2.54;
    let pens = [
        ("outline", SHEET.outline),
        ("sewing", SHEET.sewing),
        ("inside", SHEET.inside),
        ("crease", SHEET.crease),
        ("level", SHEET.level),
        ("construction", SHEET.construction),
        ("earlier", SHEET.earlier),
    ];
    pens.iter()
        .map(|(name, pen)| {
            let ink = match pen.ink {
                Ink::Black => "black",
                Ink::Dark => "dark",
                Ink::Middle => "middle",
                Ink::Faint => "faint",
            };
            let dash: Vec<String> = pen.dash.iter().map(|part| format!("{:.2}", part * PIXELS)).collect();
            let dash = if dash.is_empty() { "none".to_owned() } else { dash.join(" ") };
            let width = pen.width * PIXELS;
            format!(".{name} {{ stroke: var(--ink-{ink}); stroke-width: {width:.3}px; stroke-dasharray: {dash} }}\n")
        })
        .collect()
}
