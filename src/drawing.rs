//! One neutral picture: named layers of lines, areas and text in centimetres, and the writers that carry it to paper
//! and screen. Nothing here knows trousers.
//!
//! x runs right and y runs down, as in a draft. A turn is in radians, clockwise as seen. Every coordinate, width and
//! size is finite; whoever composes a picture has seen to that. The same picture gives the same bytes on every run.

mod dxf;
mod font;
mod labels;
mod lines_of_text;
mod paper_size;
mod path_data;
mod pdf;
mod pen;
mod picture;
mod png;
mod svg;
mod text;
mod tiles;
mod wording;

pub use dxf::{DxfMark, DxfPiece, DxfStyle, to_dxf};
pub use font::{CAP_HEIGHT, FILE as FONT_FILE, text_width};
pub use labels::Labels;
pub use lines_of_text::lines_of_text;
pub use paper_size::{Paper, Sheet};
pub use path_data::{number, path_data};
pub use pdf::{PrintedSheet, sheets_to_pdf};
pub use pen::{Ink, Pen, Shade};
pub use picture::{Drawing, Layer, Mark};
pub use svg::SvgScale;
pub use text::{Align, Footprint, Text, Weight};
pub use tiles::{Tile, Tiles};
pub use wording::Wording;
