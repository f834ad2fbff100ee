//! Cloth that stretches, and the heel's way through the leg.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on says so by panicking")]

use breeks::{
    draft::{Draft, draft},
    fit::{Report, Verdict},
    order::{Order, demo},
    recipe::{load, shipped_names},
    terms::{EaseAt, Level, Measurement, Style},
};

fn order(demo_name: &str) -> Order {
    Order::read(&demo(demo_name).unwrap()).unwrap().0
}

fn drafted(order: &Order, block: &str, stretch: f64) -> (Draft, Report) {
    let mut order = order.clone();
    order.trousers.cloth_stretch = stretch;
    let draft = draft(&order, &load(block).unwrap()).unwrap();
    let report = Report::of(&draft.plan, &draft.parameters, &draft.shape, &draft.body);
    (draft, report)
}

fn ease(report: &Report, level: Level) -> f64 {
    report.levels.iter().find(|row| row.level == level).unwrap().ease()
}

#[test]
fn rigid_below_ten_per_cent() {
    for block in shipped_names() {
        let [(_, rigid), (_, little)] = [0.0, 9.5].map(|stretch| drafted(&order("stroke"), block, stretch));
        assert_eq!(rigid.levels, little.levels, "{block}");
    }
}

#[test]
fn girths_close_up_as_the_rule_says_in_every_recipe() {
    for block in shipped_names() {
        let order = order("stroke");
        let (_, rigid) = drafted(&order, block, 0.0);
        // stretch, and what it takes off the hip as a part of the girth
        for (stretch, part) in [(20.0, 0.04), (35.0, 0.07), (50.0, 0.10)] {
            let (_, close) = drafted(&order, block, stretch);
            for (level, part) in [(Level::Hip, part), (Level::Knee, part), (Level::Waist, part / 4.0)] {
                let row = close.levels.iter().find(|row| row.level == level).unwrap();
                let taken = ease(&rigid, level) - row.ease();
                assert!((taken - part * row.body).abs() < 0.01, "{block}, {stretch}, {level}: {taken}");
            }
            assert!(ease(&close, Level::Thigh) < ease(&rigid, Level::Thigh) - 1.0, "{block}");
        }
    }
}

#[test]
fn close_jeans_within_the_bands_of_the_rule() {
    // the working rule for woven stretch: hip ease in per cent of the girth
    for (stretch, least, most) in [(15.0, -2.0, 0.0), (25.0, -5.0, -2.0), (40.0, -8.0, -5.0)] {
        let (draft, report) = drafted(&order("stroke"), "jeans", stretch);
        let hip = draft.body.cm(Measurement::HipGirth).unwrap();
        let part = 100.0 * ease(&report, Level::Hip) / hip;
        assert!((least - 0.6..=most + 0.6).contains(&part), "{stretch}: {part:.2}");
    }
}

#[test]
fn wanted_ranges_shifted_with_the_ease() {
    for block in shipped_names() {
        for stretch in [0.0, 15.0, 30.0, 60.0] {
            let (_, report) = drafted(&order("stroke"), block, stretch);
            for row in report
                .levels
                .iter()
                .filter(|row| matches!(row.level, Level::Waist | Level::Hip | Level::Knee))
            {
                assert!(!row.is_tight() && !row.is_loose(), "{block}, {stretch}: {row:?}");
            }
        }
    }
}

#[test]
fn crotch_length_left_alone() {
    for block in shipped_names() {
        let [(_, rigid), (_, close)] = [0.0, 30.0].map(|stretch| drafted(&order("stroke"), block, stretch));
        let lost = rigid.crotch.total() - close.crotch.total();
        assert!(lost.abs() < 1.2, "{block}: {lost:.2}");
    }
}

#[test]
fn ease_of_the_file_as_it_stands() {
    let mut order = order("stroke");
    order.trousers.ease[EaseAt::Hip] = Some(3.0);
    let (_, report) = drafted(&order, "classic", 40.0);
    assert!((ease(&report, Level::Hip) - 3.0).abs() < 0.05);
}

#[test]
fn closed_hem_by_the_heel_and_the_stretch() {
    let mut order = order("five");
    order.body = order.body.with(Measurement::HeelGirth, 34.0);
    // at rest 31 cm round: in a cloth of 20 per cent it opens to 31 x 1.16 = 35.96
    order.trousers.style[Style::HemWidth] = Some(15.5);
    let (_, rigid) = drafted(&order, "slim", 0.0);
    assert_eq!(rigid.no_passage, [Level::Hem]);
    assert_eq!(Verdict::of(&rigid.notices()), Verdict::NotToCut);
    let told = rigid
        .notices()
        .into_iter()
        .find(|notice| notice.code == "no-passage")
        .unwrap()
        .text(breeks::unit::Unit::Cm);
    assert!(told.contains("leave a slit") && told.contains("stretches"), "{told}");
    let (_, stretched) = drafted(&order, "slim", 20.0);
    assert!(stretched.no_passage.is_empty(), "{:?}", stretched.levels);
    // 29 x 1.16 = 33.6 does not pass 34
    order.trousers.style[Style::HemWidth] = Some(14.5);
    assert_eq!(drafted(&order, "slim", 20.0).1.no_passage, [Level::Hem]);
}

#[test]
fn knee_no_narrower_than_the_heel() {
    let mut order = order("five");
    order.body = order.body.with(Measurement::HeelGirth, 38.0);
    order.trousers.style[Style::KneeWidth] = Some(18.0);
    order.trousers.style[Style::HemWidth] = Some(24.0);
    assert_eq!(drafted(&order, "classic", 0.0).1.no_passage, [Level::Knee]);
}
