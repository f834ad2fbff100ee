//! `breeks batch`.

use std::{
    fs::File,
    io::{self, IsTerminal, Read, Write},
    num::NonZeroUsize,
    path::{Path, PathBuf},
    sync::{Arc, Mutex, PoisonError},
    thread,
    time::Duration,
};

use indicatif::{ProgressBar, ProgressStyle};

use super::Ending;
use crate::{
    answer::batch::{Batch, Tally},
    mistake::{Mistake, Mistakes},
};

#[derive(clap::Args)]
#[command(after_help = "\
A row has an `id`, text or number, and any key of the measurement file by its dotted path, as `thigh.front`; \
`measurements.` and `trousers.` may be left out, as in `hip_girth`. NDJSON when the first byte is `{`, else CSV with a \
header. Each row gives one line, in order: the draft without outlines, or `{ \"id\": ..., \"error\": { \"code\": ..., \
\"text\": ... } }`. Rows of the same id are drafted both. The run ends with 1 when any row gave an error or a `verdict` of `not_to_cut`.

It takes about 9 MB, however many rows, and is a plain filter: what spreads lines over machines spreads it, as
parallel --pipepart -a people.csv --header : --block 1M -k breeks batch --jobs 1 - > drafts.ndjson")]
pub(super) struct Arguments {
    /// The rows: a file, or - for standard input
    file: PathBuf,
    /// The recipe to draft every row by: a shipped name or a file
    #[arg(long, value_name = "NAME")]
    block: Option<String>,
    /// Set a key for every row, by its dotted path
    #[arg(long = "set", value_name = "KEY=VALUE", allow_hyphen_values = true)]
    set: Vec<String>,
    /// How many rows are drafted at once [default: one for each core]
    #[arg(long, value_name = "N")]
    jobs: Option<NonZeroUsize>,
}

pub(super) fn run(arguments: &Arguments) -> Result<Ending, Mistakes> {
    let block = arguments.block.iter().map(|block| format!("trousers.block={block}"));
    let set: Vec<String> = arguments.set.iter().cloned().chain(block).collect();
    let batch = Batch::new(&set)?;
    let (name, input, length) = open(&arguments.file)?;
    let jobs = arguments.jobs.or_else(|| thread::available_parallelism().ok()).unwrap_or(NonZeroUsize::MIN);
    let between_lines = Arc::new(Mutex::new(()));
    end_between_lines(Arc::clone(&between_lines))?;
    let bar = bar(length);
    let put = |lines: &[u8]| {
        let _writing = between_lines.lock().unwrap_or_else(PoisonError::into_inner);
        let mut out = io::stdout().lock();
        out.write_all(lines)?;
        out.flush()
    };
    let watch = |tally: &Tally| {
        bar.set_position(tally.bytes);
        bar.set_message(format!(
            "{} drafted, {} not to be cut, {} failed",
            tally.drafted, tally.not_to_cut, tally.failed
        ));
    };
    let tally = batch.run(&name, input, jobs, put, watch);
    bar.finish_and_clear();
    Ok(if tally?.all_can_be_cut() { Ending::Done } else { Ending::NotToBeCut })
}

type Opened = (String, Box<dyn Read + Send>, Option<u64>);

/// The rows, the name by which the person knows them, and their length in bytes where that is known.
fn open(path: &Path) -> Result<Opened, Mistake> {
    if path == Path::new("-") {
        return Ok(("standard input".to_owned(), Box::new(io::stdin()), None));
    }
    let name = path.display().to_string();
    let failed = |error: io::Error| Mistake::new(format!("cannot read `{name}`: {error}"));
    let file = File::open(path).map_err(failed)?;
    let about = file.metadata().map_err(failed)?;
    Ok((name, Box::new(file), about.is_file().then_some(about.len())))
}

/// A bar for a person who waits; nothing where the lines themselves go to the screen, or nobody watches.
fn bar(length: Option<u64>) -> ProgressBar {
    if io::stdout().is_terminal() || !io::stderr().is_terminal() {
        return ProgressBar::hidden();
    }
    let (bar, template) = match length {
        Some(length) => (ProgressBar::new(length), "{bar:30} {percent}%  {msg}, {eta} to go"),
        None => (ProgressBar::new_spinner(), "{spinner} {msg}, {elapsed}"),
    };
    // Cannot fail: the templates are these two.
    bar.with_style(ProgressStyle::with_template(template).unwrap_or_else(|_| ProgressStyle::default_bar()))
}

/// From now on an interrupted run ends between two lines, so that whoever reads them has none in halves.
#[cfg(unix)]
fn end_between_lines(between_lines: Arc<Mutex<()>>) -> Result<(), Mistake> {
    use signal_hook::{
        consts::{SIGINT, SIGTERM},
        iterator::Signals,
        low_level::emulate_default_handler,
    };
    /// A reader that does not read holds a line back for ever; after this the run ends all the same.
    const PATIENCE: Duration = Duration::from_secs(2);
    const LOOK: Duration = Duration::from_millis(5);
    let failed = |error: io::Error| Mistake::new(format!("cannot wait for an interruption: {error}"));
    let mut signals = Signals::new([SIGINT, SIGTERM]).map_err(failed)?;
    let wait = move || {
        let signal = signals.forever().next().unwrap_or(SIGTERM);
        let mut waited = Duration::ZERO;
        let mut held = between_lines.try_lock();
        while held.is_err() && waited < PATIENCE {
            thread::sleep(LOOK);
            waited += LOOK;
            held = between_lines.try_lock();
        }
        // Cannot fail for these signals; if it did, there would be nothing else to do.
        let _ = emulate_default_handler(signal);
        std::process::exit(128 + signal);
    };
    thread::Builder::new().name("interruption".to_owned()).spawn(wait).map(drop).map_err(failed)
}

/// Elsewhere the system ends the run as it ends any other.
#[cfg(not(unix))]
fn end_between_lines(_: Arc<Mutex<()>>) -> Result<(), Mistake> {
    Ok(())
}
