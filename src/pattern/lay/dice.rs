//! Chance that is the same on every run.

/// A fixed row of numbers without a pattern (xorshift of 64 bits).
pub(super) struct Dice(u64);

impl Dice {
    pub(super) fn new() -> Self {
        Self(0x9E37_79B9_7F4A_7C15)
    }

    fn next(&mut self) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0
    }

    /// A number from 0 up to `count`, without it.
    pub(super) fn below(&mut self, count: usize) -> usize {
        ((self.next() >> 11) % count as u64) as usize
    }

    /// A number above 0. Half of its numbers lie under ln 2, half of the rest under twice that, and so on; 1 on average. Made without a
    /// logarithm, which is not the same on every machine.
    pub(super) fn halving(&mut self) -> f64 {
        let halvings = f64::from(self.next().trailing_zeros());
        let rest = (self.next() >> 11) as f64 / (1_u64 << 53) as f64;
        (halvings + rest) * std::f64::consts::LN_2
    }
}
