//! Proportions: read, reckoned, and printed as they were written.

use breeks::recipe::{Construction, Names, Proportion, Reference};
use breeks::terms::{EaseAt, Measurement};
use proptest::prelude::*;

use super::{any_text::check, body};

fn proportion(text: &str) -> Proportion {
    Proportion::parse(text, &Names::default()).unwrap_or_else(|unreadable| panic!("{text}: {unreadable:?}"))
}

fn value(text: &str) -> f64 {
    proportion(text).value(&body(), &Construction::default()).expect("measured")
}

#[test]
fn value_of_fractions_decimals_mixed_numbers_and_signs() {
    // hip 96, waist 80, waist to hip 20
    for (text, expected) in [
        ("2", 2.0),
        ("0.5", 0.5),
        ("1/16 hip + 0.5", 6.5),
        ("hip", 96.0),
        ("-1/2 waist_to_hip", -10.0),
        ("1/4 hip - 1/4 waist + 1 1/2", 5.5),
        ("1 1/2 hip", 144.0),
        ("0.25hip", 24.0),
        ("1 / 4 hip", 24.0),
        ("  hip  -  1  ", 95.0),
        ("+2 - 3", -1.0),
    ] {
        assert!((value(text) - expected).abs() < 1e-12, "{text}: {}", value(text));
    }
}

#[test]
fn print_as_the_trade_writes_it() {
    for (written, printed) in [
        ("1/16 hip + 0.5", "1/16 hip + 0.5"),
        ("1/16hip+.5", "1/16 hip + 0.5"),
        ("  2/8 hip -1 1/2", "2/8 hip - 1 1/2"),
        ("hip - waist", "hip - waist"),
        ("1 hip", "1 hip"),
        ("-0.50", "-0.5"),
        ("0", "0"),
    ] {
        assert_eq!(proportion(written).to_string(), printed);
    }
}

#[test]
fn every_measurement_and_ease_by_its_name() {
    let named = |text: &str| proportion(text).references().collect::<Vec<_>>();
    assert_eq!(
        named("top_hip + hip_ease"),
        [Reference::Body(Measurement::TopHipGirth), Reference::Ease(EaseAt::Hip)]
    );
    assert_eq!(named("sitting_hip_girth"), [Reference::Body(Measurement::SittingHipGirth)]);
    assert!(Proportion::parse("hip_girth", &Names::default()).is_err(), "one name for one thing");
}

#[test]
fn missing_measurement_named() {
    let missing = proportion("1/4 thigh").value(&body(), &Construction::default());
    assert_eq!(missing, Err(Reference::Body(Measurement::ThighGirth)));
}

#[test]
fn unreadable_proportion_with_its_place() {
    for (text, span) in [
        ("hip hip", 4..7),
        ("1/16 hipp", 5..9),
        ("hip +", 5..5),
        ("", 0..0),
        ("1/0", 0..3),
        ("½ * hip", 3..4),
        ("hip/", 3..4),
        ("1/4 (hip", 4..5),
        ("0,04", 0..4),
        ("2.5.1 hip", 0..5),
        ("3 5/4", 0..5),
        ("1001", 0..4),
    ] {
        let unreadable = Proportion::parse(text, &Names::default()).expect_err(text);
        assert_eq!(unreadable.span, span, "{text}");
    }
}

#[test]
fn print_read_again_the_same() {
    let number = prop_oneof![
        (0u32..1000).prop_map(|whole| whole.to_string()),
        (0u32..100_000).prop_map(|thousandths| format!("{}", f64::from(thousandths) / 1000.0)),
        (1u32..50, 1u32..50).prop_map(|(over, under)| format!("{over}/{under}")),
        (1u32..50, 1u32..50).prop_map(|(whole, over)| format!("{whole} {over}/{}", over + 1)),
    ];
    let names =
        prop::sample::select(vec!["hip", "waist", "body_rise", "crotch_depth_ease", "knee_width", "stature"]);
    let term = prop_oneof![
        number.clone(),
        names.clone().prop_map(str::to_owned),
        (number, names).prop_map(|(number, name)| format!("{number} {name}")),
    ];
    let sum =
        (prop::bool::ANY, prop::collection::vec((term, prop::bool::ANY), 1..6)).prop_map(|(minus, terms)| {
            let mut text = if minus { "-" } else { "" }.to_owned();
            for (index, (term, minus)) in terms.iter().enumerate() {
                text += match (index, minus) {
                    (0, _) => "",
                    (_, true) => " - ",
                    (_, false) => " + ",
                };
                text += term;
            }
            text
        });
    check(2000, sum, |text| {
        let read = proportion(&text);
        assert_eq!(read.to_string(), text);
        assert_eq!(proportion(&read.to_string()), read);
    });
}
