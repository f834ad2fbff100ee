//! The words in which people tell what a toile shows, and what they mean: `words.toml`, read once.

use std::{
    collections::{BTreeMap, HashMap},
    sync::LazyLock,
};

use rust_stemmers::{Algorithm, Stemmer};
use serde::Deserialize;

use super::{knowledge::word, sign::Sign};
use crate::terms::Side;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawWords {
    means: Vec<RawMeans>,
    role: Vec<RawRole>,
    result: Vec<ToldResult>,
    alike: BTreeMap<String, String>,
    irregular: BTreeMap<String, String>,
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
    side: Option<String>,
    #[serde(default)]
    one_side: bool,
    #[serde(default)]
    fine: bool,
    words: Vec<String>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawRole {
    role: Role,
    words: Vec<String>,
}

/// What a test gave, told in passing: of every list of stems one must stand in the clause, and none of `without`.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct ToldResult {
    pub(super) test: String,
    pub(super) result: String,
    pub(super) words: Vec<Vec<String>>,
    #[serde(default)]
    pub(super) without: Vec<String>,
    /// It stands in one clause; else its words may go on into the next.
    #[serde(default)]
    pub(super) alone: bool,
}

/// What a phrase does to the reading of its sentence; `words.toml` says what each means.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(super) enum Role {
    /// What follows is not so.
    Denies,
    /// What stands in the clause is no longer so.
    Gone,
    /// What follows is left out.
    Except,
    /// A little.
    Slight,
    /// A great deal.
    Strong,
    /// Less than it was.
    Less,
    /// More than it was.
    More,
    /// Compared with what follows.
    Than,
    /// Compared with the toile before.
    Before,
    /// Nothing is wrong.
    Fine,
    /// Nothing is wrong, whatever else the clause says.
    Praise,
    /// Something is wrong.
    Bad,
    /// Lines or folds.
    Wrinkle,
    /// The whole.
    Whole,
    /// All that was not named.
    Rest,
    /// What follows is wanted, not seen.
    Wish,
    /// Seat or hem.
    Bottom,
    /// The place that was spoken of before, or the crotch.
    There,
    /// The centre of front or back: the band, where it goes up, down or off.
    Centre,
    /// Loose, where nothing else is said.
    Big,
    /// The next clause is of the same kind.
    Join,
    /// And is denied where this one is.
    Or,
    /// As a comma, behind what is said already.
    With,
    /// The next clause stands by itself.
    Break,
    /// The next clause says when.
    When,
    /// The next place is where lines point.
    Pointing,
    /// A stance in which nobody is fitted.
    Stance,
    /// What the person does.
    Hand,
    /// Nothing.
    Plain,
}

/// A word as it was said, and its stem.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Said {
    pub(super) word: String,
    pub(super) stem: String,
}

impl Said {
    pub(super) fn new(word: &str) -> Self {
        let regular = lexicon().irregular.get(word);
        Self { stem: regular.cloned().unwrap_or_else(|| stem(word)), word: word.to_owned() }
    }
}

pub(super) fn stem(word: &str) -> String {
    static ENGLISH: LazyLock<Stemmer> = LazyLock::new(|| Stemmer::create(Algorithm::English));
    ENGLISH.stem(word).into_owned()
}

/// One word of a phrase: any of these, by its stem or in this form alone.
struct Slot(Vec<(String, bool)>);

impl Slot {
    fn is(&self, said: &Said) -> bool {
        self.0.iter().any(|(known, exact)| *known == if *exact { &said.word } else { &said.stem }.as_str())
    }
}

/// A phrase with what it means.
pub(super) struct Phrase {
    slots: Vec<Slot>,
    /// What it says of the toile.
    pub(super) sign: Sign,
    /// Which side it names.
    pub(super) side: Option<Side>,
    /// What it does to the reading; none for what says something.
    pub(super) role: Option<Role>,
}

pub(super) struct Lexicon {
    phrases: Vec<Phrase>,
    /// Phrases by the stem or the form of their first word, the longest first.
    by_first: HashMap<String, Vec<usize>>,
    /// Single words that say something, for slips of the pen.
    single: Vec<String>,
    /// Forms that the stemmer cannot know, with their stems.
    irregular: BTreeMap<String, String>,
    pub(super) results: Vec<ToldResult>,
    /// Rewritten before anything is read, the longest first.
    pub(super) alike: Vec<(Vec<String>, Vec<String>)>,
}

pub(super) fn lexicon() -> &'static Lexicon {
    static WORDS: LazyLock<Lexicon> = LazyLock::new(|| {
        built(include_str!("words.toml"))
            .unwrap_or_else(|why| panic!("words.toml, which is part of the program: {why}"))
    });
    &WORDS
}

/// Words that carry nothing and stand anywhere.
const ARTICLES: [&str; 12] =
    ["the", "a", "an", "my", "your", "his", "her", "their", "our", "its", "this", "these"];

pub(super) fn is_article(word: &str) -> bool {
    ARTICLES.contains(&word)
}

fn built(text: &str) -> Result<Lexicon, String> {
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
        let side = word(means.side.as_deref())?;
        phrases.extend(means.words.iter().map(|text| Phrase { slots: slots(text), sign, side, role: None }));
    }
    for role in &raw.role {
        let known = Some(role.role);
        let phrase =
            |text: &String| Phrase { slots: slots(text), sign: Sign::default(), side: None, role: known };
        phrases.extend(role.words.iter().map(phrase));
    }
    phrases.retain(|phrase| !phrase.slots.is_empty());
    let single = phrases
        .iter()
        .filter(|phrase| phrase.slots.len() == 1 && phrase.role.is_none())
        .flat_map(|phrase| phrase.slots[0].0.iter().map(|(known, _)| known.clone()))
        .filter(|known| known.len() > 3)
        .collect();
    let mut by_first: HashMap<String, Vec<usize>> = HashMap::new();
    for (at, phrase) in phrases.iter().enumerate() {
        for (known, _) in &phrase.slots[0].0 {
            by_first.entry(known.clone()).or_default().push(at);
        }
    }
    for list in by_first.values_mut() {
        list.sort_by_key(|at| std::cmp::Reverse(phrases[*at].slots.len()));
    }
    let split = |text: &str| text.split_whitespace().map(str::to_owned).collect::<Vec<_>>();
    let mut alike: Vec<_> = raw.alike.iter().map(|(from, to)| (split(from), split(to))).collect();
    alike.sort_by_key(|(from, _)| std::cmp::Reverse(from.len()));
    Ok(Lexicon { phrases, by_first, single, irregular: raw.irregular, results: raw.result, alike })
}

fn slots(text: &str) -> Vec<Slot> {
    let slot = |text: &str| {
        let known = |text: &str| match text.strip_prefix('=') {
            Some(exact) => (exact.to_owned(), true),
            None => (stem(text), false),
        };
        Slot(text.split('|').map(known).collect())
    };
    text.split_whitespace().filter(|text| !is_article(text)).map(slot).collect()
}

impl Lexicon {
    /// The longest phrases with which `rest` begins, all of one length, and that length.
    pub(super) fn longest(&self, rest: &[Said]) -> (usize, Vec<&Phrase>) {
        let Some(first) = rest.first() else { return (0, Vec::new()) };
        let fits = |phrase: &&Phrase| {
            phrase.slots.len() <= rest.len()
                && phrase.slots.iter().zip(rest).all(|(slot, said)| slot.is(said))
        };
        let lists = [&first.stem, &first.word].into_iter().filter_map(|key| self.by_first.get(key));
        let mut found: Vec<&Phrase> = Vec::new();
        for at in lists.flatten() {
            let phrase = &self.phrases[*at];
            if fits(&phrase) && !found.iter().any(|it| std::ptr::eq(*it, phrase)) {
                found.push(phrase);
            }
        }
        let longest = found.iter().map(|phrase| phrase.slots.len()).max().unwrap_or(0);
        found.retain(|phrase| phrase.slots.len() == longest);
        (longest, found)
    }

    /// A word that says something and of which this one is a slip of the pen: one letter wrong, missing, too many or in its
    /// neighbour's place.
    pub(super) fn slip(&self, said: &str) -> Option<&str> {
        /// In a shorter word one letter makes another word: night, tight.
        const SHORTEST: usize = 4;
        let first = said.chars().next()?;
        let near = |known: &&String| {
            let known = known.as_str();
            known.starts_with(first)
                && (strsim::osa_distance(said, known) <= 1 || strsim::osa_distance(&stem(said), known) <= 1)
        };
        (said.chars().count() >= SHORTEST)
            .then(|| self.single.iter().find(near).map(String::as_str))
            .flatten()
    }
}
