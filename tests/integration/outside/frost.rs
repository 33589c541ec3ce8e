//! Frost dates by probability: what they mean, their order, and the days between.

use chrono::Datelike;
use tureen::calendar::{Date, days_between};
use tureen::garden::Locale;
use tureen::growth::climate::WARM_SOIL;
use tureen::report::frost;
use tureen::units::{Celsius, Latitude};
use tureen::weather::cold_days::{ColdDays, FREEZING, HARD_FROST};
use tureen::weather::{Daily, Record};
use tureen::words::Words;

use super::check::{Check, EXACT};
use super::ours::fahrenheit;
use crate::support::day;
use crate::support::weather::daily;

const NORTH: Latitude = Latitude(46.0);

/// Month and day.
type Night = (u32, u32);

/// MILTON-FREQ: the last 32 F of spring, later in 10, 20, ... 90 of 100 years; around them, a
/// year later than all printed dates and one earlier than all.
const LAST_32: [Night; 11] = [
    (4, 30),
    (4, 22),
    (4, 15),
    (4, 10),
    (4, 6),
    (4, 2),
    (3, 30),
    (3, 25),
    (3, 21),
    (3, 14),
    (3, 1),
];

/// MILTON-FREQ: the last 28 F and 36 F, printed for 10, 50 and 90 of 100 years; the others lie
/// between.
const LAST_28: [Night; 11] = [
    (4, 14),
    (4, 8),
    (4, 1),
    (3, 26),
    (3, 20),
    (3, 16),
    (3, 9),
    (3, 3),
    (2, 26),
    (2, 21),
    (2, 10),
];
const LAST_36: [Night; 11] = [
    (5, 16),
    (5, 10),
    (5, 6),
    (5, 2),
    (4, 28),
    (4, 24),
    (4, 20),
    (4, 16),
    (4, 11),
    (4, 7),
    (4, 2),
];

/// Years from 2001, warm but for what `lowest` says.
fn record(years: i32, lowest: impl Fn(Date) -> Option<f64>) -> Record {
    let last = Date::from_ymd_opt(2000 + years, 12, 31).unwrap();
    let days: Vec<Daily> = days_between(day("2001-01-01"), last)
        .map(|date| daily(lowest(date).unwrap_or(6.0), 14.0))
        .collect();
    Record::new(day("2001-01-01"), days, false)
}

/// The printed tables as a record of eleven years.
fn springs() -> Record {
    record(11, |date| {
        let at = usize::try_from(date.year() - 2001).unwrap();
        let nights = [
            (LAST_28, HARD_FROST),
            (LAST_32, FREEZING),
            (LAST_36, fahrenheit(36.0)),
        ];
        let tonight = nights
            .iter()
            .find(|(last, _)| last[at] == (date.month(), date.day()));
        tonight.map(|(_, lowest)| lowest.0)
    })
}

/// The dates of one threshold at the printed probabilities, in tenths.
fn dates(record: &Record, limit: Celsius, printed: &[Night; 11], tenths: &[usize]) -> Vec<Check> {
    let frosts = ColdDays::frosts(record, NORTH, limit);
    tenths
        .iter()
        .map(|tenth| {
            let (month, day) = printed[*tenth];
            let expected = Date::from_ymd_opt(2001, month, day).unwrap();
            let found = frosts.still_after(*tenth as f64 / 10.0);
            let what = format!("last air of {:.1} C, {tenth}0 %", limit.0);
            Check::day(&what, found, expected, "MILTON-FREQ")
        })
        .collect()
}

/// What a date at a probability says: the share of springs that freeze after it. A date is that
/// of one of the springs, so a share is right to one spring of eleven.
fn meaning(frosts: &ColdDays, share: f64, source: &'static str) -> Check {
    let date = frosts.still_after(share).unwrap();
    let later = LAST_32.iter().filter(|n| **n > (date.month(), date.day()));
    let found = later.count() as f64 / 11.0;
    let what = format!("share of springs that freeze after the date at {share}");
    Check::number(&what, found, share, 1.0 / 11.0, source)
}

/// Days from the last frost of spring to the first of autumn.
fn between(last: Night, first: Night, printed: f64) -> Check {
    let year = record(1, |date| {
        let tonight = (date.month(), date.day());
        (tonight == last || tonight == first).then_some(0.0)
    });
    let found = ColdDays::frosts(&year, NORTH, FREEZING)
        .free_days(0.5)
        .unwrap() as f64;
    Check::number("frost-free days", found, printed, EXACT, "VT-426-331")
}

/// Sentences of `check`.
fn words(record: &Record) -> [Check; 4] {
    let spring = frost::spring(
        &ColdDays::frosts(record, NORTH, FREEZING),
        Words::in_locale(Locale::British),
    );
    [
        (
            "last frost, 10 %",
            "after 22 April in one year of ten",
            "MILTON-FREQ",
        ),
        (
            "last frost, 50 %",
            "after 2 April in half of the years",
            "MILTON-FREQ",
        ),
        // A date at 10 % is one after which it freezes in one year of ten: the careful date is
        // the late one, and the date at 90 % is not named at all.
        (
            "meaning of a spring date",
            "in one year of ten",
            "NCEI-FREEZE",
        ),
        (
            "how a table is read",
            "last frost: after 2 April",
            "MNDNR-FREEZE",
        ),
    ]
    .map(|(what, expected, source)| Check::words(what, &spring, expected, source))
}

pub fn checks() -> Vec<Check> {
    let springs = springs();
    let light = ColdDays::frosts(&springs, NORTH, FREEZING);
    let at = |share| light.still_after(share).unwrap();
    let mut checks = Vec::from(words(&springs));
    checks.extend(dates(
        &springs,
        FREEZING,
        &LAST_32,
        &[1, 2, 3, 4, 5, 6, 7, 8, 9],
    ));
    checks.extend(dates(&springs, HARD_FROST, &LAST_28, &[1, 5, 9]));
    checks.extend(dates(&springs, fahrenheit(36.0), &LAST_36, &[1, 5, 9]));
    checks.push(Check::number(
        "days from 50 % to 10 % at 32 F",
        (at(0.1) - at(0.5)).num_days() as f64,
        20.0,
        EXACT,
        "MILTON-FREQ",
    ));
    checks.push(meaning(&light, 0.9, "NCEI-FREEZE"));
    checks.push(meaning(&light, 0.7, "MNDNR-FREEZE"));
    let limit = |what, ours: Celsius, printed, tolerance, source| {
        Check::number(what, ours.0, fahrenheit(printed).0, tolerance, source)
    };
    checks.push(limit("hard frost", HARD_FROST, 28.0, 0.05, "KSU-FREEZE"));
    // Rounded to whole degrees Celsius.
    checks.push(limit(
        "soil for warm crops",
        WARM_SOIL,
        60.0,
        0.5,
        "UGA-SOILT",
    ));
    // The Mountain block prints 165 days beside dates that make 153, and is left out.
    checks.push(between((4, 20), (10, 19), 182.0));
    checks.push(between((4, 10), (11, 26), 230.0));
    checks
}
