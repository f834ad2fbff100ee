use breeks::{
    drawing::{Drawing, Layer, Paper, Sheet, Text, Tiles},
    terms::Word,
};
use kurbo::{Point, Rect};

use crate::{
    pdf_reader::{PdfFile, numbers, value},
    poppler::print,
    sample,
};

const POINTS: f64 = 72.0 / 2.54;

fn whole() -> PdfFile {
    PdfFile::read(&sample::picture().to_pdf().expect("a page of fair size"))
}

#[test]
fn one_page_of_the_size_of_the_picture() {
    let file = whole();
    let pages = file.of_type("Page");
    assert_eq!(pages.len(), 1);
    let (bounds, paper) = (sample::picture().bounds, numbers(value(pages[0], "MediaBox")));
    assert!(
        (paper[2] - bounds.width() * POINTS).abs() < 1e-3
            && (paper[3] - bounds.height() * POINTS).abs() < 1e-3
    );
    assert!(!pages[0].contains("UserUnit"));
}

#[test]
fn a_switch_for_every_layer_in_order() {
    let file = whole();
    let names: Vec<&str> = file.of_type("OCG").into_iter().map(|group| value(group, "Name")).collect();
    assert_eq!(names, ["(Levels)", "(Front panel)", "(Test squares)"]);
    let catalog = file.of_type("Catalog")[0];
    let (groups, order) = (numbers(value(catalog, "OCGs")), numbers(value(catalog, "Order")));
    assert_eq!(groups, order);
    let shown = file.stream(value(file.of_type("Page")[0], "Contents"));
    for number in 0..3 {
        assert!(shown.contains(&format!("/OC /L{number} BDC\n/S{number} Do\nEMC")), "{shown}");
    }
}

#[test]
fn no_scaling_asked_of_the_printer_and_no_date() {
    let bytes = sample::picture().to_pdf().unwrap();
    let file = PdfFile::read(&bytes);
    let catalog = file.of_type("Catalog")[0];
    assert_eq!(value(catalog, "PrintScaling"), "/None");
    assert_eq!(value(catalog, "Duplex"), "/Simplex");
    assert_eq!(value(catalog, "DisplayDocTitle"), "true");
    let text = String::from_utf8_lossy(&bytes);
    assert!(text.contains("/Title (Sample leg)") && !text.contains("Date"));
}

#[test]
fn the_same_picture_in_the_same_bytes() {
    assert_eq!(sample::picture().to_pdf(), sample::picture().to_pdf());
}

#[test]
fn a_small_part_of_the_font_embedded() {
    let file = whole();
    let descriptor = file.of_type("FontDescriptor")[0];
    assert!(file.stream(value(descriptor, "FontFile2")).len() < 8000);
    let font = file.of_type("Font").into_iter().find(|font| font.contains("/Type0")).unwrap();
    let letters = file.plain_stream(value(font, "ToUnicode"));
    for letter in ["<0073>", "<2013>", "<00BE>"] {
        assert!(letters.to_uppercase().contains(letter), "{letter} in {letters}");
    }
}

#[test]
fn hostile_text_harmless_in_pdf() {
    for hostile in ["(\\) endobj", "\u{202e}ab\u{0}", "עברית 🚣", &"x".repeat(10_000)] {
        let mut layer = Layer::new(hostile);
        layer.text(Text::new(Point::ORIGIN, 1.0, hostile));
        let picture = Drawing::around(hostile, hostile, vec![layer], 1.0);
        let bytes = picture.to_pdf().unwrap();
        assert_eq!(PdfFile::read(&bytes).of_type("OCG").len(), 1);
        let _ = print(&bytes, 1, 20.0);
    }
}

#[test]
fn a_page_longer_than_readers_take_refused() {
    let mut layer = Layer::new("long");
    layer.line(sample::square(Point::ORIGIN, 600.0), sample::STRONG);
    let message = Drawing::around("", "", vec![layer], 0.0).to_pdf().unwrap_err().to_string();
    insta::assert_snapshot!(message, @r"
    error: a page of 600.1 cm by 600.1 cm cannot be made
     |
     = help: a PDF page is at most 508.0 cm long
    ");
}

/// Both test squares of the sample are measured across their middles.
fn squares_true(bytes: &[u8], page: usize, corner_of_page: Point) {
    let Some(print) = print(bytes, page, 300.0) else { return };
    for (x, side) in [(-6.0, 5.0), (1.0, 5.08)] {
        let corner = Point::new(x, 80.0) - corner_of_page.to_vec2();
        let across =
            print.lines_between((corner.x - 0.3, corner.y + 2.0), (corner.x + side + 0.3, corner.y + 2.0));
        let down =
            print.lines_between((corner.x + 2.0, corner.y - 0.3), (corner.x + 2.0, corner.y + side + 0.3));
        for lines in [across, down] {
            assert_eq!(lines.len(), 2, "{lines:?}");
            assert!((lines[0] - 0.3).abs() < 0.01 && (lines[1] - lines[0] - side).abs() < 0.01, "{lines:?}");
        }
    }
}

#[test]
fn test_squares_true_on_one_page_at_300_dots_an_inch() {
    squares_true(&sample::picture().to_pdf().unwrap(), 1, sample::picture().bounds.origin());
}

#[test]
fn test_squares_true_on_every_paper_at_300_dots_an_inch() {
    for paper in Paper::ALL {
        let picture = sample::squares();
        let tiles = Tiles::cut(&picture, Sheet::of(*paper)).unwrap();
        let [tile] = tiles.tiles() else { panic!("two squares fit on one sheet of {paper}") };
        let margin = kurbo::Vec2::new(tiles.sheet().margin, tiles.sheet().margin);
        squares_true(&tiles.to_pdf(None), 1, tile.window.origin() - margin);
    }
}

#[test]
fn letters_and_lines_alike_in_pdf_and_png() {
    let picture = sample::picture();
    let Some(printed) = print(&picture.to_pdf().unwrap(), 1, 20.0 * 2.54) else { return };
    let drawn = tiny_skia::Pixmap::decode_png(&picture.to_png(20.0).unwrap()).unwrap();
    let (mut dark, mut missed) = (0, 0);
    for y in 2..drawn.height() - 2 {
        for x in 2..drawn.width() - 2 {
            if drawn.pixel(x, y).is_some_and(|dot| dot.red() < 100) {
                dark += 1;
                let near = (-1..=1).flat_map(|down| (-1..=1).map(move |right| (right, down)));
                let place = |dot: u32, by: i32| (f64::from(dot as i32 + by) + 0.5) / 20.0;
                let found =
                    near.into_iter().any(|(right, down)| printed.grey(place(x, right), place(y, down)) < 160);
                missed += usize::from(!found);
            }
        }
    }
    assert!(dark > 7000 && missed * 1000 < dark, "{missed} of {dark}");
}

#[test]
fn bounds_of_a_layer_kept_on_the_page() {
    let picture = Drawing { bounds: Rect::new(0.0, 0.0, 10.0, 10.0), ..sample::picture() };
    let file = PdfFile::read(&picture.to_pdf().unwrap());
    let paper = numbers(value(file.of_type("Page")[0], "MediaBox"));
    assert!((paper[2] - 10.0 * POINTS).abs() < 1e-3);
}
