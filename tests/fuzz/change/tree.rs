//! Changes of a JSON file's tree: values put elsewhere, taken out, doubled or of another kind.

use serde_json::{Value, json};

use crate::dice::Dice;
use crate::values::TEXTS;

/// Changes one value of the tree; a file that is no JSON stays as it is.
pub fn change(bytes: &[u8], dice: &mut Dice) -> Vec<u8> {
    let Ok(mut tree) = serde_json::from_slice::<Value>(bytes) else {
        return bytes.to_vec();
    };
    let count = size(&tree);
    let other = nth(&mut tree, &mut dice.below(count)).map(|value| value.clone());
    if let Some(value) = nth(&mut tree, &mut dice.below(count)) {
        match dice.below(6) {
            0 => *value = other.unwrap_or_default(),
            1 => *value = another(dice),
            2 => *value = json!([value.clone()]),
            _ => inside(value, dice),
        }
    }
    serde_json::to_vec_pretty(&tree).unwrap_or_default()
}

/// Changes what a list or an object holds, or a plain value a little.
fn inside(value: &mut Value, dice: &mut Dice) {
    match value {
        Value::Array(list) if !list.is_empty() => {
            let at = dice.below(list.len());
            match dice.below(4) {
                0 => drop(list.remove(at)),
                1 => list.insert(at, list[at].clone()),
                2 => list.reverse(),
                _ => {
                    let many = vec![list[at].clone(); 200];
                    list.extend(many);
                }
            }
        }
        Value::Object(fields) if !fields.is_empty() => {
            let names: Vec<String> = fields.keys().cloned().collect();
            let (gone, new) = (&names[dice.below(names.len())], dice.one(TEXTS));
            let value = fields.remove(gone).unwrap_or_default();
            if dice.chance(0.4) {
                fields.insert(new.to_owned(), value);
            }
        }
        Value::Number(number) => {
            let times = dice.one(&[-1.0, 0.0, 0.5, 1.01, 2.0, 1e6, 1e300]);
            *value = json!(number.as_f64().unwrap_or_default() * times);
        }
        _ => *value = another(dice),
    }
}

fn another(dice: &mut Dice) -> Value {
    match dice.below(8) {
        0 => Value::Null,
        1 => json!(true),
        2 => json!([]),
        3 => json!({}),
        4 => json!(u64::MAX),
        5 => json!(-1),
        6 => json!(dice.one(TEXTS).repeat(dice.one(&[1, 300]))),
        _ => json!(dice.one(TEXTS)),
    }
}

fn size(value: &Value) -> usize {
    1 + match value {
        Value::Array(list) => list.iter().map(size).sum(),
        Value::Object(fields) => fields.values().map(size).sum(),
        _ => 0,
    }
}

/// The value that is reached after `left` others, from the top.
fn nth<'a>(value: &'a mut Value, left: &mut usize) -> Option<&'a mut Value> {
    if *left == 0 {
        return Some(value);
    }
    *left -= 1;
    match value {
        Value::Array(list) => list.iter_mut().find_map(|inner| nth(inner, left)),
        Value::Object(fields) => fields.values_mut().find_map(|inner| nth(inner, left)),
        _ => None,
    }
}
