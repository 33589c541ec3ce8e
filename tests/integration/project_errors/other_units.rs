//! Keys in feet, inches, pounds, ounces and degrees Fahrenheit. The exact factors are those of NIST SP 811.

use std::collections::BTreeMap;

use toml::{Table, Value};
use tureen::page::Look;
use tureen::project::{self, Change, Form, Key};
use tureen::report;

use super::{FULL, MINIMAL, catalogue, load, steady_weather};

const LENGTH: &str = "length_m = 3.6";

/// Units of keys that other people write in another one.
const METRIC: [&str; 6] = ["m", "cm", "mm", "kg", "g", "degrees C"];

/// Figures of these keys are differences: a degree of warmth more, not a temperature.
const APART: [&str; 3] = ["soil_bonus_c", "keeps_off_c", "warms_soil_c"];

/// Every key, with those of the tables within.
pub fn all_keys() -> Vec<Key> {
    let mut seen = Vec::new();
    look(&project::keys(catalogue()), &mut seen);
    seen
}

fn look(keys: &[Key], seen: &mut Vec<Key>) {
    for key in keys {
        seen.push(key.clone());
        match &key.form {
            Form::Table(keys) => look(keys, seen),
            Form::List(of, ..) | Form::Named(_, of) => {
                if let Form::Table(keys) = &**of {
                    look(keys, seen);
                }
            }
            _ => {}
        }
    }
}

/// A metric figure in the other unit, by the name of the other key.
fn outside(metric: &Key, figure: f64) -> f64 {
    let other = metric.instead.expect("another unit").key;
    let unit = other.rsplit('_').next().expect("a part");
    match unit {
        "ft" => figure / 0.3048,
        "in" if metric.name.ends_with("_mm") => figure / 25.4,
        "in" => figure / 2.54,
        "lb" => figure / 0.453_592_37,
        "portion" => figure / 28.349_523_125,
        "f" if APART.contains(&metric.name) => figure * 9.0 / 5.0,
        "f" => figure * 9.0 / 5.0 + 32.0,
        unit => panic!("{unit}"),
    }
}

fn of_number(value: &Value) -> Option<f64> {
    let whole = || value.as_integer().map(|n| n as f64);
    value.as_float().or_else(whole)
}

/// The file with every figure that has another unit given in it, and how many there were of each key.
fn in_other_units(
    file: &mut Table,
    keys: &BTreeMap<&str, Key>,
    seen: &mut BTreeMap<String, usize>,
) {
    for (name, value) in std::mem::take(file) {
        match (keys.get(name.as_str()), value) {
            (Some(key), value) if key.instead.is_some() => {
                let other = |value: &Value| outside(key, of_number(value).expect("a number"));
                let value = match &value {
                    Value::Array(list) => list.iter().map(other).collect::<Vec<f64>>().into(),
                    one => other(one).into(),
                };
                file.insert(key.instead.expect("another unit").key.to_owned(), value);
                *seen.entry(name).or_default() += 1;
            }
            (_, Value::Table(mut inner)) => {
                in_other_units(&mut inner, keys, seen);
                file.insert(name, Value::Table(inner));
            }
            (_, Value::Array(mut list)) => {
                for entry in &mut list {
                    if let Value::Table(inner) = entry {
                        in_other_units(inner, keys, seen);
                    }
                }
                file.insert(name, Value::Array(list));
            }
            (_, value) => drop(file.insert(name, value)),
        }
    }
}

/// A text with every number rounded to nine digits: figures go there and back with the last bit lost.
fn rounded(text: &str) -> String {
    let is_digit = |c: char| c.is_ascii_digit() || c == '.';
    let mut out = String::new();
    let mut rest = text;
    while let Some(at) = rest.find(|c: char| c.is_ascii_digit()) {
        let (before, number) = rest.split_at(at);
        let end = number.find(|c| !is_digit(c)).unwrap_or(number.len());
        let (digits, after) = number.split_at(end);
        out += before;
        out += &digits
            .parse()
            .map_or(digits.to_owned(), |n: f64| format!("{n:.9}"));
        rest = after;
    }
    out + rest
}

fn by_name() -> BTreeMap<&'static str, Key> {
    all_keys().into_iter().map(|key| (key.name, key)).collect()
}

#[test]
fn a_file_in_other_units_is_the_same_garden() {
    let mut monthly = FULL.to_owned();
    for (key, means) in [
        ("tmin_c", "5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, -40"),
        ("tmax_c", "15, 15, 15, 15, 15, 15, 15, 15, 15, 15, 15, 0"),
        ("rain_mm", "30, 30, 30, 30, 30, 30, 30, 30, 30, 30, 30, 0"),
    ] {
        monthly = match key {
            "tmin_c" => monthly.replace(
                "weather = \"weather.csv\"",
                &format!("[place.monthly]\n{key} = [{means}]"),
            ),
            _ => monthly.replace("\n[calendar]", &format!("{key} = [{means}]\n\n[calendar]")),
        };
    }
    let own = "frost_limit_c = -1\nin_row_cm = 8\nbetween_row_cm = 40\nsoil_cm = 25\nbase_c = 9\nupper_c = 33\n\
               sowing_soil_c = 15\nyield_low_kg = 0.01\nyield_expected_kg = 0.02\n\n[crop.tomato]\nplanting_soil_c = 15\n";
    let metric = monthly + own;
    let mut file: Table = metric.parse().expect("a file");
    let keys = by_name();
    let mut seen = BTreeMap::new();
    in_other_units(&mut file, &keys, &mut seen);
    let with_another = keys.values().filter(|key| key.instead.is_some());
    for key in with_another {
        assert!(seen.contains_key(key.name), "the file lacks {}", key.name);
    }
    let text = toml::to_string(&file).expect("a file");
    assert!(
        !text.contains("length_m") && text.contains("length_ft"),
        "{text}"
    );
    let read = |text: &str| {
        project::load_text("garden.toml", text, None, catalogue())
            .unwrap_or_else(|found| panic!("{text}\n{}", found.render(false, 100)))
    };
    let (ours, theirs) = (read(&metric), read(&text));
    let beds = |garden: &tureen::garden::Garden| rounded(&format!("{:?}", garden.beds));
    assert_eq!(beds(&ours), beds(&theirs));
    let dish = |garden: &tureen::garden::Garden| rounded(&format!("{:?}", garden.ingredients));
    assert_eq!(dish(&ours), dish(&theirs));
    let rest = |garden: &tureen::garden::Garden| {
        rounded(&format!(
            "{:?}{:?}{:?}{:?}",
            garden.patches,
            garden.areas,
            garden.shelf,
            garden.weather.origin()
        ))
    };
    assert_eq!(rest(&ours), rest(&theirs));
}

#[test]
fn every_metric_key_has_another_unit_of_a_unit() {
    for key in all_keys() {
        let metric = key.unit().is_some_and(|unit| METRIC.contains(&unit));
        assert_eq!(metric, key.instead.is_some(), "{}", key.name);
        if let Some(other) = key.instead {
            let unit = key.unit_of(other.key).expect(other.key);
            assert!(
                ["feet", "inches", "pounds", "ounces", "degrees F"].contains(&unit),
                "{unit}"
            );
        }
    }
}

#[test]
fn limits_are_those_of_the_metric_key() {
    for key in all_keys() {
        let (Some(other), Form::Number(least, most)) = (key.instead, &key.form) else {
            continue;
        };
        let Form::Number(low, high) = key.form.in_unit(&other) else {
            panic!("{}", other.key)
        };
        assert!(
            (low - outside(&key, *least)).abs() < 1e-9,
            "{}: {low}",
            other.key
        );
        assert!(
            (high - outside(&key, *most)).abs() < 1e-9,
            "{}: {high}",
            other.key
        );
    }
    let with = |line: &str| load(&MINIMAL.replacen(LENGTH, line, 1));
    let length = with("length_ft = 12").expect("sound").beds[0].length.0;
    assert!((length - 3.6576).abs() < 1e-12, "{length}");
    for (line, told) in [
        ("length_ft = 240", "`length_ft` should be 0.98 to 164.04"),
        (
            "length_ft = \"12 ft\"",
            "write digits without quotes: length_ft = 12; it is in feet",
        ),
        (
            "length_ft = \"3.048 m\"",
            "write digits without quotes: length_ft = 10; it is in feet",
        ),
        (
            "length_ft = 12\nlength_m = 3.6",
            "`length_m` and `length_ft` mean the same",
        ),
        ("lenght_ft = 12", "did you mean `length_ft`?"),
        ("length_yd = 4", "write `length_m = 3.658`"),
    ] {
        let text = with(line).expect_err(line).render(false, 100);
        assert!(text.contains(told), "{line}\n{text}");
        assert!(text.contains("1 error in"), "{line}\n{text}");
    }
}

#[test]
fn a_change_takes_the_place_of_the_figure_in_the_other_unit() {
    let in_feet = FULL.replacen(LENGTH, "length_ft = 12", 1);
    for (text, change, metres) in [
        (in_feet.as_str(), "bed.3.length_m=4.2", 4.2),
        (FULL, "bed.3.length_ft=10", 3.048),
        (in_feet.as_str(), "bed.3.length_ft=10", 3.048),
    ] {
        let folder = tempfile::tempdir().expect("a folder");
        let file = folder.path().join("garden.toml");
        std::fs::write(&file, text).expect("written");
        let weather = folder.path().join("weather.csv");
        std::fs::write(weather, steady_weather(3 * 365)).expect("written");
        let changes = [Change::Set(change.to_owned())];
        let garden = project::load_changed(&file, &changes, catalogue());
        let garden =
            garden.unwrap_or_else(|found| panic!("{change}\n{}", found.render(false, 100)));
        assert!((garden.beds[0].length.0 - metres).abs() < 1e-12, "{change}");
    }
}

#[test]
fn the_table_of_keys_names_both() {
    let page = report::keys(&project::keys(catalogue()), Some("shelf")).expect("a table");
    let text = page.text(Look {
        width: 200,
        color: false,
    });
    assert!(text.contains("room_c or room_f"), "{text}");
    assert!(text.contains("degrees C or "), "{text}");
    assert!(text.contains("degrees F"), "{text}");
}
