//! The pieces in files for others, read back: DXF in the layers of ASTM D6673 by a reader of this test, and by ezdxf
//! where Python has it; pages for rolls and projectors by their boxes and layers.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on says so by panicking")]

mod tool;

use std::{
    collections::BTreeMap,
    path::{Path, PathBuf},
    process::Command,
};

use kurbo::{BezPath, Point, Shape as _};
use serde_json::Value;

/// Runs `breeks draft` into a folder of this test's own.
fn draft(name: &str, more: &[&str]) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("exchange").join(name);
    let _ = std::fs::remove_dir_all(&folder);
    let run = Command::new(env!("CARGO_BIN_EXE_breeks"))
        .args(["draft", "--demo", "five", "--block", "jeans", "--out"])
        .arg(&folder)
        .args(more)
        .output()
        .unwrap();
    assert_eq!(run.status.code(), Some(0), "{}", String::from_utf8_lossy(&run.stderr));
    folder
}

/// What lies on one layer of a block.
#[derive(Debug, Default)]
struct OnLayer {
    polylines: Vec<Vec<Point>>,
    points: Vec<Point>,
    lines: Vec<[Point; 2]>,
    texts: Vec<String>,
}

/// Every block by its name, and in it every layer by its number; y down again, cm.
fn blocks(file: &str) -> BTreeMap<String, BTreeMap<u8, OnLayer>> {
    let rows: Vec<&str> = file.split("\r\n").collect();
    let pairs: Vec<(u16, &str)> =
        rows.chunks_exact(2).map(|pair| (pair[0].trim().parse().unwrap(), pair[1])).collect();
    let mut blocks: BTreeMap<String, BTreeMap<u8, OnLayer>> = BTreeMap::new();
    let mut block = String::new();
    for entity in pairs.chunk_by(|_, next| next.0 != 0) {
        let value = |code: u16| entity.iter().find(|(own, _)| *own == code).map(|(_, value)| *value);
        let number = |code: u16| value(code).unwrap().parse::<f64>().unwrap() / 10.0;
        let point = |code: u16| Point::new(number(code), -number(code + 10));
        match entity[0].1 {
            "BLOCK" => block = value(2).unwrap().to_owned(),
            "ENDBLK" => block.clear(),
            _ if block.is_empty() => {}
            kind => {
                let layer: u8 = value(8).unwrap().parse().unwrap();
                let on = blocks.entry(block.clone()).or_default().entry(layer).or_default();
                match kind {
                    "POLYLINE" => on.polylines.push(Vec::new()),
                    "VERTEX" => on.polylines.last_mut().unwrap().push(point(10)),
                    "POINT" => on.points.push(point(10)),
                    "LINE" => on.lines.push([point(10), point(11)]),
                    "TEXT" => on.texts.push(value(1).unwrap().to_owned()),
                    "SEQEND" => {}
                    other => panic!("{other}"),
                }
            }
        }
    }
    blocks
}

fn area(polygon: &[Point]) -> f64 {
    let next = polygon.iter().cycle().skip(1);
    polygon.iter().zip(next).map(|(a, b)| a.to_vec2().cross(b.to_vec2())).sum::<f64>().abs() / 2.0
}

fn distance(polygon: &[Point], at: Point) -> f64 {
    let next = polygon.iter().cycle().skip(1);
    let to_side = |(a, b): (&Point, &Point)| {
        let along = ((at - *a).dot(*b - *a) / (*b - *a).hypot2().max(1e-18)).clamp(0.0, 1.0);
        a.lerp(*b, along).distance(at)
    };
    polygon.iter().zip(next).map(to_side).fold(f64::INFINITY, f64::min)
}

#[test]
fn pieces_in_their_layers_as_in_the_json() {
    let folder = draft("dxf", &["--dxf", "--waistband", "straight", "--fly", "left"]);
    let file = std::fs::read_to_string(folder.join("five-jeans.dxf")).unwrap();
    let json: Value =
        serde_json::from_str(&std::fs::read_to_string(folder.join("five-jeans.json")).unwrap()).unwrap();
    let blocks = blocks(&file);
    assert_eq!(
        blocks.keys().map(String::as_str).collect::<Vec<_>>(),
        ["BACK", "FLY_EXTENSION", "FLY_GUARD", "FRONT", "WAISTBAND"]
    );
    for (name, layers) in &blocks {
        let cut = &layers[&1].polylines[0];
        assert_eq!((layers[&1].polylines.len(), layers[&14].polylines.len()), (1, 1), "{name}");
        assert!(area(&layers[&14].polylines[0]) < area(cut), "{name}");
        let [[from, to]] = layers[&7].lines[..] else { panic!("{name}: {:?}", layers[&7].lines) };
        assert!((from.x - to.x).abs() < 1e-3, "the grain of {name} is askew: {from} {to}");
        for notch in &layers[&4].points {
            assert!(distance(cut, *notch) < 0.05, "{name}: a notch {} cm off", distance(cut, *notch));
        }
        assert!(layers[&1].texts.iter().any(|text| text.starts_with("QUANTITY: ")), "{name}");
    }
    for piece in json["pieces"].as_array().unwrap() {
        let layers = &blocks[&piece["panel"].as_str().unwrap().to_uppercase()];
        for (layer, outline) in [(1, "cut_outline"), (14, "sew_outline")] {
            let said = BezPath::from_svg(piece[outline].as_str().unwrap()).unwrap().area().abs();
            let found = area(&layers[&layer].polylines[0]);
            assert!((found / said - 1.0).abs() < 1e-4, "{outline}: {found} for {said}");
        }
        let notches = piece["notches"].as_array().unwrap().len();
        assert!(layers[&4].points.len() >= notches, "{} of {notches}", layers[&4].points.len());
    }
}

#[test]
fn sound_for_ezdxf() {
    let folder = draft("ezdxf", &["--dxf", "--waistband", "shaped", "--fly", "left", "--yoke"]);
    let script = "import sys\nfrom ezdxf import recover\ndocument, audit = recover.readfile(sys.argv[1])\n\
                  print(len(audit.errors), len(audit.fixes), len(document.modelspace().query('INSERT')))";
    if !tool::python_has("ezdxf") {
        return tool::missing(
            "Python has no ezdxf, no DXF is read by it; `BREEKS_PYTHON` names one that has",
        );
    }
    let run = Command::new(tool::python()).args(["-c", script]).arg(folder.join("five-jeans.dxf")).output();
    let run = run.unwrap();
    assert_eq!(
        String::from_utf8_lossy(&run.stdout).trim(),
        "0 0 6",
        "{}",
        String::from_utf8_lossy(&run.stderr)
    );
}

/// Width and height of the only page, cm.
fn page(pdf: &[u8]) -> (f64, f64) {
    let text = String::from_utf8_lossy(pdf);
    let boxes: Vec<&str> = text.match_indices("/MediaBox").map(|(at, _)| &text[at..]).collect();
    let [only] = boxes[..] else { panic!("{} pages", boxes.len()) };
    let numbers: Vec<f64> =
        only.split(['[', ']']).nth(1).unwrap().split_whitespace().map(|it| it.parse().unwrap()).collect();
    ((numbers[2] - numbers[0]) * 2.54 / 72.0, (numbers[3] - numbers[1]) * 2.54 / 72.0)
}

#[test]
fn one_page_as_wide_as_the_roll() {
    let folder = draft("roll", &["--roll", "91.4", "--roll", "24in", "--waistband", "straight"]);
    for (file, wide) in [("five-jeans-roll-91-4.pdf", 91.4), ("five-jeans-roll-61.pdf", 60.96)] {
        let (width, height) = page(&std::fs::read(folder.join(file)).unwrap());
        assert!((width - wide).abs() < 0.01, "{file}: {width}");
        assert!(height > 110.0 && height < 260.0, "{file}: {height}");
    }
}

#[test]
fn one_page_in_whole_squares_for_the_projector() {
    let folder = draft("projector", &["--projector"]);
    let bytes = std::fs::read(folder.join("five-jeans-projector.pdf")).unwrap();
    let (width, height) = page(&bytes);
    for length in [width - 1.0, height - 1.0] {
        assert!((length / 10.0 - (length / 10.0).round()).abs() < 0.001, "{length}");
    }
    let text = String::from_utf8_lossy(&bytes);
    for layer in ["Grid of 10 cm", "Cutting lines", "Sewing lines", "Notches"] {
        assert!(text.contains(&format!("({layer})")), "no layer {layer}");
    }
}

#[test]
fn no_roll_too_narrow_for_a_piece() {
    for (roll, said) in
        [("20", "expected 30.0 to 200.0 cm"), ("36", "a piece is wider"), ("wide", "expected a length")]
    {
        let run = Command::new(env!("CARGO_BIN_EXE_breeks"))
            .args(["draft", "--demo", "five", "--roll", roll, "--out", env!("CARGO_TARGET_TMPDIR")])
            .output()
            .unwrap();
        assert_eq!(run.status.code(), Some(2));
        assert!(
            String::from_utf8_lossy(&run.stderr).contains(said),
            "{}",
            String::from_utf8_lossy(&run.stderr)
        );
    }
}
