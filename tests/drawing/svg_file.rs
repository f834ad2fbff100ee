use breeks::drawing::{Drawing, Layer, SvgScale, Text};
use kurbo::{BezPath, Point, Shape};
use svg::{node::element::tag, parser::Event};

use crate::sample;

/// Every start tag with its attributes, and all text, as another reader of XML sees them.
fn read(file: &str) -> (Vec<(String, svg::node::Attributes)>, Vec<String>) {
    let (mut tags, mut texts) = (Vec::new(), Vec::new());
    for event in svg::read(file).expect("text is read from memory") {
        match event {
            Event::Tag(name, tag::Type::Start | tag::Type::Empty, attributes) => {
                tags.push((name.to_owned(), attributes));
            }
            Event::Text(text) => texts.push(text.to_owned()),
            Event::Error(error) => panic!("{error}"),
            _ => {}
        }
    }
    (tags, texts)
}

#[test]
fn sample_as_yesterday() {
    let mut settings = insta::Settings::clone_current();
    settings.set_snapshot_path(concat!(env!("CARGO_MANIFEST_DIR"), "/snapshots"));
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    let svg = sample::picture().to_svg(SvgScale::TrueScale);
    settings.bind(|| insta::assert_snapshot!("drawing-sample-svg", svg));
}

#[test]
fn true_scale_one_unit_a_centimetre_of_paper() {
    let picture = sample::picture();
    let (tags, _) = read(&picture.to_svg(SvgScale::TrueScale));
    let root = &tags[0].1;
    let view: Vec<f64> = root["viewBox"].split(' ').map(|n| n.parse().unwrap()).collect();
    for (name, at) in [("width", 2), ("height", 3)] {
        assert_eq!(root[name].strip_suffix("cm").unwrap().parse::<f64>().unwrap(), view[at]);
    }
    assert!(
        (view[2] - picture.bounds.width()).abs() < 1e-3 && (view[3] - picture.bounds.height()).abs() < 1e-3
    );
    let (tags, _) = read(&picture.to_svg(SvgScale::FitsScreen));
    assert!(!tags[0].1.contains_key("width") && !tags[0].1.contains_key("height"));
    assert_eq!(tags[0].1["viewBox"], root["viewBox"]);
}

#[test]
fn lengths_kept_in_path_data() {
    let (tags, _) = read(&sample::picture().to_svg(SvgScale::TrueScale));
    let lengths: Vec<f64> = tags
        .iter()
        .filter(|(name, _)| name == "path")
        .map(|(_, attributes)| BezPath::from_svg(&attributes["d"]).unwrap().perimeter(1e-6))
        .collect();
    let expected = [40.0, 40.0, 40.0, 40.0, 40.0, 12.0, sample::leg().perimeter(1e-6), 20.0, 4.0 * 5.08];
    assert_eq!(lengths.len(), expected.len());
    for (found, wanted) in lengths.iter().zip(expected) {
        assert!((found - wanted).abs() < 0.002, "{found} {wanted}");
    }
}

#[test]
fn layers_named_and_their_ids_unique() {
    let names = ["Front panel", "front-panel", "", "前", "a\"><script>alert(1)</script>"];
    let layers = names.iter().map(Layer::new).collect();
    let (tags, _) = read(&Drawing::around("", "", layers, 1.0).to_svg(SvgScale::TrueScale));
    let groups: Vec<_> =
        tags.iter().filter(|(name, _)| name == "g").map(|(_, attributes)| attributes).collect();
    let ids: Vec<&str> = groups.iter().map(|group| &*group["id"]).collect();
    assert_eq!(
        ids,
        ["layer-front-panel", "layer-front-panel-2", "layer-", "layer--2", "layer-a-script-alert-1-script"]
    );
    assert_eq!(&*groups[0]["data-layer"], "Front panel");
    assert!(tags.iter().all(|(name, _)| ["svg", "title", "desc", "g"].contains(&name.as_str())));
}

#[test]
fn hostile_text_shown_as_harmless_text() {
    let long = "x".repeat(10_000);
    let texts = ["<script>alert(1)</script>", "]]>&amp;<!--", "a\u{202e}b", "a\u{0}\u{1b}b", "a\r\nb", &long];
    for hostile in texts {
        let mut layer = Layer::new(hostile);
        layer.text(Text::new(Point::new(0.0, 0.0), 1.0, hostile));
        let file = Drawing::around(hostile, hostile, vec![layer], 1.0).to_svg(SvgScale::TrueScale);
        let (tags, texts) = read(&file);
        let names: Vec<&str> = tags.iter().map(|(name, _)| name.as_str()).collect();
        assert_eq!(names, ["svg", "title", "desc", "g", "text"], "{hostile}");
        assert_eq!(texts.len(), 3);
        assert!(file.len() < 12_000 && file.chars().all(|letter| letter == '\n' || !letter.is_control()));
        assert!(!file.contains('\u{202e}'));
    }
}

#[test]
fn the_same_picture_in_the_same_bytes() {
    assert_eq!(sample::picture().to_svg(SvgScale::TrueScale), sample::picture().to_svg(SvgScale::TrueScale));
}
