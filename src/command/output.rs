//! Files a command writes: whole or not at all, and never over something a person wrote.

use std::{
    io::Read,
    path::{Path, PathBuf},
};

use crate::{file, mistake::Mistake};

/// A file to be written: its name within the output folder, and its bytes.
pub(super) struct Sheet {
    pub name: String,
    pub bytes: Vec<u8>,
}

/// A file with how much paper it takes, where that is to be said.
pub(super) type Counted = (Sheet, Option<String>);

/// Every file this program writes says its name near the top; a file that does not is somebody else's.
const MARK: &str = "breeks";
/// How far into a file the mark is looked for, bytes: behind a label of the longest kind.
const MARK_WITHIN: usize = 4096;

/// Writes all sheets into `folder`, making it if needed, and returns their paths. Nothing is written when one of them
/// would overwrite a file that this program did not make.
pub(super) fn write_all(folder: &Path, sheets: &[Sheet]) -> Result<Vec<PathBuf>, Mistake> {
    let failed = |what: &str, path: &Path, error: &std::io::Error| {
        Mistake::new(format!("cannot {what} `{}`: {error}", path.display()))
            .help("name another folder with `--out`")
    };
    let paths: Vec<PathBuf> = sheets.iter().map(|sheet| folder.join(&sheet.name)).collect();
    if let Some(path) = paths.iter().find(|path| path.symlink_metadata().is_ok() && !is_ours(path)) {
        return Err(Mistake::new(format!("`{}` exists and was not made by this program", path.display()))
            .help("move it, or name another folder with `--out`"));
    }
    std::fs::create_dir_all(folder).map_err(|error| failed("make the folder", folder, &error))?;
    let files: Vec<(&Path, &[u8])> =
        paths.iter().zip(sheets).map(|(path, sheet)| (path.as_path(), sheet.bytes.as_slice())).collect();
    file::replace_all(&files).map_err(|(path, error)| failed("write", path, &error))?;
    Ok(paths)
}

/// Writes a new file, whole or not at all; a file that exists is left alone.
pub(super) fn write_new(path: &Path, text: &str) -> Result<(), Mistake> {
    file::create(path, text.as_bytes()).map_err(|error| {
        if error.kind() == std::io::ErrorKind::AlreadyExists {
            exists(path)
        } else {
            Mistake::new(format!("cannot write `{}`: {error}", path.display()))
        }
    })
}

/// What a person is told whose file is there already.
pub(super) fn exists(path: &Path) -> Mistake {
    Mistake::new(format!("`{}` exists already", path.display()))
        .help("name another file: this program does not overwrite what a person wrote")
}

/// Whether a file was written by this program. Anything but a plain file, such as a pipe that nobody feeds, was not.
fn is_ours(path: &Path) -> bool {
    let mut head = Vec::new();
    path.is_file()
        && std::fs::File::open(path)
            .and_then(|file| file.take(MARK_WITHIN as u64).read_to_end(&mut head))
            .is_ok_and(|_| String::from_utf8_lossy(&head).contains(MARK))
}

/// A label as the stem of a file name: letters, digits and hyphens, not too long.
pub(super) fn file_stem(label: &str) -> String {
    /// Long enough for any boat place, short enough for any file system.
    const LONGEST: usize = 40;
    let stem: String = label
        .chars()
        .map(|letter| if letter.is_alphanumeric() { letter } else { '-' })
        .take(LONGEST)
        .collect();
    let stem = stem.trim_matches('-');
    if stem.is_empty() { "body".to_owned() } else { stem.to_owned() }
}
