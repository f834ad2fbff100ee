//! The empty measurement file, with how to take each measurement.

use super::measuring::{BEFORE, CAUTIONS, GROUPS, WAIST_LEVELS};
use crate::mistake::wrapped;
use crate::unit::Unit;
use crate::voice::rule_of_thumb;

const HEAD: &str = "\
# A measurement file. Lines that begin with # are notes and are not read.
#
# Fill in what you measured between the quotation marks, or write a plain number
# in their place. Take away the # before a measurement you have; leave the rest.
#
#   breeks check FILE     looks the measurements over
#   breeks draft FILE     drafts the trousers
#   breeks new --guide    draws where the tape goes
#
";

const TROUSERS: &str = r#"
[trousers]
block = "classic"      # `breeks blocks` shows them all; or the path of your own
# fit = "measured"     # measured | held | proportional
# set = "clean"        # clean: smooth standing | easy: sits easily
# cloth_stretch = 0    # how far the cloth can be stretched across, per cent
# [trousers.ease]      # waist hip thigh knee calf crotch_depth crotch_length
# [trousers.style]     # knee_width hem_width (flat) length waist_drop
# [trousers.allowance] # waist side_seam inseam crotch_seam hem and others

# Corrections after a toile stand below, by region, each an amount on the paper:
# [thigh]
# front = ...          # `breeks toile` names the one that a fault asks for
# [left.measurements]  # what is different on one leg: girths and lengths of it
# [left.thigh]         # and its own corrections
"#;

/// The text of a new measurement file in this unit: which measurements to take, and how.
pub fn blank(unit: Unit) -> String {
    let (key, lengths) = match unit {
        Unit::Cm => ("cm", "of plain numbers; a value may say its own unit"),
        Unit::Inch => ("inch", "31.5 or \"31 1/2\"; a value may say its own unit"),
    };
    let mut text = HEAD.to_owned();
    text.push_str(&format!(
        "# Before you measure\n{}\n#\n# Cautions\n",
        commented(&rule_of_thumb(&BEFORE.join(" "), unit), "#   ", "#   ")
    ));
    for caution in CAUTIONS {
        text.push_str(&format!("{}\n", commented(caution, "#   ", "#   ")));
    }
    text.push_str(&format!(
        r#"
# name = ""            # a label for the pattern: a nickname, a boat place
# sex = "unsaid"       # female | male | unsaid: whose averages fill the gaps
{units:<23}# {lengths}

# Where the waist is, and so everything measured from it:
{levels}waist_level = "natural"

[measurements]
"#,
        units = format!("units = \"{key}\""),
        levels = WAIST_LEVELS
            .map(|(level, words)| commented(words, &format!("#   {level:<8} "), "#            ") + "\n")
            .concat(),
    ));
    for (index, (purpose, measurements)) in GROUPS.into_iter().enumerate() {
        text.push_str(&format!("\n{}\n", commented(&rule_of_thumb(purpose, unit), "# == ", "#    ")));
        for &measurement in measurements {
            let about = measurement.about();
            text.push_str(&format!("\n{}\n", commented(&rule_of_thumb(about.how, unit), "#   ", "#   ")));
            let mark = if index == 0 { "" } else { "# " };
            text.push_str(&format!("{mark}{measurement} = \"\"\n"));
        }
    }
    text.push_str(TROUSERS);
    text
}

/// A sentence as lines of comment that an 80-column screen holds.
fn commented(text: &str, first: &str, next: &str) -> String {
    let lines = wrapped(text, 80 - first.len().max(next.len()));
    format!("{first}{}", lines.replace('\n', &format!("\n{next}")))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::mistake::Source;
    use crate::order::Order;
    use crate::terms::{Measurement, Word};

    #[test]
    fn every_measurement_once() {
        let mut named: Vec<Measurement> = GROUPS.into_iter().flat_map(|(_, group)| group).copied().collect();
        named.sort();
        assert_eq!(named, Measurement::ALL);
    }

    #[test]
    fn no_line_beyond_80_columns() {
        for unit in [Unit::Cm, Unit::Inch] {
            for line in blank(unit).lines() {
                assert!(line.chars().count() <= 80, "{line}");
            }
        }
    }

    #[test]
    fn empty_file_asks_for_the_three_that_are_needed() {
        let mistakes = Order::read(&Source::new("new.toml", blank(Unit::Cm))).unwrap_err();
        assert_eq!(mistakes.iter().len(), 3, "{mistakes}");
    }

    #[test]
    fn filled_file_readable_with_every_measurement() {
        let mut text = blank(Unit::Inch);
        for m in Measurement::ALL {
            let (least, most) = m.about().range;
            let commented = format!("# {m} = \"\"");
            let value = format!("{m} = {:.1}", 0.5 * (least + most) / 2.54);
            text = text.replace(&commented, &value).replace(&format!("\n{m} = \"\""), &format!("\n{value}"));
        }
        let mistakes = Order::read(&Source::new("new.toml", text)).err();
        // the middle of every range is no body; but every line was read
        for mistake in mistakes.iter().flat_map(|all| all.iter()) {
            assert!(
                !mistake.title().contains("unknown") && !mistake.title().contains("missing"),
                "{mistake}"
            );
        }
    }
}
