//! What a person did wrong, shown at its place with what was expected and what to do; and notices, which stop nothing.

mod quote;
mod source;

use std::{fmt, ops::Range};

use annotate_snippets::{AnnotationKind, Group, Level, Renderer, Snippet};

use quote::quote;
pub(crate) use quote::{harmless_json, harmless_text};
pub use source::{LARGEST_FILE, Source};

use crate::{
    terms::words,
    unit::Unit,
    voice::{Sentence, Value, rule_of_thumb},
};

/// One thing a person did wrong.
///
/// ```
/// use breeks::{mistake::Mistake, unit::Unit, voice::{Sentence, length}};
///
/// let mistake = Mistake::new(Sentence::new("a roll of {width} is too narrow").with("width", length(30.48)))
///     .help("name a wider one");
/// assert_eq!(mistake.title(), "a roll of 30.5 cm is too narrow");
/// assert_eq!(mistake.in_unit(Unit::Inch).title(), "a roll of 12 in is too narrow");
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Mistake {
    title: Sentence,
    place: Option<Box<(Source, Range<usize>, Sentence)>>,
    help: Vec<Sentence>,
    unit: Unit,
}

/// Words of a mistake: a sentence, or words that were put together from names, which hold no length, since they read
/// alike in every unit. A notice has no such door: its words are fixed.
#[derive(Clone, Debug, PartialEq)]
pub struct Complaint(Sentence);

impl From<Sentence> for Complaint {
    fn from(said: Sentence) -> Self {
        Self(said)
    }
}

impl From<&'static str> for Complaint {
    fn from(words: &'static str) -> Self {
        Self(Sentence::new(words))
    }
}

impl From<String> for Complaint {
    fn from(words: String) -> Self {
        debug_assert!(
            words.split('`').step_by(2).all(|own| rule_of_thumb(own, Unit::Inch) == own),
            "a length is a value of a sentence: {words}"
        );
        Self(Sentence::told(words))
    }
}

impl Mistake {
    /// A mistake without a place yet.
    ///
    /// `title` says in one line what is wrong: lower case, no full stop, names in backticks. A text that was put together
    /// may hold names, but no lengths: those are values of a [`Sentence`].
    pub fn new(title: impl Into<Complaint>) -> Self {
        Self { title: title.into().0, place: None, help: Vec::new(), unit: Unit::Cm }
    }

    /// Points at the bytes `span` of `source`, with `label` beside the caret.
    #[must_use]
    pub fn at(mut self, source: &Source, span: Range<usize>, label: impl Into<Complaint>) -> Self {
        self.place = Some(Box::new((source.clone(), span, label.into().0)));
        self
    }

    /// The same without its place, where that is in a text which the person does not see.
    #[must_use]
    pub(crate) fn without_place(mut self) -> Self {
        self.place = None;
        self
    }

    /// Adds what to do, in a sentence.
    #[must_use]
    pub fn help(mut self, remedy: impl Into<Complaint>) -> Self {
        self.help.push(remedy.into().0);
        self
    }

    /// The same for a reader of `unit`.
    #[must_use]
    pub fn in_unit(mut self, unit: Unit) -> Self {
        self.unit = unit;
        self
    }

    /// What is wrong, in one line.
    pub fn title(&self) -> String {
        self.title.in_unit(self.unit)
    }

    /// The text in which it stands, and at which bytes.
    pub fn place(&self) -> Option<(&Source, Range<usize>)> {
        self.place.as_deref().map(|(source, span, _)| (source, span.clone()))
    }

    /// What to do about it, a sentence a line.
    pub fn remedies(&self) -> Vec<String> {
        self.help.iter().map(|remedy| remedy.in_unit(self.unit)).collect()
    }

    /// Adds the known name nearest to `word`, if one is near enough to be meant.
    #[must_use]
    pub fn nearest<'a>(self, word: &str, known: impl IntoIterator<Item = &'a str>) -> Self {
        match nearest(word, known) {
            Some(near) => self.help(format!("did you mean `{near}`?")),
            None => self,
        }
    }

    /// The mistake as a person reads it, with its source lines; `colour` only for a terminal.
    pub fn render(&self, colour: bool) -> String {
        let title = harmless_text(&self.title());
        let mut group = Group::with_title(Level::ERROR.primary_title(&title));
        let mut help: Vec<String> = self.remedies().iter().map(|remedy| harmless_text(remedy)).collect();
        let shown = self.place.as_deref().map(|(source, span, label)| {
            (harmless_text(&source.name), quote(&source.text, span), harmless_text(&label.in_unit(self.unit)))
        });
        if let Some((name, quote, label)) = &shown {
            let mut mark = AnnotationKind::Primary.span(quote.span.clone());
            if !label.is_empty() {
                mark = mark.label(label.as_str());
            }
            group = group.element(
                Snippet::source(&quote.text).line_start(quote.line).path(name.as_str()).annotation(mark),
            );
            if let Some(column) = quote.cut_column {
                help.insert(0, format!("the line is long; this is column {column} of it"));
            }
        }
        let help: Vec<String> = help.iter().map(|remedy| wrapped(remedy, help_columns())).collect();
        for remedy in &help {
            group = group.element(Level::HELP.message(remedy.as_str()));
        }
        let renderer = if colour { Renderer::styled() } else { Renderer::plain() };
        renderer.render(&[group]).to_string()
    }
}

/// The width for which sentences on a terminal are made: 80 columns, fewer where `COLUMNS` says that there are fewer. What
/// is wider is harder to read.
pub(crate) fn columns() -> usize {
    const WIDTH: std::ops::RangeInclusive<usize> = 20..=80;
    let asked = std::env::var("COLUMNS").ok().and_then(|columns| columns.parse().ok());
    asked.unwrap_or(*WIDTH.end()).clamp(*WIDTH.start(), *WIDTH.end())
}

/// A remedy is broken into lines so long that with its margin it leaves a terminal of 100 columns whole, or a narrower one
/// of whose width we know.
fn help_columns() -> usize {
    const OF_A_WIDE_ONE: usize = 84;
    const MARGIN: usize = 10;
    if columns() < 80 { columns() - MARGIN } else { OF_A_WIDE_ONE }
}

/// A text in lines of at most so many characters, broken between words; a longer word stays whole.
pub(crate) fn wrapped(text: &str, columns: usize) -> String {
    let mut lines = String::new();
    let mut used = 0;
    for word in text.split_inclusive(' ') {
        let long = word.trim_end().chars().count();
        if used > 0 && used + long > columns {
            lines.truncate(lines.trim_end_matches(' ').len());
            lines.push('\n');
            used = 0;
        }
        lines.push_str(word);
        used += word.chars().count();
    }
    lines
}

/// The known name nearest to `word`, if one is near enough to be meant.
pub fn nearest<'a>(word: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    /// Jaro-Winkler below this reads as a different word rather than a slip (tried on the keys of this program).
    const NEAR: f64 = 0.84;
    /// Longer is no slip of a name, bytes.
    const LONGEST: usize = 100;
    if word.len() > LONGEST {
        return None;
    }
    // one letter wrong, missing, too many or in its neighbour's place: in a short name that is much by Jaro-Winkler
    let one_slip = |name: &str| name.len() > 2 && strsim::osa_distance(word, name) <= 1;
    known
        .into_iter()
        .map(|name| (strsim::jaro_winkler(word, name), name))
        .filter(|(likeness, name)| *likeness >= NEAR || one_slip(name))
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, name)| name)
}

impl fmt::Display for Mistake {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.render(false))
    }
}

impl std::error::Error for Mistake {}

/// All mistakes found in one reading; never empty when returned as an error.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Mistakes(Vec<Mistake>);

impl From<Mistake> for Mistakes {
    fn from(mistake: Mistake) -> Self {
        Self(vec![mistake])
    }
}

impl From<Vec<Mistake>> for Mistakes {
    fn from(mistakes: Vec<Mistake>) -> Self {
        Self(mistakes)
    }
}

/// More than this many are counted, not shown: what fills a screen is not read.
const MOST_SHOWN: usize = 12;

impl Mistakes {
    /// The same for a reader of `unit`.
    #[must_use]
    pub fn in_unit(self, unit: Unit) -> Self {
        Self(self.0.into_iter().map(|mistake| mistake.in_unit(unit)).collect())
    }

    /// In the order of the text.
    pub fn iter(&self) -> std::slice::Iter<'_, Mistake> {
        self.0.iter()
    }

    /// The mistakes as a person reads them; `colour` only for a terminal.
    pub fn render(&self, colour: bool) -> String {
        let mut shown: Vec<String> =
            self.0.iter().take(MOST_SHOWN).map(|mistake| mistake.render(colour)).collect();
        if self.0.len() > MOST_SHOWN {
            shown.push(format!("and {} more", self.0.len() - MOST_SHOWN));
        }
        shown.join("\n\n")
    }
}

impl fmt::Display for Mistakes {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.render(false))
    }
}

impl std::error::Error for Mistakes {}

words! {
    /// How much weight a notice has for whoever stands with the shears in hand.
    Severity {
        /// Good to know.
        Note = "note",
        /// Cut a toile only, and look at this on it.
        Mind = "mind",
        /// Not to be cut as it stands.
        NotToCut = "not_to_cut",
    }
}

/// Something a person should know that stops nothing: a sentence whose quantities are worded where it is read.
///
/// ```
/// use breeks::{mistake::Notice, unit::Unit, voice::length};
///
/// let notice = Notice::mind("take-back", "the crotch seam is {over} longer than wanted").with("over", length(1.27));
/// assert_eq!(notice.text(Unit::Cm), "the crotch seam is 1.3 cm longer than wanted");
/// assert_eq!(notice.text(Unit::Inch), "the crotch seam is 1/2 in longer than wanted");
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Notice {
    /// A short fixed name, for programs.
    pub code: &'static str,
    /// Its weight.
    pub severity: Severity,
    /// What it says.
    pub said: Sentence,
}

impl Notice {
    /// A notice under a fixed code that is good to know.
    pub fn note(code: &'static str, said: impl Into<Sentence>) -> Self {
        Self { code, severity: Severity::Note, said: said.into() }
    }

    /// A notice under a fixed code for which only a toile should be cut.
    pub fn mind(code: &'static str, said: impl Into<Sentence>) -> Self {
        Self { severity: Severity::Mind, ..Self::note(code, said) }
    }

    /// A notice under a fixed code that forbids cutting.
    pub fn not_to_cut(code: &'static str, said: impl Into<Sentence>) -> Self {
        Self { severity: Severity::NotToCut, ..Self::note(code, said) }
    }

    /// The value of a name in its sentence, as [`Sentence::with`].
    #[must_use]
    pub fn with(mut self, name: &'static str, value: impl Into<Value>) -> Self {
        self.said = self.said.with(name, value);
        self
    }

    /// More behind its sentence, as [`Sentence::then`].
    #[must_use]
    pub fn then(mut self, more: impl Into<Sentence>) -> Self {
        self.said = self.said.then(more.into());
        self
    }

    /// The sentence, for people who read `unit`.
    pub fn text(&self, unit: Unit) -> String {
        self.said.in_unit(unit)
    }

    /// Each of these notices once, where it is first said: two legs have much in common. What reads alike is alike.
    pub fn once(notices: impl IntoIterator<Item = Self>) -> Vec<Self> {
        let mut said: Vec<Self> = Vec::new();
        for notice in notices {
            let alike = |it: &Self| it.code == notice.code && it.text(Unit::Cm) == notice.text(Unit::Cm);
            if !said.iter().any(alike) {
                said.push(notice);
            }
        }
        said
    }
}
