//! Frosts of a record whose frosts are placed by hand.

use chrono::Datelike;
use tureen::calendar::{Date, days_between};
use tureen::report::frost::Frosts;
use tureen::units::Latitude;
use tureen::weather::{Daily, Record};

use crate::support::day;
use crate::support::weather::daily;

/// The eleven years 2001 to 2011, warm but for the frosts that `frosty` names.
fn record(frosty: impl Fn(Date) -> bool) -> Record {
    let weather = |d: Date| {
        if frosty(d) {
            daily(-2.0, 8.0)
        } else {
            daily(4.0, 14.0)
        }
    };
    let days: Vec<Daily> = days_between(day("2001-01-01"), day("2011-12-31"))
        .map(weather)
        .collect();
    Record::new(day("2001-01-01"), days, false)
}

/// In the year 2000 + k the last frost of spring is on `k` May and the first of autumn on
/// `30 - k` September.
fn moving(date: Date) -> bool {
    let k = date.year() - 2000;
    let day = date.day() as i32;
    (date.month() == 5 && day == k) || (date.month() == 9 && day == 30 - k)
}

#[test]
fn half_and_one_year_in_ten_are_read_from_the_sorted_years() {
    let frosts = Frosts::of(&record(moving), Latitude(44.0));
    // Last frosts: 1 to 11 May. The middle one is the 6th, the last but one the 10th.
    let spring = frosts.spring();
    assert!(spring.contains("after 6 May in half"), "{spring}");
    assert!(
        spring.contains("after 10 May in one year of ten"),
        "{spring}"
    );
    assert!(spring.contains("11 of 11 springs"), "{spring}");
    // First frosts: 19 to 29 September. The middle one is the 24th, the second the 20th.
    let autumn = frosts.autumn();
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
    let frosts = Frosts::of(&record(moving), Latitude(-38.0));
    let (spring, autumn) = (frosts.spring(), frosts.autumn());
    assert!(spring.contains("after 24 September in half"), "{spring}");
    assert!(autumn.contains("before 6 May in half"), "{autumn}");
}

#[test]
fn years_without_frost_are_said_to_be_so() {
    let frosts = Frosts::of(&record(|_| false), Latitude(44.0));
    assert_eq!(frosts.spring(), "No frost in any spring of the record.");
    assert_eq!(frosts.autumn(), "No frost in any autumn of the record.");
}

#[test]
fn a_half_year_that_the_record_does_not_hold_whole_is_not_counted() {
    let days = vec![daily(-2.0, 8.0); 100];
    let frosts = Frosts::of(&Record::new(day("2001-03-01"), days, false), Latitude(44.0));
    assert_eq!(frosts.spring(), "No frost in any spring of the record.");
}
