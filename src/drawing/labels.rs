//! Labels that never lie over one another.

use kurbo::{BezPath, Line, Rect};

use super::{Footprint, Text, picture::straight_lines};

/// A label hides as much of a chord as of its curve when the two lie nearer than the width of a strong line, cm.
const FLATNESS: f64 = 0.05;

/// Places labels one by one: each goes to the first of its wanted spots that is free, or, where every free spot lies
/// over a line, to the one that hides least of it. First come, first served; the same calls give the same places.
#[derive(Clone, Debug)]
pub struct Labels {
    paper: Rect,
    gap: f64,
    taken: Vec<Footprint>,
    lines: Vec<Line>,
}

impl Labels {
    /// Labels that stay on `paper`, at least `gap` cm from each other.
    pub fn new(paper: Rect, gap: f64) -> Self {
        Self { paper, gap, taken: Vec::new(), lines: Vec::new() }
    }

    /// Keeps every later label off this part of the paper.
    pub fn keep_off(&mut self, part: Footprint) {
        self.taken.push(part);
    }

    /// Keeps later labels off this line as far as they have a choice.
    pub fn spare(&mut self, path: &BezPath) {
        self.lines.extend(straight_lines(path, FLATNESS));
    }

    /// The label at the best of its wanted spots, best first, or `None` where all are off the paper or taken. The
    /// spot is taken from then on.
    pub fn place(&mut self, spots: impl IntoIterator<Item = Text>) -> Option<Text> {
        self.place_hiding(f64::INFINITY, spots)
    }

    /// Whether a straight line runs over no label and no part to be kept free.
    pub fn lets_pass(&self, line: Line) -> bool {
        self.taken.iter().all(|taken| taken.covered(line.p0, line.p1) == 0.0)
    }

    /// As [`Labels::place`], but only where nothing at all is hidden.
    pub fn place_clear(&mut self, spots: impl IntoIterator<Item = Text>) -> Option<Text> {
        self.place_hiding(0.0, spots)
    }

    fn place_hiding(&mut self, most: f64, spots: impl IntoIterator<Item = Text>) -> Option<Text> {
        let mut best: Option<(f64, Text, Footprint)> = None;
        for spot in spots {
            let print = spot.footprint();
            let wide = print.with_gap(self.gap);
            if !self.paper.contains_rect(print.bounds())
                || self.taken.iter().any(|taken| taken.overlaps(&wide))
            {
                continue;
            }
            let hidden = self.hidden(&wide);
            if hidden <= most && best.as_ref().is_none_or(|(least, ..)| hidden < *least) {
                best = Some((hidden, spot, print));
            }
            if hidden == 0.0 {
                break;
            }
        }
        let (_, label, print) = best?;
        self.taken.push(print);
        Some(label)
    }

    /// The length of spared lines under a footprint, cm.
    fn hidden(&self, print: &Footprint) -> f64 {
        let bounds = print.bounds();
        let near = |line: &&Line| {
            line.p0.x.min(line.p1.x) <= bounds.x1
                && line.p0.x.max(line.p1.x) >= bounds.x0
                && line.p0.y.min(line.p1.y) <= bounds.y1
                && line.p0.y.max(line.p1.y) >= bounds.y0
        };
        self.lines.iter().filter(near).map(|line| print.covered(line.p0, line.p1)).sum()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use kurbo::{Point, Shape};
    use proptest::prelude::*;

    const PAPER: Rect = Rect::new(0.0, 0.0, 30.0, 20.0);

    fn label(words: &str) -> Text {
        Text::new(Point::ORIGIN, 0.5, words)
    }

    #[test]
    fn the_first_spot_taken_when_free() {
        let spots = label("knee").beside(Point::new(10.0, 10.0), 0.2);
        assert_eq!(Labels::new(PAPER, 0.1).place(spots.clone()), Some(spots[0].clone()));
    }

    #[test]
    fn a_spot_off_the_paper_passed_over() {
        let spots = label("hip").beside(Point::new(29.8, 10.0), 0.2);
        assert_eq!(Labels::new(PAPER, 0.1).place(spots.clone()), Some(spots[1].clone()));
    }

    #[test]
    fn a_label_beside_a_line_rather_than_on_it() {
        let mut labels = Labels::new(PAPER, 0.1);
        labels.spare(&Line::new((10.0, 10.0), (20.0, 10.0)).to_path(0.01));
        let spots = label("9").beside(Point::new(10.0, 10.0), 0.2);
        assert_eq!(labels.place(spots.clone()), Some(spots[1].clone()));
    }

    #[test]
    fn no_label_that_hides_a_line_where_none_may() {
        let mut labels = Labels::new(PAPER, 0.1);
        labels.spare(&Line::new((0.0, 10.0), (30.0, 10.0)).to_path(0.01));
        let spots = label("9").beside(Point::new(10.0, 10.0), 0.2);
        assert_eq!(labels.place_clear(spots[..2].to_vec()), None);
        assert_eq!(labels.place_clear(spots.clone()), Some(spots[2].clone()));
    }

    #[test]
    fn nowhere_to_go_without_a_label() {
        let mut labels = Labels::new(PAPER, 0.1);
        labels.keep_off(Footprint::level(PAPER));
        assert_eq!(labels.place(label("9").beside(Point::new(10.0, 10.0), 0.2)), None);
    }

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, rng_seed: prop::test_runner::RngSeed::Fixed(7), cases: 24, ..Default::default() })]
        #[test]
        fn crowded_labels_never_over_one_another(points in prop::collection::vec((0.0..30.0, 0.0..20.0, -3.2..3.2), 1..40)) {
            let mut labels = Labels::new(PAPER, 0.1);
            let mut placed: Vec<Text> = Vec::new();
            for (number, (x, y, turn)) in points.into_iter().enumerate() {
                let text = label(&format!("point {number}"));
                let oblique = Text { at: Point::new(x, y), ..text.clone() }.turned(turn);
                placed.extend(labels.place(std::iter::once(oblique).chain(text.beside(Point::new(x, y), 0.2))));
            }
            for (index, one) in placed.iter().enumerate() {
                prop_assert!(PAPER.contains_rect(one.footprint().bounds()));
                for other in &placed[..index] {
                    prop_assert!(!one.footprint().with_gap(0.0999).overlaps(&other.footprint()));
                }
            }
        }
    }
}
