//! `breeks toile --mirror`: the look in the mirror before the toile is sewn.

use super::{
    super::{output::write_again, print},
    Arguments, Ending,
    conversation::Talk,
};
use crate::{
    booklet::note,
    mistake::Mistakes,
    order::{Change, Order, edit},
    terms::{HowMuch, Shape, Word},
    toile::GLANCES,
    told::{cautions, mirror_asked, mirror_told},
};

/// Asks what was not answered, and tells what to watch.
pub(super) fn mirrored(
    arguments: &Arguments,
    order: &Order,
    at_a_terminal: bool,
) -> Result<Ending, Mistakes> {
    let mut answers: Vec<(Shape, HowMuch)> = arguments.shape.clone();
    if at_a_terminal || arguments.ask {
        let mut talk = Talk::new(false);
        for glance in &GLANCES {
            if answers.iter().all(|(of, _)| *of != glance.shape) {
                let answer = talk.glance(glance)?;
                answers.extend(answer.map(|much| (glance.shape, much)));
            }
        }
        answers.sort_by_key(|(shape, _)| *shape);
    }
    if answers.is_empty() {
        print(&mirror_asked())?;
        return Ok(Ending::Waits);
    }
    let mut text = mirror_told(&answers);
    if let (true, Some(path)) = (arguments.write, arguments.input.path()) {
        let change =
            |(shape, much): &(Shape, HowMuch)| Change::Text(format!("shape.{shape}"), much.key().to_owned());
        let changes: Vec<Change> = answers.iter().map(change).collect();
        let written = edit(&order.source, &changes)?;
        write_again(path, &order.source.text, &written)?;
        text.push_str(&format!("wrote {}\n", path.display()));
    } else if answers.iter().any(|(shape, much)| order.shape[*shape] != Some(*much)) {
        text.push_str(&note(
            "nothing is written without `--write`: with it, the file keeps this as `[shape]`",
        ));
    }
    text.push_str(&cautions());
    print(&text)?;
    Ok(Ending::Done)
}
