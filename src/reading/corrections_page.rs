//! The page on all corrections, in Markdown.

use std::fmt::Write;

use crate::{
    adjust::{Key, OneLeg},
    draft::Shape,
    terms::{Edge, Panel, Word},
    unit::{Unit, signed},
    voice::spoken,
};

/// A correction as the page shows it.
#[derive(Clone, Debug)]
pub struct Shown {
    /// The parameter.
    pub key: Key,
    /// Where its picture lies, as seen from the page.
    pub picture: String,
    /// How wide the page shows it, dots.
    pub dots: u32,
    /// What was set in the picture.
    pub words: String,
    /// The draft without it.
    pub before: Shape,
    /// The draft with it.
    pub after: Shape,
}

/// Every fit parameter with what it is for, how far it goes, what it moves, its hand method and its picture, region by
/// region.
pub fn corrections_page(all: &[Shown]) -> String {
    let mut out = String::new();
    // Writing to a string cannot fail.
    let _ = write_page(&mut out, all);
    out
}

fn write_page(out: &mut String, all: &[Shown]) -> std::fmt::Result {
    let mut region = "";
    for shown in all {
        let about = shown.key.about();
        if about.region != region {
            region = about.region;
            writeln!(out, "## {region}\n")?;
        }
        writeln!(out, "### {}: {}\n", shown.key, about.title)?;
        writeln!(out, "For {}.\n", about.purpose)?;
        let unit = about.unit.symbol();
        let range = |(least, most): (f64, f64)| format!("{} to {} {unit}", short(least), short(most));
        let default = if about.default == 0.0 {
            String::new()
        } else {
            format!(" Unless given: {} {unit}.", short(about.default))
        };
        writeln!(out, "- Usual: {}; hard limit: {}.{default}", range(about.usual), range(about.hard))?;
        writeln!(out, "- Moves: {}.", about.moves)?;
        writeln!(out, "- Stays: {}.", about.stays)?;
        writeln!(out, "- By hand: {}", about.hand_method)?;
        for (companion, why) in about.companions {
            writeln!(out, "- See also [{companion}](#{}): {why}.", anchor(*companion))?;
        }
        writeln!(out, "- {}", one_leg(about.one_leg))?;
        writeln!(
            out,
            "- In the picture: {}: {}.\n",
            shown.words,
            seams(&shown.before, &shown.after, Unit::Cm)
        )?;
        writeln!(out, "<img src=\"{}\" alt=\"{}\" width=\"{}\">\n", shown.picture, shown.words, shown.dots)?;
    }
    Ok(())
}

/// The anchor that a heading of the page gets: small letters, digits, `_` and `-`, blanks as `-`.
fn anchor(key: Key) -> String {
    let heading = format!("{}: {}", key, key.about().title);
    let kept = heading.chars().filter(|letter| letter.is_alphanumeric() || matches!(letter, ' ' | '-' | '_'));
    kept.map(|letter| if letter == ' ' { '-' } else { letter.to_ascii_lowercase() }).collect()
}

fn short(value: f64) -> String {
    format!("{value}").replace('-', "−")
}

fn one_leg(one_leg: OneLeg) -> &'static str {
    match one_leg {
        OneLeg::Free => "One leg alone may have it.",
        OneLeg::WithCare => {
            "One leg alone may have it while left and right crotch seams differ by 0.3 cm at most."
        }
        OneLeg::Never => "Both legs alike: centre seams are sewn left to right.",
        OneLeg::Only => "One side only.",
    }
}

/// The sewn edges that became longer or shorter, in `unit`.
pub(super) fn seams(was: &Shape, is: &Shape, unit: Unit) -> String {
    /// A smaller change is not seen on a tape, cm.
    const SEEN: f64 = 0.05;
    let mut changes = Vec::new();
    for panel in Panel::ALL {
        for edge in Edge::ALL {
            let by = is.panel(*panel).sewn_length(*edge) - was.panel(*panel).sewn_length(*edge);
            if by.abs() >= SEEN {
                changes.push(format!("{panel} {} {}", spoken(edge.key()), signed(unit.amount(by))));
            }
        }
    }
    if changes.is_empty() { "no sewn edge longer or shorter".to_owned() } else { changes.join(", ") }
}
