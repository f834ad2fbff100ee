//! The program run by somebody who may not read and write everything, also where the tests are run by root.

use std::{
    fs,
    path::{Path, PathBuf},
    process::Command,
};

/// The program with a user who is bound by permissions.
pub(crate) struct Anybody {
    /// A copy of the program that everybody may run, where that is needed.
    copy: Option<PathBuf>,
}

impl Anybody {
    /// `folder` is one in which a test may write.
    #[allow(clippy::unwrap_used, reason = "a folder that cannot be written fails the test")]
    pub(crate) fn of(folder: &Path) -> Self {
        use std::os::unix::fs::PermissionsExt;
        let trial = folder.join("trial");
        fs::write(&trial, "").unwrap();
        fs::set_permissions(&trial, fs::Permissions::from_mode(0o000)).unwrap();
        let bound = fs::read(&trial).is_err();
        fs::remove_file(trial).unwrap();
        let copy = std::env::temp_dir().join(format!("breeks-for-anybody-{}", std::process::id()));
        Self {
            copy: (!bound).then(|| {
                fs::copy(env!("CARGO_BIN_EXE_breeks"), &copy).unwrap();
                copy
            }),
        }
    }

    /// The program, ready to be run.
    pub(crate) fn command(&self) -> Command {
        use std::os::unix::process::CommandExt;
        /// The user to whom nothing belongs, by the habit of Unix.
        const NOBODY: u32 = 65534;
        match &self.copy {
            None => Command::new(env!("CARGO_BIN_EXE_breeks")),
            Some(copy) => {
                let mut command = Command::new(copy);
                command.uid(NOBODY).gid(NOBODY);
                command
            }
        }
    }
}

impl Drop for Anybody {
    fn drop(&mut self) {
        if let Some(copy) = &self.copy {
            let _ = fs::remove_file(copy);
        }
    }
}
