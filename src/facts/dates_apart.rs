//! Dates that need no year, because those of the year before the feast lie after all others in the
//! calendar.

use chrono::Datelike;

use crate::calendar::Date;
use crate::plan::StepKind;

use super::Facts;
use super::spans::span_of;

/// Two years of which no day of the calendar is meant twice.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct YearsApart {
    /// From this day on to the end of December all dates are of the year before.
    pub from: Date,
    /// The year of all others.
    pub year: i32,
}

impl Facts<'_> {
    /// How the ends of the spans of some kinds of steps part into two years, where they lie in two
    /// and do part so.
    #[must_use]
    pub fn years_apart(&self, kinds: &[StepKind]) -> Option<YearsApart> {
        let year = self.garden.feast.day.year();
        let planted = self.plan.plantings.iter();
        let spans = planted.flat_map(|p| kinds.iter().filter_map(|kind| span_of(p, *kind)));
        let (before, after): (Vec<Date>, Vec<Date>) = spans
            .flat_map(|(from, to)| [from, to])
            .partition(|day| day.year() < year);
        let (from, last) = (before.into_iter().min()?, after.into_iter().max()?);
        let apart = from.year() == year - 1
            && last.year() == year
            && (from.month(), from.day()) > (last.month(), last.day());
        apart.then_some(YearsApart { from, year })
    }
}
