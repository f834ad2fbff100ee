//! `breeks cloth`.

use serde_json::Value;

use super::dialogue::Folder;

const WHOLE: [&str; 9] =
    ["cloth", "--demo", "stroke", "--waistband", "straight", "--fly", "right", "--width", "150"];

fn with<'a>(more: &[&'a str]) -> Vec<&'a str> {
    WHOLE.iter().copied().chain(more.iter().copied()).collect()
}

#[test]
fn what_to_buy_with_its_picture() {
    let run = Folder::new("cloth").run(&WHOLE);
    assert_eq!(run.code, 0);
    run.assert_tidy();
    run.snapshot("command_cloth");
}

#[test]
fn doubled_cloth_that_shrinks() {
    let run = Folder::new("cloth_folded").run(&with(&["--folded", "--shrinkage", "5,2"]));
    run.assert_tidy();
    run.snapshot("command_cloth_folded");
}

#[test]
fn a_pattern_to_match_in_inches() {
    let more = ["--repeat", "10cm", "--units", "inch", "--block", "jeans", "--yoke"];
    let run = Folder::new("cloth_repeat").run(&with(&more));
    run.assert_tidy();
    run.snapshot("command_cloth_repeat");
}

#[test]
fn the_same_as_data() {
    let folder = Folder::new("cloth_json");
    let run = folder.run(&with(&["--nap", "--json"]));
    assert_eq!((run.err.as_str(), run.files.len()), ("", 0));
    let answer: Value = serde_json::from_str(&run.out).expect("JSON and nothing else");
    assert_eq!(answer["format"], "breeks-cloth");
    let number = |key: &str| answer[key].as_f64().expect("a number");
    assert!(number("to_buy") >= number("length") && number("to_buy") < number("length") + 5.0);
    assert!(number("used") > 0.5 && number("used") < 1.0);
    let laid = answer["laid"].as_array().expect("rows");
    let cut: u64 =
        answer["pieces"].as_array().expect("rows").iter().map(|it| it["cut"].as_u64().unwrap()).sum();
    assert_eq!(laid.iter().map(|it| it["layers"].as_u64().unwrap()).sum::<u64>(), cut);
    for one in laid {
        assert_eq!(one["turned"], false);
        let outline = kurbo::BezPath::from_svg(one["cut_outline"].as_str().unwrap()).expect("path data");
        let bounds = kurbo::Shape::bounding_box(&outline);
        assert!(bounds.x0 >= 0.0 && bounds.x1 <= number("usable_width"), "{bounds:?}");
        assert!(bounds.y0 >= 0.0 && bounds.y1 <= number("washed_length"), "{bounds:?}");
    }
    assert_eq!(folder.run(&with(&["--nap", "--json"])).out, run.out);
}

#[test]
fn two_legs_each_for_itself() {
    let folder = Folder::new("cloth_legs");
    let run = folder.run(&with(&["--set", "left.thigh.outer=0.8", "--json"]));
    let answer: Value = serde_json::from_str(&run.out).expect("JSON and nothing else");
    let sides: Vec<&str> =
        answer["laid"].as_array().expect("rows").iter().map(|it| it["side"].as_str().unwrap()).collect();
    assert!(sides.contains(&"left") && sides.contains(&"right") && sides.len() == 8, "{sides:?}");
}

#[test]
fn what_no_cloth_is_refused() {
    for (name, more) in [
        ("too_narrow", &["--width", "36"][..]),
        ("no_width", &["--width", "wide"]),
        ("shrunk_away", &["--width", "150", "--shrinkage", "45"]),
        ("no_shrinkage", &["--width", "150", "--shrinkage", "much"]),
        ("folded_legs", &["--width", "150", "--folded", "--set", "left.thigh.outer=0.8"]),
    ] {
        let arguments: Vec<&str> = ["cloth", "--demo", "stroke"].iter().chain(more).copied().collect();
        let run = Folder::new(&format!("cloth_{name}")).run(&arguments);
        run.assert_refused(&[]);
        run.snapshot(&format!("refusal_cloth_{name}"));
    }
}

#[test]
fn help_of_the_command() {
    let run = Folder::new("cloth_help").run(&["cloth", "--help"]);
    assert_eq!(run.code, 0);
    run.assert_tidy();
    run.snapshot("command_cloth_help");
}
