//! The part of the font that a document needs, embedded so that it prints alike everywhere.

use std::collections::BTreeMap;

use miniz_oxide::deflate::compress_to_vec_zlib;
use pdf_writer::{
    Filter, Finish, Name, Pdf, Ref, Str,
    types::{CidFontType, FontFlags, SystemInfo, UnicodeCmap},
};
use subsetter::{GlyphRemapper, subset};

use super::PACKING;
use crate::drawing::{
    CAP_HEIGHT, Drawing, Mark,
    font::{self, Glyph, UNITS_PER_EM, glyphs},
};

const IDENTITY: SystemInfo =
    SystemInfo { registry: Str(b"Adobe"), ordering: Str(b"Identity"), supplement: 0 };

/// The letters that a document shows, by their numbers in the embedded font.
pub(super) struct Lettering {
    numbers: GlyphRemapper,
    letters: BTreeMap<u16, Glyph>,
}

impl Lettering {
    /// The letters of all texts in these pictures.
    pub(super) fn of(drawings: &[&Drawing]) -> Self {
        let mut numbers = GlyphRemapper::new();
        let mut letters = BTreeMap::new();
        let marks = drawings.iter().flat_map(|drawing| &drawing.layers).flat_map(|layer| &layer.marks);
        for mark in marks {
            if let Mark::Text(text) = mark {
                for glyph in glyphs(text.words.as_str()) {
                    letters.insert(numbers.remap(glyph.id.0), glyph);
                }
            }
        }
        Self { numbers, letters }
    }

    /// A text as the embedded font numbers it, two bytes a letter.
    pub(super) fn encode(&self, text: &str) -> Vec<u8> {
        glyphs(text).flat_map(|glyph| self.numbers.get(glyph.id.0).unwrap_or(0).to_be_bytes()).collect()
    }

    /// Writes the font and gives the reference by which layers use it.
    pub(super) fn write(&self, pdf: &mut Pdf, next: &mut Ref) -> Ref {
        let [font, letters, descriptor, file, unicode] = [(); 5].map(|()| next.bump());
        let name = format!("{}+NotoSans-Regular", self.tag());
        let name = Name(name.as_bytes());
        pdf.type0_font(font)
            .base_font(name)
            .encoding_predefined(Name(b"Identity-H"))
            .descendant_font(letters)
            .to_unicode(unicode);

        let mut own = pdf.cid_font(letters);
        own.subtype(CidFontType::Type2).base_font(name).system_info(IDENTITY).font_descriptor(descriptor);
        own.default_width(0.0).cid_to_gid_map_predefined(Name(b"Identity"));
        let mut widths = own.widths();
        for (number, glyph) in &self.letters {
            widths.consecutive(*number, [(glyph.advance * UNITS_PER_EM) as f32]);
        }
        widths.finish();
        own.finish();

        let reach = font::reach();
        pdf.font_descriptor(descriptor)
            .name(name)
            .flags(FontFlags::NON_SYMBOLIC)
            .bbox(pdf_writer::Rect::new(reach[0], reach[1], reach[2], reach[3]))
            .italic_angle(0.0)
            .ascent(reach[3])
            .descent(reach[1])
            .cap_height((CAP_HEIGHT * UNITS_PER_EM) as f32)
            .stem_v(STEM)
            .font_file2(file);

        let cut = subset(font::FILE, 0, &self.numbers).expect("our own font can be cut"); // cannot fail: the file is compiled in and its letters come from it
        let packed = compress_to_vec_zlib(&cut, PACKING);
        let mut stream = pdf.stream(file, &packed);
        stream.filter(Filter::FlateDecode).pair(Name(b"Length1"), cut.len() as i32);
        stream.finish();

        let mut names = UnicodeCmap::new(Name(b"Letters"), IDENTITY);
        for (number, glyph) in &self.letters {
            names.pair(*number, glyph.letter);
        }
        pdf.cmap(unicode, &names.finish());
        font
    }

    /// Six capitals that differ between parts of the font, so that readers who join documents keep them apart
    /// (PDF reference 1.7, 9.6.4).
    fn tag(&self) -> String {
        let mut sum =
            self.numbers.remapped_gids().fold(7_u32, |sum, id| sum.wrapping_mul(31).wrapping_add(id.into()));
        let mut tag = String::new();
        for _ in 0..6 {
            tag.push(char::from(b'A' + (sum % 26) as u8));
            sum /= 26;
        }
        tag
    }
}

/// Width of an upright stem, in the font's units; readers use it only where they replace the font.
const STEM: f32 = 90.0;
