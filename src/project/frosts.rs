//! The frost dates of the town, beside its monthly means: days of no particular year.

use chrono::Datelike;

use crate::calendar::Date;
use crate::diagnostic::{Code, Findings, Given, Problem, Read};
use crate::units::Latitude;
use crate::weather::monthly::FrostDates;

use super::kind::day_of_year;
use super::table::Table;

/// What holds where a date is not given.
const UNKNOWN: &str = "the monthly means alone tell";

/// The dates as given.
pub struct RawFrosts {
    last: Read<Option<Given<Date>>>,
    late: Read<Option<Given<Date>>>,
    first: Read<Option<Given<Date>>>,
    early: Read<Option<Given<Date>>>,
}

/// Reads the keys.
pub fn read(t: &mut Table<'_, '_>) -> RawFrosts {
    let mut day = |key, meaning| t.maybe(key, meaning, UNKNOWN, day_of_year());
    RawFrosts {
        last: day(
            "last_frost",
            "the last frost in spring: in half of the years it freezes (0 C) once more after this day",
        ),
        late: day(
            "late_frost",
            "a late last frost: in one year of ten it freezes once more after this day",
        ),
        first: day(
            "first_frost",
            "the first frost in autumn: in half of the years it has frozen before this day",
        ),
        early: day(
            "early_frost",
            "an early first frost: in one year of ten it has frozen before this day",
        ),
    }
}

/// The dates, each in its half of the year, and those of one year in ten nearer to summer.
pub fn check(
    raw: RawFrosts,
    latitude: Option<Latitude>,
    findings: &mut Findings,
) -> Read<FrostDates> {
    let (last, late, first, early) = (raw.last, raw.late, raw.first, raw.early);
    let dates = [
        ("last_frost", last, true),
        ("late_frost", late, true),
        ("first_frost", first, false),
        ("early_frost", early, false),
    ];
    let [last, late, first, early] = dates.map(|(key, given, spring)| {
        let given = given?;
        if let (Some(given), Some(latitude)) = (&given, latitude) {
            in_its_half(key, given, spring, latitude, findings)?;
        }
        Ok(given)
    });
    let (last, late, first, early) = (last?, late?, first?, early?);
    nearer_to_summer(("last_frost", &last), ("late_frost", &late), true, findings)?;
    nearer_to_summer(
        ("first_frost", &first),
        ("early_frost", &early),
        false,
        findings,
    )?;
    let day = |given: Option<Given<Date>>| given.map(|given| given.value);
    Ok(FrostDates {
        last: day(last),
        late: day(late),
        first: day(first),
        early: day(early),
    })
}

/// Spring is January to June in the north and July to December in the south, autumn the other half.
fn in_its_half(
    key: &str,
    given: &Given<Date>,
    spring: bool,
    latitude: Latitude,
    findings: &mut Findings,
) -> Read<()> {
    let second = spring == (latitude.0 < 0.0);
    if (given.value.month() > 6) == second {
        return Ok(());
    }
    let (season, other) = if spring {
        ("spring", "autumn")
    } else {
        ("autumn", "spring")
    };
    let cause = format!(
        "`{key}` is a day of {season}, and at this latitude {} is in {other}",
        given.value.format("%-d %B")
    );
    let half = if second {
        "July to December"
    } else {
        "January to June"
    };
    let remedy = format!("write a day from {half}, or the frosts under their right keys");
    let problem = Problem::new(Code::OutOfRange, cause).at(given.span, "");
    Err(findings.report(problem.remedy(remedy)))
}

/// What only one year in ten has lies nearer to summer than what half of them have.
fn nearer_to_summer(
    (usual_key, usual): (&str, &Option<Given<Date>>),
    (rare_key, rare): (&str, &Option<Given<Date>>),
    later: bool,
    findings: &mut Findings,
) -> Read<()> {
    let (Some(usual), Some(rare)) = (usual, rare) else {
        return Ok(());
    };
    let nearer = match later {
        true => usual.value < rare.value,
        false => rare.value < usual.value,
    };
    if nearer {
        return Ok(());
    }
    let side = if later { "after" } else { "before" };
    let cause = format!("`{rare_key}` is not {side} `{usual_key}`");
    Err(findings.report(
        Problem::new(Code::DatesOutOfOrder, cause)
            .at(rare.span, "one year in ten")
            .also(usual.span, "half of the years")
            .remedy("correct one of the two days, or leave one out"),
    ))
}
