//! The lesson: a draft as a class would make it, from the measurements to the finished block. Every rule stands with
//! this body's numbers in it, what it draws with what was drawn before, and what it is for.

mod corrections;
mod edges;
mod finish;
mod inputs;
mod levels;
mod mark;
mod pencil;
mod reasons;
mod stage;
mod steps;
mod sums;
mod truing;

use kurbo::Affine;

pub use self::mark::marking_page;
pub(super) use self::reasons::of_role;
use self::stage::Stage;
use crate::{
    booklet::{Block, Booklet, Lettering},
    draft::{Draft, Shape},
    drawing::Wording,
    recipe::{PanelRules, Step},
    terms::Panel,
    told::Subject,
    unit::Unit,
};

/// The lesson on a draft.
pub fn lesson(subject: &Subject<'_>) -> Booklet {
    let class = Class::of(subject);
    let recipe = &subject.draft.recipe;
    let mut blocks = vec![
        Block::plain(subject.block().as_str()),
        Block::plain(
            "The construction step by step, as it is done with ruler and square on paper. Every rule \
             stands as the trade writes it, then with this body's numbers. In the pictures the new line is \
             strong; what was drawn before is faint.",
        ),
        Block::plain(match subject.unit {
            Unit::Cm => {
                "A millimetre is exact enough for a pencil: the hundredths are there so that sums can be followed. \
                 Where a sum needs it, a length stands in it with a third decimal: it is the same length, as it was \
                 before it was rounded."
            }
            Unit::Inch => {
                "Lengths are in inches, read as on a tape: to the nearest sixteenth, which is exact enough for a pencil. \
                 Where a length in a sum is no sixteenth it stands there with decimals of an inch; what the sum comes \
                 to is read on the tape again. A colon divides: 49 : 16 is a sixteenth of 49 in."
            }
        }),
    ];
    blocks.push(Block::remark(subject.how().as_str()));
    blocks.extend(class.inputs());
    blocks.extend(class.level_lines());
    let mut begun: Vec<Panel> = Vec::new();
    let ends = |panel: Panel| recipe.steps.iter().rposition(|step| step.entry().panel == panel);
    for (number, step) in recipe.steps.iter().enumerate() {
        let panel = step.entry().panel;
        if !begun.contains(&panel) {
            blocks.push(Block::chapter(&format!("The {panel}: its points")));
            blocks.push(Block::plain(reasons::of_panel(panel)));
            begun.push(panel);
        }
        blocks.extend(class.step(number, step));
        if ends(panel) == Some(number) {
            blocks.extend(class.edges(panel));
        }
    }
    blocks.extend(class.truing());
    blocks.extend(class.corrections());
    blocks.extend(class.finish());
    Booklet {
        name: subject.title("lesson"),
        description: Wording::paragraph(
            &subject.description("The construction step by step, drafted by breeks."),
        ),
        title: Wording::line(&format!("The {} block, constructed for {}", recipe.name, subject.name())),
        lettering: Lettering::READING,
        unit: subject.unit,
        blocks,
    }
}

/// What the lesson looks at: the draft, and the stages it went through.
struct Class<'a> {
    subject: &'a Subject<'a>,
    /// Trued, without fit parameters.
    plain: Draft,
    /// Before truing.
    joined: Shape,
}

impl<'a> Class<'a> {
    fn of(subject: &'a Subject<'a>) -> Self {
        Self { subject, plain: subject.draft.plain(), joined: subject.draft.joined() }
    }

    fn draft(&self) -> &'a Draft {
        self.subject.draft
    }

    fn unit(&self) -> Unit {
        self.subject.unit
    }

    /// The recipe's rules for a panel.
    fn rules(&self, panel: Panel) -> &'a PanelRules {
        let recipe = &self.draft().recipe;
        match panel {
            Panel::Front => &recipe.front,
            Panel::Back => recipe.back.as_ref().unwrap_or(&recipe.front),
        }
    }

    /// Where a panel's crease stands in the construction.
    fn crease(&self, panel: Panel) -> f64 {
        self.draft().plan.construction.points[self.rules(panel).crease.0].x
    }

    /// From a panel's own place to the construction's.
    fn to_construction(&self, panel: Panel) -> Affine {
        Affine::translate((self.crease(panel), 0.0))
    }

    /// A picture of the paper after so many steps.
    fn stage(&self, panel: Panel, steps_done: usize) -> Stage<'_> {
        Stage::new(self, panel, steps_done)
    }

    /// How many steps are done when a panel's edges are drawn.
    fn steps_before_edges(&self, panel: Panel) -> usize {
        let steps = &self.draft().recipe.steps;
        steps.iter().rposition(|step: &Step| step.entry().panel == panel).map_or(0, |last| last + 1)
    }
}
