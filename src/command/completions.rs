//! `breeks completions`: lets a shell complete commands and options.

use clap::CommandFactory as _;
use clap_complete::{Shell, generate};

use super::{Ending, print};
use crate::mistake::Mistakes;

/// The shells that the help names.
const SHELLS: [(&str, Shell); 3] = [("bash", Shell::Bash), ("zsh", Shell::Zsh), ("fish", Shell::Fish)];

#[derive(clap::Args)]
#[command(after_help = "\
For this session, bash: source <(breeks completions bash)   fish: breeks completions fish | source\n\
For good, bash: breeks completions bash > ~/.local/share/bash-completion/completions/breeks\n\
zsh: breeks completions zsh > a folder of $fpath, as _breeks\n\
fish: breeks completions fish > ~/.config/fish/completions/breeks.fish")]
pub(super) struct Arguments {
    /// The shell: bash, zsh or fish
    #[arg(value_parser = shell)]
    shell: Shell,
}

fn shell(text: &str) -> Result<Shell, String> {
    let known = SHELLS.iter().find(|(name, _)| *name == text);
    known
        .map(|(_, shell)| *shell)
        .ok_or_else(|| format!("expected one of {}", SHELLS.map(|it| it.0).join(", ")))
}

pub(super) fn run(arguments: &Arguments) -> Result<Ending, Mistakes> {
    let (mut program, mut script) = (super::Arguments::command(), Vec::new());
    let name = program.get_name().to_owned();
    generate(arguments.shell, &mut program, name, &mut script);
    print(&String::from_utf8_lossy(&script))?;
    Ok(Ending::Done)
}
