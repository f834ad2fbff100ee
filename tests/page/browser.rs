//! The page in a real Chromium, walked by `browser/walk.cjs`. Without Chromium, Node or the packages of
//! `browser/package.json` the test says that it skips; `BREEKS_BROWSER=install` fetches the packages.

use std::{
    env, fs,
    path::{Path, PathBuf},
    process::Command,
};

use super::table::{Table, demo};
use crate::tool;

fn program(names: &[&str]) -> Option<PathBuf> {
    let paths = env::var_os("PATH")?;
    env::split_paths(&paths)
        .flat_map(|folder| names.iter().map(move |name| folder.join(name)))
        .find(|path| path.is_file())
}

/// The folder in which the packages are, fetched where that is asked for.
fn packages() -> Option<PathBuf> {
    let from = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/page/browser");
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("browser-packages");
    let ready = |folder: &Path| {
        let lock = |path: PathBuf| fs::read(path).ok();
        folder.join("node_modules/puppeteer-core").is_dir()
            && lock(folder.join("package-lock.json")) == lock(from.join("package-lock.json"))
    };
    if !ready(&folder) && env::var_os("BREEKS_BROWSER").is_some_and(|wish| wish == "install") {
        fs::create_dir_all(&folder).unwrap();
        for name in ["package.json", "package-lock.json"] {
            fs::copy(from.join(name), folder.join(name)).unwrap();
        }
        let npm = program(&["npm"])?;
        let done = Command::new(npm)
            .args(["ci", "--ignore-scripts", "--no-audit", "--no-fund"])
            .current_dir(&folder)
            .status();
        if !done.is_ok_and(|status| status.success()) {
            return None;
        }
    }
    ready(&folder).then_some(folder)
}

#[test]
fn page_walked_in_a_browser() {
    let chromium = program(&["chromium", "chromium-browser", "google-chrome"]);
    let (Some(chromium), Some(node)) = (chromium, program(&["node"])) else {
        return tool::missing("no Chromium or no Node on this machine, the page is not walked");
    };
    let Some(packages) = packages() else {
        return tool::missing(
            "the packages of tests/page/browser are not there; `BREEKS_BROWSER=install` fetches them",
        );
    };
    let table = Table::of("walked", &demo("stroke"));
    let walk = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/page/browser/walk.cjs");
    let run = Command::new(node)
        .arg(walk)
        .arg(table.address())
        .args([&table.folder, Path::new(env!("CARGO_BIN_EXE_breeks")), &packages, &chromium])
        .output()
        .unwrap();
    println!("{}", String::from_utf8_lossy(&run.stdout));
    assert!(run.status.success(), "{}", String::from_utf8_lossy(&run.stderr));
}
