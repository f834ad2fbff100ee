//! What each point of a trouser draft is for.

use super::Class;
use crate::{
    recipe::{BendRule, PointId, Reference, Step},
    terms::{Panel, Role, Word},
    voice::{sentence, spoken},
};

/// Why a panel is drafted where it is.
pub(super) fn of_panel(panel: Panel) -> &'static str {
    match panel {
        Panel::Front => {
            "The front is drafted first. It hangs plumb: its crease is the grain and stands at a right \
             angle to the level lines, and its centre line is all but upright."
        }
        Panel::Back => {
            "The back is drawn over the front, so that both have the same levels and the difference \
             between them is seen: the seat wants a leaning centre line, a higher waist and a longer \
             crotch extension."
        }
    }
}

/// What a role of a panel does.
pub(in crate::reading) fn of_role(panel: Panel, role: Role) -> &'static str {
    match (role, panel) {
        (Role::CentreWaist, Panel::Front) => {
            "the top of the centre front, where the waist meets it squarely so that left and right run on \
             into each other"
        }
        (Role::CentreWaist, Panel::Back) => {
            "the top of the centre back: it leans and stands higher than the front, since the way over the \
             seat is longer"
        }
        (Role::SideWaist, _) => "the top of the side seam; what hip less waist leaves over is taken off here",
        (Role::CentreHip, _) => "the centre line at the hip, from which the hip width is laid out",
        (Role::SideHip, _) => "the side seam at the hip: front and back together give the hip and its ease",
        (Role::CurveStart, _) => {
            "where the straight centre line turns into the crotch curve; above it left and right are sewn \
             flat together"
        }
        (Role::CrotchPoint, Panel::Front) => {
            "the front crotch point, where crotch seam and inseam meet: the extension goes round the \
             inside of the thigh"
        }
        (Role::CrotchPoint, Panel::Back) => {
            "the back crotch point: its extension is the longer one, for the depth of the seat"
        }
        (Role::SideKnee, _) => "the side seam at the knee",
        (Role::InnerKnee, _) => {
            "the inseam at the knee; as far from the crease as the side, so that the leg hangs straight"
        }
        (Role::SideHem, _) => "the side seam at the hem",
        (Role::InnerHem, _) => "the inseam at the hem; as far from the crease as the side",
    }
}

impl Class<'_> {
    /// What a step is for, where that teaches something: the part its point plays, what a length is taken for.
    pub(super) fn reason(&self, step: &Step) -> Option<String> {
        let mut reasons: Vec<String> = Vec::new();
        match step {
            Step::Point { id, .. } => {
                for panel in Panel::ALL {
                    reasons.extend(self.parts_played(*panel, *id));
                }
            }
            Step::Quantity { index, .. } => reasons.extend(self.taken_by_darts(Reference::Quantity(*index))),
            Step::Level { .. } => {}
        }
        (!reasons.is_empty()).then(|| sentence(&reasons.join("; ")))
    }

    /// That a length is what darts take.
    fn taken_by_darts(&self, wanted: Reference) -> Vec<String> {
        let mut reasons = Vec::new();
        for panel in Panel::ALL {
            let rules = self.rules(*panel);
            for (folds, one, more) in [(&rules.darts, "dart", "darts"), (&rules.pleats, "pleat", "pleats")] {
                if folds.iter().any(|fold| fold.intake.references().any(|it| it == wanted)) {
                    let take = if folds.len() == 1 {
                        format!("{one} takes")
                    } else {
                        format!("{more} take between them")
                    };
                    reasons.push(format!("by the recipe it is what the {panel} {take}"));
                }
            }
        }
        reasons
    }

    /// What a point is on a panel.
    fn parts_played(&self, panel: Panel, id: PointId) -> Vec<String> {
        let rules = self.rules(panel);
        let mut parts = Vec::new();
        // The front's crease is the back's as well; it is told once.
        if rules.crease == id && (panel == Panel::Front || self.rules(Panel::Front).crease != id) {
            parts.push("it lies on the crease, which is the grain".to_owned());
        }
        for role in Role::ALL.iter().filter(|role| rules.roles[**role] == id) {
            parts.push(format!("it is {}", of_role(panel, *role)));
        }
        if rules.vertical == id && rules.roles[Role::CentreHip] != id {
            parts.push(format!("the {panel} crotch extension is counted from its vertical"));
        }
        if rules.bend == BendRule::Guide(id) {
            parts.push(format!("the {panel} crotch curve is led through it"));
        }
        if rules.darts.iter().any(|dart| dart.on == id) {
            parts.push(self.dart_at(panel, id));
        }
        if rules.pleats.iter().any(|pleat| pleat.on == id) {
            parts.push(format!("a {panel} pleat is laid here"));
        }
        if rules.lines.iter().flatten().any(|end| *end == id) {
            parts.push(format!("a line of style across the {panel} ends here"));
        }
        parts
    }

    /// What becomes of the dart that the recipe stands at a point.
    fn dart_at(&self, panel: Panel, id: PointId) -> String {
        /// A dart so near to the point stands on it, cm.
        const ON_IT: f64 = 0.3;
        let place = self.draft().plan.construction.points[id.0].x - self.crease(panel);
        let middles: Vec<f64> =
            self.joined.panel(panel).darts.iter().map(|dart| dart.legs[0].midpoint(dart.legs[1]).x).collect();
        let recipe = self.rules(panel).darts.len();
        match middles.len() {
            0 => format!("the recipe stands a {panel} dart here; on this body none is sewn"),
            _ if middles.iter().any(|middle| (middle - place).abs() < ON_IT) => {
                format!("a {panel} dart stands here")
            }
            count if count > recipe => format!(
                "the recipe stands a {panel} dart here; on this body it is split into {count}, which stand to \
                 both sides of it"
            ),
            count if count < recipe => {
                format!(
                    "the recipe stands a {panel} dart here; on this body {count} is left, which stands elsewhere"
                )
            }
            _ => format!("the {panel} dart stands near here: where along the waist is told when it is drawn"),
        }
    }

    /// A point's name as the lesson says it.
    pub(super) fn point_name(&self, id: PointId) -> String {
        spoken(self.draft().recipe.point_name(id))
    }
}
