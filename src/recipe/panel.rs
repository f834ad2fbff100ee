//! What a recipe says of a panel beyond its points: which of them are its roles, and how its edges are bent.

use super::{
    Names, PointId, Proportion,
    implied::Implying,
    read::Points,
    rules::PANEL_KEYS,
    steps::read_ends,
    table::{Cell, Reader, Row},
};
use crate::terms::{EnumMap, Level, Panel, Role, Word};

/// How a panel is drawn through the points of the construction.
#[derive(Clone, Debug, PartialEq)]
pub struct PanelRules {
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
    /// The pleats of the waist.
    pub pleats: Vec<DartRule>,
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

/// How far the seams stand out of the panel, in the middle between two of their points; negative is hollowed into it.
/// `None` where the recipe says nothing and the seam runs as smoothly as its points let it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BowRule {
    /// The side seam between waist and hip.
    pub side_above_hip: Option<Proportion>,
    /// The side seam between hip and knee.
    pub side_below_hip: Option<Proportion>,
    /// The inseam between crotch point and knee.
    pub inseam_above_knee: Option<Proportion>,
}

impl BowRule {
    /// Each with its key.
    pub fn by_key(&self) -> impl Iterator<Item = (&'static str, &Option<Proportion>)> {
        [
            ("side_above_hip", &self.side_above_hip),
            ("side_below_hip", &self.side_below_hip),
            ("inseam_above_knee", &self.inseam_above_knee),
        ]
        .into_iter()
    }

    /// What the recipe says of them.
    pub fn given(&self) -> impl Iterator<Item = &Proportion> {
        self.by_key().filter_map(|(_, bow)| bow.as_ref())
    }
}

/// A dart in the waist, or a pleat.
#[derive(Clone, Debug, PartialEq)]
pub struct DartRule {
    /// The point on the waist under which it stands.
    pub on: PointId,
    /// Its width at the waist.
    pub intake: Proportion,
    /// Its length; of a pleat, how far its folds are marked.
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
    implying: &mut Implying<'_, '_, '_>,
    panel: Panel,
    row: &Row<'_>,
) -> Option<PanelRules> {
    let roles = Role::ALL.iter().map(|role| role.key());
    let keys: Vec<&str> = PANEL_KEYS.iter().map(|key| key.name).chain(roles).collect();
    row.only(implying.reader, &keys);
    let crease = read_role(implying, row, "crease");
    let mut roles: EnumMap<Role, Option<PointId>> = EnumMap::default();
    // Those that others can be found from come first.
    for role in Role::ALL.iter().filter(|role| level_of(**role).is_none()) {
        roles[*role] = read_role(implying, row, role.key());
    }
    for role in Role::ALL {
        if let Some((level, ends)) = level_of(*role) {
            let plain = ends.and_then(|[first, second]| Some([roles[first]?, roles[second]?]));
            roles[*role] = read_levelled(implying, row, panel, *role, level, plain);
        }
    }
    let roles = roles.into_values().collect::<Option<Vec<_>>>().and_then(|roles| roles.try_into().ok());
    let roles: Option<EnumMap<Role, PointId>> = roles.map(EnumMap::from_array);
    let (reader, points, names) = (&mut *implying.reader, &*implying.known.points, &*implying.known.names);
    let vertical = match row.get("vertical") {
        Some(cell) => points.find(reader, &cell),
        None => roles.map(|roles| roles[Role::CentreHip]),
    };
    let bend = row.need(reader, "bend").and_then(|cell| reader.row(&cell, "bend"));
    let bend = bend.and_then(|bend| {
        bend.only(reader, &["fullness", "guide"]).then(|| read_bend_rule(reader, &bend, points)).flatten()
    });
    let bow = match row.get("bow") {
        None => Some(BowRule::default()),
        Some(cell) => reader.row(&cell, "bow").and_then(|bow| read_bow(reader, &bow, names)),
    };
    let mut folds = |key: &str, name| match row.get(key) {
        None => Some(Vec::new()),
        Some(cell) => reader.list(&cell, MOST_DARTS).and_then(|list| {
            let darts: Vec<_> = list
                .iter()
                .map(|cell| {
                    let dart = reader.row(cell, name)?;
                    read_dart(reader, &dart, points, names)
                })
                .collect();
            darts.into_iter().collect()
        }),
    };
    let (darts, pleats) = (folds("dart", "dart"), folds("pleat", "pleat"));
    let lines = match row.get("line") {
        None => Some(Vec::new()),
        Some(cell) => reader.list(&cell, MOST_LINES).and_then(|list| {
            let lines: Vec<_> = list.iter().map(|cell| read_line(reader, cell, points)).collect();
            lines.into_iter().collect()
        }),
    };
    Some(PanelRules {
        crease: crease?,
        roles: roles?,
        vertical: vertical?,
        bend: bend?,
        bow: bow?,
        darts: darts?,
        pleats: pleats?,
        lines: lines?,
    })
}

/// The level on which a role lies by its meaning, and the roles between which its line runs straight where the recipe
/// draws no such level.
fn level_of(role: Role) -> Option<(Level, Option<[Role; 2]>)> {
    match role {
        Role::CentreHip => Some((Level::Hip, Some([Role::CentreWaist, Role::CurveStart]))),
        Role::SideHip => Some((Level::Hip, None)),
        Role::SideKnee => Some((Level::Knee, Some([Role::SideHip, Role::SideHem]))),
        Role::InnerKnee => Some((Level::Knee, Some([Role::CrotchPoint, Role::InnerHem]))),
        _ => None,
    }
}

fn read_role(implying: &mut Implying<'_, '_, '_>, row: &Row<'_>, key: &str) -> Option<PointId> {
    let cell = row.need(implying.reader, key)?;
    implying.known.points.find(implying.reader, &cell)
}

/// A role on a level: a point, two points whose line meets the level, or nothing where the recipe draws no such level.
fn read_levelled(
    implying: &mut Implying<'_, '_, '_>,
    row: &Row<'_>,
    panel: Panel,
    role: Role,
    level: Level,
    plain: Option<[PointId; 2]>,
) -> Option<PointId> {
    match row.get(role.key()) {
        Some(cell) if cell.value.get_ref().is_array() => {
            let ends = read_ends(implying.reader, &cell, implying.known.points)?;
            implying.meeting(panel, role.key(), ends, level)
        }
        None if !implying.draws(level) && plain.is_some() => {
            implying.meeting(panel, role.key(), plain?, level)
        }
        _ => read_role(implying, row, role.key()),
    }
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

/// `fullness` or `guide`.
pub(super) fn read_bend_rule(reader: &mut Reader<'_>, row: &Row<'_>, points: &Points) -> Option<BendRule> {
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
    row.only(reader, &["side_above_hip", "side_below_hip", "inseam_above_knee"]);
    let mut bow = |key| match row.get(key) {
        None => Some(None),
        Some(cell) => reader.proportion(&cell, names).map(Some),
    };
    let (above, below) = (bow("side_above_hip"), bow("side_below_hip"));
    let inseam = bow("inseam_above_knee");
    Some(BowRule { side_above_hip: above?, side_below_hip: below?, inseam_above_knee: inseam? })
}

fn read_dart(reader: &mut Reader<'_>, row: &Row<'_>, points: &Points, names: &Names) -> Option<DartRule> {
    row.only(reader, &["on", "intake", "length"]);
    let on = row.need(reader, "on").and_then(|cell| points.find(reader, &cell));
    let mut length = |key| row.need(reader, key).and_then(|cell| reader.proportion(&cell, names));
    let (intake, length) = (length("intake"), length("length"));
    Some(DartRule { on: on?, intake: intake?, length: length? })
}
