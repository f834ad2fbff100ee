//! What the writers of pictures wrote, read back with other code than ours.

mod png_file;
mod sample;
mod svg_file;
