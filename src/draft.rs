//! Body and recipe meet: the recipe is compiled against the body ([`Plan`]), the panels are drawn from their ten
//! roles and trued ([`shape`]), and the whole is kept with its record ([`Draft`]).

mod drop;
mod fade;
mod fork;
mod heeded;
mod inside;
mod leg_width;
mod moved;
mod moves;
mod panel;
mod plan;
mod record;
mod side;
mod smooth;
mod stretch;
mod style_line;
mod suppression;
mod truing;
mod waist;

pub(crate) use fork::{PIVOT_SMOOTHED, RUN_OUT};
pub use panel::{CutOff, Dart, Levels, Notch, PanelShape, Pleat, Roles, Shape};
pub use plan::{DartPlan, PanelPlan, Plan};
pub use record::{Draft, Step, draft};
pub(crate) use side::{CLOSE_AT_KNEE, FRONT_RUN_OUT, FULLEST, LENS_ABOVE_HIP, SMOOTHED};
pub(crate) use stretch::least_over_heel;
pub use style_line::StyleLine;
pub(crate) use truing::centre_back_lean;
pub use truing::{Taped, shape, taped, taped_at};
