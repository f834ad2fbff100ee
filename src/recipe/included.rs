//! Seams that the lines of a printed draft include: the panel to the sewing line lies so far inside them.

use super::table::{Reader, Row};
use crate::terms::{Edge, EnumMap, Word};

/// How wide a seam the lines include, cm. All nothing where the draft is printed to the sewing line.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct SeamsIncluded(EnumMap<Edge, f64>);

/// No draft includes a wider seam or turning, cm.
const WIDEST: f64 = 12.0;

impl SeamsIncluded {
    /// The seam along an edge, cm.
    pub fn along(&self, edge: Edge) -> f64 {
        self.0[edge]
    }

    /// Whether any line includes a seam.
    pub fn any(&self) -> bool {
        self.0.values().any(|width| *width != 0.0)
    }

    /// Reads `[seams_included]`.
    pub(super) fn read(reader: &mut Reader<'_>, row: &Row<'_>) -> Self {
        row.only(reader, &Edge::ALL.iter().map(|edge| edge.key()).collect::<Vec<_>>());
        let mut seams = Self::default();
        for edge in Edge::ALL {
            let Some(cell) = row.get(edge.key()) else { continue };
            let Some(width) = reader.length(&cell) else { continue };
            if (0.0..=WIDEST).contains(&width) {
                seams.0[*edge] = width;
            } else {
                let label = format!("expected 0 to {WIDEST} cm");
                reader.wrong(cell.value.span(), "no draft includes such a seam", label);
            }
        }
        seams
    }
}
