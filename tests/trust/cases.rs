//! What once went wrong, each with its story.

use breeks::{
    draft::draft,
    fit::Verdict,
    mistake::Source,
    order::{Order, demo},
    recipe::Recipe,
};

use crate::{batch, drafted};

/// What should come of a case.
enum Wanted {
    /// This verdict, and among the reasons or notes these codes.
    Is(Verdict, &'static [&'static str]),
    /// Refused, with these words in the message.
    Refused(&'static str),
}
use Wanted::{Is, Refused};

/// The story in one line, the file, what should come of it.
const CASES: &[(&str, &str, Wanted)] = &[
    (
        "an ordinary woman in cropped trousers: the inseam turns back, and its cutting never ended",
        include_str!("cases/endless-cropped.toml"),
        Is(Verdict::NotToCut, &["corner-in-seam", "level-tight"]),
    ),
    (
        "a tall man's measures on a short leg: the same loop",
        include_str!("cases/endless-1.toml"),
        Is(Verdict::NotToCut, &["corner-in-seam", "seam-untrue", "crotch-short"]),
    ),
    ("the least file that never ended", include_str!("cases/endless-plain.toml"), Is(Verdict::NotToCut, &[])),
    (
        "a crotch seam 25 cm shorter than the body, called good",
        include_str!("cases/crotch-25-cm-short.toml"),
        Is(Verdict::NotToCut, &["crotch-short"]),
    ),
    (
        "a crotch seam 85 cm shorter than the body, called good",
        include_str!("cases/crotch-85-cm-short.toml"),
        Is(Verdict::NotToCut, &["crotch-short"]),
    ),
    (
        "a dart that takes in 23 cm, called good",
        include_str!("cases/dart-23-cm-wide.toml"),
        Is(Verdict::NotToCut, &["dart-wide", "dart-blunt"]),
    ),
    (
        "a back crotch curve on a radius of 2 mm, called good",
        include_str!("cases/back-crotch-radius-2-mm.toml"),
        Is(Verdict::Mind, &["beyond-usual"]),
    ),
    (
        "a corner of 11 degrees in the inseam of cropped trousers, called good",
        include_str!("cases/inseam-corner-11-degrees.toml"),
        Is(Verdict::NotToCut, &["corner-in-seam", "crotch-tight"]),
    ),
    (
        "a side seam of six waves: each too flat to be seen, and gone with the kinks that made them",
        include_str!("cases/side-seam-six-waves.toml"),
        Is(Verdict::Good, &[]),
    ),
    (
        "a hip 3 cm under the waist: darts ended outside; batch drafted what draft refused",
        include_str!("cases/dart-apex-outside.toml"),
        Refused("the allowances of the front run into one another"),
    ),
    (
        "a hip 3 cm under the waist: darts without a length; batch drafted what draft refused",
        include_str!("cases/dart-of-no-length.toml"),
        Is(Verdict::NotToCut, &[]),
    ),
    (
        "a body of no height: the grain left the panel; batch drafted what draft refused",
        include_str!("cases/grain-off-the-panel.toml"),
        Refused("an allowance of 1.00 cm for `waist` does not go round the back"),
    ),
];

#[test]
fn every_case_answered_as_it_should() {
    for (story, file, wanted) in CASES {
        match (drafted("case.toml", file), wanted) {
            (Ok(made), Is(verdict, codes)) => {
                let notices = made.notices();
                let said: Vec<&str> = notices.iter().map(|notice| notice.code).collect();
                assert_eq!(made.verdict(), *verdict, "{story}: {said:?}");
                assert!(codes.iter().all(|code| said.contains(code)), "{story}: {said:?}");
            }
            (Err(mistakes), Refused(words)) => {
                assert!(mistakes.to_string().contains(words), "{story}: {mistakes}");
            }
            (Ok(made), Refused(_)) => panic!("{story}: drafted, {:?}", made.verdict()),
            (Err(mistakes), Is(..)) => panic!("{story}: refused: {mistakes}"),
        }
    }
}

/// Rows as programs send them: what each once did, the row, and the code of its error or its verdict.
const ROWS: &[(&str, &str, &str)] = &[
    (
        "a row that never ended took 300 others with it",
        r#""block":"tailored","hip_girth":83.0,"waist_girth":64.0,"stature":194.0,"total_crotch_length":83.0,"thigh.inner":-1.0,"style.length":37.0"#,
        "not_to_cut",
    ),
    (
        "never ended without any parameter",
        r#""sex":"male","block":"tailored","waist_level":"worn","units":"inch","hip_girth":67.258,"waist_girth":83.351,"inside_leg":23.73,"body_rise":8.435,"calf_girth":22.16,"total_crotch_length":38.3,"waist_to_hip":3.045"#,
        "not_to_cut",
    ),
    (
        "a dart of no intake, drafted only in a batch: 3 cm from waist to hip",
        r#""sex":"unsaid","block":"straight","waist_level":"worn","hip_girth":115.0,"waist_girth":77.7,"inside_leg":94.2,"stature":203.1,"body_rise":22.9,"waist_to_hip":3,"thigh.inner":0.24,"thigh.front":1.659,"abdomen.width":1.341"#,
        "not-drafted",
    ),
    (
        "crumbs in the side seam of an ordinary man",
        r#""sex":"male","block":"classic","waist_level":"worn","units":"inch","hip_girth":40.468,"waist_girth":40.831,"inside_leg":30.43,"stature":69.014,"thigh_girth":26.686,"front_hip_arc":20.254,"front_waist_arc":21.6,"body_rise":8.594,"waist_to_hip":7.549,"fit":"measured","set":"clean""#,
        "good",
    ),
];

#[test]
fn no_row_costs_another_and_the_run_says_so() {
    let text: String =
        ROWS.iter().enumerate().map(|(id, (_, row, _))| format!("{{\"id\":{id},{row}}}\n")).collect();
    let (lines, tally) = batch(text);
    assert_eq!(lines.len(), ROWS.len());
    for (line, (story, _, wanted)) in lines.iter().zip(ROWS) {
        let came = line["error"]["code"].as_str().or(line["verdict"].as_str());
        assert_eq!(came, Some(*wanted), "{story}");
    }
    assert!(!tally.all_can_be_cut());
    assert_eq!((tally.drafted, tally.not_to_cut, tally.failed), (3, 2, 1));
}

/// A shipped recipe, the place of its text that was written wrong, and what stood there then.
const RECIPES: &[(&str, &str, &str)] = &[
    (
        "straight",
        r#""1/4 hip + 1/4 hip_ease - 1", say = "the front hip"#,
        r#""7/4 hip + 1/4 hip_ease - 1", say = "the front hip"#,
    ),
    ("wide", r#"fork = "1/2 q + fuller + 3""#, r#"fork = "5/2 q + fuller + 3""#),
    (
        "wide",
        r#"from = "crease_hem", fork = "1/2 hem_width - 1.2""#,
        r#"from = "front_inner_knee", fork = "1/2 hem_width - 1.2""#,
    ),
];

#[test]
fn recipes_with_a_slip_end_and_are_not_called_good() {
    let (order, _) = Order::read(&demo("stroke").unwrap()).unwrap();
    for (block, right, wrong) in RECIPES {
        let path = format!("{}/blocks/{block}.toml", env!("CARGO_MANIFEST_DIR"));
        let text = std::fs::read_to_string(&path).unwrap();
        if text.matches(right).count() != 1 {
            panic!("{block}: `{right}` does not stand once in the recipe any more: take another slip");
        }
        let recipe = Recipe::parse(&Source::new(path, text.replace(right, wrong)));
        let recipe = std::sync::Arc::new(recipe.unwrap_or_else(|mistakes| panic!("{mistakes}")));
        let Ok(draft) = draft(&order, &recipe) else { continue };
        let report = breeks::fit::Report::of(&draft.plan, &draft.parameters, &draft.shape, &draft.body);
        assert_eq!(Verdict::of(&report.notices()), Verdict::NotToCut, "{block}: {wrong}");
    }
}

#[test]
fn recipe_of_more_steps_than_any_draft_refused_with_its_line() {
    let text = include_str!("../../blocks/classic.toml");
    let step = "    { point = \"more\", from = \"0\", side = 1 },\n";
    let long = text.replacen("steps = [\n", &format!("steps = [\n{}", step.repeat(400)), 1);
    assert_ne!(long, text);
    let refused = Recipe::parse(&Source::new("long.toml", long)).unwrap_err().to_string();
    assert!(refused.contains("`steps` has 4") && refused.contains("long.toml:"), "{refused}");
}
