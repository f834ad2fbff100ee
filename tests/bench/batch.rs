//! Rows through the batch: time and user CPU a body, and whether memory grows with the rows.
//!
//! The bodies are those of people-507 over and over: see tests/data/README.md. `BREEKS_ROWS` says how many rows.
//! CPU and memory are Linux's own figures, the CPU 10 ms fine, and are left out elsewhere.
#![allow(clippy::unwrap_used, reason = "a bench stops at the first surprise")]

use std::{
    fs::read_to_string,
    io::{self, Read},
    num::NonZeroUsize,
    thread::available_parallelism,
    time::Instant,
};

use breeks::answer::batch::Batch;

const ROUNDS: usize = 5;

fn main() {
    let asked = std::env::var("BREEKS_ROWS").ok().and_then(|text| text.parse().ok());
    let count = asked.unwrap_or(40_000);
    let before = most_memory();
    run(1_000, NonZeroUsize::MIN);
    let few = most_memory();
    let cores = available_parallelism().unwrap_or(NonZeroUsize::MIN);
    for workers in [NonZeroUsize::MIN, cores] {
        let best = (0..ROUNDS).map(|_| measured(count, workers)).min_by(|a, b| a.0.total_cmp(&b.0)).unwrap();
        let user = best.1.map_or(String::new(), |user| format!(", user CPU {:.1} us a body", user * 1e6));
        let each = best.0 * 1e6;
        println!("{count} rows on {workers} thread(s), best of {ROUNDS}: {each:.1} us a body{user}");
    }
    if let (Some(before), Some(few), Some(many)) = (before, few, most_memory()) {
        println!("most memory: {before} KiB before, {few} KiB after 1000 rows, {many} KiB after all");
    }
}

/// Seconds and user CPU seconds a body.
fn measured(count: usize, workers: NonZeroUsize) -> (f64, Option<f64>) {
    let (start, user) = (Instant::now(), user_seconds());
    run(count, workers);
    let each = |seconds: f64| seconds / count as f64;
    let spent = user.and_then(|before| Some(user_seconds()? - before));
    (each(start.elapsed().as_secs_f64()), spent.map(each))
}

fn run(count: usize, workers: NonZeroUsize) {
    let batch = Batch::new(&[]).unwrap();
    let tally = batch.run("people", People::new(count), workers, |_| Ok(()), |_| {}).unwrap();
    assert_eq!((tally.drafted, tally.failed), (count as u64, 0));
}

/// Rows of CSV, made as they are read.
struct People {
    rows: Vec<String>,
    next: usize,
    count: usize,
    text: Vec<u8>,
}

impl People {
    fn new(count: usize) -> Self {
        let table = include_str!("../data/people-507.csv");
        let row = |line: &str| {
            let f: Vec<&str> = line.split(',').collect();
            // sex, stature, then the girths of waist, hip, thigh, knee, calf, ankle
            [f[1], f[3], f[5], f[6], f[7], f[8], f[9], f[10]].join(",")
        };
        let header = "id,sex,stature,waist_girth,hip_girth,thigh_girth,knee_girth,calf_girth,ankle_girth\n";
        Self { rows: table.lines().skip(1).map(row).collect(), next: 0, count, text: header.into() }
    }
}

impl Read for People {
    fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
        while self.text.len() < buffer.len() && self.next < self.count {
            self.text.extend(format!("{},{}\n", self.next, self.rows[self.next % self.rows.len()]).bytes());
            self.next += 1;
        }
        let now = self.text.len().min(buffer.len());
        buffer[..now].copy_from_slice(&self.text[..now]);
        self.text.drain(..now);
        Ok(now)
    }
}

/// User CPU of this process so far, all its threads.
fn user_seconds() -> Option<f64> {
    /// The unit of the file, whatever the machine.
    const TICKS_PER_SECOND: f64 = 100.0;
    let text = read_to_string("/proc/self/stat").ok()?;
    let after_name = text.rsplit_once(')')?.1;
    Some(after_name.split_whitespace().nth(11)?.parse::<f64>().ok()? / TICKS_PER_SECOND)
}

/// The most memory this process has held, KiB.
fn most_memory() -> Option<u64> {
    let text = read_to_string("/proc/self/status").ok()?;
    let line = text.lines().find(|line| line.starts_with("VmHWM:"))?;
    line.split_whitespace().nth(1)?.parse().ok()
}
