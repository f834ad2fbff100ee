//! What the writers of pictures wrote, read back with other code than ours.

mod sample;
mod svg_file;
