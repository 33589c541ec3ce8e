//! The weather file: comments, the header `date,tmin_c,tmax_c,rain_mm`, then one day a line.

use std::ops::RangeInclusive;

use crate::calendar::{Date, plus_days};
use crate::diagnostic::{Code, Findings, Problem, Read, Reported, Source, Span};
use crate::units::{Celsius, Millimetres};
use crate::weather::{Daily, Record};

use super::names::quote;

/// How a comment begins; comments stand before the header.
const COMMENT: &str = "#";

/// How the first line begins where no thermometer saw the days, as `tureen weather` writes it.
const GENERATED: &str = "# generated";

const HEADER: [&str; 4] = ["date", "tmin_c", "tmax_c", "rain_mm"];

/// Temperatures and rain that can be true: a little beyond what was ever measured.
const TEMPERATURES: RangeInclusive<f64> = -60.0..=60.0;
const RAINS: RangeInclusive<f64> = 0.0..=1000.0;

/// A day of the file.
struct Row {
    date: Date,
    span: Span,
    daily: Read<Daily>,
}

/// Reads the whole file.
pub fn read(source: &Source, findings: &mut Findings) -> Read<Record> {
    let generated = source.text.starts_with(GENERATED);
    let mut lines = lines(&source.text)
        .filter(|(text, _)| !text.trim().is_empty())
        .skip_while(|(text, _)| text.starts_with(COMMENT));
    let Some((header, span)) = lines.next() else {
        let problem = Problem::new(Code::EmptyFile, "this file holds no weather");
        return Err(findings.report(problem.remedy(format!(
            "its first line is `{}`, then one line per day",
            HEADER.join(",")
        ))));
    };
    check_header(header, span, findings)?;
    let rows: Vec<Read<Row>> = lines
        .map(|(text, span)| row(text, span, findings))
        .collect();
    let mut rows: Vec<Row> = rows.into_iter().collect::<Read<_>>()?;
    check_order(&mut rows, findings)?;
    let first = rows.first().map(|row| row.date).ok_or_else(|| {
        let cause = "this file has a header, but no days";
        findings.report(Problem::new(Code::EmptyFile, cause).at(span, ""))
    })?;
    let days = rows
        .into_iter()
        .map(|row| row.daily)
        .collect::<Read<Vec<Daily>>>()?;
    Ok(Record::new(first, days, generated))
}

/// The lines with their places, without line breaks.
fn lines(text: &str) -> impl Iterator<Item = (&str, Span)> {
    let mut start = 0;
    text.split('\n').map(move |line| {
        let from = start;
        start += line.len() + 1;
        let line = line.trim_end_matches('\r');
        (line, Span::from(from..from + line.len()))
    })
}

/// The values of a line with their places.
fn cells(line: &str, span: Span) -> Vec<(&str, Span)> {
    let mut start = span.start;
    line.split(',')
        .map(|cell| {
            let from = start + (cell.len() - cell.trim_start().len());
            start += cell.len() + 1;
            let cell = cell.trim();
            (cell, Span::from(from..from + cell.len()))
        })
        .collect()
}

fn check_header(line: &str, span: Span, findings: &mut Findings) -> Read<()> {
    let names: Vec<String> = cells(line, span)
        .iter()
        .map(|(name, _)| name.to_lowercase())
        .collect();
    if names == HEADER {
        return Ok(());
    }
    Err(findings.report(
        Problem::new(
            Code::WeatherHeader,
            "the first line should name the columns",
        )
        .at(span, "")
        .remedy(format!(
            "it should be `{}`, with commas, in this order; only comments, which begin with \
             {COMMENT}, may stand before it",
            HEADER.join(",")
        )),
    ))
}

fn row(line: &str, span: Span, findings: &mut Findings) -> Read<Row> {
    let cells = cells(line, span);
    let [date, tmin, tmax, rain] = cells.as_slice() else {
        let (wanted, has) = (HEADER.len(), cells.len());
        let cause = format!("this line should have {wanted} values, but has {has}");
        let remedy = match line.starts_with(COMMENT) {
            true => "comments may stand only before the header",
            false => "date, lowest, highest, rain; with commas between, and points in numbers",
        };
        return Err(findings.report(
            Problem::new(Code::WeatherColumns, cause)
                .at(span, "")
                .remedy(remedy),
        ));
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

fn day((text, span): (&str, Span), findings: &mut Findings) -> Read<Date> {
    let parsed = Date::parse_from_str(text, "%Y-%m-%d").ok();
    // Ten letters: four digits, two and two, as everywhere else.
    parsed.filter(|_| text.len() == 10).ok_or_else(|| {
        findings.report(
            Problem::new(
                Code::ImpossibleDate,
                format!("{} is not a date", quote(text)),
            )
            .at(span, "")
            .remedy("write year-month-day, such as 1998-04-07"),
        )
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
        return Err(findings.report(
            Problem::new(Code::WeatherNumber, cause)
                .at(span, "")
                .remedy("every day needs all four values, such as `1998-04-07,2.4,11.0,0`"),
        ));
    };
    if range.contains(&number) {
        return Ok(number);
    }
    let cause = format!("{what} cannot be {}", quote(text));
    let label = format!("should be {} to {}", range.start(), range.end());
    Err(findings.report(
        Problem::new(Code::WeatherRange, cause)
            .at(span, label)
            .remedy(
                "degrees Celsius and millimetres; leave no code such as 9999 for a missing day",
            ),
    ))
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

/// Days in order, none twice, none missing.
fn check_order(rows: &mut [Row], findings: &mut Findings) -> Read<()> {
    let mut result = Ok(());
    if let Some([first, second]) = rows
        .windows(2)
        .filter_map(|pair| <&[Row; 2]>::try_from(pair).ok())
        .find(|[first, second]| second.date < first.date)
    {
        let cause = format!("{} stands after {}", second.date, first.date);
        result = Err(findings.report(
            Problem::new(Code::WeatherOrder, cause)
                .at(second.span, "an earlier day from here on")
                .remedy("sort the lines by date"),
        ));
    }
    rows.sort_by_key(|row| row.date);
    for pair in rows.windows(2) {
        let [first, second] = pair else { continue };
        if let Some(reported) = neighbours(first, second, findings) {
            result = Err(reported);
        }
    }
    result
}

/// Reports it if two rows are not a day and the next.
fn neighbours(first: &Row, second: &Row, findings: &mut Findings) -> Option<Reported> {
    let missing = (second.date - first.date).num_days() - 1;
    let problem = match missing {
        0 => return None,
        -1 => Problem::new(
            Code::WeatherDuplicate,
            format!("{} stands twice", second.date),
        )
        .at(second.span, "the second")
        .also(first.span, "the first")
        .remedy("remove one of the two lines"),
        1 => gap(
            format!("the day {} is missing", plus_days(first.date, 1)),
            second.span,
        ),
        n => gap(
            format!(
                "{n} days are missing: {} to {}",
                plus_days(first.date, 1),
                plus_days(second.date, -1)
            ),
            second.span,
        ),
    };
    Some(findings.report(problem))
}

fn gap(cause: String, span: Span) -> Problem {
    Problem::new(Code::WeatherGap, cause)
        .at(span, "before this day")
        .remedy("fill the gap, for example with the mean of the days around it")
}
