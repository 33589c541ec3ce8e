//! Which years stay: what is written has no gap but short ones and whole calendar years, and no year is left
//! out without a cause.

use std::collections::BTreeSet;

use chrono::Datelike;
use proptest::prelude::*;
use tureen::calendar::{Date, plus_days};
use tureen::project::station::{Asked, Station};

use super::{day, of_text, sound};

/// Daily lines from one day to another, without the days in some gaps.
fn lines(from: &str, to: &str, gaps: &[(Date, Date)]) -> String {
    let mut text = "date,low,high,rain\n".to_owned();
    let mut date = day(from);
    while date <= day(to) {
        if !gaps.iter().any(|(a, b)| (*a..=*b).contains(&date)) {
            let warm =
                10.0 - 14.0 * (f64::from(date.ordinal0()) / 365.25 * std::f64::consts::TAU).cos();
            text += &format!("{date},{:.1},{:.1},1.0\n", warm - 5.0, warm + 5.0);
        }
        date = plus_days(date, 1);
    }
    text
}

fn years(station: &Station) -> Vec<i32> {
    station.left_out.iter().map(|year| year.year).collect()
}

#[test]
fn a_year_with_a_long_gap_is_left_out_and_its_neighbours_stay() {
    /// What it is, the days that are missing, the years that are left out.
    type Case = (
        &'static str,
        &'static [(&'static str, &'static str)],
        &'static [i32],
    );
    let cases: [Case; 6] = [
        ("five days", &[("1994-06-01", "1994-06-05")], &[]),
        ("six days", &[("1994-06-01", "1994-06-06")], &[1994]),
        (
            "over New Year",
            &[("1993-12-29", "1994-01-03")],
            &[1993, 1994],
        ),
        ("two years", &[("1993-05-01", "1994-02-01")], &[1993, 1994]),
        // The last days of 1993 have no day after them once 1994 is left out.
        (
            "beside one",
            &[("1993-12-30", "1993-12-31"), ("1994-06-01", "1994-06-20")],
            &[1993, 1994],
        ),
        ("the first year", &[("1991-03-10", "1991-03-20")], &[1991]),
    ];
    for (name, gaps, left_out) in cases {
        let gaps: Vec<(Date, Date)> = gaps.iter().map(|(a, b)| (day(a), day(b))).collect();
        let station = sound(
            "years",
            &lines("1991-02-01", "1998-09-30", &gaps),
            &Asked::default(),
        );
        assert_eq!(years(&station), left_out, "{name}");
        let kept: BTreeSet<i32> = station.days.iter().map(|(date, _)| date.year()).collect();
        let all = 1991..=1998;
        let wanted: BTreeSet<i32> = all.filter(|year| !left_out.contains(year)).collect();
        assert_eq!(kept, wanted, "{name}");
    }
}

#[test]
fn what_the_left_out_years_lack_is_counted() {
    let text = lines(
        "1991-01-01",
        "1993-12-31",
        &[(day("1992-03-01"), day("1992-03-10"))],
    );
    let text = text.replace("1992-07-01,", "1992-07-01,,");
    let text = text.replacen(",1.0\n1992-07-02", "\n1992-07-02", 1);
    let station = sound("lacking", &text, &Asked::default());
    let year = station.left_out[0];
    assert_eq!((year.year, year.lacking), (1992, [11, 10, 10]));
}

#[test]
fn a_record_without_a_single_year_is_refused_with_what_it_lacks() {
    let every: Vec<(Date, Date)> = (1991..=1993)
        .map(|year| (day(&format!("{year}-04-01")), day(&format!("{year}-04-10"))))
        .collect();
    let told = of_text(
        "no-year",
        &lines("1991-01-01", "1993-12-31", &every),
        &Asked::default(),
    );
    let told = told.unwrap_err();
    assert!(told.contains("weather-too-short"), "{told}");
    assert!(
        told.contains("more than five days in a row are missing in every year"),
        "{told}"
    );
}

/// South of the equator spring is the second half of the year: the frosts of July are of the same winter as
/// those of June.
#[test]
fn frosts_are_told_for_the_side_of_the_equator_that_the_warmth_shows() {
    let text = lines("1991-01-01", "1998-12-31", &[]);
    let north = sound("north", &text, &Asked::default());
    assert_eq!(north.frosts.springs(), (8, 8));
    let last = north.frosts.still_after(0.5).unwrap();
    assert!((3..=4).contains(&last.month()), "{last}");
    // The same weather half a year later.
    let mut turned = "date,low,high,rain\n".to_owned();
    for (date, weather) in &north.days {
        let later = plus_days(*date, 182);
        turned += &format!(
            "{later},{},{},{}\n",
            weather.tmin.0, weather.tmax.0, weather.rain.0
        );
    }
    let south = sound("south", &turned, &Asked::default());
    let last = south.frosts.still_after(0.5).unwrap();
    assert!((9..=10).contains(&last.month()), "{last}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    /// The rule, stated anew: a written day is followed by the next one within six days, or, after the end of
    /// a year, by the first day of another; and a year is left out only beside a gap that is too long.
    #[test]
    fn what_is_written_has_only_short_gaps_and_whole_years(
        gaps in prop::collection::vec((0..2500_i64, 1..40_i64), 0..12),
    ) {
        let first = day("1991-02-01");
        let gaps: Vec<(Date, Date)> = gaps
            .iter()
            .map(|(at, length)| (plus_days(first, *at), plus_days(first, at + length - 1)))
            .collect();
        let Ok(station) = of_text("rule", &lines("1991-02-01", "1997-11-30", &gaps), &Asked::default()) else {
            return Ok(());
        };
        let left_out: BTreeSet<i32> = years(&station).into_iter().collect();
        for pair in station.days.windows(2) {
            let (a, b) = (pair[0].0, pair[1].0);
            let missing = (b - a).num_days() - 1;
            let is_years = (a.month(), a.day(), b.month(), b.day()) == (12, 31, 1, 1)
                && (a.year() + 1..b.year()).all(|year| left_out.contains(&year));
            prop_assert!(missing <= 5 || is_years, "{a} to {b}");
        }
        let gone = |date: &Date| gaps.iter().any(|(a, b)| (*a..=*b).contains(date));
        for year in &left_out {
            // Somewhere in the year, or at its ends beside others, stand six days or more that lack a value.
            let from = day(&format!("{year}-01-01"));
            let days = (-400..=765).map(|n| plus_days(from, n));
            let lacking: Vec<bool> = days
                .map(|date| gone(&date) || date.year() != *year && left_out.contains(&date.year()))
                .collect();
            let of_year = 400..=400 + (day(&format!("{}-01-01", year + 1)) - from).num_days() as usize - 1;
            let long = lacking.chunk_by(|a, b| a == b).scan(0, |at, run| {
                let here = *at..*at + run.len();
                *at += run.len();
                Some((run[0], here))
            });
            let touches = |here: &std::ops::Range<usize>| here.start <= *of_year.end() && here.end > *of_year.start();
            let cause = long.into_iter().any(|(lacks, here)| lacks && here.len() > 5 && touches(&here));
            prop_assert!(cause, "{year} is left out without a cause: {gaps:?}");
        }
    }
}
