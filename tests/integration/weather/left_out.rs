//! A record that leaves calendar years out counts as its parts alone would, whatever stands in their place.

use std::ops::Range;

use tureen::calendar::{Date, Horizon, days_between};
use tureen::units::{Celsius, Latitude, Millimetres};
use tureen::weather::cold_days::{ColdDays, FREEZING};
use tureen::weather::weeks::{months, weeks};
use tureen::weather::{Daily, Record};

use crate::support::day;
use tureen::growth::climate::season_warmth;

const NORTH: Latitude = Latitude(50.0);
const SOUTH: Latitude = Latitude(-35.0);

/// A day that is like no other one.
fn daily(date: Date) -> Daily {
    use chrono::Datelike;
    let n = f64::from(date.num_days_from_ce());
    Daily {
        tmin: Celsius(8.0 * (n / 58.0).sin() - 1.0),
        tmax: Celsius(8.0 * (n / 58.0).sin() + 9.0),
        rain: Millimetres(n % 7.0),
    }
}

fn record(from: &str, to: &str) -> Record {
    let days = days_between(day(from), day(to)).map(daily);
    Record::new(day(from), days.collect(), false)
}

/// 2001 to 2009 without 2004, 2006 and 2007, in whose place stands heat, and the parts that are left.
fn with_gaps() -> (Record, [Record; 3]) {
    let whole = record("2001-01-01", "2009-12-31");
    let at = |date: &str| (day(date) - whole.first()).num_days() as usize;
    let gaps = [
        at("2004-01-01")..at("2005-01-01"),
        at("2006-01-01")..at("2008-01-01"),
    ];
    let heat = Daily {
        tmin: Celsius(40.0),
        tmax: Celsius(50.0),
        rain: Millimetres(500.0),
    };
    let mut days = whole.days().to_vec();
    for gap in &gaps {
        days[gap.clone()].fill(heat);
    }
    let parts = [
        record("2001-01-01", "2003-12-31"),
        record("2005-01-01", "2005-12-31"),
        record("2008-01-01", "2009-12-31"),
    ];
    let record = Record::new(whole.first(), days, false).leaving_out(gaps.to_vec());
    (record, parts)
}

#[test]
fn the_days_held_are_those_of_the_parts() {
    let (record, parts) = with_gaps();
    let of_parts = parts.iter().flat_map(Record::held);
    assert!(record.held().eq(of_parts));
    let lengths: Vec<usize> = record.runs().map(|run: Range<usize>| run.len()).collect();
    assert_eq!(lengths, parts.each_ref().map(|part| part.days().len()));
    assert!(record.holds(&(0..1095)) && !record.holds(&(0..1096)));
}

#[test]
fn weather_years_are_those_of_the_parts_and_look_back_into_none_that_is_left_out() {
    let (record, parts) = with_gaps();
    for (from, to) in [
        ("2027-01-11", "2027-10-08"),
        ("2027-01-01", "2027-12-31"),
        ("2026-10-05", "2027-04-09"),
        ("2026-03-02", "2027-10-08"),
    ] {
        let horizon = Horizon::spanning(day(from), day(to));
        let of_parts: Vec<_> = parts.iter().flat_map(|part| part.years(horizon)).collect();
        assert!(!of_parts.is_empty() || to == "2027-10-08");
        assert_eq!(record.years(horizon), of_parts, "{from}");
    }
}

#[test]
fn weeks_months_and_seasons_are_those_of_the_parts() {
    let (record, parts) = with_gaps();
    for place in [NORTH, SOUTH] {
        for (whole, of) in [
            (
                weeks(&record, place),
                parts.each_ref().map(|part| weeks(part, place)),
            ),
            (
                months(&record, place),
                parts.each_ref().map(|part| months(part, place)),
            ),
        ] {
            for (at, part) in whole.iter().enumerate() {
                let days = |record: &Record, runs: &[Range<usize>]| -> Vec<Vec<Daily>> {
                    runs.iter()
                        .map(|run| record.days()[run.clone()].to_vec())
                        .collect()
                };
                let alone = parts.iter().zip(&of);
                let alone: Vec<Vec<Daily>> = alone
                    .flat_map(|(record, parts)| days(record, &parts[at].runs))
                    .collect();
                assert_eq!(days(&record, &part.runs), alone, "{:?}", part.first);
            }
        }
        let sorted = |mut sums: Vec<f64>| {
            sums.sort_by(f64::total_cmp);
            sums
        };
        let of = |record: &Record| -> Vec<f64> {
            let sums = season_warmth(record, place, Celsius(5.0));
            sums.iter().map(|sum| sum.0).collect()
        };
        let alone = sorted(parts.iter().flat_map(of).collect());
        assert_eq!(sorted(of(&record)), alone);
        assert!(!alone.is_empty());
    }
}

#[test]
fn frosts_are_those_of_the_parts() {
    let (record, parts) = with_gaps();
    let all = ColdDays::frosts(&record, NORTH, FREEZING);
    let counted = |of: fn(&ColdDays) -> (usize, usize)| {
        let parts = parts
            .iter()
            .map(|part| of(&ColdDays::frosts(part, NORTH, FREEZING)));
        parts.fold((0, 0), |sum, (frosty, years)| {
            (sum.0 + frosty, sum.1 + years)
        })
    };
    assert_eq!(all.springs(), counted(ColdDays::springs));
    assert_eq!(all.autumns(), counted(ColdDays::autumns));
    assert_eq!(all.springs().1, 6);
}

#[test]
fn from_a_year_on_it_is_the_rest_of_it() {
    let (whole, parts) = with_gaps();
    let since = |year| whole.clone().since(year);
    assert_eq!(since(1990), whole);
    assert_eq!(since(2001), whole);
    for (year, first) in [
        (2002, "2002-01-01"),
        (2004, "2004-01-01"),
        (2007, "2007-01-01"),
    ] {
        let rest = since(year);
        assert_eq!(rest.first(), day(first));
        let held = whole.held().filter(|(date, _)| *date >= day(first));
        assert!(rest.held().eq(held), "{year}");
    }
    assert!(since(2008).held().eq(parts[2].held()));
    assert!(since(2008).left_out().is_empty());
    assert!(since(2020).days().is_empty());
}
