//! What people read: tables for a terminal and drawings for the table.

mod block_drawing;
mod fit_table;
mod wrapped;

pub use block_drawing::block_drawing;
pub use fit_table::fit_table;
