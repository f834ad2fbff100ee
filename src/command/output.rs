//! Files a command writes: sets whole or not at all, and never over something that is somebody else's.

use std::{
    io::ErrorKind,
    path::{Component, Path, PathBuf},
};

use crate::{
    file::{self, Owner, Refusal},
    mistake::Mistake,
};

/// A file to be written: its name within the output folder, and its bytes.
pub(super) struct Sheet {
    pub name: String,
    pub bytes: Vec<u8>,
}

/// A file with how much paper it takes, where that is to be said.
pub(super) type Counted = (Sheet, Option<String>);

/// What every command that writes files takes.
#[derive(clap::Args)]
pub(super) struct Replacing {
    /// Replace files that were made from another measurement file; what people made or changed stays
    #[arg(long)]
    replace: bool,
}

/// Of what files are made, by which this program knows them again.
#[derive(Clone, Copy)]
pub(super) enum Of<'a> {
    /// A measurement file.
    File(&'a Path),
    /// Something that comes with this program.
    Own(&'a str),
}

impl Of<'_> {
    /// The way from the folder to the file, so that both may be moved together.
    fn way(self, folder: &Path) -> Vec<u8> {
        match self {
            Self::Own(name) => name.into(),
            Self::File(path) => {
                let (Ok(folder), Ok(file)) = (folder.canonicalize(), path.canonicalize()) else {
                    return path.as_os_str().as_encoded_bytes().to_owned();
                };
                let shared = folder.components().zip(file.components()).take_while(|(a, b)| a == b).count();
                let up = folder.components().skip(shared).map(|_| Component::ParentDir);
                let way: PathBuf = up.chain(file.components().skip(shared)).collect();
                way.as_os_str().as_encoded_bytes().to_owned()
            }
        }
    }
}

/// Writes all sheets into `folder`, making it if needed, and returns their paths; all of them or none.
pub(super) fn write_all(
    folder: &Path,
    sheets: &[Sheet],
    of: &[Of<'_>],
    replacing: &Replacing,
) -> Result<Vec<PathBuf>, Mistake> {
    let elsewhere = "name another folder with `--out`";
    std::fs::create_dir_all(folder).map_err(|error| {
        Mistake::new(format!("cannot make the folder `{}`: {error}", folder.display())).help(elsewhere)
    })?;
    let files = sheets.iter().map(|sheet| (&*sheet.name, &*sheet.bytes));
    let mut ways: Vec<Vec<u8>> = of.iter().map(|of| of.way(folder)).collect();
    // two that are compared are the same two the other way round
    ways.sort();
    let owner = Owner::of(ways);
    file::write_set(folder, files, owner, replacing.replace).map_err(|refusal| match refusal {
        Refusal::Foreign(path) => Mistake::new(format!(
            "`{}` exists, and a person made it, changed it, or locked it",
            path.display()
        ))
        .help(format!("move it, or {elsewhere}")),
        Refusal::OfAnother(path) => {
            Mistake::new(format!("`{}` was made from another measurement file", path.display()))
                .help(format!("{elsewhere}, or give this order a `name` of its own"))
                .help("`--replace` puts the new files in place of the old ones")
        }
        Refusal::Failed(path, error) if error.kind() == ErrorKind::ResourceBusy => {
            Mistake::new(format!("another run is writing into `{}`", path.display()))
                .help(format!("wait until it has ended, or {elsewhere}"))
        }
        Refusal::Failed(path, error) => {
            Mistake::new(format!("cannot write `{}`: {error}", path.display())).help(elsewhere)
        }
    })
}

/// Writes a new file, whole or not at all; a file that exists is left alone.
pub(super) fn write_new(path: &Path, text: &str) -> Result<(), Mistake> {
    file::create(path, text.as_bytes()).map_err(|error| {
        if error.kind() == ErrorKind::AlreadyExists { exists(path) } else { unwritten(path, &error) }
    })
}

/// Writes a measurement file anew that still holds the text that was read from it.
pub(super) fn write_again(path: &Path, was: &str, text: &str) -> Result<(), Mistake> {
    file::rewrite(path, was.as_bytes(), text.as_bytes()).map_err(|error| unwritten(path, &error))
}

fn unwritten(path: &Path, error: &std::io::Error) -> Mistake {
    Mistake::new(format!("cannot write `{}`: {error}", path.display()))
}

/// What a person is told whose file is there already.
pub(super) fn exists(path: &Path) -> Mistake {
    Mistake::new(format!("`{}` exists already", path.display()))
        .help("name another file: this program does not overwrite what a person wrote")
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
