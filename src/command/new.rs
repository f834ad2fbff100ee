//! `breeks new`: an empty measurement file that says how to take each measurement, and the guide that draws it.

use std::path::{Path, PathBuf};

use super::{
    Ending,
    input::unit,
    output::{Of, Replacing, Sheet, exists, write_all, write_new},
    print,
};
use crate::{mistake::Mistakes, order::blank, reading::measuring_guide, terms::Word, unit::Unit};

#[derive(clap::Args)]
pub(super) struct Arguments {
    /// The file to write; one that exists is left alone
    #[arg(required_unless_present = "guide")]
    file: Option<PathBuf>,
    /// The unit of the file: cm or inch
    #[arg(long, value_name = "UNIT", default_value = "cm", value_parser = unit)]
    units: Unit,
    /// Also write the measuring guide, as HTML and PDF: drawings with the way of the tape, and a table to fill in by
    /// hand; without FILE, the guide alone
    #[arg(long)]
    guide: bool,
    /// The folder for the guide, made where it is missing [default: the file's, or the current one]
    #[arg(long, value_name = "DIR", requires = "guide")]
    out: Option<PathBuf>,
    #[command(flatten)]
    replacing: Replacing,
}

pub(super) fn run(arguments: &Arguments) -> Result<Ending, Mistakes> {
    let mut text = String::new();
    // The guide is written first: a file that is there already must stop both.
    if let Some(file) = arguments.file.as_ref().filter(|file| file.symlink_metadata().is_ok()) {
        let unit = arguments.units.key();
        let remedy = format!(
            "to go on with it in another unit, write `units = \"{unit}\"` in it and look at its numbers"
        );
        return Err(exists(file).help(remedy).into());
    }
    if arguments.guide {
        let beside = arguments.file.as_ref().and_then(|file| file.parent()).map(Path::to_owned);
        let folder = arguments.out.clone().or(beside).unwrap_or_default();
        let guide = measuring_guide(arguments.units);
        let sheets = [
            Sheet { name: "measuring-guide.html".to_owned(), bytes: guide.to_html().into_bytes() },
            Sheet { name: "measuring-guide.pdf".to_owned(), bytes: guide.to_pdf()? },
        ];
        for path in write_all(&folder, &sheets, &[Of::Own("measuring guide")], &arguments.replacing)? {
            text.push_str(&format!("wrote {}\n", path.display()));
        }
    }
    if let Some(file) = &arguments.file {
        write_new(file, &blank(arguments.units))?;
        let path = file.display();
        text.push_str(&format!("wrote {path}\nFill it in, then: breeks check {path}\n"));
        text.push_str("The file stays on this machine; nothing is sent anywhere.\n");
    }
    print(&text)?;
    Ok(Ending::Done)
}
