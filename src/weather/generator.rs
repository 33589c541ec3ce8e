//! Weather years from monthly means: seeded, the same on every run, and frozen on the dates of the
//! town's own table where those are known.

use chrono::Datelike;

use crate::calendar::Date;

use super::frost_fit::Stretch;
use super::monthly::Monthly;
use super::sky::{Climate, Sky};
use super::{Origin, Record};

/// Generates `years` whole calendar years, the first labelled `first_year`. A shorter run
/// is the beginning of a longer one with the same seed. Values are given to a tenth, as
/// gauges read. Temperatures use no function whose last digit depends on the machine; rain
/// uses a logarithm, whose last digit the rounding hides.
#[must_use]
pub fn generate(monthly: &Monthly, first_year: i32, years: u32, seed: u64) -> Record {
    let first = Date::from_ymd_opt(first_year, 1, 1).unwrap_or_default();
    let end = i64::from(first.year()) + i64::from(years);
    let climate = Climate::of(monthly);
    let stretch = Stretch::of(monthly);
    let mut sky = Sky::new(seed);
    let days = first
        .iter_days()
        .take_while(|day| i64::from(day.year()) < end)
        .map(|day| sky.next_day(&climate, day, stretch.on(day)))
        .collect();
    Record::new(first, days, true).from_origin(Origin {
        means: *monthly,
        seed,
        out_of_reach: stretch.out_of_reach,
    })
}
