//! What a person meant who wrote a figure, a date or an hour as people write them. Nothing is taken for
//! what it may mean: it only goes into the remedy, in the form in which it should be written.

use chrono::Datelike;

use crate::calendar::{Date, MONTHS, Time};
use crate::units::{FOOT, INCH, OUNCE, POUND};

/// Units as people write them: the unit of the file that measures the same, and `a` and `b` of
/// `a * figure + b`. The foot, the pound and the degree are exact (NIST SP 811).
const UNITS: [(&[&str], &str, f64, f64); 15] = [
    (&["m", "metre", "metres", "meter", "meters"], "m", 1.0, 0.0),
    (&["cm", "centimetres", "centimeters"], "m", 0.01, 0.0),
    (&["ft", "feet", "foot", "'"], "m", FOOT, 0.0),
    (&["in", "inch", "inches", "\""], "m", INCH / 100.0, 0.0),
    (&["yd", "yard", "yards"], "m", 0.9144, 0.0),
    (&["mm", "millimetres", "millimeters"], "m", 0.001, 0.0),
    (&["kg", "kilograms", "kilos"], "kg", 1.0, 0.0),
    (&["g", "gram", "grams"], "kg", 0.001, 0.0),
    (&["lb", "lbs", "pound", "pounds"], "kg", POUND, 0.0),
    (&["oz", "ounce", "ounces"], "kg", OUNCE, 0.0),
    (&["c", "celsius"], "degrees C", 1.0, 0.0),
    (&["f", "fahrenheit"], "degrees C", 1.0 / 1.8, -32.0 / 1.8),
    (&["minutes", "minute", "min"], "minutes", 1.0, 0.0),
    (&["hours", "hour", "h"], "minutes", 60.0, 0.0),
    (&["%", "percent"], "", 0.01, 0.0),
];

/// A figure in a unit as people write it, in the unit of the file; `None` if the two do not measure
/// the same.
pub fn converted(figure: f64, from: &str, to: Option<&str>) -> Option<f64> {
    let from = from.trim().trim_start_matches('\u{b0}').to_lowercase();
    let (_, measures, a, b) = UNITS
        .iter()
        .find(|(names, ..)| names.contains(&from.as_str()))?;
    let metric = a * figure + b;
    let converted = match (*measures, to.unwrap_or("")) {
        (same, to) if same == to => metric,
        ("m", "cm") => metric * 100.0,
        ("m", "mm") | ("kg", "g") => metric * 1000.0,
        ("m", "feet") => metric / FOOT,
        ("m", "inches") => metric / INCH * 100.0,
        ("kg", "pounds") => metric / POUND,
        ("kg", "ounces") => metric / OUNCE,
        ("degrees C", "degrees F") => metric * 1.8 + 32.0,
        _ => return None,
    };
    Some((converted * 1000.0).round() / 1000.0)
}

/// True for a unit as people write it.
pub fn is_unit(part: &str) -> bool {
    UNITS.iter().any(|(names, ..)| names.contains(&part))
}

/// A text as a figure and what stands behind it: `2,4 m` is 2.4 and `m`.
pub fn figure(text: &str) -> Option<(f64, &str)> {
    let text = text.trim();
    let is_digit = |c: char| c.is_ascii_digit() || "+-.,".contains(c);
    let end = text.find(|c| !is_digit(c)).unwrap_or(text.len());
    let (digits, rest) = text.split_at(end);
    // `1,250.5` has its comma between thousands, `44,3` for the decimal point.
    let digits = match digits.contains('.') {
        true => digits.replace(',', ""),
        false => digits.replacen(',', ".", 1),
    };
    Some((digits.parse().ok()?, rest.trim()))
}

/// The dates that a text may mean: two if nothing tells the day from the month.
pub fn dates(text: &str) -> Vec<Date> {
    let text = text.to_lowercase();
    let parts: Vec<&str> = text
        .split(|c: char| !c.is_alphanumeric())
        .filter(|part| !part.is_empty())
        .collect();
    let number = |part: &str| -> Option<u32> {
        part.trim_end_matches(|c: char| c.is_alphabetic())
            .parse()
            .ok()
    };
    let month = |part: &str| {
        let is_it = |month: &str| part.len() >= 3 && month.to_lowercase().starts_with(part);
        let at = MONTHS.iter().position(|name| is_it(name))?;
        u32::try_from(at + 1).ok()
    };
    let [a, b, c] = parts.as_slice() else {
        return Vec::new();
    };
    let slashed = text.contains('/');
    // Year, month and day, in each order in which they are written.
    let readings = match (month(a), month(b), number(a), number(b), number(c)) {
        (Some(month), None, _, Some(day), Some(year)) => vec![(year, month, day)],
        (None, Some(month), Some(day), _, Some(year)) => vec![(year, month, day)],
        (None, None, Some(year), Some(month), Some(day)) if a.len() == 4 => {
            vec![(year, month, day)]
        }
        (None, None, Some(a), Some(b), Some(year)) if slashed => vec![(year, a, b), (year, b, a)],
        (None, None, Some(day), Some(month), Some(year)) => vec![(year, month, day)],
        _ => return Vec::new(),
    };
    let date = |(year, month, day): (u32, u32, u32)| {
        let year = if year < 100 { year + 2000 } else { year };
        let date = Date::from_ymd_opt(i32::try_from(year).ok()?, month, day)?;
        (1900..=2200).contains(&date.year()).then_some(date)
    };
    let mut dates: Vec<Date> = readings.into_iter().filter_map(date).collect();
    dates.dedup();
    dates
}

/// The days of no particular year that a text may mean, as dates of 2001: `10 May`, `May 10`, and of `5/10` both
/// readings. A year may stand behind them. A leap day is none.
pub fn days_of_year(text: &str) -> Vec<Date> {
    let dates = |text: &str| {
        let dates = dates(text).into_iter();
        dates.filter_map(|date| date.with_year(2001))
    };
    match dates(text).collect::<Vec<Date>>() {
        none if none.is_empty() && text.contains('/') => dates(&format!("{text}/2001")).collect(),
        none if none.is_empty() => dates(&format!("{text} 2001")).collect(),
        dates => dates,
    }
}

/// The time of day that a text may mean: `9:00`, `9 am`, `2.30 pm`, `10h15`.
pub fn time(text: &str) -> Option<Time> {
    let text = text.trim().to_lowercase();
    let (clock, half) = match (text.strip_suffix("am"), text.strip_suffix("pm")) {
        (Some(clock), _) => (clock, Some(0)),
        (_, Some(clock)) => (clock, Some(12)),
        _ => (text.as_str(), None),
    };
    let mut parts = clock.trim().split([':', '.', 'h']).map(str::trim);
    let hour: u32 = parts.next()?.parse().ok()?;
    let minute: u32 = match parts.next() {
        Some("") | None => 0,
        Some(minute) => minute.parse().ok()?,
    };
    let hour = half.map_or(hour, |half| hour % 12 + half);
    Time::from_hms_opt(hour, minute, 0)
}

/// The dates as the file writes them: `2027-06-11 or 2027-11-06`.
pub fn written(dates: &[Date]) -> String {
    let dates: Vec<String> = dates.iter().map(Date::to_string).collect();
    dates.join(" or ")
}
