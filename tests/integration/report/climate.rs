//! The screen of `climate`: north and south of the equator, without frost, of generated
//! years, of records too short for it.

use chrono::Datelike;
use tureen::calendar::{Date, days_between};
use tureen::garden::Garden;
use tureen::report::climate;
use tureen::units::Latitude;
use tureen::weather::{Daily, Record};

use super::plain;
use super::screens::compare;
use crate::support::day;
use crate::support::gardens::tiny_garden;
use crate::support::weather::daily;

/// The tiny garden at a latitude with a record of its own.
fn garden(latitude: f64, record: Record) -> Garden {
    Garden {
        latitude: Latitude(latitude),
        weather: record,
        ..tiny_garden()
    }
}

/// Years from 2001 whose warmth swings once a year around `mean` by `swing`, warmest at the
/// end of July, and from year to year by a few degrees.
fn swinging(years: i32, mean: f64, swing: f64) -> Record {
    let last = Date::from_ymd_opt(2000 + years, 12, 31).unwrap();
    let weather = |d: Date| -> Daily {
        let angle = (f64::from(d.ordinal()) - 210.0) / 365.0 * std::f64::consts::TAU;
        let year = f64::from((d.year() * 3) % 7) - 3.0;
        let middle = mean + swing * angle.cos() + year;
        let mut day = daily(middle - 5.0, middle + 5.0);
        if d.day() == 1 {
            day.rain = tureen::units::Millimetres(30.0);
        }
        day
    };
    let days = days_between(day("2001-01-01"), last).map(weather).collect();
    Record::new(day("2001-01-01"), days, false)
}

#[test]
fn the_climate_of_a_place_with_winters() {
    let garden = garden(44.0, swinging(10, 9.0, 13.0));
    compare("climate", &climate(&garden).text(plain(100)));
}

#[test]
fn every_date_and_share_is_worded_without_a_doubt() {
    let text = climate(&garden(44.0, swinging(11, 9.0, 13.0))).text(plain(400));
    for part in [
        "In 1 spring of 10 frost still comes after ",
        "; in half of the springs after ",
        "; in 9 springs of 10 after ",
        "In 1 autumn of 10 frost already comes before ",
        "So what frost kills is safe from ",
        "As 11 past years show it (2001 to 2011).",
        "Safe is the day after the spring date of the first row, and until the day before its autumn",
    ] {
        assert!(text.contains(part), "\"{part}\" is missing in\n{text}");
    }
}

#[test]
fn in_the_south_the_picture_begins_in_july_and_the_season_in_october() {
    let south = climate(&garden(-44.0, swinging(10, 9.0, -13.0))).text(plain(100));
    assert!(south.contains("44 degrees south"), "{south}");
    let months = south.lines().find(|l| l.contains("Jul Aug")).unwrap();
    assert!(months.trim_start().starts_with("Jul"), "{south}");
    assert!(south.contains("from October to April"), "{south}");
    // Spring is there from July on.
    let safe = south.lines().find(|l| l.contains("is safe from")).unwrap();
    assert!(
        safe.contains("October") || safe.contains("November"),
        "{safe}"
    );
}

#[test]
fn without_frost_it_says_so_and_shows_no_table_of_it() {
    let tropics = climate(&garden(12.0, swinging(10, 27.0, 3.0))).text(plain(100));
    assert!(tropics.contains("None: in 10 years it was never 0 C or colder."));
    assert!(!tropics.contains("spring: frost still after"), "{tropics}");
    assert!(
        tropics.contains("(tomato, bean, squash): all year."),
        "{tropics}"
    );
    assert!(tropics.contains("(lettuce, pea, cabbage): no week of the year."));
    assert!(tropics.contains("No day is shorter than 10 hours"));
}

#[test]
fn generated_years_are_not_called_past() {
    let seen = swinging(10, 9.0, 13.0);
    let made_up = Record::new(seen.first(), seen.days().to_vec(), true);
    let text = climate(&garden(44.0, made_up)).text(plain(100));
    assert!(
        text.contains("As 10 generated weather years show it."),
        "{text}"
    );
    assert!(!text.contains("past year"), "{text}");
}

#[test]
fn a_record_of_less_than_a_year_tells_only_frosts() {
    let record = Record::new(day("2001-01-01"), vec![daily(-1.0, 9.0); 200], false);
    let text = climate(&garden(44.0, record)).text(plain(100));
    assert!(
        text.contains("does not hold every week of the year"),
        "{text}"
    );
    assert!(
        text.contains("FROST") && !text.contains("ALL WEEKS"),
        "{text}"
    );
}

#[test]
fn the_picture_shows_52_weeks_or_26_pairs_of_them() {
    let garden = garden(44.0, swinging(10, 9.0, 13.0));
    for (width, columns) in [(80, 52), (61, 52), (59, 26), (40, 26)] {
        let text = climate(&garden).text(plain(width));
        let frost = text.lines().find(|l| l.starts_with("  frost ")).unwrap();
        assert_eq!(
            frost.split_whitespace().nth(1).unwrap().len(),
            columns,
            "{width}"
        );
        assert!(frost.contains("**") && frost.contains(".."), "{frost}");
        assert!(text.is_ascii(), "black on white, on any screen");
    }
}
