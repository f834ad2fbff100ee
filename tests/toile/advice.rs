//! The change that is advised: drawn, within its range, in the published order, and the same once it is written.

use breeks::adjust::Key;
use breeks::fit::{Leg, Legs, drafted_legs};
use breeks::mistake::Source;
use breeks::order::{Change, Order, demo, edit};
use breeks::recipe;
use breeks::terms::{FitKind, Side, Word};
use breeks::toile::{
    Advice, Amount, CauseId, Degree, Heard, Past, Ranked, Ranking, Seen, Target, Toile, advise, held,
    knowledge, rank, read_all,
};
use breeks::unit::Unit;

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
    advised_of(ranking, order, side, pinned, &[])
}

fn advised_of(ranking: &Ranking, order: &Order, side: Side, pinned: Option<f64>, seen: &[Seen]) -> Advice {
    let recipe = recipe::load(&order.trousers.block).expect("a recipe");
    let toile = Toile {
        report: Heard { seen: seen.to_vec(), ..Heard::default() },
        told: Vec::new(),
        tested: Vec::new(),
        side,
        pinned,
        past: Past::default(),
    };
    advise(ranking, order, &recipe, &drafted(order), &toile).unwrap_or_else(|mistakes| panic!("{mistakes:?}"))
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
    assert!((by_step - 0.6).abs() < 0.03 && amount == Amount::Step(None), "{by_step} {amount:?}");
    let (as_pinned, amount) = by("back-short", Some(1.4));
    assert!((as_pinned - 1.4).abs() < 0.03 && amount == Amount::Pinned, "{as_pinned} {amount:?}");
    // a fold at one side seam is half of the girth
    let (girth, _) = by("hip-loose", Some(0.8));
    assert!((girth + 1.6).abs() < 0.03, "{girth}");
    // cloth is not cut away from a curve in one go
    let (scoop, _) = by("front-curve-shallow", Some(3.0));
    assert!(scoop <= 0.6 + 1e-9, "{scoop}");
    // the measured arc says how much, two fittings' worth at the most, where the fit has not given it already
    let mut unfitted = order.clone();
    unfitted.trousers.fit = Some(breeks::terms::FitKind::Proportional);
    let advice = advised(&only(&[("front-thigh", 1.0)]), &unfitted, Side::Both, None);
    let (thigh, amount) = (advice.moves[0].to - advice.moves[0].from, advice.amount);
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
    assert!(advice.why.iter().any(|why| why.said(Unit::Cm).contains("for both")), "{:?}", advice.why);
    let advice = advised(&only(&[("outer-thigh", 1.0)]), &order, Side::Left, None);
    assert_eq!(advice.moves[0].path(), "left.thigh.outer");
}

fn seen(said: &str) -> Vec<Seen> {
    breeks::toile::read(said).seen
}

/// The ranking of one cause, for which all of these signs speak.
fn told(key: &str, seen: &[Seen]) -> Ranking {
    let mut ranking = only(&[(key, 1.0)]);
    let fault = knowledge().faults.iter().find(|fault| fault.causes.contains(&ranking.causes[0].cause));
    ranking.causes[0].signs = (0..seen.len()).map(|at| (at, fault.expect("a fault"))).collect();
    ranking
}

#[test]
fn amount_by_degree() {
    let (_, order) = ordered(&demo("five").expect("a demo").text);
    let by = |said: &str| {
        let seen = seen(said);
        let advice = advised_of(&told("seat-narrow", &seen), &order, Side::Both, None, &seen);
        (advice.moves[0].to - advice.moves[0].from, advice.amount)
    };
    let (slight, plain, strong) =
        (by("the seat is slightly tight"), by("the seat is tight"), by("the seat is badly tight"));
    assert_eq!(slight.1, Amount::Step(Some(Degree::Slight)));
    assert_eq!(strong.1, Amount::Step(Some(Degree::Strong)));
    assert!((slight.0 - 0.3).abs() < 0.03 && (plain.0 - 0.6).abs() < 0.03, "{slight:?} {plain:?}");
    assert!((strong.0 - 0.9).abs() < 0.03, "{strong:?}");
    // one plain sign among slight ones is plain
    let mixed = by("the seat is slightly tight. The seat pulls.");
    assert_eq!(mixed.1, Amount::Step(None));
}

#[test]
fn no_cap_in_silence() {
    let (_, order) = ordered(&demo("five").expect("a demo").text);
    let at = |pinned: f64| advised(&only(&[("front-curve-shallow", 1.0)]), &order, Side::Both, Some(pinned));
    let whole = at(0.5);
    assert!(
        (whole.moves[0].to - whole.moves[0].from - 0.5).abs() < 0.03 && whole.why.is_empty(),
        "{:?}",
        whole.why
    );
    for (pinned, said) in [(1.0, "of 1.00 cm"), (1.5, "of 1.50 cm")] {
        let advice = at(pinned);
        let given = advice.moves[0].to - advice.moves[0].from;
        assert!((given - 0.6).abs() < 0.03, "{given}");
        let why = advice.why[0].said(Unit::Cm);
        assert!(why.starts_with(said) && why.contains("cannot be put back"), "{why}");
        assert!(why.contains(&Unit::Cm.amount(given)), "{why}");
        let why = advice.why[0].said(Unit::Inch);
        assert!(why.contains(" in ") && !why.contains("cm"), "{why}");
    }
    // beyond the usual range
    let advice = advised(&only(&[("seat-narrow", 1.0)]), &order, Side::Both, Some(9.0));
    let most = Key::SeatWidth.about().usual.1;
    assert!((advice.moves[0].to - most).abs() < 0.06, "{:?}", advice.moves);
    assert!(
        advice.why.iter().any(|why| why.said(Unit::Cm).contains("beyond what is usual")),
        "{:?}",
        advice.why
    );
}

/// What goes with an opened front thigh, with amounts: at most half of the gain is taken back on the back.
#[test]
fn beside_an_opened_front_thigh() {
    let (_, order) = ordered(&demo("five").expect("a demo").text);
    let advice = advised(&only(&[("front-thigh", 1.0)]), &order, Side::Both, None);
    let effect = advice.effect.as_ref().expect("an effect");
    let gained = effect.after.report.crotch.front - effect.before.report.crotch.front;
    let of = |key: Key| advice.beside.iter().find(|it| it.key == key).unwrap_or_else(|| panic!("{key}"));
    let back = of(Key::ThighBackTake);
    assert!((back.up_to - back.from - 0.5 * gained).abs() < 1e-9 && !back.first, "{back:?} {gained}");
    let scoop = of(Key::CrotchFrontScoop);
    assert!(scoop.first && (scoop.up_to - scoop.from - 0.3).abs() < 1e-9, "{scoop:?}");
    let side = of(Key::ThighFrontSide);
    assert!((side.up_to - side.from - 0.3).abs() < 1e-9, "{side:?}");
    // nothing of it beside another change
    assert!(advised(&only(&[("seat-narrow", 1.0)]), &order, Side::Both, None).beside.is_empty());
}

#[test]
fn scoop_first_where_little_lacks_at_the_base_of_the_fly() {
    let (_, order) = ordered(&demo("five").expect("a demo").text);
    let first = |said: &str, pinned: Option<f64>| {
        let seen = seen(said);
        let advice = advised_of(&told("front-fork-short", &seen), &order, Side::Both, pinned, &seen);
        advice.moves[0].key().expect("a key")
    };
    let at_the_fly = "slightly tight at the front of the crotch";
    assert_eq!(first(at_the_fly, None), Key::CrotchFrontScoop);
    assert_eq!(first("tight at the front of the crotch", Some(0.4)), Key::CrotchFrontScoop);
    assert_eq!(first("tight at the front of the crotch", Some(1.2)), Key::CrotchFrontExtension);
    assert_eq!(first("tight at the front of the crotch", None), Key::CrotchFrontExtension);
    assert_eq!(first("slightly tight at the inner thigh", None), Key::CrotchFrontExtension);
}

fn first_two(said: &[&str]) -> Vec<&'static str> {
    let told: Vec<String> = said.iter().map(|it| (*it).to_owned()).collect();
    let ranking = rank(&read_all(&told), &[], None, &Past::default());
    ranking.causes.iter().take(2).map(|it| knowledge().of(it.cause).key.as_str()).collect()
}

/// Two faults at once: the belly is not spoken over by the seat, the waist or the leg.
#[test]
fn a_sign_at_the_belly_leads_to_a_cause_at_the_belly() {
    let at_the_belly = ["abdomen-narrow", "abdomen-short", "waist-tight", "front-waist-low"];
    for said in [
        ["waist stands away at the back", "tight lines across the belly"],
        ["baggy under my bottom", "too tight on the tummy"],
        ["loose folds under the seat", "tight lines across the belly"],
        ["the back waist gapes", "my tummy is squeezed"],
    ] {
        let first = first_two(&said);
        assert!(first.iter().any(|key| at_the_belly.contains(key)), "{said:?}: {first:?}");
    }
}

/// A test that cured speaks for what it cures, whatever the signs.
#[test]
fn a_cure_speaks_for_its_cause() {
    let told = ["the waistband gapes at the back", "wrinkles under the seat"].map(str::to_owned);
    let cured = [("pinch_back_seam".to_owned(), "cured".to_owned())];
    let ranking = rank(&read_all(&told), &cured, None, &Past::default());
    let first = knowledge().of(ranking.causes[0].cause).key.as_str();
    assert!(["back-waist-wide", "band-straight", "seat-wide"].contains(&first), "{first}");
}

/// A part of a sentence is read, asked about or named.
#[test]
fn what_is_said_does_not_vanish() {
    for said in ["inner thighs rub and wrinkle", "inner thighs rub", "the knees, it wrinkles"] {
        let report = read_all(&[said.to_owned()]);
        assert!(report.open.iter().any(|open| open.words.contains(said)), "{said}: {report:?}");
    }
    let swing = read_all(&[
        "wrinkles under the seat, slanting down from the seat to the back of the thigh".to_owned()
    ]);
    assert_eq!(swing.seen.len(), 1);
    assert_eq!(swing.seen[0].sign.does, None);
    assert_eq!(swing.seen[0].sign.plain(), "under the seat, loose, slanting folds, towards the thigh");
    let turned = read_all(&["the side seam swings to the back".to_owned()]);
    assert!(turned.seen[0].sign.does.is_some());
}
