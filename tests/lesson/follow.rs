//! A student who has the printed lesson and nothing else: follows its rules with ruler and sums of their own.

use std::collections::BTreeMap;

use breeks::unit::Unit;

use crate::page::{Seen, seen};

/// Where a point lies, cm: towards the side and down, from the first point.
pub(crate) type Place = [f64; 2];

/// What the student drew.
#[derive(Clone, Debug, Default)]
pub(crate) struct Paper {
    /// Measurements, ease, style and quantities by their names, and levels by theirs.
    pub(crate) lengths: BTreeMap<String, f64>,
    /// Points by their names.
    pub(crate) points: BTreeMap<String, Place>,
    /// How far the crease stands from the first point.
    pub(crate) crease: f64,
    /// Sums and places in which the lesson's own figures were found to agree.
    pub(crate) agreed: usize,
    /// Panel and role: recipe's point, as constructed and as trued.
    pub(crate) trued: BTreeMap<(String, String), (String, Place, Place)>,
    /// Panel and role: moved by all corrections together.
    pub(crate) moved: BTreeMap<(String, String), Place>,
    /// Panel and role: when finished.
    pub(crate) finished: BTreeMap<(String, String), Place>,
    /// Panel and name of a bent line: the roles at its ends, and how far off the straight line between them it lies.
    pub(crate) bent: BTreeMap<(String, String), ([String; 2], Vec<Place>)>,
    /// Panel: the darts, each with its two legs and its end.
    pub(crate) darts: BTreeMap<String, Vec<Place>>,
    /// Half of the last figure that is printed.
    half: f64,
    /// Sums that came out exactly as printed.
    pub(crate) exact: usize,
}

/// Follows a printed lesson; all that is drawn is in its unit.
pub(crate) fn follow(html: &str, unit: Unit) -> Paper {
    let page = seen(html);
    // Half of the last figure that is printed: a hundredth of a centimetre, a sixteenth of an inch.
    let half = if unit == Unit::Cm { 0.005 } else { 0.5 / 16.0 };
    let mut paper = Paper { half, ..Paper::default() };
    let mut heading = String::new();
    let mut sums: Vec<String> = Vec::new();
    let mut doing = String::new();
    let mut made = String::new();
    for item in page {
        match item {
            Seen::Heading(words) => {
                heading = words;
                sums.clear();
                doing.clear();
            }
            Seen::Sum(sum) => {
                let read = ["Measure ", "Square a level ", "Draw the curve "];
                if is_step(&heading) && read.iter().any(|start| doing.starts_with(start)) {
                    let (name, printed) = sum.split_once(" = ").expect("a name and its length");
                    paper.measured(name, length(printed), &doing);
                } else if is_step(&heading) && doing.is_empty() {
                    paper.quantity(&sum);
                } else {
                    sums.push(sum);
                }
            }
            Seen::Words { lead, words } if lead == "Do." && is_step(&heading) => doing = words,
            Seen::Words { words, .. } if words.starts_with("Check: ") => {
                made = paper.mark(&doing, &sums);
                paper.check(&made, &words);
            }
            Seen::Words { lead, words } if lead == "Why." && is_step(&heading) => {
                if words.to_lowercase().contains("it lies on the crease") && !doing.is_empty() {
                    paper.crease = paper.points[&made][0];
                }
            }
            Seen::Words { .. } => {}
            Seen::Table { caption, rows } => paper.table(&caption, &rows[1..]),
        }
    }
    paper
}

fn is_step(heading: &str) -> bool {
    let rest = heading.strip_prefix("Front ").or_else(|| heading.strip_prefix("Back "));
    rest.is_some_and(|rest| rest.starts_with(|letter: char| letter.is_ascii_digit()))
}

impl Paper {
    fn table(&mut self, caption: &str, rows: &[Vec<String>]) {
        if caption.starts_with("Measurements, without ease") || caption.starts_with("Ease, style") {
            for row in rows {
                self.lengths.insert(row[0].clone(), number(&row[1]));
            }
        } else if caption.starts_with("Level lines") {
            self.lengths.insert("waist line".to_owned(), 0.0);
            for row in rows {
                if let Some(ladder) = row[1].strip_prefix("by ") {
                    let exact = self.ladder(&format!("{ladder} = {}", row[2]));
                    self.agree(exact, number(&row[2]), &row[0]);
                    self.lengths.insert(row[0].clone(), exact);
                    continue;
                }
                let (rule, numbers) = row[1].split_once(" = ").unwrap_or((&row[1], &row[1]));
                let exact = self.value(rule);
                self.agree(exact, number(&row[2]), &row[0]);
                self.comes_out(numbers, number(&row[2]), &row[0]);
                self.lengths.insert(row[0].clone(), exact);
            }
        } else if let Some((panel, _)) = caption.split_once(": its points as constructed") {
            for row in rows {
                let [x, y, trued_x, trued_y] = [2, 3, 4, 5].map(|cell| number(&row[cell]));
                let entry = (row[1].clone(), [x, y], [trued_x, trued_y]);
                self.trued.insert((panel_of(panel), row[0].clone()), entry);
            }
        } else if caption.contains(": points moved") {
            for row in rows {
                let place = self.moved.entry((row[1].clone(), row[0].clone())).or_default();
                place[0] += number(&row[2]);
                place[1] += number(&row[3]);
            }
        } else if let Some((line, ends)) = caption.split_once(", off the straight line from ") {
            let (panel, name) =
                line.strip_prefix("The ").and_then(|line| line.split_once(' ')).expect("a line");
            let ends = ends.split(',').next().expect("two points");
            let (from, to) = ends.split_once(" to ").expect("two points");
            let rows = rows.iter().map(|row| [number(&row[0]), number(&row[1])]).collect();
            let key = (panel.to_owned(), name.to_owned());
            self.bent.insert(key, ([from.to_owned(), to.to_owned()], rows));
        } else if let Some((panel, _)) = caption.split_once(" darts: where they stand") {
            let places = rows.iter().map(|row| [number(&row[2]), number(&row[3])]).collect();
            self.darts.insert(panel_of(panel), places);
        } else if caption.starts_with("What truing took off or gave") {
            for row in rows {
                let [joined, trued, gained] = [2, 3, 4].map(|cell| number(&row[cell].replace('+', "")));
                assert!((trued - joined - gained).abs() < 1e-6, "{row:?}");
            }
        } else if let Some((panel, _)) = caption.split_once(": its points when finished") {
            for row in rows {
                let place = [number(&row[1]), number(&row[2])];
                self.finished.insert((panel_of(panel), row[0].clone()), place);
            }
        }
    }

    /// What is measured on the paper: straight from point to point, along a curve, or a point's height.
    fn measured(&mut self, name: &str, printed: f64, doing: &str) {
        let exact = if let Some(points) = doing.strip_prefix("Measure straight from ") {
            let places: Vec<Place> =
                points.trim_end_matches('.').split(" to ").map(|name| self.points[name]).collect();
            places.windows(2).map(|ends| (ends[1][0] - ends[0][0]).hypot(ends[1][1] - ends[0][1])).sum()
        } else if let Some(point) = doing.strip_prefix("Square a level line through ") {
            self.points[point.trim_end_matches('.')][1]
        } else {
            assert!(doing.starts_with("Draw the curve from "), "{doing}");
            // A curve is drawn by eye; what the lesson prints of it is taken.
            printed
        };
        self.agree(exact, printed, name);
        self.lengths.insert(name.to_owned(), exact);
    }

    /// `front extension = 1/16 hip + 1.3 = 101.5/16 + 1.3 = 7.64 cm`, or by a ladder.
    fn quantity(&mut self, sum: &str) {
        let (name, rule) = sum.split_once(" = ").expect("a name and its rule");
        let exact = match rule.strip_prefix("by ") {
            Some(ladder) => self.ladder(ladder),
            None => self.sum(rule),
        };
        let printed = rule.rsplit(" = ").next().expect("a result");
        self.agree(exact, length(printed), name);
        self.lengths.insert(name.to_owned(), exact);
    }

    /// `hip 101.5 cm: 3 at 88, 3.25 at 104, in proportion between = 3.21 cm`.
    fn ladder(&mut self, ladder: &str) -> f64 {
        let (by, rest) = ladder.split_once(": ").expect("a size and its rungs");
        let by = by.trim_end_matches(" cm").trim_end_matches(" in");
        let digits = by.find(|letter: char| letter.is_ascii_digit()).expect("a name and its size");
        let (name, printed_size) = (by[..digits].trim(), number(&by[digits..]));
        let size = self.lengths[name];
        let (rungs, result) = rest.rsplit_once(" = ").expect("a result");
        let (rungs, ramp) = match rungs.strip_suffix(", in proportion between") {
            Some(rungs) => (rungs, true),
            None => (rungs, false),
        };
        let rungs: Vec<[f64; 2]> = rungs
            .split(", ")
            .map(|rung| {
                let word = if ramp { " at " } else { " from " };
                let (value, at) = rung.split_once(word).expect("a value at a size");
                [number(at), number(value)]
            })
            .collect();
        let climb = |size: f64| {
            if size <= rungs[0][0] {
                return rungs[0][1];
            }
            for pair in rungs.windows(2) {
                let ([from, low], [to, high]) = (pair[0], pair[1]);
                if size < to {
                    return if ramp { low + (high - low) / (to - from) * (size - from) } else { low };
                }
            }
            rungs[rungs.len() - 1][1]
        };
        self.same(climb(printed_size), length(result), ladder);
        climb(size)
    }

    /// `1/16 hip + 1.3 = 101.5/16 + 1.3 = 7.64 cm`: worked out from the names; the lesson's own stages must agree.
    fn sum(&mut self, sum: &str) -> f64 {
        let stages: Vec<&str> = sum.trim_end_matches(" cm").trim_end_matches(" in").split(" = ").collect();
        let exact = self.value(stages[0]);
        let printed = number(stages[stages.len() - 1]);
        self.agree(exact, printed, sum);
        for stage in &stages[1..] {
            self.comes_out(stage, printed, sum);
        }
        exact
    }

    /// Takes the pencil as a `Do` says, with the exact lengths that its sums give. Returns the name of the new point.
    fn mark(&mut self, doing: &str, sums: &[String]) -> String {
        let exact: Vec<(f64, f64)> = sums
            .iter()
            .map(|sum| {
                let printed = length(sum.rsplit(" = ").next().expect("a result"));
                (printed, self.sum(sum))
            })
            .collect();
        let long = |text: &str| {
            let printed = length(text);
            let same = exact.iter().find(|(of, _)| (of.abs() - printed.abs()).abs() < 1e-9);
            same.map_or(printed, |(_, exact)| if printed < 0.0 { -exact.abs() } else { exact.abs() })
        };
        let doing = doing.strip_prefix("Mark ").and_then(|rest| rest.strip_suffix('.')).expect("a mark");
        let (name, place) = if let Some((name, rest)) = doing.split_once(" on the line from ") {
            let (ends, how) = rest.split_once(": ").expect("how far");
            let (from, toward) = ends.split_once(" to ").expect("two points");
            let (a, b) = (self.points[from], self.points[toward]);
            let place = if let Some((part, end)) = how.split_once(" of the way from ") {
                let part =
                    if end.ends_with(", backwards") { -value_of_number(part) } else { value_of_number(part) };
                [a[0] + part * (b[0] - a[0]), a[1] + part * (b[1] - a[1])]
            } else {
                let (far, end, sign) = if let Some((far, _)) = how.split_once(" beyond ") {
                    (far, b, 1.0)
                } else if let Some((far, _)) = how.split_once(" before ") {
                    (far, b, -1.0)
                } else {
                    (how.split_once(" from ").expect("beyond, before or from").0, a, 1.0)
                };
                let whole = (b[0] - a[0]).hypot(b[1] - a[1]);
                let far = sign * long(far) / whole;
                [end[0] + far * (b[0] - a[0]), end[1] + far * (b[1] - a[1])]
            };
            (name, place)
        } else if let Some((name, rest)) = doing.split_once(" where ") {
            let (rest, way) = match rest.split_once(", of the two places the one farther ") {
                Some((rest, way)) => (rest, Some(way)),
                None => (rest, None),
            };
            let (line, on) = rest.split_once(" meets ").expect("a line to meet");
            (name, self.line(line, &long).meet(&self.line(on, &long), way))
        } else if let Some(doing) = doing.strip_suffix(", laid obliquely") {
            let (name, rest) = doing.split_once(" on ").expect("a line");
            let (rest, far_from) = rest.rsplit_once(": ").expect("a length");
            let (line, way) = rest.rsplit_once(", ").expect("a way");
            let (far, from) = far_from.split_once(" from ").expect("a point");
            let arc = Drawn::Arc { centre: self.points[from], reach: long(far) };
            (name, arc.meet(&self.line(line, &long), Some(way)))
        } else {
            let (name, rest) = doing.split_once(" from ").expect("a point to start from");
            let (from, ways) = rest.split_once(": ").expect("ways to go");
            // A student who meets a name that was never marked puts the first point there.
            let start = if self.points.is_empty() { Some([0.0, 0.0]) } else { None };
            let mut place = match start {
                Some(origin) => *self.points.entry(from.to_owned()).or_insert(origin),
                None => self.points[from],
            };
            for way in ways.split(", ") {
                if let Some(far) = way.strip_suffix(" towards the side") {
                    place[0] += long(far);
                } else if let Some(far) = way.strip_suffix(" towards the fork") {
                    place[0] -= long(far);
                } else if let Some(far) = way.strip_suffix(" along the diagonal towards the fork and up") {
                    let far = long(far) / 2.0_f64.sqrt();
                    place = [place[0] - far, place[1] - far];
                } else if let Some(far) = way.strip_suffix(" up") {
                    place[1] -= long(far);
                } else if let Some(far) = way.strip_suffix(" down") {
                    place[1] += long(far);
                } else if let Some(line) = way.strip_prefix("on ").or(way.strip_prefix("straight to ")) {
                    let upright = Drawn::Line { at: place, along: [0.0, 1.0] };
                    place = upright.meet(&self.line(line, &long), None);
                } else {
                    assert_eq!(way, "in the same place", "a way nobody knows: {doing}");
                }
            }
            (name, place)
        };
        self.points.insert(name.to_owned(), place);
        name.to_owned()
    }

    /// A line as the lesson says it, drawn.
    fn line(&self, words: &str, long: &impl Fn(&str) -> f64) -> Drawn {
        let point =
            |name: &str| *self.points.get(name).unwrap_or_else(|| panic!("no point `{name}`: {words}"));
        let between = |ends: &str| {
            let (first, second) = ends.split_once(" and ").expect("two points");
            let (a, b) = (point(first), point(second));
            (a, [b[0] - a[0], b[1] - a[1]])
        };
        if let Some(ends) = words.strip_prefix("the line through ") {
            let (at, along) = between(ends);
            Drawn::Line { at, along }
        } else if let Some(name) = words.strip_prefix("the level through ") {
            Drawn::Line { at: point(name), along: [1.0, 0.0] }
        } else if let Some(name) = words.strip_prefix("the upright through ") {
            Drawn::Line { at: point(name), along: [0.0, 1.0] }
        } else if let Some(rest) = words.strip_prefix("the square through ") {
            let (name, ends) = rest.split_once(" to ").expect("square to a line");
            let (_, [x, y]) = between(ends);
            Drawn::Line { at: point(name), along: [-y, x] }
        } else if let Some(rest) = words.strip_prefix("the parallel through ") {
            let (name, ends) = rest.split_once(" to ").expect("parallel to a line");
            Drawn::Line { at: point(name), along: between(ends).1 }
        } else if let Some(rest) = words.strip_prefix("the slope through ") {
            let (name, rest) = rest.split_once(" of ").expect("how steep");
            let (rest, sign) = match rest.strip_suffix(" towards the side") {
                Some(rest) => (rest, 1.0),
                None => (rest.strip_suffix(" towards the fork").expect("a way"), -1.0),
            };
            let [up, across] = match rest.strip_suffix(" degrees from the upright") {
                Some(degrees) => {
                    let turn = number(degrees).to_radians();
                    [turn.cos(), turn.sin()]
                }
                None => {
                    let (up, across) = rest.split_once(" up for ").expect("up for across");
                    [number(up), number(across.strip_suffix(" across").expect("across"))]
                }
            };
            Drawn::Line { at: point(name), along: [sign * across, -up] }
        } else if let Some(rest) = words.strip_prefix("the arc of ") {
            let (reach, name) = rest.split_once(" about ").expect("about a point");
            Drawn::Arc { centre: point(name), reach: long(reach) }
        } else {
            let name = words.strip_prefix("the ").expect("a level");
            let y = *self.lengths.get(name).unwrap_or_else(|| panic!("no level `{name}`"));
            Drawn::Line { at: [0.0, y], along: [1.0, 0.0] }
        }
    }

    /// `Check: it lies 10.08 cm towards the fork from crease waist, 31.1 cm below the waist line.`
    fn check(&mut self, name: &str, words: &str) {
        let words = words.strip_prefix("Check: it lies ").expect("a check").trim_end_matches('.');
        let (across, down) = words.rsplit_once(", ").expect("across and down");
        let x = if let Some((far, _)) = across.split_once(" towards the fork from ") {
            -length(far)
        } else if let Some((far, _)) = across.split_once(" towards the side from ") {
            length(far)
        } else {
            assert!(across.starts_with("straight below "), "{across}");
            0.0
        };
        let y = if let Some(far) = down.strip_suffix(" below the waist line") {
            length(far)
        } else if let Some(far) = down.strip_suffix(" above the waist line") {
            -length(far)
        } else {
            assert_eq!(down, "on the waist line");
            0.0
        };
        let own = self.points[name];
        self.agree(own[0], x, name);
        self.agree(own[1], y, name);
    }

    /// The value of a rule, worked out from the names.
    fn value(&self, rule: &str) -> f64 {
        terms(rule).into_iter().map(|(sign, term)| sign * self.term(term)).sum()
    }

    /// `1/16 hip`, `hip`, `1.3`.
    fn term(&self, term: &str) -> f64 {
        let letters = term.find(|letter: char| letter.is_alphabetic());
        let Some(at) = letters else { return arithmetic(term) };
        let (count, name) = (term[..at].trim(), &term[at..]);
        let count = if count.is_empty() { 1.0 } else { value_of_number(count) };
        count * self.lengths.get(name).unwrap_or_else(|| panic!("`{name}` was never worked out"))
    }

    /// A sum of printed figures comes to the printed figure, exactly as that is rounded.
    fn comes_out(&mut self, numbers: &str, printed: f64, what: &str) {
        let named = numbers.contains(|letter: char| letter.is_alphabetic());
        let theirs = if named {
            self.value(numbers)
        } else {
            terms(numbers).into_iter().map(|(sign, term)| sign * arithmetic(term)).sum()
        };
        self.same(theirs, printed, what);
    }

    fn same(&mut self, added: f64, printed: f64, what: &str) {
        assert!((added - printed).abs() <= self.half + 1e-7, "{what}: adds up to {added}, printed {printed}");
        self.exact += 1;
    }

    /// What the student works out from the names and what is printed: no further apart than the print is coarse.
    fn agree(&mut self, own: f64, printed: f64, what: &str) {
        assert!((own - printed).abs() < 4.4 * self.half, "{what}: worked out {own}, printed {printed}");
        self.agreed += 1;
    }
}

/// What a student draws to find where it crosses another.
enum Drawn {
    Line { at: Place, along: Place },
    Arc { centre: Place, reach: f64 },
}

impl Drawn {
    /// Where they cross, found by walking along this one until the other is crossed: slow, and nothing like the program.
    fn meet(&self, other: &Self, way: Option<&str>) -> Place {
        /// Farther than any paper, cm, and so many places along the way.
        const FAR: f64 = 300.0;
        const PLACES: u32 = 60_000;
        let walk = |part: f64| match self {
            Self::Line { at, along } => {
                let far = FAR * (2.0 * part - 1.0) / along[0].hypot(along[1]);
                [at[0] + far * along[0], at[1] + far * along[1]]
            }
            Self::Arc { centre, reach } => {
                let (sin, cos) = (part * std::f64::consts::TAU + 0.1).sin_cos();
                [centre[0] + reach * cos, centre[1] + reach * sin]
            }
        };
        let off = |place: Place| match other {
            Self::Line { at, along } => (place[0] - at[0]) * along[1] - (place[1] - at[1]) * along[0],
            Self::Arc { centre, reach } => (place[0] - centre[0]).hypot(place[1] - centre[1]) - reach,
        };
        let mut crossings: Vec<Place> = Vec::new();
        for step in 0..PLACES {
            let [mut from, mut to] = [step, step + 1].map(|step| f64::from(step) / f64::from(PLACES));
            if (off(walk(from)) < 0.0) == (off(walk(to)) < 0.0) {
                continue;
            }
            for _ in 0..60 {
                let middle = 0.5 * (from + to);
                if (off(walk(from)) < 0.0) == (off(walk(middle)) < 0.0) { from = middle } else { to = middle }
            }
            crossings.push(walk(from));
        }
        let farther = |place: &Place| match way {
            Some("towards the side") => place[0],
            Some("towards the fork") => -place[0],
            Some("upwards") => -place[1],
            Some("downwards") => place[1],
            _ => 0.0,
        };
        crossings.into_iter().max_by(|a, b| farther(a).total_cmp(&farther(b))).expect("they cross")
    }
}

fn panel_of(words: &str) -> String {
    words.strip_prefix("The ").expect("a panel").to_owned()
}

/// Summands with their signs. A minus in parentheses belongs to its number.
fn terms(text: &str) -> Vec<(f64, &str)> {
    let mut all = Vec::new();
    let mut rest = text.trim();
    let mut sign = 1.0;
    if let Some(after) = rest.strip_prefix('−') {
        (rest, sign) = (after, -1.0);
    }
    loop {
        let next = [" + ", " − "].iter().filter_map(|between| rest.find(between)).min();
        let Some(at) = next else { break };
        all.push((sign, rest[..at].trim()));
        sign = if rest[at..].starts_with(" + ") { 1.0 } else { -1.0 };
        let width = if sign > 0.0 { " + ".len() } else { " − ".len() };
        rest = &rest[at + width..];
    }
    all.push((sign, rest.trim()));
    all
}

/// `101.5/16`, `3 × 31.1/5`, `0.5 × 12`, `(−4)/2`, `1.3`; in inches `49 : 16`, `(28 3/16) : 2`, `1 1/2`.
fn arithmetic(text: &str) -> f64 {
    let (count, rest) =
        text.split_once(" × ").map_or((1.0, text), |(count, rest)| (value_of_number(count), rest));
    if let Some((over, under)) = rest.split_once(" : ") {
        return count * number(over.trim_matches(['(', ')'])) / number(under);
    }
    if let Some((over, under)) = rest.strip_prefix('(').and_then(|rest| rest.split_once(')')) {
        return count * number(over) / under.strip_prefix('/').map_or(1.0, number);
    }
    if rest.contains(' ') {
        return count * number(rest);
    }
    let (over, under) = rest.split_once('/').map_or((rest, 1.0), |(over, under)| (over, number(under)));
    count * number(over) / under
}

/// `2`, `0.5`, `1/3`, `1 1/2`.
fn value_of_number(text: &str) -> f64 {
    let (whole, fraction) = match text.split_once(' ') {
        Some((whole, fraction)) => (number(whole), fraction),
        None => (0.0, text),
    };
    match fraction.split_once('/') {
        Some((over, under)) => whole + number(over) / number(under),
        None => whole + number(fraction),
    }
}

/// `7.64 cm`, `3 1/16 in`.
fn length(text: &str) -> f64 {
    number(text.trim_end_matches(" cm").trim_end_matches(" in"))
}

/// A printed number, with a fraction where it is in inches; its minus is a true minus.
fn number(text: &str) -> f64 {
    let text = text.trim().replace('−', "-");
    let (sign, text) = text.strip_prefix('-').map_or((1.0, text.as_str()), |rest| (-1.0, rest));
    let part = |text: &str| {
        let parse = |text: &str| text.parse::<f64>().unwrap_or_else(|_| panic!("`{text}` is no number"));
        text.split_once('/').map_or_else(|| parse(text), |(over, under)| parse(over) / parse(under))
    };
    sign * text.split_once(' ').map_or_else(|| part(text), |(whole, rest)| part(whole) + part(rest))
}
