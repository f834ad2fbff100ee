//! What is told in figures and sentences: every table once, and what a terminal says of a draft, a fit, a toile, cloth and
//! a recipe.

mod cautions;
mod check;
mod choices;
mod cloth_table;
mod comparison;
mod difference_table;
mod features;
mod fit_story;
mod fit_table;
mod handbook;
mod judgement;
mod mirror;
mod record;
mod subject;
pub(crate) mod tables;

pub(crate) use cautions::CAUTIONS;
pub use cautions::cautions;
pub use check::check;
pub use choices::choices;
pub use cloth_table::cloth_table;
pub(crate) use cloth_table::{how_laid, piece_name, to_buy};
pub use comparison::comparison;
pub use difference_table::difference_table;
pub(crate) use difference_table::of_panel;
pub use features::{Feature, features};
pub use fit_story::fit_story;
pub use fit_table::{centre_table, fit_table};
pub use handbook::handbook;
pub use judgement::judgement_told;
pub use mirror::{mirror_asked, mirror_told};
pub use record::{fitting_did, fitting_told};
pub use subject::Subject;
pub(crate) use subject::panel_name;
