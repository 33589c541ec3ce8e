//! The section [place]: latitude, and the weather as a file or as monthly means.

use crate::calendar::Horizon;
use crate::diagnostic::{Code, Findings, Given, Problem, Read, Span};
use crate::units::{Celsius, Latitude, Millimetres};
use crate::weather::Record;
use crate::weather::generator::generate;
use crate::weather::monthly::Monthly;

use chrono::Datelike;

use super::assumed::Assumed;
use super::figures::{count, number};
use super::frosts::{self, RawFrosts};
use super::kind::{Kind, text};
use super::lists::exactly;
use super::table::{Table, table};

/// Rain on a day with rain where the file does not give the number of such days
/// (common practice: about 6 mm).
const RAIN_PER_DAY: f64 = 6.0;

/// Most guessed days with rain in a month.
const MOST_RAIN_DAYS: f64 = 25.0;

/// Weather years that are generated where the file does not say how many.
const USUAL_YEARS: u32 = 30;

/// The seed where the file gives none.
const USUAL_SEED: u32 = 1;

/// Fewer weather years than this are mentioned in every report.
const FEW_YEARS: usize = 10;

const EXAMPLE: &str = "[-7, -6, -2, 5, 12, 17, 20, 19, 15, 8, 1, -4]";
const RAIN_EXAMPLE: &str = "[60, 55, 65, 75, 80, 90, 90, 90, 80, 75, 75, 65]";

/// The section as given.
pub struct RawPlace {
    span: Span,
    pub latitude: Read<Given<f64>>,
    weather: Read<Option<Given<String>>>,
    weather_from: Read<Option<Given<u32>>>,
    monthly: Read<Option<Given<RawMonthly>>>,
}

struct RawMonthly {
    tmin: Read<Given<[f64; 12]>>,
    tmax: Read<Given<[f64; 12]>>,
    rain: Read<Given<[f64; 12]>>,
    rain_days: Read<Option<Given<[f64; 12]>>>,
    frosts: RawFrosts,
    years: Read<Option<Given<u32>>>,
    seed: Read<Option<Given<u32>>>,
}

/// Where the weather comes from.
pub enum WeatherFrom {
    /// A file, by its name, and the first calendar year of it that counts.
    File(Given<String>, Option<Given<u32>>),
    /// Monthly means, how many years, and the seed.
    Means(Box<Monthly>, u32, u64),
}

/// Reads the section.
pub fn read(t: &mut Table<'_, '_>) -> RawPlace {
    RawPlace {
        span: t.span(),
        latitude: t.need(
            "latitude",
            "how far north the place lies; south of the equator it is negative",
            "44.3",
            number(-66.0..=66.0),
        ),
        weather: t.maybe(
            "weather",
            "a file of daily weather beside this one, in CSV",
            "`monthly` is needed",
            text(),
        ),
        weather_from: t.maybe(
            "weather_from",
            "the first calendar year of the weather file that counts; earlier ones are passed over",
            "all that the file holds",
            count(1700..=2200),
        ),
        monthly: t.maybe(
            "monthly",
            "means of the twelve months, from which weather years are made",
            "`weather` is needed",
            table("`monthly`", read_monthly),
        ),
    }
}

fn read_monthly(t: &mut Table<'_, '_>) -> RawMonthly {
    let temperature = || months(-60.0, 60.0);
    RawMonthly {
        tmin: t.need(
            "tmin_c",
            "mean lowest temperature of each month, January first",
            EXAMPLE,
            temperature(),
        ),
        tmax: t.need(
            "tmax_c",
            "mean highest temperature of each month",
            EXAMPLE,
            temperature(),
        ),
        rain: t.need(
            "rain_mm",
            "rain of each month",
            RAIN_EXAMPLE,
            months(0.0, 3000.0),
        ),
        rain_days: t.maybe(
            "rain_days",
            "days with rain in each month",
            format!("{RAIN_PER_DAY} mm a day, at most {MOST_RAIN_DAYS} days"),
            months(0.0, 31.0),
        ),
        frosts: frosts::read(t),
        years: t.maybe(
            "years",
            "how many weather years are made",
            USUAL_YEARS,
            count(10..=200),
        ),
        seed: t.maybe(
            "seed",
            "another number makes other years",
            USUAL_SEED,
            count(0..=u32::MAX),
        ),
    }
}

fn months(least: f64, most: f64) -> Kind<'static, [f64; 12]> {
    exactly(number(least..=most), "January first")
}

/// Where the weather comes from: exactly one of `weather` and `monthly`.
pub fn check(raw: RawPlace, findings: &mut Findings, assumed: &mut Assumed) -> Read<WeatherFrom> {
    let from = raw.weather_from?;
    match (raw.weather?, raw.monthly?) {
        (Some(name), None) => Ok(WeatherFrom::File(name, from)),
        (None, Some(_)) if let Some(from) = &from => Err(findings.report(
            Problem::new(
                Code::KeyWithoutEffect,
                "`weather_from` needs a weather file",
            )
            .at(from.span, "")
            .remedy("remove it: years are made up from the means as many as `years` says"),
        )),
        (None, Some(monthly)) => {
            let latitude = raw.latitude.ok().map(|given| Latitude(given.value));
            check_monthly(monthly.value, latitude, findings, assumed)
        }
        (Some(name), Some(monthly)) => Err(findings.report(
            Problem::new(Code::ConflictingKeys, "the weather is given twice")
                .at(monthly.span, "as monthly means")
                .also(name.span, "and as a file")
                .remedy("leave one; daily weather of past years is the better one"),
        )),
        (None, None) => Err(findings.report(
            Problem::new(Code::MissingKey, "the section [place] gives no weather")
                .at(raw.span, "")
                .remedy(
                    "add `weather = \"weather.csv\"`, or monthly means with \
                     `monthly = { tmin_c = [...], tmax_c = [...], rain_mm = [...] }`",
                ),
        )),
    }
}

fn check_monthly(
    raw: RawMonthly,
    latitude: Option<Latitude>,
    findings: &mut Findings,
    assumed: &mut Assumed,
) -> Read<WeatherFrom> {
    let frosts = frosts::check(raw.frosts, latitude, findings);
    let (tmin, tmax) = (raw.tmin?, raw.tmax?);
    if let Some(month) = tmin
        .value
        .iter()
        .zip(tmax.value)
        .position(|(lo, hi)| *lo > hi)
    {
        let cause = format!(
            "in month {} the lowest temperature is above the highest",
            month + 1
        );
        return Err(findings.report(
            Problem::new(Code::LowAboveExpected, cause)
                .at(tmin.span, "lowest")
                .also(tmax.span, "highest")
                .remedy("correct one of the two"),
        ));
    }
    let rain = raw.rain?.value;
    let rain_days = match raw.rain_days? {
        Some(given) => given.value,
        None => {
            let why =
                format!("{RAIN_PER_DAY} mm on a day with rain, at most {MOST_RAIN_DAYS} days");
            assumed.note("rain_days", why);
            rain.map(|mm| (mm / RAIN_PER_DAY).min(MOST_RAIN_DAYS))
        }
    };
    let monthly = Monthly {
        tmin: tmin.value.map(Celsius),
        tmax: tmax.value.map(Celsius),
        rain: rain.map(Millimetres),
        rain_days,
        frosts: frosts?,
    };
    let years = raw.years?.map_or(USUAL_YEARS, |given| given.value);
    let seed = raw.seed?.map_or(USUAL_SEED, |given| given.value).into();
    assumed.note(
        "weather from monthly means",
        format!("{years} years made up from the means; no thermometer saw them"),
    );
    Ok(WeatherFrom::Means(Box::new(monthly), years, seed))
}

/// Generated weather that holds the plan's span `years` times.
pub fn generated(monthly: &Monthly, years: u32, seed: u64, horizon: Horizon) -> Record {
    let whole = years + horizon.calendar_years() - 1;
    let first = horizon.first().year() - i32::try_from(whole).unwrap_or(0);
    generate(monthly, first, whole, seed)
}

/// The record from the year on that the file names; that years are left, if there were any, is checked.
pub fn counted_from(
    record: Record,
    from: Option<Given<u32>>,
    horizon: Horizon,
    findings: &mut Findings,
) -> Read<Record> {
    let Some(from) = from else { return Ok(record) };
    let last = record.years(horizon).last().map(|year| year.label);
    let year = i32::try_from(from.value).unwrap_or(i32::MAX);
    match last {
        Some(last) if last < year => {
            let cause = format!("no weather year is left from {year} on");
            Err(findings.report(
                Problem::new(Code::OutOfRange, cause)
                    .at(from.span, format!("the last one begins in {last}"))
                    .remedy(format!(
                        "write {last} or earlier, better by ten years or more"
                    )),
            ))
        }
        _ => Ok(record.since(year)),
    }
}

/// Reports it if the weather does not hold the plan's span once; notes it if only a few times.
pub fn check_cover(
    record: &Record,
    horizon: Horizon,
    at: Span,
    findings: &mut Findings,
    assumed: &mut Assumed,
) -> Read<()> {
    match record.years(horizon).len() {
        0 => {
            let cause = format!(
                "the weather does not cover the plan's days from {} to {} in any year",
                horizon.first(),
                horizon.last()
            );
            let last = record.days().len() as i64 - 1;
            let label = format!(
                "it holds {} to {}",
                record.first(),
                crate::calendar::plus_days(record.first(), last)
            );
            Err(findings.report(
                Problem::new(Code::WeatherTooShort, cause)
                    .at(at, label)
                    .remedy("give daily weather of at least two years, better of ten or more"),
            ))
        }
        n if n < FEW_YEARS => {
            let why = "chances counted on so few years are rough; ten or more are better";
            let years = if n == 1 { "year" } else { "years" };
            assumed.note(format!("only {n} weather {years}"), why);
            Ok(())
        }
        _ => Ok(()),
    }
}
