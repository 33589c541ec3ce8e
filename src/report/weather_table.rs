//! A weather record as the table that the project file's `weather` key reads.

use std::fmt::Write;
use std::path::Path;

use crate::calendar::plus_days;
use crate::weather::Record;

use super::words::full_day;

/// The record as CSV: date, lowest and highest temperature in C, rain in mm.
#[must_use]
pub fn weather_table(record: &Record) -> String {
    let mut text = String::from("date,tmin_c,tmax_c,rain_mm\n");
    for (n, day) in record.days().iter().enumerate() {
        let date = plus_days(record.first(), n as i64);
        // Writing to a string cannot fail.
        let _ = writeln!(
            text,
            "{date},{:.1},{:.1},{:.1}",
            day.tmin.0, day.tmax.0, day.rain.0
        );
    }
    text
}

/// What `tureen weather` prints when the table is written.
#[must_use]
pub fn weather_written(record: &Record, path: &Path) -> String {
    let last = plus_days(record.first(), record.days().len() as i64 - 1);
    format!(
        "Wrote {}: {} days of generated weather, {} to {}.\n",
        path.display(),
        record.days().len(),
        full_day(record.first()),
        full_day(last)
    )
}
