//! The sheets that people have in their printers.

use kurbo::Size;

use crate::{terms::words, unit::CM_PER_INCH};

words! {
    /// A format of paper.
    Paper {
        /// ISO 216 A4.
        A4 = "a4",
        /// US Letter (ANSI/ASME Y14.1 A).
        Letter = "letter",
        /// What A4 and US Letter have in common: one layout prints on either.
        A4OrLetter = "a4_letter",
        /// ISO 216 A3.
        A3 = "a3",
        /// US Tabloid (ANSI/ASME Y14.1 B).
        Tabloid = "tabloid",
        /// ISO 216 A0, the largest of a print shop.
        A0 = "a0",
    }
}

impl Paper {
    /// Width and height of the upright sheet, cm.
    pub fn size(self) -> Size {
        let inches = |width, height| Size::new(width, height) * CM_PER_INCH;
        match self {
            Self::A4 => Size::new(21.0, 29.7),
            Self::Letter => inches(8.5, 11.0),
            // A page that is smaller than the sheet is whole on it, whether the printer centres it or begins in a
            // corner; a page of one of the two formats would lose an edge on the other.
            Self::A4OrLetter => {
                let (a4, letter) = (Self::A4.size(), Self::Letter.size());
                Size::new(a4.width.min(letter.width), a4.height.min(letter.height))
            }
            Self::A3 => Size::new(29.7, 42.0),
            Self::Tabloid => inches(11.0, 17.0),
            Self::A0 => Size::new(84.1, 118.9),
        }
    }
}

/// A sheet of paper as tiles use it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sheet {
    /// Width and height, cm.
    pub size: Size,
    /// What the printer cannot reach or should not, on each side, cm.
    pub margin: f64,
    /// The strip that two neighbours both show, and that is glued, cm.
    pub overlap: f64,
}

impl Sheet {
    /// An upright sheet with a margin of 1 cm, which home printers leave free, and a strip of 1.5 cm to glue (common
    /// practice, no source).
    pub fn of(paper: Paper) -> Self {
        Self { size: paper.size(), margin: 1.0, overlap: 1.5 }
    }

    /// The same sheet lying on its side.
    #[must_use]
    pub fn on_its_side(self) -> Self {
        Self { size: Size::new(self.size.height, self.size.width), ..self }
    }

    /// The part that is printed on, cm.
    pub fn window(&self) -> Size {
        self.size - Size::new(2.0 * self.margin, 2.0 * self.margin)
    }

    /// How far a sheet stands from its neighbour to the left and above, cm.
    pub fn step(&self) -> Size {
        self.window() - Size::new(self.overlap, self.overlap)
    }
}
