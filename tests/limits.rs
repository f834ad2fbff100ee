//! Parameters that go too far are refused at their place, with the largest value that can still be drawn.

use breeks::{
    adjust::Key,
    fit::drafted,
    mistake::{Mistakes, Source},
    order::Order,
    recipe::{load, shipped_names},
    terms::Word,
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
    after.split_whitespace().next().expect("a number").parse().expect("a number")
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
