//! A parametric trouser block drafter.
//!
//! Data goes one way: a measurement file becomes an [`order`] with a [`body`]; [`making`] drafts it by a [`recipe`], judges
//! it by [`fit`] and cuts its [`pattern`]; what is made leaves as an [`answer`] or on [`paper`].
//!
//! ```
//! use breeks::{drawing::SvgScale, making::make, order::Order, unit::Unit};
//! use breeks::{mistake::Source, paper::wall_drawing, pattern::Wanted, told::Subject};
//!
//! let text = "[measurements]\nwaist_girth = 72\nhip_girth = 98\ninside_leg = 77.5\ntotal_crotch_length = 74";
//! let (order, said) = Order::read(&Source::new("bow.toml", text))?;
//! let made = make(order, said, &Wanted::default())?;
//! let leg = &made.legs.first;
//! for row in &leg.report.levels {
//!     println!("{}: {:.1} cm of ease", row.level, row.ease());
//! }
//! let picture = wall_drawing(&Subject::of(leg, Unit::Cm)).to_svg(SvgScale::TrueScale);
//! assert!(made.verdict().can_be_cut() && picture.starts_with("<svg"));
//! # Ok::<(), breeks::mistake::Mistakes>(())
//! ```

pub mod adjust;
pub mod answer;
pub mod body;
pub mod booklet;
pub mod command;
pub mod curve;
pub mod draft;
pub mod drawing;
pub mod file;
pub mod fit;
pub mod hand;
pub mod making;
pub mod mistake;
pub mod order;
#[cfg(feature = "serve")]
pub mod page;
pub mod paper;
pub mod pattern;
pub mod reading;
pub mod recipe;
pub mod terms;
pub mod toile;
pub mod told;
pub mod trial;
pub mod unit;
pub mod voice;
