//! Days at random, written in every kind of file and read back: equal to the tenth of a degree and of a
//! millimetre, and from Fahrenheit and inches to what their steps leave.

use std::fmt::Write;

use chrono::Datelike;
use proptest::prelude::*;
use tureen::calendar::{Date, plus_days};
use tureen::project::station::{Asked, Kind, read};

use super::{Station, day, files, sound, three};

/// Tenths of a degree, lowest and highest, and tenths of a millimetre, day after day.
pub type Days = Vec<(i32, i32, i32)>;

/// One of the three.
type Of = fn(&(i32, i32, i32)) -> i32;

/// So many days that every kind of file can be told by them: a summer day of at least 16 C is among them.
fn days() -> impl Strategy<Value = Days> {
    let one = (-300..250_i32, 0..200_i32, 0..900_i32)
        .prop_map(|(low, more, rain)| (low, low + more, rain));
    prop::collection::vec(one, 20..500).prop_map(|mut days| {
        days[0] = (120, 310, 4);
        days
    })
}

fn dated(first: Date, days: &Days) -> impl Iterator<Item = (Date, (i32, i32, i32))> {
    days.iter()
        .enumerate()
        .map(move |(n, day)| (plus_days(first, n as i64), *day))
}

/// Months of fixed width, by the columns of the archive's readme.
pub fn fixed(first: Date, days: &Days) -> String {
    let mut text = String::new();
    let all: Vec<(Date, (i32, i32, i32))> = dated(first, days).collect();
    for month in all.chunk_by(|a, b| (a.0.year(), a.0.month()) == (b.0.year(), b.0.month())) {
        let elements: [(&str, Of); 4] = [
            ("TMIN", |d| d.0),
            ("TMAX", |d| d.1),
            ("PRCP", |d| d.2),
            ("SNWD", |_| 7),
        ];
        for (name, of) in elements {
            let (year, number) = (month[0].0.year(), month[0].0.month());
            write!(text, "XX000000001{year:04}{number:02}{name}").unwrap();
            for n in 1..=31 {
                match month.iter().find(|(date, _)| date.day() == n) {
                    Some((_, day)) => write!(text, "{:>5}  S", of(day)).unwrap(),
                    None => text += "-9999   ",
                }
            }
            text += "\n";
        }
    }
    text
}

fn long(first: Date, days: &Days) -> String {
    let mut text = String::new();
    for (date, (low, high, rain)) in dated(first, days) {
        let date = date.format("%Y%m%d");
        for (name, value) in [("TMIN", low), ("TMAX", high), ("PRCP", rain), ("WT01", 1)] {
            writeln!(text, "XX000000001,{date},{name},{value},,,S,0700").unwrap();
        }
    }
    text
}

/// One series of ECA&D, with the lines before it as its files have them.
fn series(first: Date, days: &Days, name: &str, of: Of) -> String {
    let mut text = format!(
        "EUROPEAN CLIMATE ASSESSMENT & DATASET (ECA&D), file created on 26-06-2017\n\
         THESE DATA CAN BE USED FREELY PROVIDED THAT THE FOLLOWING SOURCE IS ACKNOWLEDGED:\n\n\
         Klein Tank, A.M.G. and Coauthors, 2002. Daily dataset of 20th-century surface\n\
         air temperature and precipitation series for the European Climate Assessment.\n\
         Int. J. of Climatol., 22, 1441-1453.\nData and metadata available at http://www.ecad.eu\n\n\
         FILE FORMAT (MISSING VALUE CODE IS -9999):\n\n01-06 STAID: Station identifier\n\
         08-13 SOUID: Source identifier\n15-22 DATE : Date YYYYMMDD\n\
         24-28 {name}   : value in 0.1 &#176;C\n30-34 Q_{name} : Quality code for {name} (0='valid'; \
         1='suspect'; 9='missing')\n\nThis is the blended series of station SOMEWHERE, (STAID: 12)\n\n\
         STAID, SOUID,    DATE,   {name}, Q_{name}\n"
    );
    for (date, day) in dated(first, days) {
        let date = date.format("%Y%m%d");
        writeln!(text, "{:>6},{:>6},{date},{:>5},{:>5}", 12, 135, of(&day), 0).unwrap();
    }
    text
}

/// A table by a form of its lines; what stands in braces is put in.
pub fn table(header: &str, line: &str, date: &str, first: Date, days: &Days) -> String {
    let mut text = format!("{header}\n");
    for (n, (day, (low, high, rain))) in dated(first, days).enumerate() {
        let tenths = |value: i32| format!("{:.1}", f64::from(value) / 10.0);
        let fahrenheit = |value: i32| format!("{:.0}", f64::from(value) / 10.0 * 1.8 + 32.0);
        let line = line
            .replace("{date}", &day.format(date).to_string())
            .replace("{low}", &tenths(low))
            .replace("{high}", &tenths(high))
            .replace("{rain}", &tenths(rain))
            .replace("{low,}", &tenths(low).replace('.', ","))
            .replace("{high,}", &tenths(high).replace('.', ","))
            .replace("{rain,}", &tenths(rain).replace('.', ","))
            .replace("{low F}", &fahrenheit(low))
            .replace("{high F}", &fahrenheit(high))
            .replace("{rain in}", &format!("{:.2}", f64::from(rain) / 254.0))
            .replace("{low10}", &low.to_string())
            .replace("{high10}", &high.to_string())
            .replace("{rain10}", &rain.to_string())
            .replace("{n}", &n.to_string());
        text += &line;
        text += "\n";
    }
    text
}

/// Every day is there, and no value is further off than this.
#[track_caller]
pub fn same(station: &Station, first: Date, days: &Days, degrees: f64, millimetres: f64) {
    assert_eq!(station.days.len(), days.len());
    for ((date, read), (wanted, (low, high, rain))) in station.days.iter().zip(dated(first, days)) {
        assert_eq!(*date, wanted);
        let (a, b, c) = three(read);
        let off = [a - f64::from(low) / 10.0, b - f64::from(high) / 10.0];
        assert!(
            off.iter().all(|off| off.abs() <= degrees),
            "{date}: {read:?}, {low}, {high}"
        );
        assert!(
            (c - f64::from(rain) / 10.0).abs() <= millimetres,
            "{date}: {read:?}, {rain}"
        );
    }
}

/// Forms of tables: name, line of names, line of a day, date.
const EXACT: [(&str, &str, &str, &str); 8] = [
    (
        "wide",
        "STATION,NAME,LATITUDE,LONGITUDE,ELEVATION,DATE,PRCP,PRCP_ATTRIBUTES,TMAX,TMAX_ATTRIBUTES,TMIN,TMIN_ATTRIBUTES",
        "\"XX1\",\"SOMEWHERE, XX\",\"1\",\"2\",\"3\",\"{date}\",\"{rain}\",\",,S\",\"{high}\",\",,S\",\"{low}\",\",,S,0700\"",
        "%Y-%m-%d",
    ),
    (
        "wide tenths",
        "\"STATION\",\"DATE\",\"PRCP\",\"TMAX\",\"TMIN\"",
        "\"XX1\",\"{date}\",\"{rain10}\",\"{high10}\",\"{low10}\"",
        "%Y-%m-%d",
    ),
    (
        "semicolons",
        "STATIONS_ID;MESS_DATUM;QN_4; RSK; TXK; TNK;eor",
        "  44;{date};   3;  {rain}; {high}; {low};eor",
        "%Y%m%d",
    ),
    (
        "decimal commas",
        "Datum;Tmin;Tmax;Rain;note",
        "{date};{low,};{high,};{rain,};\"a; b\"",
        "%d.%m.%Y",
    ),
    (
        "quoted decimal commas",
        "Date,Min Temp (\u{b0}C),Max Temp (\u{b0}C),Max Temp Flag,Total Precip (mm)",
        "{date},\"{low,}\",\"{high,}\",,\"{rain,}\"",
        "%Y-%m-%d",
    ),
    (
        "tabs",
        "DATE\tLOW\tHIGH\tRAIN",
        "{date} 00:00:00\t{low}\t{high}\t{rain}",
        "%Y/%m/%d",
    ),
    (
        "blanks",
        "# date   tn    tx   rr",
        "{date}  {low}   {high}  {rain}",
        "%Y-%m-%d",
    ),
    (
        "parts",
        "Year,Month,Day,Maximum temperature (Degree C),Minimum temperature (Degree C),Rainfall amount (millimetres)",
        "{date},{high},{low},{rain}",
        "%Y,%m,%d",
    ),
];

proptest! {
    #![proptest_config(ProptestConfig::with_cases(12))]

    #[test]
    fn what_is_written_in_tenths_is_read_back_exactly(days in days(), start in 0..40_000_i64) {
        let first = plus_days(day("1900-01-01"), start);
        let asked = Asked::default();
        same(&sound("fixed", &fixed(first, &days), &asked), first, &days, 1e-9, 1e-9);
        same(&sound("long", &long(first, &days), &asked), first, &days, 1e-9, 1e-9);
        let named = format!("ID,DATE,ELEMENT,DATA_VALUE,M_FLAG,Q_FLAG,S_FLAG,OBS_TIME\n{}", long(first, &days));
        same(&sound("long-named", &named, &asked), first, &days, 1e-9, 1e-9);
        let series = [
            ("TX.txt", series(first, &days, "TX", |day| day.1)),
            ("TN.txt", series(first, &days, "TN", |day| day.0)),
            ("RR.txt", series(first, &days, "RR", |day| day.2)),
        ];
        let series = series.each_ref().map(|(name, text)| (*name, text.as_str()));
        let station = read(&files("series", &series), &asked).unwrap();
        prop_assert!(station.files.iter().all(|file| file.kind == Kind::Ecad));
        same(&station, first, &days, 1e-9, 1e-9);
        for (name, header, line, date) in EXACT {
            let text = table(header, line, date, first, &days);
            same(&sound(name, &text, &asked), first, &days, 1e-9, 1e-9);
        }
    }

    #[test]
    fn fahrenheit_and_inches_are_read_back_to_their_steps(days in days(), start in 0..40_000_i64) {
        let first = plus_days(day("1900-01-01"), start);
        let line = "XX1,{date},{rain in},{high F},{low F}";
        let text = table("STATION,DATE,PRCP,TMAX,TMIN", line, "%Y-%m-%d", first, &days);
        let station = sound("fahrenheit", &text, &Asked::default());
        // Half a degree F is 0.28 C, half a hundredth of an inch 0.13 mm; the table has tenths.
        same(&station, first, &days, 0.28 + 0.05, 0.13 + 0.05);
    }
}
