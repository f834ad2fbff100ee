//! From what a draft is refused for back to the recipe: the rows that make it, and what in the file would mend it.

use crate::{
    mistake::Notice,
    recipe::{PointId, Recipe},
    terms::{Level, Panel, Role, Word},
    unit::Unit,
    voice::spoken,
};

/// Where in the recipe that stands for which a draft is refused.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Whence {
    /// What it is about: `side seam`, `crotch join`.
    pub about: String,
    /// The points that make it, each with its row and line.
    pub made_by: String,
    /// What in the file mends it.
    pub mend: &'static str,
}

impl Whence {
    /// Of a notice; `None` where it is not a matter of the recipe.
    pub(super) fn of(recipe: &Recipe, notice: &Notice) -> Option<Self> {
        let of = |name| value(notice, name);
        let (panels, roles, mend) = rows(recipe, notice)?;
        let about = match notice.code {
            "seam-untrue" => spoken(&of("seam")),
            "join-untrue" => format!("{} join", spoken(&of("join"))),
            "outline-unsound" => format!("{} outline", of("panel")),
            "level-tight" => format!("{} width", of("level")),
            _ => "crotch seam".to_owned(),
        };
        let made: Vec<String> = panels
            .iter()
            .filter_map(|panel| {
                let plan = match panel {
                    Panel::Front => Some(&recipe.front),
                    Panel::Back => recipe.back.as_ref(),
                }?;
                let row =
                    |role: &Role| format!("{} {}", spoken(role.key()), row_of(recipe, plan.roles[*role]));
                let rows: Vec<String> = roles.iter().map(row).collect();
                Some(format!("{panel} {}", rows.join(", ")))
            })
            .collect();
        Some(Self { about, made_by: made.join("; "), mend })
    }
}

fn value(notice: &Notice, name: &str) -> String {
    let found = notice.said.values().find(|(known, _)| *known == name);
    found.map(|(_, value)| value.in_unit(Unit::Cm)).unwrap_or_default()
}

/// The panels and the points of them that make it, and what mends it.
fn rows(recipe: &Recipe, notice: &Notice) -> Option<(&'static [Panel], &'static [Role], &'static str)> {
    let of = |name| value(notice, name);
    let truing = recipe.truing;
    let waist_stays = !truing.on || truing.waist_as_drawn;
    let inseam_stays = !truing.on || truing.inseam_as_drawn;
    let both: &'static [Panel] = Panel::ALL;
    Some(match (notice.code, &*of("seam"), &*of("join")) {
        ("seam-untrue", "side_seam", _) => {
            let mend = if waist_stays {
                "truing slides the back side waist until they agree: leave `waist = \"as drawn\"` and `true = false` out of \
                 `[truing]`"
            } else {
                "look at the heights of these points"
            };
            (both, &[Role::SideWaist, Role::SideHip, Role::SideHem], mend)
        }
        ("seam-untrue", ..) => {
            let mend = if inseam_stays {
                "truing slides the back crotch point until they agree: leave `inseam = \"as drawn\"` and `true = false` out \
                 of `[truing]`"
            } else {
                "look at the heights of these points"
            };
            (both, &[Role::CrotchPoint, Role::InnerKnee, Role::InnerHem], mend)
        }
        ("join-untrue", _, "crotch") => {
            let mend = if truing.on {
                "look at `crossing_tilt` under `[truing]`, and where the curves start"
            } else {
                "truing turns the top of both inseams until the curves run on into each other: leave `true = false` out of \
                 `[truing]`"
            };
            (both, &[Role::CrotchPoint, Role::InnerKnee, Role::CurveStart], mend)
        }
        ("join-untrue", _, join) => {
            let (panels, roles): (&'static [Panel], &'static [Role]) = match join {
                "centre_front" => (&[Panel::Front], &[Role::CentreWaist, Role::CurveStart, Role::SideWaist]),
                "centre_back" => (&[Panel::Back], &[Role::CentreWaist, Role::CurveStart, Role::SideWaist]),
                _ => (both, &[Role::SideWaist, Role::SideHip, Role::CentreWaist]),
            };
            let mend = if waist_stays {
                "truing draws the waist so that it runs on: leave `waist = \"as drawn\"` and `true = false` out of \
                 `[truing]`"
            } else {
                "look at how far these points lie apart"
            };
            (panels, roles, mend)
        }
        ("outline-unsound", ..) => {
            let panels: &'static [Panel] = match &*of("panel") {
                "front" => &[Panel::Front],
                "back" => &[Panel::Back],
                _ => both,
            };
            let mend = "a curve that starts higher, a longer extension or a less full `bend` gives it room";
            (panels, &[Role::CurveStart, Role::CrotchPoint, Role::InnerKnee], mend)
        }
        ("crotch-short", ..) => (
            both,
            &[Role::CrotchPoint, Role::CurveStart, Role::CentreWaist],
            "a longer extension, a higher centre back or a fuller `bend` lengthens it; where the rows are the book's, it is \
             the book that is short on this body",
        ),
        ("level-tight", ..) => {
            let roles: &'static [Role] = match Level::from_key(&of("level")) {
                Some(Level::Waist) => &[Role::CentreWaist, Role::SideWaist],
                Some(Level::Hip) => &[Role::CentreHip, Role::SideHip],
                Some(Level::Thigh | Level::Crotch) => &[Role::CrotchPoint, Role::SideHip, Role::SideKnee],
                _ => &[Role::InnerKnee, Role::SideKnee],
            };
            (
                both,
                roles,
                "an ease in the sums of these rows makes it wider; the least is `within` under `[ease]`",
            )
        }
        _ => return None,
    })
}
/// The name of a point with the row that makes it: `` `fork'` (row 17, line 46)``.
fn row_of(recipe: &Recipe, point: PointId) -> String {
    let name = recipe.point_name(point);
    match recipe.row_of(point) {
        Some((row, line)) => format!("`{name}` (row {row}, line {line})"),
        None if name == recipe.start => format!("`{name}` (the start)"),
        None => format!("`{name}` (marked by the program)"),
    }
}
