//! A folder to work in and a run of the program in it.

use std::{
    fs,
    path::{Path, PathBuf},
    process::{Command, Stdio},
};

/// A fresh folder of one test.
pub(crate) struct Folder(PathBuf);

impl Folder {
    pub(crate) fn new(test: &str) -> Self {
        let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join("commands").join(test);
        if path.exists() {
            fs::remove_dir_all(&path).expect("our own folder");
        }
        fs::create_dir_all(&path).expect("a folder");
        Self(path)
    }

    pub(crate) fn path(&self, name: &str) -> PathBuf {
        self.0.join(name)
    }

    /// Writes a file for the program to find.
    pub(crate) fn put(&self, name: &str, bytes: impl AsRef<[u8]>) {
        let path = self.path(name);
        fs::create_dir_all(path.parent().expect("within the folder")).expect("a folder");
        fs::write(path, bytes).expect("a file");
    }

    pub(crate) fn bytes(&self, name: &str) -> Vec<u8> {
        fs::read(self.path(name)).unwrap_or_else(|error| panic!("{name}: {error}"))
    }

    /// Every file in the folder, by its path within it.
    pub(crate) fn files(&self) -> Vec<String> {
        let (mut files, mut folders) = (Vec::new(), vec![self.0.clone()]);
        while let Some(folder) = folders.pop() {
            for entry in fs::read_dir(folder).expect("a folder") {
                let path = entry.expect("an entry").path();
                if path.is_dir() {
                    folders.push(path);
                } else {
                    files.push(path.strip_prefix(&self.0).expect("within").display().to_string());
                }
            }
        }
        files.sort();
        files
    }

    /// The program with these arguments, ready to run in the folder.
    pub(crate) fn command(&self, arguments: &[&str]) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_breeks"));
        command.args(arguments).current_dir(&self.0).env("COLUMNS", "80").stdin(Stdio::null());
        command
    }

    pub(crate) fn run(&self, arguments: &[&str]) -> Dialogue {
        self.run_answering(arguments, "")
    }

    /// A run in which these lines are typed as answers.
    pub(crate) fn run_answering(&self, arguments: &[&str], typed: &str) -> Dialogue {
        let mut command = self.command(arguments);
        if !typed.is_empty() {
            self.put("typed", typed);
            command.stdin(fs::File::open(self.path("typed")).expect("what is typed"));
        }
        let output = command.output().expect("the program runs");
        if !typed.is_empty() {
            fs::remove_file(self.path("typed")).expect("our own file");
        }
        let text = |bytes: Vec<u8>| String::from_utf8(bytes).expect("text");
        Dialogue {
            typed: arguments.join(" "),
            code: output.status.code().expect("an end of its own"),
            out: text(output.stdout),
            err: text(output.stderr),
            files: self.files(),
        }
    }
}

/// One run.
pub(crate) struct Dialogue {
    pub(crate) typed: String,
    pub(crate) code: i32,
    pub(crate) out: String,
    pub(crate) err: String,
    pub(crate) files: Vec<String>,
}

impl Dialogue {
    /// Keeps the whole run under a name.
    pub(crate) fn snapshot(&self, name: &str) {
        let mut text = format!("$ breeks {}\n", self.typed);
        for (stream, said) in [("out", &self.out), ("err", &self.err)] {
            if !said.is_empty() {
                text.push_str(&format!("--- {stream}\n{said}"));
            }
        }
        text.push_str(&format!("--- exit {}\n", self.code));
        for file in &self.files {
            text.push_str(&format!("file {file}\n"));
        }
        let mut settings = insta::Settings::clone_current();
        settings.set_snapshot_path(concat!(env!("CARGO_MANIFEST_DIR"), "/snapshots"));
        settings.set_prepend_module_to_snapshot(false);
        settings.set_omit_expression(true);
        settings.bind(|| insta::assert_snapshot!(name, text));
    }

    /// Fits a terminal of 80 columns, without spaces at the end of a line.
    pub(crate) fn assert_tidy(&self) {
        for line in self.out.lines() {
            assert!(line.chars().count() <= 80, "{} columns: {line}", line.chars().count());
            assert_eq!(line, line.trim_end());
        }
    }

    /// Ended with 2, said why on standard error alone, and wrote nothing beside the files that were there.
    pub(crate) fn assert_refused(&self, there_before: &[&str]) {
        assert_eq!(self.code, 2, "{}{}", self.out, self.err);
        assert_eq!(self.out, "");
        assert!(self.err.starts_with("error: "), "{}", self.err);
        assert_eq!(self.files, there_before);
    }
}
