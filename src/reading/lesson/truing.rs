//! Truing shown: what was unequal, what is moved to make it equal, and where every point lies before and after.

use kurbo::{Affine, BezPath, Point, Rect, Shape as _, Vec2};

use super::{
    Class,
    stage::LANGUAGE,
    sums::{fine, fine_length},
};
use crate::{
    booklet::{Block, Booklet, Column, Table},
    curve::{Chain, angle_between},
    draft::{PanelShape, Shape, Step as Recorded},
    drawing::{Drawing, Labels, Layer, Mark, Text, Wording},
    fit::Report,
    paper::panel_marks,
    terms::{Join, Panel, Role, Seam, Word},
    told::tables::called,
    voice::{Value, amount, angles, named, rule_of_thumb},
};

/// Truing pictures show this much of the body's paper, cm, so large.
const WINDOW: (f64, f64) = (22.0, 17.0);
const SCALE: f64 = 0.36;

impl Class<'_> {
    /// The chapter on truing.
    pub(super) fn truing(&self) -> Vec<Block> {
        let recorded = self.plain.steps();
        let trued = &recorded[self.draft().recipe.steps.len()..];
        if !self.draft().recipe.truing.on {
            return vec![
                Block::chapter("Truing"),
                Block::plain("This recipe is drawn as its source prints it and is not trued."),
            ];
        }
        let [before, after] = [&self.joined, &self.plain.shape].map(|shape| self.report(shape));
        let mut blocks = vec![
            Block::chapter("Truing: what sews together is made to agree"),
            Block::plain(
                "Joined as they are, front and back do not sew together: seams differ in length, and \
                 curves meet in a peak or a dip. The front stays; the back follows, one unknown at a time. \
                 In the pictures the panel before truing is dashed, after truing strong.",
            ),
        ];
        let plan = &self.plain.plan;
        let (of_the_inseam, trued) = trued.split_at(usize::from(!plan.inseam_as_drawn).min(trued.len()));
        blocks.push(if plan.inseam_as_drawn {
            Block::plain(
                "The back crotch point stays where the recipe draws it. So the inseams keep what they differ by; the \
                 fit sheet shows it.",
            )
        } else {
            self.inseam_trued(of_the_inseam.first(), &before, &after)
        });
        blocks.push(self.crossing_trued(&before, &after));
        if plan.waist_as_drawn {
            blocks.push(Block::plain(
                "The waist stays as the recipe draws it: its ends, its darts and its straight line. So the side \
                 seams keep what they differ by, and the angles at the waist are not trued; the fit sheet shows both.",
            ));
        } else {
            blocks.push(self.side_trued(trued.first(), &before, &after));
            blocks.extend(self.waist_trued(trued.get(1..).unwrap_or_default(), &before, &after));
        }
        blocks.push(Block::section("What it cost"));
        blocks.push(Block::Table(self.lost_or_gained()));
        blocks.push(Block::led(
            "Why.",
            "A recipe's curve is drawn by eye between two points; trued, it crosses the inseam at its angle, and \
             what a rounder corner had more of is gone. The crotch length that counts is the trued one.",
        ));
        blocks.push(Block::plain(
            "Where the points lie: across from the crease (minus: towards the fork) and down from the \
             waist line (minus: above it), as constructed and as trued. The curve starts and centre hips \
             that differ slid along their lines; a side waist is also moved where the darts cannot take \
             what the side must not.",
        ));
        for panel in Panel::ALL {
            blocks.push(Block::Table(self.places(*panel)));
        }
        blocks.push(Block::chapter("The trued lines, for the pencil"));
        blocks.push(Block::plain(
            "Mark the points of the two tables above. Every bent line is drawn off the straight line between two of \
             them: draw that line thin, square out from it what the table says, outwards, or into the panel with a \
             minus, and lead the pencil through the marks. What no table names is straight. The waist is open over \
             the darts: their legs say where it ends and begins again.",
        ));
        for panel in Panel::ALL {
            blocks.extend(self.pencilled(self.plain.shape.panel(*panel)));
        }
        blocks
    }

    fn report(&self, shape: &Shape) -> Report {
        let draft = &self.plain;
        Report::of(&draft.plan, &draft.parameters, shape, &draft.body)
    }

    fn seam(&self, name: &str, seam: Seam, before: &Report, after: &Report) -> Table {
        let mut table = Table::new(
            name,
            vec![
                Column::words("", 2.0),
                Column::numbers("front", 1.5),
                Column::numbers("back", 1.5),
                Column::numbers("back longer", 1.8),
            ],
        );
        for (word, report) in [("joined", before), ("trued", after)] {
            if let Some(row) = report.seams.iter().find(|row| row.seam == seam) {
                let [front, back, longer] = [row.front, row.back, row.difference()].map(amount);
                table.row([word.into(), front, back, longer]);
            }
        }
        table
    }

    fn inseam_trued(&self, step: Option<&Recorded<'_>>, before: &Report, after: &Report) -> Block {
        let moved = step.and_then(|step| step.value).unwrap_or_default();
        let stretch = self.plain.plan.inseam_stretch;
        let shorter = if stretch == 0.0 {
            "as long as the front inseam".to_owned()
        } else {
            format!(
                "{} shorter than the front inseam, which is stretched in sewing",
                fine_length(stretch, self.unit())
            )
        };
        let words = vec![
            Block::section("Inseams walked"),
            Block::led(
                "Do.",
                &format!(
                    "Walk the back inseam along the front's from the knee up. Slide the back crotch point \
                     {} until the back inseam is {shorter}, and draw inseam and curve again.",
                    vertical(moved, self.unit())
                ),
            ),
            Block::Table(self.seam("The inseams", Seam::Inseam, before, after)),
            Block::led(
                "Why.",
                "The inseams are sewn together, and below the knee they are equal by construction. Front \
                 extension and back extension differ, so the slants differ; the height of the back crotch \
                 point takes it up.",
            ),
        ];
        let [was, is] = [&self.joined.back, &self.plain.shape.back];
        let picture =
            both(was, is, is.roles[Role::CrotchPoint] + Vec2::new(7.0, 0.0), "The back at its crotch point");
        Block::beside(words, picture, Booklet::width())
    }

    fn crossing_trued(&self, before: &Report, after: &Report) -> Block {
        let words = vec![
            Block::section("The crotch curve across the inseam"),
            Block::led(
                "Do.",
                &rule_of_thumb(
                    "Lay the front inseam on the back inseam at the crotch point. Draw both curves and the last 5 cm of \
                     both inseams so that the curves run on into each other.",
                    self.unit(),
                ),
            ),
            Block::Table(self.join(&[Join::Crotch], before, after)),
            Block::led("Why.", "Sewn together, the two curves are one. A peak there pokes, a dip cuts in."),
        ];
        Block::beside(words, laid_at_the_fork(&self.plain.shape), Booklet::width())
    }

    fn side_trued(&self, step: Option<&Recorded<'_>>, before: &Report, after: &Report) -> Block {
        let moved = step.and_then(|step| step.value).unwrap_or_default();
        let words = vec![
            Block::section("Side seams walked"),
            Block::led(
                "Do.",
                &format!(
                    "Walk the side seams from the hem up. The hip and knee notches are set on the front \
                     and carried to the back by length. Slide the top of the back side seam {} along its \
                     line until both are equal.",
                    vertical(moved, self.unit())
                ),
            ),
            Block::Table(self.seam("The side seams", Seam::SideSeam, before, after)),
            Block::led("Why.", "They are sewn together; what is longer would hang in folds."),
        ];
        let [was, is] = [&self.joined.back, &self.plain.shape.back];
        let picture =
            both(was, is, is.roles[Role::SideWaist] + Vec2::new(-7.0, 5.5), "The back at its side waist");
        Block::beside(words, picture, Booklet::width())
    }

    fn waist_trued(&self, steps: &[Recorded<'_>], before: &Report, after: &Report) -> Vec<Block> {
        let unit = self.unit();
        let mut table = Table::new(
            "Darts and sewn waist",
            vec![
                Column::words("", 1.6),
                Column::numbers("darts planned", 1.8),
                Column::numbers("darts trued", 1.6),
                Column::numbers("sewn waist", 1.7),
            ],
        );
        for panel in Panel::ALL {
            let plan = match panel {
                Panel::Front => &self.plain.plan.front,
                Panel::Back => &self.plain.plan.back,
            };
            let shape = self.plain.shape.panel(*panel);
            let trued = steps.iter().find(|step| step.panel == *panel).and_then(|step| step.value);
            let lengths = [plan.intake, trued.unwrap_or_default(), shape.sewn_waist_length()];
            let [planned, darts, sewn] = lengths.map(amount);
            table.row([(*panel).into(), planned, darts, sewn]);
        }
        let wanted = fine_length(self.plain.plan.sewn_waist, unit);
        let words = vec![
            Block::section("The waist, drawn as it is sewn"),
            Block::List(
                [
                    "Fold the darts closed.".to_owned(),
                    "Lay the front's side seam on the back's.".to_owned(),
                    "Square a short line off the centre front and off the centre back.".to_owned(),
                    "Draw one smooth waist from the one to the other, straight on across the side seam.".to_owned(),
                    format!("Measure it: front and back together must keep {wanted}."),
                    "Give back what the curve changed by the back darts, else by the front darts, else at the side."
                        .to_owned(),
                    "Cut along it with the darts folded, and open them again.".to_owned(),
                ]
                .iter()
                .map(|words| Wording::paragraph(words))
                .collect(),
            ),
            Block::Table(table),
            Block::Table(self.join(&[Join::SideWaist, Join::CentreFront, Join::CentreBack], before, after)),
            Block::led(
                "Why.",
                "A waist drawn over open darts breaks at each of them when they are sewn; a waist that is \
                 not square to the centre makes a peak or a dip there.",
            ),
        ];
        let [was, is] = [&self.joined.back, &self.plain.shape.back];
        let middle = is.roles[Role::CentreWaist].midpoint(is.roles[Role::SideWaist]);
        let picture = both(was, is, middle + Vec2::new(0.0, 4.5), "The back waist");
        vec![Block::beside(words, picture, Booklet::width())]
    }

    fn join(&self, joins: &[Join], before: &Report, after: &Report) -> Table {
        let mut table = Table::new(
            "Angles",
            vec![
                Column::words("", 2.0),
                Column::numbers("joined", 1.3),
                Column::numbers("trued", 1.3),
                Column::numbers("wanted", 2.2),
            ],
        );
        for join in joins {
            let of = |report: &Report| report.joins.iter().find(|row| row.join == *join).copied();
            if let (Some(was), Some(is)) = (of(before), of(after)) {
                table.row([
                    called(*join),
                    Value::Degrees(was.degrees),
                    Value::Degrees(is.degrees),
                    angles(is.wanted),
                ]);
            }
        }
        table
    }

    fn places(&self, panel: Panel) -> Table {
        let rules = self.rules(panel);
        let made = &self.draft().plan.construction;
        let crease = self.crease(panel);
        let mut table = Table::new(
            &format!("The {panel}: its points as constructed and as trued"),
            vec![
                Column::words("point", 2.6),
                Column::words("in the recipe", 3.0),
                Column::numbers("across", 1.4),
                Column::numbers("down", 1.4),
                Column::numbers("trued across", 1.8),
                Column::numbers("trued down", 1.8),
            ],
        );
        for role in Role::ALL {
            let id = rules.roles[*role];
            let at = made.points[id.0] - Vec2::new(crease, 0.0);
            let trued = self.plain.shape.panel(panel).roles[*role];
            let [x, y, trued_x, trued_y] = [at.x, at.y, trued.x, trued.y].map(amount);
            table.row([called(*role), named(self.point_name(id)), x, y, trued_x, trued_y]);
        }
        table
    }
}

/// How far up or down.
fn vertical(down: f64, unit: crate::unit::Unit) -> String {
    if fine(down, unit) == "0" {
        "not at all".to_owned()
    } else if down < 0.0 {
        format!("{} up", fine_length(-down, unit))
    } else {
        format!("{} down", fine_length(down, unit))
    }
}

/// A part of a panel before and after, `centre` in the middle.
fn both(was: &PanelShape, is: &PanelShape, centre: Point, title: &str) -> Drawing {
    let window = Rect::from_center_size(centre, WINDOW);
    let fit = Affine::scale(SCALE) * Affine::translate(-window.origin().to_vec2());
    let mut earlier = Layer::new("Joined");
    let mut newer = Layer::new("Trued");
    for path in [panel_marks::sewing_line(was), panel_marks::inside(was)] {
        earlier.line(fit * path, LANGUAGE.earlier);
    }
    newer.line((fit * panel_marks::crease(is)).to_path(0.1), LANGUAGE.crease);
    newer.line(fit * panel_marks::sewing_line(is), LANGUAGE.outline);
    newer.line(fit * panel_marks::inside(is), LANGUAGE.inside);
    framed(
        window.size() * SCALE,
        title,
        "The panel before truing dashed, after truing strong.",
        vec![newer, earlier],
    )
}

fn framed(size: kurbo::Size, title: &str, description: &str, layers: Vec<Layer>) -> Drawing {
    Drawing {
        title: Wording::line(title),
        description: Wording::paragraph(description),
        bounds: size.to_rect(),
        layers,
    }
}

/// Front and back with their inseams together at the crotch point, as they are laid to look across the seam.
fn laid_at_the_fork(shape: &Shape) -> Drawing {
    let (front, back) = (&shape.front, &shape.back);
    let mirrored = Affine::FLIP_X;
    let down = |edge: &Chain| -edge.end_tangent();
    let back_down = mirrored * down(&back.inseam).to_point();
    let turn = signed_angle(back_down.to_vec2(), down(&front.inseam));
    let point = front.roles[Role::CrotchPoint];
    let turned = Affine::rotate(turn) * mirrored;
    let place = Affine::translate(point - turned * back.roles[Role::CrotchPoint]) * turned;
    let window = Rect::from_center_size(point + Vec2::new(-1.0, -1.5), WINDOW);
    let fit = Affine::scale(SCALE) * Affine::translate(-window.origin().to_vec2());
    let paper = (window.size() * SCALE).to_rect();
    let mut layer = Layer::new("Trued");
    let mut labels = Labels::new(paper, 0.1);
    for (place, panel) in [(Affine::IDENTITY, front), (place, back)] {
        let path: BezPath = fit * place * panel_marks::sewing_line(panel);
        labels.spare(&path);
        layer.line(path, LANGUAGE.outline);
    }
    let mut words = Layer::new("Names");
    for (place, panel, name) in [(Affine::IDENTITY, front, "front"), (place, back, "back")] {
        let inside = place * panel.inseam.point_before_end(6.0);
        let at = fit * inside;
        let way = if panel.panel == Panel::Front { 1.0 } else { -1.0 };
        let spots = [0.9, 1.4, 1.9].map(|away| {
            let text = Text::new(at + Vec2::new(way * away, 0.0), LANGUAGE.text, name);
            text.aligned(crate::drawing::Align::Middle)
        });
        words.marks.extend(labels.place(spots).map(Mark::Text));
    }
    framed(
        window.size() * SCALE,
        "Inseam on inseam at the crotch point",
        "Front and back laid together along the inseam: their crotch curves run on into each other.",
        vec![layer, words],
    )
}

/// The turn that brings one direction into another, radians.
fn signed_angle(from: Vec2, to: Vec2) -> f64 {
    let angle = angle_between(from, to);
    if from.cross(to) < 0.0 { -angle } else { angle }
}
