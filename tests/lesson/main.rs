//! The lesson, the fit sheet and the measuring guide as a reader has them: their pages are read again with code that
//! shares nothing with their writers.

mod browser;
mod follow;
mod followed;
mod hostile;
mod page;
mod pages;
mod sound;
mod subjects;
#[path = "../tool/mod.rs"]
mod tool;
