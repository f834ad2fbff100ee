//! Cloth as it is sold: washing, patterns, doubled cloth, and what no cloth is.

use std::collections::BTreeMap;

use breeks::{
    fit::drafted_legs,
    order::{Order, demo},
    pattern::{Allowances, Cloth, Lay, Pattern, Shrinkage, Wanted},
    recipe::load,
    terms::EnumMap,
};
use kurbo::{Point, Shape as _};

use crate::{
    bodies::pieces,
    overlap::{assert_apart, shared},
};

fn washed(lengthwise: f64, across: f64) -> Cloth {
    Cloth { shrinkage: Shrinkage { lengthwise, across }, ..Cloth::new(150.0) }
}

#[test]
fn every_piece_as_often_as_it_is_cut() {
    let pieces = pieces("jeans", 6);
    for folded in [false, true] {
        let lay = Lay::of(&pieces, &Cloth { folded, ..Cloth::new(150.0) }).unwrap();
        let mut cut: BTreeMap<usize, usize> = BTreeMap::new();
        for one in &lay.cut {
            *cut.entry(one.piece).or_default() += one.layers;
        }
        for (place, piece) in pieces.iter().enumerate() {
            assert_eq!(cut[&place], piece.copies.count(), "{}", piece.name());
            let mirrored = lay.cut.iter().filter(|it| it.piece == place && it.place.determinant() < 0.0);
            if !folded {
                assert_eq!(mirrored.count(), piece.copies.mirrored, "{}", piece.name());
            }
        }
    }
}

#[test]
fn pieces_apart_on_the_cloth() {
    for (recipe, cloth) in [
        ("classic", Cloth::new(140.0)),
        ("wide", Cloth { folded: true, nap: true, ..Cloth::new(160.0) }),
        ("jeans", Cloth { repeat: Some(8.0), ..Cloth::new(150.0) }),
        ("slim", washed(0.05, 0.03)),
    ] {
        let pieces = pieces(recipe, 9);
        let lay = Lay::of(&pieces, &cloth).unwrap();
        let outlines: Vec<_> = lay.cut.iter().map(|cut| lay.outline(&pieces, cut)).collect();
        assert_apart(&outlines, 0.5);
        for outline in &outlines {
            let bounds = outline.bounding_box();
            assert!(bounds.x0 >= 0.0 && bounds.x1 <= cloth.usable_width(), "{recipe}: {bounds:?}");
            assert!(bounds.y0 >= 0.0 && bounds.y1 <= lay.washed_length, "{recipe}: {bounds:?}");
        }
        let layers = if cloth.folded { 2.0 } else { 1.0 };
        let area: f64 =
            lay.cut.iter().zip(&outlines).map(|(cut, it)| cut.layers as f64 * shared(it, it)).sum();
        let whole = lay.washed_length * (cloth.usable_width() * layers + 2.0 * cloth.selvedge);
        assert!((area / whole - lay.used).abs() < 1e-4, "{recipe}: {} {}", area / whole, lay.used);
    }
}

#[test]
fn washing_asks_for_more_length_and_gives_less_width() {
    let pieces = pieces("straight", 5);
    let plain = Lay::of(&pieces, &Cloth::new(150.0)).unwrap();
    let lengthwise = Lay::of(&pieces, &washed(0.05, 0.0)).unwrap();
    assert!((lengthwise.washed_length - plain.washed_length).abs() < 1e-9);
    assert!((lengthwise.length * 0.95 - plain.length).abs() < 1e-9);
    let across = Lay::of(&pieces, &washed(0.0, 0.1)).unwrap();
    assert!((across.cloth.usable_width() - 133.0).abs() < 1e-9);
    let narrow = Lay::of(&pieces, &Cloth::new(135.0)).unwrap();
    assert!((across.length - narrow.length).abs() < 1e-9);
}

#[test]
fn knee_notches_on_one_place_of_the_pattern_once_washed() {
    let pieces = pieces("classic", 4);
    let cloth = Cloth {
        repeat: Some(12.0),
        shrinkage: Shrinkage { lengthwise: 0.04, across: 0.0 },
        ..Cloth::new(150.0)
    };
    let lay = Lay::of(&pieces, &cloth).unwrap();
    let repeat = 12.0 * 0.96;
    let mut legs = 0;
    for cut in &lay.cut {
        let down = cut.place * Point::new(0.0, 1.0) - cut.place * Point::ORIGIN;
        assert!(down.y > 0.0, "a head lies the other way");
        let Some(knee) = pieces[cut.piece].notches.iter().find(|notch| notch.name == "knee") else {
            continue;
        };
        let y = (cut.place * knee.point).y / repeat;
        assert!((y - y.round()).abs() * repeat < 0.001, "{y}");
        legs += 1;
    }
    assert_eq!(legs, 4);
    assert!((lay.to_buy / 12.0 - (lay.to_buy / 12.0).round()).abs() < 1e-9);
    assert!(lay.to_buy >= lay.length && lay.to_buy < lay.length + 12.0);
}

#[test]
fn a_nap_never_saves_cloth() {
    for recipe in ["classic", "slim"] {
        let pieces = pieces(recipe, 12);
        let either = Lay::of(&pieces, &Cloth::new(140.0)).unwrap().length;
        let one = Lay::of(&pieces, &Cloth { nap: true, ..Cloth::new(140.0) }).unwrap().length;
        assert!(one >= either - 0.5, "{recipe}: {one} {either}");
    }
}

fn refused(cloth: &Cloth) -> String {
    Lay::of(&pieces("wide", 15), cloth).unwrap_err().to_string()
}

#[test]
fn what_no_cloth_is_refused() {
    let cases = [
        (Cloth::new(3.0), "no cloth is 3.0 cm wide"),
        (Cloth::new(f64::NAN), "no cloth is NaN cm wide"),
        (washed(0.6, 0.02), "shrinks by 60 per cent lengthwise"),
        (washed(-0.05, 0.02), "shrinks by −5 per cent lengthwise"),
        (washed(0.0, 1.0), "shrinks by 100 per cent across"),
        (Cloth { repeat: Some(0.0), ..Cloth::new(150.0) }, "begins again after 0.0 cm"),
        (Cloth { selvedge: 40.0, ..Cloth::new(150.0) }, "a selvedge of 40.0 cm"),
        (Cloth { folded: true, ..Cloth::new(90.0) }, "cm wide, the cloth has room for 44.0 cm"),
    ];
    for (cloth, said) in cases {
        let mistakes = refused(&cloth);
        assert!(mistakes.contains(said), "{mistakes}");
    }
}

#[test]
fn unlike_legs_not_cut_as_pairs() {
    let text = format!("{}\n[left.thigh]\nouter = 0.8\n", demo("stroke").unwrap().text);
    let source = breeks::mistake::Source::new("stroke.toml", text);
    let (order, _) = Order::read(&source).unwrap();
    let legs = drafted_legs(&order, &load("classic").unwrap()).unwrap();
    let allowances = Allowances::of(&EnumMap::default(), Default::default());
    let pattern = Pattern::of(legs.iter().map(|leg| &leg.draft), &allowances, &Wanted::default()).unwrap();
    let folded = Cloth { folded: true, ..Cloth::new(150.0) };
    assert!(Lay::of(&pattern.pieces, &folded).unwrap_err().to_string().contains("left and right leg differ"));
    assert_eq!(Lay::of(&pattern.pieces, &Cloth::new(150.0)).unwrap().cut.len(), 4);
}
