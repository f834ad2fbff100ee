//! Rules with a body's numbers in them.

use crate::{
    draft::Plan,
    recipe::{Between, Entry, Ladder, Number, Part, Proportion, QuantityRule, Reference},
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
        let [words, numbers] = self.worked(rule);
        let mut stages = vec![words];
        for next in [numbers, fine(self.value(rule), self.unit)] {
            if stages.last() != Some(&next) {
                stages.push(next);
            }
        }
        format!("{} {}", stages.join(" = "), self.unit.tag())
    }

    /// The rule as the trade writes it, and with numbers in the place of names: these with as many decimals as it takes
    /// that whoever adds up what is printed comes to the length that is printed.
    pub(super) fn worked(&self, rule: &Proportion) -> [String; 2] {
        let wanted = fine(self.value(rule), self.unit);
        let decimals = decimals(self.unit, |decimals| {
            let sum: f64 = rule.parts().map(|part| self.part_value(&part, decimals)).sum();
            fine(self.unit.to_cm(sum), self.unit) == wanted
        });
        let words = signed(rule.parts().map(|part| {
            let words = match (part.number, part.of) {
                (Some(number), Some((_, name))) => format!("{number} {}", spoken(name)),
                (Some(number), None) if self.unit != part.unit => {
                    operand(part.unit.to_cm(number.value()), self.unit, decimals)
                }
                (Some(number), None) => number.to_string(),
                (None, Some((_, name))) => spoken(name),
                (None, None) => String::new(),
            };
            (part.minus, words)
        }));
        let numbers = signed(rule.parts().map(|part| (part.minus, self.part(&part, decimals))));
        [words, numbers]
    }

    /// The rule as the trade writes it.
    pub(super) fn rule(&self, rule: &Proportion) -> String {
        let [words, _] = self.worked(rule);
        words
    }

    /// What a summand comes to, reckoned with the figures that are printed, in the reader's unit.
    fn part_value(&self, part: &Part<'_>, decimals: usize) -> f64 {
        let printed = |cm: f64| read(&operand(cm, self.unit, decimals));
        let value = match (part.number, part.of) {
            (number, Some((reference, _))) => {
                number.map_or(1.0, Number::value) * printed(self.value_of(reference))
            }
            (Some(number), None) => printed(part.unit.to_cm(number.value())),
            (None, None) => 0.0,
        };
        if part.minus { -value } else { value }
    }

    fn part(&self, part: &Part<'_>, decimals: usize) -> String {
        let Some((reference, _)) = part.of else {
            let long = |number: Number| operand(part.unit.to_cm(number.value()), self.unit, decimals);
            return part.number.map(long).unwrap_or_default();
        };
        let value = match operand(self.value_of(reference), self.unit, decimals) {
            several if several.starts_with('−') || several.contains([' ', '/']) => format!("({several})"),
            one => one,
        };
        // A stroke in inches is a fraction of the tape.
        let over_a = if self.unit == Unit::Inch { " : " } else { "/" };
        match part.number {
            None => value,
            Some(Number::Fraction { whole: 0, over: 1, under }) => format!("{value}{over_a}{under}"),
            Some(Number::Fraction { whole: 0, over, under }) => format!("{over} × {value}{over_a}{under}"),
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
            Between::Ramp => ("at", ", in proportion between"),
            Between::Step => ("from", ""),
        };
        let size = self.value_of(ladder.by);
        let long = |cm: f64, decimals: usize| match ladder.unit {
            unit if unit != self.unit => operand(cm, self.unit, decimals),
            Unit::Cm => plain(cm),
            Unit::Inch => Unit::Inch.write(cm).replace('-', "−"),
        };
        // What it comes to with the figures that are printed.
        let climbed = |decimals: usize| {
            let rungs: Vec<[f64; 2]> =
                ladder.rungs.iter().map(|rung| rung.map(|cm| read(&long(cm, decimals)))).collect();
            climb(&rungs, read(&operand(size, self.unit, decimals)), ladder.between)
        };
        let exact = climb(&ladder.rungs, size, ladder.between);
        let decimals = decimals(self.unit, |decimals| {
            fine(self.unit.to_cm(climbed(decimals)), self.unit) == fine(exact, self.unit)
        });
        let rungs: Vec<String> = ladder
            .rungs
            .iter()
            .map(|[size, value]| format!("{} {at} {}", long(*value, decimals), long(*size, decimals)))
            .collect();
        let size = format!("{} {}", operand(size, self.unit, decimals), self.unit.tag());
        format!("by {} {size}: {}{end}", spoken(&ladder.by_name), rungs.join(", "))
    }
}

/// The value of a ladder at a size, both in one unit.
fn climb(rungs: &[[f64; 2]], size: f64, between: Between) -> f64 {
    let Some(above) = rungs.iter().position(|[at, _]| size < *at) else {
        return rungs.last().map_or(0.0, |[_, value]| *value);
    };
    let Some(below) = above.checked_sub(1) else { return rungs[0][1] };
    let ([from, low], [to, high]) = (rungs[below], rungs[above]);
    match between {
        Between::Ramp => low + (high - low) * (size - from) / (to - from),
        Between::Step => low,
    }
}

/// The fewest decimals with which a sum comes out as printed.
fn decimals(unit: Unit, comes_out: impl Fn(usize) -> bool) -> usize {
    /// Beyond these nothing is gained: a length is not known better.
    const MOST: usize = 7;
    let least = match unit {
        Unit::Cm => 2,
        Unit::Inch => 3,
    };
    (least..MOST).find(|decimals| comes_out(*decimals)).unwrap_or(MOST)
}

/// A length that a sum is made of: in cm with so many decimals; in inches as a tape has it where that says it exactly, else
/// with so many decimals of an inch.
pub(super) fn operand(cm: f64, unit: Unit, decimals: usize) -> String {
    /// A tape's figure says it exactly, inches.
    const EXACT: f64 = 5e-5;
    let figure = unit.fine(cm);
    if unit == Unit::Inch && (read(&figure) - unit.from_cm(cm)).abs() < EXACT {
        return figure;
    }
    let text = crate::unit::decimal(unit.from_cm(cm), decimals);
    match text.contains('.') {
        true => text.trim_end_matches('0').trim_end_matches('.').to_owned(),
        false => text,
    }
}

/// A printed number: `7.64`, `3/4`, `1 1/2`, `−2`.
fn read(text: &str) -> f64 {
    let (sign, text) = text.strip_prefix('−').map_or((1.0, text), |rest| (-1.0, rest));
    let fraction = |text: &str| match text.split_once('/') {
        Some((over, under)) => over.parse::<f64>().ok().zip(under.parse::<f64>().ok()).map(|(a, b)| a / b),
        None => text.parse().ok(),
    };
    let value = match text.split_once(' ') {
        Some((whole, part)) => fraction(whole).zip(fraction(part)).map(|(whole, part)| whole + part),
        None => fraction(text),
    };
    // Only what was printed here is read.
    sign * value.unwrap_or_default()
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
