//! The whole project file: its syntax, then its sections, each read by the file of its name.

use std::rc::Rc;

use toml::Spanned;
use toml::de::{DeTable, DeValue};

use crate::catalogue::Catalogue;
use crate::diagnostic::{Code, Findings, Given, Problem, Read, Reported, Span};
use crate::garden::Area;

use super::bed::{self, RawBed};
use super::crop;
use super::crop_names::Overrides;
use super::feast::{self, RawProject};
use super::form::{Form, Key, Presence};
use super::grade::{self, RawGrade};
use super::growing::{self, RawGrowing};
use super::ingredient::{self, RawIngredient};
use super::kind::Kind;
use super::names::{code, quote};
use super::place::{self, RawPlace};
use super::school_year::{self, RawSchoolYear};
use super::seedlings::{self, RawSeedlings};
use super::shelf::{self, RawShelf};
use super::slips;
use super::standing::{self, RawPatch};
use super::table::{self, Table, table};
use super::value::Value;

/// All sections as given.
pub struct Document {
    pub project: Read<RawProject>,
    pub place: Read<RawPlace>,
    pub calendar: Read<RawSchoolYear>,
    pub grades: Read<Vec<Given<RawGrade>>>,
    pub ingredients: Read<Vec<Given<RawIngredient>>>,
    pub beds: Read<Vec<Given<RawBed>>>,
    pub growing: Read<Vec<Given<RawGrowing>>>,
    pub seedlings: Read<Vec<Given<RawSeedlings>>>,
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
    if let Some((cause, remedy)) = another_file(text) {
        let problem = Problem::new(Code::Syntax, cause).at(Span::from(0..1), "");
        return Err(findings.report(problem.remedy(remedy)));
    }
    let (root, errors) = DeTable::parse_recoverable(text);
    if errors.is_empty() {
        return Ok(read_root(&root, catalogue, findings));
    }
    // Slips of the pen are told in plain words and mended; what is left, the parser tells.
    let mended = slips::mended(text, findings)?;
    let (root, errors) = DeTable::parse_recoverable(&mended);
    for error in errors {
        let (problem, of_one_value) = syntax(text, &error);
        let reported = findings.spoil(problem);
        if !of_one_value {
            // What was recovered around such an error may miss keys that the text does hold, and
            // further errors may follow from this one.
            return Err(reported);
        }
    }
    Ok(read_root(&root, catalogue, findings))
}

/// What a text is that was never meant for a project file, and what to do.
fn another_file(text: &str) -> Option<(&'static str, &'static str)> {
    let start = text.trim_start().to_lowercase();
    if start.starts_with("date,tmin") {
        let cause = "this is a table of weather, not a project file";
        return Some((
            cause,
            "name the project file; it names the table with `weather = ...`",
        ));
    }
    start.starts_with('{').then_some((
        "this is JSON, and a project file is TOML",
        "write sections and keys: [project], and under it name = \"Soup day\"",
    ))
}

fn read_root(
    root: &Spanned<DeTable<'_>>,
    catalogue: &Catalogue,
    findings: &mut Findings,
) -> Document {
    Table::read("the file", root.get_ref(), Span::default(), findings, |t| {
        read(t, catalogue)
    })
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
    Document {
        project: section(t, "project", "the day, the school, the meal", feast::read),
        place: section(
            t,
            "place",
            "where the garden lies, and its weather",
            place::read,
        ),
        calendar: section(t, "calendar", "the school year", school_year::read),
        grades: some_sections(
            t,
            "grade",
            "a grade, its classes and their lessons",
            grade::read,
        ),
        ingredients: read_dish(t),
        beds: sections(t, "bed", "a bed or a large pot", bed::read),
        growing: sections(t, "growing", "what stands already", growing::read),
        seedlings: sections(
            t,
            "seedlings",
            "what stands on the shelf already",
            seedlings::read,
        ),
        patches: sections(t, "patch", "what comes every year", standing::read_patch),
        areas: read_areas(t),
        shelf: t.maybe(
            "shelf",
            "where seedlings are raised",
            "nothing is raised indoors",
            table("[shelf]", shelf::read),
        ),
        overrides: t
            .maybe(
                "crop",
                "what you know better than the program, crop by crop",
                "the catalogue's figures",
                crop::overrides(catalogue),
            )
            .map(|given| given.map_or_else(Overrides::default, |given| given.value)),
    }
}

fn read_areas(t: &mut Table<'_, '_>) -> Read<Vec<Given<Area>>> {
    let areas = sections(t, "area", "what is never planted", standing::read_area)?;
    let sound = |area: Given<Read<Area>>| {
        let span = area.span;
        area.value.map(|value| Given { value, span })
    };
    areas.into_iter().map(sound).collect()
}

fn read_dish(t: &mut Table<'_, '_>) -> Read<Vec<Given<RawIngredient>>> {
    let parts = table("[dish]", |t| {
        let meaning = "a part of the dish";
        some_sections(t, "ingredient", meaning, ingredient::read)
    });
    match t.ask("dish", "what is eaten", needed, &table::sound(parts))? {
        Some(dish) => Ok(dish.value),
        None => Err(missing(t, "dish", "[[dish.ingredient]]")),
    }
}

/// A section that must be there once.
fn section<T>(
    t: &mut Table<'_, '_>,
    key: &'static str,
    meaning: &'static str,
    read: impl Fn(&mut Table<'_, '_>) -> T,
) -> Read<T> {
    let heading = format!("[{key}]");
    match t.ask(key, meaning, needed, &table(&heading, read))? {
        Some(section) => Ok(section.value),
        None => Err(missing(t, key, &heading)),
    }
}

/// A section that may be there any number of times.
fn sections<T>(
    t: &mut Table<'_, '_>,
    key: &'static str,
    meaning: &'static str,
    read: impl Fn(&mut Table<'_, '_>) -> T,
) -> Read<Vec<Given<T>>> {
    let none = || Presence::Otherwise("none".to_owned());
    let given = t.ask(key, meaning, none, &each(key, 0, read))?;
    Ok(given.map_or_else(Vec::new, |given| given.value))
}

/// A section that must be there at least once.
fn some_sections<T>(
    t: &mut Table<'_, '_>,
    key: &'static str,
    meaning: &'static str,
    read: impl Fn(&mut Table<'_, '_>) -> T,
) -> Read<Vec<Given<T>>> {
    let given = t.ask(key, meaning, needed, &each(key, 1, read))?;
    let given = given.map_or_else(Vec::new, |given| given.value);
    if given.is_empty() {
        let heading = match key {
            "ingredient" => "[[dish.ingredient]]".to_owned(),
            _ => format!("[[{key}]]"),
        };
        return Err(missing(t, key, &heading));
    }
    Ok(given)
}

/// The sections of one key; `least` is how many there must be.
fn each<'a, T: 'a>(
    key: &'static str,
    least: usize,
    read: impl Fn(&mut Table<'_, '_>) -> T + 'a,
) -> Kind<'a, Vec<Given<T>>> {
    let heading = format!("this [[{key}]]");
    let read = Rc::new(read);
    let reader = Rc::clone(&read);
    Kind::new(
        move || Form::List(Box::new(Form::Table(table::keys(&*reader))), least, None),
        move |value, findings| {
            let DeValue::Array(items) = value.value else {
                return Err(findings.report(single_brackets(value)));
            };
            let section = table(&heading, &*read);
            let read: Vec<Read<Given<T>>> = items
                .iter()
                .map(|item| {
                    let item = Value::new(value.key, item);
                    let span = item.span;
                    let read = section.read(&item, findings);
                    read.map(|value| Given { value, span })
                })
                .collect();
            read.into_iter().collect()
        },
    )
}

fn single_brackets(value: &Value<'_>) -> Problem {
    let cause = format!("`{}` needs double brackets", value.key);
    let remedy = format!("write [[{}]], since there may be several", value.key);
    let problem = Problem::new(Code::WrongType, cause).at(value.span, "");
    problem.remedy(remedy)
}

/// A section that must be there; what is missing is told with its heading.
fn needed() -> Presence {
    Presence::Needed(String::new())
}

/// Reports a section that is missing, unless it stands there under another name.
fn missing(t: &mut Table<'_, '_>, key: &str, heading: &str) -> Reported {
    t.mistaken(key).unwrap_or_else(|| {
        let cause = format!("the file has no section {heading}");
        let remedy = format!("add a section {heading}");
        t.report(Problem::new(Code::MissingKey, cause).remedy(remedy))
    })
}

/// All keys of the project file, in the order in which they are read.
pub fn keys(catalogue: &Catalogue) -> Vec<Key> {
    table::keys(|t| read(t, catalogue))
}
