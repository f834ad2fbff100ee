//! What is advised does what it says: the dimension that a change names moves by its amount.

use std::collections::BTreeMap;

use breeks::adjust::Key;
use breeks::curve::Chain;
use breeks::draft::PanelShape;
use breeks::fit::{Leg, Legs, drafted_legs};
use breeks::mistake::Source;
use breeks::order::{Order, demo};
use breeks::recipe;
use breeks::terms::{EaseAt, Level, Panel, Role, Seam, Side, Style};
use breeks::toile::{Past, Report, Target, Toile, judge, knowledge};
use kurbo::{ParamCurveArclen, Point};

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

/// A place of a panel's outline.
fn at(leg: &Leg, which: Panel, role: Role) -> Point {
    panel(leg, which).roles[role]
}

/// How far the side seam of the front is out at a height, cm.
fn side(leg: &Leg, y: f64) -> f64 {
    panel(leg, Panel::Front).side_seam.walk_to_level(y).1.x
}

/// How far a thigh slash stands open: the turn about its pivot that carried the crotch point sideways, measured where the
/// curve leaves the straight centre line.
fn opened(before: &Leg, after: &Leg, which: Panel) -> f64 {
    let point = |leg| at(leg, which, Role::CrotchPoint);
    let drawn = panel(before, which);
    let front = panel(before, Panel::Front);
    let reach = before.draft.parameters[Key::ThighFrontReach];
    let front_pivot = front.inseam.point_at(front.inseam.length() - reach);
    // the back is turned at the height of the front's pivot
    let pivot = drawn.inseam.walk_to_level(front_pivot.y).1;
    let turn = (point(before).x - point(after).x) / (pivot.y - point(before).y);
    turn * drawn.roles[Role::CurveStart].distance(pivot)
}

/// How far apart two crotch curves are where they are furthest apart, along the way from their chord to their corner.
fn scooped(before: &Leg, after: &Leg, which: Panel) -> f64 {
    let [was, is] = [before, after].map(|leg| &panel(leg, which).crotch_seam);
    let walked = |seam: &Chain, step: u32| seam.point_at(0.6 * seam.length() * f64::from(step) / 400.0);
    let nearest = |point: Point| {
        (0..=400).map(|step| walked(was, step).distance(point)).fold(f64::INFINITY, f64::min)
    };
    let most = (0..=400).map(|step| nearest(walked(is, step))).fold(0.0, f64::max);
    // a deeper curve is the longer way
    if is.length() > was.length() { most } else { -most }
}

/// By how much a curve lies lower where it runs lowest between its ends: at the height of the crotch point, its middle.
fn lower(before: &Leg, after: &Leg, which: Panel) -> f64 {
    let x = {
        let drawn = panel(before, which);
        0.5 * (drawn.roles[Role::CurveStart].x + drawn.roles[Role::CrotchPoint].x)
    };
    let height = |leg| {
        let seam = &panel(leg, which).crotch_seam;
        let points = (0..=2000).map(|step| seam.point_at(seam.length() * f64::from(step) / 2000.0));
        points.min_by(|a, b| (a.x - x).abs().total_cmp(&(b.x - x).abs())).expect("points").y
    };
    height(after) - height(before)
}

fn centre_line(leg: &Leg) -> f64 {
    let up = at(leg, Panel::Back, Role::CentreWaist) - at(leg, Panel::Back, Role::CurveStart);
    // leaning towards the side
    up.x.atan2(-up.y).to_degrees()
}

/// By how much the dimension that a key names is larger, cm or degrees, measured on the trued outlines; nothing for the place
/// of a pivot, which is none.
fn moved(target: Target, before: &Leg, after: &Leg) -> Option<f64> {
    use Panel::{Back, Front};
    let more = |of: &dyn Fn(&Leg) -> f64| of(after) - of(before);
    let crotch = before.draft.shape.levels[Level::Crotch];
    Some(match target {
        Target::Ease(EaseAt::Waist) => more(&|leg| girth(leg, Level::Waist)),
        Target::Ease(EaseAt::Hip) => more(&|leg| girth(leg, Level::Hip)),
        Target::Ease(_) | Target::Style(Style::WaistDrop) => return None,
        Target::Style(Style::KneeWidth) => more(&|leg| 0.5 * girth(leg, Level::Knee)),
        Target::Style(Style::HemWidth) => more(&|leg| 0.5 * girth(leg, Level::Hem)),
        // counted from the floor up
        Target::Style(Style::Length) => -more(&|leg| {
            leg.report.seams.iter().find(|row| row.seam == Seam::Inseam).expect("an inseam").front
        }),
        Target::Adjust(key) => match key {
            Key::ThighFrontReach => return None,
            Key::ThighFront => opened(before, after, Front),
            Key::ThighBack => opened(before, after, Back),
            Key::ThighBackTake => -opened(before, after, Back),
            Key::ThighInner | Key::CrotchFrontExtension => {
                -more(&|leg| at(leg, Front, Role::CrotchPoint).x)
            }
            Key::CrotchBackExtension => -more(&|leg| at(leg, Back, Role::CrotchPoint).x),
            Key::ThighOuter | Key::ThighFrontSide => more(&|leg| side(leg, crotch + 5.0)),
            Key::SeatLength => more(&|leg| leg.report.crotch.back),
            Key::AbdomenLength => more(&|leg| leg.report.crotch.front),
            // on both panels
            Key::CrotchDepth => more(&|leg| 0.5 * (leg.report.crotch.front + leg.report.crotch.back)),
            Key::SeatAngle => more(&centre_line),
            Key::SeatWidth => -more(&|leg| at(leg, Back, Role::CentreHip).x),
            Key::SeatScoop => scooped(before, after, Back),
            Key::CrotchFrontScoop => scooped(before, after, Front),
            Key::SeatLow => lower(before, after, Back),
            Key::WaistRaiseFront => -more(&|leg| at(leg, Front, Role::CentreWaist).y),
            Key::WaistRaiseBack => -more(&|leg| at(leg, Back, Role::CentreWaist).y),
            Key::WaistRaiseSide | Key::HipUneven => -more(&|leg| at(leg, Front, Role::SideWaist).y),
            Key::AbdomenWidth => more(&|leg| panel(leg, Front).sewn_waist.arclen(1e-6)),
            Key::HipFrontShare => more(&|leg| at(leg, Front, Role::SideHip).x),
            Key::LegKneeIn => -more(&|leg| at(leg, Front, Role::SideKnee).x),
            // the middle of the front hem goes up
            Key::LegKneeForward => -more(&|leg| {
                let hem = &panel(leg, Front).hem;
                hem.point_at(0.5 * hem.length()).y
            }),
            Key::LegClose => -more(&|leg| at(leg, Front, Role::SideHem).x),
            Key::LegCalf => more(&|leg| girth(leg, Level::Calf)),
            Key::SideForward => more(&|leg| at(leg, Front, Role::SideKnee).x),
        },
    })
}

#[test]
fn dimension_moved_by_what_is_advised() {
    let mut measured = BTreeMap::new();
    let mut wrong = Vec::new();
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
                report: Report { seen, ..Report::default() },
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
                let Some(by) = moved(it.target, &effect.before, &effect.after) else { continue };
                let said = it.to - it.from;
                *measured.entry(it.target.path()).or_insert(0) += 1;
                println!("{name:<8} {:<26} {said:>6.2} {by:>6.2}", it.path());
                if (by - said).abs() > 0.05 + 0.05 * said.abs() {
                    wrong.push(format!("{name}: `{}` by {said:.2}, moved {by:.2}", it.path()));
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    let forgotten: Vec<String> = knowledge()
        .causes
        .iter()
        .flat_map(|cause| &cause.change)
        .map(|setting| setting.target.path())
        .filter(|path| !measured.contains_key(path) && path != "thigh.front_reach")
        .collect();
    assert!(forgotten.is_empty(), "{forgotten:?}");
}
