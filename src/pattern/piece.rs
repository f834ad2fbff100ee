//! A piece ready to cut.

use kurbo::{Affine, BezPath, CubicBez, Line, ParamCurve as _, ParamCurveNearest as _, Point, Vec2};

use super::{Corner, PieceNotch, Run, cut_line};
use crate::{
    curve::{Fault, soundness},
    draft::Dart,
    mistake::Mistake,
    terms::{Side, words},
    voice::Sentence,
};

words! {
    /// What a piece is.
    PieceKind {
        /// From centre front to side seam.
        Front = "front",
        /// From side seam to centre back.
        Back = "back",
        /// The top of a back that is cut along its yoke line, its darts closed.
        Yoke = "yoke",
        /// Half of a band for the waist.
        Waistband = "waistband",
        /// What faces the front that laps over.
        FlyExtension = "fly_extension",
        /// What lies behind the zip.
        FlyGuard = "fly_guard",
    }
}

/// How many to cut, right side of the cloth up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Copies {
    /// As the piece is drawn.
    pub as_drawn: usize,
    /// As its mirror image.
    pub mirrored: usize,
}

impl Copies {
    /// One for each side of the wearer.
    pub const PAIR: Self = Self { as_drawn: 1, mirrored: 1 };
    /// One as drawn.
    pub const ONE: Self = Self { as_drawn: 1, mirrored: 0 };
    /// One as the mirror image.
    pub const ONE_MIRRORED: Self = Self { as_drawn: 0, mirrored: 1 };

    /// All together.
    pub fn count(self) -> usize {
        self.as_drawn + self.mirrored
    }
}

/// A line that is drawn on a piece and not cut.
#[derive(Clone, Debug, PartialEq)]
pub struct DrawnLine {
    /// What kind of line.
    pub kind: LineKind,
    /// What it is called on the piece.
    pub name: &'static str,
    /// Where it runs.
    pub path: BezPath,
}

/// Where the words of a piece stand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LabelSpot {
    /// The upper left corner of the words, as they are read.
    pub at: Point,
    /// How they are turned, radians, clockwise as seen.
    pub turn: f64,
    /// The longest line, cm.
    pub width: f64,
}

/// What a drawn line is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LineKind {
    /// A level, by marks at its ends or across the piece.
    Level,
    /// Folded here.
    Fold,
    /// Where a centre or a side comes to lie.
    Place,
    /// A line of style.
    Style,
}

/// A piece ready to cut.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece {
    /// What it is.
    pub kind: PieceKind,
    /// The wearer's side that it is for.
    pub side: Side,
    /// How many to cut.
    pub copies: Copies,
    /// The sewing line round the piece, walked with the piece to its right.
    pub runs: Vec<Run>,
    /// The closed line to cut.
    pub cut_line: Vec<CubicBez>,
    /// The direction of the warp: upright, from top to bottom.
    pub grain: Line,
    /// Marks across the edges at which pieces are matched.
    pub notches: Vec<PieceNotch>,
    /// Darts of the waist.
    pub darts: Vec<Dart>,
    /// Lines that are drawn and not cut.
    pub lines: Vec<DrawnLine>,
    /// Where its words stand.
    pub label: LabelSpot,
    /// What else to know when cutting or sewing it, in one line.
    pub remark: Option<Sentence>,
}

impl Piece {
    /// A piece with its cut line and nothing drawn on it yet.
    ///
    /// # Errors
    /// When the allowances leave the cut line no room.
    pub(super) fn new(
        kind: PieceKind,
        side: Side,
        copies: Copies,
        runs: Vec<Run>,
        grain: Line,
        label: LabelSpot,
    ) -> Result<Self, Mistake> {
        let cut_line = sound_cut_line(&runs).ok_or_else(|| {
            Mistake::new(format!("the allowances of the {} run into one another", spoken(kind)))
                .help("give less under `[trousers.allowance]`")
        })?;
        let (notches, darts, lines) = (Vec::new(), Vec::new(), Vec::new());
        Ok(Self { kind, side, copies, runs, cut_line, grain, notches, darts, lines, label, remark: None })
    }

    /// The piece carried by a turn or a move, which keeps its right side up.
    #[must_use]
    pub(super) fn turned(mut self, by: Affine) -> Self {
        for run in &mut self.runs {
            run.seam = run.seam.moved(by);
            if let Corner::Mouth(dart) = &mut run.corner {
                *dart = moved_dart(*dart, by);
            }
        }
        self.cut_line.iter_mut().for_each(|piece| *piece = by * *piece);
        self.grain = by * self.grain;
        let turn = by.with_translation(Vec2::ZERO);
        self.label.at = by * self.label.at;
        self.label.turn += (turn * Point::new(1.0, 0.0)).to_vec2().atan2();
        for notch in &mut self.notches {
            notch.point = by * notch.point;
            notch.out = (turn * notch.out.to_point()).to_vec2();
        }
        self.darts.iter_mut().for_each(|dart| *dart = moved_dart(*dart, by));
        self.lines.iter_mut().for_each(|line| line.path.apply_affine(by));
        self
    }

    /// What the piece is called in a sentence.
    pub fn name(&self) -> &'static str {
        spoken(self.kind)
    }

    /// The line to cut, closed.
    pub fn cut_path(&self) -> BezPath {
        closed(self.cut_line.iter())
    }

    /// The sewing line, closed; straight over the mouths of darts.
    pub fn sew_path(&self) -> BezPath {
        closed(self.runs.iter().flat_map(|run| run.seam.cubics()))
    }

    /// From the piece's own place to how it is shown: as it lies on the right side of the cloth, or for a piece that is
    /// cut as its mirror image only, turned over.
    pub fn face(&self) -> Affine {
        if self.copies.as_drawn == 0 { Affine::scale_non_uniform(-1.0, 1.0) } else { Affine::IDENTITY }
    }
}

/// The cut line, if it is closed and does not cross itself.
pub(super) fn sound_cut_line(runs: &[Run]) -> Option<Vec<CubicBez>> {
    cut_line(runs).filter(|line| {
        let fault: Option<Fault> = soundness(line);
        fault.is_none()
    })
}

impl Piece {
    /// The cut line runs nowhere inside the sewing line: every stretch of it leaves something to sew with.
    pub(super) fn is_cut_outside(&self) -> bool {
        /// Chords and places of a piece that are looked at: a cut line follows its seam.
        const CHORDS: usize = 8;
        const PLACES: [f64; 2] = [0.5, 1.0];
        /// An allowance of nothing is cut on the sewing line, which is looked at by chords, cm.
        const BESIDE: f64 = 0.1;
        let sewn: Vec<Point> = self
            .runs
            .iter()
            .flat_map(|run| run.seam.cubics())
            .flat_map(|piece| (0..CHORDS).map(|step| piece.eval(step as f64 / CHORDS as f64)))
            .collect();
        let ends = || sewn.iter().zip(sewn.iter().cycle().skip(1)).map(|(from, to)| Line::new(*from, *to));
        let inside = |at: Point| {
            let crossed = |side: &Line| {
                (side.p0.y > at.y) != (side.p1.y > at.y)
                    && at.x
                        < side.p0.x + (side.p1.x - side.p0.x) * (at.y - side.p0.y) / (side.p1.y - side.p0.y)
            };
            ends().filter(crossed).count() % 2 == 1
                && ends().all(|side| side.nearest(at, BESIDE * BESIDE).distance_sq > BESIDE * BESIDE)
        };
        !self.cut_line.iter().any(|piece| PLACES.iter().any(|t| inside(piece.eval(*t))))
    }
}

fn moved_dart(dart: Dart, by: Affine) -> Dart {
    Dart { apex: by * dart.apex, legs: dart.legs.map(|leg| by * leg) }
}

fn spoken(kind: PieceKind) -> &'static str {
    match kind {
        PieceKind::Front => "front",
        PieceKind::Back => "back",
        PieceKind::Yoke => "yoke",
        PieceKind::Waistband => "waistband",
        PieceKind::FlyExtension => "fly extension",
        PieceKind::FlyGuard => "fly guard",
    }
}

fn closed<'a>(pieces: impl Iterator<Item = &'a CubicBez>) -> BezPath {
    let mut path = BezPath::new();
    let mut at = None;
    for piece in pieces {
        match at {
            None => path.move_to(piece.p0),
            Some(at) if piece.p0.distance(at) > 1e-6 => path.line_to(piece.p0),
            Some(_) => {}
        }
        path.curve_to(piece.p1, piece.p2, piece.p3);
        at = Some(piece.p3);
    }
    path.close_path();
    path
}
