//! The steps of a construction: one rule that makes a quantity from a proportion or a ladder, four that make points.

use std::ops::Range;

use kurbo::{Point, Vec2};

use super::{Construction, Inputs, Number, PointId, Proportion, Reference};
use crate::terms::Panel;

/// One step of the class-room construction.
#[derive(Clone, Debug, PartialEq)]
pub enum Step {
    /// Works out a length that later steps use.
    Quantity {
        /// Its place in [`Construction::quantities`].
        index: usize,
        /// How it is worked out.
        rule: QuantityRule,
        /// The recipe's own sentence for the lesson.
        say: Option<String>,
        /// What a record of the draft says of the step.
        entry: Entry,
    },
    /// Marks a point.
    Point {
        /// Its place in [`Construction::points`].
        id: PointId,
        /// How it is found.
        rule: PointRule,
        /// The recipe's own sentence for the lesson.
        say: Option<String>,
        /// What a record of the draft says of the step.
        entry: Entry,
    },
}

/// What a record of the draft says of a step; worded once, when the recipe is read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// The panel that the step belongs to: said by the recipe, or the first that needs it.
    pub panel: Panel,
    /// Counted from 1 within the panel.
    pub number: usize,
    /// The recipe's sentence, or a plain one made from the rule.
    pub title: String,
    /// Plainly what is done, whatever the recipe says: `mark 9 from 5 towards the fork`.
    pub plain: String,
    /// The rule as the trade writes it: `1/16 hip + 0.5`.
    pub rule: String,
    /// The name of the point or quantity that it makes.
    pub makes: String,
    /// Where the step stands in the recipe's text.
    pub(super) place: Range<usize>,
}

/// How a quantity is worked out.
#[derive(Clone, Debug, PartialEq)]
pub enum QuantityRule {
    /// A proportion.
    Is(Proportion),
    /// A ladder by size.
    Ladder(Ladder),
}

/// Values that go by size, as handbooks print them: 3 up to hip 104, then 3.25.
#[derive(Clone, Debug, PartialEq)]
pub struct Ladder {
    /// What the size is measured by.
    pub by: Reference,
    /// The name of `by`.
    pub by_name: String,
    /// Size and value, sizes rising; two at least.
    pub rungs: Vec<[f64; 2]>,
    /// What holds between the rungs.
    pub between: Between,
}

/// What holds between two rungs of a ladder. Beyond the ends the end values hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Between {
    /// The value rises in proportion.
    Ramp,
    /// The lower rung's value holds up to the next rung.
    Step,
}

/// A way across the draft.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// Towards the side seam: x grows.
    Side,
    /// Towards the fork, the crotch point: x falls.
    Fork,
}

/// How a point is found.
#[derive(Clone, Debug, PartialEq)]
pub enum PointRule {
    /// Squared across and up or down from a point.
    From {
        /// The point to start from.
        from: PointId,
        /// How far across.
        across: Option<(Way, Proportion)>,
        /// How far up or down.
        height: Option<Height>,
    },
    /// From a point along the 45-degree line towards the fork and up.
    Diagonal {
        /// The corner to start from.
        from: PointId,
        /// The distance along the diagonal.
        fork_up: Proportion,
    },
    /// On the line from one point through another.
    Toward {
        /// The point to start from.
        from: PointId,
        /// The point to go towards.
        toward: PointId,
        /// How far.
        reach: Reach,
    },
    /// Laid obliquely: on a level, at a distance from a point.
    Span {
        /// The point to measure from.
        from: PointId,
        /// The distance.
        span: Proportion,
        /// The level, by its place in [`super::Recipe::lines`].
        on: usize,
        /// Which of the two points at that distance.
        towards: Way,
    },
    /// Where the line through two points meets a level.
    Meet {
        /// The two points.
        line: [PointId; 2],
        /// The level, by its place in [`super::Recipe::lines`].
        on: usize,
    },
}

/// The upright part of a [`PointRule::From`].
#[derive(Clone, Debug, PartialEq)]
pub enum Height {
    /// So far up.
    Up(Proportion),
    /// So far down.
    Down(Proportion),
    /// Straight up or down to a level, by its place in [`super::Recipe::lines`].
    On(usize),
}

/// How far a [`PointRule::Toward`] goes.
#[derive(Clone, Debug, PartialEq)]
pub enum Reach {
    /// A part of the distance: 1/2 is the middle, 2 mirrors the first point about the second.
    Part {
        /// Backwards, away from the second point.
        minus: bool,
        /// The part as written.
        written: Number,
    },
    /// So far beyond the second point.
    Past(Proportion),
}

/// Why a step has no answer on a certain body.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Fault {
    /// No value for something that the step names.
    Missing(Reference),
    /// The oblique measure does not reach its level.
    Short { span: f64, away: f64 },
    /// The line to meet a level runs level itself.
    Level,
    /// The two points that give a direction are one.
    Coincident,
    /// A length or a place that no trouser has.
    Absurd,
}

/// Points nearer than this are one: far below a pencil line, far above rounding.
const SAME_PLACE: f64 = 1e-6;
/// A line that falls less than this over its length is level: it would meet another level off the table.
const LEVEL_FALL: f64 = 1e-3;
/// Nothing on a trouser draft lies farther from its start, in cm.
const FARTHEST: f64 = 1000.0;

impl From<Reference> for Fault {
    fn from(missing: Reference) -> Self {
        Self::Missing(missing)
    }
}

impl Step {
    /// What a record of the draft says of the step.
    pub fn entry(&self) -> &Entry {
        match self {
            Self::Quantity { entry, .. } | Self::Point { entry, .. } => entry,
        }
    }

    pub(super) fn entry_mut(&mut self) -> &mut Entry {
        match self {
            Self::Quantity { entry, .. } | Self::Point { entry, .. } => entry,
        }
    }

    /// The recipe's own sentence for the lesson.
    pub fn say(&self) -> Option<&str> {
        match self {
            Self::Quantity { say, .. } | Self::Point { say, .. } => say.as_deref(),
        }
    }

    /// The length that the step's rule comes to, in cm, where the rule is about one length.
    pub fn value(&self, inputs: &Inputs, made: &Construction) -> Option<f64> {
        match self {
            Self::Quantity { index, .. } => made.quantities.get(*index).copied(),
            Self::Point { rule, .. } => rule.value(inputs, made),
        }
    }

    /// Adds what the step makes to what is made so far.
    pub(super) fn take(&self, inputs: &Inputs, made: &mut Construction) -> Result<(), Fault> {
        match self {
            Self::Quantity { rule, .. } => {
                let value = match rule {
                    QuantityRule::Is(proportion) => proportion.value(inputs, made)?,
                    QuantityRule::Ladder(ladder) => {
                        let size = made.value_of(ladder.by, inputs).ok_or(ladder.by)?;
                        ladder.value(size)
                    }
                };
                made.quantities.push(within_reach(value)?);
            }
            Self::Point { rule, .. } => {
                let point = rule.point(inputs, made)?;
                within_reach(point.x)?;
                within_reach(point.y)?;
                made.points.push(point);
            }
        }
        Ok(())
    }
}

/// The value, if a trouser draft can have it; refuses what is not finite.
pub(super) fn within_reach(value: f64) -> Result<f64, Fault> {
    if value.abs() <= FARTHEST { Ok(value) } else { Err(Fault::Absurd) }
}

impl Ladder {
    /// The value at a size.
    pub fn value(&self, size: f64) -> f64 {
        let above = self.rungs.partition_point(|[rung, _]| *rung <= size);
        match (above.checked_sub(1).and_then(|below| self.rungs.get(below)), self.rungs.get(above)) {
            (Some([from, low]), Some([to, high])) if self.between == Between::Ramp => {
                low + (high - low) * (size - from) / (to - from)
            }
            (Some([_, value]), _) | (None, Some([_, value])) => *value,
            // The reader refuses a ladder without rungs.
            (None, None) => 0.0,
        }
    }
}

impl Way {
    fn sign(self) -> f64 {
        match self {
            Self::Side => 1.0,
            Self::Fork => -1.0,
        }
    }
}

impl PointRule {
    fn point(&self, inputs: &Inputs, made: &Construction) -> Result<Point, Fault> {
        let at = |id: PointId| made.points[id.0];
        match self {
            Self::From { from, across, height } => {
                let mut point = at(*from);
                if let Some((way, distance)) = across {
                    point.x += way.sign() * distance.value(inputs, made)?;
                }
                match height {
                    None => {}
                    Some(Height::Up(distance)) => point.y -= distance.value(inputs, made)?,
                    Some(Height::Down(distance)) => point.y += distance.value(inputs, made)?,
                    Some(Height::On(line)) => point.y = made.lines[*line],
                }
                Ok(point)
            }
            Self::Diagonal { from, fork_up } => {
                let along = fork_up.value(inputs, made)? * std::f64::consts::FRAC_1_SQRT_2;
                Ok(at(*from) - Vec2::new(along, along))
            }
            Self::Toward { from, toward, reach } => {
                let (from, toward) = (at(*from), at(*toward));
                match reach {
                    Reach::Part { minus, written } => Ok(from.lerp(toward, signed(*minus, *written))),
                    Reach::Past(distance) => {
                        let along = toward - from;
                        if along.hypot() < SAME_PLACE {
                            return Err(Fault::Coincident);
                        }
                        Ok(toward + along.normalize() * distance.value(inputs, made)?)
                    }
                }
            }
            Self::Span { from, span, on, towards } => {
                let (from, span) = (at(*from), span.value(inputs, made)?);
                let fall = made.lines[*on] - from.y;
                if span < fall.abs() {
                    return Err(Fault::Short { span, away: fall.abs() });
                }
                let across = (span * span - fall * fall).sqrt();
                Ok(Point::new(from.x + towards.sign() * across, made.lines[*on]))
            }
            Self::Meet { line: [first, second], on } => {
                let (first, second) = (at(*first), at(*second));
                let along = second - first;
                if along.hypot() < SAME_PLACE {
                    return Err(Fault::Coincident);
                }
                if along.y.abs() < LEVEL_FALL * along.hypot() {
                    return Err(Fault::Level);
                }
                let level = made.lines[*on];
                Ok(Point::new(first.x + along.x * (level - first.y) / along.y, level))
            }
        }
    }

    fn value(&self, inputs: &Inputs, made: &Construction) -> Option<f64> {
        let length = |proportion: &Proportion| proportion.value(inputs, made).ok();
        let at = |id: &PointId| made.points.get(id.0).copied();
        match self {
            Self::From { across: Some((_, distance)), height: None | Some(Height::On(_)), .. }
            | Self::From {
                across: None, height: Some(Height::Up(distance) | Height::Down(distance)), ..
            }
            | Self::Diagonal { fork_up: distance, .. }
            | Self::Toward { reach: Reach::Past(distance), .. }
            | Self::Span { span: distance, .. } => length(distance),
            Self::From { across: None, height: Some(Height::On(line)), .. } => made.lines.get(*line).copied(),
            Self::Toward { from, toward, reach: Reach::Part { minus, written } } => {
                let counted = match written.less_one() {
                    Some(beyond) if !minus => beyond,
                    _ => *written,
                };
                Some(at(from)?.distance(at(toward)?) * counted.value())
            }
            Self::From { .. } | Self::Meet { .. } => None,
        }
    }

    /// The points that the rule starts from.
    pub fn points(&self) -> impl Iterator<Item = PointId> {
        let (first, second) = match self {
            Self::From { from, .. } | Self::Diagonal { from, .. } | Self::Span { from, .. } => (*from, None),
            Self::Toward { from, toward, .. } => (*from, Some(*toward)),
            Self::Meet { line: [first, second], .. } => (*first, Some(*second)),
        };
        [first].into_iter().chain(second)
    }

    /// The proportions that the rule reckons with.
    pub fn proportions(&self) -> impl Iterator<Item = &Proportion> {
        let (first, second) = match self {
            Self::From { across, height, .. } => {
                let upright = match height {
                    Some(Height::Up(distance) | Height::Down(distance)) => Some(distance),
                    Some(Height::On(_)) | None => None,
                };
                (across.as_ref().map(|(_, distance)| distance), upright)
            }
            Self::Diagonal { fork_up: distance, .. }
            | Self::Toward { reach: Reach::Past(distance), .. }
            | Self::Span { span: distance, .. } => (Some(distance), None),
            Self::Toward { reach: Reach::Part { .. }, .. } | Self::Meet { .. } => (None, None),
        };
        first.into_iter().chain(second)
    }
}

fn signed(minus: bool, number: Number) -> f64 {
    if minus { -number.value() } else { number.value() }
}
