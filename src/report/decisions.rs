//! What to decide next and by when: seed orders, people, purchases, the nurse.

use crate::calendar::{Date, plus_days};
use crate::checker::CheckedPlan;
use crate::facts::Facts;
use crate::garden::{Care, Fallback, Garden, Ingredient};
use crate::plan::{Planting, StepKind};

use super::care::gap_days;
use super::cautions;
use super::page::Page;
use super::steps::seed_of;
use super::view::View;
use super::words::count;
use crate::facts::spans::{first_day, is_sown, span_of};

/// Seed and plants take up to two weeks to arrive (common practice).
const ORDER_DAYS: i64 = 14;
/// People are asked two weeks ahead (common practice).
const ASK_DAYS: i64 = 14;

/// How the topics of orders begin.
const ORDER: &str = "order";
/// The topic of what the kitchen is told.
const KITCHEN: &str = "kitchen";

/// Something to decide by a day.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Decision {
    /// What it is about, the same in every plan of a project: `order carrot`.
    pub topic: String,
    /// The last day, one of school.
    pub by: Date,
    /// What to do.
    pub what: String,
}

impl Decision {
    /// True for an order of seed, pieces or plants.
    fn is_order(&self) -> bool {
        self.topic.starts_with(ORDER)
    }

    /// What to do, without the details.
    #[must_use]
    pub fn short(&self) -> String {
        let short = self.what.split(": ").next().unwrap_or_default();
        format!("{}.", short.trim_end_matches('.'))
    }
}

/// All decisions of a plan in order of time.
#[must_use]
pub fn decisions(garden: &Garden, checked: &CheckedPlan) -> Vec<Decision> {
    all(&View::of(&Facts::new(garden, checked)))
}

/// Writes all decisions in order of time.
pub(super) fn write(view: &View<'_>, page: &mut Page) {
    list(view, &all(view), page);
}

/// Writes them for somebody who need not order seed: all orders are one.
pub(super) fn write_short(view: &View<'_>, page: &mut Page) {
    let (orders, mut others): (Vec<Decision>, Vec<Decision>) =
        all(view).into_iter().partition(Decision::is_order);
    for decision in others.iter_mut().filter(|d| d.topic == KITCHEN) {
        decision.what = decision.short();
    }
    let first = orders.into_iter().next().map(|first| Decision {
        what: "Order seed and plants, from then on, as on the shopping list.".to_owned(),
        ..first
    });
    others.extend(first);
    others.sort_by_key(|decision| decision.by);
    list(view, &others, page);
}

fn list(view: &View<'_>, all: &[Decision], page: &mut Page) {
    if all.is_empty() {
        return;
    }
    page.heading("Decide next");
    let width = all
        .iter()
        .map(|d| view.words.day(d.by).chars().count())
        .max()
        .unwrap_or(0)
        + "by ".len();
    for decision in all {
        let by = format!("by {}", view.words.day(decision.by));
        page.entry(&by, width, &decision.what);
    }
}

/// All decisions in order of time.
pub(super) fn all(view: &View<'_>) -> Vec<Decision> {
    let orders = orders(view);
    // The nurse comes first among decisions of one day.
    let mut all = vec![nurse(view, orders.first().map(|d| d.by))];
    all.extend(orders);
    all.extend(people_for_gaps(view));
    all.extend(families(view));
    all.extend(purchases(view));
    for decision in &mut all {
        decision.by = view.school_day_until(decision.by);
    }
    all.sort_by_key(|d| d.by);
    all
}

/// Seed, pieces or plants of an ingredient to order.
pub(super) struct Order<'a> {
    /// The last day of school on which it is time, so that they are there when they are needed.
    pub by: Date,
    /// The first day on which they are.
    pub needed: Date,
    pub ingredient: &'a Ingredient,
    /// `323 carrot seeds`.
    pub what: String,
}

/// All that is ordered, in order of time; on one day in the order of the file.
pub(super) fn to_order<'a>(view: &View<'a>) -> Vec<Order<'a>> {
    let order = |ingredient: &'a Ingredient| {
        let plantings: Vec<&Planting> = view.plantings_named(&ingredient.name).collect();
        let needed = plantings.iter().filter_map(|p| first_day(p)).min()?;
        let seeds: u32 = plantings.iter().map(|p| p.seeds).sum();
        let thing = seed_of(&ingredient.name, plantings.first()?.method);
        (seeds > 0).then(|| Order {
            by: view.school_day_until(plus_days(needed, -ORDER_DAYS)),
            needed,
            ingredient,
            what: count(seeds, &thing),
        })
    };
    let ingredients = view.garden.ingredients.iter();
    let mut orders: Vec<Order<'a>> = ingredients
        .filter(|i| is_sown(i))
        .filter_map(order)
        .collect();
    orders.sort_by_key(|order| order.by);
    orders
}

/// Seed, pieces and plants, ordered before they are first needed.
fn orders(view: &View<'_>) -> Vec<Decision> {
    let decision = |order: Order<'_>| Decision {
        topic: format!("{ORDER} {}", order.ingredient.name),
        by: order.by,
        what: format!("Order {}.", order.what),
    };
    to_order(view).into_iter().map(decision).collect()
}

/// The nurse is asked before anything is ordered.
fn nurse(view: &View<'_>, first_order: Option<Date>) -> Decision {
    let allergens = cautions::allergens(view.garden);
    let start = view.garden.school_year.start;
    Decision {
        topic: "nurse".to_owned(),
        by: first_order.unwrap_or(start).min(start),
        what: format!(
            "Ask the school nurse about {}, before it is fixed.",
            cautions::whole_dish(&allergens)
        ),
    }
}

/// A name for every gap.
fn people_for_gaps(view: &View<'_>) -> Vec<Decision> {
    view.replay
        .unattended
        .iter()
        .enumerate()
        .map(|(n, u)| Decision {
            topic: format!("gap {n}"),
            by: plus_days(u.gap.from, -ASK_DAYS),
            what: format!(
                "Name someone who waters: {}.",
                gap_days(view.garden, view.words, u)
            ),
        })
        .collect()
}

/// Families (or staff) for breaks in which something stands on the shelf or in the beds.
fn families(view: &View<'_>) -> Vec<Decision> {
    let stands = |from: Date, to: Date| {
        view.planted().any(|(p, _)| {
            let last = span_of(p, StepKind::Pick).map(|(_, last)| last);
            matches!((first_day(p), last), (Some(first), Some(last)) if first <= to && from <= last)
        })
    };
    view.garden
        .school_year
        .breaks
        .iter()
        .filter(|b| b.care != Care::Nobody && stands(b.from, b.to))
        .map(|b| Decision {
            topic: format!("break {}", b.name),
            by: plus_days(b.from, -ASK_DAYS),
            what: format!(
                "Fill the watering list of {} for {} ({}).",
                if b.care == Care::Families {
                    "families"
                } else {
                    "staff"
                },
                b.name,
                view.words.days(b.from, b.to)
            ),
        })
        .collect()
}

/// The last day of school on which the kitchen orders what the garden does not bring in time.
pub(super) fn rest_ordered_by(view: &View<'_>) -> Date {
    view.school_day_until(plus_days(view.garden.feast.deliver_by, -ORDER_DAYS))
}

/// The last day of school by which what is bought in place of an ingredient is ordered.
pub(super) fn bought_by(view: &View<'_>, fallback: Fallback) -> Date {
    view.school_day_until(fallback.buy_by)
}

/// What the kitchen buys: the missing part for certain, all of it where a crop fails.
fn purchases(view: &View<'_>) -> Vec<Decision> {
    let feast = view.garden.feast;
    let harvests: Vec<String> = view
        .ingredients()
        .map(|(_, ingredient, seen)| {
            format!(
                "{} {} of {}",
                ingredient.name,
                view.words.mass_range(seen.low, seen.expected),
                view.words.mass(ingredient.target(feast.portions))
            )
        })
        .collect();
    let mut decisions = vec![Decision {
        topic: KITCHEN.to_owned(),
        by: rest_ordered_by(view),
        what: format!(
            "Tell the kitchen what the garden brings, so that it buys the rest: {}.",
            harvests.join("; ")
        ),
    }];
    for ingredient in &view.garden.ingredients {
        if let Some(fallback) = ingredient.fallback {
            let cost = fallback
                .cost
                .map_or_else(String::new, |c| format!(", for about {c:.2}"));
            decisions.push(Decision {
                topic: format!("buy {}", ingredient.name),
                by: bought_by(view, fallback),
                what: format!(
                    "Look at the {}: if it has failed, buy it{cost}.",
                    ingredient.name
                ),
            });
        }
    }
    decisions
}
