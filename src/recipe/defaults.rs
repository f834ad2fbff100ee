//! What a recipe gives where a measurement file says nothing: ease, widths of style, truing.

use super::{
    Construction, Inputs, Names, Proportion, Reference,
    table::{Cell, Reader, Row},
};
use crate::terms::{EaseAt, EnumMap, Sex, Style, Word};

/// The ease of a recipe.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct EaseTable(EnumMap<EaseAt, EaseRow>);

/// Ease at one place, in cm.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct EaseRow {
    /// For women.
    pub women: f64,
    /// For men.
    pub men: f64,
    /// The least and most with which the style is still itself, where the recipe says so.
    pub within: Option<[f64; 2]>,
}

impl EaseTable {
    /// The row of a place; all 0 where the recipe says nothing.
    pub fn row(&self, at: EaseAt) -> &EaseRow {
        &self.0[at]
    }

    /// The ease that the recipe gives, in cm.
    pub fn give(&self, at: EaseAt, sex: Sex) -> f64 {
        let row = self.row(at);
        by_sex(sex, row.women, row.men)
    }

    /// The least and most ease with which the style is still itself, in cm.
    pub fn within(&self, at: EaseAt) -> Option<[f64; 2]> {
        self.row(at).within
    }
}

/// The style of a recipe.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct StyleTable(EnumMap<Style, Option<StyleRow>>);

/// A width or length of style, in cm.
#[derive(Clone, Debug, PartialEq)]
pub struct StyleRow {
    /// For women.
    pub women: Proportion,
    /// For men.
    pub men: Proportion,
    /// The least and most that the draft is meant for, cm, where the recipe says so.
    pub within: Option<[f64; 2]>,
}

impl StyleTable {
    /// The row of a width or length; `None` where the recipe says nothing.
    pub fn row(&self, style: Style) -> Option<&StyleRow> {
        self.0[style].as_ref()
    }

    /// The width or length that the recipe gives, in cm; `None` where it says nothing.
    ///
    /// # Errors
    /// The measurement that the recipe names and `inputs` lacks.
    pub fn give(&self, style: Style, sex: Sex, inputs: &Inputs) -> Option<Result<f64, Reference>> {
        let row = self.row(style)?;
        let nothing_yet = Construction::default();
        let value = |proportion: &Proportion| proportion.value(inputs, &nothing_yet);
        Some(value(&row.women).and_then(|women| Ok(by_sex(sex, women, value(&row.men)?))))
    }
}

fn by_sex(sex: Sex, women: f64, men: f64) -> f64 {
    match sex {
        Sex::Female => women,
        Sex::Male => men,
        Sex::Unsaid => (women + men) / 2.0,
    }
}

/// How the drafted panels are trued.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Truing {
    /// Whether they are trued at all; a draft as printed in a book is not.
    pub on: bool,
    /// How far the crotch crossing leans from square, in radians: the front meets its inseam at 90 degrees and this
    /// more, the back at as much less.
    pub crossing_tilt: f64,
    /// The waist stays as the recipe draws it: its ends, its darts, its straight line.
    pub waist_as_drawn: bool,
    /// The back crotch point stays where the recipe has it, whether or not the inseams agree.
    pub inseam_as_drawn: bool,
}

impl Default for Truing {
    fn default() -> Self {
        Self {
            on: true,
            waist_as_drawn: false,
            inseam_as_drawn: false,
            crossing_tilt: CROSSING_TILT_DEGREES.to_radians(),
        }
    }
}

/// What the crossing leans where a recipe says nothing: square at both forks (common practice, no source).
const CROSSING_TILT_DEGREES: f64 = 0.0;
/// Beyond this the crotch would show a peak on one panel however it is sewn.
const MOST_TILT_DEGREES: f64 = 30.0;

/// Reads `[ease]`.
pub(super) fn read_ease(reader: &mut Reader<'_>, row: &Row<'_>) -> EaseTable {
    let mut table = EaseTable::default();
    row.only(reader, &EaseAt::ALL.iter().map(|at| at.key()).collect::<Vec<_>>());
    for at in EaseAt::ALL {
        if let Some(cell) = row.get(at.key())
            && let Some(ease) = read_ease_row(reader, &cell)
        {
            table.0[*at] = ease;
        }
    }
    table
}

fn read_ease_row(reader: &mut Reader<'_>, cell: &Cell<'_>) -> Option<EaseRow> {
    if !cell.value.get_ref().is_table() {
        return reader.length(cell).map(|ease| EaseRow { women: ease, men: ease, within: None });
    }
    let row = reader.row(cell, "ease")?;
    row.only(reader, &["women", "men", "within"]);
    let mut ease = |key| row.need(reader, key).and_then(|cell| reader.length(&cell));
    let (women, men) = (ease("women"), ease("men"));
    let within = match row.get("within") {
        None => None,
        Some(cell) => Some(read_range(reader, &cell)?),
    };
    let (women, men) = (women?, men?);
    if let (Some([least, most]), Some(cell)) = (within, row.get("within"))
        && ![women, men].iter().all(|ease| (least..=most).contains(ease))
    {
        reader.wrong(
            cell.value.span(),
            "the ease given lies outside its own range",
            "expected a range round it",
        );
    }
    Some(EaseRow { women, men, within })
}

/// `[least, most]`.
pub(super) fn read_range(reader: &mut Reader<'_>, cell: &Cell<'_>) -> Option<[f64; 2]> {
    let ends: Vec<_> = reader.list(cell, 2)?.iter().map(|end| reader.length(end)).collect();
    match ends.into_iter().collect::<Option<Vec<_>>>()?.as_slice() {
        [least, most] if least <= most => Some([*least, *most]),
        _ => {
            reader.wrong(
                cell.value.span(),
                format!("`{}` is not a range", cell.key),
                "expected `[least, most]`",
            );
            None
        }
    }
}

/// Reads `[style]`.
pub(super) fn read_style(reader: &mut Reader<'_>, row: &Row<'_>) -> StyleTable {
    let names = Names::of_the_body(reader.unit);
    let mut table = StyleTable::default();
    row.only(reader, &Style::ALL.iter().map(|style| style.key()).collect::<Vec<_>>());
    for style in Style::ALL {
        if let Some(cell) = row.get(style.key()) {
            table.0[*style] = read_style_row(reader, &cell, &names);
        }
    }
    table
}

fn read_style_row(reader: &mut Reader<'_>, cell: &Cell<'_>, names: &Names) -> Option<StyleRow> {
    if !cell.value.get_ref().is_table() {
        let alike = reader.proportion(cell, names)?;
        return Some(StyleRow { women: alike.clone(), men: alike, within: None });
    }
    let row = reader.row(cell, "style")?;
    row.only(reader, &["women", "men", "within"]);
    let mut length = |key| row.need(reader, key).and_then(|cell| reader.proportion(&cell, names));
    let (women, men) = (length("women"), length("men"));
    let within = row.get("within").map(|cell| read_range(reader, &cell).ok_or(())).transpose();
    Some(StyleRow { women: women?, men: men?, within: within.ok()? })
}

/// Reads `[truing]`.
pub(super) fn read_truing(reader: &mut Reader<'_>, row: &Row<'_>) -> Truing {
    let mut truing = Truing::default();
    row.only(reader, &["true", "crossing_tilt", "waist", "inseam"]);
    if let Some(on) = row.get("true").and_then(|cell| reader.flag(&cell)) {
        truing.on = on;
    }
    let mut as_drawn = |key| {
        let cell = row.get(key)?;
        reader.choice(&cell, &[("trued", false), ("as drawn", true)])
    };
    truing.waist_as_drawn = as_drawn("waist").unwrap_or_default();
    truing.inseam_as_drawn = as_drawn("inseam").unwrap_or_default();
    if let Some(cell) = row.get("crossing_tilt")
        && let Some(degrees) = reader.number(&cell)
    {
        if degrees.abs() > MOST_TILT_DEGREES {
            let label = format!("expected degrees from -{MOST_TILT_DEGREES} to {MOST_TILT_DEGREES}");
            reader.wrong(cell.value.span(), "`crossing_tilt` leans too far", label);
        }
        truing.crossing_tilt = degrees.to_radians();
    }
    truing
}
