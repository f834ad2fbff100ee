//! What people read: tables for a terminal and drawings for the table.

mod block_drawing;
mod column;
mod comparison;
mod features;
mod fit_table;
mod handbook;
mod thumbnail;

pub use block_drawing::block_drawing;
pub(crate) use column::wrapped;
pub use comparison::{comparison, comparison_page};
pub use features::{Feature, features};
pub use fit_table::fit_table;
pub use handbook::handbook;
pub use thumbnail::thumbnail;
