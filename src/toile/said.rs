//! A report in plain words becomes signs. Each part of a sentence is one sign; what it leaves out is taken from the part
//! before.

use super::{
    sign::{Does, Face, Feel, Lines, Place, Sign, When},
    vocabulary::{Phrase, is_word, vocabulary},
};
use crate::{mistake::nearest, terms::Word};

/// A longer report is read to here, characters; nobody says more about one toile.
pub const LONGEST_REPORT: usize = 2000;

/// What was understood of a report.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Report {
    /// The signs, in the order in which they were told.
    pub seen: Vec<Seen>,
    /// Results of tests that were told in passing: the test's key, the result's key, the words.
    pub tested: Vec<(String, String, String)>,
    /// A stance was told in which nobody should be fitted.
    pub stance: bool,
    /// Words that mean nothing here, with the nearest that do.
    pub unknown: Vec<(String, Option<String>)>,
    /// It was longer than is read.
    pub cut: bool,
}

/// A sign with the words in which it was told.
#[derive(Clone, Debug, PartialEq)]
pub struct Seen {
    /// The sign.
    pub sign: Sign,
    /// The same with a second place or face that was named: lines that run from one to the other belong to both.
    pub other: Option<Sign>,
    /// The words.
    pub words: String,
}

impl Seen {
    /// Words of the next part belong to it too.
    fn read_on(&mut self, text: &str) {
        let text = text.trim();
        self.words.push_str(if text.starts_with("when ") { " " } else { ", " });
        self.words.push_str(text);
    }
}

/// Reads what was told in several pieces as one report.
pub fn read_all<'a>(texts: impl IntoIterator<Item = &'a String>) -> Report {
    let mut report = Report::default();
    for text in texts {
        let read = read(text);
        report.seen.extend(read.seen);
        report.tested.extend(read.tested);
        report.unknown.extend(read.unknown);
        report.stance |= read.stance;
        report.cut |= read.cut;
    }
    report
}

/// Reads a report.
pub fn read(text: &str) -> Report {
    let mut report = Report { cut: text.chars().count() > LONGEST_REPORT, ..Report::default() };
    let text: String = text.chars().take(LONGEST_REPORT).collect();
    for sentence in text.split(['.', ';', ':', '!', '?', '\n', '\r']) {
        // a place told in one sentence is not meant in the next
        let mut before: Option<Sign> = None;
        for part in sentence
            .split(',')
            .flat_map(|part| split_words(part, &["but", "while", "when", "whereas", "yet"]))
        {
            for (at, part) in split_at_and(&part).iter().enumerate() {
                before = read_part(part, before, at > 0, &mut report).or(before);
            }
        }
    }
    report
}

fn words_of(text: &str) -> Vec<String> {
    text.to_lowercase()
        .split(|letter: char| !letter.is_alphanumeric())
        .filter(|word| !word.is_empty())
        // whose thigh it is makes no difference
        .map(|word| if matches!(word, "my" | "your" | "his" | "her" | "their") { "the" } else { word })
        .map(str::to_owned)
        .collect()
}

fn split_words(text: &str, at: &[&str]) -> Vec<String> {
    let mut parts = vec![String::new()];
    for word in text.split_whitespace() {
        if at.contains(&word.to_lowercase().as_str()) {
            // `when` is kept: it reads on
            parts.push(if word.eq_ignore_ascii_case("when") { word.to_owned() } else { String::new() });
        } else if let Some(last) = parts.last_mut() {
            if !last.is_empty() {
                last.push(' ');
            }
            last.push_str(word);
        }
    }
    parts
}

/// `tight across the seat and the pockets gape` is two signs, `loose at the side and at the back seam` too; `front and
/// back` is none.
fn split_at_and(text: &str) -> Vec<String> {
    let mut joined: Vec<String> = Vec::new();
    for part in split_words(text, &["and"]) {
        let is_sign = |text: &str| {
            let Scanned { sign, .. } = scan(&words_of(text));
            (sign.feel.is_some() || sign.does.is_some() || sign.fine, sign.at)
        };
        match joined.last_mut() {
            Some(last) => match (is_sign(last), is_sign(&part)) {
                ((true, _), (true, _)) | ((true, Some(_)), (false, Some(_))) => joined.push(part),
                _ => {
                    last.push_str(" and ");
                    last.push_str(&part);
                }
            },
            None => joined.push(part),
        }
    }
    joined
}

struct Scanned {
    sign: Sign,
    /// The second place and face named.
    second: (Option<Place>, Option<Face>),
    stance: bool,
    unknown: Vec<String>,
}

/// Words behind which a second place is where the lines point.
const POINTING: [&str; 6] = ["to", "towards", "toward", "into", "onto", "until"];

fn scan(words: &[String]) -> Scanned {
    let vocabulary = vocabulary();
    let mut scanned =
        Scanned { sign: Sign::default(), second: (None, None), stance: false, unknown: Vec::new() };
    let (mut at, mut pointing) = (0, false);
    while at < words.len() {
        let rest = &words[at..];
        let fits = |phrase: &&Phrase| {
            phrase.words.len() <= rest.len()
                && phrase.words.iter().zip(rest).all(|(known, said)| is_word(said, known))
        };
        // one stretch of words may mean several things of the same length
        let long = vocabulary.phrases.iter().find(fits).map(|phrase| phrase.words.len());
        match long {
            Some(long) => {
                for phrase in
                    vocabulary.phrases.iter().filter(|phrase| phrase.words.len() == long).filter(fits)
                {
                    scanned.stance |= phrase.stance;
                    add(&mut scanned, &phrase.sign, pointing);
                }
                at += long;
            }
            None => {
                let said = &words[at];
                pointing |= POINTING.contains(&said.as_str());
                if !vocabulary.plain.iter().any(|known| is_word(said, known)) && said.parse::<f64>().is_err()
                {
                    scanned.unknown.push(said.clone());
                }
                at += 1;
            }
        }
    }
    scanned
}

/// Takes up what a phrase adds: the first word said of a thing holds.
fn add(scanned: &mut Scanned, more: &Sign, pointing: bool) {
    let (sign, second) = (&mut scanned.sign, &mut scanned.second);
    let whole_leg = matches!(sign.at, Some(Place::Legs));
    match more.at {
        Some(place) if sign.at.is_none() || whole_leg => sign.at = Some(place),
        Some(place) if pointing && sign.at != Some(place) => sign.to = sign.to.or(Some(place)),
        Some(place) if sign.at != Some(place) => second.0 = second.0.or(Some(place)),
        _ => {}
    }
    // the face of a place that lines only point to is not the face of the sign
    match (sign.face, more.face) {
        (None, face) => sign.face = face,
        (Some(_), Some(_)) if pointing && more.at.is_some() => {}
        (Some(face), Some(more)) if face != more => second.1 = second.1.or(Some(more)),
        _ => {}
    }
    sign.feel = sign.feel.or(more.feel);
    sign.lines = sign.lines.or(more.lines);
    sign.does = sign.does.or(more.does);
    sign.when = sign.when.or(more.when);
    sign.one_side |= more.one_side;
    sign.fine |= more.fine;
}

/// Reads one part of a sentence; gives its sign, from which the next part takes its place. A part `joined` to the one before
/// by `and` takes what it does not say from it.
fn read_part(text: &str, before: Option<Sign>, joined: bool, report: &mut Report) -> Option<Sign> {
    let words = words_of(text);
    if words.is_empty() {
        return None;
    }
    let result = vocabulary().results.iter().find(|result| {
        result.words.iter().all(|any| words.iter().any(|said| any.iter().any(|known| is_word(said, known))))
    });
    if let Some(result) = result {
        report.tested.push((result.test.clone(), result.result.clone(), text.trim().to_owned()));
        return None;
    }
    let Scanned { mut sign, second, stance, unknown } = scan(&words);
    let mut other = None;
    match second {
        // in front and behind: all round
        (at, Some(face)) if sign.face.is_some_and(|first| first.is_opposite(face)) => {
            sign.face = None;
            other = at.map(|at| Sign { at: Some(at), ..sign });
        }
        (None, None) => {}
        (at, face) => other = Some(Sign { at: at.or(sign.at), face: face.or(sign.face), ..sign }),
    }
    report.stance |= stance;
    let known = sign != Sign::default() || stance;
    for said in unknown {
        let all = vocabulary().phrases.iter().filter(|phrase| phrase.words.len() == 1);
        let near = nearest(
            &said,
            all.map(|phrase| phrase.words[0].trim_end_matches('*')).filter(|word| word.len() > 3),
        );
        if near.is_some() || !known {
            report.unknown.push((said, near.map(str::to_owned)));
        }
    }
    if sign == Sign::default() {
        return None;
    }
    let only_when = sign.at.is_none() && !sign.says_something() && sign.face.is_none();
    match (only_when, before, report.seen.last_mut()) {
        (true, Some(before), Some(last)) if before.says_something() => {
            // `worse when walking`
            last.sign.when = sign.when.or(last.sign.when);
            last.read_on(text);
            return Some(last.sign);
        }
        // `standing, ...`: of the part that follows
        (true, ..) => return Some(sign),
        (false, Some(before), Some(last)) if !sign.says_something() && !joined && before.says_something() => {
            // `a fold below the band, in the middle of the back`: where it was
            last.sign.at = last.sign.at.or(sign.at);
            last.sign.face = last.sign.face.or(sign.face);
            last.sign.when = sign.when.or(last.sign.when);
            last.other = None;
            last.read_on(text);
            return Some(last.sign);
        }
        _ => {}
    }
    if joined
        && !sign.says_something()
        && let Some(before) = before
    {
        (sign.feel, sign.lines, sign.does, sign.fine) = (before.feel, before.lines, before.does, before.fine);
    }
    if let Some(before) = before {
        if sign.at.is_none() {
            sign.at = before.at;
            sign.face = sign.face.or(before.face);
        }
        sign.when = sign.when.or(before.when);
    }
    // what moves or holds, said of nothing in particular, is the leg
    if sign.at.is_none() && matches!(sign.does, Some(Does::Binds | Does::Climbs | Does::Twists)) {
        sign.at = Some(Place::Legs);
    }
    // what cuts or holds is tight, whether it is said or not
    if matches!(sign.does, Some(Does::Cuts | Does::Binds)) {
        sign.feel = sign.feel.or(Some(Feel::Tight));
    }
    // `hangs clean` is fine; `clean but for tight lines` is not
    if sign.fine {
        sign.fine = sign.feel.is_none() && sign.lines.is_none();
        sign.does = sign.does.filter(|_| !sign.fine);
    }
    if sign.says_something() || sign.at.is_some() {
        // what was completed above holds for both readings
        let other =
            other.map(|other| Sign { at: other.at, face: other.face, ..sign }).filter(|other| *other != sign);
        report.seen.push(Seen { sign, other, words: text.trim().to_owned() });
    }
    Some(sign)
}

impl Report {
    /// Whether anything of it says what is wrong or what was tested.
    pub fn says_something(&self) -> bool {
        self.stance || !self.tested.is_empty() || self.seen.iter().any(|seen| seen.sign.says_something())
    }

    /// What can be said, a line each: for whoever said nothing that is known.
    pub fn can_be_said() -> Vec<String> {
        let list =
            |keys: &[&str]| keys.iter().map(|key| key.replace('_', " ")).collect::<Vec<_>>().join(", ");
        vec![
            format!("where: {}", list(Place::KEYS)),
            format!("on which face: {}", list(Face::KEYS)),
            format!("the cloth: {}; lines: {}", list(Feel::KEYS), list(Lines::KEYS)),
            format!(
                "what it does: {}",
                Does::ALL.iter().map(|does| does.said()).collect::<Vec<_>>().join(", ")
            ),
            format!("when: {}", list(When::KEYS)),
        ]
    }
}
