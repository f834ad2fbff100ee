//! Pages that are whole on A4 and on US Letter.

use kurbo::{Point, Rect, Vec2};

use super::{
    Booklet,
    flow::{Piece, Setting, pieces},
};
use crate::{
    drawing::{Align, Drawing, Ink, Layer, Paper, PrintedSheet, Text, Wording, lines_of_text, sheets_to_pdf},
    mistake::Mistake,
};

/// Round the text, cm: what every printer reaches, and room for a thumb.
const MARGIN: f64 = 1.7;
/// From the text to the line at the foot of the page, cm.
const FOOT: f64 = 0.75;

impl Booklet {
    /// How wide the text of a page is, cm: pictures are drawn for it.
    pub fn width() -> f64 {
        inside().width()
    }

    /// The booklet as a PDF.
    ///
    /// # Errors
    /// None that a booklet can cause: its pages have the size of a sheet of paper.
    pub fn to_pdf(&self) -> Result<Vec<u8>, Mistake> {
        sheets_to_pdf(&self.pages())
    }

    /// The pages, each a sheet of its own.
    pub fn pages(&self) -> Vec<PrintedSheet> {
        let room = inside();
        let mut flow = self.title_pieces(room.width());
        let setting = Setting { lettering: &self.lettering, unit: self.unit, tallest: room.height() };
        flow.extend(pieces(&self.blocks, setting, room.width()));
        let pages = parted(&flow, room);
        let count = pages.len();
        pages.into_iter().enumerate().map(|(number, page)| self.page(page, number + 1, count)).collect()
    }

    fn title_pieces(&self, width: f64) -> Vec<Piece> {
        let size = self.lettering.title;
        let mut piece = Piece::new(0.0);
        for line in lines_of_text(&self.title, size, width) {
            piece.height += 1.1 * size;
            piece.words(Text::new(Point::new(0.0, piece.height - 0.25 * size), size, line).bold());
        }
        piece.holds_next = true;
        vec![piece]
    }

    fn page(&self, on_it: Piece, number: usize, count: usize) -> PrintedSheet {
        let mut layer = Layer::new("Page");
        layer.marks = on_it.marks;
        let sheet = Paper::A4OrLetter.size().to_rect();
        let (room, size) = (inside(), self.lettering.small);
        let foot = room.y1 + FOOT;
        let page = format!("{number} / {count}");
        layer.text(
            Text::new(Point::new(room.x1, foot), size, page.as_str()).aligned(Align::End).inked(Ink::Dark),
        );
        layer.text(
            Text::new(Point::new(room.x0, foot), size, self.name.as_str())
                .inked(Ink::Dark)
                .cut_to(room.width() - 2.5),
        );
        let title =
            if number == 1 { self.name.clone() } else { Wording::line(&format!("{}, {page}", self.name)) };
        let description = self.description.clone();
        let page = Drawing { title, description, bounds: sheet, layers: vec![layer] };
        PrintedSheet { page, pictures: on_it.pictures }
    }
}

fn inside() -> Rect {
    Paper::A4OrLetter.size().to_rect().inset(-MARGIN)
}

/// The pieces on pages: a page ends where the next piece, with all that it holds on to, has no room.
fn parted(flow: &[Piece], room: Rect) -> Vec<Piece> {
    let mut pages = Vec::new();
    let mut page = Piece::default();
    let mut y = room.y0;
    for (number, piece) in flow.iter().enumerate() {
        let fresh = y == room.y0;
        let needed: f64 = held(&flow[number..]).map(|held| held.before + held.height).sum();
        let needed = needed - if fresh { piece.before } else { 0.0 };
        if !fresh && y + needed > room.y1 && (needed <= room.height() || y + piece.height > room.y1) {
            pages.push(std::mem::take(&mut page));
            y = room.y0;
            if let Some(head) = &piece.head {
                page.take(head, Vec2::new(room.x0, y));
                y += head.height;
            }
        } else if !fresh {
            y += piece.before;
        }
        page.take(piece, Vec2::new(room.x0, y));
        y += piece.height;
    }
    pages.push(page);
    pages
}

/// A piece with those that it holds on to.
fn held(flow: &[Piece]) -> impl Iterator<Item = &Piece> {
    let mut goes_on = true;
    flow.iter().take_while(move |piece| std::mem::replace(&mut goes_on, piece.holds_next))
}
