//! What lies on the table: the measurement file as it was last read, and everything that is made of it.

use std::{collections::VecDeque, path::PathBuf};

use super::{
    asked::{Refusal, Typed, Under, changes},
    toile::Recorded,
};
use crate::{
    file,
    making::{Made, make},
    mistake::{Mistake, Notice, Source},
    order::{Order, edit, record, stands},
    pattern::Wanted,
};

/// A measurement file on the table.
#[derive(Debug)]
pub struct Desk {
    /// Where it is saved; not there yet where a demo was opened.
    path: PathBuf,
    /// Whether a file of that name is ours to write: it was opened, or saved from here.
    opened: bool,
    /// Its text as it was last read.
    source: Source,
    /// Raised whenever the text changes.
    edition: u64,
    /// The texts before it, newest last: what a change was made on.
    earlier: VecDeque<(u64, Source)>,
    /// Why it could not be read again.
    trouble: Option<Mistake>,
}

/// So many texts are kept to tell a conflict by; a person who saved more often elsewhere is asked about every change.
const EARLIER_KEPT: usize = 64;

/// How saving went.
pub(super) enum Saved {
    /// The file has the changes; its new edition.
    Written(u64),
    /// The file was changed elsewhere since; its edition now, and what it says for the changed keys.
    Elsewhere(u64, Vec<(String, Option<String>)>),
}

impl Desk {
    /// A file that is there.
    ///
    /// # Errors
    /// When it cannot be read as text. What is wrong in it is told on the sheet.
    pub fn opened(path: PathBuf) -> Result<Self, Mistake> {
        let source = Source::read(&path)?;
        Ok(Self { path, opened: true, source, edition: 1, earlier: VecDeque::new(), trouble: None })
    }

    /// A text that is no file yet; saving makes `path`, where nothing has that name.
    pub fn new(path: PathBuf, source: Source) -> Self {
        Self { path, opened: false, source, edition: 1, earlier: VecDeque::new(), trouble: None }
    }

    /// Where it is saved.
    pub fn path(&self) -> &std::path::Path {
        &self.path
    }

    pub(super) fn is_file(&self) -> bool {
        self.opened
    }

    pub(super) fn edition(&self) -> u64 {
        self.edition
    }

    /// Reads the file again; whether anything is new.
    pub(super) fn look_again(&mut self) -> bool {
        if !self.opened {
            return false;
        }
        match Source::read(&self.path) {
            Ok(source) => {
                let was_trouble = self.trouble.take().is_some();
                let new = source.text != self.source.text;
                if new {
                    self.turn_over(source);
                }
                new || was_trouble
            }
            Err(mistake) => {
                let new = self.trouble.as_ref() != Some(&mistake);
                self.trouble = Some(mistake);
                new
            }
        }
    }

    /// Why the file could not be read again, if it could not.
    pub(super) fn trouble(&self) -> Option<&Mistake> {
        self.trouble.as_ref()
    }

    /// The text with changes, as it would be saved.
    fn changed(&self, typed: &[Typed]) -> Result<Source, Refusal> {
        if typed.is_empty() {
            return Ok(self.source.clone());
        }
        let (order, _) = Order::read(&self.source)?;
        let text = edit(&self.source, &changes(typed, order.units)?)?;
        Ok(Source::new(self.source.name.clone(), text))
    }

    /// The order with changes.
    pub(super) fn order(&self, typed: &[Typed]) -> Result<(Order, Vec<Notice>), Refusal> {
        Ok(Order::read(&self.changed(typed)?)?)
    }

    /// The draft of the file with changes, as `breeks draft` would make it of the saved file.
    pub(super) fn made(&self, typed: &[Typed]) -> Result<Made, Refusal> {
        let (order, notices) = self.order(typed)?;
        Ok(make(order, notices, &Wanted::default())?)
    }

    /// The draft that lies under that of the file with changes.
    pub(super) fn under(&self, under: Under, typed: &[Typed]) -> Result<Made, Refusal> {
        let (order, notices) = match under {
            Under::Block => {
                let (order, notices) = self.order(typed)?;
                (order.proportions_alone(), notices)
            }
            Under::File => self.order(&[])?,
            Under::Fitting(number) => self.order(&[])?.0.after_fitting(number)?,
        };
        Ok(make(order, notices, &Wanted::default())?)
    }

    /// Writes the changes and the toiles into the file, comments and order kept.
    pub(super) fn save(
        &mut self,
        typed: &[Typed],
        fittings: Vec<Recorded>,
        edition: u64,
    ) -> Result<Saved, Refusal> {
        self.look_again();
        if let Some(mistake) = &self.trouble {
            return Err(mistake.clone().into());
        }
        let theirs = self.set_elsewhere(typed, edition);
        if !theirs.is_empty() {
            return Ok(Saved::Elsewhere(self.edition, theirs));
        }
        let mut source = self.changed(typed)?;
        for fitting in fittings {
            let text = record(&source, &fitting.into())?;
            source = Source::new(source.name.clone(), text);
        }
        self.write(source)?;
        Ok(Saved::Written(self.edition))
    }

    /// Writes a text in place of the file's, or makes the file.
    fn write(&mut self, source: Source) -> Result<(), Mistake> {
        let shown = self.path.display();
        let failed = |error: std::io::Error| match error.kind() {
            std::io::ErrorKind::AlreadyExists => Mistake::new(format!("`{shown}` exists already")).help(
                "this program does not overwrite what a person wrote: move it, or open it with `breeks page`",
            ),
            _ => Mistake::new(format!("cannot write `{shown}`: {error}")),
        };
        if self.opened {
            file::rewrite(&self.path, self.source.text.as_bytes(), source.text.as_bytes()).map_err(failed)?;
        } else {
            if let Some(folder) = self.path.parent() {
                std::fs::create_dir_all(folder).map_err(failed)?;
            }
            file::create(&self.path, source.text.as_bytes()).map_err(failed)?;
            self.opened = true;
        }
        self.turn_over(Source::new(self.path.display().to_string(), source.text));
        Ok(())
    }

    /// A new text takes the place of the last one.
    fn turn_over(&mut self, source: Source) {
        let last = std::mem::replace(&mut self.source, source);
        self.earlier.push_back((self.edition, last));
        if self.earlier.len() > EARLIER_KEPT {
            self.earlier.pop_front();
        }
        self.edition += 1;
    }

    /// Of the changed keys those that the file says something else for than in the edition they were changed on, with
    /// what it says; all of them where that edition is no longer known.
    fn set_elsewhere(&self, typed: &[Typed], edition: u64) -> Vec<(String, Option<String>)> {
        if edition == self.edition {
            return Vec::new();
        }
        let began = self.earlier.iter().find(|(earlier, _)| *earlier == edition).map(|(_, source)| source);
        typed
            .iter()
            .map(|Typed(key, _)| (key.clone(), stands(&self.source, key)))
            .filter(|(key, now)| began.is_none_or(|began| stands(began, key) != *now))
            .collect()
    }
}
