//! A plain crop and plain weather, with round figures that are easy to work by hand.

use chrono::NaiveDate;
use tureen::calendar::{Horizon, plus_days};
use tureen::garden::{
    Ages, Caution, Crop, DegreeDayMethod, FrostResponse, Germination, GradeAt, Ingredient, Method,
    Microclimate, Needs, Picking, Ripening, Rotation, SeedSize, Source, Spacing, Sun, Yield,
};
use tureen::growth::{CropSeason, Light};
use tureen::units::{Celsius, Centimetres, Kilograms, Latitude, Millimetres, Share};
use tureen::weather::{Daily, WeatherYear};

use crate::support::crops::{ANY_GROUND, kitchen};

/// Days to come up at 0, 5, 10 ... 40 C.
const UP_IN_FIVE_DAYS: [Option<f64>; 9] = {
    let mut days = [None; 9];
    days[3] = Some(5.0);
    days[4] = Some(5.0);
    days
};

/// 65 packet days from sowing and 50 from planting at 16 C; no plateau.
const RIPENING: Ripening = Ripening {
    days_from_sowing: Some(65.0),
    days_from_planting: Some(50.0),
    short_from_sowing: None,
    short_from_planting: None,
    thermal_from_sowing: None,
    reference: Celsius(16.0),
    base: Celsius(-5.0),
    upper: None,
    method: DegreeDayMethod::Average,
};

/// Up in 5 days at 15 and 20 C. At a steady 16 C a day brings 21 degree-days: 65 days from
/// sowing are 60 from emergence. The base is below any frost used here, so that a cold night
/// before a hot noon changes nothing but the frost.
pub fn plain() -> Crop {
    Crop {
        name: "plain".into(),
        like: None,
        how: None,
        botanical: "Planta plana".into(),
        rotation: Rotation {
            family: "plain".into(),
            years_hard: 0,
            years_wished: 0,
        },
        methods: vec![Method::Direct, Method::Indoor],
        germination: Germination::Table(UP_IN_FIVE_DAYS),
        germinates: Share(0.8),
        ground: ANY_GROUND,
        thinning: None,
        indoor: None,
        ripening: RIPENING,
        frost_limit: Celsius(0.0),
        frost: FrostResponse::Killed,
        bolting: None,
        spoils: None,
        no_fruit: None,
        chill: None,
        bulbs: None,
        picking: Picking {
            keeps_bearing: false,
            one_pick_share: Share(1.0),
            holds_in_ground_days: 20,
            while_picked: None,
            safe_underground: false,
            cure_days: 0,
            storage_days: 7,
        },
        yields: Yield {
            low: Kilograms(0.1),
            expected: Kilograms(0.2),
            usable: Share(0.9),
        },
        spacing: Spacing {
            in_row: Centimetres(30.0),
            between_rows: Centimetres(30.0),
        },
        needs: Needs {
            sun: Sun::Full,
            soil: Centimetres(20.0),
            trellis: false,
        },
        seed_size: SeedSize::Medium,
        seed_keeps_years: None,
        ages: Ages::default(),
        water: None,
        stages: None,
        kitchen: kitchen(),
        caution: Caution::default(),
    }
}

pub fn ingredient(crop: Crop) -> Ingredient {
    Ingredient {
        name: crop.name.clone(),
        crop,
        teams: vec![GradeAt(0).into()],
        source: Source::Sown,
        methods: vec![Method::Direct],
        grams_per_portion: 20.0,
        least_share: Share(0.3),
        each_child_sows: 2,
        max_sowings: 1,
        instead: Vec::new(),
        fallback: None,
    }
}

pub fn day(tmin: f64, tmax: f64) -> Daily {
    Daily {
        tmin: Celsius(tmin),
        tmax: Celsius(tmax),
        rain: Millimetres(0.0),
    }
}

/// 210 days at a steady 16 C, and on the given days a night of -2 C before a noon of 34 C.
pub fn steady_with_frosts(frosts: &[usize]) -> Vec<Daily> {
    (0..210)
        .map(|n| match frosts.contains(&n) {
            true => day(-2.0, 34.0),
            false => day(16.0, 16.0),
        })
        .collect()
}

pub fn open_ground() -> Microclimate {
    Microclimate {
        frost_kept_off: Celsius(0.0),
        soil_bonus: Celsius(0.0),
    }
}

/// As many days as given, from Monday 1 March 2027.
pub fn from_march(days: &[Daily]) -> Horizon {
    from(NaiveDate::from_ymd_opt(2027, 3, 1).unwrap(), days)
}

pub fn from(first: NaiveDate, days: &[Daily]) -> Horizon {
    Horizon::spanning(first, plus_days(first, days.len() as i64 - 1))
}

/// A crop's season at the equator, where every day has twelve hours, in open ground.
pub fn season(crop: &Crop, days: &[Daily]) -> CropSeason {
    let year = WeatherYear {
        label: 2027,
        lead: &[],
        days,
    };
    CropSeason::new(
        crop,
        open_ground(),
        &year,
        &Light::of(Latitude(0.0), from_march(days)),
    )
}
