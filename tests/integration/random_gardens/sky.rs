//! Random weather: a yearly wave, years that are warmer or colder, and days that wander.

use chrono::Datelike;
use tureen::calendar::{Horizon, days_between, plus_days};
use tureen::units::{Celsius, Millimetres};
use tureen::weather::{Daily, Record};

use super::dice::Dice;

/// A record in which a span of weeks lies wholly exactly `years` times.
pub fn record(dice: &mut Dice, south: bool, span: Horizon, years: u32) -> Record {
    let last_start = span.first();
    let first_start = last_start
        .with_year(last_start.year() + 1 - years as i32)
        .unwrap_or(last_start);
    let lead = if dice.chance(0.5) { 14 } else { 0 };
    let first = plus_days(first_start, -lead);
    let warmest = if south { 15.0 } else { 197.0 };
    let (mean, swing) = (dice.real(9.0, 14.0), dice.real(8.0, 12.0));
    let restless = dice.real(0.5, 2.0);
    let (mut of_year, mut walk) = (0.0, 0.0);
    let days = days_between(first, span.last()).map(|day| {
        if day.ordinal() == 1 || day == first {
            of_year = dice.real(-2.5, 2.5);
        }
        walk = 0.85 * walk + restless * dice.real(-1.0, 1.0);
        let season = (f64::from(day.ordinal()) - warmest) / 365.25 * std::f64::consts::TAU;
        let air = mean + swing * season.cos() + of_year + walk;
        let half_range = dice.real(3.0, 7.0);
        Daily {
            tmin: Celsius(air - half_range),
            tmax: Celsius(air + half_range),
            rain: Millimetres(if dice.chance(0.3) {
                dice.real(0.0, 12.0)
            } else {
                0.0
            }),
        }
    });
    let days = days.collect();
    Record::new(first, days, true)
}
