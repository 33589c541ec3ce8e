//! The section [project]: name, language, feast, rain date, when the kitchen needs the harvest.

use crate::calendar::{Date, plus_days};
use crate::diagnostic::{Code, Findings, Given, Problem, Read, Reported};
use crate::garden::{Feast, Grade, Locale, SchoolYear, Tongue};

use super::assumed::Assumed;
use super::figures::count;
use super::kind::{date, text, word};
use super::order::in_order;
use super::table::Table;

/// School days between delivery and feast, where the file does not say when the kitchen
/// needs the harvest.
const KITCHEN_DAYS: usize = 2;

/// The section as given.
pub struct RawProject {
    pub name: Read<Given<String>>,
    pub school: Read<Option<Given<String>>>,
    pub locale: Read<Option<Given<Locale>>>,
    pub families_also: Read<Option<Given<Tongue>>>,
    pub feast: Read<Given<Date>>,
    pub rain_date: Read<Option<Given<Date>>>,
    pub deliver_by: Read<Option<Given<Date>>>,
    portions: Read<Option<Given<u32>>>,
    adults: Read<Option<Given<u32>>>,
}

/// Reads the section.
pub fn read(t: &mut Table<'_, '_>) -> RawProject {
    RawProject {
        name: t.need(
            "name",
            "what the day is called, on every page",
            "\"Soup day\"",
            text(),
        ),
        school: t.maybe("school", "the school's name, on every page", "none", text()),
        locale: t.maybe(
            "locale",
            "how dates and amounts read: en-US has pounds and feet",
            Locale::default().tag(),
            word(&Locale::ALL.map(|locale| (locale.tag(), locale))),
        ),
        families_also: t.maybe(
            "families_also",
            "a second language for the list that families read; the school checks its sentences",
            "none",
            word(&Tongue::ALL.map(|tongue| (tongue.tag(), tongue))),
        ),
        feast: t.need(
            "feast",
            "the day on which the whole school eats: a school day",
            "2027-10-08",
            date(),
        ),
        rain_date: t.maybe(
            "rain_date",
            "a second chance: a school day after the feast",
            "none",
            date(),
        ),
        deliver_by: t.maybe(
            "deliver_by",
            "when the kitchen needs the harvest",
            "two school days before the feast",
            date(),
        ),
        portions: t.maybe(
            "portions",
            "meals to cook, for children and adults",
            "all children, and `adults`",
            count(1..=100_000),
        ),
        adults: t.maybe(
            "adults",
            "adults who eat too; not together with `portions`",
            0,
            count(0..=100_000),
        ),
    }
}

/// The feast, if its days are in order and school is in.
pub fn check(
    raw: &RawProject,
    (start, harvest): (Read<Given<Date>>, &[Given<Date>]),
    year: Read<&SchoolYear>,
    grades: Read<&[Grade]>,
    findings: &mut Findings,
    assumed: &mut Assumed,
) -> Read<Feast> {
    let order = check_order(raw, start, findings);
    let open = year.and_then(|year| check_school_days(raw, year, findings));
    let portions = check_portions(raw, grades, findings, assumed);
    order?;
    open?;
    let day = raw.feast?.value;
    let deliver_by = match raw.deliver_by? {
        Some(given) => given.value,
        None => usual_delivery(day, year?, assumed),
    };
    let days = (start?.value, deliver_by, day);
    check_harvest(harvest, days, year, findings)?;
    Ok(Feast {
        day,
        rain_date: raw.rain_date?.map(|given| given.value),
        deliver_by,
        portions: portions?,
    })
}

/// start <= deliver_by <= feast <= rain_date.
fn check_order(raw: &RawProject, start: Read<Given<Date>>, findings: &mut Findings) -> Read<()> {
    let given = [
        ("start", start.ok()),
        ("deliver_by", raw.deliver_by.ok().flatten()),
        ("feast", raw.feast.ok()),
        ("rain_date", raw.rain_date.ok().flatten()),
    ];
    let dates: Vec<(&str, Given<Date>)> = given
        .into_iter()
        .filter_map(|(key, date)| Some((key, date?)))
        .collect();
    let mut result = Ok(());
    for pair in dates.windows(2) {
        let [first, second] = pair else { continue };
        if let Err(reported) = in_order(*first, *second, findings) {
            result = Err(reported);
        }
    }
    result
}

fn check_school_days(raw: &RawProject, year: &SchoolYear, findings: &mut Findings) -> Read<()> {
    let feast = school_day("feast", raw.feast?, year, findings);
    let rain = match raw.rain_date? {
        Some(day) => school_day("rain_date", day, year, findings),
        None => Ok(()),
    };
    feast.and(rain)
}

/// Each day of the harvest is a school day after the start on which the kitchen still takes what is picked; all that
/// are not are told.
fn check_harvest(
    days: &[Given<Date>],
    (start, deliver_by, feast): (Date, Date, Date),
    year: Read<&SchoolYear>,
    findings: &mut Findings,
) -> Read<()> {
    let mut result = Ok(());
    for day in days {
        let checked = match (start..=deliver_by).contains(&day.value) {
            true => year.and_then(|year| school_day("harvest_days", *day, year, findings)),
            false => Err(out_of_time(*day, (start, deliver_by, feast), findings)),
        };
        result = result.and(checked);
    }
    result
}

/// A day of the harvest before the start, or when the kitchen takes nothing more.
fn out_of_time(
    day: Given<Date>,
    (start, deliver_by, feast): (Date, Date, Date),
    findings: &mut Findings,
) -> Reported {
    let cause = match day.value < start {
        true => format!("this day of the harvest is before the start, {start}"),
        false => {
            format!("this day of the harvest is after {deliver_by}, by which the kitchen needs it")
        }
    };
    let remedy = match (deliver_by..=feast).contains(&day.value) {
        true => format!(
            "choose an earlier day, or say `deliver_by = {}` in [project] if the kitchen takes it then",
            day.value
        ),
        false => "choose a school day shortly before the feast".to_owned(),
    };
    let problem = Problem::new(Code::DatesOutOfOrder, cause).at(day.span, day.value.to_string());
    findings.report(problem.remedy(remedy))
}

fn school_day(key: &str, day: Given<Date>, year: &SchoolYear, findings: &mut Findings) -> Read<()> {
    if year.school_is_in(day.value) {
        return Ok(());
    }
    let reason = if let Some(pause) = year.break_on(day.value) {
        format!("it lies in the break \"{}\"", pause.name)
    } else if year.days_off.contains(&day.value) {
        "it is one of `days_off`".to_owned()
    } else if year.term_on(day.value).is_none() {
        "it lies in no term".to_owned()
    } else {
        format!("it is a {}", day.value.format("%A"))
    };
    let near = (1..=28)
        .flat_map(|n| [plus_days(day.value, -n), plus_days(day.value, n)])
        .find(|d| year.school_is_in(*d));
    let remedy = match near {
        Some(near) => format!("choose a school day; the nearest is {near}"),
        None => "choose a school day, or extend the terms".to_owned(),
    };
    Err(findings.report(
        Problem::new(Code::NotASchoolDay, format!("`{key}` is not a school day"))
            .at(day.span, reason)
            .remedy(remedy),
    ))
}

fn check_portions(
    raw: &RawProject,
    grades: Read<&[Grade]>,
    findings: &mut Findings,
    assumed: &mut Assumed,
) -> Read<u32> {
    let (portions, adults) = (raw.portions?, raw.adults?);
    match (portions, adults) {
        (Some(_), Some(adults)) => Err(findings.report(
            Problem::new(
                Code::ConflictingKeys,
                "`portions` already counts the adults",
            )
            .at(adults.span, "")
            .remedy("give `portions` or `adults`, not both"),
        )),
        (Some(portions), None) => Ok(portions.value),
        (None, adults) => {
            let children: u32 = grades?
                .iter()
                .flat_map(|grade| &grade.classes)
                .map(|class| class.children)
                .sum();
            let adults = adults.map_or(0, |given| given.value);
            let portions = children + adults;
            let why = format!("{children} children and {adults} adults");
            assumed.note(format!("portions = {portions}"), why);
            Ok(portions)
        }
    }
}

fn usual_delivery(feast: Date, year: &SchoolYear, assumed: &mut Assumed) -> Date {
    let (day, why) = match year.school_days_before(feast, KITCHEN_DAYS) {
        Some(day) if day >= year.start => (day, "two school days before the feast"),
        _ => (
            feast,
            "no two school days lie between the start and the feast",
        ),
    };
    assumed.note(format!("deliver_by = {day}"), why);
    day
}
