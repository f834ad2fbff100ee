//! The one font: Noto Sans Regular 2.004 (SIL Open Font License 1.1, see `font/OFL.txt`), from Debian's package
//! fonts-noto-core, cut with fonttools:
//!
//! ```text
//! pyftsubset NotoSans-Regular.ttf --layout-features='' --no-hinting --notdef-outline --name-IDs='0,1,2,3,4,5,6,7,8,9,11,13,14'
//!   --unicodes=U+0020-007E,U+00A0-00FF,U+0100-017F,U+2010-2015,U+2018-201E,U+2026,U+2032-2033,U+2044,U+2150-215F,U+FFFD
//! ```
//!
//! Latin, dashes, quotes and fractions; no arrows, no mathematics. Without kerning a text's width is the sum of its
//! letters', in every writer the same.

use std::sync::LazyLock;

use ttf_parser::{Face, GlyphId, OutlineBuilder};

/// The font file, as PDF and HTML embed it.
pub static FILE: &[u8] = include_bytes!("font/NotoSans-Regular-subset.ttf");

static FACE: LazyLock<Face<'static>> = LazyLock::new(|| {
    Face::parse(FILE, 0).expect("our own font file is sound") // cannot fail: the file is compiled in and tested
});

/// Units of the font's own grid in an em.
pub(super) const UNITS_PER_EM: f64 = 1000.0;

/// Height of a capital, as a part of the em.
pub const CAP_HEIGHT: f64 = 0.714;

/// The width of a text set in this size, cm; `size` is the height of the em.
pub fn text_width(text: &str, size: f64) -> f64 {
    glyphs(text).map(|glyph| glyph.advance).sum::<f64>() * size
}

/// One letter as the font shows it.
pub(super) struct Glyph {
    /// The letter shown, which may stand for one that the font lacks.
    pub(super) letter: char,
    /// The font's shape for it.
    pub(super) id: GlyphId,
    /// How far the next letter stands from this one, in ems.
    pub(super) advance: f64,
}

/// The shapes of a text in reading order. A letter that the font lacks is shown as the replacement character, but for
/// the minus sign, which is an en dash.
pub(super) fn glyphs(text: &str) -> impl Iterator<Item = Glyph> {
    text.chars().map(|letter| {
        let letter = if letter == '\u{2212}' { '\u{2013}' } else { letter };
        let own = FACE.glyph_index(letter).map(|id| (letter, id));
        let other = || FACE.glyph_index(char::REPLACEMENT_CHARACTER).unwrap_or(GlyphId(0));
        let (letter, id) = own.unwrap_or_else(|| (char::REPLACEMENT_CHARACTER, other()));
        let advance = f64::from(FACE.glyph_hor_advance(id).unwrap_or(0)) / UNITS_PER_EM;
        Glyph { letter, id, advance }
    })
}

/// How far a text rises above and falls below its baseline, in ems: at least a capital's height, and at least to the
/// baseline.
pub(super) fn rise_and_fall(text: &str) -> (f64, f64) {
    glyphs(text).filter_map(|glyph| FACE.glyph_bounding_box(glyph.id)).fold(
        (CAP_HEIGHT, 0.0),
        |(rise, fall): (f64, f64), bounds| {
            (
                rise.max(f64::from(bounds.y_max) / UNITS_PER_EM),
                fall.max(-f64::from(bounds.y_min) / UNITS_PER_EM),
            )
        },
    )
}

/// How far any letter reaches left, down, right and up of its place, in the font's own units.
pub(super) fn reach() -> [f32; 4] {
    let all = FACE.global_bounding_box();
    [all.x_min, all.y_min, all.x_max, all.y_max].map(f32::from)
}

/// Draws one shape into `pen`, in the font's own units, y up.
pub(super) fn outline(id: GlyphId, pen: &mut dyn OutlineBuilder) {
    FACE.outline_glyph(id, pen);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn grid_and_capitals_as_the_file_says() {
        assert_eq!(f64::from(FACE.units_per_em()), UNITS_PER_EM);
        assert_eq!(FACE.capital_height().map(f64::from), Some(CAP_HEIGHT * UNITS_PER_EM));
    }

    #[test]
    fn every_letter_that_we_print_in_the_font() {
        let letters = ('!'..='~').chain('¡'..='ſ').chain("–—‘’“”…′″⁄⅓⅛⅜⅝⅞×°½¼¾\u{fffd}".chars());
        for letter in letters {
            assert!(FACE.glyph_index(letter).is_some(), "{letter}");
        }
    }

    #[test]
    fn digits_of_one_width() {
        for digit in '0'..='9' {
            assert_eq!(text_width(&digit.to_string(), 1.0), 0.572);
        }
        assert_eq!(text_width("25", 2.0), 4.0 * 0.572);
    }

    #[test]
    fn a_letter_outside_the_font_as_wide_as_its_replacement() {
        assert_eq!(text_width("字", 1.0), text_width("\u{fffd}", 1.0));
        assert_eq!(text_width("−", 1.0), text_width("–", 1.0));
    }
}
