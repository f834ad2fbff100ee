//! What is laid: bodies graded from small to large, as pieces ready to cut, or as bare panels with a band and a fly of
//! plain rectangles.

use breeks::{
    body::Given,
    draft::{Draft, draft},
    order::Order,
    pattern::{Allowances, Band, BandShape, Lap, Pattern, Piece, Purpose, Wanted, lay::Part},
    recipe::load,
    terms::{EnumMap, Measurement, Panel, Sex, WaistLevel},
};
use kurbo::{Affine, BezPath, Rect, Shape as _};

/// Sizes of the graded run, the smallest first.
pub(crate) const SIZES: usize = 20;

/// How the parts are cut.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Cloth {
    /// Left and right each by themselves.
    Open,
    /// Pairs out of doubled cloth.
    Folded,
}

/// An invented body; every length grows with the size.
fn drafted(recipe: &str, size: usize) -> Draft {
    let size = size as f64;
    let hip = 84.0 + 2.0 * size;
    let mut given = Given::new(Sex::Female, WaistLevel::Natural);
    for (measurement, value) in [
        (Measurement::HipGirth, hip),
        (Measurement::WaistGirth, hip - 27.0),
        (Measurement::InsideLeg, 74.0 + 0.3 * size),
        (Measurement::BodyRise, 25.5 + 0.25 * size),
    ] {
        given.measured[measurement] = Some(value);
    }
    let mut order = Order::of(given);
    recipe.clone_into(&mut order.trousers.block);
    draft(&order, &load(recipe).unwrap()).unwrap()
}

/// All pieces of one pair of trousers, ready to cut.
pub(crate) fn pieces(recipe: &str, size: usize) -> Vec<Piece> {
    let band = Band { shape: BandShape::Straight, height: Band::HEIGHT };
    let wanted = Wanted {
        purpose: Purpose::Wear,
        waistband: Some(band),
        fly: Some(Lap::Right),
        yoke: recipe == "jeans",
    };
    let allowances = Allowances::of(&EnumMap::default(), wanted.purpose);
    Pattern::of([&drafted(recipe, size)], &allowances, &wanted).unwrap().pieces
}

/// Front and back to the sewing line.
fn panels(recipe: &str, size: usize) -> [BezPath; 2] {
    let shape = drafted(recipe, size).shape;
    [Panel::Front, Panel::Back].map(|panel| {
        let mut path = BezPath::new();
        for (place, piece) in shape.panel(panel).outline().iter().enumerate() {
            if place == 0 {
                path.move_to(piece.p0);
            }
            path.curve_to(piece.p1, piece.p2, piece.p3);
        }
        path.close_path();
        path
    })
}

/// All parts of one pair of trousers.
pub(crate) fn parts(recipe: &str, size: usize, cloth: Cloth, nap: bool) -> Vec<Part> {
    let waist = 57.0 + 2.0 * size as f64;
    let rectangle = |width, length| Rect::new(0.0, 0.0, width, length).to_path(0.1);
    let [band, facing, guard] =
        [rectangle(5.0, waist / 2.0 + 4.0), rectangle(4.0, 18.0), rectangle(5.0, 16.0)];
    let part = |outline, may_mirror| Part { may_turn: !nap, may_mirror, ..Part::new(outline) };
    match cloth {
        Cloth::Open => {
            let panels = panels(recipe, size).into_iter();
            let pairs = panels.flat_map(|panel| [Affine::FLIP_X * panel.clone(), panel]);
            let small = [band.clone(), band, facing.clone(), facing, guard];
            pairs.chain(small).map(|outline| part(outline, false)).collect()
        }
        Cloth::Folded => {
            let pairs = panels(recipe, size).into_iter().map(|outline| part(outline, true));
            pairs.chain([band, facing, guard].map(|outline| part(outline, true))).collect()
        }
    }
}
