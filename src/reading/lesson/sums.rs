//! Rules with a body's numbers in them.

use crate::{
    draft::Plan,
    recipe::{Entry, Ladder, Number, Part, Proportion, QuantityRule, Reference},
    unit::Unit,
    voice::spoken,
};

/// A length as a sum can be followed by it: in cm two decimals without zeros at their end.
pub(super) fn fine(cm: f64, unit: Unit) -> String {
    let text = unit.fine(cm);
    if unit == Unit::Inch {
        return text;
    }
    match text.strip_suffix(".00") {
        Some(whole) => whole.to_owned(),
        None => text.strip_suffix('0').map_or(text.clone(), str::to_owned),
    }
}

/// The same with its unit.
pub(super) fn fine_length(cm: f64, unit: Unit) -> String {
    format!("{} {}", fine(cm, unit), unit.tag())
}

/// A number without unit, as short as it can be said.
fn plain(number: f64) -> String {
    format!("{number}").replace('-', "−")
}

/// What rules are worked out with.
#[derive(Clone, Copy)]
pub(super) struct Sums<'a> {
    pub plan: &'a Plan,
    pub unit: Unit,
}

impl Sums<'_> {
    /// The value that a name stands for.
    pub(super) fn value_of(&self, reference: Reference) -> f64 {
        // A reference without a value would have stopped the construction.
        self.plan.construction.value_of(reference, &self.plan.inputs).unwrap_or_default()
    }

    /// What a rule comes to.
    pub(super) fn value(&self, rule: &Proportion) -> f64 {
        rule.value(&self.plan.inputs, &self.plan.construction).unwrap_or_default()
    }

    /// The rule, the rule with numbers and what it comes to: `1/16 hip + 0.5 = 101.5/16 + 0.5 = 6.84 cm`. A bare length
    /// is its own sum.
    pub(super) fn proportion(&self, rule: &Proportion) -> String {
        let mut stages = vec![self.rule(rule)];
        for next in [self.numbers(rule), fine(self.value(rule), self.unit)] {
            if stages.last() != Some(&next) {
                stages.push(next);
            }
        }
        format!("{} {}", stages.join(" = "), self.unit.tag())
    }

    /// The rule as the trade writes it.
    pub(super) fn rule(&self, rule: &Proportion) -> String {
        signed(rule.parts().map(|part| {
            let words = match (part.number, part.of) {
                (Some(number), Some((_, name))) => format!("{number} {}", spoken(name)),
                (Some(number), None) if self.unit != part.unit => {
                    fine(part.unit.to_cm(number.value()), self.unit)
                }
                (Some(number), None) => number.to_string(),
                (None, Some((_, name))) => spoken(name),
                (None, None) => String::new(),
            };
            (part.minus, words)
        }))
    }

    /// The rule with numbers in the place of names.
    pub(super) fn numbers(&self, rule: &Proportion) -> String {
        signed(rule.parts().map(|part| (part.minus, self.part(&part))))
    }

    fn part(&self, part: &Part<'_>) -> String {
        let Some((reference, _)) = part.of else {
            let long = |number: Number| fine(part.unit.to_cm(number.value()), self.unit);
            return part.number.map(long).unwrap_or_default();
        };
        let value = self.value_of(reference);
        let value = match fine(value, self.unit) {
            several if several.starts_with('−') || several.contains(' ') => format!("({several})"),
            one => one,
        };
        match part.number {
            None => value,
            Some(Number::Fraction { whole: 0, over: 1, under }) => format!("{value}/{under}"),
            Some(Number::Fraction { whole: 0, over, under }) => format!("{over} × {value}/{under}"),
            Some(number) => format!("{number} × {value}"),
        }
    }

    /// How a length is found.
    pub(super) fn quantity(&self, entry: &Entry, rule: &QuantityRule, value: f64) -> String {
        let name = spoken(&entry.makes);
        match rule {
            QuantityRule::Is(rule) => format!("{name} = {}", self.proportion(rule)),
            QuantityRule::Ladder(ladder) => {
                format!("{name} = {} = {}", self.ladder(ladder), fine_length(value, self.unit))
            }
            QuantityRule::Between(_) | QuantityRule::Curve { .. } | QuantityRule::Depth(_) => {
                format!("{name} = {}", fine_length(value, self.unit))
            }
        }
    }

    /// The rungs of a ladder and the size that goes by them.
    pub(super) fn ladder(&self, ladder: &Ladder) -> String {
        let (at, end) = match ladder.between {
            crate::recipe::Between::Ramp => ("at", ", in proportion between"),
            crate::recipe::Between::Step => ("from", ""),
        };
        let long = |cm: &f64| match ladder.unit {
            unit if unit != self.unit => fine(*cm, self.unit),
            Unit::Cm => plain(*cm),
            Unit::Inch => Unit::Inch.write(*cm).replace('-', "−"),
        };
        let rungs: Vec<String> =
            ladder.rungs.iter().map(|[size, value]| format!("{} {at} {}", long(value), long(size))).collect();
        let size = fine_length(self.value_of(ladder.by), self.unit);
        format!("by {} {size}: {}{end}", spoken(&ladder.by_name), rungs.join(", "))
    }
}

/// Summands with their signs between them.
fn signed(parts: impl Iterator<Item = (bool, String)>) -> String {
    let mut out = String::new();
    for (number, (minus, words)) in parts.enumerate() {
        out.push_str(match (number, minus) {
            (0, false) => "",
            (0, true) => "−",
            (_, false) => " + ",
            (_, true) => " − ",
        });
        out.push_str(&words);
    }
    out
}
