//! A reader of HTML: tags and text in order, and what of them a person sees.

/// A tag or a run of text.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Token {
    /// `<name attributes>`.
    Open { name: String, attributes: Vec<(String, String)>, closed: bool },
    /// `</name>`.
    Close(String),
    /// Text with its entities replaced.
    Text(String),
}

/// The tokens of a page; panics where it is no HTML.
pub(crate) fn tokens(html: &str) -> Vec<Token> {
    let mut all = Vec::new();
    let mut rest = html.strip_prefix("<!DOCTYPE html>").expect("a doctype first");
    while !rest.is_empty() {
        if let Some(tag) = rest.strip_prefix('<') {
            let end = end_of_tag(tag);
            let (inside, after) = (&tag[..end], &tag[end + 1..]);
            rest = after;
            if let Some(name) = inside.strip_prefix('/') {
                all.push(Token::Close(name.trim().to_owned()));
                continue;
            }
            let (name, attributes, closed) = open(inside);
            all.push(Token::Open { name: name.clone(), attributes, closed });
            if name == "style" {
                let until = rest.find("</style>").expect("a style has an end");
                all.push(Token::Text(rest[..until].to_owned()));
                rest = &rest[until..];
            }
        } else {
            let end = rest.find('<').unwrap_or(rest.len());
            all.push(Token::Text(unescaped(&rest[..end])));
            rest = &rest[end..];
        }
    }
    all
}

/// Where a tag ends: at the first `>` outside quotation marks.
fn end_of_tag(tag: &str) -> usize {
    let mut quoted = false;
    for (at, letter) in tag.char_indices() {
        match letter {
            '"' => quoted = !quoted,
            '>' if !quoted => return at,
            '<' if !quoted => panic!("a tag within a tag: {tag:.60}"),
            _ => {}
        }
    }
    panic!("a tag without an end: {tag:.60}")
}

fn open(inside: &str) -> (String, Vec<(String, String)>, bool) {
    let closed = inside.ends_with('/');
    let inside = inside.trim_end_matches('/');
    let (name, mut rest) = inside.split_once(char::is_whitespace).unwrap_or((inside, ""));
    let mut attributes = Vec::new();
    while let Some((key, after)) = rest.trim_start().split_once('=') {
        let after = after.strip_prefix('"').expect("values stand in quotation marks");
        let (value, after) = after.split_once('"').expect("a closing quotation mark");
        attributes.push((key.trim().to_owned(), unescaped(value)));
        rest = after;
    }
    assert!(rest.trim().is_empty(), "attributes without value: {inside:.80}");
    (name.to_owned(), attributes, closed)
}

/// Text with the entities replaced that our pages use; any other is a mistake.
fn unescaped(text: &str) -> String {
    let mut out = String::new();
    let mut rest = text;
    while let Some((before, after)) = rest.split_once('&') {
        out.push_str(before);
        let (entity, after) = after.split_once(';').expect("an entity ends in a semicolon");
        out.push(match entity {
            "amp" => '&',
            "lt" => '<',
            "gt" => '>',
            "quot" => '"',
            "apos" => '\'',
            other => panic!("an entity nobody wrote: {other:.20}"),
        });
        rest = after;
    }
    out.push_str(rest);
    out
}

/// What a person sees of a page, in order.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Seen {
    /// A heading.
    Heading(String),
    /// A paragraph or an entry of a list; the word in bold before it apart.
    Words { lead: String, words: String },
    /// A sum.
    Sum(String),
    /// A table: its caption, its rows with the head first.
    Table { caption: String, rows: Vec<Vec<String>> },
}

/// Reads a page as a person does, without its pictures.
pub(crate) fn seen(html: &str) -> Vec<Seen> {
    let mut all = Vec::new();
    let (mut text, mut lead) = (String::new(), String::new());
    let (mut caption, mut rows): (String, Vec<Vec<String>>) = (String::new(), Vec::new());
    let mut class = String::new();
    let mut in_picture = false;
    for token in tokens(html) {
        match token {
            Token::Open { name, attributes, .. } => match name.as_str() {
                "svg" => in_picture = true,
                "p" | "li" | "h1" | "h2" | "h3" | "caption" | "td" | "th" | "strong" | "figcaption" => {
                    if name != "strong" {
                        lead.clear();
                    }
                    text.clear();
                    let found = attributes.iter().find(|(key, _)| key == "class");
                    class = found.map(|(_, value)| value.clone()).unwrap_or_default();
                }
                "table" => (caption, rows) = (String::new(), Vec::new()),
                "tr" => rows.push(Vec::new()),
                _ => {}
            },
            Token::Text(words) if !in_picture => text.push_str(&words),
            Token::Text(_) => {}
            Token::Close(name) => match name.as_str() {
                "svg" => in_picture = false,
                "strong" => lead = std::mem::take(&mut text),
                "h1" | "h2" | "h3" => all.push(Seen::Heading(text.trim().to_owned())),
                "p" if class == "sum" => all.push(Seen::Sum(text.trim().to_owned())),
                "p" | "li" => {
                    all.push(Seen::Words { lead: lead.trim().to_owned(), words: text.trim().to_owned() });
                }
                "caption" => caption = text.trim().to_owned(),
                "td" | "th" => rows.last_mut().expect("a row").push(text.trim().to_owned()),
                "table" => all.push(Seen::Table {
                    caption: std::mem::take(&mut caption),
                    rows: std::mem::take(&mut rows),
                }),
                _ => {}
            },
        }
    }
    all
}
