//! When a row that was sown close is thinned: days counted from coming up, which weather makes early or
//! late, so that a day can be printed that is right in nearly every year.

use crate::garden::Thinning;

use super::germination::median_up;

/// When the seed of one sowing is up. Days are day numbers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Emergence {
    /// In the median of the years in which it comes up.
    pub usual: usize,
    /// In nine of ten of these years, or more, it is up by then.
    pub late: usize,
}

impl Emergence {
    /// From the day on which it is up in each weather year; `None` if it never is.
    #[must_use]
    pub fn of(up: impl IntoIterator<Item = Option<usize>>) -> Option<Self> {
        let mut days: Vec<usize> = up.into_iter().flatten().collect();
        days.sort_unstable();
        let nine_of_ten = (days.len() * 9).div_ceil(10);
        Some(Self {
            usual: median_up(days.iter().copied().map(Some))?,
            late: *days.get(nine_of_ten.checked_sub(1)?)?,
        })
    }
}

/// The days on which the rows of a planting may be thinned: the first and the last, for each part that
/// was sown. A span without a day has its end before its beginning.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ThinningDays {
    parts: Vec<(usize, usize)>,
}

impl ThinningDays {
    /// The days for parts that come up so and whose first pick is planned for day number `first_pick`. They
    /// are counted from the usual day of coming up, begin when the late years are up as well, go on as long
    /// for these, and end before the last third of the time until the first pick. A part that never comes
    /// up has none.
    #[must_use]
    pub fn of(thinning: Thinning, up: &[Option<Emergence>], first_pick: usize) -> Self {
        let (after, before) = (thinning.after as usize, thinning.before as usize);
        let days = |up: &Emergence| {
            let grows = first_pick.saturating_sub(up.usual);
            let crowded = (up.usual + before).max(up.late + after);
            let from = (up.usual + after).max(up.late + 1);
            (from, crowded.min(up.usual + grows * 2 / 3))
        };
        Self {
            parts: up.iter().flatten().map(days).collect(),
        }
    }

    /// The first and the last day on which all parts may be thinned at once; `None` if nothing comes up.
    #[must_use]
    pub fn of_all(&self) -> Option<(usize, usize)> {
        let from = self.parts.iter().map(|(from, _)| *from).max()?;
        let to = self.parts.iter().map(|(_, to)| *to).min()?;
        Some((from, to))
    }

    /// True if every part has a day.
    #[must_use]
    pub fn are_there(&self) -> bool {
        self.parts.iter().all(|(from, to)| from <= to)
    }

    /// The first part that is thinned too soon or too late: its day, and its days. Part j is thinned
    /// by class j of those who thin, both counted round.
    #[must_use]
    pub fn missed_by(&self, thinned: &[usize]) -> Option<(usize, (usize, usize))> {
        let parts = self.parts.len().max(thinned.len());
        let own = (0..parts).filter_map(|j| {
            let day = thinned.get(j % thinned.len().max(1))?;
            Some((*day, *self.parts.get(j % self.parts.len().max(1))?))
        });
        let mut missed = own.filter(|(day, (from, to))| day < from || day > to);
        missed.next()
    }
}
