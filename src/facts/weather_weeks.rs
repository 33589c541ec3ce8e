//! Frost and warmth of the past years, week by week along a plan.

use crate::calendar::{Date, plus_days};
use crate::units::Celsius;
use crate::weather::cold_days::{ColdDays, FREEZING};
use crate::weather::rank::nearest_rank;

use super::Facts;

/// One week of the plan as the weather years saw it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Week {
    /// Share of the years in which it still freezes in this week or later in spring, or has
    /// frozen by the end of it in autumn.
    pub frost: f64,
    /// The week's mean warmth that one year in ten is colder than.
    pub cold: Celsius,
    /// That of the middle year.
    pub middle: Celsius,
    /// That which one year in ten is warmer than.
    pub warm: Celsius,
}

/// All weeks, with the edges of the frosts.
#[derive(Debug, Clone, PartialEq)]
pub struct WeatherWeeks {
    /// The weeks of the plan.
    pub weeks: Vec<Week>,
    /// After this day it freezes once more in spring in half of the years, and in one of ten.
    pub last_frosts: [Option<Date>; 2],
    /// Before this day it has frozen in autumn in one of ten years, and in half.
    pub first_frosts: [Option<Date>; 2],
}

impl Facts<'_> {
    /// The weeks of the plan as the weather years saw them; `None` without a whole weather year.
    #[must_use]
    pub fn weather_weeks(&self) -> Option<WeatherWeeks> {
        let garden = self.garden;
        let horizon = garden.horizon();
        let frosts = ColdDays::frosts(&garden.weather, garden.latitude, FREEZING);
        let years = garden.weather.years(horizon);
        let week = |week: usize| {
            let frost = share(&frosts, horizon.monday(week))?;
            let mut means: Vec<f64> = years
                .iter()
                .filter_map(|year| year.days.get(week * 7..week * 7 + 7))
                .map(|days| days.iter().map(|d| d.mean().0).sum::<f64>() / 7.0)
                .collect();
            means.sort_by(f64::total_cmp);
            let at = |share| nearest_rank(&means, share).map(Celsius);
            Some(Week {
                frost,
                cold: at(0.1)?,
                middle: at(0.5)?,
                warm: at(0.9)?,
            })
        };
        Some(WeatherWeeks {
            weeks: (0..horizon.weeks()).map(week).collect::<Option<_>>()?,
            last_frosts: [0.5, 0.1].map(|share| frosts.still_after(share)),
            first_frosts: [0.1, 0.5].map(|share| frosts.already_before(share)),
        })
    }
}

/// The greater share of the week's first and last day: in spring it is the first day's, in
/// autumn the last one's.
fn share(frosts: &ColdDays, monday: Date) -> Option<f64> {
    let ends = [monday, plus_days(monday, 6)];
    let shares = ends.iter().filter_map(|day| frosts.share_around(*day));
    shares.reduce(f64::max)
}

impl WeatherWeeks {
    /// Ticks of warmth so many degrees apart that hold all weeks.
    #[must_use]
    pub fn ticks(&self, apart: Celsius) -> Vec<Celsius> {
        let ends = self.weeks.iter();
        let low = ends.clone().map(|w| w.cold.0).fold(f64::MAX, f64::min);
        let high = ends.map(|w| w.warm.0).fold(f64::MIN, f64::max);
        let first = (low / apart.0).floor() as i32;
        let last = (high / apart.0).ceil() as i32;
        let ticks = first..=last.max(first + 1);
        ticks.map(|t| Celsius(f64::from(t) * apart.0)).collect()
    }

    /// The coldest and the warmest week of the middle year.
    #[must_use]
    pub fn middle_range(&self) -> (Celsius, Celsius) {
        let middle = self.weeks.iter().map(|week| week.middle.0);
        (
            Celsius(middle.clone().fold(f64::MAX, f64::min)),
            Celsius(middle.fold(f64::MIN, f64::max)),
        )
    }
}
