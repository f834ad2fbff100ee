//! Every page is sound HTML that asks for nothing from elsewhere, and can be read without eyes.

use std::collections::BTreeSet;

use breeks::{
    booklet::Booklet,
    order::DEMOS,
    reading::{fit_sheet, lesson, measuring_guide},
    recipe::shipped_names,
    unit::Unit,
};

use crate::{
    page::{Token, tokens},
    subjects::Taught,
};

/// Every booklet worth a look: the lesson by every recipe, each on one of the demo bodies, their fit sheets, the guide.
pub(crate) fn booklets() -> Vec<Booklet> {
    let mut all = vec![measuring_guide(breeks::unit::Unit::Cm)];
    for (block, demo) in shipped_names().zip(DEMOS.iter().cycle()) {
        let taught = Taught::demo(demo, block, &["thigh.front=1.2"]);
        let unit = taught.made.order.units;
        all.push(lesson(&taught.subject(unit)));
        all.push(fit_sheet(&taught.subject(unit), &taught.made.order.fittings));
    }
    all
}

/// Elements that have no end tag.
const VOID: [&str; 4] = ["meta", "br", "img", "link"];
/// Elements that our pages may have; a new one is looked at first.
const KNOWN: [&str; 37] = [
    "html",
    "head",
    "meta",
    "title",
    "style",
    "body",
    "header",
    "nav",
    "main",
    "footer",
    "h1",
    "h2",
    "h3",
    "p",
    "strong",
    "ul",
    "ol",
    "li",
    "a",
    "div",
    "figure",
    "figcaption",
    "table",
    "caption",
    "thead",
    "tbody",
    "tr",
    "th",
    "td",
    "svg",
    "g",
    "path",
    "text",
    "br",
    "img",
    "link",
    "desc",
];

/// What is wrong with a page.
fn faults(html: &str) -> Vec<String> {
    let mut faults = Vec::new();
    let (mut open, mut ids, mut links): (Vec<String>, BTreeSet<String>, Vec<String>) = Default::default();
    let mut last_heading = 0;
    let mut headings = 0;
    let mut empty_heading = false;
    for token in tokens(html) {
        match token {
            Token::Open { name, attributes, closed } => {
                if !KNOWN.contains(&name.as_str()) {
                    faults.push(format!("an element nobody knows: {name}"));
                }
                let of = |key: &str| {
                    attributes.iter().find(|(own, _)| own == key).map(|(_, value)| value.as_str())
                };
                for (key, value) in &attributes {
                    if key.starts_with("on")
                        || ["src", "srcset", "data", "action", "xlink:href"].contains(&key.as_str())
                    {
                        faults.push(format!("{name} has {key}"));
                    }
                    if key == "href" && !value.starts_with('#') {
                        faults.push(format!("a link to elsewhere: {value}"));
                    }
                    if key == "style" && value.contains("url") {
                        faults.push(format!("a style asks for a file: {value}"));
                    }
                }
                let keys: BTreeSet<&String> = attributes.iter().map(|(key, _)| key).collect();
                if keys.len() != attributes.len() {
                    faults.push(format!("{name} has an attribute twice"));
                }
                if let Some(id) = of("id")
                    && !ids.insert(id.to_owned())
                {
                    faults.push(format!("two elements called {id}"));
                }
                links.extend(of("href").map(str::to_owned));
                match name.as_str() {
                    "svg"
                        if of("role") != Some("img")
                            || of("aria-label").is_none_or(|words| words.len() < 15) =>
                    {
                        faults.push(format!("a picture without words: {:?}", of("aria-label")));
                    }
                    "th" if of("scope").is_none() => {
                        faults.push("a heading cell that heads nothing".to_owned())
                    }
                    "html" if of("lang") != Some("en") => faults.push("a page without language".to_owned()),
                    "h1" | "h2" | "h3" => {
                        let level = i32::from(name.as_bytes()[1] - b'0');
                        headings += i32::from(level == 1);
                        if level > last_heading + 1 {
                            faults.push(format!("{name} after h{last_heading}"));
                        }
                        (last_heading, empty_heading) = (level, true);
                    }
                    "td" | "th" if open.last().is_none_or(|parent| parent != "tr") => {
                        faults.push(format!("a cell in {:?}", open.last()));
                    }
                    "p" | "table" | "ul" if open.iter().any(|parent| parent == "p") => {
                        faults.push(format!("{name} within p"));
                    }
                    _ => {}
                }
                if !closed && !VOID.contains(&name.as_str()) {
                    open.push(name);
                }
            }
            Token::Text(words) => empty_heading &= words.trim().is_empty(),
            Token::Close(name) => {
                if open.pop().as_ref() != Some(&name) {
                    faults.push(format!("</{name}> closes something else"));
                }
                if name.starts_with('h') && name.len() == 2 && empty_heading {
                    faults.push("an empty heading".to_owned());
                }
            }
        }
    }
    faults.extend(open.iter().map(|name| format!("{name} is never closed")));
    faults.extend(
        links
            .iter()
            .filter(|link| !ids.contains(link.trim_start_matches('#')))
            .map(|link| format!("{link} leads nowhere")),
    );
    if headings != 1 {
        faults.push(format!("{headings} main headings"));
    }
    let elsewhere = html.matches("//").count() + html.matches("@import").count();
    // The letters themselves are text that may have two strokes in a row.
    let letters = html.split("base64,").nth(1).and_then(|rest| rest.split(')').next()).unwrap_or_default();
    if elsewhere > letters.matches("//").count() {
        faults.push("something from elsewhere".to_owned());
    }
    faults
}

#[test]
fn every_page_sound_and_alone() {
    for booklet in booklets() {
        let html = booklet.to_html();
        assert_eq!(faults(&html), Vec::<String>::new(), "{}", booklet.name);
        assert!(html[..400].contains("breeks"), "known as ours by its first bytes");
    }
}

#[test]
fn faults_of_a_page_found() {
    let page = |body: &str| {
        format!(
            "<!DOCTYPE html><html lang=\"en\"><head><title>a</title></head><body><h1>a</h1>{body}</body></html>"
        )
    };
    assert_eq!(faults(&page("<p>a</p>")), Vec::<String>::new());
    for (body, wanted) in [
        ("<p>a", "closes something else"),
        ("<script></script>", "nobody knows"),
        ("<p onclick=\"a\">a</p>", "has onclick"),
        ("<img src=\"a.png\">", "has src"),
        ("<a href=\"https://a\">a</a>", "elsewhere"),
        ("<a href=\"#a\">a</a>", "leads nowhere"),
        ("<p id=\"a\">a</p><p id=\"a\">a</p>", "two elements"),
        ("<svg role=\"img\"></svg>", "without words"),
        ("<h3>a</h3>", "after h1"),
        ("<h2></h2>", "empty heading"),
        ("<h1>a</h1>", "2 main headings"),
        ("<table><tr><th>a</th></tr></table>", "heads nothing"),
    ] {
        let found = faults(&page(body));
        assert!(found.iter().any(|fault| fault.contains(wanted)), "{body}: {found:?}");
    }
}

#[test]
fn same_bytes_every_time() {
    let taught = Taught::demo("cox", "jeans", &[]);
    let twice = [0, 1].map(|_| {
        let booklet = lesson(&taught.subject(Unit::Inch));
        (booklet.to_html(), booklet.to_pdf().expect("pages"))
    });
    assert!(twice[0] == twice[1]);
}
