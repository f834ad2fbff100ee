//! Seven published trouser drafts, carried out as recipes and compared with their numbers to 0.01 cm at the construction
//! points.
//!
//! `published/expected.csv` holds, per draft, the measures used (`input_` rows), the coordinates and further lengths
//! and angles, each as stated in the source or computed from the formula it states. Curve lengths are left out, since
//! no source gives its curve.
//!
//! - W1: Practical English for the clothing trade (Fuzhuang Yingyu Shiyong Jiaocheng), 3rd edition, part 3, figure 5-8
//!   (<https://m.ibooks.qq.com/read/1032011545/17>), the classic women's block of W. Aldrich, *Metric Pattern Cutting
//!   for Women's Wear*; the last leg and dart steps from memory. Size 12 from memory.
//! - W2: Pantaloni - cartamodello, figures 49 and 50 of an unnamed sewing manual
//!   (<https://sites.google.com/site/123ricreo/abiti/pantaloni/pantaloni-cartamodello>). Chosen measures.
//! - W3: How to Draft the Slack Pants Pattern, a teaching page
//!   (<http://www.pattern-making.com/draft-slack-pants/>), in inches. Chosen measures.
//! - W4: Basic pants pattern part 1: front, a student's translation of a Japanese school's method
//!   (<http://creaturesidea.blogspot.com/search/label/pants?max-results=5>). Chosen measures.
//! - W5: Pantalon-New, construction du devant, figure 1 (stored copy of
//!   <https://fr.scribd.com/document/747375351/Pantalon-New>). Its own example.
//! - M1: Lesson 9: Drafting of trouser (<http://slideplayer.com/slide/4101711/>). Chosen measures.
//! - M2: Basic trouser draft (plain fronts) by a cutter posting as Mansie Wauch
//!   (<http://movsd.com/BespokeCutter/index.php?topic=56.msg215>). Its own example.
//!
//! In W5 and M1 x grows from the side line to the fork; here it grows towards the side, so that x is turned round. W3 lays
//! the back beyond the side line; here it lies over the front, so that x of the back is counted from the other side.

use std::collections::BTreeMap;

use breeks::{
    mistake::Source,
    recipe::{Construction, Inputs, Recipe},
    terms::{EaseAt, Measurement, Role, Style},
};
use kurbo::Point;

/// Pencil and ruler are coarser; the expected numbers are rounded to 0.001.
const TOLERANCE: f64 = 0.01;

/// The expected rows of one draft, by quantity.
type Expected = BTreeMap<&'static str, f64>;

fn expected(draft: &str) -> Expected {
    let rows =
        include_str!("published/expected.csv").lines().skip(1).map(|row| row.split(',').collect::<Vec<_>>());
    let own = rows.filter(|row| row[0] == draft);
    own.map(|row| (row[1], row[2].parse().expect("a number"))).collect()
}

/// A published draft carried out on the measures of its source.
struct Carried {
    recipe: Recipe,
    inputs: Inputs,
    made: Construction,
}

impl Carried {
    fn new(name: &str, text: &str, inputs: Inputs) -> Self {
        let recipe = Recipe::parse(&Source::new(name, text)).unwrap_or_else(|mistakes| panic!("{mistakes}"));
        let made = recipe.construct(&inputs).unwrap_or_else(|mistake| panic!("{mistake}"));
        Self { recipe, inputs, made }
    }

    fn p(&self, name: &str) -> Point {
        self.made.points[self.recipe.point(name).unwrap_or_else(|| panic!("no point {name}")).0]
    }

    fn x(&self, name: &str) -> f64 {
        self.p(name).x
    }

    fn y(&self, name: &str) -> f64 {
        self.p(name).y
    }

    /// How far `right` lies from `left` towards the side.
    fn across(&self, left: &str, right: &str) -> f64 {
        self.x(right) - self.x(left)
    }

    /// The sum of the straight pieces through the points.
    fn polyline(&self, names: &[&str]) -> f64 {
        names.windows(2).map(|pair| self.p(pair[0]).distance(self.p(pair[1]))).sum()
    }

    /// The x at which the straight line through two points reaches a height.
    fn x_at(&self, first: &str, second: &str, y: f64) -> f64 {
        let (first, second) = (self.p(first), self.p(second));
        first.lerp(second, (y - first.y) / (second.y - first.y)).x
    }

    /// The lean of a line from the vertical, in degrees.
    fn lean(&self, low: &str, high: &str) -> f64 {
        let along = self.p(high) - self.p(low);
        along.x.atan2(-along.y).to_degrees()
    }

    fn body(&self, measurement: Measurement) -> f64 {
        self.inputs.measurements[measurement].expect("an input of the draft")
    }

    /// The darts of a panel: what they take off its waist.
    fn darts(&self, panel: &breeks::recipe::PanelRules) -> f64 {
        let intake = |dart: &breeks::recipe::DartRule| {
            dart.intake.value(&self.inputs, &self.made).expect("a constant")
        };
        panel.darts.iter().map(intake).sum()
    }

    fn line(&self, name: &str) -> f64 {
        self.made.lines[self.recipe.line(name).expect("a line of the recipe")]
    }
}

/// The ten points of each panel stand as a pair of trousers has them, so that the panel can be drawn.
fn assert_trouser_shaped(carried: &Carried) {
    for panel in [Some(&carried.recipe.front), carried.recipe.back.as_ref()].into_iter().flatten() {
        let at = |role: Role| carried.made.points[panel.roles[role].0];
        for (inner, side) in [
            (Role::CentreWaist, Role::SideWaist),
            (Role::CentreHip, Role::SideHip),
            (Role::CrotchPoint, Role::CurveStart),
            (Role::InnerKnee, Role::SideKnee),
            (Role::InnerHem, Role::SideHem),
        ] {
            assert!(at(inner).x < at(side).x, "{inner} and {side} of {}", carried.recipe.name);
        }
        for down in [
            [Role::SideWaist, Role::SideHip, Role::SideKnee, Role::SideHem],
            [Role::CentreWaist, Role::CentreHip, Role::CrotchPoint, Role::InnerKnee],
            [Role::CentreWaist, Role::CurveStart, Role::CrotchPoint, Role::InnerHem],
        ] {
            assert!(
                down.windows(2).all(|pair| at(pair[0]).y < at(pair[1]).y),
                "{down:?} of {}",
                carried.recipe.name
            );
        }
    }
}

/// Compares every expected row that is not an input: points by name, everything else by `quantities`.
fn compare(draft: &str, carried: &Carried, towards_side: f64, quantities: &[(&str, f64)]) {
    compare_by(draft, carried, |_, x| towards_side * x, quantities);
}

/// The same, with what the source calls the x of a point that lies at x here.
fn compare_by(
    draft: &str,
    carried: &Carried,
    x_in_source: impl Fn(&str, f64) -> f64,
    quantities: &[(&str, f64)],
) {
    let mut wrong = Vec::new();
    let (mut coordinates, mut lengths) = (0, 0);
    for (quantity, value) in
        expected(draft).into_iter().filter(|(quantity, _)| !quantity.starts_with("input_"))
    {
        let found = match quantity.strip_prefix("point_").and_then(|point| point.rsplit_once('_')) {
            Some((point, axis)) => {
                coordinates += 1;
                if axis == "x" { x_in_source(point, carried.x(point)) } else { carried.y(point) }
            }
            None => {
                lengths += 1;
                let own = quantities.iter().find(|(name, _)| *name == quantity);
                own.unwrap_or_else(|| panic!("{draft}: nothing computed for {quantity}")).1
            }
        };
        let near = (found - value).abs() <= TOLERANCE;
        if !near {
            wrong.push(format!("{draft} {quantity}: expected {value:.3}, found {found:.3}"));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    assert_trouser_shaped(carried);
    println!("{draft}: {coordinates} coordinates and {lengths} lengths and angles within {TOLERANCE} cm");
}

fn measured<const N: usize>(measurements: [(Measurement, f64); N]) -> Inputs {
    let mut inputs = Inputs::default();
    for (measurement, cm) in measurements {
        inputs.measurements[measurement] = Some(cm);
    }
    inputs
}

#[test]
fn womens_classic_block_w1_at_its_printed_points() {
    let given = expected("W1");
    let mut inputs = measured([
        (Measurement::HipGirth, given["input_hip"]),
        (Measurement::WaistGirth, given["input_waist"]),
        (Measurement::BodyRise, given["input_body_rise"]),
        (Measurement::WaistToHip, given["input_waist_to_hip"]),
        (Measurement::WaistHeight, given["input_waist_to_floor"]),
    ]);
    inputs.style[Style::HemWidth] = Some(given["input_trouser_bottom_width"]);
    let c = Carried::new("w1.toml", include_str!("published/w1.toml"), inputs);
    let back = c.recipe.back.as_ref().expect("W1 has a back");
    let crotch = c.y("5");
    compare(
        "W1",
        &c,
        1.0,
        &[
            ("front_crotch_ext", c.across("9", "5")),
            ("back_crotch_ext_from_16", c.across("24", "16")),
            ("back_crotch_ext_from_5", c.across("24", "5")),
            ("crotch_ext_sum", c.across("9", "5") + c.across("24", "16")),
            ("front_hip_width", c.across("6", "8")),
            ("back_hip_width", c.across("17", "25")),
            (
                "hip_ease_total_body",
                2.0 * (c.across("6", "8") + c.across("17", "25")) - c.body(Measurement::HipGirth),
            ),
            ("crease_to_cf_vertical", c.across("5", "0")),
            ("cf_shift_at_waist", c.across("7", "10")),
            ("cb_shift_from_16", c.across("16", "20")),
            ("cb_raise", c.y("20") - c.y("21")),
            ("cb_angle_deg_19_21", c.lean("19", "21")),
            ("front_waist_drawn", c.polyline(&["10", "11"])),
            ("front_waist_net_of_dart", c.polyline(&["10", "11"]) - c.darts(&c.recipe.front)),
            ("back_waist_drawn", c.polyline(&["21", "22"])),
            ("back_waist_net_of_darts", c.polyline(&["21", "22"]) - c.darts(back)),
            ("knee_depth_from_waist", c.line("knee_line")),
            ("crotch_to_knee", c.line("knee_line") - c.line("crotch_line")),
            ("back_crotch_drop", c.y("24") - c.y("9")),
            ("front_knee_width", c.across("15", "13")),
            ("front_hem_width", c.across("14", "12")),
            ("back_knee_width", c.across("29", "27")),
            ("back_hem_width", c.across("28", "26")),
            ("front_crotch_line_width_polyline", c.x_at("8", "13", crotch) - c.x("9")),
            ("back_crotch_line_width_polyline", c.x_at("25", "27", crotch) - c.x("24")),
            ("front_inseam_polyline_9_15_14", c.polyline(&["9", "15", "14"])),
            ("back_inseam_polyline_24_29_28", c.polyline(&["24", "29", "28"])),
            ("inseam_front_minus_back", c.polyline(&["9", "15", "14"]) - c.polyline(&["24", "29", "28"])),
            ("front_side_polyline_11_8_13_12", c.polyline(&["11", "8", "13", "12"])),
            ("back_side_polyline_22_25_27_26", c.polyline(&["22", "25", "27", "26"])),
        ],
    );
}

#[test]
fn italian_slacks_w2_at_their_printed_points() {
    let given = expected("W2");
    let mut inputs = measured([
        (Measurement::HipGirth, given["input_hip"]),
        (Measurement::WaistGirth, given["input_waist"]),
        (Measurement::BodyRise, given["input_rise"]),
        (Measurement::OutsideLeg, given["input_side_length"]),
    ]);
    inputs.asks.insert("hem_half_width".to_owned(), given["input_hem_half_width"]);
    let c = Carried::new("w2.toml", include_str!("published/w2.toml"), inputs);
    compare(
        "W2",
        &c,
        1.0,
        &[
            ("front_crotch_ext", c.across("front_fork", "cf_crotch")),
            ("back_crotch_ext_beyond_front_fork", c.across("back_fork", "front_fork")),
            ("back_crotch_ext_from_cf", c.across("back_fork", "cf_crotch")),
            ("crotch_ext_sum", c.across("front_fork", "cf_crotch") + c.across("back_fork", "cf_crotch")),
            ("front_hip_width_from_cf", c.across("cf_hip", "front_side_hip")),
            ("back_hip_width_from_cf", c.across("cf_hip", "back_side_hip")),
            ("hip_depth", c.line("hip_line")),
            ("crease_from_cf", c.across("origin", "crease_waist")),
            ("front_waist_drawn", c.polyline(&["origin", "front_side_waist"])),
            ("back_waist_drawn", c.polyline(&["cb_top", "back_side_waist"])),
            ("cb_shift", c.across("origin", "cb_top")),
            ("cb_raise", c.y("origin") - c.y("cb_top")),
            ("back_crotch_drop", c.y("back_fork") - c.y("front_fork")),
            ("cb_angle_deg_hiplevel_to_top", c.lean("cf_hip", "cb_top")),
            ("front_hem_width", c.across("front_hem_in", "front_hem_side")),
            ("back_hem_width", c.across("back_hem_in", "back_hem_side")),
            ("front_inseam_straight", c.polyline(&["front_fork", "front_hem_in"])),
            ("back_inseam_straight", c.polyline(&["back_fork", "back_hem_in"])),
            ("front_side_polyline", c.polyline(&["front_side_waist", "front_side_hip", "front_hem_side"])),
            ("back_side_polyline", c.polyline(&["back_side_waist", "back_side_hip", "back_hem_side"])),
        ],
    );
}

#[test]
fn slacks_in_one_panel_w3_at_their_printed_points() {
    let given = expected("W3");
    let inputs = measured([
        (Measurement::HipGirth, given["input_hip"]),
        (Measurement::WaistGirth, given["input_waist"]),
        (Measurement::BodyRise, given["input_crotch_depth"]),
        (Measurement::OutsideLeg, given["input_side_length"]),
    ]);
    let c = Carried::new("w3.toml", include_str!("published/w3.toml"), inputs);
    let side = c.x("C");
    let of_the_back = ["E", "H", "J", "K", "tangent", "L", "Q", "S"];
    let front_inseam = c.polyline(&["M", "R", "P"]);
    let back_inseam = c.polyline(&["J", "S", "Q"]);
    compare_by(
        "W3",
        &c,
        |point, x| if of_the_back.contains(&point) { 2.0 * side - x } else { x },
        &[
            ("front_crotch_ext", c.across("M", "G")),
            ("back_crotch_ext_from_H", c.across("J", "H")),
            ("back_crotch_ext_from_K", c.across("J", "K")),
            ("crotch_ext_sum_from_H", c.across("M", "G") + c.across("J", "H")),
            ("hip_line_total_half", c.across("D", "C") + c.across("E", "C")),
            ("arc_radius", c.p("D_across").distance(c.p("tangent"))),
            ("crotch_depth", c.line("crotch_line")),
            ("front_rise_G_I", c.polyline(&["G", "I"])),
            ("back_rise_K_L", c.polyline(&["K", "L"])),
            ("cb_top_above_side_top", c.y("A") - c.y("L")),
            ("K_to_tangent_point", c.polyline(&["K", "tangent"])),
            ("front_diagonal", c.polyline(&["G", "front_touch"])),
            ("back_diagonal", c.polyline(&["K", "back_touch"])),
            ("front_leg_width_at_hem_G_to_side", c.across("P", "B")),
            ("back_leg_width_at_hem_side_to_K", c.across("Q", "B")),
            ("cb_angle_deg_K_L", c.lean("K", "L")),
            ("side_line_A_C_hem_taper", c.polyline(&["A", "C", "taper"])),
            ("front_inseam_polyline_M_R_P", front_inseam),
            ("back_inseam_polyline_J_S_Q", back_inseam),
            ("inseam_back_minus_front", back_inseam - front_inseam),
        ],
    );
}

#[test]
fn japanese_school_front_w4_at_its_printed_points() {
    let given = expected("W4");
    let mut inputs = measured([
        (Measurement::HipGirth, given["input_hip"]),
        (Measurement::WaistGirth, given["input_waist"]),
        (Measurement::WaistToHip, given["input_hip_depth"]),
        (Measurement::BodyRise, given["input_crotch_depth"]),
    ]);
    inputs.asks.insert("knee_depth".to_owned(), given["input_knee_depth"]);
    inputs.asks.insert("full_length".to_owned(), given["input_length"]);
    inputs.style[Style::HemWidth] = Some(given["input_hem_girth"] / 2.0);
    let c = Carried::new("w4.toml", include_str!("published/w4.toml"), inputs);
    let dart = &c.recipe.front.darts[0];
    compare(
        "W4",
        &c,
        1.0,
        &[
            ("front_crotch_ext", c.across("C5", "C")),
            ("front_crotch_ext_formula_H/12-2.5", c.body(Measurement::HipGirth) / 12.0 - 2.5),
            ("crease_from_cf", c.across("C", "C3")),
            ("front_hip_width", c.across("B", "B1")),
            ("front_crotch_line_width", c.across("C5", "C4")),
            ("cf_shift_at_waist", c.across("A", "A3")),
            ("front_waist_drawn", c.polyline(&["A3", "A4"])),
            ("front_waist_net_of_darts", c.polyline(&["A3", "A4"]) - c.darts(&c.recipe.front)),
            ("side_waist_raise", c.y("A4") - c.y("A5")),
            ("dart_intake_each", dart.intake.value(&c.inputs, &c.made).expect("a constant")),
            ("dart_length", dart.length.value(&c.inputs, &c.made).expect("a constant")),
            ("front_hem_width", c.across("E1", "E2")),
            ("front_inseam_straight_C5_E1", c.polyline(&["C5", "E1"])),
            ("front_knee_width_straight_lines", c.across("D1", "D2")),
        ],
    );
}

#[test]
fn french_course_front_w5_at_its_printed_points() {
    let given = expected("W5");
    let mut inputs = measured([
        (Measurement::HipGirth, given["input_hip"]),
        (Measurement::BodyRise, given["input_rise"]),
        (Measurement::WaistHeight, given["input_length"]),
    ]);
    inputs.ease[EaseAt::Hip] = given["input_hip_ease"];
    let c = Carried::new("w5.toml", include_str!("published/w5.toml"), inputs);
    compare(
        "W5",
        &c,
        -1.0,
        &[
            ("crotch_to_hem", c.line("hem_line") - c.line("crotch_line")),
            ("knee_above_hem", c.line("hem_line") - c.line("knee_line")),
            ("crotch_to_knee", c.line("knee_line") - c.line("crotch_line")),
            ("front_hip_width_at_crotch_line", c.across("E", "C")),
            ("front_crotch_ext", c.across("G", "E")),
            ("crease_from_side_line", c.across("H", "C")),
        ],
    );
}

#[test]
fn trade_school_trouser_m1_at_its_printed_points() {
    let given = expected("M1");
    let mut inputs = measured([
        (Measurement::HipGirth, given["input_hip"]),
        (Measurement::WaistGirth, given["input_waist"]),
        (Measurement::OutsideLeg, given["input_length"]),
    ]);
    inputs.asks.insert("belt_width".to_owned(), given["input_belt_width"]);
    inputs.style[Style::KneeWidth] = Some(given["input_knee"] / 2.0);
    inputs.style[Style::HemWidth] = Some(given["input_bottom"] / 2.0);
    let c = Carried::new("m1.toml", include_str!("published/m1.toml"), inputs);
    compare(
        "M1",
        &c,
        -1.0,
        &[
            ("crotch_depth", c.line("crotch_line")),
            ("knee_depth", c.line("knee_line")),
            ("front_crotch_line_width", c.across("6", "3")),
            ("front_crotch_ext", c.across("6", "11")),
            ("front_width_to_cf_at_crotch", c.across("11", "3")),
            ("back_crotch_ext_beyond_front_fork", c.across("B", "6")),
            ("back_crotch_ext_from_11", c.across("B", "11")),
            ("crotch_ext_sum", c.across("6", "11") + c.across("B", "11")),
            ("back_crotch_drop", c.y("B") - c.y("6")),
            ("cb_shift_from_12", c.across("12", "D")),
            ("cb_raise", c.y("12") - c.y("D")),
            ("cb_angle_deg_11_D", c.lean("11", "D")),
            ("front_waist_drawn", c.polyline(&["12", "13"])),
            ("back_waist_drawn", c.polyline(&["D", "E"])),
            ("front_knee_width", c.across("16", "15")),
            ("back_knee_width", c.across("J", "I")),
            ("front_hem_width", c.across("18", "17")),
            ("back_hem_width", c.across("L", "K")),
            ("cf_curve_start_above_crotch", c.y("11") - c.y("14")),
            ("front_inseam_polyline_6_16_18", c.polyline(&["6", "16", "18"])),
            ("back_inseam_polyline_B_J_L", c.polyline(&["B", "J", "L"])),
            ("front_side_polyline_13_3_15_17", c.polyline(&["13", "3", "15", "17"])),
        ],
    );
}

#[test]
fn tailors_topside_m2_at_its_printed_points() {
    let given = expected("M2");
    let mut inputs = measured([
        (Measurement::HipGirth, given["input_seat"]),
        (Measurement::WaistGirth, given["input_waist"]),
        (Measurement::OutsideLeg, given["input_outside_leg"]),
        (Measurement::InsideLeg, given["input_inside_leg"]),
    ]);
    inputs.style[Style::KneeWidth] = Some(given["input_knee"] / 2.0);
    inputs.style[Style::HemWidth] = Some(given["input_bottom"] / 2.0);
    let c = Carried::new("m2.toml", include_str!("published/m2.toml"), inputs);
    compare(
        "M2",
        &c,
        1.0,
        &[
            ("crotch_depth_drawn", c.line("crotch_line")),
            ("length_drawn", c.line("hem_line")),
            ("knee_above_hem", c.line("hem_line") - c.line("knee_line")),
            ("front_crotch_ext_7_5", c.across("5", "7")),
            ("front_crotch_line_width_5_6", c.across("5", "6")),
            ("front_hip_width_11_12", c.across("11", "12")),
            ("hip_line_above_crotch", c.line("crotch_line") - c.line("hip_line")),
            ("front_waist_drawn", c.polyline(&["8", "9"])),
            ("front_knee_width", c.across("14", "15")),
            ("front_hem_width", c.across("16", "17")),
            ("back_knee_width", c.across("back_knee_in", "back_knee_side")),
            ("back_hem_width", c.across("back_hem_in", "back_hem_side")),
            ("front_inseam_polyline_5_14_16", c.polyline(&["5", "14", "16"])),
            ("front_side_polyline_9_12_6_15_17", c.polyline(&["9", "12", "6", "15", "17"])),
        ],
    );
}
