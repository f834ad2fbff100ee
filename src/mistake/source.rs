//! Texts that people wrote, and how they come off the disk.

use std::{
    io::{ErrorKind, Read},
    path::Path,
    sync::Arc,
};

use super::Mistake;

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
    /// A text under the name by which its writer knows it.
    pub fn new(name: impl Into<Arc<str>>, text: impl Into<Arc<str>>) -> Self {
        Self { name: name.into(), text: text.into() }
    }

    /// The text of a file.
    ///
    /// # Errors
    /// When the file is missing, no plain file, larger than [`LARGEST_FILE`], not to be opened, or not UTF-8 text.
    pub fn read(path: &Path) -> Result<Self, Mistake> {
        let shown = path.display();
        let failed = |error: &std::io::Error| match error.kind() {
            ErrorKind::NotFound => Mistake::new(format!("there is no file `{shown}`")),
            ErrorKind::PermissionDenied => Mistake::new(format!("no permission to read `{shown}`")),
            _ => Mistake::new(format!("cannot read `{shown}`: {error}")),
        };
        // asked before opening: to open a pipe would wait for its writer
        let about = std::fs::metadata(path).map_err(|error| failed(&error))?;
        if about.is_dir() {
            return Err(Mistake::new(format!("`{shown}` is a directory, expected a file")));
        }
        if !about.is_file() {
            return Err(Mistake::new(format!("`{shown}` is not a plain file")));
        }
        let too_large = |bytes: &str| {
            Mistake::new(format!("`{shown}` is too large: {bytes} bytes, expected at most {LARGEST_FILE}"))
                .help("measurement files and recipes are short texts; is this another file?")
        };
        if about.len() > LARGEST_FILE {
            return Err(too_large(&about.len().to_string()));
        }
        let mut bytes = Vec::new();
        std::fs::File::open(path)
            .and_then(|file| file.take(LARGEST_FILE + 1).read_to_end(&mut bytes))
            .map_err(|error| failed(&error))?;
        // it grew while it was read
        if bytes.len() as u64 > LARGEST_FILE {
            return Err(too_large("more"));
        }
        String::from_utf8(bytes).map(|text| Self::new(shown.to_string(), text)).map_err(|error| {
            let good = &error.as_bytes()[..error.utf8_error().valid_up_to()];
            let line = 1 + good.iter().filter(|byte| **byte == b'\n').count();
            Mistake::new(format!("`{shown}` is not plain text: line {line} is not UTF-8"))
                .help("save it as plain text in UTF-8; the file of a word processor or a spreadsheet cannot be read")
        })
    }
}
