//! What is drawn: on the wall, on the pieces, on a sheet in the hand, on a screen.

pub(crate) mod budget_bar;
mod by_hand;
mod cloth_picture;
mod column;
pub(crate) mod construction_marks;
mod construction_picture;
pub(crate) mod correction;
mod draft_picture;
pub(crate) mod edge_words;
mod exchange;
mod first_page;
pub(crate) mod language;
mod ledger;
mod margin;
mod note;
mod overlay;
pub(crate) mod panel_marks;
mod pattern_sheet;
mod printed;
mod projected;
pub(crate) mod spread;
mod test_squares;
mod thumbnail;
mod wall;

pub use by_hand::{READING, by_hand, strips_between};
pub use cloth_picture::cloth_picture;
#[cfg(feature = "serve")]
pub(crate) use construction_marks::drawn_for;
pub use construction_picture::construction_picture;
pub use draft_picture::draft_picture;
pub use exchange::exchange_file;
pub use first_page::first_page;
#[cfg(feature = "serve")]
pub(crate) use language::pens_as_css;
pub use overlay::overlay;
#[cfg(feature = "serve")]
pub(crate) use panel_marks::{arrow_heads, crease, inside, notches};
pub use pattern_sheet::{PlacedPiece, pattern_sheet};
pub use printed::{OnRoll, OnSheets, on_roll, on_sheets, side_by_side};
pub use projected::projected;
pub use thumbnail::thumbnail;
pub use wall::wall_drawing;
