//! The overview: the whole draft on one sheet in the hand or on a screen.

use kurbo::{Affine, Point, Rect, Shape as _, Vec2};

use super::{
    column::Column,
    language::{Language, SHEET},
    ledger::{Ledger, Stand},
    notes, panel_marks,
    subject::{Subject, panel_name},
};
use crate::{
    draft::PanelShape,
    drawing::{Align, Drawing, Footprint, Labels, Layer, Mark, Paper, Pen, Text},
    terms::{Level, Role},
};

const LANGUAGE: &Language = &SHEET;
/// Round the sheet, cm.
const MARGIN: f64 = 1.1;
/// Width of the notes at the right, cm.
const NOTES: f64 = 6.9;
/// Between the parts of the sheet, cm.
const GAP: f64 = 0.6;
/// Room above the waist line for the names of the columns, cm of the body.
const ABOVE_WAIST: f64 = 6.5;
/// Between the two panels, cm of the body.
const BETWEEN: f64 = 4.0;

/// Both panels small, the levels with their figures in the margin, the crotch length as a bar, seams and joins: on a
/// lying sheet that is whole on A4 and on US Letter.
pub fn overview(subject: &Subject<'_>) -> Drawing {
    let upright = Paper::A4OrLetter.size();
    let sheet = Rect::new(0.0, 0.0, upright.height, upright.width);
    let inside = sheet.inflate(-MARGIN, -MARGIN);
    let mut lines = Layer::new("Levels");
    let mut panels = Layer::new("Panels");
    let mut words = Layer::new("Figures and notes");

    let heading = notes::heading(subject, LANGUAGE, inside.width() - NOTES - GAP);
    let heading_height = heading.height();
    words.marks.extend(heading.placed(inside.origin()));

    let ledger_width = Ledger::width(LANGUAGE);
    let shown = Rect::new(
        inside.x0 + ledger_width + 2.0 * GAP,
        inside.y0 + heading_height + GAP,
        inside.x1 - NOTES - 1.5 * GAP,
        inside.y1,
    );
    let (mut whole, places) = side_by_side(subject.panels());
    whole.y0 = whole.y0.min(-ABOVE_WAIST);
    let scale = (shown.width() / whole.width()).min(shown.height() / whole.height());
    let corner = Point::new(shown.x1 - scale * whole.width(), shown.y0);
    let fit = Affine::translate(corner.to_vec2())
        * Affine::scale(scale)
        * Affine::translate(-whole.origin().to_vec2());
    let stand = Stand {
        left: inside.x0,
        lines_from: corner.x - 0.4 * GAP,
        lines_to: shown.x1 + 0.3 * GAP,
        waist: (fit * Point::ORIGIN).y,
        scale,
    };
    Ledger::of(subject, LANGUAGE).draw(&stand, &mut lines, &mut words);
    for (panel, place) in subject.panels().into_iter().zip(places) {
        draw(panel, fit * place, &mut panels);
    }
    name_panels(subject, fit, places, inside, [&lines, &panels], &mut words);

    let mut column = Column::new(inside.x1 - NOTES, inside.y0, 0.5, Vec::new());
    let key = [
        (LANGUAGE.outline, "sewing line, notch"),
        (LANGUAGE.inside, panel_marks::inside_words(subject.panels())),
        (LANGUAGE.crease, "crease and grain"),
    ];
    let warnings = notes::warnings(subject, LANGUAGE, NOTES);
    let (forbids, minds) = if subject.report.can_be_cut() { (None, warnings) } else { (warnings, None) };
    let crowd = [
        forbids,
        Some(notes::crotch(subject, LANGUAGE, NOTES)),
        Some(notes::seams_and_joins(subject, LANGUAGE, NOTES)),
        Some(notes::cautions(LANGUAGE, NOTES)),
        notes::parameters(subject, LANGUAGE, NOTES),
        minds,
        Some(notes::ease(subject, LANGUAGE, NOTES)),
        Some(notes::key(LANGUAGE, NOTES, key)),
    ];
    // The most needed come first; what finds no room is on the wall drawing too.
    for note in crowd.into_iter().flatten() {
        if column.next() + note.height() <= inside.y1 {
            words.marks.extend(column.add(note));
        }
    }
    let description = subject.description("Drafted by breeks, reduced.");
    Drawing {
        bounds: sheet,
        ..Drawing::around(subject.title("overview"), &description, vec![lines, panels, words], MARGIN)
    }
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
