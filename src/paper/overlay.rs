//! Two drafts laid over each other.

use kurbo::{Affine, BezPath, Point, Rect, Shape as _, Vec2};

use super::{
    language::{Language, WALL},
    margin,
    note::Note,
    panel_marks,
};
use crate::{
    booklet::{Column, Table},
    draft::Draft,
    drawing::{Align, Drawing, Ink, Layer, Mark, Text, Wording},
    fit::Overlaid,
    terms::{Anchor, Edge, Level, Panel, Role, Side, Word},
    told::{of_panel, panel_name},
    unit::Unit,
    voice::{amount, moved},
};

const LANGUAGE: &Language = &WALL;
/// Between the parts of the picture, cm.
const GAP: f64 = 4.0;
/// Width of the names of the old levels, cm.
const OLD_LEVELS: f64 = 4.0;
/// Width of the margin, cm.
const NOTES: f64 = 14.0;

/// Both panels of an old and a new draft at true scale, crease on crease and a level line on its like: the old one
/// thin and dashed, the new one strong and whole, and a table of what became longer or shorter, in `unit`.
pub fn overlay(was: &Overlaid<'_>, is: &Overlaid<'_>, anchor: Anchor, unit: Unit) -> Drawing {
    let (old, new) = (was.draft, is.draft);
    let side = if new.side == Side::Both { old.side } else { new.side };
    let lower = new.shape.levels[anchor.level()] - old.shape.levels[anchor.level()];
    let to_new = Affine::translate(Vec2::new(0.0, lower));
    let both = |panel: Panel| {
        let reach = panel_marks::outline(new.shape.panel(panel)).bounding_box();
        reach.union((to_new * panel_marks::outline(old.shape.panel(panel))).bounding_box())
    };
    let shift = Vec2::new(both(Panel::Front).x1 + GAP - both(Panel::Back).x0, 0.0);
    let reach = both(Panel::Front).union(both(Panel::Back) + shift);

    let mut levels = Layer::new("Levels");
    let mut earlier = Layer::new("Old");
    let mut newer = Layer::new("New");
    let mut words = Layer::new("Figures and notes");
    draw_levels(old, new, lower, reach, &mut levels, &mut words);
    for (panel, place) in [(Panel::Front, Affine::IDENTITY), (Panel::Back, Affine::translate(shift))] {
        let (was, is) = (old.shape.panel(panel), new.shape.panel(panel));
        for path in [panel_marks::sewing_line(was), panel_marks::inside(was)] {
            earlier.line(place * to_new * path, LANGUAGE.earlier);
        }
        newer.line(place * panel_marks::sewing_line(is), LANGUAGE.outline);
        newer.line(place * panel_marks::inside(is), LANGUAGE.inside);
        newer.line(place * panel_marks::notches(is, 0.7), LANGUAGE.outline);
        newer.line((place * panel_marks::crease(is)).to_path(0.1), LANGUAGE.crease);
        let middle = Point::new(
            0.5 * is.roles[Role::SideKnee].x,
            0.5 * (new.shape.levels[Level::Crotch] + new.shape.levels[Level::Knee]),
        );
        words.text(
            Text::new(place * middle, LANGUAGE.title, panel_name(panel, side)).aligned(Align::Middle).bold(),
        );
    }
    let mut at = Point::new(reach.x1 + GAP + OLD_LEVELS, reach.y0);
    for note in [legend(was, is, anchor), lengths(old, new, unit)] {
        let down = note.height() + 1.2;
        words.marks.extend(note.placed(at));
        at.y += down;
    }
    let description = format!(
        "Drafted by breeks, at true scale: the block {} for {} in thin dashed lines under the block {} for {} in strong lines, laid over each other by crease and {anchor} line.",
        old.recipe.name, old.name, new.recipe.name, new.name
    );
    let [below, above] = [old, new].map(|draft| format!("{} for {}", draft.recipe.name, draft.name));
    let title = if below == above { above } else { format!("{above} over {below}") };
    let title = Wording::line(&format!("breeks overlay: {title}"));
    Drawing::around(title, &description, vec![levels, earlier, newer, words], 1.5)
}

/// The new draft's levels with their names on the left, and where they lie elsewhere the old one's, dashed, with
/// theirs on the right.
fn draw_levels(old: &Draft, new: &Draft, lower: f64, reach: Rect, lines: &mut Layer, words: &mut Layer) {
    /// A smaller move of a level is not seen, cm.
    const SEEN: f64 = 0.05;
    let text = LANGUAGE.text;
    let (left, right) = (reach.x0 - GAP, reach.x1 + 0.5 * GAP);
    let shown: Vec<(Level, f64)> = by_height(new, 0.0);
    for ((level, y), at) in shown.iter().zip(apart(&shown)) {
        let mut line = BezPath::new();
        line.move_to((left, at));
        line.line_to((left + 1.5, *y));
        line.line_to((right, *y));
        lines.line(line, LANGUAGE.level);
        let label = Text::new(Point::new(left - 0.3, at + 0.36 * text), text, level.key());
        words.text(label.aligned(Align::End).bold());
    }
    let elsewhere = |(level, y): &(Level, f64)| (new.shape.levels[*level] - y).abs() > SEEN;
    let before: Vec<(Level, f64)> = by_height(old, lower).into_iter().filter(elsewhere).collect();
    for ((level, y), at) in before.iter().zip(apart(&before)) {
        let mut line = BezPath::new();
        line.move_to((left + 1.5, *y));
        line.line_to((right, *y));
        line.line_to((right + 1.5, at));
        lines.line(line, crate::drawing::Pen { ink: Ink::Middle, width: 0.02, ..LANGUAGE.earlier });
        let words_of = format!("old {level}");
        words.text(Text::new(Point::new(right + 1.8, at + 0.36 * text), text, words_of.as_str()));
    }
}

/// The levels of a draft within its panels, from the top, each as much lower as the draft lies.
fn by_height(draft: &Draft, lower: f64) -> Vec<(Level, f64)> {
    let levels = draft.shape.levels;
    let mut shown: Vec<(Level, f64)> = Level::ALL
        .iter()
        .filter(|level| levels[**level] <= levels[Level::Hem])
        .map(|level| (*level, levels[*level] + lower))
        .collect();
    shown.sort_by(|a, b| a.1.total_cmp(&b.1));
    shown
}

/// Where the names of levels stand so that none stands on another.
fn apart(levels: &[(Level, f64)]) -> Vec<f64> {
    let wanted: Vec<f64> = levels.iter().map(|(_, y)| *y).collect();
    super::spread::spread(&wanted, 1.6 * LANGUAGE.text)
}

fn legend(was: &Overlaid<'_>, is: &Overlaid<'_>, anchor: Anchor) -> Note<'static> {
    /// Lines that the words of one draft may take.
    const MOST: usize = 4;
    let mut note = Note::new(LANGUAGE, NOTES);
    let (old, new) = (was.draft, is.draft);
    let alike = old.name == new.name;
    let title = if alike { new.name.clone() } else { format!("{} over {}", new.name, old.name) };
    note.title(&Wording::line(&title));
    let said = |one: &Overlaid<'_>| {
        let recipe = &one.draft.recipe.name;
        if one.said == one.draft.name || one.said.is_empty() {
            format!("{}, block {recipe}", one.draft.name)
        } else {
            format!("{}, block {recipe}: {}", one.draft.name, one.said)
        }
    };
    let key = margin::key(LANGUAGE, NOTES, [(LANGUAGE.outline, "new"), (LANGUAGE.earlier, "old")]);
    let height = key.height();
    note.picture(key.placed(Point::ORIGIN).collect::<Vec<Mark>>(), height);
    for (word, one) in [("New", is), ("Old", was)] {
        note.skip(0.3);
        note.paragraph(&Wording::line(&format!("{word}: {}.", said(one))), MOST);
    }
    note.skip(0.3);
    note.paragraph(&Wording::line(&format!("Laid over each other by crease and {anchor} line.")), 2);
    note
}

/// The sewn length of every edge before and after.
fn lengths(old: &Draft, new: &Draft, unit: Unit) -> Note<'static> {
    let columns = vec![
        Column::words("edge", 2.0),
        Column::numbers("old", 1.0),
        Column::numbers("new", 1.0),
        Column::numbers("longer by", 1.0),
    ];
    let mut table = Table::new("Sewn lengths", columns);
    for panel in Panel::ALL {
        for edge in Edge::ALL {
            let [was, is] = [old, new].map(|draft| draft.shape.panel(*panel).sewn_length(*edge));
            table.row([of_panel(*panel, *edge), amount(was), amount(is), moved(is - was)]);
        }
    }
    margin::figures(&table, unit, LANGUAGE, NOTES)
}
