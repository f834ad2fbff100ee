//! SVG: for the screen, for plotters and for people who go on drawing.

use kurbo::Rect;
use svg::{
    Node as _,
    node::{Value, element::Element},
};

use super::{Align, Drawing, Layer, Mark, Text, number, path_data};

/// How large an SVG shows itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SvgScale {
    /// A centimetre of the drawing is a centimetre of paper.
    TrueScale,
    /// As large as the window or page round it allows; lines and letters grow and shrink with it.
    FitsScreen,
}

/// A thousandth of a centimetre: finer than any printer.
const DECIMALS: usize = 3;

impl Drawing {
    /// The picture as SVG, one named group a layer (`id`, and `data-layer` with the layer's name), title and
    /// description for screen readers, no script, no outside file. One unit is a centimetre.
    ///
    /// Each text asks for the width that [`text_width`](super::text_width) gives, so that labels stay apart in
    /// whichever font the viewer has.
    pub fn to_svg(&self, scale: SvgScale) -> String {
        let mut svg = self.frame().attribute("xmlns", "http://www.w3.org/2000/svg");
        if scale == SvgScale::TrueScale {
            for (name, length) in [("width", self.bounds.width()), ("height", self.bounds.height())] {
                svg.assign(name, format!("{}cm", short(length)));
            }
        }
        svg.assign("style", "background:#fff");
        svg.assign("font-family", "Noto Sans, sans-serif");
        for (tag, words) in [("title", &self.title), ("desc", &self.description)] {
            svg.append(said(tag, words.as_str()));
        }
        let mut ids: Vec<String> = Vec::new();
        for layer in &self.layers {
            let id = new_id(layer.name.as_str(), &ids);
            svg.append(group(layer).attribute("id", id.as_str()));
            ids.push(id);
        }
        format!("{svg}\n")
    }

    /// The picture as an element of an HTML page: as wide as it is drawn where there is room, its description for
    /// screen readers, no ids, since a page has many pictures. Letters are the page's own.
    pub fn to_svg_element(&self) -> String {
        let mut svg = self
            .frame()
            .attribute("style", format!("width:{}cm", short(self.bounds.width())))
            .attribute("aria-label", self.description.as_str());
        for layer in self.layers.iter().filter(|layer| !layer.marks.is_empty()) {
            svg.append(group(layer));
        }
        format!("{svg}\n")
    }

    fn frame(&self) -> Element {
        let Rect { x0, y0, .. } = self.bounds;
        let frame = [x0, y0, self.bounds.width(), self.bounds.height()].map(short);
        Element::new("svg")
            .attribute("viewBox", frame.join(" "))
            .attribute("role", "img")
            .attribute("fill", "none")
            .attribute("stroke-linejoin", "round")
    }
}

/// Elements of every kind are built alike; the crate's own types of them, made for one kind each, break the line within
/// a text.
trait WithAttribute {
    fn attribute(self, name: &str, value: impl Into<Value>) -> Self;
}

impl WithAttribute for Element {
    fn attribute(mut self, name: &str, value: impl Into<Value>) -> Self {
        self.assign(name, value);
        self
    }
}

/// An element that holds words.
fn said(tag: &str, words: &str) -> Element {
    let mut element = Element::new(tag);
    element.append(svg::node::Text::new(words));
    element
}

fn group(layer: &Layer) -> Element {
    let mut group = Element::new("g").attribute("data-layer", layer.name.as_str());
    for mark in &layer.marks {
        match mark {
            Mark::Line { path, pen } => {
                let line = Element::new("path")
                    .attribute("d", path_data(path, DECIMALS))
                    .attribute("stroke", grey(pen.ink.grey()))
                    .attribute("stroke-width", short(pen.width));
                let dash: Vec<String> = pen.dash.iter().copied().map(short).collect();
                group.append(if dash.is_empty() { line } else { line.attribute("stroke-dasharray", dash) });
            }
            Mark::Area { path, shade } => group.append(
                Element::new("path")
                    .attribute("d", path_data(path, DECIMALS))
                    .attribute("fill", grey(shade.grey())),
            ),
            Mark::Text(text) if text.words.as_str().is_empty() => {}
            Mark::Text(text) => group.append(lettered(text)),
        }
    }
    group
}

fn lettered(text: &Text) -> Element {
    let (x, y, ink) = (short(text.at.x), short(text.at.y), grey(text.ink.grey()));
    let mut element = said("text", text.words.as_str())
        .attribute("x", x.as_str())
        .attribute("y", y.as_str())
        .attribute("font-size", short(text.size))
        .attribute("fill", ink.as_str())
        .attribute("textLength", short(text.width()))
        .attribute("lengthAdjust", "spacingAndGlyphs");
    match text.align {
        Align::Start => {}
        Align::Middle => element.assign("text-anchor", "middle"),
        Align::End => element.assign("text-anchor", "end"),
    }
    if text.bold_line() > 0.0 {
        element.assign("stroke", ink);
        element.assign("stroke-width", short(text.bold_line()));
    }
    if text.turn != 0.0 {
        element.assign("transform", format!("rotate({} {x} {y})", short(text.turn.to_degrees())));
    }
    element
}

/// An id made of the layer's name that no earlier layer has.
fn new_id(name: &str, earlier: &[String]) -> String {
    let words: Vec<String> = name
        .split(|letter: char| !letter.is_ascii_alphanumeric())
        .filter(|word| !word.is_empty())
        .map(str::to_ascii_lowercase)
        .collect();
    let first = format!("layer-{}", words.join("-"));
    let numbered = (2..).map(|number| format!("{first}-{number}"));
    std::iter::once(first.clone()).chain(numbered).find(|id| !earlier.contains(id)).unwrap_or(first) // cannot happen: the numbers do not end
}

/// A number of three decimals.
fn short(value: f64) -> String {
    let mut text = String::new();
    number(&mut text, value, DECIMALS);
    text
}

/// A grey from 0 for black to 1 for white.
fn grey(level: f64) -> String {
    let level = (level * 255.0).round() as u8;
    format!("#{level:02x}{level:02x}{level:02x}")
}
