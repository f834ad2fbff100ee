//! DXF for sewn products, by the layers of ASTM D6673-10 (Sewn Products Pattern Data Interchange; withdrawn 2019), as
//! quoted by third parties; the standard itself was not at hand. A block a piece, millimetres, y up, seven-bit ASCII.
//!
//! | layer | holds | from |
//! |---|---|---|
//! | 1 | outline of the piece, and the system texts | [`DxfMark::Cut`] |
//! | 2, 3 | corners and curve points of the lines on 1, 8 and 14 | those lines |
//! | 4 | notches | [`DxfMark::Notch`] |
//! | 6 | line of the fold | [`DxfMark::Fold`] |
//! | 7 | grain line | [`DxfMark::Grain`] |
//! | 8 | inner lines, drawn and not cut | [`DxfMark::Inner`] |
//! | 13 | drill holes | [`DxfMark::Drill`] |
//! | 14 | sewing lines | [`DxfMark::Sew`] |
//! | 15 | annotation | [`DxfMark::Note`] |
//!
//! Grade reference (5), stripes and plaids (9, 10), inner cut-outs (11) and the special notches and curves from 80 on are
//! not written. The standard names AutoCAD release 13; what is written is the older and plainer shape of release 12
//! (`AC1009`), which readers of release 13 read. There is no date, so that the same pieces give the same bytes.

mod ascii;
mod vertices;

use std::fmt::Write as _;

use kurbo::{BezPath, Line, Point};

use self::{
    ascii::{block_name, drawn},
    vertices::{Run, runs},
};
use super::{Text, number};

const MM_PER_CM: f64 = 10.0;

/// A tenth of a micrometre: what is lost in printing adds nothing to a line's length.
const DECIMALS: usize = 4;

/// Height of the system texts, mm.
const SYSTEM_TEXT: f64 = 5.0;

/// What is said once of all pieces.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct DxfStyle {
    /// `STYLE NAME`: whose pattern, and of which block.
    pub name: String,
    /// `SAMPLE SIZE`: the one size that is written.
    pub size: String,
    /// `AUTHOR`: the program or person who drew it.
    pub author: String,
}

/// A piece ready to cut.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct DxfPiece {
    /// `PIECE NAME`.
    pub name: String,
    /// `QUANTITY`: how many to cut, a pair being two.
    pub quantity: usize,
    /// `MATERIAL`; left out when empty.
    pub material: String,
    /// `ANNOTATION`: one line for the cutter; left out when empty.
    pub annotation: String,
    /// What is drawn, in cm, y down.
    pub marks: Vec<DxfMark>,
}

/// A line or point of a piece, each kind on its own layer.
#[derive(Clone, Debug, PartialEq)]
pub enum DxfMark {
    /// The outline to cut.
    Cut(BezPath),
    /// A line to sew.
    Sew(BezPath),
    /// A line to draw only.
    Inner(BezPath),
    /// The direction of the warp.
    Grain(Line),
    /// The fold of a piece of which half is drawn.
    Fold(Line),
    /// A notch, at its place on the outline to cut.
    Notch(Point),
    /// A drill hole: end of a dart, corner of a pocket.
    Drill(Point),
    /// A note.
    Note(Text),
}

/// The pieces as a DXF file, each a block that is inserted once at its own place.
pub fn to_dxf(style: &DxfStyle, pieces: &[DxfPiece]) -> String {
    let mut file = File(String::new());
    file.section("HEADER", |file| {
        file.tag(9, "$ACADVER");
        file.tag(1, "AC1009");
    });
    let names = block_names(pieces);
    file.section("BLOCKS", |file| {
        for (piece, name) in pieces.iter().zip(&names) {
            file.block(name, style, piece);
        }
    });
    file.section("ENTITIES", |file| {
        for name in &names {
            file.entity("INSERT", 1);
            file.tag(2, name);
            file.point(10, Point::ORIGIN);
        }
        let texts = [
            ("STYLE NAME", &*style.name),
            ("SAMPLE SIZE", &style.size),
            ("AUTHOR", &style.author),
            ("UNITS", "METRIC"),
        ];
        file.system_texts(&texts, Point::ORIGIN);
    });
    file.tag(0, "EOF");
    file.0
}

fn block_names(pieces: &[DxfPiece]) -> Vec<String> {
    let mut names: Vec<String> = Vec::new();
    for piece in pieces {
        let numbered = (names.len() + 1..).map(|number| block_name("", number));
        let mut wanted = std::iter::once(block_name(&piece.name, names.len() + 1)).chain(numbered);
        names.extend(wanted.find(|name| !names.contains(name)));
    }
    names
}

/// The file as far as it is written: pairs of a group code and a value, a line each.
struct File(String);

impl File {
    fn tag(&mut self, code: u16, value: impl std::fmt::Display) {
        let _ = write!(self.0, "{code:>3}\r\n{value}\r\n");
    }

    fn number(&mut self, code: u16, value: f64) {
        let mut text = String::new();
        number(&mut text, value, DECIMALS);
        self.tag(code, text);
    }

    /// A point of the piece, turned to millimetres with y up.
    fn point(&mut self, code: u16, point: Point) {
        self.number(code, point.x * MM_PER_CM);
        self.number(code + 10, -point.y * MM_PER_CM);
        self.number(code + 20, 0.0);
    }

    fn section(&mut self, name: &str, write: impl FnOnce(&mut Self)) {
        self.tag(0, "SECTION");
        self.tag(2, name);
        write(self);
        self.tag(0, "ENDSEC");
    }

    fn entity(&mut self, name: &str, layer: u8) {
        self.tag(0, name);
        self.tag(8, layer);
    }

    fn text(&mut self, layer: u8, at: Point, height: f64, degrees: f64, words: &str) {
        self.entity("TEXT", layer);
        self.point(10, at);
        self.number(40, height);
        self.tag(1, drawn(words));
        if degrees != 0.0 {
            self.number(50, degrees);
        }
    }

    /// Lines of `KEY: VALUE` one under the other, empty ones left out.
    fn system_texts(&mut self, texts: &[(&str, &str)], from: Point) {
        let told = texts.iter().filter(|(_, value)| !value.is_empty());
        for (line, (key, value)) in told.enumerate() {
            let below = 1.5 * line as f64 * SYSTEM_TEXT / MM_PER_CM;
            let at = Point::new(from.x, from.y + below);
            self.text(1, at, SYSTEM_TEXT, 0.0, &format!("{key}: {value}"));
        }
    }

    fn block(&mut self, name: &str, style: &DxfStyle, piece: &DxfPiece) {
        self.entity("BLOCK", 1);
        self.tag(2, name);
        self.tag(70, 0);
        self.point(10, Point::ORIGIN);
        self.tag(3, name);
        let quantity = piece.quantity.to_string();
        let texts = [
            ("PIECE NAME", &*piece.name),
            ("SIZE", &style.size),
            ("QUANTITY", &quantity),
            ("MATERIAL", &piece.material),
            ("ANNOTATION", &piece.annotation),
        ];
        self.system_texts(&texts, Point::ORIGIN);
        for mark in &piece.marks {
            self.mark(mark);
        }
        self.tag(0, "ENDBLK");
        self.tag(8, 1);
    }

    fn mark(&mut self, mark: &DxfMark) {
        match mark {
            DxfMark::Cut(path) => self.lines(1, path),
            DxfMark::Sew(path) => self.lines(14, path),
            DxfMark::Inner(path) => self.lines(8, path),
            DxfMark::Grain(line) => self.line(7, line.p0, line.p1),
            DxfMark::Fold(line) => self.line(6, line.p0, line.p1),
            DxfMark::Notch(at) => self.dot(4, *at),
            DxfMark::Drill(at) => self.dot(13, *at),
            DxfMark::Note(text) => {
                let height = text.size * super::CAP_HEIGHT * MM_PER_CM;
                let start = text.at + text.direction() * text.start_of_baseline();
                self.text(15, start, height, -text.turn.to_degrees(), text.words.as_str());
            }
        }
    }

    fn dot(&mut self, layer: u8, at: Point) {
        self.entity("POINT", layer);
        self.point(10, at);
    }

    fn line(&mut self, layer: u8, from: Point, to: Point) {
        self.entity("LINE", layer);
        self.point(10, from);
        self.point(11, to);
    }

    /// A path as polylines, with its corners on layer 2 and its curve points on layer 3.
    fn lines(&mut self, layer: u8, path: &BezPath) {
        for run in runs(path) {
            self.polyline(layer, &run);
            for vertex in &run.vertices {
                self.dot(if vertex.corner { 2 } else { 3 }, vertex.at);
            }
        }
    }

    fn polyline(&mut self, layer: u8, run: &Run) {
        if let [from, to] = &run.vertices[..]
            && !run.closed
        {
            return self.line(layer, from.at, to.at);
        }
        self.entity("POLYLINE", layer);
        self.tag(66, 1);
        self.point(10, Point::ORIGIN);
        self.tag(70, u8::from(run.closed));
        for vertex in &run.vertices {
            self.entity("VERTEX", layer);
            self.point(10, vertex.at);
        }
        self.entity("SEQEND", layer);
    }
}
