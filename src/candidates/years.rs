//! Sets of weather years.

/// A set of weather years, by their position in the record.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct YearSet {
    words: Vec<u64>,
}

impl YearSet {
    /// The years for which `holds` is true, of `count` years.
    #[must_use]
    pub fn of(count: usize, mut holds: impl FnMut(usize) -> bool) -> Self {
        let mut words = vec![0; count.div_ceil(64)];
        for year in 0..count {
            if holds(year) {
                words[year / 64] |= 1 << (year % 64);
            }
        }
        Self { words }
    }

    /// True if the year belongs to the set.
    #[must_use]
    pub fn has(&self, year: usize) -> bool {
        self.words
            .get(year / 64)
            .is_some_and(|w| w >> (year % 64) & 1 == 1)
    }

    /// How many years.
    #[must_use]
    pub fn len(&self) -> u32 {
        self.words.iter().map(|w| w.count_ones()).sum()
    }

    /// The years as bits, 64 to a word.
    #[must_use]
    pub fn words(&self) -> &[u64] {
        &self.words
    }

    /// True if no year belongs to it.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// Years that belong to either.
    #[must_use]
    pub fn or(&self, other: &Self) -> Self {
        let longer = self.words.len().max(other.words.len());
        let word = |set: &Self, k: usize| set.words.get(k).copied().unwrap_or(0);
        Self {
            words: (0..longer)
                .map(|k| word(self, k) | word(other, k))
                .collect(),
        }
    }

    /// Years that belong to both.
    #[must_use]
    pub fn and(&self, other: &Self) -> Self {
        Self {
            words: self
                .words
                .iter()
                .zip(&other.words)
                .map(|(a, b)| a & b)
                .collect(),
        }
    }

    /// True if every year of `other` belongs to it.
    #[must_use]
    pub fn covers(&self, other: &Self) -> bool {
        self.words
            .iter()
            .zip(&other.words)
            .all(|(a, b)| b & !a == 0)
    }
}
