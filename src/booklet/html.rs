//! One HTML page that needs nothing else: letters and pictures are in it, it runs no script and asks for no file.

use std::fmt::{Result, Write};

use base64::{Engine, prelude::BASE64_STANDARD};

use super::{Block, Booklet, Paragraph, Strip, Table};
use crate::{
    drawing::{Align, Drawing, FONT_FILE, Wording},
    unit::Unit,
};

/// How everything looks, on a screen, a phone and paper.
const STYLE: &str = include_str!("style.css");
/// Refuses, in every browser, what the page has no need of: scripts, files from elsewhere.
const POLICY: &str =
    "default-src 'none'; style-src 'unsafe-inline'; font-src data:; base-uri 'none'; form-action 'none'";

impl Booklet {
    /// The booklet as a page of HTML.
    pub fn to_html(&self) -> String {
        let mut out = String::new();
        // Writing to a string cannot fail.
        let _ = self.write(&mut out);
        out
    }

    fn write(&self, out: &mut String) -> Result {
        let name = Escaped(self.name.as_str());
        writeln!(out, "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">")?;
        // Near the top, so that the file tells which program made it.
        writeln!(out, "<meta name=\"generator\" content=\"breeks\">")?;
        writeln!(out, "<meta http-equiv=\"Content-Security-Policy\" content=\"{POLICY}\">")?;
        writeln!(out, "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">")?;
        writeln!(out, "<meta name=\"referrer\" content=\"no-referrer\">")?;
        writeln!(out, "<title>{name}</title>")?;
        writeln!(out, "<meta name=\"description\" content=\"{}\">", Escaped(self.description.as_str()))?;
        let font = BASE64_STANDARD.encode(FONT_FILE);
        writeln!(out, "<style>")?;
        writeln!(
            out,
            "@font-face {{ font-family: Sheet; src: url(data:font/ttf;base64,{font}) format(\"truetype\"); }}"
        )?;
        writeln!(out, ":root {{ --points: {}pt; }}", self.lettering.points)?;
        writeln!(out, "{STYLE}</style>\n</head>\n<body>\n<header>")?;
        writeln!(out, "<h1>{}</h1>", Escaped(self.title.as_str()))?;
        self.write_contents(out)?;
        writeln!(out, "</header>\n<main>")?;
        let mut chapter = 0;
        for block in &self.blocks {
            if let Block::Chapter(words) = block {
                chapter += 1;
                writeln!(out, "<h2 id=\"chapter-{chapter}\">{}</h2>", Escaped(words.as_str()))?;
            } else {
                write_block(out, block, self.unit)?;
            }
        }
        writeln!(out, "</main>\n<footer><p>{name}</p></footer>\n</body>\n</html>")
    }

    fn write_contents(&self, out: &mut String) -> Result {
        /// A page with fewer chapters is seen at a glance.
        const FEWEST: usize = 4;
        let chapters: Vec<&Wording> = self
            .blocks
            .iter()
            .filter_map(|block| match block {
                Block::Chapter(words) => Some(words),
                _ => None,
            })
            .collect();
        if chapters.len() < FEWEST {
            return Ok(());
        }
        writeln!(out, "<nav aria-label=\"Contents\"><ol>")?;
        for (number, words) in chapters.iter().enumerate() {
            writeln!(out, "<li><a href=\"#chapter-{}\">{}</a></li>", number + 1, Escaped(words.as_str()))?;
        }
        writeln!(out, "</ol></nav>")
    }
}

fn write_block(out: &mut String, block: &Block, unit: Unit) -> Result {
    match block {
        Block::Chapter(words) => writeln!(out, "<h2>{}</h2>", Escaped(words.as_str())),
        Block::Section(words) => writeln!(out, "<h3>{}</h3>", Escaped(words.as_str())),
        Block::Paragraph(paragraph) => write_paragraph(out, paragraph),
        Block::Sum(words) => writeln!(out, "<p class=\"sum\">{}</p>", Escaped(words.as_str())),
        Block::List(rows) => {
            writeln!(out, "<ul>")?;
            for words in rows {
                writeln!(out, "<li>{}</li>", Escaped(words.as_str()))?;
            }
            writeln!(out, "</ul>")
        }
        Block::Table(table) => write_table(out, table, unit),
        Block::Picture(drawing) => write_picture(out, drawing),
        Block::Columns(strips) => write_columns(out, strips, unit),
    }
}

fn write_paragraph(out: &mut String, paragraph: &Paragraph) -> Result {
    let class = if paragraph.small { " class=\"remark\"" } else { "" };
    let words = Escaped(paragraph.words.as_str());
    if paragraph.lead.as_str().is_empty() {
        writeln!(out, "<p{class}>{words}</p>")
    } else {
        writeln!(out, "<p{class}><strong>{}</strong> {words}</p>", Escaped(paragraph.lead.as_str()))
    }
}

fn write_picture(out: &mut String, drawing: &Drawing) -> Result {
    /// A wider picture would have letters too small for a phone, were it shown whole there, cm.
    const PHONE: f64 = 11.0;
    if drawing.bounds.width() > PHONE {
        writeln!(out, "<figure>\n<div class=\"wide\" role=\"group\" tabindex=\"0\" aria-label=\"Picture\">")?;
        writeln!(out, "{}</div>", drawing.to_svg_element())?;
    } else {
        write!(out, "<figure>\n{}", drawing.to_svg_element())?;
    }
    if !drawing.title.as_str().is_empty() {
        writeln!(out, "<figcaption>{}</figcaption>", Escaped(drawing.title.as_str()))?;
    }
    writeln!(out, "</figure>")
}

fn write_columns(out: &mut String, strips: &[Strip], unit: Unit) -> Result {
    writeln!(out, "<div class=\"columns\">")?;
    for strip in strips {
        writeln!(out, "<div style=\"flex:{:.2}\">", strip.share)?;
        for block in &strip.blocks {
            write_block(out, block, unit)?;
        }
        writeln!(out, "</div>")?;
    }
    writeln!(out, "</div>")
}

/// A table that is wider than a phone is moved under the finger, and by the keys of whoever has no finger to spare.
fn write_table(out: &mut String, table: &Table, unit: Unit) -> Result {
    let caption = table.caption_in(unit);
    let caption = Escaped(caption.as_str());
    writeln!(out, "<div class=\"table\" role=\"group\" tabindex=\"0\" aria-label=\"{caption}\">")?;
    writeln!(out, "<table{}>", if table.to_fill_in { " class=\"boxes\"" } else { "" })?;
    writeln!(out, "<caption>{caption}</caption>")?;
    write!(out, "<thead><tr>")?;
    let class = |align: Align| match align {
        Align::Start => "",
        Align::Middle => " class=\"middle\"",
        Align::End => " class=\"number\"",
    };
    for column in &table.columns {
        let name = column.name.as_str();
        if name.is_empty() {
            write!(out, "<td></td>")?;
        } else {
            write!(out, "<th scope=\"col\"{}>{}</th>", class(column.align), Escaped(name))?;
        }
    }
    writeln!(out, "</tr></thead>\n<tbody>")?;
    for row in table.cells_in(unit) {
        write!(out, "<tr>")?;
        for (number, (cell, column)) in row.iter().zip(&table.columns).enumerate() {
            let words = Escaped(cell.as_str());
            let class = class(column.align);
            if number == 0 && !cell.as_str().is_empty() {
                write!(out, "<th scope=\"row\"{class}>{words}</th>")?;
            } else {
                write!(out, "<td{class}>{words}</td>")?;
            }
        }
        writeln!(out, "</tr>")?;
    }
    writeln!(out, "</tbody>\n</table>\n</div>")?;
    if !table.remark.as_str().is_empty() {
        writeln!(out, "<p class=\"remark\">{}</p>", Escaped(table.remark.as_str()))?;
    }
    Ok(())
}

/// Text with the signs replaced that mean something to a reader of HTML.
struct Escaped<'a>(&'a str);

impl std::fmt::Display for Escaped<'_> {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        for letter in self.0.chars() {
            match letter {
                '&' => out.write_str("&amp;")?,
                '<' => out.write_str("&lt;")?,
                '>' => out.write_str("&gt;")?,
                '"' => out.write_str("&quot;")?,
                _ => std::fmt::Write::write_char(out, letter)?,
            }
        }
        Ok(())
    }
}
