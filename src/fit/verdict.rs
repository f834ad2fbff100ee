//! The one word on a draft.

use super::Report;
use crate::{
    draft::Draft,
    mistake::{Notice, Severity},
    terms::words,
};

words! {
    /// Whether a draft is to be cut: as bad as the worst of what there is to know about it.
    Verdict {
        /// Nothing speaks against the toile.
        Good = "good",
        /// A toile only, in cheap cloth, to look at what the notes name.
        Mind = "mind",
        /// Not to be cut as it stands, not even for a toile.
        NotToCut = "not_to_cut",
    }
}

/// All that there is to know of a draft before cutting, each thing once: of the file, of the parameters, of the report.
pub fn known(draft: &Draft, report: &Report) -> Vec<Notice> {
    Notice::once(draft.notices.iter().cloned().chain(report.notices()))
}

impl Verdict {
    /// The verdict on a judged draft.
    pub fn on(draft: &Draft, report: &Report) -> Self {
        Self::of(&known(draft, report))
    }

    /// The verdict on a draft of which this is all that there is to know.
    pub fn of<'a>(notices: impl IntoIterator<Item = &'a Notice>) -> Self {
        match notices.into_iter().map(|notice| notice.severity).max() {
            None | Some(Severity::Note) => Self::Good,
            Some(Severity::Mind) => Self::Mind,
            Some(Severity::NotToCut) => Self::NotToCut,
        }
    }

    /// What it may be cut for.
    pub fn can_be_cut(self) -> bool {
        self != Self::NotToCut
    }

    /// Those of the notices that decided; none of a good draft.
    pub fn reasons(self, notices: &[Notice]) -> impl Iterator<Item = &Notice> {
        notices.iter().filter(move |notice| self != Self::Good && Self::of([*notice]) == self)
    }

    /// What stands over the notes of a draft.
    pub fn head(self) -> &'static str {
        match self {
            Self::Good => "Good",
            Self::Mind => "Mind",
            Self::NotToCut => "Not to be cut as it stands",
        }
    }

    /// The verdict as a sentence, for the table and the sheets.
    pub fn said(self) -> &'static str {
        match self {
            Self::Good => "Good: sew a toile of it.",
            Self::Mind => "Mind: cut a toile only, and look at what the notes name.",
            Self::NotToCut => "Not to be cut as it stands: see the notes.",
        }
    }
}
