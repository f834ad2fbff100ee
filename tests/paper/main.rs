//! What people read: the wall drawing, the draft with its ease, the overlay and the first page of sheets.

mod hostile_names;
mod labels;
mod overlay;
#[path = "../people/mod.rs"]
mod people;
mod pictures;
mod subjects;
mod true_scale;
