//! What people read: tables for a terminal and drawings for the wall, the hand and the screen.

mod budget_bar;
mod cautions;
mod column;
mod construction_marks;
mod edge_words;
mod figures;
mod first_page;
mod fit_table;
mod language;
mod ledger;
mod note;
mod notes;
mod overlay;
mod overview;
mod panel_marks;
mod spread;
mod subject;
mod test_squares;
mod wall;
mod wrapped;

pub use cautions::cautions;
pub use first_page::first_page;
pub use fit_table::fit_table;
pub use overlay::overlay;
pub use overview::overview;
pub use subject::Subject;
pub use wall::wall_drawing;
