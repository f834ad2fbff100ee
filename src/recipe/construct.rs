//! A recipe carried out on one body.

use std::collections::BTreeMap;

use kurbo::Point;

use super::{
    Recipe, Reference,
    step::{Fault, within_reach},
};
use crate::{
    mistake::Mistake,
    terms::{EaseAt, EnumMap, Measurement, Style, Word},
    voice::{Sentence, length},
};

/// What a recipe is carried out on; lengths in cm.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Inputs {
    /// The body.
    pub measurements: EnumMap<Measurement, Option<f64>>,
    /// Ease.
    pub ease: EnumMap<EaseAt, f64>,
    /// Widths and lengths of style.
    pub style: EnumMap<Style, Option<f64>>,
    /// The recipe's own inputs, by name; its default holds for one that is not here.
    pub asks: BTreeMap<String, f64>,
}

/// The drawn lines and points of a recipe on one body, in cm: x towards the side, y down from the waist line.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Construction {
    /// By [`PointId`](super::PointId); the first is the recipe's start.
    pub points: Vec<Point>,
    /// The y of each level, by its place in [`Recipe::lines`]; the first is the waist line.
    pub lines: Vec<f64>,
    /// In the order in which the steps make them.
    pub quantities: Vec<f64>,
    /// By place in [`Recipe::asks`].
    pub asks: Vec<f64>,
}

impl Construction {
    /// The value of a reference, if it is known by now.
    pub fn value_of(&self, reference: Reference, inputs: &Inputs) -> Option<f64> {
        match reference {
            Reference::Body(measurement) => inputs.measurements[measurement],
            Reference::Ease(at) => Some(inputs.ease[at]),
            Reference::Style(style) => inputs.style[style],
            Reference::Ask(index) => self.asks.get(index).copied(),
            Reference::Line(index) => self.lines.get(index).copied(),
            Reference::Quantity(index) => self.quantities.get(index).copied(),
        }
    }
}

impl Recipe {
    /// Draws the level lines, then takes every step in order.
    ///
    /// # Errors
    /// When a measurement or a width of style that the recipe names is missing, or when a step has no answer: an
    /// oblique measure too short for its line, lines that shall meet and do not, two points in one place where
    /// a direction is wanted, a length that no trouser has.
    pub fn construct(&self, inputs: &Inputs) -> Result<Construction, Mistake> {
        self.construct_until(inputs, self.steps.len())
    }

    /// The same up to a step, counted from 1 in the order of the recipe: what a hand has drawn by then.
    ///
    /// # Errors
    /// As [`Recipe::construct`].
    pub fn construct_until(&self, inputs: &Inputs, steps: usize) -> Result<Construction, Mistake> {
        let mut made = Construction {
            points: Vec::with_capacity(self.point_names.len()),
            lines: Vec::with_capacity(self.lines.len()),
            quantities: Vec::with_capacity(self.quantities),
            asks: self
                .asks
                .iter()
                .map(|ask| inputs.asks.get(&ask.name).copied().unwrap_or(ask.default))
                .collect(),
        };
        for line in self.lines.iter().filter(|line| !line.by_step) {
            let level = line.at.value(inputs, &made).and_then(within_reach);
            made.lines.push(level.map_err(|fault| self.no_answer(&line.name, &line.place, &fault))?);
        }
        made.points.push(Point::ORIGIN);
        for step in self.steps.iter().take(steps) {
            let taken = step.take(inputs, &mut made);
            taken.map_err(|fault| self.no_answer(&step.entry().makes, &step.entry().place, &fault))?;
        }
        Ok(made)
    }

    fn no_answer(&self, makes: &str, place: &std::ops::Range<usize>, fault: &Fault) -> Mistake {
        let (title, label, remedy) = match fault {
            Fault::Missing(Reference::Body(measurement)) => (
                format!("recipe `{}` needs the measurement `{}`", self.name, measurement.key()),
                "used here".into(),
                Some(format!("add `{}` to the measurements", measurement.key())),
            ),
            Fault::Missing(Reference::Style(style)) => (
                format!("recipe `{}` needs the style `{}`", self.name, style.key()),
                "used here".into(),
                Some(format!("add `{}` to the style, or a default to the recipe", style.key())),
            ),
            Fault::Missing(_) => (
                format!("`{makes}` of recipe `{}` uses a length that is not known yet", self.name),
                "used here".into(),
                None,
            ),
            Fault::Short { span, away } => (
                format!("`{makes}` of recipe `{}` cannot be reached on this body", self.name),
                Sentence::new("{span} do not reach a line {away} away")
                    .with("span", length(*span))
                    .with("away", length(*away)),
                None,
            ),
            Fault::Apart { first, second, away } => (
                format!("`{makes}` of recipe `{}` cannot be reached on this body", self.name),
                Sentence::new("arcs of {first} and {second} do not meet, their points lie {away} apart")
                    .with("first", length(*first))
                    .with("second", length(*second))
                    .with("away", length(*away)),
                None,
            ),
            Fault::NoReach { reach } => (
                format!("`{makes}` of recipe `{}` cannot be reached on this body", self.name),
                Sentence::new("{reach} is nothing to swing").with("reach", length(*reach)),
                Some("the sum of this length comes to nothing or less here".to_owned()),
            ),
            Fault::NotToldApart { way } => (
                format!("`{makes}` of recipe `{}` may lie in two places", self.name),
                Sentence::new("neither lies farther {way}").with("way", super::towards(*way)),
                Some("let `towards` name the direction in which the two places lie apart".to_owned()),
            ),
            Fault::NoCurve => (
                format!("`{makes}` of recipe `{}` cannot be read on this body", self.name),
                "no such curve lies between these points and their corner".into(),
                Some(
                    "the corner is where the two end tangents cross; a guide lies between it and the ends"
                        .to_owned(),
                ),
            ),
            Fault::Level => (
                format!("`{makes}` of recipe `{}` cannot be found on this body", self.name),
                "the two lines run beside each other and do not meet".into(),
                None,
            ),
            Fault::Coincident => (
                format!("`{makes}` of recipe `{}` cannot be found on this body", self.name),
                "the two points lie in one place and give no direction".into(),
                None,
            ),
            Fault::Absurd => (
                format!("`{makes}` of recipe `{}` lies off the paper on this body", self.name),
                "more than 10 m, or not a number".into(),
                Some("check the measurements".to_owned()),
            ),
        };
        let mistake = Mistake::new(title).at(&self.source, place.clone(), label);
        match remedy {
            Some(remedy) => mistake.help(remedy),
            None => mistake,
        }
    }
}

/// Arrays of [`Inputs`] are by the place of the word in its list.
const _: () = assert!(<crate::terms::EaseAt as Word>::ALL.len() == 8 && Style::ALL.len() == 4);
