//! Water: the parts of the formulas by hand, and what holds in any weather. The published
//! examples stand in `outside`.

use proptest::prelude::*;
use tureen::garden::{Crop, Stages, WaterUse};
use tureen::growth::water::{
    counted_rain, crop_coefficient, reference_evapotranspiration, stages, to_give, water_use,
};
use tureen::units::{Celsius, Latitude, Metres, Millimetres};

use super::crops::plain;

fn thirsty() -> Crop {
    Crop {
        water: Some(WaterUse {
            initial: 0.4,
            mid: 1.2,
            end: 0.3,
        }),
        stages: Some(Stages {
            initial: 20.0,
            development: 30.0,
            mid: 40.0,
            late: 10.0,
        }),
        ..plain()
    }
}

fn reference(tmin: f64, tmax: f64, latitude: f64, day: u32) -> f64 {
    reference_evapotranspiration(Latitude(latitude), day, Celsius(tmin), Celsius(tmax)).0
}

/// Twice as long: every bend comes on twice the day.
#[test]
fn stages_are_stretched_alike() {
    let crop = thirsty();
    let (water, long) = (water_use(&crop), stages(&crop, 200.0));
    for (day, expected) in [
        (-5.0, 0.4),
        (0.0, 0.4),
        (40.0, 0.4),
        (70.0, 0.8),
        (100.0, 1.2),
        (180.0, 1.2),
        (190.0, 0.75),
        (200.0, 0.3),
        (230.0, 0.3),
    ] {
        let ours = crop_coefficient(&water, &long, day);
        assert!((ours - expected).abs() < 1e-12, "day {day}: {ours}");
    }
}

/// FAO56 tables 11 and 12: crucifers in April (20, 30, 20, 10 days) and small vegetables.
#[test]
fn a_crop_without_figures_drinks_as_small_vegetables_do() {
    let crop = plain();
    let (water, usual) = (water_use(&crop), stages(&crop, 80.0));
    assert_eq!([water.initial, water.mid, water.end], [0.7, 1.05, 0.95]);
    let days = [usual.initial, usual.development, usual.mid, usual.late];
    assert_eq!(days, [20.0, 30.0, 20.0, 10.0]);
}

/// A fifth of 5 mm is 1 mm: less rain dries off at once.
#[test]
fn a_shower_that_dries_off_does_not_count() {
    for (rain, counted) in [(0.0, 0.0), (0.9, 0.0), (1.0, 1.0), (30.0, 30.0)] {
        let ours = counted_rain(Millimetres(rain), Millimetres(5.0));
        assert_eq!(ours.0, counted, "{rain} mm");
    }
}

#[test]
fn frozen_days_take_nothing_and_days_with_little_sun_next_to_nothing() {
    assert_eq!(reference(-40.0, -30.0, 45.0, 10), 0.0);
    assert!(reference(-5.0, 5.0, 66.0, 355) < 0.01);
    assert!(reference(-5.0, 5.0, 45.0, 100) > 0.0);
}

proptest! {
    #[test]
    fn hotter_never_needs_less(
        tmin in -10.0..20.0f64, range in 0.0..20.0f64, hotter in 0.0..10.0f64,
        latitude in -66.0..66.0f64, day in 1..366u32,
    ) {
        let now = reference(tmin, tmin + range, latitude, day);
        let hotter_day = reference(tmin, tmin + range + hotter, latitude, day);
        let hotter_throughout = reference(tmin + hotter, tmin + range + hotter, latitude, day);
        prop_assert!(hotter_day >= now && hotter_throughout >= now);
    }

    #[test]
    fn more_rain_never_needs_more(
        lost in 0.0..60.0f64, reference in 0.0..9.0f64, rain in 0.0..40.0f64, more in 0.0..40.0f64,
    ) {
        let need = |rain: f64| {
            to_give(Millimetres(lost), counted_rain(Millimetres(rain), Millimetres(reference)))
        };
        prop_assert!(need(rain + more) <= need(rain));
        prop_assert!(need(rain).0 >= 0.0 && need(rain).0 <= lost);
    }

    #[test]
    fn the_coefficient_stays_between_its_figures(whole in 1.0..400.0f64, share in -0.5..1.5f64) {
        let crop = thirsty();
        let ours = crop_coefficient(&water_use(&crop), &stages(&crop, whole), whole * share);
        prop_assert!((0.3..=1.2).contains(&ours));
    }

    #[test]
    fn litres_grow_with_the_area(
        depth in 0.0..60.0f64, length in 0.3..20.0f64, width in 0.2..3.0f64, more in 1.0..5.0f64,
    ) {
        let litres = |width: f64| Millimetres(depth).on(Metres(length).by(Metres(width))).0;
        prop_assert!((litres(width * more) - litres(width) * more).abs() < 1e-9 * litres(20.0));
    }
}
