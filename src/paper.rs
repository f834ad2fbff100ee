//! What people read: tables for a terminal and drawings for the wall, the hand and the screen.

mod budget_bar;
mod cautions;
mod column;
mod comparison;
mod construction_marks;
mod edge_words;
mod features;
mod figures;
mod first_page;
mod fit_table;
mod handbook;
mod language;
mod ledger;
mod note;
mod notes;
mod overlay;
mod overview;
mod panel_marks;
mod spread;
mod subject;
mod terminal;
mod test_squares;
mod thumbnail;
mod wall;

pub use cautions::cautions;
pub use comparison::{comparison, comparison_page};
pub use features::{Feature, features};
pub use first_page::first_page;
pub use fit_table::fit_table;
pub use handbook::handbook;
pub use overlay::overlay;
pub use overview::overview;
pub use subject::Subject;
pub(crate) use terminal::wrapped;
pub use thumbnail::thumbnail;
pub use wall::wall_drawing;
