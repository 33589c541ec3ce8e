//! The words of the weeks along the pictures: months, Mondays, feast and rain date.

use chrono::Datelike;

use crate::calendar::{Date, Horizon};
use crate::facts::weeks as facts;
use crate::words::Words;
use crate::words::view::View;

/// A month as it begins along the weeks, with names from the longest to the shortest.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Month {
    /// Its first day, or the first day of the plan.
    pub from: Date,
    /// `Jan 2027`, `Jan`, `J`.
    pub names: Vec<String>,
}

/// A day with a name.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NamedDay {
    /// What it is, with its date.
    pub name: String,
    /// The day.
    pub day: Date,
}

/// What lies along the weeks of a plan, with its words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Weeks {
    /// What lies along them.
    pub along: facts::Weeks,
    /// The months in order.
    pub months: Vec<Month>,
    /// The day of the month of every Monday.
    pub mondays: Vec<String>,
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
        Self::over(view, view.garden.horizon())
    }

    /// Along a part of it.
    #[must_use]
    pub fn over(view: &View<'_>, horizon: Horizon) -> Self {
        let along = facts::Weeks::over(view.garden, horizon);
        let named = |what: &str, day: Date| NamedDay {
            name: format!("{what} {}", view.words.short(day)),
            day,
        };
        let mondays = (0..along.horizon.weeks()).map(|week| along.horizon.monday(week));
        Self {
            months: along
                .months
                .iter()
                .map(|m| month(*m, &along, view.words))
                .collect(),
            mondays: mondays.map(|monday| monday.day().to_string()).collect(),
            marked: std::iter::once(named("Feast", along.feast))
                .chain(along.rain_date.map(|day| named("Rain date", day)))
                .collect(),
            closed: along.has_closed_days().then_some(CLOSED),
            label: "Week of",
            along,
        }
    }

    /// The breaks and marked days in words.
    #[must_use]
    pub fn in_words(&self, view: &View<'_>) -> String {
        let spans = self.along.breaks.iter().map(|b| {
            let span = view.words.span(b.from, b.to);
            format!("{} {span}", b.name)
        });
        let marked = self.marked.iter().map(|day| day.name.clone());
        format!("{}.", spans.chain(marked).collect::<Vec<_>>().join("; "))
    }
}

/// A month with its names. The first one and every January tell the year.
fn month(from: Date, along: &facts::Weeks, words: Words) -> Month {
    let name = words.short_month(from);
    let initial = name.chars().take(1).collect();
    let mut names = vec![name, initial];
    if from == along.horizon.first() || from.month() == 1 {
        names.insert(0, words.month_of_year(from));
    }
    Month { from, names }
}
