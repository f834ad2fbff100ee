//! The line language: how wide, how dark, how broken.

/// How dark a line or a text is. Greys and black only, so that every printer shows the same.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Ink {
    /// Lines to cut and to sew, and what must be read.
    Black,
    /// Lines inside a piece.
    Dark,
    /// Levels and notes in the margin.
    Middle,
    /// Construction lines.
    Faint,
}

/// How an area is filled.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Shade {
    /// Paper white; hides what lies under it.
    White,
    /// The lightest grey that a laser printer still shows.
    Pale,
    /// A clear grey.
    Middle,
    /// Solid black.
    Black,
}

impl Ink {
    /// The grey, from 0 for black to 1 for white.
    pub fn grey(self) -> f64 {
        match self {
            Self::Black => 0.0,
            Self::Dark => 0.3,
            Self::Middle => 0.5,
            Self::Faint => 0.7,
        }
    }
}

impl Shade {
    /// The grey, from 0 for black to 1 for white.
    pub fn grey(self) -> f64 {
        match self {
            Self::White => 1.0,
            Self::Pale => 0.92,
            Self::Middle => 0.75,
            Self::Black => 0.0,
        }
    }
}

/// What a line is drawn with. Ends are cut square, corners are round.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pen {
    /// Width of the line, cm.
    pub width: f64,
    /// How dark.
    pub ink: Ink,
    /// Lengths of dash and gap in turn, cm; empty for an unbroken line.
    pub dash: &'static [f64],
}

impl Pen {
    /// An unbroken line, `width` in cm.
    pub const fn new(width: f64, ink: Ink) -> Self {
        Self { width, ink, dash: &[] }
    }

    /// The same pen with its line broken into dashes and gaps, cm.
    #[must_use]
    pub const fn dashed(self, dash: &'static [f64]) -> Self {
        Self { dash, ..self }
    }
}
