//! Seeded dice: a case of a random test is a number.

use rand::{RngExt, SeedableRng};
use rand_pcg::Pcg64Mcg;

/// Throws that only depend on the seed.
pub struct Dice(Pcg64Mcg);

impl Dice {
    pub fn new(seed: u64) -> Self {
        Self(Pcg64Mcg::seed_from_u64(seed))
    }

    /// True in a share `p` of all throws.
    pub fn chance(&mut self, p: f64) -> bool {
        self.real(0.0, 1.0) < p
    }

    /// A whole number from `lo` to `hi`, both included.
    pub fn int(&mut self, lo: u32, hi: u32) -> u32 {
        self.0.random_range(lo..=hi)
    }

    /// A position in a list of `n`.
    pub fn below(&mut self, n: usize) -> usize {
        self.0.random_range(0..n)
    }

    /// A real number between `lo` and `hi`.
    pub fn real(&mut self, lo: f64, hi: f64) -> f64 {
        lo + (hi - lo) * self.0.random::<f64>()
    }

    /// One of a list.
    pub fn one<T: Copy>(&mut self, of: &[T]) -> T {
        of[self.below(of.len())]
    }
}
