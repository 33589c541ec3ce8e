//! Daily weather of many years, past or generated, and the sun above them.

pub mod cold_days;
mod frost_fit;
pub mod generator;
pub mod monthly;
pub mod normals;
pub mod rank;
mod sky;
pub mod sun;
pub mod trend;
pub mod weeks;

use std::ops::Range;

use chrono::Datelike;

use crate::calendar::{Date, Horizon, plus_days};
use crate::units::{Celsius, Millimetres};

use monthly::Monthly;

/// One day's weather.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Daily {
    /// Lowest air temperature.
    pub tmin: Celsius,
    /// Highest air temperature.
    pub tmax: Celsius,
    /// Rain.
    pub rain: Millimetres,
}

impl Daily {
    /// Mean of the extremes.
    #[must_use]
    pub fn mean(&self) -> Celsius {
        (self.tmin + self.tmax) * 0.5
    }
}

/// A record of consecutive days. Calendar years may be left out of it: days stand in their place, so that
/// a position still tells a date, but nothing that is counted over years may look at them.
#[derive(Debug, Clone, PartialEq)]
pub struct Record {
    first: Date,
    days: Vec<Daily>,
    left_out: Vec<Range<usize>>,
    withheld: Vec<i32>,
    generated: bool,
    origin: Option<Origin>,
    means: Option<Monthly>,
}

/// From what a record was generated; the same origin gives the same record.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Origin {
    /// The monthly means.
    pub means: Monthly,
    /// The seed.
    pub seed: u64,
    /// Whether the frost dates among the means ask for more than the others can give, of spring and of autumn: then
    /// they are hardly those of one place, and the years freeze on other days.
    pub out_of_reach: [bool; 2],
}

/// One weather year: the weather of a plan's span as it ran in one past year.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WeatherYear<'a> {
    /// The calendar year in which the span begins.
    pub label: i32,
    /// The days just before the span, at most 14, oldest first.
    pub lead: &'a [Daily],
    /// One value per day of the span.
    pub days: &'a [Daily],
}

/// Days before the span that smoothing may look at.
const LEAD_DAYS: usize = 14;

impl Record {
    /// A record that starts on `first`; `generated` tells that no thermometer saw it.
    #[must_use]
    pub fn new(first: Date, days: Vec<Daily>, generated: bool) -> Self {
        Self {
            first,
            days,
            left_out: Vec::new(),
            withheld: Vec::new(),
            generated,
            origin: None,
            means: None,
        }
    }

    /// The days of so many whole calendar years from `first` on, as far as they are held.
    #[must_use]
    pub fn of_years(&self, first: i32, years: u32) -> Self {
        let position = |year: i32| {
            let day = Date::from_ymd_opt(year, 1, 1).unwrap_or_default();
            usize::try_from((day - self.first).num_days()).unwrap_or(0)
        };
        let from = position(first);
        let to = position(first.saturating_add_unsigned(years)).min(self.days.len());
        let days = self.days.get(from..to).unwrap_or_default().to_vec();
        Self::new(plus_days(self.first, from as i64), days, self.generated)
    }

    /// The same record from the first of January of a year on.
    #[must_use]
    pub fn since(mut self, year: i32) -> Self {
        let day = Date::from_ymd_opt(year, 1, 1).unwrap_or(self.first);
        let cut = usize::try_from((day - self.first).num_days()).unwrap_or(0);
        let cut = cut.min(self.days.len());
        let kept = |gap: &Range<usize>| {
            (gap.end > cut).then(|| gap.start.saturating_sub(cut)..gap.end - cut)
        };
        let left_out = self.left_out.iter().filter_map(kept).collect();
        Self {
            first: plus_days(self.first, cut as i64),
            days: self.days.split_off(cut),
            left_out,
            ..self
        }
    }

    /// The same record without what stands at these positions: calendar years, in order.
    #[must_use]
    pub fn leaving_out(self, left_out: Vec<Range<usize>>) -> Self {
        Self { left_out, ..self }
    }

    /// The same record, which gives no weather year of these labels any more. Its days stay, and all
    /// that is told of the place: only plans and their replay go by weather years.
    #[must_use]
    pub fn withholding(self, withheld: Vec<i32>) -> Self {
        Self { withheld, ..self }
    }

    /// The same record with what it was generated from.
    #[must_use]
    pub fn from_origin(self, origin: Origin) -> Self {
        Self {
            origin: Some(origin),
            means: Some(origin.means),
            ..self
        }
    }

    /// The same record with the monthly means that it was once generated from, as its file tells.
    #[must_use]
    pub fn from_means(self, means: Option<Monthly>) -> Self {
        Self { means, ..self }
    }

    /// The monthly means from which further years of its kind can be made, if they are known.
    #[must_use]
    pub fn means(&self) -> Option<Monthly> {
        self.means
    }

    /// From what it was generated, if that is known.
    #[must_use]
    pub fn origin(&self) -> Option<Origin> {
        self.origin
    }

    /// The first day.
    #[must_use]
    pub fn first(&self) -> Date {
        self.first
    }

    /// All days in order; those of years that are left out tell nothing, see `holds` and `held`.
    #[must_use]
    pub fn days(&self) -> &[Daily] {
        &self.days
    }

    /// The positions of the years that are left out.
    #[must_use]
    pub fn left_out(&self) -> &[Range<usize>] {
        &self.left_out
    }

    /// True if the record tells something of all these positions.
    #[must_use]
    pub fn holds(&self, days: &Range<usize>) -> bool {
        let apart = |gap: &Range<usize>| gap.end <= days.start || days.end <= gap.start;
        days.end <= self.days.len() && self.left_out.iter().all(apart)
    }

    /// The runs of days between the years that are left out, by position.
    pub fn runs(&self) -> impl Iterator<Item = Range<usize>> + '_ {
        let starts = std::iter::once(0).chain(self.left_out.iter().map(|gap| gap.end));
        let ends = self.left_out.iter().map(|gap| gap.start);
        let ends = ends.chain(std::iter::once(self.days.len()));
        starts.zip(ends).map(|(start, end)| start..end)
    }

    /// The days of which the record tells something, each with its date.
    pub fn held(&self) -> impl Iterator<Item = (Date, &Daily)> {
        self.runs().flat_map(move |run| {
            let days = self.days.get(run.clone()).unwrap_or_default();
            (run.start..)
                .zip(days)
                .map(|(at, day)| (plus_days(self.first, at as i64), day))
        })
    }

    /// True if no thermometer saw it: it was generated from monthly means, now or, as its file
    /// says, earlier.
    #[must_use]
    pub fn is_generated(&self) -> bool {
        self.generated
    }

    /// Every run of the plan's span that lies wholly within the record, one per calendar year:
    /// day `k` of the span is day `k` after the same month and day in that year. The days run
    /// on across New Year and leap days. What is withheld is passed over.
    #[must_use]
    pub fn years(&self, horizon: Horizon) -> Vec<WeatherYear<'_>> {
        let start = horizon.first();
        let last_year = plus_days(self.first, self.days.len() as i64).year();
        (self.first.year()..=last_year)
            .filter(|label| !self.withheld.contains(label))
            .filter_map(|label| {
                let day = start
                    .with_year(label)
                    .or_else(|| start.pred_opt()?.with_year(label))?;
                let from = usize::try_from((day - self.first).num_days()).ok()?;
                let run = self.runs().find(|run| run.contains(&from))?;
                let days = self.days.get(from..from + horizon.days())?;
                let lead = &self.days[run.start.max(from.saturating_sub(LEAD_DAYS))..from];
                (from + days.len() <= run.end).then_some(WeatherYear { label, lead, days })
            })
            .collect()
    }
}
