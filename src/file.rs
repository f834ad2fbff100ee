//! Files that come whole or not at all.

use std::{
    ffi::OsString,
    fs, io,
    io::Write,
    path::{Path, PathBuf},
};

/// Writes a file in place of what has that name, if anything has: a reader sees the old file or the new one, whole.
///
/// # Errors
/// When the file beside it cannot be made, written or moved to its name; then the old file is as it was.
pub fn replace(path: &Path, bytes: &[u8]) -> io::Result<()> {
    Beside::write(&followed(path), bytes)?.replace()
}

/// Writes several files as [`replace`] does; none takes its name before all are written.
///
/// # Errors
/// As [`replace`], with the path that failed. Only when moving to a name fails may files before it be new already.
pub fn replace_all<'a>(files: &[(&'a Path, &[u8])]) -> Result<(), (&'a Path, io::Error)> {
    let mut written = Vec::with_capacity(files.len());
    for (path, bytes) in files {
        let beside = Beside::write(&followed(path), bytes).map_err(|error| (*path, error))?;
        written.push((*path, beside));
    }
    written.into_iter().try_for_each(|(path, beside)| beside.replace().map_err(|error| (path, error)))
}

/// Writes a file that is not there yet.
///
/// # Errors
/// [`io::ErrorKind::AlreadyExists`] when something has that name; otherwise as [`replace`].
pub fn create(path: &Path, bytes: &[u8]) -> io::Result<()> {
    // told early, before anything is written
    if fs::symlink_metadata(path).is_ok() {
        return Err(io::ErrorKind::AlreadyExists.into());
    }
    let beside = Beside::write(path, bytes)?;
    match fs::hard_link(&beside.at, path) {
        // a file system without links: claim the name, then move over the claim
        Err(error) if error.kind() != io::ErrorKind::AlreadyExists => {
            fs::File::create_new(path)?;
            beside.replace()
        }
        linked => linked,
    }
}

/// Where a path leads: a link stays a link, to a new text.
fn followed(path: &Path) -> PathBuf {
    fs::canonicalize(path).unwrap_or_else(|_| path.to_owned())
}

/// A whole file that waits beside its name; nothing of it is left when it is dropped before it got it.
struct Beside {
    at: PathBuf,
    name: PathBuf,
}

impl Beside {
    fn write(path: &Path, bytes: &[u8]) -> io::Result<Self> {
        let mut name = path.file_name().map_or_else(OsString::new, ToOwned::to_owned);
        name.push(format!(".{}.part", std::process::id()));
        let beside = Self { at: path.with_file_name(name), name: path.to_owned() };
        let mut file = fs::File::create(&beside.at)?;
        file.write_all(bytes)?;
        file.sync_all()?;
        Ok(beside)
    }

    fn replace(&self) -> io::Result<()> {
        if let Ok(old) = fs::metadata(&self.name) {
            fs::set_permissions(&self.at, old.permissions())?;
        }
        fs::rename(&self.at, &self.name)
    }
}

impl Drop for Beside {
    fn drop(&mut self) {
        // It has its name, or a failure to write is what is reported.
        let _ = fs::remove_file(&self.at);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A folder of its own for a test.
    fn folder(name: &str) -> PathBuf {
        let folder = std::env::temp_dir().join(format!("breeks-file-{name}-{}", std::process::id()));
        fs::create_dir_all(&folder).unwrap();
        folder
    }

    #[test]
    fn new_file_never_over_an_old_one() {
        let folder = folder("create");
        let path = folder.join("body.toml");
        create(&path, b"one").unwrap();
        assert_eq!(create(&path, b"two").unwrap_err().kind(), io::ErrorKind::AlreadyExists);
        assert_eq!(fs::read(&path).unwrap(), b"one");
        assert_eq!(fs::read_dir(&folder).unwrap().count(), 1);
        fs::remove_dir_all(&folder).unwrap();
    }

    #[test]
    fn replaced_file_whole_and_nothing_beside_it() {
        let folder = folder("replace");
        let path = folder.join("body.toml");
        replace(&path, b"a longer text").unwrap();
        replace(&path, b"short").unwrap();
        assert_eq!(fs::read(&path).unwrap(), b"short");
        assert_eq!(fs::read_dir(&folder).unwrap().count(), 1);
        fs::remove_dir_all(&folder).unwrap();
    }

    #[test]
    fn nothing_left_behind_when_the_name_is_a_folder() {
        let folder = folder("failed");
        let path = folder.join("taken");
        fs::create_dir(&path).unwrap();
        assert!(replace(&path, b"text").is_err());
        assert_eq!(fs::read_dir(&folder).unwrap().count(), 1);
        fs::remove_dir_all(&folder).unwrap();
    }

    #[test]
    fn first_of_several_as_it_was_when_a_later_one_fails() {
        let folder = folder("several");
        let (path, nowhere) = (folder.join("front.svg"), folder.join("missing/back.svg"));
        replace(&path, b"old").unwrap();
        let failed = replace_all(&[(&path, b"new"), (&nowhere, b"new")]).unwrap_err();
        assert_eq!(failed.0, nowhere);
        assert_eq!(fs::read(&path).unwrap(), b"old");
        assert_eq!(fs::read_dir(&folder).unwrap().count(), 1);
        replace_all(&[(&path, b"new")]).unwrap();
        assert_eq!(fs::read(&path).unwrap(), b"new");
        fs::remove_dir_all(&folder).unwrap();
    }
}
