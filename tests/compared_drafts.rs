//! What two drafts differ in, reckoned again from the drafts themselves.
#![allow(clippy::unwrap_used, reason = "a body that is not drawn fails the test")]

use breeks::{
    draft::Draft,
    fit::{Change, Difference, Overlaid, Report, drafted},
    order::{Order, demo},
    recipe::{load, shipped_names},
    terms::{Anchor, Edge, Level, Panel, Role, Word},
};
use kurbo::Point;
use proptest::{
    prelude::*,
    test_runner::{Config, RngSeed, TestRunner},
};

struct Drawn {
    draft: Draft,
    report: Report,
}

impl Drawn {
    fn new(name: &str, block: &str, set: &[&str]) -> Self {
        let set: Vec<String> = set.iter().map(|text| (*text).to_owned()).collect();
        let (order, _) = Order::read_with(&demo(name).unwrap(), &set).unwrap();
        let (draft, report) = drafted(&order, &load(block).unwrap()).unwrap();
        Self { draft, report }
    }

    fn compared(&self) -> Overlaid<'_> {
        Overlaid { said: "", draft: &self.draft, report: &self.report }
    }
}

fn between(old: &Drawn, new: &Drawn, anchor: Anchor) -> Difference {
    Difference::between(&old.compared(), &new.compared(), anchor)
}

/// Without a fit that would answer one change by others.
const PLAIN: &str = "trousers.fit=proportional";

fn turned(change: Change) -> Change {
    Change { old: change.new, new: change.old }
}

/// The difference the other way round: every old number new, every new one old.
fn reversed(mut it: Difference) -> Difference {
    let swap =
        |changes: &mut [&mut Change]| changes.iter_mut().for_each(|change| **change = turned(**change));
    for row in &mut it.parameters {
        swap(&mut [&mut row.value]);
    }
    for row in &mut it.points {
        std::mem::swap(&mut row.old, &mut row.new);
    }
    for row in &mut it.edges {
        swap(&mut [&mut row.length]);
    }
    for row in &mut it.seams {
        swap(&mut [&mut row.front, &mut row.back, &mut row.difference]);
    }
    for row in &mut it.levels {
        swap(&mut [&mut row.depth, &mut row.body, &mut row.pattern, &mut row.ease]);
    }
    if let Some(it) = &mut it.crotch {
        swap(&mut [&mut it.front, &mut it.back, &mut it.total, &mut it.body, &mut it.ease]);
        for row in &mut it.by_parameter {
            swap(&mut [&mut row.front, &mut row.back]);
        }
    }
    for row in &mut it.darts {
        swap(&mut [&mut row.intake, &mut row.length]);
        std::mem::swap(&mut row.old_end, &mut row.new_end);
    }
    it.verdict.reverse();
    it
}

/// How far lines lie apart is reckoned in the place of one of them, so that the last bits may differ.
fn without_last_bits(mut it: Difference) -> Difference {
    for row in &mut it.edges {
        row.apart = (row.apart * 1e4).round() / 1e4;
    }
    it
}

#[test]
fn a_draft_against_itself_without_a_difference() {
    for name in ["stroke", "five", "cox"] {
        for block in shipped_names() {
            let drawn = Drawn::new(name, block, &[]);
            for anchor in Anchor::ALL {
                let found = between(&drawn, &drawn, *anchor);
                assert!(found.is_none(), "{name} {block}: {found:?}");
            }
        }
    }
}

#[test]
fn the_difference_the_other_way_round_with_every_sign_turned() {
    let config =
        Config { cases: 60, failure_persistence: None, rng_seed: RngSeed::Fixed(8), ..Config::default() };
    let blocks: Vec<&str> = shipped_names().collect();
    let one = || {
        (
            prop::sample::select(vec!["stroke", "five", "cox"]),
            prop::sample::select(blocks.clone()),
            0.0..1.5_f64,
            -1.0..1.5_f64,
            -0.5..0.8_f64,
        )
    };
    let drawn = |(name, block, thigh, seat, depth): (&str, &str, f64, f64, f64)| {
        let set = [
            format!("thigh.front={thigh} cm"),
            format!("seat.length={seat} cm"),
            format!("crotch.depth={depth} cm"),
        ];
        let mut all: Vec<&str> = set.iter().map(String::as_str).collect();
        all.push(PLAIN);
        Drawn::new(name, block, &all)
    };
    TestRunner::new(config)
        .run(&(one(), one(), prop::sample::select(Anchor::ALL)), |(a, b, anchor)| {
            let (a, b) = (drawn(a), drawn(b));
            let there = without_last_bits(between(&a, &b, anchor));
            let back = without_last_bits(reversed(between(&b, &a, anchor)));
            prop_assert_eq!(there.crotch, back.crotch);
            prop_assert_eq!(there.levels, back.levels);
            prop_assert_eq!(there.points, back.points);
            prop_assert_eq!(there.seams, back.seams);
            prop_assert_eq!(there.darts, back.darts);
            prop_assert_eq!(there.parameters, back.parameters);
            prop_assert_eq!(there.verdict, back.verdict);
            for (one, other) in there.edges.iter().zip(&back.edges) {
                prop_assert_eq!(one.length, other.length);
                prop_assert!((one.apart - other.apart).abs() < 2.5e-4, "{} {}", one.apart, other.apart);
            }
            prop_assert_eq!(there.edges.len(), back.edges.len());
            Ok(())
        })
        .unwrap();
}

#[test]
fn a_seat_wedge_at_the_back_and_nowhere_else() {
    let (old, new) =
        (Drawn::new("five", "classic", &[PLAIN]), Drawn::new("five", "classic", &[PLAIN, "seat.length=1"]));
    let found = between(&old, &new, Anchor::Crotch);
    assert!(found.points.iter().all(|row| row.panel == Panel::Back), "{:?}", found.points);
    let raised = found.points.iter().find(|row| row.role == Role::CentreWaist).unwrap().by();
    assert!((-1.3..-0.5).contains(&raised.y), "{raised:?}");
    let crotch = found.crotch.unwrap();
    assert!(!crotch.front.is_seen());
    let gain = crotch.back.by().unwrap();
    assert!((gain - crotch.by_parameter[0].back.by().unwrap()).abs() < 1e-9);
    assert!((gain - crotch.ease.by().unwrap()).abs() < 1e-9);
}

#[test]
fn a_deeper_crotch_above_the_crotch_line_or_below_the_hip_line() {
    let (old, new) =
        (Drawn::new("five", "classic", &[PLAIN]), Drawn::new("five", "classic", &[PLAIN, "crotch.depth=1"]));
    let by = |anchor: Anchor, role: Role| {
        let found = between(&old, &new, anchor);
        let row = found.points.iter().find(|row| (row.panel, row.role) == (Panel::Front, role));
        row.map_or(0.0, |row| row.by().y)
    };
    for (anchor, hip, knee) in
        [(Anchor::Crotch, -1.0, 0.0), (Anchor::Hip, 0.0, 1.0), (Anchor::Waist, 0.0, 1.0)]
    {
        assert!((by(anchor, Role::SideHip) - hip).abs() < 1e-6, "{anchor}");
        assert!((by(anchor, Role::SideKnee) - knee).abs() < 1e-6, "{anchor}");
    }
    assert!((by(Anchor::Knee, Role::SideHip) + 1.0).abs() < 1e-6);
}

#[test]
fn numbers_of_another_body_as_either_draft_has_them() {
    let (old, new) = (Drawn::new("five", "classic", &[]), Drawn::new("cox", "jeans", &[]));
    let found = between(&old, &new, Anchor::Hip);
    let hip = |drawn: &Drawn| Point::new(0.0, drawn.draft.shape.levels[Level::Hip]);
    for row in &found.points {
        let was = old.draft.shape.panel(row.panel).roles[row.role] - hip(&old).to_vec2();
        let is = new.draft.shape.panel(row.panel).roles[row.role] - hip(&new).to_vec2();
        assert_eq!((row.old, row.new), (was, is));
    }
    for row in found.edges.iter().filter(|row| row.edge != Edge::Waist) {
        let length = |drawn: &Drawn| Some(drawn.draft.shape.panel(row.panel).edge(row.edge).length());
        assert_eq!((row.length.old, row.length.new), (length(&old), length(&new)));
    }
    let hips = found.levels.iter().find(|row| row.level == Level::Hip).unwrap();
    let pattern =
        |drawn: &Drawn| drawn.report.levels.iter().find(|row| row.level == Level::Hip).map(|row| row.pattern);
    assert_eq!((hips.pattern.old, hips.pattern.new), (pattern(&old), pattern(&new)));
    let budget = found.crotch.unwrap();
    assert_eq!(budget.total.old, Some(old.report.crotch.total()));
    assert_eq!(budget.total.new, Some(new.report.crotch.total()));
}

#[test]
fn a_curve_that_moved_between_points_that_did_not() {
    let (old, new) =
        (Drawn::new("five", "classic", &[PLAIN]), Drawn::new("five", "classic", &[PLAIN, "seat.scoop=0.5"]));
    let found = between(&old, &new, Anchor::Crotch);
    let row =
        found.edges.iter().find(|row| (row.panel, row.edge) == (Panel::Back, Edge::CrotchSeam)).unwrap();
    assert!((0.3..0.7).contains(&row.apart), "{}", row.apart);
}

#[test]
fn a_verdict_that_changed_told_where_no_line_did() {
    let old = Drawn::new("five", "classic", &[]);
    let mut new = Drawn::new("five", "classic", &[]);
    new.report.no_passage.push(Level::Hem);
    assert!(!between(&old, &new, Anchor::Crotch).is_none());
}
