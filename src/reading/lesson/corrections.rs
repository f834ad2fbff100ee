//! The fit parameters in force, one after the other: what each moves here, and how the same is done by hand.

use super::{Class, sums::fine_length};
use crate::{
    adjust::{Key, Measure, Parameters},
    booklet::{Block, Booklet, Column, Table},
    draft::{PanelShape, Shape, shape},
    order::Giver,
    paper::correction::correction_within,
    reading::corrections_page::seams,
    terms::{Edge, Panel, Role, Word},
    told::tables::called,
    unit::decimal,
    voice::{amount, capital, named, rule_of_thumb, sentence},
};

/// The panels of a correction's picture are no wider and no higher, cm.
const LARGEST: (f64, f64) = (6.0, 7.5);

impl Class<'_> {
    /// The chapter on the fit parameters; nothing where there are none.
    pub(super) fn corrections(&self) -> Vec<Block> {
        let draft = self.draft();
        if draft.parameters.set().next().is_none() {
            return Vec::new();
        }
        let mut blocks = vec![
            Block::chapter("Fit corrections"),
            Block::plain(
                "The plain block is drafted. Now it is given what this body asks for, one correction after \
                 the other; after each the back follows and all is trued again, as above. On paper each is \
                 a cut, a turn and a redrawn line: the hand method stands beside it.",
            ),
        ];
        let mut so_far = Parameters::default();
        let mut was = shape(&draft.plan, &so_far);
        let mut slight = Vec::new();
        for (key, value) in draft.parameters.set() {
            so_far = so_far.with(key, value);
            let is = shape(&draft.plan, &so_far);
            let moves = self.moves(key, &was, &is);
            if is_slight(&was, &is) {
                slight.push((key, value, moves));
            } else {
                blocks.push(self.correction(key, value, &was, &is));
                if !moves.rows.is_empty() {
                    blocks.push(Block::Table(moves));
                }
            }
            was = is;
        }
        blocks.extend(self.too_small_to_see(slight));
        blocks
    }

    /// Corrections that a pencil cannot show, by one line each.
    fn too_small_to_see(&self, slight: Vec<(Key, f64, Table)>) -> Vec<Block> {
        if slight.is_empty() {
            return Vec::new();
        }
        let mut amounts = Table::new(
            "Corrections that a pencil line hides",
            vec![
                Column::words("parameter", 2.2),
                Column::numbers("amount", 1.2),
                Column::words("by hand", 6.0),
            ],
        );
        let mut blocks = Vec::new();
        for (key, value, moves) in slight {
            let about = key.about();
            amounts.row([
                named(format!("{}, {key}", about.title)),
                about.unit.amount(value),
                about.hand_method.into(),
            ]);
            if !moves.rows.is_empty() {
                blocks.push(Block::Table(moves));
            }
        }
        let words = "These move nothing by a millimetre. They are part of the draft all the same: together \
                     they meet what was measured.";
        [Block::section("Slight corrections"), Block::plain(words), Block::Table(amounts)]
            .into_iter()
            .chain(blocks)
            .collect()
    }

    fn amount(&self, key: Key, value: f64) -> String {
        match key.about().unit {
            Measure::Cm => fine_length(value, self.unit()),
            Measure::Degrees => format!("{}°", decimal(value, 2)),
        }
    }

    fn correction(&self, key: Key, value: f64, was: &Shape, is: &Shape) -> Block {
        let about = key.about();
        let amount = self.amount(key, value);
        let from = self.draft().adjustments.iter().find(|it| it.key == key).map_or("", |it| match it.from {
            Giver::Fit => ", found by meeting the measurements",
            Giver::Measured => ", as measured",
            Giver::File | Giver::Set => ", as the file says",
        });
        let said = |words: &'static str| sentence(&rule_of_thumb(words, self.unit()));
        let words = vec![
            Block::section(&format!("{}: {amount}", capital(about.title))),
            Block::remark(&format!("Parameter {key} = {amount}{from}.")),
            Block::led("For.", &said(about.purpose)),
            Block::led("Moves.", &said(about.moves)),
            Block::led("Stays.", &said(about.stays)),
            Block::led("By hand.", &said(about.hand_method)),
            Block::led("Gives.", &sentence(&seams(was, is, self.unit()))),
        ];
        let what = format!("{key} {amount}");
        Block::beside(words, correction_within(LARGEST, &what, was, is), Booklet::width())
    }

    /// Which points a correction moves, and how far.
    fn moves(&self, key: Key, was: &Shape, is: &Shape) -> Table {
        /// Less is not seen on paper, cm.
        const SEEN: f64 = 0.005;
        let mut table = Table::new(
            &format!("{key}: points moved"),
            vec![
                Column::words("point", 3.5),
                Column::words("panel", 1.5),
                Column::numbers("across", 1.5),
                Column::numbers("down", 1.5),
            ],
        );
        for panel in Panel::ALL {
            for role in Role::ALL {
                let by = is.panel(*panel).roles[*role] - was.panel(*panel).roles[*role];
                if by.x.abs() >= SEEN || by.y.abs() >= SEEN {
                    table.row([called(*role), (*panel).into(), amount(by.x), amount(by.y)]);
                }
            }
        }
        table
    }
}

/// Whether nothing of the outline moves by as much as a pencil shows.
fn is_slight(was: &Shape, is: &Shape) -> bool {
    /// A millimetre, cm.
    const SEEN: f64 = 0.1;
    let lengths =
        |panel: &PanelShape| Edge::ALL.iter().map(|edge| panel.edge(*edge).length()).collect::<Vec<_>>();
    Panel::ALL.iter().all(|panel| {
        let (was, is) = (was.panel(*panel), is.panel(*panel));
        let still = Role::ALL.iter().all(|role| was.roles[*role].distance(is.roles[*role]) < SEEN);
        still && lengths(was).iter().zip(&lengths(is)).all(|(was, is)| (was - is).abs() < SEEN)
    })
}
