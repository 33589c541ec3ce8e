//! One line of a weather file: a day with its lowest and highest temperature and its rain.

use std::ops::RangeInclusive;

use crate::calendar::Date;
use crate::diagnostic::{Code, Findings, Problem, Read, Span};
use crate::units::{Celsius, Millimetres};
use crate::weather::Daily;

use super::super::meant;
use super::super::names::quote;
use super::cells::{COMMENT, HEADER, cells};
use super::header::AS_COMMAS;

/// Temperatures and rain that can be true: a little beyond what was ever measured.
pub const TEMPERATURES: RangeInclusive<f64> = -60.0..=60.0;
pub const RAINS: RangeInclusive<f64> = 0.0..=1000.0;

/// A day of the file.
pub struct Row {
    pub date: Date,
    pub span: Span,
    pub daily: Read<Daily>,
}

/// Reads a line.
pub fn row(line: &str, span: Span, findings: &mut Findings) -> Read<Row> {
    let cells = cells(line, span);
    let ([date, tmin, tmax, rain], false) = (cells.as_slice(), line.contains(';')) else {
        return Err(findings.report(columns(line, cells.len()).at(span, "").of_many_lines()));
    };
    let date = day(*date, findings);
    let tmin = figure(*tmin, "the lowest temperature", TEMPERATURES, findings);
    let tmax = figure(*tmax, "the highest temperature", TEMPERATURES, findings);
    let rain = figure(*rain, "the rain", RAINS, findings);
    let daily = daily(tmin, tmax, rain, span, findings);
    Ok(Row {
        date: date?,
        span,
        daily,
    })
}

/// The problem of a line that has not four values with commas between.
fn columns(line: &str, has: usize) -> Problem {
    if line.contains(';') {
        let cause = "the values of this line are parted by semicolons";
        return Problem::new(Code::WeatherColumns, cause).remedy(AS_COMMAS);
    }
    let wanted = HEADER.len();
    let cause = format!("this line should have {wanted} values, but has {has}");
    let remedy = match line.starts_with(COMMENT) {
        true => "comments may stand only before the header",
        false => "date, lowest, highest, rain; with commas between, and points in numbers",
    };
    Problem::new(Code::WeatherColumns, cause).remedy(remedy)
}

fn day((text, span): (&str, Span), findings: &mut Findings) -> Read<Date> {
    let parsed = Date::parse_from_str(text, "%Y-%m-%d").ok();
    // Ten letters: four digits, two and two, as everywhere else.
    parsed.filter(|_| text.len() == 10).ok_or_else(|| {
        let bare = text.trim_matches('"');
        let dates = meant::dates(bare);
        let (cause, remedy) = match dates.is_empty() || text.len() > 40 {
            true => (
                format!("{} is not a date", quote(text)),
                "write year-month-day, such as 1998-04-07",
            ),
            false => (
                format!(
                    "{} is not a date: it means {}",
                    quote(bare),
                    meant::written(&dates)
                ),
                "write all days as year-month-day, without quotes; in a spreadsheet, give the \
                 column of dates the format yyyy-mm-dd before you export it",
            ),
        };
        let problem = Problem::new(Code::ImpossibleDate, cause).at(span, "");
        findings.report(problem.remedy(remedy).of_many_lines())
    })
}

fn figure(
    (text, span): (&str, Span),
    what: &str,
    range: RangeInclusive<f64>,
    findings: &mut Findings,
) -> Read<f64> {
    let Some(number) = text.parse::<f64>().ok().filter(|n| n.is_finite()) else {
        let cause = match text {
            "" => format!("{what} is missing"),
            _ => format!("{what} is not a number: {}", quote(text)),
        };
        let problem = Problem::new(Code::WeatherNumber, cause).at(span, "").remedy(
            "every day needs all four values, such as `1998-04-07,2.4,11.0,0`; leave the line of a \
             day out that lacks one, and gaps of up to five days are filled",
        );
        return Err(findings.report(problem.of_many_lines()));
    };
    if range.contains(&number) {
        return Ok(number);
    }
    let cause = format!("{what} cannot be {}", quote(text));
    let label = format!("should be {} to {}", range.start(), range.end());
    let problem = Problem::new(Code::WeatherRange, cause).at(span, label).remedy(
        "degrees Celsius and millimetres, so turn Fahrenheit into (F - 32) / 1.8; leave no code such \
         as 9999 for a missing day",
    );
    Err(findings.report(problem.of_many_lines()))
}

fn daily(
    tmin: Read<f64>,
    tmax: Read<f64>,
    rain: Read<f64>,
    span: Span,
    findings: &mut Findings,
) -> Read<Daily> {
    let (tmin, tmax) = (tmin?, tmax?);
    if tmin > tmax {
        let cause = "the lowest temperature is above the highest";
        return Err(findings.report(
            Problem::new(Code::WeatherMinOverMax, cause)
                .at(span, format!("{tmin} is above {tmax}"))
                .remedy("the second column is the lowest, the third the highest"),
        ));
    }
    Ok(Daily {
        tmin: Celsius(tmin),
        tmax: Celsius(tmax),
        rain: Millimetres(rain?),
    })
}
