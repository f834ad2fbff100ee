//! What an eye sees on the drawn panels and no level, seam or join tells: darts that nobody can sew, corners and waves in
//! a seam, a crotch curve turned like a hook, a dart or a grain line that leaves its panel.
//!
//! Nothing here is said of a body and parameters within their usual ranges; the bounds of what can still be looked at on
//! a toile and of what is not to be cut are common practice, no source, each set beyond what 985 surveyed people and all
//! recipes give.

use kurbo::{BezPath, PathSeg, Shape as _};

use crate::{
    curve::{Course, least_radius},
    draft::{Dart, PanelShape},
    mistake::{Notice, Severity},
    terms::{Edge, Panel},
    voice::{degrees, length},
};

/// A figure beyond which a toile has to show whether it is good, and one beyond which nothing is to be cut.
#[derive(Clone, Copy, Debug)]
struct Bounds {
    mind: f64,
    not_to_cut: f64,
}

/// What one dart takes in, cm: a wider one stands off the body like a cone.
const WIDE_DART: Bounds = Bounds { mind: 5.5, not_to_cut: 8.0 };
/// What a dart takes in for each cm of its length: a blunter one ends in a pouch.
const BLUNT_DART: Bounds = Bounds { mind: 0.5, not_to_cut: 1.0 };
/// By how much a seam turns within [`LOOK`], degrees: more is a corner.
const CORNER: Bounds = Bounds { mind: 15.0, not_to_cut: 30.0 };
/// The least radius of a crotch curve, cm: a tighter one pulls in a point and cannot be sewn or clipped.
const TIGHT: Bounds = Bounds { mind: 1.0, not_to_cut: 0.5 };
/// How often a side seam may change the way it bends: hollow above the hip, full over it, hollow below, straight or full
/// towards the hem.
const MOST_WAVES: usize = 3;
/// A bend of a seam that stands off its chord by less than this, cm, is not seen.
const SEEN_BEND: f64 = 0.1;
/// Along how much of a seam an eye takes a turn for a corner, cm.
const LOOK: f64 = 1.0;
/// Darts that take in less than this, cm, are not looked at.
const NO_DART: f64 = 0.05;

/// What there is to see on a panel.
pub(super) fn notices(panel: &PanelShape) -> Vec<Notice> {
    let mut seen = Vec::new();
    let outline = BezPath::from_path_segments(panel.outline().into_iter().map(PathSeg::Cubic));
    for dart in panel.darts.iter().filter(|dart| dart.intake() > NO_DART) {
        seen.extend(of_dart(panel.panel, dart, &outline));
    }
    for edge in [Edge::SideSeam, Edge::Inseam] {
        let course = Course::along(panel.edge(edge));
        seen.extend(corner(panel.panel, edge, &course));
        if edge == Edge::SideSeam {
            seen.extend(waves(panel.panel, edge, &course));
        }
    }
    seen.extend(tight(panel));
    seen.extend(grain(panel));
    seen
}

/// The weight of a figure that is the worse the larger it is.
fn weight(figure: f64, bounds: Bounds) -> Severity {
    let (mind, not_to_cut) = (bounds.mind < figure, bounds.not_to_cut < figure);
    // A figure that is no number is no comfort.
    if not_to_cut || figure.is_nan() {
        Severity::NotToCut
    } else if mind {
        Severity::Mind
    } else {
        Severity::Note
    }
}

/// The same notice with its weight; none where it has none.
fn weighed(severity: Severity, notice: Notice) -> Option<Notice> {
    (severity != Severity::Note).then_some(Notice { severity, ..notice })
}

fn of_dart(panel: Panel, dart: &Dart, outline: &BezPath) -> impl Iterator<Item = Notice> + use<> {
    let (intake, long) = (dart.intake(), dart.length());
    let wide = Notice::note("dart-wide", "a {panel} dart takes in {intake}: wider than can be sewn flat; share it between two, or give it to the side seam")
        .with("panel", panel)
        .with("intake", length(intake));
    let blunt = Notice::note(
        "dart-blunt",
        "a {panel} dart takes in {intake} on a length of {long}: it ends in a pouch",
    )
    .with("panel", panel)
    .with("intake", length(intake))
    .with("long", length(long));
    let outside =
        Notice::not_to_cut("dart-outside", "a {panel} dart ends outside its panel").with("panel", panel);
    let severity = weight(intake / long, BLUNT_DART);
    [
        weighed(weight(intake, WIDE_DART), wide),
        weighed(severity, blunt),
        (!outline.contains(dart.apex)).then_some(outside),
    ]
    .into_iter()
    .flatten()
}

fn corner(panel: Panel, edge: Edge, course: &Course) -> Option<Notice> {
    let (turn, from_start) = course.sharpest(LOOK);
    let notice = Notice::note("corner-in-seam", "the {panel} {seam} turns by {turn} within {1 cm|3/8 in}, {from_start} from its beginning: sewn, it shows a corner")
        .with("panel", panel)
        .with("seam", edge)
        .with("turn", degrees(turn.to_degrees()))
        .with("from_start", length(from_start));
    weighed(weight(turn.to_degrees(), CORNER), notice)
}

fn waves(panel: Panel, edge: Edge, course: &Course) -> Option<Notice> {
    let waves = course.waves(SEEN_BEND);
    (waves > MOST_WAVES).then(|| {
        Notice::mind("seam-wavy", "the {panel} {seam} changes the way it bends {waves} times: give less of what moves it, or lead it smooth by hand")
            .with("panel", panel)
            .with("seam", edge)
            .with("waves", waves)
    })
}

fn tight(panel: &PanelShape) -> Option<Notice> {
    let radius = least_radius(panel.crotch_seam.cubics().first()?);
    let notice = Notice::note(
        "crotch-tight",
        "the {panel} crotch curve turns on a radius of {radius}: it cannot be sewn smooth, and pulls there",
    )
    .with("panel", panel.panel)
    .with("radius", length(radius));
    let turned = Bounds { mind: 1.0 / TIGHT.mind, not_to_cut: 1.0 / TIGHT.not_to_cut };
    weighed(weight(1.0 / radius, turned), notice)
}

fn grain(panel: &PanelShape) -> Option<Notice> {
    /// So many places of the grain line are looked at.
    const PLACES: usize = 16;
    let [top, bottom] = panel.grain();
    let inside = |y: f64| panel.ends_at(y).is_some_and(|[inner, outer]| inner < top.x && top.x < outer);
    let leaves = (0..=PLACES).any(|place| !inside(top.lerp(bottom, place as f64 / PLACES as f64).y));
    leaves.then(|| {
        Notice::not_to_cut(
            "grain-outside",
            "the grain line of the {panel} leaves the panel: so narrow a leg is none",
        )
        .with("panel", panel.panel)
    })
}
