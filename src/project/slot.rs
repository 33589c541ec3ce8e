//! A class of a [[grade]] section: its children, and when it meets in each term.

use chrono::Weekday;

use crate::calendar::{Date, Time};
use crate::diagnostic::{Code, Findings, Given, Problem, Read};
use crate::garden::{SchoolYear, Slot};
use crate::units::Minutes;

use super::assumed::Assumed;
use super::figures::{count, number};
use super::form::Form;
use super::kind::{Kind, date, text, time, word};
use super::names::{listed, near, quote};
use super::table::{Table, named, table};
use super::value::Value;

/// Minutes of a session where the file does not say (common practice: 30 to 50).
pub const USUAL_MINUTES: f64 = 40.0;

const WEEKDAYS: [(&str, Weekday); 5] = [
    ("Mon", Weekday::Mon),
    ("Tue", Weekday::Tue),
    ("Wed", Weekday::Wed),
    ("Thu", Weekday::Thu),
    ("Fri", Weekday::Fri),
];

/// The same in full.
const FULL: [&str; 5] = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday"];

/// A class as given.
pub struct RawClass {
    pub name: Read<Given<String>>,
    pub children: Read<Given<u32>>,
    day: Read<Given<Weekday>>,
    slot: RawSlot,
    in_term: Read<Option<Given<Vec<Read<InTerm>>>>>,
}

/// What differs in one term.
struct InTerm {
    term: Given<String>,
    slot: RawSlot,
}

/// A slot as given; what is left out is taken from the class.
struct RawSlot {
    day: Read<Option<Given<Weekday>>>,
    every: Read<Option<Given<u32>>>,
    from: Read<Option<Given<Date>>>,
    minutes: Read<Option<Given<f64>>>,
    at: Read<Option<Given<Time>>>,
}

impl RawClass {
    /// The day before which no session lies, if the class gives one.
    pub fn first_day(&self) -> Option<Given<Date>> {
        self.slot.from.ok().flatten()
    }
}

/// Reads a class.
pub fn read_class(t: &mut Table<'_, '_>) -> RawClass {
    let name = t.need(
        "name",
        "what it is called, once in the school",
        "\"2a\"",
        text(),
    );
    let children = t.need("children", "how many are in it", "20", count(1..=60));
    let day = t.need("day", "the weekday of its lesson", "\"Tue\"", weekday());
    let slot = RawSlot {
        day: Ok(None),
        ..read_slot(t, false)
    };
    let in_term = t.maybe(
        "in_term",
        "what is otherwise in a later term, by the term's name",
        "the same in all terms",
        in_term(),
    );
    RawClass {
        name,
        children,
        day,
        slot,
        in_term,
    }
}

/// How long a session may be.
pub fn session_minutes() -> Kind<'static, f64> {
    number(10.0..=240.0)
}

/// Terms with the slots that differ there.
fn in_term() -> Kind<'static, Vec<Read<InTerm>>> {
    let slot = || table("this slot", |t| read_slot(t, true));
    named(
        "TERM",
        move || slot().form(),
        move |term, value, findings| {
            let slot = slot().read(value, findings)?;
            let value = term.value.to_owned();
            let span = term.span;
            Ok(InTerm {
                term: Given { value, span },
                slot,
            })
        },
    )
}

/// Reads a slot: that of a class, or of one of its terms, which may have another day.
fn read_slot(t: &mut Table<'_, '_>, of_a_term: bool) -> RawSlot {
    let otherwise = |usual: String| match of_a_term {
        true => "as in the class".to_owned(),
        false => usual,
    };
    RawSlot {
        day: if of_a_term {
            t.maybe(
                "day",
                "the weekday of its lesson",
                "as in the class",
                weekday(),
            )
        } else {
            Ok(None)
        },
        every: t.maybe(
            "every",
            "2 for a lesson every second week; it then needs `from`",
            otherwise("1".to_owned()),
            count(1..=2),
        ),
        from: t.maybe(
            "from",
            "no lesson before this day",
            otherwise("the start".to_owned()),
            date(),
        ),
        minutes: t.maybe(
            "minutes",
            "how long a lesson is",
            otherwise(USUAL_MINUTES.to_string()),
            session_minutes(),
        ),
        at: t.maybe(
            "at",
            "the hour at which it begins, for calendars",
            otherwise("the whole day".to_owned()),
            time(),
        ),
    }
}

/// A school day of the week, short or in full, in any case.
fn weekday() -> Kind<'static, Weekday> {
    let short = || WEEKDAYS.iter().map(|(short, _)| *short);
    Kind::new(
        move || Form::Word(short().chain(FULL).collect()),
        read_weekday,
    )
}

fn read_weekday(value: &Value<'_>, findings: &mut Findings) -> Read<Weekday> {
    let full = value.value.as_str().and_then(|text| {
        let text = text.trim();
        let found = WEEKDAYS.iter().find(|(_, day)| {
            FULL.get(day.num_days_from_monday() as usize)
                .is_some_and(|full| full.eq_ignore_ascii_case(text))
        });
        found.map(|(_, day)| *day)
    });
    full.map_or_else(|| word(&WEEKDAYS).read(value, findings), Ok)
}

/// One slot per term.
pub fn check_slots(
    raw: &RawClass,
    year: &SchoolYear,
    findings: &mut Findings,
    assumed: &mut Assumed,
) -> Read<Vec<Slot>> {
    let in_term: Vec<&InTerm> = match &raw.in_term {
        Ok(Some(given)) => given.value.iter().filter_map(|r| r.as_ref().ok()).collect(),
        Ok(None) => Vec::new(),
        Err(reported) => return Err(*reported),
    };
    check_term_names(&in_term, year, findings)?;
    let name = raw.name.as_ref().map_or("", |name| name.value.as_str());
    let slots: Vec<Read<Slot>> = year
        .terms
        .iter()
        .enumerate()
        .map(|(n, term)| {
            let own = in_term.iter().find(|own| own.term.value == term.name);
            if n > 0 && own.is_none() {
                let what = format!("the same slot in {}", term.name);
                assumed.note_for(name, what, "no other is given with `in_term`");
            }
            slot(raw, own.map(|own| &own.slot), year, findings)
        })
        .collect();
    if let Ok(None) = raw.slot.minutes {
        let what = format!("minutes = {USUAL_MINUTES}");
        assumed.note_for(name, what, "a usual lesson");
    }
    if let Ok(None) = raw.slot.every {
        assumed.note_for(name, "every = 1", "a class is taken to meet weekly");
    }
    slots.into_iter().collect()
}

fn check_term_names(in_term: &[&InTerm], year: &SchoolYear, findings: &mut Findings) -> Read<()> {
    let names = || year.terms.iter().map(|term| term.name.as_str());
    let mut result = Ok(());
    for own in in_term {
        if names().any(|name| name == own.term.value) {
            continue;
        }
        let list = listed(names());
        let remedy = match near(&own.term.value, names()) {
            Some(other) => format!("did you mean {}? The terms are {list}", quote(other)),
            None => format!("the terms are {list}"),
        };
        let cause = format!("there is no term {}", quote(&own.term.value));
        result = Err(findings.report(
            Problem::new(Code::NoSuchTerm, cause)
                .at(own.term.span, "")
                .remedy(remedy),
        ));
    }
    result
}

/// The slot of one term: what the term gives, else what the class gives, else the usual.
fn slot(
    class: &RawClass,
    own: Option<&RawSlot>,
    year: &SchoolYear,
    findings: &mut Findings,
) -> Read<Slot> {
    let base = &class.slot;
    let (own_day, own_every, own_from, own_minutes, own_at) = match own {
        Some(own) => (own.day?, own.every?, own.from?, own.minutes?, own.at?),
        None => (None, None, None, None, None),
    };
    let every = own_every.or(base.every?);
    let from = own_from.or(base.from?);
    let minutes = own_minutes.or(base.minutes?);
    let at = own_at.or(base.at?);
    if let (Some(every @ Given { value: 2, .. }), None) = (every, from) {
        let cause = "a class that meets every second week needs a first day";
        return Err(findings.report(
            Problem::new(Code::MissingKey, cause)
                .at(every.span, "every second week from when?")
                .remedy("add `from = ` and a date in a week in which it meets"),
        ));
    }
    Ok(Slot {
        day: own_day.map_or(class.day?.value, |day| day.value),
        every_weeks: every.map_or(1, |every| every.value),
        from: from.map_or(year.start, |from| from.value),
        minutes: Minutes(minutes.map_or(USUAL_MINUTES, |given| given.value)),
        at: at.map(|at| at.value),
    })
}
