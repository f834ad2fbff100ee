use std::collections::BTreeMap;

use breeks::drawing::{DxfMark, DxfPiece, DxfStyle, Text, to_dxf};
use kurbo::{Line, Point, Shape};

use crate::sample;

/// An entity of a DXF file: its name and its pairs of group code and value.
struct Entity(String, Vec<(u16, String)>);

impl Entity {
    fn value(&self, code: u16) -> Option<&str> {
        self.1.iter().find(|(own, _)| *own == code).map(|(_, value)| value.as_str())
    }

    fn point(&self, code: u16) -> Point {
        let number = |code| self.value(code).expect("a coordinate").parse().expect("a number");
        Point::new(number(code), number(code + 10))
    }
}

/// All entities of a file, in order.
fn read(file: &str) -> Vec<Entity> {
    assert!(file.is_ascii() && file.ends_with("EOF\r\n"));
    let lines: Vec<&str> = file.split("\r\n").collect();
    let mut entities: Vec<Entity> = Vec::new();
    for pair in lines.chunks_exact(2) {
        let code: u16 = pair[0].trim().parse().expect("a group code");
        match (code, entities.last_mut()) {
            (0, _) => entities.push(Entity(pair[1].to_owned(), Vec::new())),
            (_, Some(entity)) => entity.1.push((code, pair[1].to_owned())),
            (_, None) => panic!("a value before the first entity"),
        }
    }
    entities
}

/// Vertices of every polyline by its layer, and whether it is closed.
fn polylines(entities: &[Entity]) -> Vec<(u8, bool, Vec<Point>)> {
    let mut found: Vec<(u8, bool, Vec<Point>)> = Vec::new();
    for entity in entities {
        match (entity.0.as_str(), found.last_mut()) {
            ("POLYLINE", _) => {
                let layer = entity.value(8).and_then(|layer| layer.parse().ok()).expect("a layer");
                found.push((layer, entity.value(70) == Some("1"), Vec::new()));
            }
            ("VERTEX", Some(last)) => last.2.push(entity.point(10)),
            _ => {}
        }
    }
    found
}

fn length(vertices: &[Point], closed: bool) -> f64 {
    let open: f64 = vertices.windows(2).map(|pair| pair[0].distance(pair[1])).sum();
    if closed { open + vertices[0].distance(vertices[vertices.len() - 1]) } else { open }
}

fn area(vertices: &[Point]) -> f64 {
    let next = vertices.iter().cycle().skip(1);
    vertices.iter().zip(next).map(|(a, b)| a.x * b.y - b.x * a.y).sum::<f64>().abs() / 2.0
}

fn front() -> DxfPiece {
    let sew = sample::leg();
    let cut = kurbo::Affine::scale(1.05) * sew.clone();
    let mut crease = kurbo::BezPath::new();
    crease.move_to((0.0, 5.0));
    crease.line_to((0.0, 100.0));
    DxfPiece {
        name: "Front – stroke ½".to_owned(),
        quantity: 2,
        material: "shell".to_owned(),
        annotation: "turn one over".to_owned(),
        marks: vec![
            DxfMark::Cut(cut),
            DxfMark::Sew(sew),
            DxfMark::Inner(crease),
            DxfMark::Grain(Line::new((0.0, 20.0), (0.0, 80.0))),
            DxfMark::Fold(Line::new((-10.0, 104.0), (10.0, 104.0))),
            DxfMark::Notch(Point::new(15.25, 20.4)),
            DxfMark::Drill(Point::new(2.0, 10.0)),
            DxfMark::Note(Text::new(Point::new(1.0, 40.0), 1.0, "grain").turned(std::f64::consts::FRAC_PI_2)),
        ],
    }
}

fn file() -> String {
    let style = DxfStyle {
        name: "stroke, classic".to_owned(),
        size: "101.5".to_owned(),
        author: "breeks".to_owned(),
    };
    let back = DxfPiece { name: "Back".to_owned(), quantity: 2, ..DxfPiece::default() };
    to_dxf(&style, &[front(), back])
}

#[test]
fn a_block_a_piece_each_inserted_once() {
    let entities = read(&file());
    let names = |kind| {
        let of_kind = entities.iter().filter(move |entity| entity.0 == kind);
        of_kind.map(|entity| entity.value(2).unwrap().to_owned()).collect::<Vec<_>>()
    };
    assert_eq!(names("BLOCK"), ["FRONT_STROKE_1_2", "BACK"]);
    assert_eq!(names("INSERT"), names("BLOCK"));
    assert_eq!(names("SECTION"), ["HEADER", "BLOCKS", "ENTITIES"]);
}

#[test]
fn lengths_and_areas_of_outlines_kept_in_millimetres() {
    let entities = read(&file());
    let lines = polylines(&entities);
    assert_eq!(lines.iter().map(|line| (line.0, line.1)).collect::<Vec<_>>(), [(1, true), (14, true)]);
    for ((_, closed, vertices), scale) in lines.iter().zip([1.05, 1.0]) {
        let wanted = sample::leg().perimeter(1e-9) * 10.0 * scale;
        assert!((length(vertices, *closed) - wanted).abs() < 0.02, "{} {wanted}", length(vertices, *closed));
        let wanted = sample::leg().area().abs() * 100.0 * scale * scale;
        assert!((area(vertices) / wanted - 1.0).abs() < 1e-4);
    }
}

#[test]
fn y_up_and_the_rest_on_layers_of_their_own() {
    let entities = read(&file());
    let mut layers: BTreeMap<u8, usize> = BTreeMap::new();
    for entity in entities.iter().filter(|entity| ["POINT", "LINE", "TEXT"].contains(&entity.0.as_str())) {
        *layers.entry(entity.value(8).unwrap().parse().unwrap()).or_default() += 1;
    }
    let curve_points = layers.remove(&3).unwrap();
    let vertices: usize = polylines(&entities).iter().map(|line| line.2.len()).sum();
    // Six corners of the leg on each outline (its joints at hip and curve start are smooth), two ends of the crease.
    let corners = layers.remove(&2).unwrap();
    assert_eq!(corners, 14);
    assert_eq!(corners + curve_points, vertices + 2);
    assert_eq!(layers, BTreeMap::from([(1, 12), (4, 1), (6, 1), (7, 1), (8, 1), (13, 1), (15, 1)]));
    let at = |layer: &str, kind: &str| {
        entities.iter().find(|entity| entity.0 == kind && entity.value(8) == Some(layer)).unwrap()
    };
    assert_eq!(at("4", "POINT").point(10), Point::new(152.5, -204.0));
    assert_eq!(
        (at("7", "LINE").point(10), at("7", "LINE").point(11)),
        (Point::new(0.0, -200.0), Point::new(0.0, -800.0))
    );
    let note = at("15", "TEXT");
    assert_eq!((note.value(1), note.value(50), note.value(40)), (Some("grain"), Some("-90"), Some("7.14")));
}

#[test]
fn system_texts_in_capitals_before_a_colon() {
    let entities = read(&file());
    let texts: Vec<&str> = entities
        .iter()
        .filter(|entity| entity.0 == "TEXT" && entity.value(8) == Some("1"))
        .map(|entity| entity.value(1).unwrap())
        .collect();
    assert_eq!(
        texts,
        [
            "PIECE NAME: Front - stroke  1/2",
            "SIZE: 101.5",
            "QUANTITY: 2",
            "MATERIAL: shell",
            "ANNOTATION: turn one over",
            "PIECE NAME: Back",
            "SIZE: 101.5",
            "QUANTITY: 2",
            "STYLE NAME: stroke, classic",
            "SAMPLE SIZE: 101.5",
            "AUTHOR: breeks",
            "UNITS: METRIC",
        ]
    );
}

#[test]
fn hostile_names_in_one_line_and_blocks_of_different_names() {
    let names = ["a\r\n  0\r\nEOF", "\u{202e}", "前", "Piece 3", &"x".repeat(10_000)];
    let pieces = names.map(|name| DxfPiece { name: name.to_owned(), ..front() });
    let entities = read(&to_dxf(&DxfStyle::default(), &pieces));
    let mut blocks: Vec<_> =
        entities.iter().filter(|entity| entity.0 == "BLOCK").map(|block| block.value(2)).collect();
    blocks.sort();
    blocks.dedup();
    assert_eq!(blocks.len(), names.len());
    assert_eq!(entities.iter().filter(|entity| entity.0 == "EOF").count(), 1);
}

#[test]
fn the_same_pieces_in_the_same_bytes() {
    assert_eq!(file(), file());
}

/// Writes the file into a folder for another reader to check.
#[test]
#[ignore = "for another reader: BREEKS_LOOK=folder cargo test --test drawing -- --ignored"]
fn file_to_look_at() {
    let folder = std::path::PathBuf::from(std::env::var_os("BREEKS_LOOK").expect("a folder"));
    std::fs::write(folder.join("sample.dxf"), file()).unwrap();
}
