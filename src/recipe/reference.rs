//! The names that a proportion may hold, and what each stands for.

use crate::{
    terms::{EaseAt, Measurement, Style, Word},
    unit::Unit,
};

/// What a name in a proportion stands for; resolved once, when the recipe is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reference {
    /// A measurement on the body. Girths go by their short trade name: `hip`, not `hip_girth`.
    Body(Measurement),
    /// Ease, as `hip_ease`.
    Ease(EaseAt),
    /// A width or length of style, as `knee_width`.
    Style(Style),
    /// An input of the recipe's own, by its place in [`super::Recipe::asks`].
    Ask(usize),
    /// A level line, by its place in [`super::Recipe::lines`]; its value is its y.
    Line(usize),
    /// A quantity made by an earlier step, by its place in [`super::Construction::quantities`].
    Quantity(usize),
}

/// The short trade name of a girth, the key of any other measurement.
pub fn body_name(measurement: Measurement) -> &'static str {
    let key = measurement.key();
    match measurement {
        // `sitting_hip` would read as a place, not as a girth taken sitting.
        Measurement::SittingHipGirth => key,
        _ => key.strip_suffix("_girth").unwrap_or(key),
    }
}

/// The names that can be used at one place of a recipe: those of the trade, and the recipe's own so far.
#[derive(Clone, Debug, Default)]
pub struct Names {
    own: Vec<(String, Reference)>,
    before_construction: bool,
    inches: bool,
}

impl Names {
    /// Names of measurements and ease only, for what is decided before the construction begins.
    pub(super) fn of_the_body(unit: Unit) -> Self {
        Self { before_construction: true, ..Self::of_the_trade_in(unit) }
    }

    /// Names of the trade, beside constants that are in `unit`.
    pub(super) fn of_the_trade_in(unit: Unit) -> Self {
        Self { own: Vec::new(), before_construction: false, inches: unit == Unit::Inch }
    }

    /// The unit of constants that say none.
    pub(super) fn unit(&self) -> Unit {
        if self.inches { Unit::Inch } else { Unit::Cm }
    }

    /// What `name` stands for here.
    pub fn resolve(&self, name: &str) -> Option<Reference> {
        let own = || self.own.iter().find(|(own, _)| own == name).map(|(_, reference)| *reference);
        self.of_the_trade(name).or_else(own)
    }

    /// Adds a name of the recipe's own.
    pub(super) fn declare(&mut self, name: &str, reference: Reference) {
        self.own.push((name.to_owned(), reference));
    }

    /// Every name that can be used here, for finding the one that was meant.
    pub(super) fn all(&self) -> Vec<String> {
        let body = Measurement::ALL.iter().map(|m| body_name(*m).to_owned());
        let ease = EaseAt::ALL.iter().map(|at| format!("{at}_ease"));
        let style =
            Style::ALL.iter().filter(|_| !self.before_construction).map(|style| style.key().to_owned());
        let own = self.own.iter().map(|(name, _)| name.clone());
        let mut all: Vec<String> = body.chain(ease).chain(style).collect();
        for name in own {
            if !all.contains(&name) {
                all.push(name);
            }
        }
        all
    }

    fn of_the_trade(&self, name: &str) -> Option<Reference> {
        let body = || Measurement::ALL.iter().find(|m| body_name(**m) == name).map(|m| Reference::Body(*m));
        let ease = || name.strip_suffix("_ease").and_then(EaseAt::from_key).map(Reference::Ease);
        let style = || Style::from_key(name).filter(|_| !self.before_construction).map(Reference::Style);
        body().or_else(ease).or_else(style)
    }
}
