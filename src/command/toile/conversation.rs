//! The questions on a terminal, and the test after them.

use std::io::Write;

use super::super::print;
use crate::{
    mistake::{Mistake, harmless_text},
    paper::choices,
    toile::{Answers, Judgement, QUESTIONS, Question, Seen, Sign},
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
    pub(super) fn questions(&mut self) -> Result<Option<Seen>, Mistake> {
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
        Ok((sign != Sign::default()).then(|| Seen { sign, other: None, words: sign.plain() }))
    }

    /// Asks for the result of the test that is next, where one is and the ranking is not clear yet.
    pub(super) fn test(&mut self, judgement: &Judgement) -> Result<Option<(String, String)>, Mistake> {
        let Some(next) = judgement.test.as_ref().filter(|_| !judgement.clear) else { return Ok(None) };
        let list: Vec<String> = next.test.results.iter().map(|it| it.says.clone()).collect();
        self.say(&choices(&next.test.ask, &list))?;
        let answer = self.answer(list.len())?;
        self.say("\n")?;
        Ok(answer.map(|at| (next.test.key.clone(), next.test.results[at].key.clone())))
    }
}
