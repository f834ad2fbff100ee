//! Pictures: the next change over what was sewn, and the record as a story.

use std::path::PathBuf;

use super::{
    super::{
        Ending,
        by_hand::hand_strips,
        output::{Sheet, file_stem, write_all},
        print,
    },
    Arguments,
};
use crate::{
    booklet::note,
    drawing::SvgScale,
    fit::{Leg, Overlaid},
    making::{Made, make},
    mistake::{Mistake, Mistakes, Notice},
    order::Order,
    paper::overlay,
    pattern::Wanted,
    terms::{Anchor, Side},
    toile::{HELD, Judgement, parameter},
    told::{cautions, fitting_did, fitting_told},
    unit::Unit,
};

/// Where pictures of a history go when no folder is named.
const OUT: &str = "drafts";
/// The draft with the change over the draft as it was sewn.
pub(super) fn next_picture(judgement: &Judgement, unit: Unit) -> Result<Vec<Sheet>, Mistakes> {
    let Some(effect) = judgement.advice.as_ref().and_then(|advice| advice.effect.as_ref()) else {
        return Ok(Vec::new());
    };
    let stem = format!("{}-next-change", stem(&effect.after));
    let mut sheets =
        pictures(&stem, &effect.before, &effect.after, ["as sewn", "with the next change"], unit)?;
    sheets.extend(hand_strips(&stem, &effect.before.draft, &effect.after.draft, unit)?.unwrap_or_default());
    Ok(sheets)
}

fn stem(leg: &Leg) -> String {
    format!("{}-{}", file_stem(&leg.draft.name), file_stem(&leg.draft.recipe.name))
}

fn pictures(stem: &str, old: &Leg, new: &Leg, said: [&str; 2], unit: Unit) -> Result<Vec<Sheet>, Mistakes> {
    let old = Overlaid { said: said[0], draft: &old.draft, report: &old.report };
    let new = Overlaid { said: said[1], draft: &new.draft, report: &new.report };
    let picture = overlay(&old, &new, Anchor::Crotch, unit);
    Ok(vec![
        Sheet { name: format!("{stem}.svg"), bytes: picture.to_svg(SvgScale::TrueScale).into_bytes() },
        Sheet { name: format!("{stem}.pdf"), bytes: picture.to_pdf()? },
    ])
}

/// The story of the record, with a picture of what each fitting changed.
pub(super) fn history(arguments: &Arguments, order: &Order, unit: Unit) -> Result<Ending, Mistakes> {
    if order.fittings.is_empty() {
        return Err(Mistake::new("the file has no record of toiles")
            .help("a fitting is written into it with `--write`")
            .into());
    }
    let mut text = String::new();
    let mut sheets = Vec::new();
    let mut notices: Vec<Notice> = Vec::new();
    let mut before = drafted_state(before_all(order)?.0)?;
    for (at, fitting) in order.fittings.iter().enumerate() {
        let number = at + 1;
        let (state, said) = order.after_fitting(number)?;
        notices.extend(said.into_iter().filter(|it| !notices.contains(it)).collect::<Vec<_>>());
        let after = drafted_state(state)?;
        text.push_str(&fitting_told(number, fitting, unit));
        for side in after.sides_beside(&before) {
            let (old, new) = (before.legs.of(*side), after.legs.of(*side));
            // what a fit had found was sewn before it was written down
            let was_sewn = fitting.note.as_deref() == Some(HELD);
            if was_sewn || old.draft.shape == new.draft.shape {
                continue;
            }
            text.push_str(&fitting_did(&old.report, &new.report, *side, unit));
            let leg = if *side == Side::Both { String::new() } else { format!("-{side}") };
            let name = format!("{}-fitting-{number}{leg}", stem(new));
            let said = [format!("before fitting {number}"), format!("after fitting {number}")];
            sheets.extend(pictures(&name, old, new, [&said[0], &said[1]], unit)?);
        }
        before = after;
    }
    for notice in &notices {
        text.push_str(&note(&notice.text(unit)));
    }
    let folder = arguments.out.clone().unwrap_or_else(|| PathBuf::from(OUT));
    if !sheets.is_empty() {
        for path in write_all(&folder, &sheets, &[arguments.input.of()], &arguments.replacing)? {
            text.push_str(&format!("wrote {}\n", path.display()));
        }
    }
    text.push_str(&cautions());
    print(&text)?;
    Ok(Ending::Done)
}

/// The order before its first toile: without what the record changed.
fn before_all(order: &Order) -> Result<(Order, Vec<Notice>), Mistakes> {
    let (mut first, notices) = order.after_fitting(1)?;
    for (path, _) in order.fittings.first().iter().flat_map(|fitting| &fitting.changed) {
        let Some((side, key)) = parameter(path) else { continue };
        let list = match side {
            Side::Both => Some(&mut first.adjustments),
            Side::Left => first.left.as_mut().map(|leg| &mut leg.adjustments),
            Side::Right => first.right.as_mut().map(|leg| &mut leg.adjustments),
        };
        if let Some(list) = list {
            list.retain(|it| it.key != key);
        }
    }
    Ok((first, notices))
}

fn drafted_state(order: Order) -> Result<Made, Mistakes> {
    make(order, Vec::new(), &Wanted::default())
}
