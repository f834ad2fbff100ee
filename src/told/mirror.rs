//! The look in the mirror as a terminal shows it.

use crate::booklet::headed;
use crate::{
    terms::{HowMuch, Shape, Word},
    toile::GLANCES,
};

/// The questions with the options that answer them.
pub fn mirror_asked() -> String {
    let mut out = String::from("Four looks in a mirror, in underwear, standing as usual:\n");
    for (at, glance) in GLANCES.iter().enumerate() {
        out.push_str(&headed(&format!("question {}: ", at + 1), glance.ask));
        for (much, looks) in glance.answers() {
            out.push_str(&headed("    ", &format!("--shape {}={}: {looks}", glance.shape, much)));
        }
    }
    out
}

/// What the answers say to watch on the toile.
pub fn mirror_told(answers: &[(Shape, HowMuch)]) -> String {
    let mut out = String::new();
    for (shape, much) in answers {
        let name = shape.key().replace('_', " ");
        let watch =
            GLANCES.iter().find(|glance| glance.shape == *shape).and_then(|glance| glance.watch(*much));
        let watch = watch.map_or_else(
            || "nothing to watch for beyond what any toile shows".to_owned(),
            |watch| format!("watch for {watch}"),
        );
        out.push_str(&headed(&format!("{name}, {much}: "), &watch));
    }
    out.push_str(&headed(
        "",
        "A mirror tells where to look, not how much: no amount follows from it. Sew the toile.",
    ));
    out
}
