//! The change that is advised: drawn, within its range, in the published order, and the same once it is written.

use breeks::adjust::Key;
use breeks::fit::{Leg, Legs, drafted_legs};
use breeks::mistake::Source;
use breeks::order::{Change, Order, demo, edit};
use breeks::recipe;
use breeks::terms::{FitKind, Side, Word};
use breeks::toile::{Advice, Amount, CauseId, Past, Ranked, Ranking, Target, advise, held, knowledge};

fn ordered(text: &str) -> (Source, Order) {
    let source = Source::new("body.toml", text);
    let (order, _) = Order::read(&source).unwrap_or_else(|mistakes| panic!("{mistakes:?}"));
    (source, order)
}

fn drafted(order: &Order) -> Legs {
    drafted_legs(order, &recipe::load(&order.trousers.block).expect("a recipe")).expect("a draft")
}

fn only(shares: &[(&str, f64)]) -> Ranking {
    let causes = shares.iter().map(|(key, share)| Ranked {
        cause: knowledge().cause(key).unwrap_or_else(|| panic!("{key}")),
        share: *share,
        by_signs: *share,
        signs: Vec::new(),
        numbers: Vec::new(),
        tests: Vec::new(),
        worse: false,
    });
    Ranking { first: Vec::new(), causes: causes.collect(), faults: Vec::new(), torn: None }
}

fn advised(ranking: &Ranking, order: &Order, side: Side, pinned: Option<f64>) -> Advice {
    let recipe = recipe::load(&order.trousers.block).expect("a recipe");
    advise(ranking, order, &recipe, &drafted(order), side, pinned, &Past::default())
        .unwrap_or_else(|mistakes| panic!("{mistakes:?}"))
}

fn lengths(leg: &Leg) -> Vec<f64> {
    let report = &leg.report;
    let seams = report.seams.iter().flat_map(|row| [row.front, row.back]);
    seams
        .chain([report.crotch.front, report.crotch.back])
        .chain(report.levels.iter().map(|row| row.pattern))
        .collect()
}

/// Bodies of the club, with a front thigh opened for what asks for one.
fn bodies() -> Vec<String> {
    let text = |name: &str| demo(name).expect("a demo").text;
    vec![
        format!("{}\n[thigh]\nfront = 1.2\n", text("stroke")),
        format!("{}\n[thigh]\nfront = 1.2\n", text("five")),
        text("cox").replace("classic", "jeans") + "\n[thigh]\nfront = 0.5\n",
        text("five").replace("classic", "wide") + "\n[thigh]\nfront = 1.2\n",
    ]
}

#[test]
fn every_change_drawn_true_and_the_same_once_written() {
    for text in bodies() {
        let (source, order) = ordered(&text);
        for (at, cause) in knowledge().causes.iter().enumerate() {
            let side = if cause.one_side { Side::Right } else { Side::Both };
            let advice = advised(&only(&[(&cause.key, 1.0)]), &order, side, None);
            assert_eq!(advice.cause, Some(CauseId(at)), "{}", cause.key);
            let Some(effect) = &advice.effect else {
                assert!(
                    cause.change.is_empty() || !advice.why.is_empty(),
                    "{}: nothing and no reason",
                    cause.key
                );
                continue;
            };
            assert!(effect.after.report.is_true(), "{}: {:?}", cause.key, effect.after.report.notices());
            for (it, setting) in advice.moves.iter().zip(&cause.change) {
                assert_eq!(it.to > it.from, setting.more, "{}: {it:?}", cause.key);
                if let Target::Adjust(key) = setting.target {
                    let (least, most) = key.about().usual;
                    assert!(
                        it.to <= most.max(it.from) && it.to >= least.min(0.0).min(it.from),
                        "{}: {it:?}",
                        cause.key
                    );
                }
            }
            let mut changes: Vec<Change> =
                advice.moves.iter().map(|it| Change::Number(it.path(), it.to)).collect();
            if advice.holds_fit {
                changes.push(Change::Text("trousers.fit".into(), FitKind::Proportional.key().into()));
                let sewn = advice
                    .sewn
                    .adjustments
                    .iter()
                    .filter(|it| !order.adjustments.iter().any(|old| old.key == it.key));
                changes.extend(
                    sewn.filter(|it| !advice.moves.iter().any(|of| of.key() == Some(it.key)))
                        .map(|it| Change::Number(it.key.key().into(), it.value)),
                );
            }
            let (_, order) = ordered(&edit(&source, &changes).expect("a text"));
            let legs = drafted(&order);
            let leg =
                if side == Side::Right { legs.second.as_ref().expect("a right leg") } else { &legs.first };
            for (promised, drawn) in lengths(&effect.after).iter().zip(lengths(leg)) {
                // values are written to a hundredth
                assert!((promised - drawn).abs() < 0.05, "{}: {promised} {drawn}", cause.key);
            }
        }
    }
}

#[test]
fn fit_held_as_sewn_the_same_draft() {
    let (_, order) = ordered(&demo("stroke").expect("a demo").text);
    let legs = drafted(&order);
    let (sewn, holds) = held(&order, &legs);
    assert!(holds);
    assert_eq!(drafted(&sewn).first.draft.shape, legs.first.draft.shape);
}

#[test]
fn change_that_moves_nothing_else() {
    let (_, order) = ordered(&demo("stroke").expect("a demo").text);
    let advice = advised(&only(&[("back-fork-short", 1.0)]), &order, Side::Both, None);
    let effect = advice.effect.expect("an effect");
    let key = Key::CrotchBackExtension;
    for other in Key::ALL.iter().filter(|other| **other != key) {
        assert_eq!(effect.before.draft.parameters[*other], effect.after.draft.parameters[*other], "{other}");
    }
    assert!((effect.after.draft.parameters[key] - effect.before.draft.parameters[key] - 0.6).abs() < 0.03);
}

#[test]
fn published_order_between_causes_equally_likely() {
    let (_, order) = ordered(&demo("five").expect("a demo").text);
    for (sooner, later) in [
        ("back-short", "seat-narrow"),
        ("abdomen-short", "abdomen-narrow"),
        ("front-long", "back-long"),
        ("front-thigh", "back-fork-short"),
        ("front-curve-shallow", "front-fork-long"),
        ("back-curve-shallow", "back-fork-short"),
        ("waist-tight", "depth-short"),
        ("hip-tight", "back-waist-high"),
        ("depth-long", "back-long"),
        ("back-long", "leg-open"),
    ] {
        for pair in [[(sooner, 0.5), (later, 0.45)], [(later, 0.5), (sooner, 0.45)]] {
            let advice = advised(&only(&pair), &order, Side::Both, None);
            assert_eq!(advice.cause, knowledge().cause(sooner), "{sooner} before {later}");
        }
        // a cause that is far likelier is taken up whatever its turn
        let advice = advised(&only(&[(later, 0.8), (sooner, 0.1)]), &order, Side::Both, None);
        assert_eq!(advice.cause, knowledge().cause(later), "{later} alone");
    }
}

#[test]
fn amounts_pinned_measured_and_by_the_step() {
    let (_, order) = ordered(&demo("stroke").expect("a demo").text);
    let by = |key: &str, pinned: Option<f64>| {
        let advice = advised(&only(&[(key, 1.0)]), &order, Side::Both, pinned);
        (advice.moves[0].to - advice.moves[0].from, advice.amount)
    };
    let (by_step, amount) = by("seat-narrow", None);
    assert!((by_step - 0.6).abs() < 0.03 && amount == Amount::Step, "{by_step} {amount:?}");
    let (as_pinned, amount) = by("back-short", Some(1.4));
    assert!((as_pinned - 1.4).abs() < 0.03 && amount == Amount::Pinned, "{as_pinned} {amount:?}");
    // a fold at one side seam is half of the girth
    let (girth, _) = by("hip-loose", Some(0.8));
    assert!((girth + 1.6).abs() < 0.03, "{girth}");
    // cloth is not cut away from a curve in one go
    let (scoop, _) = by("front-curve-shallow", Some(3.0));
    assert!(scoop <= 0.6 + 1e-9, "{scoop}");
    // the measured arc says how much, two fittings' worth at the most
    let (thigh, amount) = by("front-thigh", None);
    assert!(amount == Amount::Measured && thigh > 1.0 && thigh <= 2.0 + 0.03, "{thigh} {amount:?}");
    // 1 cm at the waist over the height of the waist above the hip, in degrees
    let (lean, _) = by("lean-small", Some(1.0));
    let height = 21.9_f64;
    assert!((lean - (1.0 / height).atan().to_degrees()).abs() < 0.15, "{lean}");
}

#[test]
fn trunk_changed_on_both_whatever_leg_shows_it() {
    let (_, order) = ordered(&demo("five").expect("a demo").text);
    let advice = advised(&only(&[("back-short", 1.0)]), &order, Side::Left, None);
    assert_eq!(advice.moves[0].path(), "seat.length");
    assert!(advice.why.iter().any(|why| why.contains("for both")), "{:?}", advice.why);
    let advice = advised(&only(&[("outer-thigh", 1.0)]), &order, Side::Left, None);
    assert_eq!(advice.moves[0].path(), "left.thigh.outer");
}
