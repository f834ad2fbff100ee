//! What is read rather than cut from: headings, sentences, sums, tables and pictures in the order of reading, said
//! once, and its three writers: one HTML page for screen, phone and printer, PDF pages that are whole on A4 and on US
//! Letter, and plain text for a terminal. Knows no trousers.

mod content;
mod flow;
mod html;
mod lettering;
mod pages;
mod plain;
mod table;

pub use content::{Block, Booklet, Column, Paragraph, Strip, Table};
pub use lettering::Lettering;
pub use plain::{headed, note, plain, wrapped};
