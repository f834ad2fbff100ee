//! The options by which the pieces of a draft are printed, and their files.

use super::output::{Counted, Sheet, file_stem};
use crate::{
    drawing::{Paper, SvgScale},
    mistake::{Mistake, Mistakes},
    paper::{exchange_file, on_roll, on_sheets, pattern_sheet, projected, side_by_side},
    pattern::Pattern,
    terms::Word,
    told::Subject,
    unit::{Unit, parse_length},
    voice::{Sentence, Value, lengths, named},
};

/// What every command that prints pieces takes.
#[derive(clap::Args)]
pub(super) struct Printing {
    /// Print the pieces on sheets of this paper, to glue: a4, letter, a4_letter (prints on either), a3, tabloid, a0; may
    /// be repeated
    #[arg(long, value_name = "PAPER", value_parser = paper, default_value = "a4_letter")]
    paper: Vec<Paper>,
    /// Print the pieces on a roll of paper so wide, as one long page; may be repeated
    #[arg(long, value_name = "LENGTH")]
    roll: Vec<String>,
    /// Also write the pieces as one page for a projector: strong lines over a grid of 10 cm
    #[arg(long)]
    projector: bool,
    /// Also write a picture of all pieces as PNG, to look at
    #[arg(long)]
    png: bool,
    /// Also write the pieces as DXF, in the layers of ASTM D6673, for a cutter or another program
    #[arg(long)]
    dxf: bool,
}

/// No roll is narrower or wider, cm.
const ROLL: std::ops::RangeInclusive<f64> = 30.0..=200.0;

/// Dots a centimetre of the picture: enough to read the words.
const PNG_DOTS: f64 = 25.0;

impl Printing {
    /// The widths of the rolls that were named, cm.
    ///
    /// # Errors
    /// When one is no length, or none that a roll has.
    pub(super) fn rolls(&self, unit: Unit) -> Result<Vec<f64>, Mistakes> {
        let read = |text: &String| {
            let wrong = |found: Value| {
                let title =
                    Sentence::new("`--roll {text}`: {found}").with("text", named(text)).with("found", found);
                Mistake::new(title).in_unit(unit)
            };
            let cm = parse_length(text, unit).map_err(|expected| wrong(named(expected)))?;
            if ROLL.contains(&cm) {
                return Ok(cm);
            }
            let rolls = lengths((*ROLL.start(), *ROLL.end()));
            Err(wrong(Sentence::new("expected {rolls}").with("rolls", rolls).into()))
        };
        self.roll.iter().map(read).collect::<Result<_, Mistake>>().map_err(Mistakes::from)
    }

    /// The pieces as files, with how much paper each takes.
    ///
    /// # Errors
    /// When a piece does not fit on the paper.
    pub(super) fn files(
        &self,
        subjects: &[Subject<'_>],
        pattern: &Pattern,
        rolls: &[f64],
        stem: &str,
        unit: Unit,
    ) -> Result<Vec<Counted>, Mistakes> {
        let file = |name: String, bytes: Vec<u8>| Sheet { name, bytes };
        let row = side_by_side(pattern);
        let whole = pattern_sheet(subjects, &row, true).to_svg(SvgScale::TrueScale).into_bytes();
        let mut files = vec![(file(format!("{stem}-pieces.svg"), whole), None)];
        for paper in &self.paper {
            let printed = on_sheets(subjects, pattern, *paper)?;
            let count = match (printed.sheets, printed.has_first_page) {
                (1, false) => "one sheet".to_owned(),
                (sheets, _) => format!("{sheets} sheets and a first page"),
            };
            files.push((file(format!("{stem}-{}.pdf", file_stem(paper.key())), printed.pdf), Some(count)));
        }
        for roll in rolls {
            let printed = on_roll(subjects, pattern, *roll)?;
            let count = format!("{} of a roll of {}", unit.length(printed.length), unit.length(*roll));
            let wide = format!("{roll:.1}");
            let wide = file_stem(wide.trim_end_matches(".0"));
            files.push((file(format!("{stem}-roll-{wide}.pdf"), printed.pdf), Some(count)));
        }
        if self.projector {
            let bytes = projected(pattern_sheet(subjects, &row, false)).to_pdf()?;
            files.push((file(format!("{stem}-projector.pdf"), bytes), None));
        }
        if self.png {
            let bytes = pattern_sheet(subjects, &row, true).to_png(PNG_DOTS)?;
            files.push((file(format!("{stem}-pieces.png"), bytes), None));
        }
        if self.dxf {
            let bytes = subjects.first().map(|subject| exchange_file(subject.draft, &pattern.pieces, unit));
            files.push((file(format!("{stem}.dxf"), bytes.unwrap_or_default().into_bytes()), None));
        }
        Ok(files)
    }
}

fn paper(text: &str) -> Result<Paper, String> {
    Paper::from_key(text).ok_or_else(|| format!("expected one of {}", Paper::KEYS.join(", ")))
}
