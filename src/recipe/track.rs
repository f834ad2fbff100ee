//! Lines that a point is to lie on, and where two of them cross: a level, a straight through points, square, parallel
//! or at a slope to others, an arc swung about a point.

use kurbo::{Point, Vec2};

use super::{
    Construction, Inputs, PointId, Proportion,
    step::{Fault, SAME_PLACE, Way},
};

/// A line that a point is to lie on.
#[derive(Clone, Debug, PartialEq)]
pub enum Track {
    /// A level, by its place in [`super::Recipe::lines`].
    Level(usize),
    /// The straight through two points.
    Through([PointId; 2]),
    /// The level through a point.
    LevelOf(PointId),
    /// The upright through a point.
    UprightOf(PointId),
    /// Through `at`, square to the straight through two points.
    Square {
        /// What it is square to.
        to: [PointId; 2],
        /// Where it passes.
        at: PointId,
    },
    /// Through `at`, beside the straight through two points.
    Parallel {
        /// What it runs beside.
        to: [PointId; 2],
        /// Where it passes.
        at: PointId,
    },
    /// Through `at`, leaning from the upright.
    Slope {
        /// Where it passes.
        at: PointId,
        /// How far it leans.
        slope: Slope,
        /// Which way it leans going up: to the side or to the fork.
        towards: Way,
    },
    /// The arc about a point.
    Arc {
        /// Where the compasses stand.
        about: PointId,
        /// How far they are opened.
        reach: Proportion,
    },
}

/// How far a line leans from the upright.
#[derive(Clone, Debug, PartialEq)]
pub enum Slope {
    /// So far up for so far across: `15 : 3.5`.
    Sides {
        /// Up.
        up: Proportion,
        /// Across.
        across: Proportion,
    },
    /// Degrees from the upright.
    Degrees(f64),
}

/// A track on a certain body.
#[derive(Clone, Copy, Debug)]
pub(super) enum Laid {
    /// A point and the direction, a unit.
    Straight(Point, Vec2),
    /// Centre and radius.
    Round(Point, f64),
}

/// Lines that turn from each other by less than this over their length cross off the table.
const LEAST_TURN: f64 = 1e-3;
/// Two crossings nearer than this in the direction that chooses between them are not told apart, cm.
const TOLD_APART: f64 = 1e-6;

impl Track {
    /// The points that the line hangs on.
    pub fn points(&self) -> impl Iterator<Item = PointId> + use<> {
        let [a, b, c] = match self {
            Self::Level(_) => [None, None, None],
            Self::Through([first, second]) => [Some(*first), Some(*second), None],
            Self::LevelOf(at) | Self::UprightOf(at) | Self::Slope { at, .. } => [Some(*at), None, None],
            Self::Square { to, at } | Self::Parallel { to, at } => [Some(to[0]), Some(to[1]), Some(*at)],
            Self::Arc { about, .. } => [Some(*about), None, None],
        };
        a.into_iter().chain(b).chain(c)
    }

    /// The proportions that the line goes by.
    pub fn proportions(&self) -> impl Iterator<Item = &Proportion> {
        let [a, b] = match self {
            Self::Slope { slope: Slope::Sides { up, across }, .. } => [Some(up), Some(across)],
            Self::Arc { reach, .. } => [Some(reach), None],
            _ => [None, None],
        };
        a.into_iter().chain(b)
    }

    /// The level lines that it names.
    pub fn level(&self) -> Option<usize> {
        match self {
            Self::Level(line) => Some(*line),
            _ => None,
        }
    }

    pub(super) fn laid(&self, inputs: &Inputs, made: &Construction) -> Result<Laid, Fault> {
        let at = |id: &PointId| made.points[id.0];
        let along = |ends: &[PointId; 2]| {
            let along = at(&ends[1]) - at(&ends[0]);
            if along.hypot() < SAME_PLACE { Err(Fault::Coincident) } else { Ok(along.normalize()) }
        };
        let square = |along: Vec2| Vec2::new(-along.y, along.x);
        Ok(match self {
            Self::Level(line) => Laid::Straight(Point::new(0.0, made.lines[*line]), Vec2::new(1.0, 0.0)),
            Self::Through(ends) => Laid::Straight(at(&ends[0]), along(ends)?),
            Self::LevelOf(point) => Laid::Straight(at(point), Vec2::new(1.0, 0.0)),
            Self::UprightOf(point) => Laid::Straight(at(point), Vec2::new(0.0, 1.0)),
            Self::Square { to, at: point } => Laid::Straight(at(point), square(along(to)?)),
            Self::Parallel { to, at: point } => Laid::Straight(at(point), along(to)?),
            Self::Slope { at: point, slope, towards } => {
                let (up, across) = match slope {
                    Slope::Sides { up, across } => (up.value(inputs, made)?, across.value(inputs, made)?),
                    Slope::Degrees(degrees) => {
                        let (across, up) = degrees.to_radians().sin_cos();
                        (up, across)
                    }
                };
                let along = Vec2::new(towards.vector().x * across, -up);
                if along.hypot() < SAME_PLACE || along.is_nan() {
                    return Err(Fault::Coincident);
                }
                Laid::Straight(at(point), along.normalize())
            }
            Self::Arc { about, reach } => {
                let reach = reach.value(inputs, made)?;
                if reach <= 0.0 || reach.is_nan() {
                    return Err(Fault::NoReach { reach });
                }
                Laid::Round(at(about), reach)
            }
        })
    }
}

impl Laid {
    /// Where two lines cross; of two crossings the one that lies farther in the direction asked for.
    pub(super) fn crossing(self, other: Self, towards: Option<Way>) -> Result<Point, Fault> {
        match (self, other) {
            (Self::Straight(a, along), Self::Straight(b, across)) => {
                let turn = along.cross(across);
                if turn.abs() < LEAST_TURN {
                    return Err(Fault::Level);
                }
                // On the second line to the last bit, so that a level is met exactly.
                if across.y == 0.0 {
                    return Ok(Point::new(a.x + along.x * (b.y - a.y) / along.y, b.y));
                }
                if along.y == 0.0 {
                    return Ok(Point::new(b.x + across.x * (a.y - b.y) / across.y, a.y));
                }
                if across.x == 0.0 {
                    return Ok(Point::new(b.x, a.y + along.y * (b.x - a.x) / along.x));
                }
                if along.x == 0.0 {
                    return Ok(Point::new(a.x, b.y + across.y * (a.x - b.x) / across.x));
                }
                Ok(a + along * ((b - a).cross(across) / turn))
            }
            (Self::Straight(at, along), Self::Round(centre, radius))
            | (Self::Round(centre, radius), Self::Straight(at, along)) => {
                let foot = at + along * (centre - at).dot(along);
                let away = centre.distance(foot);
                if radius < away {
                    return Err(Fault::Short { span: radius, away });
                }
                let half = (radius * radius - away * away).sqrt();
                let level = along.y == 0.0;
                let place = |by: f64| {
                    let point = foot + along * by;
                    if level { Point::new(point.x, at.y) } else { point }
                };
                chosen([place(half), place(-half)], towards)
            }
            (Self::Round(centre, radius), Self::Round(other, reach)) => {
                let between = other - centre;
                let away = between.hypot();
                if away < SAME_PLACE {
                    return Err(Fault::Coincident);
                }
                if radius + reach < away || (radius - reach).abs() > away {
                    return Err(Fault::Apart { first: radius, second: reach, away });
                }
                let along = 0.5 * (away + (radius * radius - reach * reach) / away);
                let half = (radius * radius - along * along).max(0.0).sqrt();
                let unit = between / away;
                let foot = centre + unit * along;
                let across = Vec2::new(-unit.y, unit.x) * half;
                chosen([foot + across, foot - across], towards)
            }
        }
    }
}

fn chosen([one, other]: [Point; 2], towards: Option<Way>) -> Result<Point, Fault> {
    if one.distance(other) < TOLD_APART {
        return Ok(one);
    }
    let way = towards.unwrap_or(Way::Side);
    let farther = way.vector().dot(one - other);
    if farther.abs() < TOLD_APART {
        return Err(Fault::NotToldApart { way });
    }
    Ok(if farther > 0.0 { one } else { other })
}
