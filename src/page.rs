//! The cutting table in the browser: the measurement file that lies on it, drawn as it would be with changes that are
//! not saved yet. A server for this machine alone; the sheet it shows is in `page/sheet`.

mod asked;
mod desk;
mod door;
mod events;
mod guard;
mod replay;
mod server;
mod sheet;
mod table;
mod toile;
mod told;

pub use desk::Desk;
pub use server::Table;
