//! Coming up and ripening, worked by hand on plain weather.

use chrono::NaiveDate;
use tureen::garden::{Germination, Microclimate};
use tureen::growth::{CropSeason, Fate, Light, Loss};
use tureen::units::{Celsius, DegreeDays, Latitude};
use tureen::weather::WeatherYear;

use super::crops::{day, from, from_march, open_ground, plain, season, steady_with_frosts};

fn fate(up: usize, ripe: usize, past: usize) -> Fate {
    Fate {
        up: Some(up),
        ripe: Some(ripe),
        gone: Some((past, Loss::Past)),
    }
}

#[test]
fn a_steady_year_takes_packet_days() {
    let season = season(&plain(), &steady_with_frosts(&[]));
    // Up after 5 days, ripe 65 after sowing; 20 days of holding, past on the 21st.
    assert_eq!(season.sown(10), fate(15, 75, 96));
    // Plants: 50 days from planting.
    assert_eq!(season.planted(10), fate(10, 60, 81));
}

#[test]
fn two_degrees_warmer_takes_fewer_days() {
    let season = season(&plain(), &vec![day(18.0, 18.0); 210]);
    // 60 days of 21 C-days are 1260; at 18 C a day brings 23: 54.8 days.
    assert_eq!(season.sown(10), fate(15, 70, 91));
}

#[test]
fn the_upper_limit_holds_for_the_reference_too() {
    let mut crop = plain();
    crop.ripening.upper = Some(Celsius(15.0));
    // Reference 16 and steady 16 C both count as 15: packet days again.
    let season = season(&crop, &steady_with_frosts(&[]));
    assert_eq!(season.sown(10), fate(15, 75, 96));
}

#[test]
fn warmth_has_a_plateau() {
    // Short ends of 60 days from sowing and 50 from planting: at the quickest 48, of which 5 to come up, and
    // 40. Sown it needs 1260, so a day brings at most 1260 / 43 = 29.3, as one of 24.3 C does; planted 1050
    // and 1050 / 40 = 26.25, as one of 21.25 C.
    let mut crop = plain();
    crop.germination = Germination::Range {
        min: Celsius(5.0),
        optimum: Celsius(15.0),
        max: Celsius(40.0),
        days: 5.0,
    };
    crop.ripening.short_from_sowing = Some(60.0);
    crop.ripening.short_from_planting = Some(50.0);
    let at = |mean: f64| season(&crop, &vec![day(mean, mean); 210]);
    for mean in [21.25, 22.0, 25.0, 30.0] {
        assert_eq!(at(mean).planted(10), fate(10, 50, 71), "{mean}");
        assert_eq!(at(mean).begun(10, true), fate(10, 50, 71), "{mean}");
    }
    for mean in [24.4, 25.0, 30.0] {
        assert_eq!(at(mean).sown(10), fate(15, 58, 79), "{mean}");
    }
    // Under it nothing changes: 1050 / 26 = 40.4 days at 21 C, and 1260 / 28 = 45 at 23 C.
    assert_eq!(at(21.0).planted(10), fate(10, 51, 72));
    assert_eq!(at(23.0).sown(10), fate(15, 60, 81));
    // A day's noon does not matter, only what it brings in all: 11 and 30 C have a mean of 20.5 C.
    let noons = season(&crop, &vec![day(11.0, 30.0); 210]);
    assert_eq!(noons.planted(10), fate(10, 52, 73));
    // No plateau is under the reference: there packet days hold.
    crop.ripening.short_from_sowing = Some(200.0);
    assert_eq!(
        season(&crop, &steady_with_frosts(&[])).sown(10),
        fate(15, 75, 96)
    );
}

#[test]
fn emergence_adds_up_over_changing_soil() {
    // 20 days at 12 C: nothing comes up below 15 C. Then 20 C: the soil's week reads
    // 13.1, 14.3, 15.4 C: it starts on the third warm day.
    let mut days = vec![day(12.0, 12.0); 20];
    days.extend(vec![day(20.0, 20.0); 100]);
    let season = season(&plain(), &days);
    assert_eq!(season.sown(0).up, Some(26)); // days 22 to 26 at a fifth each
    assert_eq!(season.sown(23).up, Some(28)); // days 24 to 28
}

#[test]
fn emergence_at_two_rates() {
    // 15 C for ten days, then 25 C; ten days to come up at 15 C, five at 25 C.
    let mut crop = plain();
    crop.germination = Germination::Range {
        min: Celsius(5.0),
        optimum: Celsius(25.0),
        max: Celsius(35.0),
        days: 5.0,
    };
    let season = season(&crop, &vec![day(15.0, 15.0); 60]);
    assert_eq!(season.sown(3).up, Some(13));
    let warm_bed = Microclimate {
        soil_bonus: Celsius(10.0),
        ..open_ground()
    };
    let days = vec![day(15.0, 15.0); 60];
    let year = WeatherYear {
        label: 2027,
        lead: &[],
        days: &days,
    };
    let warm = CropSeason::new(
        &crop,
        warm_bed,
        &year,
        &Light::of(Latitude(0.0), from_march(&days)),
    );
    assert_eq!(warm.sown(3).up, Some(8));
}

#[test]
fn published_warmth_counts_from_sowing() {
    let mut crop = plain();
    crop.ripening.thermal_from_sowing = Some(DegreeDays(840.0)); // 40 days of 21
    let season = season(&crop, &steady_with_frosts(&[]));
    assert_eq!(season.sown(10), fate(15, 50, 71));
    assert_eq!(season.planted(10), fate(10, 60, 81)); // still packet days
}

#[test]
fn a_missing_packet_count_is_made_from_the_other() {
    let steady = steady_with_frosts(&[]);
    let mut crop = plain();
    crop.ripening.days_from_planting = None;
    // 65 days less 5 to come up less two weeks of head start: 46.
    assert_eq!(season(&crop, &steady).planted(10), fate(10, 56, 77));
    crop.ripening.days_from_planting = Some(50.0);
    crop.ripening.days_from_sowing = None;
    // 5 days to come up, 50 and two weeks more.
    assert_eq!(season(&crop, &steady).sown(10), fate(15, 79, 100));
    crop.ripening.days_from_planting = None;
    let nothing = season(&crop, &steady);
    assert_eq!(nothing.sown(10).ripe, None);
    assert_eq!(nothing.planted(10).ripe, None);
    crop.ripening.thermal_from_sowing = Some(DegreeDays(1260.0));
    // 60 days from sowing; for plants 19 fewer.
    assert_eq!(season(&crop, &steady).sown(10), fate(15, 70, 91));
    assert_eq!(season(&crop, &steady).planted(10), fate(10, 51, 72));
}

#[test]
fn short_days_stand_still() {
    // At 50 N the sun of FAO-56 is up for less than ten hours from day 296 (23 October) to
    // day 48 (17 February): worked from equations 24, 25 and 34 by hand.
    let days = vec![day(16.0, 16.0); 280];
    let first = NaiveDate::from_ymd_opt(2026, 10, 5).unwrap();
    let horizon = from(first, &days);
    let year = WeatherYear {
        label: 2026,
        lead: &[],
        days: &days,
    };
    let mut crop = plain();
    let ripe_after = |crop: &_, lat| {
        let season = CropSeason::new(
            crop,
            open_ground(),
            &year,
            &Light::of(Latitude(lat), horizon),
        );
        season.planted(0).ripe.map(|d| horizon.date(d))
    };
    // Planted on 5 October: 17 days of growth until 22 October.
    crop.ripening.days_from_planting = Some(17.0);
    assert_eq!(
        ripe_after(&crop, 50.0),
        NaiveDate::from_ymd_opt(2026, 10, 22)
    );
    // Three more days are 18, 19 and 20 February.
    crop.ripening.days_from_planting = Some(20.0);
    assert_eq!(
        ripe_after(&crop, 50.0),
        NaiveDate::from_ymd_opt(2027, 2, 20)
    );
    // In the south these are the long days.
    assert_eq!(
        ripe_after(&crop, -50.0),
        NaiveDate::from_ymd_opt(2026, 10, 25)
    );
}

#[test]
fn nothing_beyond_the_span() {
    let season = season(&plain(), &steady_with_frosts(&[]));
    let never = Fate {
        up: None,
        ripe: None,
        gone: None,
    };
    for day in [210, 211, 100_000, usize::MAX] {
        assert_eq!(season.sown(day), never);
        assert_eq!(season.planted(day), never);
    }
    assert_eq!(season.sown(209), never);
    // Up, but the span ends before it is ripe.
    assert_eq!(
        season.sown(150),
        Fate {
            up: Some(155),
            ..never
        }
    );
    // Ripe on the last day: past only after the span.
    assert_eq!(
        season.sown(144),
        Fate {
            up: Some(149),
            ripe: Some(209),
            gone: None
        }
    );
    let empty = super::crops::season(&plain(), &[]);
    assert_eq!(empty.sown(0), never);
    assert_eq!(empty.planted(0), never);
    for as_plants in [true, false] {
        for day in [210, 211, usize::MAX] {
            assert_eq!(season.begun(day, as_plants), never);
        }
        assert_eq!(empty.begun(0, as_plants), never);
    }
}

/// What stands at the start was sown or planted, and no year's frozen ground undoes that; where the ground
/// can be worked it grows like anything else.
#[test]
fn what_has_begun_is_given_however_cold_the_ground() {
    // 2 C for twenty days, then 16 C: the soil's week passes 4 C on the second of these.
    let mut days = vec![day(2.0, 2.0); 20];
    days.extend(vec![day(16.0, 16.0); 190]);
    let season = season(&plain(), &days);
    assert_eq!(season.sown(5).gone, Some((5, Loss::NotSown)));
    assert_eq!(season.planted(5).gone, Some((5, Loss::NotPlanted)));
    let [seed, plants] = [false, true].map(|as_plants| season.begun(5, as_plants));
    // Nothing grows in the cold: both are as far as what is begun when it ends.
    assert!(seed.up.is_some_and(|up| up > 20) && seed.ripe.is_some());
    assert_eq!(plants.up, Some(5));
    assert!(plants.ripe.is_some() && plants.ripe < seed.ripe);
    for day in [25, 40, 100] {
        assert_eq!(season.begun(day, false), season.sown(day));
        assert_eq!(season.begun(day, true), season.planted(day));
    }
}
