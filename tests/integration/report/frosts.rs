//! Frosts of records whose frosts are placed by hand: what is counted, and how it is told.

use chrono::Datelike;
use tureen::calendar::{Date, days_between};
use tureen::garden::Locale;
use tureen::report::frost::{autumn, spring};
use tureen::units::Latitude;
use tureen::weather::cold_days::{ColdDays, FREEZING};
use tureen::weather::{Daily, Record};
use tureen::words::Words;

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

/// `04-22`: month and day.
fn month_day(date: Option<Date>) -> String {
    date.map_or_else(|| "none".to_owned(), |d| d.format("%m-%d").to_string())
}

/// Words as they read by default.
fn words() -> Words {
    Words::in_locale(Locale::British)
}

/// A sentence with plain spaces.
fn plain(text: &str) -> String {
    text.replace('\u{a0}', " ")
}

#[test]
fn half_and_one_year_in_ten_are_read_from_the_sorted_years() {
    let frosts = ColdDays::frosts(&record(moving), NORTH, FREEZING);
    // Last frosts: 1 to 11 May. The middle one is the 6th, the last but one the 10th.
    let spring = plain(&spring(&frosts, words()));
    assert!(spring.contains("after 6 May in half"), "{spring}");
    assert!(
        spring.contains("after 10 May in one year of ten"),
        "{spring}"
    );
    assert!(spring.contains("11 of 11 springs"), "{spring}");
    // First frosts: 19 to 29 September. The middle one is the 24th, the second the 20th.
    let autumn = plain(&autumn(&frosts, words()));
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
    let frosts = ColdDays::frosts(&record(moving), SOUTH, FREEZING);
    let (spring, autumn) = (
        plain(&spring(&frosts, words())),
        plain(&autumn(&frosts, words())),
    );
    assert!(spring.contains("after 24 September in half"), "{spring}");
    assert!(autumn.contains("before 6 May in half"), "{autumn}");
}

#[test]
fn years_without_frost_are_said_to_be_so() {
    let frosts = ColdDays::frosts(&record(|_| None), NORTH, FREEZING);
    assert_eq!(
        spring(&frosts, words()),
        "No frost in any spring of the record."
    );
    assert_eq!(
        autumn(&frosts, words()),
        "No frost in any autumn of the record."
    );
}

#[test]
fn a_half_year_that_the_record_does_not_hold_whole_is_not_counted() {
    let days = vec![daily(-2.0, 8.0); 100];
    let frosts = ColdDays::frosts(
        &Record::new(day("2001-03-01"), days, false),
        NORTH,
        FREEZING,
    );
    assert_eq!(
        spring(&frosts, words()),
        "The record holds no whole spring."
    );
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
    let spring = plain(&spring(&frosts, words()));
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
