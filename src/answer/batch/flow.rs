//! The rows on their way through the cores, in order.
//!
//! One thread cuts the input into chunks and deals them out to the workers in turn; the lines are collected in the same
//! turn. So the order is kept without counting, and what is under way is bounded by the queues.

use std::{
    io::{self, Read},
    num::NonZeroUsize,
    sync::{
        Arc,
        mpsc::{Receiver, SyncSender, sync_channel},
    },
    thread,
};

use super::{
    drafter::Drafter,
    header::columns,
    rows::{Chunk, Form, Rows},
};
use crate::mistake::{Mistake, Mistakes};

/// How many bodies went through.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Tally {
    /// Rows that gave a draft.
    pub drafted: u64,
    /// Those of them that are not to be cut as they stand.
    pub not_to_cut: u64,
    /// Rows that gave an error.
    pub failed: u64,
    /// How much of the input they took, bytes.
    pub bytes: u64,
}

impl Tally {
    /// Every row gave a draft, and none of them is not to be cut.
    pub fn all_can_be_cut(&self) -> bool {
        self.failed == 0 && self.not_to_cut == 0
    }
}

/// A filter from rows to lines.
#[derive(Clone, Debug)]
pub struct Batch {
    drafter: Drafter,
}

/// Chunks that wait before and behind each worker: one to work on while the next comes.
const WAITING: usize = 2;

/// Lines of a chunk.
struct Lines {
    text: Vec<u8>,
    tally: Tally,
}

impl Batch {
    /// A filter with the `KEY=VALUE` of `--set` in place of what the rows say. `trousers.block` may name a file there,
    /// which a row may not.
    ///
    /// # Errors
    /// When an option is wrong, or the recipe it names is not sound.
    pub fn new(set: &[String]) -> Result<Self, Mistakes> {
        Ok(Self { drafter: Drafter::new(set)? })
    }

    /// Drafts every row of `input`, known to its reader by `name`, on `workers` threads. `put` is handed whole lines, as
    /// soon as they are there; `watch` sees the count after each handful.
    ///
    /// When `put` says that the reader has closed its end, the run ends there without a mistake.
    ///
    /// # Errors
    /// When the header is wrong: then nothing has been put. When the input cannot be read or `put` fails: then what came
    /// before has been.
    pub fn run(
        self,
        name: &str,
        input: impl Read + Send + 'static,
        workers: NonZeroUsize,
        mut put: impl FnMut(&[u8]) -> io::Result<()>,
        mut watch: impl FnMut(&Tally),
    ) -> Result<Tally, Mistakes> {
        let unreadable = |error: io::Error| Mistake::new(format!("cannot read `{name}`: {error}"));
        let (mut rows, form) = Rows::open(input).map_err(unreadable)?;
        let drafter = match form {
            Form::Json => self.drafter,
            Form::Csv => match rows.next().map_err(unreadable)? {
                Some(header) => self.drafter.with_columns(columns(name, &header)?),
                None => return Ok(Tally::default()),
            },
        };
        let (queues, results) = start(&Arc::new(drafter), workers)?;
        let dealer = spawn("rows", move || deal(rows, &queues))?;
        let mut tally = Tally::default();
        for turn in results.iter().cycle() {
            // a worker that has no more to give has been sent no more: the rows are at their end
            let Ok(lines) = turn.recv() else { break };
            let lines = lines.map_err(unreadable)?;
            tally.drafted += lines.tally.drafted;
            tally.not_to_cut += lines.tally.not_to_cut;
            tally.failed += lines.tally.failed;
            tally.bytes = lines.tally.bytes;
            match put(&lines.text) {
                // the dealer may be waiting for input that never comes: it is left to itself
                Err(error) if error.kind() == io::ErrorKind::BrokenPipe => return Ok(tally),
                put => put.map_err(|error| Mistake::new(format!("cannot write the lines: {error}")))?,
            }
            watch(&tally);
        }
        match dealer.join() {
            Ok(()) => Ok(tally),
            Err(_) => {
                Err(Mistake::new(format!("a defect of this program ended the reading of `{name}`")).into())
            }
        }
    }
}

type Queue = SyncSender<io::Result<Chunk>>;
type Gathered = io::Result<Lines>;

/// The workers, each with a queue before it and one behind it.
fn start(
    drafter: &Arc<Drafter>,
    workers: NonZeroUsize,
) -> Result<(Vec<Queue>, Vec<Receiver<Gathered>>), Mistake> {
    let mut ends = (Vec::new(), Vec::new());
    for _ in 0..workers.get() {
        let (queue, chunks) = sync_channel::<io::Result<Chunk>>(WAITING);
        let (give, result) = sync_channel::<Gathered>(WAITING);
        let drafter = Arc::clone(drafter);
        spawn("drafts", move || {
            for chunk in chunks {
                if give.send(chunk.map(|chunk| draft(&drafter, &chunk))).is_err() {
                    break;
                }
            }
        })?;
        ends.0.push(queue);
        ends.1.push(result);
    }
    Ok(ends)
}

fn spawn(name: &str, work: impl FnOnce() + Send + 'static) -> Result<thread::JoinHandle<()>, Mistake> {
    thread::Builder::new().name(name.to_owned()).spawn(work).map_err(|error| {
        Mistake::new(format!("cannot start a thread: {error}")).help("ask for fewer with `--jobs`")
    })
}

/// Deals the chunks out in turn until the rows end or nobody wants them any more.
fn deal(mut rows: Rows<impl Read>, queues: &[Queue]) {
    for queue in queues.iter().cycle() {
        let chunk = match rows.next_chunk() {
            Ok(None) => return,
            Ok(Some(chunk)) => Ok(chunk),
            Err(error) => Err(error),
        };
        let is_last = chunk.is_err();
        if queue.send(chunk).is_err() || is_last {
            return;
        }
    }
}

fn draft(drafter: &Drafter, chunk: &Chunk) -> Lines {
    let mut lines = Lines { text: Vec::new(), tally: Tally { bytes: chunk.bytes, ..Tally::default() } };
    for row in &chunk.rows {
        match drafter.put_line(row, &mut lines.text) {
            Some(verdict) => {
                lines.tally.drafted += 1;
                lines.tally.not_to_cut += u64::from(!verdict.can_be_cut());
            }
            None => lines.tally.failed += 1,
        }
    }
    lines
}
