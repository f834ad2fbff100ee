//! What is advised does what it says: the dimension that a change names moves by its amount.

use breeks::adjust::Key;
use breeks::draft::PanelShape;
use breeks::fit::{Leg, Legs, drafted_legs};
use breeks::mistake::Source;
use breeks::order::{Order, demo};
use breeks::recipe;
use breeks::terms::{EaseAt, Level, Panel, Role, Seam, Side, Style};
use breeks::toile::{Heard, Past, Target, Toile, judge, knowledge};

fn drafted(order: &Order) -> Legs {
    drafted_legs(order, &recipe::load(&order.trousers.block).expect("a recipe")).expect("a draft")
}

fn girth(leg: &Leg, level: Level) -> f64 {
    leg.report.levels.iter().find(|row| row.level == level).expect("a level").pattern
}

fn panel(leg: &Leg, panel: Panel) -> &PanelShape {
    match panel {
        Panel::Front => &leg.draft.shape.front,
        Panel::Back => &leg.draft.shape.back,
    }
}

/// The dimension that a key names, cm; nothing for what names none by itself (a curve, an angle, the place of a pivot).
fn dimension(target: Target, leg: &Leg) -> Option<f64> {
    let at = |which, role| {
        let point = panel(leg, which).roles[role];
        (point.x, point.y)
    };
    Some(match target {
        Target::Ease(EaseAt::Waist) => girth(leg, Level::Waist),
        Target::Ease(EaseAt::Hip) => girth(leg, Level::Hip),
        Target::Ease(_) => return None,
        Target::Style(Style::KneeWidth) => 0.5 * girth(leg, Level::Knee),
        Target::Style(Style::HemWidth) => 0.5 * girth(leg, Level::Hem),
        // counted from the floor up
        Target::Style(Style::Length) => {
            -leg.report.seams.iter().find(|row| row.seam == Seam::Inseam).expect("an inseam").front
        }
        Target::Style(Style::WaistDrop) => return None,
        Target::Adjust(key) => match key {
            Key::CrotchFrontExtension => -at(Panel::Front, Role::CrotchPoint).0,
            Key::CrotchBackExtension => -at(Panel::Back, Role::CrotchPoint).0,
            Key::WaistRaiseFront => -at(Panel::Front, Role::CentreWaist).1,
            Key::WaistRaiseBack => -at(Panel::Back, Role::CentreWaist).1,
            Key::WaistRaiseSide => -at(Panel::Front, Role::SideWaist).1,
            Key::LegCalf => girth(leg, Level::Calf),
            Key::SideForward => at(Panel::Front, Role::SideKnee).0,
            Key::HipFrontShare => at(Panel::Front, Role::SideHip).0,
            _ => return None,
        },
    })
}

#[test]
fn dimension_moved_by_what_is_advised() {
    let mut measured = 0;
    for name in breeks::order::DEMOS {
        let text =
            demo(name).expect("a demo").text.replace("[trousers]", "[trousers]\nfit = \"proportional\"");
        let (order, _) = Order::read(&Source::new("body.toml", text)).expect("an order");
        let recipe = recipe::load(&order.trousers.block).expect("a recipe");
        let legs = drafted(&order);
        for cause in &knowledge().causes {
            // a test that speaks for this cause alone makes it the advised one
            let Some((test, result)) = knowledge().tests.iter().find_map(|test| {
                let result = test
                    .results
                    .iter()
                    .find(|it| it.speaks_for.iter().any(|id| knowledge().of(*id).key == cause.key))?;
                Some((test.key.clone(), result.key.clone()))
            }) else {
                continue;
            };
            let fault =
                knowledge().faults.iter().find(|fault| knowledge().of(fault.causes[0]).key == cause.key);
            let Some(fault) = fault else { continue };
            let seen = fault.seen.iter().map(|it| breeks::toile::Seen::of(it.sign)).collect();
            let toile = Toile {
                report: Heard { seen, ..Heard::default() },
                told: Vec::new(),
                tested: vec![(test, result)],
                side: if cause.one_side { Side::Left } else { Side::Both },
                pinned: None,
                past: Past::default(),
            };
            let judgement = judge(toile, &order, &recipe, &legs).expect("a judgement");
            let Some(advice) = &judgement.advice else { continue };
            let Some(effect) = &advice.effect else { continue };
            for it in &advice.moves {
                let (Some(was), Some(is)) =
                    (dimension(it.target, &effect.before), dimension(it.target, &effect.after))
                else {
                    continue;
                };
                measured += 1;
                let (by, said) = (is - was, it.to - it.from);
                assert!(
                    (by - said).abs() < 0.05 + 0.12 * said.abs(),
                    "{name}: `{}` by {said}, moved {by}",
                    it.path()
                );
            }
        }
    }
    println!("{measured} changes measured");
    assert!(measured >= 12, "{measured}");
}
