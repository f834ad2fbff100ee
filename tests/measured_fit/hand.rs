//! What the hand gives comes on top of what a fit has found: the outline moves as it does on a draft that is not fitted.

use breeks::{
    adjust::Key,
    draft::Draft,
    fit::drafted,
    order::{Adjustment, Order},
    terms::{Edge, FitKind, Panel, Sex, WaistLevel, Word},
};
use kurbo::Vec2;

use super::{classic, fitted, people};

/// The most that a point may move otherwise than without a fit, cm.
const OTHERWISE: f64 = 0.25;

fn with(order: &Order, all: &[(Key, f64)], fit: FitKind) -> Order {
    let mut order = order.clone();
    order.trousers.fit = Some(fit);
    order.adjustments = all
        .iter()
        .map(|(key, value)| Adjustment { key: *key, value: *value, from: breeks::order::Giver::File })
        .collect();
    order
}

/// How the outline moves from one draft to another: points spread over every edge by its own length.
fn moved(from: &Draft, to: &Draft) -> Vec<Vec2> {
    const PARTS: u32 = 8;
    let points = |draft: &Draft| {
        let mut points = Vec::new();
        for panel in Panel::ALL {
            for edge in Edge::ALL {
                let edge = draft.shape.panel(*panel).edge(*edge);
                let length = edge.length();
                points.extend(
                    (0..PARTS).map(|part| edge.point_at(length * f64::from(part) / f64::from(PARTS))),
                );
            }
        }
        points
    };
    points(from).into_iter().zip(points(to)).map(|(a, b)| b - a).collect()
}

#[test]
fn key_given_by_hand_as_without_a_fit() {
    let recipe = classic();
    let (mut tried, mut beyond, mut refused, mut worst) = (0, 0, 0, (0.0, String::new()));
    for sex in [Sex::Female, Sex::Male] {
        // a hundred people in all where the whole is asked for, whom every key moves twice
        let people = people(WaistLevel::Natural, sex, 24);
        for order in people.iter().step_by(1 + people.len() / 60) {
            let (plain, _) = fitted(order);
            let found = |key: Key| plain.parameters[key];
            for key in Key::ALL.iter().filter(|key| key.about().default == 0.0) {
                for amount in [0.1, key.about().ordinary] {
                    let value = found(*key) + amount;
                    let measured =
                        |value| drafted(&with(order, &[(*key, value)], FitKind::Measured), &recipe);
                    let Ok((on_top, _)) = measured(value) else {
                        refused += 1;
                        continue;
                    };
                    for other in Key::ALL.iter().filter(|other| *other != key) {
                        assert_eq!(on_top.parameters[*other], found(*other), "{key} moved {other}");
                    }
                    assert_eq!(on_top.parameters[*key], value);
                    let alone =
                        |value| drafted(&with(order, &[(*key, value)], FitKind::Proportional), &recipe);
                    let (Ok((before, _)), Ok((after, _))) = (alone(found(*key)), alone(value)) else {
                        refused += 1;
                        continue;
                    };
                    let differ = moved(&plain, &on_top)
                        .into_iter()
                        .zip(moved(&before, &after))
                        .map(|(ours, theirs)| (ours - theirs).hypot())
                        .fold(0.0, f64::max);
                    tried += 1;
                    beyond += usize::from(differ > OTHERWISE);
                    if differ > worst.0 {
                        worst = (differ, format!("{key} {amount}, {:?}", order.name));
                    }
                }
            }
        }
    }
    println!(
        "{tried} amounts given by hand on top of a fit, {refused} that cannot be drawn; {beyond} move a point by more than \
         {OTHERWISE} cm otherwise than without a fit, most {:.2} cm ({})",
        worst.0, worst.1
    );
    assert!(refused * 20 < tried, "{refused} of {tried}");
    assert!(beyond * 100 <= tried, "{beyond} of {tried}");
}

#[test]
fn rest_found_round_the_hand_on_request() {
    let order = &people(WaistLevel::Natural, Sex::Female, 100)[0];
    let mut given = with(order, &[(Key::CrotchBackExtension, 1.0)], FitKind::Measured);
    let over = |order: &Order| super::over(&fitted(order).1, order);
    assert!(over(&given).abs() > 0.5);
    given.around = true;
    assert!(over(&given).abs() < 0.1);
    assert_eq!(fitted(&given).0.parameters[Key::CrotchBackExtension], 1.0);
}

/// What a fit found, written into the file and held, is the same draft.
#[test]
fn fit_held_as_found() {
    for order in people(WaistLevel::Natural, Sex::Male, 60) {
        let (found, _) = fitted(&order);
        let values: Vec<(Key, f64)> = found.parameters.set().collect();
        let (held, _) = fitted(&with(&order, &values, FitKind::Held));
        assert_eq!(held.parameters, found.parameters);
        assert_eq!(held.fit, FitKind::Held);
    }
}
