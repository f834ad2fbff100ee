//! Puts what was read at its place in the order.

use super::key::Path;
use super::value::{Read, Written};
use super::{Adjustment, Order};
use crate::adjust::OneLeg;
use crate::mistake::Mistake;
use crate::terms::{EnumMap, Measurement, Side, Word};

impl Order {
    /// Puts one value at its place.
    pub(super) fn put(
        &mut self,
        path: &str,
        key: &Path,
        value: Read,
        written: &Written<'_>,
    ) -> Result<(), Box<Mistake>> {
        match (key, value) {
            (Path::Name, Read::Text(text)) => self.name = Some(text),
            (Path::Block, Read::Text(text)) => self.trousers.block = text,
            (Path::Sex, Read::Text(word)) => assign(&mut self.body.sex, &word),
            (Path::Units, Read::Text(word)) => assign(&mut self.units, &word),
            (Path::WaistLevel, Read::Text(word)) => assign(&mut self.body.waist_level, &word),
            (Path::Set, Read::Text(word)) => assign(&mut self.trousers.set, &word),
            (Path::Fit, Read::Text(word)) => self.trousers.fit = Word::from_key(&word),
            (Path::ClothStretch, Read::Number(number)) => self.trousers.cloth_stretch = number,
            (Path::InseamStretch, Read::Number(cm)) => self.trousers.inseam_stretch = cm,
            (Path::Ease(at), Read::Number(cm)) => self.trousers.ease[*at] = Some(cm),
            (Path::Style(style), Read::Number(cm)) => self.trousers.style[*style] = Some(cm),
            (Path::Shape(shape), Read::Text(word)) => self.shape[*shape] = Word::from_key(&word),
            (Path::Allowance(at), Read::Number(cm)) => self.trousers.allowance[*at] = Some(cm),
            // read as a whole number between 0 and 2
            (Path::Darts(panel), Read::Number(count)) => {
                self.trousers.darts[*panel] = (0..=2_u8).find(|n| f64::from(*n) == count).map(usize::from);
            }
            (Path::Ask(name), Read::Number(cm)) => {
                self.trousers.ask.insert(name.clone(), cm);
            }
            (Path::Measurement(side, measurement), Read::Number(cm)) => {
                if *side != Side::Both && !measurement.about().of_a_leg {
                    return Err(Box::new(
                        written.wrong(format!("`{measurement}` is of the whole body, not of one leg")).help(
                            format!("write it under `[measurements]`, not under `[{side}.measurements]`"),
                        ),
                    ));
                }
                self.measured_mut(*side)[*measurement] = Some(cm);
            }
            (Path::Adjust(side, key), Read::Number(value)) => {
                let allowed = match key.about().one_leg {
                    OneLeg::Free | OneLeg::WithCare => Ok(()),
                    OneLeg::Never if *side != Side::Both => Err((
                        format!("`{key}` must be the same on both legs: centre seams are sewn left to right"),
                        format!("write it under `[{}]`, without `{side}`", key.about().region),
                    )),
                    OneLeg::Only if *side == Side::Both => Err((
                        format!("`{key}` is of one side only"),
                        format!("write it under `[left.{0}]` or `[right.{0}]`", key.about().region),
                    )),
                    OneLeg::Never | OneLeg::Only => Ok(()),
                };
                if let Err((title, help)) = allowed {
                    return Err(Box::new(written.wrong(title).help(help)));
                }
                self.places.push((*side, *key, written.source.clone(), written.span.clone()));
                let adjustment = Adjustment { key: *key, value, from: written.from };
                let list = self.adjustments_mut(*side);
                match list.iter_mut().find(|old| old.key == *key) {
                    Some(old) => *old = adjustment,
                    None => list.push(adjustment),
                }
            }
            // the kind of a key decides which of the two its value is
            (_, Read::Text(_) | Read::Number(_)) => {
                return Err(Box::new(written.wrong(format!("`{path}` has a value of another kind"))));
            }
        }
        Ok(())
    }

    fn measured_mut(&mut self, side: Side) -> &mut EnumMap<Measurement, Option<f64>> {
        match side {
            Side::Both => &mut self.body.measured,
            Side::Left => &mut self.left.get_or_insert_default().measured,
            Side::Right => &mut self.right.get_or_insert_default().measured,
        }
    }

    pub(super) fn adjustments_mut(&mut self, side: Side) -> &mut Vec<Adjustment> {
        match side {
            Side::Both => &mut self.adjustments,
            Side::Left => &mut self.left.get_or_insert_default().adjustments,
            Side::Right => &mut self.right.get_or_insert_default().adjustments,
        }
    }
}

fn assign<W: Word>(place: &mut W, word: &str) {
    if let Some(word) = W::from_key(word) {
        *place = word;
    }
}
