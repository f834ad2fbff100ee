//! A graded run: a larger body needs no less cloth.

use breeks::pattern::{Cloth, Lay};

use crate::bodies::{SIZES, pieces};

/// By how much less cloth a larger body was ever given than a smaller one, cm.
fn fall(recipe: &str, cloth: &Cloth) -> f64 {
    let lengths: Vec<f64> =
        (0..SIZES).map(|size| Lay::of(&pieces(recipe, size), cloth).unwrap().length).collect();
    let told: Vec<String> = lengths.iter().map(|length| format!("{length:.0}")).collect();
    println!("{recipe:<8} {} folded {} nap {}: {}", cloth.width, cloth.folded, cloth.nap, told.join(" "));
    let (mut longest, mut fall) = (0.0_f64, 0.0_f64);
    for length in lengths {
        fall = fall.max(longest - length);
        longest = longest.max(length);
    }
    fall
}

#[test]
fn single_cloth_steady() {
    let fall = fall("classic", &Cloth::new(140.0));
    assert!(fall <= 2.0, "{fall} cm less for a larger body");
}

#[test]
fn cloth_with_nap_steady() {
    let fall = fall("slim", &Cloth { nap: true, ..Cloth::new(150.0) });
    assert!(fall <= 2.0, "{fall} cm less for a larger body");
}

#[test]
fn doubled_cloth_steady() {
    for (recipe, nap) in [("jeans", false), ("classic", true)] {
        let fall = fall(recipe, &Cloth { folded: true, nap, ..Cloth::new(150.0) });
        assert!(fall <= 2.0, "{recipe}: {fall} cm less for a larger body");
    }
}
