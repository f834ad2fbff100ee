//! What people read: tables for a terminal and drawings for the wall, the hand and the screen.

mod budget_bar;
mod cautions;
mod choices;
mod cloth_picture;
mod cloth_table;
mod column;
mod comparison;
mod construction_marks;
mod correction;
mod corrections_page;
mod difference_table;
mod edge_words;
mod exchange;
mod features;
mod figures;
mod first_page;
mod fit_sheet;
mod fit_story;
mod fit_table;
mod fitting_sheet;
mod fitting_story;
mod guide;
mod handbook;
mod language;
mod ledger;
mod lesson;
mod note;
mod notes;
mod overlay;
mod panel_marks;
mod pattern_sheet;
mod printed;
mod projected;
mod spread;
mod subject;
mod terminal;
mod test_squares;
mod thumbnail;
mod wall;

#[cfg(feature = "serve")]
pub(crate) use cautions::CAUTIONS;
pub use cautions::cautions;
pub use choices::choices;
pub use cloth_picture::cloth_picture;
pub use cloth_table::cloth_table;
pub use comparison::{comparison, comparison_page};
#[cfg(feature = "serve")]
pub(crate) use construction_marks::drawn_for;
pub use correction::correction_picture;
pub use corrections_page::{Shown, corrections_page};
pub use difference_table::difference_table;
pub use exchange::exchange_file;
pub use features::{Feature, features};
pub use first_page::first_page;
pub use fit_sheet::{draft_picture, fit_sheet};
pub use fit_story::fit_story;
pub use fit_table::{centre_table, fit_table};
pub use fitting_sheet::fitting_sheet;
pub use fitting_story::{fitting_did, fitting_told};
pub use guide::measuring_guide;
pub use handbook::handbook;
#[cfg(feature = "serve")]
pub(crate) use language::pens_as_css;
pub use lesson::lesson;
pub use overlay::overlay;
#[cfg(feature = "serve")]
pub(crate) use panel_marks::{arrow_heads, crease, inside, notches};
pub use pattern_sheet::{PlacedPiece, pattern_sheet};
pub use printed::{OnRoll, OnSheets, on_roll, on_sheets, side_by_side};
pub use projected::projected;
pub use subject::Subject;
pub use terminal::note;
pub(crate) use terminal::wrapped;
pub use thumbnail::thumbnail;
pub use wall::wall_drawing;
