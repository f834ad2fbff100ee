use breeks::drawing::{Drawing, Layer, SvgScale, Text};
use kurbo::{BezPath, Point, Shape};
use roxmltree::{Document, Node};

use crate::sample;

/// The file as a strict reader of XML sees it, which shares nothing with the writer.
fn read(file: &str) -> Document<'_> {
    Document::parse(file).expect("XML")
}

/// Every element, parents before their children.
fn elements<'a>(file: &'a Document<'a>) -> impl Iterator<Item = Node<'a, 'a>> {
    file.descendants().filter(Node::is_element)
}

fn names<'a>(file: &'a Document<'a>) -> Vec<&'a str> {
    elements(file).map(|element| element.tag_name().name()).collect()
}

/// An attribute that has to be there.
fn said<'a>(element: Node<'a, 'a>, name: &str) -> &'a str {
    element.attribute(name).unwrap_or_else(|| panic!("no {name}"))
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
    let file = picture.to_svg(SvgScale::TrueScale);
    let file = read(&file);
    let root = file.root_element();
    let view: Vec<f64> = said(root, "viewBox").split(' ').map(|n| n.parse().unwrap()).collect();
    for (name, at) in [("width", 2), ("height", 3)] {
        assert_eq!(said(root, name).strip_suffix("cm").unwrap().parse::<f64>().unwrap(), view[at]);
    }
    assert!(
        (view[2] - picture.bounds.width()).abs() < 1e-3 && (view[3] - picture.bounds.height()).abs() < 1e-3
    );
    let fits = picture.to_svg(SvgScale::FitsScreen);
    let fits = read(&fits);
    assert!(!fits.root_element().has_attribute("width") && !fits.root_element().has_attribute("height"));
    assert_eq!(said(fits.root_element(), "viewBox"), said(root, "viewBox"));
}

#[test]
fn lengths_kept_in_path_data() {
    let file = sample::picture().to_svg(SvgScale::TrueScale);
    let file = read(&file);
    let lengths: Vec<f64> = elements(&file)
        .filter(|element| element.has_tag_name(("http://www.w3.org/2000/svg", "path")))
        .map(|path| BezPath::from_svg(said(path, "d")).unwrap().perimeter(1e-6))
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
    let file = Drawing::around("", "", layers, 1.0).to_svg(SvgScale::TrueScale);
    let file = read(&file);
    let groups: Vec<_> = elements(&file).filter(|element| element.tag_name().name() == "g").collect();
    let ids: Vec<&str> = groups.iter().map(|group| said(*group, "id")).collect();
    assert_eq!(
        ids,
        ["layer-front-panel", "layer-front-panel-2", "layer-", "layer--2", "layer-a-script-alert-1-script"]
    );
    let called: Vec<&str> = groups.iter().map(|group| said(*group, "data-layer")).collect();
    assert_eq!(called, ["Front panel", "front-panel", "", "前", names[4]]);
    assert_eq!(self::names(&file), ["svg", "title", "desc", "g", "g", "g", "g", "g"]);
}

#[test]
fn hostile_text_shown_as_harmless_text() {
    let long = "x".repeat(10_000);
    let texts = ["<script>alert(1)</script>", "]]>&amp;<!--", "a\u{202e}b", "a\u{0}\u{1b}b", "a\r\nb", &long];
    for hostile in texts {
        let mut layer = Layer::new(hostile);
        layer.text(Text::new(Point::new(0.0, 0.0), 1.0, hostile));
        let file = Drawing::around(hostile, hostile, vec![layer], 1.0).to_svg(SvgScale::TrueScale);
        let read = read(&file);
        assert_eq!(names(&read), ["svg", "title", "desc", "g", "text"], "{hostile}");
        let text = |name: &str| {
            elements(&read).find(|element| element.tag_name().name() == name).and_then(|it| it.text())
        };
        assert_eq!([text("title"), text("desc"), text("text")].iter().flatten().count(), 3);
        assert!(file.len() < 12_000 && file.chars().all(|letter| letter == '\n' || !letter.is_control()));
        assert!(!file.contains('\u{202e}'));
    }
}

#[test]
fn the_same_picture_in_the_same_bytes() {
    assert_eq!(sample::picture().to_svg(SvgScale::TrueScale), sample::picture().to_svg(SvgScale::TrueScale));
}
