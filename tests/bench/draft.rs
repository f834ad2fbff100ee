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

/// The best of a few rounds, microseconds a call.
fn best(mut call: impl FnMut()) -> f64 {
    const ROUNDS: usize = 7;
    const CALLS: u32 = 4000;
    (0..ROUNDS)
        .map(|_| {
            let start = Instant::now();
            for _ in 0..CALLS {
                call();
            }
            start.elapsed().as_secs_f64() * 1e6 / f64::from(CALLS)
        })
        .fold(f64::INFINITY, f64::min)
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
        let drawing = best(|| {
            black_box(shape(black_box(&plan), &plain));
        });
        let ten = TEN.iter().fold(Parameters::default(), |all, (key, value)| all.with(*key, *value));
        let corrected = best(|| {
            black_box(shape(black_box(&plan), &ten));
        });
        let measuring = best(|| {
            let total: f64 =
                panels.iter().flat_map(|panel| Edge::ALL.iter().map(|edge| panel.edge(*edge).length())).sum();
            black_box(total);
        });
        let planning = best(|| {
            black_box(Plan::new(black_box(&recipe), &drafted.body, &order.trousers).is_ok());
        });
        let whole = best(|| {
            let draft = draft(black_box(&order), &recipe).expect("demos draft");
            let report = Report::of(&draft.plan, &draft.parameters, &draft.shape, &draft.body);
            black_box((draft.steps().len(), report.can_be_cut()));
        });
        println!(
            "{name:<8} shape {drawing:5.2} us, with ten parameters {corrected:5.2} us, ratio {:.2}; one pass of its lengths {measuring:5.2} us, ratio {:4.1}; \
 plan {planning:5.2} us; whole draft with steps and report {whole:6.2} us",
            corrected / drawing,
            drawing / measuring
        );
    }
}
