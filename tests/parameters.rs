//! What must hold for every fit parameter on every body: outlines that can be cut, seams and joins true, the sewn
//! waist kept, nothing at all at 0, no jump, and as much given as taken.
#![allow(clippy::unwrap_used, reason = "a recipe or body that does not read fails the test")]

mod people;

use std::{cell::Cell, sync::Arc};

use breeks::{
    adjust::{Key, Parameters},
    draft::{Draft, PanelShape, Shape, draft, shape},
    fit::Report,
    recipe::{Recipe, load, shipped_names},
    terms::{Level, Panel, Word},
};
use kurbo::{ParamCurve, Point};
use people::{Person, of_507};
use proptest::{
    prelude::*,
    test_runner::{Config, RngSeed, TestRunner},
};

fn config(cases: u32) -> Config {
    Config { cases, failure_persistence: None, rng_seed: RngSeed::Fixed(8), ..Config::default() }
}

/// All parameters: those of one side only act on a leg like the others.
fn keys() -> impl Iterator<Item = Key> {
    Key::ALL.iter().copied()
}

fn drafts(recipe: &Arc<Recipe>, people: &[Person]) -> Vec<Draft> {
    people.iter().map(|person| draft(&person.order, recipe).unwrap()).collect()
}

/// The trued block at the measured waist, before any waist drop.
fn plain(draft: &Draft) -> Shape {
    shape(&draft.plan, &Parameters::default())
}

fn judged(plan_of: &Draft, parameters: &Parameters) -> (Shape, Report) {
    let shape = shape(&plan_of.plan, parameters);
    let report = Report::of(&plan_of.plan, parameters, &shape, &plan_of.body);
    (shape, report)
}

/// A handful of parameters, each anywhere in its usual range.
fn any_set() -> impl Strategy<Value = Parameters> {
    let keys: Vec<Key> = keys().collect();
    prop::collection::vec((prop::sample::select(keys), 0.0..1.0), 1..6).prop_map(|chosen: Vec<(Key, f64)>| {
        chosen.into_iter().fold(Parameters::default(), |all, (key, part)| {
            let (least, most) = key.about().usual;
            let least = if key.about().default == 0.0 { least.min(0.0) } else { least };
            all.with(key, least + part * (most - least))
        })
    })
}

#[test]
fn usual_sets_sound_and_true_with_the_waist_kept() {
    let people = of_507();
    for block in shipped_names() {
        let drafts = drafts(&load(block).unwrap(), &people);
        let cases = 3500;
        let (turn, broken) = (Cell::new(0_usize), Cell::new(0_usize));
        TestRunner::new(config(cases))
            .run(&any_set(), |parameters| {
                turn.set(turn.get() + 1);
                let base = &drafts[turn.get() % drafts.len()];
                let (shape, report) = judged(base, &parameters);
                let set: Vec<String> =
                    parameters.set().map(|(key, value)| format!("{key} {value:.2}")).collect();
                prop_assert!(report.faults.is_empty(), "{set:?} {:?}", report.faults);
                if !report.is_true() {
                    broken.set(broken.get() + 1);
                    println!("{set:?}: {:?}", report.notices().first());
                    return Ok(());
                }
                let waist = |shape: &Shape| shape.front.sewn_waist_length() + shape.back.sewn_waist_length();
                let kept = (waist(&shape) - base.plan.sewn_waist).abs();
                prop_assert!(kept < 1e-6, "{set:?}: sewn waist off by {kept}");
                Ok(())
            })
            .unwrap();
        println!("{block}: {} of {cases} sets refused", broken.get());
        assert!(broken.get() * 200 < cases as usize, "{block}: {} of {cases} sets refused", broken.get());
    }
}

/// More width over the abdomen than the front dart holds, on narrow and on full waists, with what else draws on the dart.
#[test]
fn darts_not_open_the_other_way_and_the_waist_kept() {
    const SETS: [&[(Key, f64)]; 4] = [
        &[(Key::AbdomenWidth, 3.0)],
        &[(Key::SeatWidth, -1.0), (Key::AbdomenWidth, 1.5)],
        &[(Key::AbdomenLength, -1.0), (Key::AbdomenWidth, 0.6)],
        &[
            (Key::SeatWidth, -0.955),
            (Key::SeatScoop, 0.311),
            (Key::CrotchFrontScoop, -0.147),
            (Key::AbdomenWidth, 0.631),
            (Key::SideForward, -0.98),
        ],
    ];
    let people = of_507();
    let mut used_up = 0;
    for block in shipped_names() {
        for base in drafts(&load(block).unwrap(), &people) {
            for set in SETS {
                let parameters = set.iter().fold(Parameters::default(), |all, (key, by)| all.with(*key, *by));
                let drawn = shape(&base.plan, &parameters);
                for dart in Panel::ALL.iter().flat_map(|panel| &drawn.panel(*panel).darts) {
                    let [inner, outer] = dart.legs.map(|leg| leg - dart.apex);
                    assert!(inner.cross(outer) > -1e-9, "{block} {set:?}: {dart:?}");
                    used_up += usize::from(dart.intake() < 1e-9);
                }
                let waist = drawn.front.sewn_waist_length() + drawn.back.sewn_waist_length();
                assert!((waist - base.plan.sewn_waist).abs() < 1e-6, "{block} {set:?}: {waist}");
            }
        }
    }
    assert!(used_up > 100, "{used_up} darts at nothing: the sets no longer draw on them");
}

#[test]
fn default_values_change_nothing() {
    for block in shipped_names() {
        for base in drafts(&load(block).unwrap(), &of_507()[..20]) {
            let defaults = keys().fold(Parameters::default(), |all, key| all.with(key, key.about().default));
            assert_eq!(shape(&base.plan, &defaults), plain(&base));
        }
    }
}

/// Points of the outline at the same places along each edge.
fn sampled(panel: &PanelShape) -> Vec<Point> {
    use breeks::terms::Edge;
    let mut points = Vec::new();
    for edge in [Edge::SideSeam, Edge::Inseam, Edge::CrotchSeam] {
        let chain = panel.edge(edge);
        let length = chain.length();
        points.extend((0..=16).map(|step| chain.point_at(length * f64::from(step) / 16.0)));
    }
    points.extend(panel.waist.cubics().iter().map(|piece| piece.eval(1.0)));
    points
}

fn furthest(a: &Shape, b: &Shape) -> f64 {
    Panel::ALL
        .iter()
        .flat_map(|panel| {
            let (a, b) = (sampled(a.panel(*panel)), sampled(b.panel(*panel)));
            a.into_iter().zip(b).map(|(p, q)| p.distance(q)).collect::<Vec<_>>()
        })
        .fold(0.0, f64::max)
}

#[test]
fn no_jump_along_any_parameter() {
    /// A twentieth of a centimetre or degree, and what it may move.
    const STEP: f64 = 0.05;
    let people = of_507();
    for block in shipped_names() {
        let drafts = drafts(&load(block).unwrap(), &people);
        for key in keys() {
            let (least, most) = key.about().usual;
            let mut worst: f64 = 0.0;
            for base in drafts.iter().step_by(200) {
                let mut at = least.min(key.about().default);
                let mut before = shape(&base.plan, &Parameters::default().with(key, at));
                while at < most {
                    at += STEP;
                    let after = shape(&base.plan, &Parameters::default().with(key, at));
                    worst = worst.max(furthest(&before, &after));
                    before = after;
                }
                let tiny = shape(&base.plan, &Parameters::default().with(key, key.about().default + 1e-6));
                let jump = furthest(&tiny, &plain(base));
                assert!(jump < 1e-3, "{block}, {key}: jump of {jump} at its default");
            }
            println!("{block}, {key}: {STEP} moves at most {worst:.4}");
            assert!(worst < 3.0 * STEP, "{block}, {key}: {STEP} moves {worst}");
        }
    }
}

/// What a parameter is for, as a number that grows with it.
fn gain(key: Key, shape: &Shape, hip: f64) -> Option<f64> {
    let width = |panel: &PanelShape, level| panel.chord(level);
    let (front, back) = (&shape.front, &shape.back);
    let crotch = breeks::terms::Role::CrotchPoint;
    Some(match key {
        Key::ThighFront => -front.roles[crotch].x,
        Key::ThighBackTake => back.roles[crotch].x,
        Key::ThighInner | Key::CrotchFrontExtension => -front.roles[crotch].x,
        Key::CrotchBackExtension => -back.roles[crotch].x,
        Key::SeatLength | Key::SeatScoop | Key::SeatLow | Key::WaistRaiseBack => back.crotch_seam.length(),
        Key::CrotchFrontScoop | Key::WaistRaiseFront | Key::AbdomenLength => front.crotch_seam.length(),
        Key::CrotchDepth => front.crotch_seam.length() + back.crotch_seam.length(),
        Key::ThighOuter | Key::ThighFrontSide => width(front, shape.levels[Level::Crotch])?,
        Key::SeatWidth => width(back, hip)?,
        Key::HipFrontShare | Key::SideForward => width(front, hip)?,
        Key::AbdomenWidth => front.sewn_waist_length(),
        Key::LegCalf => width(front, shape.levels[Level::Calf])?,
        _ => return None,
    })
}

#[test]
fn as_much_taken_as_given() {
    for block in shipped_names() {
        for base in drafts(&load(block).unwrap(), &of_507()).iter().step_by(50) {
            for key in keys().filter(|key| key.about().hard.0 < 0.0) {
                let amount = 0.1 * key.about().usual.1.min(1.0);
                let hip = base.plan.levels[Level::Hip];
                let at = |value| gain(key, &shape(&base.plan, &Parameters::default().with(key, value)), hip);
                let (Some(less), Some(none), Some(more)) = (at(-amount), at(0.0), at(amount)) else {
                    continue;
                };
                let (given, taken) = (more - none, none - less);
                assert!(given > 0.0, "{block}, {key}: {amount} gives {given}");
                assert!(
                    (given - taken).abs() <= 0.1 * given.abs(),
                    "{block}, {key}: {amount} gives {given:.4}, the same less takes {taken:.4}"
                );
            }
        }
    }
}
