//! Laid parts against each other, by a library for areas of polygons that the laying does not use.

use breeks::pattern::lay::{Part, Placement, Strip, along};
use i_overlay::{
    core::{fill_rule::FillRule, overlay_rule::OverlayRule},
    float::single::SingleFloatOverlay as _,
};
use kurbo::{Affine, BezPath, PathEl, Point, Shape as _};
use proptest::{prelude::*, test_runner::Config};

use crate::bodies::{Cloth, parts};

/// Many short chords, from the curve's own points: they leave it by less than a thousandth of a centimetre.
fn corners(path: &BezPath) -> Vec<[f64; 2]> {
    let mut corners = Vec::new();
    kurbo::flatten(path.elements().iter().copied(), 1e-4, |step| {
        if let PathEl::MoveTo(at) | PathEl::LineTo(at) = step {
            corners.push([at.x, at.y]);
        }
    });
    corners
}

fn area(shapes: &[Vec<Vec<[f64; 2]>>]) -> f64 {
    let ring = |ring: &Vec<[f64; 2]>| {
        let pairs = ring.iter().zip(ring.iter().cycle().skip(1));
        pairs.map(|(a, b)| a[0] * b[1] - a[1] * b[0]).sum::<f64>() / 2.0
    };
    shapes.iter().flatten().map(ring).sum::<f64>().abs()
}

/// What two outlines both cover, square cm.
pub(crate) fn shared(one: &BezPath, other: &BezPath) -> f64 {
    let (one, other) = (corners(one), corners(other));
    area(&one.overlay(&other, OverlayRule::Intersect, FillRule::NonZero))
}

/// How near two outlines come to each other, cm, by their corners against chords.
fn distance(one: &BezPath, other: &BezPath) -> f64 {
    let from = |one: &[[f64; 2]], other: &[[f64; 2]]| {
        one.iter()
            .flat_map(|at| {
                let at = Point::new(at[0], at[1]);
                other.iter().zip(other.iter().cycle().skip(1)).map(move |(a, b)| {
                    let (a, b) = (Point::new(a[0], a[1]), Point::new(b[0], b[1]));
                    let along = ((at - a).dot(b - a) / (b - a).hypot2().max(1e-12)).clamp(0.0, 1.0);
                    at.distance(a.lerp(b, along))
                })
            })
            .fold(f64::INFINITY, f64::min)
    };
    let (one, other) = (corners(one), corners(other));
    from(&one, &other).min(from(&other, &one))
}

/// Every part at its place.
pub(crate) fn placed(parts: &[Part], placements: &[Placement]) -> Vec<BezPath> {
    parts.iter().zip(placements).map(|(part, placement)| placement.affine() * part.outline.clone()).collect()
}

/// No two outlines share more than rounding, and all stay `gap` apart.
pub(crate) fn assert_apart(outlines: &[BezPath], gap: f64) {
    for (place, one) in outlines.iter().enumerate() {
        for (next, other) in outlines.iter().enumerate().skip(place + 1) {
            let reach = one.bounding_box().inflate(gap, gap).intersect(other.bounding_box());
            if reach.width() <= 0.0 || reach.height() <= 0.0 {
                continue;
            }
            let both = shared(one, other);
            assert!(both < 1e-6, "parts {place} and {next} share {both} square cm");
            let between = distance(one, other);
            assert!(between >= gap - 1e-6, "parts {place} and {next} are {between} cm apart, wanted {gap}");
        }
    }
}

#[test]
fn trousers_without_overlap_within_the_width() {
    for (recipe, cloth, width, nap) in [
        ("classic", Cloth::Open, 139.0, false),
        ("classic", Cloth::Folded, 73.0, true),
        ("slim", Cloth::Open, 113.0, false),
        ("wide", Cloth::Open, 148.0, true),
        ("jeans", Cloth::Folded, 70.0, false),
    ] {
        for size in [2, 15] {
            let parts = parts(recipe, size, cloth, nap);
            let laid = along(&Strip { width, gap: 2.0, repeat: None }, &parts).unwrap();
            let outlines = placed(&parts, &laid.placements);
            assert_apart(&outlines, 2.0);
            let all =
                outlines.iter().map(|outline| outline.bounding_box()).reduce(|a, b| a.union(b)).unwrap();
            assert!(all.x0 >= 0.0 && all.x1 <= width && all.y0 >= 0.0, "{recipe} {size}: {all:?}");
            assert!((0.0..0.3).contains(&(laid.length - all.y1)), "{recipe} {size}: {} {all:?}", laid.length);
        }
    }
}

#[test]
fn nap_keeps_every_head_up() {
    let parts = parts("classic", 5, Cloth::Folded, true);
    let laid = along(&Strip { width: 73.0, gap: 2.0, repeat: None }, &parts).unwrap();
    for placement in &laid.placements {
        assert!((placement.affine() * Point::new(0.0, 1.0) - placement.affine() * Point::ORIGIN).y > 0.0);
    }
}

#[test]
fn a_part_wider_than_the_strip_laid_nowhere() {
    let parts = parts("wide", 19, Cloth::Open, false);
    let panel = parts[2].outline.bounding_box().width();
    assert!(along(&Strip { width: panel - 0.1, gap: 1.0, repeat: None }, &parts).is_none());
    assert!(along(&Strip { width: panel + 0.1, gap: 1.0, repeat: None }, &parts).is_some());
}

#[test]
fn matched_heights_on_one_place_of_the_pattern() {
    for repeat in [3.7, 10.0, 25.4] {
        let mut parts = parts("classic", 7, Cloth::Open, true);
        for part in &mut parts[..4] {
            part.match_at = Some(part.outline.bounding_box().y1);
        }
        let laid = along(&Strip { width: 139.0, gap: 2.0, repeat: Some(repeat) }, &parts).unwrap();
        let hems = parts[..4]
            .iter()
            .zip(&laid.placements)
            .map(|(part, placement)| (placement.affine() * Point::new(0.0, part.match_at.unwrap())).y);
        for hem in hems {
            let off = hem / repeat - (hem / repeat).round();
            assert!((off * repeat).abs() < 0.001, "{repeat}: {hem}");
        }
        assert_apart(&placed(&parts, &laid.placements), 2.0);
    }
}

/// A star of straight or bent sides: hollows on all sides, as no trouser has.
fn star() -> impl Strategy<Value = BezPath> {
    (prop::collection::vec((2.0..20.0_f64, 2.0..20.0_f64), 4..9), any::<bool>()).prop_map(|(rays, bent)| {
        let mut path = BezPath::new();
        let count = rays.len() as f64;
        let at = |turn: f64, reach: f64| Point::new(reach * turn.cos(), reach * turn.sin());
        for (place, (reach, between)) in rays.iter().enumerate() {
            let turn = |part: f64| std::f64::consts::TAU * (place as f64 + part) / count;
            let point = at(turn(0.0), *reach);
            if place == 0 {
                path.move_to(point)
            } else {
                path.line_to(point)
            }
            let middle = at(turn(0.5), *between);
            if bent { path.quad_to(at(turn(0.3), 0.7 * between), middle) } else { path.line_to(middle) }
        }
        path.close_path();
        Affine::translate((31.0, -7.0)) * path
    })
}

proptest! {
    #![proptest_config(Config { cases: 24, failure_persistence: None, rng_seed: proptest::test_runner::RngSeed::Fixed(4), ..Config::default() })]

    #[test]
    fn stars_without_overlap(
        stars in prop::collection::vec((star(), any::<bool>(), any::<bool>()), 1..5),
        width in 41.0..90.0_f64,
        gap in 0.0..2.0_f64,
    ) {
        let parts: Vec<Part> = stars
            .into_iter()
            .map(|(outline, may_turn, may_mirror)| Part { may_turn, may_mirror, ..Part::new(outline) })
            .collect();
        let laid = along(&Strip { width, gap, repeat: None }, &parts).unwrap();
        let outlines = placed(&parts, &laid.placements);
        assert_apart(&outlines, gap);
        for outline in outlines {
            let bounds = outline.bounding_box();
            prop_assert!(bounds.x0 >= 0.0 && bounds.x1 <= width && bounds.y0 >= 0.0 && bounds.y1 <= laid.length);
        }
    }
}
