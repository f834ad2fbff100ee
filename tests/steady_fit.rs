//! A tape that reads a millimetre more: the measured fit and its outline follow it, and do not jump.
//!
//! The demo bodies, and some of 985 people of the 1988 US Army Anthropometric Survey (report NATICK/TR-90/032; see
//! `tests/data/README.md`).
#![allow(clippy::unwrap_used, reason = "a recipe or body that does not read fails the test")]

mod people;

use std::sync::{Arc, LazyLock};

use breeks::{
    draft::{Draft, PanelShape},
    fit::{Report, Verdict, drafted},
    order::{DEMOS, Order, demo},
    recipe::{Recipe, load},
    terms::{Edge, FitKind, Measurement, Panel, WaistLevel, Word},
};
use kurbo::Point;
use people::of_985;

/// What the tape reads more, cm.
const MORE: f64 = 0.1;
/// What 999 steps in 1000 keep to, and all of them, cm: a correction that comes into its own begins with 0.2.
const FITTED: (f64, f64) = (0.5, 1.0);
/// By the tape alone, without fit parameters, none goes further.
const UNFITTED: (f64, f64) = (0.5, 0.5);
/// A part of the people says the same in less time.
const EVERY: usize = 18;

fn fitted(order: &Order) -> Option<(Draft, Report)> {
    static CLASSIC: LazyLock<Arc<Recipe>> = LazyLock::new(|| load("classic").unwrap());
    drafted(order, &CLASSIC).ok()
}

/// Points spread over the edges of a panel, each edge by parts of its own length.
fn outline(panel: &PanelShape) -> Vec<Point> {
    const PARTS: u32 = 8;
    Edge::ALL
        .iter()
        .map(|edge| panel.edge(*edge))
        .flat_map(|edge| {
            let length = edge.length();
            (0..PARTS).map(move |part| edge.point_at(length * f64::from(part) / f64::from(PARTS)))
        })
        .collect()
}

/// What was decided: how many darts there are.
fn decided(draft: &Draft) -> (usize, usize) {
    (draft.shape.front.darts.len(), draft.shape.back.darts.len())
}

/// The moves of some readings.
#[derive(Default)]
struct Moves {
    /// Left out because a dart came or went.
    darts: usize,
    /// Another verdict.
    flips: Vec<String>,
    /// The farthest that a point of the outline went, cm, and by which reading.
    farthest: Vec<(f64, String)>,
}

impl Moves {
    fn add(&mut self, order: &Order) {
        let Some((before, was)) = fitted(order) else { return };
        let outlines = |draft: &Draft| {
            Panel::ALL.iter().flat_map(|p| outline(draft.shape.panel(*p))).collect::<Vec<_>>()
        };
        let from = outlines(&before);
        for measurement in Measurement::ALL {
            let Some(cm) = order.body.cm(*measurement) else { continue };
            let mut more = order.clone();
            more.body = more.body.with(*measurement, cm + MORE);
            let Some((after, is)) = fitted(&more) else { continue };
            let reading = format!("{}, {measurement}", order.name.as_deref().unwrap_or("body"));
            if Verdict::on(&before, &was) != Verdict::on(&after, &is) {
                self.flips.push(reading.clone());
            }
            if decided(&before) != decided(&after) {
                self.darts += 1;
                continue;
            }
            let far = from.iter().zip(outlines(&after)).map(|(a, b)| a.distance(b)).fold(0.0, f64::max);
            self.farthest.push((far, reading));
        }
    }

    fn judge(&mut self, title: &str, (ordinary, all): (f64, f64)) {
        self.farthest.sort_by(|a, b| a.0.total_cmp(&b.0));
        let steps = self.farthest.len();
        let part = |part: f64| self.farthest[((steps - 1) as f64 * part) as usize].0;
        let (most, by) = &self.farthest[steps - 1];
        println!(
            "{title}: {steps} steps of {MORE} cm; half move no point by more than {:.3} cm, 99 in 100 {:.3}, 999 in 1000 \
             {:.3}, all {most:.3} ({by}); {} left out because a dart came or went; {} have another verdict: {}",
            part(0.5),
            part(0.99),
            part(0.999),
            self.darts,
            self.flips.len(),
            if self.flips.is_empty() { "none".to_owned() } else { self.flips.join("; ") }
        );
        assert!(self.darts * 20 <= steps, "{} of {steps}", self.darts);
        assert!(part(0.999) <= ordinary && *most <= all, "{} {most}: {by}", part(0.999));
        assert!(self.flips.len() * 50 <= steps, "{}: {:?}", self.flips.len(), self.flips);
    }
}

#[test]
fn demo_bodies_fitted_steadily() {
    let mut moves = Moves::default();
    for name in DEMOS {
        moves.add(&Order::read(&demo(name).unwrap()).unwrap().0);
    }
    moves.judge("the demo bodies", FITTED);
}

#[test]
fn people_of_the_985_fitted_steadily() {
    of_the_985(None).judge("the 985, fitted", FITTED);
}

#[test]
fn people_of_the_985_drafted_steadily() {
    of_the_985(Some(FitKind::Proportional)).judge("the 985, by the recipe alone", UNFITTED);
}

fn of_the_985(fit: Option<FitKind>) -> Moves {
    let every = if std::env::var_os("BREEKS_WHOLE").is_some() { 1 } else { EVERY };
    let mut moves = Moves::default();
    for waist in [WaistLevel::Natural, WaistLevel::Navel] {
        for mut person in of_985(waist).into_iter().step_by(every) {
            person.order.trousers.fit = fit;
            moves.add(&person.order);
        }
    }
    moves
}
