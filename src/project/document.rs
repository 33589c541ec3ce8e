//! The whole project file: its syntax, then its sections, each read by the file of its name.

use toml::de::{DeTable, DeValue};

use crate::catalogue::Catalogue;
use crate::diagnostic::{Code, Findings, Given, Problem, Read, Span};
use crate::garden::Area;

use super::bed::{self, RawBed};
use super::crop::{self, Overrides};
use super::dish::{self, RawIngredient};
use super::feast::{self, RawProject};
use super::grade::{self, RawGrade};
use super::kind::{Value, table};
use super::place::{self, RawPlace};
use super::school_year::{self, RawSchoolYear};
use super::shelf::{self, RawShelf};
use super::standing::{self, RawGrowing, RawPatch};
use super::table::Table;

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
    pub areas: Read<Vec<Area>>,
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
    let mut result = Ok(());
    for error in errors {
        let span = error.span().map_or(Span::default(), Span::from);
        result = Err(findings.report(syntax(error.message(), span)));
    }
    // What was recovered around a syntax error may miss keys that the text does hold.
    result?;
    Ok(Table::read(
        "the file",
        root.get_ref(),
        Span::default(),
        findings,
        |t| read(t, catalogue),
    ))
}

fn syntax(message: &str, span: Span) -> Problem {
    if message.contains("duplicate key") {
        return Problem::new(Code::DuplicateKey, "this is given twice")
            .at(span, "the second")
            .remedy("remove one of the two");
    }
    Problem::new(Code::Syntax, "this line is not well formed")
        .at(span, message)
        .remedy("texts stand in quotes, lists in [ ], tables in { }, with commas between")
}

fn read(t: &mut Table<'_, '_>, catalogue: &Catalogue) -> Document {
    let areas = sections(t, "area", standing::read_area).and_then(|areas| {
        let areas = areas.into_iter().map(|area| area.value);
        areas.collect()
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
        let read = table("[dish]", |t| some_sections(t, "ingredient", dish::read));
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
            let problem = value.wrong_type("a section in double brackets");
            let remedy = format!("write [[{}]], since there may be several", value.key);
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
