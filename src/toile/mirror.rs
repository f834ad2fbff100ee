//! A first look in the mirror, before any cloth: what a mirror shows and a tape does not, and what it says to watch on the
//! toile.

use crate::terms::{HowMuch, Shape, Word};

/// What a mirror is asked about one part of the body.
#[derive(Debug)]
pub struct Glance {
    /// The part.
    pub shape: Shape,
    /// Where to stand and what to look at.
    pub ask: &'static str,
    /// What little, usual and much of it look like.
    pub looks: [&'static str; 3],
    /// What to watch on the toile where it is little; nothing where it is usual.
    pub little: &'static str,
    /// And where it is much.
    pub much: &'static str,
}

/// The four looks, from the front down and round to the back. Common practice, no source.
pub const GLANCES: [Glance; 4] = [
    Glance {
        shape: Shape::FrontThigh,
        ask: "Side on, a thread with a weight held at the hip bone: where is the front of the thigh?",
        looks: ["behind the thread", "at the thread", "clearly before it"],
        little: "upright folds in front from crotch to knee",
        much: "tight lines across the front of the thigh, sitting most of all; a side seam that swings forward; a back crotch that is drawn forward",
    },
    Glance {
        shape: Shape::Seat,
        ask: "Side on: how far does the seat stand out behind a straight back?",
        looks: ["flat, it falls nearly straight", "a plain curve", "clearly, like a shelf"],
        little: "folds under the seat and behind the thigh; a roll under the back band",
        much: "lines across under the back band; a back waist that goes down in sitting",
    },
    Glance {
        shape: Shape::Abdomen,
        ask: "Side on: is the belly behind, level with or before the front of the thigh?",
        looks: ["behind it", "level with it", "before it"],
        little: "a pouch below the front band",
        much: "a front band that goes down; lines from the fork to the hip in front",
    },
    Glance {
        shape: Shape::SwayBack,
        ask: "Side on, standing as usual with soft knees: how hollow is the small of the back?",
        looks: ["flat, hips forward", "a plain hollow", "deep, a fist goes in"],
        little: "folds behind the leg: judge them with soft knees first",
        much: "a roll across under the back band; a back waist that stands off",
    },
];

impl Glance {
    /// What to watch on the toile.
    pub fn watch(&self, much: HowMuch) -> Option<&'static str> {
        match much {
            HowMuch::Little => Some(self.little),
            HowMuch::Usual => None,
            HowMuch::Much => Some(self.much),
        }
    }

    /// The answers as they are offered, `little` first.
    pub fn answers(&self) -> impl Iterator<Item = (HowMuch, &'static str)> {
        HowMuch::ALL.iter().copied().zip(self.looks)
    }
}
