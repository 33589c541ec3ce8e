//! Water that beds lose and rain brings back.
//! Source: Allen, R.G., Pereira, L.S., Raes, D. and Smith, M. 1998. Crop evapotranspiration.
//! FAO Irrigation and Drainage Paper 56 (FAO56).

use crate::units::{Celsius, Latitude, Millimetres, Radiation};
use crate::weather::sun;

/// Millimetres of water that a megajoule on a square metre turns into vapour: FAO56
/// equation 20, the inverse of the latent heat of 2.45 MJ/kg.
const EVAPORATED_BY_MEGAJOULE: f64 = 0.408;

/// The water that radiation could turn into vapour: FAO56 equation 20.
#[must_use]
pub fn equivalent_evaporation(radiation: Radiation) -> Millimetres {
    Millimetres(EVAPORATED_BY_MEGAJOULE * radiation.0)
}

/// What short, well watered grass loses on a day: Hargreaves, FAO56 equation 52, from the
/// day's extremes and the sun above the atmosphere. `day_of_year` is 1 to 366. It is made
/// for spans of ten days and more; a single day can be far off.
#[must_use]
pub fn reference_evapotranspiration(
    latitude: Latitude,
    day_of_year: u32,
    tmin: Celsius,
    tmax: Celsius,
) -> Millimetres {
    let radiation = sun::extraterrestrial_radiation(latitude, day_of_year);
    let mean = (tmin + tmax) * 0.5;
    let range = (tmax - tmin).max(Celsius(0.0));
    let factor = 0.0023 * (mean.0 + 17.8) * range.0.sqrt();
    (equivalent_evaporation(radiation) * factor).max(Millimetres(0.0))
}
