//! How long a measured fit takes: one body from its measurements to its judged draft, and how much of the solver's time
//! are the drafts it tries. Run with `cargo bench --bench fit`.
//!
//! Microseconds belong to a machine; the ratio of the solver to its own drafts travels. User CPU is Linux's own figure,
//! 10 ms fine, and is the clock elsewhere.
#![allow(clippy::unwrap_used, reason = "a bench stops at the first surprise")]

use std::{fs::read_to_string, hint::black_box, time::Instant};

use breeks::{
    adjust::Parameters,
    draft::{draft, shape},
    fit::{drafted, solve},
    order::{DEMOS, Order, demo},
    recipe::load,
};

const ROUNDS: usize = 5;
const CALLS: u32 = 1000;
/// A draft alone takes a thousandth of the clock's fineness.
const DRAFTS: u32 = 40 * CALLS;
/// What one body may cost, microseconds of user CPU (design of this project).
const MOST: f64 = 700.0;

fn main() {
    for name in DEMOS {
        let (order, _) = Order::read(&demo(name).unwrap()).unwrap();
        let recipe = load(&order.trousers.block).unwrap();
        let plain = draft(&order, &recipe).unwrap();
        let solving = || solve(&plain.plan, &plain.body, &Parameters::default(), |_| false);
        let solved = solving();

        let whole = best(CALLS, || {
            black_box(drafted(black_box(&order), &recipe).unwrap());
        });
        let solver = best(CALLS, || {
            black_box(solving());
        });
        let drawing = best(DRAFTS, || {
            black_box(shape(black_box(&plain.plan), &solved.parameters));
        });
        let drafts = solved.drafts as f64;
        let verdict = if whole <= MOST { "within" } else { "OVER" };
        println!(
            "{name:<8} one body {whole:6.1} us, {verdict} {MOST:.0}; its solver {solver:6.1} us in {drafts} drafts of \
             {drawing:5.2} us: {:.2} times their time",
            solver / (drafts * drawing)
        );
    }
}

/// The best of a few rounds, microseconds of user CPU a call.
fn best(calls: u32, mut call: impl FnMut()) -> f64 {
    (0..ROUNDS)
        .map(|_| {
            let (clock, user) = (Instant::now(), user_seconds());
            for _ in 0..calls {
                call();
            }
            let user = user.and_then(|before| Some(user_seconds()? - before));
            user.unwrap_or_else(|| clock.elapsed().as_secs_f64()) * 1e6 / f64::from(calls)
        })
        .fold(f64::INFINITY, f64::min)
}

/// User CPU of this process so far.
fn user_seconds() -> Option<f64> {
    /// The unit of the file, whatever the machine.
    const TICKS_PER_SECOND: f64 = 100.0;
    let text = read_to_string("/proc/self/stat").ok()?;
    let after_name = text.rsplit_once(')')?.1;
    Some(after_name.split_whitespace().nth(11)?.parse::<f64>().ok()? / TICKS_PER_SECOND)
}
