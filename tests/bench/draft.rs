//! How long a draft takes. Plain clocks, best of several rounds; run with `cargo bench --bench draft`.
//!
//! The ratio compares drawing both panels with measuring all their edges once, in the same run on the same machine:
//! that number travels, microseconds do not.

use std::{hint::black_box, time::Instant};

use breeks::{
    adjust::{Key, Parameters},
    draft::{Plan, draft, shape},
    fit::Report,
    order::{DEMOS, Order, demo},
    recipe::load,
    terms::{Edge, Word},
};

/// The best of many short rounds, microseconds a call. All calls take turns, so that what else the machine does
/// meets them alike.
fn best<const N: usize>(mut calls: [&mut dyn FnMut(); N]) -> [f64; N] {
    const ROUNDS: usize = 80;
    const CALLS: u32 = 300;
    let mut best = [f64::INFINITY; N];
    for _ in 0..ROUNDS {
        for (call, best) in calls.iter_mut().zip(&mut best) {
            let start = Instant::now();
            for _ in 0..CALLS {
                call();
            }
            *best = best.min(start.elapsed().as_secs_f64() * 1e6 / f64::from(CALLS));
        }
    }
    best
}

/// Ten parameters at ordinary amounts.
const TEN: [(Key, f64); 10] = [
    (Key::ThighFront, 1.9),
    (Key::ThighBackTake, 0.5),
    (Key::ThighInner, 0.6),
    (Key::ThighOuter, 0.5),
    (Key::SeatLength, 1.0),
    (Key::SeatAngle, 1.5),
    (Key::SeatScoop, 0.4),
    (Key::CrotchDepth, 0.5),
    (Key::CrotchFrontScoop, 0.3),
    (Key::WaistRaiseBack, 0.5),
];

fn main() {
    for name in DEMOS {
        let source = demo(name).expect("a demo in the list is there");
        let (order, _) = Order::read(&source).expect("demos are sound");
        let recipe = load(&order.trousers.block).expect("demos name a shipped recipe");
        let drafted = draft(&order, &recipe).expect("demos draft");
        let plan = Plan::new(&recipe, &drafted.body, &order.trousers).expect("demos draft");
        let panels = [&drafted.shape.front, &drafted.shape.back];

        let plain = Parameters::default();
        let ten = TEN.iter().fold(Parameters::default(), |all, (key, value)| all.with(*key, *value));
        let [drawing, corrected, measuring, planning, whole] = best([
            &mut || {
                black_box(shape(black_box(&plan), &plain));
            },
            &mut || {
                black_box(shape(black_box(&plan), &ten));
            },
            &mut || {
                let edges = panels.iter().flat_map(|panel| Edge::ALL.iter().map(|edge| panel.edge(*edge)));
                black_box(edges.map(|edge| edge.length()).sum::<f64>());
            },
            &mut || {
                black_box(Plan::new(black_box(&recipe), &drafted.body, &order.trousers).is_ok());
            },
            &mut || {
                let draft = draft(black_box(&order), &recipe).expect("demos draft");
                let report = Report::of(&draft.plan, &draft.parameters, &draft.shape, &draft.body);
                black_box((draft.steps().len(), report.is_true()));
            },
        ]);
        println!(
            "{name:<8} shape {drawing:5.2} us, with ten parameters {corrected:5.2} us, ratio {:.2}; one pass of its lengths {measuring:5.2} us, ratio {:4.1}; \
 plan {planning:5.2} us; whole draft with steps and report {whole:6.2} us",
            corrected / drawing,
            drawing / measuring
        );
    }
}
