//! Reads a diary. A section that cannot be read is told with its line; all others count.

use toml::de::DeTable;

use super::super::kind::{date, text};
use super::super::table::Table;
use super::contradictions;
use super::entry::{Entry, Happened, Names};
use super::what::what;
use crate::calendar::Date;
use crate::diagnostic::{Code, Findings, Given, Problem, Problems, Read, Source, Span, peek};

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

impl Diary {
    /// All entries that count in order of their days, those of one day as they stand in the file.
    #[must_use]
    pub fn by_day(&self) -> Vec<(usize, &Entry)> {
        let entries = self.entries.iter();
        let mut all: Vec<_> = entries.map(|(number, entry)| (*number, entry)).collect();
        all.sort_by_key(|(_, entry)| entry.on);
        all
    }
}

/// Reads the text of a diary of a plan from its start until a day. What is wrong in it is told beside what is sound.
#[must_use]
pub fn read(
    name: &str,
    text: &str,
    names: &Names,
    (start, today): (Date, Date),
) -> (Diary, Problems) {
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
    since(start, &mut entries, &mut findings);
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

fn entry(t: &mut Table<'_, '_>, names: &Names, today: Date) -> Read<Entry> {
    let on = t.need("on", "the day on which it happened", "2027-05-04", date());
    let by = t.maybe("by", "who wrote it", "", text());
    // All keys are asked for before anything is found wrong.
    let what = what(t, names, peek(&on).map(|given| given.value));
    let on = on?;
    if on.value > today {
        let cause = format!("{} has not come yet", on.value);
        let problem = Problem::new(Code::OutOfRange, cause).at(on.span, "");
        return Err(t.report(problem.remedy("write down what has happened, on its day")));
    }
    Ok(Entry {
        on: on.value,
        by: by?.map(|given| given.value),
        what: what?,
    })
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

/// Removes steps that were done or missed before the start of the plan, which has none then.
fn since(start: Date, entries: &mut Vec<(usize, Given<Entry>)>, findings: &mut Findings) {
    entries.retain(|(_, given)| {
        let is_step = match given.value.what {
            Happened::Done { .. } | Happened::Missed { .. } => true,
            Happened::Up { .. }
            | Happened::Lost { .. }
            | Happened::Closed { .. }
            | Happened::NoLesson { .. }
            | Happened::Weather { .. }
            | Happened::Words(_)
            | Happened::TakenBack(_) => false,
        };
        let (on, early) = (given.value.on, is_step && given.value.on < start);
        if early {
            let cause = format!("{on} lies before {start}, the start of the project");
            let problem = Problem::new(Code::OutOfRange, cause).at(given.span, "");
            findings.report(problem.remedy(
                "correct the day of this entry, or set `start` in the project file to it; what was sown before the \
                 start is a section [[seedlings]] or [[growing]] there, and `words` may tell of it here",
            ));
        }
        !early
    });
}
