//! Hours of daylight on the days of a plan: computed once for a place, since they are the same for every
//! crop and in every weather year.

use chrono::Datelike;

use crate::calendar::Horizon;
use crate::units::{Hours, Latitude};
use crate::weather::sun;

/// Hours of daylight by day number.
#[derive(Debug, Clone, PartialEq)]
pub struct Light {
    latitude: Latitude,
    hours: Vec<Hours>,
}

impl Light {
    /// The light at a latitude on all days of a span.
    #[must_use]
    pub fn of(latitude: Latitude, horizon: Horizon) -> Self {
        let hours = |day| sun::day_length(latitude, horizon.date(day).ordinal());
        Self {
            latitude,
            hours: (0..horizon.days()).map(hours).collect(),
        }
    }

    /// Where it shines.
    #[must_use]
    pub fn latitude(&self) -> Latitude {
        self.latitude
    }

    /// Hours of daylight by day number.
    #[must_use]
    pub fn hours(&self) -> &[Hours] {
        &self.hours
    }

    /// The days of so many hours or more, in order.
    #[must_use]
    pub fn days_of(&self, hours: Hours) -> Vec<usize> {
        let days = self.hours.iter().enumerate();
        days.filter(|(_, light)| **light >= hours)
            .map(|(day, _)| day)
            .collect()
    }
}
