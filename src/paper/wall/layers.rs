//! The layers of the wall drawing, by what a person would want to hide.

use super::NoteLayer;
use crate::drawing::Layer;

/// Only some blocks have any.
const STYLE_LINES: &str = "Style lines";

/// The layers while they are filled.
pub(super) struct Layers {
    /// Lines of the construction.
    pub construction: Layer,
    /// Points of the construction with their names.
    pub points: Layer,
    /// Level lines.
    pub levels: Layer,
    /// Crease and grain.
    pub crease: Layer,
    /// Sewing lines.
    pub panels: Layer,
    /// Legs of the darts.
    pub darts: Layer,
    /// Lines of style; a drawing without any has no such layer.
    pub style_lines: Layer,
    /// Notches.
    pub notches: Layer,
    /// Names and lengths on the panels.
    pub labels: Layer,
    /// The figures of the levels in the margin.
    pub figures: Layer,
    /// Notes in the margin.
    notes: Layer,
    /// The test squares.
    squares: Layer,
}

impl Default for Layers {
    fn default() -> Self {
        Self {
            construction: Layer::new("Construction lines"),
            points: Layer::new("Construction points"),
            levels: Layer::new("Levels"),
            crease: Layer::new("Crease and grain"),
            panels: Layer::new("Panels"),
            darts: Layer::new("Darts"),
            style_lines: Layer::new(STYLE_LINES),
            notches: Layer::new("Notches"),
            labels: Layer::new("Labels"),
            figures: Layer::new("Figures of the levels"),
            notes: Layer::new("Notes"),
            squares: Layer::new("Test squares"),
        }
    }
}

impl Layers {
    /// The layer of a note.
    pub(super) fn notes(&mut self, which: NoteLayer) -> &mut Layer {
        match which {
            NoteLayer::Notes => &mut self.notes,
            NoteLayer::Squares => &mut self.squares,
        }
    }

    /// All layers so far.
    pub(super) fn all(&self) -> impl Iterator<Item = &Layer> {
        [
            &self.construction,
            &self.points,
            &self.levels,
            &self.crease,
            &self.panels,
            &self.darts,
            &self.style_lines,
            &self.notches,
            &self.labels,
            &self.figures,
            &self.notes,
            &self.squares,
        ]
        .into_iter()
    }

    /// From the lowest to the topmost.
    pub(super) fn in_order(self) -> Vec<Layer> {
        let mut layers = vec![
            self.construction,
            self.levels,
            self.crease,
            self.panels,
            self.darts,
            self.style_lines,
            self.notches,
            self.points,
            self.labels,
            self.figures,
            self.notes,
            self.squares,
        ];
        layers.retain(|layer| layer.name.as_str() != STYLE_LINES || !layer.marks.is_empty());
        layers
    }
}
