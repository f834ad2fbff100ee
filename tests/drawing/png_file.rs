use breeks::drawing::{Align, Drawing, Ink, Layer, Paper, Pen, Sheet, SvgScale, Text, Tiles};
use breeks::terms::Word;
use kurbo::{Point, Rect, Vec2};
use tiny_skia::Pixmap;

use crate::sample;

/// The bounds of all that is darker than half grey, in cm of the sheet.
fn dark_bounds(png: &[u8], dots_per_cm: f64) -> Rect {
    let sheet = Pixmap::decode_png(png).expect("a PNG");
    let mut bounds: Option<Rect> = None;
    for (index, dot) in sheet.pixels().iter().enumerate() {
        if dot.red() < 128 {
            let (x, y) = (index as u32 % sheet.width(), index as u32 / sheet.width());
            let dot = Rect::new(f64::from(x), f64::from(y), f64::from(x + 1), f64::from(y + 1));
            bounds = Some(bounds.map_or(dot, |all| all.union(dot)));
        }
    }
    bounds.expect("something dark").scale_from_origin(1.0 / dots_per_cm)
}

fn near(found: Rect, wanted: Rect, tolerance: f64) -> bool {
    let pairs = [(found.x0, wanted.x0), (found.y0, wanted.y0), (found.x1, wanted.x1), (found.y1, wanted.y1)];
    pairs.iter().all(|(a, b)| (a - b).abs() <= tolerance)
}

#[test]
fn a_square_where_it_was_drawn() {
    let mut layer = Layer::new("square");
    layer.line(sample::square(Point::new(3.0, 4.0), 5.0), Pen::new(0.1, Ink::Black));
    let picture =
        Drawing { bounds: Rect::new(1.0, 1.0, 10.0, 12.0), ..Drawing::around("", "", vec![layer], 0.0) };
    let found = dark_bounds(&picture.to_png(40.0).unwrap(), 40.0) + Vec2::new(1.0, 1.0);
    assert!(near(found, Rect::new(2.95, 3.95, 8.05, 9.05), 1.0 / 40.0), "{found:?}");
}

#[test]
fn letters_inside_the_footprint_that_labels_reckon_with() {
    let words = ["Ågjy¾ 12,5", "MMM", "WiW–q"];
    for (number, text) in words.into_iter().enumerate() {
        for align in [Align::Start, Align::Middle, Align::End] {
            for turn in [0.0, 0.5, -1.3, 3.0] {
                let text = Text::new(Point::new(15.0, 15.0), 2.0, text).aligned(align).turned(turn);
                let footprint = text.footprint();
                let mut layer = Layer::new("text");
                layer.text(text);
                let whole = Rect::new(0.0, 0.0, 30.0, 30.0);
                let picture = Drawing { bounds: whole, ..Drawing::around("", "", vec![layer], 0.0) };
                let found = dark_bounds(&picture.to_png(12.0).unwrap(), 12.0);
                let room = footprint.with_gap(0.15).bounds();
                assert!(room.contains_rect(found), "{number} {align:?} {turn}: {found:?} {room:?}");
                assert!(near(found, footprint.bounds(), 1.2));
            }
        }
    }
}

#[test]
fn absurd_sizes_refused() {
    let picture = sample::picture();
    let message = |dots| picture.to_png(dots).unwrap_err().to_string();
    insta::assert_snapshot!(message(1000.0), @r"
    error: a picture of 44676 by 106620 dots cannot be drawn
     |
     = help: choose dots so that their number lies between 1 and 50000000
    ");
    for dots in [0.0, -3.0, f64::NAN, f64::INFINITY, 1e300] {
        assert!(picture.to_png(dots).is_err());
    }
}

#[test]
fn the_same_picture_in_the_same_bytes() {
    assert_eq!(sample::picture().to_png(10.0), sample::picture().to_png(10.0));
}

/// Writes what the writers make into a folder for a person to look at.
#[test]
#[ignore = "for the eye: BREEKS_LOOK=folder cargo test --test drawing -- --ignored"]
fn pictures_to_look_at() {
    let folder = std::path::PathBuf::from(std::env::var_os("BREEKS_LOOK").expect("a folder"));
    std::fs::write(folder.join("sample.png"), sample::picture().to_png(12.0).unwrap()).unwrap();
    std::fs::write(folder.join("sample.svg"), sample::picture().to_svg(SvgScale::FitsScreen)).unwrap();
    std::fs::write(folder.join("sample.pdf"), sample::picture().to_pdf().unwrap()).unwrap();
    for paper in Paper::ALL {
        let picture = sample::picture();
        let tiles = Tiles::cut(&picture, Sheet::of(*paper)).unwrap();
        let mut map = Layer::new("Map");
        map.marks = tiles.map(Rect::new(2.0, 5.0, 19.0, 26.0), |_| true);
        let page = paper.size().to_rect();
        let first = Drawing { bounds: page, ..Drawing::around("Map", "", vec![map], 0.0) };
        std::fs::write(folder.join(format!("sample-{paper}.pdf")), tiles.to_pdf(Some(&first))).unwrap();
    }
}
