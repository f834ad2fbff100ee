//! The points of a panel joined by its edges, as the recipe bends them, before truing.

use kurbo::{BezPath, CubicBez, Line, ParamCurve, Point, Shape as _};

use super::{Class, stage::edge_name, sums::fine_length};
use crate::{
    booklet::{Block, Booklet},
    curve::{Chain, meet},
    draft::PanelShape,
    drawing::Wording,
    terms::{Edge, Panel, Role, Word},
    voice::{capital, listed, rule_of_thumb},
};

impl Class<'_> {
    /// The chapter in which a panel's edges are drawn.
    pub(super) fn edges(&self, panel: Panel) -> Vec<Block> {
        let shape = self.joined.panel(panel);
        let stage = self.stage(panel, self.steps_before_edges(panel));
        let mut blocks = vec![
            Block::chapter(&format!("The {panel}: its edges")),
            Block::plain(
                "The points are there; now they are joined. Edges are drawn in the order in which they \
                 depend on one another. They are not true yet: that comes when both panels are drawn.",
            ),
        ];
        blocks.extend(self.settled(panel));
        let mut before: Vec<BezPath> = Vec::new();
        for edge in [Edge::CrotchSeam, Edge::Inseam, Edge::Hem, Edge::SideSeam, Edge::Waist] {
            let path = match edge {
                Edge::Waist => waist_with_darts(shape),
                _ => shape.edge(edge).to_path(),
            };
            let description = format!("The {} of the {panel} drawn in a strong line.", edge_name(edge));
            let picture = stage.edge(&path, &before, &description);
            let words = vec![Block::section(&format!("{}: {}", capital(panel.key()), heading(edge, shape)))];
            let words: Vec<Block> = words
                .into_iter()
                .chain(self.one_by_one(self.how(edge, shape)))
                .chain([Block::led("Why.", why(edge, panel))])
                .collect();
            blocks.push(Block::beside(words, picture, Booklet::width()));
            before.push(path);
        }
        for (line, ends) in shape.lines.iter().zip(&self.rules(panel).lines) {
            let path = line.to_path(0.1);
            let [from, to] = ends.map(|end| self.point_name(end));
            let description = format!("A line of style across the {panel} drawn in a strong line.");
            let picture = stage.edge(&path, &before, &description);
            let words = vec![
                Block::section(&format!("{}: line of style", capital(panel.key()))),
                Block::led(
                    "Do.",
                    &format!("Straight from {from} to {to}: {}.", fine_length(line.length(), self.unit())),
                ),
                Block::led(
                    "Why.",
                    "The panel is parted here by a seam. What a dart takes above it can be folded away in \
                     the upper part.",
                ),
            ];
            blocks.push(Block::beside(words, picture, Booklet::width()));
            before.push(path);
        }
        blocks
    }

    /// What the rules of the trade change on this body before the edges are drawn; nothing where the recipe stands.
    fn settled(&self, panel: Panel) -> Vec<Block> {
        /// Less is not seen on paper, cm.
        const SEEN: f64 = 0.005;
        let long = |cm: f64| fine_length(cm, self.unit());
        let rules = self.rules(panel);
        let plan = match panel {
            Panel::Front => &self.plain.plan.front,
            Panel::Back => &self.plain.plan.back,
        };
        let moved = |role: Role| plan.roles[role] - plan.drawn[role];
        let mut changes = Vec::new();
        changes.extend(self.seams_included());
        let side = moved(Role::SideWaist).x;
        let darts: f64 = rules.darts.iter().map(|dart| self.sums().value(&dart.intake)).sum();
        if side.abs() >= SEEN || (plan.intake - darts).abs() >= SEEN {
            let way = if side < 0.0 { "towards the centre" } else { "outwards" };
            let darts_left = plan.darts.iter().filter(|dart| dart.pleat.is_none()).count();
            let count = match darts_left {
                0 => "there is no dart".to_owned(),
                1 => format!("there is one dart of {}", long(plan.intake)),
                more => format!("there are {more} darts of {} together", long(plan.intake)),
            };
            changes.push(format!(
                "By the recipe the darts take {} and the side takes the rest. A dart of less than {} \
                 is not sewn, one that is too wide is split, and a side that takes too much stands off the \
                 body. So the {} goes {} {way}, and {count}.",
                long(darts),
                rule_of_thumb("0.8 cm", self.unit()),
                self.point_name(rules.roles[Role::SideWaist]),
                long(side.abs()),
            ));
        }
        let start = moved(Role::CurveStart);
        if start.hypot() >= SEEN {
            changes.push(format!(
                "The curve would begin too high for its centre line: {} goes {} along it.",
                self.point_name(rules.roles[Role::CurveStart]),
                long(start.hypot())
            ));
        }
        let hip = moved(Role::SideHip);
        if hip.hypot() >= SEEN {
            changes.push(format!(
                "On the hip line the crotch curve has begun already: {} goes {} so that the width laid out \
                 is kept.",
                self.point_name(rules.roles[Role::SideHip]),
                long(hip.hypot())
            ));
        }
        let lean = moved(Role::CentreWaist);
        if lean.hypot() >= SEEN {
            changes.push(format!(
                "The file asks for a seat that sits easily: {} leans over by {}.",
                self.point_name(rules.roles[Role::CentreWaist]),
                long(lean.hypot())
            ));
        }
        if changes.is_empty() {
            return Vec::new();
        }
        let mut blocks =
            vec![Block::section(&format!("{}: rules of the trade for this body", capital(panel.key())))];
        blocks.extend(changes.iter().map(|change| Block::plain(change)));
        blocks
    }

    /// What is left outside the sewing lines, where the recipe's lines include seams.
    fn seams_included(&self) -> Option<String> {
        let seams = &self.draft().recipe.seams;
        let each: Vec<String> = Edge::ALL
            .iter()
            .filter(|edge| seams.along(**edge) != 0.0)
            .map(|edge| {
                format!("{} along the {}", fine_length(seams.along(*edge), self.unit()), edge_name(*edge))
            })
            .collect();
        (!each.is_empty()).then(|| {
            format!(
                "The lines of this recipe include the seams: {}. The edges below are the sewing lines, drawn so far \
                 inside.",
                listed(&each)
            )
        })
    }

    /// Actions one below the other; a single one as a sentence.
    fn one_by_one(&self, actions: Vec<String>) -> Vec<Block> {
        match actions.as_slice() {
            [one] => vec![Block::led("Do.", one)],
            _ => vec![
                Block::led("Do.", "One after the other:"),
                Block::List(actions.iter().map(|action| Wording::paragraph(action)).collect()),
            ],
        }
    }

    fn how(&self, edge: Edge, shape: &PanelShape) -> Vec<String> {
        let long = |cm: f64| fine_length(cm, self.unit());
        let name = |role: Role| self.point_name(self.rules(shape.panel).roles[role]);
        let chain = shape.edge(edge);
        let whole = long(chain.length());
        match edge {
            Edge::CrotchSeam => {
                let curve = chain.cubics().first().copied().unwrap_or(CubicBez::new(
                    Point::ORIGIN,
                    Point::ORIGIN,
                    Point::ORIGIN,
                    Point::ORIGIN,
                ));
                let deepest = match corner(&curve) {
                    Some(corner) => format!(
                        " Its tangents at both ends cross in a corner; halfway between them it passes {} from \
                         that corner, in one sweep without a flat or a hook.",
                        long(corner.distance(curve.eval(0.5)))
                    ),
                    None => String::new(),
                };
                let [top, start, fork] = [Role::CentreWaist, Role::CurveStart, Role::CrotchPoint].map(name);
                vec![
                    format!("Draw the centre line straight from {top} to {start}."),
                    format!("Draw the curve from {start} to {fork}.{deepest}"),
                    format!("Measure the whole seam: {whole}."),
                ]
            }
            Edge::Inseam => {
                let (_, above) = chain.cut_at_level(shape.roles[Role::InnerKnee].y);
                let [hem, knee, fork] = [Role::InnerHem, Role::InnerKnee, Role::CrotchPoint].map(name);
                vec![
                    format!("Draw straight from {hem} to {knee}."),
                    format!(
                        "Draw from {knee} to {fork} in a long curve that lies {} inside the straight line at its \
                         deepest.",
                        long(bulge(&above))
                    ),
                    format!("Measure the whole seam: {whole}."),
                ]
            }
            Edge::Hem => {
                vec![format!("Straight from {} to {}: {whole}.", name(Role::SideHem), name(Role::InnerHem))]
            }
            Edge::SideSeam => {
                let (above, below) = chain.cut_at_level(shape.roles[Role::SideHip].y);
                let (middle, _) = below.cut_at_level(shape.roles[Role::SideKnee].y);
                let [waist, hip, knee, hem] =
                    [Role::SideWaist, Role::SideHip, Role::SideKnee, Role::SideHem].map(name);
                vec![
                    format!(
                        "Draw from {waist} to {hip} in a curve that stands {} outside the straight line.",
                        long(bulge(&above))
                    ),
                    format!(
                        "Lead it on to {knee} with {} at the most between curve and straight line.",
                        long(bulge(&middle))
                    ),
                    format!("Draw straight from {knee} to {hem}."),
                    format!("Measure the whole seam: {whole}."),
                ]
            }
            Edge::Waist => {
                let ends =
                    format!("Join {} and {}: {whole}.", name(Role::CentreWaist), name(Role::SideWaist));
                let mut words = vec![ends];
                for dart in &shape.darts {
                    let middle = dart.legs[0].midpoint(dart.legs[1]);
                    words.push(format!(
                        "Dart: its middle {} along the waist from the centre, {} wide, {} deep, its end \
                         squared down from the middle.",
                        long(middle.distance(shape.roles[Role::CentreWaist])),
                        long(dart.intake()),
                        long(middle.distance(dart.apex))
                    ));
                }
                for pleat in &shape.pleats {
                    let middle = pleat.folds[0].p0.midpoint(pleat.folds[1].p0);
                    words.push(format!(
                        "Pleat: its middle {} along the waist from the centre, {} wide, laid and not sewn down; its \
                         folds marked {} down.",
                        long(middle.distance(shape.roles[Role::CentreWaist])),
                        long(pleat.intake()),
                        long(pleat.folds[0].length())
                    ));
                }
                if shape.darts.is_empty() {
                    words.push("There is no dart.".to_owned());
                }
                words
            }
        }
    }
}

fn heading(edge: Edge, shape: &PanelShape) -> String {
    match (edge, shape.panel, shape.darts.is_empty()) {
        (Edge::CrotchSeam, Panel::Front, _) => "centre front and crotch curve".to_owned(),
        (Edge::CrotchSeam, Panel::Back, _) => "centre back and crotch curve".to_owned(),
        (Edge::Waist, _, false) => "waist and darts".to_owned(),
        _ => edge_name(edge),
    }
}

fn why(edge: Edge, panel: Panel) -> &'static str {
    match (edge, panel) {
        (Edge::CrotchSeam, Panel::Front) => {
            "The front curve is short and round: the body goes straight down in front and turns only \
             between the legs."
        }
        (Edge::CrotchSeam, Panel::Back) => {
            "The back curve is long and flat: it goes under the seat. Front and back together are the \
             crotch length."
        }
        (Edge::Inseam, _) => {
            "Hollowed above the knee, since the inner thigh draws in below the fork; straight below it, so \
             that the leg hangs plumb."
        }
        (Edge::Hem, _) => "Square to the crease at its middle.",
        (Edge::SideSeam, _) => {
            "Over the hip it follows the body; below it nothing should be seen but a clean line."
        }
        (Edge::Waist, _) => {
            "Hip less waist has to go somewhere: into the side, the centre and the darts, each where the \
             body rounds."
        }
    }
}

/// The waist with the legs of its darts, as it is drawn.
fn waist_with_darts(shape: &PanelShape) -> BezPath {
    let mut path = shape.waist.to_path();
    for dart in &shape.darts {
        path.move_to(dart.legs[0]);
        path.line_to(dart.apex);
        path.line_to(dart.legs[1]);
    }
    for fold in shape.pleats.iter().flat_map(|pleat| pleat.folds) {
        path.move_to(fold.p0);
        path.line_to(fold.p1);
    }
    path
}

/// Where the end tangents of a curve cross.
fn corner(curve: &CubicBez) -> Option<Point> {
    let (start, end) = (curve.p1 - curve.p0, curve.p2 - curve.p3);
    let (along, _) = meet(curve.p0, start, curve.p3, end)?;
    Some(curve.p0 + start * along)
}

/// How far an edge leaves the straight line between its ends, cm.
fn bulge(edge: &Chain) -> f64 {
    /// Enough for a tenth of a millimetre on a leg.
    const PARTS: u32 = 24;
    let chord = Line::new(edge.start(), edge.end());
    let across = (chord.p1 - chord.p0).turn_90();
    if across.hypot() == 0.0 {
        return 0.0;
    }
    let across = across / across.hypot();
    let points = edge
        .cubics()
        .iter()
        .flat_map(|cubic| (0..=PARTS).map(move |part| cubic.eval(f64::from(part) / f64::from(PARTS))));
    points.map(|point| (point - chord.p0).dot(across).abs()).fold(0.0, f64::max)
}
