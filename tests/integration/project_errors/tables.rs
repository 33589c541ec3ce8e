//! Mistakes in tables of weather, and files of other kinds: one message each, however long the file.

use std::fs;
use std::path::Path;

use tureen::calendar::plus_days;
use tureen::project;

use super::slips::compare;
use super::{MINIMAL, catalogue, day};

/// Three years of days, written by `line`: date, lowest, highest, rain.
fn days(header: &str, line: impl Fn(tureen::calendar::Date, f64) -> String) -> String {
    let lines = (0..1096).map(|n| {
        let warmth = f64::from(n % 17) / 10.0 + 5.5;
        line(plus_days(day("2014-01-01"), n.into()), warmth) + "\n"
    });
    format!("{header}\n{}", lines.collect::<String>())
}

const HEADER: &str = "date,tmin_c,tmax_c,rain_mm";

/// What a table is called, and what stands in it.
fn tables() -> Vec<(&'static str, String)> {
    let plain = |header: &str| days(header, |date, c| format!("{date},{c},{},1", c + 8.0));
    let comma = |c: f64| c.to_string().replace('.', ",");
    vec![
        (
            "semicolons and decimal commas",
            days("date;tmin_c;tmax_c;rain_mm", |date, c| {
                format!("{date};{};{};1,2", comma(c), comma(c + 8.0))
            }),
        ),
        (
            "semicolons under a header with commas",
            days(HEADER, |date, c| {
                format!("{date};{};{};1,2", comma(c), comma(c + 8.0))
            }),
        ),
        (
            "decimal commas",
            days(HEADER, |date, c| {
                format!("{date},{},{},1,2", comma(c), comma(c + 8.0))
            }),
        ),
        ("tabs", plain(HEADER).replace(',', "\t")),
        (
            "dates of the United States",
            days(HEADER, |date, c| {
                format!("{},{c},{},1", date.format("%m/%d/%Y"), c + 8.0)
            }),
        ),
        (
            "dates with points",
            days(HEADER, |date, c| {
                format!("{},{c},{},1", date.format("%d.%m.%Y"), c + 8.0)
            }),
        ),
        (
            "dates in quotes",
            days(HEADER, |date, c| format!("\"{date}\",{c},{},1", c + 8.0)),
        ),
    ]
}

/// The same of other headers and wrong values.
fn more_tables() -> Vec<(&'static str, String)> {
    let plain = |header: &str| days(header, |date, c| format!("{date},{c},{},1", c + 8.0));
    vec![
        ("another header", plain("DATE,TMAX,TMIN,PRCP")),
        (
            "a header in quotes",
            plain("\"date\",\"tmin_c\",\"tmax_c\",\"rain_mm\""),
        ),
        (
            "columns in another order",
            plain("date,tmax_c,tmin_c,rain_mm"),
        ),
        ("no header", plain("").trim_start().to_owned()),
        (
            "a word for missing values",
            days(HEADER, |date, c| format!("{date},{c},NA,1")),
        ),
        (
            "nothing for missing values",
            days(HEADER, |date, c| format!("{date},{c},{},", c + 8.0)),
        ),
        (
            "Fahrenheit",
            days(HEADER, |date, c| {
                format!("{date},{},{},1", c + 50.0, c + 65.0)
            }),
        ),
        (
            "a code for missing days",
            days(HEADER, |date, c| format!("{date},-9999,{c},1")),
        ),
        (
            "lowest and highest exchanged",
            days(HEADER, |date, c| format!("{date},{},{c},1", c + 8.0)),
        ),
        ("the days backward", {
            let text = plain(HEADER);
            let (header, days) = text.split_once('\n').expect("lines");
            let mut days: Vec<&str> = days.lines().collect();
            days.reverse();
            format!("{header}\n{}", days.join("\n"))
        }),
        ("the project file", MINIMAL.to_owned()),
    ]
}

#[test]
fn a_wrong_table_is_told_in_one_message() {
    let mut all = String::new();
    for (name, weather) in tables().into_iter().chain(more_tables()) {
        let loaded = project::load_text("garden.toml", MINIMAL, Some(&weather), catalogue());
        let found = loaded.expect_err(name);
        let told = found.render(false, 100);
        assert_eq!(found.len(), 1, "{name}\n{told}");
        assert!(
            told.contains("--> autumn.csv:") && told.contains("= help: "),
            "{name}\n{told}"
        );
        all += &format!("## {name}\n\n{told}\n");
    }
    compare("tables", &all);
}

/// Files that are no plain text, or not the one that is asked for, with how they begin.
fn others() -> Vec<(&'static str, Vec<u8>)> {
    let wide = |mark: &[u8]| {
        let letters = MINIMAL.encode_utf16().flat_map(u16::to_le_bytes);
        mark.iter().copied().chain(letters).collect::<Vec<u8>>()
    };
    vec![
        ("UTF-16", wide(b"\xFF\xFE")),
        ("UTF-16 without a mark", wide(b"")),
        (
            "Windows-1252",
            MINIMAL
                .replace("Carrot day", "Fete")
                .into_bytes()
                .into_iter()
                .map(|b| if b == b'F' { 0xCA } else { b })
                .collect(),
        ),
        ("docx", b"PK\x03\x04\x14\0\x06\0".to_vec()),
        ("doc", b"\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1".to_vec()),
        ("rtf", b"{\\rtf1\\ansi name = x}".to_vec()),
        ("PDF", b"%PDF-1.7\n%\xE2\xE3".to_vec()),
        ("a web page", b"<!DOCTYPE html><html></html>".to_vec()),
        ("nothing", Vec::new()),
        ("a table of weather", super::AUTUMN.as_bytes().to_vec()),
        (
            "JSON",
            b"{\n  \"project\": { \"name\": \"Carrot day\" }\n}\n".to_vec(),
        ),
    ]
}

#[test]
fn a_file_of_another_kind_is_told_in_one_message() {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("other-kinds");
    fs::create_dir_all(folder.join("folder")).expect("a folder");
    let mut all = String::new();
    let mut tell = |name: &str, path: &Path| {
        let found = project::load(path, catalogue()).expect_err(name);
        let told = found
            .render(false, 100)
            .replace(&format!("{}/", folder.display()), "");
        assert_eq!(found.len(), 1, "{name}\n{told}");
        assert!(
            told.contains("--> ") && told.contains("help: "),
            "{name}\n{told}"
        );
        all += &format!("## {name}\n\n{told}\n");
    };
    for (n, (name, bytes)) in others().into_iter().enumerate() {
        let path = folder.join(format!("file-{n}"));
        fs::write(&path, bytes).expect("a file");
        tell(name, &path);
    }
    tell("a folder", &folder.join("folder"));
    tell("no file", &folder.join("gardn.toml"));
    compare("other_kinds", &all);
}

#[test]
fn gaps_of_up_to_five_days_are_filled_and_told() {
    let line = |n: i64| {
        let date = plus_days(day("2014-01-01"), n);
        format!("{date},{},{},3", n % 20, n % 20 + 10)
    };
    let lines: Vec<String> = (0..1096).map(line).collect();
    let without = |left_out: std::ops::Range<usize>| {
        let kept = lines
            .iter()
            .enumerate()
            .filter(|(n, _)| !left_out.contains(n));
        let kept: Vec<&str> = kept.map(|(_, line)| line.as_str()).collect();
        project::load_text(
            "garden.toml",
            MINIMAL,
            Some(&format!("{HEADER}\n{}\n", kept.join("\n"))),
            catalogue(),
        )
    };
    let whole = without(0..0).expect("it loads");
    // Days 102 to 106 lie on a straight line, so they come back as they were, but dry.
    for left_out in [102..103, 102..107] {
        let garden = without(left_out.clone()).expect("it is filled");
        for (n, (ours, theirs)) in garden
            .weather
            .days()
            .iter()
            .zip(whole.weather.days())
            .enumerate()
        {
            let filled = left_out.contains(&n);
            assert!((ours.tmin.0 - theirs.tmin.0).abs() < 1e-9, "day {n}");
            assert!((ours.tmax.0 - theirs.tmax.0).abs() < 1e-9, "day {n}");
            assert_eq!(ours.rain.0, if filled { 0.0 } else { 3.0 }, "day {n}");
        }
        assert_eq!(garden.weather.days().len(), whole.weather.days().len());
        let last = plus_days(day("2014-01-01"), left_out.end as i64 - 1);
        let told = garden
            .assumed
            .iter()
            .find(|a| a.what == "days filled in autumn.csv");
        let why = &told.expect("it is told").why;
        assert!(
            why.contains("2014-04-13") && why.contains(&last.to_string()),
            "{why}"
        );
    }
    assert!(
        whole
            .assumed
            .iter()
            .all(|a| !a.what.starts_with("days filled"))
    );
    let told = without(102..108).expect_err("six days").render(false, 100);
    assert!(
        told.contains("6 days are missing: 2014-04-13 to 2014-04-18"),
        "{told}"
    );
}

/// Whole calendar years may be left out; a day less or more, and the gap is told.
#[test]
fn whole_years_may_be_left_out_and_are_told() {
    let line = |n: i64| format!("{},5.0,15.0,1.0", plus_days(day("2010-01-01"), n));
    let days = (day("2019-12-31") - day("2010-01-01")).num_days() + 1;
    let without = |from: &str, to: &str| {
        let gone = |n: &i64| {
            let date = plus_days(day("2010-01-01"), *n);
            date >= day(from) && date <= day(to)
        };
        let lines: Vec<String> = (0..days).filter(|n| !gone(n)).map(line).collect();
        let text = format!("{HEADER}\n{}\n", lines.join("\n"));
        project::load_text("garden.toml", MINIMAL, Some(&text), catalogue())
    };
    let garden = without("2013-01-01", "2014-12-31").expect("it loads");
    assert_eq!(garden.weather.held().count() as i64, days - 730);
    let horizon = garden.horizon();
    let labels: Vec<i32> = garden
        .weather
        .years(horizon)
        .iter()
        .map(|year| year.label)
        .collect();
    let all = without("2030-01-01", "2030-01-01").expect("it loads");
    let of_all: Vec<i32> = all
        .weather
        .years(horizon)
        .iter()
        .map(|year| year.label)
        .collect();
    let left: Vec<i32> = of_all
        .into_iter()
        .filter(|label| ![2013, 2014].contains(label))
        .collect();
    assert_eq!(labels, left);
    let told = garden
        .assumed
        .iter()
        .find(|a| a.what == "years left out of autumn.csv");
    assert!(told.expect("it is told").why.ends_with("(2013 to 2014)"));
    for (from, to) in [
        ("2013-01-02", "2014-12-31"),
        ("2012-12-31", "2014-12-31"),
        ("2013-01-01", "2014-12-30"),
        ("2013-01-01", "2015-01-01"),
    ] {
        let told = without(from, to).expect_err("a gap").render(false, 100);
        assert!(
            told.contains(&format!("days are missing: {from} to {to}")),
            "{told}"
        );
        assert!(told.contains("leave out the whole calendar year"), "{told}");
    }
}
