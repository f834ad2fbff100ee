//! Numbers and path data as SVG and JSON write them.

use kurbo::{BezPath, PathEl, Point};

/// A number with at most so many decimals, without trailing zeros and without a negative zero.
pub fn number(out: &mut String, value: f64, decimals: usize) {
    let long = format!("{value:.decimals$}");
    let short = if decimals == 0 { &long } else { long.trim_end_matches('0').trim_end_matches('.') };
    out.push_str(if short == "-0" { "0" } else { short });
}

/// A path as SVG data: absolute `M`, `L`, `C` and `Z`, single spaces, at most so many decimals. A quadratic arc is
/// written as the cubic that it is.
pub fn path_data(path: &BezPath, decimals: usize) -> String {
    let mut data = String::new();
    let mut last = Point::ORIGIN;
    let mut start = Point::ORIGIN;
    for step in path.elements() {
        if !data.is_empty() {
            data.push(' ');
        }
        let mut write = |letter: char, points: &[Point]| {
            data.push(letter);
            for point in points {
                for value in [point.x, point.y] {
                    data.push(' ');
                    number(&mut data, value, decimals);
                }
            }
        };
        last = match *step {
            PathEl::MoveTo(to) => {
                write('M', &[to]);
                start = to;
                to
            }
            PathEl::LineTo(to) => {
                write('L', &[to]);
                to
            }
            PathEl::QuadTo(handle, to) => {
                write('C', &[last.lerp(handle, 2.0 / 3.0), to.lerp(handle, 2.0 / 3.0), to]);
                to
            }
            PathEl::CurveTo(first, second, to) => {
                write('C', &[first, second, to]);
                to
            }
            PathEl::ClosePath => {
                write('Z', &[]);
                start
            }
        };
    }
    data
}

#[cfg(test)]
mod tests {
    use super::*;
    use kurbo::Shape;

    fn printed(value: f64) -> String {
        let mut out = String::new();
        number(&mut out, value, 3);
        out
    }

    #[test]
    fn numbers_short_and_without_negative_zero() {
        let cases = [
            (0.0, "0"),
            (-0.0, "0"),
            (-0.0004, "0"),
            (0.0005, "0.001"),
            (100.0, "100"),
            (-2.5, "-2.5"),
            (1.0 / 3.0, "0.333"),
            (2e21, "2000000000000000000000"),
        ];
        for (value, text) in cases {
            assert_eq!(printed(value), text);
        }
        let mut whole = String::new();
        number(&mut whole, 120.4, 0);
        assert_eq!(whole, "120");
    }

    #[test]
    fn a_path_of_every_kind_of_step() {
        let mut path = BezPath::new();
        path.move_to((0.0, 0.0));
        path.line_to((10.0, 0.0));
        path.quad_to((13.0, 0.0), (13.0, 3.0));
        path.curve_to((13.0, 4.0), (12.0, 5.0), (10.0, 5.0));
        path.close_path();
        assert_eq!(path_data(&path, 3), "M 0 0 L 10 0 C 12 0 13 1 13 3 C 13 4 12 5 10 5 Z");
    }

    #[test]
    fn length_kept_when_read_back() {
        let circle = kurbo::Circle::new((3.0, -2.0), 7.0).to_path(1e-6);
        let again = BezPath::from_svg(&path_data(&circle, 4)).unwrap();
        assert!((again.perimeter(1e-9) - circle.perimeter(1e-9)).abs() < 1e-3);
    }
}
