//! What is read from a page: the fit sheet, the lesson, the measuring guide, and the pages of the library.

mod comparison_page;
mod corrections_page;
mod fit_sheet;
mod guide;
mod lesson;
mod recipes_page;

pub use comparison_page::comparison_page;
pub use corrections_page::{Shown, corrections_page};
pub use fit_sheet::fit_sheet;
pub use guide::measuring_guide;
pub use lesson::{lesson, marking_page};
pub use recipes_page::{ShownRule, ShownSlip, recipes_page};
