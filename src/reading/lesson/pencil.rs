//! The lines of a finished panel as a pencil can follow them: ordinates off a straight line between two named points, the
//! angle at the fork, the depth of the crotch curve, where the darts stand.

use kurbo::{Point, Vec2};

use super::Class;
use crate::{
    booklet::{Block, Column, Table},
    curve::{Chain, angle_between, meet, unit},
    draft::PanelShape,
    drawing::Wording,
    hand::run,
    terms::{Edge, Panel, Role, Word},
    told::tables::called,
    unit::{CM_PER_INCH, Unit, decimal},
    voice::{amount, named, spoken},
};

/// A bent part of an edge between two points by which the panel is known.
pub(super) struct Bent {
    name: &'static str,
    ends: [Role; 2],
    line: Vec<Point>,
}

/// The bent lines of a panel, in the order in which they are drawn.
pub(super) fn bent(panel: &PanelShape) -> Vec<Bent> {
    let role = |role: Role| panel.roles[role];
    let curve = panel.crotch_seam.cubics().first().map(|first| run(&Chain::of(*first))).unwrap_or_default();
    let (_, inseam) = panel.inseam.cut_at_level(role(Role::InnerKnee).y);
    let (above, below) = panel.side_seam.cut_at_level(role(Role::SideHip).y);
    let (middle, _) = below.cut_at_level(role(Role::SideKnee).y);
    let of = |name, ends, line| Bent { name, ends, line };
    vec![
        of("crotch curve", [Role::CrotchPoint, Role::CurveStart], curve),
        of("inseam above the knee", [Role::InnerKnee, Role::CrotchPoint], run(&inseam)),
        of("side seam above the hip", [Role::SideWaist, Role::SideHip], run(&above)),
        of("side seam from hip to knee", [Role::SideHip, Role::SideKnee], run(&middle)),
        of("waist", [Role::CentreWaist, Role::SideWaist], run(&panel.waist)),
    ]
}

impl Bent {
    /// How far off the straight line between its ends it lies, every so many cm along it: outwards positive. The ends are
    /// where a pencil puts them, so that what their rounding did is made up for.
    fn ordinates(&self, panel: &PanelShape, [from, to]: [Point; 2], step: f64) -> Vec<[f64; 2]> {
        let (along, whole) = (unit(to - from), from.distance(to));
        // Edges run so that the panel lies on their right as seen.
        let out = Vec2::new(along.y, -along.x);
        let count = (whole / step).ceil() as usize;
        (1..count)
            .filter_map(|number| {
                let wanted = number as f64 * step;
                let pair = self.line.windows(2).find(|pair| {
                    let [a, b] = [pair[0], pair[1]].map(|point| (point - from).dot(along));
                    a <= wanted && wanted < b
                })?;
                let [a, b] = [pair[0], pair[1]].map(|point| (point - from).dot(along));
                let at = pair[0].lerp(pair[1], (wanted - a) / (b - a));
                // Over an open dart there is no line.
                let mouth = self.name == "waist"
                    && panel.darts.iter().any(|dart| dart.legs[0].x < at.x && at.x < dart.legs[1].x);
                (!mouth).then_some([wanted, (at - from).dot(out)])
            })
            .collect()
    }
}

impl Class<'_> {
    /// Between two ordinates, cm: a crotch curve turns on a short way and has them closer.
    fn ordinate_step(&self, bent: &Bent) -> f64 {
        match (self.unit(), bent.name == "crotch curve") {
            (Unit::Cm, true) => 1.0,
            (Unit::Cm, false) => 2.0,
            (Unit::Inch, true) => 0.5 * CM_PER_INCH,
            (Unit::Inch, false) => 0.75 * CM_PER_INCH,
        }
    }

    /// A bent line by its ordinates.
    pub(super) fn ordinates(&self, panel: &PanelShape, bent: &Bent) -> Table {
        let [from, to] = bent.ends.map(|role| spoken(role.key()));
        let mut table = Table::new(
            &format!("The {} {}, off the straight line from {from} to {to}", panel.panel, bent.name),
            vec![Column::numbers("along the line", 1.0), Column::numbers("off it", 1.0)],
        );
        let ends = bent.ends.map(|role| {
            let at = panel.roles[role];
            Point::new(self.as_printed(at.x), self.as_printed(at.y))
        });
        for [along, off] in bent.ordinates(panel, ends, self.ordinate_step(bent)) {
            table.row([amount(along), amount(off)]);
        }
        table
    }

    /// How the crotch curve lies: its angle with the inseam, and how far it passes from the corner on the 45-degree line.
    pub(super) fn fork(&self, panel: &PanelShape) -> Vec<String> {
        let fork = panel.roles[Role::CrotchPoint];
        let corner_angle =
            angle_between(-panel.inseam.end_tangent(), panel.crotch_seam.start_tangent()).to_degrees();
        let mut said = vec![format!(
            "At the crotch point the curve leaves the inseam at {} degrees: lay the set square or the protractor on \
             the last of the inseam.",
            decimal(corner_angle, 0)
        )];
        if let Some(depth) = depth_at_45(panel) {
            said.push(format!(
                "Produce the straight centre line down to the level of the crotch point. From that corner draw a \
                 line at 45 degrees up towards the fork: the curve passes {} from the corner.",
                self.unit().amount(depth)
            ));
        }
        said.push(format!(
            "The straight line from curve start to crotch point is {} long; the curve lies under it by what the \
             table says.",
            self.unit().amount(panel.roles[Role::CurveStart].distance(fork))
        ));
        said
    }

    /// Where the darts stand.
    pub(super) fn darts(&self, panel: &PanelShape) -> Option<Table> {
        let mut table = Table::new(
            &format!("The {} darts: where they stand", panel.panel),
            vec![
                Column::words("dart, from the centre", 2.5),
                Column::words("place", 3.0),
                Column::numbers("across", 1.3),
                Column::numbers("down", 1.3),
            ],
        );
        for (number, dart) in panel.darts.iter().enumerate() {
            let places = [
                ("leg towards the centre", dart.legs[0]),
                ("leg towards the side", dart.legs[1]),
                ("end", dart.apex),
            ];
            for (name, at) in places {
                table.row([named((number + 1).to_string()), name.into(), amount(at.x), amount(at.y)]);
            }
        }
        (!table.rows.is_empty()).then_some(table)
    }

    /// What the crotch seam and the others have lost or gained.
    pub(super) fn lost_or_gained(&self) -> Table {
        let mut table = Table::new(
            "What truing took off or gave",
            vec![
                Column::words("edge", 2.2),
                Column::words("panel", 1.4),
                Column::numbers("joined", 1.5),
                Column::numbers("trued", 1.5),
                Column::numbers("gained", 1.5),
            ],
        );
        for panel in Panel::ALL {
            let [was, is] = [&self.joined, &self.plain.shape].map(|shape| shape.panel(*panel));
            for edge in [Edge::CrotchSeam, Edge::Inseam, Edge::SideSeam, Edge::Waist] {
                // Printed figures that agree with one another: what was gained is their difference.
                let [was, is] = [was, is].map(|panel| self.as_printed(panel.sewn_length(edge)));
                table.row([called(edge), (*panel).into(), amount(was), amount(is), amount(is - was)]);
            }
        }
        table
    }

    /// A length as it is printed.
    fn as_printed(&self, cm: f64) -> f64 {
        let step = match self.unit() {
            Unit::Cm => 0.01,
            Unit::Inch => CM_PER_INCH / 16.0,
        };
        (cm / step).round() * step
    }

    /// A panel's lines, one action after the other.
    pub(super) fn pencilled(&self, panel: &PanelShape) -> Vec<Block> {
        let list =
            |said: Vec<String>| Block::List(said.iter().map(|words| Wording::paragraph(words)).collect());
        let mut blocks =
            vec![Block::section(&format!("The {} for the pencil", panel.panel)), list(self.fork(panel))];
        for bent in bent(panel) {
            if bent.name == "waist" {
                blocks.extend(self.darts(panel).map(Block::Table));
            }
            blocks.push(Block::Table(self.ordinates(panel, &bent)));
        }
        blocks
    }
}

/// How far from the corner of centre line and crotch level the curve passes on the 45-degree line.
fn depth_at_45(panel: &PanelShape) -> Option<f64> {
    let (start, fork) = (panel.roles[Role::CurveStart], panel.roles[Role::CrotchPoint]);
    let down = unit(start - panel.roles[Role::CentreWaist]);
    let (along, _) = meet(start, down, fork, Vec2::new(1.0, 0.0))?;
    let corner = start + down * along;
    let way = unit(Vec2::new(-1.0, -1.0));
    let curve = run(&Chain::of(*panel.crotch_seam.cubics().first()?));
    curve.windows(2).find_map(|pair| {
        let (far, part) = meet(corner, way, pair[0], unit(pair[1] - pair[0]))?;
        (far > 0.0 && (0.0..=pair[0].distance(pair[1])).contains(&part)).then_some(far)
    })
}
