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
    // a link stays a link, to a new text
    let path = fs::canonicalize(path).unwrap_or_else(|_| path.to_owned());
    written_beside(&path, bytes, |beside| {
        if let Ok(old) = fs::metadata(&path) {
            fs::set_permissions(beside, old.permissions())?;
        }
        fs::rename(beside, &path)
    })
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
    written_beside(path, bytes, |beside| match fs::hard_link(beside, path) {
        Ok(()) => fs::remove_file(beside),
        // a file system without links: claim the name, then move over the claim
        Err(error) if error.kind() != io::ErrorKind::AlreadyExists => {
            fs::File::create_new(path)?;
            fs::rename(beside, path)
        }
        Err(error) => Err(error),
    })
}

/// Writes a file beside `path`, lets `put` bring it to its name, and leaves nothing behind when that fails.
fn written_beside(path: &Path, bytes: &[u8], put: impl FnOnce(&Path) -> io::Result<()>) -> io::Result<()> {
    let mut name = path.file_name().map_or_else(OsString::new, ToOwned::to_owned);
    name.push(format!(".{}.part", std::process::id()));
    let beside: PathBuf = path.with_file_name(name);
    let written = fs::File::create(&beside).and_then(|mut file| {
        file.write_all(bytes)?;
        file.sync_all()
    });
    written.and_then(|()| put(&beside)).inspect_err(|_| {
        // the failure to write is what is reported
        let _ = fs::remove_file(&beside);
    })
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
}
