//! A line of text at a place.

use kurbo::{Point, Rect, Vec2};

use super::{
    Ink, Wording,
    font::{rise_and_fall, text_width},
};

/// Which end of a text stands at its place.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Align {
    /// The first letter.
    Start,
    /// The middle.
    Middle,
    /// The last letter.
    End,
}

/// How strong the letters are. Bold is the regular shape drawn round with its own ink, so that both have one width.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Weight {
    /// As the font has it.
    Regular,
    /// Stronger.
    Bold,
}

/// One line of text.
#[derive(Clone, Debug, PartialEq)]
pub struct Text {
    /// Where the baseline begins, is halved or ends, as `align` says.
    pub at: Point,
    /// The height of the em, cm; a capital is 0.714 of it.
    pub size: f64,
    /// The words.
    pub words: Wording,
    /// Which end of the text stands at `at`.
    pub align: Align,
    /// Radians about `at`, clockwise as seen; 0 reads from left to right.
    pub turn: f64,
    /// How strong.
    pub weight: Weight,
    /// How dark.
    pub ink: Ink,
}

impl Text {
    /// Black, regular, level text that begins at `at`; `size` is the height of the em, cm.
    pub fn new(at: Point, size: f64, words: impl Into<Wording>) -> Self {
        Self {
            at,
            size,
            words: words.into(),
            align: Align::Start,
            turn: 0.0,
            weight: Weight::Regular,
            ink: Ink::Black,
        }
    }

    /// The same text, standing at its place with another end.
    #[must_use]
    pub fn aligned(self, align: Align) -> Self {
        Self { align, ..self }
    }

    /// The same text, turned by so many radians, clockwise as seen.
    #[must_use]
    pub fn turned(self, turn: f64) -> Self {
        Self { turn, ..self }
    }

    /// The same text in bold.
    #[must_use]
    pub fn bold(self) -> Self {
        Self { weight: Weight::Bold, ..self }
    }

    /// The same text in another ink.
    #[must_use]
    pub fn inked(self, ink: Ink) -> Self {
        Self { ink, ..self }
    }

    /// The same text, cut off behind an ellipsis where it is wider than `width` cm.
    #[must_use]
    pub fn cut_to(mut self, width: f64) -> Self {
        if self.width() <= width {
            return self;
        }
        let mut words = self.words.as_str().to_owned();
        while words.pop().is_some() {
            self.words = Wording::line(&format!("{}…", words.trim_end()));
            if self.width() <= width {
                break;
            }
        }
        self
    }

    /// The same text moved.
    #[must_use]
    pub fn moved(self, by: Vec2) -> Self {
        Self { at: self.at + by, ..self }
    }

    /// The same text at eight places round `point`, `gap` cm away: right, left, above, below, then the corners. Spots
    /// for [`Labels::place`](super::Labels::place).
    pub fn beside(&self, point: Point, gap: f64) -> [Self; 8] {
        let (rise, fall) = rise_and_fall(self.words.as_str());
        let middle = (rise - fall) / 2.0 * self.size;
        let (above, below) = (-gap - fall * self.size, gap + rise * self.size);
        let diagonal = gap * std::f64::consts::FRAC_1_SQRT_2;
        let (up, down) = (-diagonal - fall * self.size, diagonal + rise * self.size);
        [
            (Align::Start, gap, middle),
            (Align::End, -gap, middle),
            (Align::Middle, 0.0, above),
            (Align::Middle, 0.0, below),
            (Align::Start, diagonal, up),
            (Align::Start, diagonal, down),
            (Align::End, -diagonal, up),
            (Align::End, -diagonal, down),
        ]
        .map(|(align, x, y)| Self { at: point + Vec2::new(x, y), align, turn: 0.0, ..self.clone() })
    }

    /// Length of the baseline, cm.
    pub fn width(&self) -> f64 {
        text_width(self.words.as_str(), self.size)
    }

    /// The paper that the text covers.
    pub fn footprint(&self) -> Footprint {
        let (rise, fall) = rise_and_fall(self.words.as_str());
        let (width, start) = (self.width(), self.start_of_baseline());
        let unturned = Rect::new(start, -rise * self.size, start + width, fall * self.size);
        Footprint::turned(unturned, self.at, self.direction())
    }

    /// The direction of reading, of length 1: the one place where a turn becomes a sine and a cosine.
    pub(super) fn direction(&self) -> Vec2 {
        let (sine, cosine) = self.turn.sin_cos();
        Vec2::new(cosine, sine)
    }

    /// Where the first letter begins, measured along the baseline from `at`, cm.
    pub(super) fn start_of_baseline(&self) -> f64 {
        match self.align {
            Align::Start => 0.0,
            Align::Middle => -self.width() / 2.0,
            Align::End => -self.width(),
        }
    }

    /// Width of the line round each letter that makes it bold, cm; 0 for regular.
    pub(super) fn bold_line(&self) -> f64 {
        match self.weight {
            Weight::Regular => 0.0,
            Weight::Bold => 0.045 * self.size,
        }
    }
}

/// A rectangle that may stand oblique: the paper that a text covers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Footprint {
    centre: Point,
    /// Half the rectangle along its own two directions.
    half: Vec2,
    /// Direction of reading, of length 1.
    along: Vec2,
}

impl Footprint {
    /// A level rectangle.
    pub fn level(rect: Rect) -> Self {
        Self::turned(rect, Point::ORIGIN, Vec2::new(1.0, 0.0))
    }

    /// `rect`, given from `at` as origin, turned about `at` so that it reads along `along`.
    fn turned(rect: Rect, at: Point, along: Vec2) -> Self {
        let centre = rect.center().to_vec2();
        Self {
            centre: at + along * centre.x + along.turn_90() * centre.y,
            half: Vec2::new(rect.width().abs(), rect.height().abs()) / 2.0,
            along,
        }
    }

    /// The same with `gap` cm more on every side.
    #[must_use]
    pub fn with_gap(self, gap: f64) -> Self {
        Self { half: self.half + Vec2::new(gap, gap), ..self }
    }

    /// The level rectangle round it.
    pub fn bounds(&self) -> Rect {
        let across = self.along.turn_90();
        let reach = Vec2::new(
            self.along.x.abs() * self.half.x + across.x.abs() * self.half.y,
            self.along.y.abs() * self.half.x + across.y.abs() * self.half.y,
        );
        Rect::from_points(self.centre - reach, self.centre + reach)
    }

    /// Whether two footprints share any paper; touching does not count.
    pub fn overlaps(&self, other: &Self) -> bool {
        // Two rectangles are apart just when one of their four directions shows a gap between them.
        let between = other.centre - self.centre;
        [self.along, self.along.turn_90(), other.along, other.along.turn_90()]
            .into_iter()
            .all(|axis| self.reach_along(axis) + other.reach_along(axis) > between.dot(axis).abs() + 1e-9)
    }

    /// The length of a straight line from `a` to `b` that runs over the footprint, cm.
    pub fn covered(&self, a: Point, b: Point) -> f64 {
        let own = |point: Point| {
            let from = point - self.centre;
            Vec2::new(from.dot(self.along), from.dot(self.along.turn_90()))
        };
        let (from, way) = (own(a), own(b) - own(a));
        let mut inside = (0.0_f64, 1.0_f64);
        for (start, step, half) in [(from.x, way.x, self.half.x), (from.y, way.y, self.half.y)] {
            if step == 0.0 {
                if start.abs() >= half {
                    return 0.0;
                }
                continue;
            }
            let (t, u) = ((-half - start) / step, (half - start) / step);
            inside = (inside.0.max(t.min(u)), inside.1.min(t.max(u)));
        }
        (inside.1 - inside.0).max(0.0) * way.hypot()
    }

    fn reach_along(&self, axis: Vec2) -> f64 {
        self.along.dot(axis).abs() * self.half.x + self.along.turn_90().dot(axis).abs() * self.half.y
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::{FRAC_PI_2, FRAC_PI_4};

    #[test]
    fn aligned_text_left_and_right_of_its_place() {
        let text = Text::new(Point::new(10.0, 5.0), 1.0, "88");
        for (align, left) in [(Align::Start, 10.0), (Align::Middle, 10.0 - 0.572), (Align::End, 10.0 - 1.144)]
        {
            let bounds = text.clone().aligned(align).footprint().bounds();
            assert!((bounds.x0 - left).abs() < 1e-12 && (bounds.width() - 1.144).abs() < 1e-12, "{bounds:?}");
            assert!(bounds.y1 - 5.0 < 0.02 && bounds.y0 - 5.0 < -0.7);
        }
    }

    #[test]
    fn a_quarter_turn_reading_downwards() {
        let bounds = Text::new(Point::new(10.0, 5.0), 1.0, "88").turned(FRAC_PI_2).footprint().bounds();
        assert!((bounds.y0 - 5.0).abs() < 1e-12 && (bounds.y1 - 6.144).abs() < 1e-12, "{bounds:?}");
        assert!((bounds.x1 - 10.0) > 0.7);
    }

    #[test]
    fn oblique_rectangles_told_apart_though_their_bounds_overlap() {
        let square = Rect::new(-1.0, -1.0, 1.0, 1.0);
        let diamond = Footprint::turned(square, Point::ORIGIN, Vec2::from_angle(FRAC_PI_4));
        let near = Footprint::level(Rect::new(0.8, 0.8, 2.0, 2.0));
        assert!(diamond.bounds().overlaps(near.bounds()));
        assert!(!diamond.overlaps(&near));
        assert!(diamond.overlaps(&near.with_gap(0.2)));
    }

    #[test]
    fn covered_length_of_a_line_through_a_square() {
        let square = Footprint::level(Rect::new(0.0, 0.0, 2.0, 2.0));
        let lengths = [
            ((-1.0, 1.0), (5.0, 1.0), 2.0),
            ((0.0, 0.0), (2.0, 2.0), 8.0_f64.sqrt()),
            ((1.0, 1.0), (1.0, 9.0), 1.0),
            ((-1.0, 3.0), (5.0, 3.0), 0.0),
            ((3.0, 0.0), (5.0, 1.0), 0.0),
        ];
        for (a, b, length) in lengths {
            assert!((square.covered(a.into(), b.into()) - length).abs() < 1e-12);
        }
    }

    #[test]
    fn cut_text_within_its_width() {
        let text = Text::new(Point::ORIGIN, 1.0, "the bow pair of the second eight");
        assert_eq!(text.clone().cut_to(40.0), text);
        let cut = text.clone().cut_to(6.0);
        assert!(cut.width() <= 6.0 && cut.width() > 5.0, "{}", cut.width());
        assert_eq!(cut.words.as_str(), "the bow p…");
        assert_eq!(text.cut_to(0.0).words.as_str(), "…");
    }

    #[test]
    fn eight_spots_all_clear_of_the_point() {
        let point = Point::new(3.0, 4.0);
        let spots = Text::new(Point::ORIGIN, 0.4, "crotch 12g").beside(point, 0.1);
        for spot in &spots {
            assert!(!spot.footprint().overlaps(&Footprint::level(Rect::from_center_size(point, (0.1, 0.1)))));
        }
    }
}
