//! Files that come whole or not at all, one run at a time in a folder, and never over what is somebody else's.
//!
//! Every file is written beside its name first, into a part that nobody else can have made, and takes its name when it is
//! whole. While a run writes it holds the lock of the folder; the next one sweeps out the parts that a run left which was
//! ended from outside.

mod lock;
mod part;
mod seal;

use std::{
    fs, io,
    path::{Path, PathBuf},
};

use self::{lock::Lock, part::Part};
pub use seal::{Owner, sealed, unsealed};

/// Writes a file that is not there yet.
///
/// # Errors
/// [`io::ErrorKind::AlreadyExists`] when something has that name; otherwise when the folder cannot be written.
pub fn create(path: &Path, bytes: &[u8]) -> io::Result<()> {
    // told early, before anything is written
    if path.symlink_metadata().is_ok() {
        return Err(io::ErrorKind::AlreadyExists.into());
    }
    let _lock = entered(folder_of(path))?;
    Part::write(path, bytes)?.claim()
}

/// Writes a person's file anew. A link stays a link, to a new text.
///
/// # Errors
/// When it does not hold `was` any more, may not be written, or the folder cannot be; then it is as it was.
pub fn rewrite(path: &Path, was: &[u8], bytes: &[u8]) -> io::Result<()> {
    let path = fs::canonicalize(path)?;
    let _lock = entered(folder_of(&path))?;
    if fs::read(&path)? != was {
        return Err(io::Error::other("it was changed meanwhile, and stays as it is now"));
    }
    // to take its name one need not be allowed to write into it
    if fs::metadata(&path)?.permissions().readonly() {
        return Err(io::Error::new(io::ErrorKind::PermissionDenied, "it may not be written"));
    }
    Part::write(&path, bytes)?.replace()
}

/// Why a set of files was not written. Nothing of it is there then, and what was there before is.
#[derive(Debug)]
pub enum Refusal {
    /// This has the name of a file of the set, and a person made it or changed it.
    Foreign(PathBuf),
    /// This has the name of a file of the set and was made for another owner.
    OfAnother(PathBuf),
    /// The system would not.
    Failed(PathBuf, io::Error),
}

/// Writes files that belong together into a folder, each under its name and sealed for `owner`. An earlier set of the same
/// owner is replaced; what another owner has, only where `replace` says so; what a person made or changed, never.
///
/// # Errors
/// See [`Refusal`].
pub fn write_set<'a>(
    folder: &Path,
    files: impl IntoIterator<Item = (&'a str, &'a [u8])>,
    owner: Owner,
    replace: bool,
) -> Result<Vec<PathBuf>, Refusal> {
    let _lock = entered(folder).map_err(failed(folder))?;
    let mut whole: Vec<(PathBuf, Vec<u8>)> = Vec::new();
    for (name, bytes) in files {
        let path = folder.join(name);
        let no_format = || Refusal::Failed(path.clone(), io::Error::other("of no format that is sealed"));
        let bytes = sealed(bytes, owner).ok_or_else(no_format)?;
        match whole.iter().find(|(other, _)| *other == path) {
            None => whole.push((path, bytes)),
            // asked for twice
            Some((_, other)) if *other == bytes => {}
            Some(_) => {
                return Err(Refusal::Failed(path, io::Error::other("two files of this run have this name")));
            }
        }
    }
    for (path, _) in &whole {
        match standing(path).map_err(failed(path))? {
            Standing::Free => {}
            Standing::Of(other) if other == owner || replace => {}
            Standing::Of(_) => return Err(Refusal::OfAnother(path.clone())),
            Standing::Foreign => return Err(Refusal::Foreign(path.clone())),
        }
    }
    let parts = whole
        .iter()
        .map(|(path, bytes)| {
            Part::write(path, bytes).map(|part| (path.as_path(), part)).map_err(failed(path))
        })
        .collect::<Result<Vec<_>, _>>()?;
    exchange(parts).map_err(|(path, error)| Refusal::Failed(path.to_owned(), error))?;
    Ok(whole.into_iter().map(|(path, _)| path).collect())
}

fn failed(path: &Path) -> impl FnOnce(io::Error) -> Refusal {
    let path = path.to_owned();
    move |error| Refusal::Failed(path, error)
}

/// Gives all parts their names, or none.
fn exchange(parts: Vec<(&Path, Part)>) -> Result<(), (&Path, io::Error)> {
    let mut done: Vec<(&Path, Option<Part>)> = Vec::with_capacity(parts.len());
    for (path, part) in parts {
        let renamed = Part::kept(path).and_then(|kept| part.replace().map(|()| kept));
        match renamed {
            Ok(kept) => done.push((path, kept)),
            Err(error) => {
                for (path, kept) in done {
                    // The first failure is what is reported; nothing more can be done about a second.
                    let _ = kept.map_or_else(|| fs::remove_file(path), Part::replace);
                }
                return Err((path, error));
            }
        }
    }
    Ok(())
}

/// Who has a name.
enum Standing {
    Free,
    Of(Owner),
    Foreign,
}

/// Anything but a plain file, such as a link or a pipe that nobody feeds, is foreign.
fn standing(path: &Path) -> io::Result<Standing> {
    /// A larger file is none that this program writes, bytes.
    const LARGEST: u64 = 1 << 28;
    let about = match path.symlink_metadata() {
        Ok(about) => about,
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(Standing::Free),
        Err(error) => return Err(error),
    };
    if !about.is_file() || about.len() > LARGEST || about.permissions().readonly() {
        return Ok(Standing::Foreign);
    }
    Ok(unsealed(&fs::read(path)?).map_or(Standing::Foreign, |(owner, _)| Standing::Of(owner)))
}

/// The lock of a folder, swept.
fn entered(folder: &Path) -> io::Result<Lock> {
    let lock = Lock::of(folder)?;
    part::sweep(folder);
    Ok(lock)
}

fn folder_of(path: &Path) -> &Path {
    path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A folder of its own for a test.
    struct Folder(PathBuf);

    impl Folder {
        fn new(name: &str) -> Self {
            let folder = std::env::temp_dir().join(format!("breeks-file-{name}-{}", std::process::id()));
            fs::create_dir_all(&folder).unwrap();
            Self(folder)
        }

        fn names(&self) -> Vec<String> {
            let names = fs::read_dir(&self.0).unwrap().map(|entry| entry.unwrap().file_name());
            let mut names: Vec<String> = names.map(|name| name.into_string().unwrap()).collect();
            names.sort();
            names
        }
    }

    impl Drop for Folder {
        fn drop(&mut self) {
            let _ = fs::remove_dir_all(&self.0);
        }
    }

    /// A file of a set, telling which set it is of.
    fn svg(says: &str) -> Vec<u8> {
        format!("<svg >\n<title>{says}</title>\n</svg>\n").into_bytes()
    }

    fn write(folder: &Folder, says: &str, name: &str, replace: bool) -> Result<Vec<PathBuf>, Refusal> {
        let (front, back) = (svg(says), svg(&format!("{says}, back")));
        let files = [("front.svg", &*front), ("back.svg", &*back)];
        write_set(&folder.0, files, Owner::of([name]), replace)
    }

    fn says(folder: &Folder, text: &str) -> bool {
        let read = |name| fs::read_to_string(folder.0.join(name)).unwrap();
        read("front.svg").contains(&format!(">{text}<"))
            && read("back.svg").contains(&format!(">{text}, back<"))
    }

    #[test]
    fn new_file_never_over_an_old_one() {
        let folder = Folder::new("create");
        let path = folder.0.join("body.toml");
        create(&path, b"one").unwrap();
        assert_eq!(create(&path, b"two").unwrap_err().kind(), io::ErrorKind::AlreadyExists);
        assert_eq!(fs::read(&path).unwrap(), b"one");
        assert_eq!(folder.names(), ["body.toml"]);
    }

    #[test]
    fn file_rewritten_only_as_it_was_read() {
        let folder = Folder::new("rewrite");
        let path = folder.0.join("body.toml");
        create(&path, b"a longer text").unwrap();
        rewrite(&path, b"a longer text", b"short").unwrap();
        assert_eq!(fs::read(&path).unwrap(), b"short");
        assert!(
            rewrite(&path, b"a longer text", b"lost").unwrap_err().to_string().contains("changed meanwhile")
        );
        assert_eq!(fs::read(&path).unwrap(), b"short");
        assert_eq!(folder.names(), ["body.toml"]);
    }

    #[test]
    fn set_replaced_by_its_owner_and_by_others_when_they_say_so() {
        let folder = Folder::new("owners");
        write(&folder, "one", "stroke", false).unwrap();
        write(&folder, "two", "stroke", false).unwrap();
        assert!(says(&folder, "two"));
        let refused = write(&folder, "three", "five", false).unwrap_err();
        assert!(matches!(refused, Refusal::OfAnother(path) if path.ends_with("front.svg")));
        assert!(says(&folder, "two"));
        write(&folder, "three", "five", true).unwrap();
        assert!(says(&folder, "three"));
        assert_eq!(folder.names(), ["back.svg", "front.svg"]);
    }

    #[test]
    fn what_a_person_changed_or_locked_or_linked_left_alone() {
        let folder = Folder::new("foreign");
        write(&folder, "one", "stroke", false).unwrap();
        let back = folder.0.join("back.svg");
        let foreign = |left: &[u8]| {
            let refused = write(&folder, "two", "stroke", true).unwrap_err();
            assert!(matches!(refused, Refusal::Foreign(path) if path.ends_with("back.svg")));
            assert_eq!(fs::read(&back).unwrap(), left);
            assert!(fs::read_to_string(folder.0.join("front.svg")).unwrap().contains(">one<"));
        };
        let own = fs::read(&back).unwrap();
        let drawn_on = [&own[..own.len() - 7], b"<path/>\n</svg>\n"].concat();
        fs::write(&back, &drawn_on).unwrap();
        foreign(&drawn_on);

        fs::write(&back, &own).unwrap();
        let mut only_read = fs::metadata(&back).unwrap().permissions();
        only_read.set_readonly(true);
        fs::set_permissions(&back, only_read).unwrap();
        foreign(&own);

        #[cfg(unix)]
        {
            let elsewhere = folder.0.join("elsewhere.svg");
            fs::rename(&back, &elsewhere).unwrap();
            std::os::unix::fs::symlink(&elsewhere, &back).unwrap();
            foreign(&own);
        }
    }

    #[test]
    fn all_names_given_back_when_one_cannot_be_taken() {
        let folder = Folder::new("exchange");
        let [old, new, taken] = ["old.svg", "new.svg", "taken"].map(|name| folder.0.join(name));
        fs::write(&old, b"old").unwrap();
        let part = |path: &Path| Part::write(path, b"new").unwrap();
        let parts =
            vec![(old.as_path(), part(&old)), (new.as_path(), part(&new)), (taken.as_path(), part(&taken))];
        fs::create_dir_all(taken.join("by a folder")).unwrap();
        assert_eq!(exchange(parts).unwrap_err().0, taken);
        assert_eq!(fs::read(&old).unwrap(), b"old");
        assert_eq!(folder.names(), ["old.svg", "taken"]);
    }

    #[cfg(unix)]
    #[test]
    fn part_no_more_open_than_what_it_replaces() {
        use std::os::unix::fs::PermissionsExt;
        let folder = Folder::new("mode");
        let path = folder.0.join("body.toml");
        fs::write(&path, b"text").unwrap();
        for mode in [0o600, 0o640, 0o666] {
            fs::set_permissions(&path, fs::Permissions::from_mode(mode)).unwrap();
            let part = Part::write(&path, b"text").unwrap();
            let parts = folder.names().into_iter().find(|name| name.ends_with(".part")).unwrap();
            let about = fs::metadata(folder.0.join(parts)).unwrap();
            assert_eq!(about.permissions().mode() & 0o777, mode);
            drop(part);
        }
        assert_eq!(folder.names(), ["body.toml"]);
    }

    #[test]
    fn parts_left_behind_swept_and_nothing_else() {
        let folder = Folder::new("sweep");
        for name in
            [".breeks-12-3.part", ".breeks-12.part", ".breeks--.part", "breeks-12-3.part", "song.part"]
        {
            fs::write(folder.0.join(name), b"half").unwrap();
        }
        fs::create_dir(folder.0.join(".breeks-4-5.part")).unwrap();
        write(&folder, "one", "stroke", false).unwrap();
        assert_eq!(
            folder.names(),
            [
                ".breeks--.part",
                ".breeks-12.part",
                ".breeks-4-5.part",
                "back.svg",
                "breeks-12-3.part",
                "front.svg",
                "song.part"
            ]
        );
    }

    #[cfg(unix)]
    #[test]
    fn planted_links_led_nowhere() {
        use std::os::unix::fs::symlink;
        let folder = Folder::new("planted");
        let precious = folder.0.join("precious");
        fs::write(&precious, b"a person's").unwrap();
        // names that this process will take next for a part
        let part = Part::write(&folder.0.join("front.svg"), b"").unwrap();
        let used = folder
            .names()
            .into_iter()
            .find_map(|name| name.strip_suffix(".part")?.rsplit('-').next()?.parse::<u32>().ok());
        drop(part);
        for number in (used.unwrap()..).take(500) {
            let name = format!(".breeks-{}-{number}.part", std::process::id());
            symlink(&precious, folder.0.join(name)).unwrap();
        }
        write(&folder, "one", "stroke", false).unwrap();
        assert!(says(&folder, "one"));
        assert_eq!(fs::read(&precious).unwrap(), b"a person's");

        let lock = folder.0.join(".breeks-lock");
        symlink(&precious, &lock).unwrap();
        assert!(matches!(write(&folder, "two", "stroke", false).unwrap_err(), Refusal::Failed(..)));
        assert!(says(&folder, "one"));
        assert!(lock.is_symlink());
    }

    #[test]
    fn lock_that_was_left_behind_no_hindrance() {
        let folder = Folder::new("stale");
        fs::write(folder.0.join(".breeks-lock"), b"").unwrap();
        write(&folder, "one", "stroke", false).unwrap();
        assert_eq!(folder.names(), ["back.svg", "front.svg"]);
    }

    #[test]
    fn many_sets_at_once_one_of_them_whole() {
        let folder = Folder::new("at_once");
        std::thread::scope(|scope| {
            for run in 0..8 {
                let folder = &folder;
                scope.spawn(move || {
                    for turn in 0..10 {
                        write(folder, &format!("{run} {turn}"), "stroke", false).unwrap();
                    }
                });
            }
        });
        let (run, turn) = (0..8)
            .flat_map(|run| (0..10).map(move |turn| (run, turn)))
            .find(|(run, turn)| says(&folder, &format!("{run} {turn}")))
            .unwrap();
        assert_eq!(turn, 9, "of run {run}");
        assert_eq!(folder.names(), ["back.svg", "front.svg"]);
    }
}
