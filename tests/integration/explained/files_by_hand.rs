//! Changes made to a project file as a person makes them, without the program's own way.

use toml::{Table, Value};
use tureen::calendar::{Date, plus_days};
use tureen::project::Change;

/// The text of a file with changes made to it.
pub fn changed(text: &str, changes: &[Change]) -> String {
    let mut file: Table = text.parse().unwrap();
    for change in changes {
        match change {
            Change::Set(text) => {
                let (key, value) = text.split_once('=').unwrap();
                set(&mut file, &parts(key), value);
            }
            Change::OtherDay(days) => move_days(&mut file, *days),
            Change::OtherDish(dish) => panic!("no repair cooks {}", dish.name),
        }
    }
    file.to_string()
}

/// The parts of `dish.ingredient."dry bean".crop`.
fn parts(key: &str) -> Vec<String> {
    let (mut parts, mut quoted) = (vec![String::new()], false);
    for letter in key.trim().chars() {
        match letter {
            '"' => quoted = !quoted,
            '.' if !quoted => parts.push(String::new()),
            other => parts.last_mut().unwrap().push(other),
        }
    }
    parts
}

fn set(file: &mut Table, way: &[String], value: &str) {
    let (last, way) = way.split_last().unwrap();
    let mut at = Value::Table(std::mem::take(file));
    let mut inner = &mut at;
    for part in way {
        inner = match inner {
            Value::Array(list) => list.iter_mut().find(|entry| is_named(entry, part)).unwrap(),
            Value::Table(table) => table
                .entry(part.clone())
                .or_insert_with(|| Value::Table(Table::new())),
            other => panic!("{part} in {other}"),
        };
    }
    let value = (!value.is_empty()).then(|| {
        let mut parsed: Table = format!("value = {value}").parse().unwrap();
        parsed.remove("value").unwrap()
    });
    match (inner, value) {
        (Value::Table(table), Some(value)) => drop(table.insert(last.clone(), value)),
        (Value::Table(table), None) => drop(table.remove(last)),
        (Value::Array(list), Some(value)) => list.push(value),
        (Value::Array(list), None) => list.retain(|entry| !is_named(entry, last)),
        (other, _) => panic!("{last} in {other}"),
    }
    if let Value::Table(changed) = at {
        *file = changed;
    }
}

fn is_named(entry: &Value, name: &str) -> bool {
    let keys = ["id", "name", "crop"].into_iter();
    keys.filter_map(|key| entry.get(key)?.as_str()).next() == Some(name)
}

/// The feast and all days that move with it.
fn move_days(file: &mut Table, days: i64) {
    let project = file["project"].as_table_mut().unwrap();
    project.remove("rain_date");
    for key in ["feast", "deliver_by"] {
        if let Some(day) = project.get_mut(key) {
            let old: Date = day.to_string().parse().unwrap();
            let new = plus_days(old, days).to_string();
            *day = Value::Datetime(new.parse().unwrap());
        }
    }
}
