//! What a book prints of its draft, beside what a recipe makes of it: figures by row, as a teacher checks a copy.

use std::ops::Range;

use super::{Construction, Inputs, Names, PointId, Recipe, Reference};
use crate::{
    mistake::{Mistake, Mistakes, Source},
    terms::{EaseAt, EnumMap, Measurement, Sex, Style, Word},
    unit::{Unit, parse_length},
};

/// Pencil and tape are no finer, cm or degrees.
const WITHIN: f64 = 0.05;
/// A book has fewer figures than this.
const MOST_ROWS: usize = 2000;

/// The figures of a book.
#[derive(Clone, Debug)]
pub struct Book {
    source: Source,
    unit: Unit,
    sex: Sex,
    given: Vec<(String, f64, Range<usize>)>,
    figures: Vec<Asked>,
}

/// A figure as a row has it.
#[derive(Clone, Debug)]
struct Asked {
    what: Figure,
    of: String,
    of_span: Range<usize>,
    book: f64,
    within: f64,
}

/// What a figure is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Figure {
    /// How far a point lies towards the side of the start, or two points apart, level.
    Across,
    /// How far a point lies below the waist line, or two points apart, upright.
    Down,
    /// Straight from point to point.
    Length,
    /// The lean of the line from a point up to another, degrees from the upright, towards the side.
    Lean,
    /// A quantity of the recipe, or how far a level line lies below the waist.
    Value,
}

const FIGURES: [(&str, Figure); 5] = [
    ("across", Figure::Across),
    ("down", Figure::Down),
    ("length", Figure::Length),
    ("lean", Figure::Lean),
    ("value", Figure::Value),
];

/// A figure of the book beside the recipe's.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// What it is: `length 9 15 14`.
    pub name: String,
    /// In degrees, not in cm.
    pub degrees: bool,
    /// As the book prints it, cm or degrees.
    pub book: f64,
    /// As the recipe makes it, cm or degrees.
    pub recipe: f64,
    /// How far they may differ, cm or degrees.
    pub within: f64,
}

impl Row {
    /// Whether the recipe copies the figure.
    pub fn agrees(&self) -> bool {
        (self.recipe - self.book).abs() <= self.within + 1e-9
    }
}

impl Book {
    /// The unit of its lengths.
    pub fn unit(&self) -> Unit {
        self.unit
    }

    /// Reads the figures of a book: rows of `what,of,book` and, if wanted, `within`.
    ///
    /// # Errors
    /// Every row that says nothing known, with its place.
    pub fn parse(source: &Source) -> Result<Self, Mistakes> {
        let mut reader = Reader { source, mistakes: Vec::new() };
        let mut book = Self {
            source: source.clone(),
            unit: Unit::Cm,
            sex: Sex::Unsaid,
            given: Vec::new(),
            figures: Vec::new(),
        };
        let mut at = 0;
        let mut rows: Vec<Vec<(String, Range<usize>)>> = Vec::new();
        for line in source.text.split_inclusive('\n') {
            let start = at;
            at += line.len();
            let line = line.trim_end_matches(['\r', '\n']);
            if line.trim().is_empty() || line.trim_start().starts_with('#') {
                continue;
            }
            rows.push(cells(line, start));
        }
        let head: Vec<&str> = rows.first().into_iter().flatten().map(|(cell, _)| cell.as_str()).collect();
        if !matches!(head.as_slice(), ["what", "of", "book"] | ["what", "of", "book", "within"]) {
            return Err(Mistake::new(format!("`{}` does not begin with its columns", source.name))
                .help("expected `what,of,book` or `what,of,book,within` as the first row")
                .into());
        }
        if rows.len() > MOST_ROWS {
            return Err(Mistake::new(format!("`{}` has more than {MOST_ROWS} rows", source.name)).into());
        }
        for row in &rows[1..] {
            book.take(&mut reader, row);
        }
        if book.figures.is_empty() && reader.mistakes.is_empty() {
            reader.mistakes.push(
                Mistake::new(format!("`{}` has no figure to compare", source.name)).help(
                    "a row such as `length,9 15 14,76.2`; `given` rows are what the book was drafted for",
                ),
            );
        }
        if reader.mistakes.is_empty() { Ok(book) } else { Err(reader.mistakes.into()) }
    }

    fn take(&mut self, reader: &mut Reader<'_>, row: &[(String, Range<usize>)]) {
        let [(what, what_span), (of, of_span), (value, value_span), rest @ ..] = row else {
            let span = row.first().map_or(0..0, |(_, span)| span.clone());
            reader.wrong(span, "a row has three columns at least", "expected `what,of,book`", None);
            return;
        };
        if what == "given" {
            match of.as_str() {
                "units" => match Unit::from_key(value) {
                    Some(unit) => self.unit = unit,
                    None => reader.wrong(value_span.clone(), "unknown unit", "expected `cm` or `inch`", None),
                },
                "sex" => match Sex::from_key(value) {
                    Some(sex) => self.sex = sex,
                    None => reader.wrong(
                        value_span.clone(),
                        "unknown sex",
                        "expected `female`, `male` or `unsaid`",
                        None,
                    ),
                },
                _ => {
                    if let Some(value) = reader.length(value, value_span, self.unit) {
                        self.given.push((of.clone(), value, of_span.clone()));
                    }
                }
            }
            return;
        }
        let known = FIGURES.iter().map(|(word, _)| *word).chain(["given"]);
        let Some((_, figure)) = FIGURES.iter().find(|(word, _)| word == what) else {
            let mistake = Mistake::new(format!("unknown figure `{what}`"))
                .at(reader.source, what_span.clone(), "not a figure of a draft")
                .nearest(what, known.clone());
            let all: Vec<String> = known.map(|word| format!("`{word}`")).collect();
            reader.mistakes.push(if mistake.remedies().is_empty() {
                mistake.help(format!("expected one of {}", all.join(", ")))
            } else {
                mistake
            });
            return;
        };
        let read = |reader: &mut Reader<'_>, text: &str, span: &Range<usize>, unit| {
            if *figure == Figure::Lean { reader.number(text, span) } else { reader.length(text, span, unit) }
        };
        let within = match rest.first() {
            Some((text, span)) if !text.is_empty() => read(reader, text, span, self.unit),
            _ => Some(WITHIN),
        };
        if let (Some(book), Some(within)) = (read(reader, value, value_span, self.unit), within) {
            self.figures.push(Asked {
                what: *figure,
                of: of.clone(),
                of_span: of_span.clone(),
                book,
                within,
            });
        }
    }

    /// Carries the recipe out on what the book was drafted for, and sets its figures beside the book's.
    ///
    /// # Errors
    /// When a row names what the recipe has not, when the book does not say a measurement that the recipe needs, or when
    /// a step has no answer.
    pub fn beside(&self, recipe: &Recipe) -> Result<Vec<Row>, Mistakes> {
        let inputs = self.inputs(recipe)?;
        let made = recipe.construct(&inputs)?;
        let mut mistakes = Vec::new();
        let mut rows = Vec::with_capacity(self.figures.len());
        for asked in &self.figures {
            match self.row(asked, recipe, &made) {
                Ok(row) => rows.push(row),
                Err(mistake) => mistakes.push(mistake),
            }
        }
        if mistakes.is_empty() { Ok(rows) } else { Err(mistakes.into()) }
    }

    fn inputs(&self, recipe: &Recipe) -> Result<Inputs, Mistakes> {
        let mut inputs = Inputs::default();
        for at in EaseAt::ALL {
            inputs.ease[*at] = recipe.ease.give(*at, self.sex);
        }
        let mut mistakes = Vec::new();
        let names = Names::default();
        let mut style_given: EnumMap<Style, bool> = EnumMap::default();
        for (name, value, span) in &self.given {
            let long = Measurement::from_key(name).map(Reference::Body);
            match names.resolve(name).or(long) {
                Some(Reference::Body(measurement)) => {
                    inputs.measurements[measurement] = Some(*value);
                }
                Some(Reference::Ease(at)) => inputs.ease[at] = *value,
                Some(Reference::Style(style)) => {
                    inputs.style[style] = Some(*value);
                    style_given[style] = true;
                }
                _ if recipe.asks.iter().any(|ask| ask.name == *name) => {
                    inputs.asks.insert(name.clone(), *value);
                }
                _ => {
                    let asks = recipe.asks.iter().map(|ask| ask.name.clone());
                    let all: Vec<String> = names.all().into_iter().chain(asks).collect();
                    let mistake =
                        Mistake::new(format!("`{name}` is nothing that recipe `{}` is given", recipe.name))
                            .at(&self.source, span.clone(), "not a measurement, an ease, a style or an ask")
                            .nearest(name, all.iter().map(String::as_str));
                    mistakes.push(mistake);
                }
            }
        }
        if !mistakes.is_empty() {
            return Err(mistakes.into());
        }
        for style in Style::ALL.iter().filter(|style| !style_given[**style]) {
            // What the book does not say and the recipe cannot reckon stays unknown; a step that needs it says so.
            inputs.style[*style] = recipe.style.give(*style, self.sex, &inputs).and_then(Result::ok);
        }
        Ok(inputs)
    }

    fn row(&self, asked: &Asked, recipe: &Recipe, made: &Construction) -> Result<Row, Mistake> {
        let wrong = |title: String, label: &'static str| {
            Mistake::new(title).at(&self.source, asked.of_span.clone(), label)
        };
        let names: Vec<&str> = asked.of.split_whitespace().collect();
        let points = || -> Result<Vec<kurbo::Point>, Mistake> {
            let known: Vec<&str> =
                (0..made.points.len()).map(|index| recipe.point_name(PointId(index))).collect();
            names
                .iter()
                .map(|name| {
                    let found = recipe.point(name).map(|id| made.points[id.0]);
                    found.ok_or_else(|| {
                        wrong(
                            format!("recipe `{}` makes no point `{name}`", recipe.name),
                            "not a point of it",
                        )
                        .nearest(name, known.iter().copied())
                    })
                })
                .collect()
        };
        let count = |expected: &str| {
            wrong(format!("`{}` is about {expected}", word(asked.what)), "another number here")
        };
        let found = match asked.what {
            Figure::Value => {
                let quantity = recipe.steps.iter().find(|step| {
                    matches!(step, super::Step::Quantity { .. }) && step.entry().makes == asked.of
                });
                let value = match (quantity, recipe.line(&asked.of)) {
                    (Some(step), _) => step.value(&Inputs::default(), made),
                    (None, Some(line)) => made.lines.get(line).copied(),
                    (None, None) => None,
                };
                value.ok_or_else(|| {
                    let lines = recipe.lines.iter().map(|line| line.name.as_str());
                    let quantities = recipe.steps.iter().filter_map(|step| match step {
                        super::Step::Quantity { entry, .. } => Some(entry.makes.as_str()),
                        _ => None,
                    });
                    wrong(
                        format!("recipe `{}` has no quantity or line `{}`", recipe.name, asked.of),
                        "not made by it",
                    )
                    .nearest(&asked.of, lines.chain(quantities))
                })?
            }
            Figure::Across | Figure::Down => {
                let along =
                    |point: kurbo::Point| if asked.what == Figure::Across { point.x } else { point.y };
                match points()?.as_slice() {
                    [one] => along(*one),
                    [one, other] => (along(*other) - along(*one)).abs(),
                    _ => return Err(count("one point or two")),
                }
            }
            Figure::Length => {
                let points = points()?;
                if points.len() < 2 {
                    return Err(count("two points or more"));
                }
                points.windows(2).map(|ends| ends[0].distance(ends[1])).sum()
            }
            Figure::Lean => match points()?.as_slice() {
                [low, high] => {
                    let up = *high - *low;
                    up.x.atan2(-up.y).to_degrees()
                }
                _ => return Err(count("two points")),
            },
        };
        Ok(Row {
            name: format!("{} {}", word(asked.what), asked.of),
            degrees: asked.what == Figure::Lean,
            book: asked.book,
            recipe: found,
            within: asked.within,
        })
    }
}

fn word(figure: Figure) -> &'static str {
    FIGURES.iter().find(|(_, known)| *known == figure).map_or("", |(word, _)| word)
}

/// The cells of a row with their places; `;` parts them where the row has one.
fn cells(line: &str, start: usize) -> Vec<(String, Range<usize>)> {
    let between = if line.contains(';') { ';' } else { ',' };
    let mut at = start;
    line.split(between)
        .map(|cell| {
            let span = at..at + cell.len();
            at = span.end + 1;
            (cell.trim().trim_matches('"').trim().to_owned(), span)
        })
        .collect()
}

struct Reader<'s> {
    source: &'s Source,
    mistakes: Vec<Mistake>,
}

impl Reader<'_> {
    fn wrong(&mut self, span: Range<usize>, title: &str, label: &str, help: Option<&str>) {
        let mistake = Mistake::new(title.to_owned()).at(self.source, span, label.to_owned());
        self.mistakes.push(match help {
            Some(help) => mistake.help(help.to_owned()),
            None => mistake,
        });
    }

    fn length(&mut self, text: &str, span: &Range<usize>, unit: Unit) -> Option<f64> {
        // Behind semicolons a decimal may have a comma.
        match parse_length(&text.replace(',', "."), unit) {
            Ok(cm) => Some(cm),
            Err(expected) => {
                self.wrong(span.clone(), "not a length", &expected, None);
                None
            }
        }
    }

    fn number(&mut self, text: &str, span: &Range<usize>) -> Option<f64> {
        let number = text.replace(',', ".").parse::<f64>().ok().filter(|number| number.is_finite());
        if number.is_none() {
            self.wrong(span.clone(), "not a number of degrees", "expected a number such as 8.5", None);
        }
        number
    }
}
