//! A graded run: a larger body needs no less cloth.

use breeks::pattern::lay::{Strip, along};

use crate::bodies::{Cloth, SIZES, parts};

/// The longest that the lay of any smaller body is than that of a larger one, cm.
fn fall(recipe: &str, width: f64, cloth: Cloth, nap: bool) -> f64 {
    let lengths: Vec<f64> = (0..SIZES)
        .map(|size| {
            let strip = Strip { width, gap: 2.0, repeat: None };
            along(&strip, &parts(recipe, size, cloth, nap)).unwrap().length
        })
        .collect();
    let told: Vec<String> = lengths.iter().map(|length| format!("{length:.0}")).collect();
    println!("{recipe:<8} {cloth:?} {width} nap {nap}: {}", told.join(" "));
    let (mut longest, mut fall) = (0.0_f64, 0.0_f64);
    for length in lengths {
        fall = fall.max(longest - length);
        longest = longest.max(length);
    }
    fall
}

#[test]
fn open_cloth_either_way() {
    for (recipe, width) in [("classic", 138.0), ("slim", 112.0)] {
        let fall = fall(recipe, width, Cloth::Open, false);
        assert!(fall <= 2.0, "{recipe} on {width}: {fall} cm less for a larger body");
    }
}

#[test]
fn open_cloth_with_nap() {
    for (recipe, width) in [("classic", 148.0), ("wide", 148.0)] {
        let fall = fall(recipe, width, Cloth::Open, true);
        assert!(fall <= 2.0, "{recipe} on {width}: {fall} cm less for a larger body");
    }
}

#[test]
fn folded_cloth() {
    for (recipe, width, nap) in [("classic", 68.0, false), ("jeans", 73.0, true), ("wide", 73.0, false)] {
        let fall = fall(recipe, width, Cloth::Folded, nap);
        assert!(fall <= 2.0, "{recipe} on {width}: {fall} cm less for a larger body");
    }
}
