//! Damaged files: each is refused with the file, the line, the place, what is wrong and what helps; all at
//! once, and what repeats once.

use std::path::PathBuf;

use tureen::project::station::{Asked, read};

use super::{files, of_text};

const FIXED: &str = include_str!("files/sharjah.dly");
const WIDE: &str = include_str!("files/death-valley.csv");

/// A file that is damaged so, and parts of what is told.
#[track_caller]
fn refused(test: &str, text: &str, parts: &[&str]) {
    let told = of_text(test, text, &Asked::default()).expect_err("it is refused");
    for part in parts {
        assert!(told.contains(part), "{test}: {part}\n{told}");
    }
}

#[test]
fn a_cut_line_is_told_with_its_place() {
    let cut = &FIXED[..FIXED.len() - 100];
    refused(
        "cut-fixed",
        cut,
        &[
            "station.txt:13:",
            "weather-columns",
            "this line ends before day",
            "download it again",
        ],
    );
    let cut = &WIDE[..WIDE.len() - 20];
    refused(
        "cut-wide",
        cut,
        &[
            "station.txt:32:1",
            "should have 7 values",
            "has 4",
            "the file may be cut",
        ],
    );
    refused(
        "cut-long",
        "XX000000001,19980401,TMAX,12,,,S,\nXX000000001,19980401\n",
        &["station.txt:2:1", "at least 4 values, but has 2"],
    );
}

#[test]
fn text_in_a_number_is_told_with_its_column() {
    let text = WIDE.replace(
        "\"2018-02-12\",\"0.00\",\"70\"",
        "\"2018-02-12\",\"0.00\",\"7O\"",
    );
    assert_ne!(text, WIDE);
    refused(
        "letter",
        &text,
        &[
            "station.txt:4:",
            "the highest temperature is not a number: \"7O\"",
            "\"7O\"",
        ],
    );
    let text = FIXED.replacen("  191  I", "  1x1  I", 1);
    refused(
        "letter-fixed",
        &text,
        &[
            "station.txt:2:174",
            "the lowest temperature is not a number: \"1x1\"",
        ],
    );
}

#[test]
fn everything_is_told_at_once_and_what_repeats_once() {
    let text = "date,low,high,rain\n1998-04-01,1,9,0\n1998-04-02,x,9,0\n1998-04-03,1,9\n1998-13-04,1,9,0\n\
                1998-04-05,y,9,0\n1998-04-06,1,z,0\n1998-04-06,2,9,0\n";
    let told = of_text("all", text, &Asked::default()).unwrap_err();
    let errors = told.matches("error[").count();
    assert_eq!(errors, 4, "{told}");
    for part in [
        "error[weather-number]: the lowest temperature is not a number: \"x\"\n --> station.txt:3:12",
        "likewise in lines 6, 7",
        "error[weather-columns]: this line should have 4 values",
        "error[impossible-date]: \"1998-13-04\" is not a date",
        "error[weather-duplicate]: 1998-04-06 has another lowest temperature already, in line 7",
        "4 errors in station.txt",
    ] {
        assert!(told.contains(part), "{part}\n{told}");
    }
}

#[test]
fn so_many_wrong_lines_that_it_is_no_table_end_the_reading() {
    let mut text = "date,low,high,rain\n".to_owned();
    for _ in 0..50_000 {
        text += "1998-04-01,a,b,c\n";
    }
    let told = of_text("hopeless", &text, &Asked::default()).unwrap_err();
    assert!(
        told.contains("likewise in 29999 more places, up to line 10001"),
        "{told}"
    );
}

#[test]
fn a_single_day_upside_down_is_passed_over_and_swapped_columns_are_told() {
    let mut many = "date,low,high,rain\n".to_owned();
    for n in 0..200 {
        let date = tureen::calendar::plus_days(super::day("1998-01-01"), n);
        let (low, high) = if n == 77 { (9, 1) } else { (1, 9) };
        many += &format!("{date},{low},{high},0\n");
    }
    let station = super::sound("one-swap", &many, &Asked::default());
    assert_eq!((station.upside_down, station.days.len()), (1, 199));
    assert!(
        station
            .days
            .iter()
            .all(|(date, _)| date.to_string() != "1998-03-19")
    );
    let swapped = many.replace("date,low,high,rain", "date,high,low,rain");
    refused(
        "swapped",
        &swapped,
        &[
            "weather-min-over-max",
            "on 199 of 200 days",
            "--column low=... --column high=...",
        ],
    );
}

#[test]
fn values_that_cannot_be_true_are_passed_over_if_few_and_told_if_many() {
    let mut text = "date,tmin_c,tmax_c,rain_mm\n".to_owned();
    for n in 0..300 {
        let date = tureen::calendar::plus_days(super::day("1998-01-01"), n);
        let high = if n == 50 { 75 } else { 9 };
        text += &format!("{date},1,{high},0\n");
    }
    let station = super::sound("one-hot", &text, &Asked::default());
    assert_eq!(
        station.files[0].counts.map(|count| count.impossible),
        [0, 1, 0]
    );
    assert_eq!(station.days.len(), 299);
    refused(
        "all-hot",
        &text.replace(",9,0", ",99,0"),
        &[
            "weather-range",
            "300 of 300 values of the highest temperature cannot be true",
            "--temperature",
        ],
    );
}

#[test]
fn files_that_are_no_tables_are_told_for_what_they_are() {
    refused("empty", "", &["empty-file", "this file holds nothing"]);
    refused("blank", "\n\n  \n", &["empty-file"]);
    refused(
        "prose",
        "Dear school,\nhere is the weather.\n",
        &[
            "weather-header",
            "no table of daily weather",
            "--column date=",
        ],
    );
    refused(
        "unknown",
        "day;a;b;c\n1;2;3;4\n",
        &["weather-header", "\"day\", \"a\", \"b\", \"c\""],
    );
    refused(
        "months",
        "DATE,TMAX,TMIN,PRCP\n1869-01,4.2,-1.3,64.4\n",
        &[
            "impossible-date",
            "this is a month: ask for the table of single days",
        ],
    );
    refused(
        "twice",
        "date,low,tmin,high,rain\n1998-04-01,1,2,9,0\n",
        &["weather-header", "\"low\" and \"tmin\"", "--column"],
    );
    refused(
        "no-rain",
        "date,low,high\n1998-04-01,1,9\n",
        &["weather-too-short", "give the file with the rain as well"],
    );
    let long = format!("date,low,high,rain\n{}", "1".repeat(70_000));
    refused("long-line", &long, &["line 2 is longer than 65536 bytes"]);
    let told = |name: &str, bytes: &[u8]| {
        let path = files("kinds", &[(name, "")]);
        std::fs::write(&path[0], bytes).unwrap();
        read(&path, &Asked::default())
            .expect_err("refused")
            .render(false, 100)
    };
    assert!(told("gz", b"\x1F\x8B\x08\x00").contains("gunzip"));
    assert!(told("zip", b"PK\x03\x04").contains("an archive"));
    assert!(told("zeros", &[0; 200_000]).contains("UTF-16"));
    let nowhere = [PathBuf::from("nowhere.dly")];
    let told = read(&nowhere, &Asked::default())
        .expect_err("refused")
        .render(false, 100);
    assert!(told.contains("no-such-file"), "{told}");
}

#[test]
fn every_file_is_told_of() {
    let paths = files(
        "several",
        &[
            ("a.csv", "date,low\n1998-04-01,x\n"),
            ("b.csv", "nothing\n"),
        ],
    );
    let told = read(&paths, &Asked::default())
        .expect_err("refused")
        .render(false, 100);
    assert!(
        told.contains("a.csv:2:12") && told.contains("b.csv:1:1"),
        "{told}"
    );
}

#[test]
fn days_that_stand_twice_and_out_of_order_are_taken_once() {
    let lines: Vec<&str> = WIDE.lines().collect();
    let mut turned: Vec<&str> = lines[1..].iter().rev().copied().collect();
    turned.push(lines[5]);
    turned.insert(0, lines[0]);
    let station = super::sound("turned", &turned.join("\n"), &Asked::default());
    let whole = super::sound("not-turned", WIDE, &Asked::default());
    assert_eq!(station.days, whole.days);
    assert_eq!(station.files[0].repeated, 3);
}

#[test]
fn letters_of_other_encodings_do_no_harm() {
    let mut bytes = b"\xEF\xBB\xBFdate;low;high;rain;name\n".to_vec();
    for n in 1..=9 {
        bytes.extend(format!("1998-04-0{n};1;9;0;V").bytes());
        bytes.extend(b"\xE4xj\xF6\n");
    }
    let path = files("latin", &[("latin.csv", "")]);
    std::fs::write(&path[0], bytes).unwrap();
    assert_eq!(read(&path, &Asked::default()).unwrap().days.len(), 9);
}
