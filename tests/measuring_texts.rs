//! What a person reads before and after measuring: the empty file and the check of the demo bodies.
#![allow(clippy::unwrap_used, reason = "a file that cannot be read fails the test")]

use breeks::{
    mistake::Source,
    order::{Order, blank, demo},
    told::check,
    unit::Unit,
};

fn as_yesterday(name: &str, text: &str) {
    let mut settings = insta::Settings::clone_current();
    settings.set_snapshot_path(concat!(env!("CARGO_MANIFEST_DIR"), "/snapshots"));
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(|| insta::assert_snapshot!(name, text));
}

/// The check of a file; no line of it beyond 80 columns, no colour.
fn checked(source: &Source) -> String {
    let (order, _) = Order::read(source).unwrap_or_else(|mistakes| panic!("{mistakes}"));
    let text = check(&order).unwrap_or_else(|mistakes| panic!("{mistakes}"));
    for line in text.lines() {
        assert!(line.chars().count() <= 80, "{line}");
        assert!(!line.contains('\u{1b}'), "{line:?}");
    }
    text
}

#[test]
fn empty_files() {
    as_yesterday("blank-cm", &blank(Unit::Cm));
    as_yesterday("blank-inch", &blank(Unit::Inch));
}

#[test]
fn demo_bodies_checked() {
    for name in ["stroke", "five", "cox"] {
        let text = checked(&demo(name).unwrap());
        assert!(!text.contains("warning"), "{text}");
        as_yesterday(&format!("check-{name}"), &text);
    }
}

/// A rise read in inches, legs that differ, a body beyond the people surveyed: everything the report can say.
#[test]
fn odd_body_checked() {
    let text = "\
name = \"bow, who came with a tape in inches and a label that is a good deal too long for one line\"
sex = \"female\"
[measurements]
waist_girth = 108
hip_girth = 124
inside_leg = 76
stature = 166
body_rise = 11.4
thigh_girth = 72
total_crotch_length = 86
front_crotch_length = 43
back_crotch_length = 45
[left.measurements]
thigh_girth = 73.5
calf_girth = 43
";
    as_yesterday("check-odd", &checked(&Source::new("bow.toml", text)));
}

#[test]
fn worn_waist_checked() {
    let text = "\
waist_level = \"worn\"
sex = \"male\"
[measurements]
waist_girth = 92
hip_girth = 102
inside_leg = 82
body_rise = 22
waist_to_hip = 15
";
    as_yesterday("check-worn", &checked(&Source::new("two.toml", text)));
}
