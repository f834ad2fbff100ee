//! `breeks completions` and `breeks manual`: whatever the help names, a shell completes and the manual tells.

use std::process::Command;

use super::dialogue::Folder;

fn printed(arguments: &[&str]) -> String {
    let run = Folder::new(&arguments.join("_")).run(arguments);
    assert_eq!(run.code, 0, "{}", run.err);
    assert!(run.files.is_empty());
    run.out
}

/// The commands that the help of the program lists.
fn commands() -> Vec<String> {
    let help = printed(&["--help"]);
    let list = help.split("Commands:").nth(1).and_then(|rest| rest.split("Options:").next()).expect("a list");
    let name = |line: &str| line.strip_prefix("  ").filter(|line| !line.starts_with(' ')).map(str::to_owned);
    list.lines()
        .filter_map(name)
        .filter_map(|line| Some(line.split_whitespace().next()?.to_owned()))
        .collect()
}

/// The long options that the help of a command lists.
fn options(command: &str) -> Vec<String> {
    let help = printed(&[command, "--help"]);
    let listed = help.lines().filter_map(|line| {
        line.trim_start().split("--").nth(1).filter(|_| {
            let line = line.trim_start();
            line.starts_with("--") || line.starts_with("-") && line.contains(", --")
        })
    });
    listed
        .filter_map(|rest| rest.split(|letter: char| !letter.is_ascii_lowercase() && letter != '-').next())
        .map(|name| format!("--{name}"))
        .collect()
}

#[test]
fn page_of_every_command_with_every_option() {
    let commands = commands();
    assert!(commands.len() >= 12 + usize::from(cfg!(feature = "serve")), "{commands:?}");
    let main = printed(&["manual"]).replace('\\', "");
    for command in &commands {
        assert!(main.contains(&format!("breeks-{command}")), "{command}");
        let page = printed(&["manual", command]).replace('\\', "");
        assert!(page.contains(&format!("breeks-{command}")) && page.contains("EXIT STATUS"), "{page}");
        for option in options(command) {
            assert!(page.contains(&option), "{command}: {option}");
        }
    }
}

/// `groff` reads every page without a complaint, where it is installed.
#[test]
fn pages_as_a_formatter_reads_them() {
    let Ok(version) = Command::new("groff").arg("--version").output() else {
        eprintln!("skipped: groff is not installed");
        return;
    };
    assert!(version.status.success());
    let folder = Folder::new("manual_formatted");
    for command in commands() {
        let page = printed(&["manual", &command]);
        folder.put("page.1", &page);
        let told = Command::new("groff")
            .args(["-man", "-Tutf8", "-ww"])
            .arg(folder.path("page.1"))
            .output()
            .expect("groff runs");
        assert!(told.stderr.is_empty(), "{command}: {}", String::from_utf8_lossy(&told.stderr));
        let text = String::from_utf8_lossy(&told.stdout).into_owned();
        assert!(text.contains("0      Done."), "{text}");
    }
}

#[test]
fn page_of_no_command_with_the_nearest_one() {
    let run = Folder::new("manual_unknown").run(&["manual", "draught"]);
    assert_eq!(run.code, 2);
    assert!(run.err.contains("did you mean `draft`?") && run.out.is_empty(), "{}", run.err);
}

#[test]
fn scripts_with_every_command_and_option() {
    let commands = commands();
    for shell in ["bash", "zsh", "fish"] {
        let script = printed(&["completions", shell]);
        for command in &commands {
            assert!(script.contains(command.as_str()), "{shell}: {command}");
            for option in options(command) {
                let name = option.trim_start_matches("--");
                assert!(script.contains(name), "{shell}: {command} {option}");
            }
        }
    }
    let run = Folder::new("completions_unknown").run(&["completions", "csh"]);
    assert_eq!(run.code, 2);
    assert!(run.err.contains("expected one of bash, zsh, fish"), "{}", run.err);
}

/// What bash would offer behind these words.
#[cfg(unix)]
fn offered(words: &[&str]) -> Vec<String> {
    let folder = Folder::new("completions_bash");
    folder.put("breeks.bash", printed(&["completions", "bash"]));
    let last = words.last().copied().unwrap_or_default();
    let before = words.len().checked_sub(2).and_then(|at| words.get(at)).copied().unwrap_or_default();
    let script = format!(
        "source {}; COMP_WORDS=({}); COMP_CWORD={}; _breeks breeks '{last}' '{before}'; printf '%s\\n' \"${{COMPREPLY[@]}}\"",
        folder.path("breeks.bash").display(),
        words.join(" "),
        words.len() - 1
    );
    let run = Command::new("bash").args(["--norc", "-c", &script]).output().expect("bash runs");
    assert!(run.stderr.is_empty(), "{}", String::from_utf8_lossy(&run.stderr));
    String::from_utf8_lossy(&run.stdout).lines().map(str::to_owned).collect()
}

#[cfg(unix)]
#[test]
fn commands_and_options_completed_by_bash() {
    if Command::new("bash").arg("--version").output().is_err() {
        eprintln!("skipped: bash is not installed");
        return;
    }
    assert_eq!(offered(&["breeks", "les"]), ["lesson"]);
    assert_eq!(offered(&["breeks", "draft", "--pap"]), ["--paper"]);
    assert_eq!(offered(&["breeks", "toile", "--hist"]), ["--history"]);
}
