//! Any text at all before the readers: an order, a recipe or mistakes that can be shown, and never a panic.
//!
//! `PROPTEST_CASES=200000 PROPTEST_RNG_SEED=1 cargo test --release --test any_text` for a long run.
#![allow(clippy::unwrap_used, reason = "what cannot be read fails the test")]

use breeks::{
    mistake::{Mistakes, Source},
    order::{Change, Order, demo, edit},
    recipe::Recipe,
    terms::{Measurement, Side, Word},
    told::check,
    unit::{Unit, parse_length},
};
use proptest::{
    prelude::*,
    test_runner::{Config, RngSeed},
};

/// The default number of cases and a fixed seed, both open to the environment.
fn config() -> Config {
    let config = Config { failure_persistence: None, ..Config::default() };
    if std::env::var_os("PROPTEST_RNG_SEED").is_some() {
        config
    } else {
        Config { rng_seed: RngSeed::Fixed(19), ..config }
    }
}

/// Mistakes that a person can read: some, and each shown without what moves a cursor.
fn shown(mistakes: &Mistakes) {
    assert!(mistakes.iter().len() > 0);
    let text = mistakes.to_string();
    assert!(text.chars().all(|letter| letter == '\n' || !letter.is_control()), "{text:?}");
    assert!(text.len() < 40_000, "{} bytes of mistakes", text.len());
}

/// Everything that reads a measurement file.
fn read_all(text: &str, set: &[String]) {
    let source = Source::new("any.toml", text);
    match Order::read_with(&source, set) {
        Ok((order, _)) => {
            for side in Side::ALL {
                for m in Measurement::ALL {
                    assert!(order.leg(*side).cm(*m).is_none_or(f64::is_finite));
                }
            }
            if let Err(mistakes) = check(&order) {
                shown(&mistakes);
            }
            let change = Change::Number("thigh.front".to_owned(), 1.9);
            if let Ok(edited) = edit(&source, &[change]) {
                let (again, _) =
                    Order::read(&Source::new("any.toml", edited)).expect("an edited file is read again");
                assert!(again.adjustments.iter().any(|adjustment| (adjustment.value - 1.9).abs() < 0.01));
            }
        }
        Err(mistakes) => shown(&mistakes),
    }
    if let Err(mistakes) = Recipe::parse(&source) {
        shown(&mistakes);
    }
}

/// What measurement files, recipes and those who attack them are made of.
const TOKENS: &[&str] = &[
    "[measurements]\n",
    "[left.measurements]\n",
    "[thigh]\n",
    "[left.thigh]\n",
    "[[fitting]]\n",
    "[trousers.ease]\n",
    "[trousers.ask]\n",
    "[front]\n",
    "[construction]\n",
    "[lines]\n",
    "waist_girth = 74\n",
    "hip_girth = 101.5\n",
    "inside_leg = \"31 1/2 in\"\n",
    "sex = \"male\"\n",
    "units = \"inch\"\n",
    "waist_level = \"worn\"\n",
    "name",
    "hip",
    "changed = {",
    "}",
    "seen = [",
    "]",
    "[",
    "\"",
    "'''",
    "=",
    ".",
    ",",
    "1",
    "1/2",
    "-",
    "½",
    "nan",
    "1e308",
    "0x",
    "1979-05-27",
    "true",
    "#",
    "\n",
    "\r\n",
    " ",
    "\t",
    "\u{feff}",
    "\u{202e}",
    "\u{0}",
    "\\u0000",
    "é",
    "測",
    "steps = [",
    "{ point = \"a\", from = \"b\" }",
    "front = 1.9\n",
    "thigh.front = 2\n",
    "crease = \"0\"\n",
];

proptest! {
    #![proptest_config(config())]

    #[test]
    fn bytes_read_without_a_panic(bytes in proptest::collection::vec(any::<u8>(), 0..300)) {
        read_all(&String::from_utf8_lossy(&bytes), &[]);
    }

    #[test]
    fn token_soup_read_without_a_panic(
        tokens in proptest::collection::vec(proptest::sample::select(TOKENS), 0..40),
    ) {
        read_all(&tokens.concat(), &[]);
    }

    #[test]
    fn demo_with_a_piece_changed_read_without_a_panic(
        which in 0..3usize,
        cut in any::<proptest::sample::Index>(),
        long in 0..30usize,
        tokens in proptest::collection::vec(proptest::sample::select(TOKENS), 0..4),
    ) {
        let text = demo(breeks::order::DEMOS[which]).unwrap().text.to_string();
        let letters: Vec<char> = text.chars().collect();
        let at = cut.index(letters.len());
        let head: String = letters[..at].iter().collect();
        let tail: String = letters[(at + long).min(letters.len())..].iter().collect();
        read_all(&format!("{head}{}{tail}", tokens.concat()), &[]);
    }

    #[test]
    fn options_read_without_a_panic(
        tokens in proptest::collection::vec(proptest::sample::select(TOKENS), 0..6),
        any_text in ".{0,40}",
    ) {
        let text = demo("stroke").unwrap().text;
        let soup = tokens.concat();
        let options = [soup.clone(), any_text.clone(), format!("thigh.front={soup}"), format!("name={any_text}")];
        for option in options {
            read_all(&text, &[option]);
        }
    }

    #[test]
    fn lengths_read_without_a_panic(text in "[0-9./½¼ \\-+inchcm\"″,e]{0,14}", any_text in ".{0,20}") {
        for unit in [Unit::Cm, Unit::Inch] {
            for text in [&text, &any_text] {
                if let Ok(cm) = parse_length(text, unit) {
                    prop_assert!(cm.is_finite());
                }
            }
        }
    }

    /// What is written in either unit is read back as it was.
    #[test]
    fn written_lengths_read_back(cm in -300.0..300.0f64) {
        for (unit, within) in [(Unit::Cm, 0.005_001), (Unit::Inch, 0.000_128)] {
            let again = parse_length(&unit.write(cm), unit).unwrap();
            prop_assert!((again - cm).abs() <= within, "{} {}", again, cm);
        }
    }
}
