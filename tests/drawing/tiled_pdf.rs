use breeks::drawing::{Drawing, Ink, Layer, Paper, Pen, Sheet, Text, Tile, Tiles};
use breeks::terms::Word as _;
use kurbo::{BezPath, Line, Point, Rect, Shape, Size, Vec2};

use crate::{
    pdf_reader::{PdfFile, numbers, value},
    poppler::print,
    sample,
};

fn line(from: (f64, f64), to: (f64, f64)) -> BezPath {
    Line::new(from, to).to_path(0.1)
}

fn picture_of(lines: &[BezPath]) -> Drawing {
    let mut layer = Layer::new("lines");
    lines.iter().for_each(|path| layer.line(path.clone(), sample::STRONG));
    Drawing::around("lines", "", vec![layer], 0.0)
}

fn names(tiles: &Tiles) -> Vec<String> {
    tiles.tiles().iter().map(Tile::label).collect()
}

#[test]
fn sheets_named_by_column_and_row_and_empty_ones_left_out() {
    let corner = picture_of(&[line((0.0, 0.0), (0.0, 70.0)), line((0.0, 70.0), (50.0, 70.0))]);
    let tiles = Tiles::cut(&corner, Sheet::of(Paper::A4)).unwrap();
    assert_eq!(names(&tiles), ["A1", "A2", "A3", "B3", "C3"]);
}

#[test]
fn the_way_of_the_sheet_that_needs_fewer() {
    let wide = picture_of(&[line((0.0, 0.0), (27.0, 0.0))]);
    let tiles = Tiles::cut(&wide, Sheet::of(Paper::A4)).unwrap();
    assert_eq!((names(&tiles).len(), tiles.sheet().size), (1, Size::new(29.7, 21.0)));
}

#[test]
fn first_page_before_the_sheets_and_all_named_in_the_viewer() {
    let picture = sample::picture();
    let tiles = Tiles::cut(&picture, Sheet::of(Paper::A4)).unwrap();
    let mut map = Layer::new("Map");
    map.marks = tiles.map(Rect::new(2.0, 2.0, 19.0, 27.0), |_| true);
    let first =
        Drawing { bounds: Rect::new(0.0, 0.0, 21.0, 29.7), ..Drawing::around("Map", "", vec![map], 0.0) };
    let file = PdfFile::read(&tiles.to_pdf(Some(&first)));
    assert_eq!(file.of_type("Page").len(), tiles.tiles().len() + 1);
    let catalog = file.of_type("Catalog")[0];
    let labels = numbers(value(catalog, "Nums"));
    assert_eq!(labels.len(), 3 * file.of_type("Page").len());
    let named: Vec<&str> = labels.chunks(3).map(|pair| value(file.text(&pair[1].to_string()), "P")).collect();
    assert_eq!(named[..3], ["(Map)", "(A1)", "(B1)"]);
    let layers: Vec<&str> = file.of_type("OCG").into_iter().map(|group| value(group, "Name")).collect();
    assert_eq!(layers, ["(Map)", "(Page marks)", "(Levels)", "(Front panel)", "(Test squares)"]);
}

#[test]
fn a_length_over_two_joins_true_by_the_lines_to_cut_and_to_lay() {
    for paper in Paper::ALL.iter().copied() {
        // Two posts so far apart that two joins lie between them; a thin line keeps the sheet in the middle.
        let apart = match paper {
            Paper::A4 | Paper::Letter | Paper::A4OrLetter => 60.0,
            Paper::A3 | Paper::Tabloid => 100.0,
            Paper::A0 => 280.0,
        };
        let picture = picture_of(&[
            line((0.0, 0.0), (0.0, 3.0)),
            line((apart, 0.0), (apart, 3.0)),
            line((0.0, 0.2), (apart, 0.2)),
        ]);
        let sheet = Sheet { margin: 2.0, ..Sheet::of(paper) };
        let tiles = Tiles::cut(&picture, sheet).unwrap();
        assert_eq!(names(&tiles), ["A1", "B1", "C1"]);
        let pdf = tiles.to_pdf(None);
        let mut length = 0.0;
        for (number, tile) in tiles.tiles().iter().enumerate() {
            let Some(page) = print(&pdf, number + 1, 300.0) else { return };
            let y = sheet.margin + 1.5 - tile.window.y0;
            let (from, to) = (sheet.margin - 0.05, tiles.sheet().size.width - 0.2);
            // The broken line may have a gap where we look: look in several places and take every line found in any.
            let mut lines: Vec<f64> = Vec::new();
            for y in (0..6).map(|step| y + f64::from(step) * 0.1) {
                for found in page.lines_between((from, y), (to, y)) {
                    if lines.iter().all(|known| (known - found).abs() > 0.03) {
                        lines.push(found);
                    }
                }
            }
            lines.sort_by(f64::total_cmp);
            length += lines[1] - lines[0];
        }
        assert!((length - apart).abs() < 0.02, "{paper}: {length}");
    }
}

#[test]
fn sheets_laid_by_their_windows_rebuild_the_picture() {
    let picture = sample::picture();
    let dots_per_inch = 20.0 * 2.54;
    let Some(whole) = print(&picture.to_pdf().unwrap(), 1, dots_per_inch) else { return };
    let tiles = Tiles::cut(&picture, Sheet::of(Paper::A4OrLetter)).unwrap();
    let pdf = tiles.to_pdf(None);
    let margin = Vec2::new(tiles.sheet().margin, tiles.sheet().margin);
    let (mut dark, mut missed) = (0, 0);

    for (number, tile) in tiles.tiles().iter().enumerate() {
        let Some(page) = print(&pdf, number + 1, dots_per_inch) else { return };
        let own = tile.own.intersect(picture.bounds.inset(-0.2));
        for row in (own.y0 * 20.0).ceil() as i32..(own.y1 * 20.0) as i32 {
            for column in (own.x0 * 20.0).ceil() as i32..(own.x1 * 20.0) as i32 {
                let place = Point::new((f64::from(column) + 0.5) / 20.0, (f64::from(row) + 0.5) / 20.0);
                let on_whole = place - picture.bounds.origin().to_vec2();
                if whole.grey(on_whole.x, on_whole.y) < 100 {
                    dark += 1;
                    let on_page = place - tile.window.origin().to_vec2() + margin;
                    let near = [-1.0, 0.0, 1.0]
                        .into_iter()
                        .flat_map(|x| [-1.0, 0.0, 1.0].map(|y| (x / 20.0, y / 20.0)));
                    missed += usize::from(
                        !near.into_iter().any(|(x, y)| page.grey(on_page.x + x, on_page.y + y) < 160),
                    );
                }
            }
        }
    }
    assert!(dark > 8000 && missed == 0, "{missed} of {dark}");
}

#[test]
fn every_part_of_the_picture_some_sheets_own() {
    let picture = sample::picture();
    let tiles = Tiles::cut(&picture, Sheet::of(Paper::A4)).unwrap();
    for (index, one) in tiles.tiles().iter().enumerate() {
        assert!(one.window.contains_rect(one.own));
        for other in &tiles.tiles()[..index] {
            assert!(one.own.intersect(other.own).area() < 1e-9);
        }
    }
    for step in 0..2000 {
        let along = f64::from(step) / 2000.0;
        let segments: Vec<_> = sample::leg().segments().collect();
        let segment = segments[step as usize % segments.len()];
        let point = kurbo::ParamCurve::eval(&segment, along);
        assert!(tiles.tiles().iter().any(|tile| tile.own.contains(point)), "{point:?}");
    }
}

#[test]
fn sheets_that_cannot_be_used_refused() {
    let picture = sample::picture();
    let message = |sheet| Tiles::cut(&picture, sheet).unwrap_err().to_string();
    let sheet = Sheet::of(Paper::A4);
    insta::assert_snapshot!(message(Sheet { margin: 9.0, ..sheet }), @r"
    error: a sheet of 21.0 cm by 29.7 cm with margins of 9.0 cm and 1.5 cm to glue cannot be used
     |
     = help: expected at least 5.0 cm between margins and glue each way
    ");
    for sheet in [
        Sheet { margin: -1.0, ..sheet },
        Sheet { overlap: -0.1, ..sheet },
        Sheet { margin: f64::NAN, ..sheet },
        Sheet { size: Size::new(f64::INFINITY, 20.0), ..sheet },
    ] {
        assert!(Tiles::cut(&picture, sheet).is_err());
    }
    let empty = Drawing::around("", "", vec![Layer::new("nothing")], 1.0);
    insta::assert_snapshot!(Tiles::cut(&empty, sheet).unwrap_err().to_string(), @"error: there is nothing to print");
    let mut layer = Layer::new("far");
    layer.line(line((0.0, 0.0), (2000.0, 2000.0)), Pen::new(0.1, Ink::Black));
    let far = Drawing::around("", "", vec![layer], 0.0);
    insta::assert_snapshot!(Tiles::cut(&far, sheet).unwrap_err().to_string(), @r"
    error: a picture of 2000.1 cm by 2000.1 cm needs 8855 sheets
     |
     = help: expected at most 500 sheets
    ");
}

#[test]
fn a_picture_of_text_alone_printed() {
    let mut layer = Layer::new("text");
    layer.text(Text::new(Point::new(3.0, 4.0), 1.0, "cox"));
    let picture = Drawing::around("", "", vec![layer], 0.0);
    assert_eq!(names(&Tiles::cut(&picture, Sheet::of(Paper::Letter)).unwrap()), ["A1"]);
}
