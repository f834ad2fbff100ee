//! The questions on a terminal, and the test after them.

use std::io::Write;

use super::super::print;
use crate::{
    drawing::Wording,
    mistake::{Mistake, harmless_text},
    terms::{HowMuch, Word},
    toile::{Answers, Glance, Heard, Judgement, NO_ANSWER, QUESTIONS, Question, Sign, spoken},
    told::choices,
    unit::Unit,
};

/// A conversation on a terminal.
pub(super) struct Talk {
    lines: std::io::Lines<std::io::StdinLock<'static>>,
    /// Only JSON goes to standard output then.
    quiet: bool,
}

impl Talk {
    pub(super) fn new(quiet: bool) -> Self {
        Self { lines: std::io::stdin().lines(), quiet }
    }

    fn say(&self, text: &str) -> Result<(), Mistake> {
        if self.quiet {
            // A closed terminal leaves nothing to do about it.
            let _ = write!(std::io::stderr(), "{}", harmless_text(text));
            return Ok(());
        }
        print(text)
    }

    /// The number of a choice, from 0; `None` for an empty answer or the end of what is typed.
    fn answer(&mut self, count: usize) -> Result<Option<usize>, Mistake> {
        loop {
            let Some(line) = self.lines.next() else { return Ok(None) };
            let line = line.map_err(|error| Mistake::new(format!("cannot read the answer: {error}")))?;
            if line.trim().is_empty() {
                return Ok(None);
            }
            match line.trim().parse::<usize>() {
                Ok(number) if (1..=count).contains(&number) => return Ok(Some(number - 1)),
                _ => self.say(&format!("a number from 1 to {count}, or nothing to pass over: "))?,
            }
        }
    }

    /// The questions; what was answered as a sign.
    pub(super) fn questions(&mut self) -> Result<Option<Sign>, Mistake> {
        let mut answers: Answers = [None; 4];
        self.say("Answer with a number; nothing passes a question over.\n")?;
        for question in QUESTIONS {
            if !question.is_open(&answers) {
                continue;
            }
            let list = question.choices();
            self.say(&choices(question.ask(), &list))?;
            answers[question as usize] = self.answer(list.len())?;
        }
        self.say("\n")?;
        let sign = Question::sign(&answers);
        Ok((sign != Sign::default()).then_some(sign))
    }

    /// Asks the first question that the words left open; the answer as words, none where it is passed over.
    pub(super) fn open(&mut self, report: &Heard) -> Result<Option<String>, Mistake> {
        let Some(open) = report.open.first() else { return Ok(None) };
        let list: Vec<String> = open.answers().iter().map(|answer| (*answer).to_owned()).collect();
        self.say(&choices(&format!("\"{}\": {}", Wording::line(&open.words), open.question()), &list))?;
        Ok(match self.answer(list.len())? {
            Some(at) => Some(list[at].clone()),
            None if report.open.len() > 1 => Some(NO_ANSWER.to_owned()),
            None => None,
        })
    }

    /// One look in the mirror.
    pub(super) fn glance(&mut self, glance: &Glance) -> Result<Option<HowMuch>, Mistake> {
        let list: Vec<String> = glance.looks.iter().map(|looks| (*looks).to_owned()).collect();
        self.say(&choices(glance.ask, &list))?;
        Ok(self.answer(list.len())?.map(|at| HowMuch::ALL[at]))
    }

    /// Asks for the result of the test that is next, where one is and the ranking is not clear yet.
    pub(super) fn test(
        &mut self,
        judgement: &Judgement,
        unit: Unit,
    ) -> Result<Option<(String, String)>, Mistake> {
        let Some(next) = judgement.test.as_ref().filter(|_| !judgement.clear) else { return Ok(None) };
        let list: Vec<String> = next.test.results.iter().map(|it| spoken(&it.says, unit)).collect();
        self.say(&choices(&spoken(&next.test.ask, unit), &list))?;
        let answer = self.answer(list.len())?;
        self.say("\n")?;
        Ok(answer.map(|at| (next.test.key.clone(), next.test.results[at].key.clone())))
    }
}
