//! The toile judged: what is seen on the body becomes signs, signs and the draft's own numbers rank what the pattern
//! lacks, a quick test separates what is still alike, and the next single change is named as a parameter. What is known
//! of faults, causes and tests is data: `toile/faults.toml`; how people say it: `toile/words.toml`.

mod advice;
mod amount;
mod clause;
mod entry;
mod evidence;
mod judgement;
mod knowledge;
mod lexicon;
mod look;
mod mirror;
mod open;
mod question;
mod rank;
mod record;
mod said;
mod separate;
mod sign;
mod weights;

pub use advice::{Advice, Beside, Effect, Move, Why, advise, held};
pub use amount::{Amount, Pinned};
pub use entry::{CLOSED, Entry};
pub use evidence::{Evidence, Number};
pub use judgement::{Doubt, Judgement, Outcome, Toile, judge};
pub use knowledge::{
    Cause, CauseId, CrotchPart, Fault, Kind, Knowledge, Known, Lack, Quick, QuickResult, Setting, Target,
    knowledge, spoken,
};
pub use look::Look;
pub use mirror::{GLANCES, Glance};
pub use open::{Asks, NO_ANSWER, Open};
pub use question::{Answers, QUESTIONS, Question};
pub use rank::{Ranked, Ranking, Standing, rank, rank_by};
pub use record::{Past, Since, Step, parameter, past};
pub use said::{Heard, LONGEST_REPORT, Seen, read, read_all};
pub use separate::{Separation, separate};
pub use sign::{Degree, Does, Face, Feel, Lines, Place, Sign, When};
pub use weights::{Alike, WEIGHTS, Weights};

/// A fitting's note where what a fit had found is written down as it was sewn.
pub const HELD: &str = "as sewn: what the fit had found is kept, and the fit held";
