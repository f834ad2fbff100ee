//! The finished block with the numbers that decide the fit.

use super::{Class, sums::fine_length};
use crate::{
    booklet::{Block, Booklet, Column, Table},
    draft::shape,
    drawing::Wording,
    paper::correction::correction_within,
    terms::{Edge, Panel, Role, Word},
    told::{CAUTIONS, tables::called},
    voice::{amount, sentence},
};

impl Class<'_> {
    /// The last chapters.
    pub(super) fn finish(&self) -> Vec<Block> {
        let subject = self.subject;
        let mut blocks = vec![Block::chapter("The finished block")];
        if let Some(cut) = subject.draft.shape.front.cut_off {
            let words = vec![
                Block::section("The top is cut"),
                Block::led(
                    "Do.",
                    &format!(
                        "Measure {} down from the waist along the centre lines and along the side seams of \
                         both panels, and draw the new waist through the marks with the darts closed, \
                         square to the centres.",
                        fine_length(cut.drop, self.unit())
                    ),
                ),
                Block::led(
                    "Why.",
                    "The block is drafted from the measured waist, where the body holds a measurement; the \
                     trousers end lower. Both panels lose the same along centre and side, so that seams \
                     that agreed agree still.",
                ),
            ];
            let whole = shape(&subject.draft.plan, &subject.draft.parameters);
            let picture =
                correction_within((6.0, 5.0), "The waist, before and after", &whole, &subject.draft.shape);
            blocks.push(Block::beside(words, picture, Booklet::width()));
        }
        blocks.extend(crate::reading::fit_sheet::figures(subject));
        for panel in Panel::ALL {
            blocks.push(Block::Table(self.finished_points(*panel)));
        }
        blocks.push(Block::Table(self.lengths()));
        blocks.push(Block::chapter("Before you cut"));
        blocks.push(Block::List(CAUTIONS.iter().map(|words| Wording::line(words)).collect()));
        let notices: Vec<Wording> = subject
            .notices()
            .iter()
            .map(|notice| Wording::paragraph(&sentence(&notice.text(subject.unit))))
            .collect();
        if !notices.is_empty() {
            blocks.push(Block::section(subject.verdict().head()));
            blocks.push(Block::List(notices));
        }
        blocks
    }

    fn finished_points(&self, panel: Panel) -> Table {
        let mut table = Table::new(
            &format!("The {panel}: its points when finished"),
            vec![Column::words("point", 3.5), Column::numbers("across", 1.5), Column::numbers("down", 1.5)],
        );
        let finished = self.draft().shape.panel(panel);
        for role in Role::ALL {
            let at = finished.roles[*role];
            table.row([called(*role), amount(at.x), amount(at.y)]);
        }
        table
    }

    fn lengths(&self) -> Table {
        let mut table = Table::new(
            "Sewn lengths of the edges",
            vec![Column::words("edge", 3.0), Column::numbers("front", 1.5), Column::numbers("back", 1.5)],
        );
        let finished = &self.draft().shape;
        for edge in Edge::ALL {
            let [front, back] =
                [&finished.front, &finished.back].map(|panel| amount(panel.sewn_length(*edge)));
            table.row([called(*edge), front, back]);
        }
        table
    }
}
