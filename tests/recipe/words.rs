//! What a record of the draft says of each step.

use std::fmt::Write;

use super::{body, carry_out, snapshot, sound_with};

#[test]
fn every_rule_in_the_words_of_the_trade() {
    let recipe = sound_with(
        r#"
        { quantity = "guide", by = "hip", rungs = [[88, 3], [104, 3.25]], between = "ramp" },
        { quantity = "gain", by = "hip", rungs = [[88, 1.3], [104, 1.5]], between = "step" },
        { quantity = "mixed", is = "1 1/2 extension - 0.5 - hip_ease" },
        { point = "p1", from = "corner", fork_up = "guide" },
        { point = "p2", from = "corner", side = 1, up = "1/24 hip" },
        { point = "p3", from = "corner", fork = 1, down = 0.5 },
        { point = "p4", from = "corner", up = 2 },
        { point = "p5", from = "corner", down = "gain" },
        { point = "p6", from = "corner", toward = "fork", part = "1/3" },
        { point = "p7", from = "corner", toward = "fork", part = "3/2" },
        { point = "p8", from = "corner", toward = "fork", part = 2 },
        { point = "p9", from = "corner", toward = "fork", part = -0.25 },
        { point = "p10", from = "corner", toward = "fork", past = "1/18 hip" },
        { point = "p11", from = "corner", toward = "fork", part = "2/5" },
        { point = "p12", from = "waist", span = "1/4 hip", on = "hip_line", say = "lay the tape across" },
        "#,
    );
    let (made, mut words) = (carry_out(&recipe), String::new());
    for step in &recipe.steps {
        let entry = step.entry();
        let value = step.value(&body(), &made).map(|value| format!(" = {value:.2}")).unwrap_or_default();
        writeln!(words, "{} {}: {}\n    {}{value}", entry.panel, entry.number, entry.title, entry.rule)
            .expect("text");
    }
    snapshot("recipe_words", &words);
}
