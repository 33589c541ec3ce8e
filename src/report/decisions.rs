//! What to decide next and by when, in words: seed orders, people, purchases, the nurse.

use std::collections::BTreeMap;

use crate::calendar::Date;
use crate::facts::decisions::{Decision, Topic};
use crate::page::Page;
use crate::words;
use crate::words::decisions::{fill_the_list, short, what};
use crate::words::view::View;

/// Writes all decisions in order of time.
pub(super) fn write(view: &View<'_>, page: &mut Page) {
    let line = |decision: &Decision<'_>| (decision.by, what(view, &decision.topic));
    list(
        view,
        &view.decisions.iter().map(line).collect::<Vec<_>>(),
        page,
    );
}

/// Writes them for somebody who need not order seed: all orders are one, the last of its day.
pub(super) fn write_short(view: &View<'_>, page: &mut Page) {
    let is_order = |decision: &&Decision<'_>| matches!(decision.topic, Topic::Order(_));
    let others = view.decisions.iter().filter(|d| !is_order(d));
    let mut lines: Vec<(Date, String)> = others
        .map(|decision| match decision.topic {
            Topic::Kitchen => (decision.by, short(view, &decision.topic)),
            _ => (decision.by, what(view, &decision.topic)),
        })
        .collect();
    let text = "Order seed and plants, from then on, as on the shopping list.";
    let first = view.decisions.iter().find(is_order);
    lines.extend(first.map(|order| (order.by, text.to_owned())));
    lines.sort_by_key(|(by, _)| *by);
    list(view, &lines, page);
}

/// All that is to decide, a short line each: all orders are one, the first of them named, and so is
/// what is bought by one day.
pub(super) fn in_short(view: &View<'_>) -> Vec<(Date, String)> {
    let mut orders: Vec<(Date, &str)> = Vec::new();
    let mut bought: BTreeMap<Date, Vec<&str>> = BTreeMap::new();
    let mut lines: Vec<(Date, String)> = Vec::new();
    for decision in &view.decisions {
        let by = decision.by;
        match &decision.topic {
            Topic::Nurse => {
                let text = "Ask the school nurse about all that goes into the dish.";
                lines.push((by, text.to_owned()));
            }
            Topic::Order(order) => orders.push((by, &order.ingredient.name)),
            Topic::Gap(gap) => {
                let days = view.words.days(gap.from, gap.to);
                lines.push((by, format!("Name someone who waters {days}.")));
            }
            Topic::Break(pause) => lines.push((by, fill_the_list(view, pause))),
            Topic::Kitchen => lines.push((by, short(view, &decision.topic))),
            Topic::Buy { ingredient, .. } => bought.entry(by).or_default().push(&ingredient.name),
        }
    }
    if let [(by, first), rest @ ..] = orders.as_slice() {
        let rest = rest.last().map_or_else(String::new, |(last, name)| {
            let others = match rest.len() {
                1 => (*name).to_owned(),
                n => format!("the {n} others"),
            };
            format!("; {others} by {}", view.words.day(*last))
        });
        lines.push((*by, format!("Order seed and plants: {first}{rest}.")));
    }
    lines.extend(bought.into_iter().map(|(by, names)| {
        let text = format!("Look at {}: buy what has failed.", words::list(&names));
        (by, text)
    }));
    lines.sort_by_key(|(by, _)| *by);
    lines
}

/// A line for each: the day, and what to do.
fn list(view: &View<'_>, lines: &[(Date, String)], page: &mut Page) {
    if lines.is_empty() {
        return;
    }
    page.heading("Decide next");
    entries(view, lines, page);
}

/// A line for each, without a heading.
pub(super) fn entries(view: &View<'_>, lines: &[(Date, String)], page: &mut Page) {
    let days = lines
        .iter()
        .map(|(by, _)| view.words.day(*by).chars().count());
    let width = days.max().unwrap_or(0) + "by ".len();
    for (by, text) in lines {
        page.entry(&format!("by {}", view.words.day(*by)), width, text);
    }
}
