//! Who grows a crop: one grade, or several together.

use super::at::{GradeAt, IngredientAt};

/// The last of a team's grades stands fewer sections than this after the first.
pub const FARTHEST: usize = 128;

/// Grades that grow a crop together, most often only one. A set of them, small and copied like a position; teams
/// stand in the order of their first grades.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Team {
    /// The position of the first grade.
    first: usize,
    /// A bit for each position from the first on; none where nobody is in it.
    from_first: u128,
}

impl Team {
    /// True if a grade belongs to it.
    #[must_use]
    pub fn has(self, GradeAt(grade): GradeAt) -> bool {
        let after = grade.checked_sub(self.first);
        after.is_some_and(|after| after < FARTHEST && self.from_first >> after & 1 == 1)
    }

    /// Its grades, in the order of the file.
    pub fn grades(self) -> impl Iterator<Item = GradeAt> + Clone {
        let reach = FARTHEST - self.from_first.leading_zeros() as usize;
        let all = (self.first..self.first + reach).map(GradeAt);
        all.filter(move |grade| self.has(*grade))
    }

    /// How many grades.
    #[must_use]
    pub fn size(self) -> usize {
        self.from_first.count_ones() as usize
    }

    /// The same with one more; one that stands too far from the others stays out, which no project asks for.
    fn with(self, GradeAt(grade): GradeAt) -> Self {
        let first = match self.from_first {
            0 => grade,
            _ => self.first.min(grade),
        };
        let moved = |bits: u128, by: usize| {
            let by = u32::try_from(by).ok();
            by.and_then(|by| bits.checked_shl(by)).unwrap_or(0)
        };
        let before = moved(self.from_first, self.first.saturating_sub(first));
        Self {
            first,
            from_first: before | moved(1, grade - first),
        }
    }
}

impl From<GradeAt> for Team {
    fn from(grade: GradeAt) -> Self {
        Self::default().with(grade)
    }
}

impl FromIterator<GradeAt> for Team {
    fn from_iter<I: IntoIterator<Item = GradeAt>>(grades: I) -> Self {
        grades.into_iter().fold(Self::default(), Self::with)
    }
}

/// A part in growing an ingredient. One that a team grows has a seat for each grade of it; one of which a single
/// grade is chosen has one seat.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Seat {
    /// Of which ingredient.
    pub of: IngredientAt,
    /// The grades of which one takes it, each with the team in which it does.
    pub open_to: Vec<(GradeAt, Team)>,
}
