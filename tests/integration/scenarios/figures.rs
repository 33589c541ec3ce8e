//! The figures of a README: the part under the heading "Figures", written anew from what the
//! program gives, so that the two can be compared as text.

use std::fmt::Write;

use tureen::garden::{Garden, IngredientAt};
use tureen::model::{Impossible, LeftOut, Pressure, Why};
use tureen::plan::Plan;

/// The part of a README under its heading "Figures".
pub fn in_readme(readme: &str) -> &str {
    let (_, after) = readme
        .split_once("\n## Figures\n\n")
        .expect("a heading `## Figures`");
    after.split("\n## ").next().unwrap_or(after).trim_end()
}

/// What it should be for a plan.
pub fn of_plan(plan: &Plan) -> String {
    let mut text = String::from(
        "| ingredient | ready years | strips | kg, poor year | kg, ordinary year |\n\
         | --- | ---: | ---: | ---: | ---: |\n",
    );
    let years = plan.promise.weather_years;
    for promise in &plan.promise.ingredients {
        writeln!(
            text,
            "| {} | {} of {years} | {} | {:.2} | {:.2} |",
            promise.ingredient,
            promise.ready_years,
            strips(plan, Some(&promise.ingredient)),
            promise.low.0,
            promise.expected.0
        )
        .unwrap();
    }
    writeln!(
        text,
        "| **whole dish** | **{} of {years}** | **{}** | | |\n",
        plan.promise.whole_dish_years,
        strips(plan, None)
    )
    .unwrap();
    text.push_str("| aim, in order | best value | proved |\n| --- | ---: | --- |\n");
    for result in &plan.aims {
        let name = serde_json::to_value(result.aim).unwrap();
        let name = name.as_str().unwrap().replace('-', " ");
        let value = (result.value * 1e4).round() / 1e4 + 0.0;
        let proved = if result.proved() { "yes" } else { "no" };
        writeln!(text, "| {name} | {value} | {proved} |").unwrap();
    }
    text.trim_end().to_owned()
}

/// Strips of all plantings, or of those of one ingredient.
fn strips(plan: &Plan, ingredient: Option<&str>) -> u32 {
    plan.plantings
        .iter()
        .filter(|p| ingredient.is_none_or(|name| name == p.ingredient))
        .flat_map(|p| &p.places)
        .map(|place| place.strips)
        .sum()
}

/// What it should be where there is no plan.
pub fn of_impossible(garden: &Garden, impossible: &Impossible) -> String {
    let name = |at: IngredientAt| garden[at].name.as_str();
    let together: Vec<&str> = impossible
        .possible_together
        .iter()
        .map(|at| name(*at))
        .collect();
    let proof = if impossible.proved {
        ""
    } else {
        " (not proved)"
    };
    let mut text = format!(
        "At most these together{proof}: {}.\n\n",
        together.join(", ")
    );
    text.push_str("| left out | why |\n| --- | --- |\n");
    for LeftOut { ingredient, why } in &impossible.left_out {
        let why = match why {
            Why::Crowded => "no room beside the others".to_owned(),
            Why::NoWay { reasons } => {
                let reasons: Vec<String> = reasons.iter().map(|(r, _)| format!("{r:?}")).collect();
                format!("by itself: {}", reasons.join(", "))
            }
        };
        writeln!(text, "| {} | {why} |", name(*ingredient)).unwrap();
    }
    for pressure in &impossible.pressure {
        let (what, wanted, there, parts) = match pressure {
            Pressure::Grades { wanted, can, .. } => ("grades", wanted, can, &Vec::new()),
            Pressure::Beds {
                wanted,
                strips,
                parts,
                ..
            } => ("strips", wanted, strips, parts),
            Pressure::Family {
                wanted,
                strips,
                parts,
                ..
            } => ("strips of a family", wanted, strips, parts),
            Pressure::Shelf {
                wanted,
                flats,
                parts,
            } => ("flats", wanted, flats, parts),
        };
        writeln!(text, "\n| {what} | wanted |\n| --- | ---: |").unwrap();
        for (at, part) in parts {
            writeln!(text, "| {} | {part} |", name(*at)).unwrap();
        }
        writeln!(text, "| **together** | **{wanted} of {there}** |").unwrap();
    }
    text.trim_end().to_owned()
}
