//! One run at a time in a folder.

use std::{
    fs::{self, File, TryLockError},
    io,
    path::{Path, PathBuf},
    thread,
    time::{Duration, Instant},
};

/// The name of the file that is locked; it is there while a run writes.
const NAME: &str = ".breeks-lock";

/// How long a run waits for another one: many times what the largest set takes to be written.
const PATIENCE: Duration = Duration::from_secs(10);
const GLANCE: Duration = Duration::from_millis(10);

/// A folder in which nobody else writes while this is held. The lock is the system's, so that it ends with its process,
/// however that ends; a file that was left behind locks nobody out.
pub(super) struct Lock {
    at: PathBuf,
    /// Holds the system's lock.
    file: File,
}

impl Lock {
    /// Waits until no other run writes into the folder.
    ///
    /// # Errors
    /// [`io::ErrorKind::ResourceBusy`] when another run goes on for very long; otherwise when the folder cannot be
    /// written, or knows no locks.
    pub(super) fn of(folder: &Path) -> io::Result<Self> {
        let at = folder.join(NAME);
        let begun = Instant::now();
        loop {
            match Self::take(&at)? {
                Some(lock) => return Ok(lock),
                None if begun.elapsed() > PATIENCE => return Err(io::ErrorKind::ResourceBusy.into()),
                None => thread::sleep(GLANCE),
            }
        }
    }

    /// The lock, unless somebody has it.
    fn take(at: &Path) -> io::Result<Option<Self>> {
        // never through a link that somebody has put there: a new file, or the plain one of an earlier run
        let file = match File::create_new(at) {
            Ok(file) => file,
            Err(error) if error.kind() == io::ErrorKind::AlreadyExists => match fs::symlink_metadata(at) {
                Ok(about) if about.is_file() => match File::open(at) {
                    Ok(file) => file,
                    Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(None),
                    Err(error) => return Err(error),
                },
                Ok(_) => return Err(io::Error::other(format!("`{}` is in the way", at.display()))),
                Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(None),
                Err(error) => return Err(error),
            },
            Err(error) => return Err(error),
        };
        match file.try_lock() {
            Err(TryLockError::WouldBlock) => return Ok(None),
            Err(TryLockError::Error(error)) => return Err(error),
            Ok(()) => {}
        }
        // The run before may have removed the file between our opening and our locking it; then the lock is of nothing.
        Ok(is_at(&file, at).then(|| Self { at: at.to_owned(), file }))
    }
}

/// Whether this file is the one that has the name.
#[cfg(unix)]
fn is_at(file: &File, at: &Path) -> bool {
    use std::os::unix::fs::MetadataExt;
    let (Ok(held), Ok(named)) = (file.metadata(), fs::symlink_metadata(at)) else { return false };
    (held.dev(), held.ino()) == (named.dev(), named.ino())
}

/// Elsewhere a file that is open keeps its name.
#[cfg(not(unix))]
fn is_at(_: &File, at: &Path) -> bool {
    at.exists()
}

impl Drop for Lock {
    fn drop(&mut self) {
        // Removed while it is held, so that nobody else's goes. What stays locks nobody out.
        let _ = fs::remove_file(&self.at);
        let _ = self.file.unlock();
    }
}
