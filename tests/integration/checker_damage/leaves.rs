//! Walks over everything in the saved plan, changes each value in several ways, doubles and
//! drops each part of each list, and sees that the plan is refused; days are also tried with the
//! promise adapted. What passes is counted, each with the reason why it is as sound.

use serde_json::{Value, json};
use std::collections::BTreeMap;

use tureen::calendar::{Date, plus_days};
use tureen::checker::{CheckedPlan, Standing, check, check_saved, promise};
use tureen::garden::Garden;
use tureen::page::Look;
use tureen::plan::saved::{self, Since};
use tureen::plan::{AimResult, Plan};
use tureen::report;

use crate::support::gardens::tiny_garden;
use crate::support::plans::tiny_plan;
use crate::support::thinning::Rows;

/// Every value of a document with its JSON pointer, lists and objects included.
fn walk(value: &Value, at: &str, found: &mut Vec<(String, Value)>) {
    found.push((at.to_owned(), value.clone()));
    match value {
        Value::Array(list) => {
            for (i, item) in list.iter().enumerate() {
                walk(item, &format!("{at}/{i}"), found);
            }
        }
        Value::Object(fields) => {
            for (key, item) in fields {
                walk(item, &format!("{at}/{key}"), found);
            }
        }
        _ => {}
    }
}

/// What a value is changed to. `strings` are all other strings of the document.
pub fn changes(value: &Value, strings: &[String]) -> Vec<Value> {
    match value {
        Value::Number(n) => {
            let n = n.as_f64().unwrap();
            let back = |x: f64| {
                if value.is_u64() {
                    json!(x as i64)
                } else {
                    json!(x)
                }
            };
            vec![back(n + 1.0), back(n - 1.0)]
        }
        Value::Bool(b) => vec![json!(!b)],
        Value::String(text) => match text.parse::<Date>() {
            Ok(date) => [365, -365]
                .into_iter()
                .chain((-28..=28).filter(|n| *n != 0))
                .map(|n| json!(plus_days(date, n)))
                .collect(),
            Err(_) => strings
                .iter()
                .map(String::as_str)
                .chain(["unknown"])
                .filter(|s| s != text)
                .map(|s| json!(s))
                .collect(),
        },
        Value::Array(list) => (0..list.len())
            .flat_map(|i| {
                let mut dropped = list.clone();
                dropped.remove(i);
                let mut doubled = list.clone();
                doubled.insert(i, list[i].clone());
                [json!(dropped), json!(doubled)]
            })
            .collect(),
        // A field that is missing, and one that nobody knows.
        Value::Object(fields) => {
            let mut more = fields.clone();
            more.insert("unknown".to_owned(), json!(1));
            let fewer = fields.keys().map(|key| {
                let mut fewer = fields.clone();
                fewer.remove(key);
                json!(fewer)
            });
            fewer.chain([json!(more)]).collect()
        }
        Value::Null => Vec::new(),
    }
}

/// Why a change does no harm, if it does none.
fn harmless(at: &str, was: &Value, is: &Value) -> Option<&'static str> {
    let parts: Vec<&str> = at.split('/').skip(1).collect();
    let shrunk = || Some(is.as_array()?.len() < was.as_array()?.len());
    let lost = || Some(is.as_object()?.len() < was.as_object()?.len());
    let lost_key = |key: &str| lost() == Some(true) && is.get(key).is_none();
    match parts.as_slice() {
        [] if ["checksum", "garden", "program"].into_iter().any(lost_key) => {
            Some("without its checksums it counts as edited")
        }
        ["checksum" | "garden" | "program"] => Some("with other checksums it counts as edited"),
        ["plan", "aims"] if shrunk()? => Some("a plan need not tell of every aim"),
        ["plan", "aims", position, "bound"] => {
            // More is better for the first six aims. Of what an edited plan says of its bounds
            // nothing is believed or told.
            let weaker = (is.as_f64()? > was.as_f64()?) == (position.parse::<u32>().unwrap() < 6);
            weaker.then_some("a bound that could be true is not repeated")
        }
        ["plan", "plantings", "0", "steps"] if shrunk()? => {
            let thins = |steps: &Value| steps.to_string().contains("thin");
            (thins(was) && !thins(is)).then_some("thinning is free to be done or not")
        }
        ["plan", "plantings", "1", "on-mat"] => Some("off the mat they come up in time, too"),
        _ => None,
    }
}

/// Reads a saved plan and checks it; `None` if either refuses it.
pub fn read_and_check(garden: &Garden, text: &str) -> Option<CheckedPlan> {
    let (plan, since) = saved::read(text).ok()?.for_garden(garden).ok()?;
    check_saved(garden, plan, since).ok()
}

/// The tiny plan with what is counted in it as its aims.
fn as_counted(garden: &Garden) -> Plan {
    let plan = tiny_plan(garden);
    let checked = check(garden, plan.clone()).unwrap();
    let counted = checked.replay().counted.iter();
    let aims = counted.map(|(aim, value)| AimResult {
        aim: *aim,
        value: *value,
        bound: *value,
    });
    Plan {
        aims: aims.collect(),
        ..plan
    }
}

/// All values of the tiny plan as it is saved, with their pointers, and all its texts but dates.
pub fn parts(document: &Value) -> (Vec<(String, Value)>, Vec<String>) {
    let mut values = Vec::new();
    walk(document, "", &mut values);
    let mut strings: Vec<String> = values
        .iter()
        .filter_map(|(_, v)| v.as_str())
        .filter(|s| s.parse::<Date>().is_err())
        .map(str::to_owned)
        .collect();
    strings.sort();
    strings.dedup();
    (values, strings)
}

/// An edited plan claims nothing of its aims on any screen, and says that it was edited.
fn claims_nothing(garden: &Garden, checked: &CheckedPlan) {
    assert_eq!(*checked.standing(), Standing::Edited);
    assert_eq!(checked.plan().aims, []);
    let look = Look {
        width: 200,
        color: false,
    };
    let plan = report::opened(garden, checked, report::plan(garden, checked));
    for page in [plan, report::sound(garden, checked)] {
        let text = page.text(look);
        assert!(
            text.contains("This plan was edited since it was made."),
            "{text}"
        );
        for claim in ["proved", "(best)", "given up", "given back", "at most"] {
            assert!(!text.contains(claim), "{claim}: {text}");
        }
    }
}

#[test]
fn nothing_in_the_saved_plan_can_be_changed_unseen() {
    let garden = tiny_garden();
    let text = saved::write(&garden, &as_counted(&garden));
    let valid = read_and_check(&garden, &text).unwrap();
    let document: Value = serde_json::from_str(&text).unwrap();
    let (values, strings) = parts(&document);
    let mut tried = 0;
    let mut passed: BTreeMap<&str, usize> = BTreeMap::new();
    for (at, was) in &values {
        for is in changes(was, &strings) {
            let mut damaged = document.clone();
            *damaged.pointer_mut(at).unwrap() = is.clone();
            let found = read_and_check(&garden, &damaged.to_string());
            tried += 1;
            let Some(why) = harmless(at, was, &is) else {
                assert!(found.is_none(), "unseen: {at} was {was}, is {is}");
                continue;
            };
            let found = found.unwrap_or_else(|| panic!("{why}, yet refused: {at} {is}"));
            // The replay is the same but for the mat, which is another plan, as sound.
            if !at.ends_with("on-mat") {
                assert_eq!(found.replay(), valid.replay(), "{at} {is}");
            }
            if !passed.contains_key(why) {
                claims_nothing(&garden, &found);
            }
            *passed.entry(why).or_default() += 1;
        }
    }
    println!("{tried} changes; passed: {passed:#?}");
    let expected = BTreeMap::from([
        ("a bound that could be true is not repeated", 11),
        ("a plan need not tell of every aim", 11),
        ("off the mat they come up in time, too", 1),
        ("thinning is free to be done or not", 1),
        (
            "with other checksums it counts as edited",
            3 * strings.len(),
        ),
        ("without its checksums it counts as edited", 3),
    ]);
    assert_eq!(passed, expected);
    assert!(tried > 3000, "only {tried} changes were tried");
}

/// Every day of the plan is moved by up to four weeks, and its promise adapted as a clever editor
/// would: what passes is ready often enough, is thinned in time, and says nothing that is not so.
#[test]
fn no_day_can_be_moved_against_a_rule_with_the_promise_adapted() {
    let garden = tiny_garden();
    let text = saved::write(&garden, &as_counted(&garden));
    let document: Value = serde_json::from_str(&text).unwrap();
    let (values, _) = parts(&document);
    let rows = Rows::of(&garden);
    let (mut tried, mut passed) = (0, 0);
    for step in values.iter().filter(|(at, _)| is_step(at)) {
        for days in (-28..=28).filter(|n| *n != 0) {
            let mut damaged = document.clone();
            move_all(damaged.pointer_mut(&step.0).unwrap(), days);
            let plan: Plan = serde_json::from_value(damaged["plan"].clone()).unwrap();
            let aims = Vec::new();
            let promise = promise(&garden, &plan);
            let plan = Plan {
                aims,
                promise,
                ..plan
            };
            tried += 1;
            let Ok(checked) = check_saved(&garden, plan, Since::Edited) else {
                continue;
            };
            passed += 1;
            let seen = &checked.replay().ingredients;
            assert!(seen.iter().all(|i| i.ready_years() > 0), "{step:?} {days}");
            let bean = &checked.plan().plantings[0];
            assert!(rows.thinned_in_time(bean), "{step:?} {days}");
            claims_nothing(&garden, &checked);
        }
    }
    println!("{tried} moves, {passed} passed");
    assert!(tried > 500 && passed > 0, "{tried} moves, {passed} passed");
}

/// True for the pointer of a whole step.
pub fn is_step(at: &str) -> bool {
    let parts: Vec<&str> = at.split('/').skip(1).collect();
    matches!(parts.as_slice(), ["plan", "plantings", _, "steps", _])
}

/// Moves every date in a value.
pub fn move_all(value: &mut Value, days: i64) {
    match value {
        Value::String(text) => {
            if let Ok(date) = text.parse::<Date>() {
                *text = plus_days(date, days).to_string();
            }
        }
        Value::Array(list) => list.iter_mut().for_each(|item| move_all(item, days)),
        Value::Object(fields) => fields.values_mut().for_each(|item| move_all(item, days)),
        _ => {}
    }
}
