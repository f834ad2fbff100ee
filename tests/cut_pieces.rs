//! Pieces ready to cut: measured again from their outlines by brute force, against a polygon buffer that shares nothing
//! with our code (the crate i_overlay), and on people-507 (see `tests/data/README.md`).
#![allow(clippy::unwrap_used, reason = "a test that cannot go on says so by panicking")]

mod people;

use std::sync::Arc;

use breeks::{
    adjust::{Key, Parameters},
    curve::{Chain, soundness},
    draft::{Draft, draft, shape},
    fit::drafted_legs,
    making::make_by,
    order::{Order, demo},
    pattern::{Allowances, Band, BandShape, Lap, Pattern, Piece, PieceKind, Purpose, Run, Wanted},
    recipe::{Recipe, load, shipped_names},
    terms::{Allowance, EnumMap, Level, Panel, Role, Side, Word},
};
use kurbo::{Affine, CubicBez, ParamCurve, ParamCurveNearest, Point, Vec2};
use proptest::{
    prelude::*,
    test_runner::{Config, RngSeed, TestRunner},
};

const NONE: EnumMap<Allowance, Option<f64>> = EnumMap::from_array([None; Allowance::ALL.len()]);

fn demos() -> impl Iterator<Item = Order> {
    ["stroke", "five", "cox"].into_iter().map(|name| Order::read(&demo(name).unwrap()).unwrap().0)
}

fn recipes() -> impl Iterator<Item = Arc<Recipe>> {
    shipped_names().map(|name| load(name).unwrap())
}

/// Every demo by every recipe, fitted to what was measured.
fn drafts() -> Vec<Draft> {
    let all = demos().flat_map(|order| recipes().map(move |recipe| (order.clone(), recipe)));
    all.map(|(order, recipe)| drafted_legs(&order, &recipe).unwrap().first.draft).collect()
}

fn cut(draft: &Draft, given: &EnumMap<Allowance, Option<f64>>, wanted: &Wanted) -> Vec<Piece> {
    Pattern::of([draft], &Allowances::of(given, wanted.purpose), wanted).unwrap().pieces
}

fn whole() -> Wanted {
    let waistband = Some(Band { shape: BandShape::Straight, height: Band::HEIGHT });
    Wanted { purpose: Purpose::Wear, waistband, fly: Some(Lap::Left), yoke: true }
}

fn polygon(pieces: &[CubicBez], steps: usize) -> Vec<Point> {
    pieces.iter().flat_map(|piece| (0..steps).map(|i| piece.eval(i as f64 / steps as f64))).collect()
}

fn area(polygon: &[Point]) -> f64 {
    let next = polygon.iter().cycle().skip(1);
    0.5 * polygon.iter().zip(next).map(|(a, b)| a.to_vec2().cross(b.to_vec2())).sum::<f64>()
}

fn sides(polygon: &[Point]) -> impl Iterator<Item = (Point, Point)> {
    polygon.iter().copied().zip(polygon.iter().copied().cycle().skip(1))
}

fn contains(polygon: &[Point], at: Point) -> bool {
    let crosses = |(a, b): &(Point, Point)| {
        (a.y > at.y) != (b.y > at.y) && at.x < a.x + (at.y - a.y) / (b.y - a.y) * (b.x - a.x)
    };
    sides(polygon).filter(crosses).count() % 2 == 1
}

fn distance(polygon: &[Point], at: Point) -> f64 {
    let to_side = |(a, b): (Point, Point)| {
        let along = ((at - a).dot(b - a) / (b - a).hypot2().max(1e-18)).clamp(0.0, 1.0);
        a.lerp(b, along).distance(at)
    };
    sides(polygon).map(to_side).fold(f64::INFINITY, f64::min)
}

/// How far from `at` a ray along `way` leaves the polygon.
fn leaves(polygon: &[Point], at: Point, way: Vec2) -> f64 {
    sides(polygon)
        .filter_map(|(a, b)| {
            let turn = way.cross(b - a);
            // A side along the ray says nothing.
            if turn.abs() < 1e-6 * (b - a).hypot() {
                return None;
            }
            let (along, on) = ((a - at).cross(b - a) / turn, (a - at).cross(way) / turn);
            ((-1e-9..=1.0 + 1e-9).contains(&on) && along > -1e-9).then_some(along)
        })
        .fold(f64::INFINITY, f64::min)
}

#[test]
fn every_edge_as_far_inside_its_cut_line_as_its_allowance() {
    let given = EnumMap::from_array([1.2, 1.7, 1.4, 0.9, 4.5, 3.0].map(Some));
    let mut looked = 0;
    for draft in drafts() {
        for (given, purpose) in [(&NONE, Purpose::Wear), (&NONE, Purpose::Toile), (&given, Purpose::Wear)] {
            for piece in cut(&draft, given, &Wanted { purpose, ..whole() }) {
                let outline = polygon(&piece.cut_line, 150);
                for run in piece.runs.iter().filter(|run| run.allowance != [0.0, 0.0]) {
                    let whole = run.seam.length();
                    let corner = 2.0 * run.allowance[0].max(run.allowance[1]) + 1.0;
                    let mut walked = corner;
                    while walked < whole - corner {
                        let at = run.seam.point_at(walked);
                        let ahead = run.seam.point_at(walked + 1e-4) - run.seam.point_at(walked - 1e-4);
                        let out = Vec2::new(ahead.y, -ahead.x) / ahead.hypot();
                        let wanted =
                            run.allowance[0] + (run.allowance[1] - run.allowance[0]) * walked / whole;
                        let found = leaves(&outline, at, out);
                        // Along a widening edge the square distance from the seam is longer than its allowance by
                        // nothing: allowances are measured square to the seam.
                        assert!(
                            (found - wanted).abs() < 0.01,
                            "{} {} {} at {walked:.1}: {found:.4} for {wanted:.4}",
                            draft.recipe.name,
                            piece.name(),
                            run.edge
                        );
                        looked += 1;
                        walked += 0.7;
                    }
                }
            }
        }
    }
    println!("{looked} places looked at");
}

#[test]
fn one_allowance_all_round_as_a_polygon_buffer() {
    use i_overlay::mesh::float::{
        outline::offset::OutlineOffset,
        style::{LineJoin, OutlineStyle},
    };
    for draft in drafts() {
        for width in [0.6, 1.0] {
            for piece in cut(&draft, &EnumMap::from_fn(|_| Some(width)), &Wanted::default()) {
                let seam: Vec<CubicBez> =
                    piece.runs.iter().flat_map(|run| run.seam.cubics().to_vec()).collect();
                let shape: Vec<[f64; 2]> = polygon(&seam, 100).iter().map(|at| [at.x, at.y]).collect();
                let style = OutlineStyle::new(width).line_join(LineJoin::Round(0.01));
                let mut buffers = vec![shape.clone()].outline(&style);
                if buffers.is_empty() {
                    let turned: Vec<[f64; 2]> = shape.into_iter().rev().collect();
                    buffers = vec![turned].outline(&style);
                }
                let buffer: Vec<Point> = buffers[0][0].iter().map(|at| Point::new(at[0], at[1])).collect();
                // Away from corners, where a cutter's lines run on and a buffer is round.
                let ends = |run: &Run| [run.seam.start(), run.seam.end()];
                let corners: Vec<Point> = piece.runs.iter().flat_map(ends).collect();
                for at in polygon(&piece.cut_line, 40) {
                    // Nor over the mouth of a dart, where the cap folds.
                    let in_a_mouth = piece.darts.iter().any(|dart| {
                        dart.legs[0].midpoint(dart.legs[1]).distance(at) < dart.intake() + 3.5 * width
                    });
                    if !in_a_mouth && corners.iter().all(|corner| corner.distance(at) > 3.5 * width) {
                        let off = distance(&buffer, at);
                        assert!(off < 0.01, "{} {}: {off} at {at:?}", draft.recipe.name, piece.name());
                    }
                }
            }
        }
    }
}

#[test]
fn cut_lines_of_people_simple() {
    let mut cuts = 0;
    for recipe in recipes() {
        for person in people::of_507() {
            let Ok(draft) = draft(&person.order, &recipe) else { continue };
            for wanted in [Wanted::default(), Wanted { purpose: Purpose::Toile, ..whole() }] {
                for piece in cut(&draft, &NONE, &wanted) {
                    assert_eq!(soundness(&piece.cut_line), None, "{} {}", recipe.name, person.id);
                    let (sewn, cut) =
                        (piece.runs.iter().flat_map(|run| run.seam.cubics().to_vec()), &piece.cut_line);
                    let sewn: Vec<CubicBez> = sewn.collect();
                    assert!(area(&polygon(cut, 16)) > area(&polygon(&sewn, 16)));
                    cuts += 1;
                }
            }
        }
    }
    println!("{cuts} cut lines");
    assert!(cuts > 507 * 6 * 2);
}

#[test]
fn cut_lines_of_corrected_drafts_simple() {
    let people = people::of_507();
    for recipe in recipes() {
        let drafts: Vec<Draft> =
            people.iter().filter_map(|person| draft(&person.order, &recipe).ok()).collect();
        let turn = std::cell::Cell::new(0_usize);
        let config = Config {
            cases: 700,
            failure_persistence: None,
            rng_seed: RngSeed::Fixed(9),
            ..Config::default()
        };
        TestRunner::new(config)
            .run(&any_set(), |parameters| {
                turn.set(turn.get() + 1);
                let mut draft = drafts[turn.get() * 31 % drafts.len()].clone();
                draft.shape = shape(&draft.plan, &parameters);
                let set: Vec<String> =
                    parameters.set().map(|(key, value)| format!("{key} {value:.2}")).collect();
                for wanted in [Wanted::default(), Wanted { purpose: Purpose::Toile, ..whole() }] {
                    let allowances = Allowances::of(&NONE, wanted.purpose);
                    let cut = Pattern::of([&draft], &allowances, &wanted);
                    prop_assert!(cut.is_ok(), "{} {set:?}: {}", recipe.name, cut.unwrap_err());
                }
                Ok(())
            })
            .unwrap();
    }
}

/// A handful of parameters, each anywhere in its usual range.
fn any_set() -> impl Strategy<Value = Parameters> {
    let one = (prop::sample::select(Key::ALL.to_vec()), 0.0..1.0);
    prop::collection::vec(one, 1..6).prop_map(|chosen: Vec<(Key, f64)>| {
        chosen.into_iter().fold(Parameters::default(), |all, (key, part)| {
            let (least, most) = key.about().usual;
            let least = if key.about().default == 0.0 { least.min(0.0) } else { least };
            all.with(key, least + part * (most - least))
        })
    })
}

#[test]
fn hem_turned_up_inside_the_leg() {
    let mut worst: f64 = 0.0;
    for recipe in recipes() {
        for person in people::of_507().into_iter().step_by(7) {
            let Ok(draft) = draft(&person.order, &recipe) else { continue };
            for piece in cut(&draft, &NONE, &Wanted::default()) {
                let hem = piece.runs.iter().find(|run| run.edge == "hem").unwrap();
                let fold = Affine::reflect(hem.seam.start(), hem.seam.end() - hem.seam.start());
                let outline = polygon(&piece.cut_line, 100);
                let out = Vec2::new(0.0, 1.0);
                let turned = outline.iter().filter(|at| (**at - hem.seam.start()).dot(out) > 0.02);
                let mut seen = 0;
                for at in turned.map(|at| fold * *at) {
                    if !contains(&outline, at) {
                        worst = worst.max(distance(&outline, at));
                    }
                    seen += 1;
                }
                assert!(seen > 50);
            }
        }
    }
    println!("the folded hem stands out of the leg by {worst:.4} cm at the most");
    assert!(worst < 0.05, "{worst}");
}

/// How far the raw end of the inseam lies beyond the crotch point, along the seam.
fn beyond_crotch_point(piece: &Piece) -> [f64; 2] {
    let inseam = piece.runs.iter().find(|run| run.edge == "inseam").unwrap();
    let (end, way) = (inseam.seam.end(), inseam.seam.end_tangent());
    let out = Vec2::new(way.y, -way.x);
    // The corners that the allowance ends in: on the seam produced, and on its own cut line.
    let corners: Vec<Vec2> = piece.cut_line.iter().map(|part| part.p0 - end).collect();
    [0.0, inseam.allowance[1]].map(|off| {
        let on = corners.iter().filter(|at| (at.dot(out) - off).abs() < 0.01 && at.dot(way) > 0.1);
        on.map(|at| at.dot(way)).fold(f64::INFINITY, f64::min)
    })
}

#[test]
fn inseams_of_front_and_back_end_alike() {
    for draft in drafts() {
        let pieces = cut(&draft, &NONE, &Wanted::default());
        let [front, back] = [&pieces[0], &pieces[1]].map(beyond_crotch_point);
        for ends in [front, back] {
            assert!((ends[0] - ends[1]).abs() < 1e-6, "not square: {ends:?}");
        }
        assert!((front[0] - back[0]).abs() < 0.02, "{}: {front:?} {back:?}", draft.recipe.name);
    }
}

#[test]
fn sewn_dart_with_all_layers_in_one_line() {
    let (mut darts, mut worst) = (0, 0.0_f64);
    for draft in drafts() {
        for piece in cut(&draft, &NONE, &Wanted::default()) {
            let outline = polygon(&piece.cut_line, 200);
            for dart in &piece.darts {
                // Closed as it is sewn: what lies on the centre's side turned onto the side's leg.
                let [inner, outer] = dart.legs.map(|leg| (leg - dart.apex) / (leg - dart.apex).hypot());
                let ends = [inner, outer].map(|way| leaves(&outline, dart.apex, way));
                assert!((ends[0] - ends[1]).abs() < 0.02, "{}: {ends:?} {dart:?}", draft.recipe.name);
                // The middle of the cap, folded under the centre, ends with the centre's edge.
                let middle = (inner + outer) / (inner + outer).hypot();
                let tip = dart.apex + middle * leaves(&outline, dart.apex, middle);
                let under = Affine::reflect(dart.apex, inner) * tip;
                assert!(distance(&outline, under) < 0.01, "{}", draft.recipe.name);
                worst = worst.max((ends[0] - ends[1]).abs());
                darts += 1;
            }
        }
    }
    println!("the legs of {darts} darts end alike within {worst:.4} cm");
    assert!(darts > 20);
}

#[test]
fn band_yoke_and_fly_as_long_as_the_seams_they_are_sewn_to() {
    let seam = |piece: &Piece, edge: &str| {
        piece.runs.iter().filter(|run| run.edge == edge).map(|run| run.seam.length()).sum::<f64>()
    };
    for shape in BandShape::ALL {
        for draft in drafts() {
            let waistband = Some(Band { shape: *shape, height: 3.5 });
            let pieces = cut(&draft, &NONE, &Wanted { waistband, ..whole() });
            let of = |kind| pieces.iter().find(|piece| piece.kind == kind);
            let (front, back) = (&draft.shape.front, &draft.shape.back);
            let band = of(PieceKind::Waistband).unwrap();
            let notch = |name: &str| {
                let whole = seam(band, "waist");
                let found = band.notches.iter().find(|notch| notch.edge == "waist" && notch.name == name);
                let from_start = found.unwrap().from_start;
                // The sewn edge of a shaped band is walked from the front.
                if *shape == BandShape::Shaped { whole - from_start } else { from_start }
            };
            let waist = back.sewn_waist_length();
            assert!((notch("side") - waist).abs() < 0.1);
            assert!((notch("centre_front") - waist - front.sewn_waist_length()).abs() < 0.1);
            assert!((seam(band, "waist") - notch("centre_front") - 4.0).abs() < 1e-4);

            let front_piece = of(PieceKind::Front).unwrap();
            let zip = front_piece.notches.iter().rev().find(|notch| notch.edge == "crotch_seam").unwrap();
            let zip = seam(front_piece, "crotch_seam") - zip.from_start;
            for kind in [PieceKind::FlyExtension, PieceKind::FlyGuard] {
                let piece = of(kind).unwrap();
                let end = piece.notches.iter().find(|notch| notch.name == "zip").unwrap();
                assert!((seam(piece, "centre_front") - end.from_start - zip).abs() < 0.1, "{kind}");
            }
            let Some(yoke) = of(PieceKind::Yoke) else { continue };
            let below = of(PieceKind::Back).unwrap();
            assert!((seam(yoke, "yoke_seam") - seam(below, "yoke_seam")).abs() < 0.1);
            assert!((seam(yoke, "waist") - back.sewn_waist_length()).abs() < 0.1);
            let sides = seam(yoke, "side_seam") + seam(below, "side_seam");
            assert!((sides - back.side_seam.length()).abs() < 1e-6);
            let centres = seam(yoke, "crotch_seam") + seam(below, "crotch_seam");
            assert!((centres - back.crotch_seam.length()).abs() < 1e-6);
        }
    }
}

#[test]
fn yoke_edges_without_corners() {
    for draft in drafts().iter().filter(|draft| !draft.shape.back.lines.is_empty()) {
        for piece in cut(draft, &NONE, &whole()) {
            for run in piece.runs.iter().filter(|_| piece.kind == PieceKind::Yoke) {
                for pair in run.seam.cubics().windows(2) {
                    let (before, after) = (pair[0].p3 - pair[0].p2, pair[1].p1 - pair[1].p0);
                    let bend = before.cross(after).atan2(before.dot(after)).to_degrees();
                    assert!(bend.abs() < 0.1, "{} {bend}", run.edge);
                }
            }
        }
    }
}

#[test]
fn notches_of_front_and_back_meet_when_sewn() {
    for draft in drafts() {
        let pieces = cut(&draft, &NONE, &Wanted::default());
        for (edge, name) in
            [("side_seam", "hip"), ("side_seam", "knee"), ("inseam", "knee"), ("inseam", "below_crotch")]
        {
            let from_start = |piece: &Piece| {
                let here = piece.notches.iter().find(|notch| notch.edge == edge && notch.name == name);
                here.unwrap().from_start
            };
            let (front, back) = (from_start(&pieces[0]), from_start(&pieces[1]));
            assert!((front - back).abs() < 0.02, "{} {edge} {name}: {front} {back}", draft.recipe.name);
        }
        for piece in &pieces {
            let seam: Vec<CubicBez> = piece.runs.iter().flat_map(|run| run.seam.cubics().to_vec()).collect();
            for notch in &piece.notches {
                let off = |at: Point, line: &[CubicBez]| {
                    let near = |part: &CubicBez| part.nearest(at, 1e-9).distance_sq.sqrt();
                    line.iter().map(near).fold(f64::INFINITY, f64::min)
                };
                assert!(off(notch.point, &seam) < 1e-6);
                assert!(off(notch.on_cut_line(), &piece.cut_line) < 0.01, "{} {}", notch.edge, notch.name);
            }
            let strokes = |name: &str| piece.notches.iter().find(|notch| notch.name == name).unwrap().strokes;
            assert_eq!(strokes("curve"), if piece.kind == PieceKind::Back { 2 } else { 1 });
        }
    }
}

#[test]
fn grain_on_the_crease_and_level_marks_on_the_levels() {
    for draft in drafts() {
        for piece in cut(&draft, &NONE, &Wanted { purpose: Purpose::Toile, ..Wanted::default() }) {
            assert!(piece.grain.p0.x.abs() < 1e-9 && piece.grain.p1.x.abs() < 1e-9);
            let levels = &draft.shape.levels;
            for (name, y) in [("hip", levels[Level::Hip]), ("knee", levels[Level::Knee])] {
                let line = piece.lines.iter().find(|line| line.name == name).unwrap();
                let bounds = kurbo::Shape::bounding_box(&line.path);
                assert!((bounds.y0 - y).abs() < 1e-9 && bounds.height() < 1e-9);
                let outline = polygon(
                    &piece.runs.iter().flat_map(|run| run.seam.cubics().to_vec()).collect::<Vec<_>>(),
                    100,
                );
                for end in [bounds.x0, bounds.x1] {
                    assert!(distance(&outline, Point::new(end, y)) < 0.01);
                }
            }
        }
    }
}

#[test]
fn allowance_wider_than_its_curve_refused_with_the_most_that_fits() {
    let draft = &drafts()[0];
    let mut given = NONE;
    given[Allowance::CrotchSeam] = Some(14.0);
    given[Allowance::CentreBackWaist] = Some(14.0);
    let wide = Pattern::of([draft], &Allowances::of(&given, Purpose::Wear), &Wanted::default());
    let told = wide.unwrap_err().to_string();
    assert!(told.contains("crotch_seam"), "{told}");
    let most: f64 = told.split("can be ").nth(1).unwrap().split(' ').next().unwrap().parse().unwrap();
    given[Allowance::CrotchSeam] = Some(most);
    assert!(Pattern::of([draft], &Allowances::of(&given, Purpose::Wear), &Wanted::default()).is_ok());
}

#[test]
fn no_allowance_at_all_cut_on_the_sewing_line() {
    for draft in drafts() {
        for piece in cut(&draft, &EnumMap::from_fn(|_| Some(0.0)), &Wanted::default()) {
            let seam: Vec<CubicBez> = piece.runs.iter().flat_map(|run| run.seam.cubics().to_vec()).collect();
            let seam = polygon(&seam, 100);
            let off = polygon(&piece.cut_line, 20).into_iter().map(|at| distance(&seam, at));
            // Only the caps of the darts, which fold to the waist line itself.
            let off = off.fold(0.0, f64::max);
            assert!(off < 0.8, "{off}");
        }
    }
}

/// The panels of the JSON are those of the draft, whatever is cut off them.
#[test]
fn panels_whole_beside_a_yoke() {
    let order = Order::read(&demo("five").unwrap()).unwrap().0;
    let made = |yoke| {
        let wanted = Wanted { yoke, ..Wanted::default() };
        make_by(&load("jeans").unwrap(), order.clone(), Vec::new(), &wanted).unwrap().pattern
    };
    let (whole, cut) = (made(false), made(true));
    for panel in [Panel::Front, Panel::Back] {
        assert_eq!(whole.panel(panel, Side::Both), cut.panel(panel, Side::Both));
    }
    let kinds = |pattern: &Pattern| pattern.pieces.iter().map(|piece| piece.kind).collect::<Vec<_>>();
    assert_eq!(kinds(&whole), [PieceKind::Front, PieceKind::Back]);
    assert_eq!(kinds(&cut), [PieceKind::Front, PieceKind::Back, PieceKind::Yoke]);
    assert_ne!(whole.pieces[1], cut.pieces[1]);
}

#[test]
fn left_and_right_pieces_as_their_sides_lie_on_the_cloth() {
    let text = "name = \"five\"\nsex = \"male\"\n[measurements]\nwaist_girth = 84\nhip_girth = 102\ninside_leg = 82\n\
                [left.thigh]\nouter = 0.6\n[trousers]\nblock = \"classic\"\n";
    let order = Order::read(&breeks::mistake::Source::new("five.toml", text)).unwrap().0;
    let legs = drafted_legs(&order, &load("classic").unwrap()).unwrap();
    let pattern = Pattern::of(
        legs.iter().map(|leg| &leg.draft),
        &Allowances::of(&NONE, Purpose::Wear),
        &Wanted { yoke: false, ..whole() },
    )
    .unwrap();
    let faces: Vec<(PieceKind, Side, usize, usize)> = pattern
        .pieces
        .iter()
        .map(|piece| (piece.kind, piece.side, piece.copies.as_drawn, piece.copies.mirrored))
        .collect();
    use PieceKind::{Back, FlyExtension, FlyGuard, Front, Waistband};
    let wanted = [
        (Front, Side::Left, 1, 0),
        (Back, Side::Left, 0, 1),
        (Waistband, Side::Left, 1, 0),
        (FlyExtension, Side::Left, 0, 1),
        (Front, Side::Right, 0, 1),
        (Back, Side::Right, 1, 0),
        (Waistband, Side::Right, 1, 0),
        (FlyGuard, Side::Right, 1, 0),
    ];
    assert_eq!(faces, wanted);
}

#[test]
fn inlay_of_the_seat_runs_to_the_curve() {
    for draft in drafts() {
        let pieces = cut(&draft, &NONE, &Wanted::default());
        let back = pieces.iter().find(|piece| piece.kind == PieceKind::Back).unwrap();
        let seat: Vec<&Run> = back.runs.iter().filter(|run| run.edge == "crotch_seam").collect();
        assert_eq!(seat[0].allowance, [1.0, 1.0]);
        assert_eq!(seat[1].allowance, [1.0, 2.5]);
        let start: Chain = seat[1].seam.clone();
        assert!(start.start().distance(draft.shape.back.roles[Role::CurveStart]) < 1e-6);
    }
}
