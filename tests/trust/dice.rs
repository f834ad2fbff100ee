//! Chance that falls alike on every run.

/// A row of numbers from a seed (SplitMix64).
pub(crate) struct Dice(u64);

impl Dice {
    pub(crate) fn new(seed: u64) -> Self {
        Self(seed)
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut bits = self.0;
        bits = (bits ^ (bits >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        bits = (bits ^ (bits >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        bits ^ (bits >> 31)
    }

    /// Between two numbers, each as likely.
    pub(crate) fn between(&mut self, least: f64, most: f64) -> f64 {
        least + (most - least) * ((self.next() >> 11) as f64 / (1_u64 << 53) as f64)
    }

    /// True in this part of all throws.
    pub(crate) fn falls(&mut self, part: f64) -> bool {
        self.between(0.0, 1.0) < part
    }

    /// One of these.
    pub(crate) fn one_of<T: Clone>(&mut self, all: &[T]) -> T {
        all[(self.next() % all.len() as u64) as usize].clone()
    }
}
