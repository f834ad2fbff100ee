//! The finished draft and the record of how it came about.

use std::{borrow::Cow, sync::Arc};

use super::{
    PanelShape, Shape,
    drop::{Asked, lowered},
    heeded, moved,
    plan::Plan,
    truing::shape,
};
use crate::{
    adjust::Parameters,
    body::Body,
    mistake::{Mistake, Mistakes, Notice},
    order::{Adjustment, Order},
    recipe::Recipe,
    terms::{FitKind, Level, Panel, Role, Side, Style, Word},
    voice::{length, lengths},
};

/// One body's trousers, drafted and trued, with everything that led to them.
#[derive(Clone, Debug)]
pub struct Draft {
    /// The label of the body.
    pub name: String,
    /// Which leg it is for.
    pub side: Side,
    /// The recipe.
    pub recipe: Arc<Recipe>,
    /// How the fit parameters were found.
    pub fit: FitKind,
    /// The body.
    pub body: Body,
    /// The recipe compiled against the body, with its construction points.
    pub plan: Plan,
    /// The fit parameters in force.
    pub parameters: Parameters,
    /// Those that somebody gave, and who.
    pub adjustments: Vec<Adjustment>,
    /// The trued panels.
    pub shape: Shape,
    /// How far below the measured waist the panels are cut.
    drop: Drop,
    /// What a person should know about how it was drafted.
    pub notices: Vec<Notice>,
}

/// A waist drop, and who asked for it.
#[derive(Clone, Copy, Debug)]
struct Drop {
    drop: f64,
    asked: Asked,
}

/// One step of the record.
#[derive(Clone, Debug, PartialEq)]
pub struct Step<'a> {
    /// The panel it belongs to.
    pub panel: Panel,
    /// Its place in the record, from 1.
    pub number: usize,
    /// What is done.
    pub title: &'a str,
    /// By which rule, as the trade writes it.
    pub rule: Cow<'a, str>,
    /// What the rule comes to for this body, cm.
    pub value: Option<f64>,
    /// The points it makes or moves.
    pub points: Vec<&'a str>,
}

/// Drafts what a measurement file orders, by a recipe, with the fit parameters of the file alone.
///
/// # Errors
/// When the measurements are no body's, when the file has two legs of its own, or when the recipe and
/// the body make no trouser leg: see [`Body::resolve`] and [`Plan::new`].
pub fn draft(order: &Order, recipe: &Arc<Recipe>) -> Result<Draft, Mistakes> {
    refuse_two_legs(order)?;
    let (body, mut notices) = Body::resolve(&order.body)?;
    let mut plan = Plan::new(recipe, &body, &order.trousers)?;
    let adjustments: Vec<Adjustment> =
        order.adjustments.iter().filter(|it| it.value != it.key.about().default).copied().collect();
    let parameters = adjustments.iter().fold(Parameters::default(), |all, it| all.with(it.key, it.value));
    let drop = match order.trousers.style[Style::WaistDrop] {
        Some(drop) => Drop { drop, asked: Asked::ByTheFile },
        None => Drop { drop: plan.inputs.style[Style::WaistDrop].unwrap_or(0.0), asked: Asked::ByTheRecipe },
    };
    notices.append(&mut plan.notices);
    notices.extend(heeded::notices(recipe, &order.trousers, &plan));
    if recipe.one_piece || !recipe.is_shipped() {
        let plain = shape(&plan, &Parameters::default());
        notices.extend(moved::notices(recipe, &plan, &plain));
        notices.extend(moved::one_piece(recipe, &plain));
    }
    let (shape, dropped) = lowered(shape(&plan, &parameters), drop.drop, drop.asked)?;
    notices.extend(dropped);
    Ok(Draft {
        name: order.name.clone().unwrap_or_else(|| "body".to_owned()),
        side: Side::Both,
        recipe: Arc::clone(recipe),
        fit: FitKind::Proportional,
        body,
        plan,
        parameters,
        adjustments,
        shape,
        drop,
        notices,
    })
}

/// One draft is for one leg, or for two that are alike.
fn refuse_two_legs(order: &Order) -> Result<(), Mistakes> {
    if order.has_two_legs() {
        let text = "the file has a left and a right leg of its own, and one draft was asked for";
        return Err(Mistake::new(text).help("`breeks draft` drafts both").into());
    }
    Ok(())
}

/// The back crotch point lies this much below the crotch line at the least and the most, cm.
const ORDINARY_DROP: (f64, f64) = (-0.5, 2.0);

impl Draft {
    /// How far the trued back crotch point lies below the crotch line, cm.
    pub fn back_drop(&self) -> f64 {
        self.shape.back.roles[Role::CrotchPoint].y - self.shape.levels[Level::Crotch]
    }

    /// The draft with the parameters that a fit found, in the place of those it has of the same key.
    ///
    /// # Errors
    /// When the waist cannot be dropped as the file asks.
    pub fn fitted(mut self, found: impl IntoIterator<Item = Adjustment>) -> Result<Self, Mistakes> {
        for it in found {
            self.adjustments.retain(|old| old.key != it.key);
            if it.value != 0.0 {
                self.adjustments.push(it);
            }
        }
        self.adjustments.sort_by_key(|it| it.key);
        self.parameters =
            self.adjustments.iter().fold(Parameters::default(), |all, it| all.with(it.key, it.value));
        self.fit = FitKind::Measured;
        self.shape = lowered(shape(&self.plan, &self.parameters), self.drop.drop, self.drop.asked)?.0;
        Ok(self)
    }

    /// The same body by the recipe alone: trued, without any fit parameter, its waist where it was measured.
    #[must_use]
    pub fn plain(&self) -> Self {
        let parameters = Parameters::default();
        Self {
            parameters,
            adjustments: Vec::new(),
            shape: shape(&self.plan, &parameters),
            drop: Drop { drop: 0.0, ..self.drop },
            ..self.clone()
        }
    }

    /// The panels without any fit parameter, cut at the waist at which these are cut; `None` where that leaves too little
    /// of them.
    pub fn plain_as_cut(&self) -> Option<Shape> {
        lowered(shape(&self.plan, &Parameters::default()), self.drop.drop, self.drop.asked)
            .ok()
            .map(|(shape, _)| shape)
    }

    /// The panels as the recipe joins its points, before anything is trued or moved by a fit parameter.
    pub fn joined(&self) -> Shape {
        let mut plan = self.plan.clone();
        (plan.front.printed, plan.back.printed) = (true, true);
        shape(&plan, &Parameters::default())
    }

    /// Says when the trued back crotch point lies where none should.
    pub fn back_drop_notice(&self) -> Option<Notice> {
        let drop = self.back_drop();
        (drop < ORDINARY_DROP.0 || drop > ORDINARY_DROP.1).then(|| {
            Notice::mind(
                "back-drop",
                "the back crotch point had to lie {drop} below the crotch line for the inseams to agree; {ordinary} is \
                 ordinary: look at the back of the thigh on the toile",
            )
            .with("drop", length(drop))
            .with("ordinary", lengths(ORDINARY_DROP))
        })
    }

    /// The record: the recipe's steps with this body's values, then what truing did.
    pub fn steps(&self) -> Vec<Step<'_>> {
        let plan = &self.plan;
        let mut steps: Vec<Step<'_>> = Vec::with_capacity(self.recipe.steps.len() + 4);
        for step in &self.recipe.steps {
            let entry = step.entry();
            steps.push(Step {
                panel: entry.panel,
                number: steps.len() + 1,
                title: &entry.title,
                rule: Cow::Borrowed(&entry.rule),
                value: step.value(&plan.inputs, &plan.construction),
                points: vec![&entry.makes],
            });
        }
        if self.recipe.truing.on {
            self.record_parameters(&mut steps);
            self.record_truing(&mut steps);
        }
        steps
    }

    /// One step for each parameter and panel it moves, with the roles that it moves there.
    fn record_parameters<'a>(&'a self, steps: &mut Vec<Step<'a>>) {
        /// A role that moves less than this is not worth a pencil mark, cm.
        const SEEN: f64 = 0.005;
        let with = shape(&self.plan, &self.parameters);
        for (key, value) in self.parameters.set() {
            let without = shape(&self.plan, &self.parameters.without(key));
            for panel in Panel::ALL {
                let (with, without) = (with.panel(*panel), without.panel(*panel));
                let moved = |role: &&Role| with.roles[**role].distance(without.roles[**role]) > SEEN;
                let points: Vec<&str> = Role::ALL.iter().filter(moved).map(|role| role.key()).collect();
                if points.is_empty() {
                    continue;
                }
                let about = key.about();
                let rule = Cow::Owned(format!("{key} = {value} {}: {}", about.unit.symbol(), about.moves));
                let number = steps.len() + 1;
                steps.push(Step {
                    panel: *panel,
                    number,
                    title: about.title,
                    rule,
                    value: Some(value),
                    points,
                });
            }
        }
    }

    fn record_truing<'a>(&'a self, steps: &mut Vec<Step<'a>>) {
        let plan = &self.plan;
        let mut record = |panel, title, rule: String, value, points| {
            let number = steps.len() + 1;
            steps.push(Step { panel, number, title, rule: Cow::Owned(rule), value: Some(value), points });
        };
        let drop = self.back_drop() - (plan.back.roles[Role::CrotchPoint].y - plan.levels[Level::Crotch]);
        let trued_side =
            |panel: &PanelShape| panel.cut_off.map_or(panel.roles[Role::SideWaist], |cut| cut.side_waist);
        if !plan.inseam_as_drawn {
            record(
                Panel::Back,
                "the back crotch point slides until the inseams agree",
                format!("back inseam = front inseam - {}", plan.inseam_stretch),
                drop,
                vec!["crotch_point"],
            );
        }
        if plan.waist_as_drawn {
            return;
        }
        record(
            Panel::Back,
            "the back side waist slides along its seam until the side seams agree",
            "back side seam = front side seam".to_owned(),
            trued_side(&self.shape.back).y - plan.back.roles[Role::SideWaist].y,
            vec!["side_waist"],
        );
        for (shape, planned) in [(&self.shape.front, &plan.front), (&self.shape.back, &plan.back)] {
            let drawn: f64 = shape.darts.iter().map(super::Dart::intake).sum();
            let intake = shape.cut_off.map_or(drawn, |cut| cut.intake);
            record(
                shape.panel,
                "the waist is drawn with its darts closed; the darts give or take what its curve changed",
                format!("darts {:.2} as planned", planned.intake),
                intake,
                vec!["centre_waist", "side_waist"],
            );
        }
        for panel in [&self.shape.front, &self.shape.back] {
            if let Some(cut) = panel.cut_off {
                record(
                    panel.panel,
                    "the top is cut below the measured waist, as much along the centre as along the side",
                    format!("waist drop {:.1}", cut.drop),
                    cut.drop,
                    vec!["centre_waist", "side_waist"],
                );
            }
        }
    }
}
