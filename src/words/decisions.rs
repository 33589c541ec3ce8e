//! What is to be decided, in words.

use crate::facts::cautions::allergens;
use crate::facts::decisions::{Order, Topic};
use crate::garden::{Break, Care};

use super::care::gap_days;
use super::steps::seed_of;
use super::view::View;
use super::{cautions, count};

/// What to do.
#[must_use]
pub fn what(view: &View<'_>, topic: &Topic<'_>) -> String {
    let in_short = short(view, topic);
    match details(view, topic) {
        Some(details) => {
            let in_short = in_short.strip_suffix('.').unwrap_or(&in_short);
            format!("{in_short}: {details}.")
        }
        None => in_short,
    }
}

/// What to do, without the details.
pub(crate) fn short(view: &View<'_>, topic: &Topic<'_>) -> String {
    match topic {
        Topic::Nurse => format!(
            "Ask the school nurse about {}, before it is fixed.",
            cautions::whole_dish(&allergens(view.garden))
        ),
        Topic::Order(order) => format!("Order {}.", ordered(order)),
        Topic::Gap(_) => "Name someone who waters.".to_owned(),
        Topic::Break(pause) => fill_the_list(view, pause),
        Topic::Kitchen => {
            "Tell the kitchen what the garden brings, so that it buys the rest.".to_owned()
        }
        Topic::Buy { ingredient, .. } => format!("Look at the {}.", ingredient.name),
    }
}

/// What else is to be known of it.
fn details(view: &View<'_>, topic: &Topic<'_>) -> Option<String> {
    match topic {
        Topic::Nurse | Topic::Order(_) | Topic::Break(_) => None,
        Topic::Gap(gap) => Some(gap_days(view, gap)),
        Topic::Kitchen => Some(harvests(view)),
        Topic::Buy { cost, .. } => {
            let cost = cost.map_or_else(String::new, |c| format!(", for about {c:.2}"));
            Some(format!("if it has failed, buy it{cost}"))
        }
    }
}

/// `323 carrot seeds`.
pub(crate) fn ordered(order: &Order<'_>) -> String {
    count(order.count, &seed_of(&order.ingredient.name, order.thing))
}

/// Families (or staff) for a break in which something stands on the shelf or in the beds.
pub(crate) fn fill_the_list(view: &View<'_>, pause: &Break) -> String {
    let who = match pause.care {
        Care::Families => "families",
        Care::Staff | Care::Nobody => "staff",
    };
    format!(
        "Fill the watering list of {who} for {} ({}).",
        pause.name,
        view.words.days(pause.from, pause.to)
    )
}

/// What the garden brings of each ingredient, and how much of it is wanted.
fn harvests(view: &View<'_>) -> String {
    let portions = view.garden.feast.portions;
    let harvest = view.ingredients().map(|(_, ingredient, seen)| {
        format!(
            "{} {} of {}",
            ingredient.name,
            view.words.mass_range(seen.low, seen.expected),
            view.words.mass(ingredient.target(portions))
        )
    });
    harvest.collect::<Vec<_>>().join("; ")
}
