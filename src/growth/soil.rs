//! Soil temperature from air temperature, where nobody has measured it.

use crate::units::Celsius;
use crate::weather::{Daily, WeatherYear};

/// How many days of air the upper soil remembers.
const MEMORY: usize = 7;

/// Soil temperature at sowing depth for every day of the span: the mean of the air over the
/// day and the six before it, plus what ground is warmer (`garden::OPEN_GROUND` and the bed's own). Where the record begins with the span,
/// the first days look back less far. An approximation (common practice): bare soil in sun
/// is warmer in spring, soil under mulch is colder; a measured bonus corrects it.
#[must_use]
pub fn soil_temperatures(year: &WeatherYear<'_>, bonus: Celsius) -> Vec<Celsius> {
    let air: Vec<Celsius> = year.lead.iter().chain(year.days).map(Daily::mean).collect();
    (1 + year.lead.len()..=air.len())
        .map(|end| {
            let seen = &air[end.saturating_sub(MEMORY)..end];
            seen.iter().copied().sum::<Celsius>() * (1.0 / seen.len() as f64) + bonus
        })
        .collect()
}
