//! Many bodies through one filter: rows of CSV or NDJSON in, one line of JSON a row out, in the order of the rows.
//!
//! A row has an `id`, text or number, and any key of the measurement file by its dotted path, of which `measurements.`
//! and `trousers.` may be left out. Its line is the [`Answer`](super::Answer) to the draft in the extent of
//! [`Extent::Summary`](super::Extent::Summary) with the `id` before it, or `{ "id": …, "error": { "code": …, "text": … } }`
//! with one of the [`Code`]s. An id is handed back and never compared: two rows of the same id are two drafts.
//!
//! Memory does not grow with the number of rows, nor with the length of one.

mod drafter;
mod failure;
mod flow;
mod header;
mod json_row;
mod rows;

pub use failure::Code;
pub use flow::{Batch, Tally};
pub use rows::LONGEST_ROW;
