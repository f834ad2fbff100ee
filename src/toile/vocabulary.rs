//! The words in which people tell what a toile shows, and what they mean: `words.toml`, read once.

use std::sync::LazyLock;

use serde::Deserialize;

use super::{
    knowledge::{knowledge, word},
    sign::Sign,
};

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawWords {
    means: Vec<RawMeans>,
    result: Vec<ToldResult>,
    plain: RawPlain,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawMeans {
    at: Option<String>,
    face: Option<String>,
    feel: Option<String>,
    lines: Option<String>,
    does: Option<String>,
    when: Option<String>,
    #[serde(default)]
    one_side: bool,
    #[serde(default)]
    fine: bool,
    #[serde(default)]
    stance: bool,
    words: Vec<String>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct ToldResult {
    pub(super) test: String,
    pub(super) result: String,
    pub(super) words: Vec<Vec<String>>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawPlain {
    words: Vec<String>,
}

/// A phrase, word by word, with what it means.
pub(super) struct Phrase {
    pub(super) words: Vec<String>,
    pub(super) sign: Sign,
    pub(super) stance: bool,
}

pub(super) struct Vocabulary {
    /// The longest first.
    pub(super) phrases: Vec<Phrase>,
    pub(super) results: Vec<ToldResult>,
    pub(super) plain: Vec<String>,
}

pub(super) fn vocabulary() -> &'static Vocabulary {
    static WORDS: LazyLock<Vocabulary> = LazyLock::new(|| {
        built(include_str!("words.toml"))
            .unwrap_or_else(|why| panic!("words.toml, which is part of the program: {why}"))
    });
    &WORDS
}

fn built(text: &str) -> Result<Vocabulary, String> {
    let raw: RawWords = toml::from_str(text).map_err(|error| error.to_string())?;
    let mut phrases = Vec::new();
    for means in &raw.means {
        let sign = Sign {
            at: word(means.at.as_deref())?,
            face: word(means.face.as_deref())?,
            feel: word(means.feel.as_deref())?,
            lines: word(means.lines.as_deref())?,
            to: None,
            does: word(means.does.as_deref())?,
            when: word(means.when.as_deref())?,
            one_side: means.one_side,
            fine: means.fine,
        };
        for phrase in &means.words {
            let words = phrase.split(' ').map(str::to_owned).collect();
            phrases.push(Phrase { words, sign, stance: means.stance });
        }
    }
    phrases.sort_by_key(|phrase| std::cmp::Reverse(phrase.words.len()));
    for result in &raw.result {
        let known = knowledge()
            .test(&result.test)
            .is_some_and(|test| test.results.iter().any(|it| it.key == result.result));
        if !known {
            return Err(format!("no result `{}` of `{}`", result.result, result.test));
        }
    }
    Ok(Vocabulary { phrases, results: raw.result, plain: raw.plain.words })
}

/// Whether a word of a report is this word of the vocabulary, of which a `*` stands for any ending.
pub(super) fn is_word(said: &str, known: &str) -> bool {
    match known.strip_suffix('*') {
        Some(stem) => said.starts_with(stem),
        None => said == known,
    }
}
