//! How often it is still cold in spring and already cold in autumn, on two years made up by hand.

use tureen::units::Latitude;
use tureen::weather::cold_days::ColdDays;

use crate::support::day;
use crate::support::weather::{daily, steady_years};

/// 2001 and 2002 are cold until 10 and 20 April and from 20 October and 1 November on.
fn two_years(latitude: f64) -> ColdDays {
    let record = steady_years(&[daily(10.0, 20.0), daily(10.0, 20.0)]);
    let first = day("2001-01-01");
    assert_eq!(record.first(), first);
    let number = |text: &str| usize::try_from((day(text) - first).num_days()).unwrap();
    let cold = ["2001-04-10", "2001-10-20", "2002-04-20", "2002-11-01"].map(number);
    ColdDays::of(&record, Latitude(latitude), |at| cold.contains(&at))
}

#[test]
fn frost_gets_rarer_in_spring_and_more_common_in_autumn() {
    let days = two_years(45.0);
    for (date, share) in [
        ("2027-01-01", 1.0),
        ("2027-04-10", 1.0),
        ("2027-04-11", 0.5),
        ("2028-02-29", 1.0),
        ("2027-04-20", 0.5),
        ("2027-04-21", 0.0),
        ("2027-07-01", 0.0),
        ("2027-10-19", 0.0),
        ("2027-10-20", 0.5),
        ("2027-11-01", 1.0),
        ("2027-12-31", 1.0),
    ] {
        assert_eq!(days.share_around(day(date)), Some(share), "{date}");
    }
}

/// In the south the year begins in autumn: what was spring is autumn there.
#[test]
fn south_of_the_equator_the_halves_change_places() {
    let days = two_years(-35.0);
    assert_eq!(days.share_around(day("2027-04-09")), Some(0.0));
    assert_eq!(days.share_around(day("2027-04-15")), Some(0.5));
    assert_eq!(days.share_around(day("2027-10-20")), Some(1.0));
    assert_eq!(days.share_around(day("2027-10-21")), Some(0.5));
}
