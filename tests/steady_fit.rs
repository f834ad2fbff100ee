//! A tape that reads a millimetre more: the measured fit and its outline follow it, and do not jump.
//!
//! The demo bodies, and some of 985 people of the 1988 US Army Anthropometric Survey (report NATICK/TR-90/032; see
//! `tests/data/README.md`).
#![allow(clippy::unwrap_used, reason = "a recipe or body that does not read fails the test")]

mod people;

use std::sync::{Arc, LazyLock};

use breeks::{
    adjust::Key,
    draft::{Draft, PanelShape},
    fit::drafted,
    order::{DEMOS, Order, demo},
    recipe::{Recipe, load},
    terms::{Edge, Measurement, Panel, WaistLevel, Word},
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
const EVERY: usize = 9;

fn fitted(order: &Order) -> Option<Draft> {
    static CLASSIC: LazyLock<Arc<Recipe>> = LazyLock::new(|| load("classic").unwrap());
    drafted(order, &CLASSIC).ok().map(|(draft, _)| draft)
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

/// The fit stands at the end of a usual range or of what the outline bears, and says so: what is left to move must then
/// move more.
fn at_end(draft: &Draft) -> bool {
    draft.notices.iter().any(|notice| matches!(notice.code, "fit-at-bound" | "fit-unmet"))
}

/// The greatest moves of some readings, each with where it was.
#[derive(Default)]
struct Greatest {
    readings: usize,
    /// Readings by which a parameter moved more than it may.
    over: usize,
    parameter: (f64, String),
    point: (f64, String),
}

impl Greatest {
    fn add(&mut self, before: &Draft, after: &Draft, title: &str) {
        self.readings += 1;
        let mut over = false;
        for key in Key::ALL {
            let by = (after.parameters[*key] - before.parameters[*key]).abs();
            over |= by > MOST_OF_A_PARAMETER;
            if by > self.parameter.0 {
                self.parameter = (by, format!("{title}: {key}"));
            }
        }
        self.over += usize::from(over);
        for panel in Panel::ALL {
            let [was, is] = [before, after].map(|draft| outline(draft.shape.panel(*panel)));
            for (a, b) in was.into_iter().zip(is) {
                let by = a.distance(b);
                if by > self.point.0 {
                    self.point = (by, format!("{title}: {panel} at {:.0}, {:.0}", a.x, a.y));
                }
            }
        }
    }

    fn print(&self, title: &str) {
        println!(
            "{title}: {} readings {MORE} cm more; a parameter by more than {MOST_OF_A_PARAMETER}: {}; most {:.3} ({}); of \
             an outline point {:.3} cm ({})",
            self.readings, self.over, self.parameter.0, self.parameter.1, self.point.0, self.point.1
        );
    }
}

/// All readings of some bodies.
#[derive(Default)]
struct Moves {
    discrete: usize,
    ordinary: Greatest,
    at_end: Greatest,
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
            if decided(&before) != decided(&after) {
                self.discrete += 1;
                continue;
            }
            let ends = at_end(&before) || at_end(&after);
            let greatest = if ends { &mut self.at_end } else { &mut self.ordinary };
            greatest.add(&before, &after, &format!("{label}, {measurement}"));
        }
    }

    /// Of what is not at an end, all but one reading in 500 keep to what a parameter may move, and these nearly.
    fn judge(&self, title: &str) {
        self.ordinary.print(title);
        if self.at_end.readings > 0 {
            self.at_end.print("  at the end of a usual range");
        }
        println!("  left out because a dart came or went: {}", self.discrete);
        let Greatest { readings, over, parameter, point } = &self.ordinary;
        assert!(*readings > 0 && self.discrete * 20 <= *readings, "{} of {readings}", self.discrete);
        assert!(over * 500 <= *readings, "{over} of {readings}");
        assert!(parameter.0 <= 1.1 * MOST_OF_A_PARAMETER, "{} {}", parameter.0, parameter.1);
        assert!(point.0 <= MOST_OF_A_POINT, "{} {}", point.0, point.1);
    }
}

#[test]
fn demo_bodies_fitted_steadily() {
    for name in DEMOS {
        let mut moves = Moves::default();
        moves.add(&Order::read(&demo(name).unwrap()).unwrap().0);
        moves.judge(name);
    }
}

#[test]
fn people_of_the_985_fitted_steadily() {
    let people = of_985(WaistLevel::Natural);
    let mut moves = Moves::default();
    for person in people.into_iter().step_by(EVERY) {
        moves.add(&person.order);
    }
    moves.judge("the 985");
}
