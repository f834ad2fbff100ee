//! What further published drafts say that the first recipes could not: each written down and held against sums by hand
//! on a body of round numbers: hip 96, waist 80, rise 28.

use breeks::{
    mistake::Source,
    order::{Order, demo},
    recipe::Recipe,
    unit::Unit,
};
use kurbo::{CubicBez, ParamCurve, Point};
use std::sync::Arc;

use super::{body, carry_out, place, read, sound_but, sound_with};

fn near(found: f64, expected: f64) {
    assert!((found - expected).abs() < 1e-9, "expected {expected}, found {found}");
}

fn at(found: Point, x: f64, y: f64) {
    assert!(found.distance(Point::new(x, y)) < 1e-9, "expected {x}, {y}, found {found:?}");
}

fn quantity(step: &str) -> f64 {
    *carry_out(&sound_with(step)).quantities.last().expect("made")
}

fn line(recipe: &Recipe, name: &str) -> f64 {
    carry_out(recipe).lines[recipe.line(name).unwrap_or_else(|| panic!("no line {name}"))]
}

#[test]
fn level_line_by_size_in_the_list_and_as_a_step_by_a_quantity_and_through_a_point() {
    let by_size = sound_but(
        r#"hip_line = "waist_to_hip""#,
        r#"hip_line = { by = "hip", rungs = [[88, 17.5], [104, 18.5]], between = "ramp" }"#,
    );
    near(line(&read(&by_size), "hip_line"), 18.0);
    let steps = sound_with(
        r#"
        { level = "yoke_line", at = "hip_line - 2 extension" },
        { level = "size_line", by = "hip", rungs = [[88, 17.5], [104, 18.5]], between = "step" },
        { level = "mid_line", through = "in_mid" },
        { point = "P", from = "side", on = "yoke_line" },
        "#,
    );
    near(line(&steps, "yoke_line"), 20.0 - 2.0 * 6.5);
    near(line(&steps, "size_line"), 17.5);
    near(line(&steps, "mid_line"), 66.0);
    at(place(&steps, "P"), 15.0, 7.0);
}

#[test]
fn waist_square_to_a_leaning_centre_back() {
    // The centre line rises 20 and leans 5 from (-9, 28) to (-4, 8): its square falls 1 in 4 towards the side.
    let steps = |end: &str| {
        sound_with(&format!(
            r#"{{ point = "top", from = "corner", side = 5, up = 20 }}, {{ point = "P", {end} }},"#
        ))
    };
    let square = r#"{ square_to = ["corner", "top"], at = "top" }"#;
    let slant = 17f64.sqrt();
    let by_length = steps(&format!(r#"from = "top", span = 20, on = {square}, towards = "side""#));
    at(place(&by_length, "P"), -4.0 + 20.0 * 4.0 / slant, 8.0 + 20.0 / slant);
    let to_a_line = steps(&format!(r#"line = {square}, on = "hip_line""#));
    at(place(&to_a_line, "P"), -4.0 + 4.0 * 12.0, 20.0);
}

#[test]
fn lengths_read_between_points_and_along_a_curve() {
    // waist (-9, 0), side (15, 20), corner (-9, 28), fork (-15.5, 28)
    near(quantity(r#"{ quantity = "q", length = ["waist", "side"] },"#), (24f64 * 24.0 + 400.0).sqrt());
    near(quantity(r#"{ quantity = "q", length = ["waist", "corner", "fork"] },"#), 28.0 + 6.5);
    let curve = |k: f64| {
        let (a, corner, c) = (Point::new(-9.0, 20.0), Point::new(-9.0, 28.0), Point::new(-15.5, 28.0));
        let drawn = CubicBez::new(a, a.lerp(corner, k), c.lerp(corner, k), c);
        // A polygon of very many sides: another way of reckoning than the Gauss sum.
        let points: Vec<Point> = (0..=20_000).map(|part| drawn.eval(f64::from(part) / 20_000.0)).collect();
        (points.windows(2).map(|ends| ends[0].distance(ends[1])).sum::<f64>(), drawn.eval(0.5))
    };
    let read =
        quantity(r#"{ quantity = "q", curve = ["centre", "fork"], corner = "corner", fullness = 0.6 },"#);
    assert!((read - curve(0.6).0).abs() < 1e-6, "{read} {}", curve(0.6).0);
    // Led through the middle of that curve it is the same curve.
    let middle = curve(0.6).1;
    let led = quantity(&format!(
        r#"{{ point = "touch", from = "corner", fork = {:.9}, up = {:.9} }},
        {{ quantity = "q", curve = ["centre", "fork"], corner = "corner", guide = "touch" }},"#,
        -9.0 - middle.x,
        28.0 - middle.y
    ));
    assert!((led - read).abs() < 1e-5, "{led} {read}");
}

#[test]
fn two_slanted_lines_met() {
    // waist (-9, 0) to side (15, 20); centre (-9, 20) to side_top (11, 0)
    let found =
        place(&sound_with(r#"{ point = "P", line = ["waist", "side"], on = ["centre", "side_top"] },"#), "P");
    // y = 20/24 (x + 9) and y = 20 - (x + 9): (x + 9) (1 + 20/24) = 20
    let across = 20.0 / (1.0 + 20.0 / 24.0);
    at(found, -9.0 + across, 20.0 - across);
}

#[test]
fn arcs_about_a_point_met_by_a_line_a_level_and_another_arc() {
    let p = |step: &str| place(&sound_with(step), "P");
    // On the level 20, 13 from the corner at (-9, 28): 8 up, root of 105 across.
    let across = 105f64.sqrt();
    at(
        p(r#"{ point = "P", from = "corner", span = 13, on = "hip_line", towards = "fork" },"#),
        -9.0 - across,
        20.0,
    );
    // On the upright through the fork, 13 from the corner: 6.5 across.
    let up = (169.0 - 6.5f64 * 6.5).sqrt();
    let upright = r#"on = { upright = "fork" }, towards"#;
    at(p(&format!(r#"{{ point = "P", from = "corner", span = 13, {upright} = "up" }},"#)), -15.5, 28.0 - up);
    at(
        p(&format!(r#"{{ point = "P", from = "corner", span = 13, {upright} = "down" }},"#)),
        -15.5,
        28.0 + up,
    );
    // Two arcs about points 8 apart, one above the other: 5 and 5 meet half-way, 3 to either side.
    let arcs = r#"line = { about = "centre", reach = 5 }, on = { about = "corner", reach = 5 }, towards"#;
    at(p(&format!(r#"{{ point = "P", {arcs} = "side" }},"#)), -6.0, 24.0);
    at(p(&format!(r#"{{ point = "P", {arcs} = "fork" }},"#)), -12.0, 24.0);
}

#[test]
fn degrees_and_slopes_from_the_upright() {
    let p = |line: &str| {
        place(&sound_with(&format!(r#"{{ point = "P", line = {line}, on = "waist_line" }},"#)), "P")
    };
    at(p(r#"{ slope = "15 : 3.5", at = "corner", towards = "side" }"#), -9.0 + 28.0 * 3.5 / 15.0, 0.0);
    at(p(r#"{ slope = "45 degrees", at = "corner", towards = "fork" }"#), -37.0, 0.0);
    at(p(r#"{ slope = "30°", at = "corner", towards = "side" }"#), -9.0 + 28.0 / 3f64.sqrt(), 0.0);
    // Of a slope both sides may go by the body: 6.5 to 1/16 hip + 0.5 is one to one.
    at(p(r#"{ slope = "extension : 1/16 hip + 0.5", at = "corner", towards = "side" }"#), 19.0, 0.0);
}

#[test]
fn parallel_line_upright_and_level_of_a_point() {
    let recipe = sound_with(
        r#"
        { point = "P", line = { beside = ["waist", "side"], at = "centre" }, on = { upright = "O" } },
        { point = "Q", line = ["side", "waist"], on = { level_of = "P" } },
        { point = "R", from = "O", on = ["waist", "side"] },
        { point = "S", from = "waist", toward = "side", along = 5 },
        "#,
    );
    at(place(&recipe, "P"), 0.0, 27.5);
    at(place(&recipe, "Q"), -9.0 + 24.0 * 27.5 / 20.0, 27.5);
    at(place(&recipe, "R"), 0.0, 7.5);
    let long = (24f64 * 24.0 + 400.0).sqrt();
    at(place(&recipe, "S"), -9.0 + 24.0 * 5.0 / long, 20.0 * 5.0 / long);
}

#[test]
fn recipe_in_inches_the_same_draft_as_in_centimetres() {
    let inches = sound_but("title = \"A sound recipe\"", "title = \"A sound recipe\"\nunits = \"inch\"");
    let recipe = read(&inches.replace("belt_width = 4", "belt_width = \"1 1/2\""));
    let made = carry_out(&recipe);
    // 1/16 hip + 0.5 in
    near(made.quantities[0], 6.0 + 1.27);
    near(made.asks[0], 3.81);
    near(recipe.ease.give(breeks::terms::EaseAt::Hip, breeks::terms::Sex::Female), 4.0 * 2.54);
    let mixed = sound_with(r#"{ quantity = "q", is = "1/2 in + 1 cm" },"#);
    near(*carry_out(&mixed).quantities.last().expect("made"), 2.27);
}

#[test]
fn sums_as_people_write_them() {
    let value = |text: &str| quantity(&format!(r#"{{ quantity = "q", is = "{text}" }},"#));
    for (text, expected) in [
        ("hip/20", 4.8),
        ("(hip + 4)/4", 25.0),
        ("1/4 (hip + 4) - 0.5", 24.5),
        ("half of hip", 48.0),
        ("a quarter of waist + 1", 21.0),
        ("half (hip - waist)", 8.0),
        ("¼ hip", 24.0),
        ("1½", 1.5),
        ("hip \u{2212} waist", 16.0),
        ("3 hip/8", 36.0),
        ("-(hip - waist)/2", -8.0),
        ("2 (1/2 (hip - 1/2 (waist - 40)))", 76.0),
    ] {
        near(value(text), expected);
    }
    let recipe = sound_with(r#"{ quantity = "q", is = "(hip + 2.5)/4 - hip/20" },"#);
    let rule = &recipe.steps.last().expect("made").entry().rule;
    assert_eq!(rule, "1/4 hip + 0.625 - 1/20 hip", "as the trade writes it");
}

/// The skeleton for women with one place of its text replaced, drafted on stroke by proportions.
fn drafted(replaced: &[(&str, &str)]) -> breeks::draft::Draft {
    let skeleton = breeks::recipe::skeleton("women").expect("there");
    let mut text = skeleton.text.to_string();
    for (place, by) in replaced {
        assert_eq!(text.matches(place).count(), 1, "`{place}` stands once");
        text = text.replace(place, by);
    }
    let recipe = Recipe::parse(&Source::new("own.toml", text)).unwrap_or_else(|all| panic!("{all}"));
    let set = ["trousers.fit=proportional".to_owned()];
    let (order, _) = Order::read_with(&demo("stroke").expect("a demo"), &set).expect("sound");
    breeks::draft::draft(&order, &Arc::new(recipe)).unwrap_or_else(|all| panic!("{all}"))
}

const PLEATED: [(&str, &str); 2] = [
    ("front_dart\", on = \"side_waist_line\"", "front_dart + 6\", on = \"side_waist_line\""),
    (
        "dart = [{ on = \"crease\", intake = \"front_dart\", length = 10 }]",
        "dart = [{ on = \"front_dart_top\", intake = \"front_dart\", length = 8 }]\npleat = [{ on = \"crease\", intake = 6, length = 5 }]",
    ),
];
const DART_TOP: (&str, &str) = (
    "    { point = \"front_side_knee\", from",
    "    { point = \"front_dart_top\", from = \"front_top\", toward = \"front_side_top\", part = \"2/3\" },\n    { point = \"front_side_knee\", from",
);

#[test]
fn pleats_beside_darts_leave_the_sewn_waist_and_are_as_wide_as_the_recipe_says() {
    let plain = drafted(&[]);
    let pleated = drafted(&[PLEATED[0], PLEATED[1], DART_TOP]);
    let shape = &pleated.shape.front;
    assert_eq!(shape.pleats.len(), 1);
    assert!((shape.pleats[0].intake() - 6.0).abs() < 0.02, "{}", shape.pleats[0].intake());
    let sewn = |draft: &breeks::draft::Draft| {
        draft.shape.front.measured_waist_length() + draft.shape.back.measured_waist_length()
    };
    assert!((sewn(&plain) - sewn(&pleated)).abs() < 0.02, "{} {}", sewn(&plain), sewn(&pleated));
    // What is drawn of the waist is the sewn waist, the darts and the pleat.
    let open: f64 = shape.waist.length();
    let darts: f64 = shape.darts.iter().map(breeks::draft::Dart::intake).sum();
    assert!((open - shape.sewn_waist_length() - darts - 6.0).abs() < 0.15, "{open} {darts}");
    // The folds run beside each other.
    let [inner, outer] = shape.pleats[0].folds.map(|fold| (fold.p1 - fold.p0).normalize());
    assert!(inner.cross(outer).abs() < 0.1, "{inner:?} {outer:?}");
}

#[test]
fn seams_included_leave_the_panel_so_far_inside() {
    let plain = drafted(&[]);
    let text = "[style]\nknee_width";
    let seams = "[seams_included]\nwaist = 1\nside_seam = 1\ninseam = 1\ncrotch_seam = 1\nhem = 4\n\n[style]\nknee_width";
    let inside = drafted(&[(text, seams)]);
    use breeks::terms::{Level, Role};
    // Both at the height of the shorter leg's hem, since the leg tapers.
    let y = inside.shape.levels[Level::Hem] - 0.01;
    let hem = |draft: &breeks::draft::Draft| draft.shape.front.chord(y).expect("a hem");
    assert!((plain.shape.levels[Level::Hem] - inside.shape.levels[Level::Hem] - 4.0).abs() < 1e-9);
    assert!((hem(&plain) - hem(&inside) - 2.0).abs() < 0.06, "{} {}", hem(&plain), hem(&inside));
    let centre = |draft: &breeks::draft::Draft| draft.plan.front.drawn[Role::CentreWaist];
    let moved = centre(&inside) - centre(&plain);
    assert!((moved.y - 1.0).abs() < 0.1 && (moved.x - 1.0).abs() < 0.1, "{moved:?}");
}

#[test]
fn leg_in_one_piece_told_and_its_side_straight() {
    let one = [
        ("title = \"My women's trousers\"", "title = \"My women's trousers\"\none_piece = true"),
        (
            "{ point = \"front_side_hem\", from = \"crease_hem\", side = \"1/2 hem_width - 0.5\" }",
            "{ point = \"front_side_hem\", from = \"front_side_hip\", on = \"hem_line\" }",
        ),
        (
            "{ point = \"front_side_knee\", from = \"crease_knee\", side = \"1/2 knee_width - 0.5\" }",
            "{ point = \"front_side_knee\", from = \"front_side_hip\", on = \"knee_line\" }",
        ),
        ("side_hip = \"back_side_hip\"", "side_hip = \"front_side_hip\""),
        ("side_knee = \"back_side_knee\"", "side_knee = \"front_side_knee\""),
        ("side_hem = \"back_side_hem\"", "side_hem = \"front_side_hem\""),
    ];
    let draft = drafted(&one);
    let notice = draft.notices.iter().find(|notice| notice.code == "one-piece").expect("told");
    println!("{notice:?}");
    let apart = |share: f64| {
        use breeks::terms::Level;
        let levels = &draft.shape.levels;
        let y = levels[Level::Hip] + share * (levels[Level::Hem] - levels[Level::Hip]);
        let side = |panel: &breeks::draft::PanelShape| panel.ends_at(y).expect("a leg")[1];
        (side(&draft.shape.front) - side(&draft.shape.back)).abs()
    };
    for share in [0.2, 0.5, 0.8] {
        assert!(apart(share) < 0.3, "{share}: {}", apart(share));
    }
    let two = sound_but("title = \"A sound recipe\"", "title = \"A sound recipe\"\none_piece = true");
    assert!(Recipe::parse(&Source::new("one.toml", two)).is_ok(), "a front alone has one side");
}

#[test]
fn draft_without_knee_or_hip_line_takes_them_from_the_body_and_its_own_lines() {
    let skeleton = breeks::recipe::skeleton("women").expect("there");
    let mut lines: Vec<&str> = skeleton.text.lines().collect();
    lines.retain(|line| {
        let gone = ["knee_line =", "hip_line =", "centre_hip =", "side_knee =", "inner_knee ="];
        let of_the_knee = line.contains("crease_knee") || line.contains("_knee\", from");
        !(gone.iter().any(|start| line.starts_with(start)) || of_the_knee)
    });
    let text = lines
        .join("\n")
        .replace(
            "{ point = \"front_hip\", from = \"front_corner\", on = \"hip_line\" }",
            "{ point = \"front_hip\", from = \"front_corner\", up = 8 }",
        )
        .replace(
            "{ point = \"back_hip\", line = [\"back_top\", \"back_hinge\"], on = \"hip_line\" }",
            "{ point = \"back_hip\", from = \"back_hinge\", down = 6 }",
        );
    let recipe = Recipe::parse(&Source::new("bare.toml", text)).unwrap_or_else(|all| panic!("{all}"));
    let (order, _) = Order::read(&demo("stroke").expect("a demo")).expect("sound");
    let draft = breeks::draft::draft(&order, &Arc::new(recipe)).unwrap_or_else(|all| panic!("{all}"));
    use breeks::terms::{Level, Role};
    let (levels, made) = (&draft.plan.levels, &draft.plan.inputs.measurements);
    near(levels[Level::Hip], made[breeks::terms::Measurement::WaistToHip].expect("known"));
    near(levels[Level::Knee], 0.5 * (levels[Level::Crotch] + levels[Level::Hem]) - 5.0);
    // The knee lies on the straight from crotch point to hem.
    let roles = &draft.plan.front.drawn;
    let (top, low, knee) = (roles[Role::CrotchPoint], roles[Role::InnerHem], roles[Role::InnerKnee]);
    near(knee.x, top.lerp(low, (knee.y - top.y) / (low.y - top.y)).x);
    let titles: Vec<&str> = draft.steps().iter().map(|step| step.title).collect();
    assert!(titles.iter().any(|title| title.contains("draws no knee line")), "{titles:?}");
}

#[test]
fn waist_as_drawn_stays_where_the_recipe_has_it_and_nothing_is_told_of_it() {
    use breeks::terms::Role;
    let truing = ("[style]\nknee_width", "[truing]\nwaist = \"as drawn\"\n\n[style]\nknee_width");
    let draft = drafted(&[truing]);
    for (shape, plan) in [(&draft.shape.front, &draft.plan.front), (&draft.shape.back, &draft.plan.back)] {
        for role in [Role::CentreWaist, Role::SideWaist] {
            assert!(shape.roles[role].distance(plan.drawn[role]) < 1e-9, "{} {role}", shape.panel);
        }
        let wide = plan.drawn[Role::CentreWaist].distance(plan.drawn[Role::SideWaist]) - plan.intake;
        near(shape.sewn_waist_length(), wide);
    }
    let of_the_waist = |notice: &&breeks::mistake::Notice| {
        notice.code == "figure-changed" && {
            let text = notice.text(Unit::Cm);
            text.contains("waist") || text.contains("dart")
        }
    };
    assert_eq!(draft.notices.iter().filter(of_the_waist).count(), 0, "{:?}", draft.notices);
}

#[test]
fn every_figure_that_truing_changes_told_with_its_amount() {
    use breeks::terms::{Role, Word};
    let draft = drafted(&[]);
    let changed = draft.notices.iter().filter(|notice| notice.code == "figure-changed");
    let told: Vec<String> = changed.map(|notice| notice.text(Unit::Cm)).collect();
    for (shape, plan) in [(&draft.shape.front, &draft.plan.front), (&draft.shape.back, &draft.plan.back)] {
        for role in Role::ALL {
            let by = shape.roles[*role] - plan.drawn[*role];
            let name = format!("the {} {} (", plan.panel, role.key().replace('_', " "));
            let row = told.iter().find(|text| text.starts_with(&name));
            assert_eq!(row.is_some(), by.hypot() > 0.05, "{name} {by:?} {told:?}");
            if let Some(row) = row {
                let amount = format!("{:.2} cm", by.y.abs());
                assert!(by.y.abs() <= 0.05 || row.contains(&amount), "{row} {amount}");
            }
        }
    }
    let shipped = breeks::recipe::load("classic").expect("shipped");
    let (order, _) = Order::read(&demo("stroke").expect("a demo")).expect("sound");
    let classic = breeks::draft::draft(&order, &shipped).expect("drafted");
    assert!(classic.notices.iter().all(|notice| notice.code != "figure-changed"), "it copies no book");
}

#[test]
fn skeletons_drafted_on_every_body_of_the_spread() {
    for name in breeks::recipe::skeleton_names() {
        let recipe = Recipe::parse(&breeks::recipe::skeleton(name).expect("listed")).expect("sound");
        for (size, outcome) in breeks::trial::try_on(&Arc::new(recipe)) {
            use breeks::trial::Outcome;
            assert!(
                matches!(outcome, Outcome::Sound | Outcome::Tight(_)),
                "{name} on {}: {outcome:?}",
                size.label
            );
        }
    }
}

#[test]
fn recipe_with_every_rule_drafted_and_every_rule_in_it() {
    let text = include_str!("every_rule.toml");
    let recipe = read(text);
    for rule in breeks::recipe::RULES {
        let in_it = text.lines().any(|row| {
            row.contains(&format!("{} = ", rule.makes.key()))
                && row.contains(&format!("{} = ", rule.chosen_by))
        });
        assert!(in_it, "{} {}", rule.makes.key(), rule.chosen_by);
    }
    for form in breeks::recipe::FORMS {
        assert!(text.contains(&format!("{{ {} = ", form.chosen_by)), "{}", form.chosen_by);
    }
    assert!(recipe.construct(&body()).is_err(), "the body of round numbers has no waist height");
    let (order, _) = Order::read(&demo("stroke").expect("a demo")).expect("sound");
    let draft = breeks::draft::draft(&order, &Arc::new(recipe)).unwrap_or_else(|all| panic!("{all}"));
    assert!(draft.shape.front.has_room && draft.shape.back.has_room);
}
