//! A file that is written beside its name and takes it when it is whole.

use std::{
    fs::{self, OpenOptions},
    io::{self, Write},
    path::{Path, PathBuf},
    sync::atomic::{AtomicU32, Ordering},
};

/// What the name of every part begins and ends with; between stand the process and a number.
const BEGINNING: &str = ".breeks-";
const ENDING: &str = ".part";

/// More names that are taken, and the folder is somebody's trap.
const MOST_NAMES: u32 = 1000;

/// A whole file that waits for its name; nothing of it is left when it is dropped before it got it.
pub(super) struct Part {
    at: PathBuf,
    name: PathBuf,
}

impl Part {
    /// Writes the bytes into a new file in the folder of `name`, with the permissions of what has that name.
    pub(super) fn write(name: &Path, bytes: &[u8]) -> io::Result<Self> {
        let old = fs::symlink_metadata(name).ok().filter(fs::Metadata::is_file).map(|old| old.permissions());
        let mut options = OpenOptions::new();
        options.write(true).create_new(true);
        #[cfg(unix)]
        if let Some(old) = &old {
            use std::os::unix::fs::{OpenOptionsExt as _, PermissionsExt as _};
            // from its first moment no more people may read it than may read the old one
            options.mode(old.mode() & 0o777);
        }
        let (mut file, at) = new(name, &options)?;
        let part = Self { at, name: name.to_owned() };
        if let Some(old) = old {
            file.set_permissions(old)?;
        }
        file.write_all(bytes)?;
        file.sync_all()?;
        Ok(part)
    }

    /// What has the name now, under a second name, so that it can be given back; nothing where nothing has it.
    pub(super) fn kept(name: &Path) -> io::Result<Option<Self>> {
        if !name.try_exists()? {
            return Ok(None);
        }
        for _ in 0..MOST_NAMES {
            let at = beside(name);
            match fs::hard_link(name, &at) {
                Ok(()) => return Ok(Some(Self { at, name: name.to_owned() })),
                Err(error) if error.kind() == io::ErrorKind::AlreadyExists => {}
                // a file system without links
                Err(_) => return Self::write(name, &fs::read(name)?).map(Some),
            }
        }
        Err(io::ErrorKind::AlreadyExists.into())
    }

    /// Takes the name, whatever has it.
    pub(super) fn replace(self) -> io::Result<()> {
        fs::rename(&self.at, &self.name)
    }

    /// Takes the name if nothing has it.
    pub(super) fn claim(self) -> io::Result<()> {
        match fs::hard_link(&self.at, &self.name) {
            // a file system without links: claim the name, then move over the claim
            Err(error) if error.kind() != io::ErrorKind::AlreadyExists => {
                fs::File::create_new(&self.name)?;
                fs::rename(&self.at, &self.name)
            }
            linked => linked,
        }
    }
}

impl Drop for Part {
    fn drop(&mut self) {
        // It has its name, or a failure to write is what is reported.
        let _ = fs::remove_file(&self.at);
    }
}

/// A new file in the folder of `name`, never an old one and never through a link.
fn new(name: &Path, options: &OpenOptions) -> io::Result<(fs::File, PathBuf)> {
    for _ in 0..MOST_NAMES {
        let at = beside(name);
        match options.open(&at) {
            Ok(file) => return Ok((file, at)),
            Err(error) if error.kind() == io::ErrorKind::AlreadyExists => {}
            Err(error) => return Err(error),
        }
    }
    Err(io::ErrorKind::AlreadyExists.into())
}

/// A name for a part beside `name` that this process has not used yet.
fn beside(name: &Path) -> PathBuf {
    static NUMBER: AtomicU32 = AtomicU32::new(0);
    let (process, number) = (std::process::id(), NUMBER.fetch_add(1, Ordering::Relaxed));
    name.with_file_name(format!("{BEGINNING}{process}-{number}{ENDING}"))
}

/// Removes the parts that runs left behind which were ended from outside. Only for one who holds the lock of the folder:
/// all parts are of runs that have ended then.
pub(super) fn sweep(folder: &Path) {
    let Ok(entries) = fs::read_dir(folder) else { return };
    for entry in entries.flatten() {
        if entry.file_name().to_str().is_some_and(is_part)
            && entry.file_type().is_ok_and(|kind| kind.is_file())
        {
            // Left for the next run if it cannot go: it is in nobody's way.
            let _ = fs::remove_file(entry.path());
        }
    }
}

fn is_part(name: &str) -> bool {
    let numbers = name.strip_prefix(BEGINNING).and_then(|rest| rest.strip_suffix(ENDING));
    let is_number = |text: &str| !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit());
    numbers.and_then(|numbers| numbers.split_once('-')).is_some_and(|(a, b)| is_number(a) && is_number(b))
}
