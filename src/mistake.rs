//! What a person did wrong, shown at its place with what was expected and what to do; and notices, which stop nothing.

use std::{fmt, io::Read, ops::Range, path::Path, sync::Arc};

use annotate_snippets::{AnnotationKind, Group, Level, Renderer, Snippet};

/// A text that a person wrote, with the name by which they know it: a file's path or a command-line option.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Source {
    /// The name shown before the line number.
    pub name: Arc<str>,
    /// The whole text.
    pub text: Arc<str>,
}

/// A larger file is no measurement file and no recipe, and is refused unread, bytes.
pub const LARGEST_FILE: u64 = 256 * 1024;

impl Source {
    /// The text of a file.
    ///
    /// # Errors
    /// When the file is missing, no plain file, larger than [`LARGEST_FILE`], not to be opened, or not UTF-8 text.
    pub fn read(path: &Path) -> Result<Self, Mistake> {
        let shown = path.display();
        let failed = |error: &std::io::Error| Mistake::new(format!("cannot read `{shown}`: {error}"));
        let about = std::fs::metadata(path).map_err(|error| failed(&error))?;
        if !about.is_file() {
            return Err(Mistake::new(format!("`{shown}` is not a file")));
        }
        if about.len() > LARGEST_FILE {
            return Err(Mistake::new(format!(
                "`{shown}` is too large: {} bytes, expected at most {LARGEST_FILE}",
                about.len()
            )));
        }
        // A file that grows while it is read is cut off one byte beyond what is allowed.
        let mut bytes = Vec::new();
        std::fs::File::open(path)
            .and_then(|file| file.take(LARGEST_FILE + 1).read_to_end(&mut bytes))
            .map_err(|error| failed(&error))?;
        match String::from_utf8(bytes) {
            Ok(text) => Ok(Self::new(shown.to_string(), text)),
            Err(_) => Err(Mistake::new(format!("`{shown}` is not a text file")).help("expected UTF-8 text")),
        }
    }

    /// A text under the name by which its writer knows it.
    pub fn new(name: impl Into<Arc<str>>, text: impl Into<Arc<str>>) -> Self {
        Self { name: name.into(), text: text.into() }
    }
}

/// One thing a person did wrong.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Mistake {
    /// What is wrong, in one line: lower case, no full stop, names in backticks.
    pub title: String,
    /// Where it stands, with the words beside the caret.
    pub place: Option<(Source, Range<usize>, String)>,
    /// What to do about it, a sentence a line.
    pub help: Vec<String>,
}

impl Mistake {
    /// A mistake without a place yet.
    pub fn new(title: impl Into<String>) -> Self {
        Self { title: title.into(), place: None, help: Vec::new() }
    }

    /// Points at the bytes `span` of `source`, with `label` beside the caret.
    #[must_use]
    pub fn at(mut self, source: &Source, span: Range<usize>, label: impl Into<String>) -> Self {
        self.place = Some((source.clone(), span, label.into()));
        self
    }

    /// Adds what to do.
    #[must_use]
    pub fn help(mut self, remedy: impl Into<String>) -> Self {
        self.help.push(remedy.into());
        self
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
        let mut group = Group::with_title(Level::ERROR.primary_title(&self.title));
        let shown =
            self.place.as_ref().map(|(source, span, label)| (source, excerpt(&source.text, span), label));
        if let Some((source, excerpt, label)) = &shown {
            group = group.element(
                Snippet::source(&excerpt.text)
                    .line_start(excerpt.first_line)
                    .path(&*source.name)
                    .annotation(AnnotationKind::Primary.span(excerpt.span.clone()).label(label.as_str())),
            );
        }
        for remedy in &self.help {
            group = group.element(Level::HELP.message(remedy.as_str()));
        }
        let renderer = if colour { Renderer::styled() } else { Renderer::plain() };
        renderer.render(&[group]).to_string()
    }
}

/// The quoted line is cut to this many characters, so that a file of one long line cannot flood the screen.
const QUOTED_COLUMNS: usize = 100;

struct Excerpt {
    text: String,
    span: Range<usize>,
    first_line: usize,
}

/// The one line that holds the start of `span`, cut to [`QUOTED_COLUMNS`] and cleared of control characters.
fn excerpt(text: &str, span: &Range<usize>) -> Excerpt {
    let start = floor_char(text, span.start);
    let line_start = text[..start].rfind('\n').map_or(0, |at| at + 1);
    let line_end = text[start..].find('\n').map_or(text.len(), |at| start + at);
    let first_line = text[..line_start].matches('\n').count() + 1;
    let end = floor_char(text, span.end).clamp(start, line_end);
    let before = text[line_start..start].chars().count();
    let skip = before.saturating_sub(QUOTED_COLUMNS / 2);
    let (mut quoted, mut from, mut to) = (String::new(), None, None);
    for (offset, letter) in text[line_start..line_end].char_indices().skip(skip).take(QUOTED_COLUMNS) {
        let at = line_start + offset;
        if at >= start && from.is_none() {
            from = Some(quoted.len());
        }
        if at >= end && to.is_none() {
            to = Some(quoted.len());
        }
        let hidden = letter.is_control() && letter != '\t' || is_bidi_control(letter);
        quoted.push(if hidden { '\u{fffd}' } else { letter });
    }
    let from = from.unwrap_or(quoted.len());
    Excerpt { span: from..to.unwrap_or(quoted.len()).max(from), text: quoted, first_line }
}

/// Characters that turn the reading direction and could make a quoted line show something it does not say.
fn is_bidi_control(letter: char) -> bool {
    matches!(letter, '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

fn floor_char(text: &str, at: usize) -> usize {
    let mut at = at.min(text.len());
    while !text.is_char_boundary(at) {
        at -= 1;
    }
    at
}

/// The known name nearest to `word`, if one is near enough to be meant.
pub fn nearest<'a>(word: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    /// Jaro-Winkler below this reads as a different word rather than a slip (tried on the keys of this program).
    const NEAR: f64 = 0.84;
    known
        .into_iter()
        .map(|name| (strsim::jaro_winkler(word, name), name))
        .filter(|(likeness, _)| *likeness >= NEAR)
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, name)| name)
}

impl fmt::Display for Mistake {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.render(false))
    }
}

/// All mistakes found in one reading; never empty when returned as an error.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Mistakes(pub Vec<Mistake>);

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

impl fmt::Display for Mistakes {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (index, mistake) in self.0.iter().enumerate() {
            if index > 0 {
                out.write_str("\n\n")?;
            }
            mistake.fmt(out)?;
        }
        Ok(())
    }
}

impl std::error::Error for Mistakes {}

/// Something a person should know that stops nothing.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
pub struct Notice {
    /// A short fixed name, for programs.
    pub code: &'static str,
    /// The sentence, for people.
    pub text: String,
}

impl Notice {
    /// A notice under a fixed code.
    pub fn new(code: &'static str, text: impl Into<String>) -> Self {
        Self { code, text: text.into() }
    }
}
