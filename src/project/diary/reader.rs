//! Reads a diary. A section that cannot be read is told with its line; all others count.

use toml::de::DeTable;

use super::super::figures::{count, number};
use super::super::kind::{date, flag, text, word};
use super::super::names::{listed, near, quote};
use super::super::table::Table;
use super::contradictions;
use super::entry::{Entry, Happened, Names};
use crate::calendar::Date;
use crate::diagnostic::{Code, Findings, Given, Problem, Problems, Read, Source, Span};
use crate::plan::StepKind;

/// How a section of the file begins.
const SECTION: &str = "[[entry]]";

/// What a diary says, without what was taken back.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Diary {
    /// All entries that count, each with its number in the file, from 1.
    pub entries: Vec<(usize, Entry)>,
    /// How many sections there are, sound or not.
    pub sections: usize,
}

/// Reads a diary's text on a day. What is wrong in it is told beside what is sound.
#[must_use]
pub fn read(name: &str, text: &str, names: &Names, today: Date) -> (Diary, Problems) {
    let mut findings = Findings::default();
    let sections = sections(text);
    let mut entries: Vec<(usize, Given<Entry>)> = Vec::new();
    for (number, span) in sections.iter().enumerate() {
        if let Ok(entry) = section(text, *span, names, today, &mut findings) {
            entries.push((
                number + 1,
                Given {
                    value: entry,
                    span: *span,
                },
            ));
        }
    }
    take_back(&mut entries, &mut findings);
    contradictions::tell(&entries, &mut findings);
    let diary = Diary {
        entries: entries
            .into_iter()
            .map(|(number, given)| (number, given.value))
            .collect(),
        sections: sections.len(),
    };
    let mut problems = Problems::default();
    if !findings.is_empty() {
        problems.add(Source::whole(name.to_owned(), text.to_owned()), findings);
    }
    (diary, problems)
}

/// Where each section stands, from its head to the next one.
fn sections(text: &str) -> Vec<Span> {
    let mut heads: Vec<usize> = Vec::new();
    let mut at = 0;
    for line in text.split_inclusive('\n') {
        if line.trim_start().starts_with('[') {
            heads.push(at);
        }
        at += line.len();
    }
    let ends = heads.iter().skip(1).copied().chain([text.len()]);
    heads
        .iter()
        .zip(ends)
        .map(|(from, to)| Span::from(*from..to))
        .collect()
}

/// One section, read as if nothing else stood in the file, so that a broken one spoils no other.
fn section(
    text: &str,
    span: Span,
    names: &Names,
    today: Date,
    findings: &mut Findings,
) -> Read<Entry> {
    let part = text.get(span.start..span.end).unwrap_or_default();
    if !part.trim_start().starts_with(SECTION) {
        let problem = Problem::new(Code::Syntax, "this begins no entry").at(span, "");
        return Err(findings
            .report(problem.remedy(format!("an entry begins with {SECTION}; all others count"))));
    }
    // Blanks in the place of all that stands before keep every sign at its place.
    let body = " ".repeat(span.start) + &part.replacen(SECTION, &" ".repeat(SECTION.len()), 1);
    let (root, errors) = DeTable::parse_recoverable(&body);
    if let Some(error) = errors.first() {
        let at = error.span().unwrap_or(span.start..span.end);
        let problem = Problem::new(
            Code::Syntax,
            format!("this entry cannot be read: {}", error.message()),
        );
        let remedy = "correct it, or remove the section; all others count";
        return Err(findings.report(problem.at(at.into(), "").remedy(remedy)));
    }
    let head = Span::from(span.start..span.start + SECTION.len());
    Table::read("this [[entry]]", root.get_ref(), head, findings, |t| {
        entry(t, names, today)
    })
}

/// The kinds of steps by their keys.
fn steps() -> Vec<(&'static str, StepKind)> {
    StepKind::ALL
        .iter()
        .map(|kind| (kind.facts().key, *kind))
        .collect()
}

/// A section as given.
struct Raw {
    on: Read<Given<Date>>,
    by: Read<Option<Given<String>>>,
    done: Read<Option<Given<StepKind>>>,
    missed: Read<Option<Given<StepKind>>>,
    up: Read<Option<Given<u32>>>,
    lost: Read<Option<Given<f64>>>,
    words: Read<Option<Given<String>>>,
    back: Read<Option<Given<u32>>>,
    ingredient: Read<Option<Given<String>>>,
    class: Read<Option<Given<String>>>,
    of: Read<Option<Given<u32>>>,
    count: Read<Option<Given<u32>>>,
    kg: Read<Option<Given<f64>>>,
    cause: Read<Option<Given<String>>>,
    weather: Read<Happened>,
}

fn raw(t: &mut Table<'_, '_>) -> Raw {
    let steps = steps();
    Raw {
        on: t.need("on", "the day on which it happened", "2027-05-04", date()),
        by: t.maybe("by", "who wrote it", "", text()),
        done: t.maybe("done", "a step that was done", "", word(&steps)),
        missed: t.maybe("missed", "a step that a class missed", "", word(&steps)),
        up: t.maybe("up", "how many are up", "", count(0..=100_000)),
        lost: t.maybe("lost", "which part is lost", "", number(0.0..=1.0)),
        words: t.maybe("words", "anything else", "", text()),
        back: t.maybe(
            "takes_back",
            "the number of an entry that does not count",
            "",
            count(1..=100_000),
        ),
        ingredient: t.maybe("ingredient", "of which ingredient", "", text()),
        class: t.maybe("class", "which class", "", text()),
        of: t.maybe("of", "of so many that were sown", "", count(1..=100_000)),
        count: t.maybe("count", "how many seeds or plants", "", count(1..=100_000)),
        kg: t.maybe("kg", "kilograms of a pick", "", number(0.0..=10_000.0)),
        cause: t.maybe("cause", "by what it is lost", "", text()),
        weather: weather(t),
    }
}

fn weather(t: &mut Table<'_, '_>) -> Read<Happened> {
    let degrees = || number(-60.0..=60.0);
    let low = t.maybe("low_c", "the lowest temperature", "", degrees());
    let high = t.maybe("high_c", "the highest temperature", "", degrees());
    let rain = t.maybe("rain_mm", "rain in the gauge", "", number(0.0..=2000.0));
    let frost = t.maybe("frost", "true if frost was seen", "", flag());
    Ok(Happened::Weather {
        low: value(low?),
        high: value(high?),
        rain: value(rain?),
        frost: value(frost?).unwrap_or(false),
    })
}

fn value<T>(given: Option<Given<T>>) -> Option<T> {
    given.map(|given| given.value)
}

fn entry(t: &mut Table<'_, '_>, names: &Names, today: Date) -> Read<Entry> {
    let mut raw = raw(t);
    let on = raw.on?;
    if on.value > today {
        let cause = format!("{} has not come yet", on.value);
        let problem = Problem::new(Code::OutOfRange, cause).at(on.span, "");
        return Err(t.report(problem.remedy("write down what has happened, on its day")));
    }
    let by = std::mem::replace(&mut raw.by, Ok(None));
    let what = what(t, names, raw)?;
    Ok(Entry {
        on: on.value,
        by: value(by?),
        what,
    })
}

fn what(t: &mut Table<'_, '_>, names: &Names, raw: Raw) -> Read<Happened> {
    let ingredient = known(
        t,
        raw.ingredient?,
        &names.ingredients,
        (Code::NoSuchIngredient, "ingredient"),
    )?;
    let class = known(t, raw.class?, &names.classes, (Code::NoSuchGrade, "class"))?;
    let of = |t: &mut Table<'_, '_>| ingredient.clone().ok_or_else(|| missing(t, "ingredient"));
    let weather = raw.weather?;
    Ok(
        match (
            raw.done?,
            raw.missed?,
            raw.up?,
            raw.lost?,
            raw.words?,
            raw.back?,
        ) {
            (Some(step), None, None, None, None, None) => Happened::Done {
                step: step.value,
                ingredient: of(t)?,
                class,
                count: value(raw.count?),
                kg: value(raw.kg?),
            },
            (None, Some(step), None, None, None, None) => Happened::Missed {
                step: step.value,
                ingredient: of(t)?,
                class: class.ok_or_else(|| missing(t, "class"))?,
            },
            (None, None, Some(count), None, None, None) => Happened::Up {
                ingredient: of(t)?,
                count: count.value,
                of: value(raw.of?),
            },
            (None, None, None, Some(share), None, None) => Happened::Lost {
                ingredient: of(t)?,
                share: share.value,
                cause: value(raw.cause?).unwrap_or_default(),
            },
            (None, None, None, None, Some(words), None) => Happened::Words(words.value),
            (None, None, None, None, None, Some(number)) => {
                Happened::TakenBack(number.value as usize)
            }
            (None, None, None, None, None, None) if weather != NO_WEATHER => weather,
            _ => return Err(t.report(not_one(t.span()))),
        },
    )
}

/// The weather of which nothing was written.
const NO_WEATHER: Happened = Happened::Weather {
    low: None,
    high: None,
    rain: None,
    frost: false,
};

/// The problem of an entry that tells nothing, or several things.
fn not_one(span: Span) -> Problem {
    let remedy = "give one of done, missed, up, lost, words, takes_back, or the weather";
    let problem = Problem::new(Code::ConflictingKeys, "an entry tells one thing");
    problem.at(span, "").remedy(remedy)
}

/// A name that the garden has, if one is given.
fn known(
    t: &mut Table<'_, '_>,
    given: Option<Given<String>>,
    names: &[String],
    (code, what): (Code, &str),
) -> Read<Option<String>> {
    let given = match given {
        Some(given) if !names.contains(&given.value) => given,
        known => return Ok(value(known)),
    };
    let all = || names.iter().map(String::as_str);
    let problem = Problem::new(code, format!("there is no {what} {}", quote(&given.value)));
    let remedy = match near(&given.value, all()) {
        Some(other) => format!("did you mean {}?", quote(other)),
        None => format!("there are {}", listed(all())),
    };
    Err(t.report(problem.at(given.span, "").remedy(remedy)))
}

fn missing(t: &mut Table<'_, '_>, key: &str) -> crate::diagnostic::Reported {
    let problem = Problem::new(Code::MissingKey, format!("this entry has no `{key}`"));
    t.report(
        problem
            .at(t.span(), "")
            .remedy(format!("add a line such as `{key} = \"...\"`")),
    )
}

/// Removes what was taken back, and the entries that take back.
fn take_back(entries: &mut Vec<(usize, Given<Entry>)>, findings: &mut Findings) {
    let mut gone: Vec<usize> = Vec::new();
    for (number, given) in entries.iter() {
        let Happened::TakenBack(which) = given.value.what else {
            continue;
        };
        if which >= *number {
            let problem = Problem::new(
                Code::OutOfRange,
                format!("entry {which} does not stand before this one"),
            );
            findings.report(
                problem
                    .at(given.span, "")
                    .remedy("`tureen note FILE` lists all with their numbers"),
            );
        }
        gone.extend([which, *number]);
    }
    entries.retain(|(number, _)| !gone.contains(number));
}
