//! What the writers of pictures wrote, read back with other code than ours.

mod dxf_file;
mod pdf_file;
mod pdf_reader;
mod png_file;
mod poppler;
mod sample;
mod svg_file;
mod tiled_pdf;
#[path = "../tool/mod.rs"]
mod tool;
