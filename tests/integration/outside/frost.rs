//! Frost probabilities: what the sentences mean, and the order of their dates.

use chrono::Datelike;
use tureen::calendar::{Date, days_between};
use tureen::report::frost::Frosts;
use tureen::units::Latitude;
use tureen::weather::{Daily, Record};

use super::check::Check;
use crate::support::day;
use crate::support::weather::daily;

/// MILTON-FREQ: the last 32 F of spring as (month, day), later in 10, 20, ... 90 of 100 years.
const LAST: [(u32, u32); 9] = [
    (4, 22),
    (4, 15),
    (4, 10),
    (4, 6),
    (4, 2),
    (3, 30),
    (3, 25),
    (3, 21),
    (3, 14),
];

/// The printed table as a record of eleven years: one later than all printed dates, one on
/// each, one earlier than all.
fn springs() -> Record {
    let last = |year: i32| match year - 2001 {
        0 => (4, 30),
        10 => (3, 1),
        place => LAST[place as usize - 1],
    };
    let weather = |date: Date| match (date.month(), date.day()) <= last(date.year()) {
        true => daily(-2.0, 8.0),
        false => daily(4.0, 14.0),
    };
    let days: Vec<Daily> = days_between(day("2001-01-01"), day("2011-12-31"))
        .map(weather)
        .collect();
    Record::new(day("2001-01-01"), days, false)
}

pub fn checks() -> Vec<Check> {
    let spring = Frosts::of(&springs(), Latitude(46.0)).spring();
    vec![
        Check::words(
            "last frost, 10 %",
            &spring,
            "after 22 April in one year of ten",
            "MILTON-FREQ",
        ),
        Check::words(
            "last frost, 50 %",
            &spring,
            "after 2 April in half of the years",
            "MILTON-FREQ",
        ),
        // A date at 10 % is one after which it freezes in one year of ten: the careful date is
        // the late one, and the date at 90 % is not named at all.
        Check::words(
            "meaning of a spring date",
            &spring,
            "in one year of ten",
            "NCEI-FREEZE",
        ),
        Check::words(
            "how a table is read",
            &spring,
            "last frost: after 2 April",
            "MNDNR-FREEZE",
        ),
    ]
}
