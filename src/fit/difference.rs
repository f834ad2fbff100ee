//! What two drafts differ in when one is laid over the other like tracing paper.

use kurbo::{ParamCurve as _, ParamCurveNearest as _, Point, Vec2};

use super::{CrotchBudget, LevelRow, Report, SeamRow, Verdict, known};
use crate::{
    adjust::{Key, Measure},
    curve::Chain,
    draft::{Draft, PanelShape},
    mistake::Notice,
    terms::{Anchor, Edge, Level, Panel, Role, Seam, Side, Word},
};

/// A draft that is compared.
#[derive(Clone, Copy, Debug)]
pub struct Overlaid<'a> {
    /// What it is, in the words of whoever asks: a file's name and what was changed for it.
    pub said: &'a str,
    /// The draft.
    pub draft: &'a Draft,
    /// What was found about its fit.
    pub report: &'a Report,
}

impl Overlaid<'_> {
    /// The verdict on it.
    pub fn verdict(&self) -> Verdict {
        Verdict::on(self.draft, self.report)
    }

    /// What a person should know of it.
    pub fn notices(&self) -> Vec<Notice> {
        known(self.draft, self.report)
    }
}

/// Two drafts of one leg, laid over each other.
#[derive(Clone, Debug)]
pub struct Laid<'a> {
    /// The one below.
    pub old: Overlaid<'a>,
    /// The one above.
    pub new: Overlaid<'a>,
    /// What differs.
    pub difference: Difference,
}

impl<'a> Laid<'a> {
    /// Lays `new` over `old`.
    pub fn over(old: Overlaid<'a>, new: Overlaid<'a>, anchor: Anchor) -> Self {
        Self { old, new, difference: Difference::between(&old, &new, anchor) }
    }
}

/// A number of two drafts; `None` where a draft has no such thing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Change {
    /// In the old draft.
    pub old: Option<f64>,
    /// In the new draft.
    pub new: Option<f64>,
}

/// What differs by less is the same line under the pencil, cm or degrees.
const SEEN: f64 = 0.005;

impl Change {
    fn of(old: f64, new: f64) -> Self {
        Self { old: Some(old), new: Some(new) }
    }

    /// New minus old, where both drafts have it.
    pub fn by(&self) -> Option<f64> {
        Some(self.new? - self.old?)
    }

    /// The two differ by more than a pencil line.
    pub fn is_seen(&self) -> bool {
        match self.by() {
            Some(by) => by.abs() >= SEEN,
            None => self.old.is_some() != self.new.is_some(),
        }
    }
}

/// A fit parameter that is not the same in both, in cm or degrees as its table says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ParameterChange {
    /// Which.
    pub key: Key,
    /// Its values.
    pub value: Change,
}

/// A role point that moved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PointChange {
    /// The panel.
    pub panel: Panel,
    /// The point.
    pub role: Role,
    /// Where it was, from the crease and the line on which the drafts are laid over each other, cm.
    pub old: Point,
    /// Where it is, from the same lines, cm.
    pub new: Point,
}

impl PointChange {
    /// How far it moved: towards the side seam and down, cm.
    pub fn by(&self) -> Vec2 {
        self.new - self.old
    }
}

/// An edge that is not as long, or does not run where it ran.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EdgeChange {
    /// The panel.
    pub panel: Panel,
    /// The edge.
    pub edge: Edge,
    /// Its length, cm; of the waist with its darts closed.
    pub length: Change,
    /// The farthest that one of the two lines lies from the other, cm.
    pub apart: f64,
}

/// A seam of which a side became longer or shorter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SeamChange {
    /// The seam.
    pub seam: Seam,
    /// Its length on the front, cm.
    pub front: Change,
    /// Its length on the back, cm.
    pub back: Change,
    /// By how much the back is longer, cm.
    pub difference: Change,
}

/// A level that lies elsewhere, or a girth that changed there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LevelChange {
    /// The level.
    pub level: Level,
    /// How far below the waist line it lies, cm.
    pub depth: Change,
    /// The body's girth, cm.
    pub body: Change,
    /// The pattern's girth, cm.
    pub pattern: Change,
    /// Pattern minus body, cm.
    pub ease: Change,
}

/// The crotch seam where any of its numbers changed.
#[derive(Clone, Debug, PartialEq)]
pub struct CrotchChange {
    /// Front crotch seam, cm.
    pub front: Change,
    /// Back crotch seam, cm.
    pub back: Change,
    /// Both together, cm.
    pub total: Change,
    /// The body's total crotch length, cm.
    pub body: Change,
    /// Pattern minus body, cm.
    pub ease: Change,
    /// What each parameter gives, where that changed; nothing where it is not set.
    pub by_parameter: Vec<ShareChange>,
}

/// What one fit parameter gives to the crotch seam.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShareChange {
    /// The parameter; `None` for what the parameters give only together.
    pub key: Option<Key>,
    /// On the front, cm.
    pub front: Change,
    /// On the back, cm.
    pub back: Change,
}

/// A dart that came, went, moved, or takes in more or less.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DartChange {
    /// The panel.
    pub panel: Panel,
    /// Counted from the centre, from 1.
    pub number: usize,
    /// How wide it stands open at the waist, cm.
    pub intake: Change,
    /// The length of a leg, cm.
    pub length: Change,
    /// Where it ended, from the crease and the line on which the drafts are laid over each other, cm.
    pub old_end: Option<Point>,
    /// Where it ends, from the same lines, cm.
    pub new_end: Option<Point>,
}

impl DartChange {
    /// How far its end moved: towards the side seam and down, cm.
    pub fn end_by(&self) -> Option<Vec2> {
        Some(self.new_end? - self.old_end?)
    }

    fn is_seen(&self) -> bool {
        self.intake.is_seen() || self.length.is_seen() || self.end_by().is_some_and(|by| by.hypot() >= SEEN)
    }
}

/// All that differs between two drafts that are laid over each other by the crease and a level line.
#[derive(Clone, Debug, PartialEq)]
pub struct Difference {
    /// The level line.
    pub anchor: Anchor,
    /// Which leg, where either draft has legs that differ.
    pub side: Side,
    /// Fit parameters, in the order of their table.
    pub parameters: Vec<ParameterChange>,
    /// Role points.
    pub points: Vec<PointChange>,
    /// Edges.
    pub edges: Vec<EdgeChange>,
    /// Seams.
    pub seams: Vec<SeamChange>,
    /// Levels, from the waist down.
    pub levels: Vec<LevelChange>,
    /// The crotch seam; `None` where nothing of it changed.
    pub crotch: Option<CrotchChange>,
    /// Darts, from the centre to the side.
    pub darts: Vec<DartChange>,
    /// The verdict on the old and on the new draft.
    pub verdict: [Verdict; 2],
}

impl Difference {
    /// Lays `new` over `old`.
    pub fn between(old: &Overlaid<'_>, new: &Overlaid<'_>, anchor: Anchor) -> Self {
        let lay = |draft: &Draft| Vec2::new(0.0, draft.shape.levels[anchor.level()]);
        let (old_lay, new_lay) = (lay(old.draft), lay(new.draft));
        let pairs =
            || Panel::ALL.iter().map(|panel| (old.draft.shape.panel(*panel), new.draft.shape.panel(*panel)));
        Self {
            anchor,
            side: if new.draft.side == Side::Both { old.draft.side } else { new.draft.side },
            parameters: parameters(old.draft, new.draft),
            points: pairs().flat_map(|(was, is)| points(was, is, old_lay, new_lay)).collect(),
            edges: pairs().flat_map(|(was, is)| edges(was, is, old_lay, new_lay)).collect(),
            seams: seams(old.report, new.report),
            levels: levels(old, new),
            crotch: crotch(&old.report.crotch, &new.report.crotch),
            verdict: [old, new].map(Overlaid::verdict),
            darts: pairs().flat_map(|(was, is)| darts(was, is, old_lay, new_lay)).collect(),
        }
    }

    /// Nothing that a pencil could draw or a tape could tell differs, nor the verdict.
    pub fn is_none(&self) -> bool {
        self.parameters.is_empty()
            && self.points.is_empty()
            && self.edges.is_empty()
            && self.seams.is_empty()
            && self.levels.is_empty()
            && self.crotch.is_none()
            && self.darts.is_empty()
            && self.verdict[0] == self.verdict[1]
    }
}

fn parameters(old: &Draft, new: &Draft) -> Vec<ParameterChange> {
    let change = |key: &Key| Change::of(old.parameters[*key], new.parameters[*key]);
    let rows = Key::ALL.iter().map(|key| ParameterChange { key: *key, value: change(key) });
    rows.filter(|row| row.value.is_seen()).collect()
}

fn points(was: &PanelShape, is: &PanelShape, old_lay: Vec2, new_lay: Vec2) -> Vec<PointChange> {
    let row = |role: &Role| PointChange {
        panel: is.panel,
        role: *role,
        old: was.roles[*role] - old_lay,
        new: is.roles[*role] - new_lay,
    };
    Role::ALL.iter().map(row).filter(|row| row.by().hypot() >= SEEN).collect()
}

fn edges(was: &PanelShape, is: &PanelShape, old_lay: Vec2, new_lay: Vec2) -> Vec<EdgeChange> {
    let row = |edge: &Edge| EdgeChange {
        panel: is.panel,
        edge: *edge,
        length: Change::of(was.sewn_length(*edge), is.sewn_length(*edge)),
        apart: apart((was.edge(*edge), old_lay), (is.edge(*edge), new_lay)),
    };
    Edge::ALL.iter().map(row).filter(|row| row.length.is_seen() || row.apart >= SEEN).collect()
}

/// The farthest that any place of one line lies from the other, cm.
fn apart(one: (&Chain, Vec2), other: (&Chain, Vec2)) -> f64 {
    /// Places looked at on each cubic of a line.
    const PLACES: u32 = 16;
    /// Of the nearest place, cm: far below what is seen.
    const EXACT: f64 = 1e-4;
    let from = |(line, lay): (&Chain, Vec2), (other, other_lay): (&Chain, Vec2)| {
        let nearest = |at: Point| {
            let distances = other.cubics().iter().map(|cubic| cubic.nearest(at, EXACT).distance_sq);
            distances.fold(f64::INFINITY, f64::min)
        };
        let places = line.cubics().iter().flat_map(|cubic| {
            (0..=PLACES).map(|place| cubic.eval(f64::from(place) / f64::from(PLACES)) - lay + other_lay)
        });
        places.map(nearest).fold(0.0, f64::max).sqrt()
    };
    f64::max(from(one, other), from(other, one))
}

fn seams(old: &Report, new: &Report) -> Vec<SeamChange> {
    let row = |seam: Seam| {
        let [was, is] = [old, new].map(|report| report.seams.iter().find(|row| row.seam == seam).copied());
        let change = |of: fn(&SeamRow) -> f64| Change { old: was.as_ref().map(of), new: is.as_ref().map(of) };
        SeamChange {
            seam,
            front: change(|row| row.front),
            back: change(|row| row.back),
            difference: change(SeamRow::difference),
        }
    };
    let rows = Seam::ALL.iter().map(|seam| row(*seam));
    rows.filter(|row| row.front.is_seen() || row.back.is_seen() || row.difference.is_seen()).collect()
}

fn levels(old: &Overlaid<'_>, new: &Overlaid<'_>) -> Vec<LevelChange> {
    let row = |level: Level| {
        let [was, is] =
            [old, new].map(|one| one.report.levels.iter().find(|row| row.level == level).copied());
        let change =
            |of: fn(&LevelRow) -> f64| Change { old: was.as_ref().map(of), new: is.as_ref().map(of) };
        LevelChange {
            level,
            depth: Change::of(old.draft.shape.levels[level], new.draft.shape.levels[level]),
            body: change(|row| row.body),
            pattern: change(|row| row.pattern),
            ease: change(LevelRow::ease),
        }
    };
    let seen = |row: &LevelChange| [row.depth, row.body, row.pattern, row.ease].iter().any(Change::is_seen);
    Level::ALL.iter().map(|level| row(*level)).filter(seen).collect()
}

fn crotch(old: &CrotchBudget, new: &CrotchBudget) -> Option<CrotchChange> {
    let change = |of: fn(&CrotchBudget) -> Option<f64>| Change { old: of(old), new: of(new) };
    let share = |budget: &CrotchBudget, key: Option<Key>| {
        let row = budget.by_parameter.iter().find(|row| row.key == key);
        row.map_or((0.0, 0.0), |row| (row.front, row.back))
    };
    let rows = Key::ALL.iter().map(|key| Some(*key)).chain([None]).map(|key| {
        let (was, is) = (share(old, key), share(new, key));
        ShareChange { key, front: Change::of(was.0, is.0), back: Change::of(was.1, is.1) }
    });
    let found = CrotchChange {
        front: change(|budget| Some(budget.front)),
        back: change(|budget| Some(budget.back)),
        total: change(|budget| Some(budget.total())),
        body: change(|budget| budget.body.map(|(body, _)| body)),
        ease: change(CrotchBudget::ease),
        by_parameter: rows.filter(|row| row.front.is_seen() || row.back.is_seen()).collect(),
    };
    let changed = [found.front, found.back, found.total, found.body, found.ease].iter().any(Change::is_seen);
    (changed || !found.by_parameter.is_empty()).then_some(found)
}

fn darts(was: &PanelShape, is: &PanelShape, old_lay: Vec2, new_lay: Vec2) -> Vec<DartChange> {
    let row = |index: usize| {
        let (old, new) = (was.darts.get(index), is.darts.get(index));
        DartChange {
            panel: is.panel,
            number: index + 1,
            intake: Change { old: old.map(|dart| dart.intake()), new: new.map(|dart| dart.intake()) },
            length: Change { old: old.map(|dart| dart.length()), new: new.map(|dart| dart.length()) },
            old_end: old.map(|dart| dart.apex - old_lay),
            new_end: new.map(|dart| dart.apex - new_lay),
        }
    };
    (0..was.darts.len().max(is.darts.len())).map(row).filter(DartChange::is_seen).collect()
}

impl ParameterChange {
    /// What its values count.
    pub fn unit(&self) -> Measure {
        self.key.about().unit
    }
}
