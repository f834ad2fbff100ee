//! Names and notes that try something show as text, in their place.

use std::sync::Arc;

use breeks::{
    making::make_by,
    mistake::Source,
    order::{Fitting, Order, demo},
    pattern::Wanted,
    reading::{fit_sheet, lesson},
    recipe::{self, Recipe},
    unit::Unit,
};

use crate::{
    page::{Token, tokens},
    pages::faults,
    subjects::Taught,
};

#[test]
fn hostile_names_as_words_on_every_page() {
    let long = "x".repeat(10_000);
    let names = [
        "<script>alert(1)</script>",
        "a\u{202e}b\u{0}c",
        &long,
        "\"'&]]>--><!--",
        "</title></style><img src=x onerror=alert(1)>",
        "字🚣 עברית",
        "",
    ];
    for name in names {
        let mut taught = Taught::demo("five", "classic", &[]);
        taught.made.legs.first.draft.name = name.to_owned();
        let fittings = [Fitting {
            date: Some(name.to_owned()),
            block: Some(name.to_owned()),
            seen: vec![name.to_owned(); 3],
            tested: vec![name.to_owned()],
            changed: vec![(name.to_owned(), 1.0)],
            note: Some(name.to_owned()),
        }];
        let subject = taught.subject(Unit::Cm);
        for booklet in [lesson(&subject), fit_sheet(&subject, &fittings)] {
            let html = booklet.to_html();
            // The reader panics at a tag or an entity that none of us wrote.
            let tokens = tokens(&html);
            let elements = tokens.iter().filter_map(|token| match token {
                Token::Open { name, attributes, .. } => Some((name, attributes)),
                _ => None,
            });
            for (element, attributes) in elements {
                assert!(!["script", "img"].contains(&element.as_str()), "{name:.40}: {element}");
                assert!(attributes.iter().all(|(key, _)| !key.starts_with("on")), "{name:.40}");
            }
            assert!(!html.contains('\u{202e}') && !html.contains('\u{0}'));
            let shown = tokens.iter().any(|token| match token {
                Token::Text(words) => words.contains("alert(1)"),
                _ => false,
            });
            assert_eq!(shown, name.contains("alert"), "it shows as words");
            assert!(html[..400].contains("breeks"), "known as ours by its first bytes");
            let found = faults(&booklet);
            assert!(found.is_empty(), "{name:.40}: {}", found.join("\n"));
            let pdf = booklet.to_pdf().expect("pages");
            assert!(
                String::from_utf8_lossy(&pdf[..400]).contains("breeks"),
                "known as ours by its first bytes"
            );
        }
    }
}

#[test]
fn hostile_words_of_a_recipe_as_words() {
    let source = recipe::source("classic").expect("a shipped recipe");
    let evil = "</p><script>alert(1)</script><img src=x onerror=alert(1)>";
    let text = source
        .text
        .replace("square out the hip line", evil)
        .replace("Ease: common practice, no source.", evil)
        .replace("Classic trousers", evil);
    assert_eq!(text.matches(evil).count(), 3);
    let recipe = Arc::new(Recipe::parse(&Source::new("own.toml", text)).expect("a recipe"));
    let (order, _) = Order::read(&demo("stroke").expect("a demo")).expect("a sound demo");
    let made = make_by(&recipe, order, Vec::new(), &Wanted::default()).expect("a body");
    let taught = Taught { made };
    for booklet in [lesson(&taught.subject(Unit::Cm)), fit_sheet(&taught.subject(Unit::Cm), &[])] {
        let html = booklet.to_html();
        let strange =
            |token: &Token| matches!(token, Token::Open { name, .. } if name == "script" || name == "img");
        assert!(!tokens(&html).iter().any(strange));
        assert!(html.contains("&lt;script&gt;alert(1)"), "it shows as words");
        assert!(faults(&booklet).is_empty());
    }
}
