//! SVG: for the screen, for plotters and for people who go on drawing.

use std::fmt::Write as _;

use kurbo::Rect;

use super::{Align, Drawing, Mark, Text, number, path_data};

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
        let mut svg = String::from("<svg xmlns=\"http://www.w3.org/2000/svg\"");
        if scale == SvgScale::TrueScale {
            for (name, length) in [("width", self.bounds.width()), ("height", self.bounds.height())] {
                let _ = write!(svg, " {name}=\"{}cm\"", Short(length));
            }
        }
        self.write_frame(&mut svg);
        svg.push_str(" role=\"img\" style=\"background:#fff\" fill=\"none\" stroke-linejoin=\"round\"");
        svg.push_str(" font-family=\"Noto Sans, sans-serif\">\n");
        for (tag, words) in [("title", &self.title), ("desc", &self.description)] {
            let _ = writeln!(svg, "<{tag}>{}</{tag}>", Escaped(words.as_str()));
        }
        let mut ids: Vec<String> = Vec::new();
        for layer in &self.layers {
            let id = new_id(layer.name.as_str(), &ids);
            let _ = writeln!(svg, "<g id=\"{id}\" data-layer=\"{}\">", Escaped(layer.name.as_str()));
            ids.push(id);
            layer.marks.iter().for_each(|mark| write_mark(&mut svg, mark));
            svg.push_str("</g>\n");
        }
        svg.push_str("</svg>\n");
        svg
    }

    /// The picture as an element of an HTML page: as wide as it is drawn where there is room, its description for
    /// screen readers, no ids, since a page has many pictures. Letters are the page's own.
    pub fn to_svg_element(&self) -> String {
        let mut svg = String::from("<svg");
        self.write_frame(&mut svg);
        let width = Short(self.bounds.width());
        let _ =
            write!(svg, " style=\"width:{width}cm\" role=\"img\" fill=\"none\" stroke-linejoin=\"round\"");
        let _ = writeln!(svg, " aria-label=\"{}\">", Escaped(self.description.as_str()));
        for layer in self.layers.iter().filter(|layer| !layer.marks.is_empty()) {
            let _ = writeln!(svg, "<g data-layer=\"{}\">", Escaped(layer.name.as_str()));
            layer.marks.iter().for_each(|mark| write_mark(&mut svg, mark));
            svg.push_str("</g>\n");
        }
        svg.push_str("</svg>\n");
        svg
    }

    fn write_frame(&self, svg: &mut String) {
        let Rect { x0, y0, .. } = self.bounds;
        let [left, top, width, height] = [x0, y0, self.bounds.width(), self.bounds.height()].map(Short);
        let _ = write!(svg, " viewBox=\"{left} {top} {width} {height}\"");
    }
}

fn write_mark(svg: &mut String, mark: &Mark) {
    match mark {
        Mark::Line { path, pen } => {
            let _ = write!(svg, "<path d=\"{}\" ", path_data(path, DECIMALS));
            let _ = write!(svg, "stroke=\"{}\" stroke-width=\"{}\"", Grey(pen.ink.grey()), Short(pen.width));
            if !pen.dash.is_empty() {
                let dash: Vec<String> = pen.dash.iter().map(|length| Short(*length).to_string()).collect();
                let _ = write!(svg, " stroke-dasharray=\"{}\"", dash.join(" "));
            }
            svg.push_str("/>\n");
        }
        Mark::Area { path, shade } => {
            let _ =
                writeln!(svg, "<path d=\"{}\" fill=\"{}\"/>", path_data(path, DECIMALS), Grey(shade.grey()));
        }
        Mark::Text(text) => write_text(svg, text),
    }
}

fn write_text(svg: &mut String, text: &Text) {
    let words = text.words.as_str();
    if words.is_empty() {
        return;
    }
    let (x, y, ink) = (Short(text.at.x), Short(text.at.y), Grey(text.ink.grey()));
    let _ = write!(svg, "<text x=\"{x}\" y=\"{y}\" font-size=\"{}\" fill=\"{ink}\"", Short(text.size));
    match text.align {
        Align::Start => {}
        Align::Middle => svg.push_str(" text-anchor=\"middle\""),
        Align::End => svg.push_str(" text-anchor=\"end\""),
    }
    if text.bold_line() > 0.0 {
        let _ = write!(svg, " stroke=\"{ink}\" stroke-width=\"{}\"", Short(text.bold_line()));
    }
    if text.turn != 0.0 {
        let _ = write!(svg, " transform=\"rotate({} {x} {y})\"", Short(text.turn.to_degrees()));
    }
    let width = Short(text.width());
    let _ =
        writeln!(svg, " textLength=\"{width}\" lengthAdjust=\"spacingAndGlyphs\">{}</text>", Escaped(words));
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
struct Short(f64);

impl std::fmt::Display for Short {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let mut text = String::new();
        number(&mut text, self.0, DECIMALS);
        out.write_str(&text)
    }
}

/// A grey from 0 for black to 1 for white.
struct Grey(f64);

impl std::fmt::Display for Grey {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let level = (self.0 * 255.0).round() as u8;
        write!(out, "#{level:02x}{level:02x}{level:02x}")
    }
}

/// Text with the signs replaced that mean something to a reader of SVG or HTML.
pub struct Escaped<'a>(pub &'a str);

impl std::fmt::Display for Escaped<'_> {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        for letter in self.0.chars() {
            match letter {
                '&' => out.write_str("&amp;")?,
                '<' => out.write_str("&lt;")?,
                '>' => out.write_str("&gt;")?,
                '"' => out.write_str("&quot;")?,
                _ => std::fmt::Write::write_char(out, letter)?,
            }
        }
        Ok(())
    }
}
