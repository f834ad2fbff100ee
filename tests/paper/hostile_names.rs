//! Names that try something show as text, in their place.

use breeks::{
    drawing::{Paper, Sheet, SvgScale, Tiles},
    paper::{first_page, overlay, wall_drawing},
    pattern::Cloth,
    terms::Anchor,
    unit::Unit,
};

use crate::subjects::{Drawn, on_cloth, texts};

#[test]
fn hostile_names_as_words_within_the_sheet() {
    let long = "x".repeat(10_000);
    let names = ["<script>alert(1)</script>", "a\u{202e}b\u{0}c", &long, "\"'&]]>--><!--", "字🚣", ""];
    for name in names {
        let mut drawn = Drawn::demo("five", &[]);
        drawn.draft.name = name.to_owned();
        let subject = drawn.subject();
        let wall = wall_drawing(&subject);
        let tiles = Tiles::cut(&wall, Sheet::of(Paper::A4)).expect("a sheet");
        let pictures = [
            first_page(&subject, &tiles, Paper::A4),
            overlay(&drawn.compared(), &drawn.compared(), Anchor::Crotch, Unit::Cm),
            on_cloth(&drawn, &Cloth::new(150.0)),
            wall.clone(),
        ];
        for picture in pictures {
            for text in texts(&picture) {
                assert!(picture.bounds.contains_rect(text.footprint().bounds()), "{}", text.words);
            }
            let svg = picture.to_svg(SvgScale::TrueScale);
            let read = roxmltree::Document::parse(&svg);
            assert!(read.is_ok(), "{name}: {read:?}");
            assert!(!svg.contains("<script") && !svg.contains('\u{202e}') && !svg.contains('\u{0}'));
            assert!(
                String::from_utf8_lossy(&svg.as_bytes()[..400]).contains("breeks"),
                "known as ours by its first bytes"
            );
        }
        let pdf = wall.to_pdf().expect("a page");
        assert!(String::from_utf8_lossy(&pdf[..400]).contains("breeks"), "known as ours by its first bytes");
    }
}
