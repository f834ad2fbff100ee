//! Programs beside which ours is judged: where one is missing its test says that it skips, and where the checks run
//! (`CI=true`) it fails.
#![allow(dead_code, reason = "each test file asks for its own tools")]

use std::{io::Write, path::PathBuf};

/// Says that a test cannot judge for want of something.
///
/// # Panics
/// Where `CI` is `true`: a check that nobody makes must not pass.
pub(crate) fn missing(what: &str) {
    assert!(std::env::var_os("CI").is_none_or(|ci| ci != "true"), "{what}: without it nothing is judged");
    // Straight to the terminal: what a passing test prints otherwise is swallowed.
    let _ = writeln!(std::io::stderr(), "SKIPPED: {what}");
}

/// The Python that has the packages of tests: `python3`, or the one that `BREEKS_PYTHON` names.
pub(crate) fn python() -> PathBuf {
    std::env::var_os("BREEKS_PYTHON").unwrap_or_else(|| "python3".into()).into()
}

/// Whether that Python has a package.
pub(crate) fn python_has(package: &str) -> bool {
    let run = std::process::Command::new(python()).args(["-c", &format!("import {package}")]).output();
    run.is_ok_and(|run| run.status.success())
}
