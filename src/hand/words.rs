//! The actions in words.

use super::{Fade, Height, Step, Work};
use crate::{
    terms::{Edge, EnumMap, Level, Panel},
    unit::{Unit, decimal},
};

impl Work {
    /// What is done, one sentence an action, with its figures in `unit`.
    pub fn said(&self, unit: Unit) -> impl Iterator<Item = String> {
        self.steps.iter().flat_map(move |step| step.said(self.panel, unit))
    }
}

impl Step {
    fn said(&self, panel: Panel, unit: Unit) -> Vec<String> {
        let long = |cm: f64| unit.length(cm.abs());
        let amount = |cm: f64| unit.amount(cm.abs());
        let vertical = |up: f64| if up < 0.0 { "down" } else { "up" };
        let across = |out: f64| if out < 0.0 { "in" } else { "out" };
        let opened = |opens: f64| {
            if opens < 0.0 {
                format!("lap it there by {}", amount(opens))
            } else {
                format!("open it there by {} and put paper behind", amount(opens))
            }
        };
        let centre = match panel {
            Panel::Front => "centre front",
            Panel::Back => "centre back",
        };
        match self {
            Self::Slash { reach, opens } => vec![
                format!(
                    "Cut from A, where the crotch curve begins, to P on the inseam, {} below the crotch point. Do not cut through P.",
                    long(*reach)
                ),
                format!("Turn the inner part about P, measure at A and {}.", opened(*opens)),
                format!(
                    "Sweep the inseam from {} below P to {0} above it.",
                    unit.length(crate::draft::PIVOT_SMOOTHED)
                ),
            ],
            Self::Wedge { from_centre, opens } => {
                let (from, hinge) = if *from_centre { (centre, "side seam") } else { ("side seam", centre) };
                let mut said = vec![
                    format!("Cut on the hip line from the {from} to the {hinge} and leave a hinge there."),
                    format!("Turn the part above; measure at the {from} and {}.", opened(*opens)),
                ];
                if *from_centre {
                    said.push(format!(
                        "Sweep the side seam through the hinge, from {} above it to {0} below.",
                        unit.length(crate::draft::SMOOTHED)
                    ));
                }
                said
            }
            Self::Across { opens } => vec![
                format!("Cut on the hip line right across, slide the part below and {}.", opened(*opens)),
                format!(
                    "Draw the {centre} straight on, and sweep the side seam from {} above the cut to {0} below.",
                    unit.length(crate::draft::SMOOTHED)
                ),
            ],
            Self::StoodBack { by } => vec![format!(
                "Stand the {centre} on its old line again: it ends {} {}. The side seam keeps its old line.",
                amount(*by),
                if *by < 0.0 { "lower" } else { "higher" }
            )],
            Self::SideStraightUp { by } => vec![format!(
                "Stand the {centre} on its old line again. Draw the side seam from the hip line up straight above its old line, {} {}, and run it to nothing at the knee line.",
                amount(*by),
                if *by < 0.0 { "lower" } else { "higher" }
            )],
            Self::Swung { at_waist, at_side } => vec![
                format!(
                    "Pin the {centre} on the hip line and swing its top {} by {}.",
                    if *at_waist < 0.0 { "out, away from the side" } else { "in, towards the side" },
                    long(*at_waist)
                ),
                format!(
                    "Move the top of the side seam {} by {}, to nothing at the hip line.",
                    if *at_side < 0.0 { "in" } else { "out" },
                    long(*at_side)
                ),
            ],
            Self::Widened { by } => vec![format!(
                "Draw the {centre} and the start of the curve {} further {}.",
                amount(*by),
                across(*by)
            )],
            Self::Fork { out, up, nothing } => {
                let mut said = Vec::new();
                if *up != 0.0 {
                    said.push(format!(
                        "Slide the crotch point {} by {}, to nothing at the knee line: so the inseam is as long as the other piece's.",
                        vertical(*up),
                        long(*up)
                    ));
                }
                if *out != 0.0 {
                    let end = nothing.map_or("at the knee line".to_owned(), |walked| {
                        format!("{} down the inseam", unit.length(walked))
                    });
                    said.push(format!(
                        "Move the crotch point {} by {}, to nothing {end}.",
                        across(*out),
                        amount(*out)
                    ));
                }
                said
            }
            Self::Lowered { by } => vec![format!("Lengthen the darts by {}.", amount(*by))],
            Self::Curve { starts_up, from_cut, depth, rises } => {
                let place = if *from_cut { "the upper end of the cut" } else { "where it began" };
                let from = match *starts_up {
                    0.0 if *from_cut => "at the upper end of the cut".to_owned(),
                    0.0 => place.to_owned(),
                    up => format!("{} {} {place}", long(up), if up < 0.0 { "below" } else { "above" }),
                };
                let rises = rises.map_or(String::new(), |degrees| {
                    format!(" and rises from the crotch point at {} degrees", decimal(degrees, 0))
                });
                vec![format!(
                    "Sweep the crotch curve: it begins {from}, lies {} deep under the straight line between its ends{rises}.",
                    long(*depth)
                )]
            }
            Self::CentreRaised { by } | Self::CentreUp { by } => {
                vec![format!("Slide the top of the {centre} {} its line by {}.", vertical(*by), amount(*by))]
            }
            Self::SideRaised { by } | Self::SideUp { by } => {
                vec![format!("Slide the top of the side seam {} its line by {}.", vertical(*by), amount(*by))]
            }
            Self::SideOut { by } => vec![format!(
                "Move the side seam at the waist {} by {}, to nothing at the hip line.",
                across(*by),
                long(*by)
            )],
            Self::Moved(fade) => vec![fade.said(unit)],
            Self::Hem { up } => vec![format!(
                "Bend the hem {} by {} in the middle, to nothing at the seams.",
                vertical(*up),
                amount(*up)
            )],
            Self::Waist { darts, corner } => {
                let wide = match darts.as_slice() {
                    [] => String::new(),
                    [one] => format!(" The dart is {} wide.", long(*one)),
                    many => format!(
                        " The darts are {} wide, from the centre.",
                        many.iter().map(|dart| long(*dart)).collect::<Vec<_>>().join(" and ")
                    ),
                };
                let corner = corner.map_or(String::new(), |degrees| {
                    format!(" It meets the side seam at {} degrees.", decimal(degrees, 0))
                });
                vec![format!(
                    "Draw the waist again with the darts folded, square to the {centre}.{wide}{corner}"
                )]
            }
        }
    }
}

impl Fade {
    fn said(&self, unit: Unit) -> String {
        let edge = match self.edge {
            Edge::Inseam => "inseam",
            Edge::SideSeam => "side seam",
            Edge::Waist | Edge::Hem | Edge::CrotchSeam => "edge",
        };
        let away = if self.edge == Edge::Inseam { -1.0 } else { 1.0 };
        let at = self.at.iter().map(|(height, _, by)| {
            if *by == 0.0 {
                return format!("nothing at the {}", height.words(unit));
            }
            let way = if by * away < 0.0 { "in" } else { "out" };
            format!("{} {way} at the {}", unit.amount(by.abs()), height.words(unit))
        });
        format!("Move the {edge}: {}.", at.collect::<Vec<_>>().join(", "))
    }
}

impl Height {
    /// The level line that it is, by its name; `None` where it is measured from one.
    pub fn line(self) -> Option<&'static str> {
        match self {
            Self::Hip => Some("hip line"),
            Self::Crotch => Some("crotch line"),
            Self::Knee => Some("knee line"),
            Self::Calf => Some("calf"),
            Self::Hem => Some("hem"),
            Self::SideWaist => Some("waist"),
            Self::AboveHip | Self::Fork | Self::Fullest | Self::LensEnd => None,
        }
    }

    /// The level line from which it is measured, and how far below the waist line that lies.
    pub(crate) fn measured_from(self, levels: &EnumMap<Level, f64>) -> Option<(&'static str, f64)> {
        match self {
            Self::AboveHip => Some(("hip line", levels[Level::Hip])),
            Self::Fullest | Self::LensEnd => Some(("crotch line", levels[Level::Crotch])),
            _ => None,
        }
    }

    fn words(self, unit: Unit) -> String {
        use crate::draft::{FRONT_RUN_OUT, FULLEST, LENS_ABOVE_HIP};
        match self {
            Self::AboveHip => format!("place {} above the hip line", unit.length(LENS_ABOVE_HIP)),
            Self::Fullest => format!("place {} below the crotch line", unit.length(FULLEST)),
            Self::LensEnd => format!("place {} below the crotch line", unit.length(FULLEST + FRONT_RUN_OUT)),
            Self::Fork => "crotch point".to_owned(),
            Self::SideWaist => "waist".to_owned(),
            Self::Calf => "fullest place of the calf".to_owned(),
            Self::Hip | Self::Crotch | Self::Knee | Self::Hem => self.line().unwrap_or_default().to_owned(),
        }
    }
}
