//! Strips of a bed: which one, and neighbours as one run. Within the program strips count from 0; the
//! project file, the saved plan and people count from 1. `StripAt` turns one into the other, and nothing else does.

use std::fmt;

/// Which strip of a bed, counted from 0 at the bed's start. It is written as people count, from 1.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct StripAt(pub u32);

impl StripAt {
    /// Its number, as people count: the first is 1.
    #[must_use]
    pub const fn number(self) -> u32 {
        self.0.saturating_add(1)
    }

    /// The strip of a number, as people count; there is none of number 0.
    #[must_use]
    pub fn numbered(number: u32) -> Option<Self> {
        number.checked_sub(1).map(Self)
    }

    /// Its place in a list of all strips of the bed.
    #[must_use]
    pub const fn index(self) -> usize {
        self.0 as usize
    }
}

impl fmt::Display for StripAt {
    fn fmt(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.number().fmt(to)
    }
}

/// Neighbouring strips of one bed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Strips {
    /// The first of them.
    pub first: StripAt,
    /// How many.
    pub count: u32,
}

impl Strips {
    /// The first strips of a bed, so many.
    #[must_use]
    pub const fn from_start(count: u32) -> Self {
        Self {
            first: StripAt(0),
            count,
        }
    }

    /// The strip after the last of them.
    #[must_use]
    pub const fn after(self) -> StripAt {
        StripAt(self.first.0.saturating_add(self.count))
    }

    /// The last of them; the one before the first if there are none.
    #[must_use]
    pub const fn last(self) -> StripAt {
        StripAt(self.after().0.saturating_sub(1))
    }

    /// True if a strip is one of them.
    #[must_use]
    pub fn has(self, strip: StripAt) -> bool {
        self.first <= strip && strip < self.after()
    }

    /// True if they have a strip in common.
    #[must_use]
    pub fn meets(self, other: Self) -> bool {
        self.first < other.after() && other.first < self.after()
    }

    /// Those of them that a bed of so many strips has.
    #[must_use]
    pub fn within(self, strips: u32) -> Self {
        Self {
            count: self.count.min(strips.saturating_sub(self.first.0)),
            ..self
        }
    }

    /// All of them, in order.
    pub fn iter(self) -> impl Iterator<Item = StripAt> {
        (self.first.0..self.after().0).map(StripAt)
    }

    /// Strips in order, as the longest runs of neighbours.
    #[must_use]
    pub fn runs(strips: impl Iterator<Item = StripAt>) -> Vec<Self> {
        let mut runs: Vec<Self> = Vec::new();
        for strip in strips {
            match runs.last_mut() {
                Some(run) if run.after() == strip => run.count += 1,
                _ => runs.push(Self {
                    first: strip,
                    count: 1,
                }),
            }
        }
        runs
    }
}
