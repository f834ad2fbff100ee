//! Files whole or not at all, whatever happens: runs that are killed while they write, a disk that is full, a folder that
//! is closed, links that were planted, two runs at once. Nothing is torn, nothing of a person's is touched, and the next
//! run leaves nothing of the last one's parts.
//!
//! `BREEKS_KILLS=300` kills so many runs; without it as many as tell in a few seconds.
#![cfg(unix)]
#![allow(clippy::unwrap_used, reason = "a test that cannot go on says so by panicking")]

mod anybody;

use std::{
    collections::BTreeMap,
    fs,
    os::unix::{
        fs::{PermissionsExt, symlink},
        process::ExitStatusExt,
    },
    path::{Path, PathBuf},
    process::{Child, Command, Output, Stdio},
    thread,
    time::{Duration, Instant},
};

use anybody::Anybody;

type Set = BTreeMap<String, Vec<u8>>;

/// A folder of its own for a test, gone afterwards, with `out` in it, in which a person keeps a drawing.
struct Folder(PathBuf);

/// What the person drew; it merely speaks of the program.
const SONG: (&str, &[u8]) = ("song.svg", b"<svg >\n<title>made after breeks</title>\n</svg>\n");

impl Folder {
    fn new(name: &str) -> Self {
        let path = std::env::temp_dir().join(format!("breeks-whole-{name}-{}", std::process::id()));
        let _ = fs::remove_dir_all(&path);
        fs::create_dir_all(path.join("out")).unwrap();
        fs::write(path.join("out").join(SONG.0), SONG.1).unwrap();
        Self(path)
    }

    fn out(&self) -> PathBuf {
        self.0.join("out")
    }

    /// Everything in `out`; the person's drawing is as it was.
    fn set(&self) -> Set {
        let mut set = Set::new();
        for entry in fs::read_dir(self.out()).unwrap() {
            let path = entry.unwrap().path();
            // a part may go while we look
            if let Ok(bytes) = fs::read(&path) {
                set.insert(path.file_name().unwrap().to_str().unwrap().to_owned(), bytes);
            }
        }
        assert_eq!(set.remove(SONG.0).as_deref(), Some(SONG.1));
        set
    }

    fn command(&self, arguments: &[&str]) -> Command {
        self.told(Command::new(env!("CARGO_BIN_EXE_breeks")), arguments)
    }

    fn told(&self, mut command: Command, arguments: &[&str]) -> Command {
        command.args(arguments).args(["--out", "out"]).current_dir(&self.0);
        command.stdin(Stdio::null()).stdout(Stdio::piped()).stderr(Stdio::piped());
        command
    }

    fn run(&self, arguments: &[&str]) -> Output {
        self.command(arguments).output().unwrap()
    }

    /// What a run that nobody disturbs leaves.
    fn undisturbed(&self, arguments: &[&str]) -> Set {
        let run = self.run(arguments);
        assert!(run.status.success(), "{}", String::from_utf8_lossy(&run.stderr));
        let set = self.set();
        assert!(!set.is_empty() && set.keys().all(|name| !name.starts_with('.')), "{:?}", set.keys());
        set
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        let _ = fs::set_permissions(self.out(), fs::Permissions::from_mode(0o755));
        let _ = fs::remove_dir_all(&self.0);
    }
}

const DRAFT: [[&str; 5]; 2] = [
    ["draft", "--demo", "stroke", "--set", "thigh.front=1"],
    ["draft", "--demo", "stroke", "--set", "thigh.front=2"],
];
const COMPARE: [[&str; 5]; 2] = [
    ["compare", "--demo", "stroke", "--set", "thigh.front=1"],
    ["compare", "--demo", "stroke", "--set", "thigh.front=2"],
];

fn refused(run: &Output, saying: &str) {
    let said = String::from_utf8_lossy(&run.stderr);
    assert_eq!(run.status.code(), Some(2), "{said}");
    assert!(said.contains(saying), "{said}");
}

/// Waits until a run has begun to write: the time at which it was seen, or `None` where it ended unseen.
fn writing(child: &mut Child, out: &Path) -> Option<Instant> {
    loop {
        let names = fs::read_dir(out).unwrap().map(|entry| entry.unwrap().file_name());
        if names.into_iter().any(|name| name.to_str().is_some_and(|name| name.ends_with(".part"))) {
            return Some(Instant::now());
        }
        if child.try_wait().unwrap().is_some() {
            return None;
        }
        thread::sleep(Duration::from_micros(100));
    }
}

/// What became of runs that were killed.
#[derive(Debug, Default)]
struct Tally {
    kills: usize,
    /// Of them, those that were killed before their end.
    ended: usize,
    /// Left some files of the run before beside some of their own, each whole: killed between two names.
    mixed: usize,
}

fn killed(name: &str, commands: [[&str; 5]; 2], kills: usize) -> Tally {
    let folder = Folder::new(name);
    let sets = commands.map(|command| folder.undisturbed(&command));
    assert_ne!(sets[0], sets[1]);
    // how long it takes from the first part to the end
    let mut child = folder.command(&commands[0]).spawn().unwrap();
    let seen = writing(&mut child, &folder.out());
    assert!(child.wait().unwrap().success());
    let span = seen.map_or(Duration::from_millis(2), |seen| seen.elapsed());

    let mut tally = Tally::default();
    let (mut dice, mut reach) = (7_u32, 1.0);
    while tally.ended < kills {
        assert!(tally.kills < 20 * kills, "too few are killed before they end: {tally:?}");
        let new = 1 - tally.kills % 2;
        let mut child = folder.command(&commands[new]).spawn().unwrap();
        if writing(&mut child, &folder.out()).is_some() {
            dice = dice.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            thread::sleep(span.mul_f64(reach * f64::from(dice >> 8) / f64::from(1 << 24)));
        }
        child.kill().unwrap();
        let ended = child.wait().unwrap().signal().is_some();
        tally.ended += usize::from(ended);
        tally.kills += 1;
        // a busy machine wakes us late
        reach = f64::min(reach * if ended { 1.2 } else { 0.6 }, 1.0);

        let left = folder.set();
        let of = |set: &Set| set.iter().filter(|(name, bytes)| left.get(*name) == Some(bytes)).count();
        for (name, bytes) in left.iter().filter(|(name, _)| !name.starts_with('.')) {
            assert!(sets.iter().any(|set| set.get(name) == Some(bytes)), "`{name}` is torn");
        }
        assert!(sets[0].keys().all(|name| left.contains_key(name)), "a file is gone: {:?}", left.keys());
        tally.mixed += usize::from(sets.iter().all(|set| of(set) < set.len()));

        assert!(folder.undisturbed(&commands[1 - new]) == sets[1 - new], "the run after a kill");
    }
    tally
}

#[test]
fn nothing_torn_by_a_kill_and_nothing_left_after_the_next_run() {
    let asked = std::env::var("BREEKS_KILLS").ok().map(|kills| kills.parse::<usize>().unwrap());
    for (name, commands, kills) in [
        ("compare", COMPARE, asked.map_or(16, |kills| kills / 2)),
        ("draft", DRAFT, asked.map_or(4, |kills| kills.div_ceil(2))),
    ] {
        let tally = killed(name, commands, kills);
        println!("{name}: {tally:?}");
    }
}

/// Files are cut off at some size, which to the writer is the same as a disk that is full.
#[test]
fn full_disk_told_and_the_set_before_it_whole() {
    let folder = Folder::new("full");
    let [old, new] = DRAFT.map(|command| folder.undisturbed(&command));
    let mut small: Vec<usize> = new.values().map(Vec::len).collect();
    small.sort_unstable();
    let (mut told, mut written) = (0, 0);
    // Blocks of 512 bytes, in some shells of 1024: below all files, between them, above them. An output pipe has no size.
    for blocks in [1, small[1] / 512, small[4] / 512, 2 + small[small.len() - 1] / 512] {
        assert!(folder.undisturbed(&DRAFT[0]) == old);
        let limit = format!("trap '' XFSZ; ulimit -f {blocks}; exec \"$0\" \"$@\"");
        let mut shell = Command::new("sh");
        shell.args(["-c", &limit, env!("CARGO_BIN_EXE_breeks")]);
        let run = folder.told(shell, &DRAFT[1]).output().unwrap();
        if run.status.success() {
            written += 1;
            assert!(folder.set() == new);
        } else {
            told += 1;
            refused(&run, "cannot write `out/");
            assert!(folder.set() == old, "{:?}", folder.set().keys());
        }
    }
    assert!(told >= 2 && written >= 1, "{told} told, {written} written");
}

/// The same on a file system of 60 kB, where root may make one.
#[cfg(target_os = "linux")]
#[test]
fn nothing_half_written_on_a_small_disk() {
    let folder = Folder::new("small");
    let mount =
        Command::new("mount").args(["-t", "tmpfs", "-o", "size=60k", "tmpfs"]).arg(folder.out()).output();
    if !mount.is_ok_and(|mount| mount.status.success()) {
        println!("no small disk could be made here; a full one is tried without it");
        return;
    }
    let run = folder.run(&DRAFT[0]);
    let left = fs::read_dir(folder.out()).unwrap().count();
    assert!(Command::new("umount").arg(folder.out()).status().unwrap().success());
    refused(&run, "No space left");
    assert_eq!(left, 0);
}

#[test]
fn folder_that_may_not_be_written_left_as_it_is() {
    let folder = Folder::new("closed");
    let old = folder.undisturbed(&DRAFT[0]);
    fs::set_permissions(&folder.0, fs::Permissions::from_mode(0o777)).unwrap();
    fs::set_permissions(folder.out(), fs::Permissions::from_mode(0o555)).unwrap();
    let anybody = Anybody::of(&folder.0);
    let run = folder.told(anybody.command(), &DRAFT[1]).output().unwrap();
    refused(&run, "cannot write `out`: Permission denied");
    assert!(folder.set() == old);
}

#[test]
fn planted_links_not_followed() {
    let folder = Folder::new("planted");
    let precious = folder.0.join("precious.svg");
    fs::write(&precious, SONG.1).unwrap();
    let unharmed = || assert_eq!(fs::read(&precious).unwrap(), SONG.1);
    for name in ["stroke-classic.svg", ".breeks-lock"] {
        let link = folder.out().join(name);
        symlink(&precious, &link).unwrap();
        refused(&folder.run(&DRAFT[0]), name);
        assert!(link.is_symlink());
        fs::remove_file(&link).unwrap();
        assert_eq!(folder.set(), Set::new());
    }
    // to somewhere where nothing is yet
    let nowhere = folder.0.join("nowhere.svg");
    symlink(&nowhere, folder.out().join("stroke-classic.svg")).unwrap();
    refused(&folder.run(&[&DRAFT[0][..], &["--replace"]].concat()), "stroke-classic.svg");
    assert!(!nowhere.exists());
    unharmed();
}

#[test]
fn two_runs_at_once_one_set_whole() {
    let folder = Folder::new("two");
    let sets = DRAFT.map(|command| folder.undisturbed(&command));
    for _ in 0..3 {
        let both = DRAFT.map(|command| folder.command(&command).spawn().unwrap());
        for child in both {
            let run = child.wait_with_output().unwrap();
            assert!(run.status.success(), "{}", String::from_utf8_lossy(&run.stderr));
        }
        let left = folder.set();
        assert!(sets.contains(&left), "{:?}", left.keys());
    }
}

#[test]
fn two_orders_of_one_name_at_once_one_of_them_refused() {
    let folder = Folder::new("orders");
    let bodies = ["stroke", "five"];
    let both = bodies.map(|body| {
        folder
            .command(&["draft", "--demo", body, "--block", "classic", "--set", "name=seven"])
            .spawn()
            .unwrap()
    });
    let [stroke, five] = both.map(|child| child.wait_with_output().unwrap());
    let (won, lost) = if stroke.status.success() { (0, five) } else { (1, stroke) };
    refused(&lost, "was made from another measurement file");
    assert!(String::from_utf8_lossy(&lost.stderr).contains("--replace"));
    let left = folder.set();
    fs::remove_dir_all(folder.out()).unwrap();
    fs::create_dir(folder.out()).unwrap();
    fs::write(folder.out().join(SONG.0), SONG.1).unwrap();
    let winner = ["draft", "--demo", bodies[won], "--block", "classic", "--set", "name=seven"];
    assert!(folder.undisturbed(&winner) == left);
}
