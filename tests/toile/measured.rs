//! What is advised does what it says: the dimension that a change names moves by its amount.

use std::{collections::BTreeMap, sync::Arc};

use breeks::adjust::Key;
use breeks::draft::PanelShape;
use breeks::fit::{Leg, Legs, drafted_legs};
use breeks::mistake::Source;
use breeks::order::{Order, demo};
use breeks::recipe::{self, Recipe};
use breeks::terms::{EaseAt, Level, Panel, Role, Seam, Side, Style};
use breeks::toile::{Advice, CauseId, Heard, Past, Ranked, Ranking, Target, Toile, advise, knowledge};
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

/// A front thigh that was opened, for what takes back on it.
const OPENED: &str = "\n[thigh]\nfront = 1.2\n";

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

/// How much nearer a crotch curve comes to the corner of its end tangents, on the way there from the middle of its chord.
fn scooped(before: &Leg, after: &Leg, which: Panel) -> f64 {
    let drawn = panel(before, which);
    let (high, low) = (drawn.roles[Role::CurveStart], drawn.roles[Role::CrotchPoint]);
    let down = high - drawn.roles[Role::CentreWaist];
    let along = drawn.crotch_seam.start_tangent();
    // high + t * down = low + u * along
    let corner = high + down * ((low - high).cross(along) / down.cross(along));
    let middle = high.midpoint(low);
    let way = (corner - middle) / (corner - middle).hypot();
    let reached = |leg| {
        let seam = &panel(leg, which).crotch_seam;
        let points = (0..=4000).map(|step| seam.point_at(seam.length() * f64::from(step) / 4000.0) - middle);
        points.min_by(|a, b| a.cross(way).abs().total_cmp(&b.cross(way).abs())).expect("points").dot(way)
    };
    reached(after) - reached(before)
}

/// By how much a curve lies lower, where that is most.
fn lower(before: &Leg, after: &Leg, which: Panel) -> f64 {
    let height = |leg, x: f64| {
        let seam = &panel(leg, which).crotch_seam;
        let points = (0..=1000).map(|step| seam.point_at(seam.length() * f64::from(step) / 1000.0));
        points.min_by(|a, b| (a.x - x).abs().total_cmp(&(b.x - x).abs())).expect("points").y
    };
    let drawn = panel(before, which);
    let (from, to) = (drawn.roles[Role::CrotchPoint].x, drawn.roles[Role::CurveStart].x);
    let xs = (1..20).map(|step| from + (to - from) * f64::from(step) / 20.0);
    xs.map(|x| height(after, x) - height(before, x)).fold(f64::NEG_INFINITY, f64::max)
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
            Key::ThighInner | Key::CrotchFrontExtension => -more(&|leg| at(leg, Front, Role::CrotchPoint).x),
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

/// The change for a cause that is the only one.
fn advised(cause: CauseId, order: &Order, recipe: &Arc<Recipe>, legs: &Legs) -> Option<Advice> {
    let known = knowledge().of(cause);
    let ranked = Ranked {
        cause,
        share: 1.0,
        by_signs: 1.0,
        signs: Vec::new(),
        numbers: Vec::new(),
        tests: Vec::new(),
        worse: false,
    };
    let ranking = Ranking { first: Vec::new(), causes: vec![ranked], faults: Vec::new(), torn: None };
    let toile = Toile {
        report: Heard::default(),
        told: Vec::new(),
        tested: Vec::new(),
        side: if known.one_side { Side::Left } else { Side::Both },
        pinned: None,
        past: Past::default(),
    };
    advise(&ranking, order, recipe, legs, &toile).ok()
}

#[test]
fn dimension_moved_by_what_is_advised() {
    let mut measured = BTreeMap::new();
    let mut wrong = Vec::new();
    for (name, more) in breeks::order::DEMOS.iter().flat_map(|name| [(name, ""), (name, OPENED)]) {
        let text =
            demo(name).expect("a demo").text.replace("[trousers]", "[trousers]\nfit = \"proportional\"");
        let (order, _) = Order::read(&Source::new("body.toml", text + more)).expect("an order");
        let recipe = recipe::load(&order.trousers.block).expect("a recipe");
        let legs = drafted(&order);
        for at in 0..knowledge().causes.len() {
            let Some(advice) = advised(CauseId(at), &order, &recipe, &legs) else { continue };
            let Some(effect) = &advice.effect else { continue };
            for it in &advice.moves {
                let Some(by) = moved(it.target, &effect.before, &effect.after) else { continue };
                let said = it.to - it.from;
                *measured.entry(it.target.path()).or_insert(0) += 1;
                if (by - said).abs() > 0.05 + 0.05 * said.abs() {
                    wrong.push(format!("{name}{more}: `{}` by {said:.2}, moved {by:.2}", it.path()));
                }
            }
        }
    }
    println!("{measured:?}");
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
