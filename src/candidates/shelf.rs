//! The days for which a planting's flats stand on the seedling shelf, and on its heat mat.

/// Days on the shelf; all are day numbers of the span.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ShelfDays {
    /// The first sowing session; of seedlings that stand there already, the first day that counts.
    pub sown: usize,
    /// First and last potting-up session; both the day after `out` if none.
    pub potted: (usize, usize),
    /// The last planting-out session.
    pub out: usize,
    /// The last day on the heat mat, if it stands there.
    pub warm_until: Option<usize>,
}

impl ShelfDays {
    /// Flats on a day, given those before and after potting up. While the classes pot up, both
    /// may stand there.
    #[must_use]
    pub fn flats_on(&self, day: usize, sown: u32, kept: u32) -> u32 {
        if day < self.sown || day > self.out {
            0
        } else if day < self.potted.0 {
            sown
        } else if day <= self.potted.1 {
            sown.max(kept)
        } else {
            kept
        }
    }

    /// True if the flats stand on the mat on a day.
    #[must_use]
    pub fn warm_on(&self, day: usize) -> bool {
        self.warm_until
            .is_some_and(|until| self.sown <= day && day <= until)
    }

    /// The spans of days in which its flats stay as many as they are.
    pub fn spans(self) -> impl Iterator<Item = (usize, usize)> {
        let (first, last) = self.potted;
        let alike = [
            (self.sown, self.out.min(first.saturating_sub(1))),
            (first, last.min(self.out)),
            (last + 1, self.out),
            (self.sown, self.warm_until.unwrap_or(0)),
        ];
        alike.into_iter().filter(|(from, to)| from <= to)
    }
}
