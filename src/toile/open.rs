//! What a report leaves open, as a question with its possible answers.

use super::{
    clause::sentences,
    said::{Heard, Seen, read},
    sign::{Degree, Does, Face, Feel, Place, Sign},
};
use crate::terms::Side;

/// What has to be known before a sign says anything.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Asks {
    /// Where it is.
    Where,
    /// Where on the leg.
    Leg,
    /// What is wrong there.
    What,
    /// Drawn or slack.
    Feel,
    /// Seat or hem.
    Bottom,
}

/// Words that say something, but not enough.
#[derive(Clone, Debug, PartialEq)]
pub struct Open {
    /// What is asked.
    pub asks: Asks,
    /// What was understood.
    pub sign: Sign,
    /// It was said not to be so.
    pub denied: bool,
    /// How much.
    pub degree: Option<Degree>,
    /// The side of the body that alone shows it.
    pub side: Option<Side>,
    /// Words that mean nothing here, with the nearest that do.
    pub unknown: Vec<(String, Option<String>)>,
    /// The words.
    pub words: String,
}

impl Open {
    /// The question, after the words that it is about.
    pub fn question(&self) -> String {
        let place = self.sign.place().unwrap_or_else(|| "there".to_owned());
        match self.asks {
            Asks::Where
                if self.sign.does == Some(Does::TooLong) || self.sign.does == Some(Does::TooShort) =>
            {
                "which length?".to_owned()
            }
            Asks::Where => "where?".to_owned(),
            Asks::Leg => "where on the leg?".to_owned(),
            Asks::What if place == "there" => "what is wrong, and where?".to_owned(),
            Asks::What => format!("what is wrong at the {place}?"),
            Asks::Feel => "are these lines drawn tight, or slack folds?".to_owned(),
            Asks::Bottom => "the seat, or the hem?".to_owned(),
        }
    }

    /// What may be answered; each may also be said in other words.
    pub fn answers(&self) -> &'static [&'static str] {
        match self.asks {
            Asks::Where
                if self.sign.does == Some(Does::TooLong) || self.sign.does == Some(Does::TooShort) =>
            {
                &["hem", "crotch", "front crotch", "back crotch"]
            }
            Asks::Where if self.sign.face == Some(Face::Front) => {
                &["front waist", "belly", "front crotch", "front thigh", "front of the knee"]
            }
            Asks::Where if self.sign.face == Some(Face::Back) => {
                &["back waist", "seat", "under the seat", "back crotch", "back thigh", "calf"]
            }
            Asks::Where if matches!(self.sign.does, Some(Does::Drops | Does::TooHigh)) => {
                &["waist", "front waist", "back waist", "crotch", "hem"]
            }
            Asks::Where => &[
                "waist",
                "belly",
                "hip",
                "seat",
                "under the seat",
                "crotch",
                "front thigh",
                "back thigh",
                "inner thigh",
                "knee",
                "calf",
                "hem",
            ],
            Asks::Leg => &["thigh", "front thigh", "back thigh", "inner thigh", "knee", "calf", "hem"],
            Asks::What if self.sign.at.is_none() && self.sign.face.is_none() => &[
                "tight at the front of the thigh",
                "loose under the seat",
                "cuts in at the crotch",
                "gapes at the back waist",
                "fits",
            ],
            Asks::What => &["tight", "loose", "gapes", "cuts in", "too long", "too short", "fine"],
            Asks::Feel => &["tight", "loose"],
            Asks::Bottom => &["seat", "hem"],
        }
    }
}

/// The answer that leaves a question out.
pub const NO_ANSWER: &str = "none";

impl Heard {
    /// The report with a question answered, and the others in their order; `Err` with what was still missing.
    ///
    /// # Errors
    /// When the answer leaves the question open, or there is no such question.
    pub fn answered(&self, number: usize, answer: &str) -> Result<Self, String> {
        let Some(open) = number.checked_sub(1).and_then(|at| self.open.get(at)) else {
            return Err(match self.open.len() {
                0 => "no question is open".to_owned(),
                1 => "there is one question only".to_owned(),
                count => format!("there are {count} questions"),
            });
        };
        let mut report = self.clone();
        report.open.remove(number - 1);
        report.seen.retain(|seen| !(seen.waits && seen.words == open.words));
        if answer.trim().eq_ignore_ascii_case(NO_ANSWER) {
            return Ok(report);
        }
        let told = sentences(answer);
        let Some(clause) = told.first().and_then(|clauses| clauses.first()) else {
            return Err(open.question());
        };
        let mut sign = open.sign;
        let more = clause.sign;
        if more.at.is_some() {
            (sign.at, sign.face) = (more.at, more.face.or(sign.face.filter(|_| open.asks == Asks::Where)));
        }
        if open.asks != Asks::Where && open.asks != Asks::Leg {
            sign.face = sign.face.or(more.face);
        }
        sign.feel = sign.feel.or(more.feel);
        sign.lines = sign.lines.or(more.lines);
        sign.does = sign.does.or(more.does);
        sign.when = sign.when.or(more.when);
        sign.fine |= more.fine;
        if matches!(sign.does, Some(Does::Cuts | Does::Binds)) {
            sign.feel = Some(Feel::Tight);
        }
        if sign.fine && open.asks == Asks::What && sign.at.is_none() {
            return Ok(report);
        }
        let whole = sign.at.is_some() && (sign.feel.is_some() || sign.does.is_some() || sign.fine);
        let leg_named = open.asks != Asks::Leg || sign.at != Some(Place::Legs);
        if !whole || !leg_named {
            return Err(open.question());
        }
        // the length of a place reads as it would have been told
        if let (Some(Does::TooLong | Does::TooShort), Some(place)) = (sign.does, sign.place()) {
            let long = if sign.does == Some(Does::TooLong) { "long" } else { "short" };
            if let Some(seen) = read(&format!("the {place} is too {long}")).seen.first() {
                sign = Sign { when: sign.when, ..seen.sign };
            }
        }
        report.seen.push(Seen {
            sign,
            denied: open.denied || clause.denied,
            degree: open.degree,
            side: open.side,
            words: format!("{} ({})", open.words, answer.trim()),
            ..Seen::default()
        });
        Ok(report)
    }
}
