//! Paths read from their text and measured with many short chords.

/// x and y, cm.
pub(crate) type Place = [f64; 2];

/// One part of a path: the two ends of a line, or the four points of a cubic.
#[derive(Clone, Debug)]
pub(crate) struct Part(Vec<Place>);

/// How many chords stand for a cubic: on the longest seam of a trouser they miss less than a thousandth of a millimetre.
const CHORDS: usize = 1500;

impl Part {
    pub(crate) fn start(&self) -> Place {
        self.0[0]
    }

    pub(crate) fn end(&self) -> Place {
        self.0[self.0.len() - 1]
    }

    /// The direction in which it leaves its start.
    pub(crate) fn leaves(&self) -> Place {
        minus(self.0[1], self.0[0])
    }

    /// The direction in which it reaches its end.
    pub(crate) fn arrives(&self) -> Place {
        minus(self.end(), self.0[self.0.len() - 2])
    }

    pub(crate) fn length(&self) -> f64 {
        self.corners().windows(2).map(|pair| distance(pair[0], pair[1])).sum()
    }

    fn corners(&self) -> Vec<Place> {
        match self.0[..] {
            [from, to] => vec![from, to],
            _ => (0..=CHORDS).map(|step| self.at(step as f64 / CHORDS as f64)).collect(),
        }
    }

    /// De Casteljau: handles halved again and again, which is how a cubic is defined.
    fn at(&self, t: f64) -> Place {
        let mut points = self.0.clone();
        while points.len() > 1 {
            points = points.windows(2).map(|pair| between(pair[0], pair[1], t)).collect();
        }
        points[0]
    }
}

/// A path as the JSON prints it.
#[derive(Clone, Debug)]
pub(crate) struct Path {
    parts: Vec<Part>,
    pub(crate) closed: bool,
}

impl Path {
    /// Reads absolute `M`, `L`, `C` and `Z`; anything else is a broken contract.
    pub(crate) fn read(text: &str) -> Self {
        let mut words = text.split(' ');
        let (mut parts, mut at, mut closed) = (Vec::new(), None, false);
        while let Some(word) = words.next() {
            assert!(!closed, "something after the end of {text}");
            let mut place =
                || [(); 2].map(|()| words.next().expect("two numbers").parse().expect("a number"));
            match (word, at) {
                ("M", None) => at = Some(place()),
                ("L", Some(from)) => parts.push(Part(vec![from, place()])),
                ("C", Some(from)) => parts.push(Part(vec![from, place(), place(), place()])),
                ("Z", Some(_)) => closed = true,
                _ => panic!("{word} in {text}"),
            }
            at = parts.last().map(Part::end).or(at);
        }
        assert!(!parts.is_empty(), "{text}");
        Self { parts, closed }
    }

    pub(crate) fn parts(&self) -> Vec<Part> {
        self.parts.clone()
    }

    pub(crate) fn start(&self) -> Place {
        self.parts[0].start()
    }

    pub(crate) fn end(&self) -> Place {
        self.parts[self.parts.len() - 1].end()
    }

    pub(crate) fn leaves(&self) -> Place {
        self.parts[0].leaves()
    }

    pub(crate) fn arrives(&self) -> Place {
        self.parts[self.parts.len() - 1].arrives()
    }

    pub(crate) fn length(&self) -> f64 {
        self.parts.iter().map(Part::length).sum()
    }

    /// The length from the start to `place`; `None` where the path does not pass it within a hundredth of a millimetre.
    pub(crate) fn length_to(&self, place: Place) -> Option<f64> {
        const PASSED: f64 = 0.001;
        let mut walked = 0.0;
        let mut nearest: Option<(f64, f64)> = None;
        for part in &self.parts {
            for pair in part.corners().windows(2) {
                let chord = distance(pair[0], pair[1]);
                let ([x, y], [dx, dy]) = (minus(place, pair[0]), minus(pair[1], pair[0]));
                let along = ((x * dx + y * dy) / chord).clamp(0.0, chord);
                let off = distance(place, between(pair[0], pair[1], along / chord));
                if nearest.is_none_or(|(least, _)| off < least) {
                    nearest = Some((off, walked + along));
                }
                walked += chord;
            }
        }
        nearest.filter(|(off, _)| *off < PASSED).map(|(_, length)| length)
    }

    /// No part and no handle of length zero.
    pub(crate) fn has_no_empty_part(&self) -> bool {
        self.parts.iter().all(|part| {
            part.start() != part.end() && part.leaves() != [0.0, 0.0] && part.arrives() != [0.0, 0.0]
        })
    }

    /// The least and the greatest x of the path at the height `y`.
    pub(crate) fn reach_at(&self, y: f64) -> Option<(f64, f64)> {
        let mut reach: Option<(f64, f64)> = None;
        for pair in self.parts.iter().flat_map(|part| {
            let corners = part.corners();
            corners.windows(2).map(|pair| [pair[0], pair[1]]).collect::<Vec<_>>()
        }) {
            let [from, to] = pair;
            if (from[1] - y) * (to[1] - y) > 0.0 {
                continue;
            }
            let met = if from[1] == to[1] {
                vec![from[0], to[0]]
            } else {
                vec![between(from, to, (y - from[1]) / (to[1] - from[1]))[0]]
            };
            for x in met {
                reach = Some(reach.map_or((x, x), |(least, most)| (least.min(x), most.max(x))));
            }
        }
        reach
    }
}

pub(crate) fn distance(a: Place, b: Place) -> f64 {
    let [x, y] = minus(b, a);
    (x * x + y * y).sqrt()
}

/// The angle at `corner` from `a` to `b`, radians.
pub(crate) fn angle(corner: Place, a: Place, b: Place) -> f64 {
    let ([ax, ay], [bx, by]) = (minus(a, corner), minus(b, corner));
    (ax * by - ay * bx).atan2(ax * bx + ay * by)
}

/// `place` turned about `centre` by so many radians.
pub(crate) fn turned(place: Place, centre: Place, by: f64) -> Place {
    let [x, y] = minus(place, centre);
    [centre[0] + x * by.cos() - y * by.sin(), centre[1] + x * by.sin() + y * by.cos()]
}

fn minus(a: Place, b: Place) -> Place {
    [a[0] - b[0], a[1] - b[1]]
}

fn between(a: Place, b: Place, t: f64) -> Place {
    [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]
}

/// y = x squared from 0 to 1, whose length has a closed form.
#[test]
fn parabola_as_a_cubic() {
    let path = Path::read("M 0 0 C 0.33333333333 0 0.66666666667 0.33333333333 1 1");
    let length = 0.5 * 5.0_f64.sqrt() + 0.25 * (2.0 + 5.0_f64.sqrt()).ln();
    assert!((path.length() - length).abs() < 1e-6, "{}", path.length());
    let (least, most) = path.reach_at(0.25).expect("it passes there");
    assert!(least == most && (most - 0.5).abs() < 1e-6);
}
