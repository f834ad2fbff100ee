//! The pictures as yesterday.

use breeks::{
    drawing::{Drawing, Paper, Sheet, SvgScale, Tiles},
    paper::{draft_picture, first_page, overlay, pattern_sheet, side_by_side, wall_drawing},
    pattern::{Allowances, Cloth, Pattern, Purpose, Wanted},
    terms::{Anchor, EnumMap},
    unit::Unit,
};

use crate::subjects::{Drawn, on_cloth};

fn as_yesterday(name: &str, picture: &Drawing) {
    let mut settings = insta::Settings::clone_current();
    settings.set_snapshot_path(concat!(env!("CARGO_MANIFEST_DIR"), "/snapshots"));
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(|| insta::assert_snapshot!(name, picture.to_svg(SvgScale::TrueScale)));
}

#[test]
fn wall_drawing_with_parameters_as_yesterday() {
    let drawn = Drawn::demo("stroke", &["thigh.front=1.9", "crotch.depth=0.5"]);
    as_yesterday("paper-wall", &wall_drawing(&drawn.subject()));
}

#[test]
fn draft_with_its_ease_as_yesterday() {
    as_yesterday("paper-draft", &draft_picture(&Drawn::demo("five", &[]).subject()));
}

#[test]
fn draft_with_its_ease_in_inches_as_yesterday() {
    as_yesterday("paper-draft-inches", &draft_picture(&Drawn::demo("cox", &[]).subject()));
}

#[test]
fn overlay_as_yesterday() {
    let (old, new) = (Drawn::demo("stroke", &[]), Drawn::demo("stroke", &["thigh.front=1.9"]));
    as_yesterday("paper-overlay", &overlay(&old.compared(), &new.compared(), Anchor::Crotch, Unit::Cm));
}

#[test]
fn first_page_as_yesterday() {
    let drawn = Drawn::demo("cox", &[]);
    let allowances = Allowances::of(&EnumMap::default(), Purpose::Wear);
    let pattern = Pattern::of([&drawn.draft], &allowances, &Wanted::default()).expect("pieces");
    let pieces = pattern_sheet(&[drawn.subject()], &side_by_side(&pattern), false);
    let tiles = Tiles::cut(&pieces, Sheet::of(Paper::A4OrLetter)).expect("a sheet");
    as_yesterday("paper-first-page", &first_page(&drawn.subject(), &tiles, Paper::A4OrLetter));
}

#[test]
fn cloth_as_yesterday() {
    as_yesterday("paper-cloth", &on_cloth(&Drawn::demo("stroke", &[]), &Cloth::new(150.0)));
}

#[test]
fn doubled_cloth_with_nap_as_yesterday() {
    let cloth = Cloth { folded: true, nap: true, ..Cloth::new(140.0) };
    as_yesterday("paper-cloth-folded", &on_cloth(&Drawn::demo("five", &[]), &cloth));
}
