//! Another dish in the text of a project, on trial: its ingredients take the place of those that stand there, and
//! what was only for them goes with them.

use toml::{Table, Value};

use crate::catalogue::Dish;
use crate::garden::{Garden, Ingredient, Source};

/// Puts a dish of the catalogue into a project. Grades are left to the program.
pub(super) fn put(file: &mut Table, dish: &Dish) {
    let patch = |crop: &str| {
        let all = file.get("patch").and_then(Value::as_array)?.iter();
        let mut same = all.filter(|patch| text(patch, "crop") == Some(crop));
        text(same.next()?, "id").map(str::to_owned)
    };
    let ingredient = |(crop, grams): &(String, f64)| {
        let mut entry = Table::new();
        entry.insert("crop".to_owned(), Value::from(crop.as_str()));
        entry.insert("grams_per_portion".to_owned(), Value::from(*grams));
        if let Some(id) = patch(crop) {
            entry.insert("patch".to_owned(), Value::from(id));
        }
        Value::Table(entry)
    };
    let ingredients: Vec<Value> = dish.ingredients.iter().map(ingredient).collect();
    let is_in_it = |name: &str| dish.ingredients.iter().any(|(crop, _)| crop == name);
    // Own figures of crops that nobody cooks now would be taken for a slip.
    if let Some(Value::Table(own)) = file.get_mut("crop") {
        own.retain(|name, _| is_in_it(name));
    }
    let is_cooked = |entry: &Table| {
        let crop = entry.get("crop").and_then(Value::as_str)?;
        is_in_it(crop).then(|| Value::from(crop))
    };
    if let Some(Value::Array(list)) = file.get_mut("seedlings") {
        list.retain(|entry| {
            entry
                .as_table()
                .is_none_or(|seedlings| is_cooked(seedlings).is_some())
        });
    }
    let feast = file.get("project").and_then(|project| project.get("feast"));
    let feast = feast.cloned();
    for list in ["seedlings", "growing"] {
        let list = file.get_mut(list).and_then(Value::as_array_mut);
        let all = list.into_iter().flatten().filter_map(Value::as_table_mut);
        for entry in all.filter(|entry| entry.contains_key("for")) {
            match (is_cooked(entry), &feast) {
                (Some(crop), _) => {
                    entry.insert("for".to_owned(), crop);
                }
                // Nobody cooks it, but it stands all the same.
                (None, Some(feast)) => {
                    entry.remove("for");
                    entry.remove("as_plants");
                    entry.insert("cleared".to_owned(), feast.clone());
                }
                (None, None) => {}
            }
        }
    }
    let dish = Table::from_iter([("ingredient".to_owned(), Value::Array(ingredients))]);
    file.insert("dish".to_owned(), Value::Table(dish));
}

/// The sections of a garden's dish, as lines for a project file.
#[must_use]
pub fn dish_in_lines(garden: &Garden) -> Vec<String> {
    let text = |text: &str| Value::from(text).to_string();
    let lines = |ingredient: &Ingredient| {
        let patch = match ingredient.source {
            Source::Patch(at) => Some(format!("patch = {}", text(&garden[at].id))),
            Source::Sown | Source::Begun(_) => None,
        };
        let always = [
            "[[dish.ingredient]]".to_owned(),
            format!("crop = {}", text(&ingredient.crop.name)),
            format!("grams_per_portion = {}", ingredient.grams_per_portion),
        ];
        always.into_iter().chain(patch)
    };
    garden.ingredients.iter().flat_map(lines).collect()
}

fn text<'a>(entry: &'a Value, key: &str) -> Option<&'a str> {
    entry.get(key).and_then(Value::as_str)
}
