//! A finished waist below the measured one.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on says so by panicking")]

mod people;

use breeks::{
    draft::{Draft, PanelShape, draft},
    fit::{JoinRow, Report, SeamRow},
    mistake::Mistakes,
    order::{Order, demo},
    recipe::{load, shipped_names},
    terms::{Level, Panel, Role, Style, Word},
};
use kurbo::{ParamCurve, ParamCurveNearest};

fn drafted(order: &Order, block: &str, drop: f64) -> Result<Draft, Mistakes> {
    let mut order = order.clone();
    order.trousers.style[Style::WaistDrop] = Some(drop);
    draft(&order, &load(block).unwrap())
}

fn stroke() -> Order {
    Order::read(&demo("stroke").unwrap()).unwrap().0
}

fn report(draft: &Draft) -> Report {
    Report::of(&draft.plan, &draft.parameters, &draft.shape, &draft.body)
}

#[test]
fn centre_and_side_shorter_by_the_drop() {
    for block in shipped_names() {
        let whole = drafted(&stroke(), block, 0.0).unwrap();
        let cut = drafted(&stroke(), block, 4.0).unwrap();
        for panel in Panel::ALL {
            let lengths =
                |of: &PanelShape| [of.side_seam.length(), of.crotch_seam.length(), of.inseam.length()];
            let [before, after] = [&whole, &cut].map(|draft| lengths(draft.shape.panel(*panel)));
            for (edge, by) in [4.0, 4.0, 0.0].into_iter().enumerate() {
                assert!(
                    (before[edge] - after[edge] - by).abs() < 1e-6,
                    "{block}, {panel}: {before:?} {after:?}"
                );
            }
        }
    }
}

#[test]
fn seams_joins_and_outlines_true_on_real_people() {
    for block in shipped_names() {
        for person in people::of_507().iter().step_by(7) {
            for drop in [1.0, 3.0, 5.0] {
                let Ok(draft) = drafted(&person.order, block, drop) else { continue };
                let report = report(&draft);
                assert!(report.faults.is_empty(), "{block}, {}: {:?}", person.id, report.faults);
                assert!(
                    report.seams.iter().all(SeamRow::holds),
                    "{block}, {}: {:?}",
                    person.id,
                    report.seams
                );
                assert!(
                    report.joins.iter().all(JoinRow::holds),
                    "{block}, {}: {:?}",
                    person.id,
                    report.joins
                );
            }
        }
    }
}

#[test]
fn budget_and_waist_girth_at_the_measured_waist() {
    for block in shipped_names() {
        let [whole, cut] = [0.0, 5.0].map(|drop| report(&drafted(&stroke(), block, drop).unwrap()));
        assert!((whole.crotch.total() - cut.crotch.total()).abs() < 1e-6, "{block}");
        let [before, after] =
            [&whole, &cut].map(|of| of.levels.iter().find(|row| row.level == Level::Waist).unwrap().pattern);
        assert!((before - after).abs() < 1e-9, "{block}: {before} {after}");
    }
}

#[test]
fn new_waist_parallel_to_the_old() {
    /// A waist is drawn anew through its darts, not offset: within four tenths of a centimetre it is parallel.
    const PARALLEL: f64 = 0.38;
    for block in shipped_names() {
        let [whole, cut] = [0.0, 4.0].map(|drop| drafted(&stroke(), block, drop).unwrap());
        for panel in Panel::ALL {
            let [old, new] = [&whole, &cut].map(|draft| draft.shape.panel(*panel));
            for (index, piece) in new.waist.cubics().iter().enumerate().filter(|(index, _)| index % 2 == 0) {
                for step in 1..8 {
                    let point = piece.eval(f64::from(step) / 8.0);
                    let nearest = old
                        .waist
                        .cubics()
                        .iter()
                        .map(|piece| piece.nearest(point, 1e-6).distance_sq.sqrt())
                        .fold(f64::INFINITY, f64::min);
                    assert!(
                        (nearest - 4.0).abs() < PARALLEL,
                        "{block}, {panel}, piece {index}: {nearest:.3}"
                    );
                }
            }
        }
    }
}

#[test]
fn darts_shortened_and_still_closing() {
    let [whole, cut] = [0.0, 4.0].map(|drop| drafted(&stroke(), "classic", drop).unwrap());
    for panel in Panel::ALL {
        let [old, new] = [&whole, &cut].map(|draft| &draft.shape.panel(*panel).darts);
        assert_eq!(old.len(), new.len());
        for (old, new) in old.iter().zip(new) {
            assert_eq!(old.apex, new.apex);
            let [inner, outer] = new.legs.map(|leg| leg.distance(new.apex));
            assert!((inner - outer).abs() < 1e-9);
            let shorter = old.length() - new.length();
            assert!((shorter - 4.0).abs() < 0.5, "{panel}: {shorter}");
            assert!(new.intake() < old.intake());
        }
    }
}

#[test]
fn dart_that_is_all_but_cut_away_eased_into_the_band() {
    let draft = drafted(&stroke(), "slim", 8.0).unwrap();
    assert!(draft.shape.front.darts.is_empty());
    assert!(draft.notices.iter().any(|notice| notice.code == "dart-cut-away"), "{:?}", draft.notices);
}

#[test]
fn drop_without_room_refused_with_what_there_is_room_for() {
    let refused = drafted(&stroke(), "classic", 18.0).unwrap_err().to_string();
    assert!(refused.contains("leaves too little above the hip line"), "{refused}");
    assert!(refused.contains("room for a `waist_drop` of 1"), "{refused}");
}

#[test]
fn recipes_own_drop_lessened_on_a_body_without_room() {
    let (mut order, recipe) = (stroke(), load("jeans").unwrap());
    order.body = order.body.with(breeks::terms::Measurement::WaistToHip, 7.0);
    let draft = draft(&order, &recipe).unwrap();
    let cut = draft.shape.front.cut_off.map_or(0.0, |cut| cut.drop);
    assert!(cut < 7.0 / 4.0, "{cut}");
    assert!(draft.notices.iter().any(|notice| notice.code == "waist-drop-lessened"), "{:?}", draft.notices);
}

#[test]
fn jeans_cut_below_the_measured_waist() {
    let draft = draft(&stroke(), &load("jeans").unwrap()).unwrap();
    for panel in Panel::ALL {
        let cut = draft.shape.panel(*panel).cut_off.unwrap();
        assert!((cut.drop - 21.9 / 4.0).abs() < 1e-9);
    }
    let (top, planned) =
        (draft.shape.front.roles[Role::CentreWaist], draft.plan.front.roles[Role::CentreWaist]);
    assert!(top.y > planned.y + 5.0);
}
