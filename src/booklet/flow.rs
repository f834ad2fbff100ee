//! Blocks set in a width: portions that stay whole, each with what is drawn of it.

use std::rc::Rc;

use kurbo::{Point, Vec2};

use super::{Block, Lettering, Paragraph, Strip, table};
use crate::{
    drawing::{Drawing, Ink, Mark, Text, Wording, lines_of_text},
    unit::Unit,
};

/// Between two blocks side by side, cm.
pub(super) const GUTTER: f64 = 0.5;

/// What stays whole on a page.
#[derive(Clone, Debug, Default)]
pub(super) struct Portion {
    /// Empty height above it, which falls away at the top of a page, cm.
    pub before: f64,
    /// cm.
    pub height: f64,
    /// From its upper left corner.
    pub marks: Vec<Mark>,
    /// Each with where its upper left corner stands.
    pub pictures: Vec<(Drawing, Point)>,
    /// Not the last on a page.
    pub holds_next: bool,
    /// What is repeated above it at the top of a page.
    pub head: Option<Rc<Portion>>,
}

impl Portion {
    pub(super) fn new(before: f64) -> Self {
        Self { before, ..Self::default() }
    }

    pub(super) fn words(&mut self, text: Text) {
        self.marks.push(Mark::Text(text));
    }

    /// Marks and pictures of another portion, moved.
    pub(super) fn take(&mut self, other: &Self, by: Vec2) {
        self.marks.extend(other.marks.iter().map(|mark| mark.clone().moved(by)));
        self.pictures.extend(other.pictures.iter().map(|(picture, at)| (picture.clone(), *at + by)));
    }

    /// The same moved to the right.
    fn moved_right(&self, by: f64) -> Self {
        let mut moved = Self { marks: Vec::new(), pictures: Vec::new(), ..self.clone() };
        moved.take(self, Vec2::new(by, 0.0));
        moved.head = self.head.as_ref().map(|head| Rc::new(head.moved_right(by)));
        moved
    }
}

/// How blocks are set.
#[derive(Clone, Copy)]
pub(super) struct Setting<'a> {
    pub lettering: &'a Lettering,
    /// The reader's.
    pub unit: Unit,
    /// Pages have room for so much, cm.
    pub tallest: f64,
}

/// The blocks set `width` cm wide.
pub(super) fn portions(blocks: &[Block], setting: Setting<'_>, width: f64) -> Vec<Portion> {
    let mut all = Vec::new();
    let mut under_heading = false;
    for block in blocks {
        let mut own = of(block, setting, width);
        let is_paragraph = matches!(block, Block::Paragraph(_));
        // A heading with one paragraph under it says what is coming: it does not end a page.
        if under_heading && is_paragraph {
            own.iter_mut().for_each(|portion| portion.holds_next = true);
        }
        under_heading = matches!(block, Block::Chapter(_) | Block::Section(_));
        all.append(&mut own);
    }
    // Nothing comes after the last.
    if let Some(last) = all.last_mut() {
        last.holds_next = false;
    }
    all
}

fn of(block: &Block, setting: Setting<'_>, width: f64) -> Vec<Portion> {
    let lettering = setting.lettering;
    let text = lettering.text;
    match block {
        Block::Chapter(words) => heading(words, lettering.chapter, 1.3 * lettering.chapter, width),
        Block::Section(words) => heading(words, lettering.section, 0.9 * lettering.section, width),
        Block::Paragraph(paragraph) => lines(paragraph, lettering, width),
        Block::Sum(words) => {
            let (size, indent) = (text, 1.2 * text);
            let mut portion = Portion::new(0.3 * text);
            for (number, line) in lines_of_text(words, size, width - 2.0 * indent).into_iter().enumerate() {
                portion.height += lettering.leading();
                let x = if number == 0 { indent } else { 2.0 * indent };
                portion.words(Text::new(Point::new(x, portion.height), size, line));
            }
            portion.height += 0.1 * text;
            vec![portion]
        }
        Block::List(rows) => rows.iter().flat_map(|words| item(words, lettering, width)).collect(),
        Block::Table(table) => table::portions(table, setting, width),
        Block::Picture(drawing) => vec![picture(drawing, lettering, width)],
        Block::Columns(strips) => columns(strips, setting, width),
    }
}

fn heading(words: &Wording, size: f64, before: f64, width: f64) -> Vec<Portion> {
    let mut portion = Portion::new(before);
    for line in lines_of_text(words, size, width) {
        portion.height += 1.2 * size;
        portion.words(Text::new(Point::new(0.0, portion.height), size, line).bold());
    }
    portion.height += 0.35 * size;
    portion.holds_next = true;
    vec![portion]
}

/// A portion a line, so that a long paragraph runs over pages; its first two and last two lines stay together.
pub(super) fn lines(paragraph: &Paragraph, lettering: &Lettering, width: f64) -> Vec<Portion> {
    let (size, ink) =
        if paragraph.small { (lettering.small, Ink::Dark) } else { (lettering.text, Ink::Black) };
    let lead = paragraph.lead.as_str();
    let whole = format!("{lead} {}", paragraph.words);
    // Bold letters are as wide as regular ones, so the lines are broken as one text.
    let lines = lines_of_text(&Wording::paragraph(&whole), size, width);
    let count = lines.len();
    let mut bold_left = lead.chars().count();
    let broken = lines.into_iter().enumerate().map(|(number, line)| {
        let mut portion = Portion::new(if number == 0 { 0.45 * size } else { 0.0 });
        portion.height = 1.42 * size;
        let at = Point::new(0.0, 1.05 * size);
        let cut = line.char_indices().nth(bold_left).map_or(line.len(), |(cut, _)| cut);
        let (bold, plain) = line.split_at(cut);
        bold_left = bold_left.saturating_sub(line.chars().count() + 1);
        if !bold.is_empty() {
            portion.words(Text::new(at, size, bold).bold().inked(ink));
        }
        let after = crate::drawing::text_width(bold, size);
        let blanks = crate::drawing::text_width(" ", size) * (plain.len() - plain.trim_start().len()) as f64;
        if !plain.trim().is_empty() {
            portion
                .words(Text::new(at + Vec2::new(after + blanks, 0.0), size, plain.trim_start()).inked(ink));
        }
        portion.holds_next = count > 1 && (number == 0 || number + 2 == count);
        portion
    });
    broken.collect()
}

fn item(words: &Wording, lettering: &Lettering, width: f64) -> Vec<Portion> {
    let (size, indent) = (lettering.text, 1.1 * lettering.text);
    let mut portion = Portion::new(0.2 * size);
    for (number, line) in lines_of_text(words, size, width - indent).into_iter().enumerate() {
        let baseline = portion.height + 1.05 * size;
        if number == 0 {
            portion.words(Text::new(Point::new(0.2 * size, baseline), size, "–"));
        }
        portion.words(Text::new(Point::new(indent, baseline), size, line));
        portion.height += lettering.leading();
    }
    vec![portion]
}

fn picture(drawing: &Drawing, lettering: &Lettering, width: f64) -> Portion {
    let mut portion = Portion::new(0.4 * lettering.text);
    portion.pictures.push((drawing.clone(), Point::ORIGIN));
    portion.height = drawing.bounds.height();
    let size = lettering.small;
    for line in lines_of_text(&drawing.title, size, width.min(drawing.bounds.width())) {
        portion.height += 1.35 * size;
        portion.words(Text::new(Point::new(0.0, portion.height), size, line).inked(Ink::Dark));
    }
    portion.height += 0.4 * size;
    portion
}

/// Strips side by side as one portion; one below the other where they are taller than a page.
fn columns(strips: &[Strip], setting: Setting<'_>, width: f64) -> Vec<Portion> {
    let mut whole = Portion::new(0.9 * setting.lettering.text);
    let mut left = 0.0;
    let mut in_turn = Vec::new();
    for strip in strips {
        let share = width * strip.share;
        let own = portions(&strip.blocks, setting, share - GUTTER);
        let mut y = 0.0;
        for (number, portion) in own.into_iter().enumerate() {
            if number > 0 {
                y += portion.before;
            }
            let portion = portion.moved_right(left);
            whole.take(&portion, Vec2::new(0.0, y));
            y += portion.height;
            in_turn.push(portion);
        }
        whole.height = whole.height.max(y);
        left += share + GUTTER / strips.len() as f64;
    }
    if whole.height > setting.tallest { in_turn } else { vec![whole] }
}
