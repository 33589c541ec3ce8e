//! The whole project file: its syntax, then its sections, each read by the file of its name.

use toml::de::{DeTable, DeValue};

use crate::catalogue::Catalogue;
use crate::diagnostic::{Code, Findings, Given, Problem, Read, Span};
use crate::garden::Area;

use super::bed::{self, RawBed};
use super::crop::{self, Overrides};
use super::feast::{self, RawProject};
use super::grade::{self, RawGrade};
use super::ingredient::{self, RawIngredient};
use super::kind::Value;
use super::names::{code, quote};
use super::place::{self, RawPlace};
use super::school_year::{self, RawSchoolYear};
use super::shelf::{self, RawShelf};
use super::standing::{self, RawGrowing, RawPatch};
use super::table::{Table, table};

/// All sections as given.
pub struct Document {
    pub project: Read<RawProject>,
    pub place: Read<RawPlace>,
    pub calendar: Read<RawSchoolYear>,
    pub grades: Read<Vec<Given<RawGrade>>>,
    pub ingredients: Read<Vec<Given<RawIngredient>>>,
    pub beds: Read<Vec<Given<RawBed>>>,
    pub growing: Read<Vec<Given<RawGrowing>>>,
    pub patches: Read<Vec<Given<RawPatch>>>,
    pub areas: Read<Vec<Given<Area>>>,
    pub shelf: Read<Option<Given<RawShelf>>>,
    pub overrides: Read<Overrides>,
}

/// Parses the text and reads all sections.
pub fn parse(text: &str, catalogue: &Catalogue, findings: &mut Findings) -> Read<Document> {
    if text.trim().is_empty() {
        let problem = Problem::new(Code::EmptyFile, "this file holds nothing");
        return Err(findings.report(problem.remedy("begin with the section [project]")));
    }
    let (root, errors) = DeTable::parse_recoverable(text);
    let mut sound = Ok(());
    for error in errors {
        let (problem, of_one_value) = syntax(text, &error);
        let reported = findings.spoil(problem);
        if !of_one_value {
            sound = Err(reported);
        }
    }
    // What was recovered around a syntax error may miss keys that the text does hold.
    sound?;
    Ok(Table::read(
        "the file",
        root.get_ref(),
        Span::default(),
        findings,
        |t| read(t, catalogue),
    ))
}

/// The problem of a syntax error, and whether the rest of the file can still be read.
fn syntax(text: &str, error: &toml::de::Error) -> (Problem, bool) {
    let message = error.message();
    let Some(span) = error.span().map(Span::from) else {
        let cause = "the keys are nested too deeply";
        return (Problem::new(Code::TooDeep, cause).remedy(PLAIN), false);
    };
    let found = text.get(span.start..span.end).unwrap_or_default();
    if message.contains("recurs") {
        let problem = Problem::new(Code::TooDeep, "this is nested too deeply");
        return (problem.at(span, "").remedy(PLAIN), false);
    }
    if message == "duplicate key" {
        let cause = format!("{} is given twice", code(found));
        let problem = Problem::new(Code::DuplicateKey, cause).at(span, "the second");
        return (problem.remedy("remove one of the two"), true);
    }
    if message.starts_with("invalid date") {
        let cause = format!("{} is not a date", quote(found));
        let problem = Problem::new(Code::ImpossibleDate, cause).at(span, message);
        let remedy = "write year-month-day, such as 2027-10-08";
        return (problem.remedy(remedy), true);
    }
    let unquoted = message.starts_with("string values must be quoted");
    let label = if unquoted { "" } else { message };
    let problem = Problem::new(Code::Syntax, "this is not well formed")
        .at(span, label)
        .remedy(match unquoted {
            true => "put the text in quotes",
            false => "text stands in \"quotes\", a list in [brackets], a table in {braces}, with commas between; a date is 2027-10-08",
        });
    (problem, unquoted)
}

/// The remedy for deep nesting.
const PLAIN: &str = "no key of a project lies so deep; remove the brackets or dots";

fn read(t: &mut Table<'_, '_>, catalogue: &Catalogue) -> Document {
    let areas = sections(t, "area", standing::read_area).and_then(|areas| {
        let sound = |area: Given<Read<Area>>| {
            let span = area.span;
            area.value.map(|value| Given { value, span })
        };
        areas.into_iter().map(sound).collect()
    });
    Document {
        project: section(t, "project", feast::read),
        place: section(t, "place", place::read),
        calendar: section(t, "calendar", school_year::read),
        grades: some_sections(t, "grade", grade::read),
        ingredients: read_dish(t),
        beds: sections(t, "bed", |t| bed::read(t, catalogue)),
        growing: sections(t, "growing", standing::read_growing),
        patches: sections(t, "patch", standing::read_patch),
        areas,
        shelf: t.maybe("shelf", table("[shelf]", shelf::read)),
        overrides: t
            .maybe("crop", |value, findings| {
                crop::read(value, catalogue, findings)
            })
            .map(|given| given.map_or_else(Overrides::new, |given| given.value)),
    }
}

fn read_dish(t: &mut Table<'_, '_>) -> Read<Vec<Given<RawIngredient>>> {
    let dish = t.maybe("dish", |value, findings| {
        let read = table("[dish]", |t| {
            some_sections(t, "ingredient", ingredient::read)
        });
        read(value, findings)?
    })?;
    match dish {
        Some(dish) => Ok(dish.value),
        None => Err(t.report(missing_section("[[dish.ingredient]]"))),
    }
}

/// A section that must be there once.
fn section<T>(
    t: &mut Table<'_, '_>,
    key: &'static str,
    read: impl Fn(&mut Table<'_, '_>) -> T,
) -> Read<T> {
    let heading = format!("[{key}]");
    match t.maybe(key, table(&heading, read))? {
        Some(section) => Ok(section.value),
        None => Err(t.report(missing_section(&heading))),
    }
}

/// A section that may be there any number of times.
fn sections<T>(
    t: &mut Table<'_, '_>,
    key: &'static str,
    read: impl Fn(&mut Table<'_, '_>) -> T,
) -> Read<Vec<Given<T>>> {
    let given = t.maybe(key, |value, findings| each(value, findings, &read))?;
    Ok(given.map_or_else(Vec::new, |given| given.value))
}

/// A section that must be there at least once.
fn some_sections<T>(
    t: &mut Table<'_, '_>,
    key: &'static str,
    read: impl Fn(&mut Table<'_, '_>) -> T,
) -> Read<Vec<Given<T>>> {
    let given = sections(t, key, read)?;
    if given.is_empty() {
        let heading = match key {
            "ingredient" => "[[dish.ingredient]]".to_owned(),
            _ => format!("[[{key}]]"),
        };
        return Err(t.report(missing_section(&heading)));
    }
    Ok(given)
}

fn each<T>(
    value: &Value<'_>,
    findings: &mut Findings,
    read: impl Fn(&mut Table<'_, '_>) -> T,
) -> Read<Vec<Given<T>>> {
    let heading = format!("this [[{}]]", value.key);
    match value.value {
        DeValue::Array(items) => {
            let read: Vec<Read<Given<T>>> = items
                .iter()
                .map(|item| {
                    let item = Value::new(value.key, item);
                    let span = item.span;
                    table(&heading, &read)(&item, findings).map(|value| Given { value, span })
                })
                .collect();
            read.into_iter().collect()
        }
        _ => {
            let cause = format!("`{}` needs double brackets", value.key);
            let remedy = format!("write [[{}]], since there may be several", value.key);
            let problem = Problem::new(Code::WrongType, cause).at(value.span, "");
            Err(findings.report(problem.remedy(remedy)))
        }
    }
}

fn missing_section(heading: &str) -> Problem {
    Problem::new(
        Code::MissingKey,
        format!("the file has no section {heading}"),
    )
    .remedy(format!("add a section {heading}"))
}
