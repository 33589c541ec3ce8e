//! Water that beds lose and rain brings back.
//! Source: Allen, R.G., Pereira, L.S., Raes, D. and Smith, M. 1998. Crop evapotranspiration.
//! FAO Irrigation and Drainage Paper 56 (FAO56).

use crate::garden::{Crop, Stages, WaterUse};
use crate::units::{Celsius, Latitude, Millimetres, Radiation, Share};
use crate::weather::sun;

/// Millimetres of water that a megajoule on a square metre turns into vapour: FAO56
/// equation 20, the inverse of the latent heat of 2.45 MJ/kg.
const EVAPORATED_BY_MEGAJOULE: f64 = 0.408;

/// A day's rain below this share of the reference evapotranspiration dries off before it
/// reaches a root: FAO56 chapter 8, on the daily water balance.
const LOST_RAIN: Share = Share(0.2);

/// Crop coefficients where none are published for the crop: those of the group "small
/// vegetables" in FAO56 table 12.
const USUAL_USE: WaterUse = WaterUse {
    initial: 0.7,
    mid: 1.05,
    end: 0.95,
};

/// Stages where none are published for the crop: those of "crucifers", sown in April around
/// the Mediterranean, in FAO56 table 11. That they fit others is from memory.
const USUAL_STAGES: Stages = Stages {
    initial: 20.0,
    development: 30.0,
    mid: 20.0,
    late: 10.0,
};

/// The water that radiation could turn into vapour: FAO56 equation 20.
#[must_use]
pub fn equivalent_evaporation(radiation: Radiation) -> Millimetres {
    Millimetres(EVAPORATED_BY_MEGAJOULE * radiation.0)
}

/// What short, well watered grass loses on a day: Hargreaves, FAO56 equation 52, from the
/// day's extremes and the sun above the atmosphere. `day_of_year` is 1 to 366. Weeks come out
/// better than single days.
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

/// The crop coefficients to compute with: the crop's own, or those of small vegetables.
#[must_use]
pub fn water_use(crop: &Crop) -> WaterUse {
    crop.water.unwrap_or(USUAL_USE)
}

/// The stages of a planting that takes `days` from its start to its last pick: the crop's
/// published ones, or the usual ones, all four stretched alike.
#[must_use]
pub fn stages(crop: &Crop, days: f64) -> Stages {
    let published = crop.stages.unwrap_or(USUAL_STAGES);
    let factor = days / whole(&published);
    Stages {
        initial: published.initial * factor,
        development: published.development * factor,
        mid: published.mid * factor,
        late: published.late * factor,
    }
}

/// Days of all four stages.
fn whole(stages: &Stages) -> f64 {
    stages.initial + stages.development + stages.mid + stages.late
}

/// The crop coefficient `day` days after the start: constant in the initial and the mid
/// stage, on a straight line between and after (FAO56 equation 66). Before the start it is
/// that of the initial stage, after the end that of the end.
#[must_use]
pub fn crop_coefficient(water: &WaterUse, stages: &Stages, day: f64) -> f64 {
    let developing = day - stages.initial;
    let late = developing - stages.development - stages.mid;
    if developing <= 0.0 {
        water.initial
    } else if developing < stages.development {
        line(water.initial, water.mid, developing / stages.development)
    } else if late <= 0.0 {
        water.mid
    } else if late < stages.late {
        line(water.mid, water.end, late / stages.late)
    } else {
        water.end
    }
}

/// The value a share of the way from one to another.
fn line(from: f64, to: f64, share: f64) -> f64 {
    from + (to - from) * share
}

/// The part of a day's rain that counts: all of it, or nothing where it is so little that it
/// dries off at once.
#[must_use]
pub fn counted_rain(rain: Millimetres, reference: Millimetres) -> Millimetres {
    if rain < reference * LOST_RAIN.0 {
        Millimetres(0.0)
    } else {
        rain
    }
}

/// What a week's watering must bring: what the crop loses (FAO56 equation 58, the crop
/// coefficient times the reference, added up) less the rain that counts, never below nothing.
/// What rain brings beyond the week's need is not kept for the next week, which is careful
/// (common practice).
#[must_use]
pub fn to_give(lost: Millimetres, rain: Millimetres) -> Millimetres {
    (lost - rain).max(Millimetres(0.0))
}
