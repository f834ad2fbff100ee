//! Pages that are whole on A4 and on US Letter.

use kurbo::{Point, Rect, Vec2};

use super::{
    Booklet,
    flow::{Portion, Setting, portions},
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
        let mut flow = self.title_portions(room.width());
        let setting = Setting { lettering: &self.lettering, unit: self.unit, tallest: room.height() };
        flow.extend(portions(&self.blocks, setting, room.width()));
        let pages = parted(&flow, room);
        let count = pages.len();
        pages.into_iter().enumerate().map(|(number, page)| self.page(page, number + 1, count)).collect()
    }

    fn title_portions(&self, width: f64) -> Vec<Portion> {
        let size = self.lettering.title;
        let mut portion = Portion::new(0.0);
        for line in lines_of_text(&self.title, size, width) {
            portion.height += 1.1 * size;
            portion.words(Text::new(Point::new(0.0, portion.height - 0.25 * size), size, line).bold());
        }
        portion.holds_next = true;
        vec![portion]
    }

    fn page(&self, on_it: Portion, number: usize, count: usize) -> PrintedSheet {
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

/// The portions on pages: a page ends where the next portion, with all that it holds on to, has no room.
fn parted(flow: &[Portion], room: Rect) -> Vec<Portion> {
    let mut pages = Vec::new();
    let mut page = Portion::default();
    let mut y = room.y0;
    for (number, portion) in flow.iter().enumerate() {
        let fresh = y == room.y0;
        let needed: f64 = held(&flow[number..]).map(|held| held.before + held.height).sum();
        let needed = needed - if fresh { portion.before } else { 0.0 };
        if !fresh && y + needed > room.y1 && (needed <= room.height() || y + portion.height > room.y1) {
            pages.push(std::mem::take(&mut page));
            y = room.y0;
            if let Some(head) = &portion.head {
                page.take(head, Vec2::new(room.x0, y));
                y += head.height;
            }
        } else if !fresh {
            y += portion.before;
        }
        page.take(portion, Vec2::new(room.x0, y));
        y += portion.height;
    }
    pages.push(page);
    pages
}

/// A portion with those that it holds on to.
fn held(flow: &[Portion]) -> impl Iterator<Item = &Portion> {
    let mut goes_on = true;
    flow.iter().take_while(move |portion| std::mem::replace(&mut goes_on, portion.holds_next))
}
