//! Plain words and the signs they mean.

use breeks::toile::read;

fn signs(said: &str) -> Vec<String> {
    read(said).seen.iter().map(|seen| seen.sign.plain()).collect()
}

#[test]
fn parts_of_a_sentence_as_signs() {
    for (said, plain) in [
        (
            "tight horizontal lines across the front of the thigh",
            vec!["front of the thigh, tight, lines across"],
        ),
        (
            "tight across the seat and the side pockets gape",
            vec!["seat, tight, lines across", "outside of the hip, stands off or opens"],
        ),
        ("loose folds under the seat, worse when sitting", vec!["under the seat, loose, sitting"]),
        (
            "diagonal wrinkles from the crotch to the knee at the back",
            vec!["back of the crotch, slanting lines, towards the knee"],
        ),
        ("the back hangs clean", vec!["back, nothing wrong"]),
        ("on the left hip only", vec!["hip, on one side"]),
    ] {
        assert_eq!(signs(said), plain, "{said}");
    }
}
