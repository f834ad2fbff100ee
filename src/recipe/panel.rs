//! What a recipe says of a panel beyond its points: which of them are its roles, and how its edges are bent.

use super::{
    Names, PointId, Proportion,
    read::Points,
    table::{Cell, Reader, Row},
};
use crate::terms::{EnumMap, Role, Word};

/// How a panel is drawn through the points of the construction.
#[derive(Clone, Debug, PartialEq)]
pub struct PanelPlan {
    /// A point on the crease: x = 0 of the panel.
    pub crease: PointId,
    /// The point of each role, by [`Role`].
    pub roles: EnumMap<Role, PointId>,
    /// A point on the vertical from which the crotch extension is measured; the centre hip where the recipe names none.
    pub vertical: PointId,
    /// How the crotch curve bends.
    pub bend: BendRule,
    /// How far side seam and inseam bow.
    pub bow: BowRule,
    /// The waist darts, from the crease or centre as the recipe lists them.
    pub darts: Vec<DartRule>,
    /// Lines drawn across the panel for its style, each from a point near the centre to one near the side: a yoke.
    pub lines: Vec<[PointId; 2]>,
}

/// How the crotch curve bends in the triangle of its end tangents.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BendRule {
    /// The handles' part of the way to the corner, over 0 and at most 0.98.
    Fullness(f64),
    /// A point that the curve passes through.
    Guide(PointId),
}

/// How far the seams bow out of the panel between their points; negative is hollowed into it.
#[derive(Clone, Debug, PartialEq)]
pub struct BowRule {
    /// The side seam between waist and hip.
    pub side_above_hip: Proportion,
    /// The inseam between crotch point and knee.
    pub inseam_above_knee: Proportion,
}

/// A dart in the waist.
#[derive(Clone, Debug, PartialEq)]
pub struct DartRule {
    /// The point on the waist under which it stands.
    pub on: PointId,
    /// Its width at the waist.
    pub intake: Proportion,
    /// Its length.
    pub length: Proportion,
}

/// The fullest bend that keeps a curve off its own corner.
const FULLEST_BEND: f64 = 0.98;
/// A panel takes two darts; a recipe may list a few more and leave the choice to size.
const MOST_DARTS: usize = 6;
/// Lines of style across one panel.
const MOST_LINES: usize = 6;

/// Reads `[front]` or `[back]`; `None` where anything in it is wrong.
pub(super) fn read_panel(
    reader: &mut Reader<'_>,
    row: &Row<'_>,
    points: &Points,
    names: &Names,
) -> Option<PanelPlan> {
    let roles = Role::ALL.iter().map(|role| role.key());
    let keys: Vec<&str> =
        ["crease"].into_iter().chain(roles).chain(["vertical", "bend", "bow", "dart", "line"]).collect();
    row.only(reader, &keys);
    let mut role = |key| row.need(reader, key).and_then(|cell| points.find(reader, &cell));
    let crease = role("crease");
    let found: Vec<Option<PointId>> = Role::ALL.iter().map(|of| role(of.key())).collect();
    let roles = found.into_iter().collect::<Option<Vec<_>>>().and_then(|roles| roles.try_into().ok());
    let roles: Option<EnumMap<Role, PointId>> = roles.map(EnumMap::from_array);
    let vertical = match row.get("vertical") {
        Some(cell) => points.find(reader, &cell),
        None => roles.map(|roles| roles[Role::CentreHip]),
    };
    let bend = row.need(reader, "bend").and_then(|cell| reader.row(&cell, "bend"));
    let bend = bend.and_then(|bend| read_bend(reader, &bend, points));
    let bow = match row.get("bow") {
        None => Some(BowRule {
            side_above_hip: Proportion::constant(0.0),
            inseam_above_knee: Proportion::constant(0.0),
        }),
        Some(cell) => reader.row(&cell, "bow").and_then(|bow| read_bow(reader, &bow, names)),
    };
    let darts = match row.get("dart") {
        None => Some(Vec::new()),
        Some(cell) => reader.list(&cell, MOST_DARTS).and_then(|list| {
            let darts: Vec<_> = list
                .iter()
                .map(|cell| {
                    let dart = reader.row(cell, "dart")?;
                    read_dart(reader, &dart, points, names)
                })
                .collect();
            darts.into_iter().collect()
        }),
    };
    let lines = match row.get("line") {
        None => Some(Vec::new()),
        Some(cell) => reader.list(&cell, MOST_LINES).and_then(|list| {
            let lines: Vec<_> = list.iter().map(|cell| read_line(reader, cell, points)).collect();
            lines.into_iter().collect()
        }),
    };
    Some(PanelPlan {
        crease: crease?,
        roles: roles?,
        vertical: vertical?,
        bend: bend?,
        bow: bow?,
        darts: darts?,
        lines: lines?,
    })
}

fn read_line(reader: &mut Reader<'_>, cell: &Cell<'_>, points: &Points) -> Option<[PointId; 2]> {
    let ends = reader.list(cell, 2)?;
    let [from, to] = ends.as_slice() else {
        reader.wrong(cell.value.span(), "a line has two ends", "expected the names of two points");
        return None;
    };
    let (from, to) = (points.find(reader, from), points.find(reader, to));
    Some([from?, to?])
}

fn read_bend(reader: &mut Reader<'_>, row: &Row<'_>, points: &Points) -> Option<BendRule> {
    if !row.only(reader, &["fullness", "guide"]) {
        return None;
    }
    match (row.get("fullness"), row.get("guide")) {
        (Some(cell), None) => {
            let fullness = reader.number(&cell)?;
            if fullness > 0.0 && fullness <= FULLEST_BEND {
                return Some(BendRule::Fullness(fullness));
            }
            let label = format!("expected a number over 0 and at most {FULLEST_BEND}");
            reader.wrong(cell.value.span(), "`fullness` leaves the triangle of the curve's tangents", label);
            None
        }
        (None, Some(cell)) => points.find(reader, &cell).map(BendRule::Guide),
        (None, None) | (Some(_), Some(_)) => {
            reader.wrong(
                row.span.clone(),
                "a bend goes by one rule",
                "expected either `fullness` or `guide`",
            );
            None
        }
    }
}

fn read_bow(reader: &mut Reader<'_>, row: &Row<'_>, names: &Names) -> Option<BowRule> {
    row.only(reader, &["side_above_hip", "inseam_above_knee"]);
    let mut bow = |key| match row.get(key) {
        None => Some(Proportion::constant(0.0)),
        Some(cell) => reader.proportion(&cell, names),
    };
    let (side, inseam) = (bow("side_above_hip"), bow("inseam_above_knee"));
    Some(BowRule { side_above_hip: side?, inseam_above_knee: inseam? })
}

fn read_dart(reader: &mut Reader<'_>, row: &Row<'_>, points: &Points, names: &Names) -> Option<DartRule> {
    row.only(reader, &["on", "intake", "length"]);
    let on = row.need(reader, "on").and_then(|cell| points.find(reader, &cell));
    let mut length = |key| row.need(reader, key).and_then(|cell| reader.proportion(&cell, names));
    let (intake, length) = (length("intake"), length("length"));
    Some(DartRule { on: on?, intake: intake?, length: length? })
}
