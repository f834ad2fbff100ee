//! A second opinion on every number of the JSON that can be measured on its paths.
//!
//! Nothing here is shared with the crate but the text that the program prints: paths are read by a reader of our own
//! and measured with the sums of a ruler (many short chords), not with Gauss points, roots and tangents.

mod answer;
mod ruler;

use std::sync::OnceLock;

use answer::{Answer, Piece, drafted_demo, drafted_person, drafted_with, drawn, people};
use ruler::{Path, Place, angle, distance, turned};

/// Two measurements of one length agree within this, cm.
const SAME: f64 = 0.001;
/// Two measurements of one angle agree within this, degrees: handles are printed to 4 decimals.
const SAME_ANGLE: f64 = 0.05;

const DEMOS: [&str; 3] = ["stroke", "five", "cox"];

/// Fit parameters that move edges, a few at a time.
const PARAMETERS: [&str; 4] = [
    "thigh.front=1.9 thigh.back_take=0.6 seat.scoop=0.5 waist.raise_back=0.8",
    "seat.length=1.5 seat.angle=2 thigh.outer=0.6 abdomen.width=0.5 leg.calf=1.2",
    "crotch.depth=0.8 seat.width=0.7 hip.front_share=-0.6 leg.knee_forward=0.4",
    "abdomen.length=1 thigh.inner=0.6 seat.low=0.5 crotch.back_extension=1 side.forward=0.5",
];

/// The three demo bodies, the stroke with fit parameters, and every eighth person of the 507, each drafted once.
fn on_everybody(look: impl Fn(&Answer)) {
    static ANSWERS: OnceLock<Vec<Answer>> = OnceLock::new();
    let answers = ANSWERS.get_or_init(|| {
        let demos = DEMOS.iter().map(|demo| drafted_demo(demo));
        let moved = PARAMETERS.iter().map(|parameters| drafted_with(parameters));
        demos.chain(moved).chain(people().iter().step_by(8).map(drafted_person)).collect()
    });
    assert_eq!(answers.len(), 71);
    answers.iter().for_each(look);
}

fn assert_same(who: &Answer, what: &str, said: f64, measured: f64) {
    assert!(
        (said - measured).abs() < SAME,
        "{}: {what} is said to be {said}, measured {measured}",
        who.name()
    );
}

#[test]
fn edge_lengths() {
    on_everybody(|answer| {
        for piece in answer.pieces() {
            for (name, said, path) in piece.edges() {
                let measured = if name == "waist" { sewn_waist(&piece) } else { path.length() };
                assert_same(answer, &format!("{} {name}", piece.panel()), said, measured);
            }
        }
    });
}

#[test]
fn edges_head_to_tail_and_together_the_outline() {
    const ORDER: [&str; 5] = ["waist", "side_seam", "hem", "inseam", "crotch_seam"];
    on_everybody(|answer| {
        for piece in answer.pieces() {
            let edges = piece.edges();
            assert!(edges.iter().map(|edge| edge.0.as_str()).eq(ORDER));
            for (index, (name, _, path)) in edges.iter().enumerate() {
                let next = &edges[(index + 1) % edges.len()].2;
                assert_eq!(path.end(), next.start(), "{}: {name}", answer.name());
                assert!(!path.closed && path.has_no_empty_part(), "{}: {name}", answer.name());
            }
            let outline = piece.outline();
            assert!(outline.closed);
            assert_eq!(outline.start(), outline.end());
            let sum = edges.iter().map(|edge| edge.2.length()).sum();
            assert_same(answer, "outline", outline.length(), sum);
        }
    });
}

#[test]
fn roles_at_the_ends_of_edges() {
    on_everybody(|answer| {
        for piece in answer.pieces() {
            let edges = piece.edges();
            for (index, role) in ["centre_waist", "side_waist", "side_hem", "inner_hem", "crotch_point"]
                .into_iter()
                .enumerate()
            {
                assert_eq!(edges[index].2.start(), piece.point(role), "{}: {role}", answer.name());
            }
        }
    });
}

/// The waist with its darts sewn: each part between darts turned about the ends of those before it.
fn sewn_waist(piece: &Piece) -> f64 {
    let (_, _, path) = piece.edges().swap_remove(0);
    let legs: Vec<[Place; 2]> = piece.darts().iter().map(|dart| dart.legs).collect();
    path.parts()
        .iter()
        .filter(|part| !legs.contains(&[part.start(), part.end()]))
        .map(ruler::Part::length)
        .sum()
}

#[test]
fn darts_that_close() {
    on_everybody(|answer| {
        for piece in answer.pieces() {
            for dart in piece.darts() {
                let [inner, outer] = dart.legs;
                assert_same(answer, "dart intake", dart.intake, distance(inner, outer));
                assert_same(answer, "inner dart leg", dart.length, distance(dart.apex, inner));
                assert_same(answer, "outer dart leg", dart.length, distance(dart.apex, outer));
            }
        }
    });
}

/// Sewing turns what lies on the side of a dart about its end, from the dart nearest the side to the centre.
#[test]
fn waist_running_on_across_closed_darts() {
    on_everybody(|answer| {
        for piece in answer.pieces() {
            let (_, _, path) = piece.edges().swap_remove(0);
            for dart in piece.darts() {
                let [inner, outer] = dart.legs;
                let arriving =
                    path.parts().into_iter().find(|part| part.end() == inner).expect("a part before");
                let leaving =
                    path.parts().into_iter().find(|part| part.start() == outer).expect("a part after");
                let closing = angle(dart.apex, outer, inner);
                let landed = turned(outer, dart.apex, closing);
                assert!(distance(landed, inner) < SAME, "{}", answer.name());
                let ahead = leaving.leaves();
                let ahead = turned(ahead, [0.0, 0.0], closing);
                let off = angle([0.0, 0.0], arriving.arrives(), ahead).to_degrees();
                assert!(off.abs() < 0.5, "{}: {} waist kinked by {off}", answer.name(), piece.panel());
            }
        }
    });
}

#[test]
fn notches_on_their_edges() {
    on_everybody(|answer| {
        let [front, back] = answer.panels();
        for piece in [&front, &back] {
            for notch in piece.notches() {
                let (_, _, path) =
                    piece.edges().into_iter().find(|edge| edge.0 == notch.edge).expect("its edge");
                let measured = path.length_to(notch.point).expect("a notch on its edge");
                assert_same(answer, &notch.name, notch.from_start, measured);
            }
        }
        // The front's notches stand on their levels and are carried to the back by length.
        let leg = |piece: &Piece| -> Vec<answer::Notch> {
            piece.notches().into_iter().filter(|notch| notch.edge != "crotch_seam").collect()
        };
        for (front_notch, back_notch) in leg(&front).iter().zip(leg(&back)) {
            if front_notch.name != "below_crotch" {
                let level = front.level(&front_notch.name);
                assert_same(answer, &front_notch.name, front_notch.point[1], level);
            }
            assert_eq!(front_notch.name, back_notch.name);
            assert_same(answer, &front_notch.name, front_notch.from_start, back_notch.from_start);
        }
    });
}

#[test]
fn grain_on_the_crease() {
    on_everybody(|answer| {
        for piece in answer.pieces() {
            let [from, to] = piece.grain();
            assert!(from[0] == 0.0 && to[0] == 0.0 && from[1] < to[1], "{}", answer.name());
        }
    });
}

#[test]
fn seams_walked() {
    on_everybody(|answer| {
        let [front, back] = answer.panels();
        for row in answer.rows("seams") {
            let seam = row.text("seam");
            let walk = |piece: &Piece| {
                piece
                    .edges()
                    .into_iter()
                    .find(|edge| edge.0 == seam)
                    .expect("an edge of that name")
                    .2
                    .length()
            };
            assert_same(answer, seam, row.number("front"), walk(&front));
            assert_same(answer, seam, row.number("back"), walk(&back));
            assert_same(answer, seam, row.number("difference"), walk(&back) - walk(&front));
        }
    });
}

#[test]
fn levels_laid_across() {
    on_everybody(|answer| {
        let [front, back] = answer.panels();
        let rows = answer.rows("levels");
        assert_eq!(rows.len(), 6);
        for row in rows {
            let level = row.text("level");
            let across = |piece: &Piece| {
                let (least, most) =
                    piece.outline().reach_at(piece.level(level)).expect("a level of the panel");
                most - least
            };
            let pattern = match level {
                "waist" => 2.0 * (sewn_waist(&front) + sewn_waist(&back)),
                "hip" => 2.0 * (across(&front) + across(&back)),
                _ => across(&front) + across(&back),
            };
            assert_same(answer, level, row.number("pattern"), pattern);
            assert_same(answer, level, row.number("ease"), pattern - row.number("body"));
        }
    });
}

#[test]
fn joins_at_their_angles() {
    on_everybody(|answer| {
        let [front, back] = answer.panels();
        // The angle between two edges where the first ends and the second begins, as the cloth fills it.
        let corner = |piece: &Piece, first: usize, second: usize| {
            let edges = piece.edges();
            let back_along = edges[first].2.arrives().map(|along| -along);
            angle([0.0, 0.0], edges[second].2.leaves(), back_along).to_degrees().abs()
        };
        for row in answer.rows("joins") {
            let measured = match row.text("join") {
                "crotch" => corner(&front, 3, 4) + corner(&back, 3, 4),
                "side_waist" => corner(&front, 0, 1) + corner(&back, 0, 1),
                "centre_front" => corner(&front, 4, 0),
                "centre_back" => corner(&back, 4, 0),
                other => panic!("join {other}"),
            };
            let said = row.number("degrees");
            assert!((said - measured).abs() < SAME_ANGLE, "{}: {said}, measured {measured}", answer.name());
        }
    });
}

#[test]
fn crotch_length_added_up() {
    on_everybody(|answer| {
        let [front, back] = answer.panels().map(|piece| piece.edges().swap_remove(4).2.length());
        let crotch = answer.row("crotch");
        assert_same(answer, "front crotch", crotch.number("front"), front);
        assert_same(answer, "back crotch", crotch.number("back"), back);
        assert_same(answer, "total crotch", crotch.number("total"), front + back);
        assert_same(answer, "crotch ease", crotch.number("ease"), front + back - crotch.number("body_total"));
    });
}

#[test]
fn outlines_of_the_drawing() {
    for demo in DEMOS {
        let pieces = drafted_demo(demo).pieces();
        let drawn = drawn("Panels", demo, &[]);
        assert_eq!(drawn.len(), pieces.len());
        for (piece, drawn) in pieces.iter().zip(drawn) {
            let mouths: f64 = piece.darts().iter().map(|dart| dart.intake).sum();
            let said = piece.outline().length() - mouths;
            let measured: f64 = drawn.iter().map(Path::length).sum();
            // The drawing is printed to 3 decimals, the answer to 4.
            assert!((said - measured).abs() < 0.005, "{demo} {}: {said}, drawn {measured}", piece.panel());
        }
    }
}

/// A deeper crotch once moved the panels and left the level lines of the drawing where they had been.
#[test]
fn level_lines_of_the_drawing() {
    let answer = drafted_with("crotch.depth=0.8");
    let lines = drawn("Levels", "stroke", &["--set", "crotch.depth=0.8"]);
    let names = ["waist", "hip", "crotch", "thigh", "knee", "calf", "hem"];
    // One rule a level, which ends as its line through both panels; then their ends in the other margin.
    assert_eq!(lines.len(), 2 * names.len());
    for piece in answer.pieces() {
        for (name, rule) in names.into_iter().zip(&lines) {
            let parts = rule[0].parts();
            let line = &parts[parts.len() - 1];
            assert!((piece.level(name) - line.start()[1]).abs() < SAME, "{name}");
            assert!(line.start()[1] == line.end()[1], "{name}");
        }
    }
}
