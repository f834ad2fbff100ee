//! What a sheet of paper is about.

use crate::{
    draft::{Draft, PanelShape},
    drawing::Wording,
    fit::{Leg, Report, Verdict, known},
    mistake::Notice,
    terms::{Panel, Side, Word},
    unit::Unit,
    voice::{sentence, spoken},
};

/// A judged draft and the unit in which to print it.
#[derive(Clone, Copy, Debug)]
pub struct Subject<'a> {
    /// The draft.
    pub draft: &'a Draft,
    /// What was found about its fit.
    pub report: &'a Report,
    /// The unit of all printed lengths but the test squares.
    pub unit: Unit,
}

impl<'a> Subject<'a> {
    /// A leg as it was made.
    pub fn of(leg: &'a Leg, unit: Unit) -> Self {
        Self { draft: &leg.draft, report: &leg.report, unit }
    }

    /// The verdict on the draft.
    pub(crate) fn verdict(&self) -> Verdict {
        Verdict::on(self.draft, self.report)
    }

    /// What a person should know before cutting, the weightiest first: a sheet shows only so many.
    pub(crate) fn notices(&self) -> Vec<Notice> {
        let mut notices = known(self.draft, self.report);
        notices.sort_by_key(|notice| std::cmp::Reverse(notice.severity));
        notices
    }

    /// The same as sentences.
    pub(crate) fn notices_said(&self) -> Vec<String> {
        self.notices().iter().map(|notice| sentence(&notice.text(self.unit))).collect()
    }

    /// How long the crotch seam is, and against what.
    pub(crate) fn crotch_said(&self) -> String {
        let crotch = &self.report.crotch;
        let wanted = self.length(crotch.wanted);
        let total = self.length(crotch.total());
        let sewn = match self.draft.shape.front.cut_off {
            Some(_) => format!("Up to the measured waist {total}"),
            None => format!("Sewn {total}"),
        };
        match crotch.body {
            Some((_, from)) => format!("{sewn}; the body's length is {from}; wanted ease {wanted}."),
            None => format!("{sewn}; wanted ease {wanted}."),
        }
    }

    /// The panels, front first.
    pub(crate) fn panels(&self) -> [&'a PanelShape; 2] {
        [&self.draft.shape.front, &self.draft.shape.back]
    }

    /// A length with its unit.
    pub(crate) fn length(&self, cm: f64) -> String {
        self.unit.length(cm)
    }

    /// The label of the body, safe to show.
    pub(crate) fn name(&self) -> Wording {
        Wording::line(&self.draft.name)
    }

    /// The block with what it is.
    pub(crate) fn block(&self) -> Wording {
        let leg = match self.draft.side {
            Side::Both => "",
            Side::Left => "Left leg. ",
            Side::Right => "Right leg. ",
        };
        Wording::paragraph(&format!("{leg}Block {}. {}.", self.draft.recipe.name, self.draft.recipe.title))
    }

    /// How the draft was made, in one sentence.
    pub(crate) fn how(&self) -> Wording {
        let body = &self.draft.body;
        let sex = if body.sex == crate::terms::Sex::Unsaid { "sex unsaid" } else { body.sex.key() };
        let lowered = match self.draft.shape.front.cut_off {
            Some(cut) => format!(" The top is cut {} below the measured waist.", self.length(cut.drop)),
            None => String::new(),
        };
        Wording::paragraph(&format!(
            "Body: {sex}, waist level {}. Fit: {}. Lengths in {}. Panels are drawn to the sewing line.{lowered}",
            body.waist_level,
            self.draft.fit,
            match self.unit {
                Unit::Cm => "centimetres",
                Unit::Inch => "inches",
            },
        ))
    }

    /// What a viewer lists the sheet as. It begins with the name of this program, by which its files are known.
    pub(crate) fn title(&self, what: &str) -> Wording {
        Wording::line(&format!("breeks {what}: {} for {}", self.draft.recipe.name, self.draft.name))
    }

    /// What a reader who cannot see the sheet should know.
    pub(crate) fn description(&self, what: &str) -> String {
        let levels: Vec<String> = self
            .report
            .levels
            .iter()
            .map(|row| {
                format!(
                    "{}: body {}, pattern {}, ease {}",
                    row.level,
                    self.length(row.body),
                    self.length(row.pattern),
                    self.length(row.ease())
                )
            })
            .collect();
        let seams: Vec<String> = self
            .report
            .seams
            .iter()
            .map(|row| {
                format!(
                    "{} front {}, back {}",
                    spoken(row.seam.key()),
                    self.length(row.front),
                    self.length(row.back)
                )
            })
            .collect();
        format!(
            "{what} Front and back panel of the block {} for {}. {}. {}. Crotch seam {}.",
            self.draft.recipe.name,
            self.draft.name,
            levels.join("; "),
            seams.join("; "),
            self.length(self.report.crotch.total())
        )
    }
}

/// How a panel is called on paper: with its leg where the legs differ.
pub(crate) fn panel_name(panel: Panel, side: Side) -> &'static str {
    match (side, panel) {
        (Side::Both, Panel::Front) => "Front",
        (Side::Both, Panel::Back) => "Back",
        (Side::Left, Panel::Front) => "Left front",
        (Side::Left, Panel::Back) => "Left back",
        (Side::Right, Panel::Front) => "Right front",
        (Side::Right, Panel::Back) => "Right back",
    }
}
