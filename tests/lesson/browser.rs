//! What a browser makes of the pages: no finding of an accessibility checker that is serious, at the width of a desk and
//! of a phone, and nothing wider than the screen.
//!
//! Runs where Chromium is installed and axe-core (Deque Systems, MPL 2.0) is at hand: `BREEKS_AXE` names its `axe.min.js`,
//! or is `install`, which fetches the package axe-core by npm into a folder of the build. Elsewhere it says that it skips.

use std::{
    path::{Path, PathBuf},
    process::Command,
};

use breeks::{
    reading::{fit_sheet, lesson, measuring_guide},
    unit::Unit,
};

use crate::{subjects::Taught, tool};

/// Asks for what goes wrong, writes it into the page as its only text.
const ASK: &str = "
addEventListener('load', async () => {
  const wide = document.documentElement.scrollWidth - document.documentElement.clientWidth;
  const found = await axe.run(document, { resultTypes: ['violations'] });
  const said = found.violations.map(it => it.id + ' ' + it.impact + ' ' + it.nodes[0].html.slice(0, 80));
  document.documentElement.innerHTML = '';
  document.documentElement.append('BEGIN ' + JSON.stringify({ wide, said, passed: found.passes.length }) + ' END');
});";

fn chromium() -> Option<&'static str> {
    ["chromium", "chromium-browser", "google-chrome"]
        .into_iter()
        .find(|name| Command::new(name).arg("--version").output().is_ok_and(|run| run.status.success()))
}

fn axe() -> Option<PathBuf> {
    let asked = std::env::var_os("BREEKS_AXE")?;
    if asked != "install" {
        return Some(asked.into());
    }
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("axe");
    std::fs::create_dir_all(&folder).ok()?;
    let script = folder.join("node_modules/axe-core/axe.min.js");
    if !script.exists() {
        Command::new("npm")
            .args(["install", "--no-save", "axe-core@4"])
            .current_dir(&folder)
            .output()
            .ok()?;
    }
    script.exists().then_some(script)
}

#[test]
fn no_serious_finding_on_a_desk_or_a_phone() {
    let (Some(browser), Some(axe)) = (chromium(), axe()) else {
        return tool::missing(
            "no Chromium or no axe-core; with Chromium installed `BREEKS_AXE=install` fetches the other",
        );
    };
    let script = std::fs::read_to_string(axe).expect("axe-core can be read");
    let taught = Taught::demo("stroke", "classic", &["thigh.front=1.9"]);
    let subject = taught.subject(Unit::Cm);
    let pages = [
        ("lesson", lesson(&subject)),
        ("fit-sheet", fit_sheet(&subject, &[])),
        ("guide", measuring_guide(breeks::unit::Unit::Cm)),
    ];
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("pages");
    std::fs::create_dir_all(&folder).expect("a folder of the build");
    for (name, booklet) in pages {
        // The page itself allows no script: the copy that is checked does.
        let page = booklet.to_html();
        let (before, after) =
            page.split_once("<meta http-equiv=\"Content-Security-Policy\"").expect("a policy");
        let (_, after) = after.split_once('\n').expect("its end");
        let page = format!("{before}<script>{script}</script><script>{ASK}</script>{after}");
        let file = folder.join(format!("{name}.html"));
        std::fs::write(&file, page).expect("a file of the build");
        for size in ["1280,900", "500,900"] {
            let run = Command::new(browser)
                .args([
                    "--headless",
                    "--no-sandbox",
                    "--disable-gpu",
                    "--virtual-time-budget=60000",
                    "--dump-dom",
                ])
                .arg(format!("--window-size={size}"))
                .arg(format!("file://{}", file.display()))
                .output()
                .expect("the browser runs");
            let said = String::from_utf8_lossy(&run.stdout);
            let (_, said) = said.split_once("BEGIN ").unwrap_or_else(|| panic!("{name}: {said:.300}"));
            let (said, _) = said.split_once(" END").expect("its end");
            let said: serde_json::Value = serde_json::from_str(said).expect("JSON");
            assert_eq!(said["wide"], 0, "{name} at {size}");
            assert_eq!(said["said"], serde_json::json!([]), "{name} at {size}");
            assert!(said["passed"].as_u64() > Some(20), "{name} at {size}: {said}");
        }
    }
}
