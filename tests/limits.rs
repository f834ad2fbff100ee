//! Parameters that go too far are refused at their place, with the largest value that can still be drawn.

use std::cell::Cell;

use breeks::{
    adjust::Key,
    fit::drafted,
    mistake::{Mistakes, Source},
    order::{Adjustment, Order},
    recipe::{load, shipped_names},
    terms::Word,
};
use proptest::{
    prelude::*,
    test_runner::{Config, RngSeed, TestRunner},
};

const BODY: &str = "sex = \"female\"\nwaist_level = \"natural\"\n[measurements]\nwaist_girth = 74\nhip_girth = 101\n\
                    inside_leg = 79\nbody_rise = 28\n[trousers]\nfit = \"proportional\"\n";

fn with(block: &str, key: Key, value: f64) -> Result<(), Mistakes> {
    let (region, name) = key.key().split_once('.').expect("a region and a name");
    let text = format!("{BODY}[{region}]\n{name} = {value}\n");
    let (order, _) = Order::read(&Source::new("body.toml", text))?;
    drafted(&order, &load(block)?).map(|_| ())
}

/// The number that a refusal names as the largest.
fn named(mistakes: &Mistakes) -> f64 {
    let text = mistakes.to_string();
    let (_, after) =
        text.split_once("the largest that can be drawn here is ").unwrap_or_else(|| panic!("{text}"));
    after.split_whitespace().next().expect("a number").replace('−', "-").parse().expect("a number")
}

fn keys() -> impl Iterator<Item = Key> {
    Key::ALL.iter().copied().filter(|key| !matches!(key, Key::HipUneven | Key::ThighFrontReach))
}

#[test]
fn beyond_the_hard_limit_refused_with_what_can_be_drawn() {
    for block in shipped_names() {
        for key in keys() {
            for limit in [key.about().hard.0, key.about().hard.1].into_iter().filter(|limit| *limit != 0.0) {
                let refused = with(block, key, 1.02 * limit).expect_err("beyond the limit");
                let largest = named(&refused);
                assert!(largest.abs() <= limit.abs() + 1e-9, "{block} {key}: {largest} for {limit}");
                assert!(with(block, key, largest).is_ok(), "{block} {key}: {largest} refused");
                let text = refused.to_string();
                assert!(text.contains("body.toml:") && text.contains("hard limit"), "{text}");
            }
        }
    }
}

#[test]
fn beyond_the_usual_range_drafted_with_a_warning() {
    for key in keys() {
        let most = key.about().usual.1;
        let value = most + 0.1 * (key.about().hard.1 - most).max(0.05);
        let (region, name) = key.key().split_once('.').expect("a region and a name");
        let text = format!("{BODY}[{region}]\n{name} = {value}\n");
        let (order, _) = Order::read(&Source::new("body.toml", text)).expect("a file");
        let (draft, _) = drafted(&order, &load("classic").expect("classic")).expect("a draft");
        let warned = draft.notices.iter().any(|notice| notice.code == "beyond-usual");
        assert!(warned, "{key} {value}: {:?}", draft.notices);
    }
}

#[test]
fn what_breaks_the_outline_named_with_its_largest() {
    // A centre back that stands nearly upright.
    let refused = with("wide", Key::SeatAngle, -5.0).expect_err("hardly any lean left");
    let largest = named(&refused);
    assert!(largest < 0.0 && largest > -5.0, "{largest}");
    assert!(with("wide", Key::SeatAngle, largest).is_ok());
    assert!(with("wide", Key::SeatAngle, largest - 0.1).is_err());
    assert!(refused.to_string().contains("lean"), "{refused}");
}

/// Any handful of parameters anywhere within their hard limits: drawn true, or refused in words that say how far one
/// may go.
#[test]
fn random_sets_within_the_hard_limits_drawn_true_or_refused_with_reason() {
    let keys: Vec<Key> = keys().collect();
    let sets = prop::collection::vec((prop::sample::select(keys), 0.0..1.0), 1..8);
    for block in shipped_names() {
        let recipe = load(block).expect("a shipped recipe");
        let (base, _) = Order::read(&Source::new("body.toml", BODY)).expect("a file");
        let (drawn, refused) = (Cell::new(0), Cell::new(0));
        let config = Config {
            cases: 1500,
            failure_persistence: None,
            rng_seed: RngSeed::Fixed(5),
            ..Config::default()
        };
        TestRunner::new(config)
            .run(&sets, |set: Vec<(Key, f64)>| {
                let mut order = base.clone();
                for (key, part) in set {
                    let (least, most) = key.about().hard;
                    let value = least + part * (most - least);
                    order.adjustments.retain(|it| it.key != key);
                    order.adjustments.push(Adjustment { key, value, from: breeks::order::Giver::File });
                }
                match drafted(&order, &recipe) {
                    Ok((_, report)) => {
                        drawn.set(drawn.get() + 1);
                        prop_assert!(report.is_true(), "{:?}", report.notices());
                    }
                    Err(mistakes) => {
                        refused.set(refused.get() + 1);
                        let text = mistakes.to_string();
                        let says = text.contains("the largest that can be drawn")
                            || text.contains("no value of")
                            || text.contains("give less of each");
                        prop_assert!(says, "{text}");
                    }
                }
                Ok(())
            })
            .expect("every set");
        println!("{block}: {} sets drawn, {} refused", drawn.get(), refused.get());
    }
}
