//! The content of a booklet, without a word on how it looks.

use super::Lettering;
use crate::{
    drawing::{Align, Drawing, Wording},
    unit::Unit,
    voice::Value,
};

/// What is read from top to bottom.
#[derive(Clone, Debug, PartialEq)]
pub struct Booklet {
    /// Names the file in windows and lists. It begins with the name of this program, by which its files are known.
    pub name: Wording,
    /// What a reader who searches should find: one sentence.
    pub description: Wording,
    /// The largest heading.
    pub title: Wording,
    /// How large its letters are.
    pub lettering: Lettering,
    /// The unit of its reader.
    pub unit: Unit,
    /// What follows the title.
    pub blocks: Vec<Block>,
}

/// One thing after the other.
#[derive(Clone, Debug, PartialEq)]
pub enum Block {
    /// A heading that the list of contents names.
    Chapter(Wording),
    /// A heading within a chapter.
    Section(Wording),
    /// Sentences.
    Paragraph(Paragraph),
    /// A sum in a line of its own.
    Sum(Wording),
    /// Short sentences one below the other.
    List(Vec<Wording>),
    /// Rows and columns.
    Table(Table),
    /// A picture, drawn as large as it is shown. Its title stands under it.
    Picture(Drawing),
    /// Blocks side by side where there is room, kept together.
    Columns(Vec<Strip>),
}

/// Blocks that stand beside others.
#[derive(Clone, Debug, PartialEq)]
pub struct Strip {
    /// Its part of the width; all parts of a row together are 1.
    pub share: f64,
    /// From the top.
    pub blocks: Vec<Block>,
}

/// Sentences.
#[derive(Clone, Debug, PartialEq)]
pub struct Paragraph {
    /// A word in bold before them; empty for none.
    pub lead: Wording,
    /// The sentences.
    pub words: Wording,
    /// In smaller letters: a remark.
    pub small: bool,
}

/// Rows and columns. The first cell of a row names it.
#[derive(Clone, Debug, PartialEq)]
pub struct Table {
    /// What the table shows.
    pub caption: Wording,
    /// From the left.
    pub columns: Vec<Column>,
    /// As many cells as there are columns. They are worded where they are read, in the reader's unit, which the caption
    /// then names.
    pub rows: Vec<Vec<Value>>,
    /// What has to be known to read it, under its last row; empty for nothing.
    pub remark: Wording,
    /// Drawn with lines round every cell and rows high enough to write in.
    pub to_fill_in: bool,
}

/// A column of a table.
#[derive(Clone, Debug, PartialEq)]
pub struct Column {
    /// Its heading.
    pub name: Wording,
    /// Which end of its words stands in line.
    pub align: Align,
    /// Its part of the width, by proportion with the other columns.
    pub share: f64,
}

impl Paragraph {
    /// Plain sentences.
    pub fn plain(words: &str) -> Self {
        Self { lead: Wording::default(), words: Wording::paragraph(words), small: false }
    }

    /// Sentences after a word in bold.
    pub fn led(lead: &str, words: &str) -> Self {
        Self { lead: Wording::line(lead), ..Self::plain(words) }
    }

    /// A remark.
    pub fn remark(words: &str) -> Self {
        Self { small: true, ..Self::plain(words) }
    }
}

impl Block {
    /// Plain sentences.
    pub fn plain(words: &str) -> Self {
        Self::Paragraph(Paragraph::plain(words))
    }

    /// Sentences after a word in bold.
    pub fn led(lead: &str, words: &str) -> Self {
        Self::Paragraph(Paragraph::led(lead, words))
    }

    /// A remark.
    pub fn remark(words: &str) -> Self {
        Self::Paragraph(Paragraph::remark(words))
    }

    /// A heading within a chapter.
    pub fn section(words: &str) -> Self {
        Self::Section(Wording::line(words))
    }

    /// A heading that the list of contents names.
    pub fn chapter(words: &str) -> Self {
        Self::Chapter(Wording::line(words))
    }

    /// Blocks beside a picture that is drawn as large as it is shown, on a page of this width, cm.
    pub fn beside(blocks: Vec<Self>, picture: Drawing, width: f64) -> Self {
        /// The picture is not squeezed to less, nor the words.
        const BETWEEN: (f64, f64) = (0.3, 0.7);
        let share = (picture.bounds.width() / width + 0.03).clamp(BETWEEN.0, BETWEEN.1);
        Self::Columns(vec![
            Strip { share: 1.0 - share, blocks },
            Strip { share, blocks: vec![Self::Picture(picture)] },
        ])
    }
}

impl Table {
    /// A table without rows yet.
    pub fn new(caption: &str, columns: Vec<Column>) -> Self {
        let caption = Wording::line(caption);
        Self { caption, columns, rows: Vec::new(), remark: Wording::default(), to_fill_in: false }
    }

    /// Adds a row.
    pub fn row<T: Into<Value>>(&mut self, cells: impl IntoIterator<Item = T>) {
        self.rows.push(cells.into_iter().map(Into::into).collect());
    }

    /// The same with words under its last row.
    #[must_use]
    pub fn with_remark(self, words: &str) -> Self {
        Self { remark: Wording::paragraph(words), ..self }
    }

    /// The same without a column, for a place that is too narrow for it.
    #[must_use]
    pub fn without(mut self, column: &str) -> Self {
        if let Some(number) = self.columns.iter().position(|it| it.name.as_str() == column) {
            self.columns.remove(number);
            self.rows.iter_mut().filter(|row| number < row.len()).for_each(|row| drop(row.remove(number)));
        }
        self
    }

    /// The caption, with the unit of the lengths where there are any.
    pub fn caption_in(&self, unit: Unit) -> Wording {
        if self.rows.iter().flatten().any(Value::is_length) {
            Wording::line(&format!("{}, {}", self.caption, unit.tag()))
        } else {
            self.caption.clone()
        }
    }

    /// The cells of every row as a reader of `unit` has them.
    pub fn cells_in(&self, unit: Unit) -> Vec<Vec<Wording>> {
        // as a line: a row is never taller than a page, whatever a person wrote into it
        let cell = |value: &Value| Wording::line(&value.in_column(unit));
        self.rows.iter().map(|row| row.iter().map(cell).collect()).collect()
    }
}

impl Column {
    /// A column of words.
    pub fn words(name: &str, share: f64) -> Self {
        Self { name: Wording::line(name), align: Align::Start, share }
    }

    /// A column of numbers.
    pub fn numbers(name: &str, share: f64) -> Self {
        Self { name: Wording::line(name), align: Align::End, share }
    }
}
