//! Starts through the year at a place: the fates of `CropSeason`, gathered; worked by hand in
//! weather that is the same every day.

use chrono::Datelike;
use tureen::calendar::{Horizon, days_between, plus_days};
use tureen::garden::{FrostResponse, Microclimate, OPEN_GROUND};
use tureen::growth::outlook::{Outlook, Way};
use tureen::growth::{CropSeason, Light};
use tureen::units::{Celsius, Latitude};
use tureen::weather::Record;

use crate::support::crops::{raised_crop, sown_crop};
use crate::support::day;
use crate::support::weather::{daily, steady_years};

const EQUATOR: Latitude = Latitude(0.0);

/// Three years of 15 C on every day: two that are followed by another.
fn mild() -> Record {
    steady_years(&[daily(10.0, 20.0); 3])
}

/// Years with -5 C on every night of January to March, and 15 C on all days after.
fn winters(years: &str) -> Record {
    let days = days_between(day("2001-01-01"), day(years)).map(|d| {
        if d.month() <= 3 {
            daily(-5.0, 1.0)
        } else {
            daily(10.0, 20.0)
        }
    });
    Record::new(day("2001-01-01"), days.collect(), false)
}

#[test]
fn in_steady_weather_every_start_is_ripe_after_its_packet_days() {
    // Up after 5 days, 55 more until ripe; plants after 40 days.
    let sown = Outlook::new(&sown_crop("bean", 60.0), &mild(), EQUATOR, 2027);
    assert_eq!(sown.years(), 2);
    let starts = sown.starts(Way::Sown);
    assert_eq!(starts.len(), 26);
    assert_eq!(starts[0].day, day("2027-01-04"), "the first Monday");
    for start in &starts {
        assert_eq!(start.up, [5, 5]);
        assert_eq!(start.ripe, [60, 60]);
        assert_eq!(start.ripe_by(0.5), Some(plus_days(start.day, 60)));
        assert_eq!(start.years(), 2);
    }
    let planted = Outlook::new(&raised_crop("tomato", 40.0), &mild(), EQUATOR, 2027);
    let ripe = |way| planted.starts(way)[3].ripe.clone();
    assert_eq!(ripe(Way::Planted), [40, 40]);
}

#[test]
fn it_says_what_the_season_says() {
    let record = winters("2005-12-31");
    let crop = sown_crop("bean", 60.0);
    let outlook = Outlook::new(&crop, &record, EQUATOR, 2027);
    let first = day("2027-01-04");
    let horizon = Horizon::spanning(first, plus_days(first, 103 * 7 - 1));
    let open = Microclimate {
        frost_kept_off: Celsius(0.0),
        soil_bonus: OPEN_GROUND,
    };
    let seasons: Vec<CropSeason> = record
        .years(horizon)
        .iter()
        .map(|year| CropSeason::new(&crop, open, year, &Light::of(EQUATOR, horizon)))
        .collect();
    assert_eq!(outlook.years(), seasons.len());
    for start in outlook.starts(Way::Sown) {
        let at = horizon.day_number(start.day).unwrap();
        let fates = seasons.iter().map(|season| season.sown(at));
        let mut ripe: Vec<usize> = fates.filter_map(|f| Some(f.ripe? - at)).collect();
        ripe.sort_unstable();
        assert_eq!(start.ripe, ripe, "{}", start.day);
    }
}

#[test]
fn the_first_safe_day_has_soil_that_can_be_worked_and_no_frost_after_it() {
    // The first mild day is 1 April. The mean of seven days is 2 C and more from the second on, which
    // makes the soil 4 C: (5 x -2 + 2 x 15) / 7 = 2.9 C.
    let record = winters("2004-12-31");
    let plants = raised_crop("tomato", 40.0);
    let outlook = Outlook::new(&plants, &record, EQUATOR, 2027);
    let planted = outlook.first_safe(Way::Planted).unwrap();
    assert_eq!((planted.month(), planted.day()), (4, 2));
    assert!(!outlook.begins_on(planted));
    // A frost on 1 May of two years of three moves it to May: the frost of the day itself
    // is over.
    let late = |d: tureen::calendar::Date| d.month() == 5 && d.day() == 1 && d.year() <= 2002;
    let days = days_between(day("2001-01-01"), day("2004-12-31")).zip(record.days());
    let days = days.map(|(d, w)| if late(d) { daily(-3.0, 20.0) } else { *w });
    let record = Record::new(day("2001-01-01"), days.collect(), false);
    let outlook = Outlook::new(&plants, &record, EQUATOR, 2027);
    let planted = outlook.first_safe(Way::Planted).unwrap();
    assert_eq!((planted.month(), planted.day()), (5, 1));
    // What frost only sets back does not wait for it.
    let mut hardy = plants;
    hardy.frost = FrostResponse::SetBack { days: 5.0 };
    let outlook = Outlook::new(&hardy, &record, EQUATOR, 2027);
    let planted = outlook.first_safe(Way::Planted).unwrap();
    assert_eq!((planted.month(), planted.day()), (4, 2));
}

#[test]
fn safe_is_what_lives_in_nine_years_of_ten_not_in_eight() {
    // Ten springs; a frost on 1 May in the first of them, or in the first two. In the two leap years
    // the second mild day is a day later of the year, so 2 April is safe in eight of ten.
    let record = winters("2011-12-31");
    let plants = raised_crop("tomato", 40.0);
    let first_safe = |frosts: i32| {
        let late =
            |d: tureen::calendar::Date| d.month() == 5 && d.day() == 1 && d.year() <= 2000 + frosts;
        let days = days_between(day("2001-01-01"), day("2011-12-31")).zip(record.days());
        let days = days.map(|(d, w)| if late(d) { daily(-3.0, 20.0) } else { *w });
        let record = Record::new(day("2001-01-01"), days.collect(), false);
        let outlook = Outlook::new(&plants, &record, EQUATOR, 2027);
        assert_eq!(outlook.years(), 10);
        let safe = outlook.first_safe(Way::Planted).unwrap();
        (safe.month(), safe.day())
    };
    assert_eq!([0, 1, 2].map(first_safe), [(4, 3), (4, 3), (5, 1)]);
}

#[test]
fn seed_that_rots_is_told_apart_from_ground_that_is_too_cold() {
    let outlook = |rots_after, least| {
        let mut crop = sown_crop("bean", 60.0);
        crop.ground.rots_after = rots_after;
        crop.ground.sow = Some(Celsius(least));
        let outlook = Outlook::new(&crop, &mild(), EQUATOR, 2027);
        let start = outlook.starts(Way::Sown).remove(3);
        let safe = outlook.first_safe(Way::Sown).is_some();
        assert_eq!(outlook.up_within(), rots_after);
        assert_eq!(start.years(), 2);
        (start.up.len(), start.rotted, start.not_up, safe)
    };
    // Up after 5 days in soil of 17 C.
    assert_eq!(outlook(Some(5), 17.0), (2, 0, 0, true));
    assert_eq!(outlook(Some(4), 15.0), (0, 2, 0, false));
    assert_eq!(outlook(None, 15.0), (2, 0, 0, true));
    assert_eq!(outlook(Some(5), 17.5), (0, 0, 2, false));
}

#[test]
fn a_record_of_less_than_two_years_shows_nothing() {
    let record = steady_years(&[daily(10.0, 20.0)]);
    let outlook = Outlook::new(&sown_crop("bean", 60.0), &record, EQUATOR, 2027);
    assert_eq!(outlook.years(), 0);
    assert_eq!(outlook.first_safe(Way::Sown), None);
}
