//! The measurement file a command works on.

use std::path::{Path, PathBuf};

use super::output::Of;
use crate::{
    mistake::{Mistake, Mistakes, Notice, Source},
    order::{self, Order},
    terms::Word,
    unit::Unit,
};

/// What every command that reads a measurement file takes.
#[derive(clap::Args)]
pub(super) struct Input {
    /// The measurement file
    file: Option<PathBuf>,
    /// A built-in body of the rowing club instead of a file: stroke, five or cox
    #[arg(long, value_name = "NAME")]
    demo: Option<String>,
    /// The recipe to draft by: a shipped name or a file
    #[arg(long, value_name = "NAME")]
    block: Option<String>,
    /// Set a key of the file for this run, by its dotted path, as in
    /// trousers.ease.hip=6; may be repeated
    #[arg(long = "set", value_name = "KEY=VALUE", allow_hyphen_values = true)]
    set: Vec<String>,
    /// The unit of printed lengths: cm or inch
    #[arg(long, value_name = "UNIT", value_parser = unit)]
    units: Option<Unit>,
}

/// The unit that an option names.
pub(super) fn unit(text: &str) -> Result<Unit, String> {
    Unit::from_key(text).ok_or_else(|| "expected cm or inch".to_owned())
}

/// The text of the demo of this name.
pub(super) fn named(name: &str) -> Result<Source, Mistakes> {
    order::demo(name).ok_or_else(|| {
        Mistake::new(format!("there is no demo `{name}`"))
            .nearest(name, order::DEMOS.iter().copied())
            .help(format!("the demos are {}", order::DEMOS.join(", ")))
            .into()
    })
}

impl Input {
    /// Reads the file or demo with what `--set` and `--block` change.
    pub(super) fn read(&self) -> Result<(Order, Vec<Notice>), Mistakes> {
        let source = self.source()?;
        let (mut order, notices) = Order::read_with(&source, &self.set)?;
        if let Some(block) = &self.block {
            order.trousers.block.clone_from(block);
        }
        Ok((order, notices))
    }

    /// Whether options change what the file says.
    pub(super) fn is_changed(&self) -> bool {
        !self.set.is_empty() || self.block.is_some()
    }

    /// The file or demo, as that of which other files are made.
    pub(super) fn of(&self) -> Of<'_> {
        match (&self.file, &self.demo) {
            (Some(path), _) => Of::File(path),
            (None, name) => Of::Own(name.as_deref().unwrap_or_default()),
        }
    }

    /// The file that was named.
    pub(super) fn path(&self) -> Option<&Path> {
        self.file.as_deref()
    }

    /// The text of the file or the demo.
    pub(super) fn source(&self) -> Result<Source, Mistakes> {
        match (&self.demo, &self.file) {
            (Some(_), Some(_)) => Err(Mistake::new("expected a measurement file or `--demo`, found both")
                .help("leave one of them out")
                .into()),
            (Some(name), None) => named(name),
            (None, Some(path)) => Source::read(path).map_err(Mistakes::from),
            (None, None) => Err(Mistake::new("expected a measurement file, found none")
                .help("name one, or try the program with `--demo stroke`")
                .into()),
        }
    }

    /// The unit in which to print: asked for, or the file's.
    pub(super) fn unit(&self, order: &Order) -> Unit {
        self.units.unwrap_or(order.units)
    }
}
