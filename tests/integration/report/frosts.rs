//! Frosts of records whose frosts are placed by hand: what is counted, and that a date at a
//! probability means what the published tables of freeze dates mean.

use chrono::Datelike;
use tureen::calendar::{Date, days_between};
use tureen::report::frost::Frosts;
use tureen::units::{Celsius, Latitude};
use tureen::weather::cold_days::{ColdDays, FREEZING, HARD_FROST};
use tureen::weather::{Daily, Record};

use crate::support::day;
use crate::support::weather::daily;

const NORTH: Latitude = Latitude(44.0);
const SOUTH: Latitude = Latitude(-38.0);

/// The eleven years 2001 to 2011, warm but for the days that `lowest` makes colder.
fn record(lowest: impl Fn(Date) -> Option<f64>) -> Record {
    let weather = |d: Date| daily(lowest(d).unwrap_or(4.0), 14.0);
    let days: Vec<Daily> = days_between(day("2001-01-01"), day("2011-12-31"))
        .map(weather)
        .collect();
    Record::new(day("2001-01-01"), days, false)
}

/// In the year 2000 + k the last frost of spring is on `k` May and the first of autumn on
/// `30 - k` September.
fn moving(date: Date) -> Option<f64> {
    let k = date.year() - 2000;
    let day = date.day() as i32;
    let frosty = (date.month() == 5 && day == k) || (date.month() == 9 && day == 30 - k);
    frosty.then_some(-2.0)
}

/// A record with one night of `lowest` a year, on these days of the years 2001 to 2011.
fn one_night_a_year(month_days: [&str; 11], lowest: f64) -> Record {
    record(|date| {
        let at = usize::try_from(date.year() - 2001).unwrap();
        (date == day(&format!("{}-{}", date.year(), month_days[at]))).then_some(lowest)
    })
}

/// `04-22`: month and day.
fn month_day(date: Option<Date>) -> String {
    date.map_or_else(|| "none".to_owned(), |d| d.format("%m-%d").to_string())
}

/// A sentence with plain spaces.
fn plain(text: &str) -> String {
    text.replace('\u{a0}', " ")
}

#[test]
fn half_and_one_year_in_ten_are_read_from_the_sorted_years() {
    let frosts = Frosts::of(&record(moving), NORTH);
    // Last frosts: 1 to 11 May. The middle one is the 6th, the last but one the 10th.
    let spring = plain(&frosts.spring());
    assert!(spring.contains("after 6 May in half"), "{spring}");
    assert!(
        spring.contains("after 10 May in one year of ten"),
        "{spring}"
    );
    assert!(spring.contains("11 of 11 springs"), "{spring}");
    // First frosts: 19 to 29 September. The middle one is the 24th, the second the 20th.
    let autumn = plain(&frosts.autumn());
    assert!(autumn.contains("before 24 September in half"), "{autumn}");
    assert!(
        autumn.contains("before 20 September in one year of ten"),
        "{autumn}"
    );
}

#[test]
fn south_of_the_equator_the_halves_change_places() {
    // The last frost of the half-year from July is in September, the first of that from
    // January in May.
    let frosts = Frosts::of(&record(moving), SOUTH);
    let (spring, autumn) = (plain(&frosts.spring()), plain(&frosts.autumn()));
    assert!(spring.contains("after 24 September in half"), "{spring}");
    assert!(autumn.contains("before 6 May in half"), "{autumn}");
}

#[test]
fn years_without_frost_are_said_to_be_so() {
    let frosts = Frosts::of(&record(|_| None), NORTH);
    assert_eq!(frosts.spring(), "No frost in any spring of the record.");
    assert_eq!(frosts.autumn(), "No frost in any autumn of the record.");
}

#[test]
fn a_half_year_that_the_record_does_not_hold_whole_is_not_counted() {
    let days = vec![daily(-2.0, 8.0); 100];
    let frosts = Frosts::of(&Record::new(day("2001-03-01"), days, false), NORTH);
    assert_eq!(frosts.spring(), "No frost in any spring of the record.");
}

#[test]
fn springs_without_frost_count_as_springs_in_which_it_does_not_freeze_after_any_day() {
    // Frost in 4 springs of 11, on 10 March each time.
    let some = record(|d| (d.year() <= 2004 && d.month() == 3 && d.day() == 10).then_some(-1.0));
    let frosts = ColdDays::frosts(&some, NORTH, FREEZING);
    assert_eq!(frosts.springs(), (4, 11));
    assert_eq!(month_day(frosts.still_after(0.1)), "03-10");
    assert_eq!(month_day(frosts.still_after(0.3)), "03-10");
    assert_eq!(frosts.still_after(0.5), None, "fewer than half have any");
    let spring = plain(&Frosts::of(&some, NORTH).spring());
    assert_eq!(
        spring,
        "Last frost: none in half of the years, after 10 March in one year of ten; 4 of 11 \
         springs had frost."
    );
}

#[test]
fn a_leap_day_moves_no_date() {
    // The last frost on 10 April of every year, leap years 2004 and 2008 among them.
    let april = record(|d| (d.month() == 4 && d.day() == 10).then_some(-1.0));
    let frosts = ColdDays::frosts(&april, NORTH, FREEZING);
    for tenths in 0..=10 {
        let share = f64::from(tenths) / 10.0;
        assert_eq!(month_day(frosts.still_after(share)), "04-10");
    }
}

// Published tables of freeze dates.

#[test]
fn w38_at_the_90_percent_level_it_still_freezes_in_nine_years_of_ten() {
    // NCEI-FREEZE: "90 % level at 32 F is 1 March" means a freeze after 1 March in 9 of 10.
    let nights = [
        "02-20", "03-01", "03-05", "03-09", "03-13", "03-17", "03-21", "03-25", "03-29", "04-02",
        "04-06",
    ];
    let frosts = ColdDays::frosts(&one_night_a_year(nights, 0.0), NORTH, FREEZING);
    assert_eq!(month_day(frosts.still_after(0.9)), "03-01");
    let later = nights.iter().filter(|n| **n > "03-01").count();
    assert_eq!(later, 9, "in nine of eleven years after it, in one on it");
    // So the safe date is that of the 10 % level: one year of eleven freezes after it.
    let safe = month_day(frosts.still_after(0.1));
    assert_eq!(safe, "04-02");
    assert_eq!(nights.iter().filter(|n| **n > safe.as_str()).count(), 1);
}

#[test]
fn w39_a_column_of_70_percent_reads_as_seven_years_of_ten_after_its_date() {
    // MNDNR-FREEZE: row 32, column .70, entry 4/19: a chance of 70 % after 19 April.
    let nights = [
        "04-10", "04-13", "04-16", "04-19", "04-20", "04-22", "04-24", "04-26", "04-28", "04-30",
        "05-02",
    ];
    let frosts = ColdDays::frosts(&one_night_a_year(nights, 0.0), NORTH, FREEZING);
    assert_eq!(month_day(frosts.still_after(0.7)), "04-19");
    assert_eq!(nights.iter().filter(|n| **n > "04-19").count(), 7);
}

#[test]
fn w40_dates_fall_as_the_probability_rises_and_colder_frosts_end_earlier() {
    // MILTON-FREQ, last 32 F at 10, 20, ... 90 %, with one more year before and after; and
    // last 28 F at 10, 50 and 90 %.
    let printed = [
        "04-22", "04-15", "04-10", "04-06", "04-02", "03-30", "03-25", "03-21", "03-14",
    ];
    let light_nights = [
        "03-01", "03-14", "03-21", "03-25", "03-30", "04-02", "04-06", "04-10", "04-15", "04-22",
        "05-01",
    ];
    let hard_nights = [
        "02-10", "02-21", "02-26", "03-03", "03-09", "03-16", "03-20", "03-26", "04-01", "04-08",
        "04-14",
    ];
    let light = one_night_a_year(light_nights, 0.0);
    let hard = one_night_a_year(hard_nights, HARD_FROST.0);
    let colder = |a: &Daily, b: &Daily| if a.tmin < b.tmin { *a } else { *b };
    let both = light.days().iter().zip(hard.days());
    let both = Record::new(
        light.first(),
        both.map(|(a, b)| colder(a, b)).collect(),
        false,
    );
    let light = ColdDays::frosts(&both, NORTH, FREEZING);
    let hard = ColdDays::frosts(&both, NORTH, HARD_FROST);
    for (tenths, date) in (1..10).zip(printed) {
        let share = f64::from(tenths) / 10.0;
        assert_eq!(month_day(light.still_after(share)), date, "{share}");
        assert!(hard.still_after(share) < light.still_after(share));
    }
    for (share, date) in [(0.1, "04-08"), (0.5, "03-16"), (0.9, "02-21")] {
        assert_eq!(month_day(hard.still_after(share)), date, "{share}");
    }
    let days = light.still_after(0.1).unwrap() - light.still_after(0.5).unwrap();
    assert_eq!(days.num_days(), 20, "as printed");
}

#[test]
fn w41_frost_free_days_are_counted_from_the_last_frost_to_the_first() {
    // VT-426-331: Piedmont 182 days; Tidewater 230, and 232 to the end of its printed range.
    // The Mountain block prints 165 where its dates make 153.
    for (last, first, days) in [
        ("04-20", "10-19", 182),
        ("04-10", "11-26", 230),
        ("04-10", "11-28", 232),
        ("05-10", "10-10", 153),
    ] {
        let year = record(|d| {
            let today = d.format("%m-%d").to_string();
            (today == last || today == first).then_some(0.0)
        });
        let frosts = ColdDays::frosts(&year, NORTH, FREEZING);
        assert_eq!(frosts.free_days(0.5), Some(days), "{last} to {first}");
    }
}

#[test]
fn hard_frost_is_28_fahrenheit() {
    let celsius = (28.0 - 32.0) * 5.0 / 9.0;
    assert!((HARD_FROST.0 - celsius).abs() < 0.05);
    assert_eq!(FREEZING, Celsius(0.0));
}
