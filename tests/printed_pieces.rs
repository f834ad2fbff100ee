//! The printed pieces read back by poppler (pdftocairo), which shares nothing with our writers, against the JSON; and the
//! test squares of the first page measured on the dots that poppler prints. Without poppler the tests say that they skip.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on says so by panicking")]

#[path = "drawing/poppler.rs"]
mod poppler;
mod tool;

use std::{
    path::{Path, PathBuf},
    process::Command,
};

use kurbo::{BezPath, ParamCurveArclen, Shape};
use serde_json::Value;

/// A folder of this test's own.
fn folder(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("printed_pieces").join(name);
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(&folder).unwrap();
    folder
}

fn draft(folder: &Path, more: &[&str]) {
    let ended = Command::new(env!("CARGO_BIN_EXE_breeks"))
        .args(["draft", "--out"])
        .arg(folder)
        .args(more)
        .output()
        .unwrap();
    assert_eq!(ended.status.code(), Some(0), "{}", String::from_utf8_lossy(&ended.stderr));
}

/// Every path on the pages of a PDF with the width of its line, in the units in which it was drawn; `None` without
/// poppler.
fn paths(pdf: &Path, first_page: u32) -> Option<Vec<(f64, BezPath)>> {
    if Command::new("pdftocairo").arg("-v").output().is_err() {
        tool::missing("pdftocairo (poppler) is not installed, no page is read");
        return None;
    }
    let mut all = Vec::new();
    for page in first_page.. {
        let (number, svg) = (page.to_string(), pdf.with_extension(format!("{page}.svg")));
        let ended = Command::new("pdftocairo")
            .args(["-svg", "-f", &number, "-l", &number])
            .arg(pdf)
            .arg(&svg)
            .output();
        if !ended.unwrap().status.success() {
            break;
        }
        let text = std::fs::read_to_string(&svg).unwrap();
        for path in text.split("<path").skip(1) {
            let field =
                |name: &str| path.split(name).nth(1).map(|rest| rest.split(['"', ';']).next().unwrap());
            let Some(width) = field("stroke-width:").and_then(|width| width.parse().ok()) else { continue };
            all.push((width, BezPath::from_svg(field(" d=\"").unwrap()).unwrap()));
        }
    }
    Some(all)
}

fn perimeter(path: &BezPath) -> f64 {
    path.segments().map(|segment| segment.arclen(1e-9)).sum()
}

#[test]
fn outlines_on_paper_as_long_and_as_large_as_in_the_json() {
    for (demo, block, paper) in
        [("stroke", "classic", "a4"), ("five", "slim", "a3"), ("cox", "wide", "tabloid")]
    {
        let folder = folder(block);
        draft(&folder, &["--demo", demo, "--block", block, "--paper", paper]);
        let answer = std::fs::read_to_string(folder.join(format!("{demo}-{block}.json"))).unwrap();
        let answer: Value = serde_json::from_str(&answer).unwrap();
        let Some(paths) = paths(&folder.join(format!("{demo}-{block}-{paper}.pdf")), 2) else { return };
        for (outline, width) in [("sew_outline", 0.035), ("cut_outline", 0.07)] {
            for piece in answer["pieces"].as_array().unwrap() {
                let said = BezPath::from_svg(piece[outline].as_str().unwrap()).unwrap();
                let (long, large) = (perimeter(&said), said.area().abs());
                let alike = |(drawn, path): &&(f64, BezPath)| {
                    (drawn - width).abs() < 1e-6
                        && (perimeter(path) - long).abs() < 0.01
                        && (path.area().abs() / large - 1.0).abs() < 1e-4
                };
                assert!(paths.iter().any(|path| alike(&path)), "{block} {} {outline}", piece["panel"]);
                if outline == "sew_outline" {
                    let edges = piece["edges"].as_array().unwrap().iter();
                    let edges: f64 = edges
                        .map(|edge| perimeter(&BezPath::from_svg(edge["path"].as_str().unwrap()).unwrap()))
                        .sum();
                    assert!((edges - long).abs() < 0.01, "{edges} {long}");
                }
            }
        }
    }
}

/// Dark runs along the middle row or the middle column of a part of a page at 300 dots an inch, cm from its edge.
fn lines_across(pdf: &Path, part: kurbo::Rect, upright: bool) -> Vec<f64> {
    let dots = 300.0 / 2.54;
    let whole = |cm: f64| ((cm * dots).round() as u32).to_string();
    let print = Command::new("pdftoppm")
        .args(["-gray", "-r", "300", "-x", &whole(part.x0), "-y", &whole(part.y0)])
        .args(["-W", &whole(part.width()), "-H", &whole(part.height())])
        .arg(pdf)
        .output()
        .unwrap();
    let mut head = print.stdout.splitn(4, |byte| *byte == b'\n');
    let size = String::from_utf8_lossy(head.nth(1).unwrap()).into_owned();
    let (width, height) = size.split_once(' ').unwrap();
    let (width, height): (usize, usize) = (width.parse().unwrap(), height.parse().unwrap());
    let grey = head.nth(1).unwrap();
    let count = if upright { height } else { width };
    let dark = |step: usize| {
        let (x, y) = if upright { (width / 4, step) } else { (step, height / 4) };
        grey[y * width + x] < 160
    };
    let mut lines = Vec::new();
    let mut start = None;
    for step in 0..=count {
        match (step < count && dark(step), start) {
            (true, None) => start = Some(step),
            (false, Some(from)) => {
                lines.push(0.5 * (from + step) as f64 / dots);
                start = None;
            }
            _ => {}
        }
    }
    lines
}

#[test]
fn squares_and_outlines_true_on_large_paper() {
    let folder = folder("large");
    draft(&folder, &["--demo", "stroke", "--paper", "a0", "--roll", "91.4"]);
    let answer = std::fs::read_to_string(folder.join("stroke-classic.json")).unwrap();
    let answer: Value = serde_json::from_str(&answer).unwrap();
    for (file, width) in [("stroke-classic-a0.pdf", None), ("stroke-classic-roll-91-4.pdf", Some(91.4))] {
        let pdf = folder.join(file);
        let Some(paths) = paths(&pdf, 1) else { return };
        for piece in answer["pieces"].as_array().unwrap() {
            let said = BezPath::from_svg(piece["cut_outline"].as_str().unwrap()).unwrap();
            let alike = |(_, path): &(f64, BezPath)| {
                (perimeter(path) - perimeter(&said)).abs() < 0.01
                    && (path.area().abs() / said.area().abs() - 1.0).abs() < 1e-4
            };
            assert!(paths.iter().any(alike), "{file} {}", piece["panel"]);
        }
        let info = Command::new("pdfinfo").arg(&pdf).output().unwrap();
        let info = String::from_utf8_lossy(&info.stdout).into_owned();
        let size = info.split("Page size:").nth(1).unwrap().trim().split(' ').next().unwrap();
        let page_width: f64 = size.parse::<f64>().unwrap() / 72.0 * 2.54;
        if let Some(width) = width {
            assert!((page_width - width).abs() < 0.01, "{file} {page_width}");
        }
        // A roll's page begins at its margin; the squares are the paths of their length, and a centimetre of room round
        // each is printed.
        let left =
            paths.iter().map(|(_, path)| path.bounding_box()).reduce(|all, one| all.union(one)).unwrap();
        let mut seen = 0;
        for (_, path) in paths.iter().filter(|(_, path)| path.segments().count() == 4) {
            let side = perimeter(path) / 4.0;
            if (side - 5.0).abs() > 1e-3 && (side - 5.08).abs() > 1e-3 {
                continue;
            }
            let Some(origin) = width.map(|_| kurbo::Vec2::new(-1.0, left.y0 - 1.0)) else { continue };
            let part = (path.bounding_box() - origin).inset(1.0);
            let part = kurbo::Rect { x0: part.x0.max(0.0), ..part };
            for upright in [false, true] {
                let lines = lines_across(&pdf, part, upright);
                let found = lines.windows(2).any(|pair| (pair[1] - pair[0] - side).abs() < 0.01);
                assert!(found, "{file} {side} {lines:?}");
            }
            seen += 1;
        }
        assert!(width.is_none() || seen == 2, "{file}: {seen} squares");
    }
}

#[test]
fn squares_of_the_first_page_true_on_every_paper() {
    for paper in ["a4", "letter", "a4_letter", "a3", "tabloid"] {
        let folder = folder(paper);
        draft(&folder, &["--demo", "stroke", "--paper", paper]);
        let pdf =
            std::fs::read(folder.join(format!("stroke-classic-{}.pdf", paper.replace('_', "-")))).unwrap();
        // At 300 dots an inch one dot is nearly the tenth of a millimetre that is allowed.
        let Some(page) = poppler::print(&pdf, 1, 600.0) else { return };
        // The squares stand beside each other: a level look through both of them, somewhere on the page, meets four
        // upright lines at 5 cm, a gap and 5.08 cm.
        let mut found = false;
        for row in 0..160 {
            let y = 0.5 + f64::from(row) * 0.25;
            let lines = page.lines_between((0.0, y), (30.0, y));
            for at in lines.windows(4) {
                let (first, second) = (at[1] - at[0], at[3] - at[2]);
                let beside = (at[2] - at[1] - 0.6).abs() < 0.3;
                if beside && (first - 5.0).abs() < 0.3 && (second - 5.08).abs() < 0.3 {
                    assert!((first - 5.0).abs() < 0.01 && (second - 5.08).abs() < 0.01, "{paper} {at:?}");
                    for (x, side) in [(at[0] + 0.7, 5.0), (at[2] + 0.7, 5.08)] {
                        let upright = page.lines_between((x, y - 5.5), (x, y + 5.5));
                        let sides = upright.windows(2).map(|pair| pair[1] - pair[0]);
                        assert!(
                            sides.clone().any(|found: f64| (found - side).abs() < 0.01),
                            "{paper} {upright:?}"
                        );
                    }
                    found = true;
                }
            }
        }
        assert!(found, "no squares on the first page of {paper}");
    }
}

#[test]
fn picture_and_vector_file_with_the_outlines_of_the_json() {
    let folder = folder("picture");
    draft(&folder, &["--demo", "five", "--png"]);
    let answer = std::fs::read_to_string(folder.join("five-classic.json")).unwrap();
    let answer: Value = serde_json::from_str(&answer).unwrap();
    let svg = std::fs::read_to_string(folder.join("five-classic-pieces.svg")).unwrap();
    let drawn: Vec<BezPath> = svg
        .split(" d=\"")
        .skip(1)
        .map(|rest| BezPath::from_svg(rest.split('"').next().unwrap()).unwrap())
        .collect();
    let sheet: Vec<f64> = svg
        .split("viewBox=\"")
        .nth(1)
        .unwrap()
        .split('"')
        .next()
        .unwrap()
        .split(' ')
        .map(|number| number.parse().unwrap())
        .collect();
    let png = std::fs::read(folder.join("five-classic-pieces.png")).unwrap();
    let picture = tiny_skia::Pixmap::decode_png(&png).unwrap();
    let dots = f64::from(picture.width()) / sheet[2];
    assert!((dots - 25.0).abs() < 0.1, "{dots}");
    for piece in answer["pieces"].as_array().unwrap() {
        let said = BezPath::from_svg(piece["cut_outline"].as_str().unwrap()).unwrap();
        let alike = |path: &&BezPath| {
            (perimeter(path) - perimeter(&said)).abs() < 0.01
                && (path.area().abs() / said.area().abs() - 1.0).abs() < 1e-4
        };
        let path = drawn.iter().find(alike).unwrap();
        for segment in path.segments() {
            for step in 0..20 {
                let at = kurbo::ParamCurve::eval(&segment, f64::from(step) / 20.0);
                let (x, y) = ((at.x - sheet[0]) * dots, (at.y - sheet[1]) * dots);
                // a thin line near the corner of a dot is shared out among its neighbours
                let half = [(0.0, 0.0), (0.5, 0.0), (-0.5, 0.0), (0.0, 0.5), (0.0, -0.5)];
                let near = half.map(|(dx, dy)| picture.pixel((x + dx) as u32, (y + dy) as u32));
                let dark = near.into_iter().flatten().map(|dot| dot.red()).min().unwrap();
                assert!(dark < 128, "{at:?} {dark}");
            }
        }
    }
}
