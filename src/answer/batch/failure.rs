//! Why a row gives no draft.

use serde::Serialize;

use crate::{
    mistake::Mistakes,
    terms::{Word, words},
};

words! {
    /// Why a row gives no draft. The list is part of the contract.
    Code {
        /// Longer than [`LONGEST_ROW`](super::LONGEST_ROW).
        TooLong = "too-long",
        /// Not UTF-8.
        NotText = "not-text",
        /// Not one JSON object on its line.
        NotJson = "not-json",
        /// Not as many fields as the header has columns.
        WrongColumns = "wrong-columns",
        /// No `id`, or one that is neither text nor number.
        NoId = "no-id",
        /// A key that no measurement file has.
        UnknownKey = "unknown-key",
        /// A value that is not what its key takes, or a key that stands there twice.
        BadValue = "bad-value",
        /// Too little is measured.
        MissingMeasurement = "missing-measurement",
        /// A measurement that no adult has.
        NotABody = "not-a-body",
        /// No shipped recipe of that name. A row may not name a file: rows come from anywhere.
        UnknownBlock = "unknown-block",
        /// The body and the recipe make no trousers, or the row asks for what is not drawn yet.
        NotDrafted = "not-drafted",
        /// A defect of this program; the rows after it are drafted all the same.
        Defect = "defect",
    }
}

/// Why one row gives no draft, with the sentence for people.
#[derive(Debug)]
pub(super) struct Failure {
    pub(super) code: Code,
    pub(super) text: String,
}

impl Failure {
    pub(super) fn new(code: Code, text: impl Into<String>) -> Self {
        Self { code, text: text.into() }
    }

    /// What several mistakes say, in one line.
    pub(super) fn of(code: Code, mistakes: &Mistakes) -> Self {
        /// More of them help nobody, and a row of nothing but slips must not make a line of megabytes.
        const TOLD: usize = 4;
        let mut parts: Vec<String> = mistakes
            .iter()
            .take(TOLD)
            .map(|mistake| match mistake.remedies().as_slice() {
                [] => mistake.title(),
                remedies => format!("{} ({})", mistake.title(), remedies.join("; ")),
            })
            .collect();
        if mistakes.iter().len() > TOLD {
            parts.push(format!("and {} more", mistakes.iter().len() - TOLD));
        }
        Self::new(code, parts.join("; "))
    }
}

impl Serialize for Failure {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map([("code", self.code.key()), ("text", self.text.as_str())])
    }
}
