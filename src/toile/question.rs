//! The questions for a person who has no words for what is seen: at most four, each a short list.

use super::sign::{Does, Face, Feel, Lines, Place, Sign, When};
use crate::terms::Word;

/// One question.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Question {
    /// Where.
    Where,
    /// On which face.
    Face,
    /// What it looks like.
    Look,
    /// When.
    When,
}

/// In the order in which they are asked.
pub const QUESTIONS: [Question; 4] = [Question::Where, Question::Face, Question::Look, Question::When];

/// What a sign looks like, as the third question lists it.
type Look = (&'static str, Option<Feel>, Option<Lines>, Option<Does>);

/// Every look in the order of the list.
const LOOKS: [Look; 28] = {
    use Does::{
        Backward, Binds, Bulges, Catches, Climbs, Cups, Cuts, Drops, Forward, Gapes, Inward, Outward, Slopes,
        TooHigh, TooLong, TooShort, Twists, WillNotPass,
    };
    use Feel::{Loose, Tight};
    use Lines::{Fan, Frown, Level, Slanting, Smile, Upright};
    [
        ("tight lines across", Some(Tight), Some(Level), None),
        ("tight lines at a slant", Some(Tight), Some(Slanting), None),
        ("tight lines up and down", Some(Tight), Some(Upright), None),
        ("tight lines like a fan", Some(Tight), Some(Fan), None),
        ("tight curved lines, ends up", Some(Tight), Some(Smile), None),
        ("tight, no clear lines", Some(Tight), None, None),
        ("loose folds across", Some(Loose), Some(Level), None),
        ("loose folds at a slant", Some(Loose), Some(Slanting), None),
        ("loose folds up and down", Some(Loose), Some(Upright), None),
        ("loose curved folds, ends down", Some(Loose), Some(Frown), None),
        ("a loose pouch", Some(Loose), None, Some(Bulges)),
        ("stands off or opens", None, None, Some(Gapes)),
        ("cuts in", Some(Tight), None, Some(Cuts)),
        ("climbs or is pulled up", None, None, Some(Climbs)),
        ("goes or hangs down", None, None, Some(Drops)),
        ("stands too high", None, None, Some(TooHigh)),
        ("swings forward", None, None, Some(Forward)),
        ("swings back", None, None, Some(Backward)),
        ("swings out", None, None, Some(Outward)),
        ("swings in", None, None, Some(Inward)),
        ("twists", None, None, Some(Twists)),
        ("will not pass the foot", Some(Tight), None, Some(WillNotPass)),
        ("slopes to one side", None, None, Some(Slopes)),
        ("catches or clings", None, None, Some(Catches)),
        ("cups in under the seat", Some(Tight), None, Some(Cups)),
        ("binds in moving", Some(Tight), None, Some(Binds)),
        ("is too short", None, None, Some(TooShort)),
        ("is too long", None, None, Some(TooLong)),
    ]
};

/// What was answered so far: the number of the answer to each question, counted from 0.
pub type Answers = [Option<usize>; 4];

impl Question {
    /// The question.
    pub fn ask(self) -> &'static str {
        match self {
            Self::Where => "Where is it seen?",
            Self::Face => "On which face?",
            Self::Look => "What does it look like?",
            Self::When => "When does it show?",
        }
    }

    /// Whether it is worth asking after these answers: some places have one face.
    pub fn is_open(self, answers: &Answers) -> bool {
        let place = answers[Self::Where as usize].and_then(|at| Place::ALL.get(at));
        self != Self::Face || place.is_none_or(|place| place.has_faces())
    }

    /// What may be answered.
    pub fn choices(self) -> Vec<String> {
        let spoken = |keys: &[&str]| keys.iter().map(|key| key.replace('_', " ")).collect();
        match self {
            Self::Where => spoken(Place::KEYS),
            Self::Face => ["front", "back", "inside", "outside", "all round"].map(str::to_owned).into(),
            Self::Look => LOOKS.iter().map(|(words, ..)| (*words).to_owned()).collect(),
            Self::When => {
                let mut choices: Vec<String> = spoken(When::KEYS);
                choices.push("standing, on one side of the body only".to_owned());
                choices
            }
        }
    }

    /// The sign that the answers make.
    pub fn sign(answers: &Answers) -> Sign {
        let of = |question: Self| answers[question as usize];
        let look = of(Self::Look).and_then(|at| LOOKS.get(at));
        let at = of(Self::Where).and_then(|at| Place::ALL.get(at)).copied();
        let own_face = match at {
            Some(Place::Seat | Place::UnderSeat) => Some(Face::Back),
            Some(Place::Abdomen | Place::Fly) => Some(Face::Front),
            _ => None,
        };
        Sign {
            at,
            face: own_face.or_else(|| of(Self::Face).and_then(|at| Face::ALL.get(at)).copied()),
            feel: look.and_then(|look| look.1),
            lines: look.and_then(|look| look.2),
            to: None,
            does: look.and_then(|look| look.3),
            when: match of(Self::When) {
                Some(at) if at == When::ALL.len() => Some(When::Standing),
                Some(at) => When::ALL.get(at).copied(),
                None => None,
            },
            one_side: of(Self::When) == Some(When::ALL.len()),
            fine: false,
        }
    }
}
