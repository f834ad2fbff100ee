//! A report in plain words becomes signs, denials and open questions. Each clause of a sentence is one sign; what it leaves
//! out is taken from the clause before.

use super::{
    clause::{Clause, Joint, sentences},
    lexicon::lexicon,
    open::{Asks, Open},
    record::Since,
    sign::{Degree, Does, Face, Feel, Lines, Place, Sign, When},
};
use crate::terms::{Side, Word};

/// A longer report is read to here, characters; nobody says more about one toile.
pub const LONGEST_REPORT: usize = 2000;

/// What was understood of a report.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Heard {
    /// The signs, in the order in which they were told.
    pub seen: Vec<Seen>,
    /// What has to be asked before it says anything.
    pub open: Vec<Open>,
    /// Results of tests that were told in passing: the test's key, the result's key, the words.
    pub tested: Vec<(String, String, String)>,
    /// A stance was told in which nobody should be fitted.
    pub stance: bool,
    /// The trousers were said to fit, all of them.
    pub fits: bool,
    /// Words that mean nothing here, with the nearest that do.
    pub unknown: Vec<(String, Option<String>)>,
    /// Words read as another, as a slip of the pen: as said, as read.
    pub slips: Vec<(String, String)>,
    /// It was longer than is read.
    pub cut: bool,
}

/// A sign with the words in which it was told.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Seen {
    /// The sign.
    pub sign: Sign,
    /// The same with a second place or face that was named: lines that run from one to the other belong to both.
    pub other: Option<Sign>,
    /// It was said not to be so.
    pub denied: bool,
    /// How much.
    pub degree: Option<Degree>,
    /// The side of the body that alone shows it.
    pub side: Option<Side>,
    /// How it is against the toile before.
    pub compared: Option<Since>,
    /// It speaks in the ranking, but nothing is changed for it before what is open is answered.
    pub waits: bool,
    /// The words.
    pub words: String,
}

impl Seen {
    /// A sign named by itself, not told in words.
    pub fn of(sign: Sign) -> Self {
        Self { words: sign.plain(), sign, ..Self::default() }
    }

    /// What was read, in plain words.
    pub fn plain(&self) -> String {
        let mut text = self.sign.plain();
        match (self.denied, self.sign.place()) {
            (true, Some(place)) if text.len() > place.len() => {
                let what = text[place.len()..].trim_start_matches(", ");
                text = format!("{place}: not {}", what.trim_start_matches("is "));
            }
            // lines of no direction are all that can be denied without a word for it
            (true, Some(place)) => text = format!("{place}: no lines"),
            (true, _) => text = format!("not {text}"),
            _ => {}
        }
        let elsewhere = |place: &String| self.sign.place().as_ref() != Some(place);
        if let Some(other) = self.other.and_then(|other| other.place()).filter(elsewhere) {
            text.push_str(&format!("; also {other}"));
        }
        match self.degree {
            Some(Degree::Slight) => text.push_str(", slightly"),
            Some(Degree::Strong) => text.push_str(", badly"),
            None => {}
        }
        match self.side {
            Some(side) if side != Side::Both => text.push_str(&format!(" ({side})")),
            _ => {}
        }
        text
    }

    /// Whether it says that something is there and is wrong.
    pub fn is_wrong(&self) -> bool {
        !self.denied && !self.sign.fine
    }

    fn read_on(&mut self, clause: &Clause) {
        self.words.push_str(if clause.joint == Joint::When { " " } else { ", " });
        self.words.push_str(&clause.text);
    }
}

/// Reads what was told in several pieces as one report.
pub fn read_all<'a>(texts: impl IntoIterator<Item = &'a String>) -> Heard {
    let mut report = Heard::default();
    let mut fits = false;
    for text in texts {
        let read = read(text);
        fits |= read.fits;
        report.seen.extend(read.seen);
        report.open.extend(read.open);
        report.tested.extend(read.tested);
        report.unknown.extend(read.unknown);
        report.slips.extend(read.slips);
        report.stance |= read.stance;
        report.cut |= read.cut;
    }
    report.fits = fits && report.nothing_wrong();
    report
}

/// Reads a report.
pub fn read(text: &str) -> Heard {
    let cut = text.chars().count() > LONGEST_REPORT;
    let text: String = text.chars().take(LONGEST_REPORT).collect();
    let mut reader = Reader { report: Heard { cut, ..Heard::default() }, before: None };
    for clauses in sentences(&text) {
        reader.sentence(&clauses);
    }
    let mut report = reader.report;
    report.fits = report.fits && report.nothing_wrong();
    if !report.says_something() && report.open.is_empty() && text.chars().any(char::is_alphanumeric) {
        report.open.push(Open {
            asks: Asks::What,
            sign: Sign::default(),
            denied: false,
            degree: None,
            side: None,
            unknown: report.unknown.clone(),
            words: text.split_whitespace().collect::<Vec<_>>().join(" "),
        });
    }
    report
}

impl Heard {
    /// Whether anything of it says what is wrong, what is not, or what was tested.
    pub fn says_something(&self) -> bool {
        self.stance || self.fits || !self.tested.is_empty() || !self.seen.is_empty()
    }

    /// Whether it says of something that it is wrong, so that a change may be advised for it.
    pub fn asks_for_change(&self) -> bool {
        self.stance || !self.tested.is_empty() || self.seen.iter().any(|seen| seen.is_wrong() && !seen.waits)
    }

    fn nothing_wrong(&self) -> bool {
        self.open.is_empty() && !self.seen.iter().any(Seen::is_wrong)
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

    fn name_unknown(&mut self, clause: &Clause) {
        for word in &clause.unknown {
            let near = lexicon().slip(word).map(str::to_owned);
            self.unknown.push((word.clone(), near));
        }
        self.slips.extend(clause.slips.iter().cloned());
    }
}

/// Where a place was told and nothing yet of it.
#[derive(Clone)]
struct Named {
    clause: Clause,
    /// It is one of a list that a word further on is said of.
    listed: bool,
}

struct Reader {
    report: Heard,
    /// The place of the sentence before, for `it` and `they`.
    before: Option<Sign>,
}

/// What one sentence has told so far.
#[derive(Default)]
struct Told {
    /// The last sign, with what it says.
    last: Option<(Sign, bool)>,
    named: Vec<Named>,
    when: Option<When>,
    /// The last sign was told to be there no longer.
    gone: bool,
    /// Something of it is so under a condition only: `fine when I pull them up`.
    on_condition: bool,
    /// The number of signs and of open questions before the sentence.
    began: (usize, usize),
}

impl Reader {
    fn sentence(&mut self, clauses: &[Clause]) {
        let mut told = Told {
            began: (self.report.seen.len(), self.report.open.len()),
            on_condition: clauses.iter().any(|clause| clause.joint == Joint::When),
            ..Told::default()
        };
        if clauses.first().is_some_and(|first| first.points_back) {
            told.last =
                self.before.map(|sign| (Sign { at: sign.at, face: sign.face, ..Sign::default() }, false));
        }
        let spoken_of = clauses.iter().any(Clause::has_place);
        for (at, clause) in clauses.iter().enumerate() {
            let crotch = clause.there && !spoken_of && told.last.is_none();
            let with_crotch = crotch.then(|| clause.clone()).map(|mut clause| {
                clause.sign.at = Some(Place::Crotch);
                clause
            });
            let clause = with_crotch.as_ref().unwrap_or(clause);
            self.report.name_unknown(clause);
            self.report.stance |= clause.stance;
            if let Some(result) = clause.result.map(|at| &lexicon().results[at]) {
                let (test, result) = (result.test.clone(), result.result.clone());
                self.report.tested.push((test, result, clause.text.clone()));
                if clause.has_place() && told.last.is_none() {
                    let Sign { at, face, .. } = clause.sign;
                    told.last = Some((Sign { at, face, ..Sign::default() }, false));
                }
            } else if clause.has_predicate() {
                told.gone = clause.gone && clause.denied;
                let list = clauses[at + 1..].iter().find(|next| next.joint != Joint::Comma);
                self.says(clause, list.is_some_and(|next| next.joint == Joint::Or), &mut told);
            } else {
                self.names(clause, clauses.get(at + 1), &mut told);
            }
        }
        self.left_over(&mut told);
        // what is said at large is answered by what is said at length beside it
        let said: Vec<Sign> = self.report.seen[told.began.0..]
            .iter()
            .filter(|seen| seen.is_wrong() && !seen.waits)
            .map(|seen| seen.sign)
            .collect();
        if !said.is_empty() {
            let began = told.began.1;
            let mut at = 0;
            self.report.open.retain(|open| {
                at += 1;
                let Sign { feel, lines, does, .. } = open.sign;
                let nowhere = open.sign.at.is_none() && open.sign.face.is_none();
                // `I can not get them up, it is tight at the crotch`
                let placed = feel.is_some()
                    && (lines, does) == (None, None)
                    && said.iter().any(|sign| sign.feel == feel);
                at <= began
                    || !nowhere && open.asks != Asks::What
                    || match open.asks {
                        Asks::What => open.sign.at.is_some(),
                        Asks::Where => !(nowhere && placed),
                        _ => true,
                    }
            });
        }
        self.before = told.last.map(|(sign, _)| sign).or(self.before);
    }

    /// A clause that only names a place, a face or a time.
    fn names(&mut self, clause: &Clause, next: Option<&Clause>, told: &mut Told) {
        let sign = &clause.sign;
        if clause.is_empty() && !clause.stance {
            match self.report.seen.get_mut(told.began.0..).and_then(<[Seen]>::last_mut) {
                // `it sags, but not half as much as before`
                Some(last) if clause.compared.is_some() && last.is_wrong() => {
                    last.compared = last.compared.or(clause.compared);
                    last.degree = last.degree.or(clause.degree);
                    last.read_on(clause);
                }
                // `used to gape and still do`
                Some(last) if told.gone && last.denied && clause.says("still") => {
                    last.denied = false;
                    last.read_on(clause);
                    told.last = Some((last.sign, false));
                }
                // `not too long in boots, only in socks`: there it is something
                Some(last) if last.denied && clause.corrects && clause.says("only") => {
                    let Sign { at, face, .. } = last.sign;
                    self.ask(clause, Sign { at, face, ..Sign::default() }, Asks::What, told);
                }
                _ => {}
            }
            return;
        }
        if clause.stance {
            return;
        }
        let only_when = sign.at.is_none() && sign.face.is_none() && !clause.bottom && !sign.one_side;
        if only_when {
            let began = told.began.0;
            match self.report.seen.get_mut(began..).and_then(<[Seen]>::last_mut) {
                // `but not when I stand`: what was said stands
                _ if clause.denied || sign.when.is_none() => {}
                // `not tight standing, only when I reach forward`, `it gapes except when I stand`
                Some(last)
                    if clause.corrects && (last.denied || clause.says("except") || clause.says("unless")) =>
                {
                    let (sign, denied) = (Sign { when: sign.when, ..last.sign }, !last.denied);
                    return self.put(clause, sign, denied, told);
                }
                Some(last) => {
                    last.sign.when = last.sign.when.or(sign.when);
                    last.read_on(clause);
                    if clause.compared.is_some() && last.compared.is_none() {
                        last.other = last.other.map(|other| Sign { when: last.sign.when, ..other });
                    }
                }
                None => told.when = sign.when,
            }
            if let Some(open) = self.report.open.get_mut(told.began.1..).and_then(<[Open]>::last_mut) {
                open.sign.when = open.sign.when.or(sign.when);
            }
            return;
        }
        let alone = Named { clause: clause.clone(), listed: false };
        let Some((last, last_denied)) = told.last.filter(|(sign, _)| sign.says_something()) else {
            // `the seat and the thighs are tight`, `neither the seat nor the thighs are tight`
            let joined = next.is_some_and(|next| {
                next.has_place()
                    && (matches!(next.joint, Joint::And | Joint::Or)
                        // `thighs, seat and calves are tight`
                        || next.joint == Joint::Comma && clause.has_place() && !next.has_predicate())
            });
            told.named.push(Named { listed: joined || clause.denied, ..alone });
            return;
        };
        let elsewhere = clause.has_place() && sign.at != last.at && !is_part_of(sign.at, last.at);
        let other_side = clause.sign.one_side
            && (clause.corrects
                || clause.side.zip(self.side_before(told)).is_some_and(|(here, there)| here != there));
        match clause.joint {
            // `the right leg does not twist, the left one does`; `the waist is tight, the hip is not`
            Joint::Comma | Joint::Break | Joint::And if clause.repeats => {
                self.put(clause, with_place(last, sign), clause.denied, told);
            }
            // `it is not the left hip, it is the right one`
            Joint::Comma | Joint::Break if last_denied && other_side && !clause.denied => {
                self.put(clause, with_place(last, sign), false, told);
            }
            // `no bagginess at the seat, but a bit at the knees`
            Joint::Break if last_denied && elsewhere && !clause.denied && clause.degree.is_some() => {
                self.put(clause, with_place(last, sign), false, told);
            }
            // `the calves are stuck, I peeled the legs off`: no list, for it has a verb, though not one that is known
            Joint::Comma if elsewhere && !clause.unknown.is_empty() && !clause.corrects => {
                told.named = vec![alone];
            }
            // `they fit well but the hem`
            Joint::Except | Joint::Break if last.fine && clause.has_place() && !clause.denied => {
                told.named = vec![alone];
            }
            // `nothing is tight but the crotch`
            Joint::Break
                if last_denied
                    && last.at.is_none()
                    && clause.has_place()
                    && clause.unknown.is_empty()
                    && !clause.denied =>
            {
                self.put(clause, with_place(last, sign), false, told);
            }
            // `no folds except at the knee`
            Joint::Except => self.put(clause, with_place(last, sign), !last_denied, told),
            // `not the length, it is the width at the thigh`: there it is something
            Joint::Comma | Joint::Break
                if last.fine && clause.corrects && clause.has_place() && !clause.denied =>
            {
                self.ask(clause, *sign, Asks::What, told);
            }
            // `gone from the back, but a few are still there in front`
            _ if told.gone && last_denied && !clause.denied && clause.says("still") => {
                self.put(clause, with_place(Sign { at: None, face: None, ..last }, sign), false, told);
            }
            // `the pull is gone from the seat but not from the thigh`
            _ if told.gone && clause.denied && (elsewhere || other_side) => {
                self.put(clause, with_place(last, sign), false, told);
            }
            // `it is the front that is too long, not the back`
            _ if clause.denied
                && !clause.has_place()
                && sign.face.zip(last.face).is_some_and(|(here, there)| here.is_opposite(there)) =>
            {
                self.put(clause, with_place(last, sign), true, told);
            }
            _ if clause.denied && clause.has_place() => self.put(clause, with_place(last, sign), true, told),
            Joint::Not | Joint::Break if clause.denied => {
                self.put(clause, with_place(last, sign), true, told)
            }
            // `the front is not tight, the back is`
            Joint::Comma | Joint::Break | Joint::And
                if last_denied
                    && !clause.has_place()
                    && sign.face.zip(last.face).is_some_and(|(here, there)| here.is_opposite(there)) =>
            {
                self.put(clause, with_place(last, sign), false, told);
            }
            Joint::And | Joint::Or if elsewhere => {
                self.put(clause, with_place(last, sign), last_denied && !clause.corrects, told);
            }
            // `a fold below the band, in the middle of the back`: where it was
            _ if last.at.is_none() || !elsewhere => self.place_last(clause, told),
            Joint::Comma if next.is_some_and(|next| next.has_predicate() && !next.has_place()) => {
                told.named = vec![alone];
            }
            Joint::Comma => {
                self.put(clause, with_place(last, sign), last_denied && !clause.corrects, told);
            }
            _ => told.named = vec![alone],
        }
    }

    /// The side that the last sign of the sentence is on.
    fn side_before(&self, told: &Told) -> Option<Side> {
        self.report.seen.get(told.began.0..).and_then(<[Seen]>::last).and_then(|seen| seen.side)
    }

    /// Gives the last sign the place that a clause names after it.
    fn place_last(&mut self, clause: &Clause, told: &mut Told) {
        let began = told.began;
        // a question where it is may be answered by the same words
        let open = self.report.open.get(began.1..).and_then(<[Open]>::last).cloned();
        if let Some(open) = open.filter(|open| {
            open.asks == Asks::Where && clause.sign.at.is_some()
                || open.asks == Asks::Leg && is_part_of(clause.sign.at, open.sign.at)
        }) {
            self.report.open.pop();
            let waits = |seen: &Seen| seen.waits && seen.words == open.words;
            self.report.seen.retain(|seen| !waits(seen));
            let mut whole = clause.clone();
            whole.text = format!("{} {}", open.words, clause.text);
            (whole.degree, whole.wrinkle) = (open.degree, open.sign.feel.is_none());
            whole.side = open.side.or(clause.side);
            let face = clause.sign.face.or(open.sign.face);
            let sign = Sign { face, ..with_place(open.sign, &clause.sign) };
            return self.put(&whole, sign, open.denied, told);
        }
        if let Some(last) = self.report.seen.get_mut(began.0..).and_then(<[Seen]>::last_mut) {
            match (last.sign.face, clause.sign.face) {
                // in front and behind: all round
                (Some(one), Some(other)) if one.is_opposite(other) && clause.joint == Joint::And => {
                    last.sign.face = None;
                }
                (None, face) => last.sign.face = face,
                _ => {}
            }
            last.sign.at = last.sign.at.or(clause.sign.at);
            last.sign.when = clause.sign.when.or(last.sign.when);
            last.sign.one_side |= clause.sign.one_side;
            last.side = last.side.or(clause.side);
            if clause.sign.at.is_some() {
                last.other = None;
            }
            last.read_on(clause);
            told.last = Some((last.sign, last.denied));
        }
    }

    /// A clause that says how the cloth is or what it does.
    fn says(&mut self, clause: &Clause, ends_in_or: bool, told: &mut Told) {
        let mut sign = clause.sign;
        // `seat seam tight, upright`: more of the same lines
        if clause.joint == Joint::Comma
            && sign == (Sign { lines: sign.lines, ..Sign::default() })
            && !clause.denied
            && let Some(last) = self.report.seen.get_mut(told.began.0..).and_then(<[Seen]>::last_mut)
            && last.is_wrong()
            && last.sign.lines.is_none()
        {
            last.sign.lines = sign.lines;
            last.read_on(clause);
            told.last = Some((last.sign, false));
            return;
        }
        // `snug but not tight`
        if clause.joint == Joint::Break
            && clause.denied
            && clause.sign == (Sign { feel: clause.sign.feel, ..Sign::default() })
            && let Some(last) = self.report.seen.get_mut(told.began.0..).and_then(<[Seen]>::last_mut)
            && last.is_wrong()
            && last.sign.feel.is_some()
            && last.sign.feel == clause.sign.feel
        {
            last.denied = true;
            last.read_on(clause);
            told.last = Some((last.sign, true));
            return;
        }
        // `snug but comfortable`: as it should be
        if clause.joint == Joint::Break
            && clause.sign == (Sign { fine: true, ..Sign::default() })
            && !(clause.denied || clause.rest || clause.whole || clause.compared.is_some())
            && told.named.is_empty()
            && let Some(last) = self.report.seen.get_mut(told.began.0..).and_then(<[Seen]>::last_mut)
            && last.is_wrong()
            && !last.waits
        {
            let Sign { at, face, when, one_side, .. } = last.sign;
            last.sign = Sign { at, face, when, one_side, fine: true, ..Sign::default() };
            last.read_on(clause);
            told.last = Some((last.sign, false));
            return;
        }
        // `the calf catches, and it wrinkles above`: the same strain
        if clause.wrinkle
            && clause.sign == Sign::default()
            && !clause.denied
            && !clause.strange_place
            && let Some(last) = self.report.seen.get_mut(told.began.0..).and_then(<[Seen]>::last_mut)
            && last.is_wrong()
            && last.sign.feel.is_some()
        {
            last.read_on(clause);
            return;
        }
        // `a ridge below the band, like a shelf`: drawn or slack is told a little later
        if clause.sign.feel.is_some()
            && !clause.has_place()
            && !clause.denied
            && let Some(open) = self.report.open.get(told.began.1..).and_then(<[Open]>::last).cloned()
            && open.asks == Asks::Feel
        {
            self.report.open.pop();
            self.report.seen.retain(|seen| !(seen.waits && seen.words == open.words));
            let mut whole = clause.clone();
            whole.text = format!("{}, {}", open.words, clause.text);
            whole.degree = open.degree;
            let told_now = clause.sign;
            let sign = Sign {
                feel: told_now.feel,
                lines: open.sign.lines.or(told_now.lines),
                does: open.sign.does.or(told_now.does),
                when: open.sign.when.or(told_now.when),
                ..open.sign
            };
            return self.put(&whole, sign, open.denied, told);
        }
        // `does not bind, bunch or pinch`
        let carried = told.last.is_some_and(|(_, denied)| denied)
            && (clause.joint == Joint::Or
                || (clause.joint == Joint::Comma && ends_in_or && !clause.has_place()));
        let denied = clause.denied || carried;
        let named = std::mem::take(&mut told.named);
        if !clause.has_place() && !clause.rest && !clause.strange_place {
            let context =
                named.last().map(|it| it.clause.sign).filter(|it| it.at.is_some() || it.face.is_some());
            // `the seat is tight, everything creeps up`: there
            let drawn =
                |last: &Sign| last.feel == Some(Feel::Tight) && clause.sign.does == Some(Does::Climbs);
            let last = told.last.map(|(sign, _)| sign).filter(|last| !clause.whole || drawn(last));
            // `the side seam swings, and it is tight at the back`: not at the side seam
            let elsewhere = |from: &Sign| {
                matches!(
                    (sign.face, from.at),
                    (Some(Face::Front | Face::Back), Some(Place::SideSeam | Place::Inseam | Place::Crease))
                        | (Some(Face::Front), Some(Place::Seat | Place::UnderSeat))
                        | (Some(Face::Back), Some(Place::Abdomen | Place::Fly))
                )
            };
            if let Some(from) = context.or(last).filter(|from| !elsewhere(from)) {
                sign.at = from.at;
                sign.face = sign.face.or(from.face);
            }
        } else if sign.at.is_some() && sign.face.is_none() {
            // `at the back, the thigh is loose`
            sign.face =
                named.last().filter(|it| it.clause.sign.at.is_none()).and_then(|it| it.clause.sign.face);
        }
        // `inner hem: a fold towards the shin`
        if let Some(from) =
            named.last().map(|it| it.clause.sign).filter(|it| clause.only_points && it.at.is_some())
        {
            (sign.to, sign.at, sign.face) = (sign.at, from.at, from.face);
        }
        sign.when = sign.when.or(told.when).or(named.last().and_then(|it| it.clause.sign.when));
        if clause.joint != Joint::Start && sign.when.is_none() && !clause.has_place() {
            sign.when = told.last.and_then(|(last, _)| last.when);
        }
        for it in &named {
            // each place of the list says the same
            let elsewhere = it.clause.has_place() && it.clause.sign.at != sign.at;
            if elsewhere && (it.listed || it.clause.denied) {
                let listed = with_place(sign, &it.clause.sign);
                let mut of_list = it.clause.clone();
                (of_list.bad, of_list.wrinkle) = (clause.bad, clause.wrinkle);
                self.put(&of_list, listed, denied || it.clause.denied, told);
            } else if elsewhere && it.clause.sign.one_side {
                // `the left hip is higher, so the band slopes`
                self.put(&it.clause, it.clause.sign, false, told);
            } else if it.clause.denied && !elsewhere && !sign.fine && !clause.corrects {
                let mut whole = clause.clone();
                whole.text = format!("{} {}", it.clause.text, clause.text);
                return self.put(&whole, sign, true, told);
            }
        }
        // `no folds or wrinkles at the seat`
        if matches!(clause.joint, Joint::Or | Joint::And) && clause.has_place() {
            let open = self.report.open.get(told.began.1..).and_then(<[Open]>::last).cloned();
            let alike = |open: &Open| {
                open.sign.does.is_none() && open.sign.face.is_none() && clause.sign.does.is_none()
            };
            if open
                .is_some_and(|open| open.asks == Asks::Where && (clause.joint == Joint::Or || alike(&open)))
            {
                self.place_last(clause, told);
            }
        }
        self.put(clause, sign, denied, told);
    }

    /// Places that were named and of which nothing was said.
    fn left_over(&mut self, told: &mut Told) {
        let named = std::mem::take(&mut told.named);
        let began = told.began;
        for Named { clause, .. } in named {
            let compared = clause.compared.is_some() && !clause.denied;
            let one_side = clause.sign.one_side && (clause.has_place() || clause.side.is_some());
            if one_side && clause.compared.is_some() && told.last.is_none() {
                // `one leg is worse`
                let sign = clause.sign;
                self.ask(&clause, sign, Asks::What, told);
            } else if one_side {
                // `on the left hip only`
                let sign = clause.sign;
                self.put(&Clause { wrinkle: false, ..clause }, sign, false, told);
            } else if (clause.has_place() || clause.sign.face.is_some()) && !compared {
                let told_of = self.report.seen.len() > began.0 || self.report.open.len() > began.1;
                if clause.has_place() || !told_of || clause.says("still") {
                    let sign = clause.sign;
                    self.ask(&clause, sign, Asks::What, told);
                }
            }
        }
    }

    fn ask(&mut self, clause: &Clause, sign: Sign, asks: Asks, told: &mut Told) {
        let near = |word: &String| (word.clone(), lexicon().slip(word).map(str::to_owned));
        self.report.open.push(Open {
            asks,
            sign,
            denied: clause.denied,
            degree: clause.degree,
            side: clause.side,
            unknown: clause.unknown.iter().map(near).collect(),
            words: clause.text.clone(),
        });
        told.last = Some((sign, clause.denied));
    }

    /// A sign in full, or the question that it leaves open.
    fn put(&mut self, clause: &Clause, mut sign: Sign, denied: bool, told: &mut Told) {
        complete(&mut sign, clause);
        if sign.fine && sign.at.is_none() && sign.face.is_none() {
            self.report.fits |= !(clause.rest
                || denied
                || told.on_condition
                || clause.sign.when.is_some()
                || clause.compared.is_some());
            told.last = Some((sign, denied));
            return;
        }
        // not right is wrong, and it is not said how
        if sign.fine && denied {
            sign.fine = false;
            let told_wrong = Clause { denied: false, ..clause.clone() };
            return self.ask(&told_wrong, sign, Asks::What, told);
        }
        if clause.bad && !denied && sign.feel.is_none() && sign.does.is_none() && sign.lines.is_none() {
            return self.ask(clause, sign, Asks::What, told);
        }
        let mut seen = Seen {
            sign,
            other: None,
            denied,
            degree: clause.degree,
            side: clause.side.filter(|_| sign.one_side),
            compared: clause.compared,
            waits: false,
            words: clause.text.clone(),
        };
        match clause.second {
            // in front and behind: all round
            (at, Some(face)) if sign.face.is_some_and(|first| first.is_opposite(face)) => {
                seen.sign.face = None;
                seen.other = at.map(|at| Sign { at: Some(at), ..seen.sign });
            }
            (None, None) => {}
            (at, face) => seen.other = Some(Sign { at: at.or(sign.at), face: face.or(sign.face), ..sign }),
        }
        seen.other = seen.other.filter(|other| *other != seen.sign);
        // what is denied need not be whole: it speaks against what it names
        if denied || sign.fine {
            told.last = Some((sign, denied));
            self.report.seen.push(seen);
            return;
        }
        let asks = asks(&sign, clause);
        if let Some(asks) = asks {
            self.ask(clause, sign, asks, told);
            if ranks(&sign, asks) {
                seen.waits = true;
                self.report.seen.push(seen);
            }
            return;
        }
        told.last = Some((seen.sign, denied));
        let began = told.began.0;
        match self.report.seen[began..].iter_mut().find(|said| said.is_wrong() && is_said_again(said, &seen))
        {
            Some(said) => {
                said.sign = Sign {
                    face: said.sign.face.or(sign.face),
                    lines: said.sign.lines.or(sign.lines),
                    does: said.sign.does.or(sign.does),
                    when: said.sign.when.or(sign.when),
                    feel: said.sign.feel.or(sign.feel),
                    ..said.sign
                };
                said.read_on(clause);
            }
            None => self.report.seen.push(seen),
        }
    }
}

/// Whether a place is a part of the legs, where only these were named.
fn is_part_of(place: Option<Place>, whole: Option<Place>) -> bool {
    whole == Some(Place::Legs) && matches!(place, Some(Place::Thigh | Place::Knee | Place::Calf | Place::Hem))
}

/// Whether a sentence says the same of the same place once more, perhaps with more of it.
fn is_said_again(said: &Seen, again: &Seen) -> bool {
    fn agree<T: PartialEq>(one: Option<T>, other: Option<T>) -> bool {
        one.zip(other).is_none_or(|(one, other)| one == other)
    }
    fn same<T: PartialEq>(one: Option<T>, other: Option<T>) -> bool {
        one.zip(other).is_some_and(|(one, other)| one == other)
    }
    let (one, other) = (&said.sign, &again.sign);
    (same(one.feel, other.feel) || same(one.does, other.does) || same(one.lines, other.lines))
        && one.at == other.at
        && agree(one.face, other.face)
        && agree(one.feel, other.feel)
        && agree(one.lines, other.lines)
        && agree(one.does, other.does)
        && agree(one.when, other.when)
        && one.to == other.to
        && one.one_side == other.one_side
        && !said.waits
}

/// What another clause said, at the place that this one names.
fn with_place(said: Sign, place: &Sign) -> Sign {
    Sign {
        at: place.at.or(said.at),
        face: if place.at.is_some() { place.face } else { place.face.or(said.face) },
        when: place.when.or(said.when),
        one_side: place.one_side || said.one_side,
        ..said
    }
}

/// What follows from place and word together.
fn complete(sign: &mut Sign, clause: &Clause) {
    use Does::{
        Binds, Bulges, Catches, Climbs, Cuts, Drops, TooHigh, TooLong, TooShort, Twists, WillNotPass,
    };
    use Place::{
        Abdomen, Calf, Crotch, Fly, Hem, Inseam, Knee, Legs, Seat, SideSeam, Thigh, UnderSeat, Waist,
    };
    if clause.bottom && sign.at.is_none() {
        match sign.does {
            Some(Climbs | TooLong | TooShort | Catches | WillNotPass) => sign.at = Some(Hem),
            Some(Drops) if sign.feel == Some(Feel::Loose) => {
                (sign.at, sign.face) = (Some(Seat), Some(Face::Back));
            }
            _ => {}
        }
    }
    // the centre of front or back, where it goes up, down or off, is the band's
    if clause.centre && matches!(sign.does, Some(Does::Gapes | Drops | TooHigh)) {
        sign.face = if sign.at == Some(Abdomen) { Some(Face::Front) } else { Some(Face::Back) };
        sign.at = Some(Waist);
    }
    // `a gap at the back`
    let faced = matches!(sign.face, Some(Face::Front | Face::Back));
    if sign.at.is_none() && sign.does == Some(Does::Gapes) && faced {
        sign.at = Some(Waist);
    }
    // what moves or holds, said of nothing in particular, is the leg
    // but front or back alone is not the leg, nor is `it` where nothing was named before
    let whole_leg = !faced && clause.text.split(' ').next() != Some("it");
    if sign.at.is_none() && !clause.bottom && whole_leg && matches!(sign.does, Some(Binds | Climbs | Twists))
    {
        sign.at = Some(Legs);
    }
    match (sign.at, sign.does) {
        (Some(Hem), Some(TooHigh)) => sign.does = Some(Climbs),
        // a hem that lies on the floor all round is that of a leg too long
        (Some(Hem), Some(Drops)) if sign.face.is_none() && !sign.one_side && sign.when.is_none() => {
            sign.does = Some(TooLong);
            // it drags on the floor, and is not drawn
            sign.feel = None;
        }
        // `hangs to the knees` says how far, not where lines run
        (Some(Crotch), Some(Drops)) => {
            sign.feel = sign.feel.or(Some(Feel::Loose));
            sign.to = sign.to.filter(|_| sign.lines.is_some());
        }
        (Some(Calf | Knee), Some(Climbs)) => (sign.at, sign.face) = (Some(Hem), None),
        (Some(Waist), Some(TooHigh)) if sign.one_side => sign.does = Some(Does::Slopes),
        (Some(Place::Hip), Some(TooHigh)) if sign.one_side => sign.does = None,
        (Some(Fly | Abdomen), Some(Does::Gapes)) if sign.feel == Some(Feel::Loose) => {
            sign.does = Some(Bulges);
        }
        (Some(Crotch), Some(TooHigh)) => (sign.feel, sign.does) = (Some(Feel::Tight), Some(Cuts)),
        (Some(Fly | Abdomen), Some(TooLong | TooShort)) => {
            (sign.at, sign.face) = (Some(Crotch), Some(Face::Front));
        }
        (Some(Seat | UnderSeat), Some(TooLong | TooShort)) => {
            (sign.at, sign.face) = (Some(Crotch), Some(Face::Back));
        }
        (None, Some(TooLong | TooShort)) if matches!(sign.face, Some(Face::Front | Face::Back)) => {
            sign.at = Some(Crotch);
        }
        (Some(Inseam | SideSeam | Calf), Some(TooLong | TooShort)) => {
            (sign.at, sign.face) = (Some(Legs), None)
        }
        _ => {}
    }
    if sign.does == Some(TooShort) && sign.at == Some(Crotch) {
        sign.feel = sign.feel.or(Some(Feel::Tight));
    }
    if sign.does == Some(TooLong) && sign.at == Some(Crotch) {
        sign.feel = Some(Feel::Loose);
    }
    match (sign.at, sign.does) {
        (_, Some(Bulges)) => sign.feel = sign.feel.or(Some(Feel::Loose)),
        (Some(Calf), Some(Catches)) => sign.feel = sign.feel.or(Some(Feel::Tight)),
        _ => {}
    }
    // what cuts or holds is tight, whether it is said or not
    if matches!(sign.does, Some(Cuts | Binds)) {
        sign.feel = Some(Feel::Tight);
    }
    if sign.lines == Some(Lines::Smile) {
        sign.feel = sign.feel.or(Some(Feel::Tight));
    }
    // what slides down behind is the band, what sags there is the seat
    if (sign.at, sign.face, sign.feel, sign.does) == (None, Some(Face::Back), Some(Feel::Loose), Some(Drops))
    {
        sign.at = Some(Seat);
    }
    // wrinkles there are nearly always slack: common practice, no source
    let slack =
        matches!((sign.at, sign.face), (Some(UnderSeat), _) | (Some(Thigh | Knee | Legs), Some(Face::Back)))
            || (sign.at, sign.face, sign.lines) == (Some(Waist), Some(Face::Back), Some(Lines::Level));
    if (clause.wrinkle || sign.lines.is_some()) && slack && sign.to.is_none() {
        sign.feel = sign.feel.or(Some(Feel::Loose));
    }
}

/// What a sign leaves open, if anything.
fn asks(sign: &Sign, clause: &Clause) -> Option<Asks> {
    use Place::{Knee, Legs, Thigh};
    let how = sign.feel.is_some() || sign.does.is_some();
    match sign.at {
        None if clause.bottom => Some(Asks::Bottom),
        None if sign.one_side && !how && sign.lines.is_none() => None,
        None => Some(Asks::Where),
        Some(Legs) if sign.does.is_none() && sign.lines.is_none() && sign.feel.is_some() => Some(Asks::Leg),
        Some(Thigh | Knee) if matches!(sign.does, Some(Does::TooLong | Does::TooShort)) => Some(Asks::Leg),
        // only what lies level can slope
        Some(
            Place::Thigh
            | Place::Knee
            | Place::Calf
            | Place::Legs
            | Place::Seat
            | Place::UnderSeat
            | Place::Crotch,
        ) if sign.does == Some(Does::Slopes) && sign.feel.is_none() => Some(Asks::What),
        Some(_) if how => None,
        Some(_) if sign.one_side && sign.lines.is_none() && !clause.wrinkle => None,
        Some(_) if sign.lines.is_some() || clause.wrinkle => Some(Asks::Feel),
        Some(_) => Some(Asks::What),
    }
}

/// Whether a sign that leaves something open says enough to speak in the ranking.
fn ranks(sign: &Sign, asks: Asks) -> bool {
    match asks {
        Asks::Feel => sign.lines.is_some(),
        Asks::Where => sign.face.is_some() && (sign.feel.is_some() || sign.does.is_some()),
        Asks::What | Asks::Leg | Asks::Bottom => false,
    }
}
