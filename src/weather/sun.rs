//! Day length and radiation above the atmosphere, after FAO Irrigation and Drainage Paper 56.

use crate::units::{Hours, Latitude};

/// Hours of daylight on day `day_of_year` (1 to 366): FAO-56 equation 34.
#[must_use]
pub fn day_length(latitude: Latitude, day_of_year: u32) -> Hours {
    todo!("{latitude} {day_of_year}")
}
