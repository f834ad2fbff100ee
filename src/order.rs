//! The measurement file: a body, the trousers wanted for it, the fit parameters, and the record of its toiles.

mod blank;
mod day;
mod demo;
mod edit;
mod fitting;
mod key;
pub mod measuring;
mod notices;
mod put;
mod read;
mod rewind;
mod row;
mod value;

use std::{collections::BTreeMap, ops::Range};

use crate::adjust;
use crate::body::Given;
use crate::mistake::{Mistake, Source};
use crate::terms::{
    Allowance, EaseAt, EnumMap, FitKind, HowMuch, Measurement, Panel, SeatSet, Shape, Side, Style, words,
};
use crate::unit::Unit;

pub use blank::blank;
pub use day::{day, today};
pub use demo::{DEMOS, demo};
pub use edit::{Change, edit, found_value, record, stands};
pub use key::{Kind, Path};
pub use row::{RowReader, row_key};
pub use value::Raw;

/// Everything that one measurement file says. All lengths in cm.
#[derive(Clone, Debug, PartialEq)]
pub struct Order {
    /// The label on the pattern.
    pub name: Option<String>,
    /// The unit in which the file was written.
    pub units: Unit,
    /// What was measured.
    pub body: Given,
    /// What is to be made.
    pub trousers: Trousers,
    /// The fit is found round the fit parameters given, rather than these laid on top of it: a command may ask for it, a
    /// file does not.
    pub around: bool,
    /// Fit parameters of both legs, in the order of [`adjust::Key`].
    pub adjustments: Vec<Adjustment>,
    /// What is different on the left leg.
    pub left: Option<LegOrder>,
    /// What is different on the right leg.
    pub right: Option<LegOrder>,
    /// What a mirror showed and a tape does not: what a toile is watched for.
    pub shape: EnumMap<Shape, Option<HowMuch>>,
    /// The toiles so far, newest last.
    pub fittings: Vec<Fitting>,
    /// Where each fit parameter stands: its leg, its text and the bytes of its value.
    pub places: Vec<(Side, adjust::Key, Source, Range<usize>)>,
    /// The text from which all this was read.
    pub source: Source,
}

/// What is to be made. All lengths in cm; `None` leaves it to the recipe.
#[derive(Clone, Debug, PartialEq)]
pub struct Trousers {
    /// A shipped recipe's name, or a path to one.
    pub block: String,
    /// How the fit parameters are found; `None`: measured.
    pub fit: Option<FitKind>,
    /// Smooth standing or easy sitting.
    pub set: SeatSet,
    /// Usable cross stretch of the cloth, per cent.
    pub cloth_stretch: f64,
    /// By how much the back inseam is shorter than the front, to be stretched in sewing.
    pub inseam_stretch: f64,
    /// Ease.
    pub ease: EnumMap<EaseAt, Option<f64>>,
    /// Widths and lengths of style.
    pub style: EnumMap<Style, Option<f64>>,
    /// Seam allowances.
    pub allowance: EnumMap<Allowance, Option<f64>>,
    /// How many darts each panel has, whatever the size; `None`: recipe and body decide.
    pub darts: EnumMap<Panel, Option<usize>>,
    /// Inputs that the recipe asks for, by the recipe's own names.
    pub ask: BTreeMap<String, f64>,
}

impl Default for Trousers {
    fn default() -> Self {
        Self {
            block: "classic".to_owned(),
            fit: None,
            set: SeatSet::Clean,
            cloth_stretch: 0.0,
            inseam_stretch: 0.0,
            ease: EnumMap::default(),
            style: EnumMap::default(),
            allowance: EnumMap::default(),
            darts: EnumMap::default(),
            ask: BTreeMap::new(),
        }
    }
}

/// A fit parameter with its value.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Adjustment {
    /// Which parameter.
    pub key: adjust::Key,
    /// Its value, in cm or degrees as the parameter says.
    pub value: f64,
    /// Who gave it.
    pub from: Giver,
}

words! {
    /// Who gave a fit parameter its value.
    Giver {
        /// The measurement file.
        File = "file",
        /// A command-line option, or what is changed on the page.
        Set = "set",
        /// A measured tilt of the waist.
        Measured = "measured",
        /// Measured fit found it.
        Fit = "fit",
    }
}

impl Adjustment {
    /// Whether measured fit has found it, rather than a person.
    pub fn is_found(&self) -> bool {
        self.from == Giver::Fit
    }

    /// Its dotted path in the file, given to both legs or to one.
    pub fn path(&self, side: Side) -> String {
        match side {
            Side::Both => self.key.to_string(),
            side => format!("{side}.{}", self.key),
        }
    }

    /// Whether a person gave it, in the file or beside it.
    pub fn is_by_hand(&self) -> bool {
        matches!(self.from, Giver::File | Giver::Set)
    }
}

/// What a file says about one leg.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LegOrder {
    /// Measurements of this leg, in cm.
    pub measured: EnumMap<Measurement, Option<f64>>,
    /// Fit parameters of this leg; they stand in place of those of both legs.
    pub adjustments: Vec<Adjustment>,
}

/// One toile: what was seen, tried and changed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Fitting {
    /// The day, as written.
    pub date: Option<String>,
    /// The block that was sewn.
    pub block: Option<String>,
    /// Faults seen.
    pub seen: Vec<String>,
    /// Tests made on the body.
    pub tested: Vec<String>,
    /// Keys of this file that were changed for it, with their new values in cm, degrees or per cent.
    pub changed: Vec<(String, f64)>,
    /// Anything else.
    pub note: Option<String>,
}

impl Order {
    /// Whether the legs are to be drafted each for itself.
    pub fn has_two_legs(&self) -> bool {
        self.left.iter().chain(&self.right).any(|leg| *leg != LegOrder::default())
    }

    /// The same without what is said of one leg alone.
    #[must_use]
    pub fn of_both_legs(&self) -> Self {
        Self { left: None, right: None, ..self.clone() }
    }

    /// The fit parameters of both legs or of one.
    pub fn adjustments_of(&mut self, side: Side) -> &mut Vec<Adjustment> {
        match side {
            Side::Both => &mut self.adjustments,
            Side::Left => &mut self.left.get_or_insert_with(LegOrder::default).adjustments,
            Side::Right => &mut self.right.get_or_insert_with(LegOrder::default).adjustments,
        }
    }

    /// What is to be made for one leg: its own measurements and fit parameters in the place of those of both.
    #[must_use]
    pub fn of_leg(&self, side: Side) -> Self {
        let own = match side {
            Side::Both => None,
            Side::Left => self.left.as_ref(),
            Side::Right => self.right.as_ref(),
        };
        let own = own.map_or(&[][..], |leg| &leg.adjustments);
        let mut order = Self { body: self.leg(side), ..self.of_both_legs() };
        order.adjustments.retain(|it| own.iter().all(|of_leg| of_leg.key != it.key));
        order.adjustments.extend_from_slice(own);
        order.adjustments.sort_by_key(|it| it.key);
        order
    }

    /// The same without any fit parameter, given or found: the recipe's proportions alone.
    #[must_use]
    pub fn proportions_alone(&self) -> Self {
        let mut order = self.clone();
        order.adjustments.clear();
        for leg in [&mut order.left, &mut order.right].into_iter().flatten() {
            leg.adjustments.clear();
        }
        order.trousers.fit = Some(FitKind::Proportional);
        order
    }

    /// The order of a body of which nothing but its measurements is said.
    pub fn of(body: Given) -> Self {
        Self {
            name: None,
            units: Unit::Cm,
            body,
            trousers: Trousers::default(),
            around: false,
            adjustments: Vec::new(),
            left: None,
            right: None,
            shape: EnumMap::default(),
            fittings: Vec::new(),
            places: Vec::new(),
            source: Source::new("", ""),
        }
    }

    /// Points a mistake about a fit parameter at the place where the parameter stands.
    pub fn at_parameter(&self, mistake: Mistake, side: Side, key: adjust::Key) -> Mistake {
        let place = |wanted: Side| self.places.iter().rev().find(|(of, at, ..)| *of == wanted && *at == key);
        match place(side).or_else(|| place(Side::Both)) {
            Some((_, _, source, span)) => mistake.at(source, span.clone(), ""),
            None => mistake,
        }
    }

    /// The measurements of one leg: those of the body, with that leg's own in their place.
    pub fn leg(&self, side: Side) -> Given {
        let own = match side {
            Side::Both => None,
            Side::Left => self.left.as_ref(),
            Side::Right => self.right.as_ref(),
        };
        let mut given = Given { units: self.units, ..self.body.clone() };
        for (measurement, own) in own.iter().flat_map(|leg| leg.measured) {
            let place = &mut given.measured[measurement];
            *place = own.or(*place);
        }
        given
    }
}
