//! PNG: a picture to look at, not to cut by.

use kurbo::{BezPath, PathEl, Vec2};
use tiny_skia::{Color, FillRule, LineJoin, Paint, Path, PathBuilder, Pixmap, Stroke, StrokeDash, Transform};
use ttf_parser::OutlineBuilder;

use super::{
    Drawing, Mark, Text,
    font::{UNITS_PER_EM, glyphs, outline},
};
use crate::mistake::Mistake;

/// A larger picture takes more than 200 MB of memory.
const MOST_DOTS: f64 = 50e6;

impl Drawing {
    /// The picture as PNG on white. Lines thinner than a dot are drawn a dot wide, so that a small picture still
    /// shows them.
    ///
    /// # Errors
    /// When the picture would have no dot or more than fifty million.
    pub fn to_png(&self, dots_per_cm: f64) -> Result<Vec<u8>, Mistake> {
        let (width, height) = (self.bounds.width() * dots_per_cm, self.bounds.height() * dots_per_cm);
        let too_large = || {
            Mistake::new(format!("a picture of {width:.0} by {height:.0} dots cannot be drawn"))
                .help(format!("choose dots so that their number lies between 1 and {MOST_DOTS:.0}"))
        };
        let fits = width >= 0.5 && height >= 0.5 && width * height <= MOST_DOTS;
        let mut sheet = (if fits { Pixmap::new(width.round() as u32, height.round() as u32) } else { None })
            .ok_or_else(too_large)?;
        sheet.fill(Color::WHITE);
        let dots = dots_per_cm as f32;
        let to_dots =
            Transform::from_translate(-self.bounds.x0 as f32, -self.bounds.y0 as f32).post_scale(dots, dots);
        for mark in self.layers.iter().flat_map(|layer| &layer.marks) {
            draw(&mut sheet, mark, to_dots, 1.0 / dots_per_cm);
        }
        sheet.encode_png().map_err(|error| Mistake::new(format!("the picture could not be packed: {error}")))
    }
}

fn draw(sheet: &mut Pixmap, mark: &Mark, to_dots: Transform, dot: f64) {
    match mark {
        Mark::Line { path, pen } => {
            if let Some(path) = own_path(path) {
                let stroke = Stroke {
                    width: pen.width.max(dot) as f32,
                    line_join: LineJoin::Round,
                    dash: dash(pen.dash),
                    ..Stroke::default()
                };
                sheet.stroke_path(&path, &grey(pen.ink.grey()), &stroke, to_dots, None);
            }
        }
        Mark::Area { path, shade } => {
            if let Some(path) = own_path(path) {
                sheet.fill_path(&path, &grey(shade.grey()), FillRule::Winding, to_dots, None);
            }
        }
        Mark::Text(text) => {
            if let Some(path) = lettering(text) {
                let paint = grey(text.ink.grey());
                sheet.fill_path(&path, &paint, FillRule::Winding, to_dots, None);
                if text.bold_line() > 0.0 {
                    let stroke = Stroke { width: text.bold_line() as f32, ..Stroke::default() };
                    sheet.stroke_path(&path, &paint, &stroke, to_dots, None);
                }
            }
        }
    }
}

fn grey(level: f64) -> Paint<'static> {
    let level = (level * 255.0).round() as u8;
    let mut paint = Paint::default();
    paint.set_color_rgba8(level, level, level, 255);
    paint
}

/// An odd list of dashes and gaps runs twice, as SVG and PDF have it; tiny-skia would refuse it.
fn dash(lengths: &[f64]) -> Option<StrokeDash> {
    let times = if lengths.len().is_multiple_of(2) { 1 } else { 2 };
    StrokeDash::new(lengths.repeat(times).into_iter().map(|length| length as f32).collect(), 0.0)
}

fn own_path(path: &BezPath) -> Option<Path> {
    let mut own = PathBuilder::new();
    for step in path.elements() {
        match *step {
            PathEl::MoveTo(to) => own.move_to(to.x as f32, to.y as f32),
            PathEl::LineTo(to) => own.line_to(to.x as f32, to.y as f32),
            PathEl::QuadTo(a, to) => own.quad_to(a.x as f32, a.y as f32, to.x as f32, to.y as f32),
            PathEl::CurveTo(a, b, to) => {
                own.cubic_to(a.x as f32, a.y as f32, b.x as f32, b.y as f32, to.x as f32, to.y as f32);
            }
            PathEl::ClosePath => own.close(),
        }
    }
    own.finish()
}

/// The outlines of all letters of a text, in place.
fn lettering(text: &Text) -> Option<Path> {
    let along = text.direction() * text.size;
    let origin = text.at.to_vec2() + text.direction() * text.start_of_baseline();
    let mut lettering = Lettering { path: PathBuilder::new(), along, origin };
    for glyph in glyphs(text.words.as_str()) {
        outline(glyph.id, &mut lettering);
        lettering.origin += along * glyph.advance;
    }
    lettering.path.finish()
}

/// Takes a letter's outline from the font's grid to the sheet.
struct Lettering {
    path: PathBuilder,
    /// Direction of reading, as long as the em.
    along: Vec2,
    /// Where the letter begins on its baseline.
    origin: Vec2,
}

impl Lettering {
    fn place(&self, x: f32, y: f32) -> (f32, f32) {
        let (x, y) = (f64::from(x) / UNITS_PER_EM, f64::from(y) / UNITS_PER_EM);
        let at = self.origin + self.along * x - self.along.turn_90() * y;
        (at.x as f32, at.y as f32)
    }
}

impl OutlineBuilder for Lettering {
    fn move_to(&mut self, x: f32, y: f32) {
        let (x, y) = self.place(x, y);
        self.path.move_to(x, y);
    }

    fn line_to(&mut self, x: f32, y: f32) {
        let (x, y) = self.place(x, y);
        self.path.line_to(x, y);
    }

    fn quad_to(&mut self, x1: f32, y1: f32, x: f32, y: f32) {
        let ((x1, y1), (x, y)) = (self.place(x1, y1), self.place(x, y));
        self.path.quad_to(x1, y1, x, y);
    }

    fn curve_to(&mut self, x1: f32, y1: f32, x2: f32, y2: f32, x: f32, y: f32) {
        let ((x1, y1), (x2, y2), (x, y)) = (self.place(x1, y1), self.place(x2, y2), self.place(x, y));
        self.path.cubic_to(x1, y1, x2, y2, x, y);
    }

    fn close(&mut self) {
        self.path.close();
    }
}
