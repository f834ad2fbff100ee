//! What a copyist of a book runs into: bows and straight seams as they are said to be, what stays as drawn, what a file gives
//! and the recipe passes over, and the rows that a refusal comes from.

use std::sync::Arc;

use breeks::{
    curve::Chain,
    draft::{Draft, PanelShape, draft},
    mistake::{Notice, Severity, Source},
    order::{Order, demo},
    recipe::Recipe,
    terms::Role,
    trial::{Outcome, broken_if_trued, try_for, try_on},
    unit::Unit,
};
use kurbo::{ParamCurve, Point};

/// The skeleton for women with places of its text replaced.
fn skeleton(replaced: &[(&str, &str)]) -> Arc<Recipe> {
    let mut text = breeks::recipe::skeleton("women").expect("there").text.to_string();
    for (place, by) in replaced {
        assert_eq!(text.matches(place).count(), 1, "`{place}` stands once");
        text = text.replace(place, by);
    }
    Arc::new(Recipe::parse(&Source::new("own.toml", text)).unwrap_or_else(|all| panic!("{all}")))
}

fn order(set: &[&str]) -> Order {
    let set: Vec<String> =
        ["trousers.fit=proportional"].iter().chain(set).map(|key| (*key).to_owned()).collect();
    Order::read_with(&demo("stroke").expect("a demo"), &set).expect("sound").0
}

fn drafted(recipe: &Arc<Recipe>, set: &[&str]) -> Draft {
    draft(&order(set), recipe).unwrap_or_else(|all| panic!("{all}"))
}

fn told<'a>(draft: &'a Draft, code: &str) -> Vec<&'a Notice> {
    draft.notices.iter().filter(|notice| notice.code == code).collect()
}

/// How far a seam stands out of its panel at the most between two of its points, by very many places of it: towards the
/// side on the side seam, towards the fork on the inseam.
fn stands_out(seam: &Chain, outward: f64, from: Point, to: Point) -> (f64, f64) {
    let way = (to - from).normalize();
    let (mut most, mut least) = (0f64, 0f64);
    for cubic in seam.cubics() {
        for part in 0..=200 {
            let at = cubic.eval(f64::from(part) / 200.0) - from;
            if (0.0..=(to - from).hypot()).contains(&at.dot(way)) {
                let off = way.cross(at).abs() * (at.x - way.x / way.y * at.y).signum() * outward;
                (most, least) = (most.max(off), least.min(off));
            }
        }
    }
    (most, least)
}

/// Waist to hip, hip to knee, crotch point to knee.
fn bows(panel: &PanelShape) -> [(f64, f64); 3] {
    let at = |role: Role| panel.roles[role];
    [
        stands_out(&panel.side_seam, 1.0, at(Role::SideWaist), at(Role::SideHip)),
        stands_out(&panel.side_seam, 1.0, at(Role::SideHip), at(Role::SideKnee)),
        stands_out(&panel.inseam, -1.0, at(Role::CrotchPoint), at(Role::InnerKnee)),
    ]
}

const PRINTED: (&str, &str) = ("[style]\nknee_width", "[truing]\ntrue = false\n\n[style]\nknee_width");
/// The bows of the skeleton's two panels, front first.
const BOWS: [&str; 2] = [
    "bow = { side_above_hip = 0.5, inseam_above_knee = -0.75 }",
    "bow = { side_above_hip = 0.5, inseam_above_knee = -1.25 }",
];

fn bowed(front: &str, back: &str, further: &[(&str, &str)]) -> Arc<Recipe> {
    let mut replaced = vec![(BOWS[0], front), (BOWS[1], back)];
    replaced.extend(further);
    skeleton(&replaced)
}

#[test]
fn seams_as_printed_straight_without_a_bow_and_bowed_by_as_much_as_it_says() {
    let straight = drafted(&bowed("", "bow = { side_below_hip = 0 }", &[PRINTED]), &[]);
    for panel in [&straight.shape.front, &straight.shape.back] {
        for (most, least) in bows(panel) {
            assert!(most < 1e-6 && least > -1e-6, "{} {most} {least}", panel.panel);
        }
    }
    for (bow, at, sign) in [
        ("bow = { side_above_hip = 0.6 }", 0, 0.6),
        ("bow = { side_below_hip = -0.4 }", 1, -0.4),
        ("bow = { inseam_above_knee = -0.7 }", 2, -0.7),
        ("bow = { inseam_above_knee = 0.3 }", 2, 0.3),
    ] {
        let draft = drafted(&bowed(bow, bow, &[PRINTED]), &[]);
        for panel in [&draft.shape.front, &draft.shape.back] {
            let (most, least) = bows(panel)[at];
            let (stands, other) = if sign > 0.0 { (most, least) } else { (least, most) };
            assert!((stands - sign).abs() < 0.03 && other.abs() < 1e-6, "{} {bow} {stands}", panel.panel);
        }
    }
}

#[test]
fn trued_side_straight_below_the_hip_where_the_recipe_says_so() {
    let rounded = drafted(&bowed(BOWS[0], BOWS[1], &[]), &[]);
    let (most, _) = bows(&rounded.shape.front)[1];
    assert!(most > 0.3, "rounded over the hip by itself: {most}");
    let zero = "bow = { side_above_hip = 0.5, side_below_hip = 0, inseam_above_knee = -0.75 }";
    let straight = drafted(&bowed(zero, BOWS[1], &[]), &[]);
    let (most, least) = bows(&straight.shape.front)[1];
    assert!(most < 1e-6 && least > -1e-6, "{most} {least}");
    let full = "bow = { side_above_hip = 0.5, side_below_hip = 0.6, inseam_above_knee = -0.75 }";
    let (most, least) = bows(&drafted(&bowed(full, BOWS[1], &[]), &[]).shape.front)[1];
    assert!((most - 0.6).abs() < 0.02 && least > -1e-6, "{most} {least}");
    let side = straight.shape.front.side_seam.cubics();
    for joint in side.windows(2) {
        let [before, after] = [joint[0].p3 - joint[0].p2, joint[1].p1 - joint[1].p0];
        assert!(before.normalize().cross(after.normalize()).abs() < 1e-6, "no corner");
    }
}

#[test]
fn bow_that_the_trued_seam_cannot_have_told_and_one_that_it_has_not() {
    let of_the_bow = |draft: &Draft| -> Vec<String> {
        let changed = told(draft, "figure-changed").into_iter().map(|notice| notice.text(Unit::Cm));
        changed.filter(|text| text.contains("`bow`")).collect()
    };
    let out = drafted(&bowed("bow = { inseam_above_knee = 0.5 }", BOWS[1], &[]), &[]);
    let (most, least) = bows(&out.shape.front)[2];
    assert!(most < 0.1 && least < -0.1, "hollow whatever the bow says: {most} {least}");
    let said = of_the_bow(&out);
    let front = said.iter().find(|text| text.contains("the front `bow` `inseam_above_knee` comes out −0."));
    assert!(front.is_some_and(|text| text.contains("has +0.5 cm")), "{said:?}");
    let none = of_the_bow(&drafted(&bowed("", "", &[]), &[]));
    assert!(none.is_empty(), "nothing is said of a bow that the recipe does not give: {none:?}");
}

#[test]
fn inseam_as_drawn_keeps_the_back_crotch_point_and_reports_the_seam() {
    let lower = ("down = 0.8", "down = 1.5");
    let as_drawn = ("[style]\nknee_width", "[truing]\ninseam = \"as drawn\"\n\n[style]\nknee_width");
    let kept = drafted(&skeleton(&[lower, as_drawn]), &[]);
    let plan = &kept.plan.back;
    assert!((kept.shape.back.roles[Role::CrotchPoint] - plan.drawn[Role::CrotchPoint]).hypot() < 1e-9);
    let trued = drafted(&skeleton(&[lower]), &[]);
    let moved = trued.shape.back.roles[Role::CrotchPoint] - plan.drawn[Role::CrotchPoint];
    assert!(moved.y.abs() > 0.05, "else the test shows nothing: {moved:?}");
    let long = |panel: &PanelShape| panel.inseam.length();
    assert!((long(&kept.shape.front) - long(&kept.shape.back)).abs() > 0.05);
    assert!((long(&trued.shape.front) - long(&trued.shape.back)).abs() < 1e-6);
    // The crossing is trued all the same.
    let report = breeks::fit::Report::of(&kept.plan, &kept.parameters, &kept.shape, &kept.body);
    let crotch = report.joins.iter().find(|row| row.join.to_string() == "crotch").expect("a row");
    assert!(crotch.holds(), "{crotch:?}");
    assert!(kept.steps().iter().all(|step| !step.title.contains("crotch point slides")));
    let keeps = "`[truing]` with `inseam = \"as drawn\"` keeps the recipe's";
    let say = |draft: &Draft| {
        told(draft, "figure-changed").iter().any(|notice| notice.text(Unit::Cm).contains(keeps))
    };
    assert!(say(&trued) && !say(&kept));
}

#[test]
fn what_a_file_gives_and_the_recipe_passes_over_told() {
    let plain = skeleton(&[]);
    let quiet = drafted(&plain, &["trousers.ease.hip=6", "trousers.style.hem_width=21"]);
    assert!(told(&quiet, "passed-over").is_empty(), "{:?}", quiet.notices);
    let set = ["trousers.ease.calf=6", "trousers.ask.belt=3", "trousers.ease.thigh=9"];
    let loud = drafted(&plain, &set);
    let said: Vec<String> = told(&loud, "passed-over").iter().map(|notice| notice.text(Unit::Cm)).collect();
    assert_eq!(said.len(), 2, "a measured fit asks for the ease of the thigh: {said:?}");
    assert!(
        said[0].contains("does not use `trousers.ease.calf`")
            && said[0].ends_with("goes by `trousers.style.knee_width`"),
        "{said:?}"
    );
    assert!(said[1].contains("asks for nothing of its own: `trousers.ask.belt` changes nothing"), "{said:?}");
    assert!(told(&loud, "passed-over").iter().all(|notice| notice.severity == Severity::Mind));
    let top = drafted(&plain, &["trousers.ease.top_hip=6"]);
    assert!(
        told(&top, "passed-over")[0]
            .text(Unit::Cm)
            .contains("or a sum of the recipe with `top_hip_ease` in it")
    );
    let asks = skeleton(&[("[lines]", "[asks]\nband = 4\n\n[lines]")]);
    let said = drafted(&asks, &["trousers.ask.belt=3"]);
    assert!(told(&said, "passed-over")[0].text(Unit::Cm).ends_with("it asks for band"));
}

#[test]
fn width_or_ask_outside_the_range_of_the_book_told() {
    let asks = ("[lines]", "[asks]\nhem_half = { is = 9, within = [8, 10] }\n\n[lines]");
    let recipe = skeleton(&[asks]);
    assert!(told(&drafted(&recipe, &[]), "outside-the-recipe").is_empty());
    let wide = drafted(&recipe, &["trousers.ask.hem_half=12"]);
    let said = told(&wide, "outside-the-recipe")[0].text(Unit::Cm);
    assert!(said.starts_with("`hem_half` is 12.00 cm, recipe `own` is meant for 8.0 to 10.0 cm"), "{said}");
    let text = breeks::recipe::skeleton("women").expect("there").text.to_string();
    let hem = text.lines().find(|line| line.starts_with("hem_width")).expect("a default").to_owned();
    let recipe = skeleton(&[(&hem, "hem_width = { women = 19, men = 21, within = [16, 22] }")]);
    assert!(told(&drafted(&recipe, &[]), "outside-the-recipe").is_empty());
    let wide = drafted(&recipe, &["trousers.style.hem_width=30"]);
    let said = told(&wide, "outside-the-recipe")[0].text(Unit::Cm);
    assert!(said.starts_with("`hem_width` is 30.00 cm"), "{said}");
}

#[test]
fn refusal_told_with_the_rows_it_comes_from_and_what_mends_it() {
    let recipe = skeleton(&[PRINTED]);
    let Outcome::Unsound(why) = try_for(&recipe, &order(&[])) else { panic!("as printed it does not sew") };
    let whence: Vec<_> = why.iter().filter_map(|told| told.whence.as_ref()).collect();
    let crotch = whence.iter().find(|whence| whence.about == "crotch join").expect("a peak");
    assert!(crotch.mend.contains("leave `true = false` out"), "{crotch:?}");
    // Row and line are those of the file.
    let text = &recipe.source().text;
    let steps = text.lines().position(|line| line.starts_with("steps = [")).expect("a list");
    let (row, line) = text
        .lines()
        .enumerate()
        .skip(steps + 1)
        .filter(|(_, line)| line.trim_start().starts_with('{'))
        .enumerate()
        .find(|(_, (_, line))| line.contains("point = \"back_fork\""))
        .map(|(row, (line, _))| (row + 1, line + 1))
        .expect("a row");
    let made_by = format!("crotch point `back_fork` (row {row}, line {line})");
    assert!(crotch.made_by.contains(&made_by), "{crotch:?}");
    assert_eq!(broken_if_trued(&recipe), Some(0), "the skeleton is sound");
    assert_eq!(broken_if_trued(&skeleton(&[])), None, "it is trued in everything");
    assert!(try_on(&recipe).iter().any(|(_, outcome)| outcome.breaks()));
    assert!(!try_for(&skeleton(&[]), &order(&[])).breaks());
}
