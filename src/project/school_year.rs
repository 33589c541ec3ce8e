//! The section [calendar]: terms, breaks and days off, in order and without overlap.

use crate::calendar::Date;
use crate::diagnostic::{Code, Findings, Given, Problem, Read};
use crate::garden::{Break, Care, HarvestDay, SchoolYear, Term};
use crate::units::Minutes;

use super::assumed::Assumed;
use super::kind::{date, text, word};
use super::lists::{list, some};
use super::names::quote;
use super::order::in_order;
use super::slot::{USUAL_MINUTES, session_minutes};
use super::table::{Table, table};

/// Terms that a plan of at most 80 weeks can touch, with room to spare.
const MOST_TERMS: usize = 20;

/// The words for who cares.
pub const CARE: [(&str, Care); 3] = [
    (Care::Nobody.key(), Care::Nobody),
    (Care::Staff.key(), Care::Staff),
    (Care::Families.key(), Care::Families),
];

/// The section as given.
pub struct RawSchoolYear {
    pub start: Read<Given<Date>>,
    pub moves_up: Read<Option<Given<Date>>>,
    terms: Read<Given<Vec<Given<RawSpan>>>>,
    breaks: Read<Option<Given<Vec<Given<RawBreak>>>>>,
    days_off: Read<Option<Given<Vec<Given<Date>>>>>,
    pub harvest_days: Read<Option<Given<Vec<Given<RawHarvestDay>>>>>,
}

/// A named span of days.
struct RawSpan {
    name: Read<Given<String>>,
    from: Read<Given<Date>>,
    to: Read<Given<Date>>,
}

/// A day of the harvest as given.
pub struct RawHarvestDay {
    pub day: Read<Given<Date>>,
    minutes: Read<Option<Given<f64>>>,
}

struct RawBreak {
    span: RawSpan,
    care: Read<Option<Given<Care>>>,
}

/// A named span whose days are in order.
struct Days {
    name: Given<String>,
    from: Given<Date>,
    to: Given<Date>,
}

/// Reads the section.
pub fn read(t: &mut Table<'_, '_>) -> RawSchoolYear {
    let example = "[{ name = \"Spring\", from = 2027-01-11, to = 2027-06-18 }]";
    RawSchoolYear {
        start: t.need(
            "start",
            "the first day on which anyone may sow",
            "2027-01-11",
            date(),
        ),
        moves_up: t.maybe(
            "moves_up",
            "the day on which all grades move up",
            "they do not move up within the plan",
            date(),
        ),
        terms: t.need(
            "terms",
            "when school is in",
            example,
            some(table("this term", read_term)),
        ),
        breaks: t.maybe(
            "breaks",
            "holidays within terms and between them",
            "none",
            list(table("this break", read_break)),
        ),
        days_off: t.maybe(
            "days_off",
            "single days without school",
            "none",
            list(date()),
        ),
        harvest_days: t.maybe(
            "harvest_days",
            "days on which all classes meet for the harvest, beside their lessons",
            "none",
            list(table("this day", read_harvest_day)),
        ),
    }
}

fn read_term(t: &mut Table<'_, '_>) -> RawSpan {
    RawSpan {
        name: t.need("name", "what it is called", "\"Spring\"", text()),
        from: t.need("from", "its first day", "2027-01-11", date()),
        to: t.need("to", "its last day", "2027-06-18", date()),
    }
}

fn read_harvest_day(t: &mut Table<'_, '_>) -> RawHarvestDay {
    RawHarvestDay {
        day: t.need(
            "day",
            "a school day, by `deliver_by` at the latest",
            "2027-10-06",
            date(),
        ),
        minutes: t.maybe(
            "minutes",
            "how long the session of every class is",
            USUAL_MINUTES,
            session_minutes(),
        ),
    }
}

fn read_break(t: &mut Table<'_, '_>) -> RawBreak {
    RawBreak {
        span: read_term(t),
        care: t.maybe(
            "care",
            "who is there: staff water and keep picked what bears; families do, and pick for the dish and cure",
            "none",
            word(&CARE),
        ),
    }
}

/// The school year, if every part of it is sound. `moves_up` is as given.
pub fn check(
    raw: RawSchoolYear,
    findings: &mut Findings,
    assumed: &mut Assumed,
) -> Read<SchoolYear> {
    let terms = raw.terms.and_then(|terms| check_terms(terms, findings));
    let breaks = match raw.breaks {
        Ok(Some(breaks)) => check_breaks(breaks.value, findings, assumed),
        Ok(None) => Ok(Vec::new()),
        Err(reported) => Err(reported),
    };
    let mut days_off: Vec<Date> = raw.days_off?.map_or_else(Vec::new, |days| {
        days.value.iter().map(|d| d.value).collect()
    });
    days_off.sort_unstable();
    days_off.dedup();
    let harvest_days = match raw.harvest_days {
        Ok(Some(days)) => check_harvest_days(&days.value, findings),
        Ok(None) => Ok(Vec::new()),
        Err(reported) => Err(reported),
    };
    Ok(SchoolYear {
        start: raw.start?.value,
        moves_up: raw.moves_up?.map(|day| day.value),
        terms: terms?,
        breaks: breaks?,
        days_off,
        harvest_days: harvest_days?,
    })
}

/// In order, none twice. That school is in, and that they are in time, is a matter of the feast.
fn check_harvest_days(
    raw: &[Given<RawHarvestDay>],
    findings: &mut Findings,
) -> Read<Vec<HarvestDay>> {
    let mut days: Vec<HarvestDay> = Vec::new();
    for harvest in raw {
        let (day, minutes) = (harvest.value.day?, harvest.value.minutes?);
        if days.iter().any(|other| other.day == day.value) {
            let problem = Problem::new(Code::DuplicateId, "this day of the harvest is there twice");
            let problem = problem.at(day.span, day.value.to_string());
            return Err(findings.report(problem.remedy("give each day once")));
        }
        days.push(HarvestDay {
            day: day.value,
            minutes: Minutes(minutes.map_or(USUAL_MINUTES, |minutes| minutes.value)),
        });
    }
    days.sort_by_key(|harvest| harvest.day);
    Ok(days)
}

fn check_terms(raw: Given<Vec<Given<RawSpan>>>, findings: &mut Findings) -> Read<Vec<Term>> {
    if raw.value.len() > MOST_TERMS {
        let cause = format!("`terms` should hold at most {MOST_TERMS} terms");
        let label = format!("these are {}", raw.value.len());
        let problem = Problem::new(Code::WrongLength, cause).at(raw.span, label);
        return Err(findings.report(problem.remedy("give only the terms of the plan")));
    }
    let spans: Vec<Read<Days>> = raw
        .value
        .into_iter()
        .map(|term| days(term.value, findings))
        .collect();
    let mut spans = spans.into_iter().collect::<Read<Vec<Days>>>()?;
    apart("terms", &mut spans, |days| days, findings)?;
    Ok(spans
        .into_iter()
        .map(|days| Term {
            name: days.name.value,
            from: days.from.value,
            to: days.to.value,
        })
        .collect())
}

fn check_breaks(
    raw: Vec<Given<RawBreak>>,
    findings: &mut Findings,
    assumed: &mut Assumed,
) -> Read<Vec<Break>> {
    let spans: Vec<Read<(Days, Option<Given<Care>>)>> = raw
        .into_iter()
        .map(|raw| Ok((days(raw.value.span, findings)?, raw.value.care?)))
        .collect();
    let mut spans = spans.into_iter().collect::<Read<Vec<_>>>()?;
    apart("breaks", &mut spans, |(days, _)| days, findings)?;
    Ok(spans
        .into_iter()
        .map(|(days, care)| {
            if care.is_none() {
                let why = "taken to be so where a break does not say who cares";
                assumed.note_for(&days.name.value, "care = \"none\"", why);
            }
            Break {
                name: days.name.value,
                from: days.from.value,
                to: days.to.value,
                care: care.map_or(Care::Nobody, |care| care.value),
            }
        })
        .collect())
}

fn days(raw: RawSpan, findings: &mut Findings) -> Read<Days> {
    let (name, from, to) = (raw.name?, raw.from?, raw.to?);
    in_order(("from", from), ("to", to), findings)?;
    Ok(Days { name, from, to })
}

/// Sorts spans by their first day; reports those that share a day or a name.
fn apart<T>(
    what: &str,
    spans: &mut [T],
    days: impl Fn(&T) -> &Days,
    findings: &mut Findings,
) -> Read<()> {
    spans.sort_by_key(|span| days(span).from.value);
    let mut result = Ok(());
    for pair in spans.windows(2) {
        let [first, second] = pair else { continue };
        let (first, second) = (days(first), days(second));
        if first.to.value >= second.from.value {
            let (a, b) = (quote(&first.name.value), quote(&second.name.value));
            let problem = Problem::new(
                Code::SpansOverlap,
                format!("the {what} {a} and {b} overlap"),
            )
            .at(second.from.span, format!("{b} begins here"))
            .also(first.to.span, format!("{a} ends here"))
            .remedy("let one end before the other begins");
            result = Err(findings.report(problem));
        }
    }
    result
}
