//! The measured fit against SciPy's bounded least squares: `tests/measured_fit/independent.py` fits twenty invented bodies
//! again through `breeks batch`, with a cost of its own.
//!
//! Runs where `python3` (or the one that `BREEKS_PYTHON` names) has SciPy; `BREEKS_SCIPY=install` first puts SciPy into a
//! folder of the build from the Python package index. Elsewhere it says that it skips.

use std::{
    path::{Path, PathBuf},
    process::Command,
};

fn has_scipy(python: &Path) -> bool {
    let run = Command::new(python).args(["-c", "import scipy.optimize"]).output();
    run.is_ok_and(|run| run.status.success())
}

/// A Python of the build's own with SciPy in it.
fn installed(python: &Path) -> Option<PathBuf> {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("scipy");
    let own = folder.join("bin/python3");
    if !has_scipy(&own) {
        Command::new(python).args(["-m", "venv"]).arg(&folder).output().ok()?;
        let pip = ["-m", "pip", "install", "--quiet", "scipy>=1.11"];
        Command::new(&own).args(pip).output().ok()?;
    }
    has_scipy(&own).then_some(own)
}

fn python() -> Option<PathBuf> {
    let python = PathBuf::from(std::env::var_os("BREEKS_PYTHON").unwrap_or_else(|| "python3".into()));
    if has_scipy(&python) {
        return Some(python);
    }
    std::env::var_os("BREEKS_SCIPY").filter(|asked| asked == "install").and_then(|_| installed(&python))
}

#[test]
fn cost_of_twenty_fits_no_more_than_that_of_another_optimiser() {
    let Some(python) = python() else {
        println!("skipped: no SciPy; `BREEKS_SCIPY=install` fetches it");
        return;
    };
    let script = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/measured_fit/independent.py");
    let run = Command::new(python).args([script, env!("CARGO_BIN_EXE_breeks")]).output().expect("it runs");
    print!("{}", String::from_utf8_lossy(&run.stdout));
    assert!(run.status.success(), "{}", String::from_utf8_lossy(&run.stderr));
}
