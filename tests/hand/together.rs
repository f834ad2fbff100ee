//! Several corrections on one pair of trousers, in the fixed order, whatever the order in which they were asked for.

use breeks::{
    adjust::Key,
    terms::{Edge, Panel, Word},
};

use crate::{
    bodies::fittings,
    compare::{Allowed, differences, report},
    crotch::{deepen, scoop},
    paper::length,
    seat::{lean, open_wedge},
    thigh::{open, pivot_above_knee},
    waist::up_the_centre,
};

#[test]
fn an_ordinary_fitting() {
    let given = [
        (Key::CrotchFrontScoop, 0.2),
        (Key::ThighBackTake, 0.6),
        (Key::ThighFront, 1.2),
        (Key::WaistRaiseBack, 0.5),
        (Key::SeatLength, 0.8),
        (Key::SeatAngle, 1.0),
        (Key::CrotchBackExtension, 0.6),
        (Key::CrotchDepth, 0.5),
    ];
    let mut wrong = Vec::new();
    for fitting in fittings() {
        let mut paper = fitting.paper();
        let hip = paper.front.hip;
        deepen(&mut paper.front, 0.5);
        deepen(&mut paper.back, 0.5);
        paper.back.extended = 0.6;
        lean(&mut paper.back, 1.0);
        open_wedge(&mut paper.back, 0.8);
        up_the_centre(&mut paper.back, 0.5);
        // The thigh is slashed from the curve to the inseam, so that both must be there.
        paper.close_fork();
        let above_knee = pivot_above_knee(&paper.front, 22.0);
        open(&mut paper.front, above_knee, 1.2);
        open(&mut paper.back, above_knee, -0.6);
        paper.close_fork();
        scoop(&mut paper.front, 0.2);
        paper.close();
        let allowed = Allowed::slide(1.2).blend(Panel::Back, Edge::SideSeam, hip - 5.0, hip + 5.5).blend(
            Panel::Front,
            Edge::SideSeam,
            hip - 5.0,
            hip + 5.5,
        );
        let found = differences(&paper, &fitting.drafted(&given), &allowed);
        wrong.extend(found.iter().map(|what| format!("{}: {what}", fitting.name)));
    }
    report(&wrong);
}

#[test]
fn seams_equal_and_sewn_waist_kept_at_both_ends_of_every_key() {
    let mut wrong = Vec::new();
    for fitting in fittings() {
        let base = fitting.paper();
        for key in Key::ALL {
            for value in [key.about().usual.0, key.about().usual.1] {
                let leg = fitting.drafted_on_paper(*key, value);
                let inseam = length(&leg.back.inseam) - length(&leg.front.inseam);
                let side = length(&leg.back.side) - length(&leg.front.side);
                let waist = leg.waist - base.waist;
                if [inseam, side, waist].iter().any(|off| off.abs() > 0.001) {
                    wrong.push(format!(
                        "{}, {key} {value}: inseam {inseam:+.4}, side {side:+.4}, waist {waist:+.4}",
                        fitting.name
                    ));
                }
            }
        }
    }
    report(&wrong);
}
