//! The crotch budget as two bars of one scale: the sewn seam over the body's length and its ease.

use kurbo::{Point, Rect, Shape as _, Vec2};

use super::language::{Language, SHEET};
use crate::{
    drawing::{Align, CAP_HEIGHT, Drawing, Layer, Mark, Shade, Text, Wording},
    told::Subject,
};

/// The bars from the upper left corner, `width` cm wide, and their height.
pub(crate) fn budget_bar(subject: &Subject<'_>, language: &Language, width: f64) -> (Vec<Mark>, f64) {
    let crotch = &subject.report.crotch;
    let tall = 2.0 * language.text;
    let named = 1.2 * language.small;
    let body = crotch.body.map(|(body, _)| body);
    let scale = width / crotch.total().max(body.unwrap_or(0.0));
    let mut marks = Vec::new();
    let mut piece = |from: f64, to: f64, top: f64, shade: Shade, words: &[String]| {
        let area = Rect::new(scale * from, top, scale * to, top + tall);
        if area.width() < 1e-9 {
            return;
        }
        marks.push(Mark::Area { path: area.to_path(0.1), shade });
        marks.push(Mark::Line { path: area.to_path(0.1), pen: language.inside });
        let middle = area.center() + Vec2::new(0.0, CAP_HEIGHT / 2.0 * language.text);
        let texts = words.iter().map(|words| Text::new(middle, language.text, words).aligned(Align::Middle));
        let mut fitting = texts.filter(|text| text.width() + 0.4 * language.text < area.width());
        marks.extend(fitting.next().map(Mark::Text));
    };
    // From the fullest that can be said to what the narrowest part has room for.
    let said = |name: &str, cm: f64| {
        let figure = subject.unit.figure(cm);
        [format!("{name} {}", subject.length(cm)), format!("{name} {figure}"), figure]
    };
    piece(0.0, crotch.front, 0.0, Shade::White, &said("front", crotch.front));
    piece(crotch.front, crotch.total(), 0.0, Shade::Pale, &said("back", crotch.back));
    let Some(body) = body else { return (marks, tall) };
    piece(0.0, body, tall, Shade::White, &said("body", body));
    let (less, more) = (body.min(crotch.total()), body.max(crotch.total()));
    let shade = if crotch.total() > body { Shade::Middle } else { Shade::Black };
    piece(less, more, if crotch.total() > body { tall } else { 0.0 }, shade, &[]);
    let ease = crotch.total() - body;
    let words = if ease < 0.0 {
        format!("{} short", subject.length(-ease))
    } else {
        format!("ease {}", subject.length(ease))
    };
    let at = Point::new(width, 2.0 * tall + named);
    marks.push(Mark::Text(Text::new(at, language.small, words).aligned(Align::End)));
    (marks, 2.0 * tall + named)
}

/// The bars as a picture in a column of a page, `width` cm wide.
pub(crate) fn crotch_bar(subject: &Subject<'_>, width: f64) -> Drawing {
    /// A bar in a column of a page has little room for its words.
    const NARROW: Language = Language { text: SHEET.small, ..SHEET };
    let (marks, height) = budget_bar(subject, &NARROW, width);
    let mut layer = Layer::new("Crotch length");
    layer.marks = marks;
    let description = format!("Crotch length as bars. {}", subject.crotch_said());
    Drawing {
        title: Wording::line("Crotch length"),
        description: Wording::paragraph(&description),
        bounds: kurbo::Rect::new(-0.02, -0.02, width + 0.02, height + 0.05),
        layers: vec![layer],
    }
}
