//! Body before style: the widths of knee and hem that a recipe gives grow until knee, calf and heel pass; those that the
//! file gives stand, and are judged.

use breeks::{
    fit::{LevelRow, Report, drafted},
    mistake::Source,
    order::Order,
    recipe::{load, shipped_names},
    terms::Level,
};

/// An invented body with a leg far beyond its hip's.
const BODY: &str = "name = \"bow\"\nsex = \"female\"\nwaist_level = \"natural\"\n[measurements]\nwaist_girth = 74\n\
                    hip_girth = 97\ninside_leg = 79\nbody_rise = 28\n";

fn report(more: &str, block: &str) -> (Report, Vec<&'static str>) {
    let (order, _) = Order::read(&Source::new("bow.toml", format!("{BODY}{more}"))).expect("an order");
    let (draft, report) = drafted(&order, &load(block).expect("a recipe")).expect("a draft");
    (report, draft.notices.iter().map(|notice| notice.code).collect())
}

fn row(report: &Report, level: Level) -> LevelRow {
    *report.levels.iter().find(|row| row.level == level).expect("a level")
}

#[test]
fn recipe_widths_grown_to_the_least_that_passes() {
    let cases = [
        (Level::Knee, "knee_girth = 47\n"),
        (Level::Calf, "calf_girth = 46\nknee_girth = 38\n"),
        (Level::Hem, "heel_girth = 46\n"),
    ];
    for block in shipped_names() {
        for (level, more) in cases {
            let (report, codes) = report(more, block);
            let row = row(&report, level);
            assert!(!row.is_tight(), "{block}, {level}: {:.2} of {:.2}", row.ease(), row.least);
            assert!(report.no_passage.is_empty(), "{block}, {level}");
            // never wider than needed: it grew to the least, or had room from the beginning
            if codes.contains(&"width-grown") && level == Level::Knee {
                assert!(row.ease() < row.least + 1.5, "{block}, {level}: {:.2}", row.ease());
            }
        }
        assert!(!report("", block).1.contains(&"width-grown"), "{block}: an ordinary leg grew");
    }
}

#[test]
fn widths_of_the_file_judged_with_a_remedy() {
    let more = "knee_girth = 47\n[trousers]\nfit = \"proportional\"\n[trousers.style]\nknee_width = 22\nhem_width = 22\n";
    let (found, codes) = report(more, "classic");
    assert!(row(&found, Level::Knee).is_tight() && !codes.contains(&"width-grown"));
    let texts = found.notices().into_iter().map(|notice| notice.text(breeks::unit::Unit::Cm));
    let said =
        texts.into_iter().find(|text| text.contains("`trousers.style.knee_width` 2")).expect("a remedy");
    let width = said.split("knee_width` ").nth(1).and_then(|rest| rest.split(' ').next()).expect("a width");
    let (mended, _) = report(&more.replace("knee_width = 22", &format!("knee_width = {width}")), "classic");
    assert!(!row(&mended, Level::Knee).is_tight(), "{said}");
}

/// A millimetre on the tape moves no width by more than it asks for.
#[test]
fn widths_grown_steadily() {
    let pattern =
        |girth: f64| row(&report(&format!("knee_girth = {girth:.2}\n"), "classic").0, Level::Knee).pattern;
    let mut last = pattern(36.0);
    for step in 1..=120 {
        let now = pattern(36.0 + 0.1 * f64::from(step));
        assert!((-1e-9..0.15).contains(&(now - last)), "{step}: {last} to {now}");
        last = now;
    }
    assert!(last > 50.0);
}
