//! Daily weather of many years, past or generated, and the sun above them.

pub mod cold_days;
pub mod generator;
pub mod monthly;
pub mod rank;
pub mod sun;
pub mod trend;
pub mod weeks;

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

/// A record of consecutive days without a gap.
#[derive(Debug, Clone, PartialEq)]
pub struct Record {
    first: Date,
    days: Vec<Daily>,
    generated: bool,
    origin: Option<Origin>,
}

/// From what a record was generated; the same origin gives the same record.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Origin {
    /// The monthly means.
    pub means: Monthly,
    /// The seed.
    pub seed: u64,
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
            generated,
            origin: None,
        }
    }

    /// The same record with what it was generated from.
    #[must_use]
    pub fn from_origin(self, origin: Origin) -> Self {
        Self {
            origin: Some(origin),
            ..self
        }
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

    /// All days in order.
    #[must_use]
    pub fn days(&self) -> &[Daily] {
        &self.days
    }

    /// True if no thermometer saw it: it was generated from monthly means, now or, as its file
    /// says, earlier.
    #[must_use]
    pub fn is_generated(&self) -> bool {
        self.generated
    }

    /// Every run of the plan's span that lies wholly within the record, one per calendar year:
    /// day `k` of the span is day `k` after the same month and day in that year. The days run
    /// on across New Year and leap days.
    #[must_use]
    pub fn years(&self, horizon: Horizon) -> Vec<WeatherYear<'_>> {
        let start = horizon.first();
        let last_year = plus_days(self.first, self.days.len() as i64).year();
        (self.first.year()..=last_year)
            .filter_map(|label| {
                let day = start
                    .with_year(label)
                    .or_else(|| start.pred_opt()?.with_year(label))?;
                let from = usize::try_from((day - self.first).num_days()).ok()?;
                let days = self.days.get(from..from + horizon.days())?;
                let lead = &self.days[from.saturating_sub(LEAD_DAYS)..from];
                Some(WeatherYear { label, lead, days })
            })
            .collect()
    }
}
