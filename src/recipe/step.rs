//! The steps of a construction: rules that make a length, and rules that make a point.

use std::ops::Range;

use kurbo::{Point, Vec2};

use super::{BendRule, Construction, Inputs, Number, PointId, Proportion, Reference, Track, track::Laid};
use crate::{
    curve::{Bend, length},
    terms::Panel,
    unit::Unit,
};

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
    /// Squares out a level line.
    Level {
        /// Its place in [`super::Recipe::lines`].
        index: usize,
        /// How far below the waist line.
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

/// How a length is found.
#[derive(Clone, Debug, PartialEq)]
pub enum QuantityRule {
    /// A proportion.
    Is(Proportion),
    /// A ladder by size.
    Ladder(Ladder),
    /// Read on the paper from point to point, straight; two points at least.
    Between(Vec<PointId>),
    /// Read along a curve drawn in the triangle of its tangents.
    Curve {
        /// Where it begins and ends.
        ends: [PointId; 2],
        /// Where its end tangents cross.
        corner: PointId,
        /// How it is drawn.
        bend: BendRule,
    },
    /// A point's height, below the waist line: what a level through it has.
    Depth(PointId),
}

/// Values that go by size, as handbooks print them: 3 up to hip 104, then 3.25.
#[derive(Clone, Debug, PartialEq)]
pub struct Ladder {
    /// What the size is measured by.
    pub by: Reference,
    /// The name of `by`.
    pub by_name: String,
    /// Size and value in cm, sizes rising; two at least.
    pub rungs: Vec<[f64; 2]>,
    /// What holds between the rungs.
    pub between: Between,
    /// The unit in which its numbers were written.
    pub unit: Unit,
}

/// What holds between two rungs of a ladder. Beyond the ends the end values hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Between {
    /// The value rises in proportion.
    Ramp,
    /// The lower rung's value holds up to the next rung.
    Step,
}

/// A way on the draft.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// Towards the side seam: x grows.
    Side,
    /// Towards the fork, the crotch point: x falls.
    Fork,
    /// Towards the waist: y falls.
    Up,
    /// Towards the hem: y grows.
    Down,
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
    /// Laid obliquely: on a line, at a distance from a point.
    Span {
        /// The point to measure from.
        from: PointId,
        /// The distance.
        span: Proportion,
        /// The line that it ends on.
        on: Track,
        /// Which of the two points at that distance.
        towards: Way,
    },
    /// Where two lines meet.
    Meet {
        /// The one.
        line: Track,
        /// The other.
        on: Track,
        /// Which of two meetings, where an arc is met.
        towards: Option<Way>,
    },
}

/// The upright part of a [`PointRule::From`].
#[derive(Clone, Debug, PartialEq)]
pub enum Height {
    /// So far up.
    Up(Proportion),
    /// So far down.
    Down(Proportion),
    /// Straight up or down to a line.
    On(Track),
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
    /// So far from the first point.
    Along(Proportion),
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
    /// Two lines that shall meet run beside each other.
    Level,
    /// The two points that give a direction are one.
    Coincident,
    /// Two arcs that do not reach each other, or lie one in the other.
    Apart { first: f64, second: f64, away: f64 },
    /// Two crossings, neither farther in the direction that is to choose.
    NotToldApart { way: Way },
    /// An arc of no radius.
    NoReach { reach: f64 },
    /// The corner of a curve's tangents gives no curve, or its guide point cannot be passed.
    NoCurve,
    /// A length or a place that no trouser has.
    Absurd,
}

/// Points nearer than this are one: far below a pencil line, far above rounding.
pub(super) const SAME_PLACE: f64 = 1e-6;
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
            Self::Quantity { entry, .. } | Self::Level { entry, .. } | Self::Point { entry, .. } => entry,
        }
    }

    pub(super) fn entry_mut(&mut self) -> &mut Entry {
        match self {
            Self::Quantity { entry, .. } | Self::Level { entry, .. } | Self::Point { entry, .. } => entry,
        }
    }

    /// The recipe's own sentence for the lesson.
    pub fn say(&self) -> Option<&str> {
        match self {
            Self::Quantity { say, .. } | Self::Level { say, .. } | Self::Point { say, .. } => say.as_deref(),
        }
    }

    /// The length that the step's rule comes to, in cm, where the rule is about one length.
    pub fn value(&self, inputs: &Inputs, made: &Construction) -> Option<f64> {
        match self {
            Self::Quantity { index, .. } => made.quantities.get(*index).copied(),
            Self::Level { index, .. } => made.lines.get(*index).copied(),
            Self::Point { rule, .. } => rule.value(inputs, made),
        }
    }

    /// Adds what the step makes to what is made so far.
    pub(super) fn take(&self, inputs: &Inputs, made: &mut Construction) -> Result<(), Fault> {
        match self {
            Self::Quantity { rule, .. } => {
                let value = within_reach(rule.value(inputs, made)?)?;
                made.quantities.push(value);
            }
            Self::Level { rule, .. } => {
                let value = within_reach(rule.value(inputs, made)?)?;
                made.lines.push(value);
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

impl QuantityRule {
    /// The length on a certain body.
    pub(super) fn value(&self, inputs: &Inputs, made: &Construction) -> Result<f64, Fault> {
        let at = |id: &PointId| made.points[id.0];
        match self {
            Self::Is(proportion) => Ok(proportion.value(inputs, made)?),
            Self::Ladder(ladder) => {
                let size = made.value_of(ladder.by, inputs).ok_or(ladder.by)?;
                Ok(ladder.value(size))
            }
            Self::Between(points) => {
                Ok(points.windows(2).map(|ends| at(&ends[0]).distance(at(&ends[1]))).sum())
            }
            Self::Curve { ends, corner, bend } => {
                let drawn = Bend { a: at(&ends[0]), corner: at(corner), c: at(&ends[1]), fullness: 0.5 };
                if [drawn.a, drawn.c].iter().any(|end| end.distance(drawn.corner) < SAME_PLACE) {
                    return Err(Fault::NoCurve);
                }
                let drawn = match bend {
                    BendRule::Fullness(fullness) => Bend { fullness: *fullness, ..drawn },
                    BendRule::Guide(guide) => drawn.through(at(guide)).ok_or(Fault::NoCurve)?,
                };
                Ok(length(&drawn.cubic()))
            }
            Self::Depth(point) => Ok(at(point).y),
        }
    }

    /// A length of nothing, in the place of one that could not be read.
    pub(super) fn nothing() -> Self {
        Self::Is(Proportion::constant(0.0, Unit::Cm))
    }

    /// The points that the length is read between.
    pub fn points(&self) -> Vec<PointId> {
        match self {
            Self::Is(_) | Self::Ladder(_) => Vec::new(),
            Self::Between(points) => points.clone(),
            Self::Curve { ends, corner, bend } => {
                let guide = match bend {
                    BendRule::Guide(guide) => Some(*guide),
                    BendRule::Fullness(_) => None,
                };
                ends.iter().copied().chain([*corner]).chain(guide).collect()
            }
            Self::Depth(point) => vec![*point],
        }
    }

    /// What the length is reckoned from.
    pub fn references(&self) -> Vec<Reference> {
        match self {
            Self::Is(proportion) => proportion.references().collect(),
            Self::Ladder(ladder) => vec![ladder.by],
            Self::Between(_) | Self::Curve { .. } | Self::Depth(_) => Vec::new(),
        }
    }
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
    /// One step that way.
    pub fn vector(self) -> Vec2 {
        match self {
            Self::Side => Vec2::new(1.0, 0.0),
            Self::Fork => Vec2::new(-1.0, 0.0),
            Self::Up => Vec2::new(0.0, -1.0),
            Self::Down => Vec2::new(0.0, 1.0),
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
                    point += way.vector() * distance.value(inputs, made)?;
                }
                match height {
                    None => {}
                    Some(Height::Up(distance)) => point.y -= distance.value(inputs, made)?,
                    Some(Height::Down(distance)) => point.y += distance.value(inputs, made)?,
                    Some(Height::On(track)) => {
                        let upright = Laid::Straight(point, Vec2::new(0.0, 1.0));
                        point = upright.crossing(track.laid(inputs, made)?, Some(Way::Up))?;
                    }
                }
                Ok(point)
            }
            Self::Diagonal { from, fork_up } => {
                let along = fork_up.value(inputs, made)? * std::f64::consts::FRAC_1_SQRT_2;
                Ok(at(*from) - Vec2::new(along, along))
            }
            Self::Toward { from, toward, reach } => {
                let (from, toward) = (at(*from), at(*toward));
                let along = || {
                    let along = toward - from;
                    if along.hypot() < SAME_PLACE { Err(Fault::Coincident) } else { Ok(along.normalize()) }
                };
                match reach {
                    Reach::Part { minus, written } => Ok(from.lerp(toward, signed(*minus, *written))),
                    Reach::Along(distance) => Ok(from + along()? * distance.value(inputs, made)?),
                    Reach::Past(distance) => Ok(toward + along()? * distance.value(inputs, made)?),
                }
            }
            Self::Span { from, span, on, towards } => {
                let span = span.value(inputs, made)?;
                if span < 0.0 || span.is_nan() {
                    return Err(Fault::NoReach { reach: span });
                }
                Laid::Round(at(*from), span).crossing(on.laid(inputs, made)?, Some(*towards))
            }
            Self::Meet { line, on, towards } => {
                line.laid(inputs, made)?.crossing(on.laid(inputs, made)?, *towards)
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
            | Self::Toward { reach: Reach::Along(distance) | Reach::Past(distance), .. }
            | Self::Span { span: distance, .. } => length(distance),
            Self::From { across: None, height: Some(Height::On(Track::Level(line))), .. } => {
                made.lines.get(*line).copied()
            }
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
    pub fn points(&self) -> impl Iterator<Item = PointId> + use<> {
        let (ends, tracks) = match self {
            Self::From { from, height: Some(Height::On(track)), .. } => {
                ([Some(*from), None], [Some(track), None])
            }
            Self::From { from, .. } | Self::Diagonal { from, .. } => ([Some(*from), None], [None, None]),
            Self::Span { from, on, .. } => ([Some(*from), None], [Some(on), None]),
            Self::Toward { from, toward, .. } => ([Some(*from), Some(*toward)], [None, None]),
            Self::Meet { line, on, .. } => ([None, None], [Some(line), Some(on)]),
        };
        let on_tracks: Vec<PointId> = tracks.into_iter().flatten().flat_map(Track::points).collect();
        ends.into_iter().flatten().chain(on_tracks)
    }

    /// The lines that the point is to lie on.
    pub fn tracks(&self) -> impl Iterator<Item = &Track> {
        let [first, second] = match self {
            Self::From { height: Some(Height::On(track)), .. } => [Some(track), None],
            Self::Span { on, .. } => [Some(on), None],
            Self::Meet { line, on, .. } => [Some(line), Some(on)],
            Self::From { .. } | Self::Diagonal { .. } | Self::Toward { .. } => [None, None],
        };
        first.into_iter().chain(second)
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
            | Self::Toward { reach: Reach::Along(distance) | Reach::Past(distance), .. }
            | Self::Span { span: distance, .. } => (Some(distance), None),
            Self::Toward { reach: Reach::Part { .. }, .. } | Self::Meet { .. } => (None, None),
        };
        first.into_iter().chain(second).chain(self.tracks().flat_map(Track::proportions))
    }
}

fn signed(minus: bool, number: Number) -> f64 {
    if minus { -number.value() } else { number.value() }
}
