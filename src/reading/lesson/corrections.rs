//! The fit parameters in force, one after the other: what each moves here, and how the same is done by hand.

use kurbo::Vec2;

use super::{Class, sums::fine_length};
use crate::{
    adjust::{Key, Measure, Parameters},
    booklet::{Block, Column, Table},
    draft::{PanelShape, Shape, shape},
    drawing::Wording,
    hand::works,
    order::Giver,
    paper::{READING, by_hand},
    reading::corrections_page::seams,
    terms::{Edge, Panel, Role, Word},
    told::tables::called,
    unit::decimal,
    voice::{amount, listed, rule_of_thumb, sentence},
};

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
                 the other, each on the outline that the one before left. The strip shows the hand's way; the \
                 actions stand under it, one to a line. Strips are read so:",
            ),
            Block::List(
                READING.iter().map(|rule| Wording::paragraph(&rule_of_thumb(rule, self.unit()))).collect(),
            ),
        ];
        let mut so_far = Parameters::default();
        let mut was = shape(&draft.plan, &so_far);
        let mut slight = Slight::default();
        for (key, value) in draft.parameters.set() {
            let before = so_far;
            so_far = so_far.with(key, value);
            let is = shape(&draft.plan, &so_far);
            if is_slight(&was, &is) {
                slight.keys.push((key, value));
                slight.steps.push((was.clone(), is.clone()));
            } else {
                blocks.extend(self.correction(key, (&before, &was), (&so_far, &is)));
                let moves = moves(&format!("{key}: points moved"), &[(was.clone(), is.clone())]);
                if !moves.rows.is_empty() {
                    blocks.push(Block::Table(moves));
                }
            }
            was = is;
        }
        blocks.extend(self.too_small_to_draw(&slight));
        blocks
    }

    /// Corrections that a pencil does not draw: named and summed up, not taught.
    fn too_small_to_draw(&self, slight: &Slight) -> Vec<Block> {
        if slight.keys.is_empty() {
            return Vec::new();
        }
        let named: Vec<String> = slight
            .keys
            .iter()
            .map(|(key, value)| format!("{} ({key} {})", key.about().title, self.amount(*key, *value)))
            .collect();
        let mut blocks = vec![
            Block::section("Too small to draw"),
            Block::plain(&rule_of_thumb(
                "Nothing of these moves by 0.2 cm: no slash is worth it. The finished block has them all the \
                 same, since it was reckoned and not cut; together they move its points by what the table says.",
                self.unit(),
            )),
            Block::plain(&sentence(&listed(&named))),
        ];
        let moves = moves("Too small to draw, together: points moved", &slight.steps);
        if !moves.rows.is_empty() {
            blocks.push(Block::Table(moves));
        }
        blocks
    }

    fn amount(&self, key: Key, value: f64) -> String {
        match key.about().unit {
            Measure::Cm => fine_length(value, self.unit()),
            Measure::Degrees => format!("{}°", decimal(value, 2)),
        }
    }

    fn correction(&self, key: Key, was: (&Parameters, &Shape), is: (&Parameters, &Shape)) -> Vec<Block> {
        let about = key.about();
        let (plan, unit) = (&self.draft().plan, self.unit());
        let amount = self.amount(key, is.0[key]);
        let from = self.draft().adjustments.iter().find(|it| it.key == key).map_or("", |it| match it.from {
            Giver::Fit => ", found by meeting the measurements",
            Giver::Measured => ", as measured",
            Giver::File | Giver::Set => ", as the file says",
        });
        let said = |words: &'static str| sentence(&rule_of_thumb(words, unit));
        let mut blocks = vec![
            Block::section(&format!("{}: {amount}", sentence(about.title).trim_end_matches('.'))),
            Block::remark(&format!("Parameter {key} = {amount}{from}.")),
            Block::led("For.", &said(about.purpose)),
            Block::led("Moves.", &said(about.moves)),
            Block::led("Stays.", &said(about.stays)),
            Block::led("By hand.", &said(about.hand_method)),
        ];
        blocks.extend(by_hand(key, plan, was.0, is.0, unit).map(Block::Picture));
        for work in works(key, was, is, unit) {
            blocks.push(Block::led(&format!("On the {}.", work.panel), "One action after the other:"));
            blocks.push(Block::List(work.said(unit).map(|words| Wording::paragraph(&words)).collect()));
        }
        blocks.push(Block::led("Gives.", &sentence(&seams(was.1, is.1, unit))));
        blocks
    }
}

/// Corrections that are not taught, with the outlines before and after each.
#[derive(Default)]
struct Slight {
    keys: Vec<(Key, f64)>,
    steps: Vec<(Shape, Shape)>,
}

/// Which points these steps move, and how far together.
fn moves(caption: &str, steps: &[(Shape, Shape)]) -> Table {
    /// Less is not seen on paper, cm.
    const SEEN: f64 = 0.005;
    let mut table = Table::new(
        caption,
        vec![
            Column::words("point", 3.5),
            Column::words("panel", 1.5),
            Column::numbers("across", 1.5),
            Column::numbers("down", 1.5),
        ],
    );
    for panel in Panel::ALL {
        for role in Role::ALL {
            let by: Vec2 = steps
                .iter()
                .map(|(was, is)| is.panel(*panel).roles[*role] - was.panel(*panel).roles[*role])
                .fold(Vec2::ZERO, |sum, by| sum + by);
            if by.x.abs() >= SEEN || by.y.abs() >= SEEN {
                table.row([called(*role), (*panel).into(), amount(by.x), amount(by.y)]);
            }
        }
    }
    table
}

/// Whether nothing of the outline moves by as much as is worth a cut.
fn is_slight(was: &Shape, is: &Shape) -> bool {
    /// Two millimetres, cm.
    const SEEN: f64 = 0.2;
    let lengths =
        |panel: &PanelShape| Edge::ALL.iter().map(|edge| panel.edge(*edge).length()).collect::<Vec<_>>();
    Panel::ALL.iter().all(|panel| {
        let (was, is) = (was.panel(*panel), is.panel(*panel));
        let still = Role::ALL.iter().all(|role| was.roles[*role].distance(is.roles[*role]) < SEEN);
        still && lengths(was).iter().zip(&lengths(is)).all(|(was, is)| (was - is).abs() < SEEN)
    })
}
