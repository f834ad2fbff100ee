//! Files a command writes: whole or not at all, and never over something a person wrote.

use std::{
    io::{Read, Write},
    path::{Path, PathBuf},
};

use crate::mistake::Mistake;

/// A file to be written: its name within the output folder, and its bytes.
pub(super) struct Sheet {
    pub name: String,
    pub bytes: Vec<u8>,
}

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
    let mut parts: Vec<PathBuf> = Vec::with_capacity(paths.len());
    let written = paths.iter().zip(sheets).try_for_each(|(path, sheet)| {
        parts.push(part_of(path));
        write_part(&part_of(path), &sheet.bytes).map_err(|error| failed("write", path, &error))
    });
    let renamed = written.and_then(|()| {
        paths.iter().zip(&parts).try_for_each(|(path, part)| {
            std::fs::rename(part, path).map_err(|error| failed("write", path, &error))
        })
    });
    if renamed.is_err() {
        for part in &parts {
            // Those already renamed are gone; the failure to write is what is reported.
            let _ = std::fs::remove_file(part);
        }
    }
    renamed.map(|()| paths)
}

/// The name under which a file is written until all are whole.
fn part_of(path: &Path) -> PathBuf {
    let mut part = path.as_os_str().to_owned();
    part.push(format!(".{}.part", std::process::id()));
    PathBuf::from(part)
}

fn write_part(part: &Path, bytes: &[u8]) -> std::io::Result<()> {
    let mut file = std::fs::File::create_new(part)?;
    file.write_all(bytes)?;
    file.sync_all()
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
