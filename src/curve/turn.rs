//! Turns of part of a panel.

use kurbo::{Affine, Point, Vec2};

/// A turn from x towards y of less than half round, kept by its cosine and sine: points, directions and the half of the
/// turn need them again.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Turn {
    cos: f64,
    sin: f64,
}

impl Turn {
    /// No turn.
    pub const NONE: Self = Self { cos: 1.0, sin: 0.0 };

    /// The turn by which a point `reach` from the pivot goes `opening` cm, measured straight across.
    pub fn opening(opening: f64, reach: f64) -> Self {
        let half = (0.5 * opening / reach).clamp(-1.0, 1.0);
        Self { cos: 1.0 - 2.0 * half * half, sin: 2.0 * half * (1.0 - half * half).sqrt() }
    }

    /// Half of the turn.
    #[must_use]
    pub fn half(self) -> Self {
        let cos = (0.5 * (1.0 + self.cos)).sqrt();
        Self { cos, sin: 0.5 * self.sin / cos }
    }

    /// The turn back.
    #[must_use]
    pub fn back(self) -> Self {
        Self { sin: -self.sin, ..self }
    }

    /// A direction turned.
    pub fn of(self, vector: Vec2) -> Vec2 {
        Vec2::new(vector.x * self.cos - vector.y * self.sin, vector.x * self.sin + vector.y * self.cos)
    }

    /// The turn about a pivot.
    pub fn about(self, pivot: Point) -> Affine {
        let rest = pivot - self.of(pivot.to_vec2());
        Affine::new([self.cos, self.sin, -self.sin, self.cos, rest.x, rest.y])
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn opening_as_wide_as_asked() {
        let (pivot, point) = (Point::new(3.0, 50.0), Point::new(-6.0, 26.0));
        for opening in [-2.0, -0.3, 0.0, 1.9, 4.0] {
            let turn = Turn::opening(opening, point.distance(pivot));
            let turned = turn.about(pivot) * point;
            assert!((turned.distance(point) - f64::abs(opening)).abs() < 1e-12);
            assert!((turned.distance(pivot) - point.distance(pivot)).abs() < 1e-12);
        }
    }

    #[test]
    fn halves_and_turns_back() {
        let turn = Turn::opening(3.0, 20.0);
        let way = Vec2::new(0.6, -0.8);
        assert!((turn.half().of(turn.half().of(way)) - turn.of(way)).hypot() < 1e-15);
        assert!((turn.back().of(turn.of(way)) - way).hypot() < 1e-15);
    }
}
