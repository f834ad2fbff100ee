//! Recipes side by side.

use super::features::{Feature, features};
use crate::{
    booklet::{Block, Column, Table, plain},
    recipe::Recipe,
    unit::Unit,
    voice::named,
};

/// Two recipes side by side, only what differs, structure first.
pub fn comparison(one: &Recipe, other: &Recipe) -> String {
    let pairs: Vec<(Feature, Feature)> = features(one).into_iter().zip(features(other)).collect();
    let (differ, alike): (Vec<_>, Vec<_>) = pairs.iter().partition(|(a, b)| a.rule != b.rule);
    let table = |structural: bool, caption: &str| {
        let columns = ["", &one.name, &other.name].map(|name| Column::words(name, 1.0)).to_vec();
        let mut table = Table::new(caption, columns);
        for (a, b) in differ.iter().filter(|(a, _)| a.structural == structural) {
            table.row([&a.name, &a.rule, &b.rule].map(named));
        }
        Block::Table(table)
    };
    let mut blocks = vec![
        Block::led(&format!("{}:", one.name), &one.title),
        Block::led(&format!("{}:", other.name), &other.title),
        table(true, "Rules that differ"),
        table(false, "Ease and style that differ, cm"),
    ];
    if !alike.is_empty() {
        let names: Vec<&str> = alike.iter().map(|(feature, _)| feature.name.as_str()).collect();
        blocks.push(Block::led("Alike:", &names.join(", ")));
    }
    plain(&blocks, Unit::Cm)
}
