//! A report taken apart: sentences, their clauses, and what each clause says by itself.

use unicode_segmentation::UnicodeSegmentation;

use super::{
    lexicon::{Lexicon, Phrase, Role, Said, is_article, lexicon, stem},
    record::Since,
    sign::{Degree, Does, Face, Feel, Lines, Place, Sign},
};
use crate::terms::Side;

/// How a clause hangs on the one before it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) enum Joint {
    /// It begins the sentence.
    #[default]
    Start,
    /// A comma.
    Comma,
    /// `and`.
    And,
    /// `or`.
    Or,
    /// `but`, `while`.
    Break,
    /// `when`.
    When,
    /// `not`, where the clause had already said something.
    Not,
    /// `except`.
    Except,
}

/// What one clause says by itself.
#[derive(Clone, Debug, Default)]
pub(super) struct Clause {
    pub(super) joint: Joint,
    pub(super) sign: Sign,
    /// The second place and face named.
    pub(super) second: (Option<Place>, Option<Face>),
    pub(super) denied: bool,
    /// By how many words.
    pub(super) denials: usize,
    /// It is no longer so.
    pub(super) gone: bool,
    /// It is told of the toile before.
    pub(super) before: bool,
    pub(super) degree: Option<Degree>,
    pub(super) side: Option<Side>,
    pub(super) compared: Option<Since>,
    /// Its one place is where lines point.
    pub(super) only_points: bool,
    /// Something is wrong, and it is not said what.
    pub(super) bad: bool,
    /// Wrinkles, lines, creases.
    pub(super) wrinkle: bool,
    /// Seat or hem.
    pub(super) bottom: bool,
    /// It is right, whatever else is said of it.
    pub(super) praised: bool,
    /// It is wanted, not seen.
    pub(super) wished: bool,
    /// The place that was spoken of before, or the crotch.
    pub(super) there: bool,
    /// A place was named by a word that is not known: `in the nethers`.
    pub(super) strange_place: bool,
    /// The centre of front or back.
    pub(super) centre: bool,
    /// Big.
    pub(super) big: bool,
    /// Tight and loose at once.
    pub(super) torn: bool,
    /// Of all of the trousers.
    pub(super) whole: bool,
    /// Of what was not named.
    pub(super) rest: bool,
    pub(super) stance: bool,
    /// It begins with `it is`, `they are`: it names the true place after a wrong one.
    pub(super) corrects: bool,
    /// It ends in a bare `does` or `is`: what was said before is said of its own subject.
    pub(super) repeats: bool,
    /// It begins with a word for what was spoken of.
    pub(super) points_back: bool,
    /// What a test gave: the places in the list of told results.
    pub(super) result: Option<usize>,
    /// Words that mean nothing here.
    pub(super) unknown: Vec<String>,
    /// Words read as another: as said, as read.
    pub(super) slips: Vec<(String, String)>,
    pub(super) text: String,
    /// The words before it that named its place.
    pub(super) led_by: String,
}

impl Clause {
    /// Its words, with those that named its place.
    pub(super) fn words(&self) -> String {
        let between = match self.joint {
            _ if self.led_by.is_empty() => "",
            Joint::Comma => ", ",
            _ => " ",
        };
        format!("{}{between}{}", self.led_by, self.text)
    }

    /// Whether it says how the cloth is or what it does.
    pub(super) fn has_predicate(&self) -> bool {
        let sign = &self.sign;
        sign.feel.is_some()
            || sign.lines.is_some()
            || sign.does.is_some()
            || sign.fine
            || self.bad
            || self.wrinkle
    }

    /// Whether this word stands in it.
    pub(super) fn says(&self, word: &str) -> bool {
        self.text.split(' ').any(|said| said == word)
    }

    pub(super) fn has_place(&self) -> bool {
        self.sign.at.is_some() || self.bottom
    }

    fn sign_is_bare(&self) -> bool {
        self.has_place() && !self.has_predicate()
    }

    /// Whether it says nothing at all.
    pub(super) fn is_empty(&self) -> bool {
        !self.has_predicate()
            && !self.has_place()
            && self.sign.face.is_none()
            && self.sign.when.is_none()
            && !self.sign.one_side
            && !self.stance
    }

    /// Takes up what a phrase adds: the first word said of a thing holds.
    fn add(&mut self, more: &Sign, pointing: bool) {
        let from_elsewhere = self.sign.at.is_some() && !self.only_points;
        let (sign, second) = (&mut self.sign, &mut self.second);
        let whole_leg = matches!(sign.at, Some(Place::Legs));
        match more.at {
            Some(place) if sign.at.is_none() || (whole_leg && !pointing) => {
                sign.at = Some(place);
                self.only_points = pointing;
            }
            Some(Place::Legs) => {}
            Some(place) if pointing && sign.at != Some(place) => sign.to = sign.to.or(Some(place)),
            Some(place) if sign.at != Some(place) => second.0 = second.0.or(Some(place)),
            _ => {}
        }
        // the face of a place that lines only point to is not the face of the sign
        match (sign.face, more.face) {
            // `from the hip to the inside of the knee`: the face of what follows
            (None, Some(_)) if pointing && more.at.is_none() && from_elsewhere && sign.to.is_none() => {}
            (None, face) => sign.face = face,
            (Some(_), Some(_)) if pointing && more.at.is_some() => {}
            (Some(face), Some(more)) if face != more => second.1 = second.1.or(Some(more)),
            _ => {}
        }
        self.torn |= sign.feel.zip(more.feel).is_some_and(|(one, other)| one != other);
        sign.feel = sign.feel.or(more.feel);
        sign.lines = sign.lines.or(more.lines);
        // `goes up between the cheeks`
        let cuts = sign.does == Some(Does::Climbs) && more.does == Some(Does::Cuts);
        sign.does = sign.does.filter(|_| !cuts).or(more.does);
        sign.when = sign.when.or(more.when);
        sign.one_side |= more.one_side;
        sign.fine |= more.fine;
    }
}

enum Piece {
    Word(Said),
    Comma,
}

/// The clauses of a text, sentence by sentence.
pub(super) fn sentences(text: &str) -> Vec<Vec<Clause>> {
    split(text).into_iter().map(|pieces| clauses(&pieces)).filter(|clauses| !clauses.is_empty()).collect()
}

/// Sentences of words and commas, contractions written out.
fn split(text: &str) -> Vec<Vec<Piece>> {
    let text = text.to_lowercase().replace(['\u{2019}', '\u{2018}', '`', '\u{b4}'], "'");
    let mut sentences: Vec<Vec<Piece>> = vec![Vec::new()];
    let mut words: Vec<String> = Vec::new();
    let mut blank_before = true;
    let mut letters = text.split_word_bounds().peekable();
    let flush = |words: &mut Vec<String>, pieces: &mut Vec<Piece>| {
        let told = sides(alike(verbs(std::mem::take(words))));
        pieces.extend(told.iter().map(|word| Piece::Word(Said::new(word))));
    };
    while let Some(part) = letters.next() {
        let last = sentences.len() - 1;
        if part.chars().any(char::is_alphanumeric) {
            words.extend(written_out(part));
        } else if part.contains(['.', ';', '!', '?', '\n', '\r']) {
            flush(&mut words, &mut sentences[last]);
            sentences.push(Vec::new());
        } else if part.contains([',', ':', '(', ')', '\u{2013}', '\u{2014}', '/'])
            || (part.contains('-')
                && (blank_before || letters.peek().is_some_and(|next| next.trim().is_empty())))
        {
            flush(&mut words, &mut sentences[last]);
            sentences[last].push(Piece::Comma);
        } else if part == "&" || part == "+" {
            words.push("and".to_owned());
        }
        blank_before = part.trim().is_empty();
    }
    let last = sentences.len() - 1;
    flush(&mut words, &mut sentences[last]);
    sentences
}

/// A word without its contraction: `isn't` is `is not`, `it's` is `it is`.
fn written_out(word: &str) -> Vec<String> {
    if let Some(who) = word.strip_suffix("'d") {
        return vec![who.to_owned(), "would".to_owned()];
    }
    let bare = word.replace('\'', "");
    let not = |verb: &str| vec![verb.to_owned(), "not".to_owned()];
    if let Some(side @ ("left" | "right")) = word.strip_suffix("'s") {
        return vec![side.to_owned(), "is".to_owned()];
    }
    match bare.as_str() {
        "cannot" | "cant" => return not("can"),
        "wont" if word.contains('\'') => return not("will"),
        "aint" => return not("is"),
        "its" if word.contains('\'') => return vec!["it".to_owned(), "is".to_owned()],
        "im" if word.contains('\'') => return vec!["i".to_owned(), "am".to_owned()],
        "theyre" => return vec!["they".to_owned(), "are".to_owned()],
        "youre" | "were" if word.contains('\'') => return vec!["are".to_owned()],
        "thats" | "theres" => return vec!["that".to_owned(), "is".to_owned()],
        _ => {}
    }
    const NEGATED: [&str; 17] = [
        "do", "does", "did", "is", "are", "was", "were", "would", "could", "should", "have", "has", "had",
        "will", "need", "must", "can",
    ];
    let negated = ["nt", "nae", "na"].iter().find_map(|end| bare.strip_suffix(end));
    if let Some(verb) = negated.filter(|verb| NEGATED.contains(verb) && bare != "went") {
        return not(verb);
    }
    let mut parts = word.split('\'');
    let who = parts.next().unwrap_or_default().to_owned();
    if parts.next() == Some("s") { vec![who, IS_OR_OF.to_owned()] } else { vec![who] }
}

/// `'s`, before it is known what follows.
const IS_OR_OF: &str = "'s";

/// `the back's clean` and `its not tight` have a verb; `the cat's whiskers` and `its place` have none.
fn verbs(words: Vec<String>) -> Vec<String> {
    const AFTER_IT_IS: [&str; 27] = [
        "not", "no", "just", "only", "too", "so", "really", "very", "more", "a", "the", "all", "still",
        "also", "like", "kinda", "kind", "sort", "super", "tight", "loose", "baggy", "fine", "way", "up",
        "down", "off",
    ];
    const OWNED: [&str; 8] = ["bum", "crack", "bottom", "foot", "feet", "whiskers", "whisker", "apron"];
    let is_known = |word: &str| lexicon().longest(&[Said::new(word)]).0 > 0;
    let mut not_so_much = false;
    let mut out: Vec<String> = Vec::with_capacity(words.len() + 2);
    for (at, word) in words.iter().enumerate() {
        let next = words.get(at + 1).map(String::as_str);
        let is_place = |word: &str| {
            let said = [Said::new(word)];
            lexicon().longest(&said).1.iter().any(|it| it.sign.at.is_some())
        };
        match word.as_str() {
            // `under me cheeks`
            "me" | "yer" | "mi" if next.is_some_and(is_place) => out.push("my".to_owned()),
            // `not so much tight as short`
            "not" if words[at..].get(1..3).is_some_and(|next| next == ["so", "much"]) => {
                not_so_much = true;
                out.push(word.clone());
            }
            "so" | "much" if not_so_much && out.last().is_some_and(|last| last == "not") => {}
            "as" if not_so_much => {
                not_so_much = false;
                out.push("but".to_owned());
            }
            // `draggin'`
            word if word.len() > 5
                && word.ends_with("in")
                && is_known(&format!("{word}g"))
                && !is_known(word) =>
            {
                out.push(format!("{word}g"));
            }
            "its"
                if next.is_some_and(|next| AFTER_IT_IS.contains(&next) || next.ends_with("ing"))
                    && !(next == Some("way")
                        && words.get(at + 2).is_some_and(|it| it == "down" || it == "up")) =>
            {
                out.extend(["it".to_owned(), "is".to_owned()]);
            }
            IS_OR_OF => {
                let owned = next.is_none_or(|next| OWNED.contains(&next) || is_place(next));
                if !owned {
                    out.push("is".to_owned());
                }
            }
            _ => out.push(word.clone()),
        }
    }
    out
}

/// `the right`, with no noun after it, is `the right one`.
fn sides(words: Vec<String>) -> Vec<String> {
    const ENDS: [&str; 12] =
        ["is", "are", "was", "does", "do", "did", "has", "that", "which", "and", "but", "not"];
    let mut out: Vec<String> = Vec::with_capacity(words.len() + 1);
    for (at, word) in words.iter().enumerate() {
        let side = matches!(word.as_str(), "left" | "right") && at > 0 && words[at - 1] == "the";
        out.push(word.clone());
        if side && words.get(at + 1).is_none_or(|next| ENDS.contains(&next.as_str())) {
            out.push("one".to_owned());
        }
    }
    out
}

/// Stretches of words rewritten as [`Lexicon::alike`] has it.
fn alike(words: Vec<String>) -> Vec<String> {
    let mut out = Vec::new();
    let mut rest = words.as_slice();
    while let Some(first) = rest.first() {
        match lexicon().alike.iter().find(|(from, _)| rest.starts_with(from)) {
            Some((from, to)) => {
                out.extend(to.iter().cloned());
                rest = &rest[from.len()..];
            }
            None => {
                out.push(first.clone());
                rest = &rest[1..];
            }
        }
    }
    out
}

fn clauses(pieces: &[Piece]) -> Vec<Clause> {
    let mut all: Vec<Clause> = vec![Clause::default()];
    let mut at = 0;
    let mut pointing = false;
    let mut compared_with = false;
    while at < pieces.len() {
        let Piece::Word(first) = &pieces[at] else {
            // `slanting creases, from the inseam up to the hip`: one sign
            let from = matches!(pieces.get(at + 1), Some(Piece::Word(next)) if next.word == "from");
            if from && all.last().is_some_and(|last| last.wrinkle || last.sign.lines.is_some()) {
                at += 1;
                continue;
            }
            begin(&mut all, Joint::Comma);
            (pointing, compared_with) = (false, false);
            at += 1;
            continue;
        };
        // a stretch of words without commas; articles say nothing
        let stretch: Vec<(usize, Said)> = pieces[at..]
            .iter()
            .map_while(|piece| match piece {
                Piece::Word(said) => Some(said.clone()),
                Piece::Comma => None,
            })
            .enumerate()
            .filter(|(place, said)| *place == 0 || !is_article(&said.word) && !is_filler(&said.word))
            .map(|(place, said)| (at + place, said))
            .take(LONGEST_PHRASE)
            .collect();
        if begins_anew(pieces, at) && all.last().is_some_and(Clause::has_predicate) {
            begin(&mut all, Joint::Comma);
            (pointing, compared_with) = (false, false);
        }
        if is_article(&first.word) {
            push_text(&mut all, &first.word);
            at += 1;
            continue;
        }
        let words: Vec<Said> = stretch.iter().map(|(_, said)| said.clone()).collect();
        let (mut count, mut found) = lexicon().longest(&words);
        if let Some(before) = before_a_place(&words, count, &found) {
            (count, found) = lexicon().longest(&words[..before]);
        }
        let end = if count == 0 { at + 1 } else { stretch[count - 1].0 + 1 };
        let joint = found.iter().find_map(|phrase| joint(phrase.role?));
        if let Some(joint) = joint {
            begin(&mut all, joint);
            (pointing, compared_with) = (false, false);
        }
        let with = found.iter().any(|phrase| phrase.role == Some(Role::With));
        // `fine with the waist` is one clause
        let of_nothing = |last: &Clause| last.sign.fine && !last.has_place();
        if with && all.last().is_some_and(|last| last.has_predicate() && !of_nothing(last)) {
            begin(&mut all, Joint::Comma);
            (pointing, compared_with) = (false, false);
        }
        let denies = found.iter().any(|phrase| phrase.role == Some(Role::Denies));
        // `the lines are not at the crotch` is one clause
        if denies && all.last().is_some_and(|last| last.has_predicate() && !ends_in_verb(&last.text)) {
            begin(&mut all, Joint::Not);
        }
        for piece in &pieces[at..end] {
            if let Piece::Word(said) = piece {
                push_text(&mut all, &said.word);
            }
        }
        if let Some(clause) = all.last_mut() {
            if count == 0 {
                clause.strange_place |= names_place(&pieces[..at]) && lexicon().slip(&first.word).is_none();
                unknown(clause, first, pointing);
            } else if !compared_with || found.iter().any(|phrase| phrase.role == Some(Role::Before)) {
                for phrase in &found {
                    pointing |= phrase.role == Some(Role::Pointing);
                    compared_with |= phrase.role == Some(Role::Than);
                    take_up(clause, phrase, pointing);
                }
            }
            if clause.joint != Joint::When {
                clause.corrects |= is_correction(&clause.text);
                clause.points_back |= points_back(&clause.text);
            } else {
                clause.corrects |=
                    clause.text.split(' ').take(3).any(|word| matches!(word, "only" | "except" | "unless"));
            }
        }
        at = end;
    }
    for (at, clause) in all.iter_mut().enumerate() {
        told_of_person(clause, at == 0);
        finish(clause);
    }
    all.retain(|clause| !clause.text.is_empty());
    for clause in &mut all {
        // `baggy below it`: where that is was not said
        let words: Vec<&str> = clause.text.split(' ').collect();
        let beside = |pair: &[&str]| matches!(pair, ["below" | "above" | "under", "it" | "that" | "them"]);
        clause.strange_place |= !clause.has_place() && words.windows(2).any(beside);
    }
    for at in 1..all.len() {
        // `everything except the thigh is right`: what is said is said of the rest
        let (before, here) = all.split_at_mut(at);
        let (before, here) = (&before[at - 1], &mut here[0]);
        if here.joint == Joint::Except && before.whole && !before.denied && !before.has_predicate() {
            if here.sign.fine {
                (here.sign.fine, here.bad) = (false, true);
            } else if here.has_predicate() {
                here.denied = !here.denied;
            }
        }
    }
    told_results(&mut all);
    all
}

/// `slanting to the back of the thigh` names a place and no swing to the back: of so many words only the first then count
/// together.
fn before_a_place(words: &[Said], count: usize, found: &[&Phrase]) -> Option<usize> {
    const FACES: [&str; 4] = ["back", "front", "inside", "outside"];
    const TO: [&str; 3] = ["to", "towards", "toward"];
    let swings = |phrase: &&Phrase| {
        matches!(phrase.sign.does, Some(Does::Backward | Does::Forward | Does::Inward | Does::Outward))
    };
    let (last, next) = (words.get(count.checked_sub(1)?)?, words.get(count)?);
    let is_place = || lexicon().longest(&words[count..]).1.iter().any(|it| it.sign.at.is_some());
    if !found.iter().any(swings) || !FACES.contains(&last.word.as_str()) || next.word != "of" && !is_place() {
        return None;
    }
    let to = words[..count].iter().position(|said| TO.contains(&said.word.as_str()))?;
    Some(to.max(1))
}

/// Where a sentence runs on without a comma: `not too short it is just that`, `so tight the leg stays up`.
fn begins_anew(pieces: &[Piece], at: usize) -> bool {
    const FEELS: [&str; 8] = ["tight", "loose", "baggy", "snug", "short", "long", "low", "high"];
    let word = |at: Option<usize>| match at.and_then(|at| pieces.get(at)) {
        Some(Piece::Word(said)) => said.word.as_str(),
        _ => "",
    };
    let (before, here, next) = (word(at.checked_sub(1)), word(Some(at)), word(Some(at + 1)));
    match here {
        "it" | "they" => {
            matches!(next, "is" | "are") && before != "like" && before != "as" && before != "than"
        }
        "the" | "my" | "his" | "her" => {
            let said = [Said::new(next)];
            FEELS.contains(&before) && lexicon().longest(&said).1.iter().any(|it| it.sign.at.is_some())
        }
        _ => false,
    }
}

/// Results of tests that stand in a clause, or in one and the next.
fn told_results(all: &mut Vec<Clause>) {
    let mut at = 0;
    while at < all.len() {
        all[at].result = result(&all[at].text, true);
        if all[at].result.is_none()
            && let Some(next) = all.get(at + 1)
            && let Some(result) = result(&format!("{} {}", all[at].text, next.text), false)
        {
            all[at].result = Some(result);
            let next = all.remove(at + 1);
            all[at].text = format!("{} {}", all[at].text, next.text);
        }
        at += 1;
    }
}

fn result(text: &str, alone: bool) -> Option<usize> {
    let stems: Vec<String> = text.split(' ').map(stem).collect();
    let stands = |known: &String| stems.contains(&stem(known));
    lexicon().results.iter().position(|result| {
        (alone || !result.alone)
            && result.words.iter().all(|any| any.iter().any(stands))
            && !result.without.iter().any(stands)
    })
}

/// Words that may stand within a phrase and change nothing of it: `not quite long enough`.
fn is_filler(word: &str) -> bool {
    const FILLERS: [&str; 12] = [
        "fully",
        "totally",
        "quite",
        "really",
        "even",
        "actually",
        "always",
        "ever",
        "just",
        "completely",
        "entirely",
        "properly",
    ];
    FILLERS.contains(&word)
}

/// Whether what follows these words is where something is: `in the`, `round his`.
fn names_place(before: &[Piece]) -> bool {
    const WHERE: [&str; 12] = [
        "in", "at", "round", "around", "over", "across", "near", "under", "below", "above", "behind", "along",
    ];
    let word = |piece: Option<&Piece>| match piece {
        Some(Piece::Word(said)) => said.word.clone(),
        _ => String::new(),
    };
    let mut last = before.iter().rev();
    is_article(&word(last.next())) && WHERE.contains(&word(last.next()).as_str())
}

/// No phrase of the lexicon is longer.
const LONGEST_PHRASE: usize = 9;

fn push_text(all: &mut [Clause], word: &str) {
    if let Some(clause) = all.last_mut() {
        if !clause.text.is_empty() {
            clause.text.push(' ');
        }
        clause.text.push_str(word);
    }
}

/// Begins a clause; one that is still empty only changes how it hangs on.
fn begin(all: &mut Vec<Clause>, joint: Joint) {
    match all.last_mut() {
        Some(last) if last.text.is_empty() => {
            if last.joint == Joint::Comma
                || joint != Joint::Comma && last.joint == Joint::Start && joint != Joint::Not
            {
                last.joint = joint;
            }
        }
        // `but when`, `or if`: the later word says how it hangs on
        Some(last) if last.is_empty() && last.is_only_joint() && joint != Joint::Comma => last.joint = joint,
        _ => all.push(Clause { joint, ..Clause::default() }),
    }
}

impl Clause {
    fn is_only_joint(&self) -> bool {
        self.unknown.is_empty()
            && !self.denied
            && match self.text.split(' ').collect::<Vec<_>>()[..] {
                [_] => true,
                // `but only when`, `and yes when`
                [_, more] => matches!(more, "only" | "just" | "yes" | "then"),
                _ => false,
            }
            && self.joint != Joint::Start
    }
}

fn joint(role: Role) -> Option<Joint> {
    Some(match role {
        Role::Join => Joint::And,
        Role::Or => Joint::Or,
        Role::Break => Joint::Break,
        Role::When => Joint::When,
        Role::Except => Joint::Except,
        _ => return None,
    })
}

/// A denial reaches as far as its own subject: `it` and `they` begin anew, and `only` names what is so.
fn is_correction(text: &str) -> bool {
    const STARTS: [&str; 8] = ["it", "they", "that", "only", "just", "merely", "rather", "those"];
    let bare = text.strip_prefix("and ").or_else(|| text.strip_prefix("but ")).unwrap_or(text);
    bare.split_once(' ').is_some_and(|(first, _)| STARTS.contains(&first))
}

const AUXILIARIES: [&str; 9] = ["does", "do", "did", "is", "are", "was", "were", "has", "have"];

fn ends_in_verb(text: &str) -> bool {
    text.rsplit(' ').next().is_some_and(|last| AUXILIARIES.contains(&last))
}

/// A subject and an auxiliary with nothing after it.
fn repeats(text: &str) -> bool {
    let mut words = text.split(' ').rev().skip_while(|word| matches!(*word, "not" | "too" | "now"));
    words.next().is_some_and(|last| AUXILIARIES.contains(&last)) && words.next().is_some()
}

fn points_back(text: &str) -> bool {
    ["it", "they", "that", "this", "these", "there", "worse", "also", "then", "here"]
        .iter()
        .any(|start| text.split(' ').next() == Some(start))
}

fn take_up(clause: &mut Clause, phrase: &Phrase, pointing: bool) {
    clause.add(&phrase.sign, pointing);
    clause.side = clause.side.or(phrase.side);
    match phrase.role {
        Some(Role::Denies) => {
            clause.denied = true;
            clause.denials += 1;
        }
        Some(Role::Before) => clause.before = true,
        Some(Role::Gone) => clause.gone = true,
        Some(Role::Slight) => clause.degree = clause.degree.or(Some(Degree::Slight)),
        Some(Role::Strong) => clause.degree = clause.degree.or(Some(Degree::Strong)),
        Some(Role::Less) => {
            clause.degree = Some(Degree::Slight);
            clause.compared = Some(Since::Better);
        }
        Some(Role::More) => clause.compared = Some(Since::Worse),
        Some(Role::Fine) => clause.sign.fine = true,
        Some(Role::Praise) => clause.praised = true,
        Some(Role::Bad) => clause.bad = true,
        Some(Role::Wrinkle) => clause.wrinkle = true,
        Some(Role::Whole) => clause.whole = true,
        Some(Role::Rest) => clause.rest = true,
        Some(Role::Wish) => clause.wished = true,
        Some(Role::Bottom) => clause.bottom = true,
        Some(Role::There) => clause.there = true,
        Some(Role::Centre) => clause.centre = true,
        Some(Role::Big) => {
            clause.big = true;
            clause.degree = clause.degree.or(Some(Degree::Strong));
        }
        Some(Role::Stance) => clause.stance = true,
        _ => {}
    }
}

fn unknown(clause: &mut Clause, said: &Said, pointing: bool) {
    /// A shorter word with one letter changed is another word.
    const LONG_ENOUGH: usize = 6;
    if said.word.parse::<f64>().is_ok() || said.word.chars().count() < 2 {
        return;
    }
    let lexicon: &Lexicon = lexicon();
    match lexicon.slip(&said.word) {
        Some(meant) if said.word.chars().count() >= LONG_ENOUGH => {
            clause.slips.push((said.word.clone(), meant.to_owned()));
            for phrase in lexicon.longest(&[Said { word: meant.to_owned(), stem: meant.to_owned() }]).1 {
                take_up(clause, phrase, pointing);
            }
        }
        _ => clause.unknown.push(said.word.clone()),
    }
}

/// What a person does is when it shows, and what was done to the cloth is not seen on it.
fn told_of_person(clause: &mut Clause, first: bool) {
    const PEOPLE: [&str; 6] = ["i", "we", "you", "he", "she", "they"];
    const CLOTH: [&str; 9] =
        ["it", "they", "that", "cloth", "fabric", "material", "everything", "trousers", "lines"];
    if clause.joint != Joint::When {
        return;
    }
    let mut words = clause.text.split(' ').filter(|word| !matches!(*word, "only" | "not" | "even" | "now"));
    let since = words.next() == Some("since");
    if !words.next().is_some_and(|who| PEOPLE.contains(&who)) {
        return;
    }
    // `when I hitch them up`: the hand's work
    let lifts = [" them up", " it up"].iter().any(|hand| clause.text.ends_with(hand));
    let of_cloth = !lifts && words.any(|word| CLOTH.contains(&word));
    let Sign { at, face, when, one_side, .. } = clause.sign;
    // `when I bend up tight`; but `when I sit it is tight`, `when I sit the seat is tight`
    // `when he turned round`
    let moves = lifts
        || (when.is_some() || clause.sign.feel.is_none())
            && at.is_none()
            && face.is_none()
            && !of_cloth
            && !clause.wrinkle;
    // `since you took it in it pulls`, at the head of a sentence, may go on to what is seen now
    if since && !first || moves && clause.sign.lines.is_none() {
        clause.sign = Sign { at, face, when, one_side, ..Sign::default() };
        (clause.bad, clause.wrinkle) = (false, false);
    }
    if lifts {
        clause.sign = Sign::default();
    }
}

/// What follows from the whole clause.
fn finish(clause: &mut Clause) {
    clause.repeats = !clause.has_predicate() && repeats(&clause.text);
    // a thing may be said to be right only where nothing else is said of it
    let sign = &mut clause.sign;
    let says = |words: &str| format!(" {} ", clause.text).contains(&format!(" {words} "));
    // `the seat was baggy last time`
    let was = clause.before && clause.compared.is_none() && (says("was") || says("were"));
    // `does not pull as much as it did`
    let less =
        ["as much", "so much", "that much", "as bad", "so bad", "as badly", "as often"].into_iter().any(says);
    if clause.denied && clause.compared == Some(Since::Better) {
        // `has not got any better`
        (clause.denied, clause.compared, clause.degree) = (false, Some(Since::Same), None);
    } else if clause.denied && less && clause.compared.is_none() {
        (clause.denied, clause.compared, clause.degree) = (false, Some(Since::Better), Some(Degree::Slight));
    }
    // `has not gone away`: it is still there
    clause.denied ^= clause.gone || was && !clause.denied;
    clause.wished |= ["could the ", "could my "].iter().any(|start| clause.text.starts_with(start));
    // what is wanted does not say what is there, nor does what is denied twice, nor what is tight and loose at once
    if clause.wished || clause.denials > 1 && !sign.fine || clause.torn {
        let Sign { at, face, when, one_side, .. } = *sign;
        (*sign, clause.bad, clause.denied) =
            (Sign { at, face, when, one_side, ..Sign::default() }, true, false);
    }
    // `nicely snug`, `comfortably loose`; but `not comfortably`
    if clause.praised {
        let Sign { at, face, when, one_side, .. } = *sign;
        *sign = Sign { at, face, when, one_side, fine: true, ..Sign::default() };
    }
    // `not so great`
    if sign.fine && clause.compared == Some(Since::Better) && (says("not") || says("less")) {
        (sign.fine, clause.bad) = (false, true);
    }
    // `smooth across the hip`: no lines
    if sign.fine && sign.lines == Some(Lines::Level) && sign.feel.is_none() && !clause.wrinkle {
        sign.lines = None;
    }
    if clause.big && !sign.fine && clause.sign_is_bare() {
        // a calf is huge as a body's; a seat or a waist as the cloth's
        match clause.sign.at {
            Some(Place::Thigh | Place::Calf | Place::Knee | Place::Abdomen | Place::Hip) => clause.bad = true,
            Some(_) if clause.says("my") => clause.bad = true,
            _ => clause.sign.feel = Some(Feel::Loose),
        }
    }
    let sign = &mut clause.sign;
    // `hangs clean`, `the fall is bad`; lines that come down from the hip do not hang
    let stems: Vec<String> = clause.text.split(' ').map(stem).collect();
    let hangs = stems.iter().any(|word| matches!(word.as_str(), "hang" | "fall"));
    let runs = (clause.wrinkle || sign.lines.is_some()) && stems.iter().any(|word| word == "come");
    let drops = sign.does == Some(Does::Drops) && sign.feel.is_none();
    if drops && (sign.fine || clause.bad && hangs || runs) {
        sign.does = None;
    }
    if sign.fine && (sign.feel.is_some() || sign.lines.is_some() || sign.does.is_some()) && !clause.denied {
        sign.fine = false;
    }
    // `fits lumpily`: a word that is not known may turn it round
    clause.bad |= sign.fine && !clause.denied && !clause.unknown.is_empty();
    if sign.fine && clause.bad {
        sign.fine = false;
    }
    if sign.fine && clause.denied {
        (sign.fine, clause.bad, clause.denied) = (false, true, false);
    } else if clause.bad
        && clause.denied
        && sign.feel.is_none()
        && sign.does.is_none()
        && sign.lines.is_none()
    {
        (sign.fine, clause.bad, clause.denied) = (true, false, false);
    }
    if clause.bad && (sign.feel.is_some() || sign.does.is_some() || sign.lines.is_some()) {
        clause.bad = false;
    }
}
