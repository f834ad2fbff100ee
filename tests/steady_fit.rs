//! A tape that reads a millimetre more: the measured fit and its outline follow it, and do not jump.
//!
//! The demo bodies; and where they lie beside the repository, some of 985 people of the 1988 US Army Anthropometric Survey
//! (report NATICK/TR-90/032, approved for public release).
#![allow(clippy::unwrap_used, reason = "a recipe or body that does not read fails the test")]

mod people;

use breeks::{
    adjust::Key,
    draft::{Draft, PanelShape},
    fit::drafted,
    order::{DEMOS, Order, demo},
    recipe::load,
    terms::{Edge, Measurement, WaistLevel, Word},
};
use kurbo::Point;
use people::of_985;

/// What the tape reads more, cm.
const MORE: f64 = 0.1;
/// The most that a parameter may move by it, cm or degrees.
const MOST_OF_A_PARAMETER: f64 = 0.1;
/// The most that a point of an outline may move by it, cm.
const MOST_OF_A_POINT: f64 = 0.2;
/// A part of the people says the same in less time.
const EVERY: usize = 12;

fn fitted(order: &Order) -> Option<Draft> {
    drafted(order, &load(&order.trousers.block).unwrap()).ok().map(|(draft, _)| draft)
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

/// What was decided: how many darts there are, and what had to be held.
fn decided(draft: &Draft) -> (usize, usize) {
    (draft.shape.front.darts.len(), draft.shape.back.darts.len())
}

/// The greatest moves of all readings of all bodies, each with where it was.
#[derive(Default)]
struct Moves {
    readings: usize,
    discrete: usize,
    parameter: (f64, String),
    point: (f64, String),
}

impl Moves {
    fn add(&mut self, order: &Order) {
        let Some(before) = fitted(order) else { return };
        let label = order.name.as_deref().unwrap_or("body");
        for measurement in Measurement::ALL {
            let Some(cm) = order.body.cm(*measurement) else { continue };
            let mut more = order.clone();
            more.body = more.body.with(*measurement, cm + MORE);
            let Some(after) = fitted(&more) else { continue };
            self.readings += 1;
            if decided(&before) != decided(&after) {
                self.discrete += 1;
                continue;
            }
            for key in Key::ALL {
                let by = (after.parameters[*key] - before.parameters[*key]).abs();
                if by > self.parameter.0 {
                    self.parameter = (by, format!("{label}, {measurement}: {key}"));
                }
            }
            for (a, b) in [(&before.shape.front, &after.shape.front), (&before.shape.back, &after.shape.back)]
            {
                for (a, b) in outline(a).into_iter().zip(outline(b)) {
                    let by = a.distance(b);
                    if by > self.point.0 {
                        let at = format!(
                            "{label}, {measurement}: {} at {:.0}, {:.0}",
                            before.shape.front.panel, a.x, a.y
                        );
                        self.point = (by, at);
                    }
                }
            }
        }
    }

    fn judged(&self, title: &str) {
        println!(
            "{title}: {} readings 0.1 cm more, {} left out because a dart came or went; most of a parameter {:.3} \
             ({}), of an outline point {:.3} cm ({})",
            self.readings, self.discrete, self.parameter.0, self.parameter.1, self.point.0, self.point.1
        );
        assert!(
            self.readings > 0 && self.discrete * 20 <= self.readings,
            "{} of {}",
            self.discrete,
            self.readings
        );
        assert!(self.parameter.0 <= MOST_OF_A_PARAMETER, "{} {}", self.parameter.0, self.parameter.1);
        assert!(self.point.0 <= MOST_OF_A_POINT, "{} {}", self.point.0, self.point.1);
    }
}

#[test]
fn demo_bodies_fitted_steadily() {
    for name in DEMOS {
        let mut moves = Moves::default();
        moves.add(&Order::read(&demo(name).unwrap()).unwrap().0);
        moves.judged(name);
    }
}

#[test]
fn people_of_the_985_fitted_steadily() {
    let Some(people) = of_985(WaistLevel::Natural) else { return };
    let mut moves = Moves::default();
    for person in people.into_iter().step_by(EVERY) {
        moves.add(&person.order);
    }
    moves.judged("the 985");
}
