//! Changes to a project file on trial: a key, as a way through the file, and its new value.
//! They make a new text, which then goes through the same checks as a file changed by hand.

use toml::value::Datetime;
use toml::{Table, Value};

use crate::calendar::{Date, plus_days};
use crate::catalogue::Dish;
use crate::diagnostic::{Code, Findings, Problem, Problems, Read, Source, Span};

use super::names::{code, listed, near, quote};
use super::other_dish;
use super::other_units::same_as;

/// The keys by which an entry of a list is named, the most telling first.
const NAMES: [&str; 3] = ["id", "name", "crop"];

/// The keys that move with the feast, wherever in the file they stand. The only dates called `day` are those of the
/// harvest.
const FEAST_DAYS: [&str; 4] = ["feast", "deliver_by", "buy_by", "day"];

/// One change to a project file.
#[derive(Debug, Clone, PartialEq)]
pub enum Change {
    /// A key and its new value, as a user writes it.
    ///
    /// Written `KEY=VALUE`. KEY is a way through the file, with dots: `project.feast`,
    /// `bed.3.length_m`, `dish.ingredient.carrot.grade`. An entry of a list is named by its `id`,
    /// `name` or `crop`, or by its number. VALUE is what would stand in the file; a text needs
    /// no quotes. Without VALUE the key, or the whole entry, is taken out. A table for an entry
    /// that is not there adds it.
    Set(String),
    /// The feast some days later (or earlier, if negative), and with it every day by which
    /// something must be there or bought. A rain date is taken out: it need not be a school day.
    OtherDay(i64),
    /// A dish of the catalogue in place of the file's, its grades left to the program. What was only for the other
    /// dish, such as figures of its crops and seedlings for it, is taken out; what stands in a bed stays there.
    OtherDish(Dish),
}

impl Change {
    /// The change of one key, its way given part by part; `value` as the file would hold it, or
    /// nothing to take it out.
    #[must_use]
    pub fn set(way: &[&str], value: &str) -> Self {
        let is_bare = |part: &str| {
            let fits = |c: char| c.is_ascii_alphanumeric() || c == '-' || c == '_';
            !part.is_empty() && part.chars().all(fits)
        };
        let parts: Vec<String> = way
            .iter()
            .map(|part| match is_bare(part) {
                true => (*part).to_owned(),
                false => Value::from(*part).to_string(),
            })
            .collect();
        Self::Set(format!("{}={value}", parts.join(".")))
    }
}

/// A project's text with changes made to it. A text that is no TOML comes back as it is: the
/// checks of every project file tell what is wrong with it.
///
/// # Errors
/// Every change that cannot be made.
pub fn changed(text: &str, changes: &[Change]) -> Result<String, Problems> {
    let Ok(mut file) = text.parse::<Table>() else {
        return Ok(text.to_owned());
    };
    let mut problems = Problems::default();
    for change in changes {
        let mut found = Findings::default();
        match change {
            Change::Set(text) => {
                // What kept it from being made is in the findings.
                let _ = make(text, &mut file, &mut found);
                let name = "the change".to_owned();
                let text = text.clone();
                problems.add(Source::whole(name, text), found);
            }
            Change::OtherDay(days) => move_feast(&mut file, *days),
            Change::OtherDish(dish) => other_dish::put(&mut file, dish),
        }
    }
    match problems.is_empty() {
        true => Ok(toml::to_string(&file).unwrap_or_default()),
        false => Err(problems),
    }
}

/// Makes one change.
fn make(change: &str, file: &mut Table, found: &mut Findings) -> Read<()> {
    let malformed = |cause: &str| {
        Problem::new(Code::Syntax, cause)
            .at(Span::from(0..change.len()), "")
            .remedy("write KEY=VALUE, such as project.feast=2027-10-15 or bed.3.length_m=4.8")
    };
    let Some((key, value)) = change.split_once('=') else {
        return Err(found.report(malformed("a change needs a `=`")));
    };
    let Some(way) = way(key) else {
        return Err(found.report(malformed("there is no key before the `=`")));
    };
    set(file, &way, value_of(value)).map_err(|astray| {
        let end = key.len();
        let start = key.find(&astray.part).unwrap_or(0);
        let span = Span::from(start..(start + astray.part.len()).min(end));
        let problem = Problem::new(Code::UnknownKey, astray.cause).at(span, "");
        found.report(problem.remedy(astray.remedy))
    })
}

/// The parts of a dotted key.
fn way(key: &str) -> Option<Vec<String>> {
    let mut table: Table = format!("{key} = 0").parse().ok()?;
    let mut way = Vec::new();
    loop {
        let (part, value) = table.into_iter().next()?;
        way.push(part);
        match value {
            Value::Table(inner) => table = inner,
            _ => return Some(way),
        }
    }
}

/// The value as the file would hold it; a text may come without quotes.
fn value_of(text: &str) -> Option<Value> {
    let text = text.trim();
    if text.is_empty() {
        return None;
    }
    let parsed = format!("value = {text}").parse::<Table>().ok();
    let value = parsed.and_then(|mut table| table.remove("value"));
    Some(value.unwrap_or_else(|| Value::String(text.to_owned())))
}

/// A part of a way that leads nowhere.
struct Astray {
    part: String,
    cause: String,
    remedy: String,
}

/// Sets what the way leads to, or takes it out.
fn set(table: &mut Table, way: &[String], value: Option<Value>) -> Result<(), Astray> {
    let [key, rest @ ..] = way else {
        return Ok(());
    };
    if rest.is_empty() {
        // The new figure takes the place of one that is given in another unit.
        if let Some(same) = same_as(key) {
            table.remove(same);
        }
        match value {
            Some(value) => table.insert(key.clone(), value),
            None => table.remove(key),
        };
        return Ok(());
    }
    let empty = || Value::Table(Table::new());
    match table.entry(key.clone()).or_insert_with(empty) {
        Value::Table(inner) => set(inner, rest, value),
        Value::Array(list) => set_in_list(key, list, rest, value),
        _ => Err(Astray {
            part: key.clone(),
            cause: format!("{} is one value, and holds no keys", code(key)),
            remedy: format!("end the key with {}", code(key)),
        }),
    }
}

/// Sets something in an entry of a list; adds an entry or takes it out.
fn set_in_list(
    key: &str,
    list: &mut Vec<Value>,
    way: &[String],
    value: Option<Value>,
) -> Result<(), Astray> {
    let [name, rest @ ..] = way else {
        return Ok(());
    };
    match (position(list, name), rest.is_empty(), value) {
        (Some(at), true, None) => drop(list.remove(at)),
        (Some(at), true, Some(value)) => list[at] = value,
        (None, true, Some(new @ Value::Table(_))) => list.push(new),
        (Some(at), false, value) => {
            if let Some(Value::Table(entry)) = list.get_mut(at) {
                return set(entry, rest, value);
            }
        }
        (None, ..) => return Err(no_such_entry(key, list, name)),
    }
    Ok(())
}

/// The entry of a name, or of a number that counts from 1.
fn position(list: &[Value], name: &str) -> Option<usize> {
    let named = |key: &str| {
        let is_it = |entry: &Value| entry.get(key).and_then(Value::as_str) == Some(name);
        list.iter().position(is_it)
    };
    let number = || name.parse::<usize>().ok()?.checked_sub(1);
    NAMES
        .into_iter()
        .find_map(named)
        .or_else(|| number().filter(|at| *at < list.len()))
}

fn no_such_entry(key: &str, list: &[Value], name: &str) -> Astray {
    let first_name = |entry: &Value| {
        let name = NAMES.into_iter().find_map(|key| entry.get(key)?.as_str());
        name.map(str::to_owned)
    };
    let names: Vec<String> = list.iter().filter_map(first_name).collect();
    let known = || names.iter().map(String::as_str);
    Astray {
        part: name.to_owned(),
        cause: format!("{} holds nothing with the name {}", code(key), quote(name)),
        remedy: match near(name, known()) {
            Some(other) => format!("did you mean {}?", quote(other)),
            None if names.is_empty() => format!("name it by its number, 1 to {}", list.len()),
            None => format!("it holds {}", listed(known())),
        },
    }
}

/// Moves the days of the feast in a table and in all that it holds.
fn move_feast(table: &mut Table, days: i64) {
    table.remove("rain_date");
    for (key, value) in table.iter_mut() {
        match value {
            Value::Datetime(day) if FEAST_DAYS.contains(&key.as_str()) => {
                if let Some(moved) = moved(day, days) {
                    *day = moved;
                }
            }
            Value::Table(inner) => move_feast(inner, days),
            Value::Array(list) => {
                for entry in list {
                    if let Value::Table(inner) = entry {
                        move_feast(inner, days);
                    }
                }
            }
            _ => {}
        }
    }
}

/// A date some days later.
fn moved(day: &Datetime, days: i64) -> Option<Datetime> {
    let date = day.date?;
    let date = Date::from_ymd_opt(date.year.into(), date.month.into(), date.day.into())?;
    plus_days(date, days).to_string().parse().ok()
}
