//! Demo bodies: invented people of a rowing club that sews its own dry-land trousers, known by their places in the boat.

use crate::mistake::Source;

/// The names of the demo bodies.
pub const DEMOS: &[&str] = &["stroke", "five", "cox"];

/// The measurement file of a demo body.
pub fn demo(name: &str) -> Option<Source> {
    let (file, text) = match name {
        "stroke" => ("stroke.toml", include_str!("../../blocks/bodies/stroke.toml")),
        "five" => ("five.toml", include_str!("../../blocks/bodies/five.toml")),
        "cox" => ("cox.toml", include_str!("../../blocks/bodies/cox.toml")),
        _ => return None,
    };
    Some(Source::new(file, text))
}
