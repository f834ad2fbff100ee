//! From trued panels to pieces ready to cut: allowances and their corners, notches, grain, the yoke cut off, waistband
//! and fly.
//!
//! A piece stays in the frame of its panel, in centimetres; which copies of it are cut as drawn and which as its mirror
//! image is said by [`Copies`].

mod allowance;
mod cloth;
mod cut_line;
mod fly;
pub mod lay;
mod notch;
mod panel;
mod piece;
mod round_off;
mod waistband;
mod yoke;

pub use allowance::{Allowances, Purpose};
pub use cloth::{Cloth, CutPiece, Lay, Shrinkage};
pub use cut_line::{Corner, Run, Which, cut_line};
pub use fly::Lap;
pub use notch::{PieceNotch, panel_notches};
pub use piece::{Copies, DrawnLine, LabelSpot, LineKind, Piece, PieceKind};
pub use waistband::{Band, BandShape};

use crate::{
    draft::Draft,
    mistake::{Mistakes, Notice},
    terms::{Panel, Side},
    voice::named,
};

/// What is to be cut beside the front.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Wanted {
    /// What it is all cut for.
    pub purpose: Purpose,
    /// A band for the waist.
    pub waistband: Option<Band>,
    /// An opening at the centre front, by the side that laps over.
    pub fly: Option<Lap>,
    /// The back cut along its yoke line, where its block has one.
    pub yoke: bool,
}

/// All pieces of a pair of trousers.
#[derive(Clone, Debug, PartialEq)]
pub struct Pattern {
    /// From front to small parts; those of the left leg first where the legs differ.
    pub pieces: Vec<Piece>,
    /// Backs as they were before a yoke was cut off them.
    pub whole_backs: Vec<Piece>,
    /// What a person should know before cutting.
    pub notices: Vec<Notice>,
}

impl Pattern {
    /// The pieces of one draft, or of a left and a right one.
    ///
    /// # Errors
    /// When an allowance is wider than the edge beside it has room for: each with the most that it can be.
    pub fn of<'a>(
        drafts: impl IntoIterator<Item = &'a Draft>,
        allowances: &Allowances,
        wanted: &Wanted,
    ) -> Result<Self, Mistakes> {
        let mut all = Self { pieces: Vec::new(), whole_backs: Vec::new(), notices: Vec::new() };
        for draft in drafts {
            all.add_leg(draft, allowances, wanted)?;
        }
        all.notices.extend(all.pieces.iter().filter(|piece| !piece.is_cut_outside()).map(|piece| {
            Notice::not_to_cut(
                "cut-inside",
                "the cut line of the {piece} runs inside its sewing line: cut by the allowances, seam by seam",
            )
            .with("piece", piece.kind)
        }));
        all.pieces.sort_by_key(|piece| (piece.side, piece.kind));
        all.notices = Notice::once(std::mem::take(&mut all.notices));
        Ok(all)
    }

    /// A panel with its allowances, whole also where a yoke is cut off it.
    pub fn panel(&self, panel: Panel, side: Side) -> Option<&Piece> {
        let kind = match panel {
            Panel::Front => PieceKind::Front,
            Panel::Back => PieceKind::Back,
        };
        self.whole_backs.iter().chain(&self.pieces).find(|piece| piece.kind == kind && piece.side == side)
    }

    fn add_leg(&mut self, draft: &Draft, allowances: &Allowances, wanted: &Wanted) -> Result<(), Mistakes> {
        let (shape, side) = (&draft.shape, draft.side);
        let panels = panel::Panels { shape, side, allowances, purpose: wanted.purpose };
        let mut front = panels.front()?;
        if wanted.fly.is_some() {
            panels.mark_zip(&mut front, fly::zip(draft));
        }
        self.pieces.push(front);
        match shape.back.style_lines().next().filter(|_| wanted.yoke) {
            Some(line) => {
                self.whole_backs.push(panels.back()?);
                self.pieces.extend(yoke::cut_along(line, &panels)?);
            }
            None => {
                if wanted.yoke {
                    let said = "the block {block} has no yoke line: its back stays whole";
                    self.notices
                        .push(Notice::note("no-yoke", said).with("block", named(&*draft.recipe.name)));
                }
                self.pieces.push(panels.back()?);
            }
        }
        if let Some(band) = wanted.waistband {
            self.pieces.push(waistband::waistband(shape, side, band, allowances)?);
        }
        // One fly a pair of trousers: where the legs differ, on the front that laps over.
        if let Some(lap) = wanted.fly.filter(|lap| side == Side::Both || lap.over() == side) {
            let (fly, notice) = fly::fly(draft, lap, allowances)?;
            self.pieces.extend(fly);
            self.notices.extend(notice);
        }
        Ok(())
    }
}
