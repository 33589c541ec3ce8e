//! The keys of the project file as a JSON Schema (draft 2020-12), by which editors complete and check it
//! while it is written. What hangs together, such as two dates in order, only the reader tells.

use serde_json::{Map, Value, json};

use super::form::{Form, Key, Presence};

/// The schema of these keys.
pub fn schema(keys: &[Key]) -> Value {
    let mut root = table(keys);
    if let Value::Object(root) = &mut root {
        root.insert(
            "$schema".to_owned(),
            "https://json-schema.org/draft/2020-12/schema".into(),
        );
        root.insert("title".to_owned(), "A project file of tureen".into());
    }
    root
}

/// A table and its keys.
fn table(keys: &[Key]) -> Value {
    let as_written = keys
        .iter()
        .map(|key| (key.name, of(&key.form), description(key, key.name)));
    let instead = keys.iter().filter_map(|key| {
        let other = key.instead?;
        Some((
            other.key,
            of(&key.form.in_unit(&other)),
            description(key, other.key),
        ))
    });
    let properties = as_written
        .chain(instead)
        .map(|(name, mut value, description)| {
            if let Value::Object(value) = &mut value {
                value.insert("description".to_owned(), description.into());
            }
            (name.to_owned(), value)
        });
    let properties: Map<String, Value> = properties.collect();
    let (either, needed): (Vec<&Key>, Vec<&Key>) = keys
        .iter()
        .filter(|key| key.is_needed())
        .partition(|key| key.instead.is_some());
    let needed: Vec<&str> = needed.into_iter().map(|key| key.name).collect();
    let mut table = json!({
        "type": "object",
        "properties": properties,
        "required": needed,
        "additionalProperties": false,
    });
    // Of a figure in two units one must be there, and not both.
    let either: Vec<Value> = either.into_iter().map(one_of).collect();
    if let Value::Object(table) = &mut table
        && !either.is_empty()
    {
        table.insert("allOf".to_owned(), either.into());
    }
    table
}

/// That a key stands there in one unit.
fn one_of(key: &Key) -> Value {
    let names = [Some(key.name), key.instead.map(|other| other.key)];
    let names = names.into_iter().flatten();
    let each: Vec<Value> = names.map(|name| json!({ "required": [name] })).collect();
    json!({ "oneOf": each })
}

/// What an editor shows beside a key.
fn description(key: &Key, name: &str) -> String {
    let unit = key
        .unit_of(name)
        .map_or_else(String::new, |unit| format!(", in {unit}"));
    match &key.presence {
        Presence::Needed(_) => format!("{}{unit}. Needed.", key.meaning),
        Presence::Otherwise(otherwise) => format!("{}{unit}. Otherwise: {otherwise}.", key.meaning),
        Presence::BuiltIn(_) => format!("{}{unit}. Otherwise the catalogue's.", key.meaning),
    }
}

/// What may stand behind a key. Dates and times are texts in JSON; the reader tells a date in quotes.
fn of(form: &Form) -> Value {
    match form {
        Form::Text => json!({ "type": "string", "pattern": "\\S", "maxLength": 200 }),
        Form::Flag => json!({ "type": "boolean" }),
        Form::Date => json!({
            "type": "string",
            "format": "date",
            "pattern": "^[0-9]{4}-[0-9]{2}-[0-9]{2}$",
        }),
        Form::DayOfYear => json!({
            "type": "string",
            "pattern": "^ *([0-9]{1,2} +[A-Za-z]{3,}|[A-Za-z]{3,} +[0-9]{1,2}) *$",
        }),
        Form::Time => json!({
            "type": "string",
            "pattern": "^([01][0-9]|2[0-3]):[0-5][0-9](:00(\\.0+)?)?$",
        }),
        Form::Number(least, most) => {
            json!({ "type": "number", "minimum": least, "maximum": most })
        }
        Form::Whole(least, most) => {
            json!({ "type": "integer", "minimum": least, "maximum": most })
        }
        Form::Word(words) => json!({
            "anyOf": [{ "enum": words }, { "type": "string", "pattern": in_any_case(words) }],
        }),
        Form::List(of_each, least, most) => {
            let mut list = json!({ "type": "array", "items": of(of_each), "minItems": least });
            if let (Some(most), Value::Object(list)) = (most, &mut list) {
                list.insert("maxItems".to_owned(), (*most).into());
            }
            list
        }
        Form::Either(one, other) => json!({ "anyOf": [of(one), of(other)] }),
        Form::Table(keys) => table(keys),
        Form::Named(_, of_each) => {
            json!({ "type": "object", "additionalProperties": of(of_each) })
        }
    }
}

/// A pattern for words in any case; patterns of a schema know no flag for that.
fn in_any_case(words: &[&str]) -> String {
    let letter = |c: char| match c.is_ascii_alphabetic() {
        true => format!("[{}{}]", c.to_ascii_uppercase(), c.to_ascii_lowercase()),
        false => c.to_string(),
    };
    let words: Vec<String> = words
        .iter()
        .map(|word| word.chars().map(letter).collect())
        .collect();
    format!("^ *({}) *$", words.join("|"))
}
