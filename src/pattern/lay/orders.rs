//! In which order, and how, parts are laid one after the other.

use super::{
    dice::Dice,
    strip::{Ground, Lean, Spot},
};

/// For each part so many orders are tried: fewer let the length of a lay fall here and there where the body grows.
const ORDERS: u32 = 6_000;
/// By how much worse than the last an order may be at the beginning and still be gone on from, cm: on average.
const FORGIVEN: f64 = 10.0;
/// An order is judged by where its last part ends, and by this much of where its parts end on average, so that a lay
/// which leaves room at its end is gone on from.
const ROOM: f64 = 0.3;

/// How one part is to be laid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Turn {
    pub part: usize,
    pub shape: usize,
    pub lean: Lean,
}

/// Lays parts in the given order, each at the first free place, going on from what is `laid` of them; `None` when one
/// of them would end beyond `limit`.
fn in_order(ground: &Ground, order: &[Turn], mut laid: Vec<Spot>, limit: i32) -> Option<Vec<Spot>> {
    for turn in &order[laid.len()..] {
        laid.push(ground.first_free(turn, &laid, limit)?);
    }
    Some(laid)
}

/// The shortest lay that is found: the parts by their size, then one change after the other. A change that makes it
/// worse is gone on from too, less and less, so that the search leaves what is only good among its neighbours; chance
/// is a fixed row of numbers, so that the same parts always give the same lay.
pub(super) fn shortest(ground: &Ground) -> (Vec<Turn>, Vec<Spot>) {
    let mut order = by_size(ground);
    let Some(mut spots) = in_order(ground, &order, Vec::new(), i32::MAX) else {
        return (Vec::new(), Vec::new());
    };
    let (mut best_order, mut best) = (order.clone(), spots.clone());
    let mut cost = ground.cost(&best);
    let mut least = (ground.length(&best), cost);
    let mut dice = Dice::new();
    let orders = ORDERS * order.len() as u32;
    for tried in 0..orders {
        if least.0 == ground.least_length() {
            break;
        }
        let changed = changed(ground, &order, &mut dice);
        let forgiven = FORGIVEN * f64::from(orders - tried) / f64::from(orders);
        let bar = cost + ground.steps(forgiven) * dice.halving();
        let alike = order.iter().zip(&changed).take_while(|(was, is)| was == is).count();
        let Some(laid) = in_order(ground, &changed, spots[..alike].to_vec(), bar as i32 + 1) else {
            continue;
        };
        let worth = ground.cost(&laid);
        if worth > bar {
            continue;
        }
        (order, spots, cost) = (changed, laid, worth);
        let rank = (ground.length(&spots), worth);
        if rank < least {
            least = rank;
            best.clone_from(&spots);
            best_order.clone_from(&order);
        }
    }
    (best_order, best)
}

fn by_size(ground: &Ground) -> Vec<Turn> {
    let area = |turn: &Turn| ground.shapes.profile(turn.shape).area;
    let parts = 0..ground.shapes.count_of_parts();
    let mut order: Vec<Turn> =
        parts.map(|part| Turn { part, shape: ground.shapes.of(part).start, lean: Lean::Left }).collect();
    order.sort_by(|a, b| area(b).total_cmp(&area(a)).then(a.part.cmp(&b.part)));
    order
}

/// One or two changes: a part laid earlier or later, two parts exchanged, a part in another pose or leaning the other
/// way.
fn changed(ground: &Ground, order: &[Turn], dice: &mut Dice) -> Vec<Turn> {
    let mut order = order.to_vec();
    let count = order.len();
    for _ in 0..=dice.below(2) {
        let at = dice.below(count);
        match dice.below(4) {
            0 => {
                let turn = order.remove(at);
                order.insert(dice.below(count), turn);
            }
            1 => order.swap(at, dice.below(count)),
            2 => {
                let shapes = ground.shapes.of(order[at].part);
                order[at].shape = shapes.start + dice.below(shapes.len());
            }
            _ => order[at].lean = order[at].lean.other(),
        }
    }
    order
}

impl Ground {
    /// No lay is shorter than its longest part, in steps.
    fn least_length(&self) -> i32 {
        let parts = 0..self.shapes.count_of_parts();
        let length = |part| self.shapes.of(part).map(|shape| self.shapes.profile(shape).end).min();
        parts.filter_map(length).max().unwrap_or(0)
    }

    /// How much an order is worth, the less the better, in steps.
    fn cost(&self, laid: &[Spot]) -> f64 {
        let ends = laid.iter().map(|spot| i64::from(self.end(spot)));
        f64::from(self.length(laid)) + ROOM * ends.sum::<i64>() as f64 / laid.len() as f64
    }
}
