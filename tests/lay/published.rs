//! Lengths of cloth against what is printed for people who buy it.
//!
//! Equal amounts by width: the chart that sewing teachers hand out, here as copied in a public question-and-answer
//! thread (greenspun.com, message 008fgB, read 2026-11-25); by our memory it goes back to the extension service of New
//! Jersey. Full-length trousers: 2 5/8 yards of 50-inch cloth, in a table of amounts by garment on nofly90.com, read the
//! same day, which names no source of its own. Both are generous round numbers: a line to be near, not to meet.

use breeks::pattern::{Cloth, Lay};

use crate::bodies::pieces;

const CM_PER_YARD: f64 = 91.44;
const CM_PER_INCH: f64 = 2.54;

/// Yards of 44 to 45, 52 to 54 and 58 to 60 inch cloth that serve alike.
const ALIKE: [[f64; 3]; 6] = [
    [1.375, 1.125, 1.0],
    [1.625, 1.375, 1.25],
    [1.75, 1.5, 1.375],
    [2.125, 1.75, 1.625],
    [2.25, 1.875, 1.75],
    [2.5, 2.0, 1.875],
];

fn yards(recipe: &str, size: usize, inches: f64) -> f64 {
    Lay::of(&pieces(recipe, size), &Cloth::new(inches * CM_PER_INCH)).unwrap().length / CM_PER_YARD
}

#[test]
fn amounts_by_width_as_the_chart_has_them() {
    // Sizes whose four legs lie side by side on the widest cloth.
    for (recipe, size) in [("classic", 5), ("slim", 8), ("straight", 4)] {
        let [narrow, middle, wide] = [45.0, 54.0, 60.0].map(|inches| yards(recipe, size, inches));
        println!("{recipe} {size}: {narrow:.2}, {middle:.2}, {wide:.2} yards");
        let row = ALIKE.iter().min_by(|a, b| (a[2] - wide).abs().total_cmp(&(b[2] - wide).abs())).unwrap();
        // An eighth of a yard is how the chart is rounded; a leg is longer than most pieces, and narrow cloth carries
        // two rows of them where it carried one.
        assert!((middle - row[1]).abs() <= 0.375, "{recipe}: {middle} yards, the chart {}", row[1]);
        assert!((narrow - row[0]).abs() <= 0.375, "{recipe}: {narrow} yards, the chart {}", row[0]);
    }
}

#[test]
fn no_more_than_a_table_gives_for_trousers() {
    for (recipe, size) in [("classic", 5), ("wide", 8), ("jeans", 10)] {
        let found = yards(recipe, size, 50.0);
        println!("{recipe} {size}: {found:.2} yards of 50-inch cloth");
        assert!((1.2..=2.625).contains(&found), "{recipe}: {found}");
    }
}
