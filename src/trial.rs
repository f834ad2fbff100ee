//! A recipe tried on a spread of sizes, so that whoever writes one sees where it breaks before a person does.

mod whence;

use std::sync::Arc;

pub use whence::Whence;

use crate::{
    body::{Body, Given},
    draft::{Plan, draft},
    fit::{Report, Verdict, drafted_legs, known},
    mistake::{Mistakes, Notice, Severity},
    order::{Order, Trousers},
    recipe::{Recipe, Reference, Truing},
    terms::{Measurement, Sex, WaistLevel, Word},
    unit::Unit,
};

/// An invented body of the spread. Girths and lengths in cm; what is not given is estimated.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Size {
    /// In plain words, what is particular about it.
    pub label: &'static str,
    /// Which equations estimate the rest.
    pub sex: Sex,
    /// Waist girth, hip girth and stature.
    pub girths_and_stature: [f64; 3],
    /// What is measured besides.
    pub also: &'static [(Measurement, f64)],
}

/// The spread: both sexes, small to large, flat to full, short to tall. Invented; the girths stay within those of the
/// people surveyed, or a little beyond.
pub const SPREAD: &[Size] = &[
    size("slight and short", Sex::Female, [60.0, 84.0, 152.0], &[]),
    size("slight and tall", Sex::Female, [66.0, 90.0, 178.0], &[]),
    size("middling", Sex::Female, [72.0, 97.0, 165.0], &[]),
    size("small waist, full hip", Sex::Female, [68.0, 106.0, 164.0], &[]),
    size("waist nearly as full as the hip", Sex::Female, [96.0, 100.0, 160.0], &[]),
    size("full and short", Sex::Female, [98.0, 122.0, 154.0], &[]),
    size("full and tall", Sex::Female, [100.0, 124.0, 176.0], &[]),
    size("very full", Sex::Female, [122.0, 142.0, 165.0], &[]),
    size("long in the body", Sex::Female, [76.0, 102.0, 168.0], &[(Measurement::BodyRise, 33.0)]),
    size(
        "short in the body, low seat",
        Sex::Female,
        [74.0, 98.0, 166.0],
        &[(Measurement::BodyRise, 24.5), (Measurement::WaistToHip, 19.5)],
    ),
    size("slight and short", Sex::Male, [70.0, 86.0, 163.0], &[]),
    size("slight and tall", Sex::Male, [76.0, 92.0, 194.0], &[]),
    size("middling", Sex::Male, [84.0, 98.0, 176.0], &[]),
    size("flat seat", Sex::Male, [88.0, 94.0, 180.0], &[]),
    size("small waist, strong thighs", Sex::Male, [82.0, 106.0, 182.0], &[(Measurement::ThighGirth, 68.0)]),
    size("waist fuller than the hip", Sex::Male, [118.0, 110.0, 174.0], &[]),
    size("full and short", Sex::Male, [112.0, 116.0, 168.0], &[]),
    size("very full", Sex::Male, [140.0, 136.0, 185.0], &[]),
    size("long in the body", Sex::Male, [86.0, 100.0, 178.0], &[(Measurement::BodyRise, 34.0)]),
    size(
        "short in the body, low seat",
        Sex::Male,
        [90.0, 102.0, 182.0],
        &[(Measurement::BodyRise, 26.0), (Measurement::WaistToHip, 21.0)],
    ),
];

const fn size(
    label: &'static str,
    sex: Sex,
    girths_and_stature: [f64; 3],
    also: &'static [(Measurement, f64)],
) -> Size {
    Size { label, sex, girths_and_stature, also }
}

impl Size {
    /// What a measurement file of this body would say, waist taken at the natural level.
    pub fn given(&self) -> Given {
        let [waist, hip, stature] = self.girths_and_stature;
        let given = Given::new(self.sex, WaistLevel::Natural)
            .with(Measurement::WaistGirth, waist)
            .with(Measurement::HipGirth, hip)
            .with(Measurement::Stature, stature);
        self.also.iter().fold(given, |given, (measurement, cm)| given.with(*measurement, *cm))
    }
}

/// How a recipe did on one body of the spread.
#[derive(Clone, Debug, PartialEq)]
pub enum Outcome {
    /// Drafted: nothing forbids cutting it.
    Sound,
    /// Drafted soundly, but tighter at a level than the recipe's own range: each with whence in the recipe it comes.
    Tight(Vec<Told>),
    /// Drafted, but an outline, a seam or a join is wrong: each with whence in the recipe it comes.
    Unsound(Vec<Told>),
    /// Constructed; the recipe has no back, so that there is nothing to draft.
    ConstructedOnly,
    /// A step has no answer, or the points make no trouser leg.
    Broken(Mistakes),
}

/// What is wrong with a draft, in a sentence, and whence in the recipe it comes.
#[derive(Clone, Debug, PartialEq)]
pub struct Told {
    /// What is wrong, for readers of the unit that was asked for.
    pub said: String,
    /// What it is about in the recipe; `None` where it is no matter of the recipe.
    pub whence: Option<Whence>,
}

impl Told {
    fn all(recipe: &Recipe, notices: &[Notice], unit: Unit) -> Vec<Self> {
        let told = |notice: &Notice| Self { said: notice.text(unit), whence: Whence::of(recipe, notice) };
        notices.iter().filter(|notice| notice.severity != Severity::Note).map(told).collect()
    }
}

/// On how many bodies of the spread the recipe would break if it were trued in everything; `None` where it is.
pub fn broken_if_trued(recipe: &Recipe) -> Option<usize> {
    let truing = Truing { crossing_tilt: recipe.truing.crossing_tilt, ..Truing::default() };
    (truing != recipe.truing && recipe.back.is_some()).then(|| {
        let trued = Arc::new(recipe.clone().trued_by(truing));
        let breaks = |(_, outcome): &(Size, Outcome)| outcome.breaks();
        try_on(&trued).iter().filter(|tried| breaks(tried)).count()
    })
}

/// Drafts the recipe for one body as its measurement file orders, fit and all.
pub fn try_for(recipe: &Arc<Recipe>, order: &Order) -> Outcome {
    if recipe.back.is_none() {
        let made = Body::resolve(&order.body).and_then(|(body, _)| {
            let inputs = Plan::inputs(recipe, &body, &order.trousers)?;
            Ok(recipe.construct(&inputs)?)
        });
        return made.err().map_or(Outcome::ConstructedOnly, Outcome::Broken);
    }
    match drafted_legs(order, recipe) {
        Err(mistakes) => Outcome::Broken(mistakes),
        Ok(legs) => {
            let notices = Notice::once(legs.iter().flat_map(|leg| known(&leg.draft, &leg.report)));
            let sound = legs.iter().all(|leg| leg.report.is_true());
            judged(recipe, &notices, sound, order.units)
        }
    }
}

fn judged(recipe: &Recipe, notices: &[Notice], sound: bool, unit: Unit) -> Outcome {
    if Verdict::of(notices).can_be_cut() {
        Outcome::Sound
    } else if sound {
        Outcome::Tight(Told::all(recipe, notices, unit))
    } else {
        Outcome::Unsound(Told::all(recipe, notices, unit))
    }
}

impl Outcome {
    /// Nothing can be cut by it.
    pub fn breaks(&self) -> bool {
        matches!(self, Self::Unsound(_) | Self::Broken(_))
    }
}

/// Constructs and drafts the recipe on every body of the spread.
pub fn try_on(recipe: &Arc<Recipe>) -> Vec<(Size, Outcome)> {
    SPREAD.iter().map(|size| (*size, outcome(recipe, size))).collect()
}

/// The measurements that the recipe goes by and nothing estimates; on the spread they are invented.
pub fn must_be_measured(recipe: &Recipe) -> Vec<Measurement> {
    let nowhere = |measurement: &&Measurement| {
        recipe.uses(Reference::Body(**measurement)) && invented(**measurement, &|_| Some(0.0)).is_some()
    };
    Measurement::ALL.iter().filter(nowhere).copied().collect()
}

/// What a measurement file of this body would say for this recipe.
fn given(recipe: &Recipe, size: &Size) -> Result<Given, Mistakes> {
    let mut given = size.given();
    let (body, _) = Body::resolve(&given)?;
    for measurement in must_be_measured(recipe) {
        if let Some(cm) = invented(measurement, &|from| body.cm(from)) {
            given = given.with(measurement, cm);
        }
    }
    Ok(given)
}

/// A measurement that nothing estimates, by the others of a body: invented, near enough to try a recipe with.
fn invented(measurement: Measurement, at: &impl Fn(Measurement) -> Option<f64>) -> Option<f64> {
    let part = |of: Measurement, part: f64| Some(part * at(of)?);
    match measurement {
        Measurement::TopHipGirth => {
            Some(0.35 * at(Measurement::WaistGirth)? + 0.65 * at(Measurement::HipGirth)?)
        }
        Measurement::SittingHipGirth => part(Measurement::HipGirth, 1.04),
        Measurement::BodyRiseSitting => part(Measurement::BodyRise, 1.0),
        Measurement::FrontCrotchLength => part(Measurement::TotalCrotchLength, 0.49),
        Measurement::BackCrotchLength => part(Measurement::TotalCrotchLength, 0.51),
        Measurement::FrontThighArc => part(Measurement::ThighGirth, 0.48),
        Measurement::FrontHipArc => part(Measurement::HipGirth, 0.48),
        Measurement::FrontWaistArc => part(Measurement::WaistGirth, 0.5),
        Measurement::WaistHeightFront | Measurement::WaistHeightBack => part(Measurement::WaistHeight, 1.0),
        Measurement::ForkDepth => part(Measurement::HipGirth, 0.2),
        _ => None,
    }
}

fn outcome(recipe: &Arc<Recipe>, size: &Size) -> Outcome {
    if recipe.back.is_none() {
        return constructed(recipe, size).err().map_or(Outcome::ConstructedOnly, Outcome::Broken);
    }
    let order = match given(recipe, size) {
        Ok(given) => Order::of(given),
        Err(mistakes) => return Outcome::Broken(mistakes),
    };
    match draft(&order, recipe) {
        Err(mistakes) => Outcome::Broken(mistakes),
        Ok(draft) => {
            let report = Report::of(&draft.plan, &draft.parameters, &draft.shape, &draft.body);
            judged(recipe, &report.notices(), report.is_true(), Unit::Cm)
        }
    }
}

/// A recipe without a back, carried out with its own ease and style.
fn constructed(recipe: &Recipe, size: &Size) -> Result<(), Mistakes> {
    let (body, _) = Body::resolve(&given(recipe, size)?)?;
    let inputs = Plan::inputs(recipe, &body, &Trousers::default())?;
    recipe.construct(&inputs)?;
    Ok(())
}
