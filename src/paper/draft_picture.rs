//! The draft with its ease: both panels small, each level's line carrying body, pattern and ease, and under the strong
//! outline the plain block where fit parameters moved it.

use kurbo::{Affine, Point, Rect, Shape as _, Vec2};

use crate::{
    booklet::Booklet,
    draft::{PanelShape, Shape},
    drawing::{Align, Drawing, Layer, Pen, Text, Wording},
    paper::{
        language::{Language, SHEET},
        ledger::{Ledger, Stand},
        panel_marks,
    },
    terms::Level,
    told::{Subject, panel_name},
};

const LANGUAGE: &Language = &SHEET;
/// Height of the picture, cm.
const HEIGHT: f64 = 8.5;
/// Between the rows of figures and the panels, cm.
const GAP: f64 = 0.6;
/// From the upper edge to the waist line, for the names of the columns, cm.
const ABOVE_WAIST: f64 = 1.25;
/// Between the two panels, at least and at most, cm of the body.
const BETWEEN: f64 = 4.0;
const MOST_BETWEEN: f64 = 30.0;
/// Under the hems, for the names of the panels, cm.
const NAMES: f64 = 0.65;

/// Both panels small, over the plain block in thin dashed lines where a fit parameter changed it, with a row of figures
/// at each level. As wide as a page.
pub fn draft_picture(subject: &Subject<'_>) -> Drawing {
    let sheet = Rect::new(0.0, 0.0, Booklet::width(), HEIGHT);
    let mut lines = Layer::new("Levels");
    let mut earlier = Layer::new("Plain block");
    let mut panels = Layer::new("Panels");
    let mut words = Layer::new("Figures");
    let plain = plain(subject);

    let shown = Rect::new(
        Ledger::width(LANGUAGE, subject.unit) + 3.0 * GAP,
        ABOVE_WAIST,
        sheet.x1 - 0.2,
        sheet.y1 - NAMES,
    );
    let (mut whole, mut places) = side_by_side(subject.panels());
    // The centre back stands above the waist line, beside the names.
    whole.y0 = 0.0;
    let scale = (shown.width() / whole.width()).min(shown.height() / whole.height());
    // What is left over stands between the panels.
    let apart = (shown.width() / scale - whole.width()).min(MOST_BETWEEN);
    places[1] = Affine::translate((apart, 0.0)) * places[1];
    whole.x1 += apart;
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
    for (panel, place) in subject.panels().into_iter().zip(places) {
        let under = fit * place * Point::new(0.0, subject.draft.shape.levels[Level::Hem]);
        let name = panel_name(panel.panel, subject.draft.side);
        let at = Point::new(under.x, sheet.y1 - 0.15);
        words.text(Text::new(at, LANGUAGE.head, name).bold().aligned(Align::Middle));
    }
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
