//! `breeks batch` at the command line.

use std::{
    io::{BufRead, BufReader, Read, Write},
    path::PathBuf,
    process::{Child, Command, Output, Stdio},
    thread,
    time::Duration,
};

const HEADER: &str = "id,sex,waist_girth,hip_girth,stature\n";

fn rows(count: usize) -> String {
    let row = |n: usize| format!("{n},female,{},{},169\n", 70 + n % 9, 95 + n % 11);
    HEADER.to_owned() + &(0..count).map(row).collect::<String>()
}

fn command(arguments: &[&str]) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_breeks"));
    command.arg("batch").args(arguments).stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped());
    command
}

/// Runs to the end on this input.
fn run(arguments: &[&str], input: &str) -> Output {
    let mut child = command(arguments).spawn().unwrap();
    let (mut stdin, input) = (child.stdin.take().unwrap(), input.to_owned());
    // a run that refuses its options does not read
    let feed = thread::spawn(move || drop(stdin.write_all(input.as_bytes())));
    let output = child.wait_with_output().unwrap();
    feed.join().unwrap();
    output
}

/// A file in the folder of the build, gone with the value.
struct File(PathBuf);

impl File {
    fn new(name: &str, text: &str) -> Self {
        let path = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(format!("{}-{name}", std::process::id()));
        std::fs::write(&path, text).unwrap();
        Self(path)
    }
}

impl Drop for File {
    fn drop(&mut self) {
        let _ = std::fs::remove_file(&self.0);
    }
}

#[test]
fn file_and_standard_input_alike() {
    let file = File::new("alike.csv", &rows(50));
    let of_file = run(&[file.0.to_str().unwrap()], "");
    let of_input = run(&["-"], &rows(50));
    assert_eq!(of_file.status.code(), Some(0));
    assert_eq!(of_file.stdout.iter().filter(|byte| **byte == b'\n').count(), 50);
    assert_eq!(of_file.stdout, of_input.stdout);
    assert!(of_file.stderr.is_empty() && of_input.stderr.is_empty());
}

#[test]
fn any_number_of_jobs_the_same_bytes() {
    let one = run(&["-", "--jobs", "1"], &rows(500));
    let many = run(&["-", "--jobs", "7"], &rows(500));
    assert!(one.stdout == many.stdout);
}

#[test]
fn one_row_in_error_ends_with_1() {
    let output = run(&["-"], &(rows(3) + "broken\n"));
    assert_eq!(output.status.code(), Some(1));
    assert_eq!(output.stdout.iter().filter(|byte| **byte == b'\n').count(), 4);
    assert!(output.stderr.is_empty());
}

#[test]
fn wrong_header_and_missing_file_end_with_2_and_nothing_out() {
    for output in [run(&["-"], "hips,waist\n1,2\n"), run(&["no-such-file.csv"], "")] {
        assert_eq!(output.status.code(), Some(2));
        assert!(output.stdout.is_empty());
        assert!(!output.stderr.is_empty());
    }
}

#[test]
fn block_of_the_command_line_for_every_row() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/blocks/classic.toml");
    let output = run(&["-", "--block", path], &rows(2));
    assert_eq!(output.status.code(), Some(0));
    let refused = run(&["-", "--block", "clasic"], &rows(2));
    assert_eq!(refused.status.code(), Some(2));
    assert!(String::from_utf8_lossy(&refused.stderr).contains("did you mean `classic`?"));
}

/// Feeds the same rows over and over, until nobody reads them any more.
fn feed_for_ever(child: &mut Child) {
    let mut stdin = child.stdin.take().unwrap();
    let more = rows(1000);
    thread::spawn(move || {
        let mut text = more.as_str();
        while stdin.write_all(text.as_bytes()).is_ok() {
            text = &more[HEADER.len()..];
        }
    });
}

#[test]
fn reader_gone_early_a_quiet_end() {
    let mut child = command(&["-"]).spawn().unwrap();
    feed_for_ever(&mut child);
    let mut out = BufReader::new(child.stdout.take().unwrap());
    let mut line = String::new();
    out.read_line(&mut line).unwrap();
    assert!(line.starts_with("{\"id\":\"0\","));
    drop(out);
    let output = child.wait_with_output().unwrap();
    assert_eq!(output.status.code(), Some(0));
    assert!(output.stderr.is_empty());
}

#[test]
fn first_lines_out_while_more_rows_may_come() {
    let mut child = command(&["-"]).spawn().unwrap();
    let mut stdin = child.stdin.take().unwrap();
    stdin.write_all(rows(2).as_bytes()).unwrap();
    let mut out = BufReader::new(child.stdout.take().unwrap());
    let mut line = String::new();
    out.read_line(&mut line).unwrap();
    out.read_line(&mut line).unwrap();
    drop(stdin);
    assert_eq!(out.read_line(&mut line).unwrap(), 0);
    assert_eq!(child.wait().unwrap().code(), Some(0));
}

#[cfg(unix)]
#[test]
fn interrupted_run_ends_with_whole_lines() {
    for round in 0..4_u64 {
        let mut child = command(&["-"]).spawn().unwrap();
        feed_for_ever(&mut child);
        let mut stdout = child.stdout.take().unwrap();
        // the pipe is full and a line half in it when the signal comes; then the reader reads on
        stdout.read_exact(&mut [0]).unwrap();
        thread::sleep(Duration::from_millis(50 + 7 * round));
        let signal = if round % 2 == 0 { "-INT" } else { "-TERM" };
        assert!(Command::new("kill").args([signal, &child.id().to_string()]).status().unwrap().success());
        thread::sleep(Duration::from_millis(20));
        let mut all = Vec::new();
        stdout.read_to_end(&mut all).unwrap();
        assert!(!child.wait().unwrap().success());
        assert!(all.ends_with(b"}\n"), "round {round}: a line in halves");
    }
}
