//! A crop through the years of a place: how long it takes, not whether it lives.

use chrono::NaiveDate;
use tureen::calendar::Horizon;
use tureen::garden::{Crop, Microclimate, OPEN_GROUND};
use tureen::growth::season::least_soil;
use tureen::growth::soil::soil_temperatures;
use tureen::growth::{CropSeason, Light};
use tureen::units::Celsius;

use super::packets::{Packet, Way};
use super::places::Place;

/// One year: the crop's sums, and the warmth of the ground.
pub struct Season {
    crop: CropSeason,
    soil: Vec<Celsius>,
}

/// Two years from Monday 1 January 2001.
pub fn horizon() -> Horizon {
    let day = |year, month, day| NaiveDate::from_ymd_opt(year, month, day).unwrap();
    Horizon::spanning(day(2001, 1, 1), day(2002, 12, 31))
}

pub fn open_ground() -> Microclimate {
    Microclimate {
        frost_kept_off: Celsius(0.0),
        soil_bonus: OPEN_GROUND,
    }
}

/// All years of a place; `None` if the crop is not grown there. Frost, bolting, heat and cold that end it are left
/// out.
pub fn seasons(crop: &Crop, packet: &Packet, place: &Place) -> Option<Vec<Season>> {
    if packet.is_warm() && !place.warm {
        return None;
    }
    let mut crop = crop.clone();
    crop.frost_limit = Celsius(-100.0);
    crop.bolting = None;
    (crop.spoils, crop.no_fruit, crop.chill) = (None, None, None);
    let seasons = place.record.years(horizon());
    let seasons = seasons.iter().map(|year| Season {
        crop: CropSeason::new(
            &crop,
            open_ground(),
            year,
            &Light::of(place.latitude, horizon()),
        ),
        soil: soil_temperatures(year, OPEN_GROUND),
    });
    Some(seasons.collect())
}

/// Days to the first pick in the median year, if it is begun on a day, or as soon after as the
/// ground is warm enough for the crop.
pub fn grown(crop: &Crop, way: Way, years: &[Season], start: usize) -> usize {
    let least = least_soil(crop, way == Way::Planted);
    let days = years.iter().map(|year| {
        let mut wait = start..year.soil.len();
        let begun = wait.find(|day| year.soil[*day] >= least)?;
        let fate = match way {
            Way::Planted => year.crop.planted(begun),
            Way::Sown => year.crop.sown(begun),
        };
        Some(fate.ripe? - begun)
    });
    median(days.map(|d| d.unwrap_or(usize::MAX)).collect())
}

/// The value in the middle, the greater of two.
pub fn median(mut values: Vec<usize>) -> usize {
    values.sort_unstable();
    values[values.len() / 2]
}
