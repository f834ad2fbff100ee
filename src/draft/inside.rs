//! From the lines of a draft that includes its seams to the sewing lines inside them.

use kurbo::{Point, Vec2};

use super::{panel::Roles, plan::centre_at};
use crate::{
    curve::unit,
    recipe::SeamsIncluded,
    terms::{Edge, Role},
};

/// Edges that turn by less than this run on straight, radians.
const STRAIGHT_ON: f64 = 1e-6;

/// The roles on the sewing line: every edge lies so far inside as its seam is wide, and they meet in the corners.
pub(super) fn inside(roles: &Roles, seams: &SeamsIncluded) -> Roles {
    let at = |role: Role| roles[role];
    // Where the end tangents of the crotch curve cross: the centre line produced, and the level of the crotch point.
    let corner = centre_at(roles, at(Role::CrotchPoint).y);
    let outline: [(Point, Edge); 9] = [
        (at(Role::CentreWaist), Edge::Waist),
        (at(Role::SideWaist), Edge::SideSeam),
        (at(Role::SideHip), Edge::SideSeam),
        (at(Role::SideKnee), Edge::SideSeam),
        (at(Role::SideHem), Edge::Hem),
        (at(Role::InnerHem), Edge::Inseam),
        (at(Role::InnerKnee), Edge::Inseam),
        (at(Role::CrotchPoint), Edge::CrotchSeam),
        (corner, Edge::CrotchSeam),
    ];
    let moved = |index: usize| {
        let (before, edge_before) = outline[(index + outline.len() - 1) % outline.len()];
        let (point, edge) = outline[index];
        let (after, _) = outline[(index + 1) % outline.len()];
        let (arrives, leaves) = (unit(point - before), unit(after - point));
        let [a, b] = [(arrives, edge_before), (leaves, edge)]
            .map(|(along, edge)| point + inwards(along) * seams.along(edge));
        let turn = arrives.cross(leaves);
        if turn.abs() < STRAIGHT_ON { a.midpoint(b) } else { a + arrives * ((b - a).cross(leaves) / turn) }
    };
    let mut inside = *roles;
    for (index, role) in [
        Role::CentreWaist,
        Role::SideWaist,
        Role::SideHip,
        Role::SideKnee,
        Role::SideHem,
        Role::InnerHem,
        Role::InnerKnee,
        Role::CrotchPoint,
    ]
    .into_iter()
    .enumerate()
    {
        inside[role] = moved(index);
    }
    let centre = inwards(unit(at(Role::CentreWaist) - at(Role::CurveStart))) * seams.along(Edge::CrotchSeam);
    inside[Role::CurveStart] = at(Role::CurveStart) + centre;
    inside[Role::CentreHip] = centre_at(&inside, at(Role::CentreHip).y);
    inside
}

/// A guide point of the crotch curve on the sewing line.
pub(super) fn guide_inside(guide: Point, roles: &Roles, seams: &SeamsIncluded) -> Point {
    let corner = centre_at(roles, roles[Role::CrotchPoint].y);
    guide + unit(corner - guide) * seams.along(Edge::CrotchSeam)
}

/// Into the panel, for an outline that goes from the centre to the side, down and back up.
fn inwards(along: Vec2) -> Vec2 {
    Vec2::new(-along.y, along.x)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{mistake::Source, recipe::Recipe, terms::Word};

    fn seams(text: &str) -> SeamsIncluded {
        let sound = include_str!("../../tests/recipe/sound.toml");
        let with = format!("{sound}\n[seams_included]\n{text}");
        Recipe::parse(&Source::new("sound.toml", with)).unwrap_or_else(|all| panic!("{all}")).seams
    }

    /// A box of a panel: every edge level or upright.
    fn boxed() -> Roles {
        let mut roles = Roles::default();
        for (role, at) in [
            (Role::CentreWaist, (-8.0, 0.0)),
            (Role::SideWaist, (12.0, 0.0)),
            (Role::CentreHip, (-8.0, 20.0)),
            (Role::SideHip, (12.0, 20.0)),
            (Role::CurveStart, (-8.0, 22.0)),
            (Role::CrotchPoint, (-14.0, 28.0)),
            (Role::SideKnee, (12.0, 60.0)),
            (Role::InnerKnee, (-14.0, 60.0)),
            (Role::SideHem, (12.0, 100.0)),
            (Role::InnerHem, (-14.0, 100.0)),
        ] {
            roles[role] = at.into();
        }
        roles
    }

    #[test]
    fn every_edge_moved_in_by_its_own_seam() {
        let seams = seams("waist = 1\nside_seam = 1.5\nhem = 4\ninseam = 2\ncrotch_seam = 0.5");
        let moved = inside(&boxed(), &seams);
        for (role, at) in [
            (Role::CentreWaist, (-7.5, 1.0)),
            (Role::SideWaist, (10.5, 1.0)),
            (Role::CentreHip, (-7.5, 20.0)),
            (Role::SideHip, (10.5, 20.0)),
            (Role::CurveStart, (-7.5, 22.0)),
            (Role::CrotchPoint, (-12.0, 28.5)),
            (Role::SideKnee, (10.5, 60.0)),
            (Role::InnerKnee, (-12.0, 60.0)),
            (Role::SideHem, (10.5, 96.0)),
            (Role::InnerHem, (-12.0, 96.0)),
        ] {
            assert!(moved[role].distance(at.into()) < 1e-9, "{}: {:?}", role.key(), moved[role]);
        }
    }

    #[test]
    fn guide_moved_away_from_the_corner_of_the_curve() {
        // The corner lies at (-8, 28), the guide 3 along the diagonal out of it.
        let long = 3.0_f64 / 2.0_f64.sqrt();
        let guide = Point::new(-8.0 - long, 28.0 - long);
        let moved = guide_inside(guide, &boxed(), &seams("crotch_seam = 1"));
        assert!((moved.distance(Point::new(-8.0, 28.0)) - 2.0).abs() < 1e-9, "{moved:?}");
    }
}
