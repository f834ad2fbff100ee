//! `breeks fit`: the parameters that meet what was measured.

use super::{Ending, input::Input, output::write_again, print};
use crate::{
    adjust::Key,
    booklet::headed,
    making::{Made, make},
    mistake::{Mistake, Mistakes},
    order::{Change, Fitting, edit, found_value, record, today},
    pattern::Wanted,
    terms::{FitKind, Side, Word},
    told::{cautions, fit_story},
};

#[derive(clap::Args)]
pub(super) struct Arguments {
    #[command(flatten)]
    input: Input,
    /// Leave the fit parameters of the file out and find all of them again
    #[arg(long)]
    afresh: bool,
    /// Let the fit parameters of the file stand first and find the rest round
    /// them; without this they are laid on top of what was found
    #[arg(long, conflicts_with = "afresh")]
    around: bool,
    /// Tell of every correction what it is for, what it moves, what it leaves
    /// alone, and how it is done by hand
    #[arg(long)]
    why: bool,
    /// Write what was found into the measurement file, comments and order
    /// kept, and a fitting into its record
    #[arg(long)]
    write: bool,
}

pub(super) fn run(arguments: &Arguments) -> Result<Ending, Mistakes> {
    let path = arguments.input.path();
    if arguments.write && path.is_none() {
        return Err(Mistake::new("`--write` needs a measurement file")
            .help("a demo is not written to")
            .into());
    }
    let (mut order, notices) = arguments.input.read()?;
    let old: Vec<&str> = order.adjustments.iter().map(|it| it.key.key()).collect();
    if arguments.afresh {
        order.adjustments.clear();
    }
    order.around = arguments.around;
    let holds = order.trousers.fit == Some(FitKind::Held) && !arguments.afresh && !arguments.around;
    let unit = arguments.input.unit(&order);
    let mut plain = order.clone();
    plain.trousers.fit = Some(FitKind::Proportional);
    if !holds {
        order.trousers.fit = Some(FitKind::Measured);
    }
    let before = make(plain, Vec::new(), &Wanted::default())?;
    let after = make(order, notices, &Wanted::default())?;

    let mut text = String::new();
    for side in after.sides_beside(&before) {
        let (was, is) = (before.legs.of(*side), after.legs.of(*side));
        match side {
            Side::Both => {}
            Side::Left => text.push_str("Left leg\n"),
            Side::Right => text.push_str("\nRight leg\n"),
        }
        text.push_str(&fit_story(&was.report, &is.draft, &is.report, unit, arguments.why));
    }
    for notice in after.notices() {
        text.push_str(&crate::booklet::note(&notice.text(unit)));
    }
    text.push_str(&headed("", after.verdict().said()));
    if let (true, Some(path)) = (arguments.write, path) {
        let removed = if arguments.afresh { old } else { Vec::new() };
        match with_fit(&after.order.source, &after, &removed)? {
            Some(written) => {
                write_again(path, &after.order.source.text, &written)?;
                text.push_str(&format!("wrote {}\n", path.display()));
            }
            None => text.push_str(&format!("nothing to write: {} stays as it is\n", path.display())),
        }
    }
    text.push_str(&cautions());
    print(&text)?;
    Ok(after.verdict().into())
}

/// The text of the file with what was found, and a fitting in its record; `None` where nothing was found and nothing
/// goes.
fn with_fit(
    source: &crate::mistake::Source,
    made: &Made,
    removed: &[&str],
) -> Result<Option<String>, Mistakes> {
    let changed: Vec<(String, f64)> = made
        .legs
        .found()
        .into_iter()
        .map(|(side, it)| {
            let path = it.path(side);
            let value = found_value(&path, it.value, made.order.units);
            (path, value)
        })
        .filter(|(_, value)| *value != 0.0)
        .collect();
    if changed.is_empty() && removed.is_empty() {
        return Ok(None);
    }
    let kept = |key: &&&str| !changed.iter().any(|(path, _)| path == **key);
    let mut changes: Vec<Change> =
        removed.iter().filter(kept).map(|key| Change::Remove((*key).into())).collect();
    changes.extend(changed.iter().map(|(path, value)| Change::Number(path.clone(), *value)));
    changes.push(Change::Text("trousers.fit".to_owned(), FitKind::Held.key().to_owned()));
    let text = edit(source, &changes)?;
    // What was taken out is written down too, so that the record tells how the file stood after each toile.
    let gone = removed.iter().filter(|key| !changed.iter().any(|(path, _)| path == **key));
    let gone = gone.filter_map(|key| Some(((*key).to_owned(), Key::from_key(key)?.about().default)));
    let changed: Vec<(String, f64)> = gone.chain(changed.iter().cloned()).collect();
    let fitting = Fitting {
        date: Some(today()),
        block: Some(made.order.trousers.block.clone()),
        changed,
        note: Some("fitted to the measurements".to_owned()),
        ..Fitting::default()
    };
    record(&crate::mistake::Source::new(source.name.clone(), text), &fitting).map(Some)
}
