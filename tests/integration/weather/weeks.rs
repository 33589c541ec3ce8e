//! The weeks and months of the year in a record, and the nearest rank.

use tureen::calendar::{Date, days_between, plus_days};
use tureen::units::Latitude;
use tureen::weather::Record;
use tureen::weather::rank::nearest_rank;
use tureen::weather::weeks::{Part, months, weeks};

use crate::support::day;
use crate::support::weather::daily;

const NORTH: Latitude = Latitude(50.0);
const SOUTH: Latitude = Latitude(-35.0);

fn record(from: &str, to: &str) -> Record {
    let days = days_between(day(from), day(to)).map(|_| daily(5.0, 15.0));
    Record::new(day(from), days.collect(), false)
}

/// First and last day of a part in one of the record's years.
fn days_of(record: &Record, part: &Part, year: usize) -> (Date, Date) {
    let run = &part.runs[year];
    let date = |at: usize| plus_days(record.first(), at as i64);
    (date(run.start), date(run.end - 1))
}

#[test]
fn the_year_has_52_weeks_that_miss_no_day_and_share_none() {
    let record = record("2001-01-01", "2008-12-31");
    // A southern week runs from 30 December to 5 January: the record cuts it at both ends.
    for (latitude, years, cut) in [(NORTH, 8, (0, 0)), (SOUTH, 7, (5, 2))] {
        let weeks = weeks(&record, latitude);
        assert_eq!(weeks.len(), 52);
        assert_eq!(weeks.iter().map(|w| w.runs.len()).min(), Some(years));
        let mut runs: Vec<_> = weeks.iter().flat_map(|w| w.runs.clone()).collect();
        runs.sort_by_key(|r| r.start);
        assert!(runs.windows(2).all(|pair| pair[0].end == pair[1].start));
        let end = record.days().len() - cut.1;
        assert_eq!((runs[0].start, runs.last().unwrap().end), (cut.0, end));
    }
}

#[test]
fn a_week_begins_on_the_same_day_of_every_year() {
    let record = record("2003-01-01", "2004-12-31");
    let weeks = weeks(&record, NORTH);
    // The tenth week from 5 March; the ninth has the leap day and so eight days.
    assert_eq!(
        days_of(&record, &weeks[9], 0),
        (day("2003-03-05"), day("2003-03-11"))
    );
    assert_eq!(
        days_of(&record, &weeks[9], 1),
        (day("2004-03-05"), day("2004-03-11"))
    );
    assert_eq!(
        days_of(&record, &weeks[8], 1),
        (day("2004-02-26"), day("2004-03-04"))
    );
    // The last one ends with the year.
    assert_eq!(
        days_of(&record, &weeks[51], 0),
        (day("2003-12-24"), day("2003-12-31"))
    );
}

#[test]
fn the_southern_year_begins_in_july() {
    let record = record("2003-01-01", "2004-12-31");
    let (weeks, months) = (weeks(&record, SOUTH), months(&record, SOUTH));
    assert_eq!(
        days_of(&record, &weeks[0], 0),
        (day("2003-07-01"), day("2003-07-07"))
    );
    assert_eq!(days_of(&record, &weeks[26], 0).0, day("2003-12-30"));
    assert_eq!(
        days_of(&record, &months[0], 1),
        (day("2004-07-01"), day("2004-07-31"))
    );
    assert_eq!(
        days_of(&record, &months[7], 0),
        (day("2003-02-01"), day("2003-02-28"))
    );
    assert_eq!(
        days_of(&record, &months[7], 1),
        (day("2004-02-01"), day("2004-02-29"))
    );
}

#[test]
fn a_week_that_the_record_cuts_is_left_out() {
    let record = record("2003-01-03", "2003-12-30");
    let weeks = weeks(&record, NORTH);
    assert!(weeks[0].runs.is_empty(), "1 to 7 January");
    assert_eq!(weeks[1].runs.len(), 1);
    assert!(weeks[51].runs.is_empty(), "24 to 31 December");
}

#[test]
fn the_nearest_rank_is_a_value_of_the_list() {
    let eleven: Vec<i32> = (0..11).collect();
    for (share, value) in [(0.0, 0), (0.1, 1), (0.5, 5), (0.9, 9), (1.0, 10)] {
        assert_eq!(nearest_rank(&eleven, share), Some(value));
    }
    // Between two: the nearer one; halves upward.
    assert_eq!(nearest_rank(&[1, 2], 0.4), Some(1));
    assert_eq!(nearest_rank(&[1, 2], 0.5), Some(2));
    assert_eq!(nearest_rank::<i32>(&[], 0.5), None);
}
