//! The wall drawing: front and back beside each other at true scale, over their construction, with a margin that says
//! all their figures.

mod layers;
mod words;

use kurbo::{Affine, BezPath, Rect, Shape as _, Vec2};

use self::layers::Layers;
use super::{
    column::Column,
    construction_marks::ConstructionMarks,
    language::{Language, WALL},
    ledger::{Ledger, Stand},
    margin,
    note::Note,
    panel_marks,
};
use crate::{
    draft::PanelShape,
    drawing::{Drawing, Mark},
    terms::Level,
    told::{Subject, tables},
};

/// The drawing's line language.
const LANGUAGE: &Language = &WALL;
/// Round the sheet, cm.
const MARGIN: f64 = 1.5;
/// Between the margin and the front, and between the panels, for the words that stand there, cm.
const GAP: f64 = 4.0;
/// From the ledger's rows to the level lines, cm.
const KINK: f64 = 1.0;
/// Between two margin, cm.
const BETWEEN_NOTES: f64 = 1.1;

/// A panel on the sheet.
struct Placed<'a> {
    shape: &'a PanelShape,
    construction: ConstructionMarks,
    /// From the panel's place, the crease at x = 0, to the sheet's.
    place: Affine,
}

/// The front and, to the right of it, the back in the same frame, at true scale.
pub fn wall_drawing(subject: &Subject<'_>) -> Drawing {
    let panels = placed(subject);
    let reach = panels.iter().map(|panel| panel.place.transform_rect_bbox(panel.reach()));
    let reach = reach.reduce(|all, one| all.union(one)).unwrap_or_default();
    let mut layers = Layers::default();

    let width = Ledger::width(LANGUAGE, subject.unit);
    let stand = Stand {
        left: reach.x0 - GAP - KINK - width,
        lines_from: reach.x0 - GAP,
        lines_to: reach.x1 + 1.0,
        waist: 0.0,
        scale: 1.0,
    };
    let ledger = Ledger::of(subject, LANGUAGE);
    let mut taken = ledger.draw(&stand, &mut layers.levels, &mut layers.figures);
    let right = stand.lines_to + ledger.name_ends(&stand, subject, &mut layers.levels, &mut layers.figures);

    let heading = margin::heading(subject, LANGUAGE, width);
    let ledger_top = taken.iter().map(|part| part.start).fold(f64::INFINITY, f64::min);
    let top = reach.y0.min(ledger_top - BETWEEN_NOTES - heading.height());
    taken.iter_mut().for_each(|part| *part = part.start - 0.4..part.end + 0.4);
    let mut column = Column::new(stand.left, top, BETWEEN_NOTES, taken);
    for (layer, note) in notes_of(subject, heading, width) {
        layers.notes(layer).marks.extend(column.add(note));
    }

    for panel in &panels {
        panel.draw(&mut layers);
    }
    let bottom = subject.draft.shape.levels[Level::Hem].max(reach.y1).max(column.bottom());
    let sheet = Rect::new(stand.left, top, right, bottom).inflate(MARGIN, MARGIN);
    words::place(subject, &panels, sheet, &mut layers);
    Drawing {
        bounds: sheet,
        ..Drawing::around(
            subject.title("wall drawing"),
            &subject.description("Drafted by breeks, at true scale."),
            layers.in_order(),
            MARGIN,
        )
    }
}

/// Which layer a note belongs to.
#[derive(Clone, Copy)]
enum NoteLayer {
    Notes,
    Squares,
}

fn notes_of<'a>(subject: &Subject<'_>, heading: Note<'a>, width: f64) -> Vec<(NoteLayer, Note<'a>)> {
    let key = [
        (LANGUAGE.outline, "sewing line, notch"),
        (LANGUAGE.inside, panel_marks::inside_words(subject.panels())),
        (LANGUAGE.crease, "crease and grain"),
        (LANGUAGE.level, "level"),
        (LANGUAGE.construction, "construction"),
    ];
    let mut all = vec![(NoteLayer::Notes, heading)];
    all.extend(margin::warnings(subject, LANGUAGE, width).map(|note| (NoteLayer::Notes, note)));
    all.push((NoteLayer::Notes, margin::crotch(subject, LANGUAGE, width)));
    let Subject { draft, report, unit } = *subject;
    let tables =
        [tables::ease(draft, report), tables::seams(report).without("allowed"), tables::joins(report)];
    let tables = tables::parameters(draft, report).into_iter().chain(tables);
    all.extend(tables.map(|table| (NoteLayer::Notes, margin::figures(&table, unit, LANGUAGE, width))));
    all.extend([
        (NoteLayer::Squares, margin::check(LANGUAGE, width)),
        (NoteLayer::Notes, margin::cautions(LANGUAGE, width)),
        (NoteLayer::Notes, margin::key(LANGUAGE, width, key)),
    ]);
    all
}

fn placed<'a>(subject: &Subject<'a>) -> [Placed<'a>; 2] {
    let [mut front, mut back] = subject.panels().map(|shape| Placed {
        shape,
        construction: ConstructionMarks::of(subject.draft, shape.panel),
        place: Affine::IDENTITY,
    });
    front.place = Affine::IDENTITY;
    back.place = Affine::translate(Vec2::new(front.reach().x1 + GAP - back.reach().x0, 0.0));
    [front, back]
}

impl Placed<'_> {
    /// All that is drawn of the panel, in its own place.
    fn reach(&self) -> Rect {
        let lines = self.construction.lines.iter().map(BezPath::bounding_box);
        let levels = self.construction.levels.iter().map(|level| level.line.bounding_box());
        lines.chain(levels).fold(panel_marks::outline(self.shape).bounding_box(), |all, one| all.union(one))
    }

    fn draw(&self, layers: &mut Layers) {
        /// Half a cross at a point, cm.
        const CROSS: f64 = 0.12;
        let place = self.place;
        for line in &self.construction.lines {
            layers.construction.line(place * line.clone(), LANGUAGE.construction);
        }
        for level in &self.construction.levels {
            layers.construction.line((place * level.line).to_path(0.1), LANGUAGE.construction);
        }
        for point in &self.construction.points {
            let at = place * point.at;
            let mut cross = BezPath::new();
            for arm in [Vec2::new(CROSS, 0.0), Vec2::new(0.0, CROSS)] {
                cross.move_to(at - arm);
                cross.line_to(at + arm);
            }
            layers.points.line(
                cross,
                crate::drawing::Pen { ink: crate::drawing::Ink::Middle, ..LANGUAGE.construction },
            );
        }
        let crease = (place * panel_marks::crease(self.shape)).to_path(0.1);
        layers.crease.line(crease, LANGUAGE.crease);
        let arrows = place * panel_marks::arrow_heads(self.shape, 0.8);
        layers.crease.line(arrows, crate::drawing::Pen { dash: &[], ..LANGUAGE.crease });
        layers.panels.line(place * panel_marks::sewing_line(self.shape), LANGUAGE.outline);
        layers.darts.line(place * panel_marks::darts(self.shape), LANGUAGE.inside);
        if !self.shape.lines.is_empty() {
            layers.style_lines.line(place * panel_marks::style_lines(self.shape), LANGUAGE.inside);
        }
        layers.notches.line(place * panel_marks::notches(self.shape, 0.7), LANGUAGE.outline);
    }

    /// The lines that words should not hide, the strongest three times.
    fn lines(&self) -> Vec<BezPath> {
        let outline = panel_marks::outline(self.shape);
        let mut lines = vec![outline.clone(), outline.clone(), outline];
        let inside = panel_marks::inside(self.shape);
        lines.extend([inside.clone(), inside.clone(), inside, panel_marks::notches(self.shape, 0.7)]);
        lines.push(panel_marks::crease(self.shape).to_path(0.1));
        lines.extend(self.construction.lines.iter().cloned());
        lines.extend(self.construction.levels.iter().map(|level| level.line.to_path(0.1)));
        lines.into_iter().map(|line| self.place * line).collect()
    }
}

/// Whether a mark is words.
fn footprint(mark: &Mark) -> Option<crate::drawing::Footprint> {
    match mark {
        Mark::Text(text) => Some(text.footprint()),
        Mark::Line { .. } | Mark::Area { .. } => None,
    }
}
