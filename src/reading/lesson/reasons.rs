//! What each point of a trouser draft is for.

use super::{Class, label};
use crate::{
    recipe::{BendRule, PointId, Reference, Step, Track},
    terms::{Panel, Role, Word},
    voice::{listed, sentence, spoken},
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
    /// What a step is for: the role of its point, and what uses it later.
    pub(super) fn reason(&self, step: &Step) -> String {
        let mut reasons: Vec<String> = Vec::new();
        match step {
            Step::Point { id, .. } => {
                for panel in Panel::ALL {
                    reasons.extend(self.parts_played(*panel, *id));
                }
                let users = self.users(|later| match later {
                    Step::Point { rule, .. } => rule.points().any(|point| point == *id),
                    Step::Quantity { rule, .. } | Step::Level { rule, .. } => rule.points().contains(id),
                });
                if !users.is_empty() {
                    let verb = if users.len() == 1 { "starts" } else { "start" };
                    reasons.push(format!("{} {verb} from it", listed(&users)));
                }
            }
            Step::Quantity { index, .. } => reasons.extend(self.needed_by(Reference::Quantity(*index))),
            Step::Level { index, .. } => reasons.extend(self.needed_by(Reference::Line(*index))),
        }
        sentence(&reasons.join("; "))
    }

    /// What a length is for: the steps that reckon with it, and the darts.
    fn needed_by(&self, wanted: Reference) -> Vec<String> {
        let mut reasons = Vec::new();
        let users = self.users(|later| match later {
            Step::Point { rule, .. } => {
                let on_line = |index| Reference::Line(index) == wanted;
                rule.proportions().any(|rule| rule.references().any(|it| it == wanted))
                    || rule.tracks().filter_map(Track::level).any(on_line)
            }
            Step::Quantity { rule, .. } | Step::Level { rule, .. } => rule.references().contains(&wanted),
        });
        if !users.is_empty() {
            let verb = if users.len() == 1 { "needs" } else { "need" };
            reasons.push(format!("{} {verb} it", listed(&users)));
        }
        for panel in Panel::ALL {
            let rules = self.rules(*panel);
            for (folds, one, more) in [(&rules.darts, "dart", "darts"), (&rules.pleats, "pleat", "pleats")] {
                if folds.iter().any(|fold| fold.intake.references().any(|it| it == wanted)) {
                    let take = if folds.len() == 1 {
                        format!("{one} takes")
                    } else {
                        format!("{more} take between them")
                    };
                    reasons.push(format!("it is what the {panel} {take}"));
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
            parts.push(format!("a {panel} dart stands here"));
        }
        if rules.pleats.iter().any(|pleat| pleat.on == id) {
            parts.push(format!("a {panel} pleat is laid here"));
        }
        if rules.lines.iter().flatten().any(|end| *end == id) {
            parts.push(format!("a line of style across the {panel} ends here"));
        }
        parts
    }

    /// The steps that a test holds for, as the lesson names them.
    fn users(&self, holds: impl Fn(&Step) -> bool) -> Vec<String> {
        /// More are not told one by one.
        const MOST: usize = 4;
        let users: Vec<String> =
            self.draft().recipe.steps.iter().filter(|step| holds(step)).map(label).collect();
        match users.len() {
            0..=MOST => users,
            more => {
                let mut few: Vec<String> = users.into_iter().take(MOST - 1).collect();
                few.push(format!("{} more steps", more + 1 - MOST));
                few
            }
        }
    }

    /// A point's name as the lesson says it.
    pub(super) fn point_name(&self, id: PointId) -> String {
        spoken(self.draft().recipe.point_name(id))
    }
}
