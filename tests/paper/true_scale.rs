//! What is measured on paper is as long as it says.

use breeks::{
    drawing::{Drawing, Mark, Paper, Sheet, Tiles},
    paper::{first_page, wall_drawing},
};
use kurbo::{BezPath, Shape};

use crate::subjects::{Drawn, texts};

fn lines<'a>(drawing: &'a Drawing, layer: &str) -> Vec<&'a BezPath> {
    let layers = drawing.layers.iter().filter(|it| it.name.as_str() == layer);
    layers
        .flat_map(|layer| &layer.marks)
        .filter_map(|mark| match mark {
            Mark::Line { path, .. } => Some(path),
            _ => None,
        })
        .collect()
}

#[test]
fn both_test_squares_as_large_as_they_say() {
    let drawn = Drawn::demo("five", &[]);
    let wall = wall_drawing(&drawn.subject());
    let tiles = Tiles::cut(&wall, Sheet::of(Paper::Letter)).expect("a sheet");
    for picture in [&first_page(&drawn.subject(), &tiles, Paper::Letter), &wall] {
        let mut sides = Vec::new();
        for path in lines(picture, "Test squares") {
            let bounds = path.bounding_box();
            if bounds.height() > 1.0 {
                assert!((bounds.width() - bounds.height()).abs() < 1e-9);
                sides.push((bounds.width() * 100.0).round());
            }
        }
        assert_eq!(sides, [500.0, 508.0], "{}", picture.title);
    }
}

#[test]
fn panels_as_wide_as_the_draft() {
    let drawn = Drawn::demo("five", &[]);
    let wall = wall_drawing(&drawn.subject());
    let shape = &drawn.draft.shape;
    for (path, panel) in lines(&wall, "Panels").into_iter().zip([&shape.front, &shape.back]) {
        let mut outline = BezPath::new();
        for piece in panel.outline() {
            outline.move_to(piece.p0);
            outline.curve_to(piece.p1, piece.p2, piece.p3);
        }
        let (drawn, cut) = (path.bounding_box(), outline.bounding_box());
        assert!((drawn.width() - cut.width()).abs() < 1e-9 && (drawn.height() - cut.height()).abs() < 1e-9);
    }
}

/// Inches as a tape has them, reckoned from the smallest fraction that says the same.
fn sixteenths(inches: f64) -> String {
    let (whole, part) = ((inches * 16.0).round() as i64 / 16, (inches * 16.0).round() as i64 % 16);
    let fraction = [2, 4, 8, 16]
        .into_iter()
        .find_map(|under| (part * under % 16 == 0).then(|| format!("{}/{under}", part * under / 16)));
    match (whole, part) {
        (_, 0) => whole.to_string(),
        (0, _) => fraction.unwrap_or_default(),
        _ => format!("{whole} {}", fraction.unwrap_or_default()),
    }
}

#[test]
fn every_level_with_body_pattern_and_ease() {
    for drawn in breeks::order::DEMOS.iter().map(|name| Drawn::demo(name, &[])) {
        let wall = wall_drawing(&drawn.subject());
        let figures = wall.layers.iter().find(|layer| layer.name.as_str() == "Figures of the levels");
        let figures = Drawing { layers: vec![figures.expect("a layer").clone()], ..wall.clone() };
        let words: Vec<String> = texts(&figures).iter().map(|text| text.words.to_string()).collect();
        for row in &drawn.report.levels {
            for cm in [row.body, row.pattern, row.ease()] {
                let figure = match drawn.unit {
                    breeks::unit::Unit::Cm => format!("{cm:.1}").replace('-', "−"),
                    breeks::unit::Unit::Inch => sixteenths(cm / 2.54),
                };
                assert!(words.contains(&figure), "{}: {} {figure}", drawn.draft.name, row.level);
            }
        }
    }
}
