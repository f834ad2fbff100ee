//! What is read rather than cut from: headings, sentences, sums, tables and pictures in the order of reading, said
//! once, and its two writers: one HTML page for screen, phone and printer, and PDF pages that are whole on A4 and on US
//! Letter. Knows no trousers.

mod content;
mod flow;
mod html;
mod lettering;
mod pages;
mod table;

pub use content::{Block, Booklet, Column, Paragraph, Strip, Table};
pub use lettering::Lettering;
