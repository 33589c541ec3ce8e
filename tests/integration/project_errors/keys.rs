//! Reader, table of keys and schema are one: every key that is listed is read, every key that is read is
//! listed and has its place in the schema, and the page and the schema in the repository are the
//! program's.

use std::collections::BTreeSet;
use std::fmt::Write as _;
use std::path::Path;

use serde_json::Value as Json;
use toml::{Table, Value};
use tureen::garden::Locale;
use tureen::page::{Block, Page};
use tureen::project::{self, Form, Key, Presence};
use tureen::report;
use tureen::words::Words;

use super::other_units::all_keys;
use super::{FULL, catalogue, steady_weather};

/// A way through the file, and what may stand at its end.
type Ways = Vec<(Vec<String>, Form)>;

/// Every key with its way, tables before what they hold. `[]` is an entry of a list.
fn ways() -> Ways {
    let mut ways = Ways::new();
    for key in &project::keys(catalogue()) {
        both(&[], key, &mut ways);
    }
    ways
}

/// A key, and the one in another unit that may stand in its place.
fn both(before: &[String], key: &Key, ways: &mut Ways) {
    gather(before, key.name, &key.form, ways);
    if let Some(other) = &key.instead {
        gather(before, other.key, &key.form.in_unit(other), ways);
    }
}

fn gather(before: &[String], name: &str, form: &Form, ways: &mut Ways) {
    let way = [before, &[name.to_owned()]].concat();
    ways.push((way.clone(), form.clone()));
    within(&way, form, ways);
}

fn within(way: &[String], form: &Form, ways: &mut Ways) {
    match form {
        Form::Table(keys) => {
            for key in keys {
                both(way, key, ways);
            }
        }
        Form::List(of, ..) => within(&[way, &["[]".to_owned()]].concat(), of, ways),
        Form::Either(one, other) => {
            within(way, one, ways);
            within(way, other, ways);
        }
        Form::Named(names, of) => {
            // A name that the full file has, so that the value is read.
            let name = match *names {
                "NAME" => "dry bean",
                "TERM" => "Autumn",
                _ => "2026",
            };
            gather(way, name, of, ways);
        }
        _ => {}
    }
}

/// Puts a value at the end of a way, through tables and the first entries of lists.
fn put(table: &mut Table, way: &[String], value: Value) {
    let [key, rest @ ..] = way else { return };
    match rest {
        [] => {
            // A figure in two units is told before all else.
            let same = all_keys().into_iter().find_map(|known| {
                let other = known.instead?.key;
                match key {
                    key if key == other => Some(known.name),
                    key => (key == known.name).then_some(other),
                }
            });
            same.map(|same| table.remove(same));
            table.insert(key.clone(), value);
        }
        [entry, rest @ ..] if entry == "[]" => {
            let list = table
                .entry(key.clone())
                .or_insert_with(|| Value::Array(Vec::new()));
            let Value::Array(list) = list else {
                panic!("{key} is no list")
            };
            if list.is_empty() {
                list.push(Value::Table(Table::new()));
            }
            let Value::Table(entry) = &mut list[0] else {
                panic!("{key} holds no tables")
            };
            put(entry, rest, value);
        }
        rest => {
            if !table.get(key).is_some_and(Value::is_table) {
                table.insert(key.clone(), Value::Table(Table::new()));
            }
            let Some(Value::Table(inner)) = table.get_mut(key) else {
                panic!("{key}")
            };
            put(inner, rest, value);
        }
    }
}

/// What loading the full file says with a value put into it.
fn told_with(way: &[String], value: Value) -> String {
    let mut file: Table = FULL.parse().expect("the full file");
    put(&mut file, way, value);
    let text = toml::to_string(&file).expect("a file");
    let weather = steady_weather(3 * 365);
    match project::load_text("garden.toml", &text, Some(&weather), catalogue()) {
        Ok(_) => String::new(),
        Err(found) => found.render(false, 400),
    }
}

#[test]
fn every_key_that_is_listed_is_read() {
    let ways = ways();
    assert!(ways.len() > 100, "{}", ways.len());
    for (way, form) in ways {
        // True is a value of no key but a flag.
        let wrong = match form {
            Form::Flag => Value::Integer(7),
            _ => Value::Boolean(true),
        };
        let told = told_with(&way, wrong);
        let key = way.last().expect("a key");
        let wanted = match form {
            Form::List(of, ..)
                if matches!(*of, Form::Table(_)) && (way.len() == 1 || key == "ingredient") =>
            {
                format!("`{key}` needs double brackets")
            }
            _ => format!("`{key}` should be "),
        };
        assert!(told.contains(&wanted), "{way:?}\n{told}");
    }
}

#[test]
fn a_key_that_is_not_listed_is_refused_in_every_table() {
    let tables = ways().into_iter().filter_map(|(mut way, form)| {
        match form {
            Form::Table(_) => {}
            Form::List(of, ..) if matches!(*of, Form::Table(_)) => way.push("[]".to_owned()),
            _ => return None,
        }
        way.push("surely_unknown".to_owned());
        Some(way)
    });
    let tables: Vec<Vec<String>> = tables.collect();
    assert!(tables.len() > 15, "{tables:?}");
    for way in tables {
        let told = told_with(&way, Value::Boolean(true));
        assert!(told.contains("no key `surely_unknown`"), "{way:?}\n{told}");
    }
}

/// The ways of all properties of a schema, written as those of the keys.
fn properties(schema: &Json, way: &str, ways: &mut BTreeSet<String>) {
    for (name, inner) in schema["properties"].as_object().into_iter().flatten() {
        let way = format!("{way}.{name}");
        ways.insert(way.clone());
        properties(inner, &way, ways);
    }
    for inner in schema["anyOf"].as_array().into_iter().flatten() {
        properties(inner, way, ways);
    }
    for inner in ["items", "additionalProperties"] {
        if schema[inner].is_object() {
            properties(&schema[inner], way, ways);
        }
    }
}

#[test]
fn the_schema_holds_the_keys_of_the_table_and_asks_for_those_that_are_needed() {
    let text = project::schema(&project::keys(catalogue()));
    let schema: Json = serde_json::from_str(&text).expect("JSON");
    let mut ours = BTreeSet::new();
    properties(&schema, "", &mut ours);
    let chosen_names = ["[]", "dry bean", "Autumn", "2026"];
    let listed: BTreeSet<String> = ways()
        .into_iter()
        .map(|(way, _)| {
            let way = way
                .into_iter()
                .filter(|part| !chosen_names.contains(&part.as_str()));
            way.map(|part| format!(".{part}")).collect()
        })
        .collect();
    assert_eq!(ours, listed);
    assert_eq!(
        schema["properties"]["bed"]["items"]["required"],
        serde_json::json!(["id"])
    );
    let either = |names: [&str; 2]| {
        let each = names.map(|name| serde_json::json!({ "required": [name] }));
        serde_json::json!({ "oneOf": each })
    };
    assert_eq!(
        schema["properties"]["bed"]["items"]["allOf"],
        serde_json::json!([
            either(["length_m", "length_ft"]),
            either(["width_m", "width_ft"])
        ])
    );
    assert_eq!(
        schema["required"],
        serde_json::json!(["project", "place", "calendar", "grade", "dish"])
    );
}

/// Figures without a unit: counts, shares, money, a calendar year and the like.
const WITHOUT_UNIT: [&str; 19] = [
    "count",
    "portions",
    "adults",
    "seed",
    "children",
    "each_child_sows",
    "max_sowings",
    "least_share",
    "cost",
    "first_strip",
    "strips",
    "flats",
    "warm_flats",
    "germinates",
    "one_pick_share",
    "usable",
    "cells_per_flat",
    "pots_per_flat",
    "weather_from",
];

#[test]
fn every_key_has_a_meaning_and_every_figure_a_unit_or_none() {
    for key in all_keys() {
        assert!(key.meaning.len() > 2, "{}", key.name);
        let figure = matches!(key.form, Form::Number(..) | Form::Whole(..));
        if figure {
            assert_eq!(
                key.unit().is_none(),
                WITHOUT_UNIT.contains(&key.name),
                "{}",
                key.name
            );
        }
        if let Presence::BuiltIn(figures) = key.presence {
            let known = catalogue()
                .names()
                .filter_map(|name| catalogue().entry(name));
            let known: BTreeSet<&str> = known
                .flat_map(|entry| entry.sources())
                .map(|(f, _)| f)
                .collect();
            assert!(
                figures.iter().any(|figure| known.contains(figure)),
                "{}: {figures:?}",
                key.name
            );
        }
    }
}

/// A page as Markdown: titles, paragraphs, tables.
fn markdown(page: &Page) -> String {
    let mut text =
        "<!-- Made by a test from what `tureen keys` prints; do not edit. -->\n".to_owned();
    let cell = |cell: &String| cell.replace('|', "\\|").replace("[[", "\\[\\[");
    let row = |cells: &[String]| {
        format!(
            "| {} |\n",
            cells.iter().map(cell).collect::<Vec<_>>().join(" | ")
        )
    };
    let mut level = "#";
    for block in page.blocks() {
        match block {
            Block::Title(title) => {
                let _ = write!(text, "\n{level} {title}\n\n");
                level = "##";
            }
            Block::Paragraph(line) => text += &format!("{line}\n"),
            Block::Table(table) => {
                text += &row(&table.header);
                text += &format!("|{}\n", " --- |".repeat(table.header.len()));
                for cells in &table.rows {
                    text += &row(&[&[format!("`{}`", cells[0])], &cells[1..]].concat());
                }
            }
            Block::Gap => {}
            other => panic!("no Markdown for {other:?}"),
        }
    }
    text
}

/// Holds a file of the repository to what the program makes.
fn compare_file(path: &str, made: &str) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(path);
    if std::env::var_os("INSTA_UPDATE").is_some_and(|how| how == "always") {
        std::fs::write(&path, made).expect("written");
    }
    let committed = std::fs::read_to_string(&path).expect("a file");
    assert!(
        committed == made,
        "INSTA_UPDATE=always writes {} anew",
        path.display()
    );
}

#[test]
fn the_page_and_the_schema_in_the_repository_are_those_of_the_program() {
    let keys = project::keys(catalogue());
    let page = report::keys(&keys, None).expect("all tables");
    compare_file("KEYS.md", &markdown(&page));
    compare_file("src/project/garden.schema.json", &project::schema(&keys));
}

#[test]
fn one_table_is_shown_with_those_within_it() {
    let keys = project::keys(catalogue());
    let look = tureen::page::Look {
        width: 100,
        color: false,
    };
    let text = |table| report::keys(&keys, Some(table)).map(|page| page.text(look));
    let bed = text("bed").expect("a table");
    for part in [
        "[[bed]]: ",
        "length_m",
        "0.3 to 50 m",
        "needed",
        "at = { ... } in [[bed]]",
        "x_m",
    ] {
        assert!(bed.contains(part), "{part}\n{bed}");
    }
    assert!(!bed.contains("[[grade]]"), "{bed}");
    assert_eq!(text("beds"), None);
    assert!(report::table_names(&keys).contains(&"dish.ingredient".to_owned()));
}

#[test]
fn a_crop_names_the_key_of_every_figure_that_the_file_can_give() {
    let keys = project::keys(catalogue());
    let mut named = BTreeSet::new();
    for entry in catalogue()
        .names()
        .filter_map(|name| catalogue().entry(name))
    {
        let page = report::crop(catalogue(), entry, None);
        let text = page.text(tureen::page::Look {
            width: 1000,
            color: false,
        });
        for figure in tureen::words::figures::figures(entry, Words::in_locale(Locale::British)) {
            let mut fields = figure.fields.iter();
            let Some(key) = fields.find_map(|field| project::key_of_figure(&keys, field)) else {
                continue;
            };
            let end = format!(" {key} [{}]", figure.source);
            let has_it =
                |line: &str| line.trim_start().starts_with(figure.label) && line.ends_with(&end);
            assert!(text.lines().any(has_it), "{key}: {text}");
            named.insert(key.to_owned());
        }
    }
    let Some(Form::Named(_, of)) = keys
        .iter()
        .find(|key| key.name == "crop")
        .map(|key| &key.form)
    else {
        panic!("no table of crops");
    };
    let Form::Table(own) = &**of else {
        panic!("no keys of crops")
    };
    // Published warmth has no key of its own: packet days take its place too.
    let figures = own
        .iter()
        .filter(|key| matches!(key.presence, Presence::BuiltIn(_)));
    let own: BTreeSet<String> = figures.map(|key| key.name.to_owned()).collect();
    assert_eq!(named, own);
}
