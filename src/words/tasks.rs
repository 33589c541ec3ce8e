//! Tasks in words: who does them, what they are called, where they are done, with how much.

use crate::facts::sowings::Sowing;
use crate::facts::tasks::{Doer, Part, Spot, Task};
use crate::garden::Garden;

use super::{places, step_words, steps};
use crate::words::count;

/// Who does it: a class's name, `families`, `an adult`, `whoever is there`.
#[must_use]
pub fn who(garden: &Garden, doer: Doer) -> String {
    match doer {
        Doer::Class(class) => garden.class(class).name.clone(),
        Doer::Families => "families".to_owned(),
        Doer::Adult => "an adult".to_owned(),
        Doer::Anyone => "whoever is there".to_owned(),
    }
}

/// What is done: `Sow indoors`.
#[must_use]
pub fn name(task: &Task<'_>) -> &'static str {
    step_words::name(task.planting.method, task.kind)
}

/// `Sow in bed: carrot, second sowing`.
#[must_use]
pub fn title(task: &Task<'_>) -> String {
    let which = sowing(task.sowing).map_or_else(String::new, |which| format!(", {which}"));
    format!("{}: {}{which}", name(task), task.ingredient.name)
}

/// Where it is done; empty for a patch.
#[must_use]
pub fn spot(garden: &Garden, task: &Task<'_>) -> String {
    match task.spot {
        Spot::Shelf => "seedling shelf".to_owned(),
        Spot::NearShelf => "outdoors, near the seedling shelf".to_owned(),
        Spot::DryingPlace => "a dry, airy place".to_owned(),
        Spot::Strips => places::in_words(garden, &task.planting.places),
        Spot::Patch => String::new(),
    }
}

/// `217 seeds`, or `about 109 of 217 seeds` where it is not all.
#[must_use]
pub fn part(part: Part) -> String {
    let total = count(part.total, steps::thing(part.thing));
    if part.part >= part.total {
        total
    } else {
        format!("about {} of {total}", part.part)
    }
}

/// `second sowing`, where an ingredient has several.
#[must_use]
pub fn sowing(sowing: Sowing) -> Option<String> {
    (sowing.of > 1).then(|| format!("{} sowing", ordinal(sowing.number)))
}

/// `first`, `second`.
#[must_use]
pub fn ordinal(number: usize) -> &'static str {
    match number {
        1 => "first",
        2 => "second",
        3 => "third",
        4 => "fourth",
        _ => "later",
    }
}
