//! The weeks along the pictures: months, Mondays, breaks, days off, feast and rain date.

use chrono::Datelike;

use crate::calendar::{Date, Horizon, days_between};
use crate::garden::Break;
use crate::report::view::View;
use crate::report::words::Words;

/// A month as it begins along the weeks, with names from the longest to the shortest.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Month {
    /// Its first day, or the first day of the plan.
    pub from: Date,
    /// `Jan 2027`, `Jan`, `J`.
    pub names: Vec<String>,
}

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

/// A day with a name.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NamedDay {
    /// What it is, with its date.
    pub name: String,
    /// The day.
    pub day: Date,
}

/// What lies along the weeks of a plan.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Weeks {
    /// The weeks of the plan.
    pub horizon: Horizon,
    /// The months in order.
    pub months: Vec<Month>,
    /// The day of the month of every Monday.
    pub mondays: Vec<String>,
    /// Breaks within the plan.
    pub breaks: Vec<Closed>,
    /// Days off within the plan.
    pub days_off: Vec<Date>,
    /// The feast, and the rain date if there is one.
    pub marked: Vec<NamedDay>,
    /// What the bands of breaks and days off mean, if there are any.
    pub closed: Option<&'static str>,
    /// What the row of Mondays is called.
    pub label: &'static str,
}

/// What the bands mean.
const CLOSED: &str = "No school";

impl Weeks {
    /// Along the plan of a view.
    #[must_use]
    pub fn of(view: &View<'_>) -> Self {
        let horizon = view.garden.horizon();
        let (first, last) = (horizon.first(), horizon.last());
        let year = &view.garden.school_year;
        let within = |b: &&Break| b.from <= last && b.to >= first;
        let breaks: Vec<&Break> = year.breaks.iter().filter(within).collect();
        let days_off = days_within(&year.days_off, first, last);
        let feast = &view.garden.feast;
        let named = |what: &str, day: Date| NamedDay {
            name: format!("{what} {}", view.words.short(day)),
            day,
        };
        Self {
            horizon,
            months: months(first, last, view.words),
            mondays: (0..horizon.weeks())
                .map(|week| horizon.monday(week).day().to_string())
                .collect(),
            closed: (!breaks.is_empty() || !days_off.is_empty()).then_some(CLOSED),
            breaks: breaks
                .into_iter()
                .map(|b| Closed {
                    name: b.name.clone(),
                    from: b.from.max(first),
                    to: b.to.min(last),
                })
                .collect(),
            days_off,
            marked: std::iter::once(named("Feast", feast.day))
                .chain(feast.rain_date.map(|day| named("Rain date", day)))
                .collect(),
            label: "Week of",
        }
    }

    /// The breaks and marked days in words.
    #[must_use]
    pub fn in_words(&self, view: &View<'_>) -> String {
        let spans = self.breaks.iter().map(|b| {
            let span = view.words.span(b.from, b.to);
            format!("{} {span}", b.name)
        });
        let marked = self.marked.iter().map(|day| day.name.clone());
        format!("{}.", spans.chain(marked).collect::<Vec<_>>().join("; "))
    }
}

fn days_within(days: &[Date], first: Date, last: Date) -> Vec<Date> {
    let within = |day: &&Date| (first..=last).contains(*day);
    days.iter().filter(within).copied().collect()
}

fn months(first: Date, last: Date, words: Words) -> Vec<Month> {
    days_between(first, last)
        .filter(|day| day.day() == 1 || *day == first)
        .map(|from| {
            let name = words.short_month(from);
            let initial = name.chars().take(1).collect();
            let mut names = vec![name, initial];
            if from == first || from.month() == 1 {
                names.insert(0, words.month_of_year(from));
            }
            Month { from, names }
        })
        .collect()
}
