//! The options by which the pieces of a draft are asked for.

use crate::{
    mistake::Mistake,
    order::Order,
    pattern::{Band, BandShape, Lap, Purpose, Wanted},
    terms::{Sex, Word},
    unit::parse_length,
    voice::{Sentence, Value, lengths, named},
};

/// What every command that makes pieces takes.
#[derive(clap::Args)]
pub(super) struct Cutting {
    /// Pieces for a toile: 2.5 cm on the upright seams, lines across to see by, and a waistband and a fly to put it on
    #[arg(long)]
    toile: bool,
    /// A waistband: straight (a folded strip), shaped (curved as the waist it is sewn to) or none
    #[arg(long, value_name = "SHAPE", value_parser = choice::<BandShape>)]
    waistband: Option<Choice<BandShape>>,
    /// How high the finished waistband stands [default: 3.5 cm]
    #[arg(long, value_name = "LENGTH")]
    band_height: Option<String>,
    /// A fly, by the wearer's side that laps over: left, right or none
    #[arg(long, value_name = "SIDE", value_parser = choice::<Lap>)]
    fly: Option<Choice<Lap>>,
    /// Cut the back along its yoke line, if its block has one, with the darts closed in the yoke
    #[arg(long)]
    yoke: bool,
}

/// One of a list, or none of it.
#[derive(Clone, Copy, Debug)]
struct Choice<T>(Option<T>);

fn choice<T: Word>(text: &str) -> Result<Choice<T>, String> {
    if text == "none" {
        return Ok(Choice(None));
    }
    let known = T::from_key(text).ok_or_else(|| format!("expected {} or none", T::KEYS.join(", ")))?;
    Ok(Choice(Some(known)))
}

/// A band lower or higher than this is a slip of the finger, cm.
const BAND_HEIGHT: std::ops::RangeInclusive<f64> = 1.0..=15.0;

impl Cutting {
    /// What the names of the files of a toile have beside those of the pattern proper.
    pub(super) fn suffix(&self) -> &'static str {
        if self.toile { "-toile" } else { "" }
    }

    /// What is to be cut for an order.
    ///
    /// # Errors
    /// When the height of the band is no length, or none that a band can have.
    pub(super) fn of(&self, order: &Order) -> Result<Wanted, Mistake> {
        let purpose = if self.toile { Purpose::Toile } else { Purpose::Wear };
        let shape = self.waistband.map_or(self.toile.then_some(BandShape::Straight), |choice| choice.0);
        let height = self.band_height(order)?;
        let fly = self.fly.map_or(self.toile.then_some(usual_lap(order.body.sex)), |choice| choice.0);
        Ok(Wanted { purpose, waistband: shape.map(|shape| Band { shape, height }), fly, yoke: self.yoke })
    }

    fn band_height(&self, order: &Order) -> Result<f64, Mistake> {
        let Some(text) = &self.band_height else { return Ok(Band::HEIGHT) };
        let wrong = |found: Value| {
            let title = Sentence::new("`--band-height {text}`: {found}")
                .with("text", named(text))
                .with("found", found);
            Mistake::new(title).in_unit(order.units)
        };
        let cm = parse_length(text, order.units).map_err(|expected| wrong(named(expected)))?;
        if BAND_HEIGHT.contains(&cm) {
            return Ok(cm);
        }
        let heights = lengths((*BAND_HEIGHT.start(), *BAND_HEIGHT.end()));
        Err(wrong(Sentence::new("expected {heights}").with("heights", heights).into()))
    }
}

/// Women's flies lap right over left, men's left over right: common practice, no source.
fn usual_lap(sex: Sex) -> Lap {
    match sex {
        Sex::Female => Lap::Right,
        Sex::Male | Sex::Unsaid => Lap::Left,
    }
}
