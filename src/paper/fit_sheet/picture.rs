//! The draft with its ease: both panels small, each level's line carrying body, pattern and ease, and under the strong
//! outline the plain block where fit parameters moved it.

use kurbo::{Affine, Point, Rect, Shape as _, Vec2};

use crate::{
    booklet::Booklet,
    draft::{PanelShape, Shape},
    drawing::{Align, Drawing, Footprint, Labels, Layer, Mark, Pen, Text, Wording},
    paper::{
        language::{Language, SHEET},
        ledger::{Ledger, Stand},
        panel_marks,
        subject::{Subject, panel_name},
    },
    terms::{Level, Role},
};

const LANGUAGE: &Language = &SHEET;
/// Height of the picture, cm.
const HEIGHT: f64 = 10.6;
/// Between the rows of figures and the panels, cm.
const GAP: f64 = 0.6;
/// Room above the waist line for the names of the columns, cm of the body.
const ABOVE_WAIST: f64 = 8.0;
/// Between the two panels, cm of the body.
const BETWEEN: f64 = 4.0;

/// Both panels small, over the plain block in thin dashed lines where a fit parameter changed it, with a row of figures
/// at each level. As wide as a page.
pub fn draft_picture(subject: &Subject<'_>) -> Drawing {
    let sheet = Rect::new(0.0, 0.0, Booklet::width(), HEIGHT);
    let mut lines = Layer::new("Levels");
    let mut earlier = Layer::new("Plain block");
    let mut panels = Layer::new("Panels");
    let mut words = Layer::new("Figures");
    let plain = plain(subject);

    let shown = Rect::new(Ledger::width(LANGUAGE) + 2.0 * GAP, 0.0, sheet.x1 - 0.2, sheet.y1 - 0.1);
    let (mut whole, places) = side_by_side(subject.panels());
    whole.y0 = whole.y0.min(-ABOVE_WAIST);
    let scale = (shown.width() / whole.width()).min(shown.height() / whole.height());
    let corner = Point::new(shown.x1 - scale * whole.width(), shown.y0);
    let fit = Affine::translate(corner.to_vec2())
        * Affine::scale(scale)
        * Affine::translate(-whole.origin().to_vec2());
    let stand = Stand {
        left: 0.0,
        lines_from: corner.x - 0.4 * GAP,
        lines_to: shown.x1 + 0.1,
        waist: (fit * Point::ORIGIN).y,
        scale,
    };
    Ledger::of(subject, LANGUAGE).draw(&stand, &mut lines, &mut words);
    for (panel, place) in subject.panels().into_iter().zip(places) {
        if let Some(plain) = &plain {
            let was = plain.panel(panel.panel);
            for path in [panel_marks::sewing_line(was), panel_marks::inside(was)] {
                earlier.line(fit * place * path, LANGUAGE.earlier);
            }
        }
        draw(panel, fit * place, &mut panels);
    }
    name_panels(subject, fit, places, sheet, [&lines, &panels], &mut words);
    let title = if plain.is_some() { "Dashed: the plain block, without fit parameters" } else { "" };
    let description = subject.description("The draft, reduced, with body, pattern and ease at every level.");
    Drawing {
        title: Wording::line(title),
        description: Wording::paragraph(&description),
        bounds: sheet,
        layers: vec![lines, earlier, panels, words],
    }
}

/// The block without its fit parameters, cut at the same waist; `None` where it is the draft itself.
fn plain(subject: &Subject<'_>) -> Option<Shape> {
    subject.draft.parameters.set().next()?;
    subject.draft.plain_as_cut()
}
/// The rectangle round both panels in the front's place, and the places of front and back.
fn side_by_side([front, back]: [&PanelShape; 2]) -> (Rect, [Affine; 2]) {
    let reach = |panel: &PanelShape| panel_marks::outline(panel).bounding_box();
    let shift = Vec2::new(reach(front).x1 + BETWEEN - reach(back).x0, 0.0);
    (reach(front).union(reach(back) + shift), [Affine::IDENTITY, Affine::translate(shift)])
}

fn draw(panel: &PanelShape, place: Affine, layer: &mut Layer) {
    layer.line((place * panel_marks::crease(panel)).to_path(0.1), LANGUAGE.crease);
    layer.line(place * panel_marks::arrow_heads(panel, 1.8), Pen { dash: &[], ..LANGUAGE.crease });
    layer.line(place * panel_marks::sewing_line(panel), LANGUAGE.outline);
    layer.line(place * panel_marks::inside(panel), LANGUAGE.inside);
    layer.line(place * panel_marks::notches(panel, 1.6), LANGUAGE.outline);
}

/// Names each panel in its leg.
fn name_panels(
    subject: &Subject<'_>,
    fit: Affine,
    places: [Affine; 2],
    paper: Rect,
    lines: [&Layer; 2],
    words: &mut Layer,
) {
    let mut labels = Labels::new(paper, 0.1);
    for mark in words.marks.iter().chain(lines.iter().flat_map(|layer| &layer.marks)) {
        match mark {
            Mark::Text(text) => labels.keep_off(text.footprint()),
            Mark::Line { path, .. } => labels.spare(path),
            Mark::Area { path, .. } => labels.keep_off(Footprint::level(path.bounding_box())),
        }
    }
    let levels = &subject.draft.shape.levels;
    let (top, bottom) = (levels[Level::Crotch], levels[Level::Knee]);
    for (shape, place) in subject.panels().into_iter().zip(places) {
        let text =
            Text::new(Point::ORIGIN, LANGUAGE.head, panel_name(shape.panel, subject.draft.side)).bold();
        let half = 0.55 * shape.roles[Role::SideKnee].x;
        let spots = [0.3, 0.4, 0.5, 0.6, 0.2, 0.7].iter().map(|part| {
            let at = fit * place * Point::new(half, top + part * (bottom - top));
            Text { at, ..text.clone().aligned(Align::Middle) }
        });
        words.marks.extend(labels.place(spots).map(Mark::Text));
    }
}
