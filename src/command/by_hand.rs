//! The strips of what the hand does to come from one draft to another, as files.

use super::output::{Sheet, file_stem};
use crate::{
    draft::Draft, drawing::SvgScale, mistake::Mistakes, paper::strips_between, terms::Word, unit::Unit,
};

/// A strip for every fit parameter that changed; `None` where more than these changed.
pub(super) fn hand_strips(
    stem: &str,
    old: &Draft,
    new: &Draft,
    unit: Unit,
) -> Result<Option<Vec<Sheet>>, Mistakes> {
    let Some(strips) = strips_between(old, new, unit) else { return Ok(None) };
    let mut sheets = Vec::new();
    for (key, strip) in strips {
        let name = format!("{stem}-by-hand-{}", file_stem(key.key()));
        let svg = strip.to_svg(SvgScale::TrueScale).into_bytes();
        sheets.push(Sheet { name: format!("{name}.svg"), bytes: svg });
        sheets.push(Sheet { name: format!("{name}.pdf"), bytes: strip.to_pdf()? });
    }
    Ok(Some(sheets))
}
