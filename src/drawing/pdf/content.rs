//! The marks of a layer in the language of a PDF page.

use kurbo::{BezPath, PathEl, Point};
use pdf_writer::{
    Buf, Content, Name, Str,
    types::{LineJoinStyle, TextRenderingMode},
};

use super::{cm, lettering::Lettering, rounded};
use crate::drawing::{Layer, Mark, Text};

/// The name under which a layer knows the font.
pub(super) const FONT: Name<'static> = Name(b"F");

/// The marks in centimetres of the picture, y down, as the page's matrix expects them.
pub(super) fn of(layer: &Layer, lettering: &Lettering) -> Buf {
    let mut content = Content::new();
    content.set_line_join(LineJoinStyle::RoundJoin);
    for mark in &layer.marks {
        match mark {
            Mark::Line { path, pen } => {
                content.set_line_width(cm(pen.width)).set_stroke_gray(rounded(pen.ink.grey(), 1e3));
                content.set_dash_pattern(pen.dash.iter().map(|length| cm(*length)), 0.0);
                draw_path(&mut content, path);
                content.stroke();
            }
            Mark::Area { path, shade } => {
                content.set_fill_gray(rounded(shade.grey(), 1e3));
                draw_path(&mut content, path);
                content.fill_nonzero();
            }
            Mark::Text(text) => write_text(&mut content, text, lettering),
        }
    }
    content.finish()
}

fn write_text(content: &mut Content, text: &Text, lettering: &Lettering) {
    let start = text.at + text.direction() * text.start_of_baseline();
    let grey = rounded(text.ink.grey(), 1e3);
    content.set_fill_gray(grey).begin_text().set_font(FONT, cm(text.size));
    if text.bold_line() > 0.0 {
        content.set_text_rendering_mode(TextRenderingMode::FillStroke);
        content.set_stroke_gray(grey).set_line_width(cm(text.bold_line())).set_dash_pattern([], 0.0);
    } else {
        content.set_text_rendering_mode(TextRenderingMode::Fill);
    }
    // Letters stand upright although y runs down: their own y is turned over.
    let (along, across) = (rounded(text.direction().x, 1e6), rounded(text.direction().y, 1e6));
    content.set_text_matrix([along, across, across, -along, cm(start.x), cm(start.y)]);
    content.show(Str(&lettering.encode(text.words.as_str()))).end_text();
}

fn draw_path(content: &mut Content, path: &BezPath) {
    let mut last = Point::ORIGIN;
    for step in path.elements() {
        match *step {
            PathEl::MoveTo(to) => {
                content.move_to(cm(to.x), cm(to.y));
            }
            PathEl::LineTo(to) => {
                content.line_to(cm(to.x), cm(to.y));
            }
            PathEl::QuadTo(handle, to) => {
                draw_cubic(content, last.lerp(handle, 2.0 / 3.0), to.lerp(handle, 2.0 / 3.0), to);
            }
            PathEl::CurveTo(a, b, to) => draw_cubic(content, a, b, to),
            PathEl::ClosePath => {
                content.close_path();
            }
        }
        last = step.end_point().unwrap_or(last);
    }
}

fn draw_cubic(content: &mut Content, a: Point, b: Point, to: Point) {
    content.cubic_to(cm(a.x), cm(a.y), cm(b.x), cm(b.y), cm(to.x), cm(to.y));
}
