//! What lies along the weeks of a plan: months, breaks, days off, feast and rain date.

use chrono::Datelike;

use crate::calendar::{Date, Horizon, days_between, plus_days};
use crate::garden::Garden;

/// A named span without school; both ends are included.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Closed {
    /// Its name.
    pub name: String,
    /// First day.
    pub from: Date,
    /// Last day.
    pub to: Date,
}

/// The weeks of a plan with what lies along them.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Weeks {
    /// The weeks.
    pub horizon: Horizon,
    /// The first day of the plan and of every month after it.
    pub months: Vec<Date>,
    /// Breaks, cut to the plan.
    pub breaks: Vec<Closed>,
    /// Days off within the plan.
    pub days_off: Vec<Date>,
    /// The feast.
    pub feast: Date,
    /// The rain date, if there is one.
    pub rain_date: Option<Date>,
}

impl Weeks {
    /// Along a span of a garden's plans.
    #[must_use]
    pub fn over(garden: &Garden, horizon: Horizon) -> Self {
        let (first, last) = (horizon.first(), horizon.last());
        let year = &garden.school_year;
        let breaks = year.breaks.iter();
        let breaks = breaks.filter(|b| b.from <= last && b.to >= first);
        let days_off = year.days_off.iter().copied();
        let months = days_between(first, last);
        Self {
            horizon,
            months: months.filter(|d| d.day() == 1 || *d == first).collect(),
            breaks: breaks
                .map(|b| Closed {
                    name: b.name.clone(),
                    from: b.from.max(first),
                    to: b.to.min(last),
                })
                .collect(),
            days_off: days_off.filter(|d| (first..=last).contains(d)).collect(),
            feast: garden.feast.day,
            rain_date: garden.feast.rain_date.filter(|day| *day <= last),
        }
    }

    /// True if school is closed on any day.
    #[must_use]
    pub fn has_closed_days(&self) -> bool {
        !self.breaks.is_empty() || !self.days_off.is_empty()
    }

    /// The breaks and days off that begin in a week.
    pub fn closed_from(
        &self,
        week: usize,
    ) -> (impl Iterator<Item = &Closed>, impl Iterator<Item = Date>) {
        let monday = self.horizon.monday(week);
        let begins = move |day: Date| monday <= day && day <= plus_days(monday, 6);
        let breaks = self.breaks.iter().filter(move |b| begins(b.from));
        let days_off = self.days_off.iter().copied();
        (breaks, days_off.filter(move |day| begins(*day)))
    }
}
